package stage

import "bowline/app/runner"

// Post has what is dragged follow the mouse through post instead of the toolkit's
// queue, which in tests runs at once.
func (v *Stage) Post(post func(func())) { v.soon = runner.NewSoon(post, v.drop) }

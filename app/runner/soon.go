package runner

// Soon runs a function once after the events at hand, however often it is
// asked for meanwhile: for work that follows the mouse, whose events come
// faster than pictures. It serves the goroutine that owns the window.
type Soon struct {
	post    func(func())
	run     func()
	waiting bool
}

// NewSoon returns a Soon that has run called by post, which takes a function
// to the end of the window's queue as fyne.Do does.
func NewSoon(post func(func()), run func()) *Soon { return &Soon{post: post, run: run} }

// Ask has the function run soon, if it does not wait already.
func (s *Soon) Ask() {
	if s.waiting {
		return
	}
	s.waiting = true
	s.post(s.Flush)
}

// Flush runs the function at once if it waits.
func (s *Soon) Flush() {
	if s.waiting {
		s.waiting = false
		s.run()
	}
}

// Drop forgets what was asked for.
func (s *Soon) Drop() { s.waiting = false }

package readout

import "bowline/app/form"

// Prose is form.Prose.
type Prose = form.Prose

// NewProse is form.NewProse.
var NewProse = form.NewProse

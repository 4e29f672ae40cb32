package study

// Drag is many edits of a study's car that follow one another, as one step to undo.
type Drag struct {
	Study *Study
	Label string // of the step
	begun bool   // the document has been told
}

// Begin begins the step, before the first edit; after that it does nothing.
func (d *Drag) Begin() {
	if !d.begun {
		d.begun = true
		d.Study.Document().Begin(d.Label)
	}
}

// End ends the step, if it was begun.
func (d *Drag) End() {
	if d.begun {
		d.Study.Document().End()
	}
}

// Cancel takes back what was edited.
func (d *Drag) Cancel() {
	if d.begun {
		d.Study.Document().Cancel()
	}
}

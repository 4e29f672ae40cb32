package form

import "fyne.io/fyne/v2"

// CommitPending hands over what has been typed and not been taken yet, and
// reports whether all of it was taken. Call it before what was typed would be
// meant otherwise or missed: undo, a save, other units. What is refused stays
// where it was typed, marked, with the reason, and the first of it gets the
// focus; RestorePending takes it back.
func (f *Form) CommitPending() bool {
	var refused *Entry
	for e := range f.entries() {
		if e.Pending() && !e.Commit() && refused == nil {
			refused = e
		}
	}
	if refused != nil {
		f.goTo(refused.row, refused)
	}
	return refused == nil
}

// RestorePending takes back what has been typed and not been taken yet.
func (f *Form) RestorePending() {
	for e := range f.entries() {
		if e.Pending() {
			e.Restore()
		}
	}
}

// goTo opens the section of a row and moves the focus to an editor in it.
func (f *Form) goTo(r *Row, e Editor) {
	r.section.Open(true)
	if focusable, ok := e.(fyne.Focusable); ok {
		f.Focus(focusable)
	}
	f.host.reveal(r)
}

// Focus moves the focus within the form.
func (f *Form) Focus(to fyne.Focusable) {
	if c := f.host.canvas(); c != nil {
		c.Focus(to)
	}
}

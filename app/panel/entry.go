package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Entry is a line for text that tells when it is left and when Escape is
// pressed in it.
type Entry struct {
	widget.Entry
	Left    func() // nil for nobody
	Escaped func() // nil for nobody
}

// NewEntry returns an empty line.
func NewEntry() *Entry {
	e := &Entry{}
	e.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	e.ExtendBaseWidget(e)
	return e
}

// FocusLost has the text looked at.
func (e *Entry) FocusLost() {
	e.Entry.FocusLost()
	if e.Left != nil {
		e.Left()
	}
}

// TypedKey handles Escape.
func (e *Entry) TypedKey(key *fyne.KeyEvent) {
	if key.Name == fyne.KeyEscape && e.Escaped != nil {
		e.Escaped()
		return
	}
	e.Entry.TypedKey(key)
}

// Take puts the entry into sight on its page and gives it the focus. The page
// knows its canvas, which an entry that was never drawn does not.
func (e *Entry) Take(on *Page) {
	if canvas := on.Canvas(); canvas != nil {
		on.Reveal(e)
		canvas.Focus(e)
	}
}

// Release takes the focus from the entry, if it has it.
func (e *Entry) Release(on *Page) {
	if canvas := on.Canvas(); canvas != nil && canvas.Focused() == fyne.Focusable(e) {
		canvas.Unfocus()
	}
}

// SelectAll selects the text, so that typing replaces it.
func (e *Entry) SelectAll() { e.TypedShortcut(&fyne.ShortcutSelectAll{}) }

package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// runEntry is a line for text that tells when it is left and when Escape is
// pressed in it.
type runEntry struct {
	widget.Entry
	left    func() // nil for nobody
	escaped func() // nil for nobody
}

func newRunEntry() *runEntry {
	e := &runEntry{}
	e.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	e.ExtendBaseWidget(e)
	return e
}

// FocusLost has the text looked at.
func (e *runEntry) FocusLost() {
	e.Entry.FocusLost()
	if e.left != nil {
		e.left()
	}
}

// TypedKey handles Escape.
func (e *runEntry) TypedKey(key *fyne.KeyEvent) {
	if key.Name == fyne.KeyEscape && e.escaped != nil {
		e.escaped()
		return
	}
	e.Entry.TypedKey(key)
}

// take puts the entry into sight on its page and gives it the focus. The page
// knows its canvas, which an entry that was never drawn does not.
func (e *runEntry) take(on *page) {
	if canvas := on.canvas(); canvas != nil {
		reveal(on.scroll, e)
		canvas.Focus(e)
	}
}

// release takes the focus from the entry, if it has it.
func (e *runEntry) release(on *page) {
	if canvas := on.canvas(); canvas != nil && canvas.Focused() == fyne.Focusable(e) {
		canvas.Unfocus()
	}
}

// selectAll selects the text, so that typing replaces it.
func (e *runEntry) selectAll() { e.TypedShortcut(&fyne.ShortcutSelectAll{}) }

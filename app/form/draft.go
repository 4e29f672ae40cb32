package form

import (
	"strings"

	"fyne.io/fyne/v2"
)

// Draft is where one text of several is typed that are handed over together. It
// looks at its text when it is left, and again with each letter while it is
// refused. Undo is of the text.
type Draft struct {
	field

	// Check says what is wrong with a text, without spaces around it; empty for
	// nothing.
	Check func(typed string) string
	// Typed hears of every change that a person makes; nil for nobody.
	Typed func()
	// Submit hands over all texts, on Enter.
	Submit func()
	// Cancel ends the typing, on Escape; nil for nothing.
	Cancel func()
}

// NewDraft returns a draft that stands in a host.
func NewDraft(host Host) *Draft {
	d := &Draft{}
	d.init(d, host)
	d.typed = func() {
		if d.Typed != nil {
			d.Typed()
		}
		if d.refused {
			d.Look()
		}
	}
	return d
}

// Typing returns the text without spaces around it.
func (d *Draft) Typing() string { return strings.TrimSpace(d.Text) }

// Look refuses the text if something is wrong with it, and reports whether
// nothing is.
func (d *Draft) Look() bool {
	why := ""
	if d.Check != nil {
		why = d.Check(d.Typing())
	}
	d.Refuse(why)
	return why == ""
}

// Refuse marks the text as refused and says why; an empty text takes that back.
func (d *Draft) Refuse(why string) { d.refuse(why) }

// FocusGained brings the draft into sight.
func (d *Draft) FocusGained() {
	d.field.FocusGained()
	d.host.reveal(d)
}

// FocusLost looks at the text.
func (d *Draft) FocusLost() {
	d.field.FocusLost()
	if d.Check != nil {
		d.Look()
	}
}

// TypedKey handles the keys that mean more here than in any text.
func (d *Draft) TypedKey(key *fyne.KeyEvent) {
	switch {
	case key.Name == fyne.KeyReturn, key.Name == fyne.KeyEnter:
		d.Submit()
	case key.Name == fyne.KeyEscape && d.Cancel != nil:
		d.Cancel()
	default:
		d.field.TypedKey(key)
	}
}

package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Enable has a button or a box react or not.
func Enable(b fyne.Disableable, on bool) {
	if on == b.Disabled() {
		if on {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

// Button does something in a row.
type Button struct {
	widget.Button
	attached
	About About
}

// NewButton returns a button with a text or an icon. What speaks against its
// doing is shown in the row.
func NewButton(a About, text string, icon fyne.Resource, do func() []Fault) *Button {
	b := &Button{About: a}
	b.Text, b.Icon = text, icon
	b.OnTapped = func() { b.try(b, do) }
	b.ExtendBaseWidget(b)
	return b
}

// Update implements Editor: a button shows no value.
func (b *Button) Update() {}

// FocusGained shows the help of the button.
func (b *Button) FocusGained() {
	b.Button.FocusGained()
	b.attend(&b.About, b)
}

// FocusLost takes the help away.
func (b *Button) FocusLost() {
	b.Button.FocusLost()
	b.leave()
}

// MouseIn shows the help of the button.
func (b *Button) MouseIn(e *desktop.MouseEvent) {
	b.Button.MouseIn(e)
	b.point(&b.About)
}

// MouseOut takes the help away.
func (b *Button) MouseOut() {
	b.Button.MouseOut()
	b.unpoint()
}

// TypedKey presses the button on Enter too.
func (b *Button) TypedKey(key *fyne.KeyEvent) { b.Button.TypedKey(spaceForEnter(key)) }

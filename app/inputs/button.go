package inputs

import (
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// button does something to the car.
type button struct {
	widget.Button
	about
	row *row
	do  func(v view, from origin)
}

func newButton(a about, text string, icon fyne.Resource, do func(v view, from origin)) *button {
	b := &button{about: a, do: do}
	b.Text, b.Icon = text, icon
	b.OnTapped = func() { b.do(b.row.panel.view(), b) }
	b.ExtendBaseWidget(b)
	return b
}

func (b *button) place(r *row)    { b.row = r }
func (b *button) home() *row      { return b.row }
func (b *button) pending() bool   { return false }
func (b *button) setRefused(bool) {}
func (b *button) show(view)       {}

// FocusGained shows the help of the button.
func (b *button) FocusGained() {
	b.Button.FocusGained()
	b.row.panel.attend(&b.about, b)
}

// FocusLost takes the help away.
func (b *button) FocusLost() {
	b.Button.FocusLost()
	b.row.panel.leave()
}

// MouseIn shows the help of the button.
func (b *button) MouseIn(e *desktop.MouseEvent) {
	b.Button.MouseIn(e)
	b.row.panel.hover(&b.about)
}

// MouseOut takes the help away.
func (b *button) MouseOut() {
	b.Button.MouseOut()
	b.row.panel.hover(nil)
}

// TypedKey presses the button on Enter too.
func (b *button) TypedKey(key *fyne.KeyEvent) { b.Button.TypedKey(spaceForEnter(key)) }

// spaceForEnter makes Enter mean what Space does.
func spaceForEnter(key *fyne.KeyEvent) *fyne.KeyEvent {
	if key.Name == fyne.KeyReturn || key.Name == fyne.KeyEnter {
		return &fyne.KeyEvent{Name: fyne.KeySpace, Physical: key.Physical}
	}
	return key
}

// check says yes or no to one part of the car.
type check struct {
	widget.Check
	row *row
	get func(view) bool
}

func newCheck(text string, get func(view) bool, set func(c *car.Car, on bool)) *check {
	c := &check{get: get}
	c.Text = text
	c.OnChanged = func(on bool) {
		p := c.row.panel
		p.apply(c, c.row.action, func(to *car.Car) { set(to, on) })
		c.show(p.view())
	}
	c.ExtendBaseWidget(c)
	return c
}

func (c *check) place(r *row)    { c.row = r }
func (c *check) home() *row      { return c.row }
func (c *check) pending() bool   { return false }
func (c *check) setRefused(bool) {}

func (c *check) show(v view) {
	if on := c.get(v); on != c.Checked {
		c.Checked = on
		c.Refresh()
	}
}

// FocusGained shows the help of the row.
func (c *check) FocusGained() {
	c.Check.FocusGained()
	c.row.panel.attend(&c.row.about, c)
}

// FocusLost takes the help away.
func (c *check) FocusLost() {
	c.Check.FocusLost()
	c.row.panel.leave()
}

// MouseIn shows the help of the row.
func (c *check) MouseIn(e *desktop.MouseEvent) {
	c.Check.MouseIn(e)
	c.row.MouseIn(e)
}

// MouseOut takes the help away.
func (c *check) MouseOut() {
	c.Check.MouseOut()
	c.row.MouseOut()
}

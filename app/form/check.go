package form

import (
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Check says yes or no. Only a person's answer is reported.
type Check struct {
	widget.Check
	attached
	get func() bool
	set func(on bool) []Fault
}

// NewCheck returns a box. What is refused is shown no more.
func NewCheck(text string, get func() bool, set func(on bool) []Fault) *Check {
	c := &Check{get: get, set: set}
	c.Text = text
	c.OnChanged = func(on bool) {
		c.try(c, func() []Fault { return c.set(on) })
		c.Update()
	}
	c.ExtendBaseWidget(c)
	return c
}

// Update shows the answer as it is now.
func (c *Check) Update() {
	if on := c.get(); on != c.Checked {
		c.Checked = on
		c.Refresh()
	}
}

// FocusGained shows the help of the row.
func (c *Check) FocusGained() {
	c.Check.FocusGained()
	c.attend(nil, c)
}

// FocusLost takes the help away.
func (c *Check) FocusLost() {
	c.Check.FocusLost()
	c.leave()
}

// MouseIn shows the help of the row.
func (c *Check) MouseIn(e *desktop.MouseEvent) {
	c.Check.MouseIn(e)
	c.point(nil)
}

// MouseOut takes the help away.
func (c *Check) MouseOut() {
	c.Check.MouseOut()
	c.unpoint()
}

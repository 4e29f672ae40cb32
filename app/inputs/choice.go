package inputs

import (
	"slices"

	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// choice picks one of a list.
type choice struct {
	widget.Select
	row     *row
	options func(view) []string
	current func(view) string // what is chosen; a text of its own when it is none of the options
	choose  func(c *choice, option int)
}

func newChoice(options func(view) []string, current func(view) string, choose func(c *choice, option int)) *choice {
	c := &choice{options: options, current: current, choose: choose}
	c.PlaceHolder = "–"
	c.OnChanged = c.chosen
	c.ExtendBaseWidget(c)
	return c
}

func (c *choice) place(r *row)    { c.row = r }
func (c *choice) home() *row      { return c.row }
func (c *choice) pending() bool   { return false }
func (c *choice) setRefused(bool) {}

func (c *choice) show(v view) {
	options, current := c.options(v), c.current(v)
	if current == c.Selected && slices.Equal(options, c.Options) {
		return
	}
	c.Options, c.Selected = options, current
	c.Refresh()
}

func (c *choice) chosen(option string) {
	if i := slices.Index(c.Options, option); i >= 0 && option != c.current(c.row.panel.view()) {
		c.choose(c, i)
	}
	c.show(c.row.panel.view())
}

// set makes a change of the car.
func (c *choice) set(change func(*car.Car)) { c.row.panel.apply(c, c.row.action, change) }

// FocusGained shows the help of the row.
func (c *choice) FocusGained() {
	c.Select.FocusGained()
	c.row.panel.attend(&c.row.about, c)
}

// FocusLost takes the help away.
func (c *choice) FocusLost() {
	c.Select.FocusLost()
	c.row.panel.leave()
}

// MouseIn shows the help of the row.
func (c *choice) MouseIn(e *desktop.MouseEvent) {
	c.Select.MouseIn(e)
	c.row.MouseIn(e)
}

// MouseOut takes the help away.
func (c *choice) MouseOut() {
	c.Select.MouseOut()
	c.row.MouseOut()
}

// TypedKey opens the list on Enter too.
func (c *choice) TypedKey(key *fyne.KeyEvent) { c.Select.TypedKey(spaceForEnter(key)) }

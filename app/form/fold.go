package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Fold is a part that opens and closes under its heading.
type Fold struct {
	cover
	heading *widget.Button

	// Object is the heading with the body below it.
	Object *fyne.Container
}

// NewFold returns a closed fold; turned is called when it has opened or closed.
func NewFold(title string, body fyne.CanvasObject, turned func()) *Fold {
	f := &Fold{cover: cover{body: body}}
	f.heading = widget.NewButtonWithIcon(title, arrow(false), func() { f.Open(!f.IsOpen()) })
	f.heading.Alignment, f.heading.Importance = widget.ButtonAlignLeading, widget.LowImportance
	f.turned = func() {
		f.heading.SetIcon(arrow(f.IsOpen()))
		turned()
	}
	body.Hide()
	f.Object = container.NewVBox(f.heading, body)
	return f
}

// Title returns what the heading says.
func (f *Fold) Title() string { return f.heading.Text }

// Retitle changes what the heading says.
func (f *Fold) Retitle(title string) {
	if title != f.heading.Text {
		f.heading.SetText(title)
	}
}

// cover shows and hides a body.
type cover struct {
	body    fyne.CanvasObject
	opening func() // the body is about to be seen; nil for nobody
	turned  func() // the cover has opened or closed
}

// IsOpen reports whether the body can be seen.
func (c *cover) IsOpen() bool { return c.body.Visible() }

// Open opens or closes the fold.
func (c *cover) Open(on bool) {
	if on == c.IsOpen() {
		return
	}
	if !on {
		c.body.Hide()
	} else {
		if c.opening != nil {
			c.opening()
		}
		c.body.Show()
	}
	c.turned()
}

// arrow returns the icon of a heading.
func arrow(open bool) fyne.Resource {
	if open {
		return theme.Icon(theme.IconNameArrowDropDown)
	}
	return theme.Icon(theme.IconNameMenuExpand)
}

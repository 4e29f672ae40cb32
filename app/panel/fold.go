package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Fold is a part of a page that opens and closes under its heading.
type Fold struct {
	heading *widget.Button
	body    fyne.CanvasObject
	Object  *fyne.Container
	turned  func() // it has opened or closed
}

// NewFold returns a closed fold.
func NewFold(title string, body fyne.CanvasObject, turned func()) *Fold {
	f := &Fold{body: body, turned: turned}
	f.heading = widget.NewButtonWithIcon(title, theme.Icon(theme.IconNameMenuExpand), func() { f.Open(!f.IsOpen()) })
	f.heading.Alignment, f.heading.Importance = widget.ButtonAlignLeading, widget.LowImportance
	body.Hide()
	f.Object = container.NewVBox(f.heading, body)
	return f
}

// IsOpen reports whether the body can be seen.
func (f *Fold) IsOpen() bool { return f.body.Visible() }

// Open opens or closes the fold.
func (f *Fold) Open(on bool) {
	if on == f.IsOpen() {
		return
	}
	icon := theme.IconNameMenuExpand
	if on {
		f.body.Show()
		icon = theme.IconNameArrowDropDown
	} else {
		f.body.Hide()
	}
	f.heading.SetIcon(theme.Icon(icon))
	f.turned()
}

// Title returns the heading.
func (f *Fold) Title() string { return f.heading.Text }

// Retitle changes the heading.
func (f *Fold) Retitle(title string) {
	if title != f.heading.Text {
		f.heading.SetText(title)
	}
}

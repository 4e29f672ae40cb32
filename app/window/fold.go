package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// fold is a part of a page that opens and closes under its heading.
type fold struct {
	heading *widget.Button
	body    fyne.CanvasObject
	object  *fyne.Container
	turned  func() // it has opened or closed
}

// newFold returns a closed fold.
func newFold(title string, body fyne.CanvasObject, turned func()) *fold {
	f := &fold{body: body, turned: turned}
	f.heading = widget.NewButtonWithIcon(title, theme.Icon(theme.IconNameMenuExpand), func() { f.open(!f.isOpen()) })
	f.heading.Alignment, f.heading.Importance = widget.ButtonAlignLeading, widget.LowImportance
	body.Hide()
	f.object = container.NewVBox(f.heading, body)
	return f
}

// isOpen tells whether the body can be seen.
func (f *fold) isOpen() bool { return f.body.Visible() }

// open opens or closes the fold.
func (f *fold) open(on bool) {
	if on == f.isOpen() {
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

// retitle changes the heading.
func (f *fold) retitle(title string) {
	if title != f.heading.Text {
		f.heading.SetText(title)
	}
}

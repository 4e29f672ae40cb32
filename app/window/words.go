package window

import (
	"bowline/app/readout"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// words returns a place for sentences in a color of the theme.
func words(color fyne.ThemeColorName) *readout.Prose {
	return readout.NewProse("", theme.SizeNameText, color, fyne.TextStyle{})
}

// tell writes text into a place for sentences that is there only while there is
// any, and tells whether it differs from before.
func tell(p *readout.Prose, text string) bool {
	p.Hidden = text == ""
	return p.Set(text)
}

// scrolled stacks objects that scroll up and down together.
func scrolled(objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.NewVBox(objects...))
}

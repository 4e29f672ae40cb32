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

// scrolled stacks objects that scroll up and down together.
func scrolled(objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.NewVBox(objects...))
}

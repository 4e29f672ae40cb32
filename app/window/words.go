package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// words returns a label for sentences.
func words() *widget.Label {
	l := widget.NewLabel("")
	l.Wrapping = fyne.TextWrapWord
	return l
}

// setWords changes a label only when its words differ, and hides it without
// any.
func setWords(l *widget.Label, text string) {
	if l.Text != text {
		l.SetText(text)
	}
	if visible := text != ""; visible != l.Visible() {
		if visible {
			l.Show()
		} else {
			l.Hide()
		}
	}
}

// scrolled stacks objects that scroll up and down together.
func scrolled(objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.NewVBox(objects...))
}

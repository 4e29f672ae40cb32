package form

import "fyne.io/fyne/v2"

// FixedWidth lays out one object at a width, so that neighbors hold still
// while its words change.
type FixedWidth float32

// MinSize implements fyne.Layout.
func (w FixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(w), objects[0].MinSize().Height)
}

// Layout implements fyne.Layout.
func (w FixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// steady returns a container of one thing whose least size is asked only once:
// before every frame the toolkit asks it of everything in sight, and each
// container of everything in it, tabs that are not in sight too. What it holds
// must scroll whatever outgrows that size.
func steady(o fyne.CanvasObject) *fyne.Container { return container.New(&steadyLayout{}, o) }

type steadyLayout struct {
	least fyne.Size
	asked bool
}

// MinSize implements fyne.Layout.
func (s *steadyLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if !s.asked {
		s.least, s.asked = objects[0].MinSize(), true
	}
	return s.least
}

// Layout implements fyne.Layout.
func (s *steadyLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(size)
}

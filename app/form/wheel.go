package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// wheel lies on an object and takes the mouse wheel from it: entries and lists
// would keep it even with nothing to scroll.
type wheel struct {
	widget.BaseWidget
	turned func(*fyne.ScrollEvent)
}

func newWheel(turned func(*fyne.ScrollEvent)) *wheel {
	w := &wheel{turned: turned}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled implements fyne.Scrollable.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) { w.turned(e) }

// CreateRenderer draws nothing.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}

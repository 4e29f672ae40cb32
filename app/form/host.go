package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Host is what fields stand in. Every part may be left out.
type Host struct {
	Scroll *container.Scroll // fields with the focus come into sight in it; it takes the mouse wheel over them
	Grown  func()            // makes room for what has changed its height
	Help   func(text string) // shows what the field at hand means; empty for none at hand
	At     func(path string) // is told the path of the row at hand or marked; empty for none
}

// canvas returns what the host is drawn on; nil before it was. A field that was
// never drawn does not know its own.
func (h Host) canvas() fyne.Canvas {
	if h.Scroll == nil {
		return nil
	}
	return fyne.CurrentApp().Driver().CanvasForObject(h.Scroll)
}

func (h Host) scrolled(e *fyne.ScrollEvent) {
	if h.Scroll != nil {
		h.Scroll.Scrolled(e)
	}
}

func (h Host) grown() {
	if h.Grown != nil {
		h.Grown()
	}
}

func (h Host) help(text string) {
	if h.Help != nil {
		h.Help(text)
	}
}

func (h Host) at(path string) {
	if h.At != nil {
		h.At(path)
	}
}

// reveal brings an object into sight, no farther than needed.
func (h Host) reveal(o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	if h.canvas() == nil || !o.Visible() {
		return
	}
	h.revealAt(d.AbsolutePositionForObject(o).Y-d.AbsolutePositionForObject(h.Scroll.Content).Y, o.Size().Height)
}

// revealAt brings a height below a place in what scrolls into sight, no farther than
// needed.
func (h Host) revealAt(top, height float32) {
	to := h.Scroll.Offset
	to.Y = min(max(to.Y, top+height-h.Scroll.Size().Height), top)
	if to != h.Scroll.Offset {
		h.Scroll.ScrollToOffset(to)
	}
}

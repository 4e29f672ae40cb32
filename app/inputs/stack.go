package inputs

import "fyne.io/fyne/v2"

// stack lays things out below each other at full width. The height of each may
// depend on its width.
type stack struct {
	gap   float32 // between two
	inset float32 // around all
}

func (s stack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y, width := s.inset, size.Width-2*s.inset
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		if o.Size().Width != width {
			o.Resize(fyne.NewSize(width, o.Size().Height))
		}
		height := o.MinSize().Height
		o.Move(fyne.NewPos(s.inset, y))
		o.Resize(fyne.NewSize(width, height))
		// What is inside may have changed without changing the size.
		if c, ok := o.(*fyne.Container); ok {
			c.Layout.Layout(c.Objects, c.Size())
		}
		y += height + s.gap
	}
}

func (s stack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(0, -s.gap)
	for _, o := range objects {
		if o.Visible() {
			size := o.MinSize()
			least.Width = max(least.Width, size.Width)
			least.Height += size.Height + s.gap
		}
	}
	return fyne.NewSize(least.Width+2*s.inset, max(0, least.Height)+2*s.inset)
}

package form

import "fyne.io/fyne/v2"

// Stack is the layout of things below each other at full width, each as high as
// it asks to be at that width. What has no height takes no gap.
type Stack struct {
	Gap   float32 // between two
	Inset float32 // around all
	Foot  float32 // under the last one, if there is any
}

// Layout implements fyne.Layout.
func (s Stack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y, width := s.Inset, size.Width-2*s.Inset
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		if o.Size().Width != width {
			// The height depends on the width.
			o.Resize(fyne.NewSize(width, o.Size().Height))
		}
		height := o.MinSize().Height
		o.Move(fyne.NewPos(s.Inset, y))
		o.Resize(fyne.NewSize(width, height))
		if c, ok := o.(*fyne.Container); ok {
			// What is inside may have changed without changing the size.
			c.Layout.Layout(c.Objects, c.Size())
		}
		if height > 0 {
			y += height + s.Gap
		}
	}
}

// MinSize implements fyne.Layout.
func (s Stack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var least fyne.Size
	n := 0
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		size := o.MinSize()
		least.Width = max(least.Width, size.Width)
		if size.Height > 0 {
			least.Height += size.Height
			n++
		}
	}
	if n > 0 {
		least.Height += float32(n-1)*s.Gap + s.Foot
	}
	return least.AddWidthHeight(2*s.Inset, 2*s.Inset)
}

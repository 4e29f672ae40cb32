package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// page lays things out below each other at full width, each as high as it needs
// to be at that width, and scrolls.
type page struct {
	scroll *container.Scroll
	stack  *fyne.Container
	height float32 // of the stack when it was laid out last
}

// newPage returns an empty page.
func newPage() *page {
	p := &page{stack: container.New(pageStack{})}
	p.scroll = container.NewVScroll(container.New(besideBar{}, p.stack))
	return p
}

// add puts things at the end.
func (p *page) add(objects ...fyne.CanvasObject) {
	p.stack.Objects = append(p.stack.Objects, objects...)
}

// canvas returns what the page is drawn on; nil before it was.
func (p *page) canvas() fyne.Canvas {
	return fyne.CurrentApp().Driver().CanvasForObject(p.scroll)
}

// settle makes room for what has changed its height.
func (p *page) settle() {
	if height := p.stack.MinSize().Height; height != p.height {
		p.stack.Layout.Layout(p.stack.Objects, p.stack.Size())
		p.height = p.stack.MinSize().Height
		p.scroll.Refresh()
	}
}

// stacked returns things stacked as on a page.
func stacked(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(pageStack{}, objects...)
}

// pageStack is the layout of a page.
type pageStack struct{}

// MinSize implements fyne.Layout.
func (pageStack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var least fyne.Size
	for _, o := range objects {
		if o.Visible() {
			size := o.MinSize()
			least.Width = max(least.Width, size.Width)
			if size.Height > 0 {
				least.Height += size.Height + theme.Padding()
			}
		}
	}
	return least
}

// Layout implements fyne.Layout.
func (pageStack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		if o.Size().Width != size.Width {
			// The height depends on the width.
			o.Resize(fyne.NewSize(size.Width, o.Size().Height))
		}
		height := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		if c, ok := o.(*fyne.Container); ok {
			// What is inside may have changed without changing the size.
			c.Layout.Layout(c.Objects, c.Size())
		}
		if height > 0 {
			y += height + theme.Padding()
		}
	}
}

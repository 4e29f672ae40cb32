package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Page shows a panel's words above its evidence, each as high as it needs to be
// at the width there is, and scrolls.
type Page struct {
	scroll *container.Scroll
	stack  *fyne.Container
	height float32 // of the stack when it was laid out last
}

// NewPage returns an empty page.
func NewPage() *Page {
	p := &Page{stack: Stack()}
	p.scroll = container.NewVScroll(container.New(besideBar{}, p.stack))
	return p
}

// Object returns what is shown of the page.
func (p *Page) Object() fyne.CanvasObject { return p.scroll }

// Show puts words and evidence of a panel on the page.
func (p *Page) Show(of Panel) {
	p.stack.Objects = []fyne.CanvasObject{of.Words(), of.Evidence()}
}

// Canvas returns what the page is drawn on; nil before it was.
func (p *Page) Canvas() fyne.Canvas {
	return fyne.CurrentApp().Driver().CanvasForObject(p.scroll)
}

// Reveal brings something on the page into sight.
func (p *Page) Reveal(o fyne.CanvasObject) { Reveal(p.scroll, o) }

// Scrolled scrolls the page by a turn of the wheel.
func (p *Page) Scrolled(e *fyne.ScrollEvent) { p.scroll.Scrolled(e) }

// Settle makes room for what has changed its height.
func (p *Page) Settle() {
	if height := p.stack.MinSize().Height; height != p.height {
		p.stack.Layout.Layout(p.stack.Objects, p.stack.Size())
		p.height = p.stack.MinSize().Height
		p.scroll.Refresh()
	}
}

// Stack puts things below each other at full width, each as high as it needs to
// be at that width.
func Stack(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(stack{}, objects...)
}

// Group stacks things that belong together: it stands farther apart from what is
// below it than its parts do from each other.
func Group(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(stack{apart: true}, objects...)
}

// stack is the layout of Stack and Group.
type stack struct {
	apart bool // a gap follows the last part too
}

// MinSize implements fyne.Layout.
func (s stack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var least fyne.Size
	parts := 0
	for _, o := range objects {
		if o.Visible() {
			size := o.MinSize()
			least.Width = max(least.Width, size.Width)
			if size.Height > 0 {
				least.Height += size.Height
				parts++
			}
		}
	}
	if !s.apart {
		parts--
	}
	least.Height += float32(max(parts, 0)) * theme.Padding()
	return least
}

// Layout implements fyne.Layout.
func (stack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
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

// Scrolling stacks objects that scroll up and down together.
func Scrolling(objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.New(besideBar{}, container.NewVBox(objects...)))
}

// besideBar is the layout of what scrolls: it stays clear of the bar at its
// right.
type besideBar struct{}

// BarRoom is the width of a scroll's bar, under the pointer too (look).
const BarRoom = 6

// MinSize implements fyne.Layout.
func (besideBar) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(BarRoom, 0)
}

// Layout implements fyne.Layout.
func (besideBar) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(size.SubtractWidthHeight(BarRoom, 0))
}

// Reveal brings an object within a scroll into sight, no farther than needed.
func Reveal(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s.Content).Y
	to := s.Offset
	to.Y = min(max(to.Y, top+o.Size().Height-s.Size().Height), top)
	if to != s.Offset {
		s.ScrollToOffset(to)
	}
}

package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Page shows things below each other, each as high as it needs to be at the width
// there is, and scrolls.
type Page struct {
	Scroll *container.Scroll
	stack  *fyne.Container
	height float32 // that the stack was laid out for last
}

// NewPage returns an empty page.
func NewPage() *Page {
	p := &Page{stack: Stacked()}
	p.Scroll = container.NewVScroll(container.New(besideBar{}, p.stack))
	return p
}

// Object returns what is shown of the page.
func (p *Page) Object() fyne.CanvasObject { return p.Scroll }

// Host returns the page as what fields stand in.
func (p *Page) Host() Host { return Host{Scroll: p.Scroll, Grown: p.Settle} }

// Add puts things at the end.
func (p *Page) Add(objects ...fyne.CanvasObject) {
	p.stack.Objects = append(p.stack.Objects, objects...)
}

// Settle makes room for what has changed its height.
func (p *Page) Settle() {
	changed := false
	// Words that have just come into sight know their height once they have their width.
	for range 3 {
		height := p.stack.MinSize().Height
		if height == p.height {
			break
		}
		p.stack.Layout.Layout(p.stack.Objects, p.stack.Size())
		p.height, changed = height, true
	}
	if changed {
		p.Scroll.Refresh()
	}
}

// Stacked puts things below each other at full width, each as high as it needs to
// be at that width.
func Stacked(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(pageStack{}, objects...)
}

// Group stacks things that belong together: it stands farther apart from what is
// below it than its parts do from each other.
func Group(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(pageStack{apart: true}, objects...)
}

// pageStack is a Stack with the theme's gap.
type pageStack struct {
	apart bool // a gap follows the last part too
}

func (p pageStack) stack() Stack {
	s := Stack{Gap: theme.Padding()}
	if p.apart {
		s.Foot = s.Gap
	}
	return s
}

// MinSize implements fyne.Layout.
func (p pageStack) MinSize(objects []fyne.CanvasObject) fyne.Size { return p.stack().MinSize(objects) }

// Layout implements fyne.Layout.
func (p pageStack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	p.stack().Layout(objects, size)
}

// Scrolling returns objects that scroll up and down together.
func Scrolling(objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.New(besideBar{}, container.NewVBox(objects...)))
}

// besideBar is the layout of what scrolls: it stays clear of the bar at its
// right.
type besideBar struct{}

// BarRoom is the width of a scroll bar, under the pointer too (look).
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

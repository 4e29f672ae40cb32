package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Page stacks things and scrolls.
type Page struct {
	Scroll *container.Scroll
	stack  *fyne.Container
	height float32 // of the stack when it was laid out last
}

// NewPage returns an empty page.
func NewPage() *Page {
	p := &Page{stack: Stacked()}
	p.Scroll = container.NewVScroll(BesideBar(p.stack))
	return p
}

// Host returns the page as what fields stand in.
func (p *Page) Host() Host { return Host{Scroll: p.Scroll, Grown: p.Settle} }

// Add puts things at the end.
func (p *Page) Add(objects ...fyne.CanvasObject) {
	p.stack.Objects = append(p.stack.Objects, objects...)
}

// Settle makes room for what has changed its height.
func (p *Page) Settle() {
	if height := p.stack.MinSize().Height; height != p.height {
		p.stack.Layout.Layout(p.stack.Objects, p.stack.Size())
		p.height = p.stack.MinSize().Height
		p.Scroll.Refresh()
	}
}

// Stacked returns things stacked as on a page.
func Stacked(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(pageStack{}, objects...)
}

// pageStack is the Stack of a page, with the theme's gap.
type pageStack struct{}

func (pageStack) stack() Stack { return Stack{Gap: theme.Padding(), Foot: theme.Padding()} }

// MinSize implements fyne.Layout.
func (p pageStack) MinSize(objects []fyne.CanvasObject) fyne.Size { return p.stack().MinSize(objects) }

// Layout implements fyne.Layout.
func (p pageStack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	p.stack().Layout(objects, size)
}

// BesideBar returns o in a container to scroll, clear of the scroll bar at its
// right.
func BesideBar(o fyne.CanvasObject) *fyne.Container { return container.New(besideBar{}, o) }

type besideBar struct{}

// barRoom is the width of a scroll bar, under the pointer too (look).
const barRoom = 6

// MinSize implements fyne.Layout.
func (besideBar) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(barRoom, 0)
}

// Layout implements fyne.Layout.
func (besideBar) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(size.SubtractWidthHeight(barRoom, 0))
}

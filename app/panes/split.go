// Package panes parts the window: two things side by side or one above the other, with a
// divider between them that can be dragged.
package panes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Edge is the side of a split that a pane stands at.
type Edge int

// The edges.
const (
	Left Edge = iota
	Right
	Below
)

// Thickness of a divider [px].
const Thickness = 5

// Split is a pane at one edge of the rest. The pane keeps its size while the rest takes
// what is left, until somebody drags the divider; a double click on the divider gives it
// its usual size again. Both get their least size as far as there is room, the rest
// before the pane. A folded pane takes no room, and its divider neither.
type Split struct {
	widget.BaseWidget
	edge       Edge
	pane, rest fyne.CanvasObject
	divider    *divider
	usual      func(whole float32) float32
	size       float32 // chosen by hand; 0 for the usual one
	folded     bool

	// Changed, if set, is called when somebody has given the pane another size.
	Changed func()
}

// New returns a split with a pane at an edge of the rest. usual says how large the pane is,
// of the whole [px], until somebody drags the divider.
func New(edge Edge, pane, rest fyne.CanvasObject, usual func(whole float32) float32) *Split {
	s := &Split{edge: edge, pane: pane, rest: rest, usual: usual}
	s.divider = newDivider(s)
	s.ExtendBaseWidget(s)
	return s
}

// Size at an edge that was chosen by hand [px]; 0 for the usual one.
func (s *Split) Chosen() float32 { return s.size }

// Choose gives the pane a size [px]; 0 the usual one.
func (s *Split) Choose(size float32) {
	if size = max(0, size); size != s.size {
		s.size = size
		s.Refresh()
	}
}

// Folded reports whether the pane is folded away.
func (s *Split) Folded() bool { return s.folded }

// Fold folds the pane away, or brings it back.
func (s *Split) Fold(on bool) {
	if on == s.folded {
		return
	}
	s.folded = on
	for _, o := range []fyne.CanvasObject{s.pane, s.divider} {
		if on {
			o.Hide()
		} else {
			o.Show()
		}
	}
	s.Refresh()
}

// along returns the extent that pane and rest share.
func (s *Split) along(size fyne.Size) float32 {
	if s.edge == Below {
		return size.Height
	}
	return size.Width
}

// room returns how large the pane is in a whole [px].
func (s *Split) room(whole float32) float32 {
	if s.folded {
		return 0
	}
	size := s.size
	if size == 0 {
		size = s.usual(whole)
	}
	most := whole - Thickness - s.along(s.rest.MinSize())
	return max(min(max(size, s.along(s.pane.MinSize())), most), 0)
}

// drag moves the divider.
func (s *Split) drag(by float32) {
	if s.edge != Left {
		by = -by
	}
	s.size = max(1, s.room(s.along(s.Size()))+by)
	s.size = max(1, s.room(s.along(s.Size()))) // as far as it goes
	s.Refresh()
}

// told passes on that the size has been changed by hand.
func (s *Split) told() {
	if s.Changed != nil {
		s.Changed()
	}
}

// reset gives the pane its usual size.
func (s *Split) reset() {
	s.Choose(0)
	s.told()
}

// MinSize implements fyne.CanvasObject.
func (s *Split) MinSize() fyne.Size {
	rest := s.rest.MinSize()
	if s.folded {
		return rest
	}
	pane := s.pane.MinSize()
	if s.edge == Below {
		return fyne.NewSize(max(pane.Width, rest.Width), pane.Height+Thickness+rest.Height)
	}
	return fyne.NewSize(pane.Width+Thickness+rest.Width, max(pane.Height, rest.Height))
}

// CreateRenderer implements fyne.Widget.
func (s *Split) CreateRenderer() fyne.WidgetRenderer { return &splitRenderer{s} }

type splitRenderer struct{ split *Split }

// Layout implements fyne.WidgetRenderer.
func (r *splitRenderer) Layout(size fyne.Size) {
	s := r.split
	whole := s.along(size)
	pane := s.room(whole)
	between := float32(Thickness)
	if s.folded {
		between = 0
	}
	rest := max(0, whole-pane-between)
	put := func(o fyne.CanvasObject, from, extent float32) {
		if s.edge == Below {
			o.Move(fyne.NewPos(0, from))
			o.Resize(fyne.NewSize(size.Width, extent))
			return
		}
		o.Move(fyne.NewPos(from, 0))
		o.Resize(fyne.NewSize(extent, size.Height))
	}
	if s.edge == Left {
		put(s.pane, 0, pane)
		put(s.divider, pane, between)
		put(s.rest, pane+between, rest)
		return
	}
	put(s.rest, 0, rest)
	put(s.divider, rest, between)
	put(s.pane, rest+between, pane)
}

// MinSize implements fyne.WidgetRenderer.
func (r *splitRenderer) MinSize() fyne.Size { return r.split.MinSize() }

// Refresh implements fyne.WidgetRenderer.
func (r *splitRenderer) Refresh() {
	r.Layout(r.split.Size())
	canvas.Refresh(r.split)
}

// Objects implements fyne.WidgetRenderer.
func (r *splitRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.split.rest, r.split.pane, r.split.divider}
}

// Destroy implements fyne.WidgetRenderer.
func (r *splitRenderer) Destroy() {}

// divider is the strip between pane and rest.
type divider struct {
	widget.BaseWidget
	split *Split
	strip *canvas.Rectangle
	hot   bool
}

func newDivider(s *Split) *divider {
	d := &divider{split: s, strip: canvas.NewRectangle(theme.Color(theme.ColorNameSeparator))}
	d.ExtendBaseWidget(d)
	return d
}

// CreateRenderer implements fyne.Widget.
func (d *divider) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(d.strip)
}

// MinSize implements fyne.CanvasObject.
func (d *divider) MinSize() fyne.Size { return fyne.NewSize(Thickness, Thickness) }

// Refresh implements fyne.CanvasObject.
func (d *divider) Refresh() {
	name := theme.ColorNameSeparator
	if d.hot {
		name = theme.ColorNamePrimary
	}
	d.strip.FillColor = theme.Color(name)
	d.strip.Refresh()
}

// Cursor implements desktop.Cursorable.
func (d *divider) Cursor() desktop.Cursor {
	if d.split.edge == Below {
		return desktop.VResizeCursor
	}
	return desktop.HResizeCursor
}

// MouseIn implements desktop.Hoverable.
func (d *divider) MouseIn(*desktop.MouseEvent) { d.heat(true) }

// MouseMoved implements desktop.Hoverable.
func (d *divider) MouseMoved(*desktop.MouseEvent) {}

// MouseOut implements desktop.Hoverable.
func (d *divider) MouseOut() { d.heat(false) }

func (d *divider) heat(on bool) {
	d.hot = on
	d.Refresh()
}

// Dragged implements fyne.Draggable.
func (d *divider) Dragged(e *fyne.DragEvent) {
	if d.split.edge == Below {
		d.split.drag(e.Dragged.DY)
	} else {
		d.split.drag(e.Dragged.DX)
	}
}

// DragEnd implements fyne.Draggable.
func (d *divider) DragEnd() { d.split.told() }

// Tapped implements fyne.Tappable, without which there is no double tap.
func (d *divider) Tapped(*fyne.PointEvent) {}

// DoubleTapped implements fyne.DoubleTappable.
func (d *divider) DoubleTapped(*fyne.PointEvent) { d.split.reset() }

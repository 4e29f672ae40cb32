package form

import (
	"math"
	"slices"

	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Point is a place in a Curve's chart, in the units shown.
type Point struct{ X, Y float64 }

// Plot is what a Curve shows, in the units shown.
type Plot struct {
	X, Y   string  // what the axes are, as in "rpm" and "torque, lb-ft"
	Line   []Point // from left to right
	Points []Point // of the line, by rising X, that can be moved; none for a line that is fixed
	Other  string  // what the second line is, on the same axes; empty for none
	Second []Point
	Mark   *Point // a place that the line is held against; nil for none
}

// Edits are what a person can do to the points of a Curve. Move, Insert and Delete
// say what speaks against it.
type Edits struct {
	Move   func(i int, to Point) []Fault
	Insert func(i int, at Point) []Fault // a point before the one at an index
	Delete func(i int) []Fault

	// A drag, of many moves, is one step to undo.
	Begin       func(i int)
	End, Cancel func()
}

// None stands for no point.
const None = -1

// Curve is a line of points in a small chart. A point is dragged between its
// neighbors, or moved by the arrow keys; a double click on the line adds one; Delete
// or the right mouse button takes one away.
type Curve struct {
	widget.BaseWidget
	attached
	get   func() Plot
	edits Edits
	sheet *sheet.Sheet

	plot     Plot
	frame    frame
	selected int // index of a point
	held     int // index of the point under the pressed mouse button
	dragged  bool
	grip     fyne.Position // from the pointer to the point held
	hovered  int
	focused  bool
	refused  bool // the last change that was tried
}

// NewCurve returns the chart of what get returns.
func NewCurve(get func() Plot, edits Edits) *Curve {
	c := &Curve{get: get, edits: edits, selected: None, held: None, hovered: None}
	c.sheet = sheet.New(c.paint)
	c.sheet.Bare()
	c.ExtendBaseWidget(c)
	return c
}

// Update shows the line as it is now. Its axes stay while a point is held.
func (c *Curve) Update() {
	c.plot = c.get()
	if n := len(c.plot.Points); max(c.selected, c.held, c.hovered) >= n {
		c.selected, c.held, c.hovered = None, None, None
	}
	if c.held == None {
		c.frame = newFrame(&c.plot)
	}
	c.sheet.Refresh()
}

// Selected returns the index of the point selected, or None.
func (c *Curve) Selected() int { return c.selected }

// Place returns where a point of the chart is drawn in the widget.
func (c *Curve) Place(p Point) fyne.Position { return c.frame.place(p, c.Size()) }

// curveHeight is the height of the chart [px].
const curveHeight = 160

// MinSize implements fyne.Widget.
func (c *Curve) MinSize() fyne.Size { return fyne.NewSize(0, curveHeight) }

// CreateRenderer draws the chart.
func (c *Curve) CreateRenderer() fyne.WidgetRenderer { return c.sheet.Renderer() }

// reach is how far from a point or the line the pointer may be [px].
const reach = 9

// at returns the index of the point nearest to a place, or None.
func (c *Curve) at(place fyne.Position) int {
	found, nearest := None, float64(reach)
	for i, p := range c.plot.Points {
		q := c.Place(p)
		if d := math.Hypot(float64(q.X-place.X), float64(q.Y-place.Y)); d <= nearest {
			found, nearest = i, d
		}
	}
	return found
}

// look sets what is selected, pointed at or held, and has it drawn.
func (c *Curve) look(what *int, i int) {
	if *what != i {
		*what = i
		c.sheet.Refresh()
	}
}

// do makes a change and shows what has become of the line.
func (c *Curve) do(change func() []Fault) (taken bool) {
	taken = c.try(c, change)
	c.Update()
	return taken
}

// move moves a point to a place between its neighbors, in whole grains of the chart.
func (c *Curve) move(i int, to Point) {
	gx, gy := c.frame.grains(c.Size())
	points := c.plot.Points
	low, high := c.frame.from.X, c.frame.to.X
	if i > 0 {
		low = points[i-1].X + gx
	}
	if i < len(points)-1 {
		high = points[i+1].X - gx
	}
	x := points[i].X
	if low <= high {
		x = min(max(snap(to.X, gx), low), high)
	}
	y := min(max(snap(to.Y, gy), 0), c.frame.to.Y)
	if to = (Point{x, y}); to != points[i] {
		c.do(func() []Fault { return c.edits.Move(i, to) })
	}
}

// insert adds a point on the line, and selects it.
func (c *Curve) insert(x float64) {
	points := c.plot.Points
	if len(points) == 0 {
		return
	}
	gx, _ := c.frame.grains(c.Size())
	x = snap(x, gx)
	i, found := slices.BinarySearchFunc(points, x, func(p Point, x float64) int {
		switch {
		case p.X < x:
			return -1
		case p.X > x:
			return 1
		}
		return 0
	})
	if !found && c.do(func() []Fault { return c.edits.Insert(i, Point{x, level(points, x)}) }) {
		c.look(&c.selected, i)
	}
}

// remove takes a point away, and selects the one before it.
func (c *Curve) remove(i int) {
	if c.do(func() []Fault { return c.edits.Delete(i) }) {
		c.look(&c.selected, min(max(i-1, 0), len(c.plot.Points)-1))
	}
}

// level returns the height of a line of points at x, level beyond its ends.
func level(points []Point, x float64) float64 {
	for i, p := range points {
		switch {
		case x > p.X:
			continue
		case i == 0:
			return p.Y
		}
		before := points[i-1]
		return before.Y + (x-before.X)/(p.X-before.X)*(p.Y-before.Y)
	}
	return points[len(points)-1].Y
}

// MouseDown implements desktop.Mouseable: it selects and holds the point under the
// pointer; the right button takes it away.
func (c *Curve) MouseDown(e *desktop.MouseEvent) {
	driver := fyne.CurrentApp().Driver()
	before := driver.AbsolutePositionForObject(c)
	if canvas := driver.CanvasForObject(c); canvas != nil {
		canvas.Focus(c)
	}
	// The focus may have scrolled the chart into sight, away from under the pointer.
	moved := driver.AbsolutePositionForObject(c).Subtract(before)
	i := c.at(e.Position)
	switch e.Button {
	case desktop.MouseButtonPrimary:
		c.look(&c.selected, i)
		if c.held = i; i != None {
			c.grip = c.Place(c.plot.Points[i]).Subtract(e.Position).Add(moved)
		}
	case desktop.MouseButtonSecondary:
		if i != None && c.held == None {
			c.remove(i)
		}
	}
}

// MouseUp implements desktop.Mouseable.
func (c *Curve) MouseUp(*desktop.MouseEvent) {
	if !c.dragged {
		c.release()
	}
}

// Dragged implements fyne.Draggable: it moves the point held.
func (c *Curve) Dragged(e *fyne.DragEvent) {
	if c.held == None {
		return
	}
	if !c.dragged {
		c.dragged = true
		c.edits.Begin(c.held)
	}
	c.move(c.held, c.frame.point(e.Position.Add(c.grip), c.Size()))
}

// DragEnd implements fyne.Draggable.
func (c *Curve) DragEnd() {
	if c.dragged {
		c.dragged = false
		c.edits.End()
	}
	c.release()
}

// release lets go of the point held; the axes follow the line again.
func (c *Curve) release() {
	c.held, c.dragged = None, false
	c.Update()
}

// DoubleTapped implements fyne.DoubleTappable: it adds a point to the line.
func (c *Curve) DoubleTapped(e *fyne.PointEvent) {
	p := c.frame.point(e.Position, c.Size())
	if len(c.plot.Points) == 0 || c.at(e.Position) != None || p.X < c.frame.from.X || p.X > c.frame.to.X {
		return
	}
	on := c.Place(Point{p.X, level(c.plot.Points, p.X)})
	if math.Abs(float64(on.Y-e.Position.Y)) <= reach {
		c.insert(p.X)
	}
}

// MouseIn shows the help of the row.
func (c *Curve) MouseIn(e *desktop.MouseEvent) {
	c.point(nil)
	c.MouseMoved(e)
}

// MouseMoved marks the point under the pointer.
func (c *Curve) MouseMoved(e *desktop.MouseEvent) { c.look(&c.hovered, c.at(e.Position)) }

// MouseOut takes mark and help away.
func (c *Curve) MouseOut() {
	c.look(&c.hovered, None)
	c.unpoint()
}

// Cursor implements desktop.Cursorable.
func (c *Curve) Cursor() desktop.Cursor {
	if c.hovered != None {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// FocusGained shows the help of the row.
func (c *Curve) FocusGained() {
	c.focused = true
	c.attend(nil, c)
	c.sheet.Refresh()
}

// FocusLost takes the help away.
func (c *Curve) FocusLost() {
	c.focused = false
	c.leave()
	c.sheet.Refresh()
}

// TypedRune implements fyne.Focusable.
func (c *Curve) TypedRune(rune) {}

// TypedKey implements fyne.Focusable: arrows move the point selected, Page Up and
// Page Down select another, Insert adds one after it and Delete takes it away; Escape
// ends a drag where it began.
func (c *Curve) TypedKey(e *fyne.KeyEvent) {
	points, i := c.plot.Points, c.selected
	switch {
	case c.dragged:
		if e.Name == fyne.KeyEscape {
			c.edits.Cancel()
			c.release()
		}
		return
	case len(points) == 0:
		return
	}
	switch e.Name {
	case fyne.KeyEscape:
		c.look(&c.selected, None)
		return
	case fyne.KeyPageUp:
		c.look(&c.selected, max(i-1, 0))
		return
	case fyne.KeyPageDown:
		c.look(&c.selected, min(i+1, len(points)-1))
		return
	case fyne.KeyHome:
		c.look(&c.selected, 0)
		return
	case fyne.KeyEnd:
		c.look(&c.selected, len(points)-1)
		return
	}
	if i == None {
		return
	}
	p := points[i]
	gx, gy := c.frame.grains(c.Size())
	switch e.Name {
	case fyne.KeyLeft:
		c.move(i, Point{p.X - gx, p.Y})
	case fyne.KeyRight:
		c.move(i, Point{p.X + gx, p.Y})
	case fyne.KeyUp:
		c.move(i, Point{p.X, p.Y + gy})
	case fyne.KeyDown:
		c.move(i, Point{p.X, p.Y - gy})
	case fyne.KeyInsert:
		if i < len(points)-1 {
			c.insert((p.X + points[i+1].X) / 2)
		}
	case fyne.KeyDelete, fyne.KeyBackspace:
		c.remove(i)
	}
}

// setRefused implements origin: a refused point is back where it was, so there is
// nothing to mark.
func (c *Curve) setRefused(refused bool) { c.refused = refused }

// Pending implements origin: the reason why a change was refused stays as long as the
// chart has the focus and the line does not change.
func (c *Curve) Pending() bool {
	return c.refused && c.focused && slices.Equal(c.plot.Points, c.get().Points)
}

package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// How far labels keep off what they may not cover [px].
const (
	discRoom = 3
	lineRoom = 2
	boxRoom  = 4
	moreRoom = 6 // where they have the choice, so that they can stay there
)

// keep is what a label keeps off.
type keep int

// The first that there is a place for counts.
const (
	roomy    keep = iota // all, with more room
	allClear             // all
	tight                // all but bars, forces and holes that no bar is in
)

// obstacles are what the labels of a picture may not cover.
type obstacles struct {
	room  Box // the picture without its edges
	discs []disc
	lines []segment
	boxes []Box // of legend and tags
}

// disc is a sign that stands at a point.
type disc struct {
	at     r2.Vec
	radius float64
	hole   bool // one that no bar is in
}

// segment is a straight part of a bar or a force.
type segment struct {
	a, b r2.Vec
	half float64 // of its thickness [px]
}

// gather lists what is in a picture.
func (o *obstacles) gather(p *Picture) {
	o.room = Box{edge, edge, p.View.Width - edge, p.View.Height - edge}
	if p.View.Plane.measured() { // the grid's numbers stand there
		o.room.Left, o.room.Bottom = edge+numberRoom, p.View.Height-edge-small-2*platePad
	}
	o.discs, o.lines, o.boxes = o.discs[:0], o.lines[:0], o.boxes[:0]
	for i := range p.Drawn {
		o.take(&p.Drawn[i])
	}
	if p.dots() != nil {
		o.boxes = append(o.boxes, legendBox(p.View))
	}
	for i := range p.Tags {
		if p.Tags[i].Fixed {
			o.boxes = append(o.boxes, p.Tags[i].box)
		}
	}
}

// take adds what an item has that may not be covered.
func (o *obstacles) take(d *Drawn) {
	if d.ID.Ghost > 0 && !d.Clear || d.Shape == Label || d.Shape == Swarm || len(d.Points) == 0 {
		return
	}
	at := len(d.Points) == 1
	switch k := d.ID.Kind; {
	case at && (d.Clear || k == Pivot || k == Hole || k == InstantCenter || k == CG):
		o.discs = append(o.discs, disc{d.Points[0], d.Radius, k == Hole})
	case !at && (d.Clear || d.Shape == Force || d.Pick > 0 && (k == UpperBar || k == LowerBar)):
		for i := 1; i < len(d.Points); i++ {
			o.lines = append(o.lines, segment{d.Points[i-1], d.Points[i], d.Thick / 2})
		}
	}
}

// free reports whether a box covers nothing that it may not.
func (o *obstacles) free(b Box, k keep) bool {
	if !b.Within(o.room) || slices.ContainsFunc(o.boxes, b.Grown(boxRoom).Meets) {
		return false
	}
	more := 0.0
	if k == roomy {
		more = moreRoom
	}
	for i := range o.discs {
		if d := &o.discs[i]; (k != tight || !d.hole) && b.distance(d.at) < d.radius+discRoom+more {
			return false
		}
	}
	if k != tight {
		for i := range o.lines {
			if s := &o.lines[i]; b.Grown(s.half+lineRoom+more).Crosses(s.a, s.b) {
				return false
			}
		}
	}
	return true
}

// inTheWay returns how much a leader from a box to a thing crosses.
func (o *obstacles) inTheWay(from, to r2.Vec) float64 {
	const discCost, lineCost = 30, 25
	cost := 0.0
	for i := range o.discs {
		if d := &o.discs[i]; r2.Norm(r2.Sub(d.at, to)) > d.radius+1 && toSegment(d.at, from, to) < d.radius {
			cost += discCost
		}
	}
	for i := range o.lines {
		if s := &o.lines[i]; toSegment(to, s.a, s.b) > s.half+1 && cross(from, to, s.a, s.b) {
			cost += lineCost
		}
	}
	return cost
}

// radiusAt returns the radius of the sign at a point [px].
func (o *obstacles) radiusAt(p r2.Vec) float64 {
	for i := range o.discs {
		if d := &o.discs[i]; r2.Norm(r2.Sub(d.at, p)) < 1 {
			return d.radius
		}
	}
	return 0
}

// inkCell is the size of the cells that a picture's ink is counted in [px].
const inkCell = 8.0

// What is drawn counts 1 a cell, but:
const (
	faintInk = 0.3 // what cannot be picked
	dotInk   = 6.0 // a dot, which is to be clicked
)

// ink is how much is drawn where in a picture, of what may be covered.
type ink struct {
	columns, rows int
	sum           []float64 // in all cells above and to the left of a cell
	view          Box
}

// count counts what is drawn in a picture.
func (k *ink) count(p *Picture) {
	k.view = Box{0, 0, p.View.Width, p.View.Height}
	k.columns, k.rows = int(p.View.Width/inkCell)+2, int(p.View.Height/inkCell)+2
	n := k.columns * k.rows
	k.sum = slices.Grow(k.sum[:0], n)[:n]
	clear(k.sum)
	for i := range p.Drawn {
		k.take(&p.Drawn[i])
	}
	for y := 1; y < k.rows; y++ {
		row := 0.0
		for x := 1; x < k.columns; x++ {
			row += k.sum[y*k.columns+x]
			k.sum[y*k.columns+x] = row + k.sum[(y-1)*k.columns+x]
		}
	}
}

// take counts an item.
func (k *ink) take(d *Drawn) {
	if d.Shape == Label || len(d.Points) == 0 {
		return
	}
	weight := 1.0
	if d.Pick == 0 {
		weight = faintInk
	}
	switch last := len(d.Points) - 1; {
	case d.Shape == Swarm:
		for _, p := range d.Points {
			if k.view.Holds(p) {
				k.add(p, dotInk)
			}
		}
	case d.Shape == Disc && d.Item.Radius > 0:
		k.circle(d.Points[0], d.Radius, weight)
	case last == 0:
		if k.view.Holds(d.Points[0]) {
			k.add(d.Points[0], weight)
		}
	default:
		for i := range last {
			k.line(d.Points[i], d.Points[i+1], weight)
		}
		if d.Shape == Area {
			k.line(d.Points[last], d.Points[0], weight)
		}
	}
}

// add counts ink at a point of the picture.
func (k *ink) add(p r2.Vec, weight float64) {
	k.sum[(int(p.Y/inkCell)+1)*k.columns+int(p.X/inkCell)+1] += weight
}

// line counts a line, about its weight a cell.
func (k *ink) line(a, b r2.Vec, weight float64) {
	a, b, ok := k.view.clip(a, b)
	if !ok {
		return
	}
	steps := math.Ceil(r2.Norm(r2.Sub(b, a)) / inkCell)
	for i := 0.5; i < steps; i++ {
		k.add(r2.Add(a, r2.Scale(i/steps, r2.Sub(b, a))), weight)
	}
}

// circle counts a circle as a polygon.
func (k *ink) circle(at r2.Vec, radius, weight float64) {
	const corners = 24
	from := r2.Vec{X: at.X + radius, Y: at.Y}
	for i := 1; i <= corners; i++ {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		to := r2.Vec{X: at.X + radius*cos, Y: at.Y + radius*sin}
		k.line(from, to, weight)
		from = to
	}
}

// under returns how much ink a box covers that is inside the picture.
func (k *ink) under(b Box) float64 {
	cell := func(x float64, most int) int { return max(0, min(most-1, int(x/inkCell))) }
	left, top := cell(b.Left, k.columns), cell(b.Top, k.rows)
	right, bottom := cell(b.Right, k.columns-1)+1, cell(b.Bottom, k.rows-1)+1
	return k.sum[bottom*k.columns+right] - k.sum[top*k.columns+right] - k.sum[bottom*k.columns+left] + k.sum[top*k.columns+left]
}

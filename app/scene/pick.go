package scene

import (
	"math"
	"slices"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// Drawn is an item on screen.
type Drawn struct {
	*Item
	Points []r2.Vec // [px]
	Radius float64  // of what stands at a point [px]
	Thick  float64  // of a Path [px]
}

// Picture is a projected scene: what is drawn and picked from.
type Picture struct {
	View    View
	Drawn   []Drawn
	Tags    []Tag
	Labels  []Placed // the labels that found a place, first the foremost
	LeftOut []ID     // of those that found none
	points  []r2.Vec // of all items, after one another [px]
	layout  layout
}

// Project places the items in a view, and the labels among them, near where they
// were in the picture before. It reuses the picture's memory and refers to the
// items, which must outlive it.
func (p *Picture) Project(items []Item, v View) {
	p.View = v
	p.Drawn, p.Tags = p.Drawn[:0], p.Tags[:0]
	used := 0
	for i := range items {
		used += len(items[i].Points)
	}
	p.points = slices.Grow(p.points[:0], used)[:used]
	used = 0
	for i := range items {
		item := &items[i]
		points := p.points[used : used+len(item.Points)]
		used += len(item.Points)
		for j, q := range item.Points {
			points[j] = r2.Add(v.Screen(q), item.Shift)
		}
		radius := item.Pixels
		if item.Radius > 0 {
			radius = item.Radius * v.Scale
		}
		p.Drawn = append(p.Drawn, Drawn{Item: item, Points: points, Radius: radius, Thick: item.Width + item.Girth*v.Scale})
	}
	p.arrange()
}

// Pick returns what stands under a screen point: of the items within their
// picking distance what can be dragged first, the target's edges after holes,
// then dots, then the smallest kind of thing (points, then lines, then areas),
// the nearest of those, and the topmost of equals. Ghosts come after all but
// areas. A label stands for its thing before all but what can be dragged.
func (p *Picture) Pick(at r2.Vec) ID { return p.pick(at, true) }

// PickBehind returns what stands under a screen point behind the dots.
func (p *Picture) PickBehind(at r2.Vec) ID { return p.pick(at, false) }

func (p *Picture) pick(at r2.Vec, dots bool) ID {
	best, bestClass, bestDistance := ID{}, math.MaxInt, math.Inf(1)
	for i := len(p.Drawn) - 1; i >= 0; i-- {
		d := &p.Drawn[i]
		if d.Pick == 0 || d.Shape == Swarm && !dots {
			continue
		}
		var distance float64
		class, id := dotClass, d.ID
		if d.Shape == Swarm {
			distance, id.Index = d.nearest(at)
		} else {
			distance, class = d.distance(at)
		}
		if distance > d.Pick {
			continue
		}
		if class < bestClass || class == bestClass && distance < bestDistance-1e-9 {
			best, bestClass, bestDistance = id, class, distance
		}
	}
	if dots && bestClass > handleClass {
		for i := range p.Labels {
			// Words on a dot are gone once it is pointed at.
			if l := &p.Labels[i]; l.ID.Kind != Combination && l.Box.Holds(at) {
				return l.ID
			}
		}
	}
	return best
}

// Classes of picking, first come first.
const (
	handleClass = iota
	edgeClass   // of the target
	dotClass
	pointClass
	barClass
	lineClass
	ghostClass
	areaClass
)

// distance returns how far a screen point is from what is drawn [px], and the
// item's class.
func (d *Drawn) distance(at r2.Vec) (float64, int) {
	distance, class := d.reach(at)
	if d.ID.Ghost > 0 {
		return distance, ghostClass
	}
	switch d.ID.Kind {
	case Pivot, Hole:
		return distance, handleClass
	case TargetBox:
		switch class {
		case pointClass:
			return distance, handleClass
		case lineClass:
			return distance, edgeClass
		}
	}
	return distance, class
}

// reach returns how far a screen point is from what is drawn [px], and the
// class of its shape.
func (d *Drawn) reach(at r2.Vec) (float64, int) {
	switch {
	case d.Shape == Disc && d.Item.Radius > 0:
		return math.Max(0, r2.Norm(r2.Sub(at, d.Points[0]))-d.Radius), areaClass
	case d.Shape == Disc || d.Shape == Quarter:
		return r2.Norm(r2.Sub(at, d.Points[0])), pointClass
	case d.Shape == Area:
		if inside(d.Points, at) {
			return 0, areaClass
		}
		return math.Inf(1), areaClass
	case d.Shape == Path || d.Shape == Force:
		nearest := math.Inf(1)
		for i := 1; i < len(d.Points); i++ {
			nearest = math.Min(nearest, toSegment(at, d.Points[i-1], d.Points[i]))
		}
		class := lineClass
		if d.ID.Kind == UpperBar || d.ID.Kind == LowerBar {
			class = barClass
		}
		return math.Max(0, nearest-d.Thick/2), class
	}
	return math.Inf(1), areaClass
}

// toSegment is the distance from p to the segment ab.
func toSegment(p, a, b r2.Vec) float64 {
	ab := r2.Sub(b, a)
	t := 0.0
	if n := r2.Norm2(ab); n > 0 {
		t = math.Max(0, math.Min(1, r2.Dot(r2.Sub(p, a), ab)/n))
	}
	return r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(t, ab))))
}

// inside reports whether p lies in a polygon (even-odd rule).
func inside(polygon []r2.Vec, p r2.Vec) bool {
	in := false
	for i, j := 0, len(polygon)-1; i < len(polygon); j, i = i, i+1 {
		a, b := polygon[i], polygon[j]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < (b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y)+a.X {
			in = !in
		}
	}
	return in
}

// Find returns where an item stands on screen: its first point.
func (p *Picture) Find(id ID) (r2.Vec, bool) {
	for i := range p.Drawn {
		if d := &p.Drawn[i]; d.ID == id && d.Pick > 0 && d.Shape != Label {
			return p.Drawn[i].Points[0], true
		}
	}
	return r2.Vec{}, false
}

// Pivot returns where the pivot of a row stands on screen.
func (p *Picture) Pivot(row car.Row) (r2.Vec, bool) {
	for i := range p.Drawn {
		if d := &p.Drawn[i]; d.ID.Kind == Pivot && d.ID.Row == row && d.ID.Ghost == 0 {
			return d.Points[0], true
		}
	}
	return r2.Vec{}, false
}

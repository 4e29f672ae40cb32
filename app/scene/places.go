package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Places that are tried around a label's point.
var (
	rings = [...]float64{6, 10, 14, 18, 24, 32, 42, 54, 70, 92, 128, 172, 224, 290}
	ways  = func() (ways [16]r2.Vec) {
		for i := range ways {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(ways)))
			ways[i] = r2.Vec{X: cos, Y: -sin}
		}
		return ways
	}()
)

// dear is what a place with room around costs that one without is looked for.
const dear = 60.0

// secondaryReach is how far words for reference go from what they belong to [px].
const secondaryReach = 64.0

// search finds the best place for a label of a size, and reports whether there is one.
func (l *layout) search(p *Picture, label *Placed, m *memory, size r2.Vec) bool {
	for _, k := range [...]keep{roomy, allClear, tight} {
		b, cost := l.best(p, label, size, k)
		if math.IsInf(cost, 1) && k != roomy && label.Rank < Secondary {
			b, cost = l.nook(p, label, size, k)
		}
		if k == roomy && cost > dear {
			// Rather close to something than far from its thing.
			if near, less := l.best(p, label, size, allClear); less+dear < cost {
				b, cost, k = near, less, allClear
			}
		}
		if !math.IsInf(cost, 1) {
			label.Box, m.keep = b, k
			return true
		}
	}
	return false
}

// best returns the box at least cost of those that a label fits into, and infinity
// where it fits into none: of boxes around its point and then all over the picture.
func (l *layout) best(p *Picture, label *Placed, size r2.Vec, k keep) (best Box, least float64) {
	least = math.Inf(1)
	try := func(b Box) {
		b = whole(b)
		if b.distance(label.Point) >= least || !l.fits(p, label, b, k) {
			return
		}
		if cost := l.cost(p, label, b); cost < least {
			best, least = b, cost
		}
	}
	for _, reach := range rings {
		if label.Rank >= Secondary && reach > secondaryReach {
			return best, least
		}
		for _, way := range ways {
			// The box's nearest point is that far away.
			out := r2.Vec{X: reach*way.X + bounded(way.X)*size.X/2, Y: reach*way.Y + bounded(way.Y)*size.Y/2}
			middle := r2.Add(label.Point, out)
			try(Box{middle.X - size.X/2, middle.Y - size.Y/2, middle.X + size.X/2, middle.Y + size.Y/2})
		}
	}
	room := l.obstacles.room
	for y := room.Top; y+size.Y <= room.Bottom; y += size.Y {
		for x := room.Left; x+size.X <= room.Right; x += size.X / 3 {
			try(Box{x, y, x + size.X, y + size.Y})
		}
	}
	return best, least
}

// nook looks closely for a place that is just large enough, as best does.
func (l *layout) nook(p *Picture, label *Placed, size r2.Vec, k keep) (best Box, least float64) {
	const aside, above, stepX, stepY = 300, 150, 8, 5 // [px]
	least = math.Inf(1)
	near := Box{label.Point.X - aside, label.Point.Y - above, label.Point.X + aside, label.Point.Y + above}
	near.Left, near.Top = math.Max(near.Left, l.obstacles.room.Left), math.Max(near.Top, l.obstacles.room.Top)
	for y := near.Top; y < near.Bottom; y += stepY {
		for x := near.Left; x < near.Right; x += stepX {
			if b := whole(Box{x, y, x + size.X, y + size.Y}); l.fits(p, label, b, k) {
				if cost := l.cost(p, label, b); cost < least {
					best, least = b, cost
				}
			}
		}
	}
	return best, least
}

// bounded is 1 or −1 for what points more that way than across, and less between.
func bounded(x float64) float64 { return math.Max(-1, math.Min(1, 1.5*x)) }

// cost says how badly a label would stand in a box, in pixels of distance from its
// thing that are as bad.
func (l *layout) cost(p *Picture, label *Placed, b Box) float64 {
	const (
		wrongWay    = 22.0 // on the other side of its thing than it stands best
		perInk      = 2.0  // of what it covers
		overLeaders = 60.0 // a leader crosses another one
		overLater   = 40.0 // it stands where a later label stood
	)
	if !l.counted {
		l.ink.count(p)
		l.counted = true
	}
	cost := b.distance(label.Point) + perInk*l.ink.under(b)
	if way := r2.Sub(b.middle(), label.Point); label.Beside != (r2.Vec{}) && way != (r2.Vec{}) {
		way.Y = -way.Y
		cost += wrongWay * (1 - r2.Cos(way, label.Beside))
	}
	if leader, _ := l.leader(p, b, label.Point); leader[0] != leader[1] {
		cost += l.obstacles.inTheWay(leader[0], label.Point)
		for i := range p.Labels {
			if o := &p.Labels[i]; cross(leader[0], leader[1], o.Leader[0], o.Leader[1]) {
				cost += overLeaders
			}
		}
	}
	for i := range l.before {
		if m := &l.before[i]; m.id != label.ID && !slices.ContainsFunc(l.now, func(n memory) bool { return n.id == m.id }) && b.Meets(m.box) {
			cost += overLater
		}
	}
	return cost
}

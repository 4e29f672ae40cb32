package parts

import (
	"cmp"
	"math"
	"slices"

	"bowline/app/scene"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Builder lists a car's parts for a view. It keeps its memory from one picture to the next;
// the zero value is ready.
type Builder struct {
	car    *car.Car
	stance Stance
	plane  scene.Plane
	eye    r3.Vec // toward it
	list   *scene.List
	layer  []placed // to be sorted
	far    r2.Vec   // how far the left-hand bars are moved on screen [px]
	corner []r3.Vec
	seen   []seen
}

// placed is an item with how near the eye it is [m].
type placed struct {
	near float64
	item scene.Item
}

// Start begins a picture of a car in a stance on a plane, which goes to a list.
func (b *Builder) Start(list *scene.List, c *car.Car, s Stance, plane scene.Plane) {
	b.car, b.stance, b.plane, b.list = c, s, plane, list
	b.eye = plane.Eye()
	b.layer, b.far = b.layer[:0], r2.Vec{}
}

// Part moves the left-hand bars on screen, right and down [px], so that both are seen where one
// would cover the other.
func (b *Builder) Part(far r2.Vec) { b.far = far }

// Widths on screen [px].
const (
	thin = 1.0
	line = 1.6
)

// add puts an item among those of the layer, as near the eye as a point is.
func (b *Builder) add(at r3.Vec, i scene.Item) {
	b.layer = append(b.layer, placed{r3.Dot(at, b.eye), i})
}

// Flush lists the layer from the back to the front, and begins the next one. What is as near
// as another keeps its order.
func (b *Builder) Flush() {
	slices.SortStableFunc(b.layer, func(x, y placed) int { return cmp.Compare(x.near, y.near) })
	for i := range b.layer {
		b.list.Add(b.layer[i].item)
	}
	b.layer = b.layer[:0]
}

// chassis places a point of the chassis frame, x forward and z up, y to the left.
func (b *Builder) chassis(x, y, z float64) r3.Vec {
	return b.stance.Chassis.At(r3.Vec{X: x, Y: y, Z: z})
}

// axle places a point from the middle of the axle centerline.
func (b *Builder) axle(x, y, z float64) r3.Vec {
	return b.stance.Axle.At(r3.Vec{X: x, Y: y, Z: z})
}

// tube adds a round bar between two points.
func (b *Builder) tube(id scene.ID, from, to r3.Vec, girth float64, fill, edge scene.Color, pick float64) {
	b.add(middle(from, to), scene.Item{ID: id, Points: b.list.Points(from, to), Girth: girth, Stroke: fill, Edge: edge, Pick: pick})
}

// pipe is a tube of the frame.
func (b *Builder) pipe(girth float64, through ...r3.Vec) {
	for i := 1; i < len(through); i++ {
		b.add(middle(through[i-1], through[i]), scene.Item{ID: scene.ID{Kind: scene.FrameTube}, Points: b.list.Points(through[i-1], through[i]), Girth: girth, Stroke: scene.Frame, Edge: scene.FrameEdge})
	}
}

// middle is midway between two points.
func middle(p, q r3.Vec) r3.Vec { return r3.Scale(0.5, r3.Add(p, q)) }

// along is a part of the way from p to q.
func along(p, q r3.Vec, part float64) r3.Vec { return r3.Add(p, r3.Scale(part, r3.Sub(q, p))) }

// ringPoints are the corners that a circle is drawn with.
const ringPoints = 64

// ring appends a circle's corners about an axis to corner.
func (b *Builder) ring(center, axis r3.Vec, radius float64) {
	u := r3.Cross(axis, r3.Vec{Z: 1})
	if r3.Norm(u) < 1e-9 {
		u = r3.Vec{X: 1}
	}
	u = r3.Unit(u)
	w := r3.Cross(u, axis)
	for i := range ringPoints {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / ringPoints)
		b.corner = append(b.corner, r3.Add(center, r3.Add(r3.Scale(radius*cos, u), r3.Scale(radius*sin, w))))
	}
}

// circle keeps the corners of a circle about an axis.
func (b *Builder) circle(center, axis r3.Vec, radius float64) []r3.Vec {
	b.corner = b.corner[:0]
	b.ring(center, axis, radius)
	return b.list.Points(b.corner...)
}

// seen is a corner as it falls on the plane.
type seen struct {
	at   r2.Vec
	from r3.Vec
}

// outline keeps the corners that bound what is seen of the convex body between those in
// corner, counterclockwise (Andrew's monotone chain).
func (b *Builder) outline() []r3.Vec {
	b.seen = b.seen[:0]
	for _, q := range b.corner {
		b.seen = append(b.seen, seen{b.plane.On(q), q})
	}
	slices.SortFunc(b.seen, func(p, q seen) int { return cmp.Or(cmp.Compare(p.at.X, q.at.X), cmp.Compare(p.at.Y, q.at.Y)) })
	hull := b.corner[:0]
	var flat [8 * ringPoints]r2.Vec
	n := 0
	chain := func(at func(int) seen) {
		start := n
		for i := range b.seen {
			p := at(i)
			for n >= start+2 && r2.Cross(r2.Sub(flat[n-1], flat[n-2]), r2.Sub(p.at, flat[n-1])) <= 0 {
				n, hull = n-1, hull[:len(hull)-1]
			}
			if n == len(flat) {
				break
			}
			flat[n], hull, n = p.at, append(hull, p.from), n+1
		}
		n, hull = n-1, hull[:len(hull)-1]
	}
	chain(func(i int) seen { return b.seen[i] })
	chain(func(i int) seen { return b.seen[len(b.seen)-1-i] })
	return b.list.Points(hull...)
}

// sideOf is the side of the car that a part on one is listed with.
func sideOf(side int) scene.Side {
	return [...]scene.Side{launch.Left: scene.Left, launch.Right: scene.Right}[side]
}

const inch = units.Inch

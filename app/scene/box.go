package scene

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Box is a rectangle on screen [px].
type Box struct{ Left, Top, Right, Bottom float64 }

// Meets reports whether two boxes overlap.
func (b Box) Meets(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Top < c.Bottom && c.Top < b.Bottom
}

// Within reports whether the box is inside another.
func (b Box) Within(c Box) bool {
	return b.Left >= c.Left && b.Right <= c.Right && b.Top >= c.Top && b.Bottom <= c.Bottom
}

// Holds reports whether a point is in the box.
func (b Box) Holds(p r2.Vec) bool {
	return p.X > b.Left && p.X < b.Right && p.Y > b.Top && p.Y < b.Bottom
}

// Grown returns the box with a margin around it [px].
func (b Box) Grown(d float64) Box { return Box{b.Left - d, b.Top - d, b.Right + d, b.Bottom + d} }

// moved returns the box moved right and down.
func (b Box) moved(d r2.Vec) Box {
	return Box{b.Left + d.X, b.Top + d.Y, b.Right + d.X, b.Bottom + d.Y}
}

// brought returns the box moved into another by the shortest way.
func (b Box) brought(into Box) Box {
	d := r2.Vec{
		X: math.Max(math.Min(0, into.Right-b.Right), into.Left-b.Left),
		Y: math.Max(math.Min(0, into.Bottom-b.Bottom), into.Top-b.Top),
	}
	return b.moved(d)
}

// middle returns the box's middle.
func (b Box) middle() r2.Vec { return r2.Vec{X: (b.Left + b.Right) / 2, Y: (b.Top + b.Bottom) / 2} }

// nearest returns the point of the box nearest to p.
func (b Box) nearest(p r2.Vec) r2.Vec {
	return r2.Vec{X: math.Max(b.Left, math.Min(b.Right, p.X)), Y: math.Max(b.Top, math.Min(b.Bottom, p.Y))}
}

// distance returns how far p is from the box [px].
func (b Box) distance(p r2.Vec) float64 { return r2.Norm(r2.Sub(p, b.nearest(p))) }

// Crosses reports whether the segment from p to q runs through the box.
func (b Box) Crosses(p, q r2.Vec) bool {
	_, _, ok := b.clip(p, q)
	return ok
}

// clip returns the part of the segment from p to q that is in the box, and false
// for none (Liang and Barsky's method).
func (b Box) clip(p, q r2.Vec) (from, to r2.Vec, ok bool) {
	d := r2.Sub(q, p)
	first, last := 0.0, 1.0
	for _, edge := range [...][2]float64{{-d.X, p.X - b.Left}, {d.X, b.Right - p.X}, {-d.Y, p.Y - b.Top}, {d.Y, b.Bottom - p.Y}} {
		switch rate, room := edge[0], edge[1]; {
		case rate == 0 && room <= 0:
			return p, q, false
		case rate < 0:
			first = math.Max(first, room/rate)
		case rate > 0:
			last = math.Min(last, room/rate)
		}
	}
	if first >= last {
		return p, q, false
	}
	return r2.Add(p, r2.Scale(first, d)), r2.Add(p, r2.Scale(last, d)), true
}

// cross reports whether the segments ab and cd cross.
func cross(a, b, c, d r2.Vec) bool {
	return (r2.Cross(r2.Sub(b, a), r2.Sub(c, a)) > 0) != (r2.Cross(r2.Sub(b, a), r2.Sub(d, a)) > 0) &&
		(r2.Cross(r2.Sub(d, c), r2.Sub(a, c)) > 0) != (r2.Cross(r2.Sub(d, c), r2.Sub(b, c)) > 0)
}

package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// path is the curve of the positions of the axle assembly at which both bars have
// their lengths while one quantity, its parameter, changes: the rear travel, or
// at ride height the bars' lengths. A point of it has as X the axle's shift, as
// Y the parameter and as Z the housing's turn times the linkage's scale, all in
// meters; ride height with the linkage's own bars is the origin.
type path struct {
	*Linkage
	rise   float64    // of the axle for a unit of the parameter [1]
	growth [2]float64 // of the bars for a unit of the parameter [1]
}

// overTravel is the path on which the bars keep their lengths; its parameter is
// the rear travel.
func (l *Linkage) overTravel() path { return path{Linkage: l, rise: 1} }

// overLengths is the path on which the axle keeps its height while the bars
// grow at the given rates.
func (l *Linkage) overLengths(byUpper, byLower float64) path {
	return path{Linkage: l, growth: [2]float64{byUpper, byLower}}
}

// place is a point of a path.
type place struct {
	at        r3.Vec  // [m]
	tangent   r3.Vec  // unit vector along the path, the way on which the parameter grows at ride height
	curvature r3.Vec  // derivative of tangent along the path [1/m]
	sine      float64 // of the angle between the gradients of the bars' misses; 0 at a change point
}

// climb is the growth of the parameter along the path [1]. It is positive at
// ride height and zero where the path turns back, at the end of the travel;
// beyond that the bars are assembled in the other of two ways.
func (p *place) climb() float64 { return p.tangent.Y }

// hold tells how firmly the bars hold the axle at a given parameter [1]: it is
// the triple product of the unit gradients of both misses with the parameter's
// direction. It is zero where the path turns back and at a change point.
func (p *place) hold() float64 { return p.sine * p.tangent.Y }

// ahead is the parabola with the path's tangent and curvature in p, at a distance
// along it.
func (p *place) ahead(distance float64) r3.Vec {
	return r3.Add(p.at, r3.Add(r3.Scale(distance, p.tangent), r3.Scale(distance*distance/2, p.curvature)))
}

// distanceTo returns the distance along that parabola to a parameter; it is NaN where
// the parabola turns back before.
func (p *place) distanceTo(parameter float64) float64 {
	d := parameter - p.at.Y
	return 2 * d / (p.tangent.Y + math.Sqrt(p.tangent.Y*p.tangent.Y+2*p.curvature.Y*d))
}

// measurement is both bars measured in a position.
type measurement struct {
	miss     [2]float64 // distance between a bar's holes less its length [m]
	gradient [2]r3.Vec  // of the miss, by the coordinates of the path [1]
	along    [2]r2.Vec  // unit vector from the chassis hole to the housing hole
	arm      [2]r2.Vec  // housing hole, from the axle centerline [m]
	span     [2]float64 // distance between the holes [m]
	cross    r3.Vec     // of the gradients: the direction of the path
	norm2    [2]float64 // of the gradients
}

// rotate turns v by an angle of the given sine and cosine.
func rotate(v r2.Vec, sin, cos float64) r2.Vec {
	return r2.Vec{X: cos*v.X - sin*v.Y, Y: sin*v.X + cos*v.Y}
}

// measure places the housing and measures both bars.
func (c *path) measure(at r3.Vec) (m measurement) {
	sin, cos := math.Sincos(at.Z / c.scale)
	axle := r2.Vec{X: at.X, Y: c.geometry.RearRadius + c.rise*at.Y}
	for i := range c.bars {
		b := &c.bars[i]
		arm := rotate(b.housing, sin, cos)
		d := r2.Sub(r2.Add(axle, arm), b.chassis)
		span := norm(d)
		along := r2.Vec{X: d.X / span, Y: d.Y / span}
		m.arm[i], m.along[i], m.span[i] = arm, along, span
		m.miss[i] = span - (b.length + c.growth[i]*at.Y)
		m.gradient[i] = r3.Vec{X: along.X, Y: c.rise*along.Y - c.growth[i], Z: r2.Cross(arm, along) / c.scale}
		m.norm2[i] = r3.Norm2(m.gradient[i])
	}
	m.cross = r3.Cross(m.gradient[upper], m.gradient[lower])
	return m
}

// level returns the move at the same parameter that changes the misses by the
// given lengths.
func (m *measurement) level(by [2]float64) r3.Vec {
	u, w := m.gradient[upper], m.gradient[lower]
	return r3.Vec{
		X: (by[lower]*u.Z - by[upper]*w.Z) / m.cross.Y,
		Z: (by[upper]*w.X - by[lower]*u.X) / m.cross.Y,
	}
}

// least returns the shortest move that changes the misses by the given lengths.
func (m *measurement) least(by [2]float64) r3.Vec {
	u, w := m.gradient[upper], m.gradient[lower]
	uw, cc := r3.Dot(u, w), r3.Norm2(m.cross)
	return r3.Add(
		r3.Scale((by[upper]*m.norm2[lower]-by[lower]*uw)/cc, u),
		r3.Scale((by[lower]*m.norm2[upper]-by[upper]*uw)/cc, w))
}

// start is ride height.
func (c *path) start() place {
	m := c.measure(r3.Vec{})
	return c.place(r3.Vec{}, &m)
}

// place returns the place of the path at a point, measured there or within
// lastCorrection of it.
func (c *path) place(at r3.Vec, m *measurement) place {
	size := math.Sqrt(r3.Norm2(m.cross))
	p := place{at: at, tangent: r3.Scale(c.branch/size, m.cross), sine: size / math.Sqrt(m.norm2[upper]*m.norm2[lower])}
	// The curvature takes back what a straight move along the tangent adds to the
	// misses at second order: the square of the hole's speed across the bar over
	// its length, less the pull of the arm's turn.
	turn := p.tangent.Z / c.scale
	var by [2]float64
	for i := range by {
		speed := r2.Vec{X: p.tangent.X - turn*m.arm[i].Y, Y: c.rise*p.tangent.Y + turn*m.arm[i].X}
		across := r2.Cross(m.along[i], speed)
		by[i] = turn*turn*r2.Dot(m.along[i], m.arm[i]) - across*across/m.span[i]
	}
	p.curvature = m.least(by)
	return p
}

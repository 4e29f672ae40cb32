package paper

import (
	"math"

	"gonum.org/v1/plot/vg"
)

// affine takes a point (x, y) to (a·x + c·y + e, b·x + d·y + f).
type affine struct{ a, b, c, d, e, f float64 }

// after returns the transform that applies n first.
func (m affine) after(n affine) affine {
	return affine{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

// apply transforms a point, into the document's points.
func (m affine) apply(p vg.Point) (x, y float64) {
	px, py := p.X.Points(), p.Y.Points()
	return m.a*px + m.c*py + m.e, m.b*px + m.d*py + m.f
}

// scale is the factor of lengths, the mean of both directions.
func (m affine) scale() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }

// trace lays a path out in the document.
func (c *Canvas) trace(p vg.Path) {
	var pen vg.Point
	for i, part := range p {
		end := part.Pos
		switch part.Type {
		case vg.MoveComp:
			c.doc.MoveTo(c.m.apply(part.Pos))
		case vg.LineComp:
			c.doc.LineTo(c.m.apply(part.Pos))
		case vg.CurveComp:
			c.curve(pen, part)
		case vg.ArcComp:
			end = c.arc(part, i == 0)
		case vg.CloseComp:
			c.doc.ClosePath()
		}
		pen = end
	}
}

// curve draws a Bézier curve of one or two control points, a quadratic one as
// the cubic that is the same curve.
func (c *Canvas) curve(from vg.Point, part vg.PathComp) {
	first, last := part.Control[0], part.Control[len(part.Control)-1]
	if len(part.Control) == 1 {
		first = from.Add(last.Sub(from).Scale(2. / 3))
		last = part.Pos.Add(last.Sub(part.Pos).Scale(2. / 3))
	}
	c.cubic(first, last, part.Pos)
}

func (c *Canvas) cubic(first, last, end vg.Point) {
	x0, y0 := c.m.apply(first)
	x1, y1 := c.m.apply(last)
	x, y := c.m.apply(end)
	c.doc.CurveBezierCubicTo(x0, y0, x1, y1, x, y)
}

// arc draws a line to the start of a circular arc, unless that is the start of
// the path, then the arc by one cubic curve for each quarter of a circle or
// less, and returns its end. A cubic whose handles are 4/3·tan(φ/4) radii long
// meets a quarter circle to 0.03 % of the radius.
func (c *Canvas) arc(part vg.PathComp, begins bool) vg.Point {
	at := func(angle, handle float64) vg.Point {
		sin, cos := math.Sincos(angle)
		r := float64(part.Radius)
		return part.Pos.Add(vg.Point{X: vg.Length(r * (cos - handle*sin)), Y: vg.Length(r * (sin + handle*cos))})
	}
	x, y := c.m.apply(at(part.Start, 0))
	if begins {
		c.doc.MoveTo(x, y)
	} else {
		c.doc.LineTo(x, y)
	}
	pieces := max(1, math.Ceil(math.Abs(part.Angle)/(math.Pi/2)))
	step := part.Angle / pieces
	handle := 4. / 3 * math.Tan(step/4)
	for i := 0.0; i < pieces; i++ {
		from := part.Start + i*step
		c.cubic(at(from, handle), at(from+step, -handle), at(from+step, 0))
	}
	return at(part.Start+part.Angle, 0)
}

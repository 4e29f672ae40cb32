package raster

import "math"

// point is a position in device pixels, y down from the top edge.
type point struct{ x, y float64 }

// farthest is the largest coordinate that counts as finite, so that products
// of four of them do not overflow [px].
const farthest = 1e75

// finite reports whether both coordinates are finite.
func (p point) finite() bool {
	return math.Abs(p.x) <= farthest && math.Abs(p.y) <= farthest
}

// length returns the distance of p from the origin.
func (p point) length() float64 { return math.Sqrt(p.x*p.x + p.y*p.y) }

// minus returns the vector from q to p.
func (p point) minus(q point) point { return point{p.x - q.x, p.y - q.y} }

// lerp returns the point at fraction t of the way from p to q.
func (p point) lerp(q point, t float64) point {
	return point{p.x*(1-t) + q.x*t, p.y*(1-t) + q.y*t}
}

// affine maps (x, y) to (xx·x + xy·y + x0, yx·x + yy·y + y0).
type affine struct{ xx, xy, x0, yx, yy, y0 float64 }

// apply returns the image of (x, y).
func (m affine) apply(x, y float64) point {
	return point{m.xx*x + m.xy*y + m.x0, m.yx*x + m.yy*y + m.y0}
}

// translate returns m after a translation.
func (m affine) translate(x, y float64) affine {
	p := m.apply(x, y)
	m.x0, m.y0 = p.x, p.y
	return m
}

// scale returns m after a scaling.
func (m affine) scale(x, y float64) affine {
	m.xx, m.yx = m.xx*x, m.yx*x
	m.xy, m.yy = m.xy*y, m.yy*y
	return m
}

// rotate returns m after a counterclockwise rotation by rad.
func (m affine) rotate(rad float64) affine {
	sin, cos := math.Sincos(rad)
	m.xx, m.xy = m.xx*cos+m.xy*sin, m.xy*cos-m.xx*sin
	m.yx, m.yy = m.yx*cos+m.yy*sin, m.yy*cos-m.yx*sin
	return m
}

// det returns the area scale of m, signed.
func (m affine) det() float64 { return m.xx*m.yy - m.xy*m.yx }

// box is an axis-aligned rectangle in device pixels. It is empty when a
// minimum exceeds its maximum.
type box struct{ x0, y0, x1, y1 float64 }

// emptyBox contains nothing and grows by include.
func emptyBox() box {
	return box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

// include grows b to hold p; a coordinate that is no number is left out.
func (b *box) include(p point) {
	if p.x < b.x0 {
		b.x0 = p.x
	}
	if p.x > b.x1 {
		b.x1 = p.x
	}
	if p.y < b.y0 {
		b.y0 = p.y
	}
	if p.y > b.y1 {
		b.y1 = p.y
	}
}

// grow returns b moved outward by d on all sides.
func (b box) grow(d float64) box { return box{b.x0 - d, b.y0 - d, b.x1 + d, b.y1 + d} }

// diagonal returns the length of the diagonal.
func (b box) diagonal() float64 { return point{b.x1 - b.x0, b.y1 - b.y0}.length() }

// touches reports whether b and c have a point in common.
func (b box) touches(c box) bool {
	return b.x0 <= c.x1 && c.x0 <= b.x1 && b.y0 <= c.y1 && c.y0 <= b.y1
}

// holds reports whether p lies in b.
func (b box) holds(p point) bool {
	return b.x0 <= p.x && p.x <= b.x1 && b.y0 <= p.y && p.y <= b.y1
}

// inside reports whether b lies in c.
func (b box) inside(c box) bool {
	return b.x0 >= c.x0 && b.x1 <= c.x1 && b.y0 >= c.y0 && b.y1 <= c.y1
}

// through returns the bounding box of b after m.
func (b box) through(m affine) box {
	t := emptyBox()
	if b.x0 > b.x1 {
		return t
	}
	t.include(m.apply(b.x0, b.y0))
	t.include(m.apply(b.x1, b.y0))
	t.include(m.apply(b.x0, b.y1))
	t.include(m.apply(b.x1, b.y1))
	return t
}

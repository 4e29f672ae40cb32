package raster

import "math"

const (
	// flatness is the largest distance between a curve and the chords drawn
	// in its place: two steps of the 1/64 pixel grid [px].
	flatness = 1.0 / 32

	// finest is the least flatness, as a part of the size of the view. It only
	// takes effect beyond 8192 pixels, as with very wide lines.
	finest = 1.0 / (1 << 18)

	// maxChords is the number of chords beyond which a curve is halved, to
	// draw only the halves in view.
	maxChords = 1024

	// maxHalvings and maxPoints stop the halving of a curve whose size leaves
	// nothing of its shape but rounding errors.
	maxHalvings = 40
	maxPoints   = 1 << 17
)

// polylines is a list of polylines in device pixels, stored back to back.
type polylines struct {
	pts    []point
	pieces []piece
	view   box     // Where curves must be true.
	flat   float64 // Their flatness there [px].
}

// piece is the polyline up to index end. In a closed one the last point is
// joined to the first, which is not repeated.
type piece struct {
	end    int
	closed bool
}

// reset forgets all polylines.
func (p *polylines) reset() { p.pts, p.pieces = p.pts[:0], p.pieces[:0] }

// begin forgets all polylines and prepares for curves in a view.
func (p *polylines) begin(view box) {
	p.reset()
	p.view, p.flat = view, max(flatness, finest*view.diagonal())
}

// start returns the index of the first point of the polyline being built.
func (p *polylines) start() int {
	if n := len(p.pieces); n > 0 {
		return p.pieces[n-1].end
	}
	return 0
}

// add appends a point to the polyline being built.
func (p *polylines) add(q point) { p.pts = append(p.pts, q) }

// finish ends the polyline being built; one of fewer than two points is
// dropped.
func (p *polylines) finish(closed bool) {
	start := p.start()
	if len(p.pts) < start+2 {
		p.pts = p.pts[:start]
		return
	}
	p.pieces = append(p.pieces, piece{len(p.pts), closed})
}

// piece returns the points of polyline i.
func (p *polylines) piece(i int) []point {
	if i == 0 {
		return p.pts[:p.pieces[0].end]
	}
	return p.pts[p.pieces[i-1].end:p.pieces[i].end]
}

// bounds returns the bounding box of polylines i to j.
func (p *polylines) bounds(i, j int) box {
	b := emptyBox()
	for ; i < j; i++ {
		for _, q := range p.piece(i) {
			b.include(q)
		}
	}
	return b
}

// bend returns the second difference of three control points. A Bézier curve
// of degree n takes sqrt(n·(n-1)/8 · bend/flatness) chords (Wang's formula, from
// memory).
func bend(a, b, c point) float64 { return point{a.x - 2*b.x + c.x, a.y - 2*b.y + c.y}.length() }

// quad appends chords of the quadratic Bézier curve a, b, c, without a itself.
func (p *polylines) quad(a, b, c point, halvings int) {
	chords := math.Sqrt(bend(a, b, c) / 4 / p.flat)
	if chords > maxChords && halvings > 0 {
		hull := emptyBox()
		hull.include(a)
		hull.include(b)
		hull.include(c)
		if hull.touches(p.view) && len(p.pts) < maxPoints {
			ab, bc := a.lerp(b, 0.5), b.lerp(c, 0.5)
			mid := ab.lerp(bc, 0.5)
			p.quad(a, ab, mid, halvings-1)
			p.quad(mid, bc, c, halvings-1)
			return
		}
		chords = 1
	}
	n := chordCount(chords)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		p.add(a.lerp(b, t).lerp(b.lerp(c, t), t))
	}
	p.add(c)
}

// cube appends chords of the cubic Bézier curve a, b, c, d, without a itself.
func (p *polylines) cube(a, b, c, d point, halvings int) {
	chords := math.Sqrt(max(bend(a, b, c), bend(b, c, d)) * 3 / 4 / p.flat)
	if chords > maxChords && halvings > 0 {
		hull := emptyBox()
		hull.include(a)
		hull.include(b)
		hull.include(c)
		hull.include(d)
		if hull.touches(p.view) && len(p.pts) < maxPoints {
			ab, bc, cd := a.lerp(b, 0.5), b.lerp(c, 0.5), c.lerp(d, 0.5)
			abc, bcd := ab.lerp(bc, 0.5), bc.lerp(cd, 0.5)
			mid := abc.lerp(bcd, 0.5)
			p.cube(a, ab, abc, mid, halvings-1)
			p.cube(mid, bcd, cd, d, halvings-1)
			return
		}
		chords = 1
	}
	n := chordCount(chords)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		ab, bc, cd := a.lerp(b, t), b.lerp(c, t), c.lerp(d, t)
		p.add(ab.lerp(bc, t).lerp(bc.lerp(cd, t), t))
	}
	p.add(d)
}

// arc appends chords of an arc of the ellipse e from angle s through the
// sweep, without its first point.
func (p *polylines) arc(e ellipse, s, sweep float64, halvings int) {
	r := e.radius()
	chords := math.Abs(sweep) / chordAngle(r, p.flat)
	if chords > maxChords && halvings > 0 {
		near := math.Abs(sweep) > math.Pi || e.arcBox(s, sweep, r).touches(p.view)
		if near && len(p.pts) < maxPoints {
			p.arc(e, s, sweep/2, halvings-1)
			p.arc(e, s+sweep/2, sweep/2, halvings-1)
			return
		}
		chords = 1
	}
	n := chordCount(chords)
	// Turn the radius step by step.
	step := sweep / float64(n)
	sin, cos := math.Sincos(s)
	dsin, dcos := math.Sincos(step)
	outward := outset(step)
	for range n - 1 {
		sin, cos = sin*dcos+cos*dsin, cos*dcos-sin*dsin
		p.add(e.toward(sin*outward, cos*outward))
	}
	p.add(e.at(s + sweep))
}

// outset returns how far out the corners of a polygon stand, in radii, for it
// to have the area of the circle when each side spans the angle.
func outset(angle float64) float64 {
	if angle == 0 {
		return 1
	}
	return math.Sqrt(angle / math.Sin(angle))
}

// chordCount rounds a number of chords up, within 1 to maxChords.
func chordCount(chords float64) int {
	if !(chords > 1) {
		return 1
	}
	return int(math.Ceil(min(chords, maxChords)))
}

// chordAngle returns the angle spanned by a chord that strays from a circle
// of radius r by flat, at most a quarter turn.
func chordAngle(r, flat float64) float64 {
	// The sagitta r·(1-cos(a/2)) solved for a, in the form with the half angle
	// that stays accurate for a large r.
	sin := math.Sqrt(flat / 2 / r)
	if !(sin < math.Sqrt2/2) {
		return math.Pi / 2
	}
	return min(4*math.Asin(sin), math.Pi/2)
}

// ellipse is the image of a circle: center + cos·u + sin·v.
type ellipse struct{ center, u, v point }

// at returns the point at the angle.
func (e ellipse) at(angle float64) point {
	sin, cos := math.Sincos(angle)
	return e.toward(sin, cos)
}

// toward returns the image of a point of the circle of radius 1.
func (e ellipse) toward(sin, cos float64) point {
	return point{e.center.x + cos*e.u.x + sin*e.v.x, e.center.y + cos*e.u.y + sin*e.v.y}
}

// radius returns the longer half axis.
func (e ellipse) radius() float64 {
	sum := e.u.x*e.u.x + e.u.y*e.u.y + e.v.x*e.v.x + e.v.y*e.v.y
	area := e.u.x*e.v.y - e.u.y*e.v.x
	return math.Sqrt((sum + math.Sqrt(max(sum*sum-4*area*area, 0))) / 2)
}

// box returns the bounding box of the whole ellipse.
func (e ellipse) box() box {
	w, h := math.Hypot(e.u.x, e.v.x), math.Hypot(e.u.y, e.v.y)
	return box{e.center.x - w, e.center.y - h, e.center.x + w, e.center.y + h}
}

// arcBox returns a box around an arc of at most half a turn: that of its end
// points, grown by its sagitta.
func (e ellipse) arcBox(s, sweep, r float64) box {
	b := emptyBox()
	b.include(e.at(s))
	b.include(e.at(s + sweep))
	sin := math.Sin(sweep / 4)
	return b.grow(2 * r * sin * sin)
}

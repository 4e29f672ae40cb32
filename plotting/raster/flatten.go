package raster

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/vg"
)

const (
	// flatness is the largest distance between a curve and the chords drawn
	// in its place: two steps of the 1/64 pixel grid [px].
	flatness = 1.0 / 32

	// maxChords is the number of chords beyond which a curve is halved, to
	// draw only the halves in view.
	maxChords = 1024

	// maxHalvings bounds the halving of a curve: 2^40 pieces.
	maxHalvings = 40
)

// polylines is a list of polylines in device pixels, stored back to back.
type polylines struct {
	pts    []point
	pieces []piece
}

// piece is the polyline up to index end. In a closed one the last point is
// joined to the first, which is not repeated.
type piece struct {
	end    int
	closed bool
}

// reset forgets all polylines.
func (p *polylines) reset() { p.pts, p.pieces = p.pts[:0], p.pieces[:0] }

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

// bend returns the second difference of three control points. A curve of n
// points is split into sqrt(n·(n-1)/8·bend/flatness) chords (Wang's formula, from
// memory).
func bend(a, b, c point) float64 { return point{a.x - 2*b.x + c.x, a.y - 2*b.y + c.y}.length() }

// quad appends chords of the quadratic Bézier curve a, b, c, without a itself.
func (p *polylines) quad(a, b, c point, view box, halvings int) {
	bend := bend(a, b, c)
	chords := math.Sqrt(bend * (1.0 / 4 / flatness))
	if chords > maxChords && halvings > 0 {
		hull := emptyBox()
		hull.include(a)
		hull.include(b)
		hull.include(c)
		if hull.touches(view) {
			ab, bc := a.lerp(b, 0.5), b.lerp(c, 0.5)
			mid := ab.lerp(bc, 0.5)
			p.quad(a, ab, mid, view, halvings-1)
			p.quad(mid, bc, c, view, halvings-1)
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
func (p *polylines) cube(a, b, c, d point, view box, halvings int) {
	bend := max(bend(a, b, c), bend(b, c, d))
	chords := math.Sqrt(bend * (3.0 / 4 / flatness))
	if chords > maxChords && halvings > 0 {
		hull := emptyBox()
		hull.include(a)
		hull.include(b)
		hull.include(c)
		hull.include(d)
		if hull.touches(view) {
			ab, bc, cd := a.lerp(b, 0.5), b.lerp(c, 0.5), c.lerp(d, 0.5)
			abc, bcd := ab.lerp(bc, 0.5), bc.lerp(cd, 0.5)
			mid := abc.lerp(bcd, 0.5)
			p.cube(a, ab, abc, mid, view, halvings-1)
			p.cube(mid, bcd, cd, d, view, halvings-1)
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
func (p *polylines) arc(e ellipse, s, sweep float64, view box, halvings int) {
	r := e.radius()
	chords := math.Abs(sweep) / chordAngle(r)
	if chords > maxChords && halvings > 0 {
		if math.Abs(sweep) > math.Pi || e.arcBox(s, sweep, r).touches(view) {
			p.arc(e, s, sweep/2, view, halvings-1)
			p.arc(e, s+sweep/2, sweep/2, view, halvings-1)
			return
		}
		chords = 1
	}
	n := chordCount(chords)
	// Turn the radius step by step.
	sin, cos := math.Sincos(s)
	dsin, dcos := math.Sincos(sweep / float64(n))
	for range n - 1 {
		sin, cos = sin*dcos+cos*dsin, cos*dcos-sin*dsin
		p.add(e.toward(sin, cos))
	}
	p.add(e.at(s + sweep))
}

// chordCount rounds a number of chords up, within 1 to maxChords.
func chordCount(chords float64) int {
	if !(chords > 1) {
		return 1
	}
	return int(math.Ceil(min(chords, maxChords)))
}

// chordAngle returns the angle spanned by a chord that strays from a circle
// of radius r by flatness, at most a quarter turn.
func chordAngle(r float64) float64 {
	// The sagitta r·(1-cos(a/2)) solved for a, in the form with the half angle
	// that stays accurate for a large r.
	sin := math.Sqrt(flatness / 2 / r)
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

// toward returns the point at the angle with this sine and cosine.
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

// arcOf returns the ellipse that m makes of the circle of an ArcComp, and the
// sweep of the arc cut to at most two turns. It reports false when a parameter
// is not finite.
func arcOf(c vg.PathComp, m affine) (e ellipse, sweep float64, ok bool) {
	r := c.Radius.Points()
	e = ellipse{m.apply(c.Pos.X.Points(), c.Pos.Y.Points()), point{m.xx * r, m.yx * r}, point{m.xy * r, m.yy * r}}
	sweep = c.Angle
	if math.Abs(sweep) > 4*math.Pi {
		sweep = math.Mod(sweep, 2*math.Pi) + math.Copysign(2*math.Pi, sweep)
	}
	return e, sweep, e.center.finite() && e.u.finite() && e.v.finite() && point{c.Start, sweep}.finite()
}

// curvePoints returns the control points and the end of a CurveComp in device
// pixels, and their number. Other numbers of control points than 1 and 2 are a
// programming error.
func curvePoints(c vg.PathComp, m affine) (pts [3]point, n int) {
	n = len(c.Control) + 1
	if n != 2 && n != 3 {
		panic(fmt.Sprintf("raster: curve with %d control points, want 1 or 2", len(c.Control)))
	}
	for i, q := range c.Control {
		pts[i] = m.apply(q.X.Points(), q.Y.Points())
	}
	pts[n-1] = m.apply(c.Pos.X.Points(), c.Pos.Y.Points())
	return pts, n
}

// pathBounds returns a box around everything finite in the path.
func pathBounds(path vg.Path, m affine) box {
	b := emptyBox()
	for i := range path {
		switch c := &path[i]; c.Type {
		case vg.MoveComp, vg.LineComp:
			if q := m.apply(c.Pos.X.Points(), c.Pos.Y.Points()); q.finite() {
				b.include(q)
			}
		case vg.ArcComp:
			if e, _, ok := arcOf(*c, m); ok {
				all := e.box()
				b.include(point{all.x0, all.y0})
				b.include(point{all.x1, all.y1})
			}
		case vg.CurveComp:
			pts, n := curvePoints(*c, m)
			for _, q := range pts[:n] {
				if q.finite() {
					b.include(q)
				}
			}
		}
	}
	return b
}

// flattener turns a path into polylines.
type flattener struct {
	out   *polylines
	m     affine
	view  box
	pen   point // Current point.
	first point // Where the current piece began.
	down  bool  // Whether there is a current point.
	begun bool  // Whether the current point is already part of a polyline.
}

// flatten replaces p by the path in device pixels. Curves stray from their
// true shape by at most flatness where they cross the view.
func (p *polylines) flatten(path vg.Path, m affine, view box) {
	p.reset()
	f := flattener{out: p, m: m, view: view}
	for i := range path {
		f.component(&path[i])
	}
	f.lift()
}

// component adds one component; one that is not finite lifts the pen.
func (f *flattener) component(c *vg.PathComp) {
	switch c.Type {
	case vg.MoveComp:
		f.lift()
		f.line(f.m.apply(c.Pos.X.Points(), c.Pos.Y.Points()))
	case vg.LineComp:
		f.line(f.m.apply(c.Pos.X.Points(), c.Pos.Y.Points()))
	case vg.ArcComp:
		f.arc(c)
	case vg.CurveComp:
		f.curve(c)
	case vg.CloseComp:
		f.close()
	default:
		panic(fmt.Sprintf("raster: unknown path component %d", c.Type))
	}
}

// lift ends the polyline and leaves no current point.
func (f *flattener) lift() {
	f.out.finish(false)
	f.down, f.begun = false, false
}

// line draws to q, or moves there without a current point. It reports false
// when q is not finite.
func (f *flattener) line(q point) bool {
	switch {
	case !q.finite():
		f.lift()
		return false
	case !f.down:
		f.first, f.down = q, true
	default:
		f.begin()
		f.out.add(q)
	}
	f.pen = q
	return true
}

// begin puts the current point into the polyline.
func (f *flattener) begin() {
	if !f.begun {
		f.out.add(f.pen)
		f.begun = true
	}
}

// close draws back to the start of the piece, which stays the current point.
func (f *flattener) close() {
	if f.begun {
		f.out.finish(true)
	}
	f.pen, f.begun = f.first, false
}

// arc draws a line to the start of an arc, then the arc.
func (f *flattener) arc(c *vg.PathComp) {
	e, sweep, ok := arcOf(*c, f.m)
	if !ok || !f.line(e.at(c.Start)) {
		f.lift()
		return
	}
	f.begin()
	f.out.arc(e, c.Start, sweep, f.view, maxHalvings)
	f.pen = f.out.pts[len(f.out.pts)-1]
}

// curve draws a Bézier curve; without a current point it starts at the first
// control point.
func (f *flattener) curve(c *vg.PathComp) {
	pts, n := curvePoints(*c, f.m)
	for _, q := range pts[:n] {
		if !q.finite() {
			f.lift()
			return
		}
	}
	if !f.down {
		f.line(pts[0])
	}
	f.begin()
	if n == 2 {
		f.out.quad(f.pen, pts[0], pts[1], f.view, maxHalvings)
	} else {
		f.out.cube(f.pen, pts[0], pts[1], pts[2], f.view, maxHalvings)
	}
	f.pen = pts[n-1]
}

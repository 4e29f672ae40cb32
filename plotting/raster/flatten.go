package raster

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/vg"
)

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
	pen   point // Current point.
	first point // Where the current piece began.
	down  bool  // Whether there is a current point.
	begun bool  // Whether the current point is already part of a polyline.
}

// flatten replaces p by the path in device pixels, true where it crosses the
// view.
func (p *polylines) flatten(path vg.Path, m affine, view box) {
	p.begin(view)
	f := flattener{out: p, m: m}
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
	f.out.arc(e, c.Start, sweep, maxHalvings)
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
		f.out.quad(f.pen, pts[0], pts[1], maxHalvings)
	} else {
		f.out.cube(f.pen, pts[0], pts[1], pts[2], maxHalvings)
	}
	f.pen = pts[n-1]
}

package raster

import (
	"math"
	"math/bits"

	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"
)

// one is a pixel in 26.6 fixed point, the grid of the scan conversion.
const one = 64

// smallestScan and scanClasses are the heights of the rasterizers: each class
// is twice as high as the one before. A rasterizer clears and walks all of its
// rows for every shape, so a small shape must not use a high one.
const (
	smallestScan = 16 // [px]
	scanClasses  = 12 // Up to maxSide.
)

// rasterizer returns an empty rasterizer of at least this many rows.
func (c *Canvas) rasterizer(rows int) *raster.Rasterizer {
	class := bits.Len(uint((rows - 1) / smallestScan))
	if c.scans[class] == nil {
		c.scans[class] = raster.NewRasterizer(maxSide, smallestScan<<class)
		c.scans[class].UseNonZeroWinding = true
	}
	return c.scans[class]
}

// fill paints pieces i to j of the polygons in the current color, by the
// non-zero winding rule.
func (c *Canvas) fill(p *polylines, i, j int) {
	b := p.bounds(i, j)
	if !b.touches(c.view) || c.color.alpha() == 0 {
		return
	}
	c.ink.color = c.color
	if j == i+1 {
		if r, ok := rectangle(p.piece(i)); ok {
			c.ink.rectangle(r)
			return
		}
	}
	// Only the rows the shape touches take part.
	top, bottom := int(max(b.y0, 0)), int(math.Ceil(min(b.y1, c.view.y1)))
	if top >= bottom {
		return
	}
	r := c.rasterizer(bottom - top)
	r.Dy = top
	e := edges{r: r, top: float64(top), w: c.view.x1, h: float64(bottom - top), clip: !b.inside(c.view)}
	for ; i < j; i++ {
		e.polygon(p.piece(i))
	}
	r.Rasterize(&c.ink)
	r.Clear()
}

// edges feeds polygons to a rasterizer whose row 0 is row top of the image.
type edges struct {
	r    *raster.Rasterizer
	top  float64
	w, h float64 // Size of the window of the rasterizer [px].
	clip bool    // Whether points may lie outside the window.
	pen  fixed.Point26_6
}

// fix rounds to the grid; what lies outside 0 to limit is moved to its edge.
func fix(v, limit float64) fixed.Int26_6 {
	switch {
	case !(v > 0):
		return 0
	case v >= limit:
		return fixed.Int26_6(limit * one)
	}
	return fixed.Int26_6(v*one + 0.5)
}

// polygon adds a closed polygon.
func (e *edges) polygon(pts []point) {
	last := pts[len(pts)-1]
	last.y -= e.top
	e.pen = fixed.Point26_6{X: fix(last.x, e.w), Y: fix(last.y, e.h)}
	e.r.Start(e.pen)
	for _, p := range pts {
		p.y -= e.top
		if e.clip {
			e.clipped(last, p)
		} else {
			e.to(p)
		}
		last = p
	}
}

// to draws to p.
func (e *edges) to(p point) {
	q := fixed.Point26_6{X: fix(p.x, e.w), Y: fix(p.y, e.h)}
	if q != e.pen {
		e.r.Add1(q)
		e.pen = q
	}
}

// clipped draws the edge from a to b as far as it matters: what lies above and
// below the window is left out, what lies beside it is moved to its sides.
func (e *edges) clipped(a, b point) {
	if max(a.y, b.y) <= 0 || min(a.y, b.y) >= e.h {
		return
	}
	a, b = clipY(a, b, 0, e.h)
	if start := (fixed.Point26_6{X: fix(a.x, e.w), Y: fix(a.y, e.h)}); start != e.pen {
		e.r.Start(start)
		e.pen = start
	}
	// The edge turns where it crosses a side of the window.
	p, q := clipX(a, b, 0, e.w)
	e.to(p)
	e.to(q)
	e.to(b)
}

// rectangle reports whether the polygon is an axis-aligned rectangle, and
// returns it.
func rectangle(p []point) (box, bool) {
	if len(p) == 5 && p[4] == p[0] {
		p = p[:4]
	}
	if len(p) != 4 {
		return box{}, false
	}
	flat := p[0].y == p[1].y && p[1].x == p[2].x && p[2].y == p[3].y && p[3].x == p[0].x
	steep := p[0].x == p[1].x && p[1].y == p[2].y && p[2].x == p[3].x && p[3].y == p[0].y
	b := box{min(p[0].x, p[2].x), min(p[0].y, p[2].y), max(p[0].x, p[2].x), max(p[0].y, p[2].y)}
	return b, flat || steep
}

// rectangle paints the rectangle with the coverage of the scan conversion.
func (p *painter) rectangle(b box) {
	w, h := float64(p.w), float64(p.h)
	x0, x1 := int(fix(b.x0, w)), int(fix(b.x1, w))
	y0, y1 := int(fix(b.y0, h)), int(fix(b.y1, h))
	if x0 >= x1 || y0 >= y1 {
		return
	}
	// Rows covered in full, then the partial ones above and below.
	full0, full1 := (y0+one-1)/one, y1/one
	p.band(full0, full1, x0, x1, one)
	if full0 > full1 {
		p.band(full1, full0, x0, x1, y1-y0)
		return
	}
	p.band(full0-1, full0, x0, x1, full0*one-y0)
	p.band(full1, full1+1, x0, x1, y1-full1*one)
}

// band paints x0 to x1 [px/64] of rows y0 to y1, of whose height the given
// part is covered [px/64].
func (p *painter) band(y0, y1, x0, x1, height int) {
	if height <= 0 {
		return
	}
	full0, full1 := (x0+one-1)/one, x1/one
	if full0 > full1 {
		for y := y0; y < y1; y++ {
			p.span(y, full1, full0, areaCoverage((x1-x0)*height))
		}
		return
	}
	left, right := areaCoverage((full0*one-x0)*height), areaCoverage((x1-full1*one)*height)
	middle := areaCoverage(one * height)
	solid := middle == 255 && p.color >= opaque
	if solid {
		p.setRows(y0, y1, full0, full1)
	}
	for y := y0; y < y1; y++ {
		if left > 0 {
			p.span(y, full0-1, full0, left)
		}
		if !solid {
			p.span(y, full0, full1, middle)
		}
		if right > 0 {
			p.span(y, full1, full1+1, right)
		}
	}
}

// areaCoverage turns an area of 0 to 64·64 into 0 to 255, by way of 12 and 16
// bits as the rasterizer does.
func areaCoverage(area int) uint32 {
	a := uint32(min(area, 0xfff))
	return coverage(a<<4 | a>>8)
}

package raster

import (
	"math"

	"github.com/golang/freetype/raster"
	"golang.org/x/image/font/sfnt"
)

const (
	// stampSteps is how many places within a pixel a glyph is stamped at, each
	// way. The next one is at most 1/32 px off.
	stampSteps = 16

	// maxStampEm is the largest text that is stamped [px per em]. Larger
	// glyphs are too many pixels to keep.
	maxStampEm = 48

	// maxStampSets and maxStamps limit the memory that stamps take: beyond
	// them they are made anew.
	maxStampSets = 16
	maxStamps    = 4096
)

// stamp is the coverage of a glyph on the grid of pixels.
type stamp struct {
	x, y  int // Of the upper left pixel, from the one the glyph's origin is in.
	width int
	cover []uint8 // Row by row, 0 to 255.
}

// stampSet holds the stamps of one font at one size and direction, by glyph
// and place of its origin within a pixel.
type stampSet map[uint32]*stamp

// stampSetKey names a set by its font and the linear part of the transform
// from font units to device pixels.
type stampSetKey struct {
	face           *typeface
	xx, xy, yx, yy float64
}

// stampSet returns the set for text of a font under m, or nil for text that is
// not stamped: large or at an angle.
func (c *Canvas) stampSet(t *typeface, m affine) stampSet {
	level, upright := m.xy == 0 && m.yx == 0, m.xx == 0 && m.yy == 0
	if !(level || upright) || math.Abs(m.det())*float64(t.em)*float64(t.em) > maxStampEm*maxStampEm {
		return nil
	}
	key := stampSetKey{t, m.xx, m.xy, m.yx, m.yy}
	set, ok := c.stamps[key]
	if !ok {
		if c.stamps == nil || len(c.stamps) >= maxStampSets {
			c.stamps = map[stampSetKey]stampSet{}
		}
		set = stampSet{}
		c.stamps[key] = set
	}
	return set
}

// press paints a glyph by its stamp.
func (c *Canvas) press(set stampSet, x sfnt.GlyphIndex, g *glyph, m affine) {
	px, subX := pixelAndStep(m.x0)
	py, subY := pixelAndStep(m.y0)
	key := uint32(x)*stampSteps*stampSteps + uint32(subY*stampSteps+subX)
	s := set[key]
	if s == nil {
		if len(set) >= maxStamps {
			clear(set)
		}
		m.x0, m.y0 = float64(subX)/stampSteps, float64(subY)/stampSteps
		s = c.cut(g, m)
		set[key] = s
	}
	if s.width > 0 {
		c.ink.color = c.color
		c.ink.stamp(s, px+s.x, py+s.y)
	}
}

// pixelAndStep rounds a coordinate to a place within a pixel.
func pixelAndStep(v float64) (pixel, step int) {
	n := int(math.Floor(v*stampSteps + 0.5))
	pixel = int(math.Floor(float64(n) / stampSteps))
	return pixel, n - pixel*stampSteps
}

// cut makes the stamp of a glyph whose origin m places within pixel 0, 0.
func (c *Canvas) cut(g *glyph, m affine) *stamp {
	b := g.box.through(m)
	s := &stamp{x: int(math.Floor(b.x0)), y: int(math.Floor(b.y0))}
	width, height := int(math.Ceil(b.x1))-s.x, int(math.Ceil(b.y1))-s.y
	if len(g.curves) == 0 || width <= 0 || height <= 0 {
		return s
	}
	s.width, s.cover = width, make([]uint8, width*height)
	m.x0, m.y0 = m.x0-float64(s.x), m.y0-float64(s.y)
	c.path.glyph(g, m, box{0, 0, float64(width), float64(height)})
	c.scan(s, height)
	return s
}

// scan covers a stamp of a height with the path.
func (c *Canvas) scan(s *stamp, height int) {
	r := c.rasterizer(height)
	r.Dy = 0
	e := edges{r: r, w: float64(s.width), h: float64(height)}
	for i := range c.path.pieces {
		e.polygon(c.path.piece(i))
	}
	r.Rasterize(s)
	r.Clear()
}

// Paint implements raster.Painter.
func (s *stamp) Paint(spans []raster.Span, _ bool) {
	for i := range spans {
		n := &spans[i]
		row := s.cover[n.Y*s.width : (n.Y+1)*s.width]
		cover := uint8(coverage(n.Alpha))
		for x := max(n.X0, 0); x < min(n.X1, s.width); x++ {
			row[x] = cover
		}
	}
}

package raster

import (
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// FillString implements vg.Canvas. The advance of the text is that of
// f.Width(text): a rune the font lacks shows as the font's substitute glyph, and
// pairs are kerned. A face without a font draws nothing, as does a size that is
// not positive.
func (c *Canvas) FillString(f font.Face, pt vg.Point, text string) {
	if f.Face == nil || !(f.Font.Size > 0) {
		return
	}
	t := typefaceOf(f.Face)
	size := f.Font.Size.Points() / float64(t.em)
	m := c.m.translate(pt.X.Points(), pt.Y.Points()).scale(size, size)
	at := 0
	var prev sfnt.GlyphIndex
	for i, r := range text {
		x := t.index(&c.sfntBuf, r)
		if i > 0 {
			at += t.kern(&c.sfntBuf, prev, x)
		}
		g := t.glyph(&c.sfntBuf, x)
		c.fillGlyph(g, m.translate(float64(at), 0))
		at += g.advance
		prev = x
	}
}

// fillGlyph paints a glyph; m takes font units to device pixels.
func (c *Canvas) fillGlyph(g *glyph, m affine) {
	if !g.box.through(m).touches(c.view) {
		return
	}
	c.path.reset()
	var pen point
	for i := range g.curves {
		k := &g.curves[i]
		var q [3]point
		for j, p := range k.pts[:k.controls+1] {
			q[j] = m.apply(p.x, p.y)
		}
		switch {
		case k.start:
			c.path.finish(true)
			c.path.add(q[0])
		case k.controls == 1:
			c.path.quad(pen, q[0], q[1], c.view, maxHalvings)
		case k.controls == 2:
			c.path.cube(pen, q[0], q[1], q[2], c.view, maxHalvings)
		default:
			c.path.add(q[0])
		}
		pen = q[k.controls]
	}
	c.path.finish(true)
	c.fill(&c.path)
}

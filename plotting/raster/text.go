package raster

import (
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// FillString implements vg.Canvas. The advance of the text is that of
// f.Width(text): a rune the font lacks shows as the font's substitute glyph, and
// pairs are kerned. A face without a font draws nothing, as does a size that is
// not positive or not finite.
func (c *Canvas) FillString(f font.Face, pt vg.Point, text string) {
	if c.color.alpha() == 0 {
		return
	}
	var stamps stampSet
	started := false
	c.eachGlyph(f, pt, text, func(t *typeface, x sfnt.GlyphIndex, m affine) {
		if !started {
			stamps, started = c.stampSet(t, m), true
		}
		g := t.glyph(&c.sfntBuf, x)
		switch {
		case !g.box.through(m).touches(c.view):
		case stamps != nil:
			c.press(stamps, x, g, m)
		default:
			c.path.glyph(g, m, c.view)
			c.fill(&c.path, 0, len(c.path.pieces))
		}
	})
}

// eachGlyph calls draw for the glyphs of a text, with the transform from font
// units to device pixels.
func (c *Canvas) eachGlyph(f font.Face, pt vg.Point, text string, draw func(*typeface, sfnt.GlyphIndex, affine)) {
	if f.Face == nil || !(f.Font.Size > 0) {
		return
	}
	t := typefaceOf(f.Face)
	size := f.Font.Size.Points() / float64(t.em)
	m := c.m.translate(pt.X.Points(), pt.Y.Points()).scale(size, size)
	if !m.apply(0, 0).finite() || !m.apply(float64(t.em), float64(t.em)).finite() {
		return
	}
	at := 0
	var prev sfnt.GlyphIndex
	for i, r := range text {
		x := t.index(&c.sfntBuf, r)
		if i > 0 {
			at += t.kern(&c.sfntBuf, prev, x)
		}
		draw(t, x, m.translate(float64(at), 0))
		at += t.glyph(&c.sfntBuf, x).advance
		prev = x
	}
}

// glyph replaces p by the outline of a glyph; m takes font units to device
// pixels.
func (p *polylines) glyph(g *glyph, m affine, view box) {
	p.begin(view)
	var pen point
	for i := range g.curves {
		k := &g.curves[i]
		var q [3]point
		for j, a := range k.pts[:k.controls+1] {
			q[j] = m.apply(a.x, a.y)
		}
		switch {
		case k.start:
			p.finish(true)
			p.add(q[0])
		case k.controls == 1:
			p.quad(pen, q[0], q[1], maxHalvings)
		case k.controls == 2:
			p.cube(pen, q[0], q[1], q[2], maxHalvings)
		default:
			p.add(q[0])
		}
		pen = q[k.controls]
	}
	p.finish(true)
}

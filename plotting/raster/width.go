package raster

import (
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// TextWidth returns the advance of a text, as f.Width(text) does, from the
// glyphs already read; 0 without a font.
func (c *Canvas) TextWidth(f font.Face, text string) vg.Length {
	if f.Face == nil {
		return 0
	}
	t := typefaceOf(f.Face)
	advance := 0
	var prev sfnt.GlyphIndex
	for i, r := range text {
		x := t.index(&c.sfntBuf, r)
		if i > 0 {
			advance += t.kern(&c.sfntBuf, prev, x)
		}
		advance += t.glyph(&c.sfntBuf, x).advance
		prev = x
	}
	return vg.Length(advance) * f.Font.Size / vg.Length(t.em)
}

package paper

import (
	"bytes"
	"fmt"
	"math"

	"codeberg.org/go-pdf/fpdf"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// missing stands for a character that a font does not have.
const missing = '?'

// FillString implements vg.Canvas. The advance of the text is that of
// f.Width(text): pairs are kerned. A character that the font lacks shows as a
// question mark. A face without a font draws nothing, as does a size that is
// not positive.
func (c *Canvas) FillString(f font.Face, p vg.Point, text string) {
	if f.Face == nil || !(f.Font.Size > 0) {
		return
	}
	c.setColor()
	c.doc.SetFont(c.font(f.Face), "", f.Font.Size.Points())
	c.doc.TransformBegin()
	c.doc.Transform(c.textMatrix(p))
	for _, piece := range c.kerned(f.Face, text) {
		c.doc.Text(piece.at*f.Font.Size.Points(), 0, piece.text)
	}
	c.doc.TransformEnd()
}

// textMatrix takes upright text at the document's origin, the page's upper left
// corner, to p. The document's matrices measure from the lower left, y up.
func (c *Canvas) textMatrix(p vg.Point) fpdf.TransformMatrix {
	x, y := c.m.apply(p)
	h := c.height.Points()
	return fpdf.TransformMatrix{A: c.m.a, B: -c.m.b, C: c.m.c, D: -c.m.d, E: x - c.m.c*h, F: h - y + c.m.d*h}
}

// piece is text without kerning in it and where it begins, over the size.
type piece struct {
	at   float64
	text string
}

// kerned breaks text where a pair of letters is kerned.
func (c *Canvas) kerned(f *sfnt.Font, text string) []piece {
	var list []piece
	var last sfnt.GlyphIndex
	em := fixed.Int26_6(f.UnitsPerEm())
	begin, at := 0.0, 0.0
	var run []rune
	for _, r := range text {
		r, glyph := c.glyph(f, r)
		if kern, err := f.Kern(&c.glyphs, last, glyph, em, xfont.HintingNone); err == nil && kern != 0 && len(run) > 0 {
			list = append(list, piece{begin, string(run)})
			at += float64(kern) / float64(em)
			begin, run = at, nil
		}
		if advance, err := f.GlyphAdvance(&c.glyphs, glyph, em, xfont.HintingNone); err == nil {
			at += float64(advance) / float64(em)
		}
		run, last = append(run, r), glyph
	}
	if len(run) > 0 {
		list = append(list, piece{begin, string(run)})
	}
	return list
}

// glyph returns the character to write for r and its glyph. Documents count
// characters to 65535.
func (c *Canvas) glyph(f *sfnt.Font, r rune) (rune, sfnt.GlyphIndex) {
	for _, r := range []rune{r, missing} {
		if x, err := f.GlyphIndex(&c.glyphs, r); err == nil && x != 0 && r <= math.MaxUint16 {
			return r, x
		}
	}
	return missing, 0
}

// font returns the document's name of a font, adding the font at first use.
func (c *Canvas) font(f *sfnt.Font) string {
	if name, ok := c.fonts[f]; ok {
		return name
	}
	name := fmt.Sprintf("font%d", len(c.fonts)+1)
	c.fonts[f] = name
	var source bytes.Buffer
	if _, err := f.WriteSourceTo(&c.glyphs, &source); err != nil {
		c.doc.SetError(err)
		return name
	}
	c.doc.AddUTF8FontFromBytes(name, "", source.Bytes())
	return name
}

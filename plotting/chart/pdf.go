package chart

import (
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/encoding/charmap"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgpdf"
)

// pdfCanvas is a PDF canvas that can set any text in any weight: vgpdf takes
// the bytes of a string for Windows-1252, and embeds one font a document.
type pdfCanvas struct{ *vgpdf.Canvas }

// FillString implements vg.Canvas. Bold text and text beyond Windows-1252 is
// drawn as outlines.
func (c pdfCanvas) FillString(f font.Face, pt vg.Point, text string) {
	encoded, err := charmap.Windows1252.NewEncoder().String(text)
	if err != nil || f.Font.Weight != xfont.WeightNormal {
		c.Fill(outlines(f, pt, text))
		return
	}
	c.Canvas.FillString(f, pt, encoded)
}

// outlines returns the shapes of a text that starts at pt.
func outlines(f font.Face, pt vg.Point, text string) vg.Path {
	var (
		path   vg.Path
		buf    sfnt.Buffer
		before sfnt.GlyphIndex
		em     = fixed.Int26_6(f.Face.UnitsPerEm())
		unit   = f.Font.Size / vg.Length(em)
	)
	for i, r := range []rune(text) {
		glyph, err := f.Face.GlyphIndex(&buf, r)
		if err != nil {
			continue
		}
		if i > 0 {
			if kern, err := f.Face.Kern(&buf, before, glyph, em, xfont.HintingNone); err == nil {
				pt.X += vg.Length(kern) * unit
			}
		}
		if segments, err := f.Face.LoadGlyph(&buf, glyph, em, nil); err == nil {
			path = appendGlyph(path, segments, pt, unit)
		}
		if advance, err := f.Face.GlyphAdvance(&buf, glyph, em, xfont.HintingNone); err == nil {
			pt.X += vg.Length(advance) * unit
		}
		before = glyph
	}
	return path
}

// appendGlyph adds a glyph's outline, whose y points down.
func appendGlyph(path vg.Path, segments sfnt.Segments, origin vg.Point, unit vg.Length) vg.Path {
	at := func(p fixed.Point26_6) vg.Point {
		return vg.Point{X: origin.X + vg.Length(p.X)*unit, Y: origin.Y - vg.Length(p.Y)*unit}
	}
	var pen vg.Point
	for i, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				path.Close()
			}
			path.Move(at(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			path.Line(at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			// As a cubic: vgpdf hands quadratics to an operator that is none.
			control, end := at(s.Args[0]), at(s.Args[1])
			path.CubeTo(pen.Add(control.Sub(pen).Scale(2./3)), end.Add(control.Sub(end).Scale(2./3)), end)
		case sfnt.SegmentOpCubeTo:
			path.CubeTo(at(s.Args[0]), at(s.Args[1]), at(s.Args[2]))
		}
		pen = path[len(path)-1].Pos
	}
	if len(segments) > 0 {
		path.Close()
	}
	return path
}

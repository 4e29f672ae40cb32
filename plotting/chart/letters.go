package chart

import (
	"image/color"
	"math"
	"strings"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Text sizes at scale 1 [pt]; 8.25 pt is 11 px at 96 dpi.
const (
	titleSize = 9
	bodySize  = 8.25
	smallSize = 6.5
)

// letters set text in one font and size.
type letters struct {
	face   font.Face
	size   vg.Length
	widths map[string]vg.Length // of texts measured so far
}

// typeset keeps the letters used so far: most text of a chart is that of the
// frame before.
type typeset map[font.Font]*letters

// of returns Liberation Sans, which comes with the program.
func (t typeset) of(size vg.Length, bold bool) *letters {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: size}
	if bold {
		f.Weight = xfont.WeightBold
	}
	return t.lookup(f)
}

func (t typeset) lookup(f font.Font) *letters {
	l := t[f]
	if l == nil {
		l = &letters{plot.DefaultTextHandler.Cache().Lookup(f, f.Size), f.Size, map[string]vg.Length{}}
		t[f] = l
	}
	return l
}

// Heights of Liberation Sans over its size.
const (
	capHeight = 0.73
	descent   = 0.21
	leading   = 1.3
)

// mostWidths limits the texts whose widths are kept.
const mostWidths = 2000

func (l *letters) width(text string) vg.Length {
	w, known := l.widths[text]
	if !known {
		if len(l.widths) >= mostWidths {
			clear(l.widths)
		}
		w = l.face.Width(text)
		l.widths[text] = w
	}
	return w
}

// row is the height of a line of text.
func (l *letters) row() vg.Length { return leading * l.size }

// middle is how far the baseline lies below the middle of capitals.
func (l *letters) middle() vg.Length { return capHeight / 2 * l.size }

// draw sets text with its baseline at pt; align is the part of its width that
// comes before pt.
func (l *letters) draw(c vg.Canvas, ink color.Color, pt vg.Point, align float64, text string) {
	if align != 0 {
		pt.X -= vg.Length(align) * l.width(text)
	}
	c.SetColor(ink)
	c.FillString(l.face, pt, text)
}

// drawUp sets text that reads upward, centered on pt.
func (l *letters) drawUp(c vg.Canvas, ink color.Color, pt vg.Point, text string) {
	c.SetColor(ink)
	c.Push()
	c.Rotate(math.Pi / 2)
	c.FillString(l.face, vg.Point{X: pt.Y - l.width(text)/2, Y: -pt.X - l.middle()}, text)
	c.Pop()
}

// box is the room that text of a width takes with its baseline starting at pt.
func (l *letters) box(pt vg.Point, width vg.Length) vg.Rectangle {
	return vg.Rectangle{
		Min: vg.Point{X: pt.X, Y: pt.Y - descent*l.size},
		Max: vg.Point{X: pt.X + width, Y: pt.Y + capHeight*l.size},
	}
}

// style is how gonum sets these letters.
func (t typeset) style(l *letters, ink color.Color) text.Style {
	return text.Style{Color: ink, Font: l.face.Font, XAlign: draw.XCenter, Handler: t}
}

// A typeset is gonum's text.Handler: gonum's own one measures each text anew every
// time, and centers a number on its ascent and descent rather than on its digits.
// A line is as high as the size, its baseline at the bottom.
var _ text.Handler = typeset(nil)

// Cache implements text.Handler.
func (t typeset) Cache() *font.Cache { return plot.DefaultTextHandler.Cache() }

// Extents implements text.Handler.
func (t typeset) Extents(f font.Font) font.Extents {
	return font.Extents{Ascent: f.Size, Height: f.Size}
}

// Lines implements text.Handler: a text is one line.
func (t typeset) Lines(text string) []string { return []string{text} }

// Box implements text.Handler.
func (t typeset) Box(text string, f font.Font) (width, height, depth vg.Length) {
	return t.lookup(f).width(text), f.Size, 0
}

// Draw implements text.Handler, for text that is level or reads upward.
func (t typeset) Draw(c vg.Canvas, text string, s text.Style, pt vg.Point) {
	l := t.lookup(s.Font)
	if s.Rotation != 0 {
		l.drawUp(c, s.Color, vg.Point{X: pt.X - l.middle(), Y: pt.Y}, text)
		return
	}
	l.draw(c, s.Color, vg.Point{X: pt.X, Y: pt.Y + vg.Length(s.YAlign)*l.size}, -float64(s.XAlign), text)
}

// wrap breaks text into lines of at most a width, at spaces.
func (l *letters) wrap(text string, width vg.Length) []string {
	if text == "" {
		return nil
	}
	if l.width(text) <= width {
		return []string{text}
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch longer := line + " " + word; {
		case line == "":
			line = word
		case l.width(longer) <= width:
			line = longer
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}

// dotted ends a line in dots, in place of as many words as it takes to keep to
// a width.
func (l *letters) dotted(line string, width vg.Length) string {
	words := strings.Fields(line)
	for n := len(words); n > 0; n-- {
		if text := strings.Join(words[:n], " ") + " …"; l.width(text) <= width {
			return text
		}
	}
	return "…"
}

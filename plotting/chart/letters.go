package chart

import (
	"image/color"
	"math"
	"strings"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Text sizes at scale 1 [pt]; 8.25 pt is 11 px at 96 dpi.
const (
	titleSize = 9
	bodySize  = 8.25
	smallSize = 6.5
)

// letters set text in one font and size.
type letters struct {
	face font.Face
	size vg.Length
}

// lettersOf returns Liberation Sans, which comes with the program.
func lettersOf(size vg.Length, bold bool) letters {
	f := font.Font{Typeface: "Liberation", Variant: "Sans"}
	if bold {
		f.Weight = xfont.WeightBold
	}
	return letters{plot.DefaultTextHandler.Cache().Lookup(f, size), size}
}

// Heights of Liberation Sans over its size.
const (
	capHeight = 0.73
	descent   = 0.21
	leading   = 1.3
)

func (l *letters) width(text string) vg.Length { return l.face.Width(text) }

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

// wrap breaks text into lines of at most a width, at spaces. A width of zero
// or less never breaks.
func (l *letters) wrap(text string, width vg.Length) []string {
	if text == "" {
		return nil
	}
	if width <= 0 || l.width(text) <= width {
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
		if text := strings.Join(words[:n], " ") + " …"; width <= 0 || l.width(text) <= width {
			return text
		}
	}
	return "…"
}

// Package charttest looks at charts as a person does: which text stands where,
// which color a pixel has. It is for tests.
package charttest

import (
	"image"
	"image/color"
	"math"
	"strings"

	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
)

// Light is the style of a light screen in US units.
var Light = chart.Style{Palette: palette.Light}

// Text is a text and the room that its letters take [pt].
type Text struct {
	Text string
	Box  vg.Rectangle
}

// slop is how far text may stick out or overlap [pt].
const slop = 0.3

// Over reports whether two texts run into each other.
func (a Text) Over(b Text) bool {
	return a.Box.Min.X+slop < b.Box.Max.X && b.Box.Min.X+slop < a.Box.Max.X && a.Box.Min.Y+slop < b.Box.Max.Y && b.Box.Min.Y+slop < a.Box.Max.Y
}

// Outside reports whether a text is cut off at the edge of a drawing.
func (a Text) Outside(width, height vg.Length) bool {
	return a.Box.Min.X < -slop || a.Box.Min.Y < -slop || a.Box.Max.X > width+slop || a.Box.Max.Y > height+slop
}

// Spy is a canvas of a size that notes where text is set, and records the rest.
type Spy struct {
	recorder.Canvas
	Width, Height vg.Length
	Texts         []Text

	turns []float64
}

// Size implements vg.CanvasSizer.
func (s *Spy) Size() (width, height vg.Length) { return s.Width, s.Height }

// Push implements vg.Canvas.
func (s *Spy) Push() { s.turns = append(s.turns, s.turn()); s.Canvas.Push() }

// Pop implements vg.Canvas.
func (s *Spy) Pop() { s.turns = s.turns[:len(s.turns)-1]; s.Canvas.Pop() }

// Rotate implements vg.Canvas.
func (s *Spy) Rotate(rad float64) {
	s.turns[len(s.turns)-1] += rad
	s.Canvas.Rotate(rad)
}

func (s *Spy) turn() float64 {
	if len(s.turns) == 0 {
		return 0
	}
	return s.turns[len(s.turns)-1]
}

// FillString implements vg.Canvas.
func (s *Spy) FillString(f font.Face, pt vg.Point, text string) {
	ink := vg.Rectangle{
		Min: vg.Point{X: pt.X, Y: pt.Y - 0.2*f.Font.Size},
		Max: vg.Point{X: pt.X + f.Width(text), Y: pt.Y + 0.72*f.Font.Size},
	}
	if s.turn() != 0 {
		turn := func(p vg.Point) vg.Point {
			sin, cos := math.Sincos(s.turn())
			return vg.Point{X: p.X*vg.Length(cos) - p.Y*vg.Length(sin), Y: p.X*vg.Length(sin) + p.Y*vg.Length(cos)}
		}
		a, b := turn(ink.Min), turn(ink.Max)
		ink = vg.Rectangle{Min: vg.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, Max: vg.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}}
	}
	if text != "" {
		s.Texts = append(s.Texts, Text{text, ink})
	}
}

// Points returns a number of pixels at 96 dpi in points.
func Points(px float64) vg.Length { return vg.Length(px) * vg.Inch / 96 }

// NewSpy returns a spy of a size in pixels at 96 dpi.
func NewSpy(width, height float64) *Spy {
	s := &Spy{Width: Points(width), Height: Points(height)}
	s.KeepCaller = false
	return s
}

// Pixels returns the middle of a text's capitals in pixels at 96 dpi, from the top
// left.
func (s *Spy) Pixels(t Text) (px, py float64) {
	up := t.Box.Min.Y + 0.61*t.Box.Size().Y
	return float64((t.Box.Min.X+t.Box.Max.X)/2) * 96 / 72, float64(s.Height-up) * 96 / 72
}

// Draw draws a chart over a whole spy, light.
func (s *Spy) Draw(c *chart.Chart, u units.System) {
	s.DrawStyle(c, chart.Style{Palette: palette.Light, Units: u})
}

// DrawStyle draws a chart over a whole spy.
func (s *Spy) DrawStyle(c *chart.Chart, style chart.Style) {
	c.Draw(draw.New(s), style)
}

// Texts draws a chart of a size in pixels at 96 dpi and returns its texts, in the
// order in which they are drawn.
func Texts(c *chart.Chart, u units.System, width, height float64) []Text {
	s := NewSpy(width, height)
	s.Draw(c, u)
	return s.Texts
}

// Words are the texts without their places.
func Words(c *chart.Chart, u units.System, width, height float64) []string {
	var list []string
	for _, t := range Texts(c, u, width, height) {
		list = append(list, t.Text)
	}
	return list
}

// Notes writes what stands under a chart's legend, where there is room for all
// of it.
func Notes(c *chart.Chart, u units.System) string {
	f := c.Frame(&chart.Style{Units: u})
	var all []string
	for _, n := range c.Notes {
		all = append(all, n(f))
	}
	return strings.TrimSpace(strings.Join(all, " "))
}

// TB is a test, or a try of a property test.
type TB interface {
	Helper()
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// Line returns the line of the first setup with a name.
func Line(t TB, c *chart.Chart, name string) *chart.Line {
	t.Helper()
	for i := range c.Lines {
		if c.Lines[i].Name == name {
			return &c.Lines[i]
		}
	}
	t.Fatalf("%s has no line %q", c.Key, name)
	return nil
}

// Rule returns the rule of a chart whose label in US units begins so; nil for
// none.
func Rule(c *chart.Chart, label string) *chart.Rule {
	for i := range c.Rules {
		if r := &c.Rules[i]; strings.HasPrefix(r.Label(units.US), label) {
			return r
		}
	}
	return nil
}

// Draw draws a chart into a new image of a size at 96 dpi.
func Draw(t TB, c *chart.Chart, width, height int, s chart.Style, m chart.Marker) (*image.RGBA, chart.Layout) {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	var r chart.Renderer
	l, err := r.Draw(img, 96, c, s, m)
	if err != nil {
		t.Fatal(err)
	}
	return img, l
}

// Like reports whether a color comes near another: on the edge of a line it is
// mixed with what lies below.
func Like(a, b color.RGBA, tolerance float64) bool {
	d := func(x, y uint8) float64 { return float64(x) - float64(y) }
	return math.Sqrt(d(a.R, b.R)*d(a.R, b.R)+d(a.G, b.G)*d(a.G, b.G)+d(a.B, b.B)*d(a.B, b.B)) < tolerance
}

// Near reports whether a color occurs within a pixel of a place.
func Near(img *image.RGBA, px, py float64, want color.RGBA) bool {
	for dy := -1.0; dy <= 1; dy++ {
		for dx := -1.0; dx <= 1; dx++ {
			if Like(img.RGBAAt(int(px+dx), int(py+dy)), want, 95) {
				return true
			}
		}
	}
	return false
}

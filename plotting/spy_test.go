package plotting

import (
	"math"

	"bowline/model/units"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
)

// spy is a canvas that notes where text is set.
type spy struct {
	recorder.Canvas
	turns []float64
	texts []spied
}

// spied is a text and the room it takes.
type spied struct {
	text string
	box  vg.Rectangle
}

func (s *spy) Push() { s.turns = append(s.turns, s.turn()); s.Canvas.Push() }
func (s *spy) Pop()  { s.turns = s.turns[:len(s.turns)-1]; s.Canvas.Pop() }
func (s *spy) Rotate(rad float64) {
	s.turns[len(s.turns)-1] += rad
	s.Canvas.Rotate(rad)
}

func (s *spy) turn() float64 {
	if len(s.turns) == 0 {
		return 0
	}
	return s.turns[len(s.turns)-1]
}

func (s *spy) FillString(f font.Face, pt vg.Point, text string) {
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
		s.texts = append(s.texts, spied{text, ink})
	}
}

// sheetSpy is a spy of a size.
type sheetSpy struct {
	spy
	width, height vg.Length
}

func (s *sheetSpy) Size() (w, h vg.Length) { return s.width, s.height }

// texts draws a chart of a size in pixels at 96 dpi and returns its texts.
func texts(c *Chart, s units.System, width, height float64) []spied {
	w, h := vg.Length(width)*vg.Inch/96, vg.Length(height)*vg.Inch/96
	var to spy
	to.KeepCaller = false
	c.Plot(Style{Palette: paper(), Units: s, Width: w, Height: h}).Draw(draw.NewCanvas(&to, w, h))
	return to.texts
}

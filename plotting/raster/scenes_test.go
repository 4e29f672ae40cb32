package raster_test

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// sans is the font of the scenes at a size [pt].
func sans(size vg.Length) font.Face {
	return font.DefaultCache.Lookup(font.Font{Typeface: "Liberation", Variant: "Sans"}, size)
}

// newChart returns a chart of three lines of 101 points, one of them dashed,
// with grid, legend and titles.
func newChart() *plot.Plot {
	p := plot.New()
	for _, f := range []*font.Font{
		&p.Title.TextStyle.Font, &p.X.Label.TextStyle.Font, &p.Y.Label.TextStyle.Font,
		&p.X.Tick.Label.Font, &p.Y.Tick.Label.Font, &p.Legend.TextStyle.Font,
	} {
		f.Variant = "Sans"
	}
	p.Title.Text = "Anti-squat through suspension travel"
	p.X.Label.Text = "Travel, mm"
	p.Y.Label.Text = "Anti-squat, %"
	p.Legend.Top = true
	p.Add(plotter.NewGrid())
	for i, name := range []string{"as drawn", "lower bar up", "limit"} {
		points := make(plotter.XYs, 101)
		for k := range points {
			x := float64(k)/50 - 1
			points[k] = plotter.XY{X: 100 * x, Y: 120 + 15*float64(i)*x - 20*x*x + 5*math.Sin(6*x+float64(i))}
		}
		line, err := plotter.NewLine(points)
		if err != nil {
			panic(err)
		}
		line.Width = vg.Points(1.5)
		line.Color = []color.Color{color.RGBA{R: 31, G: 92, B: 168, A: 255}, color.RGBA{R: 200, G: 72, B: 30, A: 255}, color.RGBA{R: 40, G: 130, B: 60, A: 255}}[i]
		if i == 2 {
			line.Dashes = []vg.Length{vg.Points(6), vg.Points(3)}
		}
		p.Add(line)
		p.Legend.Add(name, line)
	}
	return p
}

// drawChart builds the chart and draws it.
func drawChart(c vg.CanvasSizer) {
	newChart().Draw(draw.Crop(draw.New(c), vg.Points(4), -vg.Points(12), vg.Points(4), -vg.Points(6)))
}

// sideView is a scene like a side view of a suspension: 186 primitives.
type sideView struct {
	path         vg.Path
	face         font.Face
	labels       []string
	white, gray  color.Color
	member, dash color.Color
	ink, fill    color.Color
	pattern      []vg.Length
}

func newSideView() *sideView {
	v := &sideView{
		face:    sans(8),
		white:   color.White,
		gray:    color.Gray{Y: 210},
		fill:    color.NRGBA{R: 90, G: 140, B: 200, A: 70},
		member:  color.RGBA{R: 60, G: 70, B: 90, A: 255},
		dash:    color.RGBA{R: 180, G: 40, B: 40, A: 255},
		ink:     color.Gray{Y: 30},
		pattern: []vg.Length{vg.Points(6), vg.Points(3)},
	}
	for i := range 50 {
		v.labels = append(v.labels, fmt.Sprintf("P%d  %.1f mm", i, 12.5*float64(i)))
	}
	return v
}

// segment strokes a straight line.
func (v *sideView) segment(c vg.Canvas, x0, y0, x1, y1 float64) {
	v.path = v.path[:0]
	v.path.Move(vg.Point{X: vg.Length(x0), Y: vg.Length(y0)})
	v.path.Line(vg.Point{X: vg.Length(x1), Y: vg.Length(y1)})
	c.Stroke(v.path)
}

// quad sets the path to a quadrilateral of four corners.
func (v *sideView) quad(xy ...float64) {
	v.path = v.path[:0]
	v.path.Move(vg.Point{X: vg.Length(xy[0]), Y: vg.Length(xy[1])})
	for i := 2; i < len(xy); i += 2 {
		v.path.Line(vg.Point{X: vg.Length(xy[i]), Y: vg.Length(xy[i+1])})
	}
	v.path.Close()
}

// circle sets the path to a circle.
func (v *sideView) circle(x, y, r float64) {
	v.path = v.path[:0]
	v.path.Move(vg.Point{X: vg.Length(x + r), Y: vg.Length(y)})
	v.path.Arc(vg.Point{X: vg.Length(x), Y: vg.Length(y)}, vg.Length(r), 0, 2*math.Pi)
	v.path.Close()
}

// draw draws the scene into a canvas of 750 x 450 points.
func (v *sideView) draw(c vg.CanvasSizer) {
	const w, h = 750, 450
	c.SetColor(v.white)
	v.quad(0, 0, w, 0, w, h, 0, h)
	c.Fill(v.path)

	// The grid: 32 lines.
	c.SetLineWidth(0.5)
	c.SetColor(v.gray)
	for i := range 20 {
		v.segment(c, 37.5*float64(i), 0, 37.5*float64(i), h)
	}
	for i := range 12 {
		v.segment(c, 0, 37.5*float64(i), w, 37.5*float64(i))
	}
	// 8 translucent quadrilaterals.
	c.SetColor(v.fill)
	for i := range 8 {
		x, y := 60+80*float64(i), 120+25*float64(i%3)
		v.quad(x, y, x+110, y+20, x+90, y+130, x-15, y+95)
		c.Fill(v.path)
	}
	// 2 wheels.
	for i := range 2 {
		c.SetColor(v.gray)
		v.circle(140+460*float64(i), 110, 85)
		c.Fill(v.path)
		c.SetColor(v.member)
		c.SetLineWidth(6)
		c.Stroke(v.path)
	}
	// 40 members.
	c.SetColor(v.member)
	for i := range 40 {
		a := float64(i)
		c.SetLineWidth(vg.Length(1 + 0.1*a))
		v.segment(c, 40+16*a, 80+60*math.Sin(a), 90+15*a, 300+80*math.Cos(1.3*a))
	}
	// 12 dashed lines across the page.
	c.SetColor(v.dash)
	c.SetLineWidth(1)
	c.SetLineDash(v.pattern, 0)
	for i := range 12 {
		v.segment(c, 10, 30+30*float64(i), 740, 60+27*float64(i))
	}
	c.SetLineDash(nil, 0)
	// 2 curves.
	c.SetLineWidth(1.5)
	for i := range 2 {
		v.path = v.path[:0]
		v.path.Move(vg.Point{X: 30, Y: vg.Length(200 + 100*i)})
		for k := 1; k <= 60; k++ {
			x := float64(k) / 60
			v.path.Line(vg.Point{X: vg.Length(30 + 690*x), Y: vg.Length(float64(200+100*i) + 60*math.Sin(7*x))})
		}
		c.Stroke(v.path)
	}
	// 40 handles.
	for i := range 40 {
		a := float64(i)
		v.circle(40+16*a, 80+60*math.Sin(a), 4)
		c.SetColor(v.white)
		c.Fill(v.path)
		c.SetColor(v.ink)
		c.SetLineWidth(1)
		c.Stroke(v.path)
	}
	// 50 labels, 10 of them turned.
	c.SetColor(v.ink)
	for i, text := range v.labels {
		at := vg.Point{X: vg.Length(20 + 72*(i%10)), Y: vg.Length(40 + 85*(i/10))}
		if i%5 != 0 {
			c.FillString(v.face, at, text)
			continue
		}
		c.Push()
		c.Translate(at)
		c.Rotate(0.6)
		c.FillString(v.face, vg.Point{}, text)
		c.Pop()
	}
}

package chart

import (
	"fmt"
	"image"
	"math"

	"bowline/model/units"
	"bowline/plotting/raster"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Marker shows on a chart where the car stands. The zero value shows nothing.
type Marker struct {
	On bool
	At float64 // rear travel [m], or on a chart of LaunchCharts time [s]
}

// Mark returns the marker of a rear travel [m] or a time [s].
func Mark(at float64) Marker { return Marker{On: true, At: at} }

// Layout tells what is where in a drawn chart. Pixels count from the top left
// corner of the image, right and down; data are in SI.
type Layout struct {
	Left, Top, Right, Bottom float64 // the data area [px]
	Frame                    Frame

	chart *Chart
}

// ToPixel returns where in the image a point of the data is.
func (l *Layout) ToPixel(x, y float64) (px, py float64) {
	px = l.Left + (x-l.Frame.X.Min)/l.Frame.X.Length()*(l.Right-l.Left)
	py = l.Bottom - (y-l.Frame.Y.Min)/l.Frame.Y.Length()*(l.Bottom-l.Top)
	return px, py
}

// ToData returns the point of the data under a pixel.
func (l *Layout) ToData(px, py float64) (x, y float64) {
	x = l.Frame.X.Min + (px-l.Left)/(l.Right-l.Left)*l.Frame.X.Length()
	y = l.Frame.Y.Min + (l.Bottom-py)/(l.Bottom-l.Top)*l.Frame.Y.Length()
	return x, y
}

// Along returns the x under a pixel or the end of a span that is nearer, and how
// far off that is [px].
func (l *Layout) Along(s Span, px, py float64) (at, off float64) {
	x, y := l.ToData(px, py)
	at = s.Clamp(x)
	there, _ := l.ToPixel(at, y)
	return at, math.Abs(there - px)
}

// Contains reports whether a pixel is in the data area.
func (l *Layout) Contains(px, py float64) bool {
	return px >= l.Left && px <= l.Right && py >= l.Top && py <= l.Bottom
}

// At returns the position that a pixel stands for, a rear travel [m] or a time
// [s]: that of its x, or of the nearest station of a path. It returns false
// outside of the data area and for a chart whose points stand for no position.
func (l *Layout) At(px, py float64) (float64, bool) {
	if l.chart == nil || !l.Contains(px, py) {
		return 0, false
	}
	at, _, ok := l.chart.Subject.PositionAt(l, px, py)
	return at, ok
}

// Readout writes the values under a pixel, one line each. It returns nothing
// outside of the data area.
func (l *Layout) Readout(px, py float64, s units.System) []string {
	if l.chart == nil || !l.Contains(px, py) {
		return nil
	}
	if at, ok := l.At(px, py); ok {
		return l.chart.Readout(at, s)
	}
	return written(l.chart.Subject.ReadoutAt(l, px, py, s))
}

// Renderer draws charts into images. It keeps the last chart drawn, so that a
// marker that moves costs next to nothing. A Renderer serves one goroutine at
// a time, any; the zero value is ready.
type Renderer struct {
	canvas raster.Canvas
	base   *image.RGBA // the last chart, without marker

	picture *picture
	style   Style
	dpi     float64
	plot    *plot.Plot
	layout  Layout
}

// leastArea is the least width and height of a data area at scale 1 [pt].
const leastArea = 24

// Draw fills an image with a chart and a marker, at a resolution [px/inch]
// that is 96 times the screen's scale. It
// sets the style's Width and Height. It refuses
// an image that leaves no room for data; the image is then the background.
func (r *Renderer) Draw(img *image.RGBA, dpi float64, c *Chart, s Style, m Marker) (Layout, error) {
	size := img.Bounds().Size()
	s.Width, s.Height = vg.Length(float64(size.X)/dpi)*vg.Inch, vg.Length(float64(size.Y)/dpi)*vg.Inch
	if !r.holds(size, dpi, c, s) {
		if err := r.drawBase(size, dpi, c, s); err != nil {
			r.picture = nil
			r.canvas.Reset(img, dpi)
			r.canvas.Clear(s.Palette.Background)
			return Layout{}, err
		}
	}
	r.copyBase(img)
	if m.On {
		r.canvas.Reset(img, dpi)
		r.drawMarker(m)
	}
	return r.layout, nil
}

// holds reports whether the base is just this drawing.
func (r *Renderer) holds(size image.Point, dpi float64, c *Chart, s Style) bool {
	return r.picture != nil && r.picture.Chart == c && r.style == s && r.dpi == dpi && r.base.Bounds().Size() == size
}

// drawBase draws the chart without a marker.
func (r *Renderer) drawBase(size image.Point, dpi float64, c *Chart, s Style) error {
	if r.base == nil || r.base.Bounds().Size() != size {
		r.base = image.NewRGBA(image.Rectangle{Max: size})
	}
	r.style, r.dpi = s, dpi
	r.picture = c.picture(s, false, vg.Inch/vg.Length(dpi))
	r.layout = r.picture.layout(size, dpi)
	if least := float64(leastArea*r.picture.scale/vg.Inch) * dpi; r.layout.Right-r.layout.Left < least || r.layout.Bottom-r.layout.Top < least {
		return fmt.Errorf("an image of %d × %d px leaves no room for the chart; make it larger or the text smaller", size.X, size.Y)
	}
	r.plot = r.picture.plot()
	r.plot.BackgroundColor = nil
	r.canvas.Reset(r.base, dpi)
	r.canvas.Clear(s.Palette.Background)
	r.plot.Draw(draw.New(&r.canvas))
	return nil
}

// layout finds the data area of a drawing that fills an image.
func (p *picture) layout(size image.Point, dpi float64) Layout {
	px := func(x vg.Length) float64 { return float64(x/vg.Inch) * dpi }
	return Layout{
		Left: px(p.margins.left), Top: px(p.margins.top),
		Right: float64(size.X) - px(p.margins.right), Bottom: float64(size.Y) - px(p.margins.bottom),
		Frame: p.frame, chart: p.Chart,
	}
}

// copyBase copies the base into an image of its size.
func (r *Renderer) copyBase(img *image.RGBA) {
	size := img.Bounds().Size()
	for y := range size.Y {
		copy(img.Pix[y*img.Stride:y*img.Stride+4*size.X], r.base.Pix[y*r.base.Stride:])
	}
}

// drawMarker draws the line and the dots of a marker.
func (r *Renderer) drawMarker(m Marker) {
	p := r.picture
	c := r.plot.DataCanvas(draw.New(&r.canvas))
	x, y := r.plot.Transforms(&c)
	at := p.Subject.Place(m.At)
	if at.Line && p.frame.X.Contains(at.X) {
		line := draw.LineStyle{Color: p.style.Palette.Accent, Width: hairWidth * p.scale}
		across := p.snap(x(at.X))
		c.StrokeLine2(line, across, c.Min.Y, across, c.Max.Y)
	}
	for _, d := range at.Dots {
		if up := p.frame.onLeft(d.At.Y, d.Right); p.frame.X.Contains(d.At.X) && p.frame.Y.Contains(up) {
			size := 1.0
			if d.Setup > 0 {
				size = furtherSize
			}
			p.dot(c, p.inkOf(d.Ink, d.Setup), vg.Point{X: x(d.At.X), Y: y(up)}, size)
		}
	}
}

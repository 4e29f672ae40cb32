package chart

import (
	"fmt"
	"image"
	"math"

	"bowline/plotting/raster"

	"gonum.org/v1/plot/plotter"
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

// Renderer draws charts into images. It keeps the last chart drawn, so that a
// marker that moves costs next to nothing. A Renderer serves one goroutine at
// a time, any; the zero value is ready.
type Renderer struct {
	canvas raster.Canvas
	base   *image.RGBA // the last chart, without marker

	picture *picture
	fonts   typeset
	style   Style
	dpi     float64
	layout  Layout
}

// Draw fills an image with a chart and a marker, at a resolution [px/inch]
// that is 96 times the screen's scale. It refuses an image that leaves no room
// for data; the image is then the background.
func (r *Renderer) Draw(img *image.RGBA, dpi float64, c *Chart, s Style, m Marker) (Layout, error) {
	size := img.Bounds().Size()
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
	if r.fonts == nil {
		r.fonts = typeset{}
	}
	r.style, r.dpi = s, dpi
	r.canvas.Reset(r.base, dpi)
	r.canvas.Clear(s.Palette.Background)
	to := draw.New(r.crisp())
	r.picture = c.picture(s, to.Max.X, to.Max.Y, false, vg.Inch/vg.Length(dpi), r.fonts)
	area, ok := r.picture.area(to)
	if !ok {
		return fmt.Errorf("an image of %d × %d px leaves no room for the chart; make it larger or the text smaller", size.X, size.Y)
	}
	r.layout = layoutOf(area, size, dpi)
	r.layout.Frame, r.layout.chart = r.picture.frame, c
	r.picture.draw(to)
	return nil
}

// crisp returns the canvas with level and upright lines set onto whole pixels.
func (r *Renderer) crisp() crisp { return crisp{&r.canvas, vg.Inch / vg.Length(r.dpi)} }

// crisp is a canvas that sets level and upright lines onto whole pixels, so that
// grid and axes are not two pixels wide and pale.
type crisp struct {
	*raster.Canvas
	pixel vg.Length
}

// Stroke implements vg.Canvas.
func (c crisp) Stroke(p vg.Path) {
	if len(p) == 2 {
		switch a, b := &p[0].Pos, &p[1].Pos; {
		case a.X == b.X:
			a.X = c.onto(a.X)
			b.X = a.X
		case a.Y == b.Y:
			a.Y = c.onto(a.Y)
			b.Y = a.Y
		}
	}
	c.Canvas.Stroke(p)
}

// onto returns the middle of the pixel that a coordinate is in.
func (c crisp) onto(x vg.Length) vg.Length {
	return (vg.Length(math.Floor(float64(x/c.pixel))) + 0.5) * c.pixel
}

// copyBase copies the base into an image of its size.
func (r *Renderer) copyBase(img *image.RGBA) {
	size := img.Bounds().Size()
	for y := range size.Y {
		copy(img.Pix[y*img.Stride:y*img.Stride+4*size.X], r.base.Pix[y*r.base.Stride:])
	}
}

// drawMarker draws the line and the dots of a marker. They are no part of the
// plot.Plot, which would be drawn anew for each of their moves.
func (r *Renderer) drawMarker(m Marker) {
	p, to := r.picture, draw.New(r.crisp())
	area := p.plot.DataCanvas(p.inner(to))
	at := p.Subject.Place(m.At)
	if at.Line && p.frame.X.Contains(at.X) {
		upright(at.X, p.frame.Y, p.hair(p.style.Palette.Accent)).Plot(area, p.plot)
	}
	for _, d := range at.Dots {
		size := 1.0
		if d.Setup > 0 {
			size = furtherSize
		}
		xy := plotter.XY{X: d.At.X, Y: p.frame.onLeft(d.At.Y, d.Right)}
		dot := plotter.Scatter{XYs: plotter.XYs{xy}, GlyphStyle: p.glyph(Disc, p.inkOf(d.Ink, d.Setup), size)}
		dot.Plot(area, p.plot)
	}
}

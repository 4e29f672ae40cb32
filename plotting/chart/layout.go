package chart

import (
	"image"
	"math"

	"bowline/model/units"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Layout says what is where in a drawn chart. Pixels count from the top left
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

// layoutOf finds the data area of a drawing that fills an image.
func layoutOf(area draw.Canvas, size image.Point, dpi float64) Layout {
	px := func(x vg.Length) float64 { return float64(x/vg.Inch) * dpi }
	return Layout{
		Left: px(area.Min.X), Right: px(area.Max.X),
		Top: float64(size.Y) - px(area.Max.Y), Bottom: float64(size.Y) - px(area.Min.Y),
	}
}

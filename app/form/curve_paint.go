package form

import (
	"math"

	"bowline/app/look"
	"bowline/app/sheet"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// frame is the part of the plane that a Curve shows, from its lower left corner to
// its upper right one, with ticks at round numbers.
type frame struct {
	from, to     Point
	stepX, stepY float64
	left         float32 // room for the numbers of the upright axis [px]
}

const (
	// mostTicks bounds the intervals of an axis.
	mostTicks = 6
	// headroom is by how much the upright axis is longer than the line is high [1].
	headroom = 1.15
	// curveTop and curveBottom are what stands above and below the line, curveRight
	// what is free beside it [px].
	curveTop, curveBottom, curveRight = 24, 17, 9
	// labelGap is the least distance of two labels [px].
	labelGap = 6
	// axisGap keeps the numbers of the upright axis clear of a point on it [px].
	axisGap = 9
)

// newFrame returns a frame that holds a plot.
func newFrame(p *Plot) frame {
	if len(p.Line) == 0 {
		return frame{to: Point{1, 1}, stepX: 1, stepY: 1}
	}
	f := frame{from: Point{math.Inf(1), 0}, to: Point{math.Inf(-1), 0}}
	seen := append(append([]Point{}, p.Line...), p.Second...)
	if p.Mark != nil {
		seen = append(seen, *p.Mark)
	}
	for _, q := range seen {
		f.from.X, f.to.X, f.to.Y = min(f.from.X, q.X), max(f.to.X, q.X), max(f.to.Y, q.Y*headroom)
	}
	if !(f.to.X > f.from.X) {
		f.to.X = f.from.X + 1
	}
	if f.to.Y <= 0 {
		f.to.Y = 1
	}
	f.stepX, f.stepY = rounded((f.to.X-f.from.X)/mostTicks), rounded(f.to.Y/mostTicks)
	for _, y := range f.ticksY() {
		f.left = max(f.left, fyne.MeasureText(label(y, f.stepY), theme.CaptionTextSize(), fyne.TextStyle{}).Width)
	}
	f.left += axisGap
	return f
}

// rounded returns the least 1, 2 or 5 times a power of ten that is not below x.
func rounded(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= x*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}

// snap returns the multiple of a grain nearest to x, without what rounding leaves.
func snap(x, grain float64) float64 {
	n := math.Round(x / grain)
	if grain < 1 {
		return n / math.Round(1/grain)
	}
	return n * grain
}

// ticks lists the multiples of a step in a range.
func ticks(from, to, step float64) []float64 {
	var list []float64
	for n := math.Ceil(from/step - 1e-9); n*step <= to+1e-9*step; n++ {
		list = append(list, snap(n*step, step))
	}
	return list
}

func (f *frame) ticksX() []float64 { return ticks(f.from.X, f.to.X, f.stepX) }
func (f *frame) ticksY() []float64 { return ticks(f.from.Y, f.to.Y, f.stepY) }

// label writes a multiple of a step.
func label(x, step float64) string {
	return units.Decimal(x, max(0, -int(math.Floor(math.Log10(step)+1e-9))))
}

// inner returns the size of the part in which the lines are.
func (f *frame) inner(size fyne.Size) fyne.Size {
	return fyne.NewSize(max(size.Width-f.left-curveRight, 1), max(size.Height-curveTop-curveBottom, 1))
}

// place returns where a point is drawn in a chart of a size.
func (f *frame) place(p Point, size fyne.Size) fyne.Position {
	in := f.inner(size)
	x := (p.X - f.from.X) / (f.to.X - f.from.X)
	y := (p.Y - f.from.Y) / (f.to.Y - f.from.Y)
	return fyne.NewPos(f.left+in.Width*float32(x), curveTop+in.Height*float32(1-y))
}

// point is the inverse of place.
func (f *frame) point(at fyne.Position, size fyne.Size) Point {
	in := f.inner(size)
	x, y := float64((at.X-f.left)/in.Width), 1-float64((at.Y-curveTop)/in.Height)
	return Point{f.from.X + x*(f.to.X-f.from.X), f.from.Y + y*(f.to.Y-f.from.Y)}
}

// grains are the steps in which a point is dragged: round numbers, about a pixel.
func (f *frame) grains(size fyne.Size) (x, y float64) {
	in := f.inner(size)
	return rounded((f.to.X - f.from.X) / float64(in.Width)), rounded((f.to.Y - f.from.Y) / float64(in.Height))
}

// Radii of points [px].
const (
	pointRadius, pointedRadius = 4, 5.5
	pointRim                   = 1.5
	lineWidth                  = 2
)

// paint draws the chart.
func (c *Curve) paint(p *sheet.Pen) {
	size, f, colors := c.Size(), &c.frame, look.Current()
	at := func(q Point) fyne.Position { return f.place(q, size) }
	face := sheet.Face(fyne.TextStyle{}, theme.CaptionTextSize())
	thin := p.Hairline()
	low, high := at(f.from), at(f.to)

	// What the lines are.
	const headline = 15
	p.Words(0, headline, c.plot.Y, face, colors.Accent)
	if c.plot.Other != "" {
		p.Words(size.Width-curveRight-p.Width(c.plot.Other, face), headline, c.plot.Other, face, colors.Muted)
	}
	// Grid and numbers.
	for _, y := range f.ticksY() {
		q := at(Point{f.from.X, y})
		p.Box(low.X, p.Snap(q.Y), high.X-low.X, thin, colors.Grid)
		text := label(y, f.stepY)
		p.Words(f.left-axisGap+1-p.Width(text, face), q.Y+4, text, face, colors.Muted)
	}
	foot := size.Height - 3
	name := size.Width - p.Width(c.plot.X, face)
	p.Words(name, foot, c.plot.X, face, colors.Muted)
	free := float32(0) // where the next number may begin
	for _, x := range f.ticksX() {
		q := at(Point{x, f.from.Y})
		p.Box(p.Snap(q.X), high.Y, thin, low.Y-high.Y, colors.Grid)
		text := label(x, f.stepX)
		width := p.Width(text, face)
		if left := q.X - width/2; left >= free && left+width+labelGap <= name {
			p.Words(left, foot, text, face, colors.Muted)
			free = left + width + labelGap
		}
	}
	if c.focused {
		p.Frame(low.X, high.Y, high.X-low.X, low.Y-high.Y, thin, colors.Accent)
	}
	// Lines and points.
	through := func(points []Point) []fyne.Position {
		places := make([]fyne.Position, len(points))
		for i, q := range points {
			places[i] = at(q)
		}
		return places
	}
	p.Line(thin, colors.Muted, through(c.plot.Second)...)
	p.Line(lineWidth, colors.Accent, through(c.plot.Line)...)
	if c.plot.Mark != nil {
		q := at(*c.plot.Mark)
		const half = pointedRadius + 2
		p.Frame(q.X-half, q.Y-half, 2*half, 2*half, thin, colors.Ink)
	}
	for i, q := range c.plot.Points {
		radius := float32(pointRadius)
		if i == c.hovered || i == c.held {
			radius = pointedRadius
		}
		p.Dot(at(q), radius, colors.Accent)
		if i != c.selected {
			p.Dot(at(q), radius-pointRim, colors.Background)
		}
	}
}

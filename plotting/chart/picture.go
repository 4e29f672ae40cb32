package chart

import (
	"image/color"
	"math"

	"bowline/plotting/palette"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Distances at scale 1 [pt].
const (
	edge      = 4.5 // between the drawing's edge and anything
	gap       = 3.0 // between things that belong together
	tickMark  = 3.0
	swatch    = 16 // legend line
	swatchGap = 9  // between legend entries
	comfort   = 80 // height of the data area that remarks leave alone
)

// picture is a chart made ready to draw: axes fixed, text set, room measured.
type picture struct {
	*Chart
	style Style
	frame Frame
	scale vg.Length
	pixel vg.Length // lines are set onto pixels of this size; 0 for none

	title, body    letters
	titleText      string
	xTicks, yTicks []tick
	rightTicks     []tick
	header         header
	margins        margins
}

// Plot returns the chart as a plot.Plot, in SI, for drawing on any canvas by
// one goroutine. Nothing has to be added to it: it leaves its own room for
// axes, title and legend.
func (c *Chart) Plot(s Style) *plot.Plot { return c.picture(s, false, 0).plot() }

// picture makes the chart ready to draw; on paper with its subtitle.
func (c *Chart) picture(s Style, paper bool, pixel vg.Length) *picture {
	p := &picture{Chart: c, style: s, scale: s.size(), pixel: pixel, frame: c.Frame(&s)}
	p.title, p.body = lettersOf(titleSize*p.scale, true), lettersOf(bodySize*p.scale, false)
	p.xTicks, p.yTicks = c.X.ticks(s.Units, p.frame.X), c.Y.ticks(s.Units, p.frame.Y)
	if c.Right != nil {
		p.rightTicks = c.rightTicks(&p.frame)
	}
	p.titleText = p.fitTitle()
	p.header = p.layHeader(paper)
	p.margins = p.measure()
	return p
}

// plot puts the layers together.
func (p *picture) plot() *plot.Plot {
	out := plot.New()
	out.HideAxes()
	out.X.Padding, out.Y.Padding = 0, 0
	out.BackgroundColor = p.style.Palette.Background
	out.Add(p.margins, layer(p.drawRegions), layer(p.drawGrid), layer(p.drawHeader), layer(p.drawAxes), layer(p.drawData))
	out.X.Min, out.X.Max = p.frame.X.Min, p.frame.X.Max
	out.Y.Min, out.Y.Max = p.frame.Y.Min, p.frame.Y.Max
	return out
}

// layer is a plot.Plotter that is a function.
type layer func(*view)

// Plot implements plot.Plotter.
func (l layer) Plot(c draw.Canvas, p *plot.Plot) {
	v := &view{Canvas: c}
	v.x, v.y = p.Transforms(&c)
	l(v)
}

// onLeft returns a value as the left axis has it.
func (f *Frame) onLeft(y float64, right bool) float64 {
	if right {
		return y * f.Right
	}
	return y
}

// view is the data area of a canvas with the way from SI values to it.
type view struct {
	draw.Canvas
	x, y func(float64) vg.Length
}

// margins are what axes and header take. As a plot.GlyphBoxer they make a
// plot.Plot leave exactly this room around the data area.
type margins struct{ left, right, top, bottom vg.Length }

// Plot implements plot.Plotter and draws nothing.
func (m margins) Plot(draw.Canvas, *plot.Plot) {}

// GlyphBoxes implements plot.GlyphBoxer: a box at each of two opposite corners.
func (m margins) GlyphBoxes(*plot.Plot) []plot.GlyphBox {
	return []plot.GlyphBox{
		{X: 0, Y: 0, Rectangle: vg.Rectangle{Min: vg.Point{X: -m.left, Y: -m.bottom}}},
		{X: 1, Y: 1, Rectangle: vg.Rectangle{Max: vg.Point{X: m.right, Y: m.top}}},
	}
}

// measure finds the room around the data area.
func (p *picture) measure() margins {
	var last vg.Length
	if n := len(p.xTicks); n > 0 {
		last = p.body.width(p.xTicks[n-1].label) / 2
	}
	s := p.scale
	m := margins{
		left:   p.side(p.yTicks),
		right:  max(2*edge*s, last+gap*s),
		top:    p.header.height + gap*s + p.body.middle(),
		bottom: p.bottom(),
	}
	if p.Right != nil {
		m.right = max(m.right, p.side(p.rightTicks))
	}
	if p.pixel > 0 {
		for _, x := range []*vg.Length{&m.left, &m.right, &m.top, &m.bottom} {
			*x = vg.Length(math.Round(float64(*x/p.pixel))) * p.pixel
		}
	}
	return m
}

// side is the room that an axis beside the data takes.
func (p *picture) side(ticks []tick) vg.Length {
	var widest vg.Length
	for _, t := range ticks {
		widest = max(widest, p.body.width(t.label))
	}
	return (edge+gap+tickMark)*p.scale + p.body.row() + widest
}

// bottom is the room that the x axis takes.
func (p *picture) bottom() vg.Length {
	return edge*p.scale + 2*p.body.row() + tickMark*p.scale
}

// snap moves a thin line onto whole pixels.
func (p *picture) snap(x vg.Length) vg.Length {
	if p.pixel <= 0 {
		return x
	}
	return (vg.Length(math.Floor(float64(x/p.pixel))) + 0.5) * p.pixel
}

// ink returns a color of the style's palette.
func (p *picture) ink(i Ink) color.Color { return i(&p.style.Palette) }

// fill returns the color of a region.
func (p *picture) fill(r *Region) color.Color {
	if r.Shade {
		return p.style.Palette.Raised
	}
	return targetFill(&p.style.Palette)
}

// targetFill is the target's translucent color on the background, opaque so
// that it looks the same in every format.
func targetFill(p *palette.Palette) color.RGBA {
	mix := func(over, under, alpha uint8) uint8 {
		return over + uint8(uint32(under)*uint32(255-alpha)/255)
	}
	t, b := p.Target, p.Background
	return color.RGBA{R: mix(t.R, b.R, t.A), G: mix(t.G, b.G, t.A), B: mix(t.B, b.B, t.A), A: 255}
}

// patterns are the dashes of each line of the first setup at scale 1 [pt].
var patterns = [...][]vg.Length{Solid: nil, Dashed: {4, 2.5}, Long: {10, 4}, Fine: {1.5, 2.5}}

// furtherPatterns are those of a further setup's lines, which no line of the first
// has.
var furtherPatterns = [...][]vg.Length{Solid: {1.8, 1.8}, Dashed: {5, 2, 1.2, 2}, Long: {9, 2, 1.2, 2, 1.2, 2}, Fine: {1, 4}}

const (
	// furtherWidth is the width of further setups' lines over the first one's.
	furtherWidth = 0.68
	// ghost is how much of its color a line of the third setup keeps over the
	// background; each two setups on it is as much again.
	ghost = 0.55
)

// stroke returns the look of a line of the first setup.
func (p *picture) stroke(i Ink, d Dash, width float64) draw.LineStyle {
	return p.strokeOf(i, d, width, 0)
}

// strokeOf returns the look of a line of a setup. Further setups' lines are thin;
// dash and strength tell them apart: the second one's are dotted, the third one's
// drawn like the first one's but pale, the fourth one's dotted and pale.
func (p *picture) strokeOf(i Ink, d Dash, width float64, setup int) draw.LineStyle {
	lengths := patterns[d]
	if setup%2 == 1 {
		lengths = furtherPatterns[d]
	}
	if setup > 0 {
		width *= furtherWidth
	}
	pattern := make([]vg.Length, len(lengths))
	for j, x := range lengths {
		pattern[j] = x * p.scale
	}
	return draw.LineStyle{Color: p.inkOf(i, setup), Width: vg.Length(width) * p.scale, Dashes: pattern}
}

// inkOf returns a color for a setup's lines and points.
func (p *picture) inkOf(i Ink, setup int) color.Color {
	c, b := i(&p.style.Palette), p.style.Palette.Background
	keep := math.Pow(ghost, float64(setup/2))
	mix := func(over, under uint8) uint8 {
		return uint8(math.Round(keep*float64(over) + (1-keep)*float64(under)))
	}
	return color.RGBA{R: mix(c.R, b.R), G: mix(c.G, b.G), B: mix(c.B, b.B), A: 255}
}

package chart

import (
	"math"

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
	comfort   = 80 // height of the data area that notes leave alone
	// briefBelow is the height of the data area below which the legend is brief.
	briefBelow = 1.5 * comfort
	leastArea  = 24 // width and height of a data area
)

// picture is a chart made ready to draw at a size: axes fixed, text set, room
// measured, and a plot.Plot of it all.
type picture struct {
	*Chart
	style         Style
	width, height vg.Length
	frame         Frame
	scale         vg.Length

	fonts       typeset
	title, body *letters
	titleText   string
	header      header
	plot        *plot.Plot
	right       []tick   // of the right axis
	corner      vg.Point // the lower left one of the drawing
	onto        vg.Point // moves the lower left corner of the data area onto whole pixels
	labels      *labeler
}

// picture makes the chart ready to draw; on paper with its subtitle, on a screen with
// pixels of a size, 0 for none.
func (c *Chart) picture(s Style, width, height vg.Length, paper bool, pixel vg.Length, fonts typeset) *picture {
	p := &picture{Chart: c, style: s, width: width, height: height, scale: s.size(), frame: c.Frame(&s), fonts: fonts}
	p.title, p.body = fonts.of(titleSize*p.scale, true), fonts.of(bodySize*p.scale, false)
	p.titleText = p.fitTitle()
	p.header = p.layHeader(paper)
	p.plot = p.newPlot()
	if pixel > 0 {
		area := p.plot.DataCanvas(p.inner(p.canvas()))
		up := func(x vg.Length) vg.Length { return vg.Length(math.Ceil(float64(x/pixel)-1e-6))*pixel - x }
		p.onto = vg.Point{X: up(area.Min.X), Y: up(area.Min.Y)}
	}
	return p
}

// canvas is what the picture is measured for: its size and nothing to draw on.
func (p *picture) canvas() draw.Canvas {
	return draw.Canvas{Rectangle: vg.Rectangle{Max: vg.Point{X: p.width, Y: p.height}}}
}

// Draw draws the chart over the whole of a canvas, on what is there already.
func (c *Chart) Draw(to draw.Canvas, s Style) {
	size := to.Size()
	c.picture(s, size.X, size.Y, false, 0, typeset{}).draw(to)
}

// draw draws everything.
func (p *picture) draw(to draw.Canvas) {
	p.corner = to.Min
	p.drawHeader(to)
	p.plot.Draw(p.inner(to))
}

// inner is the part of a canvas for data area and axes.
func (p *picture) inner(to draw.Canvas) draw.Canvas {
	left := edge * p.scale
	if p.Y.Low != "" {
		left += p.body.row() // for the words along its halves
	}
	// Lines of text are as high as their size; capitals leave some of it empty.
	top := p.header.height + gap*p.scale - (1-capHeight)*p.body.size
	return draw.Crop(to, left+p.onto.X, -gap*p.scale, edge*p.scale+0.3*p.body.size+p.onto.Y, -top)
}

// area returns the part of a canvas with the data, and whether that has room for
// them.
func (p *picture) area(to draw.Canvas) (draw.Canvas, bool) {
	inner := p.inner(to)
	area := p.plot.DataCanvas(inner)
	size := area.Size()
	// Where axes take more than there is, gonum's data area lies outside.
	within := area.Min.X >= inner.Min.X && area.Max.X <= inner.Max.X && area.Min.Y >= inner.Min.Y && area.Max.Y <= inner.Max.Y
	return area, within && size.X >= leastArea*p.scale && size.Y >= leastArea*p.scale
}

// bottom is the room that the x axis takes.
func (p *picture) bottom() vg.Length {
	return edge*p.scale + 2*p.body.row() + tickMark*p.scale
}

// newPlot makes a plot.Plot of the chart: gonum's axes and plotters, and between
// them layers of ours for what it lacks. It draws in the order in which they are
// added, after its axes.
func (p *picture) newPlot() *plot.Plot {
	out := plot.New()
	out.BackgroundColor = nil
	out.TextHandler = p.fonts
	p.setAxes(out)
	out.Add(p.room())
	p.addRegions(out)
	p.addAreas(out)
	p.addGrid(out)
	p.addEdges(out)
	p.addRules(out)
	out.Add(layer(p.drawEvents))
	p.labels = &labeler{p: p, letters: p.body}
	out.Add(layer(p.labels.wipe))
	p.addLines(out)
	p.addPoints(out)
	out.Add(layer(p.labels.write))
	// What was added has widened the axes to its data.
	out.X.Min, out.X.Max, out.Y.Min, out.Y.Max = p.frame.X.Min, p.frame.X.Max, p.frame.Y.Min, p.frame.Y.Max
	p.thin(out)
	return out
}

// only hides all of a plotter but its drawing: gonum would go through all its
// points to widen axes that are fixed, and margins by half the width of a line.
type only struct{ plot.Plotter }

// add adds plotters of gonum.
func add(to *plot.Plot, list ...plot.Plotter) {
	for _, x := range list {
		to.Add(only{x})
	}
}

// layer is a plot.Plotter of ours that is a function.
type layer func(*view)

// Plot implements plot.Plotter.
func (l layer) Plot(c draw.Canvas, p *plot.Plot) {
	v := &view{Canvas: c}
	v.x, v.y = p.Transforms(&c)
	l(v)
}

// view is the data area of a canvas with the way from SI values to it.
type view struct {
	draw.Canvas
	x, y func(float64) vg.Length
}

// room is what a plot.Plot leaves free beyond the upper right corner of the data,
// as a plot.GlyphBoxer; the numbers of its x axis it sees to itself.
type room struct{ right, top vg.Length }

// Plot implements plot.Plotter and draws nothing.
func (room) Plot(draw.Canvas, *plot.Plot) {}

// GlyphBoxes implements plot.GlyphBoxer.
func (r room) GlyphBoxes(*plot.Plot) []plot.GlyphBox {
	return []plot.GlyphBox{{X: 1, Y: 1, Rectangle: vg.Rectangle{Max: vg.Point{X: r.right, Y: r.top}}}}
}

// room finds that room.
func (p *picture) room() room {
	right := (2*edge - gap) * p.scale
	if p.Right != nil {
		right = max(right, p.rightSide()-gap*p.scale)
	}
	return room{right: right, top: p.body.middle() + (1-capHeight)*p.body.size}
}

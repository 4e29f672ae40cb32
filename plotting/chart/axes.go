package chart

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// setAxes gives the plot's axes their span, ticks, numbers and words.
func (p *picture) setAxes(out *plot.Plot) {
	s, muted := p.scale, p.style.Palette.Muted
	for _, x := range []struct {
		to    *plot.Axis
		of    *Axis
		shown Span
		align draw.YAlignment
		gap   vg.Length // of the words to the numbers
	}{
		{&out.X, &p.X, p.frame.X, draw.YTop, 0.3 * p.body.size},
		// Numbers beside an axis are centered on their digits.
		{&out.Y, &p.Y, p.frame.Y, -capHeight / 2, gap*s + 0.02*p.body.size},
	} {
		a := x.to
		a.Min, a.Max, a.Padding = x.shown.Min, x.shown.Max, 0
		// Its line is drawn with the grid, which gonum would draw over it.
		a.LineStyle = draw.LineStyle{}
		a.Tick.Marker = ticker(x.of.ticks(p.style.Units, x.shown), x.shown)
		a.Tick.Length, a.Tick.LineStyle = tickMark*s, p.hair(muted)
		align := a.Tick.Label.XAlign
		a.Tick.Label = p.fonts.style(p.body, p.style.Palette.Ink)
		a.Tick.Label.XAlign, a.Tick.Label.YAlign = align, x.align
		a.Label.TextStyle, a.Label.Padding = p.fonts.style(p.body, muted), x.gap
		a.Label.Text = x.of.title(p.style.Units)
		if x.of == &p.Y && x.of.Low != "" {
			a.Label.Text = ""
		}
	}
}

// ticker is a plot.Ticker of fixed ticks.
func ticker(list []tick, shown Span) plot.ConstantTicks {
	// One at an end could be rounded to outside of it and be left out by gonum.
	hair := 1e-9 * shown.Length()
	inner := Span{shown.Min + hair, shown.Max - hair}
	ticks := make(plot.ConstantTicks, len(list))
	for i, t := range list {
		ticks[i] = plot.Tick{Value: inner.Clamp(t.at), Label: t.label}
	}
	return ticks
}

// thin takes the numbers away that would run into the one before: gonum draws all.
func (p *picture) thin(out *plot.Plot) {
	area := out.DataCanvas(p.inner(p.canvas()))
	x, y := out.Transforms(&area)
	keep := func(a *plot.Axis, at func(float64) vg.Length, half func(string) vg.Length, apart vg.Length) {
		ticks, _ := a.Tick.Marker.(plot.ConstantTicks)
		free := vg.Length(math.Inf(-1))
		for i := range ticks {
			t, h := at(ticks[i].Value), half(ticks[i].Label)
			if t-h <= free {
				ticks[i].Label = "" // a small tick
				continue
			}
			free = t + h + apart
		}
	}
	keep(&out.X, x, func(s string) vg.Length { return p.body.width(s) / 2 }, gap*p.scale)
	keep(&out.Y, y, func(string) vg.Length { return p.body.middle() }, gap/2*p.scale)
}

// addGrid adds a line at each number, those of the axes, and what stands beside
// them. That of an x of zero is ride height, the rear contact or the start, and
// stands out.
func (p *picture) addGrid(out *plot.Plot) {
	look, f := &p.style.Palette, &p.frame
	add(out, &plotter.Grid{Vertical: p.hair(look.Grid), Horizontal: p.hair(look.Grid)})
	if f.X.Contains(0) {
		add(out, upright(0, f.Y, p.hair(look.Ghost)))
	}
	line := p.hair(look.Muted)
	add(out, level(f.Y.Min, f.X, line), upright(f.X.Min, f.Y, line))
	if p.Right != nil {
		add(out, upright(f.X.Max, f.Y, line))
		out.Add(layer(p.drawRight))
	}
	out.Add(layer(p.drawWords))
}

// upright and level are straight lines across the chart.
func upright(at float64, over Span, style draw.LineStyle) *plotter.Line {
	return &plotter.Line{XYs: plotter.XYs{{X: at, Y: over.Min}, {X: at, Y: over.Max}}, LineStyle: style}
}

func level(at float64, over Span, style draw.LineStyle) *plotter.Line {
	return &plotter.Line{XYs: plotter.XYs{{X: over.Min, Y: at}, {X: over.Max, Y: at}}, LineStyle: style}
}

// drawRight draws ticks and numbers of the right axis: a plot.Plot has one y axis,
// at the left.
func (p *picture) drawRight(v *view) {
	s, look := p.scale, &p.style.Palette
	free := vg.Length(math.Inf(-1))
	for _, t := range p.right {
		y := v.y(t.at)
		v.StrokeLine2(p.hair(look.Muted), v.Max.X, y, v.Max.X+tickMark*s, y)
		if y-p.body.middle() > free {
			p.body.draw(v, look.Ink, vg.Point{X: v.Max.X + (tickMark+gap)*s, Y: y - p.body.middle()}, 0, t.label)
			free = y + p.body.middle() + gap*s/2
		}
	}
	p.drawHalves(v, p.Right, v.Max.X+p.rightSide()-edge*s-p.body.size/2)
}

// rightSide is the room that the right axis takes.
func (p *picture) rightSide() vg.Length {
	if p.right == nil {
		p.right = p.rightTicks(&p.frame)
	}
	var widest vg.Length
	for _, t := range p.right {
		widest = max(widest, p.body.width(t.label))
	}
	return (edge+gap+tickMark)*p.scale + p.body.row() + widest
}

// drawWords writes the words at the ends of the x axis and along the halves of the
// y axis: an axis of gonum has one label, in its middle.
func (p *picture) drawWords(v *view) {
	muted := p.style.Palette.Muted
	baseline := p.corner.Y + edge*p.scale + 0.3*p.body.size
	half := (v.Size().X - p.body.width(p.X.title(p.style.Units))) / 2
	if p.X.Low != "" && p.body.width("← "+p.X.Low) <= half-gap*p.scale {
		if p.frame.X.Min < 0 {
			p.body.draw(v, muted, vg.Point{X: v.Min.X, Y: baseline}, 0, "← "+p.X.Low)
		}
		if p.frame.X.Max > 0 {
			p.body.draw(v, muted, vg.Point{X: v.Max.X, Y: baseline}, 1, p.X.High+" →")
		}
	}
	if p.Y.Low != "" {
		p.drawHalves(v, &p.Y, p.corner.X+edge*p.scale+p.body.size/2)
	}
}

// drawHalves writes a word along each half of an axis that has room for it.
func (p *picture) drawHalves(v *view, a *Axis, x vg.Length) {
	zero := v.y(p.frame.Y.Clamp(0))
	along := func(i Ink, from, to vg.Length, word string) {
		if p.body.width(word) <= to-from {
			p.body.drawUp(v, p.ink(i), vg.Point{X: x, Y: (from + to) / 2}, word)
		}
	}
	along(a.HighInk, zero, v.Max.Y, a.High)
	along(a.LowInk, v.Min.Y, zero, a.Low)
}

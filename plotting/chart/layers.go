package chart

import (
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg/draw"
)

// addRegions fills the targets and shades, below everything.
func (p *picture) addRegions(out *plot.Plot) {
	for i := range p.Regions {
		r := &p.Regions[i]
		if x, y := r.X.clip(p.frame.X), r.Y.clip(p.frame.Y); !x.empty() && !y.empty() {
			ring := plotter.XYs{{X: x.Min, Y: y.Min}, {X: x.Max, Y: y.Min}, {X: x.Max, Y: y.Max}, {X: x.Min, Y: y.Max}}
			add(out, &plotter.Polygon{XYs: []plotter.XYs{ring}, Color: p.fill(r)})
		}
	}
}

// addAreas fills the areas between curves.
func (p *picture) addAreas(out *plot.Plot) {
	for i := range p.Areas {
		a := &p.Areas[i]
		for _, ring := range a.Rings {
			add(out, &plotter.Polygon{XYs: []plotter.XYs{ring}, Color: p.areaFill(a)})
		}
	}
}

// addEdges draws those edges of the targets that are in sight.
func (p *picture) addEdges(out *plot.Plot) {
	for i := range p.Regions {
		for _, e := range p.edges(&p.Regions[i]) {
			add(out, &plotter.Line{XYs: e, LineStyle: p.stroke(goodInk, Solid, edgeWidth, 0)})
		}
	}
}

// edges returns those edges of a target that are in sight.
func (p *picture) edges(r *Region) []plotter.XYs {
	x, y := r.X.clip(p.frame.X), r.Y.clip(p.frame.Y)
	if r.Shade || x.empty() || y.empty() {
		return nil
	}
	list := make([]plotter.XYs, 0, 4)
	for _, at := range []float64{r.X.Min, r.X.Max} {
		if p.frame.X.Contains(at) {
			list = append(list, upright(at, y, draw.LineStyle{}).XYs)
		}
	}
	for _, at := range []float64{r.Y.Min, r.Y.Max} {
		if p.frame.Y.Contains(at) {
			list = append(list, level(at, x, draw.LineStyle{}).XYs)
		}
	}
	return list
}

// addRules draws the rules in sight.
func (p *picture) addRules(out *plot.Plot) {
	for i := range p.Rules {
		r := &p.Rules[i]
		style := p.stroke(r.Ink, r.Dash, ruleWidth*usual(r.Width), r.Setup)
		switch {
		case !p.axisOf(r).Contains(r.At):
		case r.Upright:
			add(out, upright(r.At, p.frame.Y, style))
		default:
			add(out, level(r.At, p.frame.X, style))
		}
	}
}

// axisOf returns what is shown along the axis that a rule stands on.
func (p *picture) axisOf(r *Rule) Span {
	if r.Upright {
		return p.frame.X
	}
	return p.frame.Y
}

// addLines draws the curves. A run of a single point becomes a dot.
func (p *picture) addLines(out *plot.Plot) {
	for i := range p.Lines {
		l := &p.Lines[i]
		style := p.stroke(l.Ink, l.Dash, lineWidth*usual(l.Width), l.Setup)
		for _, run := range l.Runs {
			if run = p.onLeft(run, l.Right); l.Below == nil {
				addRun(out, run, style)
				continue
			}
			for _, part := range cutAtZero(run) {
				look := style
				if slices.ContainsFunc(part, func(at plotter.XY) bool { return at.Y < 0 }) {
					look.Color = p.inkOf(l.Below, l.Setup)
				}
				addRun(out, part, look)
			}
		}
	}
}

func addRun(out *plot.Plot, run plotter.XYs, style draw.LineStyle) {
	if len(run) == 1 {
		add(out, &plotter.Scatter{XYs: run, GlyphStyle: draw.GlyphStyle{Color: style.Color, Radius: style.Width, Shape: draw.CircleGlyph{}}})
		return
	}
	add(out, &plotter.Line{XYs: run, LineStyle: style})
}

// cutAtZero cuts a run where it crosses zero. Each part is on one side and runs up to
// the crossing.
func cutAtZero(run plotter.XYs) []plotter.XYs {
	var parts []plotter.XYs
	part, side := plotter.XYs(nil), 0.0 // the last value that was not zero
	for i, at := range run {
		if at.Y*side < 0 {
			last := run[i-1]
			crossing := plotter.XY{X: last.X + (at.X-last.X)*last.Y/(last.Y-at.Y)}
			parts = append(parts, append(part, crossing))
			part = plotter.XYs{crossing}
		}
		if part = append(part, at); at.Y != 0 {
			side = at.Y
		}
	}
	return append(parts, part)
}

// onLeft returns points as the left axis has them.
func (p *picture) onLeft(run plotter.XYs, right bool) plotter.XYs {
	if !right {
		return run
	}
	list := make(plotter.XYs, len(run))
	for i, at := range run {
		list[i] = plotter.XY{X: at.X, Y: p.frame.onLeft(at.Y, true)}
	}
	return list
}

// addPoints draws the points, each with its line down to the x axis.
func (p *picture) addPoints(out *plot.Plot) {
	for i := range p.Points {
		m := &p.Points[i]
		at := plotter.XY{X: m.At.X, Y: p.frame.onLeft(m.At.Y, m.Right)}
		if m.Drop && p.frame.X.Contains(at.X) && p.frame.Y.Contains(at.Y) {
			style := p.stroke(m.Ink, Fine, hairWidth, 0)
			add(out, upright(at.X, Span{p.frame.Y.Min, at.Y}, style))
		}
		add(out, &plotter.Scatter{XYs: plotter.XYs{at}, GlyphStyle: p.glyph(m.Shape, p.inkOf(m.Ink, m.Setup), m.Size)})
	}
}

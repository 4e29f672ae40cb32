package chart

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Line widths and radii at scale 1 [pt].
const (
	lineWidth = 1.4
	ruleWidth = 1.0
	hairWidth = 0.75
	edgeWidth = 0.6
	dotRadius = 2.6
)

// drawRegions fills the targets, below everything.
func (p *picture) drawRegions(v *view) {
	for i := range p.Regions {
		if box, ok := p.box(v, &p.Regions[i]); ok {
			v.SetColor(p.fill(&p.Regions[i]))
			v.Fill(box.Path())
		}
	}
}

// box returns the part of a region that is in sight, and whether there is any.
func (p *picture) box(v *view, r *Region) (vg.Rectangle, bool) {
	x, y := r.X.clip(p.frame.X), r.Y.clip(p.frame.Y)
	return vg.Rectangle{Min: vg.Point{X: v.x(x.Min), Y: v.y(y.Min)}, Max: vg.Point{X: v.x(x.Max), Y: v.y(y.Max)}}, !x.empty() && !y.empty()
}

// edges returns those edges of a target that are in sight.
func (p *picture) edges(v *view, r *Region) [][]vg.Point {
	box, ok := p.box(v, r)
	if !ok || r.Shade {
		return nil
	}
	lines := make([][]vg.Point, 0, 4)
	for _, x := range []float64{r.X.Min, r.X.Max} {
		if p.frame.X.Contains(x) {
			at := p.snap(v.x(x))
			lines = append(lines, []vg.Point{{X: at, Y: box.Min.Y}, {X: at, Y: box.Max.Y}})
		}
	}
	for _, y := range []float64{r.Y.Min, r.Y.Max} {
		if p.frame.Y.Contains(y) {
			at := p.snap(v.y(y))
			lines = append(lines, []vg.Point{{X: box.Min.X, Y: at}, {X: box.Max.X, Y: at}})
		}
	}
	return lines
}

// drawGrid draws a line at each tick; that of an x of zero is ride height, the
// rear contact or the start, and stands out.
func (p *picture) drawGrid(v *view) {
	grid := draw.LineStyle{Color: p.style.Palette.Grid, Width: hairWidth * p.scale}
	for _, t := range p.xTicks {
		style := grid
		if t.at == 0 {
			style.Color = p.style.Palette.Ghost
		}
		x := p.snap(v.x(t.at))
		v.StrokeLine2(style, x, v.Min.Y, x, v.Max.Y)
	}
	for _, t := range p.yTicks {
		y := p.snap(v.y(t.at))
		v.StrokeLine2(grid, v.Min.X, y, v.Max.X, y)
	}
}

// drawAxes draws both axes with ticks, numbers and words.
func (p *picture) drawAxes(v *view) {
	s, look := p.scale, &p.style.Palette
	line := draw.LineStyle{Color: look.Muted, Width: hairWidth * s}
	left, bottom := p.snap(v.Min.X), p.snap(v.Min.Y)
	v.StrokeLine2(line, v.Min.X, bottom, v.Max.X, bottom)
	v.StrokeLine2(line, left, v.Min.Y, left, v.Max.Y)

	numbers := v.Min.Y - tickMark*s - p.body.row() + 0.3*p.body.size
	free := vg.Length(math.Inf(-1))
	for _, t := range p.xTicks {
		x := p.snap(v.x(t.at))
		v.StrokeLine2(line, x, v.Min.Y-tickMark*s, x, v.Min.Y)
		// A number that would run into the one before is left out.
		if half := p.body.width(t.label) / 2; x-half > free {
			p.body.draw(v, look.Ink, vg.Point{X: x, Y: numbers}, 0.5, t.label)
			free = x + half + gap*s
		}
	}
	words := vg.Point{X: (v.Min.X + v.Max.X) / 2, Y: numbers - p.body.row()}
	p.body.draw(v, look.Muted, words, 0.5, p.X.title(p.style.Units))
	p.drawEnds(v, words.Y)

	p.drawSide(v, &p.Y, p.yTicks, v.Min.X, -1)
	if p.Right != nil {
		v.StrokeLine2(line, p.snap(v.Max.X), v.Min.Y, p.snap(v.Max.X), v.Max.Y)
		p.drawSide(v, p.Right, p.rightTicks, v.Max.X, 1)
	}
}

// drawSide draws ticks, numbers and words of an axis at an x, outward to the
// left (-1) or to the right (1).
func (p *picture) drawSide(v *view, a *Axis, ticks []tick, x, out vg.Length) {
	s, look := p.scale, &p.style.Palette
	line := draw.LineStyle{Color: look.Muted, Width: hairWidth * s}
	align := float64(1-out) / 2
	free := vg.Length(math.Inf(-1))
	for _, t := range ticks {
		y := p.snap(v.y(t.at))
		v.StrokeLine2(line, x, y, x+out*tickMark*s, y)
		if y-p.body.middle() > free {
			p.body.draw(v, look.Ink, vg.Point{X: x + out*(tickMark+gap)*s, Y: y - p.body.middle()}, align, t.label)
			free = y + p.body.middle() + gap*s/2
		}
	}
	p.drawWords(v, a, x+out*(p.side(ticks)-edge*s-p.body.size/2))
}

// drawEnds writes the words at the two ends of the x axis.
func (p *picture) drawEnds(v *view, baseline vg.Length) {
	half := (v.Size().X - p.body.width(p.X.title(p.style.Units))) / 2
	if p.X.Low == "" || p.body.width("← "+p.X.Low) > half-gap*p.scale {
		return
	}
	muted := p.style.Palette.Muted
	if p.frame.X.Min < 0 {
		p.body.draw(v, muted, vg.Point{X: v.Min.X, Y: baseline}, 0, "← "+p.X.Low)
	}
	if p.frame.X.Max > 0 {
		p.body.draw(v, muted, vg.Point{X: v.Max.X, Y: baseline}, 1, p.X.High+" →")
	}
}

// drawWords writes the label of an axis beside the data, or a word along each
// of its halves that has room for it.
func (p *picture) drawWords(v *view, a *Axis, x vg.Length) {
	if a.Low == "" {
		p.body.drawUp(v, p.style.Palette.Muted, vg.Point{X: x, Y: (v.Min.Y + v.Max.Y) / 2}, a.title(p.style.Units))
		return
	}
	zero := v.y(p.frame.Y.Clamp(0))
	along := func(i Ink, from, to vg.Length, word string) {
		if p.body.width(word) <= to-from {
			p.body.drawUp(v, p.ink(i), vg.Point{X: x, Y: (from + to) / 2}, word)
		}
	}
	along(a.HighInk, zero, v.Max.Y, a.High)
	along(a.LowInk, v.Min.Y, zero, a.Low)
}

// drawData draws rules, lines, marks and labels. A label wipes out a rule that
// runs through it, but never a curve.
func (p *picture) drawData(v *view) {
	for i := range p.Regions {
		v.StrokeLines(p.stroke(goodInk, Solid, edgeWidth), p.edges(v, &p.Regions[i])...)
	}
	rules := make([][]vg.Point, len(p.Rules))
	for i := range p.Rules {
		r := &p.Rules[i]
		if rules[i] = p.ruleLine(v, r); rules[i] != nil {
			v.StrokeLines(p.strokeOf(r.Ink, r.Dash, ruleWidth, r.Setup), rules[i])
		}
	}
	curves, owners := p.curves(v)
	labels := p.layLabels(v, rules, curves)
	for i := range labels {
		if labels[i].crosses {
			v.SetColor(p.style.Palette.Background)
			v.Fill(labels[i].box.Path())
		}
	}
	for i, curve := range curves {
		v.StrokeLines(p.strokeOf(owners[i].Ink, owners[i].Dash, lineWidth, owners[i].Setup), curve)
	}
	for i := range p.Points {
		p.drawMark(v, &p.Points[i])
	}
	for i := range labels {
		p.body.draw(v, labels[i].ink, labels[i].at, 0, labels[i].text)
	}
}

// curves returns the parts of all lines within the data area, and the line of
// each.
func (p *picture) curves(v *view) (curves [][]vg.Point, owners []*Line) {
	for i := range p.Lines {
		for _, part := range p.inView(v, &p.Lines[i]) {
			curves, owners = append(curves, part), append(owners, &p.Lines[i])
		}
	}
	return curves, owners
}

// inView returns the parts of a curve within the data area. A run of a single
// point becomes a short dash.
func (p *picture) inView(v *view, l *Line) [][]vg.Point {
	lines := make([][]vg.Point, 0, len(l.Runs))
	unit := p.frame.onLeft(1, l.Right)
	for _, run := range l.Runs {
		points := make([]vg.Point, 0, len(run)+1)
		for _, at := range run {
			points = append(points, vg.Point{X: v.x(at.X), Y: v.y(unit * at.Y)})
		}
		if len(points) == 1 {
			half := vg.Point{X: lineWidth * p.scale}
			points = []vg.Point{points[0].Sub(half), points[0].Add(half)}
		}
		lines = append(lines, points)
	}
	return v.ClipLinesXY(lines...)
}

// ruleLine returns the line of a rule across the data area, or nil when it is
// out of sight.
func (p *picture) ruleLine(v *view, r *Rule) []vg.Point {
	if !p.axisOf(r).Contains(r.At) {
		return nil
	}
	if r.Upright {
		x := p.snap(v.x(r.At))
		return []vg.Point{{X: x, Y: v.Min.Y}, {X: x, Y: v.Max.Y}}
	}
	y := p.snap(v.y(r.At))
	return []vg.Point{{X: v.Min.X, Y: y}, {X: v.Max.X, Y: y}}
}

// axisOf returns what is shown along the axis that a rule stands on.
func (p *picture) axisOf(r *Rule) Span {
	if r.Upright {
		return p.frame.X
	}
	return p.frame.Y
}

// point returns where a point of either axis is.
func (p *picture) point(v *view, at plotter.XY, right bool) vg.Point {
	return vg.Point{X: v.x(at.X), Y: v.y(p.frame.onLeft(at.Y, right))}
}

// drawMark draws a mark with its drop line.
func (p *picture) drawMark(v *view, m *Point) {
	at := p.point(v, m.At, m.Right)
	if !v.Contains(at) {
		return
	}
	if m.Drop {
		v.StrokeLine2(p.stroke(m.Ink, Fine, hairWidth), at.X, v.Min.Y, at.X, at.Y)
	}
	p.glyph(v, m, p.inkOf(m.Ink, m.Setup), at)
}

// glyph draws a mark's shape in a color.
func (p *picture) glyph(v *view, m *Point, ink color.Color, at vg.Point) {
	size := m.Size
	if size == 0 {
		size = 1
	}
	r := dotRadius * p.scale * vg.Length(size)
	switch m.Shape {
	case Disc:
		p.dot(v.Canvas, ink, at, size)
	case Square, Diamond, Triangle:
		v.SetColor(p.style.Palette.Background)
		v.Fill(polygon(m.Shape, at, r+0.9*p.scale))
		v.SetColor(ink)
		v.Fill(polygon(m.Shape, at, r))
	case Ring:
		v.DrawGlyphNoClip(draw.GlyphStyle{Color: p.style.Palette.Background, Radius: 1.2 * r, Shape: draw.CircleGlyph{}}, at)
		v.SetLineStyle(draw.LineStyle{Color: ink, Width: 1.2 * p.scale})
		v.Stroke(Circle(at, 1.2*r))
	case Cross:
		style := draw.LineStyle{Color: ink, Width: lineWidth * p.scale}
		v.StrokeLine2(style, at.X-r, at.Y-r, at.X+r, at.Y+r)
		v.StrokeLine2(style, at.X-r, at.Y+r, at.X+r, at.Y-r)
	}
}

// dot draws a disc set off from what lies below.
func (p *picture) dot(c draw.Canvas, ink color.Color, at vg.Point, size float64) {
	r := dotRadius * p.scale * vg.Length(size)
	c.DrawGlyphNoClip(draw.GlyphStyle{Color: p.style.Palette.Background, Radius: r + 0.9*p.scale, Shape: draw.CircleGlyph{}}, at)
	c.DrawGlyphNoClip(draw.GlyphStyle{Color: ink, Radius: r, Shape: draw.CircleGlyph{}}, at)
}

// corners are those of the shapes with straight sides, over their radius.
var corners = map[Shape][]vg.Point{
	Square:   {{X: 0.9, Y: 0.9}, {X: -0.9, Y: 0.9}, {X: -0.9, Y: -0.9}, {X: 0.9, Y: -0.9}},
	Diamond:  {{X: 1.3}, {Y: 1.3}, {X: -1.3}, {Y: -1.3}},
	Triangle: {{Y: 1.3}, {X: -1.15, Y: -0.8}, {X: 1.15, Y: -0.8}},
}

func polygon(s Shape, at vg.Point, r vg.Length) vg.Path {
	var path vg.Path
	for i, c := range corners[s] {
		if to := at.Add(c.Scale(r)); i == 0 {
			path.Move(to)
		} else {
			path.Line(to)
		}
	}
	path.Close()
	return path
}

// Circle returns a path around a point.
func Circle(at vg.Point, r vg.Length) vg.Path {
	var path vg.Path
	path.Move(vg.Point{X: at.X + r, Y: at.Y})
	path.Arc(at, r, 0, 2*math.Pi)
	path.Close()
	return path
}

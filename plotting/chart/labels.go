package chart

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
)

// label is text with the place found for it.
type label struct {
	text    string
	ink     color.Color
	at      vg.Point     // start of the baseline
	box     vg.Rectangle // what it covers
	crosses bool         // a rule runs through it
}

// labeler finds room for text in the data area, clear of curves and of other
// text, and if it can of rules.
type labeler struct {
	*letters
	area   vg.Rectangle
	air    vg.Length // kept around text
	curves [][]vg.Point
	rules  [][]vg.Point
	edges  [][]vg.Point // of regions
	taken  []vg.Rectangle
	placed []label
}

// What it costs to cover things, for each point of length; the order of the
// places decides between equals.
const (
	overText  = 1000
	overCurve = 1
	overRule  = 0.3
	laterTry  = 0.01
	// fartherOff is what a line's height away from its mark costs.
	fartherOff = 2
)

// wish is text that asks for a place.
type wish struct {
	text   string
	ink    color.Color
	places []vg.Point
	own    []vg.Point // its rule, which costs nothing; nil for none
	mark   *vg.Point  // what it stands beside; nil for none
}

// layLabels places the labels of all rules and marks. lines are those of the
// rules, nil where out of sight.
func (p *picture) layLabels(v *view, lines, curves [][]vg.Point) []label {
	l := &labeler{letters: &p.body, area: v.Rectangle, air: 1.5 * p.scale, curves: curves, rules: lines}
	for i := range p.Regions {
		l.edges = append(l.edges, p.edges(v, &p.Regions[i])...)
	}
	r := (dotRadius + 0.5) * p.scale
	for i := range p.Points {
		if at := p.point(v, p.Points[i].At, p.Points[i].Right); p.Points[i].Shape != None && v.Contains(at) {
			l.taken = append(l.taken, vg.Rectangle{Min: at.Sub(vg.Point{X: r, Y: r}), Max: at.Add(vg.Point{X: r, Y: r})})
		}
	}
	for i := range p.Rules {
		if !p.Rules[i].empty() {
			l.ofRule(v, p, i)
		}
	}
	for i := range p.Points {
		m := &p.Points[i]
		at := p.point(v, m.At, m.Right)
		if m.empty() || !v.Contains(at) {
			continue
		}
		text := m.Label(p.style.Units)
		w := wish{text: text, ink: p.ink(m.Ink), places: l.around(at, r+1.5*p.scale, text), mark: &at}
		if m.Drop {
			w.places = append(l.atFoot(at.X, text), w.places...)
			w.mark = nil
		}
		if m.Apart {
			w.places = append(w.places, l.apart(at, r+1.5*p.scale, v.y(p.frame.Y.Clamp(0)), text)...)
		}
		l.place(&w, overText)
	}
	return l.placed
}

// ofRule places the label of a rule at its line, or at the edge beyond which
// it lies.
func (l *labeler) ofRule(v *view, p *picture, i int) {
	r := &p.Rules[i]
	w := wish{text: r.Label(p.style.Units), ink: p.ink(r.Ink), own: l.rules[i]}
	switch shown := p.axisOf(r); {
	case shown.Contains(r.At) && r.Upright:
		w.places = append(l.besideUpright(v.x(r.At), w.text), l.atFoot(v.x(r.At), w.text)...)
	case shown.Contains(r.At):
		w.places = l.alongLevel(v.y(r.At), r.At < 0, w.text)
	case r.Edge && r.At < shown.Min:
		w.text += " ↓"
		w.places = l.spread(v.Min.Y+(descent+0.25)*l.size, w.text)
	case r.Edge:
		w.text += " ↑"
		w.places = l.spread(v.Max.Y-(capHeight+0.25)*l.size, w.text)
	}
	most := math.Inf(1)
	if r.Setup > 0 {
		most = overText // the first setup's labels go first
	}
	l.place(&w, most)
}

// place puts text at the cheapest of its places and takes the room there. Text
// that costs as much as most everywhere is left out.
func (l *labeler) place(w *wish, most float64) {
	var best label
	least, width := most, l.width(w.text)
	for i, at := range w.places {
		box := l.box(at, width)
		extra := laterTry * float64(i)
		if w.mark != nil {
			extra += fartherOff * float64(gapTo(box, *w.mark)/l.row())
		}
		if extra >= least {
			continue
		}
		if cost, crosses := l.cost(box, w.own, least-extra); cost+extra < least {
			least, best = cost+extra, label{w.text, w.ink, at, box, crosses}
		}
	}
	if least == most {
		return
	}
	l.placed = append(l.placed, best)
	l.taken = append(l.taken, best.box)
}

// gapTo returns how far a point is from a rectangle.
func gapTo(r vg.Rectangle, p vg.Point) vg.Length {
	x, y := max(r.Min.X-p.X, p.X-r.Max.X, 0), max(r.Min.Y-p.Y, p.Y-r.Max.Y, 0)
	return vg.Length(math.Hypot(float64(x), float64(y)))
}

// cost says how bad it is to cover a box, and whether a rule runs through it.
// From most on it does not matter how much worse it is.
func (l *labeler) cost(box vg.Rectangle, own []vg.Point, most float64) (cost float64, crosses bool) {
	if box.Min.X < l.area.Min.X || box.Max.X > l.area.Max.X || box.Min.Y < l.area.Min.Y || box.Max.Y > l.area.Max.Y {
		return math.Inf(1), false
	}
	box = vg.Rectangle{Min: box.Min.Sub(vg.Point{X: l.air, Y: l.air}), Max: box.Max.Add(vg.Point{X: l.air, Y: l.air})}
	for _, t := range l.taken {
		if box.Min.X < t.Max.X && t.Min.X < box.Max.X && box.Min.Y < t.Max.Y && t.Min.Y < box.Max.Y {
			cost += overText
		}
	}
	for _, curve := range l.curves {
		if cost >= most {
			return cost, false
		}
		cost += overCurve * covered(curve, box)
	}
	for _, edge := range l.edges {
		cost += overRule * covered(edge, box)
	}
	for _, line := range l.rules {
		if len(own) > 0 && len(line) > 0 && &line[0] == &own[0] {
			continue
		}
		if c := covered(line, box); c > 0 {
			cost += overRule * c
			crosses = true
		}
	}
	return cost, crosses
}

// covered returns how much of a curve lies within a rectangle.
func covered(curve []vg.Point, r vg.Rectangle) float64 {
	var sum float64
	for i := 1; i < len(curve); i++ {
		sum += inside(curve[i-1], curve[i], r)
	}
	return sum
}

// inside returns how long a segment runs within a rectangle.
func inside(a, b vg.Point, r vg.Rectangle) float64 {
	d := b.Sub(a)
	if max(a.X, b.X) < r.Min.X || min(a.X, b.X) > r.Max.X || max(a.Y, b.Y) < r.Min.Y || min(a.Y, b.Y) > r.Max.Y {
		return 0
	}
	from, to := 0.0, 1.0
	for _, side := range [...]struct{ along, room vg.Length }{
		{-d.X, a.X - r.Min.X}, {d.X, r.Max.X - a.X}, {-d.Y, a.Y - r.Min.Y}, {d.Y, r.Max.Y - a.Y},
	} {
		switch {
		case side.along == 0 && side.room < 0:
			return 0
		case side.along < 0:
			from = math.Max(from, float64(side.room/side.along))
		case side.along > 0:
			to = math.Min(to, float64(side.room/side.along))
		}
	}
	if from >= to {
		return 0
	}
	return (to - from) * math.Hypot(float64(d.X), float64(d.Y))
}

// spread returns places along a height: right, left, and between.
func (l *labeler) spread(baseline vg.Length, text string) []vg.Point {
	left, right := l.area.Min.X+2*l.air, l.area.Max.X-2*l.air-l.width(text)
	points := make([]vg.Point, 0, 10)
	for _, part := range []vg.Length{1, 0, 0.5, 0.75, 0.25} {
		points = append(points, vg.Point{X: left + part*(right-left), Y: baseline})
	}
	return points
}

// alongLevel returns places outside of a level line, where below is outside,
// and then inside of it.
func (l *labeler) alongLevel(y vg.Length, below bool, text string) []vg.Point {
	over, under := l.spread(y+(descent+0.12)*l.size, text), l.spread(y-(capHeight+0.22)*l.size, text)
	if below {
		return append(under, over...)
	}
	return append(over, under...)
}

// besideUpright returns places right and left of an upright line, from the top
// down.
func (l *labeler) besideUpright(x vg.Length, text string) []vg.Point {
	points := make([]vg.Point, 0, 8)
	for i := range 4 {
		y := l.area.Max.Y - (capHeight+0.3)*l.size - vg.Length(i)*l.row()
		points = append(points, vg.Point{X: x + 2*l.air, Y: y}, vg.Point{X: x - 2*l.air - l.width(text), Y: y})
	}
	return points
}

// atFoot returns places right and left of an upright line, from the bottom up.
func (l *labeler) atFoot(x vg.Length, text string) []vg.Point {
	points := make([]vg.Point, 0, 8)
	for i := range 4 {
		y := l.area.Min.Y + (descent+0.4)*l.size + vg.Length(i)*l.row()
		points = append(points, vg.Point{X: x + 2*l.air, Y: y}, vg.Point{X: x - 2*l.air - l.width(text), Y: y})
	}
	return points
}

// around returns places right of a point, left, above, below and at the
// corners.
func (l *labeler) around(at vg.Point, r vg.Length, text string) []vg.Point {
	w := l.width(text)
	right, left, center := at.X+r, at.X-r-w, at.X-w/2
	middle, above, below := at.Y-l.middle(), at.Y+r+descent*l.size, at.Y-r-capHeight*l.size
	return []vg.Point{
		{X: right, Y: middle}, {X: left, Y: middle}, {X: center, Y: above}, {X: center, Y: below},
		{X: right, Y: above}, {X: left, Y: above}, {X: right, Y: below}, {X: left, Y: below},
	}
}

// apart returns places beside a point, row by row away from it on its side of
// zero, and then at the edges.
func (l *labeler) apart(at vg.Point, r, zero vg.Length, text string) []vg.Point {
	w := l.width(text)
	var beside, edges []vg.Point
	for i := vg.Length(0); i*l.row() < l.area.Size().Y; i++ {
		for _, y := range []vg.Length{at.Y + i*l.row(), at.Y - i*l.row()} {
			if (y-zero)*(at.Y-zero) < 0 {
				continue
			}
			y -= l.middle()
			for away := r; away <= r+3*l.row(); away += l.row() {
				beside = append(beside, vg.Point{X: at.X + away, Y: y}, vg.Point{X: at.X - away - w, Y: y})
			}
			edges = append(edges, vg.Point{X: l.area.Max.X - w - 2*l.air, Y: y}, vg.Point{X: l.area.Min.X + 2*l.air, Y: y})
		}
	}
	return append(beside, edges...)
}

package chart

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

// label is text with the place found for it.
type label struct {
	text    string
	ink     color.Color
	at      vg.Point     // start of the baseline
	box     vg.Rectangle // what it covers
	crosses bool         // a rule runs through it
	over    bool         // on a filled box
}

// labeler finds room for the labels of rules and points in the data area, clear of
// curves and of other text, and if it can of rules: gonum's plotter.Labels stand
// where they are put.
type labeler struct {
	p *picture
	*letters
	area   vg.Rectangle
	air    vg.Length // kept around text
	curves []stretch
	rules  [][]vg.Point // nil where out of sight
	edges  [][]vg.Point // of regions
	taken  []vg.Rectangle
	placed []label
}

// stretch is a part of a curve and the rectangle that it runs in.
type stretch struct {
	points []vg.Point
	within vg.Rectangle
}

// stretchLength is the number of segments of a stretch: few enough for a label to miss
// most stretches as a whole.
const stretchLength = 24

// What it costs to cover things, for each point of length; the order of the
// places decides between equals.
const (
	overText  = 1000
	overCurve = 1
	overRule  = 0.3
	laterTry  = 0.01
	// fartherOff is what a row away from its mark costs a label, and offRule a row
	// away from its rule.
	fartherOff = 2
	offRule    = 30
	// crowded is what text costs that is hard to read: it looks farther away for a place,
	// or is left out where the legend says as much.
	crowded = 12
	// besideRule is how far off text still stands beside its rule, over its size.
	besideRule = 0.3
)

// wish is text that asks for a place.
type wish struct {
	text   string
	ink    color.Color
	over   bool // as in Caption
	places []vg.Point
	// farther lists more places, for where all of those are crowded; nil for none.
	farther func() []vg.Point
	own     []vg.Point // its rule, which costs nothing; nil for none
	mark    *vg.Point  // what it stands beside; nil for none
}

// wipe places the labels and clears the rules that run through them; it never
// wipes out a curve, since those are drawn later.
func (l *labeler) wipe(v *view) {
	l.look(v)
	for i := range l.p.Rules {
		if !l.p.Rules[i].empty() {
			l.ofRule(v, i)
		}
	}
	for i := range l.p.Points {
		l.ofPoint(v, &l.p.Points[i])
	}
	for i := range l.p.Events {
		l.ofEvent(v, &l.p.Events[i])
	}
	for i := range l.placed {
		if l.placed[i].crosses {
			v.SetColor(l.p.style.Palette.Background)
			v.Fill(l.placed[i].box.Path())
		}
	}
}

// write sets the labels.
func (l *labeler) write(v *view) {
	look := &l.p.style.Palette
	for i := range l.placed {
		one := &l.placed[i]
		ink := one.ink
		if one.over {
			ink = look.Background
			v.SetColor(look.Bad)
			aside := vg.Point{X: l.air}
			v.Fill(vg.Rectangle{Min: one.box.Min.Sub(aside), Max: one.box.Max.Add(aside)}.Path())
		}
		l.letters.draw(v, ink, one.at, 0, one.text)
	}
}

// look notes where everything is that a label might cover.
func (l *labeler) look(v *view) {
	l.area, l.air = v.Rectangle, 1.5*l.p.scale
	l.area.Max.Y -= l.p.eventRoom()
	l.curves, l.edges, l.taken, l.placed = nil, nil, nil, nil
	points := func(xys plotter.XYs, unit float64) []vg.Point {
		list := make([]vg.Point, len(xys))
		for i, at := range xys {
			list[i] = vg.Point{X: v.x(at.X), Y: v.y(unit * at.Y)}
		}
		return list
	}
	for i := range l.p.Regions {
		for _, e := range l.p.edges(&l.p.Regions[i]) {
			l.edges = append(l.edges, points(e, 1))
		}
	}
	l.rules = make([][]vg.Point, len(l.p.Rules))
	for i := range l.p.Rules {
		switch r := &l.p.Rules[i]; {
		case !l.p.axisOf(r).Contains(r.At):
		case r.Upright:
			l.rules[i] = []vg.Point{{X: v.x(r.At), Y: v.Min.Y}, {X: v.x(r.At), Y: v.Max.Y}}
		default:
			l.rules[i] = []vg.Point{{X: v.Min.X, Y: v.y(r.At)}, {X: v.Max.X, Y: v.y(r.At)}}
		}
	}
	for i := range l.p.Lines {
		unit := l.p.frame.onLeft(1, l.p.Lines[i].Right)
		for _, run := range l.p.Lines[i].Runs {
			l.addCurve(points(run, unit))
		}
	}
	r := (dotRadius + 0.5) * l.p.scale
	for i := range l.p.Points {
		if at, seen := l.place(v, &l.p.Points[i]); seen && l.p.Points[i].Shape != None {
			l.taken = append(l.taken, vg.Rectangle{Min: at.Sub(vg.Point{X: r, Y: r}), Max: at.Add(vg.Point{X: r, Y: r})})
		}
	}
}

// addCurve notes a curve in stretches.
func (l *labeler) addCurve(curve []vg.Point) {
	for from := 0; from+1 < len(curve); from += stretchLength {
		s := stretch{points: curve[from:min(from+stretchLength+1, len(curve))]}
		s.within = vg.Rectangle{Min: s.points[0], Max: s.points[0]}
		for _, p := range s.points[1:] {
			s.within.Min.X, s.within.Max.X = min(s.within.Min.X, p.X), max(s.within.Max.X, p.X)
			s.within.Min.Y, s.within.Max.Y = min(s.within.Min.Y, p.Y), max(s.within.Max.Y, p.Y)
		}
		l.curves = append(l.curves, s)
	}
}

// place returns where a point is, and whether that is in sight.
func (l *labeler) place(v *view, m *Point) (vg.Point, bool) {
	at := vg.Point{X: v.x(m.At.X), Y: v.y(l.p.frame.onLeft(m.At.Y, m.Right))}
	return at, v.Contains(at)
}

// ofPoint places the label of a point beside it, or at the foot of its line.
func (l *labeler) ofPoint(v *view, m *Point) {
	at, seen := l.place(v, m)
	if m.empty() || !seen {
		return
	}
	r := (dotRadius + 2) * l.p.scale
	text := m.Label(l.p.style.Units)
	w := wish{text: text, ink: l.p.ink(m.Ink), over: m.Over, places: l.around(at, r, text), mark: &at}
	if m.Drop {
		w.places = append(l.atFoot(at.X, text), w.places...)
		w.mark = nil
	}
	if m.Apart {
		w.places = append(w.places, l.apart(at, r, v.y(l.p.frame.Y.Clamp(0)), text)...)
	}
	most := float64(overText)
	if m.Alone && !m.Over {
		most = 2 * crowded
	}
	l.put(&w, most)
}

// ofRule places the label of a rule at its line, or at the edge beyond which
// it lies.
func (l *labeler) ofRule(v *view, i int) {
	r := &l.p.Rules[i]
	w := wish{text: r.Label(l.p.style.Units), ink: l.p.ink(r.Ink), over: r.Over, own: l.rules[i]}
	switch shown := l.p.axisOf(r); {
	case shown.Contains(r.At) && r.Upright:
		w.places = append(l.besideUpright(v.x(r.At), w.text), l.atFoot(v.x(r.At), w.text)...)
	case shown.Contains(r.At):
		w.places = append(l.alongLevel(v.y(r.At), r.At < 0, 0, w.text), l.onLevel(v.y(r.At), w.text)...)
		w.farther = func() []vg.Point { return l.offLevel(v.y(r.At), r.At < 0, w.text) }
	case r.Edge && r.At < shown.Min:
		w.text += " ↓"
		w.places = l.atEdge(false, 0, w.text)
		w.farther = func() []vg.Point { return l.offEdge(false, v.y(l.p.frame.Y.Clamp(0)), w.text) }
	case r.Edge:
		w.text += " ↑"
		w.places = l.atEdge(true, 0, w.text)
		w.farther = func() []vg.Point { return l.offEdge(true, v.y(l.p.frame.Y.Clamp(0)), w.text) }
	}
	most := math.Inf(1)
	if r.Setup > 0 {
		most = overText // the first setup's labels come first
	}
	l.put(&w, most)
}

// put sets text at the cheapest of its places and takes the room there. Text
// that costs as much as most everywhere is left out.
func (l *labeler) put(w *wish, most float64) {
	best, least := l.cheapest(w, w.places, most)
	if least >= crowded && w.farther != nil {
		if other, cost := l.cheapest(w, w.farther(), least); cost < least {
			best, least = other, cost
		}
	}
	if least == most {
		return
	}
	l.placed = append(l.placed, best)
	l.taken = append(l.taken, best.box)
}

// cheapest returns text at the cheapest of some places and what it costs there; most
// where none costs less.
func (l *labeler) cheapest(w *wish, places []vg.Point, most float64) (best label, least float64) {
	least = most
	width := l.width(w.text)
	for i, at := range places {
		box := l.box(at, width)
		extra := laterTry * float64(i)
		switch {
		case w.mark != nil:
			extra += fartherOff * float64(gapTo(box, *w.mark)/l.row())
		case len(w.own) > 0:
			extra += offRule * float64(max(0, gapTo(box, nearest(w.own, at))-besideRule*l.size)/l.row())
		}
		if extra >= least {
			continue
		}
		if cost, crosses := l.cost(box, w.own, least-extra); cost+extra < least {
			least, best = cost+extra, label{w.text, w.ink, at, box, crosses, w.over}
		}
	}
	return best, least
}

// nearest returns the point of a level or upright line that is nearest to a point.
func nearest(line []vg.Point, p vg.Point) vg.Point {
	a, b := line[0], line[1]
	return vg.Point{X: max(a.X, min(b.X, p.X)), Y: max(a.Y, min(b.Y, p.Y))}
}

// gapTo returns how far a point is from a rectangle.
func gapTo(r vg.Rectangle, p vg.Point) vg.Length {
	x, y := max(r.Min.X-p.X, p.X-r.Max.X, 0), max(r.Min.Y-p.Y, p.Y-r.Max.Y, 0)
	return vg.Length(math.Hypot(float64(x), float64(y)))
}

// cost says how bad it is to cover a box, and whether a rule runs through it, its own or
// another one.
// From most on it does not matter how much worse it is.
func (l *labeler) cost(box vg.Rectangle, own []vg.Point, most float64) (cost float64, crosses bool) {
	if box.Min.X < l.area.Min.X || box.Max.X > l.area.Max.X || box.Min.Y < l.area.Min.Y || box.Max.Y > l.area.Max.Y {
		return math.Inf(1), false
	}
	crosses = covered(own, box) > 0
	box = vg.Rectangle{Min: box.Min.Sub(vg.Point{X: l.air, Y: l.air}), Max: box.Max.Add(vg.Point{X: l.air, Y: l.air})}
	for _, t := range l.taken {
		if box.Min.X < t.Max.X && t.Min.X < box.Max.X && box.Min.Y < t.Max.Y && t.Min.Y < box.Max.Y {
			cost += overText
		}
	}
	for i := range l.curves {
		if cost >= most {
			return cost, crosses
		}
		s := &l.curves[i]
		if box.Min.X <= s.within.Max.X && s.within.Min.X <= box.Max.X && box.Min.Y <= s.within.Max.Y && s.within.Min.Y <= box.Max.Y {
			cost += overCurve * covered(s.points, box)
		}
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

package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Placed is a label in its place on the picture.
type Placed struct {
	*Item
	Box    Box
	Point  r2.Vec    // what it belongs to [px]
	Leader [2]r2.Vec // from the box to what it belongs to [px]; the same point twice for none
	Toward string    // an arrow to what is beyond the picture; empty for what is in it
}

// layout places the labels of one picture after another. A label stays where it
// was on screen unless it would cover something or its thing has gone far.
type layout struct {
	letters   *letters
	obstacles obstacles
	ink       ink
	counted   bool // the picture's ink has been counted
	order     []int
	before    []memory // of the labels of the last picture
	now       []memory
	view      View // of the last picture
	dotted    bool // that picture had dots
}

// memory is where a label was.
type memory struct {
	id    ID
	box   Box
	at    r2.Vec  // its point, in the last picture [px]
	held  r2.Vec  // its point when it was placed, or since followed [px]
	reach float64 // how far the box was from its point when it was placed [px]
	keep  keep    // what it was placed off
}

// How labels stay [px].
const (
	slack      = 40.0  // how far a thing goes before its label follows
	viewStep   = 2.0   // how far a thing goes from one picture to the next that moves with the view
	stretch    = 50.0  // how much longer a leader gets before its label is placed anew
	farAway    = 100.0 // how long a leader is that a nearer place is looked for
	betterBy   = 80.0  // how much better and nearer a place is that a label far away leaves its own for
	widthStep  = 8.0   // boxes are multiples of it wide
	widthSlack = 40.0  // how much narrower words get before their box does
)

// arrange places the labels of a picture, the foremost first; of those that find no
// place the IDs are noted.
func (p *Picture) arrange() {
	l := &p.layout
	l.letters = p.letters()
	l.obstacles.gather(p)
	l.counted = false
	p.Labels, p.LeftOut = p.Labels[:0], p.LeftOut[:0]
	l.order = l.order[:0]
	for i := range p.Drawn {
		if p.Drawn[i].Shape == Label {
			l.order = append(l.order, i)
		}
	}
	slices.SortStableFunc(l.order, func(i, j int) int { return int(p.Drawn[i].Rank - p.Drawn[j].Rank) })
	if dotted := p.dots() != nil; dotted != l.dotted || another(&l.view, &p.View) {
		l.before, l.dotted = l.before[:0], dotted
	}
	l.now = l.now[:0]
	for _, i := range l.order {
		l.place(p, &p.Drawn[i])
	}
	l.before, l.now = l.now, l.before
	l.view = p.View
}

// letters returns what the picture's words are measured with.
func (p *Picture) letters() *letters {
	if p.layout.letters == nil {
		p.layout.letters = newLetters()
	}
	return p.layout.letters
}

// another reports whether two views are too far from each other for labels to keep their
// places: of other sizes, from elsewhere, or in another fit.
func another(a, b *View) bool {
	const near, zoom = 0.9, 1.3 // cosine; more than a notch of the mouse's wheel
	return a.Width != b.Width || a.Height != b.Height || a.Scale > zoom*b.Scale || b.Scale > zoom*a.Scale ||
		r3.Dot(a.Plane.Right, b.Plane.Right) < near || r3.Dot(a.Plane.Up, b.Plane.Up) < near
}

// place places a label.
func (l *layout) place(p *Picture, d *Drawn) {
	at, toward := d.Points[0], ""
	if d.Stays {
		at, toward = kept(at, p.View.Width, p.View.Height)
	}
	if !(Box{nearEdge, nearEdge, p.View.Width - nearEdge, p.View.Height - nearEdge}).Holds(at) {
		return
	}
	label := Placed{Item: d.Item, Point: at, Toward: toward}
	m := memory{id: d.ID}
	was := slices.IndexFunc(l.before, func(m memory) bool { return m.id == d.ID })
	size := l.size(&label)
	size.X = widthStep * math.Ceil(size.X/widthStep)
	found := false
	if was >= 0 {
		m = l.before[was]
		size.X = steadyWidth(size.X, m.box.Right-m.box.Left)
		found = l.follow(p, &label, &m, size)
	}
	if found && (m.reach > farAway || m.keep == tight) {
		found = !l.better(p, &label, m.keep)
	}
	if !found {
		found = l.search(p, &label, &m, size)
		m.held, m.reach = at, label.Box.distance(at)
	}
	if !found {
		p.LeftOut = append(p.LeftOut, d.ID)
		return
	}
	m.box, m.at = label.Box, at
	label.Leader, _ = l.leader(p, label.Box, at)
	p.Labels = append(p.Labels, label)
	l.now = append(l.now, m)
}

// better reports whether there is a place that a label leaves its own for: one that covers
// nothing if it covers something, or one that is much nearer.
func (l *layout) better(p *Picture, label *Placed, k keep) bool {
	b, cost := l.best(p, label, r2.Vec{X: label.Box.Right - label.Box.Left, Y: label.Box.Bottom - label.Box.Top}, roomy)
	if math.IsInf(cost, 1) || k == tight {
		return !math.IsInf(cost, 1)
	}
	return cost+betterBy <= l.cost(p, label, label.Box) && b.distance(label.Point)+betterBy <= label.Box.distance(label.Point)
}

// steadyWidth returns how wide a box is that was of another width before.
func steadyWidth(needs, was float64) float64 {
	if needs <= was && needs > was-widthSlack {
		return was
	}
	return needs
}

// follow brings a label's box to where it stays, and reports whether it can.
func (l *layout) follow(p *Picture, label *Placed, m *memory, size r2.Vec) bool {
	d := r2.Sub(label.Point, m.at)
	if p.View == l.view || r2.Norm(d) <= viewStep {
		// The view stands still: the box follows what is more than some way ahead.
		d = r2.Vec{}
		if gone := r2.Sub(label.Point, m.held); r2.Norm(gone) > slack {
			d = r2.Scale(1-slack/r2.Norm(gone), gone)
		}
	}
	m.held = r2.Add(m.held, d)
	box := whole(Box{m.box.Left, m.box.Top, m.box.Left + size.X, m.box.Top + size.Y}.moved(d)).brought(l.obstacles.room)
	if box.distance(label.Point) > m.reach+stretch {
		return false
	}
	for _, step := range nudges {
		for _, way := range ways {
			if b := whole(box.moved(r2.Scale(step, way))); l.fits(p, label, b, max(allClear, m.keep)) {
				label.Box = b
				return true
			}
			if step == 0 {
				break
			}
		}
	}
	return false
}

// nudges are how far a label gives way to something before it is placed anew [px].
var nudges = [...]float64{0, 2, 4, 8, 14}

// whole returns a box moved to whole pixels.
func whole(b Box) Box {
	return b.moved(r2.Vec{X: math.Round(b.Left) - b.Left, Y: math.Round(b.Top) - b.Top})
}

// fits reports whether a label may stand in a box: it covers neither its point nor
// anything else that it may not, and neither its leader nor those of the labels placed
// before it run through a box.
func (l *layout) fits(p *Picture, label *Placed, b Box, k keep) bool {
	if b.distance(label.Point) < discRoom || !l.obstacles.free(b, k) {
		return false
	}
	apart := b.Grown(boxRoom)
	for i := range p.Labels {
		other := &p.Labels[i]
		if apart.Meets(other.Box) || other.Leader[0] != other.Leader[1] && b.Crosses(other.Leader[0], other.Leader[1]) {
			return false
		}
	}
	_, ok := l.leader(p, b, label.Point)
	return ok
}

// Leaders [px].
const (
	leaderFrom  = 16.0 // distance that needs one
	leaderInset = 12.0 // from a box's corner
)

// leader returns the line from a box to its point, or the point twice where the box
// stands beside it, and false where every line would run through another label.
func (l *layout) leader(p *Picture, b Box, to r2.Vec) ([2]r2.Vec, bool) {
	radius := l.obstacles.radiusAt(to)
	if b.distance(to) < leaderFrom+radius {
		return [2]r2.Vec{to, to}, true
	}
	// From the nearest point, or else from elsewhere along the edge that faces it.
	inset := math.Min(leaderInset, (b.Right-b.Left)/2)
	from := [...]r2.Vec{b.nearest(to), b.nearest(to), b.nearest(to), b.nearest(to)}
	tries := from[:1]
	if to.Y <= b.Top || to.Y >= b.Bottom {
		left, right := b.Left+inset, b.Right-inset
		from[0].X = math.Max(left, math.Min(right, to.X))
		from[1].X, from[2].X, from[3].X = (left+right)/2, left, right
		tries = from[:]
	}
	for _, f := range tries {
		if !slices.ContainsFunc(p.Labels, func(o Placed) bool { return o.Box.Crosses(f, to) }) {
			return [2]r2.Vec{f, shortened(f, to, radius)}, true
		}
	}
	return [2]r2.Vec{from[0], shortened(from[0], to, radius)}, false
}

// shortened returns where a line to the middle of a sign meets its edge.
func shortened(from, to r2.Vec, radius float64) r2.Vec {
	d := r2.Sub(to, from)
	return r2.Sub(to, r2.Scale(radius/r2.Norm(d), d))
}

// Sizes of labels [px].
const (
	plateAside = 7.0  // around words of two lines
	plateAbove = 4.0  // likewise
	lineAside  = 3.0  // around words of one line
	lineAbove  = 1.5  // likewise
	labelLine  = 14.0 // from one line to the next
)

// size returns how large a label's box is at least.
func (l *layout) size(label *Placed) r2.Vec {
	if label.Figure == "" {
		return r2.Vec{X: l.letters.width(l.letters.plain, label.Text) + l.toward(label) + 2*lineAside, Y: Letter + 2*lineAbove}
	}
	name := l.letters.width(l.letters.bold, label.Text) + l.toward(label)
	figure := math.Max(l.letters.width(l.letters.plain, label.Figure), l.letters.width(l.letters.plain, label.Widest))
	return r2.Vec{X: math.Max(name, figure) + 2*plateAside, Y: labelLine + Letter + 2*plateAbove}
}

// arrowGap is between an arrow and words [px].
const arrowGap = 4.0

// toward returns how wide an arrow to what is beyond the picture is, with its gap.
func (l *layout) toward(label *Placed) float64 {
	if label.Toward == "" {
		return 0
	}
	return l.letters.width(l.letters.plain, label.Toward) + arrowGap
}

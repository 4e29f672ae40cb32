package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
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
}

// memory is where a label was.
type memory struct {
	id    ID
	box   Box
	at    r2.Vec  // its point, in the last picture [px]
	held  r2.Vec  // its point when it was placed, or since followed [px]
	reach float64 // how far the box was from its point when it was placed [px]
}

// How labels stay [px].
const (
	slack      = 40.0 // how far a thing goes before its label follows
	viewStep   = 2.0  // how far a thing goes from one picture to the next that has the view move
	stretch    = 50.0 // how much longer a leader gets before its label is placed anew
	farAway    = 100.0
	betterBy   = 80.0 // how much better and nearer a place is that a label far away leaves its own for
	widthStep  = 8.0  // boxes are multiples of it wide
	widthSlack = 40.0 // how much narrower words get before their box does
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
	if l.view.Width != p.View.Width || l.view.Height != p.View.Height || turned(&l.view.Plane, &p.View.Plane) {
		l.before = l.before[:0]
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

// turned reports whether two planes are too far from each other for labels to keep
// their places.
func turned(a, b *Plane) bool {
	const near = 0.9
	return a.Right.X*b.Right.X+a.Right.Y*b.Right.Y+a.Right.Z*b.Right.Z < near || a.Up.X*b.Up.X+a.Up.Y*b.Up.Y+a.Up.Z*b.Up.Z < near
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
	if found && m.reach > farAway {
		b, cost := l.best(p, &label, size, roomy)
		found = math.IsInf(cost, 1) || l.cost(p, &label, label.Box) < cost+betterBy || label.Box.distance(at) < b.distance(at)+betterBy
	}
	if !found {
		found = l.search(p, &label, size)
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
			if b := whole(box.moved(r2.Scale(step, way))); l.fits(p, label, b, allClear) {
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
// anything else that it may not, nor do its leader and those of the labels before it run through boxes.
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

// Places that are tried around a label's point.
var (
	rings = [...]float64{6, 14, 26, 42, 64, 92, 128, 172, 224, 290}
	ways  = func() (ways [16]r2.Vec) {
		for i := range ways {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(ways)))
			ways[i] = r2.Vec{X: cos, Y: -sin}
		}
		return ways
	}()
)

// secondaryReach is how far words for reference go from what they belong to [px].
const secondaryReach = 64.0

// search finds the best place for a label of a size, and reports whether there is one.
func (l *layout) search(p *Picture, label *Placed, size r2.Vec) bool {
	for _, k := range [...]keep{roomy, allClear, tight} {
		b, cost := l.best(p, label, size, k)
		if math.IsInf(cost, 1) && k != roomy && label.Rank < Secondary {
			b, cost = l.nook(p, label, size, k)
		}
		if !math.IsInf(cost, 1) {
			label.Box = b
			return true
		}
	}
	return false
}

// best returns the box at least cost of those that a label fits into, and infinity
// where it fits into none: of boxes around its point and then all over the picture.
func (l *layout) best(p *Picture, label *Placed, size r2.Vec, k keep) (best Box, least float64) {
	least = math.Inf(1)
	try := func(b Box) {
		b = whole(b)
		if b.distance(label.Point) >= least || !l.fits(p, label, b, k) {
			return
		}
		if cost := l.cost(p, label, b); cost < least {
			best, least = b, cost
		}
	}
	for _, reach := range rings {
		if label.Rank >= Secondary && reach > secondaryReach {
			return best, least
		}
		for _, way := range ways {
			// The box's nearest point is that far away.
			out := r2.Vec{X: reach*way.X + bounded(way.X)*size.X/2, Y: reach*way.Y + bounded(way.Y)*size.Y/2}
			middle := r2.Add(label.Point, out)
			try(Box{middle.X - size.X/2, middle.Y - size.Y/2, middle.X + size.X/2, middle.Y + size.Y/2})
		}
	}
	room := l.obstacles.room
	for y := room.Top; y+size.Y <= room.Bottom; y += size.Y {
		for x := room.Left; x+size.X <= room.Right; x += size.X / 3 {
			try(Box{x, y, x + size.X, y + size.Y})
		}
	}
	return best, least
}

// nook looks closely for a place that is just large enough, as best does.
func (l *layout) nook(p *Picture, label *Placed, size r2.Vec, k keep) (best Box, least float64) {
	const aside, above, stepX, stepY = 300, 150, 8, 5 // [px]
	least = math.Inf(1)
	near := Box{label.Point.X - aside, label.Point.Y - above, label.Point.X + aside, label.Point.Y + above}
	near.Left, near.Top = math.Max(near.Left, l.obstacles.room.Left), math.Max(near.Top, l.obstacles.room.Top)
	for y := near.Top; y < near.Bottom; y += stepY {
		for x := near.Left; x < near.Right; x += stepX {
			if b := whole(Box{x, y, x + size.X, y + size.Y}); l.fits(p, label, b, k) {
				if cost := l.cost(p, label, b); cost < least {
					best, least = b, cost
				}
			}
		}
	}
	return best, least
}

// bounded is 1 or −1 for what points more that way than across, and less between.
func bounded(x float64) float64 { return math.Max(-1, math.Min(1, 1.5*x)) }

// cost says how badly a label would stand in a box, in pixels of distance from its
// thing that are as bad.
func (l *layout) cost(p *Picture, label *Placed, b Box) float64 {
	const (
		wrongWay    = 22.0 // on the other side of its thing than it stands best
		perInk      = 2.0  // of what it covers
		overLeaders = 60.0 // a leader crosses another one
		overLater   = 40.0 // it stands where a later label stood
	)
	if !l.counted {
		l.ink.count(p)
		l.counted = true
	}
	cost := b.distance(label.Point) + perInk*l.ink.under(b)
	if way := r2.Sub(b.middle(), label.Point); label.Beside != (r2.Vec{}) && way != (r2.Vec{}) {
		way.Y = -way.Y
		cost += wrongWay * (1 - r2.Cos(way, label.Beside))
	}
	if leader, _ := l.leader(p, b, label.Point); leader[0] != leader[1] {
		cost += l.obstacles.inTheWay(leader[0], label.Point)
		for i := range p.Labels {
			if o := &p.Labels[i]; cross(leader[0], leader[1], o.Leader[0], o.Leader[1]) {
				cost += overLeaders
			}
		}
	}
	for i := range l.before {
		if m := &l.before[i]; m.id != label.ID && !slices.ContainsFunc(l.now, func(n memory) bool { return n.id == m.id }) && b.Meets(m.box) {
			cost += overLater
		}
	}
	return cost
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

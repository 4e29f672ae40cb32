package raster

import "math"

const (
	// nearest is the least distance between two points of a line that are
	// told apart [px].
	nearest = 1.0 / 256

	// blunt is the length of a miter beyond the half line width up to which a
	// corner is mitered rather than rounded: the turns within a curve [px].
	blunt = 1.0 / 64
)

// stroker turns polylines into the outlines of lines. All outlines turn the
// same way, so that overlaps unite under the non-zero winding rule.
type stroker struct {
	out    *polylines
	half   float64 // Half the line width [px].
	cap    LineCap
	step   float64 // Angle between the points of a round cap or join [rad].
	dashes dashes

	pts  []point // The line being outlined, no two neighbors nearer than nearest.
	dirs []leg   // dirs[i] leads from pts[i] to the next point.
	run  []point // The dash or the visible part being collected.
}

// leg is the direction and length of a piece of a line.
type leg struct {
	dir point   // Unit vector.
	len float64 // [px]
}

// init sets the shape of the lines.
func (s *stroker) init(out *polylines, half float64, lc LineCap) {
	s.out, s.half, s.cap = out, half, lc
	// A wide line still gets no more points than a curve.
	s.step = max(chordAngle(half, flatness), 2*math.Pi/maxChords)
}

// reach returns how far an outline may lie from its line [px].
func (s *stroker) reach() float64 { return s.half + blunt }

// stroke outlines all polylines where they are in view.
func (s *stroker) stroke(p *polylines, view box) {
	for i, piece := range p.pieces {
		line, solid := p.piece(i), s.dashes.solid()
		switch {
		case solid && p.bounds(i, i+1).inside(view):
			s.line(line, piece.closed)
		case solid && piece.closed:
			s.cutLoop(line, view)
		default:
			s.cut(line, piece.closed, view)
		}
	}
}

// line outlines a polyline.
func (s *stroker) line(line []point, closed bool) {
	s.load(line, closed)
	switch {
	case len(s.pts) == 1:
		s.dot(s.pts[0], point{1, 0})
	case closed:
		s.loop()
	default:
		s.strip()
	}
}

// load takes over the points of a polyline that are apart from one another,
// and the legs between them.
func (s *stroker) load(line []point, closed bool) {
	s.pts, s.dirs = append(s.pts[:0], line[0]), s.dirs[:0]
	for _, q := range line[1:] {
		if l, ok := legOf(s.pts[len(s.pts)-1], q); ok {
			s.pts, s.dirs = append(s.pts, q), append(s.dirs, l)
		}
	}
	if !closed || len(s.pts) == 1 {
		return
	}
	// The last point of a closed line leads to the first, unless it is there.
	if l, ok := legOf(s.pts[len(s.pts)-1], s.pts[0]); ok {
		s.dirs = append(s.dirs, l)
	} else {
		s.pts = s.pts[:len(s.pts)-1]
	}
}

// legOf returns the leg from p to q, or false when they are too near.
func legOf(p, q point) (leg, bool) {
	d := q.minus(p)
	l := d.length()
	if l < nearest {
		return leg{}, false
	}
	return leg{point{d.x / l, d.y / l}, l}, true
}

// strip outlines the loaded line as an open one: along its left, around the
// end, back along its right, around the start.
func (s *stroker) strip() {
	n := len(s.dirs)
	s.side(s.pts[0], s.dirs[0].dir)
	for i := 1; i < n; i++ {
		s.joint(s.pts[i], s.dirs[i-1], s.dirs[i])
	}
	s.side(s.pts[n], s.dirs[n-1].dir)
	s.end(s.pts[n], s.dirs[n-1].dir)
	s.side(s.pts[n], s.dirs[n-1].back().dir)
	for i := n - 1; i > 0; i-- {
		s.joint(s.pts[i], s.dirs[i].back(), s.dirs[i-1].back())
	}
	s.side(s.pts[0], s.dirs[0].back().dir)
	s.end(s.pts[0], s.dirs[0].back().dir)
	s.out.finish(true)
}

// loop outlines the loaded line as a closed one: one loop along its left, one
// back along its right.
func (s *stroker) loop() {
	n := len(s.dirs)
	before := s.dirs[n-1]
	for i, l := range s.dirs {
		s.joint(s.pts[i], before, l)
		before = l
	}
	s.out.finish(true)
	before = s.dirs[0].back()
	for i := n - 1; i >= 0; i-- {
		l := s.dirs[i].back()
		s.joint(s.pts[(i+1)%n], before, l)
		before = l
	}
	s.out.finish(true)
}

// back returns the leg walked the other way.
func (l leg) back() leg { return leg{point{-l.dir.x, -l.dir.y}, l.len} }

// left returns the vector of half a line width to the left of the direction.
func (s *stroker) left(dir point) point { return point{-dir.y * s.half, dir.x * s.half} }

// side adds the point to the left of p.
func (s *stroker) side(p, dir point) { s.offset(p, s.left(dir)) }

// offset adds p+v.
func (s *stroker) offset(p, v point) { s.out.add(point{p.x + v.x, p.y + v.y}) }

// joint adds the left side of the corner at p between legs a and b.
func (s *stroker) joint(p point, a, b leg) {
	from, to := s.left(a.dir), s.left(b.dir)
	sin := a.dir.x*b.dir.y - a.dir.y*b.dir.x
	cos := a.dir.x*b.dir.x + a.dir.y*b.dir.y
	room := s.half*math.Abs(sin) <= min(a.len, b.len)
	switch {
	case room && cos > 0 && s.half*(1-cos) <= 4*blunt:
		// A miter is sqrt(2/(1+cos)) half widths long, for a small turn about
		// 1+(1-cos)/4.
		s.miter(p, from, to, cos)
	case sin > 0:
		// The inner side. When a leg is too short to hold the turn, the outline
		// goes through the corner, which winds each leg on its own.
		s.offset(p, from)
		if !room {
			s.out.add(p)
		}
		s.offset(p, to)
	default:
		s.offset(p, from)
		s.turn(p, from, -math.Abs(math.Atan2(sin, cos)))
		s.offset(p, to)
	}
}

// miter adds the point where the sides at the offsets from and to meet.
func (s *stroker) miter(p, from, to point, cos float64) {
	s.offset(p, point{(from.x + to.x) / (1 + cos), (from.y + to.y) / (1 + cos)})
}

// turn adds the points between from and from turned by the angle around p.
func (s *stroker) turn(p, from point, angle float64) {
	n := math.Ceil(math.Abs(angle) / s.step)
	if n <= 1 {
		return
	}
	sin, cos := math.Sincos(angle / n)
	outward := outset(angle / n)
	from = point{from.x * outward, from.y * outward}
	for ; n > 1; n-- {
		from = point{from.x*cos - from.y*sin, from.x*sin + from.y*cos}
		s.offset(p, from)
	}
}

// end adds the cap of a line that arrives at p, between its sides.
func (s *stroker) end(p, dir point) {
	if s.cap == RoundCap {
		s.turn(p, s.left(dir), -math.Pi)
	}
}

// dot outlines a line or a dash without length. It has a direction, and shows
// as far as its caps do.
func (s *stroker) dot(p, dir point) {
	if s.cap == ButtCap {
		return
	}
	ahead, back := dir, point{-dir.x, -dir.y}
	s.side(p, ahead)
	s.end(p, ahead)
	s.side(p, back)
	s.end(p, back)
	s.out.finish(true)
}

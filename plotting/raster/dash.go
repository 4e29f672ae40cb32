package raster

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
)

const (
	// minPeriod is the shortest dash pattern that is still drawn as dashes [px].
	minPeriod = 0.25

	// maxEffort bounds the changes between dash and gap plus the points of the
	// outline in one stroke. What is left of it then is solid. A butt dash takes
	// two of the former and four of the latter.
	maxEffort = 1 << 17
)

// dashes is a position in a dash pattern. The zero value is a solid line.
type dashes struct {
	pattern []vg.Length // Dashes and gaps in turn.
	scale   float64     // [px/point]
	period  float64     // Length after which dashes and gaps repeat [px].
	start   float64     // Where in the period a line begins [px].
	index   int         // Current dash or gap, counted through two rounds of the pattern.
	rest    float64     // What is left of it [px].
	turns   int         // Changes between dash and gap so far.
}

// dashesOf returns the pattern, or a solid line when it is empty, unusable or
// too fine.
func dashesOf(pattern []vg.Length, offset vg.Length, scale float64) dashes {
	round := 0.0
	for _, l := range pattern {
		if !(l >= 0) {
			return dashes{}
		}
		round += l.Points() * scale
	}
	// Two rounds, since dashes and gaps change places in an odd pattern.
	period := 2 * round
	start := math.Mod(offset.Points()*scale, period)
	if !(round >= minPeriod) || round > farthest || math.IsNaN(start) {
		return dashes{}
	}
	if start < 0 {
		start += period
	}
	return dashes{pattern: pattern, scale: scale, period: period, start: start}
}

// solid reports whether there is no pattern.
func (d *dashes) solid() bool { return d.pattern == nil }

// on reports whether the position is in a dash.
func (d *dashes) on() bool { return d.index%2 == 0 }

// length returns the length of dash or gap i [px].
func (d *dashes) length(i int) float64 { return d.pattern[i%len(d.pattern)].Points() * d.scale }

// next goes on to the next dash or gap.
func (d *dashes) next() {
	d.index++
	if d.index == 2*len(d.pattern) {
		d.index = 0
	}
	d.rest = d.length(d.index)
}

// rewind goes to where a line begins.
func (d *dashes) rewind() {
	if !d.solid() {
		d.seek(d.start)
	}
}

// skip moves on by a distance of any length [px].
func (d *dashes) skip(dist float64) {
	if d.solid() {
		return
	}
	at := -d.rest
	for i := range d.index + 1 {
		at += d.length(i)
	}
	d.seek(math.Mod(at+dist, d.period))
}

// seek goes to a distance from the start of the pattern, within the period
// [px].
func (d *dashes) seek(at float64) {
	d.index = 0
	d.rest = d.length(0)
	for at >= d.rest && d.index < 2*len(d.pattern)-1 {
		at -= d.rest
		d.next()
	}
	d.rest = max(d.rest-at, 0)
}

// apart reports whether no two dashes of a straight line touch the same pixel.
func (s *stroker) apart() bool {
	d := &s.dashes
	if d.solid() || s.cap != ButtCap {
		return false
	}
	for i := range 2 * len(d.pattern) {
		if i%2 == 1 && d.length(i) < 2 {
			return false
		}
	}
	return true
}

// cut outlines the dashes of a polyline, or the whole of it, where it is in
// view. What is out of view only moves the dashes on.
func (s *stroker) cut(line []point, closed bool, view box) {
	s.dashes.rewind()
	for i := 1; i < len(line); i++ {
		s.segment(line[i-1], line[i], view)
	}
	if last := len(line) - 1; closed && line[last] != line[0] {
		s.segment(line[last], line[0], view)
	}
	s.flush()
}

// cutLoop outlines a solid closed polyline where it is in view. It begins at a
// corner out of view, so that no corner in view is cut open.
func (s *stroker) cutLoop(line []point, view box) {
	n := len(line)
	from := slices.IndexFunc(line, func(p point) bool { return !view.holds(p) })
	for i := range n {
		s.segment(line[(from+i)%n], line[(from+i+1)%n], view)
	}
	s.flush()
}

// segment walks from a to b.
func (s *stroker) segment(a, b point, view box) {
	p, q, ok := visible(a, b, view)
	if !ok {
		s.pass(a, b)
		return
	}
	if p != a {
		s.pass(a, p)
	}
	if s.dashes.solid() {
		s.run = append(s.run, p, q)
	} else {
		s.dash(p, q)
	}
	if q != b {
		s.pass(q, b)
	}
}

// pass goes from a to b without drawing.
func (s *stroker) pass(a, b point) {
	s.flush()
	s.dashes.skip(b.minus(a).length())
}

// dash draws the dashes between p and q.
func (s *stroker) dash(p, q point) {
	d := &s.dashes
	if d.on() {
		s.run = append(s.run, p)
	}
	length := q.minus(p).length()
	at := 0.0
	for length > 0 && at+d.rest <= length {
		if d.turns++; d.turns+len(s.out.pts) > maxEffort {
			s.run = append(s.run, p.lerp(q, at/length), q)
			*d = dashes{}
			return
		}
		at += d.rest
		turn := p.lerp(q, at/length)
		if d.on() {
			s.run = append(s.run, turn)
			s.flush()
			d.next()
			continue
		}
		d.next()
		s.run = append(s.run, turn)
		if d.rest == 0 {
			// A dash without length takes its direction from the line.
			s.dot(turn, point{(q.x - p.x) / length, (q.y - p.y) / length})
			s.run = s.run[:0]
			d.next()
		}
	}
	d.rest -= length - at
	if d.on() {
		s.run = append(s.run, q)
	}
}

// flush outlines the run and begins a new one.
func (s *stroker) flush() {
	if len(s.run) > 1 {
		s.line(s.run, false)
	}
	s.run = s.run[:0]
}

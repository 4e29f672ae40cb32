package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Tolerances of the continuation.
const (
	// dead is the sine of the angle between the gradients of the bars' misses at
	// which a path has come to a change point, and the hold at which the bars do
	// not hold the axle [1]. It is far above rounding, which must not choose the
	// way on, and within a tenth of a millimeter of the change point.
	dead = 3e-5
	// lastCorrection is the size at which a Newton correction is the last one [m].
	// The bars then miss their lengths by its square over twice the shortest bar,
	// 5e-13 m at most, less than a thousandth of what the package promises.
	lastCorrection = 1e-7
	// levelClimb is the climb at which a path counts as turning back [1]. Its
	// parameter is then within levelClimb²/2 radii of curvature of the extreme.
	levelClimb = 1e-7
	// largestBend bounds how far the path's direction turns in a step [rad], so that
	// the parabola of the predictor stays near it.
	largestBend = 0.3
	// largestDeviation bounds how far the path deviates from the parabolas that
	// touch it in the two ends of a step, in parts of the step [1]: a smooth path
	// stays near them, a jump to the other assembly does not.
	largestDeviation = 0.015
	// climbMargin is the least climb that a step may pass, in parts of its deviation
	// [1]: the error of the climb estimated within the step grows with it.
	climbMargin = 0.2
	// leastStep is the step below which a path counts as ended [m], a tenth of what
	// the package promises of bar lengths.
	leastStep = 1e-10
)

// Bounds of the loops, far above what is usual.
const (
	mostSteps   = 5000 // along a path; usual are one to ten, some dozens to its end
	newtonSteps = 5    // of corrections in a step; usual are one to three
	levelSteps  = 60   // to the extreme within a step; a bisection takes fifty
)

// follow continues along the path from a place on it to where the parameter has
// a value, and returns the place there and true; or, when the path turns back or
// comes to a change point before that, the last place and false. An infinite
// value leads to the end of the path.
//
// It is a predictor–corrector method: each step goes along the parabola that
// touches the path (predictor) and from there back to the path by Newton's
// corrections, on the way by those of least length, in the last step by those at
// the value asked for. A step that is not sound is halved.
func (c *path) follow(p place, parameter float64) (place, bool) {
	direction := math.Copysign(1, parameter-p.at.Y)
	step := largestBend / 2 * c.scale
	for range mostSteps {
		if p.at.Y == parameter {
			return p, true
		}
		if !(p.sine > dead) || step < leastStep {
			break
		}
		step = math.Min(step, largestBend/length(p.curvature))
		distance := p.distanceTo(parameter)
		last := math.Abs(distance) <= step
		if !last {
			distance = direction * step
		}
		guess := p.ahead(distance)
		if last {
			guess.Y = parameter
		}
		if next, ok := c.settle(guess, last); ok {
			s := newStretch(&p, &next)
			if s.sound() && (parameter-next.at.Y)*direction >= 0 {
				p = next
				// What a step strays grows with its square.
				step *= math.Min(2, math.Sqrt(largestDeviation/2/s.deviation))
				continue
			}
			if s.turnsBack() {
				if end := c.end(p, next); (parameter-end.at.Y)*direction > 0 {
					return end, false
				}
			}
		}
		step = math.Abs(distance) / 2
	}
	return p, false
}

// settle corrects a guess to a place of the path by Newton's method, by
// corrections of least length or at the guess's parameter.
func (c *path) settle(guess r3.Vec, atParameter bool) (place, bool) {
	at := guess
	for range newtonSteps {
		m := c.measure(at)
		by := [2]float64{-m.miss[upper], -m.miss[lower]}
		var correction r3.Vec
		if atParameter {
			correction = m.level(by)
		} else {
			correction = m.least(by)
		}
		at = r3.Add(at, correction)
		if r3.Norm2(correction) <= lastCorrection*lastCorrection {
			return c.place(at, &m), true
		}
	}
	return place{}, false
}

// end finds where the path turns back between two places in order, of which the
// first climbs and the second does not.
func (c *path) end(p, q place) place {
	for range levelSteps {
		s := newStretch(&p, &q)
		middle, ok := c.settle(s.at(s.level()), false)
		if !ok {
			break
		}
		if middle.climb() <= 0 {
			q = middle
		} else {
			p = middle
		}
		if math.Abs(middle.climb()) <= levelClimb {
			return middle
		}
	}
	return p
}

// stretch is the path between two places.
type stretch struct {
	from, to  *place
	arc       float64 // estimate of its length, negative against the tangent [m]
	deviation float64 // of the path from the parabolas that touch it in both ends, in parts of its length [1]
}

func newStretch(from, to *place) stretch {
	chord := r3.Sub(to.at, from.at)
	// An arc that turns by φ is longer than its chord by φ²/24.
	arc := math.Copysign(length(chord)*(1+r3.Norm2(r3.Sub(to.tangent, from.tangent))/24), r3.Dot(chord, from.tangent))
	ahead, back := r3.Sub(from.ahead(arc), to.at), r3.Sub(to.ahead(-arc), from.at)
	// Rounding is no deviation, however short the step.
	least := math.Max(math.Abs(arc), leastStep)
	return stretch{from, to, arc, math.Sqrt(math.Max(r3.Norm2(ahead), r3.Norm2(back))) / least}
}

// smooth reports whether both ends lie on one path, the tangents alike.
func (s *stretch) smooth() bool {
	return s.deviation <= largestDeviation && r3.Dot(s.from.tangent, s.to.tangent) > 0
}

// sound reports whether the parameter grows all along the stretch.
func (s *stretch) sound() bool {
	return s.smooth() && s.to.climb() > 0 && s.leastClimb() >= climbMargin*s.deviation
}

// turnsBack reports whether the parameter has ceased to grow at the far end.
func (s *stretch) turnsBack() bool { return s.smooth() && s.to.climb() <= 0 }

// at is the cubic that touches the path in both ends, at a part of the stretch.
func (s *stretch) at(part float64) r3.Vec {
	rest := 1 - part
	from := r3.Add(r3.Scale(1+2*part, s.from.at), r3.Scale(part*s.arc, s.from.tangent))
	to := r3.Sub(r3.Scale(1+2*rest, s.to.at), r3.Scale(rest*s.arc, s.to.tangent))
	return r3.Add(r3.Scale(rest*rest, from), r3.Scale(part*part, to))
}

// level is the part of the stretch at which that cubic turns back.
func (s *stretch) level() float64 {
	// Its climb is a + b·part + c·part².
	a := s.from.climb()
	c := 3*(a+s.to.climb()) - 6*(s.to.at.Y-s.from.at.Y)/s.arc
	b := s.to.climb() - a - c
	part := 2 * a / (math.Copysign(math.Sqrt(math.Max(b*b-4*a*c, 0)), a) - b)
	if !(part > 0 && part < 1) {
		return 0.5
	}
	return part
}

// leastClimb estimates the least climb between the ends: that of the cubic that
// has the path's climb and its derivative in both. It is infinite when the climb
// has no minimum between them.
func (s *stretch) leastClimb() float64 {
	a, b := s.from.climb(), s.to.climb()
	da, db := s.from.curvature.Y*s.arc, s.to.curvature.Y*s.arc
	if da >= 0 || db <= 0 {
		return math.Inf(1)
	}
	c, d := 3*(b-a)-2*da-db, 2*(a-b)+da+db
	part := -da / (c + math.Sqrt(c*c-3*d*da))
	return a + part*(da+part*(c+part*d))
}

// length is that of v, which is far from the ends of floating point: what
// math.Hypot guards against cannot happen.
func length(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }

// norm is the same in the plane.
func norm(v r2.Vec) float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y) }

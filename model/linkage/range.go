package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

const (
	// bend is how far the path may turn within one step [rad].
	bend = 0.3
	// stray is how far, in parts of it, a step may end beside the parabola
	// that the path's direction and curvature foretell, from either end: a
	// smooth path comes out near it, a jump to another path would not.
	stray = 0.015
	// margin is the climb, in parts of what a step missed, that must be left
	// between two places from which the path rises less, or the step is halved.
	margin = 0.2
	// flat is the climb at which the path counts as level [1]: the height is
	// then within flat²/2 radii of curvature of its extreme.
	flat = 1e-7
	// settled is the correction after which Newton's next would be lost in
	// rounding [m].
	settled = 1e-7
	// levelSteps is more than a bisection of a step takes to find a level place.
	levelSteps = 60
)

// Range returns the travels between which the linkage closes, seen from ride
// height: the axle rises or falls along its path until the path turns back.
// droop is negative, bump positive [m]. Both are found to 1e-7 m, and to 1e-4 m
// where the travel ends in a change point, the two bars and the brackets in one
// line.
func (l *Linkage) Range() (droop, bump float64) {
	// Ride height itself is reached, whatever rounding says.
	z := l.geometry.RearRadius
	return math.Min(l.extreme(-1)-z, 0), math.Max(l.extreme(1)-z, 0)
}

// place is a point of the path of the axle assembly: the curve of shift,
// height and turn on which both bars keep their lengths. Turns are made
// lengths by the linkage's scale.
type place struct {
	at   r3.Vec  // shift, height, turn [m]
	way  r3.Vec  // unit vector along the path
	veer r3.Vec  // derivative of way along the path, its curvature [1/m]
	sine float64 // of the angle between the bars' constraints
}

// length is that of v, which is far from the ends of floating point: what
// math.Hypot guards against cannot happen.
func length(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }

// climb is the rise of the axle along the path [1].
func (p *place) climb() float64 { return p.way.Y }

// extreme follows the path from ride height, up (1) or down (−1), to where its
// height turns back, and returns that height [m].
//
// The path's direction is the cross product of the gradients of the bars'
// stretches. That product vanishes at a change point and turns around behind
// it, so no step leads past one.
func (l *Linkage) extreme(direction float64) float64 {
	ride := r3.Vec{Y: l.geometry.RearRadius}
	side := 1.0 // of the two ways along the path, the one followed
	p, ok := l.settle(ride, side)
	if ok && p.climb()*direction < 0 {
		side = -1
		p, ok = l.settle(ride, side)
	}
	step := bend / 2 * l.scale()
	for n := 0; ok && n < mostSteps && p.sine > dead && step >= leastStep; n++ {
		step = math.Min(step, bend/length(p.veer))
		next, found := l.settle(p.ahead(step), side)
		if !found {
			step /= 2
			continue
		}
		miss := p.miss(&next)
		if miss > stray {
			step /= 2
			continue
		}
		if next.climb()*direction <= 0 {
			return l.level(p, next, side)
		}
		// The path may dip between two places.
		if p.veer.Y*direction < 0 && next.veer.Y*direction > 0 && p.leastClimb(&next, direction) < margin*miss {
			step /= 2
			continue
		}
		p = next
		// Misses grow with the square of the step.
		step *= math.Min(2, math.Sqrt(stray/2/miss))
	}
	return p.at.Y
}

// level finds the height at which the path is level between two places in
// order, of which one rises and one falls.
func (l *Linkage) level(p, q place, side float64) float64 {
	for range levelSteps {
		mid, ok := l.settle(p.between(&q, p.levelPart(&q)), side)
		if !ok {
			break
		}
		if mid.climb()*q.climb() > 0 {
			q = mid
		} else {
			p = mid
		}
		if math.Abs(mid.climb()) <= flat {
			return mid.at.Y
		}
	}
	return p.at.Y
}

// settle finds the place of the path next to a guess, by Newton's corrections
// of least length, with its way to the given side.
func (l *Linkage) settle(guess r3.Vec, side float64) (place, bool) {
	scale := l.scale()
	at := guess
	for range newtonSteps {
		e := l.evaluate(state{x: at.X, z: at.Y, turn: at.Z / scale})
		upper := r3.Vec{X: e.upper.x, Y: e.upper.z, Z: e.upper.turn / scale}
		lower := r3.Vec{X: e.lower.x, Y: e.lower.z, Z: e.lower.turn / scale}
		cross := r3.Cross(upper, lower)
		uu, ll, ul, cc := r3.Dot(upper, upper), r3.Dot(lower, lower), r3.Dot(upper, lower), r3.Dot(cross, cross)
		// least is the shortest move along which the stretches fall at the rates u and w.
		least := func(u, w float64) r3.Vec {
			return r3.Add(r3.Scale((w*ul-u*ll)/cc, upper), r3.Scale((u*ul-w*uu)/cc, lower))
		}
		correction := least(e.stretchUpper, e.stretchLower)
		at = r3.Add(at, correction)
		if !(r3.Norm2(correction) <= settled*settled) {
			continue
		}
		sine := math.Sqrt(cc)
		p := place{at: at, way: r3.Scale(side/sine, cross), sine: sine / math.Sqrt(uu*ll)}
		axle := r2.Vec{X: at.X, Y: at.Y}
		p.veer = least(
			p.straightStretch(r2.Sub(e.housingUpper, axle), upper, l.upper, scale),
			p.straightStretch(r2.Sub(e.housingLower, axle), lower, l.lower, scale),
		)
		return p, true
	}
	return place{}, false
}

// straightStretch is the second derivative of a bar's stretch along the
// path's tangent [1/m]: the hole's speed across the bar, less the pull of its
// turn about the axle.
func (p *place) straightStretch(arm r2.Vec, gradient r3.Vec, bar, scale float64) float64 {
	turn := p.way.Z / scale
	speed := r2.Vec{X: p.way.X - turn*arm.Y, Y: p.way.Y + turn*arm.X}
	return r2.Norm2(speed)/bar - turn*turn*(gradient.X*arm.X+gradient.Y*arm.Y)
}

// ahead is the parabola that touches the path in p, a distance along it.
func (p *place) ahead(distance float64) r3.Vec {
	return r3.Add(p.at, r3.Add(r3.Scale(distance, p.way), r3.Scale(distance*distance/2, p.veer)))
}

// miss is how far the path misses the parabolas that touch it in p and in q, in
// parts of the way from p to q; it is infinite when the path turns about.
func (p *place) miss(q *place) float64 {
	if r3.Dot(p.way, q.way) < 0.9 {
		return math.Inf(1)
	}
	arc := p.arc(q)
	return math.Max(length(r3.Sub(p.ahead(arc), q.at)), length(r3.Sub(q.ahead(-arc), p.at))) / arc
}

// arc estimates the path's length between two places [m].
func (p *place) arc(q *place) float64 {
	return length(r3.Sub(q.at, p.at)) * (1 + r3.Norm2(r3.Sub(q.way, p.way))/24)
}

// between is the cubic that touches the path in two places, at a part of the
// way between them.
func (p *place) between(q *place, part float64) r3.Vec {
	arc, rest := p.arc(q), 1-part
	from := r3.Add(r3.Scale(1+2*part, p.at), r3.Scale(part*arc, p.way))
	to := r3.Sub(r3.Scale(1+2*rest, q.at), r3.Scale(rest*arc, q.way))
	return r3.Add(r3.Scale(rest*rest, from), r3.Scale(part*part, to))
}

// climbs is the climb between two places over the part of the way, as
// a + b·part + c·part²: it has the climb of both and their rise between.
func (p *place) climbs(q *place) (a, b, c float64) {
	a = p.climb()
	c = 3*(a+q.climb()) - 6*(q.at.Y-p.at.Y)/p.arc(q)
	return a, q.climb() - a - c, c
}

// leastClimb estimates the least climb in a direction between two places.
func (p *place) leastClimb(q *place, direction float64) float64 {
	a, b, c := p.climbs(q)
	a, b, c = a*direction, b*direction, c*direction
	if part := -b / (2 * c); c > 0 && part > 0 && part < 1 {
		return a - b*b/(4*c)
	}
	return math.Min(a, a+b+c)
}

// levelPart estimates at which part of the way between two places, one rising
// and one falling, the path is level.
func (p *place) levelPart(q *place) float64 {
	a, b, c := p.climbs(q)
	part := 2 * a / (math.Copysign(math.Sqrt(math.Max(b*b-4*a*c, 0)), a) - b)
	if !(part > 0 && part < 1) {
		return 0.5
	}
	return part
}

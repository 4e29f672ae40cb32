package linkage

import (
	"fmt"
	"math"
)

const (
	// largestMove bounds how far one step to other bar lengths moves the axle
	// assembly, shift and turn as a length over the mean bar length [1].
	largestMove = 0.05
	// largestDrop is the part of the determinant that such a step may take
	// away, and largestStray how far, in parts of it, the determinant may come
	// out beside what its rate of change foretold.
	largestDrop, largestStray = 0.35, 0.2
	// largestRepair bounds Newton's corrections by the tangent step they
	// follow [1]; a larger one would be a jump to another position.
	largestRepair = 0.35
	// leastChange is the change of a bar's length below which the end is
	// reached [m].
	leastChange = 1e-10
	// glance is how far, over the mean bar length, the determinant's rate of
	// change is looked for [1].
	glance = 1e-6
	// mostAdjustments bounds the steps; a usual way takes one to ten.
	mostAdjustments = 2000
	// adjustNewton is enough for quadratic convergence within a step.
	adjustNewton = 6
)

// AdjustmentError says that bars of other lengths cannot be put in.
type AdjustmentError struct {
	Upper, Lower               float64 // lengths asked for [m]
	ReachedUpper, ReachedLower float64 // farthest lengths on the way to them at which the bars meet their holes [m]
}

// Error names the lengths asked for and those reached in millimeters.
func (e *AdjustmentError) Error() string {
	return fmt.Sprintf("with an upper bar of %.1f mm and a lower bar of %.1f mm the axle cannot stay at its height: the bars close only as far as %.1f mm and %.1f mm",
		e.Upper*1e3, e.Lower*1e3, e.ReachedUpper*1e3, e.ReachedLower*1e3)
}

// Adjusted returns where the axle assembly goes at ride height, wheel centers
// kept at their height, when the bars have the lengths upper and lower [m]
// instead of l's own: the axle's fore-aft shift, forward positive [m], and the
// housing's turn, nose-up positive [rad]. Both lengths change together from
// l's own in small steps, so that the assembly branch never jumps; the bars
// keep them to 1e-11 m.
//
// It refuses lengths that are no number or shorter than MinLength
// (ErrShortBar) and those at which, or before which, the bars no longer close
// or hold the axle (*AdjustmentError).
func (l *Linkage) Adjusted(upper, lower float64) (shift, turn float64, err error) {
	if !(upper >= MinLength) || !(lower >= MinLength) {
		return 0, 0, ErrShortBar
	}
	way := adjustment{l, upper - l.upper, lower - l.lower}
	if math.IsInf(upper, 1) || math.IsInf(lower, 1) {
		return 0, 0, &AdjustmentError{Upper: upper, Lower: lower, ReachedUpper: l.upper, ReachedLower: l.lower}
	}
	s, part := way.follow()
	if part < 1 {
		return 0, 0, &AdjustmentError{
			Upper: upper, Lower: lower,
			ReachedUpper: l.upper + part*way.upper, ReachedLower: l.lower + part*way.lower,
		}
	}
	return s.x, s.turn, nil
}

// Answer is the derivative of the axle's place at ride height by a bar length.
type Answer struct {
	Shift float64 // of the axle, forward positive [m/m]
	Turn  float64 // of the housing, nose-up positive [rad/m]
}

// PerLength returns how the axle's place at ride height, wheel centers kept at
// their height, answers the lengths of the upper and of the lower bars. With
// the unit vector u from a bar's chassis hole to its housing hole and the
// housing hole's arm a from the axle, the length grows by
//
//	u_x shift + (a_x u_z − a_z u_x) turn
//
// and the answers are the columns of the inverse of these two equations.
func (l *Linkage) PerLength() (upper, lower Answer) {
	e := l.evaluate(state{z: l.geometry.RearRadius})
	upper.Shift, upper.Turn = e.solve(1, 0)
	lower.Shift, lower.Turn = e.solve(0, 1)
	return upper, lower
}

// adjustment is the way to other bar lengths at ride height.
type adjustment struct {
	*Linkage
	upper, lower float64 // the whole change of the lengths [m]
}

// at measures both bars with a part of the change made.
func (a *adjustment) at(s state, part float64) evaluation {
	e := a.evaluate(s)
	e.stretchUpper -= part * a.upper
	e.stretchLower -= part * a.lower
	return e
}

// follow continues from ride height with l's own lengths and returns the last
// closed state and the part of the change made until there, 1 for all of it.
// The determinant's sign keeps the branch: it is zero where two positions
// meet, which no step comes to or passes.
func (a *adjustment) follow() (s state, part float64) {
	s = state{z: a.geometry.RearRadius}
	if a.upper == 0 && a.lower == 0 {
		return s, 1
	}
	e := a.at(s, 0)
	branch, scale, step := math.Signbit(e.det()), a.scale(), 1.0
	least := leastChange / max(math.Abs(a.upper), math.Abs(a.lower))
	for range mostAdjustments {
		dx, dturn := e.solve(a.upper, a.lower)
		move := math.Abs(dx) + scale*math.Abs(dturn)
		// The determinant's rate of change along the tangent.
		ahead := glance * scale / move
		look := a.evaluate(state{x: s.x + dx*ahead, z: s.z, turn: s.turn + dturn*ahead})
		fall := (1 - look.det()/e.det()) / ahead

		reach := min(step, 1-part, largestMove*scale/move)
		if fall > 0 {
			reach = min(reach, largestDrop/fall)
		}
		if !(reach >= least || reach == 1-part) || !(e.sine(scale) > dead) {
			return s, part
		}
		to := part + reach
		if reach == 1-part {
			to = 1
		}
		next, there, ok := a.step(s, state{x: s.x + dx*reach, z: s.z, turn: s.turn + dturn*reach}, to)
		if !ok || math.Signbit(there.det()) != branch || math.Abs(there.det()/e.det()-1+fall*reach) > largestStray {
			step = reach / 2
			continue
		}
		if to == 1 {
			if !(there.sine(scale) > dead) {
				return s, part
			}
			return next, 1
		}
		s, e, part = next, there, to
		step = min(2*reach, 1)
	}
	return s, part
}

// step corrects a guess to the lengths of a part of the change. It fails when
// the corrections do not settle near the guess.
func (a *adjustment) step(from, guess state, part float64) (state, evaluation, bool) {
	stray := largestRepair*a.distance(from, guess) + lengthTolerance
	next := guess
	for range adjustNewton {
		e := a.at(next, part)
		dx, dturn := e.solve(-e.stretchUpper, -e.stretchLower)
		if e.closed() {
			// One more correction takes the position as far as rounding lets it.
			polished := state{x: next.x + dx, z: next.z, turn: next.turn + dturn}
			if at := a.at(polished, part); at.closed() {
				return polished, at, true
			}
			return next, e, true
		}
		next.x, next.turn = next.x+dx, next.turn+dturn
		if !(a.distance(guess, next) <= stray) {
			break
		}
	}
	return state{}, evaluation{}, false
}

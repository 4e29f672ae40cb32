package linkage

import "math"

const (
	// firstStep is the travel tried in one go from a known position [m].
	firstStep = 0.04
	// leastStep is the travel step below which the end is reached [m]; a
	// tenth of the promise on bar lengths.
	leastStep = 1e-10
	// largestFall is the part of the determinant that a step may take away.
	largestFall = 0.35
	// largestSurprise is how far, in parts of it, the determinant may come out
	// beside what its rate of change foretold.
	largestSurprise = 0.2
	// safeSine and safeStep say where the determinant cannot vanish within a
	// step: the first is the sine of the angle between the bars' constraints,
	// the second a step in mean bar lengths.
	safeSine = 0.2
	safeStep = 0.05
	// probe is how far the determinant's rate of change is looked for [m].
	probe = 1e-6
	// largestTurn bounds the housing's turn in one step [rad], so that the
	// solution stays on the branch it came from.
	largestTurn = 0.1
	// largestCorrection bounds Newton's corrections by the tangent step they
	// follow [1]; a larger one would be a jump to another position.
	largestCorrection = 0.35
	// mostSteps bounds the way to a position; a usual one takes a few, the way
	// to the end of the travel some dozens.
	mostSteps = 5000
	// newtonSteps is enough for quadratic convergence from a step that
	// largestTurn allows.
	newtonSteps = 5
)

// follow continues from a closed state to the height z, keeping the assembly
// branch, and returns the state there. When the linkage does not reach z it
// returns the last closed state and false.
//
// The branch is kept by bounding each step's turn, by never stepping to where
// the determinant would vanish, and by its sign: it is zero at the end of the
// travel, where two positions meet, and at a change point, where the linkage
// could go on in two ways.
func (l *Linkage) follow(s state, z float64) (state, evaluation, bool) {
	e := l.evaluate(s)
	branch := math.Signbit(e.det())
	step := firstStep
	for range mostSteps {
		if s.z == z {
			return s, e, true
		}
		to := z
		// Far from a dead point a short way needs no look ahead.
		sine, fall, reach := e.sine(l.scale()), 0.0, step
		if sine < safeSine || math.Abs(z-s.z) > safeStep*l.scale() {
			fall = l.fall(s, &e, z > s.z)
		}
		if fall > 0 {
			reach = math.Min(step, largestFall/fall)
		}
		if reach < leastStep || !(sine > dead) {
			return s, e, false
		}
		if math.Abs(z-s.z) > reach {
			to = s.z + math.Copysign(reach, z-s.z)
		}
		next, at, ok := l.stepTo(s, &e, to)
		strange := math.Abs(at.det()/e.det()-1+fall*math.Abs(to-s.z)) > largestSurprise
		if !ok || strange || math.Signbit(at.det()) != branch {
			if step = math.Min(step, math.Abs(to-s.z)) / 2; step < leastStep {
				return s, e, false
			}
			continue
		}
		s, e = next, at
		step = math.Min(2*step, firstStep)
	}
	return s, e, s.z == z
}

// fall returns the part of the determinant that a rise or a fall of the axle
// takes away, at its present rate of change [1/m].
func (l *Linkage) fall(s state, e *evaluation, up bool) float64 {
	dx, dturn := e.solve(-e.upper.z, -e.lower.z)
	dz := probe / (1 + math.Abs(dx) + l.scale()*math.Abs(dturn))
	if !up {
		dz = -dz
	}
	next := l.evaluate(state{x: s.x + dx*dz, z: s.z + dz, turn: s.turn + dturn*dz})
	return (1 - next.det()/e.det()) / math.Abs(dz)
}

// distance is how far the axle's shift and the housing's turn are apart in
// two states, as lengths [m].
func (l *Linkage) distance(s, t state) float64 {
	return math.Abs(t.x-s.x) + l.scale()*math.Abs(t.turn-s.turn)
}

// stepTo moves from state s with evaluation e to height z by one tangent step
// and Newton's corrections. It fails when the turn grows past largestTurn or
// the corrections do not settle.
func (l *Linkage) stepTo(s state, e *evaluation, z float64) (state, evaluation, bool) {
	dz := z - s.z
	dx, dturn := e.solve(-e.upper.z*dz, -e.lower.z*dz)
	guess := state{x: s.x + dx, z: z, turn: s.turn + dturn}
	stray := largestCorrection * (math.Abs(dz) + l.distance(s, guess))
	next := guess
	for i := 0; i < newtonSteps; i++ {
		if !(math.Abs(next.turn-s.turn) < largestTurn && l.distance(guess, next) <= stray) {
			break
		}
		at := l.evaluate(next)
		if at.closed() {
			return next, at, true
		}
		dx, dturn = at.solve(-at.stretchUpper, -at.stretchLower)
		next.x += dx
		next.turn += dturn
	}
	return s, evaluation{}, false
}

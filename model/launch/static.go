package launch

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// Static is the car at rest with its preload, before the brake lets go.
type Static struct {
	Tension   [RodCount]float64 // pull positive [N]
	RearLoad  [2]float64        // on the rear tires, by Side [N]
	FrontLoad [2]float64        // on the front tires, by Side [N]
	Push      [2]float64        // of the rear springs, by Side [N]
}

// Coordinates of a car at rest: chassis and axle assembly each along x, y, z and
// about x, y, z, and the front wheels' rises. The axle's x is left out, since where
// the car stands along the track makes no difference.
const (
	chassisX    = 0
	chassisTurn = 3
	risesAt     = 6
	axleY       = 8
	axleTurn    = 10
	degrees     = 13
)

// move is a small change of a resting car's position.
type move [degrees]float64

// braked is a time before the brake lets go [s].
const braked = -1

// ride returns the state at ride height, standing still.
func (m *model) ride() state {
	var s state
	s.chassis.at = m.Chassis.CG
	s.chassis.turn = quat.Number{Real: 1}
	s.axle.at = r3.Vec{Z: m.Axle.Height}
	s.axle.turn = quat.Number{Real: 1}
	s.engine = m.Drive.Speed
	return s
}

// moved returns s after a move.
func (s state) moved(by *move) state {
	vec := func(at int) r3.Vec { return r3.Vec{X: by[at], Y: by[at+1], Z: by[at+2]} }
	s.chassis.at = r3.Add(s.chassis.at, vec(chassisX))
	s.chassis.turn = turned(s.chassis.turn, vec(chassisTurn))
	s.rise[Left] += by[risesAt]
	s.rise[Right] += by[risesAt+1]
	s.axle.at = r3.Add(s.axle.at, r3.Vec{Y: by[axleY], Z: by[axleY+1]})
	s.axle.turn = turned(s.axle.turn, vec(axleTurn))
	return s
}

// residual returns the unbalanced forces and moments on a resting car, in the order
// of a move, and the instant.
func (m *model) residual(s *state, i *instant) (f move) {
	m.evaluate(braked, s, i)
	set := func(at int, v r3.Vec) { f[at], f[at+1], f[at+2] = v.X, v.Y, v.Z }
	set(chassisX, i.chassis.force)
	set(chassisTurn, i.chassis.moment)
	f[risesAt], f[risesAt+1] = i.corners[Left].along, i.corners[Right].along
	f[axleY], f[axleY+1] = i.axle.force.Y, i.axle.force.Z
	set(axleTurn, i.axle.moment)
	return f
}

const (
	// differenceStep is the step of the central differences for the stiffness
	// [m, rad]: the cube root of a float64's precision, for parts of about a meter.
	differenceStep = 6e-6
	// restTolerance is the unbalanced force over the car's weight at which a car is
	// at rest [1].
	restTolerance = 1e-10
	// maxNewtonSteps bounds Newton's steps to one load.
	maxNewtonSteps = 60
	// minNewtonPart is the smallest part of Newton's step that is tried [1].
	minNewtonPart = 1. / 1024
	// minPreloadPart is the smallest part of the preload that is added at once [1].
	minPreloadPart = 1. / 256
)

// stiffness returns −∂residual/∂move at s, factorized.
func (m *model) stiffness(s *state) *mat.LU {
	var i instant
	k := mat.NewDense(degrees, degrees, nil)
	for at := range degrees {
		var by move
		by[at] = differenceStep
		ahead := s.moved(&by)
		more := m.residual(&ahead, &i)
		by[at] = -differenceStep
		back := s.moved(&by)
		less := m.residual(&back, &i)
		for row := range degrees {
			k.Set(row, at, (less[row]-more[row])/(2*differenceStep))
		}
	}
	var lu mat.LU
	lu.Factorize(k)
	return &lu
}

// solve returns the move that a force causes in a factorized stiffness, and false
// for a singular one.
func solve(lu *mat.LU, f *move) (move, bool) {
	var by move
	x := mat.NewVecDense(degrees, by[:])
	// An ill-conditioned stiffness still gives a step worth trying.
	err := lu.SolveVecTo(x, false, mat.NewVecDense(degrees, f[:]))
	for _, v := range by {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return move{}, false
		}
	}
	_, poor := err.(mat.Condition)
	return by, err == nil || poor
}

// size is a norm of forces and moments, the latter taken at one meter [N].
func (f *move) size() float64 {
	var sum float64
	for _, x := range f {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// settle moves s to rest under the model's present loads by Newton's method, each
// step halved until it lessens the residual. It returns false when that fails.
func (m *model) settle(s *state, i *instant) bool {
	weight := (m.Chassis.Mass + m.Axle.Mass + m.Corners[Left].Mass + m.Corners[Right].Mass) * m.Gravity
	f := m.residual(s, i)
	for range maxNewtonSteps {
		if f.size() <= restTolerance*weight {
			return true
		}
		by, ok := solve(m.stiffness(s), &f)
		if !ok {
			return false
		}
		part := 1.0
		for ; part >= minNewtonPart; part /= 2 {
			step := by
			for k := range step {
				step[k] *= part
			}
			next := s.moved(&step)
			left := m.residual(&next, i)
			if left.size() < f.size() {
				*s, f = next, left
				break
			}
		}
		if part < minNewtonPart {
			// No step lessens it: it is down to rounding, or at a local minimum.
			f = m.residual(s, i)
			return f.size() <= math.Sqrt(restTolerance)*weight
		}
	}
	return false
}

// rest finds the car at rest, from ride height without preload to the preload
// asked for, in parts small enough for Newton's method. It returns false when
// the car finds no rest.
func (m *model) rest(i *instant) (state, bool) {
	s := m.ride()
	asked := m.Rods
	slack := func(r *Rod) float64 { return r.Length - r.Ride/r.Rate }
	part, step := 0.0, 1.0
	for part < 1 {
		to := math.Min(1, part+step)
		for k := range m.Rods {
			free := slack(&asked[k])
			m.Rods[k].Free = free + to*(asked[k].Free-free)
		}
		next := s
		if !m.settle(&next, i) {
			if step /= 2; step < minPreloadPart {
				m.Rods = asked
				return s, false
			}
			continue
		}
		s, part = next, to
	}
	m.Rods = asked
	return s, true
}

// static reads what a resting car carries from its instant.
func static(i *instant) Static {
	return Static{
		Tension:   i.tension,
		RearLoad:  [2]float64{i.tires[Left].load, i.tires[Right].load},
		FrontLoad: [2]float64{i.corners[Left].load, i.corners[Right].load},
		Push:      i.push,
	}
}

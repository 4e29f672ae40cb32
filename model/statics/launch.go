package statics

import (
	"math"

	"bowline/model/linkage"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Limit is what limits the thrust in a load case.
type Limit int

// The limits. The zero value is a car at rest.
const (
	AtRest         Limit = iota
	Drive                // the torque of the drive
	Grip                 // the grip of the rear tires
	FrontWheelsOff       // the front wheels are off the ground: the rear tires carry the whole car
)

// String returns the limit's name in reports.
func (l Limit) String() string {
	return [...]string{"at rest", "drive", "grip", "front wheels off"}[l]
}

// concurrent is the determinant of the axle assembly's three equations, over the
// tire radius, below which the lines of both bars and the spring count as
// concurrent [1]: the three then cannot hold the axle, and no force is reported.
// It is far above rounding.
const concurrent = 1e-6

// Load is the state of one load case at one pose. Forces of the springs and
// the tires are for both sides together, those of the bars for one bar.
type Load struct {
	Thrust     float64 // F, forward on the rear tires [N]
	AxleTorque float64 // T, on both wheels and so on the housing [N·m]
	Accel      float64 // a, of the car [m/s²]
	RearLoad   float64 // N_r, on the rear tires [N]
	FrontLoad  float64 // N_f, on the front tires [N]
	Governs    Limit

	// Balanced is false where the lines of the bars and the spring are concurrent:
	// they then cannot hold the axle, and the fields below are zero.
	Balanced  bool
	Upper     Bar
	Lower     Bar
	Spring    float64 // push of both springs along their line [N]
	BarsShare float64 // part of the load transfer that goes through the bars [1]; 0 at rest
}

// Bar is the force of one bar.
type Bar struct {
	Tension   float64 // pull positive [N]
	OnHousing r2.Vec  // force into the housing's hole, forward and up [N]
}

// OnChassis returns the force into the chassis hole, forward and up [N].
func (b Bar) OnChassis() r2.Vec { return r2.Scale(-1, b.OnHousing) }

// Loads are all load cases at one pose.
type Loads struct {
	Rest   Load // standing still
	Hooked Load // tires at the edge of grip or the drive's limit, no slip
	Hit    Load // the full axle torque reaches the housing; thrust capped by grip
}

// Solve finds the loads at a pose.
//
// The whole car gives the tire loads, by moments about the rear contact:
//
//	a = F k,  N_f L = m g x − m a h − J_r α − J_f a/r_f,  J_r α = T − F r,  N_r = m g − N_f
//
// with N_f = 0 where that would be negative. The axle assembly gives the bars
// and the spring from three equations: forces along and across the ground, and
// moments about the axle centerline, where bars and spring hold −T.
//
//   - hooked: F = min(drive without slip, grip as F = µ N_r(F)), T only what that takes;
//   - hit: T is the full axle torque, F is capped by grip with the load
//     transfer of the wheels' spin-up added.
func (v *Vehicle) Solve(p *linkage.Pose) Loads {
	s := newSolver(v, p)
	rest := s.rest()
	hooked := s.load(s.hooked())
	hit := s.load(s.hit())
	for _, l := range []*Load{&hooked, &hit} {
		l.BarsShare = s.barsShare(l, &rest)
	}
	return Loads{Rest: rest, Hooked: hooked, Hit: hit}
}

// Rest finds the load of a car that stands still at a pose, Solve's Rest.
func (v *Vehicle) Rest(p *linkage.Pose) Load {
	s := newSolver(v, p)
	return s.rest()
}

// solver holds what the load cases of one pose share.
type solver struct {
	*Vehicle
	k         float64 // acceleration per thrust [1/kg]
	wheelbase float64 // between the contact points [m]
	restFront float64 // front tire load at rest [N]
	inertia   float64 // moment about the rear contact per thrust, k (m h + J_f/r_f) [m]

	// Lines of force on the axle assembly: unit direction, moment arm about
	// the axle centerline, nose-up positive [m].
	upper, lower, spring line
	det                  float64 // of the three equations [m]
}

// line is a unit force on the axle assembly.
type line struct {
	r2.Vec
	moment float64
}

// newSolver finds the lines of force and the mass properties at a pose.
func newSolver(v *Vehicle, p *linkage.Pose) solver {
	cg := v.CG(p)
	k := v.translation()
	s := solver{
		Vehicle:   v,
		k:         k,
		wheelbase: p.Ground.Wheelbase,
		restFront: v.weight() * cg.X / p.Ground.Wheelbase,
		inertia:   k * (v.Mass()*cg.Y + v.FrontSpinInertia/v.FrontRadius),
	}
	through := func(from, to r2.Vec) line {
		d := p.Ground.Direction(r2.Unit(r2.Sub(to, from)))
		return line{d, r2.Cross(p.Ground.Direction(r2.Sub(from, p.Axle)), d)}
	}
	// A pull draws the housing's hole toward the chassis; the spring pushes its
	// axle mount away from the chassis.
	sin, cos := math.Sincos(p.Turn)
	m := v.SpringAxleMount
	mount := r2.Add(p.Axle, r2.Vec{X: cos*m.X - sin*m.Y, Y: sin*m.X + cos*m.Y})
	s.upper = through(p.HousingUpper, p.ChassisUpper)
	s.lower = through(p.HousingLower, p.ChassisLower)
	s.spring = through(mount, r2.Sub(r2.Scale(2, mount), v.SpringChassisSide))
	s.det = s.upper.X*minor(s.lower, s.spring) - s.lower.X*minor(s.upper, s.spring) + s.spring.X*minor(s.upper, s.lower)
	return s
}

// minor is a 2×2 determinant of two lines' heights and moments.
func minor(a, b line) float64 { return a.Y*b.moment - b.Y*a.moment }

// rest returns the load of a car that stands still.
func (s *solver) rest() Load {
	l := s.load(0, 0)
	l.Governs = AtRest
	return l
}

// hooked returns the largest thrust without slip and the axle torque for it.
func (s *solver) hooked() (thrust, torque float64) {
	perThrust := s.torquePerThrust()
	// The wheels' spin-up adds T − F r to the load transfer.
	transfer := (s.inertia + perThrust - s.RearRadius) / s.wheelbase
	thrust = math.Min(s.DriveThrust(), s.gripThrust(s.restFront, transfer))
	return thrust, thrust * perThrust
}

// hit returns the thrust under the full axle torque, and that torque.
func (s *solver) hit() (thrust, torque float64) {
	front := s.restFront - s.AxleTorque/s.wheelbase
	transfer := (s.inertia - s.RearRadius) / s.wheelbase
	return math.Min(s.DriveThrust(), s.gripThrust(front, transfer)), s.AxleTorque
}

// gripThrust solves F = µ N_r(F) with N_f = front − transfer·F, not below zero.
func (s *solver) gripThrust(front, transfer float64) float64 {
	all := s.Grip * s.weight()
	if slope := 1 - s.Grip*transfer; slope > 0 {
		if f := (all - s.Grip*front) / slope; front-transfer*f >= 0 {
			return f
		}
	}
	return all
}

// load completes a load case from its thrust and torque.
func (s *solver) load(thrust, torque float64) Load {
	l := Load{Thrust: thrust, AxleTorque: torque, Accel: thrust * s.k, Governs: Grip}
	if thrust == s.DriveThrust() {
		l.Governs = Drive
	}
	l.FrontLoad = s.restFront - (s.inertia*thrust+torque-thrust*s.RearRadius)/s.wheelbase
	if l.FrontLoad < 0 {
		l.FrontLoad, l.Governs = 0, FrontWheelsOff
	}
	l.RearLoad = s.weight() - l.FrontLoad
	s.carry(&l)
	return l
}

// carry solves the axle assembly's three equations by Cramer's rule.
func (s *solver) carry(l *Load) {
	if math.Abs(s.det) < concurrent*s.RearRadius {
		return
	}
	// The resultant that bars and spring must supply.
	want := line{r2.Vec{
		X: s.UnsprungRear*l.Accel - l.Thrust,
		Y: s.UnsprungRear*units.Gravity - l.RearLoad,
	}, -l.AxleTorque}
	solve := func(a, b, c line) float64 {
		return (a.X*minor(b, c) - b.X*minor(a, c) + c.X*minor(a, b)) / s.det
	}
	bar := func(pair float64, along line) Bar {
		return Bar{Tension: pair / 2, OnHousing: r2.Scale(pair/2, along.Vec)}
	}
	l.Balanced = true
	l.Upper = bar(solve(want, s.lower, s.spring), s.upper)
	l.Lower = bar(solve(s.upper, want, s.spring), s.lower)
	l.Spring = solve(s.upper, s.lower, want)
}

// barsShare returns the part of the load transfer that goes through the bars [1].
func (s *solver) barsShare(l, rest *Load) float64 {
	transfer := l.RearLoad - rest.RearLoad
	if !l.Balanced || transfer == 0 {
		return 0
	}
	down := func(l *Load) float64 { return -2 * (l.Upper.OnHousing.Y + l.Lower.OnHousing.Y) }
	return (down(l) - down(rest)) / transfer
}

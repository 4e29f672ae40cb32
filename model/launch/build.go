package launch

import (
	"fmt"

	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// All of these are assumptions.
const (
	// rollGyration is the radius of gyration in roll over the rear track, of
	// the sprung mass and of the axle assembly, where none is given [1].
	rollGyration = 0.4
	// housingGyration is that of the housing about the axle over the rear tire
	// radius [1].
	housingGyration = 0.25
	// spinShare is the spin inertia of the rear wheels over axle mass times
	// radius squared, where none is given [1].
	spinShare = 0.2
	// revFade is the part of the rev limit beyond it over which the torque falls to
	// zero [1].
	revFade = 0.03
)

// New returns the parameters of one setup of a car that passes Validate, at
// rest at ride height without preload but with the setup's turns in Free. What the
// car does not give follows from rules and defaults, which package assumptions lists.
// It fails as Car.Rest does and for a setup or a material that does not exist.
func New(c *car.Car, setup int, lib stock.Library) (Parameters, error) {
	if setup < 0 || setup >= len(c.Setups) {
		return Parameters{}, fmt.Errorf("the car has no setup %d; it has %d", setup+1, len(c.Setups))
	}
	l, err := c.Linkage(setup)
	if err != nil {
		return Parameters{}, err
	}
	stand, err := c.Rest(setup)
	if err != nil {
		return Parameters{}, err
	}
	b := builder{car: c, setup: setup, stand: stand, library: lib}
	b.p.Gravity = units.Gravity
	b.masses()
	if err := b.rods(); err != nil {
		return Parameters{}, err
	}
	if err := b.coils(l); err != nil {
		return Parameters{}, err
	}
	b.rearTires()
	b.corners()
	b.drive()
	b.wheelieBar()
	b.ride()
	return b.p, nil
}

// builder collects parameters.
type builder struct {
	car     *car.Car
	setup   int
	stand   car.Rest
	library stock.Library
	p       Parameters
}

// given returns a value, or that of a rule where it is 0.
func given(value, rule float64) float64 {
	if value != 0 {
		return value
	}
	return rule
}

// masses sets masses and inertias of chassis and axle assembly.
func (b *builder) masses() {
	c := b.car
	mass, cg := c.Sprung()
	inertia := &c.Launch.Inertia
	dynamic := mass * cg.X * (c.Body.Wheelbase - cg.X)
	roll := rollGyration * c.Body.TrackRear
	b.p.Chassis = Chassis{
		Mass: mass,
		CG:   r3.Vec{X: cg.X, Y: c.CGAside() * c.Body.Mass / mass, Z: cg.Y},
		Inertia: r3.Vec{
			X: given(inertia.Roll, mass*roll*roll),
			Y: given(inertia.Pitch, dynamic),
			Z: given(inertia.Yaw, dynamic),
		},
	}
	axle, radius := c.Body.UnsprungRear, c.Tires.RearRadius
	across := given(inertia.AxleRoll, axle*roll*roll)
	housing := housingGyration * radius
	b.p.Axle = Axle{
		Mass:   axle,
		Height: radius,
		Inertia: r3.Vec{
			X: across,
			Y: given(inertia.HousingPitch, axle*housing*housing),
			Z: across,
		},
		Spin: given(c.Tires.RearSpinInertia, spinShare*axle*radius*radius),
	}
}

// rearTires sets the rear tires, whose loaded radius at ride height is given.
func (b *builder) rearTires() {
	c, t := b.car, &b.car.Launch.Tires
	curve := newSlipCurve(t.PeakSlip, t.SlidingGrip)
	relaxation := given(t.RelaxationLength, curve.relaxation((b.stand.Rear[Left]+b.stand.Rear[Right])/2, c.Tires.Grip, t.CarcassRate))
	for _, side := range Sides {
		b.p.RearTires[side] = RearTire{
			Center: r3.Vec{Y: sign[side] * c.Body.TrackRear / 2},
			Rate:   t.RearRate, Damping: t.RearDamping,
			CarcassDamping: t.CarcassDamping,
			Grip:           c.Tires.Grip, PeakSlip: t.PeakSlip, Sliding: t.SlidingGrip, Relaxation: relaxation,
			Lane: Lane{Drop: c.Tires.RearRadius, Rate: t.SideRate, Damping: t.SideDamping},
		}
	}
}

// corners sets the front wheels.
func (b *builder) corners() {
	c, t, s := b.car, &b.car.Launch.Tires, &b.car.Launch.Suspension
	for _, side := range Sides {
		b.p.Corners[side] = Corner{
			Hub:  r3.Vec{X: c.Body.Wheelbase, Y: sign[side] * c.Body.TrackFront / 2, Z: c.Tires.FrontRadius},
			Mass: c.Body.UnsprungFront / 2,
			Spin: c.Tires.FrontSpinInertia / 2,
			Grip: c.Tires.Grip,
			Rate: c.Springs.FrontRate, Bump: s.FrontBumpDamping, Rebound: s.FrontReboundDamping,
			BumpTravel: c.Springs.FrontBump, DroopTravel: c.Springs.FrontDroop, Stop: s.StopRate,
			TireRate: t.FrontRate, TireDamping: t.FrontDamping,
			Lane: Lane{Drop: c.Tires.FrontRadius, Rate: t.SideRate, Damping: t.SideDamping},
		}
	}
}

// drive sets engine, converter and gears. At the start the converter takes up
// the engine's torque at its launch speed.
func (b *builder) drive() {
	d, e := &b.car.Drive, &b.car.Launch.Engine
	b.p.Drive = Drive{
		Torque: b.torque(),
		Speed:  d.Speed, Inertia: e.Inertia,
		Capacity: d.Torque / (d.Speed * d.Speed), Stall: d.Converter,
		Gear: d.Gear, Axle: d.Axle, Efficiency: d.Efficiency,
		Release: e.ReleaseTime, Turning: 1,
	}
	for _, p := range e.Ramp {
		b.p.Drive.Ramp = append(b.p.Drive.Ramp, RampPoint(p))
	}
	if e.Direction == car.Counterclockwise {
		b.p.Drive.Turning = -1
	}
}

// torque is the engine's torque over its speed up to the rev limit.
func (b *builder) torque() []TorquePoint {
	whole := Drive{Torque: b.curve()}
	limit := b.car.RevLimit()
	var points []TorquePoint
	for _, p := range whole.Torque {
		if p.Speed < limit {
			points = append(points, p)
		}
	}
	return append(points, TorquePoint{limit, whole.torqueAt(limit)}, TorquePoint{(1 + revFade) * limit, 0})
}

// curve is the engine's curve, which passes through the launch torque.
func (b *builder) curve() []TorquePoint {
	curve, scale := b.car.Launch.Engine.Curve, b.car.TorqueScale()
	if len(curve) == 0 {
		return []TorquePoint{{b.car.Drive.Speed, b.car.Drive.Torque}}
	}
	points := make([]TorquePoint, len(curve))
	for i, p := range curve {
		points[i] = TorquePoint{p.Speed, scale * p.Torque}
	}
	return points
}

// wheelieBar sets the wheelie bar, if the car has one.
func (b *builder) wheelieBar() {
	w := &b.car.Launch.WheelieBar
	if w.Reach > 0 {
		b.p.WheelieBar = WheelieBar{Wheel: r3.Vec{X: -w.Reach, Z: w.Height}, Rate: w.Rate, Damping: w.Damping}
	}
}

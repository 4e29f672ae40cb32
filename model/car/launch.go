package car

import (
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Launch is what only the launch in three dimensions asks for. All of it is
// optional: Defaults has values that suit a four-link drag car. In a car file
// the keys stand in the tables where a shop looks for them.
type Launch struct {
	Inertia    Inertia
	Tires      TireRates
	UpperBar   BarEnds
	LowerBar   BarEnds
	Suspension Suspension
	Locator    Locator
	WheelieBar WheelieBar
	Engine     Engine
}

// Inertia holds moments of inertia that a shop rarely knows; 0 asks for the
// rule beside it.
type Inertia struct {
	Pitch        float64 // sprung mass about its CG [kg·m²]; 0: m·a·b, with a and b from its CG to the axles
	Yaw          float64 // sprung mass about its CG [kg·m²]; 0: m·a·b
	Roll         float64 // sprung mass about its CG [kg·m²]; 0: m·(0.4 rear track)²
	AxleRoll     float64 // axle assembly in roll and in yaw [kg·m²]; 0: m·(0.4 rear track)²
	HousingPitch float64 // axle assembly about the axle, less what spins [kg·m²]; 0: m·(rear radius/4)²
}

// TireRates are the tires as springs.
type TireRates struct {
	RearRate         float64 // one rear tire, up and down [N/m]
	RearDamping      float64 // [N·s/m]
	FrontRate        float64 // one front tire, up and down [N/m]
	FrontDamping     float64 // [N·s/m]
	CarcassRate      float64 // one rear tire, fore and aft at the ground [N/m]
	CarcassDamping   float64 // [N·s/m]
	PeakSlip         float64 // driving slip of a rear tire at its peak grip [1]
	SlidingGrip      float64 // grip of a rear tire that spins on the spot over its peak grip [1]
	RelaxationLength float64 // of a rear tire [m]; 0: from its carcass rate, grip and load at rest
	SideRate         float64 // any tire, sideways at the ground [N/m]
	SideDamping      float64 // [N·s/m]
}

// BarEnds are the stiffness of a bar's ends and the damping of the bar.
type BarEnds struct {
	EndRate float64 // rod end, bolt and bracket at one end, along the bar [N/m]
	Damping float64 // the whole bar [N·s/m]
}

// Suspension holds what the springs' rates do not tell.
type Suspension struct {
	RearSpread          float64 // left to right rear spring, center to center [m]
	RearBumpDamping     float64 // each rear shock along its own line [N·s/m]
	RearReboundDamping  float64 // [N·s/m]
	RearAntiRoll        float64 // torque over roll between axle and chassis [N·m/rad]
	FrontBumpDamping    float64 // each front corner, at the wheel [N·s/m]
	FrontReboundDamping float64 // [N·s/m]
	FrontAntiRoll       float64 // torque over roll between front wheels and chassis [N·m/rad]
	StopRate            float64 // each bump and droop stop, rear along the spring, front at the wheel [N/m]
}

// Ends returns the stiffness of the ends of the pair's bars in c, and their damping.
func (p Pair) Ends(c *Car) *BarEnds {
	if p == Upper {
		return &c.Launch.UpperBar
	}
	return &c.Launch.LowerBar
}

// Kinds of locators in a car file.
const (
	TrackBar     = "track bar"
	DiagonalLink = "diagonal link"
)

// LocatorKinds lists the kinds of locators.
var LocatorKinds = []string{TrackBar, DiagonalLink}

// Locator is the bar that holds the axle sideways. Its material is that of the
// lower bars.
type Locator struct {
	Kind    string // selects where ends that are not given lie
	Chassis End    // in the chassis frame
	Housing End    // from the axle centerline
	OD      float64
	Wall    float64
	BarEnds
}

// End is one end of the locator: x forward, y to the left of the car's middle,
// z up. The zero value means that it is not given.
type End struct {
	Given bool
	At    r3.Vec // [m]
}

// WheelieBar is a wheel behind the rear tires, on the chassis. It only pushes
// up. With Reach 0 the car has none.
type WheelieBar struct {
	Reach   float64 // behind the rear axle centerline [m]
	Height  float64 // of the wheel's lowest point above the ground at ride height [m]
	Rate    float64 // up and down at the wheel [N/m]
	Damping float64 // [N·s/m]
}

// Turns are what a setup's bars are lengthened by, in turns of the tube; one
// turn is Bar.Lead. Below zero a bar is shortened.
type Turns struct {
	UpperLeft, UpperRight, LowerLeft, LowerRight float64 // [1]
}

// BarTurn is the place of one bar's turns in a setup.
type BarTurn struct {
	Key   string // in a setup of the car file
	Label string // on screen
	Of    func(*Turns) *float64
}

// BarTurns lists the turns of the four bars in file order.
var BarTurns = [...]BarTurn{
	{"turns_upper_left", "Upper left bar", func(t *Turns) *float64 { return &t.UpperLeft }},
	{"turns_upper_right", "Upper right bar", func(t *Turns) *float64 { return &t.UpperRight }},
	{"turns_lower_left", "Lower left bar", func(t *Turns) *float64 { return &t.LowerLeft }},
	{"turns_lower_right", "Lower right bar", func(t *Turns) *float64 { return &t.LowerRight }},
}

const (
	// locatorBehind is how far behind the axle centerline a track bar lies
	// whose ends are not given [m].
	locatorBehind = 6 * units.Inch
	// locatorSpan is its length over the rear track [1].
	locatorSpan = 0.6
)

// LocatorEnds returns the ends of a setup's locator: those given, and for the
// others
//
//   - track bar: level at the height of the axle centerline, 6 in behind it,
//     0.6 of the rear track long; the chassis end is on the left;
//   - diagonal link: from the left lower bar's hole in the chassis to the right
//     lower bar's hole in the housing.
//
// It panics when the setup or one of its holes does not exist.
func (c *Car) LocatorEnds(setup int) (chassis, housing r3.Vec) {
	side := locatorSpan / 2 * c.Body.TrackRear
	chassis = r3.Vec{X: -locatorBehind, Y: side, Z: c.Tires.RearRadius}
	housing = r3.Vec{X: -locatorBehind, Y: -side}
	if c.Launch.Locator.Kind == DiagonalLink {
		chassis = across(ChassisLower.Hole(c, setup), c.Chassis.SpreadLower/2)
		housing = across(HousingLower.Hole(c, setup), -c.Housing.SpreadLower/2)
	}
	if end := c.Launch.Locator.Chassis; end.Given {
		chassis = end.At
	}
	if end := c.Launch.Locator.Housing; end.Given {
		housing = end.At
	}
	return chassis, housing
}

// across puts a side-view point at y.
func across(p r2.Vec, y float64) r3.Vec { return r3.Vec{X: p.X, Y: y, Z: p.Y} }

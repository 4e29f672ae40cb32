// Package car holds the inputs of one four-link car as a plain value in SI,
// the description of each input (unit, allowed range, meaning), and the rules
// a car must meet before anything is computed from it.
//
// Axes follow ISO 8855: x forward, z up. The chassis frame has its origin on
// the ground under the rear axle centerline at ride height. A side-view point
// is an r2.Vec whose X is x and whose Y is the height z.
package car

import (
	"fmt"
	"slices"

	"bowline/model/column"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Car is everything a person types about one car. Copy it with Clone: the
// hole and setup lists are shared by plain assignment.
type Car struct {
	Body      Body
	Tires     Tires
	Chassis   Bracket // chassis holes, in the chassis frame
	Housing   Bracket // housing holes, from the axle centerline
	UpperBar  Bar     // both upper bars
	LowerBar  Bar     // both lower bars
	Springs   Springs
	Drive     Drive
	Driveline Driveline
	Check     Check
	Launch    Launch
	Setups    []Setup
	// Stated are the optional entries, by path in the car file and in rising order,
	// that the car itself gives although they have their defaults; see Says. nil is none.
	Stated []string
}

// Body is the car as a whole, race-ready with the driver aboard.
type Body struct {
	Name          string
	Wheelbase     float64 // at ride height [m]
	Mass          float64 // whole car [kg]
	RearMass      float64 // carried by the rear tires at rest [kg]
	CGHeight      float64 // whole car, above the ground at ride height [m]
	UnsprungRear  float64 // axle assembly with wheels and tires [kg]
	UnsprungFront float64 // both front wheels with what moves along [kg]
	TrackRear     float64 // [m]
	TrackFront    float64 // [m]
	Scales        Scales
}

// Tires are the tires and wheels: loaded radii, grip and rotating inertia.
type Tires struct {
	RearRadius       float64 // loaded, at ride height [m]
	FrontRadius      float64 // loaded, at ride height [m]
	Grip             float64 // peak thrust over tire load [1]
	RearSpinInertia  float64 // both rear wheels, axles and ring gear [kg·m²]
	FrontSpinInertia float64 // both front wheels [kg·m²]
}

// Bracket is a pair of hole rows, the same on the left and the right.
type Bracket struct {
	Upper       []r2.Vec // hole centers for the upper bars [m]
	Lower       []r2.Vec // hole centers for the lower bars [m]
	SpreadUpper float64  // left to right upper bar, center to center [m]
	SpreadLower float64  // left to right lower bar, center to center [m]
}

// Bar is the tube of one pair of bars and what is screwed into it.
type Bar struct {
	OD       float64 // outside diameter [m]
	Wall     float64 // wall thickness [m]; OD/2 is a solid rod
	Material string  // a name in the material table
	RodEnd   string  // thread of the rod ends, such as "3/4-16", or empty
	Adapter  string  // weld-in tube adapter that takes the rod end, or empty
	// RodEndAngle is the greatest misalignment of a rod end, the angle between its bar
	// and the plane square to its bolt [rad]; 0: not checked.
	RodEndAngle float64
	Threads     Threads
}

// Springs are the suspension springs and the travel they allow.
type Springs struct {
	RearRate         float64 // each rear spring along its own line [N/m]
	RearAxleMount    r2.Vec  // from the axle centerline [m]
	RearChassisMount r2.Vec  // in the chassis frame [m]
	RearDroop        float64 // rear travel below ride height, positive [m]
	RearBump         float64 // rear travel above ride height, positive [m]
	FrontDroop       float64 // front travel below ride height, positive [m]
	FrontBump        float64 // front travel above ride height, positive [m]
	FrontRate        float64 // each front corner, at the wheel [N/m]
}

// Drive is the drivetrain at launch.
type Drive struct {
	Torque     float64 // engine, at launch [N·m]
	Speed      float64 // engine, at launch [rad/s]
	Converter  float64 // stall torque ratio, 1 for a clutch [1]
	Gear       float64 // first gear ratio [1]
	Axle       float64 // axle ratio [1]
	Efficiency float64 // axle torque over engine torque times ratios [1]
}

// Driveline is the driveshaft in side view. It is optional: the zero value,
// with Given false, means that no joint angle is reported.
type Driveline struct {
	Given             bool
	TransmissionJoint r2.Vec  // front joint, in the chassis frame [m]
	PinionJoint       r2.Vec  // rear joint, from the axle centerline at ride height [m]
	TransmissionAngle float64 // output shaft against the ground at ride height, nose-up positive [rad]
	PinionAngle       float64 // pinion shaft against the ground at ride height, nose-up positive [rad]
}

// Check has the limits and targets that results are compared with.
type Check struct {
	Factor          float64    // safety factor: strength over allowable load [1]
	Crookedness     float64    // initial bow over length [1]
	Column          string     // file name of the column curve
	TargetAntiSquat [2]float64 // least and greatest, 1 is 100 % [1]
	TargetICX       [2]float64 // instant center ahead of the rear contact [m]
	TargetICZ       [2]float64 // instant center above the ground [m]
	Rollout         float64    // how far the car rolls before the clock starts [m]
	PinionLimit     float64    // greatest pinion angle change over the travel that a search for holes accepts [rad]; 0: no limit
	LiftLimit       float64    // greatest height of the front tires above the ground in a launch that it accepts [m]; 0: no limit
}

// Setup is a choice of holes, the turns of each bar and the runs made with
// them. Copy it with Clone: the list of runs is shared by plain assignment.
type Setup struct {
	Name  string
	Note  string
	Holes Holes
	Turns Turns
	Runs  []Run // in the order they were logged
}

// Holes picks one hole in each row, counted from 0. Car files and people
// count from 1.
type Holes struct {
	ChassisUpper, ChassisLower, HousingUpper, HousingLower int
}

// Clone returns a copy that shares nothing with c.
func (c *Car) Clone() *Car {
	d := *c
	for _, row := range Rows {
		*row.In(&d) = slices.Clone(*row.In(c))
	}
	d.Launch.Engine.Curve = slices.Clone(c.Launch.Engine.Curve)
	d.Launch.Engine.Ramp = slices.Clone(c.Launch.Engine.Ramp)
	d.Stated = slices.Clone(c.Stated)
	d.Setups = slices.Clone(c.Setups)
	for i := range d.Setups {
		d.Setups[i] = d.Setups[i].Clone()
	}
	return &d
}

// CGAhead returns how far the whole car's center of gravity is ahead of the
// rear axle at ride height, wheelbase · front mass / mass [m].
func (c *Car) CGAhead() float64 {
	return c.Body.Wheelbase * (c.Body.Mass - c.Body.RearMass) / c.Body.Mass
}

// Sprung returns the mass the springs carry [kg] and its center of gravity in
// the chassis frame [m]: the whole car less the rear unsprung mass at the axle
// centerline and the front unsprung mass at the front wheel centers.
func (c *Car) Sprung() (mass float64, cg r2.Vec) {
	b := c.Body
	mass = b.Mass - b.UnsprungRear - b.UnsprungFront
	moment := r2.Scale(b.Mass, r2.Vec{X: c.CGAhead(), Y: b.CGHeight})
	moment = r2.Sub(moment, r2.Scale(b.UnsprungRear, r2.Vec{Y: c.Tires.RearRadius}))
	moment = r2.Sub(moment, r2.Scale(b.UnsprungFront, r2.Vec{X: b.Wheelbase, Y: c.Tires.FrontRadius}))
	return mass, r2.Scale(1/mass, moment)
}

// AxleTorque returns the torque that the engine can put on the rear axle at
// launch: engine torque × converter × gear × axle ratio × efficiency [N·m].
func (c *Car) AxleTorque() float64 {
	d := c.Drive
	return d.Torque * d.Converter * d.Gear * d.Axle * d.Efficiency
}

// Power returns the engine's power at launch, torque × speed [W].
func (c *Car) Power() float64 { return c.Drive.Torque * c.Drive.Speed }

// SetupNamed returns the index of the setup with the given name, or −1.
func (c *Car) SetupNamed(name string) int {
	return slices.IndexFunc(c.Setups, func(s Setup) bool { return s.Name == name })
}

// FreeSetupName returns a name like the given one that no setup has: that name
// itself, or with the first free number from 2 on behind it.
func (c *Car) FreeSetupName(like string) string {
	name := like
	for n := 2; c.SetupNamed(name) >= 0; n++ {
		name = fmt.Sprintf("%s %d", like, n)
	}
	return name
}

// Defaults returns a car in which everything optional has its stated default
// and everything required is zero.
func Defaults() *Car {
	c := &Car{Check: Check{
		Column:          column.JohnsonEuler.String(),
		TargetAntiSquat: [2]float64{percent(100), percent(160)},
		TargetICX:       [2]float64{inches(40), inches(60)},
		TargetICZ:       [2]float64{inches(6), inches(14)},
	}}
	c.Launch.Locator.Kind, c.Launch.Engine.Direction = TrackBar, Clockwise
	for _, s := range Sections {
		for _, f := range s.Fields {
			if f.Optional {
				*f.In(c) = f.Default
			}
		}
	}
	return c
}

// inches and percent convert as a typed number is, to the last bit.
func inches(x float64) float64  { return units.US.ToSI(units.Length, x) }
func percent(x float64) float64 { return units.US.ToSI(units.Percent, x) }

package launch

import (
	"fmt"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r3"
)

// Parameters are a car as the equations of motion see it. Points on the
// chassis are in the chassis frame (origin on the ground under the rear axle
// centerline at ride height), points on the axle assembly from the middle of
// the axle centerline. Both have x forward, y left, z up at ride height.
//
// New makes them of a car. Those made or changed otherwise must have positive
// masses, inertias, rates and lengths.
type Parameters struct {
	Gravity       float64 // [m/s²]
	Chassis       Chassis
	Axle          Axle
	Rods          [RodCount]Rod
	Coils         [2]Coil     // rear springs and shocks, by Side
	RearTires     [2]RearTire // by Side
	Corners       [2]Corner   // front wheels, by Side
	RearAntiRoll  float64     // torque over roll between axle and chassis [N·m/rad]
	FrontAntiRoll float64     // torque over roll between front wheels and chassis [N·m/rad]
	Drive         Drive
	WheelieBar    WheelieBar
}

// Side is the left or the right side of the car.
type Side int

// The sides, as the driver sees them.
const (
	Left Side = iota
	Right
)

// Sides lists both sides.
var Sides = [...]Side{Left, Right}

// String returns "left" or "right".
func (s Side) String() string { return [...]string{"left", "right"}[s] }

// Chassis is the sprung mass.
type Chassis struct {
	Mass    float64 // [kg]
	CG      r3.Vec  // [m]
	Inertia r3.Vec  // roll, pitch, yaw about the CG [kg·m²]
}

// Axle is the axle assembly with wheels and tires. Its CG is the middle of
// the axle centerline.
type Axle struct {
	Mass    float64 // [kg]
	Height  float64 // of the centerline above the ground at ride height [m]
	Inertia r3.Vec  // roll, with the wheels; pitch, without what spins; yaw, with the wheels [kg·m²]
	Spin    float64 // both wheels and what spins with them about the centerline [kg·m²]
}

// RodID names a massless two-force member between chassis and axle.
type RodID int

// The members: four bars and the locator that holds the axle sideways.
const (
	UpperLeft RodID = iota
	UpperRight
	LowerLeft
	LowerRight
	Locator

	// RodCount is the number of members.
	RodCount = iota
	// barCount is the number of them that are bars of the four-link.
	barCount = RodCount - 1
)

// Bars lists the four bars.
var Bars = [barCount]RodID{UpperLeft, UpperRight, LowerLeft, LowerRight}

// String returns the member's name, as in "upper left bar".
func (r RodID) String() string {
	if r < 0 || r >= RodCount {
		return fmt.Sprintf("RodID(%d)", int(r))
	}
	return [...]string{"upper left bar", "upper right bar", "lower left bar", "lower right bar", "locator"}[r]
}

// Pair returns the pair of bars that a bar belongs to; the locator belongs to
// none.
func (r RodID) Pair() car.Pair { return car.Pair(r / 2) }

// Side returns the side of the car that a bar is on; the locator is on none.
func (r RodID) Side() Side { return Side(r % 2) }

// Opposite returns the bar of the same pair on the other side of the car; the locator
// has none.
func (r RodID) Opposite() RodID { return r ^ 1 }

// Rod is a massless member between two ball joints. Its tension is Rate·(l − Free) +
// Damping·dl/dt.
type Rod struct {
	Chassis r3.Vec  // front joint, or the locator's on the chassis [m]
	Housing r3.Vec  // rear joint [m]
	Length  float64 // between the joints at ride height [m]
	Ride    float64 // tension there without preload [N]
	Free    float64 // length without load, the adjusters' turns included [m]
	Lead    float64 // change of Free in one turn [m]
	Rate    float64 // of the member and its two ends in series [N/m]
	Damping float64 // [N·s/m]
}

// Coil is a rear spring with its shock between two mounts.
type Coil struct {
	Chassis  r3.Vec  // [m]
	Axle     r3.Vec  // [m]
	Length   float64 // between the mounts at ride height [m]
	Ride     float64 // push there [N]
	Rate     float64 // [N/m]
	Bump     float64 // damping while it shortens [N·s/m]
	Rebound  float64 // damping while it lengthens [N·s/m]
	Shortest float64 // where the bump stop touches [m]
	Longest  float64 // where the droop stop touches [m]
	Stop     float64 // rate of either stop [N/m]
}

// RearTire is one rear tire.
type RearTire struct {
	Center         r3.Vec  // of the wheel [m]
	Radius         float64 // without load [m]
	Rate           float64 // up and down [N/m]
	Damping        float64 // up and down [N·s/m]
	CarcassDamping float64 // fore and aft at the ground [N·s/m]
	Grip           float64 // µ_peak, greatest force along the ground over load [1]
	PeakSlip       float64 // driving slip at which it has it, between 0 and 1 [1]
	Sliding        float64 // grip of a tire that spins on the spot over Grip [1]
	Relaxation     float64 // λ, relaxation length [m]
	Lane           Lane
}

// Lane is the spring that holds a wheel sideways on the track. Its force acts on
// the lowest point of the wheel at ride height, fixed to the axle assembly or the
// front wheel, whatever the tire's load.
type Lane struct {
	Drop    float64 // of that point below the wheel's center [m]
	Rate    float64 // [N/m]
	Damping float64 // [N·s/m]
}

// Corner is one front wheel and its suspension, which moves along the
// chassis's z.
type Corner struct {
	Hub         r3.Vec  // wheel center at ride height [m]
	Mass        float64 // unsprung [kg]
	Spin        float64 // inertia of the wheel about its axis [kg·m²]; 0 is a wheel that rolls along freely
	Grip        float64 // of the tire [1]
	Ride        float64 // push of the spring at ride height [N]
	Rate        float64 // at the wheel [N/m]
	Bump        float64 // damping while the wheel rises [N·s/m]
	Rebound     float64 // damping while it falls [N·s/m]
	BumpTravel  float64 // rise at which the bump stop touches [m]
	DroopTravel float64 // fall at which the droop stop touches, positive [m]
	Stop        float64 // rate of either stop [N/m]
	Radius      float64 // of the tire without load [m]
	TireRate    float64 // [N/m]
	TireDamping float64 // [N·s/m]
	Lane        Lane
}

// Drive is the engine, converter and gears.
type Drive struct {
	Torque     []TorquePoint // engine torque by rising speed, linear between the points and level beyond; one point is a constant torque
	Ramp       []RampPoint   // share of that torque by rising time, linear between the points and level before and beyond them; none is the whole torque
	Speed      float64       // of the engine at the start [rad/s]
	Inertia    float64       // [kg·m²]
	Capacity   float64       // C, impeller torque over its speed squared up to a speed ratio of 0.9 [N·m·s²]
	Stall      float64       // TR0, torque ratio of the converter at rest [1]
	Gear       float64       // [1]
	Axle       float64       // axle ratio [1]
	Efficiency float64       // [1]
	Release    float64       // from the brake's first give to full release [s]
	Turning    float64       // 1 for an engine that turns clockwise seen from the front, −1 for the other way, 0 leaves the driveshaft's torque on chassis and axle out
}

// TorquePoint is the engine's torque at a speed.
type TorquePoint struct {
	Speed  float64 // [rad/s]
	Torque float64 // [N·m]
}

// RampPoint is the share of the engine's torque at a time after the brake's first
// give.
type RampPoint struct {
	Time  float64 // [s]
	Share float64 // [1]
}

// WheelieBar is a wheel on the chassis that only pushes up; Rate 0 is none.
type WheelieBar struct {
	Wheel   r3.Vec  // lowest point at ride height [m]
	Rate    float64 // [N/m]
	Damping float64 // [N·s/m]
}

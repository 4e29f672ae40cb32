package car

import (
	"bowline/model/linkage"
	"bowline/model/statics"
)

// Pair is one of the two pairs of bars.
type Pair int

// The pairs.
const (
	Upper Pair = iota
	Lower
)

// Pairs lists both pairs.
var Pairs = [...]Pair{Upper, Lower}

// String returns "upper bar" or "lower bar".
func (p Pair) String() string { return [...]string{"upper bar", "lower bar"}[p] }

// Bars returns "upper bars" or "lower bars".
func (p Pair) Bars() string { return p.String() + "s" }

// Table returns the pair's table in a car file.
func (p Pair) Table() string { return [...]string{"upper_bar", "lower_bar"}[p] }

// Bar returns the pair's tube in c.
func (p Pair) Bar(c *Car) *Bar {
	if p == Upper {
		return &c.UpperBar
	}
	return &c.LowerBar
}

// Length returns the pair's bar length in l, ball center to ball center [m].
func (p Pair) Length(l *linkage.Linkage) float64 {
	if p == Upper {
		return l.UpperLength()
	}
	return l.LowerLength()
}

// Linkage returns the side-view four-link of a setup. It fails as linkage.New
// does; it panics when the setup or one of its holes does not exist.
func (c *Car) Linkage(setup int) (*linkage.Linkage, error) {
	return linkage.New(linkage.Geometry{
		ChassisUpper: ChassisUpper.Hole(c, setup),
		ChassisLower: ChassisLower.Hole(c, setup),
		HousingUpper: HousingUpper.Hole(c, setup),
		HousingLower: HousingLower.Hole(c, setup),
		Wheelbase:    c.Body.Wheelbase,
		RearRadius:   c.Tires.RearRadius,
		FrontRadius:  c.Tires.FrontRadius,
	})
}

// Vehicle returns what the car's side-view loads depend on besides its linkage.
func (c *Car) Vehicle() statics.Vehicle {
	mass, cg := c.Sprung()
	return statics.Vehicle{
		SprungMass: mass, SprungCG: cg,
		UnsprungRear: c.Body.UnsprungRear, UnsprungFront: c.Body.UnsprungFront,
		RearRadius: c.Tires.RearRadius, FrontRadius: c.Tires.FrontRadius,
		RearSpinInertia: c.Tires.RearSpinInertia, FrontSpinInertia: c.Tires.FrontSpinInertia,
		Grip: c.Tires.Grip, AxleTorque: c.AxleTorque(),
		SpringAxleMount: c.Springs.RearAxleMount, SpringChassisSide: c.Springs.RearChassisMount,
	}
}

package assumptions

import (
	"math"
	"strings"

	"bowline/model/car"
	"bowline/model/launch"
)

// number is how a plain number is assumed. The zero value is one that always has a
// part in the run, has its default where it is left out, and may be changed within
// the range of its field.
type number struct {
	name    string                 // in place of the field's label
	unused  func(*car.Car) bool    // reports whether it has no part in the run
	rule    func(*finder) float64  // the value where it is left out, of a field whose 0 asks for it
	doubled func(*finder) float64  // the value tried in place of one that is zero
	least   func(*car.Car) float64 // the least value that makes sense, above the field's own
	most    func(*car.Car) float64 // the greatest, below the field's own
}

// numbers are the optional numbers of the car file that the run rests on.
var numbers = map[string]number{
	"car.pitch_inertia":         {rule: func(f *finder) float64 { return f.run.Chassis.Inertia.Y }, least: leastInertia},
	"car.yaw_inertia":           {rule: func(f *finder) float64 { return f.run.Chassis.Inertia.Z }, least: leastInertia},
	"car.roll_inertia":          {rule: func(f *finder) float64 { return f.run.Chassis.Inertia.X }, least: leastInertia},
	"car.axle_roll_inertia":     {rule: func(f *finder) float64 { return f.run.Axle.Inertia.X }, least: leastInertia},
	"car.housing_pitch_inertia": {rule: func(f *finder) float64 { return f.run.Axle.Inertia.Y }, least: leastInertia},

	"tires.rear_spin_inertia":  {rule: func(f *finder) float64 { return f.run.Axle.Spin }, least: leastInertia},
	"tires.front_spin_inertia": {doubled: frontSpin, least: leastInertia},
	"tires.rear_rate":          {},
	"tires.rear_damping":       {},
	"tires.front_rate":         {},
	"tires.front_damping":      {},
	"tires.carcass_damping":    {},
	"tires.peak_slip":          {},
	"tires.sliding_grip":       {},
	"tires.relaxation_length": {
		// A tire whose carcass rate is given has its relaxation length from that.
		unused: func(c *car.Car) bool { return c.Says("tires.carcass_rate") },
		rule:   func(f *finder) float64 { return f.run.RearTires[launch.Left].Relaxation },
		least:  func(*car.Car) float64 { return car.LeastRelaxation },
	},
	"tires.side_rate":    {},
	"tires.side_damping": {},

	"upper_bar.end_rate": {},
	"upper_bar.damping":  {},
	"lower_bar.end_rate": {},
	"lower_bar.damping":  {},

	"springs.front_droop":           {},
	"springs.front_bump":            {},
	"springs.rear_spread":           {least: leastSpread},
	"springs.rear_bump_damping":     {},
	"springs.rear_rebound_damping":  {},
	"springs.front_bump_damping":    {},
	"springs.front_rebound_damping": {},
	"springs.stop_rate":             {},

	"locator.od":       {least: func(c *car.Car) float64 { return 2 * c.Launch.Locator.Wall }},
	"locator.wall":     {most: func(c *car.Car) float64 { return c.Launch.Locator.OD / 2 }},
	"locator.end_rate": {},
	"locator.damping":  {},

	"wheelie_bar.height":  {unused: noWheelieBar},
	"wheelie_bar.rate":    {unused: noWheelieBar},
	"wheelie_bar.damping": {unused: noWheelieBar},

	"drive.engine_inertia": {},
	"drive.rev_limit":      {rule: func(f *finder) float64 { return f.car.RevLimit() }, least: func(c *car.Car) float64 { return leastRevs * c.Drive.Speed }},
	"drive.release_time":   {},

	"check.factor":      {name: "Safety factor"},
	"check.crookedness": {},
	"check.rollout":     {},
}

const (
	// leastRevs is how far above the launch speed a rev limit is tried at least [1]:
	// assumption.
	leastRevs = 1.05
	// spinShare is the spin inertia of wheels over their mass times radius squared
	// [1]: assumption, as for the rear wheels.
	spinShare = 0.2
	// clearance keeps a spread of springs above what the scales ask for at least [1].
	clearance = 1.02
)

func leastInertia(*car.Car) float64 { return car.LeastInertia }

func noWheelieBar(c *car.Car) bool { return c.Launch.WheelieBar.Reach == 0 }

// frontSpin is the spin inertia of front wheels of the car's weight.
func frontSpin(f *finder) float64 {
	return spinShare * f.car.Body.UnsprungFront * f.car.Tires.FrontRadius * f.car.Tires.FrontRadius
}

// leastSpread is the spread of the rear springs at which one of them would carry
// nothing, so unlike are the rear scales.
func leastSpread(c *car.Car) float64 {
	s, b := &c.Body.Scales, &c.Body
	return clearance * math.Abs(s.LeftRear-s.RightRear) / (b.RearMass - b.UnsprungRear) * b.TrackRear
}

// number notes a plain number that the car does not give.
func (f *finder) number(s car.Section, field *car.Field, about number) {
	value := *field.In(f.car)
	if about.rule != nil && value != 0 || about.rule == nil && f.car.Says(field.Path) || about.unused != nil && about.unused(f.car) {
		return
	}
	a := Assumption{Path: field.Path, Name: about.name, Quantity: field.Quantity, Value: value}
	if a.Name == "" {
		a.Name = nameOf(s, field)
	}
	if about.rule != nil {
		a.Value = about.rule(f)
	}
	least, most := field.Min, field.Max
	if about.least != nil {
		least = max(least, about.least(f.car))
	}
	if about.most != nil {
		most = min(most, about.most(f.car))
	}
	a.Changes = changes(a.Value, least, most, func(c *car.Car, x float64) { *field.In(c) = x })
	if about.doubled != nil {
		x := max(least, min(most, about.doubled(f)))
		a.Changes = []Change{{Kind: Moved, Value: x, make: func(c *car.Car) { *field.In(c) = x }}}
	}
	f.add(a)
}

// changes doubles and halves a value within a range; one that cannot be changed at
// all one way is not.
func changes(value, least, most float64, set func(*car.Car, float64)) []Change {
	var list []Change
	try := func(kind Kind, x float64) {
		bound := max(least, min(most, x))
		if (bound-value)*(x-value) <= 0 {
			return
		}
		if bound != x {
			kind = Moved
		}
		list = append(list, Change{Kind: kind, Value: bound, make: func(c *car.Car) { set(c, bound) }})
	}
	try(Doubled, 2*value)
	try(Halved, value/2)
	return list
}

// nameOf is the label of a field, after the part of the car that it means nothing
// without.
func nameOf(s car.Section, f *car.Field) string {
	switch s.Table {
	case "upper_bar", "lower_bar", "locator", "wheelie_bar":
		return s.Title + ", " + strings.ToLower(f.Label[:1]) + f.Label[1:]
	}
	return f.Label
}

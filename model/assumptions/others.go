package assumptions

import (
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

// others find what is no plain number, by the table of the car file.
var others = map[string][]func(*finder){
	"car":       {(*finder).scales},
	"upper_bar": {func(f *finder) { f.thread(car.Upper) }},
	"lower_bar": {func(f *finder) { f.thread(car.Lower) }},
	"locator":   {(*finder).locatorKind, (*finder).locatorEnds},
	"drive":     {(*finder).direction, (*finder).curve},
}

// aside is how far to a side the CG is tried that the scales would find [m].
const aside = 1 * units.Inch

// scales notes that a car without readings of its scales carries as much on the left
// as on the right.
func (f *finder) scales() {
	if f.car.Body.Scales.Given {
		return
	}
	b := f.car.Body
	front := b.Mass - b.RearMass
	// Well within where a spring would have to pull.
	far := math.Min(aside, 0.25*math.Min((front-b.UnsprungFront)/front*b.TrackFront, (b.RearMass-b.UnsprungRear)/b.RearMass*f.car.Launch.Suspension.RearSpread))
	to := func(kind Kind, y float64) Change {
		return Change{Kind: kind, Value: far, make: func(c *car.Car) { c.Body.Scales = readings(c, y) }}
	}
	f.add(Assumption{Path: "car.corner_weights", Name: "CG to the side", Quantity: units.Length, Changes: []Change{to(CGToLeft, far), to(CGToRight, -far)}})
}

// readings are those of the scales with the CG a distance to the left, the same at
// both axles.
func readings(c *car.Car, y float64) car.Scales {
	s := car.Scales{Given: true}
	split := func(mass, track float64) (left, right float64) {
		left = mass * (0.5 + y/track)
		return left, mass - left
	}
	s.LeftFront, s.RightFront = split(c.Body.Mass-c.Body.RearMass, c.Body.TrackFront)
	s.LeftRear, s.RightRear = split(c.Body.RearMass, c.Body.TrackRear)
	return s
}

// thread notes the pitch of rod ends whose name has none.
func (f *finder) thread(p car.Pair) {
	pitch, named := p.Bar(f.car).Pitch()
	if named {
		return
	}
	f.add(Assumption{
		Path: p.Table() + ".rod_end", Name: fmt.Sprintf("Thread pitch of the %s", p.Bars()), Quantity: units.Length, Value: pitch,
		Changes: changes(pitch, 0, math.Inf(1), func(c *car.Car, x float64) {
			diameter, _ := p.Bar(c).ThreadDiameter()
			p.Bar(c).RodEnd = fmt.Sprintf("%v-%v", diameter/units.Inch, units.Inch/x)
		}),
	})
}

// locatorKind notes the kind of a locator that is not said and has an end that
// depends on it.
func (f *finder) locatorKind() {
	l := f.car.Launch.Locator
	if f.car.Says("locator.kind") || l.Chassis.Given && l.Housing.Given {
		return
	}
	other := car.DiagonalLink
	if l.Kind == other {
		other = car.TrackBar
	}
	a := Assumption{Path: "locator.kind", Name: "Kind of axle locator", Choice: l.Kind}
	change := Change{Kind: Other, Choice: other, make: func(c *car.Car) { c.Launch.Locator.Kind = other }}
	if reachesAcross(change.Of(f.car)) {
		a.Changes = []Change{change}
	}
	f.add(a)
}

// locatorEnds notes how far from the car's middle the ends of the locator are that
// are not given.
func (f *finder) locatorEnds() {
	rod := &f.run.Rods[launch.Locator]
	for _, end := range []struct {
		key   string
		joint car.End
		at    func(*car.Car) *car.End
	}{
		{"chassis", car.End{Given: true, At: rod.Chassis}, func(c *car.Car) *car.End { return &c.Launch.Locator.Chassis }},
		{"housing", car.End{Given: true, At: rod.Housing}, func(c *car.Car) *car.End { return &c.Launch.Locator.Housing }},
	} {
		if end.at(f.car).Given {
			continue
		}
		side := launch.Left
		if end.joint.At.Y < 0 {
			side = launch.Right
		}
		a := Assumption{
			Path: "locator." + end.key, Name: fmt.Sprintf("Locator's %s end, to the %s", end.key, side),
			Quantity: units.Length, Value: math.Abs(end.joint.At.Y),
		}
		for _, change := range changes(a.Value, 0, math.Inf(1), func(c *car.Car, x float64) {
			moved := end.joint
			moved.At.Y = math.Copysign(x, end.joint.At.Y)
			*end.at(c) = moved
		}) {
			if reachesAcross(change.Of(f.car)) {
				a.Changes = append(a.Changes, change)
			}
		}
		f.add(a)
	}
}

// reachesAcross reports whether the locator of a valid car that has been changed
// still reaches across it.
func reachesAcross(c *car.Car) bool {
	for setup := range c.Setups {
		chassis, housing := c.LocatorEnds(setup)
		if math.Abs(chassis.Y-housing.Y) < car.LeastSideways {
			return false
		}
	}
	return true
}

// direction notes how the engine turns.
func (f *finder) direction() {
	if f.car.Says("drive.direction") {
		return
	}
	now, other := f.car.Launch.Engine.Direction, car.Counterclockwise
	f.add(Assumption{
		Path: "drive.direction", Name: "Engine turns, seen from the front", Choice: now,
		Changes: []Change{{Kind: Other, Choice: other, make: func(c *car.Car) { c.Launch.Engine.Direction = other }}},
	})
}

// Constant is the torque of an engine without a curve.
const Constant = "constant"

// leastFactor is how far the factor of a torque curve is from 1 at least [1]: what
// typed digits leave.
const leastFactor = 1e-6

// curve notes that the torque is constant, or by what the curve is scaled to pass
// through the torque at launch.
func (f *finder) curve() {
	e, d := &f.car.Launch.Engine, &f.car.Drive
	a := Assumption{Path: "drive.curve"}
	if len(e.Curve) > 0 {
		torque := e.TorqueAt(d.Speed)
		a.Name, a.Value = "Factor of the torque curve", f.car.TorqueScale()
		if field := car.FieldAt("drive.torque"); math.Abs(a.Value-1) > leastFactor && torque >= field.Min && torque <= field.Max {
			a.Changes = []Change{{Kind: Unscaled, Value: 1, make: func(c *car.Car) { c.Drive.Torque = torque }}}
		}
		f.add(a)
		return
	}
	a.Name, a.Choice = "Engine torque over its speed", Constant
	if limit := math.Min(f.car.RevLimit(), car.FieldAt("drive.rpm").Max); limit > d.Speed {
		curve := []car.TorquePoint{{Speed: d.Speed, Torque: d.Torque}, {Speed: limit, Torque: d.Torque / 2}}
		a.Changes = []Change{{Kind: Falling, make: func(c *car.Car) { c.Launch.Engine.Curve = curve }}}
	}
	f.add(a)
}

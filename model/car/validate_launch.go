package car

import (
	"fmt"
	"math"
	"slices"

	"bowline/model/units"
)

const (
	// MaxCurve bounds the points of a torque curve.
	MaxCurve = 100
	// MaxRamp bounds the points of a ramp of torque over time.
	MaxRamp = 100
	// maxRampTime and maxRampShare bound a point of it: no run lasts as long [s], and
	// no more than twice the torque at launch comes in after it [1].
	maxRampTime, maxRampShare = 60, 2
	// MaxTurns bounds the turns of a bar: a rod end has no more thread.
	MaxTurns = 24
	// LeastInertia is the smallest moment of inertia other than 0 [kg·m²]: no part
	// of a car has less, and one that does would turn too fast to be computed.
	LeastInertia = 0.05 * pound * foot * foot
	// LeastRelaxation is the smallest relaxation length of a tire other than 0 [m].
	LeastRelaxation = 0.5 * inch
	// LeastSideways is how far the locator must reach across the car [m].
	LeastSideways = 2 * inch
)

// inertias checks that each moment of inertia is 0 or that of a thing.
func (v *validator) inertias() {
	for _, path := range []string{
		"car.pitch_inertia", "car.yaw_inertia", "car.roll_inertia", "car.axle_roll_inertia", "car.housing_pitch_inertia",
		"tires.rear_spin_inertia", "tires.front_spin_inertia",
	} {
		if x := *FieldAt(path).In(v.car); x > 0 && x < LeastInertia {
			v.add(path, v.units.FormatExact(units.SpinInertia, x)+" is less than any part of a car has", "give 0 or at least "+bound(v.units, units.SpinInertia, LeastInertia))
		}
	}
}

// relaxation checks that the relaxation length is 0 or that of a tire.
func (v *validator) relaxation() {
	if x := v.car.Launch.Tires.RelaxationLength; x > 0 && x < LeastRelaxation {
		v.add("tires.relaxation_length", v.length(x)+" is shorter than that of any tire", "give 0 or at least "+bound(v.units, units.Length, LeastRelaxation))
	}
}

// locator checks the bar that holds the axle sideways.
func (v *validator) locator() {
	l := v.car.Launch.Locator
	v.oneOf("locator.kind", "kind of locator", l.Kind, LocatorKinds)
	for _, end := range []struct {
		path string
		End
	}{{"locator.chassis", l.Chassis}, {"locator.housing", l.Housing}} {
		if p := end.At; end.Given && !(math.Abs(p.X) <= reach && math.Abs(p.Y) <= reach && math.Abs(p.Z) <= reach) {
			v.add(end.path, fmt.Sprintf("[%s, %s, %s] is out of range", number(v.units, units.Length, p.X), number(v.units, units.Length, p.Y), number(v.units, units.Length, p.Z)),
				fmt.Sprintf("give x, y and z from −%s to %[1]s", bound(v.units, units.Length, reach)))
		}
	}
	if l.Wall > l.OD/2 {
		v.add("locator.wall", v.length(l.Wall)+" is more than half the OD", "give at most "+v.length(l.OD/2))
	}
}

// oneOf checks a text that must be one of a few.
func (v *validator) oneOf(path, what, text string, known []string) {
	if !slices.Contains(known, text) {
		v.add(path, fmt.Sprintf("%s %q is unknown", what, text), "use one of "+quoted(known))
	}
}

// ramp checks the share of torque over time.
func (v *validator) ramp() {
	points := v.car.Launch.Engine.Ramp
	if n := len(points); n > MaxRamp {
		v.add("drive.ramp", fmt.Sprintf("the number of points is %d", n), fmt.Sprintf("give up to %d points as [seconds, share], or none", MaxRamp))
		return
	}
	for i, p := range points {
		path := fmt.Sprintf("drive.ramp.%d", i)
		switch {
		case !(p.Time >= 0 && p.Time <= maxRampTime && p.Share >= 0 && p.Share <= maxRampShare):
			v.add(path, fmt.Sprintf("[%s, %s] is out of range", number(v.units, units.Time, p.Time), number(v.units, units.Number, p.Share)),
				fmt.Sprintf("give 0 to %s and a share of 0 to %d", bound(v.units, units.Time, maxRampTime), maxRampShare))
		case i > 0 && !(p.Time > points[i-1].Time):
			v.add(path, v.units.FormatExact(units.Time, p.Time)+" is no later than the point before", "list the points by rising time")
		}
	}
}

// engine checks how the engine turns and its torque curve.
func (v *validator) engine() {
	v.ramp()
	e, d := v.car.Launch.Engine, v.car.Drive
	v.oneOf("drive.direction", "direction", e.Direction, Directions)
	if e.RevLimit > 0 && e.RevLimit <= d.Speed {
		v.add("drive.rev_limit", v.units.FormatExact(units.Speed, e.RevLimit)+" is no higher than the launch speed", "give more than "+v.units.FormatExact(units.Speed, d.Speed)+", or 0")
	}
	if n := len(e.Curve); n == 1 || n > MaxCurve {
		v.add("drive.curve", fmt.Sprintf("the number of points is %d", n), fmt.Sprintf("give 2 to %d points as [rpm, torque], or none", MaxCurve))
		return
	}
	rpm, torque := FieldAt("drive.rpm"), FieldAt("drive.torque")
	for i, p := range e.Curve {
		path := fmt.Sprintf("drive.curve.%d", i)
		switch {
		case !(p.Speed >= 0 && p.Speed <= rpm.Max && p.Torque >= 0 && p.Torque <= torque.Max):
			v.add(path, fmt.Sprintf("[%s, %s] is out of range", number(v.units, units.Speed, p.Speed), number(v.units, units.Torque, p.Torque)),
				fmt.Sprintf("give 0 to %s and 0 to %s", bound(v.units, units.Speed, rpm.Max), bound(v.units, units.Torque, torque.Max)))
		case i > 0 && !(p.Speed > e.Curve[i-1].Speed):
			v.add(path, v.units.FormatExact(units.Speed, p.Speed)+" is no faster than the point before", "list the points by rising speed")
		}
	}
	if len(v.problems) == 0 && len(e.Curve) > 0 && e.TorqueAt(d.Speed) <= 0 {
		v.add("drive.curve", "there is no torque at the launch speed of "+v.units.FormatExact(units.Speed, d.Speed), "give points around the launch speed")
	}
}

package analysis

import (
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
)

// even is the spring change, as a part of the load transfer, below which the
// rear counts as neither rising nor squatting.
const even = 0.02

// Standing is how a load stands against what the bar may carry.
type Standing int

// The standings.
const (
	Unloaded    Standing = iota // no load at all
	Within                      // no more than the allowable load
	FactorShort                 // the bar holds, but with less than the safety factor asked for
	Failing                     // beyond the strength of the bar
)

// LoadVerdict is how near the bars come to what they may carry, told of the demand
// that comes nearest. All but Standing and Factor is zero when no bar is loaded.
type LoadVerdict struct {
	Standing Standing
	Demand   Demand      // of both bars of a pair where it is the side view's
	Preload  bool        // the setup turns bars, which only the launch knows of
	Governs  column.Kind // the way of failing that limits the bar in this direction
	Margin   float64     // strength by it over the load [1]
	Factor   float64     // safety factor asked for [1]
}

// LoadVerdict returns how near the bars come to what they may carry in the side view
// and in a launch of the same car and setup; in the side view alone with nil.
func (r *Result) LoadVerdict(l *launch.Result) LoadVerdict {
	e := r.Envelope(l)
	d := e.Worst()
	v := LoadVerdict{Demand: d, Factor: r.Car.Check.Factor}
	v.Preload = r.Car.Setups[r.Options.Setup].Turns != car.Turns{}
	if d.Force == 0 {
		return LoadVerdict{Factor: v.Factor}
	}
	limit := r.Limit(d.Bar.Pair(), d.Way)
	v.Governs, v.Margin = limit.Kind, limit.Strength/d.Force
	switch {
	case d.Share <= 1:
		v.Standing = Within
	case v.Margin > 1:
		v.Standing = FactorShort
	default:
		v.Standing = Failing
	}
	return v
}

// Against is where a value is of a target.
type Against int

// The places.
const (
	Below Against = iota
	Inside
	Above
)

// Rear is what the rear does on its springs as the tires hook.
type Rear int

// What the rear does.
const (
	RearUnknown Rear = iota // bars and springs do not hold the axle
	RearSteady              // the springs keep their load, within even of the load transfer
	RearRises               // they lose load
	RearSquats              // they gain load
)

// CenterVerdict is where the instant center is at ride height, what anti-squat
// that makes against the target, and whether the rear rises.
type CenterVerdict struct {
	InstantCenter    r2.Vec // ahead of the rear contact and above the ground [m]
	HasInstantCenter bool   // false for parallel bars
	AntiSquat        float64
	HasAntiSquat     bool       // false where the line of action stands upright
	Target           [2]float64 // least and greatest anti-squat asked for [1]
	Against          Against    // the target; means nothing without anti-squat
	Rear             Rear
}

// CenterVerdict returns what there is to tell of ride height.
func (r *Result) CenterVerdict() CenterVerdict {
	ride := &r.Ride
	v := CenterVerdict{
		InstantCenter: ride.InstantCenter, HasInstantCenter: ride.HasInstantCenter,
		AntiSquat: ride.AntiSquat, HasAntiSquat: ride.HasAntiSquat,
		Target: r.Car.Check.TargetAntiSquat, Against: Inside, Rear: r.rear(),
	}
	switch {
	case v.AntiSquat < v.Target[0]:
		v.Against = Below
	case v.AntiSquat > v.Target[1]:
		v.Against = Above
	}
	return v
}

// rear returns whether the springs gain or lose load as the tires hook.
func (r *Result) rear() Rear {
	hooked := &r.Ride.Loads.Hooked
	change, transfer := r.SpringChange(hooked), hooked.RearLoad-r.Ride.Loads.Rest.RearLoad
	switch {
	case !hooked.Balanced:
		return RearUnknown
	case change < -even*transfer:
		return RearRises
	case change > even*transfer:
		return RearSquats
	}
	return RearSteady
}

package analysis

import (
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
)

// even is the spring change, as a part of the load transfer, below which the
// rear counts as neither rising nor squatting.
const even = 0.02

// LoadVerdict says in words how near the bars come to what they may carry and
// what stands in the way, in one or two sentences.
func (r *Result) LoadVerdict(s units.System) string {
	p, d := r.Highest()
	u, limit := r.Worst[p][d], r.Limit(p, d)
	name := map[car.Pair]string{car.Upper: "Upper", car.Lower: "Lower"}[p]
	text := fmt.Sprintf("%s bars reach %.0f %% of what they may carry, in %s at %s in the %s case.", name, 100*u.Share, d, s.Travel(u.Travel), u.Case)
	margin := limit.Strength / u.Force
	switch {
	case u.Force == 0:
		return "No bar is loaded: nothing drives the axle."
	case u.Share > 1 && margin > 1:
		return text + fmt.Sprintf(" The tube would still hold (%s at %.1f times this load), but with less than the factor of %.4g asked for.", limit.Kind, margin, r.Car.Check.Factor)
	case u.Share > 1:
		return text + fmt.Sprintf(" The tube fails: %s comes at %.0f %% of this load.", limit.Kind, 100*margin)
	}
	return text + fmt.Sprintf(" First to give would be: %s, at %.1f times this load.", limit.Kind, margin)
}

// CenterVerdict says in words where the instant center is at ride height, what
// anti-squat that makes against the target, and whether the rear rises.
func (r *Result) CenterVerdict(s units.System) string {
	ride := &r.Ride
	if !ride.HasAntiSquat {
		return "The line of action stands upright over the rear contact: anti-squat has no value here."
	}
	where := "The bars are parallel"
	if ride.HasInstantCenter {
		ahead, side := ride.InstantCenter.X, "ahead of"
		if ahead < 0 {
			side = "behind"
		}
		where = fmt.Sprintf("Instant center %s %s the rear contact, %s up", s.Format(units.Length, math.Abs(ahead)), side, s.Format(units.Length, ride.InstantCenter.Y))
	}
	target, is := r.Car.Check.TargetAntiSquat, "inside"
	switch {
	case ride.AntiSquat < target[0]:
		is = "below"
	case ride.AntiSquat > target[1]:
		is = "above"
	}
	text := fmt.Sprintf("%s: anti-squat %.0f %%, %s the target of %.0f to %.0f %%.", where, 100*ride.AntiSquat, is, 100*target[0], 100*target[1])
	hooked := &ride.Loads.Hooked
	if !hooked.Balanced {
		return text
	}
	return text + " " + r.lift()
}

// lift says whether the springs gain or lose load as the tires hook.
func (r *Result) lift() string {
	hooked := &r.Ride.Loads.Hooked
	change, transfer := r.SpringChange(hooked), hooked.RearLoad-r.Ride.Loads.Rest.RearLoad
	switch {
	case change < -even*transfer:
		return "Hooked, the rear rises off its springs."
	case change > even*transfer:
		return "Hooked, the rear squats on its springs."
	}
	return "Hooked, the rear neither rises nor squats."
}

// Verdicts returns the words for both questions, the load's first.
func (r *Result) Verdicts(s units.System) []string {
	return []string{r.LoadVerdict(s), r.CenterVerdict(s)}
}

// Governs writes what limits a pair in a direction.
func (r *Result) Governs(p car.Pair, d column.Direction) string { return r.Limit(p, d).Kind.String() }

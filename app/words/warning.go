package words

import (
	"fmt"
	"math"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/units"
)

// Warning says what a warning warns of, in a sentence.
func Warning(w analysis.Warning, s units.System) string {
	bars, travel := w.Pair.Bars(), s.Travel(w.Travel)
	switch w.Kind {
	case analysis.BeyondThread:
		return fmt.Sprintf("The %s's thread does not allow %s: %s.", w.Bar, OwnTurns(w.Value), room(w.Room))
	case analysis.OverCapacity:
		return reaches(w.Demand, s)
	case analysis.NotBalanced:
		return "At " + travel + " the lines of both bars and the spring meet in one point: they cannot hold the axle there, and no force is given."
	case analysis.LittleThread:
		return fmt.Sprintf("The %s, %s, has less than %v D of thread engaged: a longer tube is better.", w.Bar, OwnTurns(w.Value), w.Limit)
	case analysis.ThinWall:
		return fmt.Sprintf("The wall of the %s is slender: OD over wall is %.0f, beyond %.0f it may buckle before the tube yields.", bars, w.Value, w.Limit)
	case analysis.Slender:
		return fmt.Sprintf("The %s are slender: length over radius of gyration is %.0f; up to %.0f is preferred.", bars, w.Value, w.Limit)
	case analysis.NearClosure:
		return "The bars stop closing " + s.Format(units.Length, w.Value) + " beyond the travel allowed."
	case analysis.WheelsOff:
		return fmt.Sprintf("In the %s case the front wheels carry nothing: the rear tires hold the whole car.", w.Case)
	case analysis.NoCenter:
		return "At ride height the bars are parallel: there is no instant center, and the line of action has their slope."
	case analysis.OffTarget:
		return fmt.Sprintf("Anti-squat at ride height is %s, outside the target that ends at %s.", units.WholePercent(w.Value), units.WholePercent(w.Limit))
	case analysis.CenterOffTarget:
		return "The instant center at ride height is outside its target box."
	case analysis.SquatReversal:
		return "Anti-squat changes sign near " + travel + "."
	}
	return ""
}

// room says how far a thread lets a bar be turned, in whole flats.
func room(r adjuster.Room) string {
	// Down to a flat, past what rounding leaves below one.
	down := func(turns float64) float64 { return math.Floor(turns*adjuster.Flats+1e-6) / adjuster.Flats }
	shorter, longer := adjuster.InFlats(-down(r.Shorter)), adjuster.InFlats(down(r.Longer))
	if shorter.None() && longer.None() {
		return "it allows no turn either way"
	}
	said := func(t adjuster.Turn, way string) string {
		if t.None() {
			return "no turn " + way
		}
		return Turn(t)
	}
	return fmt.Sprintf("from its length without preload it allows %s and %s", said(shorter, "shorter"), said(longer, "longer"))
}

// reaches says how near bars come to what they may carry, by what and where.
func reaches(d analysis.Demand, s units.System) string {
	if d.Source == analysis.FromLaunch {
		return fmt.Sprintf("The %s reaches %s of what it may carry in %s, at %s of the launch.", d.Bar, units.Share(d.Share), d.Way, s.Format(units.Time, d.Time))
	}
	return fmt.Sprintf("The %s reach %s of what they may carry in %s, in the %s case at %s.", d.Bar.Pair().Bars(), units.Share(d.Share), d.Way, d.Source, s.Travel(d.Travel))
}

// Warnings says what each of a list warns of.
func Warnings(list []analysis.Warning, s units.System) []string {
	said := make([]string, len(list))
	for i, w := range list {
		said[i] = Warning(w, s)
	}
	return said
}

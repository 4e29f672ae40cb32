package words

import (
	"fmt"

	"bowline/model/analysis"
	"bowline/model/units"
)

// Warning says what a warning warns of, in a sentence.
func Warning(w analysis.Warning, s units.System) string {
	bars, travel := w.Pair.Bars(), s.Travel(w.Travel)
	switch w.Kind {
	case analysis.OverCapacity:
		return fmt.Sprintf("The %s reach %s of what they may carry in %s, in the %s case at %s.", bars, units.Share(w.Value), w.Way, w.Case, travel)
	case analysis.NotBalanced:
		return "At " + travel + " the lines of both bars and the spring meet in one point: they cannot hold the axle there, and no force is given."
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

// Warnings says what each of a list warns of.
func Warnings(list []analysis.Warning, s units.System) []string {
	said := make([]string, len(list))
	for i, w := range list {
		said[i] = Warning(w, s)
	}
	return said
}

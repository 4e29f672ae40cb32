package words

import (
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/roll"
	"bowline/model/units"
)

// RollVerdict says how much the bars alone resist the axle's roll against the chassis,
// what that is against springs and anti-roll bar, and how far the axle can roll before
// a rod end comes to its limit.
func RollVerdict(r *roll.Result, s units.System) []string {
	list := []string{rollStiffness(r, s), rollLimit(r, s)}
	if r.Most.Short {
		list = append(list, fmt.Sprintf("Rolled by %s the bars do not reach all of the travel; the rest is left out below.", s.FormatExact(units.Angle, roll.Tilt)))
	}
	return list
}

// RollAssumes says what the misalignments over travel and roll rest on.
const RollAssumes = "Most is the greatest from full droop to full bump; rolled is the worse of both sides. Bolts are taken as level, and square to their bars at ride height."

// RollUnknown says why nothing is known of roll.
func RollUnknown(why error) string { return fmt.Sprintf("How the axle rolls is not known: %v.", why) }

func rollStiffness(r *roll.Result, s units.System) string {
	if s.Shown(units.RollRate, r.Ride.Stiffness) == 0 {
		return "The bars are parallel and leave the axle free to roll: only springs and anti-roll bar resist."
	}
	text := fmt.Sprintf("At ride height the bars alone resist axle roll with %s", s.Format(units.RollRate, r.Ride.Stiffness))
	ratio, known := r.OverSprings()
	if !known {
		return text + "; no spring or anti-roll bar does."
	}
	others := "the rear springs do"
	if r.AntiRoll > 0 {
		others = "the rear springs and the anti-roll bar do"
	}
	text += fmt.Sprintf(", %s times what %s", Times(ratio), others)
	if ratio < roll.Binding {
		return text + "."
	}
	return text + ": bars that are not parallel, in side view or in plan, bind in roll."
}

// Times writes a ratio with two digits: "0.35", "2.4", "22".
func Times(ratio float64) string {
	switch {
	case ratio < 0.995:
		return units.Decimal(ratio, 2)
	case ratio < 9.95:
		return units.Decimal(ratio, 1)
	}
	return units.Decimal(ratio, 0)
}

func rollLimit(r *roll.Result, s units.System) string {
	if r.Limits == (roll.Limits{}) {
		return "Rod-end angle not given: how far the axle can roll before a rod end comes to its limit is not checked."
	}
	return rollReach(r, s) + unchecked(r.Limits)
}

func rollReach(r *roll.Result, s units.System) string {
	ride := &r.Ride
	if !ride.Limited {
		return fmt.Sprintf("No rod end comes to its limit within %s of axle roll.", s.FormatExact(units.Angle, roll.MaxRoll))
	}
	end := fmt.Sprintf("the %s end of the %s", place(ride.End), ride.End.Bar)
	limit := s.Format(units.Angle, r.Limits[ride.End.Bar])
	if ride.Limit == 0 {
		return fmt.Sprintf("At ride height, without any roll, %s is at its limit of %s.", end, limit)
	}
	return fmt.Sprintf("The axle can roll %s before %s comes to its limit of %s.", s.Format(units.Angle, math.Abs(ride.Limit)), end, limit)
}

// unchecked says which bars' rod ends have no limit, when others do.
func unchecked(limits roll.Limits) string {
	for _, bar := range launch.Bars {
		if limits[bar] == 0 {
			return fmt.Sprintf(" The ends of the %s bars are not checked: their rod-end angle is not given.", map[car.Pair]string{car.Upper: "upper", car.Lower: "lower"}[bar.Pair()])
		}
	}
	return ""
}

// place names where a rod end is.
func place(e roll.End) string {
	if e.Housing {
		return "housing"
	}
	return "chassis"
}

// RollLimit writes how far the axle can roll before a rod end comes to its limit:
// "24.99°".
func RollLimit(limits roll.Limits, at *roll.State, s units.System) string {
	switch {
	case limits == roll.Limits{}:
		return "not checked"
	case !at.Limited:
		return "over " + s.FormatExact(units.Angle, roll.MaxRoll)
	}
	return s.Format(units.Angle, math.Abs(at.Limit))
}

// RollLimitCell writes the same with the end that stops it, in the width of a cell:
// "24.99°, UL chassis".
func RollLimitCell(limits roll.Limits, at *roll.State, s units.System) string {
	text := RollLimit(limits, at, s)
	if at.Limited {
		text += ", " + RodEnd(at.End)
	}
	return text
}

// RodEnd names a rod end where there is little room, as in "UL chassis".
func RodEnd(e roll.End) string { return Initials(e.Bar.String()) + " " + place(e) }

// RodEnds names all rod ends, by bar, that at the chassis before that at the housing.
func RodEnds() (names []string) {
	for _, bar := range launch.Bars {
		names = append(names, RodEnd(roll.End{Bar: bar}), RodEnd(roll.End{Bar: bar, Housing: true}))
	}
	return names
}

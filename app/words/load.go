package words

import (
	"fmt"
	"math"

	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Load says what a bar carries, as in "push 9,475 lb".
func Load(way column.Direction, u analysis.Use, s units.System) string {
	return way.String() + " " + s.Format(units.Force, u.Force)
}

// Use writes a force and its share of what the bar may carry, as in "9,475 lb,
// 71 %", and "none" where there is none.
func Use(u analysis.Use, s units.System) string {
	if u.Force == 0 {
		return "none"
	}
	return s.Format(units.Force, u.Force) + ", " + units.Share(u.Share)
}

// Demand writes the most that is asked of a bar and its share of what that may carry, as
// in "9,475 lb, 71 %", and "none" where it is never loaded that way.
func Demand(d analysis.Demand, s units.System) string {
	return Use(analysis.Use{Force: d.Force, Share: d.Share}, s)
}

// Where says what asks a load of a bar, in the width of a cell of a table, as in "hit,
// 4.00 in droop" and "right, launch 0.054 s"; nothing for a bar that is never loaded.
func Where(d analysis.Demand, s units.System) string {
	switch {
	case d.Force == 0:
		return "—"
	case d.Source == analysis.FromLaunch:
		return fmt.Sprintf("%s, launch %s", d.Bar.Side(), s.Format(units.Time, d.Time))
	}
	return fmt.Sprintf("%s, %s", d.Source, s.Travel(d.Travel))
}

// Most says what is the most that is asked of a bar, as in "most 157 %, right, launch
// 0.054 s".
func Most(d analysis.Demand, s units.System) string {
	return fmt.Sprintf("most %s, %s", units.Share(d.Share), Where(d, s))
}

// LoadAndShare says what a bar carries and how near its limit that is, as in "push
// 9,475 lb, 71 %".
func LoadAndShare(way column.Direction, u analysis.Use, s units.System) string {
	return Load(way, u, s) + ", " + units.Share(u.Share)
}

// Center says where a point of the ground's frame is, as in "41.25 in ahead of the
// rear contact, 11.84 in up".
func Center(at r2.Vec, s units.System) string {
	along, upright := "ahead of", "up"
	if at.X < 0 {
		along = "behind"
	}
	if at.Y < 0 {
		upright = "below the ground"
	}
	return fmt.Sprintf("%s %s the rear contact, %s %s", s.Format(units.Length, math.Abs(at.X)), along, s.Format(units.Length, math.Abs(at.Y)), upright)
}

// SpringChange says how much more or less than at rest the rear springs push [N],
// and what the rear does then.
func SpringChange(change float64, s units.System) string {
	does := "more than at rest: squat"
	if change < 0 {
		does = "less than at rest: rise"
	}
	return s.Format(units.Force, math.Abs(change)) + " " + does
}

// SpringsPull says what springs that would have to pull mean, when those of a
// setup do at ride height; else nothing.
func SpringsPull(r *analysis.Result) string {
	for _, c := range analysis.Cases {
		if c.Of(&r.Ride.Loads).Spring < 0 {
			return "The suspension is held at ride height here. Springs that would have to pull mean that the rear rises until its shocks stop it."
		}
	}
	return ""
}

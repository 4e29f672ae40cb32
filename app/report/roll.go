package report

import (
	"math"

	"bowline/app/words"
	"bowline/model/launch"
	"bowline/model/roll"
	"bowline/model/units"
)

// RollData is how the axle rolls against the chassis on its bars alone. Angles are
// in degrees, misalignments are of rod ends.
type RollData struct {
	Stiffness    *float64     `json:"stiffness"` // Torque over a degree of roll at ride height; null where the bars find no position.
	Springs      float64      `json:"springs"`   // The same of rear springs and rear anti-roll bar, which are left out of stiffness.
	Limit        *float64     `json:"limit"`     // Roll to either side until a rod end is at its limit, at ride height; null where none is checked or comes to it.
	LimitEnd     string       `json:"limit_end"` // Which one that is, as in "lower right bar, housing"; empty without a limit.
	Misalignment []TiltedEnds `json:"misalignment"`
}

// TiltedEnds are the misalignments of the rod ends at a travel and a roll, each at the
// chassis and at the housing.
type TiltedEnds struct {
	Travel float64           `json:"travel"`
	Roll   float64           `json:"roll"` // Left side up positive.
	Ends   ByBar[[2]float64] `json:"ends"`
}

// tilts are the rolls at which misalignments are listed [degrees].
var tilts = [...]float64{-3, 0, 3}

// rolls reports whether a launch has the parameters that roll is found from: a car that
// did not come to a launch has none.
func rolls(l *launch.Result) bool { return l != nil && l.Car != nil && l.Parameters.Axle.Height != 0 }

// roll describes the roll of a launched car; none for one that did not come to a
// launch.
func (b builder) roll(l *launch.Result) *RollData {
	if !rolls(l) {
		return nil
	}
	axle := roll.New(&l.Parameters)
	d := &RollData{Springs: b.shop(units.RollRate, roll.Springs(&l.Parameters)+l.Parameters.RearAntiRoll), Misalignment: []TiltedEnds{}}
	if k, err := axle.Stiffness(0); err == nil {
		k = b.shop(units.RollRate, k)
		d.Stiffness = &k
	}
	if angle, end, ok := axle.Limit(0, roll.LimitsOf(l.Car)); ok {
		angle = b.shop(units.Angle, math.Abs(angle))
		d.Limit, d.LimitEnd = &angle, end.String()
	}
	s := &l.Car.Springs
	for _, travel := range [...]float64{-s.RearDroop, 0, s.RearBump} {
		for _, degrees := range tilts {
			pose, err := axle.Pose(travel, units.US.ToSI(units.Angle, degrees))
			if err != nil {
				continue // the bars do not reach that far
			}
			at := TiltedEnds{Travel: b.shop(units.Length, travel), Roll: degrees}
			for k, bar := range launch.Bars {
				for end := range pose.Misalignment[k] {
					at.Ends.of(bar)[end] = b.shop(units.Angle, pose.Misalignment[k][end])
				}
			}
			d.Misalignment = append(d.Misalignment, at)
		}
	}
	return d
}

// roll says how the axle rolls, with the misalignment of all rod ends; nothing for a
// car that did not come to a launch.
func (w writer) roll() []section {
	if !rolls(w.launch) {
		return nil
	}
	r, err := roll.OfParameters(w.launch.Car, &w.launch.Parameters)
	if err != nil {
		return []section{{title: "Roll", lines: []string{words.RollUnknown(err)}}}
	}
	tilt := w.units.FormatExact(units.Angle, roll.Tilt)
	s := section{title: "Roll", lines: append(words.RollVerdict(r, w.units), words.RollAssumes), table: table{columns: []heading{
		{"misalignment of rod ends", ""}, {"ride, level", "°"}, {"most, level", "°"}, {"ride, rolled " + tilt, "°"}, {"most, rolled " + tilt, "°"},
	}}}
	for i, name := range words.RodEnds() {
		row := []cell{said(name)}
		for _, m := range [...]*roll.Misalignment{&r.Ride.Level, &r.Most.Level, &r.Ride.Tilted, &r.Most.Tilted} {
			row = append(row, w.number(units.Angle, m[i/2][i%2]))
		}
		s.table.rows = append(s.table.rows, row)
	}
	return []section{s}
}

package words

import (
	"fmt"
	"math"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

// Preload says what the scales read before the start of a launch of the same car and
// setup, and which turn brings left and right rear together; nothing of a car that
// found no rest.
func Preload(r *analysis.Result, l *launch.Result, s units.System) string {
	if l.Static == (launch.Static{}) {
		return ""
	}
	return Rest(&l.Static, r.Car.Setups[r.Options.Setup].Turns, s) + " " + EvenRear(r.EvenRear(l), s)
}

// Rest says what the scales read before the start, with the turns of preload dialed
// in, and what cross weight that is.
func Rest(l *launch.Static, turns car.Turns, s units.System) string {
	read := Readings(l)
	with := "With no preload dialed in"
	if turns != (car.Turns{}) {
		with = "With the turns dialed in"
	}
	mass := func(x float64) string { return s.Format(units.Mass, x) }
	return fmt.Sprintf("%s the scales read %s left front, %s right front, %s left rear and %s right rear: cross weight %s %%.", with,
		mass(read.LeftFront), mass(read.RightFront), mass(read.LeftRear), mass(read.RightRear), units.Decimal(100*read.Cross(), 1))
}

// Readings are what scales under the tires of a car at rest read.
func Readings(l *launch.Static) car.Scales {
	return car.Scales{
		Given:     true,
		LeftFront: l.FrontLoad[launch.Left] / units.Gravity, RightFront: l.FrontLoad[launch.Right] / units.Gravity,
		LeftRear: l.RearLoad[launch.Left] / units.Gravity, RightRear: l.RearLoad[launch.Right] / units.Gravity,
	}
}

// EvenRear says which turn brings the left and the right rear tire together at rest.
func EvenRear(e analysis.Even, s units.System) string {
	apart := math.Abs(e.Apart) / units.Gravity
	if s.ReadsZero(units.Mass, apart) {
		return "Left and right rear carry alike."
	}
	text := fmt.Sprintf("The %s rear carries %s more than the %s: ", sideOf(e.Apart > 0), s.Format(units.Mass, apart), sideOf(e.Apart <= 0))
	turn := adjuster.InFlats(e.Turns)
	switch {
	case !e.Found:
		return text + "no turn of a bar changes that."
	case turn.None():
		return text + "less than a flat of a bar."
	case !e.Thread:
		return text + fmt.Sprintf("no bar's thread has the turns that bring them together; it would take about %s on the %s.", Turn(turn), e.Bar)
	}
	return text + fmt.Sprintf("about %s on the %s brings them together.", Turn(turn), e.Bar)
}

// sideOf names a side.
func sideOf(left bool) string {
	if left {
		return launch.Left.String()
	}
	return launch.Right.String()
}

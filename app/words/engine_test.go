package words_test

import (
	"testing"

	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/units"
)

// Power is torque times speed: 500 lb-ft at 5,252 rpm is 500 hp, since 5,252 is
// 33,000/(2 π); in SI 373 kW, of 745.7 W each.
func TestPeakPower(t *testing.T) {
	rpm := func(x float64) float64 { return units.US.ToSI(units.Speed, x) }
	pounds := func(x float64) float64 { return units.US.ToSI(units.Torque, x) }
	var c car.Car
	c.Drive.Torque, c.Drive.Speed, c.Launch.Engine.RevLimit = pounds(500), rpm(4000), rpm(5252)
	check(t, "constant", words.PeakPower(&c, units.US), "The torque stays the same up to the rev limit: 500 hp at 5,252 rpm.")
	c.Launch.Engine.Curve = []car.TorquePoint{{Speed: rpm(4000), Torque: pounds(500)}, {Speed: rpm(5252), Torque: pounds(500)}, {Speed: rpm(5300), Torque: pounds(0)}}
	c.Launch.Engine.RevLimit = 0
	check(t, "curve", words.PeakPower(&c, units.US), "Peak 500 hp at 5,252 rpm.")
	check(t, "curve in SI", words.PeakPower(&c, units.SI), "Peak 373 kW at 5,252 rpm.")
	c.Drive.Torque = pounds(400)
	check(t, "scaled", words.PeakPower(&c, units.US), "Peak 400 hp at 5,252 rpm. The launch takes 0.800 times this curve, which passes through 400 lb-ft at 4,000 rpm then.")
}

func TestRamp(t *testing.T) {
	for _, c := range []struct {
		ramp [][2]float64 // time [s] and share
		want string
	}{
		{nil, "All of the torque from the release on."},
		{[][2]float64{{0, 0.42}, {1, 0.6}, {2, 1}}, "42 % of the torque at the release, all of it at 2.000 s."},
		{[][2]float64{{0, 0.5}, {1, 1.5}}, "50 % of the torque at the release, all of it at 0.500 s, up to 150 % at 1.000 s."},
		{[][2]float64{{0, 0.4}, {1, 0.6}}, "40 % of the torque at the release, at most 60 % at 1.000 s."},
		{[][2]float64{{0, 0.4}, {1, 0.3}}, "40 % of the torque at the release, and never more."},
		{[][2]float64{{0.5, 0.7}}, "70 % of the torque all the way."},
		{[][2]float64{{0, 1}, {1, 0.5}}, "100 % of the torque at the release."},
	} {
		var of car.Car
		for _, p := range c.ramp {
			of.Launch.Engine.Ramp = append(of.Launch.Engine.Ramp, car.RampPoint{Time: p[0], Share: p[1]})
		}
		check(t, "ramp", words.Ramp(&of, units.US), c.want)
	}
}

package words_test

import (
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestLoads(t *testing.T) {
	u := analysis.Use{Force: 9475 * lbf, Share: 0.714}
	for _, c := range []struct{ got, want string }{
		{words.Load(column.Push, u, units.US), "push 9,475 lb"},
		{words.Load(column.Pull, u, units.SI), "pull 42,147 N"},
		{words.Use(u, units.US), "9,475 lb, 71 %"},
		{words.Use(analysis.Use{}, units.US), "none"},
		{words.LoadAndShare(column.Push, u, units.US), "push 9,475 lb, 71 %"},
		{words.LoadAndShare(column.Pull, analysis.Use{}, units.US), "pull 0 lb, 0 %"},
		{words.SpringChange(-3750, units.SI), "3,750 N less than at rest: rise"},
		{words.SpringChange(120*lbf, units.US), "120 lb more than at rest: squat"},
	} {
		check(t, "load", c.got, c.want)
	}
}

func TestCenter(t *testing.T) {
	check(t, "ahead", words.Center(r2.Vec{X: 41.25 * inch, Y: 11.84 * inch}, units.US), "41.25 in ahead of the rear contact, 11.84 in up")
	check(t, "behind", words.Center(r2.Vec{X: -1.2, Y: -0.1}, units.SI), "1,200.0 mm behind the rear contact, 100.0 mm below the ground")
}

func TestSpringsPull(t *testing.T) {
	r := &analysis.Result{}
	check(t, "none", words.SpringsPull(r), "")
	r.Ride.Loads.Hit.Spring = -1
	check(t, "in the hit", words.SpringsPull(r), "The suspension is held at ride height here. Springs that would have to pull mean that the rear rises until its shocks stop it.")
}

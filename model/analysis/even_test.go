package analysis_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
)

// rest is the start of a car's launch.
func rest(t *testing.T, c *car.Car) *launch.Result {
	t.Helper()
	l, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{Limit: 0.001})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// weighed is the demo car on scales that read the right rear tire so many pounds
// heavier than the left one.
func weighed(t *testing.T, pounds float64) *car.Car {
	c := read(t, "../../assets/cars/saltgrass-7.toml")
	const pound = lbf / 9.80665
	c.Body.Scales = car.Scales{Given: true, LeftFront: 660 * pound, RightFront: 665 * pound, LeftRear: (1325 - pounds) / 2 * pound, RightRear: (1325 + pounds) / 2 * pound}
	c.FollowScales()
	c.Setups[0].Turns = car.Turns{}
	return c
}

// A car with the turns that it is told to be given has its rear tires nearly alike, to
// a thirtieth of what they differed by; and no other bar would have done it with a
// flat less.
func TestTurnsThatBringTheRearTogether(t *testing.T) {
	for _, pounds := range []float64{40, -120} {
		c := weighed(t, pounds)
		e := run(t, c, analysis.Options{}).EvenRear(rest(t, c))
		if math.Abs(e.Apart+pounds*lbf) > 0.1*lbf || !e.Found || !e.Thread || e.Turns == 0 {
			t.Fatalf("%+v for %v lb", e, pounds)
		}
		apart := func(bar launch.RodID, turns float64) float64 {
			d := c.Clone()
			*car.BarTurns[bar].Of(&d.Setups[0].Turns) += turns
			s := rest(t, d).Static
			return s.RearLoad[launch.Left] - s.RearLoad[launch.Right]
		}
		if left := apart(e.Bar, e.Turns); math.Abs(left) > math.Abs(e.Apart)/30 {
			t.Errorf("%v turns of the %v leave them %.1f lb apart, of %.1f", e.Turns, e.Bar, left/lbf, e.Apart/lbf)
		}
		for _, bar := range launch.Bars {
			for _, sign := range []float64{1, -1} {
				fewer := sign * (math.Abs(e.Turns) - 1./6)
				if left := apart(bar, fewer); bar != e.Bar && fewer != 0 && left*e.Apart < 0 {
					t.Errorf("%v turns of the %v overshoot already: %.1f lb", fewer, bar, left/lbf)
				}
			}
		}
	}
}

// Turns that no thread has are told all the same, and that none has them.
func TestRearTooFarApartForTheThreads(t *testing.T) {
	c := weighed(t, 60)
	c.UpperBar.Threads.Shown, c.LowerBar.Threads.Shown = 0, 0
	c.UpperBar.Threads.Length, c.LowerBar.Threads.Length = 1.18*0.0254, 1.18*0.0254 // a nut of 0.42 in and 1 D
	if e := run(t, c, analysis.Options{}).EvenRear(rest(t, c)); e.Thread || !e.Found || e.Turns == 0 {
		t.Errorf("%+v", e)
	}
}

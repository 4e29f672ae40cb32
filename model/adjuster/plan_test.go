package adjuster

import (
	"errors"
	"math"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
)

// level is a car with level bars of 20 in and 23 in, 11.5 in apart, and
// 3/4-16 rod ends; the second lower chassis hole is 0.311 in farther ahead, the
// third 1.5 in, the fourth 2 in behind.
func level() *car.Car {
	c := car.Defaults()
	c.Body.Wheelbase = 105 * inch
	c.Tires.RearRadius, c.Tires.FrontRadius = 16*inch, 12.5*inch
	c.Chassis.Upper = []r2.Vec{{X: 22.5 * inch, Y: 22.5 * inch}, {X: 23 * inch, Y: 22.5 * inch}}
	for _, x := range []float64{25.5, 25.811, 27, 23.5} {
		c.Chassis.Lower = append(c.Chassis.Lower, r2.Vec{X: x * inch, Y: 11 * inch})
	}
	c.Housing.Upper = []r2.Vec{{X: 2.5 * inch, Y: 6.5 * inch}}
	c.Housing.Lower = []r2.Vec{{X: 2.5 * inch, Y: -5 * inch}}
	c.UpperBar.RodEnd, c.LowerBar.RodEnd = "3/4-16", "3/4-16"
	c.Setups = []car.Setup{{Name: "as it stands"}}
	return c
}

func mustPlan(t testing.TB, c *car.Car, holes car.Holes, turns car.Turns) Change {
	t.Helper()
	change, err := Plan(c, 0, holes, turns)
	if err != nil {
		t.Fatal(err)
	}
	return change
}

// By hand: 0.311 in at 1/8 in a turn are 2.488 turns, 14.93 flats. Two threads
// in sight become 4.488, 0.2805 in; 1.687 − 0.2805 − 0.421875 = 0.984625 in stay
// engaged, 1.3128 diameters. Before turning the housing's foot is 0.311 in too
// far ahead, 0.311/11.5 of a radian nose up. A turn longer pushes it back by
// 0.125 in and the axle, 5 in above it, by 6.5/11.5 of that. Fifteen flats are
// 0.0015 in too many.
func TestPlanByHand(t *testing.T) {
	change := mustPlan(t, level(), car.Holes{ChassisLower: 1}, car.Turns{})
	upper, lower := &change.Pairs[car.Upper], &change.Pairs[car.Lower]
	near(t, "from", lower.From/inch, 23, 1e-9)
	near(t, "to", lower.To/inch, 23.311, 1e-9)
	for _, bar := range []*BarChange{&lower.Left, &lower.Right} {
		near(t, "turns", bar.Turns, 2.488, 1e-9)
		if turn := bar.Turn(); turn.Whole != 2 || turn.Flats != 3 {
			t.Errorf("turn %+v", turn)
		}
		near(t, "threads in sight", bar.After.Shown, 4.488, 1e-9)
		near(t, "engaged", bar.After.Engaged/inch, 0.984625, 1e-9)
		near(t, "diameters", bar.After.Diameters, 1.312833333, 1e-9)
		if bar.After.Status != Shallow || bar.Before.Status != Good {
			t.Errorf("%v, before %v", bar.After.Status, bar.Before.Status)
		}
	}
	if lower.Recut() || upper.Recut() || change.Turned.Cannot != nil || !lower.Moved() || upper.Moved() {
		t.Errorf("recut %v and %v, cannot %v, moved %v and %v", lower.Recut(), upper.Recut(), change.Turned.Cannot, lower.Moved(), upper.Moved())
	}
	near(t, "per turn, pinion", lower.PerTurn.Pinion, -0.125/11.5, 1e-12)
	near(t, "per turn, shift", lower.PerTurn.Shift/inch, -0.125*6.5/11.5, 1e-12)
	near(t, "per turn of the upper bars, pinion", upper.PerTurn.Pinion, 0.125/11.5, 1e-12)
	near(t, "per turn of the upper bars, shift", upper.PerTurn.Shift/inch, -0.125*5/11.5, 1e-12)
	near(t, "unturned, pinion", change.Unturned.Pinion, 0.311/11.5, 3e-5)
	near(t, "unturned, shift", change.Unturned.Shift/inch, 0.311*6.5/11.5, 0.004)
	near(t, "turned, pinion", change.Turned.Pinion, 0, 1e-12)
	near(t, "turned, shift", change.Turned.Shift, 0, 1e-12)
	near(t, "in flats, pinion", change.InFlats.Pinion, -0.0015/11.5, 1e-8)
}

// 1.5 in more are 12 turns: the two threads become 14, 0.875 in, and 0.39 in of
// thread are left. Two inches less are past the last thread by 14 of them.
func TestPlanNeedsAnotherTube(t *testing.T) {
	for hole, want := range map[int]struct {
		turns, engaged, tube float64 // lengths in in
		status               Status
	}{
		2: {12, 1.687 - 0.875 - 0.421875, 1.5, TooShort},
		3: {-16, 1.687 + 0.875 - 0.421875, -2, TooLong},
	} {
		change := mustPlan(t, level(), car.Holes{ChassisLower: hole}, car.Turns{})
		if !change.Pairs[car.Lower].Recut() || change.Pairs[car.Upper].Recut() {
			t.Errorf("hole %d: reachable without another tube", hole+1)
		}
		b := &change.Pairs[car.Lower].Right
		near(t, "turns", b.Turns, want.turns, 1e-9)
		near(t, "engaged", b.After.Engaged/inch, want.engaged, 1e-9)
		near(t, "tube", b.After.Tube/inch, want.tube, 1e-9)
		if b.After.Status != want.status {
			t.Errorf("hole %d: %v, want %v", hole+1, b.After.Status, want.status)
		}
	}
}

// What the rod end's name does not have is assumed.
func TestPlanAssumedThread(t *testing.T) {
	c := level()
	c.UpperBar.RodEnd, c.LowerBar.RodEnd = "", "3/4"
	change := mustPlan(t, c, car.Holes{}, car.Turns{})
	for p, want := range [...]Assumed{{Pitch: true, Diameter: true}, {Pitch: true}} {
		if got := change.Pairs[p].Assumed; got != want {
			t.Errorf("%v: %+v, want %+v", car.Pair(p), got, want)
		}
	}
	named := mustPlan(t, level(), car.Holes{}, car.Turns{})
	if got := named.Pairs[car.Upper].Assumed; got != (Assumed{}) {
		t.Errorf("of a full name %+v", got)
	}
}

// A rod end too short for any tube is not usable; another tube would not help.
func TestPlanShortThread(t *testing.T) {
	c := level()
	c.LowerBar.Threads.Length = 1 * inch
	change := mustPlan(t, c, car.Holes{}, car.Turns{})
	if lower := &change.Pairs[car.Lower]; !lower.Recut() || lower.Bar.Usable() {
		t.Error("usable with too little thread")
	}
}

// Preload that stays asks for no turn of its own; a turn more on one side does,
// and turns the housing by half of what both sides would.
func TestPlanPreload(t *testing.T) {
	c := level()
	c.Setups[0].Turns = car.Turns{LowerLeft: 1, LowerRight: -0.4}
	kept := mustPlan(t, c, car.Holes{ChassisLower: 1}, c.Setups[0].Turns)
	lower := &kept.Pairs[car.Lower]
	near(t, "left", lower.Left.Turns, 2.488, 1e-9)
	near(t, "right", lower.Right.Turns, 2.488, 1e-9)
	near(t, "left length", lower.Left.After.Length/inch, 23.436, 1e-9)
	near(t, "right length", lower.Right.After.Length/inch, 23.261, 1e-9)
	near(t, "left in sight", lower.Left.After.Shown, 5.488, 1e-9)

	more := mustPlan(t, c, car.Holes{}, car.Turns{LowerLeft: 2, LowerRight: -0.4})
	lower = &more.Pairs[car.Lower]
	near(t, "left", lower.Left.Turns, 1, 1e-12)
	near(t, "right", lower.Right.Turns, 0, 1e-12)
	near(t, "pinion", more.Turned.Pinion, lower.PerTurn.Pinion/2, 2e-5)
	near(t, "alone", lower.Alone.Pinion, more.Turned.Pinion, 0)
	near(t, "the other pair alone", more.Pairs[car.Upper].Alone.Pinion, 0, 0)
	if lower.Left.After.Status != Shallow || lower.Right.After.Status != Good {
		t.Errorf("left %v, right %v", lower.Left.After.Status, lower.Right.After.Status)
	}
}

// With both pairs moved, each pair has its own effect, and a pair that is
// turned alone leaves what the other one lacks.
func TestPlanBothPairs(t *testing.T) {
	change := mustPlan(t, level(), car.Holes{ChassisUpper: 1, ChassisLower: 1}, car.Turns{})
	near(t, "only upper turned", change.Pairs[car.Upper].Alone.Pinion, 0.311/11.5, 3e-5)
	near(t, "only lower turned", change.Pairs[car.Lower].Alone.Pinion, -0.5/11.5, 3e-5)
	near(t, "unturned", change.Unturned.Pinion, (0.311-0.5)/11.5, 3e-5)
}

// A move that the other bars cannot follow unturned is explained.
func TestPlanCannot(t *testing.T) {
	c := level()
	c.Chassis.Upper[1].X = 60 * inch
	change := mustPlan(t, c, car.Holes{ChassisUpper: 1}, car.Turns{})
	if change.Unturned.Cannot == nil || change.Turned.Cannot != nil || !change.Pairs[car.Upper].Recut() {
		t.Errorf("unturned %v, turned %v, recut %v", change.Unturned.Cannot, change.Turned.Cannot, change.Pairs[car.Upper].Recut())
	}
	var stuck *linkage.AdjustmentError
	if !errors.As(change.Unturned.Cannot, &stuck) {
		t.Fatal(change.Unturned.Cannot)
	}
	near(t, "upper bars", stuck.Upper/inch, 20, 1e-9)
	near(t, "lower bars", stuck.Lower/inch, 23, 1e-9)
}

func TestPlanRefusals(t *testing.T) {
	c := level()
	for _, want := range []struct {
		from  int
		holes car.Holes
		turns car.Turns
		words string
	}{
		{1, car.Holes{}, car.Turns{}, "the car has no setup 2; give a number from 1 to 1"},
		{-1, car.Holes{}, car.Turns{}, "no setup 0"},
		{0, car.Holes{ChassisLower: 4}, car.Turns{}, "the new holes: the lower chassis bracket has no hole 5; give a number from 1 to 4"},
		{0, car.Holes{HousingUpper: -1}, car.Turns{}, "the upper housing bracket has no hole 0; give a number from 1 to 1"},
		{0, car.Holes{}, car.Turns{UpperLeft: math.NaN()}, "Upper left bar: NaN turns are out of range; give −24 to 24"},
		{0, car.Holes{}, car.Turns{LowerRight: 25}, "Lower right bar: 25 turns"},
	} {
		if _, err := Plan(c, want.from, want.holes, want.turns); err == nil || !strings.Contains(err.Error(), want.words) {
			t.Errorf("got %v, want %s", err, want.words)
		}
	}
	c.Chassis.Upper[1] = r2.Vec{X: 2.5 * inch, Y: 22.5 * inch}
	if _, err := Plan(c, 0, car.Holes{ChassisUpper: 1}, car.Turns{}); !errors.Is(err, linkage.ErrShortBar) {
		t.Errorf("a bar without length: %v", err)
	}
	c.Setups[0].Holes.ChassisLower = 9
	if _, err := Plan(c, 0, car.Holes{}, car.Turns{}); err == nil || !strings.Contains(err.Error(), "setup 1: the lower chassis bracket has no hole 10") {
		t.Errorf("a setup with a wrong hole: %v", err)
	}
}

func BenchmarkPlan(b *testing.B) {
	c := level()
	for b.Loop() {
		if _, err := Plan(c, 0, car.Holes{ChassisUpper: 1, ChassisLower: 1}, car.Turns{}); err != nil {
			b.Fatal(err)
		}
	}
}

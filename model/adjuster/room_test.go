package adjuster

import (
	"testing"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// lengthened is a car whose lower bars are level, 23 in long in the first setup and so
// much longer in the second.
func lengthened(longer float64) *car.Car {
	c := car.Defaults()
	c.Tires.RearRadius = 16 * inch
	c.Chassis.Lower = []r2.Vec{{X: 25.5 * inch, Y: 11 * inch}, {X: 25.5*inch + longer, Y: 11 * inch}}
	c.Housing.Lower = []r2.Vec{{X: 2.5 * inch, Y: -5 * inch}}
	c.Setups = []car.Setup{{}, {Holes: car.Holes{ChassisLower: 1}}}
	c.LowerBar.RodEnd = "3/4-16"
	return c
}

// By hand, with 2 threads in sight at 23 in: 2 turns bring the ends together. 1.687 −
// 0.125 − 0.421875 = 1.140125 in are engaged, 0.390125 in more than a diameter and
// 0.015125 in more than 1.5 of them; a turn takes 1/16 in of that.
func TestRoomByHand(t *testing.T) {
	for _, want := range []struct {
		longer                float64
		shorter, longest, all float64
	}{
		{0, 2, 6.242, 0.242},
		// An eighth longer is a turn away.
		{0.125 * inch, 3, 5.242, -0.758},
		// An inch longer takes another tube, which shows 2 threads again.
		{inch, 2, 6.242, 0.242},
	} {
		r := RoomOf(lengthened(want.longer), 1, car.Lower)
		near(t, "shorter", r.Shorter, want.shorter, 1e-9)
		near(t, "longer", r.Longer, want.longest, 1e-9)
		near(t, "well engaged", r.Well, want.all, 1e-9)
	}
	short := lengthened(0)
	short.LowerBar.Threads.Length = 1 * inch
	if r := RoomOf(short, 0, car.Lower); r.Longer != 0 || r.Allows(0.01) || !r.Allows(0) {
		t.Errorf("a thread too short for its nut allows %+v", r)
	}
}

// What a thread has is what the bar's state at the turned length says.
func TestRoomIsThatOfTheTurnedBar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, name) }
		c := lengthened(0)
		c.LowerBar.Threads = car.Threads{Length: number("thread", 1.3, 3) * inch, Shown: number("shown", 0, 8)}
		bar := Of(c, car.Lower)
		length := c.BarLength(car.Lower, c.Setups[0].Holes)
		if before := bar.At(length); before.Recut() {
			return
		}
		turns := number("turns", -9, 9)
		after := bar.At(length + turns*bar.Lead())
		room := RoomOf(c, 0, car.Lower)
		if room.Allows(turns) == after.Recut() {
			t.Fatalf("%v turns leave the bar %v, and the thread allows %+v", turns, after.Status, room)
		}
		if after.Status == Good && turns > room.Well || after.Status == Shallow && turns < room.Well {
			t.Fatalf("%v turns leave %v D engaged, and %+v", turns, after.Diameters, room)
		}
	})
}

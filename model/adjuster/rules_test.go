package adjuster

import (
	"testing"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// Thread lengths printed in AS81935/1A, and the rules between and beyond them
// by hand.
func TestThreadLength(t *testing.T) {
	for d, want := range map[float64]float64{
		0.5: 1.468, 0.625: 1.562, 0.75: 1.687, 0.875: 2.000, 1.25: 2.343,
		0.6875: 1.6245, 1: 2.114333333, 0.25: 0.734, 2.5: 4.686,
	} {
		near(t, "thread length", ThreadLength(d*inch)/inch, want, 1e-9)
	}
	near(t, "jam nut", JamNut(0.75*inch)/inch, 0.421875, 1e-12)
}

// A car's bars take what is typed, and rules for the rest.
func TestOf(t *testing.T) {
	c := car.Defaults()
	c.Tires.RearRadius = 16 * inch
	c.Chassis.Lower = []r2.Vec{{X: 1}, {X: 25.5 * inch, Y: 11.5 * inch}}
	c.Housing.Lower = []r2.Vec{{X: 2.5 * inch, Y: -5 * inch}}
	c.Setups = []car.Setup{{Holes: car.Holes{ChassisLower: 1}, Turns: car.Turns{LowerLeft: 2}}}
	c.LowerBar.RodEnd = "5/8-18"
	c.LowerBar.Threads.Shown = 3
	b := Of(c, car.Lower)
	near(t, "pitch", b.Pitch/inch, 1.0/18, 1e-12)
	near(t, "diameter", b.Diameter/inch, 0.625, 1e-12)
	near(t, "thread", b.ThreadLength/inch, 1.562, 1e-12)
	near(t, "nut", b.JamNut/inch, 0.3515625, 1e-12)
	near(t, "shown", b.Shown, 3, 0)
	// 23 in forward, 0.5 in up.
	near(t, "fitted", b.Fitted/inch, 23.005434140654, 1e-9)

	c.LowerBar.Threads = car.Threads{Length: 0.04, JamNut: 0.01, Shown: 1, Fitted: 0.5}
	b = Of(c, car.Lower)
	if want := (Bar{Pitch: b.Pitch, Diameter: b.Diameter, ThreadLength: 0.04, JamNut: 0.01, Shown: 1, Fitted: 0.5}); b != want {
		t.Errorf("got %+v, want %+v", b, want)
	}
}

package adjuster

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// threeQuarter is a bar with 3/4-16 rod ends: thread 1.687 in (AS81935/1A-12),
// jam nut 27/64 in, four threads in sight at 21.430 in.
var threeQuarter = Bar{
	Pitch: 0.0625 * inch, Diameter: 0.75 * inch, ThreadLength: 1.687 * inch, JamNut: 0.421875 * inch,
	Shown: 4, Fitted: 21.430 * inch,
}

func near(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

// By hand for one turn of a 3/4-16 bar, 1/8 in: at 21.430 in four threads are
// 1/4 in, so 1.687 − 0.25 − 0.421875 = 1.015125 in or 1.3535 diameters are
// engaged, 0.5 in are left to shorten and 2 (1.015125 − 0.75) = 0.53025 in to
// lengthen. 0.281 in more are 2.248 turns.
func TestStateByHand(t *testing.T) {
	for _, want := range []struct {
		length, shown, engaged, diameters, shorten, lengthen float64
		status                                               Status
		tube                                                 float64
	}{
		{21.430, 4, 1.015125, 1.3535, 0.5, 0.53025, Shallow, 0},
		{21.711, 6.248, 0.874625, 1.166166667, 0.781, 0.24925, Shallow, 0},
		{21.180, 2, 1.140125, 1.520166667, 0.25, 0.78025, Good, 0},
		{20.930, 0, 1.265125, 1.686833333, 0, 1.03025, Good, 0},
		// 0.57 in longer than fitted leave 0.730125 in. A tube for four threads
		// would leave less than 1.5 diameters, so it is made for 0.140125 in or
		// 2.242 threads: longer by 2 (0.535 − 0.140125).
		{22.000, 8.56, 0.730125, 0.9735, 1.07, 0, TooShort, 0.78975},
		// One inch shorter is past the last thread by half an inch.
		{20.430, -4, 1.515125, 2.020166667, 0, 1.53025, TooLong, 2 * (-0.25 - 0.140125)},
	} {
		s := threeQuarter.At(want.length * inch)
		near(t, "threads in sight", s.Shown, want.shown, 1e-9)
		near(t, "engaged", s.Engaged/inch, want.engaged, 1e-9)
		near(t, "diameters", s.Diameters, want.diameters, 1e-9)
		near(t, "to shorten", s.CanShorten/inch, want.shorten, 1e-9)
		near(t, "to lengthen", s.CanLengthen/inch, want.lengthen, 1e-9)
		near(t, "tube", s.Tube/inch, want.tube, 1e-9)
		if s.Status != want.status {
			t.Errorf("%v in: %v, want %v", want.length, s.Status, want.status)
		}
	}
	near(t, "turns", threeQuarter.Turns(21.430*inch, 21.711*inch), 2.248, 1e-9)
	near(t, "lead", threeQuarter.Lead()/inch, 0.125, 1e-12)
}

// bars draws bars of any size.
func bars(t *rapid.T) Bar {
	number := func(name string, least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, name) }
	d := number("diameter", 0.005, 0.05)
	return Bar{
		Pitch: number("pitch", 0.0005, 0.004), Diameter: d, ThreadLength: d * number("thread", 0.5, 4), JamNut: d * number("nut", 0, 1),
		Shown: number("shown", 0, 12), Fitted: number("fitted", 0.1, 1),
	}
}

// A bar can go to the ends that its state names and no farther, and with the
// new tube that its state asks for it is as when fitted, or well engaged.
func TestStateHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := bars(t)
		length := b.Fitted + rapid.Float64Range(-0.05, 0.05).Draw(t, "change")
		s := b.At(length)
		if s.Recut() {
			cut := b
			cut.Fitted += s.Tube
			after := cut.At(length)
			if !b.Usable() {
				return
			}
			if after.Recut() {
				t.Fatalf("with a tube longer by %v the bar is %v", s.Tube, after.Status)
			}
			if room := b.ThreadLength - b.JamNut - WellEngaged*b.Diameter; room >= b.Shown*b.Pitch {
				near(t, "tube", s.Tube, length-b.Fitted, 1e-12)
			} else if room >= 0 {
				near(t, "engaged with a new tube", after.Diameters, WellEngaged, 1e-9)
			}
			return
		}
		near(t, "tube", s.Tube, 0, 0)
		for _, end := range []struct {
			change float64
			beyond Status
		}{{s.CanLengthen, TooShort}, {-s.CanShorten, TooLong}} {
			sign := math.Copysign(1, end.change)
			if at := b.At(length + end.change); at.Recut() {
				t.Fatalf("cannot be changed by %v: %v", end.change, at.Status)
			}
			if at := b.At(length + end.change + sign*1e-6); at.Status != end.beyond {
				t.Fatalf("changed by more than %v: %v, want %v", end.change, at.Status, end.beyond)
			}
		}
	})
}

// A rod end whose jam nut leaves less than a diameter is no use at any length.
func TestTooLittleThread(t *testing.T) {
	b := threeQuarter
	if !b.Usable() {
		t.Error("a standard rod end is no use")
	}
	b.ThreadLength = 1.17 * inch
	if b.Usable() {
		t.Error("0.748 in of thread are enough for a 3/4 in rod end")
	}
}

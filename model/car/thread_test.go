package car

import (
	"math"
	"testing"
)

// Threads as their trade names have them: diameters in inches or millimeters,
// threads per inch or a pitch in millimeters.
func TestThread(t *testing.T) {
	const in = 25.4
	for _, c := range []struct {
		name            string
		diameter, pitch float64 // [mm]; 0 for one that the name does not have
	}{
		{"3/4-16", 0.75 * in, in / 16},
		{"5/8 - 18 left", 0.625 * in, in / 18},
		{"1 1/4-12", 1.25 * in, in / 12},
		{"1-1/4-12", 1.25 * in, in / 12},
		{"1-14 UNS", in, in / 14},
		{"1.25-12", 1.25 * in, in / 12},
		{".75-16", 0.75 * in, in / 16},
		{`3/4"-16`, 0.75 * in, in / 16},
		{"3/4 in-16", 0.75 * in, in / 16},
		{"7/8 bore, 3/4-16", 0.75 * in, in / 16},
		{"heim 3/4-16 RH", 0.75 * in, in / 16},
		{"3/4", 0.75 * in, 0},
		{"3/4-0", 0.75 * in, 0},
		{"3/4-1000", 0.75 * in, 0},
		{"3/0-16", 0, 0},
		{"0/4-16", 0, 0},
		{"10-32", 0, 0},
		{"M20x1.5", 20, 1.5},
		{"M16 × 2", 16, 2},
		{"m20X1.5-6g", 20, 1.5},
		{"M20-1.5", 20, 1.5},
		{"M20", 20, 0},
		{"M20x50", 20, 0},
		{"", 0, 0},
		{"large", 0, 0},
		{"-", 0, 0},
		{"1/", 0, 0},
	} {
		b := Bar{RodEnd: c.name}
		diameter, sized := b.ThreadDiameter()
		pitch, named := b.Pitch()
		if c.diameter == 0 && diameter != 0.75*inch || c.diameter > 0 && math.Abs(diameter*1e3-c.diameter) > 1e-12 || sized != (c.diameter > 0) {
			t.Errorf("%q: diameter %v, named %v", c.name, diameter, sized)
		}
		if c.pitch == 0 && pitch != inch/16 || c.pitch > 0 && math.Abs(pitch*1e3-c.pitch) > 1e-12 || named != (c.pitch > 0) {
			t.Errorf("%q: pitch %v, named %v", c.name, pitch, named)
		}
		if b.Lead() != 2*pitch {
			t.Errorf("%q: lead %v", c.name, b.Lead())
		}
	}
}

// Each pair of bars has threads of its own, with the defaults of the file.
func TestThreads(t *testing.T) {
	c := Defaults()
	for _, p := range Pairs {
		if got := *p.Threads(c); got != (Threads{Shown: 2}) {
			t.Errorf("%v: %+v", p, got)
		}
	}
	Lower.Threads(c).Shown = 5
	if c.UpperBar.Threads.Shown != 2 || c.LowerBar.Threads.Shown != 5 {
		t.Errorf("upper %+v, lower %+v", c.UpperBar.Threads, c.LowerBar.Threads)
	}
}

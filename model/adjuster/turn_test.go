package adjuster

import (
	"testing"

	"pgregory.net/rapid"
)

func TestTurnInWords(t *testing.T) {
	for turns, want := range map[float64]string{
		0: "no turn", 0.08: "no turn", -0.08: "no turn",
		0.09: "1 flat longer", -1.0 / 6: "1 flat shorter", 1: "1 turn longer", -2: "2 turns shorter",
		2.248: "2 turns 1 flat longer", 2.5: "2 turns 3 flats longer", -1.95: "2 turns shorter", 0.93: "1 turn longer",
		-1.3: "1 turn 2 flats shorter",
	} {
		if got := InFlats(turns).String(); got != want {
			t.Errorf("%v turns: %q, want %q", turns, got, want)
		}
	}
}

// Whole turns, flats and the rest add up, have one sign, and the rest is at
// most half a flat; the other way round it is the same turn backward.
func TestTurnAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turns := rapid.Float64Range(-30, 30).Draw(t, "turns")
		n := InFlats(turns)
		near(t, "exact", n.Exact(), turns, 1e-12)
		near(t, "rest", n.Rest, 0, 1.0/12+1e-12)
		if n.Whole*n.Flats < 0 || n.Flats <= -Flats || n.Flats >= Flats {
			t.Fatalf("%v turns are %+v", turns, n)
		}
		back := InFlats(-turns)
		if back.Whole != -n.Whole || back.Flats != -n.Flats {
			t.Fatalf("%v turns are %+v, back %+v", turns, n, back)
		}
	})
	near(t, "far beyond any bar", InFlats(1e300).Exact(), 1e300, 1e290)
}

package adjuster

import (
	"testing"

	"pgregory.net/rapid"
)

func TestTurnByHand(t *testing.T) {
	for turns, want := range map[float64][2]int{
		0: {}, 0.08: {}, -0.08: {}, 0.09: {0, 1}, -1.0 / 6: {0, -1}, 1: {1, 0}, -2: {-2, 0},
		2.248: {2, 1}, 2.5: {2, 3}, -1.95: {-2, 0}, 0.93: {1, 0}, -1.3: {-1, -2},
	} {
		if got := InFlats(turns); got.Whole != want[0] || got.Flats != want[1] || got.None() != (want == [2]int{}) {
			t.Errorf("%v turns: %+v, want %v", turns, got, want)
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

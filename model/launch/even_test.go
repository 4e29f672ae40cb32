package launch

import (
	"math"
	"reflect"
	"testing"
)

// How far apart left and right are, against integrals by hand: all on one side, alike,
// and loads N ± a t over a time in which a t rises from nothing to N/2, whose mean
// difference is half of the greatest.
func TestUnevennessByHand(t *testing.T) {
	const n, load = 1001, 4000.0
	of := func(left, right func(part float64) float64) float64 {
		var h History
		for i := range n {
			part := float64(i) / (n - 1)
			h.RearLoad[Left] = append(h.RearLoad[Left], left(part))
			h.RearLoad[Right] = append(h.RearLoad[Right], right(part))
		}
		return h.Unevenness()
	}
	steps := History{RearLoad: [2][]float64{{3, 1, 0}, {1, 1, 2}}} // 2, 0 and 2 apart of 8
	always := func(x float64) func(float64) float64 { return func(float64) float64 { return x } }
	for name, c := range map[string]struct{ got, want float64 }{
		"alike":     {of(always(load), always(load)), 0},
		"one side":  {of(always(0), always(load)), 1},
		"wandering": {of(func(p float64) float64 { return load * (1 + p/2) }, func(p float64) float64 { return load * (1 - p/2) }), 0.25},
		"changing":  {of(func(p float64) float64 { return load * (1.5 - p) }, func(p float64) float64 { return load * (0.5 + p) }), 0.25},
		"steps":     {steps.Unevenness(), 0.5},
		"none":      {new(History).Unevenness(), 0},
		"off":       {of(always(0), always(0)), 0},
	} {
		if math.Abs(c.got-c.want) > 1e-3 {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
}

// A launch in the storage of another one, longer or shorter, that came to a launch or
// did not, is what it is by itself.
func TestStorageIsReused(t *testing.T) {
	c := reference(t)
	stiff := reference(t)
	stiff.Launch.Inertia.Roll = 1e-3
	spare := run(t, c, Options{Limit: 0.4})
	for _, o := range []struct {
		what  string
		limit float64
		soft  bool
	}{{"shorter", 0.1, true}, {"longer", 0.5, true}, {"none", 0.5, false}, {"after none", 0.2, true}} {
		next := c
		if !o.soft {
			next = stiff
		}
		want := run(t, next, Options{Limit: o.limit})
		got := run(t, next, Options{Limit: o.limit, Reuse: spare})
		for k, list := range got.lists() {
			if fresh := *want.lists()[k]; len(*list) != len(fresh) || len(fresh) > 0 && !reflect.DeepEqual(*list, fresh) {
				t.Fatalf("%s: list %d differs", o.what, k)
			}
		}
		if got.Outcome != want.Outcome || got.Options != want.Options || got.Peaks != want.Peaks || len(got.Frames) != len(want.Frames) {
			t.Errorf("%s: %v with %d frames, want %v with %d", o.what, got.Outcome, len(got.Frames), want.Outcome, len(want.Frames))
		}
		spare = got
	}
}

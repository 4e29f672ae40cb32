package preload_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/internal/cartest"
	"bowline/model/launch"
	"bowline/model/preload"

	"pgregory.net/rapid"
)

// Of any valid car: what is found is even more, in whole flats within the threads,
// overloads no bar more than it is, and is a car that is valid too.
func TestAnyCar(t *testing.T) {
	any := rapid.Custom(func(t *rapid.T) *car.Car { return cartest.Random(t, library) })
	searched, found := 0, 0
	for seed := range 5 {
		c := any.Example(seed)
		threads(c, 3)
		r, err := preload.Find(context.Background(), c, 0, library, preload.Options{})
		var none *preload.NoLaunch
		if errors.As(err, &none) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		searched++
		from := c.Setups[0].Turns
		for i := range r.Ways {
			w := &r.Ways[i]
			found++
			if u := w.Unevenness; !(u >= 0 && u <= 1) || fits(from) && !(u < r.Before.Unevenness) {
				t.Errorf("car %d: an unevenness of %v after %v", seed, u, r.Before.Unevenness)
			}
			if fits(from) {
				wantAllowed(t, c, from, w.Turns)
			}
			for _, bar := range launch.Bars {
				if share, most := w.Envelope.Of(bar).Share, max(1, r.Before.Envelope.Of(bar).Share); share > most*(1+1e-6) {
					t.Errorf("car %d: %v reaches %v, more than %v", seed, bar, share, most)
				}
			}
			with := c.Clone()
			with.Setups[0].Turns = w.Turns
			if problems := with.Validate(library, 0); len(problems) > 0 {
				t.Errorf("car %d: %v", seed, problems)
			}
		}
	}
	if searched < 3 || found < 1 {
		t.Errorf("%d cars are searched and %d ways found", searched, found)
	}
}

// fits reports whether threads of three flats either way have turns.
func fits(t car.Turns) bool {
	for _, bar := range car.BarTurns {
		if math.Abs(*bar.Of(&t)) > 3.0/6 {
			return false
		}
	}
	return true
}

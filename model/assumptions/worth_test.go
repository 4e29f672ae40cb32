package assumptions_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"
	"time"

	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"
)

// find returns what the assumptions of a setup are worth.
func find(t testing.TB, c *car.Car, setup int) []assumptions.Worth {
	t.Helper()
	list, err := assumptions.Find(context.Background(), c, setup, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// launched returns the worst share of a setup, that in the launch alone, and its 60-ft
// time.
func launched(t testing.TB, c *car.Car, setup int) (share, inLaunch, elapsed float64) {
	t.Helper()
	side, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{Setup: setup})
	if err != nil {
		t.Fatal(err)
	}
	l, err := launch.Run(context.Background(), c, setup, carfile.Stock(), launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	// The worst of everything, without the envelope.
	for _, p := range car.Pairs {
		for _, use := range side.Worst[p] {
			share = math.Max(share, use.Share)
		}
	}
	for _, bar := range launch.Bars {
		limits := side.Bars[bar.Pair()]
		inLaunch = math.Max(inLaunch, math.Max(l.Peaks[bar].Pull/limits.Pull.Allowable, l.Peaks[bar].Push/limits.Push.Allowable))
	}
	return math.Max(share, inLaunch), inLaunch, l.Elapsed
}

// What an assumption is worth is what launches of cars find that are changed by hand.
func TestWorthIsThatOfLaunchesByHand(t *testing.T) {
	const setup = 1
	demo := read(t, "../../assets/cars/saltgrass-7.toml")
	share, inLaunch, elapsed := launched(t, demo, setup)
	worth := map[string]assumptions.Worth{}
	for _, w := range find(t, demo, setup) {
		worth[w.Path] = w
	}
	rate := func(x float64) float64 { return x * units.PoundForce / inch }
	for path, edits := range map[string][2]func(*car.Car){
		"lower_bar.end_rate": {
			func(c *car.Car) { c.Launch.LowerBar.EndRate = rate(400000) },
			func(c *car.Car) { c.Launch.LowerBar.EndRate = rate(100000) },
		},
		"tires.sliding_grip": {
			func(c *car.Car) { c.Launch.Tires.SlidingGrip = 1 },
			func(c *car.Car) { c.Launch.Tires.SlidingGrip = 0.375 },
		},
		"drive.release_time": {
			func(c *car.Car) { c.Launch.Engine.ReleaseTime = 0.06 },
			func(c *car.Car) { c.Launch.Engine.ReleaseTime = 0.015 },
		},
		"check.rollout": {
			func(c *car.Car) { c.Check.Rollout = 24 * inch },
			func(c *car.Car) { c.Check.Rollout = 6 * inch },
		},
	} {
		w, ok := worth[path]
		if !ok {
			t.Errorf("%s is not assumed", path)
			continue
		}
		for i, edit := range edits {
			c := demo.Clone()
			edit(c)
			changed, launch, later := launched(t, c, setup)
			e := w.Effects[i]
			if !e.Timed || math.Abs(e.Share-(changed-share)) > 1e-9 || math.Abs(e.Launch-(launch-inLaunch)) > 1e-9 || math.Abs(e.Time-(later-elapsed)) > 1e-9 {
				t.Errorf("%s, change %d: %+v, by hand %v, %v and %v s", path, i, e, changed-share, launch-inLaunch, later-elapsed)
			}
		}
	}
	demo.State("check.factor", false)
	for _, w := range find(t, demo, setup) {
		// Twice the safety factor is twice every share.
		if w.Path == "check.factor" && (math.Abs(w.Effects[0].Share-share) > 1e-9 || math.Abs(w.Effects[1].Share+share/2) > 1e-9 || w.Effects[0].Time != 0) {
			t.Errorf("the safety factor: %+v of a worst share of %v", w.Effects, share)
		}
	}
}

// The strongest come first: by the worst share, then by that in the launch, and then by
// the time.
func TestStrongestFirst(t *testing.T) {
	list := find(t, read(t, "../../assets/cars/saltgrass-light.toml"), 0)
	if len(list) < 20 {
		t.Fatalf("only %d assumptions", len(list))
	}
	const tenth = 0.001 // of a percent
	last := []float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	for _, w := range list {
		now := make([]float64, 3)
		for _, e := range w.Effects {
			seconds := math.Abs(e.Time)
			if !e.Timed {
				seconds = math.Inf(1)
			}
			for i, x := range []float64{math.Abs(e.Share), math.Abs(e.Launch), seconds} {
				now[i] = math.Max(now[i], x)
			}
		}
		now[0], now[1] = math.Round(now[0]/tenth), math.Round(now[1]/tenth)
		if slices.Compare(now, last) > 0 {
			t.Errorf("%s with %v stands after %v", w.Path, now, last)
		}
		last = now
	}
}

// A car that goes over has no time to change, and one whose change makes it go over
// says so.
func TestWithoutATime(t *testing.T) {
	for _, w := range find(t, read(t, "../../testdata/reference.toml"), 0) {
		for _, e := range w.Effects {
			if e.Timed || e.Time != 0 {
				t.Errorf("%s: %+v of a car that goes over", w.Path, e)
			}
		}
	}
}

// It ends when it is told to.
func TestCancel(t *testing.T) {
	c := read(t, "../../assets/cars/saltgrass-7.toml")
	done, cancel := context.WithCancel(context.Background())
	cancel()
	if list, err := assumptions.Find(done, c, 0, carfile.Stock()); !errors.Is(err, context.Canceled) || list != nil {
		t.Errorf("canceled before it began: %d, %v", len(list), err)
	}
	soon, cancel := context.WithTimeout(context.Background(), 10*time.Millisecond)
	defer cancel()
	if list, err := assumptions.Find(soon, c, 0, carfile.Stock()); !errors.Is(err, context.DeadlineExceeded) || list != nil {
		t.Errorf("canceled on the way: %d, %v", len(list), err)
	}
	if _, err := assumptions.Find(context.Background(), c, 99, carfile.Stock()); err == nil {
		t.Error("a setup that does not exist is launched")
	}
}

func BenchmarkFind(b *testing.B) {
	c := read(b, "../../assets/cars/saltgrass-7.toml")
	for b.Loop() {
		find(b, c, 0)
	}
}

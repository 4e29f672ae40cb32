package preload_test

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"

	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/preload"

	"gonum.org/v1/gonum/spatial/r3"
)

// On small threads the best of every kind is the best of all turns of that kind,
// each launched here and held against its limits by arithmetic of its own.
func TestAgainstAllTurns(t *testing.T) {
	for _, test := range []struct {
		name, path string
		flats      int
		factor     float64 // 0 leaves the car's
	}{
		{"held by its threads", heavy, 3, 0},
		{"held by its bars", demo, 4, 2.1},
	} {
		c := fierce(t, test.path)
		threads(c, test.flats)
		if test.factor != 0 {
			c.Check.Factor = test.factor
		}
		r := find(t, c, preload.Options{})
		before := launchWith(t, c, car.Turns{})
		near(t, test.name+", unevenness before", r.Before.Unevenness, before.unevenness, 1e-12)
		best := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
		look := func(kind preload.Kind, turns car.Turns) {
			l := launchWith(t, c, turns)
			for _, share := range l.shares {
				if share > 1 {
					return
				}
			}
			best[kind] = min(best[kind], cost(l.unevenness, car.Turns{}, turns))
		}
		for a := -test.flats; a <= test.flats; a++ {
			x := float64(a) / 6
			for bar := range car.BarTurns {
				var turns car.Turns
				*car.BarTurns[bar].Of(&turns) = x
				look(preload.OneBar, turns)
			}
			look(preload.OnePair, car.Turns{UpperLeft: -x, UpperRight: x})
			look(preload.OnePair, car.Turns{LowerLeft: -x, LowerRight: x})
			for b := -test.flats; b <= test.flats; b++ {
				y := float64(b) / 6
				look(preload.BothPairs, car.Turns{UpperLeft: -x, UpperRight: x, LowerLeft: -y, LowerRight: y})
			}
		}
		found := map[preload.Kind]float64{}
		for i := range r.Ways {
			w := &r.Ways[i]
			l := launchWith(t, c, w.Turns)
			near(t, test.name+", unevenness", w.Unevenness, l.unevenness, 1e-12)
			found[w.Kind] = cost(l.unevenness, car.Turns{}, w.Turns)
			wantAllowed(t, c, car.Turns{}, w.Turns)
		}
		for _, kind := range preload.Kinds {
			got, ok := found[kind]
			switch {
			case ok && kind == preload.OneBar:
				near(t, test.name+", cost", got, best[kind], usual)
			case ok:
				near(t, test.name+", cost", got, best[kind], 1e-12)
			case best[kind] < before.unevenness && (kind != preload.BothPairs || best[kind] < best[preload.OnePair]):
				t.Errorf("%s: kind %d is not found, and costs %v of %v", test.name, kind, best[kind], before.unevenness)
			}
		}
	}
}

// The example cars get more even within threads and limits, and what is said of their
// launches is what launching them with the turns found gives.
func TestExampleCarsGetMoreEven(t *testing.T) {
	for path, worth := range map[string]bool{demo: true, heavy: true, light: false} {
		c := read(t, path)
		r := find(t, c, preload.Options{})
		if got := r.Chosen() != nil; got != worth {
			t.Errorf("%s: found a way %v, want %v", path, got, worth)
		}
		for i := range r.Ways {
			w := &r.Ways[i]
			wantAllowed(t, c, car.Turns{}, w.Turns)
			l := launchWith(t, c, w.Turns)
			if !(l.unevenness < r.Before.Unevenness-0.005) {
				t.Errorf("%s: %+v leaves an unevenness of %v after %v", path, w.Turns, l.unevenness, r.Before.Unevenness)
			}
			for bar, share := range l.shares {
				if share > 1 {
					t.Errorf("%s: %v reaches %v of its limit", path, launch.RodID(bar), share)
				}
				near(t, "share", w.Envelope.Of(launch.RodID(bar)).Share, share, 1e-12)
			}
			// Common practice: the driveshaft lifts the right rear tire, so that it is to be
			// pressed down at rest.
			if rest := w.Launch.Static.RearLoad; !(rest[launch.Right] > rest[launch.Left]) {
				t.Errorf("%s: at rest the rear tires carry %v", path, rest)
			}
			if w.Kind != preload.OneBar && w.Effect.Pinion != 0 {
				t.Errorf("%s: bars turned opposite ways move the pinion by %v", path, w.Effect.Pinion)
			}
		}
	}
}

// Of bars turned opposite ways in both pairs, only the difference between the pairs
// moves load from one rear tire to the other, by the linear change at rest.
func TestOneCombinationCounts(t *testing.T) {
	for _, path := range []string{demo, heavy, light} {
		turn := launchWith(t, read(t, path), car.Turns{}).result.PerTurn
		onLeft := func(bar launch.RodID) float64 { return turn[bar].RearLoad[launch.Left] }
		upper, lower := onLeft(launch.UpperRight)-onLeft(launch.UpperLeft), onLeft(launch.LowerRight)-onLeft(launch.LowerLeft)
		if !(math.Abs(upper+lower) < 0.1*math.Abs(upper-lower)) {
			t.Errorf("%s: a turn of the upper pair moves %v N to the left, one of the lower %v N", path, upper, lower)
		}
	}
}

// A symmetric car with next to no torque in its driveshaft needs no turns.
func TestNoTwistNeedsNoTurns(t *testing.T) {
	c := read(t, demo)
	threads(c, 9)
	c.Drive.Gear, c.Drive.Axle = c.Drive.Gear*c.Drive.Axle/1e9, 1e9
	r := find(t, c, preload.Options{})
	if r.Best != -1 || len(r.Ways) != 0 || r.Stop.Kind != preload.NotStopped {
		t.Errorf("found %+v", r)
	}
	// What is left is the track bar's, which has a side.
	if r.Before.Unevenness > 0.003 {
		t.Errorf("its unevenness is %v", r.Before.Unevenness)
	}
	// Preload that it has is taken off again.
	c.Setups[0].Turns.UpperRight = 1.5
	w := find(t, c, preload.Options{}).Chosen()
	if w == nil || w.Turns != (car.Turns{}) || w.Kind != preload.OneBar {
		t.Errorf("with preload it finds %+v", w)
	}
}

// mirrored swaps left and right of a car with its track bar where it lies unless given.
func mirrored(c *car.Car) *car.Car {
	m := c.Clone()
	m.Launch.Engine.Direction = car.Counterclockwise
	chassis, housing := c.LocatorEnds(0)
	flip := func(p r3.Vec) car.End { return car.End{Given: true, At: r3.Vec{X: p.X, Y: -p.Y, Z: p.Z}} }
	m.Launch.Locator.Chassis, m.Launch.Locator.Housing = flip(chassis), flip(housing)
	t := &m.Setups[0].Turns
	t.UpperLeft, t.UpperRight, t.LowerLeft, t.LowerRight = t.UpperRight, t.UpperLeft, t.LowerRight, t.LowerLeft
	return m
}

func TestMirrorImage(t *testing.T) {
	c := fierce(t, heavy)
	threads(c, 7)
	c.Setups[0].Turns = car.Turns{UpperRight: 1, LowerLeft: 0.5}
	a, b := find(t, c, preload.Options{}), find(t, mirrored(c), preload.Options{})
	if len(a.Ways) == 0 || len(a.Ways) != len(b.Ways) || a.Best != b.Best || a.Launches != b.Launches {
		t.Fatalf("%d ways, best %d, and %d, best %d", len(a.Ways), a.Best, len(b.Ways), b.Best)
	}
	for i := range a.Ways {
		x, y := a.Ways[i].Turns, b.Ways[i].Turns
		if x != (car.Turns{UpperLeft: y.UpperRight, UpperRight: y.UpperLeft, LowerLeft: y.LowerRight, LowerRight: y.LowerLeft}) {
			t.Errorf("%+v, and mirrored %+v", x, y)
		}
		near(t, "unevenness", a.Ways[i].Unevenness, b.Ways[i].Unevenness, 1e-6)
	}
}

// The same is found by any number of workers, and each launch is reported.
func TestAnyNumberOfWorkers(t *testing.T) {
	c := read(t, demo)
	threads(c, 5)
	var first *preload.Result
	for _, workers := range []int{1, 2, 7} {
		told := 0
		r := find(t, c, preload.Options{Workers: workers, Progress: func(n int) {
			if told++; n != told {
				t.Errorf("%d launches are told after %d", n, told-1)
			}
		}})
		if told != r.Launches {
			t.Errorf("%d launches are told of %d", told, r.Launches)
		}
		if first == nil {
			first = r
		} else if !reflect.DeepEqual(turnsOf(r), turnsOf(first)) || r.Best != first.Best || r.Launches != first.Launches {
			t.Errorf("%d workers find %+v in %d launches, one finds %+v in %d", workers, turnsOf(r), r.Launches, turnsOf(first), first.Launches)
		}
	}
}

func turnsOf(r *preload.Result) (list []car.Turns) {
	for i := range r.Ways {
		list = append(list, r.Ways[i].Turns)
	}
	return list
}

func TestCancel(t *testing.T) {
	c := read(t, demo)
	for _, workers := range []int{1, 2} {
		ctx, cancel := context.WithCancel(context.Background())
		launches := 0
		r, err := preload.Find(ctx, c, 0, library, preload.Options{Workers: workers, Progress: func(n int) {
			if launches = n; n == 5 {
				cancel()
			}
		}})
		if r != nil || !errors.Is(err, context.Canceled) || launches > 5+workers {
			t.Errorf("%d workers: %v, %v after %d launches", workers, r, err, launches)
		}
	}
}

// Turns that a thread does not have are taken back to where it ends.
func TestTurnsBeyondAThread(t *testing.T) {
	c := read(t, heavy)
	threads(c, 9)
	c.Setups[0].Turns = car.Turns{UpperRight: 10, LowerLeft: -2.25}
	r := find(t, c, preload.Options{})
	w := r.Chosen()
	if w == nil {
		t.Fatal("nothing is found")
	}
	for _, bar := range car.BarTurns {
		if n := *bar.Of(&w.Turns); math.Abs(n) > 1.5 {
			t.Errorf("%s is turned to %v", bar.Label, n)
		}
	}
	if !(w.Unevenness < r.Before.Unevenness) {
		t.Errorf("its unevenness is %v after %v", w.Unevenness, r.Before.Unevenness)
	}
	left := r.Left(&w.State, launch.UpperRight)
	near(t, "thread left", left.Shorter+left.Longer, 3, 1e-6)
}

// A car whose bars are over their limits as it stands is not refused, and no bar goes
// further over.
func TestOverItsLimitAsItStands(t *testing.T) {
	c := fierce(t, demo)
	threads(c, 6)
	c.Check.Factor = 2.4
	r := find(t, c, preload.Options{})
	over := false
	for _, bar := range launch.Bars {
		over = over || r.Before.Envelope.Of(bar).Share > 1
	}
	if !over {
		t.Fatal("the car is within its limits")
	}
	for i := range r.Ways {
		for bar, share := range launchWith(t, c, r.Ways[i].Turns).shares {
			if most := max(1, r.Before.Envelope.Of(launch.RodID(bar)).Share); share > most+1e-9 {
				t.Errorf("%v reaches %v of its limit, more than %v", launch.RodID(bar), share, most)
			}
		}
	}
	if r.Best < 0 && r.Stop.Kind != preload.StoppedByLimit {
		t.Errorf("nothing is found, and stopped by %+v", r.Stop)
	}
}

// What ends a way is there: a flat more is more even, and lacks thread or overloads.
func TestWhatEndsAWay(t *testing.T) {
	c := fierce(t, demo)
	w := find(t, c, preload.Options{}).Chosen()
	if w.Stop.Kind != preload.StoppedByLimit {
		t.Fatalf("it is ended by %+v", w.Stop)
	}
	more := w.Turns
	more.UpperRight -= 1.0 / 6
	l := launchWith(t, c, more)
	if !(l.shares[w.Stop.Bar] > 1) || !(l.unevenness < w.Unevenness) {
		t.Errorf("with a flat more %v reaches %v, the unevenness is %v after %v", w.Stop.Bar, l.shares[w.Stop.Bar], l.unevenness, w.Unevenness)
	}
	near(t, "share", w.Stop.Share, l.shares[w.Stop.Bar], 1e-12)

	threads(c, 6)
	w = find(t, c, preload.Options{}).Chosen()
	if w.Stop != (preload.Stop{Kind: preload.StoppedByThread, Bar: launch.UpperRight}) || w.Turns.UpperRight != -1 {
		t.Errorf("with a short thread %+v is ended by %+v", w.Turns, w.Stop)
	}
}

// Common practice: the upper bar on the side that the driveshaft lifts is the one that
// preload is dialed with, unless another one is better by more than a turn's price.
func TestTheUsualBar(t *testing.T) {
	c := read(t, demo)
	threads(c, 9)
	if w := find(t, c, preload.Options{}).Chosen(); w == nil || w.Turns != (car.Turns{UpperRight: w.Turns.UpperRight}) {
		t.Errorf("it turns %+v", w)
	}
	if w := find(t, mirrored(c), preload.Options{}).Chosen(); w == nil || w.Turns != (car.Turns{UpperLeft: w.Turns.UpperLeft}) {
		t.Errorf("in the mirror it turns %+v", w)
	}
}

// A car that does not launch says so.
func TestNoLaunch(t *testing.T) {
	c := read(t, demo)
	c.Setups[0].Turns = car.Turns{UpperLeft: 2000, LowerRight: 2000}
	_, err := preload.Find(context.Background(), c, 0, library, preload.Options{})
	var none *preload.NoLaunch
	if !errors.As(err, &none) {
		t.Fatalf("it says %v", err)
	}
	if _, err := preload.Find(context.Background(), c, 9, library, preload.Options{}); err == nil {
		t.Error("a setup is searched that is not there")
	}
}

// usual is how much more the usual bar may cost than the best one.
const usual = 0.001

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

func BenchmarkFind(b *testing.B) {
	c := read(b, demo)
	for b.Loop() {
		find(b, c, preload.Options{})
	}
}

package preload_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/units"
)

var library = carfile.Stock()

const (
	demo  = "../../assets/cars/saltgrass-7.toml"
	heavy = "../../assets/cars/saltgrass-heavy.toml"
	light = "../../assets/cars/saltgrass-light.toml"
)

func read(t testing.TB, path string) *car.Car {
	t.Helper()
	f, err := carfile.Read(path, library)
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// fierce is a car of which nothing holds the torque back, with the same at any engine
// speed.
func fierce(t testing.TB, path string) *car.Car {
	t.Helper()
	c := read(t, path)
	c.Launch.Engine.Ramp, c.Launch.Engine.Curve = nil, nil
	return c
}

func find(t testing.TB, c *car.Car, o preload.Options) *preload.Result {
	t.Helper()
	r, err := preload.Find(context.Background(), c, 0, library, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// threads gives the bars of a car fitted in its first setup threads that allow as many
// flats either way, of 16 threads an inch and 3/4 in.
func threads(c *car.Car, flats int) {
	shown := float64(flats) / 6
	for _, p := range car.Pairs {
		bar := p.Bar(c)
		bar.RodEnd = "3/4-16"
		bar.Threads = car.Threads{Shown: shown, JamNut: units.Inch / 4, Length: units.Inch * (1.0/4 + 3.0/4 + 2*shown/16)}
	}
}

// launched is a launch with some turns, judged by arithmetic of its own.
type launched struct {
	result     *launch.Result
	unevenness float64
	shares     [4]float64
}

// launchWith launches the first setup with other turns.
func launchWith(t testing.TB, c *car.Car, turns car.Turns) launched {
	t.Helper()
	c = c.Clone()
	c.Setups[0].Turns = turns
	l, err := launch.Run(context.Background(), c, 0, library, launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	side, err := analysis.Run(context.Background(), c, library, analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	of := launched{result: l}
	apart, sum := 0.0, 0.0
	for i := range l.Time {
		apart += math.Abs(l.RearLoad[0][i] - l.RearLoad[1][i])
		sum += l.RearLoad[0][i] + l.RearLoad[1][i]
	}
	of.unevenness = apart / sum
	for bar := range of.shares {
		limits := side.Bars[bar/2]
		of.shares[bar] = max(l.Peaks[bar].Pull/limits.Pull.Allowable, l.Peaks[bar].Push/limits.Push.Allowable,
			side.Worst[bar/2][column.Pull].Share, side.Worst[bar/2][column.Push].Share)
	}
	return of
}

// cost is what turns cost as the package comment says.
func cost(unevenness float64, from, to car.Turns) float64 {
	for _, bar := range car.BarTurns {
		if by := math.Abs(*bar.Of(&to) - *bar.Of(&from)); by != 0 {
			unevenness += 0.005 + 0.001*by
		}
	}
	return unevenness
}

// wantAllowed checks that turns are whole flats from those before and within the
// threads, counted here from the threads in sight and the thread engaged.
func wantAllowed(t testing.TB, c *car.Car, from, to car.Turns) {
	t.Helper()
	for i, bar := range car.BarTurns {
		p := car.Pair(i / 2)
		was, is := *bar.Of(&from), *bar.Of(&to)
		if flats := 6 * (is - was); math.Abs(flats-math.Round(flats)) > 1e-9 {
			t.Errorf("%s: from %v to %v turns is not in whole flats", bar.Label, was, is)
		}
		if is == was {
			continue
		}
		rod := adjuster.Of(c, p)
		state := rod.At(c.BarLength(p, c.Setups[0].Holes) + 2*rod.Pitch*is)
		if state.Shown < -1e-6 || state.Engaged < rod.Diameter-1e-9 {
			t.Errorf("%s: with %v turns %v threads are in sight and %v m engaged", bar.Label, is, state.Shown, state.Engaged)
		}
	}
}

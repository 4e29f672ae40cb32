package plotting_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"gonum.org/v1/plot/plotter"
	"pgregory.net/rapid"
)

// spinning is a launch of 2 s at 5 m/s², whose wheels run ahead by up to 20 m/s for a
// second, with wheelspin in between, and then as fast as the car.
func spinning() *launch.Result {
	l := still(2000)
	for i, t := range l.Time {
		l.Speed[i] = 5 * t
		l.WheelSpeed[i] = l.Speed[i] + 20*math.Max(0, math.Sin(math.Pi*t))
	}
	l.Events = []launch.Event{
		{Kind: launch.Wheelspin, From: 0.2005, To: 0.4005, Value: 0.6, Time: 0.3},
		{Kind: launch.Wheelspin, From: 0.5, To: 0.55, Value: 0.7, Time: 0.52},
	}
	return l
}

// enclosed is the area in closed outlines, by the shoelace formula.
func enclosed(rings []plotter.XYs) float64 {
	var sum float64
	for _, ring := range rings {
		var twice float64
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			twice += a.X*b.Y - b.X*a.Y
		}
		sum += math.Abs(twice) / 2
	}
	return sum
}

// What is shaded is the distance that the tread runs farther than the car: over the
// whole launch 20 ∫ sin πt dt = 40/π m, in a spell of wheelspin the part within it.
func TestSlipIsShaded(t *testing.T) {
	c := plotting.LaunchWheels(plotting.Of(analyze(t, saltgrass()), spinning()))
	within := func(from, to float64) float64 { return 20 / math.Pi * (math.Cos(math.Pi*from) - math.Cos(math.Pi*to)) }
	want := map[string]float64{"slip": within(0, 1), "wheelspin": within(0.2005, 0.4005) + within(0.5, 0.55)}
	for _, a := range c.Areas {
		if got := enclosed(a.Rings); math.Abs(got-want[a.Name]) > 1e-3*want[a.Name] {
			t.Errorf("%s: %g m, want %g m", a.Name, got, want[a.Name])
		}
		if a.Strong != (a.Name == "wheelspin") {
			t.Errorf("%s is shaded the wrong way", a.Name)
		}
		delete(want, a.Name)
	}
	if len(want) > 0 {
		t.Errorf("not shaded: %v", want)
	}
	if got := charttest.Notes(c, units.US); !strings.Contains(got, "0.250 s in all") || !strings.Contains(got, "70 % slip at 0.520 s") {
		t.Error(got)
	}
	calm := spinning()
	calm.Events = nil
	if got := charttest.Notes(plotting.LaunchWheels(plotting.Of(analyze(t, saltgrass()), calm)), units.US); got != "" {
		t.Errorf("no wheelspin, yet %q", got)
	}
}

// Between the lines there is color, most of it in wheelspin; above and below none.
func TestSlipIsSeen(t *testing.T) {
	l := spinning()
	for _, style := range []chart.Style{charttest.Light, {Palette: dark}} {
		img, layout := charttest.Draw(t, plotting.LaunchWheels(plotting.Of(analyze(t, saltgrass()), l)), 820, 420, style, chart.Marker{})
		colored := func(time, speed float64) float64 {
			px, py := layout.ToPixel(time, speed)
			c, b := img.RGBAAt(int(px), int(py)), style.Palette.Background
			return math.Abs(float64(c.R)-float64(b.R)) + math.Abs(float64(c.G)-float64(b.G)) + math.Abs(float64(c.B)-float64(b.B))
		}
		for _, time := range []float64{0.11, 0.31, 0.46, 0.53, 0.61, 0.83} {
			middle := 5*time + 10*math.Sin(math.Pi*time)
			spins := time > 0.2005 && time < 0.4005 || time > 0.5 && time < 0.55
			if got := colored(time, middle+0.7); got < 10 || spins != (got > 110) {
				t.Errorf("at %g s the slip differs from the background by %g", time, got)
			}
			if above, below := colored(time, 5*time+20*math.Sin(math.Pi*time)+2.3), colored(time, 5*time-0.7); above > 3 || below > 3 {
				t.Errorf("at %g s there is color beside the slip: %g, %g", time, above, below)
			}
		}
	}
}

// Of several setups the slip of the first is shaded.
func TestSlipOfTheFirstSetup(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	alone := plotting.LaunchWheels(plotting.Of(r, spinning()))
	both := plotting.LaunchWheels(plotting.Of(r, spinning()), plotting.Of(other, history(500, wave)))
	if len(both.Areas) != len(alone.Areas) || !slices.Equal(both.Areas[1].Rings[1], alone.Areas[1].Rings[1]) {
		t.Errorf("%d areas", len(both.Areas))
	}
	if got := charttest.Notes(both, units.US); !strings.HasPrefix(got, "baseline: past the tires' peak grip") {
		t.Error(got)
	}
}

// Any launch: outlines are finite, and never below the car's speed.
func TestAnySlip(t *testing.T) {
	r := analyze(t, saltgrass())
	rapid.Check(t, func(t *rapid.T) {
		l := randomLaunch(t)
		for _, a := range plotting.LaunchWheels(plotting.Of(r, l)).Areas {
			for _, ring := range a.Rings {
				for k, p := range ring {
					opposite := ring[len(ring)-1-k]
					if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) || p.X != opposite.X || k < len(ring)/2 && p.Y < opposite.Y {
						t.Fatalf("%s: %v beside %v", a.Name, p, opposite)
					}
				}
			}
		}
	})
}

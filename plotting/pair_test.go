package plotting

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"bowline/model/launch"
	"bowline/model/units"
)

func TestReadoutsGiveBothValues(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	charts := x.charts()
	alone, other := Charts(x.r, nil), Charts(x.other, nil)
	for i, c := range charts[:4] {
		got, a, b := c.Readout(0.02, units.US), alone[i].Readout(0.02, units.US), other[i].Readout(0.02, units.US)
		if len(got) != len(a) || got[0] != a[0]+", baseline vs more bite" {
			t.Errorf("%s: %q", c.Key, got)
		}
		for k := range a[1:] {
			// What both have at the start and at the end is not told twice.
			from, to := strings.Fields(a[1+k]), strings.Fields(b[1+k])
			text := strings.Fields(got[1+k])
			if text[0] != from[0] || !slices.Contains(text, "vs") || !strings.Contains(got[1+k], to[len(to)-1]) {
				t.Errorf("%s: %q of %q and %q", c.Key, got[1+k], a[1+k], b[1+k])
			}
		}
	}
	want := "anti-squat " + units.Decimal(100*x.r.Ride.AntiSquat, 1) + " % vs " + units.Decimal(100*x.other.Ride.AntiSquat, 1) + " %"
	if got := charts[1].Readout(0, units.US); !slices.Equal(got, []string{"ride height, baseline vs more bite", want}) {
		t.Errorf("%q", got)
	}
	if got := charts[0].Readout(-50*inch, units.US); !slices.Equal(got, []string{got[0], "the bars do not reach here"}) {
		t.Errorf("%q", got)
	}
	_, l := charttest.Draw(t, charts[3], 460, 300, charttest.Light, chart.Marker{})
	px, _ := l.ToPixel(5000*lbf, 0)
	if got := l.Readout(px, l.Top+20, units.US); len(got) != 3 || got[0] != "5,000 lb push, baseline vs more bite" || !strings.Contains(got[1], "upper bows 0.0") || !strings.Contains(got[1], " in vs 0.0") {
		t.Errorf("%q", got)
	}
}

// Where one launch is over, only the other one has values.
func TestLaunchesOfDifferentLength(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	for _, c := range LaunchCharts(history(100, wave), r, history(300, wave), other) {
		if f := c.Frame(&chart.Style{}); !f.X.Contains(0.299) {
			t.Errorf("%s: %v", c.Key, f.X)
		}
		got := c.Readout(0.2, units.US)
		if len(got) < 3 || got[0] != "0.200 s, baseline vs more bite" || got[1] != "baseline: over at 0.099 s" || !strings.HasPrefix(got[2], "more bite: ") {
			t.Errorf("%s: %q", c.Key, got)
		}
		_, l := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0.2))
		px, _ := l.ToPixel(0.2, 0)
		if at, ok := l.At(px, l.Top+5); !ok || math.Abs(at-0.2) > 1e-9 {
			t.Errorf("%s: pointing gives %g s, %v", c.Key, at, ok)
		}
		if at := c.Subject.Place(0.2); !at.Line || at.X != 0.2 || slices.ContainsFunc(at.Dots, func(d chart.Dot) bool { return d.Setup == 0 }) {
			t.Errorf("%s: %+v", c.Key, at)
		}
	}
	// One that could not start says so, the other one is drawn.
	none := &launch.Result{Outcome: launch.NotHeld, Options: launch.Options{Limit: 3}}
	for _, c := range LaunchCharts(history(100, wave), r, none, other) {
		if got := charttest.Notes(c, units.US); !strings.Contains(got, "more bite: ") {
			t.Errorf("%s: %q", c.Key, got)
		}
		if got := c.Readout(0.05, units.US); !strings.HasPrefix(got[0], "baseline: 0.050 s") {
			t.Errorf("%s: %q", c.Key, got)
		}
		charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0.05))
	}
}

func TestCSVOfTwoSetups(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	short := copied(x.other)
	short.Travel = short.Travel[5:]
	x.other = short
	for _, c := range x.charts() {
		columns := read(t, exported(t, chart.CSV, c, chart.Style{}, chart.Sheet{}))
		first, second := 0, 0
		for name := range columns {
			if strings.Contains(name, ", baseline [") {
				first++
			}
			if strings.Contains(name, ", more bite [") {
				second++
			}
		}
		common := 1 // the position
		if c.Key == "bow" {
			common = 0
		}
		if first == 0 || first != second || len(columns) != common+first+second {
			t.Errorf("%s: %d columns of %d and %d", c.Key, len(columns), first, second)
		}
	}
	columns := read(t, exported(t, chart.CSV, x.chart(t, "anti-squat"), chart.Style{}, chart.Sheet{}))
	travel := columns["travel [in, bump positive]"]
	if len(travel) != len(x.r.Travel) {
		t.Fatalf("%d rows", len(travel))
	}
	for i := range travel {
		a, b := columns["anti-squat, baseline [%]"][i], columns["anti-squat, more bite [%]"][i]
		if got := parse(t, a); math.Abs(got-100*x.r.Travel[i].AntiSquat) > 1e-6 {
			t.Fatalf("row %d: %s", i, a)
		}
		if i < 5 {
			if b != "" {
				t.Errorf("row %d: %s where the second setup has nothing", i, b)
			}
		} else if got := parse(t, b); math.Abs(got-100*x.other.Travel[i-5].AntiSquat) > 1e-6 {
			t.Fatalf("row %d: %s", i, b)
		}
	}
}

// Remarks that hold for one setup name it; those that hold for both do not.
func TestRemarksOfTwoSetups(t *testing.T) {
	r := analyze(t, saltgrass()) // hooked and hit are the same
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	other.Travel[4].Loads.Hit.Balanced = false
	got := charttest.Notes(Charts(r, other)[0], units.US)
	if strings.Count(got, "Hooked and hit are the same") != 1 || !strings.Contains(got, "more bite: no force at 3.30 in droop") || strings.Contains(got, "baseline: ") {
		t.Error(got)
	}
	if got := charttest.Notes(Charts(r, copied(r))[1], units.US); got != "Both setups draw the same lines here." {
		t.Error(got)
	}
}

// How the front wheels of both launches lift stands in one sentence.
func TestLiftOfTwoSetups(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	far, near, none := launch.Lift{Height: 2 * inch, Duration: 0.25}, launch.Lift{Height: inch}, launch.Lift{}
	for _, x := range []struct {
		a, b launch.Lift
		want string
	}{
		{far, near, "Front wheels off the ground for 0.250 s, up to 2.00 in (shaded) vs one at a time, up to 1.00 in."},
		{none, far, "Front wheels off the ground never vs for 0.250 s, up to 2.00 in."},
		{none, none, ""},
	} {
		a, b := history(100, wave), history(100, func(q int, part float64) float64 { return 2 * wave(q, part) })
		a.Lift, b.Lift = x.a, x.b
		if got := charttest.Notes(LaunchCharts(a, r, b, other)[2], units.US); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
}

// Two results of one setup are numbered.
func TestOneSetupTwice(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Travel[3].AntiSquat = 1.2
	c := Charts(r, other)[1]
	if c.Title != "Anti-squat over travel: 1 baseline vs 2 baseline" || !slices.Equal(c.Table(units.US).Header, []string{"travel [in, bump positive]", "anti-squat, 1 baseline [%]", "anti-squat, 2 baseline [%]"}) {
		t.Errorf("%q %q", c.Title, c.Table(units.US).Header)
	}
}

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
)

func TestReadoutsGiveAllValues(t *testing.T) {
	for n := 2; n <= 3; n++ {
		list := setups(t, names[:n]...)
		all := strings.Join(names[:n], " vs ")
		for _, c := range overTravels(list[0], list[1:]...) {
			got := c.Readout(0.02, units.US)
			var alone [][]string
			for _, s := range list {
				alone = append(alone, plotting.New(c.Key, s).Readout(0.02, units.US))
			}
			if len(got) != len(alone[0]) || got[0] != alone[0][0]+", "+all {
				t.Errorf("%s: %q", c.Key, got)
			}
			for k := range alone[0][1:] {
				// What all have at the start and at the end is not told twice.
				text, from := strings.Fields(got[1+k]), strings.Fields(alone[0][1+k])
				if text[0] != from[0] || !slices.Contains(text, "vs") {
					t.Errorf("%s: %q of %q", c.Key, got[1+k], alone)
				}
				for i := range alone {
					if to := strings.Fields(alone[i][1+k]); !strings.Contains(got[1+k], to[len(to)-1]) {
						t.Errorf("%s: %q lacks what is in %q", c.Key, got[1+k], alone[i][1+k])
					}
				}
			}
		}
		var squats []string
		for _, s := range list {
			squats = append(squats, units.Decimal(100*s.Result.Ride.AntiSquat, 1)+" %")
		}
		want := "anti-squat " + strings.Join(squats, " vs ")
		if got := chartOf(list, plotting.AntiSquatKey).Readout(0, units.US); !slices.Equal(got, []string{"ride height, " + all, want}) {
			t.Errorf("%q", got)
		}
		if got := chartOf(list, plotting.BarForceKey).Readout(-50*inch, units.US); !slices.Equal(got, []string{got[0], "the bars do not reach here"}) {
			t.Errorf("%q", got)
		}
		_, l := charttest.Draw(t, chartOf(list, plotting.BowKey), 460, 300, charttest.Light, chart.Marker{})
		px, _ := l.ToPixel(5000*lbf, 0)
		if got := l.Readout(px, l.Top+20, units.US); len(got) != 3 || got[0] != "5,000 lb push, "+all || !strings.Contains(got[1], "upper bows 0.0") || !strings.Contains(got[1], " in vs 0.0") {
			t.Errorf("%q", got)
		}
	}
}

// Where one launch is over, only the other one has values.
func TestLaunchesOfDifferentLength(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	for _, c := range overLaunch(plotting.Of(r, history(100, wave)), plotting.Of(other, history(300, wave))) {
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
	for _, c := range overLaunch(plotting.Of(r, history(100, wave)), plotting.Of(other, none)) {
		if got := charttest.Notes(c, units.US); !strings.Contains(got, "more bite: ") {
			t.Errorf("%s: %q", c.Key, got)
		}
		if got := c.Readout(0.05, units.US); !strings.HasPrefix(got[0], "baseline: 0.050 s") {
			t.Errorf("%s: %q", c.Key, got)
		}
		charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0.05))
	}
}

func TestCSVOfSeveralSetups(t *testing.T) {
	for n := 2; n <= 3; n++ {
		list := setups(t, names[:n]...)
		short := copied(list[1].Result)
		short.Travel = short.Travel[5:]
		list[1].Result = short
		for _, c := range compared(list) {
			columns := read(t, exported(t, chart.CSV, c, chart.Style{}, chart.Sheet{}))
			count := map[string]int{}
			for name := range columns {
				for _, setup := range names {
					if strings.Contains(name, ", "+setup+" [") {
						count[setup]++
					}
				}
			}
			common := 1 // the position
			if c.Key == plotting.BowKey {
				common = 0
			}
			each := count[names[0]]
			if len(count) != n || len(columns) != common+n*each {
				t.Errorf("%s: %d columns of %v", c.Key, len(columns), count)
			}
			for setup, k := range count {
				if k != each {
					t.Errorf("%s: %d columns of %s", c.Key, k, setup)
				}
			}
		}
		columns := read(t, exported(t, chart.CSV, chartOf(list, plotting.AntiSquatKey), chart.Style{}, chart.Sheet{}))
		travel := columns["travel [in, bump positive]"]
		if len(travel) != len(list[0].Result.Travel) {
			t.Fatalf("%d rows", len(travel))
		}
		for k, setup := range list {
			for i := range travel {
				text, at := columns["anti-squat, "+setup.Name+" [%]"][i], i
				if k == 1 {
					at -= 5
				}
				if at < 0 {
					if text != "" {
						t.Errorf("row %d: %s where the second setup has nothing", i, text)
					}
				} else if got := parse(t, text); math.Abs(got-100*setup.Result.Travel[at].AntiSquat) > 1e-6 {
					t.Fatalf("row %d of %s: %s", i, setup.Name, text)
				}
			}
		}
	}
}

// Notes that hold for some setups name them; those that hold for all do not.
func TestNotesOfSeveralSetups(t *testing.T) {
	r := analyze(t, saltgrass()) // hooked and hit are the same
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	other.Travel[4].Loads.Hit.Balanced = false
	got := charttest.Notes(overTravels(plotting.Of(r, nil), plotting.Of(other, nil))[0], units.US)
	if strings.Count(got, "Hooked and hit are the same") != 1 || !strings.Contains(got, "more bite: no force at 3.30 in droop") || strings.Contains(got, "baseline: ") {
		t.Error(got)
	}
	third := copied(other)
	third.Car.Setups[0].Name = "tame"
	got = charttest.Notes(plotting.BarForce(plotting.Of(r, nil), plotting.Of(other, nil), plotting.Of(third, nil)), units.US)
	if strings.Count(got, "Hooked and hit are the same") != 1 || strings.Count(got, "more bite, tame: no force at 3.30 in droop") != 1 || strings.Count(got, "o force at") != 1 {
		t.Error(got)
	}
	if got := charttest.Notes(plotting.AntiSquat(plotting.Of(r, nil), plotting.Of(third, nil), plotting.Of(other, nil)), units.US); got != "All setups draw the same lines here." {
		t.Error(got)
	}
	if got := charttest.Notes(overTravels(plotting.Of(r, nil), plotting.Of(copied(r), nil))[1], units.US); got != "Both setups draw the same lines here." {
		t.Error(got)
	}
}

// How the front wheels of all launches lift stands in one sentence.
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
		if got := charttest.Notes(plotting.LaunchTires(plotting.Of(r, a), plotting.Of(other, b)), units.US); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
		third := copied(r)
		third.Car.Setups[0].Name = "tame"
		c := history(100, func(q int, part float64) float64 { return 3 * wave(q, part) })
		want := x.want
		if want != "" {
			want = strings.TrimSuffix(want, ".") + " vs never."
		}
		if got := charttest.Notes(plotting.LaunchTires(plotting.Of(r, a), plotting.Of(other, b), plotting.Of(third, c)), units.US); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Where one of three launches is over, the others go on.
func TestThreeLaunchesOfDifferentLength(t *testing.T) {
	var list []plotting.Setup
	for i, steps := range []int{300, 100, 400} {
		r := copied(analyze(t, saltgrass()))
		r.Car.Setups[0].Name = names[i]
		list = append(list, plotting.Of(r, history(steps, wave)))
	}
	for _, c := range overLaunch(list[0], list[1:]...) {
		got := c.Readout(0.2, units.US)
		if got[0] != "0.200 s, baseline vs more bite vs tame" || !slices.Contains(got, "more bite: over at 0.099 s") || !strings.HasPrefix(got[1], "baseline: ") || !strings.HasPrefix(got[len(got)-1], "tame: ") {
			t.Errorf("%s: %q", c.Key, got)
		}
		of := map[int]bool{}
		at := c.Subject.Place(0.2)
		for _, d := range at.Dots {
			of[d.Setup] = true
		}
		if !at.Line || at.X != 0.2 || !of[0] || of[1] || !of[2] {
			t.Errorf("%s: %+v", c.Key, at)
		}
	}
}

// Two results of one setup are numbered.
func TestOneSetupTwice(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Travel[3].AntiSquat = 1.2
	c := overTravels(plotting.Of(r, nil), plotting.Of(other, nil))[1]
	if c.Heading() != "Anti-squat over travel: 1 baseline vs 2 baseline" || !slices.Equal(c.Table(units.US).Header, []string{"travel [in, bump positive]", "anti-squat, 1 baseline [%]", "anti-squat, 2 baseline [%]"}) {
		t.Errorf("%q %q", c.Heading(), c.Table(units.US).Header)
	}
}

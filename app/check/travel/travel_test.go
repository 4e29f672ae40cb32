package travel_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/check/travel"
	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// Loads stand beside what is allowed: the tube's strength over the safety factor.
func TestLoadsBesideTheirLimits(t *testing.T) {
	d := paneltest.Reference(t, travel.New)
	r := d.Study.Result()
	lower := &r.Bars[car.Lower]
	lb := func(n float64) string { return units.Group(fmt.Sprintf("%.0f", n/4.4482216152605)) + " lb" }
	peaks := d.Study.Launch().Peaks[launch.LowerRight] // the launch of this car asks more than the side view
	left := d.Study.Launch().Peaks[launch.LowerLeft]
	for row, want := range map[string]string{
		"Pin to pin":   "23.01 in",
		"Worst push":   fmt.Sprintf("%s, %.0f %%", lb(peaks.Push), 100*peaks.Push/(lower.Push.Strength/r.Car.Check.Factor)),
		"  where":      fmt.Sprintf("right, launch %.3f s", peaks.PushTime),
		"Push allowed": lb(lower.Push.Strength / r.Car.Check.Factor),
		"Pull allowed": lb(lower.Pull.Strength/r.Car.Check.Factor) + ", at weld",
		"Hit, here":    "push " + lb(math.Abs(r.Ride.Loads.Hit.Lower.Tension)),
		"Hooked, here": "push " + lb(math.Abs(r.Ride.Loads.Hooked.Lower.Tension)),
		"Worst pull":   fmt.Sprintf("%s, %.0f %%", lb(left.Pull), 100*left.Pull/(lower.Pull.Strength/r.Car.Check.Factor)),
	} {
		if got := d.Cell(row, "Lower, each"); got != want {
			t.Errorf("%s: %q, want %q", row, got, want)
		}
	}
}

// What a bar may pull at its welds and by its tube is said, and what pull is taken
// where the material has no as-welded yield.
func TestPullAtTheWeldIsSaid(t *testing.T) {
	d := paneltest.Reference(t, travel.New)
	said := func() {
		t.Helper()
		if want := strings.Join(words.PullLimits(d.Study.Result(), units.US), " "); !strings.Contains(d.Says(), want) {
			t.Errorf("it says %q, want %q in it", d.Says(), want)
		}
	}
	said()
	// 0.344711 in² at 60 ksi beside the welds, and at 75 ksi.
	for row, want := range map[string]string{"Tension yield, weld": "20,683 lb", "Tension yield, tube": "25,853 lb"} {
		if got := d.Cell(row, "Upper, failing"); got != want {
			t.Errorf("%s: %q, want %q", row, got, want)
		}
	}
	d.Doc.Apply("Material", func(c *car.Car) { c.LowerBar.Material = "1020 DOM" })
	d.Settle()
	said()
	if got := d.Cell("Tension yield, weld", "Lower, failing"); got != "as the tube" {
		t.Errorf("a material without an as-welded yield: %q", got)
	}
}

// Verdict and warnings are those of the analysis; a bar beyond its limit is warned
// of.
func TestCheckSaysWhatTheAnalysisFinds(t *testing.T) {
	d := paneltest.Reference(t, travel.New)
	over := func() bool {
		return slices.ContainsFunc(d.Study.Warnings(), func(w analysis.Warning) bool {
			return w.Kind == analysis.OverCapacity && w.Demand.Bar.Pair() == car.Lower
		})
	}
	said := func() {
		t.Helper()
		r := d.Study.Result()
		want := words.LoadVerdict(r.LoadVerdict(d.Study.Launch()), units.US) + "\n" + words.Basis(analysis.OnLaunch) + "\n"
		got := d.Says()
		if !strings.HasPrefix(got, want) {
			t.Errorf("it says %q, want %q first", got, want)
		}
		headline := r.LoadVerdict(d.Study.Launch()).Demand
		for _, w := range r.Warnings(d.Study.Launch()) {
			if said := strings.Contains(got, words.Warning(w, units.US)); said == (w.Demand == headline) {
				t.Errorf("it says %q; of %+v: %v", got, w, said)
			}
		}
	}
	d.Doc.Apply("Factor", func(c *car.Car) { c.Check.Factor = 1 })
	d.Settle()
	if over() {
		t.Fatal("the example is another one")
	}
	said()
	d.Doc.Apply("Factor", func(c *car.Car) { c.Check.Factor = 10 })
	d.Settle()
	if !over() {
		t.Error("nothing is warned of")
	}
	said()
}

// Preload that the side view knows nothing of takes a bar over its limit in the launch:
// the headline says so, and nothing better is said while that launch is not there yet.
func TestTheHeadlineKnowsTheLaunch(t *testing.T) {
	d := paneltest.Demo(t, travel.New)
	d.Settle()
	d.Doc.Apply("Turns", func(c *car.Car) { c.Setups[0].Turns.UpperRight = -10 })
	d.Panel.Refresh()
	if got := d.Says(); !strings.Contains(got, words.Basis(analysis.OnLaunchBefore)) {
		t.Errorf("before the launch is there it says %q", got)
	}
	d.Settle()
	v := d.Study.LoadVerdict()
	if v.Demand.Bar != launch.LowerRight || v.Demand.Source != analysis.FromLaunch || v.Demand.Share <= 1 || !v.Preload {
		t.Fatalf("the verdict is %+v", v)
	}
	got := d.Says()
	for _, want := range []string{words.LoadVerdict(v, units.US), words.Basis(analysis.OnLaunch)} {
		if !strings.Contains(got, want) {
			t.Errorf("it says %q, not %q", got, want)
		}
	}
	if got := d.Cell("Worst push", "Lower, each"); !strings.Contains(got, units.Share(v.Demand.Share)) {
		t.Errorf("the worst push is %q", got)
	}
}

// Every number is legible in the least width of a panel, with any of the
// example cars, at any travel, in any units.
func TestTheTablesFit(t *testing.T) {
	d := paneltest.Demo(t, travel.New)
	d.EveryTravel(d.WantTablesFit)
	for k := column.Kind(0); !strings.HasPrefix(k.String(), "Kind("); k++ {
		paneltest.WantRoom(t, "governed by", words.FailureCell(k), false, paneltest.ValueRoom)
	}
	for _, text := range []string{"push 234,567 N", "234,567 N, 1234 %", "234,567 N, at weld", "123.4, limit 123.4"} {
		paneltest.WantRoom(t, "value", text, false, paneltest.ValueRoom)
	}
}

func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := paneltest.Demo(t, travel.New)
	for _, system := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(system)
		for _, factor := range []float64{1, 10} {
			d.Doc.Apply("Factor", func(c *car.Car) { c.Check.Factor = factor })
			d.Settle()
			check(d.Says())
		}
	}
	if *letters < 1000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}

package travel

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/readout"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
)

// The builder's panel holds forces against what is allowed: with the factor,
// without the tube's strength.
func TestCheckHoldsLoadsAgainstLimits(t *testing.T) {
	d := paneltest.Reference(t, New)
	table, r := d.Panel.(*Panel).numbers, d.Study.Result()
	lower := &r.Bars[car.Lower]
	lb := func(n float64) string { return units.Group(fmt.Sprintf("%.0f", n/4.4482216152605)) + " lb" }
	worst := r.Worst[car.Lower][column.Push]
	for row, want := range map[int]string{
		rowLength:    "23.01 in",
		rowPush:      fmt.Sprintf("%s, %.0f %%", lb(worst.Force), 100*worst.Force/(lower.Push.Strength/r.Car.Check.Factor)),
		rowPushLimit: lb(lower.Push.Strength / r.Car.Check.Factor),
		rowPullLimit: lb(lower.Pull.Strength / r.Car.Check.Factor),
		rowHit:       "push " + lb(math.Abs(r.Ride.Loads.Hit.Lower.Tension)),
		rowHooked:    "push " + lb(math.Abs(r.Ride.Loads.Hooked.Lower.Tension)),
		rowPull:      "none",
	} {
		if got := table.Text(row, int(car.Lower)); got != want {
			t.Errorf("%s: %q, want %q", rowNames[row], got, want)
		}
	}
}

// Verdict and warnings are those of the analysis; a bar beyond its limit is warned
// of.
func TestCheckSaysWhatTheAnalysisFinds(t *testing.T) {
	d := paneltest.Reference(t, New)
	check := d.Panel.(*Panel)
	over := func() bool {
		return slices.ContainsFunc(d.Study.Result().Warnings, func(w analysis.Warning) bool { return w.Kind == analysis.OverCapacity && w.Pair == car.Lower })
	}
	said := func() {
		t.Helper()
		r := d.Study.Result()
		if got, want := check.verdict.Text(), words.LoadVerdict(r.LoadVerdict(), units.US); got != want {
			t.Errorf("verdict %q, want %q", got, want)
		}
		if got, want := check.warnings.Text(), words.List(words.Warnings(r.Warnings, units.US)); got != want {
			t.Errorf("warnings %q, want %q", got, want)
		}
	}
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

// Every number is legible in the least width of a panel, with any of the
// example cars, at any travel, in any units.
func TestTheTablesFit(t *testing.T) {
	d := paneltest.Demo(t, New)
	p := d.Panel.(*Panel)
	for _, name := range assets.CarNames() {
		d.Example(name)
		k := d.Doc.Car().Springs
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			for _, q := range []float64{-k.RearDroop, -0.0987, 0, 0.0333, k.RearBump} {
				d.Study.SetTravel(q)
				d.Study.SetFront(-q)
				d.Settle()
				paneltest.WantTable(t, name, p.numbers, rowNames[:])
				paneltest.WantTable(t, name, p.strengths, strengthNames[:])
			}
		}
	}
	for _, table := range []*readout.Table{p.numbers, p.strengths} {
		paneltest.WantRoom(t, "heading", table.Heading(0), true, paneltest.ValueRoom)
		paneltest.WantRoom(t, "heading", table.Heading(1), true, paneltest.ValueRoom)
	}
	for k := column.Kind(0); !strings.HasPrefix(k.String(), "Kind("); k++ {
		paneltest.WantRoom(t, "governed by", words.FailureCell(k), false, paneltest.ValueRoom)
	}
	for _, text := range []string{"push 234,567 N", "234,567 N, 1234 %", "123.4, limit 123.4"} {
		paneltest.WantRoom(t, "value", text, false, paneltest.ValueRoom)
	}
}

// The verdict is the analysis' own.
func TestVerdict(t *testing.T) {
	d := paneltest.Reference(t, New)
	if got, want := d.Panel.(*Panel).verdict.Text(), words.LoadVerdict(d.Study.Result().LoadVerdict(), units.US); got != want {
		t.Errorf("verdict %q, want %q", got, want)
	}
}

func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := paneltest.Demo(t, New)
	for _, system := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(system)
		for _, factor := range []float64{1, 10} {
			d.Doc.Apply("Factor", func(c *car.Car) { c.Check.Factor = factor })
			d.Settle()
			p := d.Panel.(*Panel)
			check(p.verdict.Text() + p.warnings.Text())
			for row := range rowNames {
				check(p.numbers.Text(row, 0) + p.numbers.Text(row, 1))
			}
			for row := range strengthNames {
				check(p.strengths.Text(row, 0) + p.strengths.Text(row, 1))
			}
		}
	}
	if *letters < 1000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}

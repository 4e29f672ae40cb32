package plotting_test

import (
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
)

// A limit that differs visibly has a line of its own, one that hardly differs
// stands in the label, and one that reads the same is not told twice.
func TestLimitsOfSeveralSetups(t *testing.T) {
	r := analyze(t, saltgrass())
	for by, want := range map[float64]struct {
		label  string
		second bool
	}{
		1.001: {"lower push limit 10,257 lb", false},
		1.01:  {"lower push limit 10,257 lb vs 10,360 lb", false},
		1.1:   {"lower push limit 10,257 lb", true},
	} {
		other := copied(r)
		other.Car.Setups[0].Name = "more bite"
		other.Bars[car.Lower].Push.Allowable *= by
		c := overTravels(plotting.Of(r, nil), plotting.Of(other, nil))[0]
		var own, second []chart.Rule
		for _, x := range c.Rules {
			switch {
			case x.Setup > 0:
				second = append(second, x)
			case strings.HasPrefix(x.Label(units.US), "lower push"):
				own = append(own, x)
			}
		}
		if len(own) != 1 || own[0].Label(units.US) != want.label || (len(second) > 0) != want.second {
			t.Errorf("%g: %d lines, label %q, %d of the second setup", by, len(own), own[0].Label(units.US), len(second))
		}
		if want.second && (second[0].Label(units.US) != "lower push limit 11,283 lb (more bite)" || second[0].At != -other.Bars[car.Lower].Push.Allowable || !c.Frame(&chart.Style{}).Y.Contains(second[0].At)) {
			t.Errorf("%+v %q", second[0], second[0].Label(units.US))
		}
	}
	// Of three, those at one place share a label, which names them.
	for _, x := range []struct {
		second, third float64
		want          []string
	}{
		{1, 1.001, []string{"lower push limit 10,257 lb"}},
		{1, 1.01, []string{"lower push limit 10,257 lb vs 10,257 lb vs 10,360 lb"}},
		{1, 1.1, []string{"lower push limit 10,257 lb (baseline, more bite)", "lower push limit 11,283 lb (tame)"}},
		{1.1, 1.01, []string{"lower push limit 10,257 lb vs 10,360 lb (baseline vs tame)", "lower push limit 11,283 lb (more bite)"}},
		{1.1, 1.11, []string{"lower push limit 10,257 lb", "lower push limit 11,283 lb vs 11,385 lb (more bite vs tame)"}},
	} {
		list := []plotting.Setup{plotting.Of(r, nil)}
		for i, by := range []float64{x.second, x.third} {
			other := copied(r)
			other.Car.Setups[0].Name = names[i+1]
			other.Bars[car.Lower].Push.Allowable *= by
			list = append(list, plotting.Of(other, nil))
		}
		var got []string
		for _, rule := range chartOf(list, plotting.BarForceKey).Rules {
			if label := rule.Label(units.US); strings.HasPrefix(label, "lower push") {
				got = append(got, label)
			}
		}
		if !slices.Equal(got, x.want) {
			t.Errorf("%g, %g: %q, want %q", x.second, x.third, got, x.want)
		}
	}
	if c := plotting.Bow(plotting.Of(r, nil)); c.Points[len(c.Points)-1].Label(units.US) != "lower worst "+units.US.Format(units.Force, r.Worst[car.Lower][column.Push].Force) {
		t.Error(c.Points)
	}
}

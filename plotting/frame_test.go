package plotting_test

import (
	"testing"

	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
)

func TestFrameHoldsStill(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.BarForce(plotting.Of(r, nil))
	old := c.Frame(&chart.Style{})
	half := (old.Y.Max - old.Y.Min) / 2
	for _, x := range []struct {
		name  string
		sight chart.Span
		stays bool
	}{
		{"a little smaller", chart.Between(old.Y.Min*0.9, old.Y.Max*0.9), true},
		{"to the very ends", old.Y, true},
		{"just over half", chart.Between(old.Y.Min, old.Y.Min+1.02*half), true},
		{"under half", chart.Between(old.Y.Min, old.Y.Min+0.98*half), false},
		{"beyond the top", chart.Between(old.Y.Min*0.9, old.Y.Max*1.01), false},
		{"beyond the bottom", chart.Between(old.Y.Min*1.01, old.Y.Max*0.9), false},
	} {
		moved := plotting.BarForce(plotting.Of(r, nil))
		moved.Y.Sight = x.sight
		got := moved.Frame(&chart.Style{Frame: old})
		if (got.Y == old.Y) != x.stays || got.X != old.X {
			t.Errorf("%s: %v became %v", x.name, old.Y, got.Y)
		}
		if !got.Y.Contains(x.sight.Min) || !got.Y.Contains(x.sight.Max) {
			t.Errorf("%s: %v is not in %v", x.name, x.sight, got.Y)
		}
	}
	if got := c.Frame(&chart.Style{Frame: chart.Frame{Key: c.Key, Units: units.SI, X: old.X, Y: chart.Between(-1e9, 1e9)}}); got != old {
		t.Error("a frame in other units was kept")
	}
	if got := c.Frame(&chart.Style{Frame: chart.Frame{Key: "other", X: old.X, Y: chart.Between(old.Y.Min*1.1, old.Y.Max*1.1)}}); got != old {
		t.Error("a frame of another chart was kept")
	}
}

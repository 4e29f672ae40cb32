package plotting_test

import (
	"math"
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestAntiSquatLineIsTheResult(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.AntiSquat(plotting.Of(r, nil))
	l := charttest.Line(t, c, "anti-squat")
	if len(l.Runs) != 1 || len(l.Runs[0]) != len(r.Travel) {
		t.Fatalf("%d runs", len(l.Runs))
	}
	for i, at := range l.Runs[0] {
		if at.X != r.Travel[i].Pose.Travel || at.Y != r.Travel[i].AntiSquat {
			t.Fatalf("point %d is %v", i, at)
		}
	}
	band := c.Regions[0]
	if band.Y != chart.Between(1, 1.6) || band.Name(units.US) != "target 100 to 160 %" {
		t.Errorf("target %v %q", band.Y, band.Name(units.US))
	}
	if hundred := charttest.Rule(c, "100 %"); hundred == nil || hundred.At != 1 {
		t.Error("no 100 % line")
	}
	// The reference car has 154.6 % at ride height.
	if got := c.Readout(0, units.US); len(got) != 2 || got[1] != "anti-squat 154.6 %" {
		t.Errorf("%q", got)
	}
}

func TestAntiSquatBreaks(t *testing.T) {
	q := copied(analyze(t, saltgrass()))
	q.Travel[5].HasAntiSquat, q.Travel[5].AntiSquat = false, 0
	// Through the upright between 20 and 21: steeper and steeper, then from
	// the other side.
	for i, value := range map[int]float64{19: 9, 20: 40, 21: -35, 22: -8} {
		q.Travel[i].AntiSquat = value
	}
	c := plotting.AntiSquat(plotting.Of(q, nil))
	l := charttest.Line(t, c, "anti-squat")
	if len(l.Runs) != 3 || len(l.Runs[0]) != 5 || len(l.Runs[1]) != 15 || len(l.Runs[2]) != len(q.Travel)-21 {
		t.Fatalf("%d runs", len(l.Runs))
	}
	if f := c.Frame(&chart.Style{}); f.Y.Min < -4 || f.Y.Max > 7 {
		t.Errorf("frame %v", f.Y)
	}
	got := charttest.Notes(c, units.US)
	for _, want := range []string{"No value at 3.13 in droop: the line of action stands upright.", "Off the chart at ", "as far as 4,000 %."} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in %q", want, got)
		}
	}
}

// Passing level, anti-squat changes sign without a break.
func TestAntiSquatDoesNotBreakAtZero(t *testing.T) {
	c := saltgrass()
	c.Chassis.Upper[2], c.Chassis.Lower[1] = in(22.5, 22.5), in(25.5, 11)
	r := analyze(t, c)
	first, last := r.Travel[0].AntiSquat, r.Travel[len(r.Travel)-1].AntiSquat
	if first*last >= 0 {
		t.Fatalf("from %g to %g", first, last)
	}
	if l := charttest.Line(t, plotting.AntiSquat(plotting.Of(r, nil)), "anti-squat"); len(l.Runs) != 1 {
		t.Errorf("%d runs", len(l.Runs))
	}
}

func TestCenterPathIsTheResult(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.CenterPath(plotting.Of(r, nil))
	l := charttest.Line(t, c, "path")
	if len(l.Runs) != 1 || len(l.Runs[0]) != len(r.Travel) {
		t.Fatalf("%d runs", len(l.Runs))
	}
	for i, at := range l.Runs[0] {
		if at.X != r.Travel[i].InstantCenter.X || at.Y != r.Travel[i].InstantCenter.Y {
			t.Fatalf("point %d is %v", i, at)
		}
	}
	target := c.Regions[0]
	near := func(a, b float64) bool { return math.Abs(a-b) < 1e-12 }
	if !near(target.X.Min, 40*inch) || !near(target.X.Max, 60*inch) || !near(target.Y.Min, 6*inch) || !near(target.Y.Max, 14*inch) {
		t.Errorf("target %v %v", target.X, target.Y)
	}
	marks := map[string]chart.Point{}
	for _, m := range c.Points {
		marks[m.Name+m.Label(units.US)] = m
	}
	for name, at := range map[string]r2.Vec{"droop": r.Travel[0].InstantCenter, "bump": r.Travel[len(r.Travel)-1].InstantCenter, "ride height": r.Ride.InstantCenter} {
		if m, ok := marks[name]; !ok || m.At.X != at.X || m.At.Y != at.Y {
			t.Errorf("%s marked at %v, it is at %v", name, m.At, at)
		}
	}
	// The reference car's instant center is at (41.25, 11.84) in.
	want := []string{"ride height", "instant center 41.25 in ahead of the rear contact", "11.84 in above the ground"}
	if got := c.Readout(0, units.US); strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%q", got)
	}
}

// The 100 % line holds the instant centers whose anti-squat is 1.
func TestWholeLine(t *testing.T) {
	r := analyze(t, saltgrass())
	l := charttest.Line(t, plotting.CenterPath(plotting.Of(r, nil)), "100 % anti-squat").Runs[0]
	slope := (l[1].Y - l[0].Y) / (l[1].X - l[0].X)
	// Anti-squat is slope times wheelbase over CG height: 105 in and 19.5 in.
	if got := slope * 105 / 19.5; math.Abs(got-1) > 1e-12 || math.Abs(l[0].Y-slope*l[0].X) > 1e-9 {
		t.Errorf("anti-squat %g", got)
	}
}

// Bars parallel at ride height cross ahead in droop and behind in bump: the
// path runs off to infinity and comes back from the other side.
func TestCenterPathBreaksAtParallel(t *testing.T) {
	car := saltgrass()
	car.Chassis.Upper[2], car.Chassis.Lower[1] = in(22.5, 22.5), in(25.5, 11)
	r := analyze(t, car)
	c := plotting.CenterPath(plotting.Of(r, nil))
	l := charttest.Line(t, c, "path")
	if len(l.Runs) != 2 {
		t.Fatalf("%d runs", len(l.Runs))
	}
	if l.Runs[0][0].X*l.Runs[1][0].X >= 0 {
		t.Error("both runs are on one side")
	}
	f := c.Frame(&chart.Style{})
	if f.X.Min < -0.7*105*inch || f.X.Max > 2.3*105*inch {
		t.Errorf("frame %v", f.X)
	}
	got := charttest.Notes(c, units.US)
	if !strings.Contains(got, "None at ride height: the bars are parallel.") || !strings.Contains(got, "Off the chart at ") {
		t.Error(got)
	}
	if got := c.Readout(0, units.US); got[1] != "no instant center: the bars are parallel" {
		t.Errorf("%q", got)
	}
	if row := c.Table(units.US).Rows[23]; row[0].Value != 0 || row[1].Given || row[2].Given {
		t.Errorf("%v", row)
	}
}

// A path that passes parallel between two stations has no point without a
// value, and must break all the same.
func TestCenterPathBreaksBetweenStations(t *testing.T) {
	car := saltgrass()
	car.Chassis.Upper[2], car.Chassis.Lower[1] = in(22.5, 22.45), in(25.5, 11)
	r := analyze(t, car)
	for i := range r.Travel {
		if !r.Travel[i].HasInstantCenter {
			t.Fatal("parallel at a station")
		}
	}
	if l := charttest.Line(t, plotting.CenterPath(plotting.Of(r, nil)), "path"); len(l.Runs) != 2 {
		t.Errorf("%d runs", len(l.Runs))
	}
}

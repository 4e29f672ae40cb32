package plotting_test

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/stock"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/palette"

	"pgregory.net/rapid"
)

func TestForceLinesAreTheResult(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.BarForce(plotting.Of(r, nil))
	for name, force := range map[string]func(*analysis.Station) float64{
		"upper hit":    func(s *analysis.Station) float64 { return s.Loads.Hit.Upper.Tension },
		"upper hooked": func(s *analysis.Station) float64 { return s.Loads.Hooked.Upper.Tension },
		"lower hit":    func(s *analysis.Station) float64 { return s.Loads.Hit.Lower.Tension },
		"lower hooked": func(s *analysis.Station) float64 { return s.Loads.Hooked.Lower.Tension },
	} {
		l := charttest.Line(t, c, name)
		if len(l.Runs) != 1 || len(l.Runs[0]) != len(r.Travel) {
			t.Fatalf("%s: %d runs", name, len(l.Runs))
		}
		if (l.Dash == chart.Dashed) != strings.HasSuffix(name, "hooked") {
			t.Errorf("%s: dash %v", name, l.Dash)
		}
		for i := range r.Travel {
			if at := l.Runs[0][i]; at.X != r.Travel[i].Pose.Travel || at.Y != force(&r.Travel[i]) {
				t.Fatalf("%s: point %d is %v", name, i, at)
			}
		}
	}
}

// A 1.25 x 0.095 in tube has π·0.095·1.155 = 0.34471 in²; at 75 ksi and a
// factor of 2 it may pull 12,927 lb.
func TestForceLimits(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.BarForce(plotting.Of(r, nil))
	pull := charttest.Rule(c, "upper pull limit 12,927 lb")
	if pull == nil || math.Abs(pull.At/lbf-12927) > 0.5 {
		t.Errorf("upper pull limit: %+v", pull)
	}
	push := charttest.Rule(c, "lower push limit")
	if push == nil || push.At != -r.Bars[car.Lower].Push.Allowable {
		t.Errorf("lower push limit: %+v", push)
	}
	if frame := c.Frame(&chart.Style{}); !frame.Y.Contains(push.At) {
		t.Errorf("lower push limit is out of sight in %v", frame.Y)
	}
	for _, absent := range []string{"upper push", "lower pull"} {
		if charttest.Rule(c, absent) != nil {
			t.Errorf("no bar comes up against the %s limit, yet it is drawn", absent)
		}
	}
}

// With 60 ksi beside its welds the same tube may pull 10,341 lb there, and the label
// says where; what it may push stays.
func TestForceLimitAtTheWeld(t *testing.T) {
	welded := stock.Library{Materials: slices.Clone(tubes.Materials)}
	welded.Materials[0].WeldedYield = 60 * ksi
	r, err := analysis.Run(t.Context(), saltgrass(), welded, analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	c := plotting.BarForce(plotting.Of(r, nil))
	if pull := charttest.Rule(c, "upper pull limit at weld 10,341 lb"); pull == nil || math.Abs(pull.At/lbf-10341) > 0.5 {
		t.Errorf("upper pull limit: %+v", pull)
	}
	if charttest.Rule(c, "lower push limit 10,257 lb") == nil {
		t.Error("the lower push limit is another one")
	}
}

func TestForceLimitOfEqualTubesIsOneLine(t *testing.T) {
	q := copied(analyze(t, saltgrass()))
	q.Worst[car.Lower][column.Pull].Force = 1
	c := plotting.BarForce(plotting.Of(q, nil))
	if charttest.Rule(c, "pull limit of all bars 12,927 lb") == nil || charttest.Rule(c, "upper pull") != nil || charttest.Rule(c, "lower pull") != nil {
		t.Error("equal pull limits are not one line")
	}
}

func TestForceLinesBreakWhereTheBarsCannotHoldTheAxle(t *testing.T) {
	q := copied(analyze(t, saltgrass()))
	q.Travel[10].Loads.Hit.Balanced = false
	q.Travel[11].Loads.Hit.Balanced = false
	c := plotting.BarForce(plotting.Of(q, nil))
	l := charttest.Line(t, c, "lower hit")
	if len(l.Runs) != 2 || len(l.Runs[0]) != 10 || len(l.Runs[1]) != len(q.Travel)-12 {
		t.Fatalf("%d runs", len(l.Runs))
	}
	if hooked := charttest.Line(t, c, "lower hooked"); len(hooked.Runs) != 1 {
		t.Error("the other case broke too")
	}
	// 23 steps over 4 in of droop: stations 10 and 11 are at 13 and 12 steps.
	if got := charttest.Notes(c, units.US); !strings.Contains(got, "No force at 2.26 to 2.09 in droop: the bars cannot hold the axle there.") {
		t.Error(got)
	}
	if got := c.Table(units.US).Rows[10]; got[1].Given != true || got[2].Given != false {
		t.Errorf("row of the break: %v", got)
	}
}

func TestForcesWithoutAnyValueStillShowTheLimits(t *testing.T) {
	q := copied(analyze(t, saltgrass()))
	for i := range q.Travel {
		q.Travel[i].Loads.Hit.Balanced, q.Travel[i].Loads.Hooked.Balanced = false, false
	}
	c := plotting.BarForce(plotting.Of(q, nil))
	if f := c.Frame(&chart.Style{}); !f.Y.Contains(-q.Bars[car.Lower].Push.Allowable) || !f.Y.Contains(q.Bars[car.Upper].Pull.Allowable) {
		t.Errorf("frame %v", f.Y)
	}
}

func TestHugeForcesDoNotFlattenTheChart(t *testing.T) {
	q := copied(analyze(t, saltgrass()))
	last := len(q.Travel) - 1
	q.Travel[last].Loads.Hit.Upper.Tension = 1e9
	c := plotting.BarForce(plotting.Of(q, nil))
	if f := c.Frame(&chart.Style{}); f.Y.Max > 4*q.Bars[car.Upper].Pull.Allowable {
		t.Errorf("frame %v", f.Y)
	}
	if got := charttest.Notes(c, units.US); !strings.Contains(got, "Off the chart at 3.00 in bump: up to 224,808,943 lb.") {
		t.Error(got)
	}
}

// The lower bars' push limit is in sight unless it is over five times the
// largest force; its label names it then.
func TestLowerPushLimitIsAlwaysShown(t *testing.T) {
	lines, edges := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := results.Draw(t, "result").Result
		c := plotting.BarForce(plotting.Of(r, nil))
		push := charttest.Rule(c, "lower push limit")
		if push == nil {
			push = charttest.Rule(c, "push limit of all bars")
		}
		if push == nil || !push.Edge {
			t.Fatal("no lower push limit")
		}
		limit, most := r.Bars[car.Lower].Push.Allowable, 0.0
		for i := range r.Travel {
			for _, l := range []float64{r.Travel[i].Loads.Hit.Upper.Tension, r.Travel[i].Loads.Hit.Lower.Tension, r.Travel[i].Loads.Hooked.Upper.Tension, r.Travel[i].Loads.Hooked.Lower.Tension} {
				most = math.Max(most, math.Abs(l))
			}
		}
		frame := c.Frame(&chart.Style{})
		if limit < 4.99*most {
			lines++
			if !frame.Y.Contains(-limit) {
				t.Fatalf("limit %g of forces to %g is out of sight in %v", limit, most, frame.Y)
			}
		} else {
			edges++
		}
	})
	if lines == 0 || edges == 0 {
		t.Errorf("%d limits near, %d far: one kind was never seen", lines, edges)
	}
}

func TestForceReadout(t *testing.T) {
	r := copied(analyze(t, saltgrass()))
	use, _ := r.Use(car.Lower, analysis.Hit, &r.Ride)
	got := plotting.BarForce(plotting.Of(r, nil)).Readout(0, units.US)
	want := "lower hit " + units.Decimal(use.Force/lbf, 0) + " lb push — " + units.Decimal(100*use.Force/r.Bars[car.Lower].Push.Allowable, 0) + " %"
	if len(got) != 5 || got[0] != "ride height" || !slices.Contains(got, want) {
		t.Errorf("got %q, want a line %q", got, want)
	}
	if got := plotting.BarForce(plotting.Of(r, nil)).Readout(-50*inch, units.US); len(got) != 2 || got[1] != "the bars do not reach here" {
		t.Errorf("far out: %q", got)
	}
}

func TestForcesSayWhenTheCasesCoincide(t *testing.T) {
	weak, strong := saltgrass(), saltgrass()
	strong.Drive.Torque *= 2
	const same = "Hooked and hit are the same here"
	if !strings.Contains(charttest.Notes(plotting.BarForce(plotting.Of(analyze(t, weak), nil)), units.US), same) {
		t.Error("780 lb-ft cannot slip these tires, and nothing says so")
	}
	if strings.Contains(charttest.Notes(plotting.BarForce(plotting.Of(analyze(t, strong), nil)), units.US), same) {
		t.Error("cases that differ are called the same")
	}
}

// Color says push or pull and nothing else; pattern and width tell the lines of one
// half apart, whichever bars come to lie in it.
func TestColorSaysPushOrPull(t *testing.T) {
	l, r := launched(t, saltgrass())
	s := plotting.Of(r, l)
	for _, p := range []palette.Palette{palette.Light, palette.Dark} {
		for _, c := range []*chart.Chart{plotting.BarForce(s), plotting.LaunchBars(s)} {
			looks := map[[2]float64]string{}
			for _, line := range c.Lines {
				if line.Ink(&p) != p.Pull || line.Below(&p) != p.Push {
					t.Errorf("%s: %q has other colors", c.Key, line.Name)
				}
				look := [2]float64{float64(line.Dash), line.Width}
				if of, taken := looks[look]; taken {
					t.Errorf("%s: %q looks like %q", c.Key, line.Name, of)
				}
				looks[look] = line.Name
			}
			for _, limit := range c.Rules[1:] {
				if want := map[bool]color.RGBA{true: p.Push, false: p.Pull}[limit.At < 0]; limit.Ink(&p) != want {
					t.Errorf("%s: %q has another color", c.Key, limit.Label(units.US))
				}
			}
		}
	}
}

// A line that goes from pull to push changes its color just at zero.
func TestALineChangesColorAtZero(t *testing.T) {
	l := history(100, func(quantity int, part float64) float64 { return (0.5 - part) * 1e4 * float64(quantity+1) })
	img, layout := charttest.Draw(t, plotting.LaunchBars(plotting.Of(analyze(t, saltgrass()), l)), 700, 400, charttest.Light, chart.Marker{})
	p := charttest.Light.Palette
	for i := range 100 {
		force := l.Tension[3][i]
		px, py := layout.ToPixel(l.Time[i], force)
		_, zero := layout.ToPixel(0, 0)
		if !layout.Contains(px, py) || math.Abs(py-zero) < 6 {
			continue
		}
		want, other := p.Pull, p.Push
		if force < 0 {
			want, other = other, want
		}
		if !charttest.Near(img, px, py, want) || charttest.Near(img, px, py, other) {
			t.Errorf("%g N at %g s has another color", force, l.Time[i])
		}
	}
}

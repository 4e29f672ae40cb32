package plotting_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
)

// A bow grows as e0/(1 − P/Pe) with Pe = π²EI/L²: Case, Chilver & Ross,
// Strength of Materials and Structures, p. 439.
func TestBowCurves(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.Bow(plotting.Of(r, nil))
	const e = 29000 * ksi
	od, id := 1.25*inch, 1.06*inch
	second := math.Pi / 64 * (math.Pow(od, 4) - math.Pow(id, 4))
	for name, length := range map[string]float64{
		"upper": math.Hypot(20, 5.5) * inch, // (2.5, 22.5) to (22.5, 17) in
		"lower": math.Hypot(23, 0.5) * inch, // (2.5, 11) to (25.5, 11.5) in
	} {
		euler := math.Pi * math.Pi * e * second / (length * length)
		points := charttest.Line(t, c, name).Runs[0]
		for _, at := range points {
			if want := 0.001 * length / (1 - at.X/euler); math.Abs(at.Y/want-1) > 1e-9 {
				t.Fatalf("%s: %g m under %g N, want %g", name, at.Y, at.X, want)
			}
		}
		p := car.Upper
		if name == "lower" {
			p = car.Lower
		}
		if first, last := points[0], points[len(points)-1]; first.X != 0 || last.X != r.Bars[p].FirstYield {
			t.Errorf("%s runs from %g to %g N", name, first.X, last.X)
		}
	}
}

func TestBowMarks(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.Bow(plotting.Of(r, nil))
	for p, name := range [...]string{car.Upper: "upper", car.Lower: "lower"} {
		if limit := charttest.Rule(c, name+" limit"); limit == nil || !limit.Upright || limit.At != r.Bars[p].Push.Allowable {
			t.Errorf("%s: allowable push %+v", name, limit)
		}
	}
	var worst []chart.Point
	for _, m := range c.Points {
		if m.Name == "worst push" {
			worst = append(worst, m)
		}
	}
	// Only the lower bars push.
	if len(worst) != 1 || worst[0].At.X != r.Worst[car.Lower][column.Push].Force || worst[0].Shape != chart.Disc {
		t.Errorf("%+v", worst)
	}
}

// Where the launch pushes a bar harder than the side view does, that is the worst push, and
// the chart over travel says so.
func TestTheWorstPushIsThatOfTheLaunch(t *testing.T) {
	c := saltgrass()
	c.Setups[0].Turns.UpperRight = -10
	l, r := launched(t, c)
	most := math.Max(l.Peaks[launch.LowerLeft].Push, l.Peaks[launch.LowerRight].Push)
	if most <= r.Worst[car.Lower][column.Push].Force {
		t.Fatal("the example is another one")
	}
	over := plotting.Bow(plotting.Of(r, l))
	if rule := charttest.Rule(over, "lower worst"); rule == nil || rule.At != most {
		marked := slices.ContainsFunc(over.Points, func(p chart.Point) bool { return p.Name == "worst push" && p.At.X == most })
		if !marked {
			t.Errorf("the worst push of %.0f N is not marked", most)
		}
	}
	notes := charttest.Notes(plotting.BarForce(plotting.Of(r, l)), units.US)
	if want := units.US.Format(units.Force, most); !strings.Contains(notes, want) || strings.Contains(charttest.Notes(plotting.BarForce(plotting.Of(r, nil)), units.US), want) {
		t.Errorf("the notes over travel are %q", notes)
	}
}

func TestWorstPushPastFirstYieldIsSaid(t *testing.T) {
	for share, drawn := range map[float64]bool{1.2: true, 3: false} {
		q := copied(analyze(t, saltgrass()))
		yield := q.Bars[car.Lower].FirstYield
		q.Worst[car.Lower][column.Push].Force = share * yield
		c := plotting.Bow(plotting.Of(q, nil))
		if got := charttest.Notes(c, units.US); !strings.HasPrefix(got, "The worst push on the lower bars, ") || !strings.Contains(got, "past first yield") {
			t.Errorf("%g: %q", share, got)
		}
		line := charttest.Rule(c, "lower worst")
		if (line != nil) != drawn || drawn && !c.Frame(&chart.Style{}).X.Contains(line.At) {
			t.Errorf("%g: line %+v", share, line)
		}
	}
}

func TestStraightBarsDoNotBow(t *testing.T) {
	straight := saltgrass()
	straight.Check.Crookedness = 0
	c := plotting.Bow(plotting.Of(analyze(t, straight), nil))
	for _, l := range c.Lines {
		for _, at := range l.Runs[0] {
			if at.Y != 0 {
				t.Fatalf("%s bows %g", l.Name, at.Y)
			}
		}
	}
	if got := charttest.Notes(c, units.US); got != "Nothing bows, since no initial bow is given." {
		t.Error(got)
	}
}

func TestBowReadout(t *testing.T) {
	r := analyze(t, saltgrass())
	c := plotting.Bow(plotting.Of(r, nil))
	// Pe is 38,500 and 31,300 lb: 0.02074/(1 + 3319/38500) and 0.02301/(1 − 5933/31300) in.
	got := c.Readout(0, units.US)
	if len(got) != 3 || !strings.HasPrefix(got[1], "upper hit ") || !strings.Contains(got[1], " lb pull — bow 0.019 in") || !strings.Contains(got[2], " lb push — bow 0.028 in") {
		t.Errorf("%q", got)
	}
	// A worst push of 1.4 times first yield brings the Euler load into sight.
	q := copied(r)
	q.Worst[car.Lower][column.Push].Force = 1.4 * r.Bars[car.Lower].FirstYield
	_, l := charttest.Draw(t, plotting.Bow(plotting.Of(q, nil)), 700, 400, charttest.Light, chart.Marker{})
	bends := func(push float64) []string {
		px, _ := l.ToPixel(push, 0)
		return l.Readout(px, l.Bottom-5, units.US)
	}
	// Without load a bar 23.005 in long has its initial bow, a thousandth.
	if got := bends(0); len(got) != 3 || got[0] != "0 lb push" || got[2] != "lower bows 0.023 in" {
		t.Errorf("%q", got)
	}
	past := 1.05 * r.Bars[car.Lower].FirstYield
	if got := bends(past); !strings.HasSuffix(got[2], ", past first yield") {
		t.Errorf("%q", got)
	}
	// Pe is 31,300 lb.
	if got := bends(31400 * lbf); got[2] != "lower buckles" {
		t.Errorf("%q", got)
	}
}

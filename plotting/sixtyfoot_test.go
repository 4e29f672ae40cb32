package plotting_test

import (
	"fmt"
	"image"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// withRuns is the reference car with a setup for each list of runs.
func withRuns(runs ...[]car.Run) *car.Car {
	c := saltgrass()
	c.Setups = nil
	for i, list := range runs {
		name := []string{"baseline", "more bite", "cold night"}[i%3]
		if i > 2 {
			name += fmt.Sprint(" ", i)
		}
		c.Setups = append(c.Setups, car.Setup{Name: name, Runs: list})
	}
	return c
}

func run(squat, time float64) car.Run {
	return car.Run{Date: "2031-05-17", Track: "Saltgrass", AntiSquat: squat, SixtyFoot: time}
}

func TestEveryRunIsAMark(t *testing.T) {
	c := plotting.SixtyFoot(withRuns(
		[]car.Run{run(1.2, 1.40), run(1.22, 1.41)},
		[]car.Run{run(1.5, 1.38), run(0, 1.39), run(1.4, 0)},
		[]car.Run{run(-0.2, 1.45)},
	), 1)
	type point struct {
		name  string
		at    plotter.XY
		large bool
	}
	var got []point
	looks := map[string]string{}
	for _, m := range c.Points {
		got = append(got, point{m.Name, m.At, m.Size > 1})
		looks[m.Name] = fmt.Sprint(m.Shape, m.Ink(&palette.Light))
	}
	want := []point{
		{"baseline", plotter.XY{X: 1.2, Y: 1.40}, false}, {"baseline", plotter.XY{X: 1.22, Y: 1.41}, false},
		{"cold night", plotter.XY{X: -0.2, Y: 1.45}, false}, {"more bite (current)", plotter.XY{X: 1.5, Y: 1.38}, true},
	}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if len(looks) != 3 || looks["baseline"] == looks["cold night"] || looks["baseline"] == looks["more bite (current)"] {
		t.Errorf("%v", looks)
	}
	wantLegend(t, c, "trend, a hint", "baseline", "cold night", "more bite (current)")
	if got := charttest.Notes(c, units.US); !strings.HasSuffix(got, "Not drawn: 1 run without a known anti-squat, 1 run without a 60-ft time.") {
		t.Error(got)
	}
	f := c.Frame(&chart.Style{})
	for _, m := range c.Points {
		if !f.X.Contains(m.At.X) || !f.Y.Contains(m.At.Y) {
			t.Errorf("%v is out of sight", m.At)
		}
	}
	if c.Key != plotting.SixtyFootKey || c.Subtitle != "Saltgrass No. 7 — run log" {
		t.Errorf("%q %q", c.Key, c.Subtitle)
	}
}

func TestALogWithoutTimesIsBlank(t *testing.T) {
	for _, c := range []struct {
		runs []car.Run
		want bool
	}{{nil, false}, {[]car.Run{{Date: "2031-05-17", AntiSquat: 1.2}}, false}, {[]car.Run{{}, {SixtyFoot: 1.4}}, true}} {
		if got := plotting.SixtyFoot(withRuns(nil, c.runs), 0).Blank; got == c.want {
			t.Errorf("%v: %v", c.runs, got)
		}
	}
}

// Shapes alone tell the setups apart, and so do colors.
func TestLooksDiffer(t *testing.T) {
	var lists [][]car.Run
	for i := range 6 {
		lists = append(lists, []car.Run{run(1+0.01*float64(i), 1.4)})
	}
	c := plotting.SixtyFoot(withRuns(lists...), -1)
	if len(c.Points) != 6 {
		t.Fatalf("%d points", len(c.Points))
	}
	for _, p := range []palette.Palette{palette.Light, palette.Dark} {
		for i, a := range c.Points {
			for _, b := range c.Points[:i] {
				if a.Shape == b.Shape || charttest.Like(a.Ink(&p), b.Ink(&p), 40) {
					t.Errorf("%q and %q look alike", a.Name, b.Name)
				}
			}
		}
	}
}

// Beyond those that can be told apart, setups are other ones; the current one
// never is.
func TestManySetups(t *testing.T) {
	var lists [][]car.Run
	for i := range 30 {
		list := []car.Run{run(1+0.01*float64(i), 1.4)}
		if i >= 20 && i < 25 {
			list = append(list, run(1+0.01*float64(i), 1.41))
		}
		lists = append(lists, list)
	}
	c := plotting.SixtyFoot(withRuns(lists...), 7)
	wantLegend(t, c, "trend, a hint", "other setups", "cold night 20", "baseline 21", "more bite 22", "cold night 23", "baseline 24", "more bite 7 (current)")
	if len(c.Points) != 35 {
		t.Errorf("%d marks", len(c.Points))
	}
}

// line returns the trend of a chart, intercept and slope of its straight line.
func line(c *chart.Chart) (intercept, slope float64) {
	ends := c.Lines[0].Runs[0]
	slope = (ends[1].Y - ends[0].Y) / (ends[1].X - ends[0].X)
	return ends[0].Y - slope*ends[0].X, slope
}

// The least-squares line of (1, 1), (2, 2), (3, 2) is y = 2/3 + x/2; around it
// are −1/6, 1/3 and −1/6, their squares 1/6 in sum, so the times scatter by
// √(1/6) over one degree of freedom.
func TestTrendOfThreeRuns(t *testing.T) {
	c := plotting.SixtyFoot(withRuns([]car.Run{run(1, 1), run(2, 2), run(3, 2)}), 0)
	if intercept, slope := line(c); math.Abs(intercept-2./3) > 1e-12 || math.Abs(slope-0.5) > 1e-12 {
		t.Errorf("%g + %g x", intercept, slope)
	}
	if got := c.Readout(0, units.US); !slices.Contains(got, "around the trend the times scatter by 0.408 s") {
		t.Errorf("%q", got)
	}
}

// Twelve runs, half of them at each of two anti-squats 1 apart, times e above and
// below a line that falls by b: they scatter by e·√(12/10), the slope by that over
// √(12·0.5²), which is e·√0.4. A slope of less than twice that may be chance.
func TestSlopesThatMayBeChance(t *testing.T) {
	const b = 0.06
	for factor, sure := range map[float64]bool{0.99: true, 1.01: false} {
		e := factor * b / (2 * math.Sqrt(0.4))
		var runs []car.Run
		for i := range 12 {
			squat := float64(1 + i%2)
			runs = append(runs, run(squat, 1.4-b*squat+e*float64(1-2*(i/2%2))))
		}
		c := plotting.SixtyFoot(withRuns(runs), 0)
		if _, slope := line(c); math.Abs(slope+b) > 1e-12 {
			t.Fatalf("slope %g", slope)
		}
		if got := charttest.Notes(c, units.US); strings.Contains(got, "scatter too much") == sure {
			t.Errorf("%g: %s", factor, got)
		}
	}
}

// The line goes through the mean of the runs, and no other line comes nearer
// to them.
func TestTrendIsTheNearestLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []plotter.XY
		for range rapid.IntRange(3, 30).Draw(t, "runs") {
			points = append(points, plotter.XY{X: rapid.Float64Range(0.3, 3).Draw(t, "squat"), Y: rapid.Float64Range(0.9, 2).Draw(t, "time")})
		}
		points[1].X = points[0].X + 0.1
		var runs []car.Run
		for _, at := range points {
			runs = append(runs, run(at.X, at.Y))
		}
		intercept, slope := line(plotting.SixtyFoot(withRuns(runs), 0))
		off := func(a, b float64) (sum float64) {
			for _, at := range points {
				sum += math.Pow(at.Y-a-b*at.X, 2)
			}
			return sum
		}
		least := off(intercept, slope)
		for _, d := range [][2]float64{{1e-3, 0}, {-1e-3, 0}, {0, 1e-3}, {0, -1e-3}, {1e-3, -1e-3}, {-1e-3, 1e-3}} {
			if off(intercept+d[0], slope+d[1]) <= least {
				t.Fatalf("a line %v beside comes nearer", d)
			}
		}
	})
}

func TestTrendNeedsRunsThatDiffer(t *testing.T) {
	for _, c := range []struct {
		runs  []car.Run
		drawn bool
	}{
		{[]car.Run{run(1.2, 1.4)}, false},
		{[]car.Run{run(1.2, 1.4), run(1.4, 1.39)}, false},
		{[]car.Run{run(1.2, 1.4), run(1.2, 1.39), run(1.2, 1.41)}, false},
		{[]car.Run{run(1.2, 1.4), run(1.2, 1.39), run(1.2+1e-9, 1.41)}, false},
		{[]car.Run{run(1.2, 1.4), run(1.2, 1.39), run(0, 1.41), run(1.4, 0)}, false},
		{[]car.Run{run(1.2, 1.4), run(1.2, 1.39), run(1.3, 1.41)}, true},
	} {
		chart := plotting.SixtyFoot(withRuns(c.runs), 0)
		if (len(chart.Lines) == 1) != c.drawn || strings.Contains(charttest.Notes(chart, units.US), "A trend takes three runs") == c.drawn {
			t.Errorf("%v: %d lines, %s", c.runs, len(chart.Lines), charttest.Notes(chart, units.US))
		}
	}
}

func TestTrendInWords(t *testing.T) {
	along := func(n int, slope, scatter float64) string {
		var list []car.Run
		for i := range n {
			squat := 1 + 0.05*float64(i)
			list = append(list, run(squat, 1.4+slope*(squat-1)+scatter*float64(1-2*(i%2))))
		}
		return charttest.Notes(plotting.SixtyFoot(withRuns(list), 0), units.US)
	}
	for _, c := range []struct{ got, want string }{
		{along(9, -0.06, 0), "0.006 s quicker per 10 points more anti-squat over 9 runs; few runs, so take it as a hint."},
		{along(3, 0.12, 0), "0.012 s slower per 10 points more anti-squat over 3 runs; few runs, so take it as a hint."},
		{along(4, 0.001, 0), "No change to speak of per 10 points more anti-squat over 4 runs; few runs, so take it as a hint."},
		{along(12, -0.06, 0.001), "0.006 s quicker per 10 points more anti-squat over 12 runs; track and weather count as well, so take it as a hint."},
		// Times 0.1 s off in turn tilt the line by −0.1·6·0.05/(0.05²·143).
		{along(12, -0.06, 0.1), "0.014 s quicker per 10 points more anti-squat over 12 runs; the times scatter too much to be sure, so take it as a hint."},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	// The line runs from the least to the greatest anti-squat.
	c := plotting.SixtyFoot(withRuns([]car.Run{run(1.5, 1.37), run(1, 1.4), run(1.25, 1.385)}), 0)
	ends := c.Lines[0].Runs[0]
	if ends[0].X != 1 || ends[1].X != 1.5 || math.Abs(ends[0].Y-1.4) > 1e-12 || math.Abs(ends[1].Y-1.37) > 1e-12 {
		t.Errorf("%v", ends)
	}
}

func TestEmptyLogSaysWhatToDo(t *testing.T) {
	for _, c := range []*chart.Chart{
		plotting.SixtyFoot(withRuns(nil), 0), plotting.SixtyFoot(saltgrass(), 5), plotting.SixtyFoot(withRuns([]car.Run{{}, run(0, 1.4)}), 0),
	} {
		f := c.Frame(&chart.Style{})
		if !(f.X.Length() > 0 && f.Y.Length() > 0) || math.IsInf(f.X.Length()+f.Y.Length(), 0) {
			t.Errorf("%v", f)
		}
		img, l := charttest.Draw(t, c, 430, 230, charttest.Light, chart.Mark(0.1))
		if got := img.RGBAAt(1, 1); got != charttest.Light.Palette.Background {
			t.Error(got)
		}
		for _, got := range [][]string{c.Readout(0, units.US), l.Readout(200, 120, units.US)} {
			if !slices.Equal(got, []string{"Log a run with its 60-ft time to see it here."}) {
				t.Errorf("%q", got)
			}
		}
		if got := charttest.Notes(c, units.US); !strings.HasPrefix(got, "Log a run with its 60-ft time to see it here.") {
			t.Error(got)
		}
		if _, ok := l.At(200, 120); ok {
			t.Error("a run stands for a travel")
		}
		for _, f := range chart.Formats {
			exported(t, f, c, chart.Style{}, chart.Sheet{})
		}
	}
}

func TestPointingNamesTheNearestRun(t *testing.T) {
	c := plotting.SixtyFoot(withRuns(
		[]car.Run{{Date: "2031-05-17", Track: "Saltgrass", SixtyFoot: 1.402, AntiSquat: 1.1}},
		[]car.Run{{Date: "2031-06-02", SixtyFoot: 1.377, AntiSquat: 1.546}},
	), 0)
	_, l := charttest.Draw(t, c, 430, 230, charttest.Light, chart.Marker{})
	for _, x := range []struct {
		squat, time float64
		want        []string
	}{
		{1.1, 1.402, []string{"2031-05-17", "Saltgrass", "baseline", "60 ft in 1.402 s", "anti-squat 110.0 %"}},
		{1.546, 1.377, []string{"2031-06-02", "more bite", "60 ft in 1.377 s", "anti-squat 154.6 %"}},
	} {
		px, py := l.ToPixel(x.squat, x.time)
		if got := l.Readout(px+4, py-3, units.US); !slices.Equal(got, x.want) {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
	if got := c.Readout(0, units.SI); !slices.Equal(got, []string{"2 runs with 60-ft time and anti-squat", "quickest 1.377 s with more bite at 154.6 %"}) {
		t.Errorf("%q", got)
	}
}

func TestRunsAreWhereTheLayoutSays(t *testing.T) {
	for _, s := range []chart.Style{charttest.Light, {Palette: palette.Dark}} {
		c := plotting.SixtyFoot(withRuns([]car.Run{run(1.1, 1.40)}, []car.Run{run(1.5, 1.37)}), 1)
		img, l := charttest.Draw(t, c, 430, 230, s, chart.Marker{})
		for _, m := range c.Points {
			px, py := l.ToPixel(m.At.X, m.At.Y)
			reach := 1.0
			if m.Size > 1 {
				reach = 3.5 // the current setup's are large
			}
			for _, d := range []float64{-reach, 0, reach} {
				if !charttest.Like(img.RGBAAt(int(px+d), int(py)), m.Ink(&s.Palette), 60) {
					t.Errorf("%s: no color %g px off its mark", m.Name, d)
				}
			}
		}
	}
}

func TestCSVOfTheLog(t *testing.T) {
	c := plotting.SixtyFoot(withRuns(
		[]car.Run{{Date: "2031-06-02", Track: `Saltgrass, "south"`, SixtyFoot: 1.402}, {Date: "2031-04-01", SixtyFoot: 1.41, AntiSquat: 1.2}},
		[]car.Run{{Date: "2031-05-17", Track: "Saltgrass", AntiSquat: -0.05}},
	), 0)
	got := string(exported(t, chart.CSV, c, chart.Style{}, chart.Sheet{}))
	want := `date,track,setup,anti-squat [%],60 ft [s]
2031-04-01,,baseline,120,1.41
2031-05-17,Saltgrass,more bite,-5,
2031-06-02,"Saltgrass, ""south""",baseline,,1.402
`
	if got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// Any log draws, with finite numbers, and no text is cut off.
func TestAnyLogDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		with := saltgrass()
		with.Setups = nil
		for i := range rapid.IntRange(1, 12).Draw(t, "setups") {
			s := car.Setup{Name: rapid.StringMatching(`[A-Za-zäß ]{1,40}`).Draw(t, "name") + fmt.Sprint(i)}
			for range rapid.IntRange(0, 6).Draw(t, "runs") {
				r := car.Run{Date: "2031-05-17", SixtyFoot: rapid.Float64Range(0.3, 30).Draw(t, "time"), AntiSquat: rapid.Float64Range(-100, 100).Draw(t, "squat")}
				if rapid.Bool().Draw(t, "alike") {
					r.SixtyFoot, r.AntiSquat = 1.4, 1.5
				}
				if rapid.Bool().Draw(t, "bare") {
					r.AntiSquat = 0
				}
				s.Runs = append(s.Runs, r)
			}
			with.Setups = append(with.Setups, s)
		}
		c := plotting.SixtyFoot(with, rapid.IntRange(-1, 12).Draw(t, "current"))
		f := c.Frame(&chart.Style{})
		if !(f.X.Min < f.X.Max) || !(f.Y.Min < f.Y.Max) || math.IsInf(f.X.Length()+f.Y.Length(), 0) {
			t.Fatalf("frame %v", f)
		}
		size := rapid.SampledFrom(comparedSizes).Draw(t, "size")
		for _, a := range charttest.Texts(c, units.US, size[0], size[1]) {
			if a.Outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
				t.Fatalf("%v: %q is cut off at %v", size, a.Text, a.Box)
			}
			if strings.Contains(a.Text, "NaN") || strings.Contains(a.Text, "Inf") {
				t.Fatal(a.Text)
			}
		}
		var r chart.Renderer
		l, err := r.Draw(image.NewRGBA(image.Rect(0, 0, int(size[0]), int(size[1]))), 96, c, charttest.Light, chart.Mark(0))
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(append(c.Readout(0, units.US), l.Readout(size[0]/2, size[1]/2, units.US)...), " "); strings.Contains(got, "NaN") || got == "" {
			t.Fatal(got)
		}
	})
}

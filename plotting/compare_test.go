package plotting

import (
	"context"
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/palette"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/recorder"
)

// two is a car with two setups and what comes of them.
type two struct {
	r, other       *analysis.Result
	l, otherLaunch *launch.Result
}

// twoSetups runs the reference car, with power enough to slip the tires, and
// other holes.
func twoSetups(t testing.TB, first, second string) two {
	t.Helper()
	c := saltgrass()
	c.Drive.Torque *= 1.8
	c.Setups[0].Name = first
	c.Setups = append(c.Setups, car.Setup{Name: second, Holes: car.Holes{ChassisUpper: 1, ChassisLower: 2, HousingUpper: 1}})
	x := two{r: analyze(t, c)}
	var err error
	if x.other, err = analysis.Run(context.Background(), c, tubes, analysis.Options{Setup: 1}); err != nil {
		t.Fatal(err)
	}
	for i, l := range []**launch.Result{&x.l, &x.otherLaunch} {
		if *l, err = launch.Run(context.Background(), c, i, tubes, launch.Options{}); err != nil {
			t.Fatal(err)
		}
	}
	return x
}

func (x two) charts() []*chart.Chart {
	return append(Charts(x.r, x.other), LaunchCharts(x.l, x.r, x.otherLaunch, x.other)...)
}

func (x two) chart(t testing.TB, key chart.Key) *chart.Chart {
	t.Helper()
	for _, c := range x.charts() {
		if c.Key == key {
			return c
		}
	}
	t.Fatalf("no chart %q", key)
	return nil
}

// split returns the lines of both setups.
func split(c *chart.Chart) (first, second []chart.Line) {
	for _, l := range c.Lines {
		if l.Setup > 0 {
			second = append(second, l)
		} else {
			first = append(first, l)
		}
	}
	return first, second
}

// Both setups' lines are those that each has alone; what is alike is drawn once.
func TestComparisonsHaveTheLinesOfBoth(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	alone := append(Charts(x.other, nil), LaunchCharts(x.otherLaunch, x.other, nil, nil)...)
	for i, c := range x.charts() {
		first, second := split(c)
		want := append(Charts(x.r, nil), LaunchCharts(x.l, x.r, nil, nil)...)[i]
		if c.Key != want.Key || len(first) != len(want.Lines) {
			t.Fatalf("%s: %d lines, want %d", c.Key, len(first), len(want.Lines))
		}
		for k, l := range first {
			if l.Name != want.Lines[k].Name || !samePoints(l.Runs, want.Lines[k].Runs) {
				t.Errorf("%s: %q is another line", c.Key, l.Name)
			}
		}
		common := 0
		for _, l := range alone[i].Lines {
			switch k := slices.IndexFunc(second, func(o chart.Line) bool { return o.Name == l.Name }); {
			case k >= 0 && !samePoints(second[k].Runs, l.Runs):
				t.Errorf("%s: %q of the second setup is another line", c.Key, l.Name)
			case k < 0 && l.Name == "100 % anti-squat":
				common++
			case k < 0:
				t.Errorf("%s: the second setup has no %q", c.Key, l.Name)
			}
		}
		if want := map[chart.Key]int{"instant-center": 1}[c.Key]; common != want {
			t.Errorf("%s: %d lines in common, want %d", c.Key, common, want)
		}
	}
}

// look is what tells a curve from others.
type look struct {
	color  color.Color
	width  vg.Length
	dashes string
}

// looksOf draws a chart of a size in pixels at 96 dpi and returns, for each curve,
// the looks of what is drawn through all of its points in sight.
func looksOf(t *testing.T, c *chart.Chart, width, height int) [][]look {
	t.Helper()
	_, layout := charttest.Draw(t, c, width, height, charttest.Light, chart.Marker{})
	spy := charttest.NewSpy(float64(width), float64(height))
	spy.Draw(c, units.US)
	list := make([][]look, len(c.Lines))
	for i := range c.Lines {
		l := &c.Lines[i]
		seen := map[vg.Point]bool{}
		for _, run := range l.Runs {
			for _, at := range run {
				y := onLeft(&layout.Frame, at.Y, l.Right)
				if px, py := layout.ToPixel(at.X, y); layout.Contains(px, py) {
					seen[vg.Point{X: vg.Length(px * 0.75), Y: vg.Length((float64(height) - py) * 0.75)}] = true
				}
			}
		}
		if len(seen) < 2 && l.Name != "100 % anti-squat" {
			t.Errorf("%s: %d points of %q are in sight", c.Key, len(seen), l.Name)
		}
		passed := map[look]map[vg.Point]bool{}
		var now look
		for _, a := range spy.Actions {
			switch a := a.(type) {
			case *recorder.SetColor:
				now.color = a.Color
			case *recorder.SetLineWidth:
				now.width = a.Width
			case *recorder.SetLineDash:
				now.dashes = fmt.Sprint(a.Dashes)
			case *recorder.Stroke:
				for _, at := range a.Path {
					for want := range seen {
						// The image is set onto whole pixels.
						if math.Hypot(float64(at.Pos.X-want.X), float64(at.Pos.Y-want.Y)) < 1 {
							if passed[now] == nil {
								passed[now] = map[vg.Point]bool{}
							}
							passed[now][want] = true
						}
					}
				}
			}
		}
		for look, points := range passed {
			if len(points) == len(seen) {
				list[i] = append(list[i], look)
			}
		}
	}
	return list
}

// Every curve of both setups is drawn through all its points, in its color, and
// the second one's looks different from the first one's.
func TestBothSetupsReachTheCanvas(t *testing.T) {
	for _, c := range twoSetups(t, "baseline", "more bite").charts() {
		list := looksOf(t, c, 700, 400)
		for i, a := range c.Lines {
			of := slices.DeleteFunc(slices.Clone(list[i]), func(l look) bool { return l.color != color.Color(a.Ink(&palette.Light)) })
			if len(of) == 0 && a.Name != "100 % anti-squat" {
				t.Errorf("%s: nothing is drawn through %q of setup %d", c.Key, a.Name, a.Setup)
			}
			for k, b := range c.Lines[:i] {
				if a.Name == b.Name && a.Setup != b.Setup && !differ(of, list[k]) {
					t.Errorf("%s: %q of both setups looks like %v", c.Key, a.Name, of)
				}
			}
		}
	}
}

// differ reports whether two curves may be told apart.
func differ(a, b []look) bool {
	for _, x := range a {
		for _, y := range b {
			if x != y {
				return true
			}
		}
	}
	return false
}

// The second setup's color is on the picture where its values are.
func TestSecondSetupIsWhereTheLayoutSays(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	img, l := charttest.Draw(t, Charts(x.r, x.other)[0], 700, 400, charttest.Light, chart.Mark(0.01))
	found, places := 0, 0
	for i := 2; i < len(x.other.Travel)-2; i++ {
		s := &x.other.Travel[i]
		px, py := l.ToPixel(s.Pose.Travel, s.Loads.Hit.Upper.Tension)
		places++
		dot := false
		for dx := -3.0; dx <= 3; dx++ { // past the gap between two dots
			for dy := -1.0; dy <= 1; dy++ {
				dot = dot || charttest.Like(img.RGBAAt(int(px+dx), int(py+dy)), charttest.Light.Palette.Upper, 120)
			}
		}
		if dot {
			found++
		}
	}
	if found < places*9/10 {
		t.Errorf("%d of %d places have the second setup's color", found, places)
	}
	s, err := x.other.At(0.01, 0)
	if err != nil {
		t.Fatal(err)
	}
	if px, py := l.ToPixel(0.01, s.Loads.Hit.Upper.Tension); !charttest.Like(img.RGBAAt(int(px), int(py)), charttest.Light.Palette.Upper, 60) {
		t.Error("the marker has no dot on the second setup")
	}
}

// wantLegend fails unless the legend of a chart drawn wide enough for one row has
// these entries one after another.
func wantLegend(t *testing.T, c *chart.Chart, want ...string) {
	t.Helper()
	all := charttest.Words(c, units.US, 2400, 600)
	for i := range all {
		if slices.Equal(all[i:min(i+len(want), len(all))], want) {
			return
		}
	}
	t.Errorf("%s: the legend is to be %q, written is %q", c.Key, want, all)
}

func TestLegendNamesBothSetups(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	for key, want := range map[chart.Key][]string{
		"bar-force":       {"baseline", "more bite", "upper hit", "upper hooked", "lower hit", "lower hooked"},
		"anti-squat":      {"baseline", "more bite", "anti-squat", "target 100 to 160 %"},
		"instant-center":  {"baseline", "more bite", "path", "100 % anti-squat", "ride height", "target"},
		"bow":             {"baseline", "more bite", "upper", "lower", "first yield", "worst push"},
		"launch-attitude": {"baseline", "more bite", "rear left", "rear right", "front", "pitch"},
		"launch-tires":    {"baseline", "more bite", "rear left", "rear right", "front left", "front right"},
	} {
		wantLegend(t, x.chart(t, key), want...)
	}
	share := func(l *launch.Result, r *analysis.Result) string {
		p := launchBars{overTime{l}, r}.peaks(launch.LowerRight)[0]
		return units.Share(math.Max(p.force/r.Limit(car.Lower, p.way).Allowable, 0))
	}
	want := "lower right " + share(x.l, x.r) + " vs " + share(x.otherLaunch, x.other)
	wantLegend(t, x.chart(t, "launch-bars"), want)
}

func TestTitlesNameBothSetups(t *testing.T) {
	want := []string{
		"Bar force over travel: baseline vs more bite", "Anti-squat over travel: baseline vs more bite",
		"Instant center path: baseline vs more bite", "Bow over push: baseline vs more bite",
		"Bar force over the launch: baseline vs more bite", "Pitch and travel: baseline vs more bite", "Tire loads: baseline vs more bite",
	}
	for i, c := range twoSetups(t, "baseline", "more bite").charts() {
		if c.Title != want[i] || c.Subtitle != "Saltgrass No. 7 — baseline vs more bite" {
			t.Errorf("%q, %q", c.Title, c.Subtitle)
		}
	}
	long := twoSetups(t, "baseline as it left the shop in spring", "baseline as it came back in the fall")
	for _, c := range long.charts() {
		for _, width := range []float64{360, 430, 700} {
			title := charttest.Texts(c, units.US, width, 300)[0]
			if title.Outside(vg.Length(width)*0.75, 225) || !strings.Contains(title.Text, " vs ") || strings.Count(title.Text, "…") != 2 {
				t.Errorf("%v px: %q", width, title.Text)
			}
			if _, names, _ := strings.Cut(title.Text, ": "); len(slices.Compact(strings.Split(names, " vs "))) != 2 {
				t.Errorf("%v px: %q does not tell the setups apart", width, title.Text)
			}
		}
		wantLegend(t, c, "baseline as it left…", "baseline as it came…")
	}
}

// A limit that differs visibly has a line of its own, one that hardly differs
// stands in the label, and one that reads the same is not told twice.
func TestLimitsOfTwoSetups(t *testing.T) {
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
		c := Charts(r, other)[0]
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
	if c := Bow(r); c.Points[len(c.Points)-1].Label(units.US) != "lower worst "+units.US.Format(units.Force, r.Worst[car.Lower][column.Push].Force) {
		t.Error(c.Points)
	}
}

// The axes hold what each setup would have in sight alone, and stay while that
// fits.
func TestAxesTakeInBothSetups(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	for _, c := range x.charts() {
		f := c.Frame(&chart.Style{})
		for _, l := range c.Lines {
			if l.Name == "100 % anti-squat" {
				continue
			}
			for _, run := range l.Runs {
				for _, at := range run {
					if y := onLeft(&f, at.Y, l.Right); !f.X.Contains(at.X) || !f.Y.Contains(y) {
						t.Fatalf("%s: %q leaves the chart at %v", c.Key, l.Name, at)
					}
				}
			}
		}
		// The second setup goes away and comes back: the axes need not move.
		if again := c.Frame(&chart.Style{Frame: f}); again != f {
			t.Errorf("%s: %v became %v", c.Key, f, again)
		}
	}
	// Dragged a little, nothing jumps.
	moved := copied(x.r)
	for i := range moved.Travel {
		moved.Travel[i].AntiSquat *= 1.02
	}
	old := Charts(x.r, x.other)[1].Frame(&chart.Style{})
	if got := Charts(moved, x.other)[1].Frame(&chart.Style{Frame: old}); got != old {
		t.Errorf("%v became %v", old, got)
	}
}

func TestExportsNameBothSetups(t *testing.T) {
	for _, c := range twoSetups(t, "baseline", "more bite").charts() {
		for _, f := range chart.Formats {
			if data := exported(t, f, c, chart.Style{}, chart.Sheet{}); len(data) < 100 {
				t.Errorf("%s as %s: %d bytes", c.Key, f, len(data))
			}
		}
		text := svgText(t, exported(t, chart.SVG, c, chart.Style{}, chart.Sheet{}))
		for _, want := range []string{c.Title, c.Subtitle, chart.Caution} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing", c.Key, want)
			}
		}
	}
}

// samePoints reports whether two curves have the same points.
func samePoints(a, b []plotter.XYs) bool { return slices.EqualFunc(a, b, slices.Equal[plotter.XYs]) }

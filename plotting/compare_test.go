package plotting

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
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

func (x two) charts() []*Chart {
	return append(Charts(x.r, x.other), LaunchCharts(x.l, x.r, x.otherLaunch, x.other)...)
}

func (x two) chart(t testing.TB, key string) *Chart {
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
func split(c *Chart) (first, second []line) {
	for _, l := range c.lines {
		if l.second {
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
		if c.Key != want.Key || len(first) != len(want.lines) {
			t.Fatalf("%s: %d lines, want %d", c.Key, len(first), len(want.lines))
		}
		for k, l := range first {
			if l.name != want.lines[k].name || !sameRuns(l.runs, want.lines[k].runs) {
				t.Errorf("%s: %q is another line", c.Key, l.name)
			}
		}
		common := 0
		for _, l := range alone[i].lines {
			switch k := slices.IndexFunc(second, func(o line) bool { return o.name == l.name }); {
			case k >= 0 && !sameRuns(second[k].runs, l.runs):
				t.Errorf("%s: %q of the second setup is another line", c.Key, l.name)
			case k < 0 && l.name == "100 % anti-squat":
				common++
			case k < 0:
				t.Errorf("%s: the second setup has no %q", c.Key, l.name)
			}
		}
		if want := map[string]int{"instant-center": 1}[c.Key]; common != want {
			t.Errorf("%s: %d lines in common, want %d", c.Key, common, want)
		}
	}
}

// stroked is a line as it reached a canvas.
type stroked struct {
	width  vg.Length
	dashes []vg.Length
	points []vg.Point
}

// strokes draws a chart of a size in points and returns its lines.
func strokes(c *Chart, w, h vg.Length) []stroked {
	var to recorder.Canvas
	to.KeepCaller = false
	c.Plot(Style{Palette: paper(), Width: w, Height: h}).Draw(draw.NewCanvas(&to, w, h))
	var list []stroked
	var now stroked
	for _, a := range to.Actions {
		switch a := a.(type) {
		case *recorder.SetLineWidth:
			now.width = a.Width
		case *recorder.SetLineDash:
			now.dashes = a.Dashes
		case *recorder.Stroke:
			now.points = nil
			for _, p := range a.Path {
				now.points = append(now.points, p.Pos)
			}
			list = append(list, now)
		}
	}
	return list
}

// Every point of both setups that is in sight is on a line of the canvas: the
// first one's thick, the second one's thin and with dashes of its own.
func TestBothSetupsReachTheCanvas(t *testing.T) {
	const w, h = 525, 300
	for _, c := range twoSetups(t, "baseline", "more bite").charts() {
		p := c.picture(Style{Palette: paper(), Width: w, Height: h}, false, 0)
		m, drawn := p.margins, strokes(c, w, h)
		for _, l := range c.lines {
			width, pattern := vg.Length(lineWidth), patterns[l.dash]
			if l.second {
				width, pattern = secondWidth*lineWidth, secondPatterns[l.dash]
			}
			seen := 0
			for _, run := range l.runs {
				for _, at := range run {
					at.Y = p.frame.onLeft(at.Y, l.right)
					if !p.frame.X.Contains(at.X) || !p.frame.Y.Contains(at.Y) {
						continue
					}
					seen++
					pt := vg.Point{
						X: m.left + vg.Length((at.X-p.frame.X.Min)/p.frame.X.length())*(w-m.left-m.right),
						Y: m.bottom + vg.Length((at.Y-p.frame.Y.Min)/p.frame.Y.length())*(h-m.bottom-m.top),
					}
					if !slices.ContainsFunc(drawn, func(s stroked) bool {
						return math.Abs(float64(s.width-width)) < 1e-9 && slices.Equal(s.dashes, pattern) && slices.ContainsFunc(s.points, func(q vg.Point) bool {
							return math.Hypot(float64(q.X-pt.X), float64(q.Y-pt.Y)) < 1e-6
						})
					}) {
						t.Fatalf("%s: %q (second %v) has no line through %v", c.Key, l.name, l.second, at)
					}
				}
			}
			if seen < 2 && l.name != "100 % anti-squat" {
				t.Errorf("%s: %d points of %q are in sight", c.Key, seen, l.name)
			}
		}
	}
	for d, pattern := range secondPatterns {
		if slices.ContainsFunc(patterns[:], func(p []vg.Length) bool { return slices.Equal(p, pattern) }) || len(pattern) == 0 {
			t.Errorf("pattern %d is one of the first setup's", d)
		}
	}
}

// The second setup's color is on the picture where its values are.
func TestSecondSetupIsWhereTheLayoutSays(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	img, l := drawn(t, Charts(x.r, x.other)[0], 700, 400, light, Mark(0.01))
	found, places := 0, 0
	for i := 2; i < len(x.other.Travel)-2; i++ {
		s := &x.other.Travel[i]
		px, py := l.ToPixel(s.Pose.Travel, s.Loads.Hit.Upper.Tension)
		places++
		dot := false
		for dx := -3.0; dx <= 3; dx++ { // past the gap between two dots
			for dy := -1.0; dy <= 1; dy++ {
				dot = dot || like(img.RGBAAt(int(px+dx), int(py+dy)), light.Palette.Upper, 120)
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
	if px, py := l.ToPixel(0.01, s.Loads.Hit.Upper.Tension); !like(img.RGBAAt(int(px), int(py)), light.Palette.Upper, 60) {
		t.Error("the marker has no dot on the second setup")
	}
}

func entries(c *Chart, s Style) []string {
	var list []string
	for _, e := range c.picture(s, false, 0).header.entries {
		list = append(list, e.text)
	}
	return list
}

func TestLegendNamesBothSetups(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	for key, want := range map[string][]string{
		"bar-force":       {"baseline", "more bite", "upper hit", "upper hooked", "lower hit", "lower hooked"},
		"anti-squat":      {"baseline", "more bite", "anti-squat", "target 100 to 160 %"},
		"instant-center":  {"baseline", "more bite", "path", "100 % anti-squat", "ride height", "target"},
		"bow":             {"baseline", "more bite", "upper", "lower", "first yield", "worst push"},
		"launch-attitude": {"baseline", "more bite", "rear left", "rear right", "front", "pitch"},
		"launch-tires":    {"baseline", "more bite", "rear left", "rear right", "front left", "front right"},
	} {
		if got := entries(x.chart(t, key), Style{}); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	share := func(l *launch.Result, r *analysis.Result) string {
		p := launchBars{overTime{l}, r}.peaks(launch.LowerRight)[0]
		return units.Share(math.Max(p.force/r.Limit(car.Lower, p.way).Allowable, 0))
	}
	want := "lower right " + share(x.l, x.r) + " vs " + share(x.otherLaunch, x.other)
	if got := entries(x.chart(t, "launch-bars"), Style{}); !slices.Contains(got, want) {
		t.Errorf("%q, want %q among them", got, want)
	}
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
		for _, width := range []vg.Length{270, 322, 525} {
			p := c.picture(Style{Width: width}, false, 0)
			if p.title.width(p.titleText) > width-2*edge || !strings.Contains(p.titleText, " vs ") || strings.Count(p.titleText, "…") != 2 {
				t.Errorf("%v pt: %q", width, p.titleText)
			}
			if _, names, _ := strings.Cut(p.titleText, ": "); len(slices.Compact(strings.Split(names, " vs "))) != 2 {
				t.Errorf("%v pt: %q does not tell the setups apart", width, p.titleText)
			}
		}
		if got := entries(c, Style{Width: 322}); !slices.Contains(got, "baseline as it left…") || !slices.Contains(got, "baseline as it came…") {
			t.Errorf("%s: %q", c.Key, got)
		}
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
		var own, second []rule
		for _, x := range c.rules {
			switch {
			case x.second:
				second = append(second, x)
			case strings.HasPrefix(x.label(units.US), "lower push"):
				own = append(own, x)
			}
		}
		if len(own) != 1 || own[0].label(units.US) != want.label || (len(second) > 0) != want.second {
			t.Errorf("%g: %d lines, label %q, %d of the second setup", by, len(own), own[0].label(units.US), len(second))
		}
		if want.second && (second[0].label(units.US) != "lower push limit 11,283 lb (more bite)" || second[0].at != -other.Bars[car.Lower].Push.Allowable || !c.frame(&Style{}).Y.Contains(second[0].at)) {
			t.Errorf("%+v %q", second[0], second[0].label(units.US))
		}
	}
	if c := Bow(r); c.marks[len(c.marks)-1].label(units.US) != "lower worst "+value(units.US, units.Force, r.Worst[car.Lower][column.Push].Force) {
		t.Error(c.marks)
	}
}

// The axes hold what each setup would have in sight alone, and stay while that
// fits.
func TestAxesTakeInBothSetups(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	for _, c := range x.charts() {
		f := c.frame(&Style{})
		for _, l := range c.lines {
			if l.name == "100 % anti-squat" {
				continue
			}
			for _, run := range l.runs {
				for _, at := range run {
					if y := f.onLeft(at.Y, l.right); !f.X.Contains(at.X) || !f.Y.Contains(y) {
						t.Fatalf("%s: %q leaves the chart at %v", c.Key, l.name, at)
					}
				}
			}
		}
		// The second setup goes away and comes back: the axes need not move.
		if again := c.frame(&Style{Frame: f}); again != f {
			t.Errorf("%s: %v became %v", c.Key, f, again)
		}
	}
	// Dragged a little, nothing jumps.
	moved := copied(x.r)
	for i := range moved.Travel {
		moved.Travel[i].AntiSquat *= 1.02
	}
	old := Charts(x.r, x.other)[1].frame(&Style{})
	if got := Charts(moved, x.other)[1].frame(&Style{Frame: old}); got != old {
		t.Errorf("%v became %v", old, got)
	}
}

func TestExportsNameBothSetups(t *testing.T) {
	for _, c := range twoSetups(t, "baseline", "more bite").charts() {
		for _, f := range Formats {
			if data := exported(t, f, c, Style{}, Sheet{}); len(data) < 100 {
				t.Errorf("%s as %s: %d bytes", c.Key, f, len(data))
			}
		}
		text := svgText(t, exported(t, SVG, c, Style{}, Sheet{}))
		for _, want := range []string{c.Title, c.Subtitle, Caution} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing", c.Key, want)
			}
		}
	}
}

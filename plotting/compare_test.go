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
	"pgregory.net/rapid"
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
		return percent(math.Max(p.force/r.Limit(car.Lower, p.way).Allowable, 0))
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

func TestShortNames(t *testing.T) {
	for _, c := range []struct{ names, want []string }{
		{[]string{"baseline", "more bite"}, []string{"baseline", "more bite"}},
		{[]string{"a very long name", "another"}, []string{"a very lo…", "another"}},
		{[]string{"hot track, upper 2", "hot track, upper 3"}, []string{"hot t…er 2", "hot t…er 3"}},
		{[]string{"hot track 2 and cold", "hot track 3 and cold"}, []string{"1 hot tra…", "2 hot tra…"}},
		{[]string{"Überhöhung links", "x"}, []string{"Überhöhun…", "x"}},
	} {
		if got := shortNames(c.names, 10); !slices.Equal(got, c.want) {
			t.Errorf("%q became %q, want %q", c.names, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfNDistinct(rapid.StringN(1, 40, -1), 2, 2, rapid.ID).Draw(t, "names")
		length := rapid.IntRange(leastName, nameLength).Draw(t, "length")
		got := shortNames(names, length)
		if got[0] == got[1] {
			t.Fatalf("%q both became %q", names, got[0])
		}
		for _, name := range got {
			if n := len([]rune(name)); n > length {
				t.Fatalf("%q has %d letters", name, n)
			}
		}
	})
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

func TestReadoutsGiveBothValues(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	charts := x.charts()
	alone, other := Charts(x.r, nil), Charts(x.other, nil)
	for i, c := range charts[:4] {
		got, a, b := c.Readout(0.02, units.US), alone[i].Readout(0.02, units.US), other[i].Readout(0.02, units.US)
		if len(got) != len(a) || got[0] != a[0]+", baseline vs more bite" {
			t.Errorf("%s: %q", c.Key, got)
		}
		for k := range a[1:] {
			// What both have at the start and at the end is not told twice.
			from, to := strings.Fields(a[1+k]), strings.Fields(b[1+k])
			text := strings.Fields(got[1+k])
			if text[0] != from[0] || !slices.Contains(text, "vs") || !strings.Contains(got[1+k], to[len(to)-1]) {
				t.Errorf("%s: %q of %q and %q", c.Key, got[1+k], a[1+k], b[1+k])
			}
		}
	}
	want := "anti-squat " + number(100*x.r.Ride.AntiSquat, 1) + " % vs " + number(100*x.other.Ride.AntiSquat, 1) + " %"
	if got := charts[1].Readout(0, units.US); !slices.Equal(got, []string{"ride height, baseline vs more bite", want}) {
		t.Errorf("%q", got)
	}
	if got := charts[0].Readout(-50*inch, units.US); !slices.Equal(got, []string{got[0], "the bars do not reach here"}) {
		t.Errorf("%q", got)
	}
	_, l := drawn(t, charts[3], 460, 300, light, Marker{})
	px, _ := l.ToPixel(5000*lbf, 0)
	if got := l.Readout(px, l.Top+20, units.US); len(got) != 3 || got[0] != "5,000 lb push, baseline vs more bite" || !strings.Contains(got[1], "upper bows 0.0") || !strings.Contains(got[1], " in vs 0.0") {
		t.Errorf("%q", got)
	}
}

func TestReadingsOfTwoKinds(t *testing.T) {
	p := pair{shorts: [2]string{"a", "b"}}
	force := func(text string) []reading {
		return []reading{plainly("here"), {name: "lower hit", value: text}}
	}
	for _, c := range []struct {
		a, b []reading
		want []string
	}{
		{force("5 lb"), force("5 lb"), []string{"here, a vs b", "lower hit 5 lb"}},
		{force("5 lb"), []reading{plainly("here"), {name: "lower hit", lack: "no hold"}}, []string{"here, a vs b", "lower hit 5 lb vs no value"}},
		{[]reading{plainly("here"), {name: "lower hit", lack: "no hold"}}, []reading{plainly("here"), {name: "lower hit", lack: "no hold"}}, []string{"here, a vs b", "lower hit has no value: no hold"}},
		{force("5 lb"), []reading{plainly("here"), plainly("off"), plainly("gone")}, []string{"here, a vs b", "a: lower hit 5 lb", "b: off", "b: gone"}},
		{force("5 lb"), []reading{plainly("here"), plainly("off")}, []string{"here, a vs b", "a: lower hit 5 lb", "b: off"}},
		{[]reading{plainly("x"), {name: "c", value: "1 in", after: "ahead"}}, []reading{plainly("x"), {name: "c", value: "2 in", after: "behind"}}, []string{"x, a vs b", "c 1 in ahead vs 2 in behind"}},
		{[]reading{plainly("not held")}, force("5 lb"), []string{"a: not held", "b: here", "b: lower hit 5 lb"}},
		{nil, force("5 lb"), []string{"here", "lower hit 5 lb"}},
	} {
		if got := written(p.join(c.a, c.b)); !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Where one launch is over, only the other one has values.
func TestLaunchesOfDifferentLength(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	for _, c := range LaunchCharts(history(100, wave), r, history(300, wave), other) {
		if f := c.frame(&Style{}); !f.X.Contains(0.299) {
			t.Errorf("%s: %v", c.Key, f.X)
		}
		got := c.Readout(0.2, units.US)
		if len(got) < 3 || got[0] != "0.200 s, baseline vs more bite" || got[1] != "baseline: over at 0.099 s" || !strings.HasPrefix(got[2], "more bite: ") {
			t.Errorf("%s: %q", c.Key, got)
		}
		_, l := drawn(t, c, 460, 300, light, Mark(0.2))
		px, _ := l.ToPixel(0.2, 0)
		if at, ok := l.At(px, l.Top+5); !ok || math.Abs(at-0.2) > 1e-9 {
			t.Errorf("%s: pointing gives %g s, %v", c.Key, at, ok)
		}
		if at := c.subject.place(0.2); !at.line || at.x != 0.2 || slices.ContainsFunc(at.dots, func(d dot) bool { return !d.second }) {
			t.Errorf("%s: %+v", c.Key, at)
		}
	}
	// One that could not start says so, the other one is drawn.
	none := &launch.Result{Outcome: launch.NotHeld, Options: launch.Options{Limit: 3}}
	for _, c := range LaunchCharts(history(100, wave), r, none, other) {
		if got := remarks(c, units.US); !strings.Contains(got, "more bite: ") {
			t.Errorf("%s: %q", c.Key, got)
		}
		if got := c.Readout(0.05, units.US); !strings.HasPrefix(got[0], "baseline: 0.050 s") {
			t.Errorf("%s: %q", c.Key, got)
		}
		drawn(t, c, 460, 300, light, Mark(0.05))
	}
}

func TestCSVOfTwoSetups(t *testing.T) {
	x := twoSetups(t, "baseline", "more bite")
	short := copied(x.other)
	short.Travel = short.Travel[5:]
	x.other = short
	for _, c := range x.charts() {
		columns := read(t, exported(t, CSV, c, Style{}, Sheet{}))
		first, second := 0, 0
		for name := range columns {
			if strings.Contains(name, ", baseline [") {
				first++
			}
			if strings.Contains(name, ", more bite [") {
				second++
			}
		}
		common := 1 // the position
		if c.Key == "bow" {
			common = 0
		}
		if first == 0 || first != second || len(columns) != common+first+second {
			t.Errorf("%s: %d columns of %d and %d", c.Key, len(columns), first, second)
		}
	}
	columns := read(t, exported(t, CSV, x.chart(t, "anti-squat"), Style{}, Sheet{}))
	travel := columns["travel [in, bump positive]"]
	if len(travel) != len(x.r.Travel) {
		t.Fatalf("%d rows", len(travel))
	}
	for i := range travel {
		a, b := columns["anti-squat, baseline [%]"][i], columns["anti-squat, more bite [%]"][i]
		if got := parse(t, a); math.Abs(got-100*x.r.Travel[i].AntiSquat) > 1e-6 {
			t.Fatalf("row %d: %s", i, a)
		}
		if i < 5 {
			if b != "" {
				t.Errorf("row %d: %s where the second setup has nothing", i, b)
			}
		} else if got := parse(t, b); math.Abs(got-100*x.other.Travel[i-5].AntiSquat) > 1e-6 {
			t.Fatalf("row %d: %s", i, b)
		}
	}
}

// Tables of different positions: each row in its place, in order.
func TestAlignedTables(t *testing.T) {
	table := func(name string, at ...float64) Table {
		made := newTable(units.SI, name)
		made.key("time", "", units.Time)
		made.add("x", "", units.Time)
		for _, x := range at {
			made.row(x)
			made.cell(10*x, true)
		}
		return made.Table
	}
	got := table("a", 1, 2, 4).aligned(table("b", 0, 2+1e-13, 3, 5))
	if !slices.Equal(got.Header, []string{"time [s]", "x, a [s]", "x, b [s]"}) {
		t.Errorf("%q", got.Header)
	}
	var rows [][3]float64
	for _, row := range got.Rows {
		rows = append(rows, [3]float64{row[0].Value, row[1].Value, math.Round(row[2].Value)})
		if row[1].Given != (row[1].Value != 0) || row[2].Given != (row[0].Value == 0 || row[2].Value != 0) {
			t.Errorf("%v", row)
		}
	}
	if rows[2][0] = math.Round(rows[2][0]); !slices.Equal(rows, [][3]float64{{0, 0, 0}, {1, 10, 0}, {2, 20, 20}, {3, 0, 30}, {4, 40, 0}, {5, 0, 50}}) {
		t.Errorf("%v", rows)
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

// Remarks that hold for one setup name it; those that hold for both do not.
func TestRemarksOfTwoSetups(t *testing.T) {
	r := analyze(t, saltgrass()) // hooked and hit are the same
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	other.Travel[4].Loads.Hit.Balanced = false
	got := remarks(Charts(r, other)[0], units.US)
	if strings.Count(got, "Hooked and hit are the same") != 1 || !strings.Contains(got, "more bite: no force at 3.30 in droop") || strings.Contains(got, "baseline: ") {
		t.Error(got)
	}
	if got := remarks(Charts(r, copied(r))[1], units.US); got != "Both setups draw the same lines here." {
		t.Error(got)
	}
}

// comparedSizes are panels with two setups [px].
var comparedSizes = [][2]float64{{360, 220}, {430, 230}, {700, 400}}

// No text is cut off at the edge, none of the words around the data runs into
// another.
func TestTextOfComparisonsHasRoom(t *testing.T) {
	for _, x := range []two{twoSetups(t, "baseline", "more bite"), twoSetups(t, "baseline as it left the shop in spring", "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWW")} {
		for _, chart := range x.charts() {
			for _, size := range comparedSizes {
				for _, s := range []units.System{units.US, units.SI} {
					list := texts(chart, s, size[0], size[1])
					for i, a := range list {
						if a.outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
							t.Errorf("%s %v %v: %q is cut off", chart.Key, s, size, a.text)
						}
						for _, b := range list[:i] {
							if a.over(b) {
								t.Errorf("%s %v %v: %q runs into %q", chart.Key, s, size, a.text, b.text)
							}
						}
					}
				}
			}
		}
	}
}

// Any two cars: everything is finite, nothing is cut off.
func TestAnyTwoSetupsCompare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, other := results.Draw(t, "first").Result, copied(results.Draw(t, "second").Result)
		other.Car.Setups[0].Name = "more bite"
		size := rapid.SampledFrom(comparedSizes).Draw(t, "size")
		s := units.System(rapid.IntRange(0, 1).Draw(t, "units"))
		at := rapid.Float64Range(-0.3, 0.3).Draw(t, "at")
		for _, c := range append(Charts(r, other), LaunchCharts(randomLaunch(t), r, randomLaunch(t), other)...) {
			f := c.frame(&Style{Units: s})
			if !(f.X.Min < f.X.Max) || !(f.Y.Min < f.Y.Max) || math.IsInf(f.X.length()+f.Y.length(), 0) {
				t.Fatalf("%s: frame %v", c.Key, f)
			}
			for _, a := range texts(c, s, size[0], size[1]) {
				if a.outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
					t.Fatalf("%s %v: %q is cut off at %v", c.Key, size, a.text, a.box)
				}
			}
			table := c.Table(s)
			for i, row := range table.Rows {
				if len(row) != len(table.Header) || table.keyed && i > 0 && row[0].Value <= table.Rows[i-1][0].Value {
					t.Fatalf("%s: row %d %v", c.Key, i, row)
				}
			}
			if lines := strings.Join(c.Readout(at, s), "\n"); strings.Contains(lines, "NaN") || strings.Contains(lines, "Inf") || lines == "" {
				t.Fatalf("%s: %q", c.Key, lines)
			}
			c.subject.place(at)
		}
	})
}

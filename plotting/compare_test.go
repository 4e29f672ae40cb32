package plotting_test

import (
	"context"
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/recorder"
)

// setups runs the reference car, with power enough to slip the tires, with up to
// three choices of holes.
func setups(t testing.TB, names ...string) []plotting.Setup {
	t.Helper()
	c := saltgrass()
	c.Drive.Torque *= 1.8
	holes := []car.Holes{c.Setups[0].Holes, {ChassisUpper: 1, ChassisLower: 2, HousingUpper: 1}, {ChassisUpper: 2, ChassisLower: 2, HousingLower: 1}}
	c.Setups = nil
	for i, name := range names {
		c.Setups = append(c.Setups, car.Setup{Name: name, Holes: holes[i]})
	}
	if wrong := c.Validate(tubes, units.US); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	var list []plotting.Setup
	for i := range names {
		r, err := analysis.Run(context.Background(), c, tubes, analysis.Options{Setup: i})
		if err != nil {
			t.Fatal(err)
		}
		l, err := launch.Run(context.Background(), c, i, tubes, launch.Options{})
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, plotting.Of(r, l))
	}
	return list
}

// names are those of the setups compared; the first two or all three.
var names = []string{"baseline", "more bite", "tame"}

// compared returns all charts of several setups laid over each other.
func compared(list []plotting.Setup) []*chart.Chart {
	return append(overTravels(list[0], list[1:]...), overLaunch(list[0], list[1:]...)...)
}

func chartOf(list []plotting.Setup, key chart.Key) *chart.Chart {
	return plotting.New(key, list[0], list[1:]...)
}

// The lines of all setups are those that each has alone; what is alike is drawn
// once.
func TestComparisonsHaveTheLinesOfAll(t *testing.T) {
	for n := 2; n <= 3; n++ {
		list := setups(t, names[:n]...)
		for _, c := range compared(list) {
			known := map[string][]chart.Line{} // of earlier setups, by name
			for i := range list {
				var got []chart.Line
				for _, l := range c.Lines {
					if l.Setup == i {
						got = append(got, l)
					}
				}
				want := plotting.New(c.Key, list[i]).Lines
				if len(got) != len(want) {
					t.Fatalf("%s: %d lines of setup %d, want %d", c.Key, len(got), i, len(want))
				}
				for k, l := range got {
					same := slices.ContainsFunc(known[l.Name], func(o chart.Line) bool { return samePoints(o.Runs, want[k].Runs) })
					if l.Name != want[k].Name || !same && !samePoints(l.Runs, want[k].Runs) || same && l.Runs != nil {
						t.Errorf("%s: %q of setup %d is another line, or drawn twice", c.Key, l.Name, i)
					}
					known[l.Name] = append(known[l.Name], want[k])
				}
			}
		}
	}
	// The line of 100 % is that of the car.
	list := setups(t, names...)
	for _, l := range chartOf(list, plotting.CenterPathKey).Lines {
		if (l.Runs == nil) != (l.Name == "100 % anti-squat" && l.Setup > 0) {
			t.Errorf("%q of setup %d: %d runs", l.Name, l.Setup, len(l.Runs))
		}
	}
}

// look is what tells a curve from others.
type look struct {
	color  color.Color
	width  vg.Length
	dashes string
}

// side is what is above zero of a curve, or below it.
type side struct {
	ink   chart.Ink // that the chart names
	looks []look    // of what is drawn through all of its points in sight
}

// sidesOf draws a chart of a size in pixels at 96 dpi and returns, for each curve, how
// it looks where it has points: above zero and below.
func sidesOf(t *testing.T, c *chart.Chart, width, height int) [][]side {
	t.Helper()
	_, layout := charttest.Draw(t, c, width, height, charttest.Light, chart.Marker{})
	spy := charttest.NewSpy(float64(width), float64(height))
	spy.Draw(c, units.US)
	list := make([][]side, len(c.Lines))
	for i := range c.Lines {
		l := &c.Lines[i]
		above, below := map[vg.Point]bool{}, map[vg.Point]bool{}
		for _, run := range l.Runs {
			for _, at := range run {
				y := onLeft(&layout.Frame, at.Y, l.Right)
				if px, py := layout.ToPixel(at.X, y); layout.Contains(px, py) {
					seen := above
					if at.Y < 0 && l.Below != nil {
						seen = below
					}
					seen[vg.Point{X: vg.Length(px * 0.75), Y: vg.Length((float64(height) - py) * 0.75)}] = true
				}
			}
		}
		if l.Runs != nil && len(above)+len(below) < 2 && l.Name != "100 % anti-squat" {
			t.Errorf("%s: %d points of %q are in sight", c.Key, len(above)+len(below), l.Name)
		}
		for _, half := range []struct {
			ink  chart.Ink
			seen map[vg.Point]bool
		}{{l.Ink, above}, {l.Below, below}} {
			if len(half.seen) > 0 {
				list[i] = append(list[i], side{half.ink, through(spy, half.seen)})
			}
		}
	}
	return list
}

// through returns the looks of what passes through all of some points.
func through(spy *charttest.Spy, points map[vg.Point]bool) []look {
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
				for want := range points {
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
	var list []look
	for look, all := range passed {
		if len(all) == len(points) {
			list = append(list, look)
		}
	}
	return list
}

// Every curve of all setups is drawn through all its points, in its color or a
// paler one, and looks different from every other one of that color, of its own setup
// or another.
func TestAllSetupsReachTheCanvas(t *testing.T) {
	for n := 2; n <= 3; n++ {
		for _, c := range compared(setups(t, names[:n]...)) {
			list := sidesOf(t, c, 700, 400)
			for i, a := range c.Lines {
				if a.Name == "100 % anti-squat" || a.Runs == nil {
					continue
				}
				for _, half := range list[i] {
					own := func(looks []look) []look {
						return slices.DeleteFunc(slices.Clone(looks), func(l look) bool { return !pale(l.color, half.ink(&palette.Light)) })
					}
					of := own(half.looks)
					if len(of) == 0 {
						t.Errorf("%s: nothing is drawn through %q of setup %d", c.Key, a.Name, a.Setup)
					}
					for k, b := range c.Lines[:i] {
						for _, other := range list[k] {
							if looks := own(other.looks); len(looks) > 0 && !differ(of, looks) {
								t.Errorf("%s: %q of setup %d and %q of setup %d look like %v", c.Key, a.Name, a.Setup, b.Name, b.Setup, of)
							}
						}
					}
				}
			}
		}
	}
}

// pale reports whether a color is another one or lies between it and white, not
// far from it.
func pale(c color.Color, of color.RGBA) bool {
	got, ok := c.(color.RGBA)
	return ok && charttest.Like(got, of, 200) && got.R >= of.R && got.G >= of.G && got.B >= of.B
}

// Of three or four setups each looks different on both screens, and none fades
// away: the palest keeps a third of the contrast of the first.
func TestSetupsOnBothScreens(t *testing.T) {
	list := setups(t, names...)
	list = append(list, plotting.Setup{"fourth", list[1].Result, list[1].Launch})
	list[3].Result = copied(list[3].Result)
	for i := range list[3].Result.Travel {
		list[3].Result.Travel[i].AntiSquat *= 1.3
	}
	c := plotting.AntiSquat(list[0], list[1:]...)
	for _, s := range []chart.Style{charttest.Light, {Palette: palette.Dark}} {
		spy := charttest.NewSpy(700, 400)
		spy.DrawStyle(c, s)
		far := func(c color.Color) float64 {
			got, _ := c.(color.RGBA)
			b := s.Palette.Background
			return math.Hypot(math.Hypot(float64(got.R)-float64(b.R), float64(got.G)-float64(b.G)), float64(got.B)-float64(b.B))
		}
		full, seen := far(s.Palette.Center), map[look]bool{}
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
				if len(a.Path) > 20 { // a curve
					seen[now] = true
					if far(now.color) < full/3 {
						t.Errorf("%v is hardly to be seen", now)
					}
				}
			}
		}
		if len(seen) != 4 {
			t.Errorf("%d looks of 4 setups: %v", len(seen), seen)
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
	list := setups(t, names[:2]...)
	other := list[1].Result
	img, l := charttest.Draw(t, plotting.BarForce(list[0], list[1]), 700, 400, charttest.Light, chart.Mark(0.01))
	found, places := 0, 0
	for i := 2; i < len(other.Travel)-2; i++ {
		s := &other.Travel[i]
		px, py := l.ToPixel(s.Pose.Travel, s.Loads.Hit.Upper.Tension)
		places++
		dot := false
		for dx := -3.0; dx <= 3; dx++ { // past the gap between two dots
			for dy := -1.0; dy <= 1; dy++ {
				dot = dot || charttest.Like(img.RGBAAt(int(px+dx), int(py+dy)), charttest.Light.Palette.Pull, 170)
			}
		}
		if dot {
			found++
		}
	}
	if found < places*9/10 {
		t.Errorf("%d of %d places have the second setup's color", found, places)
	}
	s, err := other.At(0.01, 0)
	if err != nil {
		t.Fatal(err)
	}
	if px, py := l.ToPixel(0.01, s.Loads.Hit.Upper.Tension); !charttest.Like(img.RGBAAt(int(px), int(py)), charttest.Light.Palette.Pull, 60) {
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

func TestLegendNamesAllSetups(t *testing.T) {
	for n := 2; n <= 3; n++ {
		list := setups(t, names[:n]...)
		for key, want := range map[chart.Key][]string{
			plotting.BarForceKey:       {"upper hit", "upper hooked", "lower hit", "lower hooked"},
			plotting.AntiSquatKey:      {"anti-squat", "target 100 to 160 %"},
			plotting.CenterPathKey:     {"path", "100 % anti-squat", "ride height", "target"},
			plotting.BowKey:            {"upper", "lower", "first yield", "worst push"},
			plotting.LaunchWheelsKey:   {"rear wheels", "car", "slip", "wheelspin"},
			plotting.LaunchAttitudeKey: {"rear left", "rear right", "front", "pitch"},
			plotting.LaunchTiresKey:    {"rear left", "rear right", "front left", "front right"},
		} {
			wantLegend(t, chartOf(list, key), append(slices.Clone(names[:n]), want...)...)
		}
		var shares []string
		for _, s := range list {
			p := s.Launch.Peaks[launch.LowerRight]
			push, pull := p.Push/s.Result.Limit(car.Lower, column.Push).Allowable, p.Pull/s.Result.Limit(car.Lower, column.Pull).Allowable
			shares = append(shares, units.Share(max(push, pull)))
		}
		wantLegend(t, chartOf(list, plotting.LaunchBarsKey), "lower right "+strings.Join(shares, " vs "))
	}
}

func TestTitlesNameAllSetups(t *testing.T) {
	headings := []string{
		"Bar force over travel", "Anti-squat over travel", "Instant center path", "Bow over push",
		"Bar force over the launch", "Wheel speed against ground speed", "Pitch and travel", "Tire loads",
	}
	for n := 2; n <= 3; n++ {
		all := strings.Join(names[:n], " vs ")
		for i, c := range compared(setups(t, names[:n]...)) {
			if c.Heading() != headings[i]+": "+all || c.Subtitle != "Saltgrass No. 7 — "+all {
				t.Errorf("%q, %q", c.Heading(), c.Subtitle)
			}
		}
	}
	for _, c := range compared(setups(t, "baseline as it left the shop in spring", "baseline as it came back in the fall")) {
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

// The axes hold what each setup would have in sight alone, and stay while that
// fits.
func TestAxesTakeInAllSetups(t *testing.T) {
	list := setups(t, names...)
	for _, c := range append(compared(list[:2]), compared(list)...) {
		f := c.Frame(&chart.Style{})
		for _, l := range c.Lines {
			if l.Name == "100 % anti-squat" {
				continue
			}
			for _, run := range l.Runs {
				for _, at := range run {
					// A line may be a hair beside the axis on which it stands.
					y, hair := onLeft(&f, at.Y, l.Right), 1e-4*f.Y.Length()
					if !f.X.Contains(at.X) || !chart.Between(f.Y.Min-hair, f.Y.Max+hair).Contains(y) {
						t.Fatalf("%s: %q leaves the chart at %v", c.Key, l.Name, at)
					}
				}
			}
		}
		// The other setups go away and come back: the axes need not move.
		if again := c.Frame(&chart.Style{Frame: f}); again != f {
			t.Errorf("%s: %v became %v", c.Key, f, again)
		}
	}
	// Dragged a little, nothing jumps.
	moved := copied(list[0].Result)
	for i := range moved.Travel {
		moved.Travel[i].AntiSquat *= 1.02
	}
	old := plotting.AntiSquat(list[0], list[1]).Frame(&chart.Style{})
	if got := plotting.AntiSquat(plotting.Of(moved, nil), list[1]).Frame(&chart.Style{Frame: old}); got != old {
		t.Errorf("%v became %v", old, got)
	}
}

func TestExportsNameAllSetups(t *testing.T) {
	list := setups(t, names...)
	for _, c := range append(compared(list[:2]), compared(list)...) {
		for _, f := range chart.Formats {
			if data := exported(t, f, c, chart.Style{}, chart.Sheet{}); len(data) < 100 {
				t.Errorf("%s as %s: %d bytes", c.Key, f, len(data))
			}
		}
		text := svgText(t, exported(t, chart.SVG, c, chart.Style{}, chart.Sheet{}))
		for _, want := range []string{c.Heading(), c.Subtitle, chart.Caution} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing", c.Key, want)
			}
		}
	}
}

// samePoints reports whether two curves have the same points.
func samePoints(a, b []plotter.XYs) bool { return slices.EqualFunc(a, b, slices.Equal[plotter.XYs]) }

package plotting_test

import (
	"math"
	"slices"
	"strconv"
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

// history is a launch of n steps of 1 ms whose values follow from the index of
// a quantity and the part of the time that is over.
func history(n int, f func(quantity int, part float64) float64) *launch.Result {
	l := &launch.Result{Options: launch.Options{Limit: 3, Output: 1e-3}, Outcome: launch.TimeUp}
	fill := func(quantity int, list *[]float64) {
		for i := range n {
			*list = append(*list, f(quantity, float64(i)/float64(n)))
		}
	}
	for i := range n {
		l.Time = append(l.Time, float64(i)*1e-3)
	}
	for b := range launch.RodCount {
		fill(b, &l.Tension[b])
	}
	for _, side := range launch.Sides {
		fill(leftRearLoad+int(side), &l.RearLoad[side])
		fill(leftFrontLoad+int(side), &l.FrontLoad[side])
		fill(leftRearTravel+int(side), &l.RearTravel[side])
		fill(leftFrontTravel+int(side), &l.FrontTravel[side])
	}
	fill(pitchOver, &l.Pitch)
	fill(wheelSpeed, &l.WheelSpeed)
	fill(carSpeed, &l.Speed)
	fill(shaftSpeed, &l.Driveshaft)
	for _, side := range launch.Sides {
		fill(leftSlip+int(side), &l.Slip[side])
	}
	return l
}

// The quantities that a history counts; those of the right side are one more.
const (
	leftRearLoad, leftFrontLoad     = 10, 12
	leftRearTravel, leftFrontTravel = 14, 16
	pitchOver                       = 18
	wheelSpeed, carSpeed            = 19, 20
	shaftSpeed, leftSlip            = 21, 22
)

func wave(quantity int, part float64) float64 {
	return 1000 * float64(quantity+1) * math.Sin(7*part+float64(quantity))
}

func TestLaunchChartsInOrder(t *testing.T) {
	l, r := launched(t, saltgrass())
	var keys []chart.Key
	var titles []string
	for _, c := range overLaunch(plotting.Of(r, l)) {
		keys, titles = append(keys, c.Key), append(titles, c.Title)
		if c.Subtitle != "Saltgrass No. 7 — baseline" {
			t.Errorf("%s: subtitle %q", c.Key, c.Subtitle)
		}
		if !slices.Contains(charttest.Words(c, units.SI, 460, 300), "Time, s") || c.X.Sight != (chart.Between(0, l.Time[len(l.Time)-1])) {
			t.Errorf("%s: %q over %v", c.Key, c.X.Label, c.X.Sight)
		}
	}
	if !slices.Equal(keys, []chart.Key{"launch-bars", "launch-wheels", "launch-attitude", "launch-tires"}) || !slices.Equal(titles, []string{"Bar force over the launch", "Wheel speed against ground speed", "Pitch and travel", "Tire loads"}) {
		t.Errorf("%q %q", keys, titles)
	}
	if got := overLaunch(plotting.Of(r, nil)); len(got) > 0 {
		t.Errorf("%d charts of no launch", len(got))
	}
}

// Short histories are drawn step by step.
func TestLaunchLinesAreTheHistory(t *testing.T) {
	l, r := history(500, wave), analyze(t, saltgrass())
	want := map[chart.Key]map[string][]float64{
		"launch-bars":     {"upper left": l.Tension[0], "upper right": l.Tension[1], "lower left": l.Tension[2], "lower right": l.Tension[3]},
		"launch-attitude": {"rear left": l.RearTravel[0], "rear right": l.RearTravel[1], "pitch": l.Pitch},
		"launch-wheels":   {"rear wheels": l.WheelSpeed, "car": l.Speed},
		"launch-tires":    {"rear left": l.RearLoad[0], "rear right": l.RearLoad[1], "front left": l.FrontLoad[0], "front right": l.FrontLoad[1]},
	}
	for _, c := range overLaunch(plotting.Of(r, l)) {
		for name, values := range want[c.Key] {
			x := charttest.Line(t, c, name)
			if len(x.Runs) != 1 || len(x.Runs[0]) != 500 {
				t.Fatalf("%s, %s: %d runs", c.Key, name, len(x.Runs))
			}
			for i, at := range x.Runs[0] {
				if at.X != l.Time[i] || at.Y != values[i] {
					t.Fatalf("%s, %s: point %d is %v", c.Key, name, i, at)
				}
			}
			if left := strings.HasSuffix(name, "left"); (x.Dash == chart.Dashed) != left || x.Right != (name == "pitch") {
				t.Errorf("%s, %s: dash %v, right axis %v", c.Key, name, x.Dash, x.Right)
			}
		}
	}
}

// Long histories are thinned out; a peak of one step stays, and so do the ends.
func TestLongHistoriesKeepTheirPeaks(t *testing.T) {
	const n, spike, dip = 3001, 1234, 2345
	l := history(n, wave)
	for _, list := range [][]float64{l.Tension[launch.LowerRight], l.Pitch, l.RearLoad[launch.Left], l.WheelSpeed} {
		list[spike], list[dip] = 7e4, -8e4
		list[n-3], list[n-2], list[n-1] = 6e4, -6e4, 0 // the end is no extreme of its part
	}
	for _, c := range overLaunch(plotting.Of(analyze(t, saltgrass()), l)) {
		name := map[chart.Key]string{"launch-bars": "lower right", "launch-attitude": "pitch", "launch-wheels": "rear wheels", "launch-tires": "rear left"}[c.Key]
		points := charttest.Line(t, c, name).Runs[0]
		if len(points) < 400 || len(points) > 602 {
			t.Errorf("%s: %d points", c.Key, len(points))
		}
		if points[0].X != 0 || points[len(points)-1].X != l.Time[n-1] {
			t.Errorf("%s: from %g to %g s", c.Key, points[0].X, points[len(points)-1].X)
		}
		high, low := points[0], points[0]
		for i, at := range points {
			if i > 0 && at.X < points[i-1].X {
				t.Fatalf("%s: back in time at %g s", c.Key, at.X)
			}
			if at.Y > high.Y {
				high = at
			}
			if at.Y < low.Y {
				low = at
			}
		}
		if high.X != l.Time[spike] || high.Y != 7e4 || low.X != l.Time[dip] || low.Y != -8e4 {
			t.Errorf("%s: peaks %v and %v", c.Key, high, low)
		}
		if rows := c.Table(units.SI).Rows; len(rows) != n || rows[spike][0].Value != l.Time[spike] {
			t.Errorf("%s: a table of %d rows", c.Key, len(rows))
		}
	}
}

// A 1.25 x 0.095 in tube has 0.34471 in²; at 75 ksi and a factor of 2 it may
// pull 12,927 lb. The lower bar's push limit is 10,257 lb.
func TestLaunchPeaks(t *testing.T) {
	l := history(200, func(int, float64) float64 { return 0 })
	l.Peaks[launch.UpperLeft] = launch.Peak{Pull: 5000 * lbf, PullTime: 0.05, Push: 1500 * lbf, PushTime: 0.1}
	l.Peaks[launch.UpperRight] = launch.Peak{Pull: 6000 * lbf, PullTime: 0.02, Push: 3300 * lbf, PushTime: 0.15}
	l.Peaks[launch.LowerRight] = launch.Peak{Push: 9870 * lbf, PushTime: 0.112}
	r := analyze(t, saltgrass())
	c := plotting.LaunchBars(plotting.Of(r, l))
	legend := []string{
		"upper left 5,000 lb pull at 0.050 s — 39 %", "upper right 6,000 lb pull at 0.020 s — 46 %",
		"lower left", "lower right 9,870 lb push at 0.112 s — 96 %",
	}
	wantLegend(t, c, legend...)
	type point struct {
		x, y  float64
		label string
		shape chart.Shape
	}
	var marks []point
	for _, m := range c.Points {
		marks = append(marks, point{m.At.X, math.Round(m.At.Y / lbf), m.Label(units.US), m.Shape})
	}
	// A lesser peak is marked when it takes half of the share or more.
	if want := []point{{0.05, 5000, "39 %", chart.Ring}, {0.02, 6000, "46 %", chart.Disc}, {0.15, -3300, "31 %", chart.Disc}, {0.112, -9870, "96 %", chart.Disc}}; !slices.Equal(marks, want) {
		t.Errorf("marks\n%v, want\n%v", marks, want)
	}
	if f := c.Frame(&chart.Style{}); !f.Y.Contains(-9870*lbf) || !f.Y.Contains(6000*lbf) {
		t.Errorf("a peak is out of sight in %v", f.Y)
	}
}

// Limits that nothing comes up against are left out, but for the lower bars'
// push limit; far ones are named at the edge.
func TestLaunchLimits(t *testing.T) {
	r := analyze(t, saltgrass())
	l := history(100, func(int, float64) float64 { return 0 })
	l.Peaks[launch.UpperRight] = launch.Peak{Pull: 9000 * lbf, Push: 100 * lbf}
	l.Peaks[launch.LowerLeft] = launch.Peak{Push: 3000 * lbf}
	c := plotting.LaunchBars(plotting.Of(r, l))
	pull, push := charttest.Rule(c, "upper pull limit 12,927 lb"), charttest.Rule(c, "lower push limit")
	f := c.Frame(&chart.Style{})
	if pull == nil || push == nil || push.At != -r.Bars[car.Lower].Push.Allowable || !f.Y.Contains(pull.At) || !f.Y.Contains(push.At) {
		t.Errorf("pull %+v, push %+v in %v", pull, push, f.Y)
	}
	for _, absent := range []string{"upper push", "lower pull"} {
		if charttest.Rule(c, absent) != nil {
			t.Errorf("no bar comes up against the %s limit, yet it is drawn", absent)
		}
	}
	l.Peaks[launch.UpperRight].Pull = 1000 * lbf
	l.Peaks[launch.LowerLeft].Push = 1000 * lbf
	c = plotting.LaunchBars(plotting.Of(r, l))
	f = c.Frame(&chart.Style{})
	for _, name := range []string{"upper pull limit", "lower push limit"} {
		if limit := charttest.Rule(c, name); limit == nil || !limit.Edge || f.Y.Contains(limit.At) {
			t.Errorf("%s: %+v in %v", name, limit, f.Y)
		}
	}
}

func TestLaunchForcesBeyondReason(t *testing.T) {
	l := history(100, func(int, float64) float64 { return 0 })
	l.Tension[launch.LowerLeft][30] = -1e9
	c := plotting.LaunchBars(plotting.Of(analyze(t, saltgrass()), l))
	if f := c.Frame(&chart.Style{}); f.Y.Length() > 1e6 {
		t.Errorf("frame %v", f.Y)
	}
	if got := charttest.Notes(c, units.US); !strings.Contains(got, "Off the chart at 0.030 s: up to 224,808,943 lb.") {
		t.Error(got)
	}
}

func TestSidesThatCarryTheSame(t *testing.T) {
	r := analyze(t, saltgrass())
	const same = "Left and right bars carry the same here."
	l := history(100, wave)
	if strings.Contains(charttest.Notes(plotting.LaunchBars(plotting.Of(r, l)), units.US), same) {
		t.Error("sides that differ are called the same")
	}
	l.Tension[launch.UpperRight], l.Tension[launch.LowerRight] = l.Tension[launch.UpperLeft], l.Tension[launch.LowerLeft]
	if !strings.Contains(charttest.Notes(plotting.LaunchBars(plotting.Of(r, l)), units.US), same) {
		t.Error("nothing says that the sides carry the same")
	}
}

func TestTireShadesAreTheTimesOffTheGround(t *testing.T) {
	l := history(100, func(int, float64) float64 { return 1000 })
	for _, i := range []int{0, 40, 41, 42, 99} {
		l.FrontLoad[launch.Left][i], l.FrontLoad[launch.Right][i] = 0, 0
	}
	l.FrontLoad[launch.Left][60] = 0 // the other wheel stands
	c := plotting.LaunchTires(plotting.Of(analyze(t, saltgrass()), l))
	var got []chart.Span
	for _, r := range c.Regions {
		if !r.Shade || !math.IsInf(r.Y.Length(), 1) {
			t.Errorf("%+v", r)
		}
		got = append(got, chart.Between(math.Round(1e4*r.X.Min), math.Round(1e4*r.X.Max)))
	}
	// In tenths of a millisecond, half a step around.
	if want := []chart.Span{chart.Between(-5, 5), chart.Between(395, 425), chart.Between(985, 995)}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	for _, x := range []struct {
		lift launch.Lift
		want string
	}{
		{launch.Lift{}, ""},
		{launch.Lift{Height: inch, Time: 0.3}, "One front wheel leaves the ground, up to 1.00 in at 0.300 s."},
		{launch.Lift{Height: 2 * inch, Time: 0.3, Start: 0.1, Duration: 0.25}, "Shaded: front wheels off the ground, 0.250 s in all, up to 2.00 in."},
	} {
		l.Lift = x.lift
		if got := charttest.Notes(plotting.LaunchTires(plotting.Of(analyze(t, saltgrass()), l)), units.US); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
}

// A car that is not held, or finds no rest, has no history; its charts say so
// everywhere.
func TestNoHistory(t *testing.T) {
	for _, outcome := range []launch.Outcome{launch.NotHeld, launch.NoRest, launch.Stopped} {
		noHistory(t, &launch.Result{Outcome: outcome, Options: launch.Options{Limit: 3}})
	}
}

func noHistory(t *testing.T, none *launch.Result) {
	says := "There is no launch: " + none.Outcome.String() + "."
	for _, c := range overLaunch(plotting.Of(analyze(t, saltgrass()), none)) {
		var all []string
		for _, x := range charttest.Texts(c, units.US, 460, 300) {
			all = append(all, x.Text)
		}
		if !strings.Contains(strings.Join(all, " "), says) {
			t.Errorf("%s: %q", c.Key, all)
		}
		for _, at := range []float64{-1, 0, 1} {
			if got := c.Readout(at, units.US); !slices.Equal(got, []string{says}) {
				t.Errorf("%s: %q", c.Key, got)
			}
		}
		img, l := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0.5))
		unmarked, _ := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Marker{})
		if !slices.Equal(img.Pix, unmarked.Pix) {
			t.Errorf("%s: a marker where there is nothing", c.Key)
		}
		px, py := (l.Left+l.Right)/2, (l.Top+l.Bottom)/2
		if at, ok := l.At(px, py); ok {
			t.Errorf("%s: pointing gives %g s", c.Key, at)
		}
		if got := l.Readout(px, py, units.SI); !slices.Equal(got, []string{says}) {
			t.Errorf("%s: %q", c.Key, got)
		}
		if table := c.Table(units.US); len(table.Rows) != 0 || len(table.Header) < 5 {
			t.Errorf("%s: %v", c.Key, table)
		}
		for _, f := range chart.Formats {
			exported(t, f, c, chart.Style{}, chart.Sheet{})
		}
	}
}

// What a chart shows of a real launch is what the launch found.
func TestLaunchOfTheReferenceCar(t *testing.T) {
	l, r := launched(t, saltgrass())
	c := plotting.LaunchBars(plotting.Of(r, l))
	// A peak may lie between two values of the history.
	most, shown := l.Peaks[launch.LowerRight], l.Extremes(l.Tension[launch.LowerRight])
	if math.Abs(shown.LeastTime-most.PushTime) > l.Options.Output {
		t.Errorf("the greatest push is at %v s, that of the history at %v s", most.PushTime, shown.LeastTime)
	}
	label := units.US.Format(units.Force, most.Push) + " push at " + strconv.FormatFloat(shown.LeastTime, 'f', 3, 64) + " s — " + units.Share(most.Push/r.Limit(car.Lower, column.Push).Allowable)
	if got := charttest.Line(t, c, "lower right").Most(units.US); got != label {
		t.Errorf("%q, want %q", got, label)
	}
	for _, c := range overLaunch(plotting.Of(r, l)) {
		f := c.Frame(&chart.Style{})
		for _, x := range c.Lines {
			for _, at := range x.Runs[0] {
				if !f.X.Contains(at.X) || !f.Y.Contains(onLeft(&f, at.Y, x.Right)) {
					t.Fatalf("%s: %s leaves the chart at %v", c.Key, x.Name, at)
				}
			}
		}
	}
}

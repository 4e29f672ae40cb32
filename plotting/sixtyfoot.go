package plotting

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
)

// SixtyFootKey is the key of SixtyFoot.
const SixtyFootKey = "sixty-foot"

const (
	// leastSquat [1] and leastTime [s] are the shortest axes.
	leastSquat = 0.2
	leastTime  = 0.05
	// listed is how many setups have marks of their own; more nobody tells
	// apart.
	listed = 6
	// currentSize is the size of the current setup's marks over the others'.
	currentSize = 1.5
)

// logOne says what to do while there is no run to draw.
const logOne = "Log a run with its 60-ft time to see it here."

// likelyTimes are on the axis while there is no run [s], from quick to slow.
var likelyTimes = Span{1.2, 1.6}

// SixtyFoot charts the 60-ft time of each run in a car's log over the
// anti-squat at ride height that it was made with. Marks tell the setups apart;
// those of the current one, an index of the car's setups, are large. From three
// runs at two or more anti-squats on there is a straight line of least squares
// with its slope in words. Runs without time or anti-squat are counted only.
func SixtyFoot(c *car.Car, current int) *Chart {
	about := newSixtyFoot(c)
	chart := &Chart{
		Key: SixtyFootKey, Title: "60-ft time over anti-squat", heading: "60-ft time over anti-squat",
		Subtitle: c.Body.Name + " — run log", subject: about,
		x: axis{label: "Anti-squat at ride height", quantity: units.Percent, least: leastSquat},
		y: axis{label: "60-ft time", quantity: units.Time, least: leastTime},
	}
	about.see(chart)
	about.marks(chart, current)
	about.notes(chart)
	return chart
}

type sixtyFoot struct {
	car           *car.Car
	log           []logged // all runs by date
	drawn         []logged // those with both values
	untimed, bare int      // runs without time, and those without anti-squat only
	trend         trend
	trendTells    bool // there is a trend
}

// logged is a run with its setup.
type logged struct {
	car.Run
	setup int
}

func (l *logged) point() plotter.XY { return plotter.XY{X: l.AntiSquat, Y: l.SixtyFoot} }

func newSixtyFoot(c *car.Car) sixtyFoot {
	s := sixtyFoot{car: c}
	for i := range c.Setups {
		for _, run := range c.Setups[i].Runs {
			s.log = append(s.log, logged{run, i})
		}
	}
	slices.SortStableFunc(s.log, func(a, b logged) int { return strings.Compare(a.Date, b.Date) })
	var points plotter.XYs
	for _, run := range s.log {
		switch {
		case run.SixtyFoot == 0:
			s.untimed++
		case run.AntiSquat == 0:
			s.bare++
		default:
			s.drawn = append(s.drawn, run)
			points = append(points, run.point())
		}
	}
	s.trend, s.trendTells = fit(points)
	return s
}

// Timed tells whether any run in a car's log has a 60-ft time.
func Timed(c *car.Car) bool {
	return slices.ContainsFunc(c.Setups, func(s car.Setup) bool {
		return slices.ContainsFunc(s.Runs, func(r car.Run) bool { return r.SixtyFoot != 0 })
	})
}

// see sets what must be in sight, and draws the trend.
func (s sixtyFoot) see(c *Chart) {
	if len(s.drawn) == 0 {
		target := s.car.Check.TargetAntiSquat
		c.x.sight, c.y.sight = Span{target[0], target[1]}, likelyTimes
		return
	}
	c.x.sight, c.y.sight = nowhere(), nowhere()
	for i := range s.drawn {
		at := s.drawn[i].point()
		c.x.sight, c.y.sight = c.x.sight.with(at.X), c.y.sight.with(at.Y)
	}
	if s.trendTells {
		run := plotter.XYs{s.trend.at(c.x.sight.Min), s.trend.at(c.x.sight.Max)}
		c.lines = []line{{name: "trend, a hint", ink: mutedInk, dash: dashed, runs: []plotter.XYs{run}}}
		c.y.sight = c.y.sight.with(run[0].Y, run[1].Y)
	}
}

// looks are the shapes and colors that tell setups apart.
var looks = [listed]struct {
	shape shape
	ink   ink
}{{disc, centerInk}, {square, lowerInk}, {diamond, pullInk}, {triangle, pushInk}, {ring, plainInk}, {cross, wholeInk}}

// marks puts each run on the chart, those of the current setup on top.
func (s sixtyFoot) marks(c *Chart, current int) {
	shown := s.shown(current)
	names := make([]string, len(shown))
	for i, setup := range shown {
		names[i] = s.car.Setups[setup].Name
	}
	names = shortNames(names, nameLength)
	var last, rest []mark
	for i := range s.drawn {
		run := &s.drawn[i]
		m := mark{name: "other setups", ink: mutedInk, shape: disc, size: 0.7, at: run.point(), colored: true}
		if k := slices.Index(shown, run.setup); k >= 0 {
			m.name, m.ink, m.shape, m.size = names[k], looks[k].ink, looks[k].shape, 1
		}
		if run.setup == current {
			m.name, m.size = m.name+" (current)", currentSize
			last = append(last, m)
			continue
		}
		if m.name == "other setups" {
			rest = append(rest, m)
			continue
		}
		c.marks = append(c.marks, m)
	}
	c.marks = slices.Concat(rest, c.marks, last)
}

// shown returns the setups with marks of their own, in the car's order: the
// current one and those with the most runs drawn.
func (s sixtyFoot) shown(current int) []int {
	count := map[int]int{}
	for i := range s.drawn {
		count[s.drawn[i].setup]++
	}
	var list []int
	for i := range s.car.Setups {
		if count[i] > 0 {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int {
		switch {
		case a == current:
			return -1
		case b == current:
			return 1
		}
		return count[b] - count[a]
	})
	list = list[:min(len(list), listed)]
	slices.Sort(list)
	return list
}

// notes say what the trend is worth, what is missing and what is not drawn.
func (s sixtyFoot) notes(c *Chart) {
	c.note(func(shown Frame) string {
		switch {
		case len(s.drawn) == 0:
			return logOne
		case !s.trendTells:
			return "A trend takes three runs at two or more different anti-squats."
		}
		return s.trend.words(shown.Units) + s.trend.caution() + "."
	})
	c.note(func(Frame) string {
		var parts []string
		if s.bare > 0 {
			parts = append(parts, counted(s.bare, "run")+" without a known anti-squat")
		}
		if s.untimed > 0 {
			parts = append(parts, counted(s.untimed, "run")+" without a 60-ft time")
		}
		return sentence("Not drawn: ", strings.Join(parts, ", "), ".")
	})
}

// counted writes a number of things: "1 run", "9 runs".
func counted(n int, thing string) string {
	if n != 1 {
		thing += "s"
	}
	return strconv.Itoa(n) + " " + thing
}

// nearest returns the run drawn nearest to a pixel, nil when there is none.
func (s sixtyFoot) nearest(l *Layout, px, py float64) *logged {
	var found *logged
	least := math.Inf(1)
	for i := range s.drawn {
		x, y := l.ToPixel(s.drawn[i].AntiSquat, s.drawn[i].SixtyFoot)
		if d := math.Hypot(x-px, y-py); d < least {
			found, least = &s.drawn[i], d
		}
	}
	return found
}

// says writes a run: date, track, setup, time and anti-squat.
func (s sixtyFoot) says(run *logged, sys units.System) []reading {
	var lines []reading
	for _, text := range []string{run.Date, run.Track, s.car.Setups[run.setup].Name} {
		if text != "" {
			lines = append(lines, plainly(text))
		}
	}
	return append(lines,
		reading{name: "60 ft in", value: value(sys, units.Time, run.SixtyFoot)},
		reading{name: "anti-squat", value: number(100*run.AntiSquat, 1) + " %"})
}

func (s sixtyFoot) readoutAt(l *Layout, px, py float64, sys units.System) []reading {
	run := s.nearest(l, px, py)
	if run == nil {
		return s.readout(0, sys)
	}
	return s.says(run, sys)
}

// readout sums up the log; no run stands for a travel.
func (s sixtyFoot) readout(_ float64, sys units.System) []reading {
	if len(s.drawn) == 0 {
		return []reading{plainly(logOne)}
	}
	best := slices.MinFunc(s.drawn, func(a, b logged) int {
		if a.SixtyFoot < b.SixtyFoot {
			return -1
		}
		return 1
	})
	lines := []reading{plainly(counted(len(s.drawn), "run") + " with 60-ft time and anti-squat")}
	lines = append(lines, plainly("quickest "+value(sys, units.Time, best.SixtyFoot)+" with "+s.car.Setups[best.setup].Name+" at "+number(100*best.AntiSquat, 1)+" %"))
	if s.trendTells {
		lines = append(lines, plainly("around the trend the times scatter by "+value(sys, units.Time, s.trend.scatter)))
	}
	return lines
}

func (s sixtyFoot) place(float64) place { return place{} }

func (s sixtyFoot) positionAt(*Layout, float64, float64) (at, off float64, ok bool) {
	return 0, 0, false
}

// table lists all runs by date, drawn or not.
func (s sixtyFoot) table(sys units.System, setup string) Table {
	t := newTable(sys, setup)
	for _, name := range []string{"date", "track", "setup"} {
		t.texts(name)
	}
	t.add("anti-squat", "", units.Percent)
	t.add("60 ft", "", units.Time)
	for i := range s.log {
		run := &s.log[i]
		t.start()
		for _, text := range []string{run.Date, run.Track, s.car.Setups[run.setup].Name} {
			t.text(text)
		}
		t.cell(run.AntiSquat, run.AntiSquat != 0)
		t.cell(run.SixtyFoot, run.SixtyFoot != 0)
	}
	return t.Table
}

package plotting

import (
	"image/color"
	"math"
	"slices"
	"strconv"
	"strings"

	"bowline/model/car"
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/plotter"
)

// SixtyFootKey is the key of [SixtyFoot].
const SixtyFootKey chart.Key = "sixty-foot"

const (
	// leastSquat [1] and leastTime [s] are the shortest axes.
	leastSquat = 0.2
	leastTime  = 0.05
	// listed is the largest number of setups with a shape and color each; the
	// other ones share one.
	listed = 6
	// currentSize is the size of the current setup's points over the others'.
	currentSize = 1.5
)

// logOne says what to do while there is no run to draw.
const logOne = "Log a run with its 60-ft time to see it here."

// likelyTimes are on the axis while there is no run [s], from quick to slow.
var likelyTimes = chart.Between(1.2, 1.6)

// SixtyFoot charts the 60-ft time of each run in a car's log over the
// anti-squat at ride height that it was made with. Shape and color tell the setups
// apart; the points of the current one, an index of the car's setups, are large. From three
// runs at two or more anti-squats on there is a straight line of least squares
// with its slope in words. Runs without time or anti-squat are counted only.
func SixtyFoot(c *car.Car, current int) *chart.Chart {
	about := newSixtyFoot(c)
	chart := &chart.Chart{
		Key: SixtyFootKey, Title: "60-ft time over anti-squat",
		Subtitle: c.Body.Name + " — run log", Subject: about, Blank: !timed(c),
		X: chart.Axis{Label: "Anti-squat at ride height", Quantity: units.Percent, Least: leastSquat},
		Y: chart.Axis{Label: "60-ft time", Quantity: units.Time, Least: leastTime},
	}
	about.see(chart)
	about.points(chart, current)
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

// timed reports whether any run in a car's log has a 60-ft time.
func timed(c *car.Car) bool {
	return slices.ContainsFunc(c.Setups, func(s car.Setup) bool {
		return slices.ContainsFunc(s.Runs, func(r car.Run) bool { return r.SixtyFoot != 0 })
	})
}

// see sets what must be in sight, and draws the trend.
func (s sixtyFoot) see(c *chart.Chart) {
	if len(s.drawn) == 0 {
		target := s.car.Check.TargetAntiSquat
		c.X.Sight, c.Y.Sight = chart.Between(target[0], target[1]), likelyTimes
		return
	}
	c.X.Sight, c.Y.Sight = chart.Nowhere(), chart.Nowhere()
	for i := range s.drawn {
		at := s.drawn[i].point()
		c.X.Sight, c.Y.Sight = c.X.Sight.With(at.X), c.Y.Sight.With(at.Y)
	}
	if s.trendTells {
		run := plotter.XYs{s.trend.at(c.X.Sight.Min), s.trend.at(c.X.Sight.Max)}
		c.Lines = []chart.Line{{Name: "trend, a hint", Ink: chart.MutedInk, Dash: chart.Dashed, Runs: []plotter.XYs{run}}}
		c.Y.Sight = c.Y.Sight.With(run[0].Y, run[1].Y)
	}
}

// shapes tell setups apart, each in its color of the palette's Series.
var shapes = [listed]chart.Shape{chart.Disc, chart.Square, chart.Diamond, chart.Triangle, chart.Ring, chart.Cross}

// seriesInk is the color of a setup that is shown.
func seriesInk(i int) chart.Ink { return func(p *palette.Palette) color.RGBA { return p.Series[i] } }

// points puts each run on the chart, those of the current setup on top.
func (s sixtyFoot) points(c *chart.Chart, current int) {
	shown := s.shown(current)
	names := make([]string, len(shown))
	for i, setup := range shown {
		names[i] = s.car.Setups[setup].Name
	}
	names = chart.ShortNames(names, chart.NameLength)
	var last, rest []chart.Point
	for i := range s.drawn {
		run := &s.drawn[i]
		m := chart.Point{Name: "other setups", Ink: chart.MutedInk, Shape: chart.Disc, Size: 0.7, At: run.point(), Colored: true}
		if k := slices.Index(shown, run.setup); k >= 0 {
			m.Name, m.Ink, m.Shape, m.Size = names[k], seriesInk(k), shapes[k], 1
		}
		if run.setup == current {
			m.Name, m.Size = m.Name+" (current)", currentSize
			last = append(last, m)
			continue
		}
		if m.Name == "other setups" {
			rest = append(rest, m)
			continue
		}
		c.Points = append(c.Points, m)
	}
	c.Points = slices.Concat(rest, c.Points, last)
}

// shown returns the setups with a shape each, in the car's order: the
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
func (s sixtyFoot) notes(c *chart.Chart) {
	c.AddNote(func(shown chart.Frame) string {
		switch {
		case len(s.drawn) == 0:
			return logOne
		case !s.trendTells:
			return "A trend takes three runs at two or more different anti-squats."
		}
		return s.trend.words(shown.Units) + s.trend.caution() + "."
	})
	c.AddNote(func(chart.Frame) string {
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
func (s sixtyFoot) nearest(l *chart.Layout, px, py float64) *logged {
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
func (s sixtyFoot) says(run *logged, sys units.System) []chart.Reading {
	var lines []chart.Reading
	for _, text := range []string{run.Date, run.Track, s.car.Setups[run.setup].Name} {
		if text != "" {
			lines = append(lines, chart.Plain(text))
		}
	}
	return append(lines,
		chart.Reading{Name: "60 ft in", Value: sys.Format(units.Time, run.SixtyFoot)},
		chart.Reading{Name: "anti-squat", Value: sys.Format(units.Percent, run.AntiSquat)})
}

func (s sixtyFoot) ReadoutAt(l *chart.Layout, px, py float64, sys units.System) []chart.Reading {
	run := s.nearest(l, px, py)
	if run == nil {
		return s.Readout(0, sys)
	}
	return s.says(run, sys)
}

// Readout sums up the log; no run stands for a travel.
func (s sixtyFoot) Readout(_ float64, sys units.System) []chart.Reading {
	if len(s.drawn) == 0 {
		return []chart.Reading{chart.Plain(logOne)}
	}
	best := slices.MinFunc(s.drawn, func(a, b logged) int {
		if a.SixtyFoot < b.SixtyFoot {
			return -1
		}
		return 1
	})
	lines := []chart.Reading{chart.Plain(counted(len(s.drawn), "run") + " with 60-ft time and anti-squat")}
	lines = append(lines, chart.Plain("quickest "+sys.Format(units.Time, best.SixtyFoot)+" with "+s.car.Setups[best.setup].Name+" at "+sys.Format(units.Percent, best.AntiSquat)))
	if s.trendTells {
		lines = append(lines, chart.Plain("around the trend the times scatter by "+sys.Format(units.Time, s.trend.residual)))
	}
	return lines
}

func (s sixtyFoot) Place(float64) chart.Place { return chart.Place{} }

func (s sixtyFoot) PositionAt(*chart.Layout, float64, float64) (at, off float64, ok bool) {
	return 0, 0, false
}

// Table lists all runs by date, drawn or not.
func (s sixtyFoot) Table(sys units.System, setup string) chart.Table {
	t := chart.NewTable(sys, setup)
	for _, name := range []string{"date", "track", "setup"} {
		t.Texts(name)
	}
	t.Add("anti-squat", "", units.Percent)
	t.Add("60 ft", "", units.Time)
	for i := range s.log {
		run := &s.log[i]
		t.Start()
		for _, text := range []string{run.Date, run.Track, s.car.Setups[run.setup].Name} {
			t.Text(text)
		}
		t.Cell(run.AntiSquat, run.AntiSquat != 0)
		t.Cell(run.SixtyFoot, run.SixtyFoot != 0)
	}
	return t.Table
}

package plotting

import (
	"math"
	"slices"
	"strings"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

const (
	// sidesApart is the difference of the rear travels, over the range of
	// travel, from which on each side is drawn for itself.
	sidesApart = 0.03
	// leastTravel and leastPitch are the shortest axes, and what is too little
	// to be named.
	leastTravel = 5e-3 // m
	leastPitch  = 2e-3 // rad
)

// LaunchAttitudeKey is the key of [LaunchAttitude].
const LaunchAttitudeKey chart.Key = "launch-attitude"

// LaunchAttitude charts pitch, nose up upward on the right axis, and the rise
// of the wheels in the chassis, bump upward on the left axis, over a launch. The
// two axes have their zero and their ticks in common. Rear wheels that rise
// alike are drawn as one, and so are both front wheels.
func LaunchAttitude(first Setup, others ...Setup) *chart.Chart {
	return compare(first, others, attitudeOverTime)
}

// attitudeOverTime is the chart of one setup, with each rear wheel for itself if
// they rise apart in it or in one beside it.
func attitudeOverTime(setup Setup, beside []Setup) *chart.Chart {
	l := setup.Launch
	about := newLaunchAttitude(l, slices.ContainsFunc(append(beside, setup), func(s Setup) bool { return rearsApart(s.Launch) }))
	c := newLaunchChart(setup, LaunchAttitudeKey, "Pitch and travel", about)
	c.Aside = func(s units.System) string {
		return "travel [" + s.Symbol(units.Length) + "] left, pitch [" + s.Symbol(units.Angle) + "] right"
	}
	c.Y = chart.Axis{Quantity: units.Length, Low: "droop, rise", High: "bump, squat", LowInk: chart.MutedInk, HighInk: chart.MutedInk, Unsigned: true, Least: leastTravel}
	c.Right = &chart.Axis{Quantity: units.Angle, Low: "nose down", High: "nose up", LowInk: chart.PlainInk, HighInk: chart.PlainInk, Unsigned: true, Least: leastPitch}
	for i := range about.shown {
		t := &about.shown[i]
		c.Lines = append(c.Lines, chart.Line{Name: t.name, Ink: t.ink, Dash: t.dash, Runs: about.curve(t.values)})
		c.Y.Sight = c.Y.Sight.With(t.values...)
	}
	c.Lines = append(c.Lines, chart.Line{Name: "pitch", Ink: chart.PlainInk, Runs: about.curve(l.Pitch), Right: true})
	c.Right.Sight = c.Right.Sight.With(l.Pitch...)
	c.Y.Sight = chart.ShareZero(c.Y.Need(), c.Right.Need())
	c.Rules = []chart.Rule{{Ink: chart.MutedInk, At: 0}}
	about.extremes(c)
	return c
}

type launchAttitude struct {
	overTime
	shown []travelLine
}

// travelLine is a curve of the wheels' travel.
type travelLine struct {
	name   string
	ink    chart.Ink
	dash   chart.Dash
	values []float64
	// What the car does there in bump and in droop.
	low, high string
}

func newLaunchAttitude(l *launch.Result, apart bool) launchAttitude {
	a := launchAttitude{overTime: overTime{l}}
	left, right := l.RearTravel[launch.Left], l.RearTravel[launch.Right]
	if apart {
		a.shown = []travelLine{
			{"rear left", rearInk, chart.Dashed, left, "squats", "rises"},
			{"rear right", rearInk, chart.Solid, right, "squats", "rises"},
		}
	} else {
		a.shown = []travelLine{{"rear", rearInk, chart.Solid, mean(left, right), "squats", "rises"}}
	}
	front := mean(l.FrontTravel[launch.Left], l.FrontTravel[launch.Right])
	a.shown = append(a.shown, travelLine{"front", frontInk, chart.Fine, front, "dives", "rises"})
	return a
}

// rearsApart reports whether left and right rear travel differ visibly.
func rearsApart(l *launch.Result) bool {
	var all chart.Span
	var apart float64
	right := l.RearTravel[launch.Right]
	for i, left := range l.RearTravel[launch.Left] {
		all = all.With(left, right[i])
		apart = math.Max(apart, math.Abs(left-right[i]))
	}
	return apart > sidesApart*math.Max(all.Length(), leastTravel)
}

// extremes mark how far each goes.
func (a launchAttitude) extremes(c *chart.Chart) {
	add := func(i chart.Ink, at int, values []float64, right bool, of, head string, brief chart.Words) {
		when := func(s units.System) string { return brief(s) + " at " + timeName(s, a.l.Time[at]) }
		c.Points = append(c.Points, chart.Point{
			Ink: i, Shape: chart.Disc, At: plotter.XY{X: a.l.Time[at], Y: values[at]}, Apart: true, Right: right,
			Caption: chart.Caption{Of: of, Head: head, Amount: when, Brief: brief},
		})
	}
	if at := furthest(a.l.Pitch); at >= 0 && math.Abs(a.l.Pitch[at]) > leastPitch {
		add(chart.PlainInk, at, a.l.Pitch, true, "pitch", pitchSide(a.l.Pitch[at]), func(s units.System) string {
			return s.Format(units.Angle, math.Abs(a.l.Pitch[at]))
		})
	}
	for k := range a.shown {
		t := &a.shown[k]
		if at := furthest(t.values); at >= 0 && math.Abs(t.values[at]) > leastTravel && !a.lesser(k) {
			does := t.low
			if t.values[at] < 0 {
				does = t.high
			}
			axle, _, _ := strings.Cut(t.name, " ")
			add(t.ink, at, t.values, false, axle, t.name+" "+does, func(s units.System) string {
				return s.Format(units.Length, math.Abs(t.values[at]))
			})
		}
	}
}

// lesser reports whether the other rear wheel goes further.
func (a launchAttitude) lesser(k int) bool {
	if len(a.shown) < 3 || k > 1 {
		return false
	}
	far := func(k int) float64 { return math.Abs(a.shown[k].values[furthest(a.shown[k].values)]) }
	return far(k) < far(1-k)
}

// pitchSide names the side of level that a pitch is on.
func pitchSide(pitch float64) string {
	if pitch < 0 {
		return "nose down"
	}
	return "nose up"
}

// Readout writes pitch and the travel of every wheel.
func (a launchAttitude) Readout(t float64, s units.System) []chart.Reading {
	m, ok := a.at(t)
	if !ok {
		return a.verdict()
	}
	lines := []chart.Reading{chart.Plain(timeName(s, m.time)), {Name: "pitch", Value: s.Nose(m.of(a.l.Pitch))}}
	for _, r := range a.records()[1:] {
		lines = append(lines, chart.Reading{Name: r.name, Value: s.Travel(m.of(r.values))})
	}
	return lines
}

// Place puts a dot on each curve.
func (a launchAttitude) Place(t float64) chart.Place {
	m, ok := a.at(t)
	at := chart.Place{Line: ok, X: m.time}
	if ok {
		for i := range a.shown {
			at.Dots = append(at.Dots, chart.Dot{At: plotter.XY{X: m.time, Y: m.of(a.shown[i].values)}, Ink: a.shown[i].ink})
		}
		at.Dots = append(at.Dots, chart.Dot{At: plotter.XY{X: m.time, Y: m.of(a.l.Pitch)}, Ink: chart.PlainInk, Right: true})
	}
	return at
}

func (a launchAttitude) records() []record {
	list := []record{{"pitch", "nose-up positive", units.Angle, a.l.Pitch}}
	for _, side := range launch.Sides {
		list = append(list, record{"rear " + side.String(), "bump positive", units.Length, a.l.RearTravel[side]})
	}
	for _, side := range launch.Sides {
		list = append(list, record{"front " + side.String(), "bump positive", units.Length, a.l.FrontTravel[side]})
	}
	return list
}

// Table lists pitch and the travel of every wheel.
func (a launchAttitude) Table(s units.System, setup string) chart.Table {
	return a.tableOf(s, setup, a.records(), nil, nil)
}

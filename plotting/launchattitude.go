package plotting

import (
	"math"
	"strings"

	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"

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

// LaunchAttitude charts pitch, nose up upward on the right axis, and the rise
// of the wheels in the chassis, bump upward on the left axis, over a launch. The
// two axes have their zero and their ticks in common. Rear wheels that rise
// alike are drawn as one, and so are both front wheels.
func LaunchAttitude(l *launch.Result, r *analysis.Result) *Chart {
	return launchAttitudeOf(l, r, rearsApart(l))
}

// launchAttitudeOf is the chart with each rear wheel for itself or both as one.
func launchAttitudeOf(l *launch.Result, r *analysis.Result, apart bool) *Chart {
	about := newLaunchAttitude(l, apart)
	c := newLaunchChart(l, r, "launch-attitude", "Pitch and travel", about)
	c.aside = func(s units.System) string {
		return "travel [" + s.Symbol(units.Length) + "] left, pitch [" + s.Symbol(units.Angle) + "] right"
	}
	c.y = axis{quantity: units.Length, low: "droop, rise", high: "bump, squat", lowInk: mutedInk, highInk: mutedInk, unsigned: true, least: leastTravel}
	c.right = &axis{quantity: units.Angle, low: "nose down", high: "nose up", lowInk: plainInk, highInk: plainInk, unsigned: true, least: leastPitch}
	for i := range about.shown {
		t := &about.shown[i]
		c.lines = append(c.lines, line{name: t.name, ink: t.ink, dash: t.dash, runs: about.curve(t.values)})
		c.y.sight = c.y.sight.with(t.values...)
	}
	c.lines = append(c.lines, line{name: "pitch", ink: plainInk, runs: about.curve(l.Pitch), right: true})
	c.right.sight = c.right.sight.with(l.Pitch...)
	c.y.sight = shared(c.y.wide(), c.right.wide())
	c.rules = []rule{{ink: mutedInk, at: 0}}
	about.marks(c)
	return c
}

// shared returns the left span, grown so that a right one with the same zero
// can use as much of the height.
func shared(left, right Span) Span {
	scale := math.Max(left.Max, -left.Min) / math.Max(right.Max, -right.Min)
	return left.with(right.Min*scale, right.Max*scale)
}

type launchAttitude struct {
	overTime
	shown []travelLine
}

// travelLine is a curve of the wheels' travel.
type travelLine struct {
	name   string
	ink    ink
	dash   dash
	values []float64
	// What the car does there in bump and in droop.
	low, high string
}

func newLaunchAttitude(l *launch.Result, apart bool) launchAttitude {
	a := launchAttitude{overTime: overTime{l}}
	left, right := l.RearTravel[launch.Left], l.RearTravel[launch.Right]
	if apart {
		a.shown = []travelLine{
			{"rear left", rearInk, dashed, left, "squats", "rises"},
			{"rear right", rearInk, solid, right, "squats", "rises"},
		}
	} else {
		a.shown = []travelLine{{"rear", rearInk, solid, mean(left, right), "squats", "rises"}}
	}
	front := mean(l.FrontTravel[launch.Left], l.FrontTravel[launch.Right])
	a.shown = append(a.shown, travelLine{"front", frontInk, fine, front, "dives", "rises"})
	return a
}

// rearsApart tells whether left and right rear travel differ visibly.
func rearsApart(l *launch.Result) bool {
	var all Span
	var apart float64
	right := l.RearTravel[launch.Right]
	for i, left := range l.RearTravel[launch.Left] {
		all = all.with(left, right[i])
		apart = math.Max(apart, math.Abs(left-right[i]))
	}
	return apart > sidesApart*math.Max(all.length(), leastTravel)
}

// marks name how far each goes.
func (a launchAttitude) marks(c *Chart) {
	add := func(i ink, at int, values []float64, right bool, of, head string, brief words) {
		when := func(s units.System) string { return brief(s) + " at " + timeName(s, a.l.Time[at]) }
		c.marks = append(c.marks, mark{
			ink: i, shape: disc, at: plotter.XY{X: a.l.Time[at], Y: values[at]}, apart: true, right: right,
			caption: caption{of: of, head: head, amount: when, brief: brief},
		})
	}
	if at := furthest(a.l.Pitch); at >= 0 && math.Abs(a.l.Pitch[at]) > leastPitch {
		add(plainInk, at, a.l.Pitch, true, "pitch", pitchSide(a.l.Pitch[at]), func(s units.System) string {
			return value(s, units.Angle, math.Abs(a.l.Pitch[at]))
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
				return value(s, units.Length, math.Abs(t.values[at]))
			})
		}
	}
}

// lesser tells whether the other rear wheel goes further.
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

// readout writes pitch and the travel of every wheel.
func (a launchAttitude) readout(t float64, s units.System) []reading {
	m, ok := a.at(t)
	if !ok {
		return a.verdict(s)
	}
	lines := []reading{plainly(timeName(s, m.time)), {name: "pitch", value: s.Nose(m.of(a.l.Pitch))}}
	for _, r := range a.records()[1:] {
		lines = append(lines, reading{name: r.name, value: s.Travel(m.of(r.values))})
	}
	return lines
}

// place puts a dot on each curve.
func (a launchAttitude) place(t float64) place {
	m, ok := a.at(t)
	at := place{line: ok, x: m.time}
	if ok {
		for i := range a.shown {
			at.dots = append(at.dots, dot{at: plotter.XY{X: m.time, Y: m.of(a.shown[i].values)}, ink: a.shown[i].ink})
		}
		at.dots = append(at.dots, dot{at: plotter.XY{X: m.time, Y: m.of(a.l.Pitch)}, ink: plainInk, right: true})
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

// table lists pitch and the travel of every wheel.
func (a launchAttitude) table(s units.System, setup string) Table {
	return a.tableOf(s, setup, a.records(), nil, nil)
}

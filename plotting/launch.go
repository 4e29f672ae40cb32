package plotting

import (
	"sort"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

// drawnBins is into how many parts a history is cut that has more than twice
// as many steps; two points of each are drawn.
const drawnBins = 300

// overTime is what charts over a launch have in common.
type overTime struct{ l *launch.Result }

// newLaunchChart starts a chart over a launch; where there was nothing to start
// from it says why.
func newLaunchChart(s Setup, key chart.Key, title string, about chart.Subject) *chart.Chart {
	l := s.Launch
	o := overTime{l}
	c := newChart(s, key, title, eventful{about, o})
	c.Events = o.events()
	c.X = chart.Axis{Label: "Time", Quantity: units.Time, Tight: true, Sight: chart.Between(0, o.end()), Least: 1e-3}
	if o.empty() {
		c.AddNote(func(chart.Frame) string { return o.none() })
	}
	return c
}

func (o overTime) empty() bool { return len(o.l.Time) == 0 }

// end is when the launch ended, or would have ended at the latest.
func (o overTime) end() float64 {
	if o.empty() {
		return o.l.Options.Limit
	}
	return o.l.Time[len(o.l.Time)-1]
}

// moment is a time between two steps of the history.
type moment struct {
	time float64
	step int     // the step before it
	part float64 // of the way to the next one
}

// at returns a moment; before the start and after the end it is the first or
// the last step. It returns false when there is no history.
func (o overTime) at(t float64) (moment, bool) {
	times := o.l.Time
	if o.empty() {
		return moment{}, false
	}
	switch i := sort.SearchFloat64s(times, t); i {
	case 0:
		return moment{time: times[0]}, true
	case len(times):
		return moment{time: times[i-1], step: i - 1}, true
	default:
		return moment{t, i - 1, (t - times[i-1]) / (times[i] - times[i-1])}, true
	}
}

// of returns a value of the history at the moment.
func (m moment) of(values []float64) float64 {
	before := values[m.step]
	if m.part == 0 {
		return before
	}
	return before + m.part*(values[m.step+1]-before)
}

// timeName names a time: "0.112 s".
func timeName(s units.System, t float64) string { return s.Format(units.Time, t) }

// PositionAt reads the time off the x axis; beyond its ends it is the end.
func (o overTime) PositionAt(l *chart.Layout, px, py float64) (at, off float64, ok bool) {
	at, off = l.Along(chart.Between(0, o.end()), px, py)
	return at, off, !o.empty()
}

// ReadoutAt says why there is nothing to read.
func (o overTime) ReadoutAt(*chart.Layout, float64, float64, units.System) []chart.Reading {
	return o.verdict()
}

func (o overTime) verdict() []chart.Reading { return []chart.Reading{chart.Plain(o.none())} }

// none says why there is no history.
func (o overTime) none() string { return "There is no launch: " + o.l.Outcome.String() + "." }

// curve returns the points of a quantity to draw.
func (o overTime) curve(values []float64) []plotter.XYs {
	if o.empty() {
		return nil
	}
	steps := drawn(values)
	points := make(plotter.XYs, len(steps))
	for k, i := range steps {
		points[k] = plotter.XY{X: o.l.Time[i], Y: values[i]}
	}
	return []plotter.XYs{points}
}

// drawn returns the steps of a history to draw, in order: all of them, or of a long
// history the least and the greatest of each part, so that no peak is lost.
func drawn(values []float64) []int {
	n := len(values)
	steps := make([]int, 0, min(n, 2*drawnBins+2))
	if n <= 2*drawnBins {
		for i := range n {
			steps = append(steps, i)
		}
		return steps
	}
	steps = append(steps, 0)
	for bin := range drawnBins {
		least := bin * n / drawnBins
		greatest := least
		for i := least + 1; i < (bin+1)*n/drawnBins; i++ {
			if values[i] < values[least] {
				least = i
			}
			if values[i] > values[greatest] {
				greatest = i
			}
		}
		steps = append(steps, min(least, greatest), max(least, greatest))
	}
	return append(steps, n-1)
}

// when names the times at which something holds, as in "0.210 to 0.250 s". It
// is empty when that is never.
func (o overTime) when(s units.System, holds func(i int) bool) string {
	return stretches(len(o.l.Time), holds, func(first, last int) string {
		if first == last {
			return timeName(s, o.l.Time[first])
		}
		return units.Decimal(o.l.Time[first], s.Decimals(units.Time)) + " to " + timeName(s, o.l.Time[last])
	})
}

// record is one quantity of a history, as it stands in a table.
type record struct {
	name, sign string
	quantity   units.Quantity
	values     []float64
}

// tableOf lists a whole history; more adds the other cells of each row.
func (o overTime) tableOf(s units.System, setup string, records []record, moreColumns, moreCells func(*chart.TableBuilder)) chart.Table {
	t := chart.NewTable(s, setup)
	t.Key("time", "", units.Time)
	for i := range records {
		t.Add(records[i].name, records[i].sign, records[i].quantity)
	}
	if moreColumns != nil {
		moreColumns(t)
	}
	for i, time := range o.l.Time {
		t.Row(time)
		for k := range records {
			t.Cell(records[k].values[i], true)
		}
		if moreCells != nil {
			moreCells(t)
		}
	}
	return t.Table
}

// mean returns the mean of two quantities at each step.
func mean(a, b []float64) []float64 {
	list := make([]float64, len(a))
	for i := range list {
		list[i] = (a[i] + b[i]) / 2
	}
	return list
}

// furthest returns the step at which a quantity is largest in magnitude; -1
// when there is no history.
func furthest(values []float64) int {
	found, most := -1, -1.0
	for i, v := range values {
		if size := max(v, -v); size > most {
			found, most = i, size
		}
	}
	return found
}

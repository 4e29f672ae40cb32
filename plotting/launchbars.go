package plotting

import (
	"math"
	"slices"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

const (
	// markedBeside is the least share of capacity, over that of the same bar in
	// the other direction, at which a bar's lesser peak is marked too.
	markedBeside = 0.5
	// leastLoaded is the share of capacity from which on a limit counts as one
	// that a bar comes up against.
	leastLoaded = 0.05
	// alike is the difference between left and right, over the largest force,
	// that no chart shows.
	alike = 0.002
)

// sideDashes are the patterns of the lines of the left and the right side.
var sideDashes = [...]chart.Dash{launch.Left: chart.Dashed, launch.Right: chart.Solid}

// barName names a bar: "upper left".
func barName(b launch.RodID) string { return pairNames[b.Pair()] + " " + b.Side().String() }

// LaunchBarsKey is the key of [LaunchBars].
const LaunchBarsKey chart.Key = "launch-bars"

// LaunchBars charts the force of all four bars over a launch, pull upward and
// push downward, with the allowable loads and the peaks, each with its share of
// what the bar may carry.
func LaunchBars(first Setup, others ...Setup) *chart.Chart {
	return compare(first, others, barsOverTime)
}

// barsOverTime is the chart of one setup; it shows every limit that some bar of
// it or of those beside it comes up against.
func barsOverTime(setup Setup, beside []Setup) *chart.Chart {
	l := setup.Launch
	about := launchBarsOf(setup)
	c := newLaunchChart(setup, LaunchBarsKey, "Bar force over the launch", about)
	c.Aside = func(s units.System) string { return s.Symbol(units.Force) + " on one bar" }
	c.Y = forceAxis()
	var forces []float64
	for _, b := range launch.Bars {
		peaks := about.peaks(b)
		curve := chart.Line{Name: barName(b), Ink: pullInk, Below: pushInk, Dash: sideDashes[b.Side()], Width: pairWidths[b.Pair()], Runs: about.curve(l.Tension[b])}
		curve.Brief = chart.Always(units.Share(0))
		if len(peaks) > 0 {
			curve.Most, curve.Brief, curve.Over = peaks[0].words, chart.Always(units.Share(peaks[0].share)), peaks[0].share > 1
		}
		c.Lines = append(c.Lines, curve)
		for _, p := range peaks {
			c.Points = append(c.Points, p.point())
			forces = append(forces, signed(p.way, p.force))
		}
	}
	holdAgainst(c, limits{about.r, func(p car.Pair, d column.Direction) bool {
		return slices.ContainsFunc(append(beside, setup), func(s Setup) bool { return launchBarsOf(s).loaded(p, d) })
	}}, forces...)
	about.notes(c)
	return c
}

type launchBars struct {
	overTime
	r *analysis.Result
}

func launchBarsOf(s Setup) launchBars { return launchBars{overTime{s.Launch}, s.Result} }

// peak is the largest force on a bar in one direction.
type peak struct {
	bar         launch.RodID
	way         column.Direction
	force, time float64
	share       float64 // of the allowable load
}

func (b launchBars) peak(bar launch.RodID, way column.Direction) peak {
	of := &b.l.Peaks[bar]
	p := peak{bar: bar, way: way, force: of.Push, time: of.PushTime}
	if way == column.Pull {
		p.force, p.time = of.Pull, of.PullTime
	}
	p.share = p.force / b.r.Limit(bar.Pair(), way).Allowable
	return p
}

// peaks returns a bar's peak that takes the larger share of its capacity, and
// that in the other direction if it is not much smaller; none for a bar that
// carries nothing.
func (b launchBars) peaks(bar launch.RodID) []peak {
	more, less := b.peak(bar, column.Push), b.peak(bar, column.Pull)
	if more.share < less.share {
		more, less = less, more
	}
	switch {
	case more.force == 0:
		return nil
	case less.share < markedBeside*more.share:
		return []peak{more}
	}
	return []peak{more, less}
}

// words writes a peak: "9,870 lb push at 0.112 s — 83 %".
func (p peak) words(s units.System) string {
	return s.Format(units.Force, p.force) + " " + p.way.String() + " at " + timeName(s, p.time) + " — " + units.Share(p.share)
}

// point marks a peak on its curve: a disc on a solid line, a ring on a dashed one.
func (p peak) point() chart.Point {
	m := chart.Point{
		Ink: directionInks[p.way], Shape: chart.Disc, At: plotter.XY{X: p.time, Y: signed(p.way, p.force)},
		Caption: chart.Caption{Head: units.Share(p.share), Alone: true, Over: p.share > 1},
	}
	if p.bar.Side() == launch.Left {
		m.Shape = chart.Ring
	}
	return m
}

// loaded reports whether one of a pair's bars ever takes leastLoaded of its
// capacity in a direction.
func (b launchBars) loaded(p car.Pair, d column.Direction) bool {
	return slices.ContainsFunc(launch.Bars[:], func(bar launch.RodID) bool {
		return bar.Pair() == p && b.peak(bar, d).share >= leastLoaded
	})
}

// notes say where the curves leave the chart and whether the sides differ.
func (b launchBars) notes(c *chart.Chart) {
	if !b.empty() && b.sidesAlike() {
		c.AddNote(func(chart.Frame) string { return "Left and right bars carry the same here." })
	}
	c.AddNote(func(shown chart.Frame) string {
		var most float64
		at := b.when(shown.Units, func(i int) bool {
			off := false
			for _, bar := range launch.Bars {
				if force := b.l.Tension[bar][i]; !shown.Y.Contains(force) {
					most, off = worst(most, force), true
				}
			}
			return off
		})
		return sentence("Off the chart at ", at, ": up to "+shown.Units.Format(units.Force, math.Abs(most))+".")
	})
}

// sidesAlike reports whether left and right bars carry the same.
func (b launchBars) sidesAlike() bool {
	var apart, most float64
	for _, bar := range []launch.RodID{launch.UpperLeft, launch.LowerLeft} {
		for i, force := range b.l.Tension[bar] {
			other := b.l.Tension[bar+1][i]
			apart, most = worst(apart, force-other), worst(most, force, other)
		}
	}
	return math.Abs(apart) <= alike*math.Abs(most)
}

// Readout writes the four forces and their share of the allowable load.
func (b launchBars) Readout(t float64, s units.System) []chart.Reading {
	m, ok := b.at(t)
	if !ok {
		return b.verdict()
	}
	lines := []chart.Reading{chart.Plain(timeName(s, m.time))}
	for _, bar := range launch.Bars {
		force, way := m.of(b.l.Tension[bar]), column.Pull
		if force < 0 {
			force, way = -force, column.Push
		}
		share := force / b.r.Limit(bar.Pair(), way).Allowable
		lines = append(lines, chart.Reading{Name: barName(bar), Value: s.Format(units.Force, force) + " " + way.String() + " — " + units.Share(share)})
	}
	return lines
}

// Place puts a dot on each curve.
func (b launchBars) Place(t float64) chart.Place {
	m, ok := b.at(t)
	at := chart.Place{Line: ok, X: m.time}
	if ok {
		for _, bar := range launch.Bars {
			tension := m.of(b.l.Tension[bar])
			at.Dots = append(at.Dots, chart.Dot{At: plotter.XY{X: m.time, Y: tension}, Ink: tensionInk(tension)})
		}
	}
	return at
}

// Table lists forces and allowable loads, pull positive.
func (b launchBars) Table(s units.System, setup string) chart.Table {
	var records []record
	for _, bar := range launch.Bars {
		records = append(records, record{barName(bar), "pull positive", units.Force, b.l.Tension[bar]})
	}
	return b.tableOf(s, setup, records, limitColumns, func(t *chart.TableBuilder) { limitCells(t, b.r) })
}

package plotting

import (
	"math"
	"slices"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

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

// sideDashes tell left from right.
var sideDashes = [...]dash{launch.Left: dashed, launch.Right: solid}

// barName names a bar: "upper left".
func barName(b launch.RodID) string { return pairNames[b.Pair()] + " " + b.Side().String() }

// LaunchBars charts the force of all four bars over a launch, pull upward and
// push downward, with the allowable loads and the peaks, each with its share of
// what the bar may carry.
func LaunchBars(l *launch.Result, r *analysis.Result) *Chart {
	return launchBars{overTime{l}, r}.chart(nil)
}

// chart draws the bars, alone or as one of two; then it shows every limit that
// some bar of either comes up against.
func (about launchBars) chart(other *launchBars) *Chart {
	l := about.l
	c := newLaunchChart(l, about.r, "launch-bars", "Bar force over the launch", about)
	c.aside = func(s units.System) string { return s.Symbol(units.Force) + " on one bar" }
	c.y = forceAxis()
	var forces []float64
	for _, b := range launch.Bars {
		peaks := about.peaks(b)
		curve := line{name: barName(b), ink: pairInks[b.Pair()], dash: sideDashes[b.Side()], runs: about.curve(l.Tension[b])}
		curve.brief = always(units.Share(0))
		if len(peaks) > 0 {
			curve.most, curve.brief = peaks[0].words, always(units.Share(peaks[0].share))
		}
		c.lines = append(c.lines, curve)
		for _, p := range peaks {
			c.marks = append(c.marks, p.mark())
			forces = append(forces, signed(p.way, p.force))
		}
	}
	holdAgainst(c, limits{about.r, func(p car.Pair, d column.Direction) bool {
		return about.loaded(p, d) || other != nil && other.loaded(p, d)
	}}, forces...)
	about.notes(c)
	return c
}

type launchBars struct {
	overTime
	r *analysis.Result
}

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
	return value(s, units.Force, p.force) + " " + p.way.String() + " at " + timeName(s, p.time) + " — " + units.Share(p.share)
}

// mark puts a peak on its curve: a disc on a solid line, a ring on a dashed one.
func (p peak) mark() mark {
	m := mark{ink: pairInks[p.bar.Pair()], shape: disc, at: plotter.XY{X: p.time, Y: signed(p.way, p.force)}, caption: caption{head: units.Share(p.share), alone: true}}
	if p.bar.Side() == launch.Left {
		m.shape = ring
	}
	return m
}

// loaded tells whether one of a pair's bars ever carries anything to speak of
// in a direction.
func (b launchBars) loaded(p car.Pair, d column.Direction) bool {
	return slices.ContainsFunc(launch.Bars[:], func(bar launch.RodID) bool {
		return bar.Pair() == p && b.peak(bar, d).share >= leastLoaded
	})
}

// notes say where the curves leave the chart and whether the sides differ.
func (b launchBars) notes(c *Chart) {
	if !b.empty() && b.sidesAlike() {
		c.note(func(Frame) string { return "Left and right bars carry the same here." })
	}
	c.note(func(shown Frame) string {
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
		return sentence("Off the chart at ", at, ": up to "+value(shown.Units, units.Force, math.Abs(most))+".")
	})
}

// sidesAlike tells whether left and right bars carry the same.
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

// readout writes the four forces and their share of the allowable load.
func (b launchBars) readout(t float64, s units.System) []reading {
	m, ok := b.at(t)
	if !ok {
		return b.verdict(s)
	}
	lines := []reading{plainly(timeName(s, m.time))}
	for _, bar := range launch.Bars {
		force, way := m.of(b.l.Tension[bar]), column.Pull
		if force < 0 {
			force, way = -force, column.Push
		}
		share := force / b.r.Limit(bar.Pair(), way).Allowable
		lines = append(lines, reading{name: barName(bar), value: value(s, units.Force, force) + " " + way.String() + " — " + units.Share(share)})
	}
	return lines
}

// place puts a dot on each curve.
func (b launchBars) place(t float64) place {
	m, ok := b.at(t)
	at := place{line: ok, x: m.time}
	if ok {
		for _, bar := range launch.Bars {
			at.dots = append(at.dots, dot{at: plotter.XY{X: m.time, Y: m.of(b.l.Tension[bar])}, ink: pairInks[bar.Pair()]})
		}
	}
	return at
}

// table lists forces and allowable loads, pull positive.
func (b launchBars) table(s units.System, setup string) Table {
	var records []record
	for _, bar := range launch.Bars {
		records = append(records, record{barName(bar), "pull positive", units.Force, b.l.Tension[bar]})
	}
	return b.tableOf(s, setup, records, limitColumns, func(t *tableMaker) { limitCells(t, b.r) })
}

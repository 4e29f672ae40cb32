package plotting

import (
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
)

const (
	// bowSteps is the number of intervals of a bow curve.
	bowSteps = 60
	// worstInSight is the largest worst push shown, over the first-yield load.
	worstInSight = 1.5
)

// Bow charts how far one bar of each pair bows at mid-length under a push, up
// to the push at which its steel first yields, with the allowable and the
// worst push.
func Bow(r *analysis.Result) *Chart {
	about := bow{r}
	c := newChart(r, "bow", "Bow over push", about)
	c.aside = always("at mid-length of one bar")
	c.x = axis{label: "Push", quantity: units.Force, least: 1, sight: Span{}}
	c.y = axis{label: "Bow", quantity: units.Length, least: 1e-4, sight: Span{}}
	for _, p := range car.Pairs {
		curve := about.curve(p)
		end := curve[len(curve)-1]
		c.x.sight, c.y.sight = c.x.sight.with(end.X), c.y.sight.with(end.Y)
		c.lines = append(c.lines, line{name: pairNames[p], ink: pairInks[p], runs: []plotter.XYs{curve}})
		c.marks = append(c.marks, mark{name: "first yield", ink: pairInks[p], shape: cross, at: end})
	}
	c.y.sight.Max *= 1 + labelRoom
	for _, p := range car.Pairs {
		c.rules = append(c.rules, about.allowable(p))
		about.worst(c, p)
	}
	if r.Car.Check.Crookedness == 0 {
		c.note(func(Frame) string { return "Nothing bows, since no initial bow is given." })
	}
	return c
}

type bow struct{ r *analysis.Result }

// under returns the bow of a pair's bar under a push, and false from the
// Euler load on.
func (b bow) under(p car.Pair, push float64) (float64, bool) {
	at, _, err := b.r.Bars[p].Bow(push)
	return at, err == nil
}

// curve runs from no push to first yield. A perfectly straight bar yields at
// its Euler load, where it has no bow to tell.
func (b bow) curve(p car.Pair) plotter.XYs {
	points := make(plotter.XYs, 0, bowSteps+1)
	for i := range bowSteps + 1 {
		push := b.r.Bars[p].FirstYield * float64(i) / bowSteps
		if at, ok := b.under(p, push); ok {
			points = append(points, plotter.XY{X: push, Y: at})
		}
	}
	return points
}

// allowable is the push a pair may carry.
func (b bow) allowable(p car.Pair) rule {
	limit := b.r.Limit(p, column.Push).Allowable
	return rule{
		ink: pairInks[p], dash: long, upright: true, at: limit,
		caption: valueCaption(pairNames[p]+" limit", units.Force, limit),
	}
}

// worst marks the largest push of a pair on its curve, or says where it is.
func (b bow) worst(c *Chart, p car.Pair) {
	push, yield := b.r.Worst[p][column.Push].Force, b.r.Bars[p].FirstYield
	if push == 0 {
		return
	}
	if at, ok := b.under(p, push); ok && push <= yield {
		c.marks = append(c.marks, mark{
			name: "worst push", ink: pairInks[p], shape: disc, at: plotter.XY{X: push, Y: at}, drop: true,
			caption: valueCaption(pairNames[p]+" worst", units.Force, push),
		})
		return
	}
	if push <= worstInSight*yield {
		c.x.sight = c.x.sight.with(push)
		c.rules = append(c.rules, rule{
			ink: pairInks[p], upright: true, at: push,
			caption: valueCaption(pairNames[p]+" worst", units.Force, push),
		})
	}
	c.note(func(shown Frame) string {
		s := shown.Units
		return "The worst push on the " + pairNames[p] + " bars, " + value(s, units.Force, push) + ", is past first yield at " + value(s, units.Force, yield) + "."
	})
}

// bowed writes a bow.
func bowed(s units.System, at float64) string {
	return s.FormatFine(units.Length, at)
}

// readout writes the bow under the full axle torque.
func (b bow) readout(travel float64, s units.System) []reading {
	lines := []reading{plainly(s.Travel(travel))}
	station, err := b.r.At(travel, b.r.Options.FrontTravel)
	if err != nil {
		return append(lines, plainly("the bars do not reach here"))
	}
	for _, p := range car.Pairs {
		name := pairNames[p] + " hit"
		if !station.Loads.Hit.Balanced {
			lines = append(lines, reading{name: name, lack: "the bars cannot hold the axle here"})
			continue
		}
		use, way := b.r.Use(p, analysis.Hit, &station)
		text := value(s, units.Force, use.Force) + " " + way.String()
		if at, ok := b.under(p, -signed(way, use.Force)); ok {
			text += " — bow " + bowed(s, at)
		} else {
			text += " — buckles"
		}
		lines = append(lines, reading{name: name, value: text})
	}
	return lines
}

// readoutAt writes the bow of both bars under the push pointed at.
func (b bow) readoutAt(l *Layout, px, py float64, s units.System) []reading {
	push, _ := l.ToData(px, py)
	return b.bends(push, s)
}

// bends writes the bow of both bars under a push.
func (b bow) bends(push float64, s units.System) []reading {
	if push < 0 {
		return nil
	}
	lines := []reading{plainly(value(s, units.Force, push) + " push")}
	for _, p := range car.Pairs {
		bends := reading{name: pairNames[p], value: "buckles"}
		if at, ok := b.under(p, push); ok {
			bends = reading{name: pairNames[p] + " bows", value: bowed(s, at)}
			if push > b.r.Bars[p].FirstYield {
				bends.value += ", past first yield"
			}
		}
		lines = append(lines, bends)
	}
	return lines
}

func (b bow) positionAt(*Layout, float64, float64) (at, off float64, ok bool) { return 0, 0, false }

// place puts a dot on the curve of each bar that pushes.
func (b bow) place(travel float64) place {
	var at place
	station, err := b.r.At(travel, b.r.Options.FrontTravel)
	if err != nil || !station.Loads.Hit.Balanced {
		return at
	}
	for _, p := range car.Pairs {
		push := -analysis.Tension(p, &station.Loads.Hit)
		if y, ok := b.under(p, push); ok && push > 0 {
			at.dots = append(at.dots, dot{at: plotter.XY{X: push, Y: y}, ink: pairInks[p]})
		}
	}
	return at
}

// table lists the points of both curves side by side.
func (b bow) table(s units.System, setup string) Table {
	t := newTable(s, setup)
	for _, p := range car.Pairs {
		t.add(pairNames[p]+" push", "", units.Force)
		t.add(pairNames[p]+" bow", "", units.Length)
	}
	for i := range bowSteps + 1 {
		for _, p := range car.Pairs {
			push := b.r.Bars[p].FirstYield * float64(i) / bowSteps
			at, ok := b.under(p, push)
			if p == car.Upper {
				t.row(push)
			} else {
				t.cell(push, true)
			}
			t.cell(at, ok)
		}
	}
	return t.Table
}

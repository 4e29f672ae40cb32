package plotting

import (
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

const (
	// bowSteps is the number of intervals of a bow curve.
	bowSteps = 60
	// worstInSight is the largest worst push shown, over the first-yield load.
	worstInSight = 1.5
)

// BowKey is the key of [Bow].
const BowKey chart.Key = "bow"

// Bow charts how far one bar of each pair bows at mid-length under a push, up
// to the push at which its steel first yields, with the allowable and the
// worst push, in the launch too where there is one.
func Bow(first Setup, others ...Setup) *chart.Chart { return compare(first, others, bowOverPush) }

func bowOverPush(setup Setup, _ []Setup) *chart.Chart {
	r := setup.Result
	about := bow{r, r.Envelope(setup.Launch)}
	c := newChart(setup, BowKey, "Bow over push", about)
	c.Aside = chart.Always("at mid-length of one bar")
	c.X = chart.Axis{Label: "Push", Quantity: units.Force, Least: 1, Sight: chart.Span{}}
	c.Y = chart.Axis{Label: "Bow", Quantity: units.Length, Least: 1e-4, Sight: chart.Span{}}
	for _, p := range car.Pairs {
		curve := about.curve(p)
		end := curve[len(curve)-1]
		c.X.Sight, c.Y.Sight = c.X.Sight.With(end.X), c.Y.Sight.With(end.Y)
		c.Lines = append(c.Lines, chart.Line{Name: pairNames[p], Ink: pushInk, Width: pairWidths[p], Runs: []plotter.XYs{curve}})
		c.Points = append(c.Points, chart.Point{Name: "first yield", Ink: pushInk, Shape: chart.Cross, At: end})
	}
	c.Y.Sight.Max *= 1 + chart.LabelRoom
	for _, p := range car.Pairs {
		c.Rules = append(c.Rules, about.allowable(p))
		about.worst(c, p)
	}
	if r.Car.Check.Crookedness == 0 {
		c.AddNote(func(chart.Frame) string { return "Nothing bows, since no initial bow is given." })
	}
	return c
}

type bow struct {
	r    *analysis.Result
	most analysis.Envelope
}

// under returns the bow of a pair's bar under a push, and false from the
// Euler load on.
func (b bow) under(p car.Pair, push float64) (float64, bool) {
	at, _, err := b.r.Bars[p].Bow(push)
	return at, err == nil
}

// curve runs from no push to first yield. It leaves out the Euler load, at
// which a perfectly straight bar yields and its bow is undetermined.
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
func (b bow) allowable(p car.Pair) chart.Rule {
	limit := b.r.Limit(p, column.Push).Allowable
	return chart.Rule{
		Ink: pushInk, Dash: chart.Long, Width: pairWidths[p], Upright: true, At: limit,
		Caption: chart.ValueCaption(pairNames[p]+" limit", units.Force, limit),
	}
}

// worst marks the largest push of a pair on its curve, or says where it is.
func (b bow) worst(c *chart.Chart, p car.Pair) {
	push, yield := b.most.OfPair(p, column.Push).Force, b.r.Bars[p].FirstYield
	if push == 0 {
		return
	}
	caption := chart.ValueCaption(pairNames[p]+" worst", units.Force, push)
	caption.Over = push > b.r.Limit(p, column.Push).Allowable
	if at, ok := b.under(p, push); ok && push <= yield {
		c.Points = append(c.Points, chart.Point{
			Name: "worst push", Ink: pushInk, Shape: chart.Disc, At: plotter.XY{X: push, Y: at}, Drop: true,
			Caption: caption,
		})
		return
	}
	if push <= worstInSight*yield {
		c.X.Sight = c.X.Sight.With(push)
		c.Rules = append(c.Rules, chart.Rule{
			Ink: pushInk, Width: pairWidths[p], Upright: true, At: push,
			Caption: caption,
		})
	}
	c.AddNote(func(shown chart.Frame) string {
		s := shown.Units
		return "The worst push on the " + pairNames[p] + " bars, " + s.Format(units.Force, push) + ", is past first yield at " + s.Format(units.Force, yield) + "."
	})
}

// bowed writes a bow.
func bowed(s units.System, at float64) string {
	return s.FormatFine(units.Length, at)
}

// Readout writes the bow under the full axle torque.
func (b bow) Readout(travel float64, s units.System) []chart.Reading {
	lines := []chart.Reading{chart.Plain(s.Travel(travel))}
	station, err := b.r.At(travel, b.r.Options.FrontTravel)
	if err != nil {
		return append(lines, chart.Plain("the bars do not reach here"))
	}
	for _, p := range car.Pairs {
		name := pairNames[p] + " hit"
		if !station.Loads.Hit.Balanced {
			lines = append(lines, chart.Reading{Name: name, Lack: "the bars cannot hold the axle here"})
			continue
		}
		use, way := b.r.Use(p, analysis.Hit, &station)
		text := s.Format(units.Force, use.Force) + " " + way.String()
		if at, ok := b.under(p, -signed(way, use.Force)); ok {
			text += " — bow " + bowed(s, at)
		} else {
			text += " — buckles"
		}
		lines = append(lines, chart.Reading{Name: name, Value: text})
	}
	return lines
}

// ReadoutAt writes the bow of both bars under the push pointed at.
func (b bow) ReadoutAt(l *chart.Layout, px, py float64, s units.System) []chart.Reading {
	push, _ := l.ToData(px, py)
	return b.bends(push, s)
}

// bends writes the bow of both bars under a push.
func (b bow) bends(push float64, s units.System) []chart.Reading {
	if push < 0 {
		return nil
	}
	lines := []chart.Reading{chart.Plain(s.Format(units.Force, push) + " push")}
	for _, p := range car.Pairs {
		bends := chart.Reading{Name: pairNames[p], Value: "buckles"}
		if at, ok := b.under(p, push); ok {
			bends = chart.Reading{Name: pairNames[p] + " bows", Value: bowed(s, at)}
			if push > b.r.Bars[p].FirstYield {
				bends.Value += ", past first yield"
			}
		}
		lines = append(lines, bends)
	}
	return lines
}

func (b bow) PositionAt(*chart.Layout, float64, float64) (at, off float64, ok bool) {
	return 0, 0, false
}

// Place puts a dot on the curve of each bar that pushes.
func (b bow) Place(travel float64) chart.Place {
	var at chart.Place
	station, err := b.r.At(travel, b.r.Options.FrontTravel)
	if err != nil || !station.Loads.Hit.Balanced {
		return at
	}
	for _, p := range car.Pairs {
		push := -analysis.Tension(p, &station.Loads.Hit)
		if y, ok := b.under(p, push); ok && push > 0 {
			at.Dots = append(at.Dots, chart.Dot{At: plotter.XY{X: push, Y: y}, Ink: pushInk})
		}
	}
	return at
}

// Table lists the points of both curves side by side.
func (b bow) Table(s units.System, setup string) chart.Table {
	t := chart.NewTable(s, setup)
	for _, p := range car.Pairs {
		t.Add(pairNames[p]+" push", "", units.Force)
		t.Add(pairNames[p]+" bow", "", units.Length)
	}
	for i := range bowSteps + 1 {
		for _, p := range car.Pairs {
			push := b.r.Bars[p].FirstYield * float64(i) / bowSteps
			at, ok := b.under(p, push)
			if p == car.Upper {
				t.Row(push)
			} else {
				t.Cell(push, true)
			}
			t.Cell(at, ok)
		}
	}
	return t.Table
}

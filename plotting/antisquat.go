package plotting

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

// squatInSight bounds the anti-squat shown [1]: beyond, the line of action is
// so steep that only the fact matters.
var squatInSight = chart.Between(-3, 6)

// AntiSquatKey is the key of [AntiSquat].
const AntiSquatKey chart.Key = "anti-squat"

// AntiSquat charts anti-squat over rear travel with the target and the 100 %
// line. The curve breaks where the line of action stands upright.
func AntiSquat(first Setup, others ...Setup) *chart.Chart {
	return compare(first, others, squatOverTravel)
}

func squatOverTravel(setup Setup, _ []Setup) *chart.Chart {
	r := setup.Result
	about := antiSquat{overTravel{r}}
	c := newChart(setup, AntiSquatKey, "Anti-squat over travel", about)
	c.X = travelAxis(r)
	target := chart.Between(r.Car.Check.TargetAntiSquat[0], r.Car.Check.TargetAntiSquat[1])
	c.Y = chart.Axis{Label: "Anti-squat", Quantity: units.Percent, Least: 0.1, Sight: target.With(1)}
	c.Regions = []chart.Region{{
		Name: func(s units.System) string {
			return "target " + units.Decimal(100*target.Min, 0) + " to " + units.WholePercent(target.Max)
		},
		X: chart.Everywhere(), Y: target,
	}}
	c.Lines = []chart.Line{{Name: "anti-squat", Ink: centerInk, Runs: runs(r.Travel, about.point, upright)}}
	c.Rules = []chart.Rule{{Ink: wholeInk, Dash: chart.Fine, At: 1, Caption: chart.Caption{Head: "100 %"}}}
	for _, run := range c.Lines[0].Runs {
		for _, at := range run {
			c.Y.Sight = c.Y.Sight.With(squatInSight.Clamp(at.Y))
		}
	}
	about.notes(c)
	return c
}

type antiSquat struct{ overTravel }

func (a antiSquat) point(s *analysis.Station) (plotter.XY, bool) {
	return plotter.XY{X: s.Pose.Travel, Y: s.AntiSquat}, s.HasAntiSquat
}

// upright reports whether the line of action passes the upright between two
// stations rather than the level.
func upright(a, b *analysis.Station) bool {
	angle := func(s *analysis.Station) float64 {
		return math.Atan(s.AntiSquat * s.CG.Y / s.Pose.Ground.Wheelbase)
	}
	return math.Abs(angle(a)-angle(b)) > math.Pi/2
}

// notes say where the curve breaks or leaves the chart.
func (a antiSquat) notes(c *chart.Chart) {
	c.AddNote(func(shown chart.Frame) string {
		at := where(a.r.Travel, shown.Units, func(s *analysis.Station) bool { return !s.HasAntiSquat })
		return sentence("No value at ", at, ": the line of action stands upright.")
	})
	c.AddNote(func(shown chart.Frame) string {
		var most float64
		at := where(a.r.Travel, shown.Units, func(s *analysis.Station) bool {
			off := s.HasAntiSquat && !shown.Y.Contains(s.AntiSquat)
			if off {
				most = worst(most, s.AntiSquat)
			}
			return off
		})
		return sentence("Off the chart at ", at, ": as far as "+units.WholePercent(most)+".")
	})
}

func (a antiSquat) Readout(travel float64, s units.System) []chart.Reading {
	lines := []chart.Reading{chart.Plain(s.Travel(travel))}
	station, ok := a.at(travel)
	switch {
	case !ok:
		return append(lines, chart.Plain("the bars do not reach here"))
	case !station.HasAntiSquat:
		return append(lines, chart.Reading{Name: "anti-squat", Lack: "the line of action stands upright"})
	}
	return append(lines, chart.Reading{Name: "anti-squat", Value: s.Format(units.Percent, station.AntiSquat)})
}

func (a antiSquat) Place(travel float64) chart.Place {
	at := chart.Place{Line: true, X: travel}
	if station, ok := a.at(travel); ok {
		if xy, ok := a.point(station); ok {
			at.Dots = []chart.Dot{{At: xy, Ink: centerInk}}
		}
	}
	return at
}

func (a antiSquat) Table(s units.System, setup string) chart.Table {
	t := chart.NewTable(s, setup)
	t.Key("travel", "bump positive", units.Length)
	t.Add("anti-squat", "", units.Percent)
	for i := range a.r.Travel {
		xy, ok := a.point(&a.r.Travel[i])
		t.Row(xy.X)
		t.Cell(xy.Y, ok)
	}
	return t.Table
}

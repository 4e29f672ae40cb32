package plotting

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
)

// squatInSight bounds the anti-squat shown [1]: beyond, the line of action is
// so steep that only the fact matters.
var squatInSight = Span{-3, 6}

// AntiSquat charts anti-squat over rear travel with the target and the 100 %
// line. The curve breaks where the line of action stands upright.
func AntiSquat(r *analysis.Result) *Chart {
	about := antiSquat{overTravel{r}}
	c := newChart(r, "anti-squat", "Anti-squat over travel", about)
	c.x = travelAxis(r)
	target := Span{r.Car.Check.TargetAntiSquat[0], r.Car.Check.TargetAntiSquat[1]}
	c.y = axis{label: "Anti-squat", quantity: units.Percent, least: 0.1, sight: target.with(1)}
	c.regions = []region{{
		name: func(s units.System) string {
			return "target " + number(100*target.Min, 0) + " to " + units.WholePercent(target.Max)
		},
		x: everywhere(), y: target,
	}}
	c.lines = []line{{name: "anti-squat", ink: centerInk, runs: runs(r.Travel, about.point, upright)}}
	c.rules = []rule{{ink: wholeInk, dash: fine, at: 1, caption: caption{head: "100 %"}}}
	for _, run := range c.lines[0].runs {
		for _, at := range run {
			c.y.sight = c.y.sight.with(squatInSight.clamp(at.Y))
		}
	}
	about.notes(c)
	return c
}

type antiSquat struct{ overTravel }

func (a antiSquat) point(s *analysis.Station) (plotter.XY, bool) {
	return plotter.XY{X: s.Pose.Travel, Y: s.AntiSquat}, s.HasAntiSquat
}

// upright tells whether the line of action passes the upright between two
// stations rather than the level.
func upright(a, b *analysis.Station) bool {
	angle := func(s *analysis.Station) float64 {
		return math.Atan(s.AntiSquat * s.CG.Y / s.Pose.Ground.Wheelbase)
	}
	return math.Abs(angle(a)-angle(b)) > math.Pi/2
}

// notes say where the curve breaks or leaves the chart.
func (a antiSquat) notes(c *Chart) {
	c.note(func(shown Frame) string {
		at := where(a.r.Travel, shown.Units, func(s *analysis.Station) bool { return !s.HasAntiSquat })
		return sentence("No value at ", at, ": the line of action stands upright.")
	})
	c.note(func(shown Frame) string {
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

func (a antiSquat) readout(travel float64, s units.System) []reading {
	lines := []reading{plainly(s.Travel(travel))}
	station, ok := a.at(travel)
	switch {
	case !ok:
		return append(lines, plainly("the bars do not reach here"))
	case !station.HasAntiSquat:
		return append(lines, reading{name: "anti-squat", lack: "the line of action stands upright"})
	}
	return append(lines, reading{name: "anti-squat", value: number(100*station.AntiSquat, 1) + " %"})
}

func (a antiSquat) place(travel float64) place {
	at := place{line: true, x: travel}
	if station, ok := a.at(travel); ok {
		if xy, ok := a.point(station); ok {
			at.dots = []dot{{at: xy, ink: centerInk}}
		}
	}
	return at
}

func (a antiSquat) table(s units.System, setup string) Table {
	t := newTable(s, setup)
	t.key("travel", "bump positive", units.Length)
	t.add("anti-squat", "", units.Percent)
	for i := range a.r.Travel {
		xy, ok := a.point(&a.r.Travel[i])
		t.row(xy.X)
		t.cell(xy.Y, ok)
	}
	return t.Table
}

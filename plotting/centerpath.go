package plotting

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/plotter"
)

// Where instant centers are shown, in wheelbases from the rear contact. Those
// farther off belong to bars that are almost parallel.
var (
	aheadInSight = chart.Between(-0.5, 2)
	aboveInSight = chart.Between(-0.5, 1)
)

// CenterPathKey is the key of [CenterPath].
const CenterPathKey chart.Key = "instant-center"

// CenterPath charts the way of the instant center over rear travel, ahead of
// the rear contact and above the ground, with its target. The curve breaks
// where the bars pass through parallel.
func CenterPath(first Setup, others ...Setup) *chart.Chart {
	return compare(first, others, pathOverTravel)
}

func pathOverTravel(setup Setup, _ []Setup) *chart.Chart {
	r := setup.Result
	about := centerPath{overTravel{r}}
	c := newChart(setup, CenterPathKey, "Instant center path", about)
	k := r.Car.Check
	target := chart.Region{
		Name: chart.Always("target"),
		X:    chart.Between(k.TargetICX[0], k.TargetICX[1]), Y: chart.Between(k.TargetICZ[0], k.TargetICZ[1]),
	}
	c.Regions = []chart.Region{target}
	c.X = chart.Axis{Label: "Ahead of rear contact", Quantity: units.Length, Least: 0.01, Sight: target.X}
	c.Y = chart.Axis{Label: "Above ground", Quantity: units.Length, Least: 0.01, Sight: target.Y}
	c.Lines = []chart.Line{
		{Name: "path", Ink: centerInk, Runs: runs(r.Travel, about.point, throughParallel)},
		about.whole(),
	}
	for i := range r.Travel {
		if s := &r.Travel[i]; about.inSight(s) {
			c.X.Sight = c.X.Sight.With(s.InstantCenter.X)
			c.Y.Sight = c.Y.Sight.With(s.InstantCenter.Y)
		}
	}
	about.points(c)
	about.notes(c)
	return c
}

type centerPath struct{ overTravel }

func (p centerPath) point(s *analysis.Station) (plotter.XY, bool) {
	return plotter.XY{X: s.InstantCenter.X, Y: s.InstantCenter.Y}, s.HasInstantCenter
}

// inSight reports whether a station's instant center is near enough to show.
func (p centerPath) inSight(s *analysis.Station) bool {
	length := p.r.Car.Body.Wheelbase
	return s.HasInstantCenter &&
		aheadInSight.Contains(s.InstantCenter.X/length) && aboveInSight.Contains(s.InstantCenter.Y/length)
}

// throughParallel reports whether the bars pass through parallel between two
// stations, so that the instant center runs to infinity and comes back from
// the other side.
func throughParallel(a, b *analysis.Station) bool {
	between := func(s *analysis.Station) float64 {
		p := &s.Pose
		return r2.Cross(r2.Sub(p.ChassisUpper, p.HousingUpper), r2.Sub(p.ChassisLower, p.HousingLower))
	}
	return (between(a) < 0) != (between(b) < 0)
}

// whole is the line of instant centers that give 100 % anti-squat at ride
// height.
func (p centerPath) whole() chart.Line {
	slope := p.r.Ride.CG.Y / p.r.Ride.Pose.Ground.Wheelbase
	far := 10 * p.r.Car.Body.Wheelbase
	return chart.Line{Name: "100 % anti-squat", Ink: wholeInk, Dash: chart.Fine, Runs: []plotter.XYs{{{X: -far, Y: -far * slope}, {X: far, Y: far * slope}}}}
}

// points name the ends of the path and mark ride height.
func (p centerPath) points(c *chart.Chart) {
	list := p.r.Travel
	add := func(s *analysis.Station, name, label string, as chart.Shape) {
		if p.inSight(s) {
			at, _ := p.point(s)
			c.Points = append(c.Points, chart.Point{Name: name, Ink: centerInk, Shape: as, At: at, Caption: chart.Caption{Head: label}})
		}
	}
	if first := &list[0]; first.Pose.Travel < 0 {
		add(first, "", "droop", chart.None)
	}
	if last := &list[len(list)-1]; last.Pose.Travel > 0 {
		add(last, "", "bump", chart.None)
	}
	add(&p.r.Ride, "ride height", "", chart.Ring)
}

// notes say where the path breaks or leaves the chart.
func (p centerPath) notes(c *chart.Chart) {
	c.AddNote(func(shown chart.Frame) string {
		at := where(p.r.Travel, shown.Units, func(s *analysis.Station) bool { return !s.HasInstantCenter })
		return sentence("None at ", at, ": the bars are parallel.")
	})
	c.AddNote(func(shown chart.Frame) string {
		at := where(p.r.Travel, shown.Units, func(s *analysis.Station) bool {
			return s.HasInstantCenter && !(shown.X.Contains(s.InstantCenter.X) && shown.Y.Contains(s.InstantCenter.Y))
		})
		return sentence("Off the chart at ", at, ".")
	})
}

// PositionAt returns the travel of the station whose instant center is drawn
// nearest to a pixel, and how far off that is.
func (p centerPath) PositionAt(l *chart.Layout, px, py float64) (at, off float64, ok bool) {
	found, least := 0.0, math.Inf(1)
	for i := range p.r.Travel {
		s := &p.r.Travel[i]
		if !p.inSight(s) {
			continue
		}
		x, y := l.ToPixel(s.InstantCenter.X, s.InstantCenter.Y)
		if d := math.Hypot(x-px, y-py); d < least {
			found, least = s.Pose.Travel, d
		}
	}
	return found, least, !math.IsInf(least, 1)
}

func (p centerPath) Readout(travel float64, s units.System) []chart.Reading {
	lines := []chart.Reading{chart.Plain(s.Travel(travel))}
	station, ok := p.at(travel)
	switch {
	case !ok:
		return append(lines, chart.Plain("the bars do not reach here"))
	case !station.HasInstantCenter:
		return append(lines, chart.Plain("no instant center: the bars are parallel"))
	}
	side, height := "ahead of", "above"
	if station.InstantCenter.X < 0 {
		side = "behind"
	}
	if station.InstantCenter.Y < 0 {
		height = "below"
	}
	return append(lines,
		chart.Reading{Name: "instant center", Value: s.Format(units.Length, math.Abs(station.InstantCenter.X)), After: side + " the rear contact"},
		chart.Reading{Value: s.Format(units.Length, math.Abs(station.InstantCenter.Y)), After: height + " the ground"})
}

func (p centerPath) Place(travel float64) chart.Place {
	var at chart.Place
	if station, ok := p.at(travel); ok {
		if xy, ok := p.point(station); ok {
			at.Dots = []chart.Dot{{At: xy, Ink: centerInk}}
		}
	}
	return at
}

func (p centerPath) Table(s units.System, setup string) chart.Table {
	t := chart.NewTable(s, setup)
	t.Key("travel", "bump positive", units.Length)
	t.Add("instant center ahead of rear contact", "", units.Length)
	t.Add("instant center above ground", "", units.Length)
	for i := range p.r.Travel {
		station := &p.r.Travel[i]
		t.Row(station.Pose.Travel)
		t.Cell(station.InstantCenter.X, station.HasInstantCenter)
		t.Cell(station.InstantCenter.Y, station.HasInstantCenter)
	}
	return t.Table
}

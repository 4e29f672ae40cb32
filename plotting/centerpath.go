package plotting

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/plotter"
)

// Where instant centers are shown, in wheelbases from the rear contact. Those
// farther off belong to bars that are almost parallel.
var (
	aheadInSight = Span{-0.5, 2}
	aboveInSight = Span{-0.5, 1}
)

// CenterPath charts the way of the instant center over rear travel, ahead of
// the rear contact and above the ground, with its target. The curve breaks
// where the bars pass through parallel.
func CenterPath(r *analysis.Result) *Chart {
	about := centerPath{overTravel{r}}
	c := newChart(r, "instant-center", "Instant center path", about)
	k := r.Car.Check
	target := region{
		name: always("target"),
		x:    Span{k.TargetICX[0], k.TargetICX[1]}, y: Span{k.TargetICZ[0], k.TargetICZ[1]},
	}
	c.regions = []region{target}
	c.x = axis{label: "Ahead of rear contact", quantity: units.Length, least: 0.01, sight: target.x}
	c.y = axis{label: "Above ground", quantity: units.Length, least: 0.01, sight: target.y}
	c.lines = []line{
		{name: "path", ink: centerInk, runs: runs(r.Travel, about.point, throughParallel)},
		about.whole(),
	}
	for i := range r.Travel {
		if s := &r.Travel[i]; about.inSight(s) {
			c.x.sight = c.x.sight.with(s.InstantCenter.X)
			c.y.sight = c.y.sight.with(s.InstantCenter.Y)
		}
	}
	about.marks(c)
	about.notes(c)
	return c
}

type centerPath struct{ overTravel }

func (p centerPath) point(s *analysis.Station) (plotter.XY, bool) {
	return plotter.XY{X: s.InstantCenter.X, Y: s.InstantCenter.Y}, s.HasInstantCenter
}

// inSight tells whether a station's instant center is near enough to show.
func (p centerPath) inSight(s *analysis.Station) bool {
	length := p.r.Car.Body.Wheelbase
	return s.HasInstantCenter &&
		aheadInSight.Contains(s.InstantCenter.X/length) && aboveInSight.Contains(s.InstantCenter.Y/length)
}

// throughParallel tells whether the bars pass through parallel between two
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
func (p centerPath) whole() line {
	slope := p.r.Ride.CG.Y / p.r.Ride.Pose.Ground.Wheelbase
	far := 10 * p.r.Car.Body.Wheelbase
	return line{name: "100 % anti-squat", ink: wholeInk, dash: fine, runs: []plotter.XYs{{{X: -far, Y: -far * slope}, {X: far, Y: far * slope}}}}
}

// marks put names to the ends of the path and to ride height.
func (p centerPath) marks(c *Chart) {
	list := p.r.Travel
	add := func(s *analysis.Station, name, label string, as shape) {
		if p.inSight(s) {
			at, _ := p.point(s)
			c.marks = append(c.marks, mark{name: name, ink: centerInk, shape: as, at: at, caption: caption{head: label}})
		}
	}
	if first := &list[0]; first.Pose.Travel < 0 {
		add(first, "", "droop", none)
	}
	if last := &list[len(list)-1]; last.Pose.Travel > 0 {
		add(last, "", "bump", none)
	}
	add(&p.r.Ride, "ride height", "", ring)
}

// notes say where the path breaks or leaves the chart.
func (p centerPath) notes(c *Chart) {
	c.note(func(shown Frame) string {
		at := where(p.r.Travel, shown.Units, func(s *analysis.Station) bool { return !s.HasInstantCenter })
		return sentence("None at ", at, ": the bars are parallel.")
	})
	c.note(func(shown Frame) string {
		at := where(p.r.Travel, shown.Units, func(s *analysis.Station) bool {
			return s.HasInstantCenter && !(shown.X.Contains(s.InstantCenter.X) && shown.Y.Contains(s.InstantCenter.Y))
		})
		return sentence("Off the chart at ", at, ".")
	})
}

// positionAt returns the travel of the station whose instant center is drawn
// nearest to a pixel, and how far off that is.
func (p centerPath) positionAt(l *Layout, px, py float64) (at, off float64, ok bool) {
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

func (p centerPath) readout(travel float64, s units.System) []reading {
	lines := []reading{plainly(s.Travel(travel))}
	station, ok := p.at(travel)
	switch {
	case !ok:
		return append(lines, plainly("the bars do not reach here"))
	case !station.HasInstantCenter:
		return append(lines, plainly("no instant center: the bars are parallel"))
	}
	side, height := "ahead of", "above"
	if station.InstantCenter.X < 0 {
		side = "behind"
	}
	if station.InstantCenter.Y < 0 {
		height = "below"
	}
	return append(lines,
		reading{name: "instant center", value: value(s, units.Length, math.Abs(station.InstantCenter.X)), after: side + " the rear contact"},
		reading{value: value(s, units.Length, math.Abs(station.InstantCenter.Y)), after: height + " the ground"})
}

func (p centerPath) place(travel float64) place {
	var at place
	if station, ok := p.at(travel); ok {
		if xy, ok := p.point(station); ok {
			at.dots = []dot{{at: xy, ink: centerInk}}
		}
	}
	return at
}

func (p centerPath) table(s units.System, setup string) Table {
	t := newTable(s, setup)
	t.key("travel", "bump positive", units.Length)
	t.add("instant center ahead of rear contact", "", units.Length)
	t.add("instant center above ground", "", units.Length)
	for i := range p.r.Travel {
		station := &p.r.Travel[i]
		t.row(station.Pose.Travel)
		t.cell(station.InstantCenter.X, station.HasInstantCenter)
		t.cell(station.InstantCenter.Y, station.HasInstantCenter)
	}
	return t.Table
}

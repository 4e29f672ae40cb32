package plotting

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
)

const (
	// pushInSight is how many times the largest force the lower bars' push
	// limit may be and still be drawn as a line; beyond, it would leave the
	// curves flat, and its value stands at the edge.
	pushInSight = 5
	// limitInSight is the same for the other limits, over the largest force
	// of their direction.
	limitInSight = 1.6
	// forceInSight is the largest force shown, over the larger of lower push
	// and upper pull limit; only near travels where the bars hardly hold the axle is it more.
	forceInSight = 3
	// labelRoom is the part of the axis kept free for a limit's label at an
	// edge.
	labelRoom = 0.1
)

// pairNames name the pairs in legends and readouts.
var pairNames = [...]string{car.Upper: "upper", car.Lower: "lower"}

// pairInks color the pairs.
var pairInks = [...]ink{car.Upper: upperInk, car.Lower: lowerInk}

// Forces charts the force of one bar of each pair over rear travel, in both
// load cases, pull upward and push downward, with the allowable loads. The
// curves break at travels where bars and spring cannot hold the axle.
func Forces(r *analysis.Result) *Chart {
	about := forces{overTravel{r}}
	c := newChart(r, "bar-force", "Bar force over travel", about)
	c.aside = func(s units.System) string { return s.Symbol(units.Force) + " on one bar" }
	c.x = travelAxis(r)
	c.y = axis{quantity: units.Force, low: "push", high: "pull", unsigned: true, least: 1}
	for _, p := range car.Pairs {
		for _, way := range []struct {
			load analysis.Case
			dash dash
		}{{analysis.Hit, solid}, {analysis.Hooked, dashed}} {
			c.lines = append(c.lines, line{
				name: pairNames[p] + " " + way.load.String(), ink: pairInks[p], dash: way.dash,
				runs: runs(r.Travel, about.point(p, way.load), nil),
			})
		}
	}
	limits := about.limits()
	c.rules = append([]rule{{ink: mutedInk, at: 0}}, limits...)
	c.y.sight = about.sight(c.lines, limits)
	about.notes(c)
	return c
}

type forces struct{ overTravel }

// point reads a bar's force in a case off a station.
func (f forces) point(p car.Pair, load analysis.Case) func(*analysis.Station) (plotter.XY, bool) {
	return func(s *analysis.Station) (plotter.XY, bool) {
		l := load.Of(&s.Loads)
		return plotter.XY{X: s.Pose.Travel, Y: analysis.Tension(p, l)}, l.Balanced
	}
}

// limits returns the allowable loads that some force comes up against, and
// that of the lower bars in push always. One that both pairs share is one.
func (f forces) limits() []rule {
	var list []rule
	for _, d := range []column.Direction{column.Push, column.Pull} {
		shown := func(p car.Pair) bool {
			return f.r.Worst[p][d].Force > 0 || p == car.Lower && d == column.Push
		}
		upper, lower := f.r.Limit(car.Upper, d).Allowable, f.r.Limit(car.Lower, d).Allowable
		if shown(car.Upper) && shown(car.Lower) && upper == lower {
			list = append(list, limitRule(d.String()+" limit of all bars", plainInk, d, upper))
			continue
		}
		for _, p := range car.Pairs {
			if shown(p) {
				list = append(list, limitRule(pairNames[p]+" "+d.String()+" limit", pairInks[p], d, f.r.Limit(p, d).Allowable))
			}
		}
	}
	return list
}

// limitRule draws an allowable load with its name and value.
func limitRule(name string, color ink, d column.Direction, allowable float64) rule {
	return rule{
		ink: color, dash: long, at: signed(d, allowable), edge: true,
		label: func(s units.System) string { return name + " " + value(s, units.Force, allowable) },
	}
}

// signed gives a magnitude the sign of its direction, pull positive.
func signed(d column.Direction, magnitude float64) float64 {
	if d == column.Push {
		return -magnitude
	}
	return magnitude
}

// sight decides what must be in sight: zero, all forces that are not beyond
// reason, and those limits that leave the curves readable. Where another limit
// is named at an edge there is room for its label.
func (f forces) sight(curves []line, limits []rule) Span {
	forces := f.span(curves)
	sight, room := forces, Span{}
	for _, limit := range limits {
		switch {
		case math.Abs(limit.at) <= f.reach(forces, limit.at):
			sight = sight.with(limit.at)
		case limit.at < 0:
			room.Min = -labelRoom
		default:
			room.Max = labelRoom
		}
	}
	return Span{sight.Min + room.Min*sight.length(), sight.Max + room.Max*sight.length()}
}

// span returns zero and the forces, each up to forceInSight; without any, what
// the bars may carry.
func (f forces) span(curves []line) Span {
	push, pull := f.r.Limit(car.Lower, column.Push).Allowable, f.r.Limit(car.Upper, column.Pull).Allowable
	most := forceInSight * math.Max(push, pull)
	var s Span
	for _, l := range curves {
		for _, run := range l.runs {
			for _, at := range run {
				s = s.with(Span{-most, most}.clamp(at.Y))
			}
		}
	}
	if s == (Span{}) {
		return Span{-push, pull}
	}
	return s
}

// reach returns how large a limit may be and still be drawn as a line.
func (f forces) reach(forces Span, limit float64) float64 {
	switch {
	case limit == -f.r.Limit(car.Lower, column.Push).Allowable:
		return pushInSight * math.Max(forces.Max, -forces.Min)
	case limit < 0:
		return -limitInSight * forces.Min
	}
	return limitInSight * forces.Max
}

// notes say where the curves break or leave the chart.
func (f forces) notes(c *Chart) {
	if f.coincide() {
		c.note(func(Frame) string {
			return "Hooked and hit are the same here: the tires hold all that the drive gives."
		})
	}
	c.note(func(shown Frame) string {
		at := where(f.r.Travel, shown.Units, func(s *analysis.Station) bool {
			return !s.Loads.Hit.Balanced || !s.Loads.Hooked.Balanced
		})
		return sentence("No force at ", at, ": the bars cannot hold the axle there.")
	})
	c.note(func(shown Frame) string {
		var most float64
		at := where(f.r.Travel, shown.Units, func(s *analysis.Station) bool {
			l, off := &s.Loads, false
			for _, force := range [...]float64{l.Hit.Upper.Tension, l.Hit.Lower.Tension, l.Hooked.Upper.Tension, l.Hooked.Lower.Tension} {
				most = worst(most, force)
				off = off || !shown.Y.Contains(force)
			}
			return off
		})
		return sentence("Off the chart at ", at, ": up to "+value(shown.Units, units.Force, math.Abs(most))+".")
	})
}

// coincide reports whether the two cases give the same forces everywhere.
func (f forces) coincide() bool {
	for i := range f.r.Travel {
		if l := &f.r.Travel[i].Loads; l.Hooked.Thrust != l.Hit.Thrust || l.Hooked.AxleTorque != l.Hit.AxleTorque {
			return false
		}
	}
	return true
}

// readout writes the four forces and their share of the allowable load.
func (f forces) readout(travel float64, s units.System) []string {
	lines := []string{travelName(s, travel)}
	station, ok := f.at(travel)
	if !ok {
		return append(lines, "the bars do not reach here")
	}
	for _, p := range car.Pairs {
		for _, load := range []analysis.Case{analysis.Hit, analysis.Hooked} {
			name := pairNames[p] + " " + load.String() + " "
			if !load.Of(&station.Loads).Balanced {
				lines = append(lines, name+"has no value: the bars cannot hold the axle here")
				continue
			}
			use, way := f.r.Use(p, load, station)
			lines = append(lines, name+value(s, units.Force, use.Force)+" "+way.String()+" — "+percent(use.Share))
		}
	}
	return lines
}

// place puts a dot on each curve.
func (f forces) place(travel float64) place {
	at := place{line: true, x: travel}
	station, ok := f.at(travel)
	if !ok {
		return at
	}
	for _, p := range car.Pairs {
		for _, load := range analysis.Cases {
			if xy, ok := f.point(p, load)(station); ok {
				at.dots = append(at.dots, dot{xy, pairInks[p]})
			}
		}
	}
	return at
}

// table lists forces and allowable loads, pull positive.
func (f forces) table(s units.System) Table {
	t := newTable(s)
	t.add("travel", "bump positive", units.Length)
	for _, p := range car.Pairs {
		for _, load := range analysis.Cases {
			t.add(pairNames[p]+" "+load.String(), "pull positive", units.Force)
		}
	}
	for _, p := range car.Pairs {
		for _, d := range []column.Direction{column.Push, column.Pull} {
			t.add(pairNames[p]+" "+d.String()+" limit", "pull positive", units.Force)
		}
	}
	for i := range f.r.Travel {
		station := &f.r.Travel[i]
		t.row(station.Pose.Travel)
		for _, p := range car.Pairs {
			for _, load := range analysis.Cases {
				xy, ok := f.point(p, load)(station)
				t.cell(xy.Y, ok)
			}
		}
		for _, p := range car.Pairs {
			for _, d := range []column.Direction{column.Push, column.Pull} {
				t.cell(signed(d, f.r.Limit(p, d).Allowable), true)
			}
		}
	}
	return t.Table
}

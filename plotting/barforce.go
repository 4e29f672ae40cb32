package plotting

import (
	"fmt"
	"math"
	"slices"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

// pairNames name the pairs in legends and readouts.
var pairNames = [...]string{car.Upper: "upper", car.Lower: "lower"}

// pairWidths are those of the lines of the pairs, over the usual one: color says
// whether a bar pushes or pulls, width and name of which pair it is.
var pairWidths = [...]float64{car.Upper: 0.75, car.Lower: 1.5}

// BarForceKey is the key of [BarForce].
const BarForceKey chart.Key = "bar-force"

// BarForce charts the force of one bar of each pair over rear travel, in both
// load cases, pull upward and push downward, with the allowable loads. The
// curves break at travels where bars and spring cannot hold the axle.
func BarForce(first Setup, others ...Setup) *chart.Chart { return compare(first, others, barForce) }

// barForce is the chart of one setup; it shows every limit that some force of it
// or of those beside it comes up against.
func barForce(setup Setup, beside []Setup) *chart.Chart {
	r := setup.Result
	about := forces{overTravel{r}}
	c := newChart(setup, BarForceKey, "Bar force over travel", about)
	c.Aside = func(s units.System) string { return s.Symbol(units.Force) + " on one bar" }
	c.X = travelAxis(r)
	c.Y = forceAxis()
	for _, p := range car.Pairs {
		for _, way := range []struct {
			load analysis.Case
			dash chart.Dash
		}{{analysis.Hit, chart.Solid}, {analysis.Hooked, chart.Dashed}} {
			c.Lines = append(c.Lines, chart.Line{
				Name: pairNames[p] + " " + way.load.String(), Ink: pullInk, Below: pushInk, Dash: way.dash, Width: pairWidths[p],
				Runs: runs(r.Travel, about.point(p, way.load), nil),
			})
		}
	}
	holdAgainst(c, limits{r, func(p car.Pair, d column.Direction) bool {
		return slices.ContainsFunc(append(beside, setup), func(s Setup) bool { return s.Result.Worst[p][d].Force > 0 })
	}})
	about.notes(c)
	noteLaunch(c, r.Envelope(setup.Launch))
	return c
}

// noteLaunch says what the launch asks beyond what a chart over travel shows.
func noteLaunch(c *chart.Chart, e analysis.Envelope) {
	for _, p := range car.Pairs {
		for _, way := range directions {
			if d := e.OfPair(p, way); d.Source == analysis.FromLaunch {
				c.AddNote(func(shown chart.Frame) string {
					s := shown.Units
					return fmt.Sprintf("In the launch the %s comes to %s in %s, at %s.", d.Bar, s.Format(units.Force, d.Force), d.Way, s.Format(units.Time, d.Time))
				})
			}
		}
	}
}

type forces struct{ overTravel }

// point reads a bar's force in a case off a station.
func (f forces) point(p car.Pair, load analysis.Case) func(*analysis.Station) (plotter.XY, bool) {
	return func(s *analysis.Station) (plotter.XY, bool) {
		l := load.Of(&s.Loads)
		return plotter.XY{X: s.Pose.Travel, Y: analysis.Tension(p, l)}, l.Balanced
	}
}

// notes say where the curves break or leave the chart.
func (f forces) notes(c *chart.Chart) {
	if f.coincide() {
		c.AddNote(func(chart.Frame) string {
			return "Hooked and hit are the same here: the tires hold all that the drive gives."
		})
	}
	c.AddNote(func(shown chart.Frame) string {
		at := where(f.r.Travel, shown.Units, func(s *analysis.Station) bool {
			return !s.Loads.Hit.Balanced || !s.Loads.Hooked.Balanced
		})
		return sentence("No force at ", at, ": the bars cannot hold the axle there.")
	})
	c.AddNote(func(shown chart.Frame) string {
		var most float64
		at := where(f.r.Travel, shown.Units, func(s *analysis.Station) bool {
			l, off := &s.Loads, false
			for _, force := range [...]float64{l.Hit.Upper.Tension, l.Hit.Lower.Tension, l.Hooked.Upper.Tension, l.Hooked.Lower.Tension} {
				most = worst(most, force)
				off = off || !shown.Y.Contains(force)
			}
			return off
		})
		return sentence("Off the chart at ", at, ": up to "+shown.Units.Format(units.Force, math.Abs(most))+".")
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

// Readout writes the four forces and their share of the allowable load.
func (f forces) Readout(travel float64, s units.System) []chart.Reading {
	lines := []chart.Reading{chart.Plain(s.Travel(travel))}
	station, ok := f.at(travel)
	if !ok {
		return append(lines, chart.Plain("the bars do not reach here"))
	}
	for _, p := range car.Pairs {
		for _, load := range []analysis.Case{analysis.Hit, analysis.Hooked} {
			name := pairNames[p] + " " + load.String()
			if !load.Of(&station.Loads).Balanced {
				lines = append(lines, chart.Reading{Name: name, Lack: "the bars cannot hold the axle here"})
				continue
			}
			use, way := f.r.Use(p, load, station)
			lines = append(lines, chart.Reading{Name: name, Value: s.Format(units.Force, use.Force) + " " + way.String() + " — " + units.Share(use.Share)})
		}
	}
	return lines
}

// Place puts a dot on each curve.
func (f forces) Place(travel float64) chart.Place {
	at := chart.Place{Line: true, X: travel}
	station, ok := f.at(travel)
	if !ok {
		return at
	}
	for _, p := range car.Pairs {
		for _, load := range analysis.Cases {
			if xy, ok := f.point(p, load)(station); ok {
				at.Dots = append(at.Dots, chart.Dot{At: xy, Ink: tensionInk(xy.Y)})
			}
		}
	}
	return at
}

// Table lists forces and allowable loads, pull positive.
func (f forces) Table(s units.System, setup string) chart.Table {
	t := chart.NewTable(s, setup)
	t.Key("travel", "bump positive", units.Length)
	for _, p := range car.Pairs {
		for _, load := range analysis.Cases {
			t.Add(pairNames[p]+" "+load.String(), "pull positive", units.Force)
		}
	}
	limitColumns(t)
	for i := range f.r.Travel {
		station := &f.r.Travel[i]
		t.Row(station.Pose.Travel)
		for _, p := range car.Pairs {
			for _, load := range analysis.Cases {
				xy, ok := f.point(p, load)(station)
				t.Cell(xy.Y, ok)
			}
		}
		limitCells(t, f.r)
	}
	return t.Table
}

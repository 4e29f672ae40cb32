package plotting

import (
	"strings"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

// LaunchTiresKey is the key of [LaunchTires].
const LaunchTiresKey chart.Key = "launch-tires"

// LaunchTires charts the load on each tire over a launch, and shades the times
// at which neither front tire of the first setup carries anything.
func LaunchTires(first Setup, others ...Setup) *chart.Chart {
	c := compare(first, others, tiresOverTime)
	c.AddNote(func(shown chart.Frame) string {
		if len(others) == 0 {
			return launchTires{overTime{first.Launch}}.lift(shown.Units)
		}
		return liftOfAll(shown.Units, first, others)
	})
	return c
}

// liftOfAll says how the front wheels of several setups leave the ground; nothing
// where none does.
func liftOfAll(s units.System, first Setup, others []Setup) string {
	any := false
	var parts []string
	for i, setup := range append([]Setup{first}, others...) {
		l := setup.Launch
		any = any || l.Lift.Height != 0
		text := launchTires{overTime{l}}.lifted(s)
		if i == 0 && l.Lift.Duration > 0 {
			text += " (shaded)"
		}
		parts = append(parts, text)
	}
	if !any {
		return ""
	}
	return "Front wheels off the ground " + strings.Join(parts, " vs ") + "."
}

// tiresOverTime is the chart of one setup without a note on how the front wheels
// lift.
func tiresOverTime(setup Setup, _ []Setup) *chart.Chart {
	t := launchTires{overTime{setup.Launch}}
	c := newLaunchChart(setup, LaunchTiresKey, "Tire loads", t)
	c.Y = chart.Axis{Label: "Load on one tire", Quantity: units.Force, Least: 1}
	for _, tire := range t.tires() {
		c.Lines = append(c.Lines, chart.Line{Name: tire.name, Ink: tire.ink, Dash: tire.dash, Runs: t.curve(tire.values)})
		c.Y.Sight = c.Y.Sight.With(tire.values...)
	}
	t.shade(c)
	return c
}

type launchTires struct{ overTime }

// tire is the load on one tire.
type tire struct {
	name   string
	ink    chart.Ink
	dash   chart.Dash
	values []float64
}

func (t launchTires) tires() []tire {
	var list []tire
	for _, side := range launch.Sides {
		list = append(list, tire{"rear " + side.String(), rearInk, sideDashes[side], t.l.RearLoad[side]})
	}
	for _, side := range launch.Sides {
		list = append(list, tire{"front " + side.String(), frontInk, sideDashes[side], t.l.FrontLoad[side]})
	}
	return list
}

// shade adds the times without load on the front tires, each from half a step
// before to half a step after.
func (t launchTires) shade(c *chart.Chart) {
	half := t.l.Options.Output / 2
	off := func(i int) bool { return t.l.FrontLoad[launch.Left][i] == 0 && t.l.FrontLoad[launch.Right][i] == 0 }
	for i := 0; i < len(t.l.Time); i++ {
		if !off(i) {
			continue
		}
		first := i
		for i+1 < len(t.l.Time) && off(i+1) {
			i++
		}
		c.Regions = append(c.Regions, chart.Region{
			Shade: true, X: chart.Between(t.l.Time[first]-half, t.l.Time[i]+half), Y: chart.Everywhere(),
		})
	}
}

// lift says how the front wheels leave the ground.
func (t launchTires) lift(s units.System) string {
	lift := &t.l.Lift
	switch up := s.Format(units.Length, lift.Height); {
	case lift.Duration > 0:
		return "Shaded: front wheels off the ground, " + timeName(s, lift.Duration) + " in all, up to " + up + "."
	case lift.Height > 0:
		return "One front wheel leaves the ground, up to " + up + " at " + timeName(s, lift.Time) + "."
	}
	return ""
}

// lifted says the same in short.
func (t launchTires) lifted(s units.System) string {
	lift := &t.l.Lift
	switch up := s.Format(units.Length, lift.Height); {
	case lift.Duration > 0:
		return "for " + timeName(s, lift.Duration) + ", up to " + up
	case lift.Height > 0:
		return "one at a time, up to " + up
	}
	return "never"
}

// Readout writes the four loads.
func (t launchTires) Readout(time float64, s units.System) []chart.Reading {
	m, ok := t.at(time)
	if !ok {
		return t.verdict()
	}
	lines := []chart.Reading{chart.Plain(timeName(s, m.time))}
	for _, tire := range t.tires() {
		load := s.Format(units.Force, m.of(tire.values))
		if m.of(tire.values) == 0 {
			load = "off the ground"
		}
		lines = append(lines, chart.Reading{Name: tire.name, Value: load})
	}
	return lines
}

// Place puts a dot on each curve.
func (t launchTires) Place(time float64) chart.Place {
	m, ok := t.at(time)
	at := chart.Place{Line: ok, X: m.time}
	if ok {
		for _, tire := range t.tires() {
			at.Dots = append(at.Dots, chart.Dot{At: plotter.XY{X: m.time, Y: m.of(tire.values)}, Ink: tire.ink})
		}
	}
	return at
}

// Table lists the four loads.
func (t launchTires) Table(s units.System, setup string) chart.Table {
	var records []record
	for _, tire := range t.tires() {
		records = append(records, record{tire.name, "", units.Force, tire.values})
	}
	return t.tableOf(s, setup, records, nil, nil)
}

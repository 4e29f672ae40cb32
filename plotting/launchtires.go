package plotting

import (
	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
)

// LaunchTires charts the load on each tire over a launch, and shades the times
// at which neither front tire carries anything.
func LaunchTires(l *launch.Result, r *analysis.Result) *Chart {
	c := launchTires{overTime{l}}.chart(r)
	c.note(func(shown Frame) string { return launchTires{overTime{l}}.lift(shown.Units) })
	return c
}

// compareTires is the chart of two setups; the shades are those of the first.
func compareTires(l *launch.Result, r *analysis.Result, otherLaunch *launch.Result, other *analysis.Result) *Chart {
	a, b := launchTires{overTime{l}}, launchTires{overTime{otherLaunch}}
	c := compare(a.chart(r), b.chart(other))
	c.note(func(shown Frame) string {
		if l.Lift.Height == 0 && otherLaunch.Lift.Height == 0 {
			return ""
		}
		first := a.lifted(shown.Units)
		if l.Lift.Duration > 0 {
			first += " (shaded)"
		}
		return "Front wheels off the ground " + first + " vs " + b.lifted(shown.Units) + "."
	})
	return c
}

// chart draws the loads without a remark on how the front wheels lift.
func (t launchTires) chart(r *analysis.Result) *Chart {
	c := newLaunchChart(t.l, r, "launch-tires", "Tire loads", t)
	c.y = axis{label: "Load on one tire", quantity: units.Force, least: 1}
	for _, tire := range t.tires() {
		c.lines = append(c.lines, line{name: tire.name, ink: tire.ink, dash: tire.dash, runs: t.curve(tire.values)})
		c.y.sight = c.y.sight.with(tire.values...)
	}
	t.shade(c)
	return c
}

type launchTires struct{ overTime }

// tire is the load on one tire.
type tire struct {
	name   string
	ink    ink
	dash   dash
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
func (t launchTires) shade(c *Chart) {
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
		c.regions = append(c.regions, region{
			shade: true, x: Span{t.l.Time[first] - half, t.l.Time[i] + half}, y: everywhere(),
		})
	}
}

// lift tells how the front wheels leave the ground.
func (t launchTires) lift(s units.System) string {
	lift := &t.l.Lift
	switch up := value(s, units.Length, lift.Height); {
	case lift.Duration > 0:
		return "Shaded: front wheels off the ground, " + timeName(s, lift.Duration) + " in all, up to " + up + "."
	case lift.Height > 0:
		return "One front wheel leaves the ground, up to " + up + " at " + timeName(s, lift.Time) + "."
	}
	return ""
}

// lifted tells the same in short.
func (t launchTires) lifted(s units.System) string {
	lift := &t.l.Lift
	switch up := value(s, units.Length, lift.Height); {
	case lift.Duration > 0:
		return "for " + timeName(s, lift.Duration) + ", up to " + up
	case lift.Height > 0:
		return "one at a time, up to " + up
	}
	return "never"
}

// readout writes the four loads.
func (t launchTires) readout(time float64, s units.System) []reading {
	m, ok := t.at(time)
	if !ok {
		return t.verdict(s)
	}
	lines := []reading{plainly(timeName(s, m.time))}
	for _, tire := range t.tires() {
		load := value(s, units.Force, m.of(tire.values))
		if m.of(tire.values) == 0 {
			load = "off the ground"
		}
		lines = append(lines, reading{name: tire.name, value: load})
	}
	return lines
}

// place puts a dot on each curve.
func (t launchTires) place(time float64) place {
	m, ok := t.at(time)
	at := place{line: ok, x: m.time}
	if ok {
		for _, tire := range t.tires() {
			at.dots = append(at.dots, dot{at: plotter.XY{X: m.time, Y: m.of(tire.values)}, ink: tire.ink})
		}
	}
	return at
}

// table lists the four loads.
func (t launchTires) table(s units.System, setup string) Table {
	var records []record
	for _, tire := range t.tires() {
		records = append(records, record{tire.name, "", units.Force, tire.values})
	}
	return t.tableOf(s, setup, records, nil, nil)
}

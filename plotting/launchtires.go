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
	return launchTiresOf(l, r, "Shaded: ", "")
}

// launchTiresOf is the chart with words before and behind its remark on the
// shades.
func launchTiresOf(l *launch.Result, r *analysis.Result, before, behind string) *Chart {
	about := launchTires{overTime{l}}
	c := newLaunchChart(l, r, "launch-tires", "Tire loads", about)
	c.y = axis{label: "Load on one tire", quantity: units.Force, least: 1}
	for _, t := range about.tires() {
		c.lines = append(c.lines, line{name: t.name, ink: t.ink, dash: t.dash, runs: about.curve(t.values)})
		c.y.sight = c.y.sight.with(t.values...)
	}
	about.shade(c)
	c.note(func(shown Frame) string { return about.lift(shown.Units, before, behind) })
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
func (t launchTires) lift(s units.System, before, behind string) string {
	lift := &t.l.Lift
	switch up := value(s, units.Length, lift.Height); {
	case lift.Duration > 0:
		return before + "front wheels off the ground, " + timeName(s, lift.Duration) + " in all" + behind + ", up to " + up + "."
	case lift.Height > 0:
		return "One front wheel leaves the ground, up to " + up + " at " + timeName(s, lift.Time) + "."
	}
	return ""
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

package plotting

import (
	"slices"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

// LaunchWheelsKey is the key of [LaunchWheels].
const LaunchWheelsKey chart.Key = "launch-wheels"

// standing is a speed at which nobody sees a car roll back [m/s].
const standing = 0.1

// LaunchWheels charts the speed of the rear tires' tread and that of the car over a
// launch. Between them lies the slip of the first setup, shaded stronger where a rear
// tire slips beyond its peak grip.
func LaunchWheels(first Setup, others ...Setup) *chart.Chart {
	return compare(first, others, wheelsOverTime)
}

// wheelsOverTime is the chart of one setup.
func wheelsOverTime(setup Setup, _ []Setup) *chart.Chart {
	w := launchWheels{overTime{setup.Launch}}
	c := newLaunchChart(setup, LaunchWheelsKey, "Wheel speed against ground speed", w)
	c.Y = chart.Axis{Label: "Speed", Quantity: units.RoadSpeed, Least: 1}
	for _, v := range w.speeds() {
		c.Lines = append(c.Lines, chart.Line{Name: v.name, Ink: v.ink, Dash: v.dash, Runs: w.curve(v.values)})
		c.Y.Sight = c.Y.Sight.With(v.values...)
	}
	if c.Y.Sight.Min > -standing {
		c.Y.Sight.Min = 0
	}
	if len(c.Events) > 0 { // their labels stand above the lines
		c.Y.Sight.Max += chart.LabelRoom * c.Y.Sight.Length()
	}
	c.Areas = w.slipping()
	c.AddNote(w.spun)
	return c
}

type launchWheels struct{ overTime }

// speed is one of the speeds that are compared.
type speed struct {
	name   string
	ink    chart.Ink
	dash   chart.Dash
	values []float64
}

func (w launchWheels) speeds() []speed {
	return []speed{{"rear wheels", rearInk, chart.Solid, w.l.WheelSpeed}, {"car", chart.PlainInk, chart.Solid, w.l.Speed}}
}

// slipping fills what lies between the speeds, and once more what of it is wheelspin.
func (w launchWheels) slipping() []chart.Area {
	slip := chart.Area{Name: "slip", Ink: rearInk}
	spin := chart.Area{Name: "wheelspin", Ink: spinInk, Strong: true}
	if !w.empty() {
		steps := append(drawn(w.l.WheelSpeed), drawn(w.l.Speed)...)
		slices.Sort(steps)
		steps = slices.Compact(steps)
		slip.Rings = w.between(steps, w.l.Time[0], w.end())
		for _, e := range w.l.Of(launch.Wheelspin) {
			spin.Rings = append(spin.Rings, w.between(steps, e.From, e.To)...)
		}
	}
	return []chart.Area{slip, spin}
}

// between returns the outline of what lies between the car's speed and a greater one
// of the wheels, at steps from a time to another; none for an instant.
func (w launchWheels) between(steps []int, from, to float64) []plotter.XYs {
	if from >= to {
		return nil
	}
	first, _ := w.at(from)
	last, _ := w.at(to)
	moments := []moment{first}
	for _, i := range steps {
		if t := w.l.Time[i]; t > from && t < to {
			moments = append(moments, moment{time: t, step: i})
		}
	}
	moments = append(moments, last)
	ring := make(plotter.XYs, 2*len(moments))
	for k, m := range moments {
		car := m.of(w.l.Speed)
		ring[k] = plotter.XY{X: m.time, Y: max(car, m.of(w.l.WheelSpeed))}
		ring[len(ring)-1-k] = plotter.XY{X: m.time, Y: car}
	}
	return []plotter.XYs{ring}
}

// spun says how much the tires spin.
func (w launchWheels) spun(shown chart.Frame) string {
	spells := w.l.Of(launch.Wheelspin)
	if len(spells) == 0 {
		return ""
	}
	most, whole := spells[0], 0.0
	for _, e := range spells {
		whole += e.To - e.From
		if e.Value > most.Value {
			most = e
		}
	}
	return "Past the tires' peak grip for " + timeName(shown.Units, whole) + " in all, up to " + units.WholePercent(most.Value) + " slip at " + timeName(shown.Units, most.Time) + "."
}

// ahead says by which part of the greater speed the wheels are ahead of the car. The
// slip of a tire lags behind that, by its relaxation length.
func ahead(wheels, car float64) string {
	part := (wheels - car) / max(wheels, car, standing)
	if part < 0 {
		return units.WholePercent(-part) + " behind"
	}
	return units.WholePercent(part) + " ahead"
}

// Readout writes both speeds and by how much they differ, the slip of each tire and the
// driveshaft's speed.
func (w launchWheels) Readout(time float64, s units.System) []chart.Reading {
	m, ok := w.at(time)
	if !ok {
		return w.verdict()
	}
	lines := []chart.Reading{chart.Plain(timeName(s, m.time))}
	for _, v := range w.speeds() {
		lines = append(lines, chart.Reading{Name: v.name, Value: s.Format(units.RoadSpeed, m.of(v.values))})
	}
	left, right := m.of(w.l.Slip[launch.Left]), m.of(w.l.Slip[launch.Right])
	lines = append(lines, chart.Reading{Name: "wheels", Value: ahead(m.of(w.l.WheelSpeed), m.of(w.l.Speed))},
		chart.Reading{Name: "tire slip", Value: units.WholePercent(left) + " left, " + units.WholePercent(right) + " right"})
	return append(lines, chart.Reading{Name: "driveshaft", Value: s.Format(units.Speed, m.of(w.l.Driveshaft))})
}

// Place puts a dot on each curve.
func (w launchWheels) Place(time float64) chart.Place {
	m, ok := w.at(time)
	at := chart.Place{Line: ok, X: m.time}
	if ok {
		for _, v := range w.speeds() {
			at.Dots = append(at.Dots, chart.Dot{At: plotter.XY{X: m.time, Y: m.of(v.values)}, Ink: v.ink})
		}
	}
	return at
}

// Table lists both speeds, the slip of each tire and the driveshaft's speed.
func (w launchWheels) Table(s units.System, setup string) chart.Table {
	var records []record
	for _, v := range w.speeds() {
		records = append(records, record{v.name, "", units.RoadSpeed, v.values})
	}
	for _, side := range launch.Sides {
		records = append(records, record{"slip " + side.String(), "", units.Percent, w.l.Slip[side]})
	}
	records = append(records, record{"driveshaft", "", units.Speed, w.l.Driveshaft})
	return w.tableOf(s, setup, records, nil, nil)
}

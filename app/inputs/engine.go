package inputs

import (
	"math"
	"slices"

	"bowline/app/form"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/units"
)

// torqueCurve is the engine's torque over its speed.
var torqueCurve = curve{
	path: "drive.curve", name: "torque curve",
	help: "Torque over engine speed, of which the launch takes the shape: it passes through the torque at launch, marked by the square. Drag a point, or double-click the line.",
	add:  "Add a curve",
	x:    units.Speed, y: units.Torque,
	count: func(c *car.Car) int { return len(c.Launch.Engine.Curve) },
	at: func(c *car.Car, i int) (x, y *float64) {
		p := &c.Launch.Engine.Curve[i]
		return &p.Speed, &p.Torque
	},
	insert: func(c *car.Car, i int, x, y float64) {
		c.Launch.Engine.Curve = slices.Insert(c.Launch.Engine.Curve, i, car.TorquePoint{Speed: x, Torque: y})
	},
	remove: func(c *car.Car, i int) {
		c.Launch.Engine.Curve = slices.Delete(c.Launch.Engine.Curve, i, i+1)
	},
	start: func(c *car.Car) {
		limit := c.RevLimit()
		for _, speed := range []float64{c.Drive.Speed / 2, c.Drive.Speed, (c.Drive.Speed + limit) / 2, limit} {
			c.Launch.Engine.Curve = append(c.Launch.Engine.Curve, car.TorquePoint{Speed: speed, Torque: c.Drive.Torque})
		}
	},
	clear: func(c *car.Car) { c.Launch.Engine.Curve = nil },
	plot:  plotTorque,
	say:   words.PeakPower,
}

// powerRamp is the share of the engine's torque over time.
var powerRamp = curve{
	path: "drive.ramp", name: "power over time",
	help: "Share of the engine's torque from the release on, as boost or timing hold it back. Drag a point, or double-click the line.",
	add:  "Add a ramp",
	x:    units.Time, y: units.Percent,
	count: func(c *car.Car) int { return len(c.Launch.Engine.Ramp) },
	at: func(c *car.Car, i int) (x, y *float64) {
		p := &c.Launch.Engine.Ramp[i]
		return &p.Time, &p.Share
	},
	insert: func(c *car.Car, i int, x, y float64) {
		c.Launch.Engine.Ramp = slices.Insert(c.Launch.Engine.Ramp, i, car.RampPoint{Time: x, Share: y})
	},
	remove: func(c *car.Car, i int) {
		c.Launch.Engine.Ramp = slices.Delete(c.Launch.Engine.Ramp, i, i+1)
	},
	start: func(c *car.Car) {
		c.Launch.Engine.Ramp = []car.RampPoint{{Time: 0, Share: 1}, {Time: 1, Share: 1}}
	},
	clear: func(c *car.Car) { c.Launch.Engine.Ramp = nil },
	plot:  plotRamp,
	say:   words.Ramp,
}

// powerSteps is the number of straight pieces in which power is drawn.
const powerSteps = 60

// plotTorque draws the torque curve, level up to the rev limit where it ends before,
// and the power that comes of it.
func plotTorque(c *car.Car, u units.System) form.Plot {
	e, limit := &c.Launch.Engine, c.RevLimit()
	torque := func(x float64) float64 { return u.FromSI(units.Torque, x) }
	rpm := func(x float64) float64 { return u.FromSI(units.Speed, x) }
	p := form.Plot{
		X: u.Symbol(units.Speed), Y: "torque, " + u.Symbol(units.Torque), Other: "power, " + u.Symbol(units.Power),
		Mark: &form.Point{X: rpm(c.Drive.Speed), Y: torque(c.Drive.Torque)},
	}
	from := 0.5 * c.Drive.Speed
	if n := len(e.Curve); n > 0 {
		from = min(from, 0.9*e.Curve[0].Speed)
		p.Line = append(p.Line, form.Point{X: rpm(from), Y: torque(e.Curve[0].Torque)})
		for _, q := range e.Curve {
			p.Points = append(p.Points, form.Point{X: rpm(q.Speed), Y: torque(q.Torque)})
		}
		p.Line = append(p.Line, p.Points...)
		if last := e.Curve[n-1]; last.Speed < limit {
			p.Line = append(p.Line, form.Point{X: rpm(limit), Y: torque(last.Torque)})
		}
	} else {
		p.Line = []form.Point{{X: rpm(from), Y: torque(c.Drive.Torque)}, {X: rpm(limit), Y: torque(c.Drive.Torque)}}
	}
	for k := range powerSteps + 1 {
		speed := from + (limit-from)*float64(k)/powerSteps
		p.Second = append(p.Second, form.Point{X: rpm(speed), Y: u.FromSI(units.Power, speed*c.EngineTorque(speed))})
	}
	return p
}

// leastRamp is the least time that the chart of the ramp shows [s].
const leastRamp = 1.5

// plotRamp draws the share of the torque, level beyond the ramp.
func plotRamp(c *car.Car, u units.System) form.Plot {
	ramp := c.Launch.Engine.Ramp
	p := form.Plot{X: u.Symbol(units.Time), Y: "share of torque, " + u.Symbol(units.Percent)}
	share := func(x float64) float64 { return u.FromSI(units.Percent, x) }
	if len(ramp) == 0 {
		p.Line = []form.Point{{X: 0, Y: share(1)}, {X: leastRamp, Y: share(1)}}
		return p
	}
	for _, q := range ramp {
		p.Points = append(p.Points, form.Point{X: q.Time, Y: share(q.Share)})
	}
	last := ramp[len(ramp)-1]
	p.Line = slices.Concat([]form.Point{{X: 0, Y: share(ramp[0].Share)}}, p.Points,
		[]form.Point{{X: math.Max(leastRamp, 1.1*last.Time), Y: share(last.Share)}})
	return p
}

package side

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/statics"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// What the arrows of the axle's free body are drawn to: a force of ArrowLoad [N] is
// ArrowLength long [m]. A torque is an arc whose radius times the force that its length
// stands for is the torque.
const (
	ArrowLoad   = 10000 * units.PoundForce
	ArrowLength = 10 * units.Inch
)

// force is one of the forces on the axle assembly, of both sides together.
type force struct {
	name  string
	at    r2.Vec // ground's frame [m]
	f     r2.Vec // forward and up [N]
	color scene.Color
}

// The forces on the axle assembly, in the order of freeBody.
const (
	onUpper = iota
	onLower
	fromSpring
	thrust
	tireLoad
	axleWeight
	axleInertia
	forces
)

// freeBody returns the forces on the axle assembly: housing, gears, wheels and tires. With
// the inertia of the wheels' spin-up they are in balance (package statics).
func (b *builder) freeBody(l *statics.Load) [forces]force {
	c := b.result.Car
	upper, _ := b.seen(car.Upper)
	lower, _ := b.seen(car.Lower)
	axle := b.place(b.station.Pose.Axle)
	low, high := b.onHousing(c.Springs.RearAxleMount), b.place(c.Springs.RearChassisMount)
	push := r2.Sub(low, high)
	if n := r2.Norm(push); n > 0 {
		push = r2.Scale(l.Spring/n, push)
	}
	return [...]force{
		onUpper:     {"Both upper bars", upper, r2.Scale(2, l.Upper.OnHousing), parts.NumberColor(l.Upper.Tension, 0)},
		onLower:     {"Both lower bars", lower, r2.Scale(2, l.Lower.OnHousing), parts.NumberColor(l.Lower.Tension, 0)},
		fromSpring:  {"Both springs", low, push, scene.Ink},
		thrust:      {"Thrust", r2.Vec{}, r2.Vec{X: l.Thrust}, scene.Ink},
		tireLoad:    {"Tire load", r2.Vec{}, r2.Vec{Y: l.RearLoad}, scene.Ink},
		axleWeight:  {"Axle's weight", axle, r2.Vec{Y: -c.Body.UnsprungRear * units.Gravity}, scene.Muted},
		axleInertia: {"Axle's inertia", axle, r2.Vec{X: -c.Body.UnsprungRear * l.Accel}, scene.Muted},
	}
}

// The arcs of torque: radius over that of the tire, and Index of their IDs.
const (
	wholeTorque = iota // what the housing reacts, which thrust and spin-up ask for
	spinUp             // inertia of the wheels that spin up
)

var arcRadius = [...]float64{wholeTorque: 0.62, spinUp: 0.46}

// torques returns the torques about the axle center, nose-up positive [N·m].
func torques(c *car.Car, l *statics.Load) [2]float64 {
	return [2]float64{wholeTorque: l.AxleTorque, spinUp: l.AxleTorque - l.Thrust*c.Tires.RearRadius}
}

// balanced returns the load of the case looked at, or nil where nothing holds the axle and
// in a launch.
func (o *Options) balanced(s *analysis.Station) *statics.Load {
	if l := o.Case.Of(&s.Loads); o.Launch == nil && l.Balanced {
		return l
	}
	return nil
}

// forces draws the free body of the axle: its forces as arrows to scale, and the torque.
func (b *builder) forces() {
	l := b.options.balanced(b.station)
	if !b.options.Forces || l == nil {
		return
	}
	u := b.options.Units
	for i, f := range b.freeBody(l) {
		size := r2.Norm(f.f)
		if size == 0 {
			continue
		}
		id := scene.ID{Kind: scene.AxleForce, Index: i}
		tip := r2.Add(f.at, r2.Scale(ArrowLength/ArrowLoad, f.f))
		b.arrow(id, f.color, f.at, tip)
		b.label(id, across(tip, 0), f.name, u.Format(units.Force, size), f.color, r2.Unit(f.f), scene.Secondary)
	}
	axle := b.place(b.station.Pose.Axle)
	for i, torque := range torques(b.result.Car, l) {
		radius := arcRadius[i] * b.result.Car.Tires.RearRadius
		sweep := torque / radius * ArrowLength / ArrowLoad / radius
		if math.Abs(sweep) < 1e-3 {
			continue
		}
		const steps = 48
		var arc [steps + 1]r2.Vec
		for k := range arc {
			sin, cos := math.Sincos(0.75*math.Pi + sweep*float64(k)/steps)
			arc[k] = r2.Add(axle, r2.Vec{X: radius * cos, Y: radius * sin})
		}
		b.arrow(scene.ID{Kind: scene.AxleTorque, Index: i}, [...]scene.Color{wholeTorque: scene.Whole, spinUp: scene.Muted}[i], arc[:]...)
	}
	torque := torques(b.result.Car, l)
	start := r2.Add(axle, r2.Scale(arcRadius[wholeTorque]*b.result.Car.Tires.RearRadius*math.Sqrt2/2, r2.Vec{X: -1, Y: 1}))
	figure := "thrust × radius " + u.Figure(units.Torque, torque[wholeTorque]-torque[spinUp], 0) + ", spin-up " + u.Format(units.Torque, torque[spinUp])
	b.label(scene.ID{Kind: scene.AxleTorque}, across(start, 0), "Axle torque "+u.Format(units.Torque, torque[wholeTorque]), figure, scene.Whole, r2.Vec{X: -1, Y: 1}, scene.Secondary)
	b.label(scene.ID{Kind: scene.AxleForce, Index: forces}, across(r2.Vec{X: -b.result.Car.Tires.RearRadius}, 0), "Forces on the axle, "+u.Format(units.Force, ArrowLoad)+" as long as "+u.FormatExact(units.Length, ArrowLength), "", scene.Ink, r2.Vec{Y: -1}, scene.Ordinary)
}

// arrow draws an arrow that stands out from what it lies on.
func (b *builder) arrow(id scene.ID, color scene.Color, through ...r2.Vec) {
	points := b.middle(through...)
	b.add(scene.Item{ID: id, Points: points, Stroke: scene.Background, Width: 6})
	b.add(scene.Item{ID: id, Shape: scene.Force, Points: points, Stroke: color, Width: 2.6, Pick: 5})
}

// describeForce names a force or a torque of the axle's free body.
func describeForce(id scene.ID, r *analysis.Result, s *analysis.Station, o Options) []string {
	l := o.balanced(s)
	if l == nil {
		return nil
	}
	if id.Kind == scene.AxleTorque {
		torque := o.Units.Format(units.Torque, torques(r.Car, l)[id.Index])
		if id.Index == spinUp {
			return []string{"Inertia of the wheels that spin up: " + torque, "what is left of the axle torque beside thrust × radius"}
		}
		return []string{"Axle torque, which the housing reacts: " + torque, "thrust × radius and the wheels' spin-up (" + o.Case.String() + ")"}
	}
	if id.Index >= forces {
		return []string{"Forces on the axle with its wheels, both sides together", "with the wheels' spin-up they are in balance"}
	}
	o.memory = new(memory)
	b := &builder{result: r, station: s, options: o, list: &scene.List{}, parts: &o.memory.shown}
	b.start()
	f := b.freeBody(l)[id.Index]
	return []string{f.name + ", on the axle: " + o.Units.Format(units.Force, r2.Norm(f.f)), forceWords(f.f, o.Units) + " (" + o.Case.String() + ")"}
}

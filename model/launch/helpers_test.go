package launch

import (
	"context"
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

const (
	inch  = units.Inch
	pound = units.Pound
	foot  = units.Foot
	lbf   = units.PoundForce
)

// reference is the car that the mechanics are checked against.
func reference(t testing.TB) *car.Car { return read(t, "../../testdata/reference.toml") }

func read(t testing.TB, path string) *car.Car {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// parameters are those of a car's first setup.
func parameters(t testing.TB, c *car.Car) Parameters {
	t.Helper()
	p, err := New(c, 0, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func run(t testing.TB, c *car.Car, o Options) *Result {
	t.Helper()
	r, err := Run(context.Background(), c, 0, carfile.Stock(), o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func simulate(t testing.TB, p Parameters, o Options) *Result {
	t.Helper()
	r, err := Simulate(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// push makes the drive a constant engine torque that comes up smoothly over a
// time: the engine's inertia and speed are so large that no wheel speed matters.
func push(p *Parameters, torque, release float64) {
	const speed = 1e7
	p.Drive.Torque = []TorquePoint{{0, torque}}
	p.Drive.Speed, p.Drive.Inertia, p.Drive.Capacity = speed, 1e9, torque/(speed*speed)
	p.Drive.Release = release
}

// undamped takes every damper out.
func undamped(p *Parameters) {
	for k := range p.Rods {
		p.Rods[k].Damping = 0
	}
	for k := range Sides {
		p.Coils[k].Bump, p.Coils[k].Rebound = 0, 0
		p.RearTires[k].Damping, p.RearTires[k].CarcassDamping, p.RearTires[k].Lane.Damping = 0, 0, 0
		p.Corners[k].Bump, p.Corners[k].Rebound, p.Corners[k].TireDamping, p.Corners[k].Lane.Damping = 0, 0, 0, 0
	}
	p.WheelieBar.Damping = 0
}

// straighten makes the locator so long that it does not pull aside as it swings,
// so that a symmetric car stays symmetric.
func straighten(p *Parameters) {
	bar := &p.Rods[Locator]
	bar.Chassis.Y = 1e5
	bar.Length = bar.Chassis.Y - bar.Housing.Y
	bar.Free = bar.Length
}

// stiffen makes the tires give way less, by a factor, and leaves the loaded
// radius at ride height as it is.
func stiffen(p *Parameters, factor float64) {
	for k := range Sides {
		rear, front := &p.RearTires[k], &p.Corners[k]
		rear.Radius = p.Axle.Height + (rear.Radius-p.Axle.Height)/factor
		front.Radius = front.Hub.Z + (front.Radius-front.Hub.Z)/factor
		rear.Rate *= factor
		front.TireRate *= factor
	}
}

// last is the final value of a list.
func last(list []float64) float64 { return list[len(list)-1] }

// within checks a value to a part of what it should be.
func within(t *testing.T, what string, got, want, part float64) {
	t.Helper()
	if !(math.Abs(got-want) <= part*math.Abs(want)) {
		t.Errorf("%s: got %.8g, want %.8g within %.2g", what, got, want, part)
	}
}

// upset returns a state away from rest: bodies moved, turned and in motion in
// no direction of special use. Numbers are small where springs are stiff.
func upset(m *model) state {
	s := m.ride()
	turn := func(x, y, z float64) quat.Number { return turned(quat.Number{Real: 1}, r3.Vec{X: x, Y: y, Z: z}) }
	s.chassis.at = r3.Add(s.chassis.at, r3.Vec{X: 0.3, Y: 0.01, Z: 0.03})
	s.axle.at = r3.Add(s.axle.at, r3.Vec{X: 0.3, Y: 0.01, Z: 0.02})
	s.chassis.turn, s.axle.turn = turn(0.02, -0.01, 0.004), turn(-0.01, 0.003, 0.004)
	s.rise = [2]float64{0.01, -0.02}
	s.lift = [2]float64{5, -8}
	s.chassis.momentum = r3.Vec{X: 4000, Y: 100, Z: -300}
	s.chassis.spin = r3.Vec{X: 60, Y: -200, Z: 90}
	s.axle.velocity = r3.Vec{X: 4, Y: 0.1, Z: -0.2}
	s.axle.omega = r3.Vec{X: 0.3, Y: -0.2, Z: 0.1}
	s.wheel.speed = 20
	s.wheel.stretch = [2]float64{0.01, -0.005}
	return s
}

// carLibrary holds the materials of the cars.
var carLibrary = carfile.Stock()

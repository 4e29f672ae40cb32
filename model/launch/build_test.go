package launch

import (
	"math"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The parameters of the reference car, each worked out by hand from its file
// and the defaults.
func TestParameters(t *testing.T) {
	c := reference(t)
	c.Setups[0].Turns.LowerLeft = 1.5
	if bar := parameters(t, c).RearAntiRoll; bar != 0 {
		t.Errorf("a car without an anti-roll bar has one of %v N·m/rad", bar)
	}
	c.Launch.Suspension.RearAntiRoll = antiRoll
	c.Launch.WheelieBar.Reach, c.Launch.WheelieBar.Height = 55*inch, 3*inch
	p := parameters(t, c)
	near := func(what string, got, want r3.Vec) {
		t.Helper()
		if r3.Norm(r3.Sub(got, want)) > 1e-9 {
			t.Errorf("%s: got %v, want %v", what, got, want)
		}
	}
	at := func(x, y, z float64) r3.Vec { return r3.Vec{X: x * inch, Y: y * inch, Z: z * inch} }
	// 2650 − 390 − 130 lb, and the moments of what is left.
	within(t, "sprung mass", p.Chassis.Mass, 2130*pound, 1e-12)
	x, z := (2650*52.5-130*105)/2130, (2650*19.5-390*16-130*12.5)/2130
	near("CG", p.Chassis.CG, at(x, 0, z))
	within(t, "pitch inertia", p.Chassis.Inertia.Y, 2130*pound*x*(105-x)*inch*inch, 1e-12)
	within(t, "yaw inertia", p.Chassis.Inertia.Z, 2130*pound*x*(105-x)*inch*inch, 1e-12)
	within(t, "roll inertia", p.Chassis.Inertia.X, 2130*pound*22.4*22.4*inch*inch, 1e-12)
	near("axle inertia", p.Axle.Inertia, r3.Scale(390*pound*inch*inch, r3.Vec{X: 22.4 * 22.4, Y: 16, Z: 22.4 * 22.4}))
	within(t, "spin", p.Axle.Spin, 147.1284*pound*foot*foot, 1e-12)

	lower := p.Rods[LowerLeft]
	near("front joint", lower.Chassis, at(25.5, 18, 11.5))
	near("rear joint", lower.Housing, at(2.5, 18, -5))
	near("right joint", p.Rods[UpperRight].Housing, at(2.5, -18, 6.5))
	long := math.Hypot(23, 0.5) * inch
	within(t, "length", lower.Length, long, 1e-12)
	area := math.Pi * 0.095 * (1.25 - 0.095) * inch * inch
	within(t, "rate", lower.Rate, 1/(long/(29e6*lbf/(inch*inch)*area)+2/(200000*lbf/inch)), 1e-6)
	within(t, "one turn is two pitches of 1/16 in", lower.Lead, inch/8, 1e-12)
	within(t, "free length", lower.Free, long+1.5*inch/8, 1e-12)
	near("locator", p.Rods[Locator].Chassis, at(-6, 16.8, 16))

	coil := p.Coils[Right]
	near("coil", coil.Chassis, at(0, -18, 32))
	within(t, "coil at rest", coil.Ride, 467.5*lbf, 1e-12)
	within(t, "coil length", coil.Length, 16*inch, 1e-12)
	// The spring stands over the axle center, which shifts fore and aft by little.
	if math.Abs(coil.Longest-20*inch) > 0.02*inch || math.Abs(coil.Shortest-13*inch) > 0.02*inch {
		t.Errorf("coil from %v to %v in", coil.Shortest/inch, coil.Longest/inch)
	}
	within(t, "rear tire without load", p.RearTires[Left].Radius, 16*inch+662.5/1200*inch, 1e-9)
	within(t, "front tire without load", p.Corners[Left].Radius, 12.5*inch+662.5/1000*inch, 1e-9)
	near("rear wheel", p.RearTires[Right].Center, at(0, -28, 0))
	near("front wheel", p.Corners[Left].Hub, at(105, 29, 12.5))
	within(t, "front spring", p.Corners[Left].Ride, (662.5-65)*lbf, 1e-12)
	near("wheelie bar", p.WheelieBar.Wheel, at(-55, 0, 3))
	within(t, "anti-roll bar", p.RearAntiRoll, 1000*lbf*foot*180/math.Pi, 1e-12)
}

// A bar that runs outward carries more than the side view sees of it, in the
// proportion of its length to that in the side view, and the car still stands
// at ride height.
func TestSplayedBarsAtRest(t *testing.T) {
	c := reference(t)
	c.Springs.RearAxleMount = r2.Vec{X: -3 * inch, Y: -2 * inch}
	c.Chassis.SpreadLower, c.Housing.SpreadLower = 20*inch, 40*inch
	r := run(t, c, Options{Limit: 0.001})
	if math.Abs(r.Static.Tension[LowerLeft]) < 100 {
		t.Fatal("the lower bars carry nothing at rest")
	}
	if f := r.Frames[0]; r3.Norm(f.Chassis.Origin) > 1e-9 || math.Abs(f.Axle.Origin.Z-16*inch) > 1e-9 || math.Abs(r.Pitch[0]) > 1e-9 {
		t.Errorf("the car rests at %v, its axle at %v", f.Chassis.Origin, f.Axle.Origin)
	}
	for k, b := range Bars {
		within(t, b.String(), r.Static.Tension[b], r.Parameters.Rods[k].Ride, 1e-9)
	}
}

// What a car gives takes the place of a rule.
func TestGivenTakesThePlaceOfARule(t *testing.T) {
	c := reference(t)
	c.Tires.RearSpinInertia = 0
	before := parameters(t, c)
	within(t, "relaxation length", before.RearTires[Left].Relaxation, 662.5*2.6*slope(0.15, 0.75)/800*inch, 1e-9)
	within(t, "spin", before.Axle.Spin, 0.2*390*pound*16*16*inch*inch, 1e-9)
	c.Tires.RearSpinInertia, c.Launch.Inertia.HousingPitch = 5, 2
	c.Launch.Tires.RelaxationLength = 0.7
	c.Launch.Inertia.Pitch, c.Launch.Inertia.Yaw, c.Launch.Inertia.Roll, c.Launch.Inertia.AxleRoll = 1, 2, 3, 4
	if p := parameters(t, c); p.Chassis.Inertia != (r3.Vec{X: 3, Y: 1, Z: 2}) || p.Axle.Inertia != (r3.Vec{X: 4, Y: 2, Z: 4}) || p.Axle.Spin != 5 || p.RearTires[Right].Relaxation != 0.7 {
		t.Errorf("inertias %v, %v, %v, relaxation length %v m", p.Chassis.Inertia, p.Axle.Inertia, p.Axle.Spin, p.RearTires[Right].Relaxation)
	}
}

// What is not there is refused by name.
func TestUnknownPartsAreRefused(t *testing.T) {
	for name, change := range map[string]func(*car.Car){
		`the upper left bar: material "wood"`: func(c *car.Car) { c.UpperBar.Material = "wood" },
		"the locator: wall":                   func(c *car.Car) { c.Launch.Locator.Wall = c.Launch.Locator.OD },
		"the car has no setup 1":              func(c *car.Car) { c.Setups = nil },
	} {
		c := reference(t)
		change(c)
		if _, err := New(c, 0, carfile.Stock()); err == nil || !strings.HasPrefix(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

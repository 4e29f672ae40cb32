package launch

import (
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/internal/cartest"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// weighed is a car whose scales read so many pounds: left front, right front, left
// rear, right rear.
func weighed(c *car.Car, lf, rf, lr, rr float64) *car.Car {
	c.Body.Scales = car.Scales{Given: true, LeftFront: lf * pound, RightFront: rf * pound, LeftRear: lr * pound, RightRear: rr * pound}
	c.FollowScales()
	return c
}

// At rest without preload a car reads what its scales read, to 0.1 lb, level at ride
// height; and by statics of its own the readings hold its weight: the moments of the
// loads about the car's length and about the rear axle are those of the masses.
func TestScalesAreReproduced(t *testing.T) {
	for _, path := range exampleCars {
		for _, read4 := range [][4]float64{{680, 640, 655, 675}, {660, 660, 640, 720}, {700, 620, 700, 640}} {
			c := weighed(read(t, path), read4[0], read4[1], read4[2], read4[3])
			for k := range c.Setups {
				c.Setups[k].Turns = car.Turns{}
			}
			r := run(t, c, Options{Limit: 0.001})
			got := [4]float64{r.Static.FrontLoad[Left], r.Static.FrontLoad[Right], r.Static.RearLoad[Left], r.Static.RearLoad[Right]}
			for k := range got {
				if math.Abs(got[k]-read4[k]*lbf) > 0.1*lbf {
					t.Errorf("%s: scale %d reads %.2f lb, want %v", c.Body.Name, k, got[k]/lbf, read4[k])
				}
			}
			f := r.Frames[0]
			if math.Abs(f.Roll()) > 1e-9 || math.Abs(f.Pitch()) > 1e-9 || r3.Norm(f.Chassis.Origin) > 1e-8 {
				t.Errorf("%s leans by %v, pitches by %v, stands at %v", c.Body.Name, f.Roll(), f.Pitch(), f.Chassis.Origin)
			}
			// Moments, mass by mass.
			p := &r.Parameters
			var along, across float64
			for k, at := range []r3.Vec{p.Corners[Left].Hub, p.Corners[Right].Hub, p.RearTires[Left].Center, p.RearTires[Right].Center} {
				along, across = along+read4[k]*pound*at.X, across+read4[k]*pound*at.Y
			}
			within(t, "moment about the rear axle", along, p.Chassis.Mass*p.Chassis.CG.X+2*p.Corners[Left].Mass*p.Corners[Left].Hub.X, 1e-9)
			within(t, "moment about the car's length", across+1, p.Chassis.Mass*p.Chassis.CG.Y+1, 1e-9)
			within(t, "CG aside", c.CGAside()*c.Body.Mass+1, across+1, 1e-9)
		}
	}
}

// Vertical springs over level bars: the springs' seats take up all of the difference
// that the scales read, (N_l − N_r)/2 × track/spread each way, and the bars carry
// nothing of it.
func TestSpringSeatsTakeUpTheCrossWeight(t *testing.T) {
	c := weighed(reference(t), 660, 660, 620, 710)
	p := parameters(t, c)
	want := (620 - 710) * lbf / 2 * c.Body.TrackRear / c.Launch.Suspension.RearSpread
	within(t, "left spring", p.Coils[Left].Ride-p.Coils[Right].Ride, 2*want, 1e-5)
	for _, bar := range Bars {
		if math.Abs(p.Rods[bar].Ride) > 0.01*lbf {
			t.Errorf("%v carries %v N", bar, p.Rods[bar].Ride)
		}
	}
	within(t, "cross weight", c.Body.Scales.Cross(), (660.0+620)/2650, 1e-12)
}

// Mirrored readings stand as the mirror image.
func TestMirroredScales(t *testing.T) {
	a := run(t, weighed(reference(t), 680, 640, 650, 680), Options{Limit: 0.001}).Static
	b := run(t, weighed(reference(t), 640, 680, 680, 650), Options{Limit: 0.001}).Static
	within(t, "rear", a.RearLoad[Left], b.RearLoad[Right], 1e-9)
	within(t, "front", a.FrontLoad[Left], b.FrontLoad[Right], 1e-9)
	within(t, "spring", a.Push[Left], b.Push[Right], 1e-9)
}

// Any car stands as its scales say, unless a spring would have to pull, however it
// leans: then the car is refused, and no other is.
func TestAnyScalesAreReproduced(t *testing.T) {
	reproduced, refusals := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, carLibrary)
		b := &c.Body
		b.Scales = car.Scales{Given: true}
		part := func(what string) float64 { return rapid.Float64Range(0.2, 0.8).Draw(t, what) }
		front, rear := part("front"), part("rear")
		b.Scales.LeftFront, b.Scales.RightFront = front*(b.Mass-b.RearMass), (1-front)*(b.Mass-b.RearMass)
		b.Scales.LeftRear, b.Scales.RightRear = rear*b.RearMass, (1-rear)*b.RearMass
		c.Setups, c.Setups[0].Turns = c.Setups[:1], car.Turns{}
		p, err := New(c, 0, carLibrary)
		if err != nil {
			return // nothing holds the axle
		}
		pulls := p.Coils[Left].Ride <= 0 || p.Coils[Right].Ride <= 0 || p.Corners[Left].Ride <= 0 || p.Corners[Right].Ride <= 0
		if refused := len(c.Validate(carLibrary, units.US)) > 0; refused != pulls {
			t.Fatalf("springs push %v and %v N, and the car is refused: %v", p.Coils[Left].Ride, p.Coils[Right].Ride, refused)
		}
		if pulls {
			refusals++
			return
		}
		reproduced++
		m := newModel(p)
		var i instant
		s := m.ride()
		f := m.residual(&s, &i)
		if weight := b.Mass * p.Gravity; f.size() > 1e-6*weight {
			t.Fatalf("%v N are not balanced at ride height", f.size())
		}
		for k, want := range [2]float64{b.Scales.LeftRear, b.Scales.RightRear} {
			if math.Abs(i.tires[k].load-want*p.Gravity) > 0.1*lbf {
				t.Fatalf("rear scale %d reads %v N, want %v", k, i.tires[k].load, want*p.Gravity)
			}
		}
	})
	if reproduced < 20 || refusals < 20 {
		t.Errorf("%d cars stand as their scales say, %d are refused", reproduced, refusals)
	}
}

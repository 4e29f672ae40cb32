package launch

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// exampleCars are the cars that come with the program.
var exampleCars = []string{
	"../../testdata/reference.toml",
	"../../assets/cars/saltgrass-7.toml",
	"../../assets/cars/saltgrass-heavy.toml",
	"../../assets/cars/saltgrass-light.toml",
}

// Twice the step rate changes no peak of any bar by half a percent of the bar's
// larger peak; the cars spin their tires, lift their wheels and hit their stops.
func TestPeaksHoldAtTwiceTheStepRate(t *testing.T) {
	for _, path := range exampleCars {
		for _, power := range []float64{0.5, 1} {
			c := read(t, path)
			c.Drive.Torque *= power
			once := run(t, c, Options{Limit: 0.8})
			steps := int(math.Round(once.Options.Output / once.Step))
			twice := run(t, c, Options{Limit: 0.8, Substeps: 2 * steps})
			for k, a := range once.Peaks {
				b := twice.Peaks[k]
				most := math.Max(b.Pull, b.Push)
				if off := math.Max(math.Abs(a.Pull-b.Pull), math.Abs(a.Push-b.Push)); off > 5e-3*most || most == 0 {
					t.Errorf("%s at %v of its power: %v changes by %.3g of %.5g N", c.Body.Name, power, RodID(k), off, most)
				}
			}
			within(t, "speed", last(twice.Speed), last(once.Speed), 1e-3)
		}
	}
}

// The error of a vibrating car shrinks with the fourth power of the step.
func TestOrderOfTheMethod(t *testing.T) {
	p := parameters(t, reference(t))
	undamped(&p)
	p.Drive.Torque, p.Drive.Capacity = []TorquePoint{{0, 0}}, 0
	m := newModel(p)
	// An axle off its place on a rolling car, and nothing that lets go, touches or
	// turns the other way.
	const speed = 5
	start := m.ride()
	start.chassis.momentum.X = speed * (p.Chassis.Mass + p.Corners[Left].Mass + p.Corners[Right].Mass)
	start.axle.velocity.X = speed
	start.axle.at = r3.Add(start.axle.at, r3.Vec{X: 3e-4, Y: 2e-4, Z: 1e-4})
	start.axle.omega = r3.Vec{X: 0.02, Y: 0.1, Z: -0.05}
	start.wheel.speed = 1.01 * speed / p.Axle.Height
	const duration = 0.06
	at := func(steps int) [4]float64 {
		s := start
		var i instant
		var method scheme
		h := duration / float64(steps)
		for n := range steps {
			m.evaluate(float64(n)*h, &s, &i)
			m.rates(&s, &i, &method.k[0])
			method.step(m, float64(n)*h, h, &s, &i)
		}
		m.evaluate(duration, &s, &i)
		return [4]float64{s.axle.at.X, s.axle.omega.Y, i.tension[UpperRight], s.chassis.momentum.X}
	}
	exact := at(16384)
	coarse, fine := at(512), at(1024)
	for k, what := range [...]string{"axle's place", "housing's turning", "upper right bar", "chassis's momentum"} {
		order := math.Log2(math.Abs((coarse[k] - exact[k]) / (fine[k] - exact[k])))
		if !(order > 3.8 && order < 4.2) {
			t.Errorf("%s converges with order %.2f: errors %.3g and %.3g of %.6g", what, order, coarse[k]-exact[k], fine[k]-exact[k], exact[k])
		}
	}
}

// A car made the mirror image of a symmetric one, its engine turning the other
// way and its locator mirrored, launches as the mirror image, to rounding that
// a launch of tumbling tires amplifies.
func TestMirrorImage(t *testing.T) {
	for _, path := range exampleCars {
		p := parameters(t, read(t, path))
		p.Rods[UpperLeft].Free += 0.002
		p.Rods[LowerRight].Free -= 0.001
		q := p
		q.Drive.Turning = -p.Drive.Turning
		flip := func(v r3.Vec) r3.Vec { return r3.Vec{X: v.X, Y: -v.Y, Z: v.Z} }
		q.Rods[Locator].Chassis, q.Rods[Locator].Housing = flip(p.Rods[Locator].Chassis), flip(p.Rods[Locator].Housing)
		q.Rods[UpperLeft].Free, q.Rods[UpperRight].Free = p.Rods[UpperRight].Free, p.Rods[UpperLeft].Free
		q.Rods[LowerLeft].Free, q.Rods[LowerRight].Free = p.Rods[LowerRight].Free, p.Rods[LowerLeft].Free
		a, b := simulate(t, p, Options{Limit: 0.5}), simulate(t, q, Options{Limit: 0.5})
		pairs := [...]struct {
			what   string
			a, b   []float64
			mirror float64
		}{
			{"upper left", a.Tension[UpperLeft], b.Tension[UpperRight], 1},
			{"upper right", a.Tension[UpperRight], b.Tension[UpperLeft], 1},
			{"lower left", a.Tension[LowerLeft], b.Tension[LowerRight], 1},
			{"lower right", a.Tension[LowerRight], b.Tension[LowerLeft], 1},
			{"locator", a.Tension[Locator], b.Tension[Locator], 1},
			{"left tire", a.RearLoad[Left], b.RearLoad[Right], 1},
			{"front right tire", a.FrontLoad[Right], b.FrontLoad[Left], 1},
			{"roll", a.Roll, b.Roll, -1},
			{"pitch", a.Pitch, b.Pitch, 1},
			{"speed", a.Speed, b.Speed, 1},
		}
		for _, pair := range pairs {
			most, off := 0.0, 0.0
			for i := range pair.a {
				most = math.Max(most, math.Abs(pair.a[i]))
				off = math.Max(off, math.Abs(pair.a[i]-pair.mirror*pair.b[i]))
			}
			if most == 0 || off > 1e-9*most {
				t.Errorf("%s, %s: off by %.2g of %.5g", path, pair.what, off, most)
			}
		}
	}
}

package launch

import (
	"math"
	"testing"

	"bowline/model/car"
)

// Torque ratio and impeller torque by the law of the converter, worked out by
// hand: ratio 1.7 falling to 1 at a speed ratio of 0.9, capacity 2e-3 N·m·s².
func TestConverter(t *testing.T) {
	p := parameters(t, reference(t))
	p.Drive.Capacity, p.Drive.Stall, p.Drive.Release = 2e-3, 1.7, 0.1
	p.Drive.Gear, p.Drive.Axle, p.Drive.Efficiency = 2, 4, 0.9
	m := newModel(p)
	s := m.ride()
	s.engine = 500
	for _, c := range []struct {
		ratio, impeller, gain float64
	}{{0, 500, 1.7}, {0.45, 500, 1.35}, {0.9, 500, 1}, {0.95, 250, 1}, {1, 0, 1}, {1.5, 0, 1}, {-0.2, 500, 1.7}} {
		// Wheels in the housing turn at the speed ratio × 500/8 rad/s.
		s.axle.omega.Y = 3
		s.wheel.speed = 3 + c.ratio*500/8
		for _, b := range []struct{ time, part float64 }{{1, 1}, {0.1, 1}, {0.05, 0.5}, {0.025, 0.15625}, {0, 0}, {-1, 0}} {
			var i instant
			m.evaluate(b.time, &s, &i)
			want := b.part * c.gain * c.impeller * 2 * 4 * 0.9
			if math.Abs(i.impeller-c.impeller) > 1e-9 || math.Abs(i.torque-want) > 1e-9 {
				t.Errorf("speed ratio %v at %v s: impeller %v, torque %v N·m, want %v and %v", c.ratio, b.time, i.impeller, i.torque, c.impeller, want)
			}
		}
	}
}

// Once the brake has let go, a car that still stands has the axle torque of
// the side view's hit case.
func TestTorqueAtTheHit(t *testing.T) {
	c := reference(t)
	m := newModel(parameters(t, c))
	s := m.ride()
	var i instant
	m.evaluate(1, &s, &i)
	within(t, "axle torque", i.torque, 1400*1.7*1.8*4.1*0.9*lbf*foot, 1e-9)
	within(t, "impeller", i.impeller, 1400*lbf*foot, 1e-9)
}

// A torque curve keeps its shape, passes through the launch torque and ends at
// the rev limit.
func TestEngineTorque(t *testing.T) {
	rpm := func(x float64) float64 { return x * math.Pi / 30 }
	c := reference(t)
	c.Drive.Torque, c.Drive.Speed = 1000, rpm(5000)
	torque := func(at float64) float64 {
		p := parameters(t, c)
		return p.Drive.torqueAt(rpm(at))
	}
	check := func(what string, at, want float64) {
		t.Helper()
		if got := torque(at); math.Abs(got-want) > 1e-9*1000 {
			t.Errorf("%s: %v N·m at %v rpm, want %v", what, got, at, want)
		}
	}
	check("constant", 0, 1000)
	check("constant", 7500, 1000)
	check("constant, half way beyond 1.5 × 5,000", 7612.5, 500)
	check("constant", 9000, 0)
	c.Launch.Engine.Curve = []car.TorquePoint{{Speed: rpm(4000), Torque: 400}, {Speed: rpm(6000), Torque: 600}, {Speed: rpm(8000), Torque: 500}}
	check("curve", 1000, 800)
	check("curve", 5000, 1000)
	check("curve", 6000, 1200)
	check("curve", 7000, 1100)
	check("curve", 8000, 1000)
	check("curve, half way beyond its end", 8120, 500)
	c.Launch.Engine.RevLimit = rpm(7000)
	check("curve with a limit", 6500, 1150)
	check("curve with a limit", 7000, 1100)
	check("curve, half way beyond its limit", 7105, 550)
}

// A ramp takes its share of the engine's torque, which leaves the engine what the
// converter does not take: straight between the points, level before and beyond.
func TestRamp(t *testing.T) {
	c := reference(t)
	c.Launch.Engine.Ramp = []car.RampPoint{{Time: 0.1, Share: 0.5}, {Time: 0.3, Share: 0.9}, {Time: 0.5, Share: 0}}
	m := newModel(parameters(t, c))
	s := m.ride()
	const torque = 1400 * lbf * foot
	for _, at := range []struct{ time, share float64 }{{-1, 0.5}, {0, 0.5}, {0.1, 0.5}, {0.2, 0.7}, {0.3, 0.9}, {0.4, 0.45}, {0.5, 0}, {9, 0}} {
		var i instant
		var d state
		m.evaluate(at.time, &s, &i)
		m.rates(&s, &i, &d)
		if got, want := d.engine, (at.share*torque-torque)/m.Drive.Inertia; math.Abs(got-want) > 1e-9*torque/m.Drive.Inertia {
			t.Errorf("at %v s the engine gains %v rad/s², want %v", at.time, got, want)
		}
	}
	// Held back at first, a car that spins goes quicker.
	seven := read(t, exampleCars[1])
	seven.Launch.Engine.Curve, seven.Launch.Engine.Ramp = nil, nil
	whole := run(t, seven, Options{})
	seven.Launch.Engine.Ramp = []car.RampPoint{{Time: 0, Share: 0.4}, {Time: 1, Share: 0.6}}
	if held := run(t, seven, Options{}); held.Elapsed >= whole.Elapsed {
		t.Errorf("%v s held back, %v s at the whole torque", held.Elapsed, whole.Elapsed)
	}
}

// From a stand at a constant acceleration 60 ft take the time t = √(2 s/a):
// 1.8 s at 1.151 g (g 32.174 ft/s²), give or take the hundredth of a second in
// which the tires wind up.
func TestSixtyFeetAtConstantAcceleration(t *testing.T) {
	const accel = 1.151 * 32.174 * foot
	c := reference(t)
	p := parameters(t, c)
	p.Drive.Turning = 0
	stiffen(&p, 50)
	mass := c.Body.Mass
	perThrust := c.Tires.RearRadius + p.Axle.Spin/(mass*c.Tires.RearRadius)
	push(&p, mass*accel*perThrust/(p.Drive.Stall*p.Drive.Gear*p.Drive.Axle*p.Drive.Efficiency), 0)
	r := simulate(t, p, Options{})
	if r.Outcome != Finished || math.Abs(r.Elapsed-1.8) > 0.01 {
		t.Errorf("%v in %v s, want 1.8 s", r.Outcome, r.Elapsed)
	}
	within(t, "speed", last(r.Speed), 2*60*foot/1.8, 0.01)
	if r.Step > 1e-3 || last(r.Distance) < 60*foot || r.Distance[len(r.Distance)-2] > 60*foot {
		t.Errorf("the last two distances are %v and %v m", r.Distance[len(r.Distance)-2], last(r.Distance))
	}
	// With a foot of rollout the clock starts at √(2·1 ft/a) and stops at 60 ft.
	rolled := simulate(t, p, Options{Rollout: 1 * foot})
	want := math.Sqrt(2*60*foot/accel) - math.Sqrt(2*1*foot/accel)
	if math.Abs(rolled.Elapsed-want) > 0.01 {
		t.Errorf("with rollout %v s, want %v s", rolled.Elapsed, want)
	}
	if rolled.FromRelease != r.Elapsed || r.FromRelease != r.Elapsed {
		t.Errorf("from release %v s with rollout, %v s without; want %v s", rolled.FromRelease, r.FromRelease, r.Elapsed)
	}
	within(t, "distance", r.Options.Distance, 60*0.3048, 1e-12)
}

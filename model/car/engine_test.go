package car

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestTorqueAt(t *testing.T) {
	e := Engine{Curve: []TorquePoint{{100, 500}, {200, 900}, {300, 700}}}
	for _, c := range []struct{ speed, torque float64 }{{0, 500}, {100, 500}, {125, 600}, {200, 900}, {250, 800}, {300, 700}, {900, 700}} {
		if got := e.TorqueAt(c.speed); math.Abs(got-c.torque) > 1e-9 {
			t.Errorf("at %v rad/s %v N·m, want %v", c.speed, got, c.torque)
		}
	}
	if got := (&Engine{}).TorqueAt(100); got != 0 {
		t.Errorf("without a curve %v N·m", got)
	}
}

func TestRevLimit(t *testing.T) {
	var c Car
	for _, step := range []struct {
		change func()
		want   float64
	}{
		{func() { c.Drive.Speed = 600 }, 900},
		{func() { c.Launch.Engine.Curve = []TorquePoint{{0, 1}, {800, 1}} }, 800},
		{func() { c.Launch.Engine.RevLimit = 750 }, 750},
	} {
		if step.change(); c.RevLimit() != step.want {
			t.Errorf("rev limit %v rad/s, want %v", c.RevLimit(), step.want)
		}
	}
}

func TestFullAt(t *testing.T) {
	for _, c := range []struct {
		ramp []RampPoint
		at   float64
		ok   bool
	}{
		{nil, 0, true},
		{[]RampPoint{{0.2, 1.1}, {1, 0.5}}, 0, true},
		{[]RampPoint{{0.2, 0.5}, {0.6, 0.7}, {1, 1.3}, {2, 0}}, 0.8, true},
		{[]RampPoint{{0, 0.5}, {1, 0.99}}, 0, false},
	} {
		e := Engine{Ramp: c.ramp}
		if at, ok := e.FullAt(); math.Abs(at-c.at) > 1e-12 || ok != c.ok {
			t.Errorf("%v: full at %v s, %v; want %v s, %v", c.ramp, at, ok, c.at, c.ok)
		}
	}
}

// Torque that falls along a straight line from T0 to nothing at ω0 has its greatest
// power at ω0/2, T0 ω0/4; the curve keeps its shape and passes through the torque at
// launch. A constant torque has it at the rev limit.
func TestPeakPower(t *testing.T) {
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	c := Car{Drive: Drive{Torque: 500, Speed: 600}}
	power, speed := c.PeakPower()
	near("power of a constant torque", power, 500*900)
	near("its speed", speed, 900)
	c.Launch.Engine.Curve = []TorquePoint{{0, 250}, {100, 225}, {1000, 0}} // at launch 100, a fifth of the torque
	near("factor", c.TorqueScale(), 5)
	near("torque", c.EngineTorque(100), 1125)
	power, speed = c.PeakPower()
	near("power of a falling torque", power, 1250*1000/4)
	near("its speed", speed, 500)
	c.Launch.Engine.RevLimit = 400
	power, speed = c.PeakPower()
	near("power up to the rev limit", power, 400*1250*0.6)
	near("its speed", speed, 400)
}

// No speed up to the rev limit makes more power than the peak.
func TestPeakPowerIsTheMost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Car{Drive: Drive{Torque: 900, Speed: 500}}
		speed := 0.0
		for range rapid.IntRange(0, 8).Draw(t, "points") {
			speed += rapid.Float64Range(20, 200).Draw(t, "step")
			c.Launch.Engine.Curve = append(c.Launch.Engine.Curve, TorquePoint{speed, rapid.Float64Range(1, 2000).Draw(t, "torque")})
		}
		if len(c.Launch.Engine.Curve) == 1 {
			c.Launch.Engine.Curve = nil
		}
		if rapid.Bool().Draw(t, "limited") {
			c.Launch.Engine.RevLimit = rapid.Float64Range(100, 1500).Draw(t, "limit")
		}
		power, at := c.PeakPower()
		if limit := c.RevLimit(); at > limit || math.Abs(power-at*c.EngineTorque(at)) > 1e-9*power {
			t.Fatalf("%v W at %v rad/s, limit %v rad/s", power, at, limit)
		}
		for k := range 1001 {
			w := c.RevLimit() * float64(k) / 1000
			if p := w * c.EngineTorque(w); p > power*(1+1e-12) {
				t.Fatalf("%v W at %v rad/s, found %v W at %v rad/s", p, w, power, at)
			}
		}
	})
}

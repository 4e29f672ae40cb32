package launch

import (
	"math"
	"testing"
)

// shape solves sin(C atan(tan(π/2C)/s)) = φ for C by the secant method and returns B
// and C.
func shape(peak, sliding float64) (b, c float64) {
	stiff := func(c float64) float64 { return math.Tan(math.Pi/2/c) / peak }
	miss := func(c float64) float64 { return math.Sin(c*math.Atan(stiff(c))) - sliding }
	last, c := 1.2, 1.7
	for math.Abs(c-last) > 1e-14 && miss(c) != 0 {
		last, c = c, c-miss(c)*(c-last)/(miss(c)-miss(last))
	}
	return stiff(c), c
}

// slope is B·C.
func slope(peak, sliding float64) float64 {
	b, c := shape(peak, sliding)
	return b * c
}

// The slip curve has its greatest value, 1, at the peak slip, keeps the sliding part
// at a slip of 1, and is odd.
func TestSlipCurve(t *testing.T) {
	for _, peak := range []float64{0.02, 0.1, 0.15, 0.3} {
		for _, sliding := range []float64{0.1, 0.5, 0.75, 0.95} {
			curve := newSlipCurve(peak, sliding)
			within(t, "at the peak", curve.grip(peak), 1, 1e-12)
			within(t, "sliding", curve.grip(1), sliding, 1e-9)
			within(t, "slope", (curve.grip(1e-7)-curve.grip(-1e-7))/2e-7, slope(peak, sliding), 1e-6)
			for s := -1.0; s <= 1; s += 1e-3 {
				if g := curve.grip(s); math.Abs(g) > 1+1e-12 || g != -curve.grip(-s) {
					t.Errorf("peak at %v, sliding %v: %v at a slip of %v", peak, sliding, g, s)
				}
			}
		}
	}
	// With no loss the curve is as flat as the least shape makes it.
	if got := newSlipCurve(0.15, 1).grip(1); got < 0.99 || got > 1 {
		t.Errorf("a tire that loses nothing by sliding keeps %v", got)
	}
}

// rolls holds the reference car at ride height with the axle moving at a speed and
// the wheels turning so that the tread passes at another, and lets the tread's
// deflection follow for a time from where it is. It returns the last instant.
func rolls(p Parameters, u, speed, tread, time float64) (float64, instant) {
	m := newModel(p)
	s := m.ride()
	s.wheel.stretch = [2]float64{u, u}
	s.axle.velocity.X = speed
	s.wheel.speed = tread / p.Axle.Height
	var i instant
	var d state
	// The deflection alone is integrated, by the midpoint rule.
	rate := func(u float64) float64 {
		s.wheel.stretch = [2]float64{u, u}
		m.evaluate(braked, &s, &i)
		m.rates(&s, &i, &d)
		return d.wheel.stretch[Left]
	}
	const steps = 20000
	h := time / steps
	for range steps {
		u += h * rate(u+h/2*rate(u))
	}
	rate(u)
	return u, i
}

// A car that rolls at a constant slip and one that stands with its wheels spinning
// give µ(s) N exactly, forward and backward: the magic formula's sine of an
// arctangent, with B and C solved for on their own.
func TestConstantSlip(t *testing.T) {
	p := parameters(t, reference(t))
	b, c := shape(0.15, 0.75)
	for _, at := range []struct{ speed, tread, slip float64 }{
		{20, 20, 0}, {20, 20.5, 0.5 / 20.5}, {17, 20, 0.15}, {10, 20, 0.5}, {1, 20, 0.95},
		{0, 20, 1}, {0, 3, 1}, {21, 20, -0.05}, {-20, -20.5, -0.5 / 20.5}, {0, -20, -1},
	} {
		_, i := rolls(p, 0, at.speed, at.tread, 40*p.RearTires[Left].Relaxation/math.Abs(at.tread))
		for _, side := range Sides {
			tire := i.tires[side]
			want := 2.6 * tire.load * math.Sin(c*math.Atan(b*at.slip))
			if math.Abs(tire.thrust-want) > 1e-6*tire.load || tire.load < 600*lbf {
				t.Errorf("%v m/s, tread %v m/s: thrust %v N, want %v", at.speed, at.tread, tire.thrust, want)
			}
		}
	}
	_, i := rolls(p, 0, 0, 20, 2)
	within(t, "standing spin", i.tires[Left].thrust, 0.75*2.6*i.tires[Left].load, 1e-7)
	_, i = rolls(p, 0, 17, 20, 2)
	within(t, "at the peak", i.tires[Left].thrust, 2.6*i.tires[Left].load, 1e-7)
}

// A tire that slides without rolling deflects no further than at a slip of 1.
func TestSlidingWithoutRolling(t *testing.T) {
	p := parameters(t, reference(t))
	u, i := rolls(p, 0, -5, 0, 3)
	within(t, "deflection", u, p.RearTires[Left].Relaxation, 1e-3)
	within(t, "thrust", i.tires[Left].thrust, 0.75*2.6*i.tires[Left].load, 1e-3)
}

// A tire that rolls without slipping loses its deflection over the distance:
// u = u0 e^(−x/λ). One that rolls to rest keeps what is left.
func TestRollingOutTheDeflection(t *testing.T) {
	p := parameters(t, reference(t))
	λ := p.RearTires[Left].Relaxation
	const start = 0.01
	for _, x := range []float64{0.1, 0.5, 2} {
		u, _ := rolls(p, start, 10, 10, x/10)
		within(t, "rolled out", u, start*math.Exp(-x/λ), 1e-6)
	}
	m := newModel(p)
	s := m.ride()
	s.wheel.stretch[Left] = start
	var i instant
	var d state
	const speed, steps = 8.0, 40000 // slowing down evenly over half a second
	for n := range steps {
		v := speed * (1 - (float64(n)+0.5)/steps)
		s.axle.velocity.X, s.wheel.speed = v, v/p.Axle.Height
		m.evaluate(braked, &s, &i)
		m.rates(&s, &i, &d)
		s.wheel.stretch[Left] += 0.5 / steps * d.wheel.stretch[Left]
	}
	within(t, "rolled to rest", s.wheel.stretch[Left], start*math.Exp(-speed/2*0.5/λ), 1e-4)
	s.axle.velocity.X, s.wheel.speed = 0, 0
	m.evaluate(braked, &s, &i)
	if m.rates(&s, &i, &d); d.wheel.stretch[Left] != 0 || i.tires[Left].thrust < 100 {
		t.Errorf("at rest the deflection changes by %v m/s, thrust %v N", d.wheel.stretch[Left], i.tires[Left].thrust)
	}
}

// A tire under its load at rest that does not roll answers like a spring of the
// carcass rate.
func TestCarcassRateOfAStandingTire(t *testing.T) {
	p := parameters(t, reference(t))
	for _, u := range []float64{1e-5, -1e-5} {
		m := newModel(p)
		s := m.ride()
		s.wheel.stretch = [2]float64{u, u}
		var i instant
		m.evaluate(braked, &s, &i)
		within(t, "carcass rate", i.tires[Left].thrust/u, 800*lbf/inch, 1e-4)
	}
}

// coasting is the reference car without drive, in motion along the track with its
// wheels at a speed of their own.
func coasting(t *testing.T, speed, wheels float64) (*model, state) {
	p := parameters(t, reference(t))
	p.Drive.Torque, p.Drive.Capacity = []TorquePoint{{0, 0}}, 0
	m := newModel(p)
	s := m.ride()
	s.axle.velocity.X = speed
	s.chassis.momentum.X = speed * (p.Chassis.Mass + p.Corners[Left].Mass + p.Corners[Right].Mass)
	s.wheel.speed = wheels
	return m, s
}

// Wheels that spin under a car and are left alone bring it to the speed at which
// they roll: m v z = J (ω0 − v/z), give or take how far z moves, and the thrust ends.
func TestSpinningWheelsPullACarToRolling(t *testing.T) {
	const wheels = 60
	m, s := coasting(t, 0, wheels)
	var i instant
	var method scheme
	const h = 2e-4
	for n := range 20000 {
		m.evaluate(float64(n)*h, &s, &i)
		m.rates(&s, &i, &method.k[0])
		method.step(m, float64(n)*h, h, &s, &i)
	}
	m.evaluate(4, &s, &i)
	z, mass, spin := m.Axle.Height, 2650*pound, m.Axle.Spin
	within(t, "speed", i.chassis.velocity.X, spin*wheels/(mass*z+spin/z), 0.02)
	within(t, "wheels", s.wheel.speed*i.tires[Left].height, i.chassis.velocity.X, 2e-3)
	for _, side := range Sides {
		if left := math.Abs(i.tires[side].thrust); left > 30 {
			t.Errorf("%v thrust is still %v N", side, left)
		}
	}
}

// After wheelspin stops, the thrusts of an unevenly wound left and right tire come
// together within a few relaxation lengths.
func TestThrustsComeTogetherAfterWheelspin(t *testing.T) {
	m, s := coasting(t, 10, 10/(16*inch))
	λ := m.RearTires[Left].Relaxation
	s.wheel.stretch = [2]float64{0.2 * λ, 0.02 * λ}
	var i instant
	var method scheme
	const h = 2e-4
	apart := func() float64 { return math.Abs(i.tires[Left].thrust - i.tires[Right].thrust) }
	first := 0.0
	for n := 0; s.axle.at.X < 5*λ; n++ {
		m.evaluate(float64(n)*h, &s, &i)
		if n == 0 {
			first = apart()
		}
		m.rates(&s, &i, &method.k[0])
		method.step(m, float64(n)*h, h, &s, &i)
	}
	if now := apart(); first < 1000 || now > 0.05*first {
		t.Errorf("thrusts were %v N apart and are %v N after 5 relaxation lengths", first, now)
	}
}

// Over an engine torque that stays the same all the way, the time to 60 ft has a best
// value near the torque that the tires just hold, and is clearly worse at twice that.
func TestTooMuchTorqueCostsTime(t *testing.T) {
	c := read(t, "../../assets/cars/saltgrass-7.toml")
	c.Launch.Engine.Curve, c.Launch.Engine.Ramp = nil, nil
	elapsed := func(torque float64) (time, slip float64) {
		c.Drive.Torque = torque
		r := run(t, c, Options{})
		if r.Outcome != Finished {
			t.Fatalf("%v N·m: %v", torque, r.Outcome)
		}
		for _, s := range r.Slip[Left] {
			slip = math.Max(slip, s)
		}
		return r.Elapsed, slip
	}
	held, best, shortest := 0.0, 0.0, math.Inf(1)
	for torque := 300 * lbf * foot; torque < 3000*lbf*foot; torque *= 1.05 {
		time, slip := elapsed(torque)
		if slip <= c.Launch.Tires.PeakSlip {
			held = torque
		}
		if time < shortest {
			best, shortest = torque, time
		}
	}
	if best < held || best > 2*held {
		t.Errorf("best is %v N·m, the tires hold %v N·m all the way", best, held)
	}
	if half, _ := elapsed(best / 2); half < 1.1*shortest {
		t.Errorf("%v s at half the best torque, %v s at the best", half, shortest)
	}
	if twice, _ := elapsed(2 * best); twice < 1.01*shortest {
		t.Errorf("%v s at twice the best torque, %v s at the best", twice, shortest)
	}
}

package launch

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// pieces is where the parts of a car are, worked out from Parameters and a
// state by gonum's rotations.
type pieces struct {
	p *Parameters
	s *state
}

func (c pieces) chassis(point r3.Vec) r3.Vec {
	return r3.Add(c.s.chassis.at, r3.Rotation(c.s.chassis.turn).Rotate(r3.Sub(point, c.p.Chassis.CG)))
}

func (c pieces) axle(point r3.Vec) r3.Vec {
	return r3.Add(c.s.axle.at, r3.Rotation(c.s.axle.turn).Rotate(point))
}

// hub is where a front wheel's center, or a point above it, is.
func (c pieces) hub(side Side, above float64) r3.Vec {
	at := c.p.Corners[side].Hub
	at.Z += c.s.rise[side] + above
	return c.chassis(at)
}

// potential is the energy of weight and springs: half the rate times the
// square for a spring that does both ways, and so on; in J.
func (c pieces) potential() float64 {
	p, square := c.p, func(x float64) float64 { return x * x }
	only := func(x float64) float64 { return square(math.Max(0, x)) }
	sum := p.Gravity * (p.Chassis.Mass*c.s.chassis.at.Z + p.Axle.Mass*c.s.axle.at.Z)
	for _, r := range p.Rods {
		l := r3.Norm(r3.Sub(c.chassis(r.Chassis), c.axle(r.Housing)))
		sum += r.Rate / 2 * square(l-r.Free)
	}
	for _, side := range Sides {
		coil, tire, corner := p.Coils[side], p.RearTires[side], p.Corners[side]
		l := r3.Norm(r3.Sub(c.chassis(coil.Chassis), c.axle(coil.Axle)))
		free := coil.Length + coil.Ride/coil.Rate
		sum += coil.Rate/2*only(free-l) + coil.Stop/2*(only(coil.Shortest-l)+only(l-coil.Longest))
		rear := c.axle(tire.Center)
		sum += tire.Rate / 2 * only(tire.Radius-rear.Z)
		foot := c.axle(r3.Sub(tire.Center, r3.Vec{Z: tire.Lane.Drop}))
		sum += tire.Lane.Rate / 2 * square(foot.Y-tire.Center.Y)
		rise := c.s.rise[side]
		slack := -corner.Ride / corner.Rate
		sum += corner.Rate/2*only(rise-slack) + corner.Stop/2*(only(rise-corner.BumpTravel)+only(-corner.DroopTravel-rise))
		front := c.hub(side, 0)
		sum += corner.TireRate/2*only(corner.Radius-front.Z) + corner.Mass*p.Gravity*front.Z
		sum += corner.Lane.Rate / 2 * square(c.hub(side, -corner.Lane.Drop).Y-corner.Hub.Y)
	}
	lean := r3.Dot(r3.Rotation(c.s.axle.turn).Rotate(r3.Vec{Y: 1}), r3.Rotation(c.s.chassis.turn).Rotate(r3.Vec{Z: 1}))
	sum += p.RearAntiRoll / 2 * square(lean)
	track := p.Corners[Left].Hub.Y - p.Corners[Right].Hub.Y
	sum += p.FrontAntiRoll / 2 * square((c.s.rise[Left]-c.s.rise[Right])/track)
	if w := p.WheelieBar; w.Rate > 0 {
		sum += w.Rate / 2 * only(-c.chassis(w.Wheel).Z)
	}
	return sum
}

// kinetic is the energy of motion, mass by mass, from the velocities of an
// instant; in J.
func (c pieces) kinetic(i *instant) float64 {
	p := c.p
	body := func(q quat.Number, v r3.Vec) r3.Vec { return r3.Rotation(quat.Conj(q)).Rotate(v) }
	turning := func(inertia, w r3.Vec) float64 {
		return (inertia.X*w.X*w.X + inertia.Y*w.Y*w.Y + inertia.Z*w.Z*w.Z) / 2
	}
	w := body(c.s.chassis.turn, i.chassis.omega)
	sum := p.Chassis.Mass/2*r3.Norm2(i.chassis.velocity) + turning(p.Chassis.Inertia, w)
	sum += p.Axle.Mass/2*r3.Norm2(c.s.axle.velocity) + turning(p.Axle.Inertia, c.s.axle.omega) + p.Axle.Spin/2*c.s.wheel.speed*c.s.wheel.speed
	v := body(c.s.chassis.turn, i.chassis.velocity)
	for _, side := range Sides {
		corner := p.Corners[side]
		arm := r3.Sub(corner.Hub, p.Chassis.CG)
		arm.Z += c.s.rise[side]
		hub := r3.Add(r3.Add(v, r3.Cross(w, arm)), r3.Vec{Z: i.corners[side].rate})
		sum += corner.Mass / 2 * r3.Norm2(hub)
	}
	return sum
}

// With no damping, no drive and no friction, energy is conserved: a car let go
// upset bounces, rolls, yaws, hits its stops and hops for a second, and the sum
// changes by less than a hundred-thousandth of what motion and springs trade.
// Each landing and each stop is a kink that a step may straddle.
func TestEnergyIsConserved(t *testing.T) {
	c := reference(t)
	c.Launch.WheelieBar.Reach, c.Launch.WheelieBar.Height = 1.2, 0.05
	c.Launch.Suspension.FrontAntiRoll = 5000
	c.Springs.RearDroop, c.Springs.RearBump = 0.02, 0.02
	p := parameters(t, c)
	undamped(&p)
	p.Drive.Torque, p.Drive.Capacity = []TorquePoint{{0, 0}}, 0
	for k := range Sides {
		p.RearTires[k].Grip = 0
	}
	m := newModel(p)
	s := upset(m)
	var i instant
	var method scheme
	energy := func() (all, motion float64) {
		m.evaluate(0, &s, &i)
		motion = pieces{&p, &s}.kinetic(&i)
		return motion + pieces{&p, &s}.potential(), motion
	}
	const step, steps = 5e-5, 20000
	start, motion := energy()
	drift, least, most, loose, stopped := 0.0, motion, motion, 0, 0
	for n := range steps {
		all, motion := energy()
		drift = math.Max(drift, math.Abs(all-start))
		least, most = math.Min(least, motion), math.Max(most, motion)
		if i.tires[Left].load == 0 || i.corners[Right].load == 0 {
			loose++
		}
		if i.reach[Left] < p.Coils[Left].Shortest || i.reach[Right] > p.Coils[Right].Longest {
			stopped++
		}
		m.rates(&s, &i, &method.k[0])
		method.step(m, float64(n)*step, step, &s, &i)
	}
	if traded := most - least; traded < 200 || drift > 1e-5*traded {
		t.Errorf("energy drifts by %v J while parts trade %v J", drift, traded)
	}
	if loose == 0 || stopped == 0 {
		t.Errorf("tires off the ground in %d steps, stops touched in %d: the test is to have both", loose, stopped)
	}
	t.Logf("drift %.3g J of %.3g J traded; off the ground %d, on a stop %d of %d steps", drift, most-least, loose, stopped, steps)
}

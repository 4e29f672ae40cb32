package launch

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// What acts on chassis and axle assembly inside the car adds up to nothing: the
// sum of all forces, and of all moments about the world's origin, is that of
// weight, track and lane springs alone, to rounding.
func TestActionAndReaction(t *testing.T) {
	c := reference(t)
	c.Launch.WheelieBar.Reach, c.Launch.WheelieBar.Height = 1.2, 0.01
	p := parameters(t, c)
	m := newModel(p)
	s := upset(m)
	s.chassis.at.Z -= 0.08
	s.engine = 600
	var i instant
	m.evaluate(1, &s, &i)
	var force, moment r3.Vec
	outer := func(at, f r3.Vec) {
		force, moment = r3.Add(force, f), r3.Add(moment, r3.Cross(at, f))
	}
	where := pieces{&p, &s}
	weight := func(at r3.Vec, mass float64) { outer(at, r3.Vec{Z: -mass * p.Gravity}) }
	weight(s.chassis.at, p.Chassis.Mass)
	weight(s.axle.at, p.Axle.Mass)
	across := r3.Rotation(s.axle.turn).Rotate(r3.Vec{Y: 1})
	heading := r3.Unit(r3.Cross(across, r3.Vec{Z: 1}))
	point := func(b *body, at r3.Vec) r3.Vec {
		return r3.Add(b.velocity, r3.Cross(b.omega, r3.Sub(at, b.at)))
	}
	for _, side := range Sides {
		tire, corner := p.RearTires[side], p.Corners[side]
		contact := where.axle(tire.Center)
		contact.Z = 0
		outer(contact, r3.Add(r3.Vec{Z: i.tires[side].load}, r3.Scale(i.tires[side].thrust, heading)))
		foot := where.axle(r3.Sub(tire.Center, r3.Vec{Z: tire.Lane.Drop}))
		outer(foot, r3.Vec{Y: -tire.Lane.Rate*(foot.Y-tire.Center.Y) - tire.Lane.Damping*point(&i.axle, foot).Y})
		hub := where.hub(side, 0)
		weight(hub, corner.Mass)
		contact = hub
		contact.Z = 0
		outer(contact, r3.Vec{Z: i.corners[side].load})
		foot = where.hub(side, -corner.Lane.Drop)
		sliding := r3.Scale(i.corners[side].rate, r3.Rotation(s.chassis.turn).Rotate(r3.Vec{Z: 1}))
		outer(foot, r3.Vec{Y: -corner.Lane.Rate*(foot.Y-corner.Hub.Y) - corner.Lane.Damping*(point(&i.chassis, foot).Y+sliding.Y)})
	}
	outer(where.chassis(p.WheelieBar.Wheel), r3.Vec{Z: i.wheelie})
	if i.wheelie == 0 || i.torque == 0 || i.tires[Left].thrust == 0 || i.corners[Left].load == 0 {
		t.Fatal("something that is to act does not")
	}
	gotForce := r3.Add(i.chassis.force, i.axle.force)
	gotMoment := r3.Add(r3.Add(i.chassis.moment, r3.Cross(i.chassis.at, i.chassis.force)), r3.Add(i.axle.moment, r3.Cross(i.axle.at, i.axle.force)))
	gotMoment = r3.Add(gotMoment, r3.Scale(i.spinUp, across))
	if off := r3.Norm(r3.Sub(gotForce, force)); off > 1e-9*r3.Norm(force) {
		t.Errorf("forces add up to %v, from outside come %v", gotForce, force)
	}
	if off := r3.Norm(r3.Sub(gotMoment, moment)); off > 1e-9*r3.Norm(moment) {
		t.Errorf("moments add up to %v, from outside come %v", gotMoment, moment)
	}
}

// momenta are those of all bodies about the world's origin, mass by mass.
func momenta(p *Parameters, s *state, i *instant) (linear, angular r3.Vec) {
	where := pieces{p, s}
	mass := func(m float64, at, v r3.Vec) {
		linear, angular = r3.Add(linear, r3.Scale(m, v)), r3.Add(angular, r3.Cross(at, r3.Scale(m, v)))
	}
	spin := func(q quat.Number, h r3.Vec) { angular = r3.Add(angular, r3.Rotation(q).Rotate(h)) }
	scaled := func(inertia, w r3.Vec) r3.Vec {
		return r3.Vec{X: inertia.X * w.X, Y: inertia.Y * w.Y, Z: inertia.Z * w.Z}
	}
	body := func(q quat.Number, v r3.Vec) r3.Vec { return r3.Rotation(quat.Conj(q)).Rotate(v) }
	mass(p.Chassis.Mass, s.chassis.at, i.chassis.velocity)
	spin(s.chassis.turn, scaled(p.Chassis.Inertia, body(s.chassis.turn, i.chassis.omega)))
	mass(p.Axle.Mass, s.axle.at, s.axle.velocity)
	spin(s.axle.turn, r3.Add(scaled(p.Axle.Inertia, s.axle.omega), r3.Vec{Y: p.Axle.Spin * s.wheel.speed}))
	up := r3.Rotation(s.chassis.turn).Rotate(r3.Vec{Z: 1})
	for _, side := range Sides {
		at := where.hub(side, 0)
		v := r3.Add(i.chassis.velocity, r3.Cross(i.chassis.omega, r3.Sub(at, s.chassis.at)))
		mass(p.Corners[side].Mass, at, r3.Add(v, r3.Scale(i.corners[side].rate, up)))
	}
	return linear, angular
}

// Off the ground and without weight nothing acts from outside: with bars,
// springs, shocks and the engine at work inside, momentum and angular momentum
// stay what they are.
func TestMomentumIsConservedOffTheGround(t *testing.T) {
	p := parameters(t, reference(t))
	p.Gravity = 0
	for k := range Sides {
		p.RearTires[k].Lane, p.Corners[k].Lane = Lane{}, Lane{}
	}
	m := newModel(p)
	s := upset(m)
	s.chassis.at.Z += 50
	s.axle.at.Z += 50
	s.engine = 600
	var i instant
	var method scheme
	m.evaluate(0, &s, &i)
	linear, angular := momenta(&p, &s, &i)
	lively, torque := 0.0, 0.0
	const step, steps = 1e-4, 5000
	for n := range steps {
		m.evaluate(float64(n)*step, &s, &i)
		lively, torque = math.Max(lively, math.Abs(i.tension[LowerLeft]-i.tension[LowerRight])), math.Max(torque, i.torque)
		m.rates(&s, &i, &method.k[0])
		method.step(m, float64(n)*step, step, &s, &i)
	}
	m.evaluate(1, &s, &i)
	endLinear, endAngular := momenta(&p, &s, &i)
	if off := r3.Norm(r3.Sub(endLinear, linear)); off > 1e-10*r3.Norm(linear) {
		t.Errorf("momentum %v becomes %v", linear, endLinear)
	}
	if off := r3.Norm(r3.Sub(endAngular, angular)); off > 1e-6*r3.Norm(angular) {
		t.Errorf("angular momentum %v becomes %v", angular, endAngular)
	}
	if lively < 1000 || torque < 1000 {
		t.Errorf("nothing much happens inside: %v N, %v N·m", lively, torque)
	}
}

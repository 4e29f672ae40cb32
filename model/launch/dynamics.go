package launch

import "gonum.org/v1/gonum/spatial/r3"

// model holds Parameters with every point of the chassis seen from the CG of
// the sprung mass.
type model struct {
	Parameters
	trackFront float64      // [m]
	curves     [2]slipCurve // of the rear tires, by Side
}

func newModel(p Parameters) *model {
	m := &model{Parameters: p, trackFront: p.Corners[Left].Hub.Y - p.Corners[Right].Hub.Y}
	for i := range m.Rods {
		m.Rods[i].Chassis = r3.Sub(p.Rods[i].Chassis, p.Chassis.CG)
	}
	for i := range Sides {
		m.Coils[i].Chassis = r3.Sub(p.Coils[i].Chassis, p.Chassis.CG)
		m.Corners[i].Hub = r3.Sub(p.Corners[i].Hub, p.Chassis.CG)
		m.curves[i] = newSlipCurve(p.RearTires[i].PeakSlip, p.RearTires[i].Sliding)
	}
	m.WheelieBar.Wheel = r3.Sub(p.WheelieBar.Wheel, p.Chassis.CG)
	return m
}

// evaluate computes the instant of a state at a time after the brake began to let
// go [s].
func (m *model) evaluate(t float64, s *state, i *instant) {
	m.place(s, i)
	m.weights(i)
	for k := range m.Rods {
		m.rod(k, i)
	}
	m.coils(i)
	m.corners(s, i)
	m.rearTires(s, i)
	m.rearAntiRoll(i)
	m.wheelieBar(i)
	m.drive(t, s, i)
}

// place computes positions and velocities.
func (m *model) place(s *state, i *instant) {
	i.axle.at, i.axle.axes, i.axle.velocity = s.axle.at, axesOf(s.axle.turn), s.axle.velocity
	i.axle.omega = i.axle.axes.world(s.axle.omega)
	i.chassis.at, i.chassis.axes = s.chassis.at, axesOf(s.chassis.turn)
	m.chassisVelocity(s, i)
	i.chassis.velocity = i.chassis.axes.world(i.frame.velocity)
	i.chassis.omega = i.chassis.axes.world(i.frame.omega)
}

// chassisVelocity solves the momenta of chassis and front wheels for their
// velocities, in the chassis's axes. A front wheel at ρ has the velocity
// w = V + ω×ρ + ṡẑ; of its momentum m w the part along ẑ is in the state.
func (m *model) chassisVelocity(s *state, i *instant) {
	p := i.chassis.axes.body(s.chassis.momentum)
	h := s.chassis.spin
	i.frame.momentum = p
	// Sums over the wheels of their masses times their places.
	var mass, x, y, z, xx, yy, zz, xz, yz float64
	for k := range m.Corners {
		at, w := m.Corners[k].Hub, m.Corners[k].Mass
		at.Z += s.rise[k]
		i.corners[k].arm = at
		p.Z -= s.lift[k]
		h.X -= at.Y * s.lift[k]
		h.Y += at.X * s.lift[k]
		mass += w
		x += w * at.X
		y += w * at.Y
		z += w * at.Z
		xx += w * at.X * at.X
		yy += w * at.Y * at.Y
		zz += w * at.Z * at.Z
		xz += w * at.X * at.Z
		yz += w * at.Y * at.Z
	}
	// Eliminate the velocity, then solve for the turning.
	all, inertia := m.Chassis.Mass+mass, m.Chassis.Inertia
	kxx := inertia.X + zz - z*z/all
	kyy := inertia.Y + zz - z*z/all
	kzz := inertia.Z + xx + yy - (x*x+y*y)/all
	kxz := x*z/all - xz
	kyz := y*z/all - yz
	h.X += z * p.Y / all
	h.Y -= z * p.X / all
	h.Z += (y*p.X - x*p.Y) / all
	var v, w r3.Vec
	w.Z = (h.Z - kxz*h.X/kxx - kyz*h.Y/kyy) / (kzz - kxz*kxz/kxx - kyz*kyz/kyy)
	w.X = (h.X - kxz*w.Z) / kxx
	w.Y = (h.Y - kyz*w.Z) / kyy
	v.X = (p.X - w.Y*z + w.Z*y) / all
	v.Y = (p.Y - w.Z*x + w.X*z) / all
	v.Z = p.Z / m.Chassis.Mass
	i.frame.velocity, i.frame.omega = v, w
	for k := range m.Corners {
		at := i.corners[k].arm
		i.corners[k].rate = s.lift[k]/m.Corners[k].Mass - (v.Z + w.X*at.Y - w.Y*at.X)
	}
}

// rates computes the derivative of a state with respect to time from its instant.
func (m *model) rates(s *state, i *instant, d *state) {
	m.chassisRates(s, i, d)
	m.axleRates(s, i, d)
	for k := range i.tires {
		d.wheel.stretch[k] = i.tires[k].stretching
	}
	d.wheel.speed = i.spinUp / m.Axle.Spin
	d.wheel.angle = s.wheel.speed
	d.engine = (i.engine - i.impeller) / m.Drive.Inertia
}

// chassisRates are Kirchhoff's equations for chassis and front wheels:
//
//	dP/dt = F,  dH/dt + ω×H + V×P = M,  d(m w·ẑ)/dt = m (w_x ω_y − w_y ω_x) + Q
func (m *model) chassisRates(s *state, i *instant, d *state) {
	v, w := i.frame.velocity, i.frame.omega
	d.chassis.at = i.chassis.velocity
	d.chassis.turn = turning(s.chassis.turn, w)
	d.chassis.momentum = i.chassis.force
	d.chassis.spin = r3.Add(i.chassis.axes.body(i.chassis.moment),
		r3.Add(r3.Cross(s.chassis.spin, w), r3.Cross(i.frame.momentum, v)))
	for k := range m.Corners {
		c, corner := &m.Corners[k], &i.corners[k]
		wx := v.X + w.Y*corner.arm.Z - w.Z*corner.arm.Y
		wy := v.Y + w.Z*corner.arm.X - w.X*corner.arm.Z
		d.rise[k] = corner.rate
		d.lift[k] = c.Mass*(wx*w.Y-wy*w.X) + corner.along
		d.roll[k] = corner.spinUp
	}
}

// axleRates are Newton's and Euler's equations for the axle assembly, whose
// wheels spin at their own speed.
func (m *model) axleRates(s *state, i *instant, d *state) {
	w, inertia := s.axle.omega, m.Axle.Inertia
	moment := i.axle.axes.body(i.axle.moment)
	h := r3.Vec{X: inertia.X * w.X, Y: inertia.Y*w.Y + m.Axle.Spin*s.wheel.speed, Z: inertia.Z * w.Z}
	d.axle.at = s.axle.velocity
	d.axle.turn = turning(s.axle.turn, w)
	d.axle.velocity = r3.Scale(1/m.Axle.Mass, i.axle.force)
	d.axle.omega = r3.Vec{
		X: (moment.X + w.Z*h.Y - w.Y*h.Z) / inertia.X,
		Y: (moment.Y + w.X*h.Z - w.Z*h.X) / inertia.Y,
		Z: (moment.Z + w.Y*h.X - w.X*h.Y) / inertia.Z,
	}
}

package launch

import "gonum.org/v1/gonum/spatial/r3"

// weights sets the forces of chassis and axle to their weights.
func (m *model) weights(i *instant) {
	i.axle.force, i.axle.moment = r3.Vec{Z: -m.Axle.Mass * m.Gravity}, r3.Vec{}
	i.chassis.force, i.chassis.moment = r3.Vec{Z: -m.Chassis.Mass * m.Gravity}, r3.Vec{}
}

// rod pulls its two joints together with k(l − l0) + c·dl/dt: Hooke's law, and
// viscous damping by assumption.
func (m *model) rod(k int, i *instant) {
	r := &m.Rods[k]
	front, a, va := i.chassis.point(r.Chassis)
	rear, b, vb := i.axle.point(r.Housing)
	d := r3.Sub(a, b)
	l := length(d)
	toward := r3.Scale(1/l, d)
	tension := r.Rate*(l-r.Free) + r.Damping*r3.Dot(toward, r3.Sub(va, vb))
	i.tension[k] = tension
	pull := r3.Scale(tension, toward)
	i.axle.pull(rear, pull)
	i.chassis.pull(front, r3.Scale(-1, pull))
}

// coils lets rear springs, shocks and stops push their mounts apart.
func (m *model) coils(i *instant) {
	for k := range m.Coils {
		c := &m.Coils[k]
		top, a, va := i.chassis.point(c.Chassis)
		foot, b, vb := i.axle.point(c.Axle)
		d := r3.Sub(b, a)
		l := length(d)
		away := r3.Scale(1/l, d)
		push := c.pushes(l, r3.Dot(away, r3.Sub(vb, va)))
		i.reach[k], i.push[k] = l, push
		force := r3.Scale(push, away)
		i.axle.pull(foot, force)
		i.chassis.pull(top, r3.Scale(-1, force))
	}
}

// pushes returns the push of a rear spring, its shock and its stops [N] at a length
// [m] and its rate of change [m/s]. Assumptions: the spring is linear and goes
// slack rather than pull, the shock is viscous in each direction, the stops are
// linear.
func (c *Coil) pushes(l, rate float64) float64 {
	push := max(0, c.Ride-c.Rate*(l-c.Length))
	push += stop(c.Stop, c.Shortest-l) - stop(c.Stop, l-c.Longest)
	return push - damp(c.Rebound, c.Bump, rate)
}

// stop is the force of a stop that is compressed by x.
func stop(rate, x float64) float64 { return rate * max(0, x) }

// damp is the force of a shock against a speed, with the rate up above zero and
// down below.
func damp(up, down, speed float64) float64 {
	if speed > 0 {
		return up * speed
	}
	return down * speed
}

// rearAntiRoll twists axle and chassis against their relative roll, whose sine is
// the axle's y along the chassis's z: a linear torsion spring by assumption.
func (m *model) rearAntiRoll(i *instant) {
	y, z := i.axle.axes.y, i.chassis.axes.z
	twist := r3.Scale(m.RearAntiRoll*r3.Dot(y, z), r3.Cross(y, z))
	i.chassis.twist(twist)
	i.axle.twist(r3.Scale(-1, twist))
}

// corners applies front suspension, front tires and the wheels' weight. Front wheels
// move along the chassis's z: assumption.
func (m *model) corners(s *state, i *instant) {
	up := i.chassis.axes.z
	_, heading, _ := ground(i.chassis.axes.y)
	roll := m.FrontAntiRoll * (s.rise[Left] - s.rise[Right]) / (m.trackFront * m.trackFront)
	for k, antiRoll := range [...]float64{roll, -roll} {
		c, corner := &m.Corners[k], &i.corners[k]
		lever := i.chassis.axes.world(corner.arm)
		velocity := r3.Add(along(i.chassis.velocity, corner.rate, up), r3.Cross(i.chassis.omega, lever))
		corner.height = i.chassis.at.Z + lever.Z
		corner.load = loaded(c.TireRate, c.TireDamping, c.Radius-corner.height, -velocity.Z)
		drag := c.drag(s.roll[k], r3.Dot(velocity, heading), corner.height, corner.load, &corner.spinUp)
		outer := r3.Vec{X: -drag * heading.X, Y: -drag * heading.Y, Z: corner.load - c.Mass*m.Gravity}
		i.chassis.pull(lever, outer)
		// The lane spring acts below the wheel center.
		lever = along(lever, -c.Lane.Drop, up)
		velocity = r3.Add(along(i.chassis.velocity, corner.rate, up), r3.Cross(i.chassis.omega, lever))
		side := r3.Vec{Y: c.Lane.force(i.chassis.at.Y+lever.Y-c.Hub.Y-m.Chassis.CG.Y, velocity.Y)}
		i.chassis.pull(lever, side)
		corner.along = r3.Dot(r3.Add(outer, side), up) - c.pushes(s.rise[k], corner.rate) - antiRoll
	}
}

// spinUpTime is the time constant with which a front wheel's spin follows the speed
// of the road [s]: assumption.
const spinUpTime = 5e-3

// drag returns the force that holds a front wheel back while it spins up [N], from
// its spin, the speed of its center, its height and its load, and sets the rate of
// its spin.
func (c *Corner) drag(spin, speed, height, load float64, spinUp *float64) float64 {
	if c.Spin == 0 {
		*spinUp = 0
		return 0
	}
	force := c.Spin / (height * height) * (speed - spin*height) / spinUpTime
	most := c.Grip * load
	force = max(-most, min(most, force))
	*spinUp = force * height / c.Spin
	return force
}

// pushes returns the force of a front spring, its shock and its stops [N] at a rise
// of the wheel [m] and its rate of change [m/s]: down on the wheel, up on the
// chassis. The assumptions are those of a rear spring.
func (c *Corner) pushes(rise, rate float64) float64 {
	push := max(0, c.Ride+c.Rate*rise)
	push += stop(c.Stop, rise-c.BumpTravel) - stop(c.Stop, -c.DroopTravel-rise)
	return push + damp(c.Bump, c.Rebound, rate)
}

// loaded returns the load of a tire, or of any wheel that can leave the ground,
// compressed by x at a speed [N]. Assumption: spring and damper are linear, and the
// ground never pulls.
func loaded(rate, damping, x, speed float64) float64 {
	if x <= 0 {
		return 0
	}
	return max(0, rate*x+damping*speed)
}

// force returns the lane spring's force to the left [N] at an offset to the left
// and its rate of change: assumption.
func (l *Lane) force(offset, speed float64) float64 { return -l.Rate*offset - l.Damping*speed }

// wheelieBar pushes the chassis up where its wheel touches the ground, as a tire
// does.
func (m *model) wheelieBar(i *instant) {
	if m.WheelieBar.Rate == 0 {
		return
	}
	lever, at, velocity := i.chassis.point(m.WheelieBar.Wheel)
	i.wheelie = loaded(m.WheelieBar.Rate, m.WheelieBar.Damping, -at.Z, -velocity.Z)
	i.chassis.pull(lever, r3.Vec{Z: i.wheelie})
}

package launch

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// slipCurve is the grip of a tire over its driving slip s, as a part of its
// greatest: sin(C atan(B s)), the sine of an arctangent of H. B. Pacejka, Tire and
// Vehicle Dynamics, ch. 4, without its curvature factor (from memory).
type slipCurve struct{ b, c float64 }

const (
	// minShape and maxShape bound the shape factor C of a slip curve [1]. At C = 1
	// the curve would be a step that has no peak, and a relaxation length taken from
	// the carcass rate would have no end: from 1.1 up a tire that slides keeps at
	// most 0.99 of its peak grip, and 3 lets it lose all.
	minShape = 1.1
	maxShape = 3
	// shapeBisections halve the range of C to the precision of a float64.
	shapeBisections = 60
)

// newSlipCurve returns the curve that has its greatest value at the slip peak,
// between 0 and 1, and falls to the part sliding of it at a slip of 1. A part that no
// shape between minShape and maxShape gives becomes the nearest that one gives.
func newSlipCurve(peak, sliding float64) slipCurve {
	shaped := func(c float64) slipCurve { return slipCurve{math.Tan(math.Pi/(2*c)) / peak, c} }
	low, high := minShape, float64(maxShape)
	for range shapeBisections {
		if middle := (low + high) / 2; shaped(middle).grip(1) > sliding {
			low = middle
		} else {
			high = middle
		}
	}
	return shaped((low + high) / 2)
}

// grip is the part of the greatest grip at a slip, of the slip's sign.
func (c slipCurve) grip(slip float64) float64 { return math.Sin(c.c * math.Atan(c.b*slip)) }

// slope is the change of grip over slip where the tire rolls freely.
func (c slipCurve) slope() float64 { return c.b * c.c }

// relaxation returns the relaxation length of a tire [m] that answers like a spring
// of the given rate [N/m] under its load at rest [N] while it does not roll:
// N µ_peak B C / k_x.
func (c slipCurve) relaxation(load, grip, rate float64) float64 {
	return load * grip * c.slope() / rate
}

// rearTires applies load, thrust and lane springs to the axle assembly.
func (m *model) rearTires(s *state, i *instant) {
	y := i.axle.axes.y
	across, heading, flat := ground(y)
	// Angular velocity of the wheels about the direction across.
	turning := r3.Dot(i.axle.omega, across) + (s.wheel.speed-s.axle.omega.Y)*flat
	i.spinUp = 0
	for k := range m.RearTires {
		r, tire := &m.RearTires[k], &i.tires[k]
		lever, at, velocity := i.axle.point(r.Center)
		tire.height = at.Z
		tire.load = loaded(r.Rate, r.Damping, r.Radius-at.Z, -velocity.Z)
		tire.tread = at.Z * turning
		tire.stretching = r.stretching(tire.tread-r3.Dot(velocity, heading), tire.tread, s.wheel.stretch[k])
		tire.thrust = r.thrust(m.curves[k], tire.load, s.wheel.stretch[k], tire.stretching)
		i.axle.pull(lever, r3.Vec{X: tire.thrust * heading.X, Y: tire.thrust * heading.Y, Z: tire.load})
		// Of the thrust's moment about the wheel center the part about the axle's
		// y slows the wheels; the housing carries the rest.
		moment := -at.Z * tire.thrust
		i.spinUp += moment * flat
		i.axle.twist(along(r3.Scale(moment, across), -moment*flat, y))
		m.rearLane(r, i)
	}
}

// stretching returns the rate of the tread's deflection u [m/s] from the speed at
// which the tread slips over the ground and the speed at which it passes through the
// contact: the single-contact-point model of Pacejka, ch. 7 (from memory). Driven
// forward a tire slips no faster than its tread passes. One that is dragged or rolls
// backward can slip faster; the slip speed then takes the place of the tread's, or the
// deflection of a wheel that does not turn would grow without end.
func (r *RearTire) stretching(slip, tread, u float64) float64 {
	return slip - max(math.Abs(tread), math.Abs(slip))*u/r.Relaxation
}

// thrust returns the force of a tire along the ground [N] from its load, the
// deflection of its tread and its rate. Its damper is part of the carcass and
// passes on no more than the contact holds, so the whole is held within ±µ_peak N.
func (r *RearTire) thrust(curve slipCurve, load, u, rate float64) float64 {
	most := r.Grip * load
	force := most*curve.grip(u/r.Relaxation) + r.CarcassDamping*rate
	return max(-most, min(most, force))
}

// ground returns the horizontal unit vectors along and square to an axle's
// direction y, and the length of y's horizontal part.
func ground(y r3.Vec) (across, heading r3.Vec, flat float64) {
	flat = math.Sqrt(y.X*y.X + y.Y*y.Y)
	across = r3.Vec{X: y.X / flat, Y: y.Y / flat}
	return across, r3.Vec{X: across.Y, Y: -across.X}, flat
}

// rearLane applies the lane spring of a rear tire.
func (m *model) rearLane(r *RearTire, i *instant) {
	foot := r.Center
	foot.Z -= r.Lane.Drop
	lever, at, velocity := i.axle.point(foot)
	i.axle.pull(lever, r3.Vec{Y: r.Lane.force(at.Y-r.Center.Y, velocity.Y)})
}

package launch

import (
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// state is what the equations of motion are integrated for; the same fields
// hold their rates of change.
type state struct {
	chassis struct {
		at       r3.Vec      // CG of the sprung mass [m]
		turn     quat.Number // body to world
		momentum r3.Vec      // of chassis and front wheels, world axes [kg·m/s]
		spin     r3.Vec      // their angular momentum about the CG of the sprung mass, body axes [kg·m²/s]
	}
	rise [2]float64 // front wheels along the chassis's z, from ride height [m]
	lift [2]float64 // momentum of the front wheels along the chassis's z [kg·m/s]
	roll [2]float64 // spin of the front wheels, forward positive [rad/s]
	axle struct {
		at       r3.Vec      // middle of the centerline [m]
		turn     quat.Number // body to world
		velocity r3.Vec      // world axes [m/s]
		omega    r3.Vec      // of the housing, body axes [rad/s]
	}
	wheel struct {
		speed   float64    // spin about the axle's y, in space, forward positive [rad/s]
		angle   float64    // turned since the start [rad]
		stretch [2]float64 // deflection of the rear tires' tread, u [m]
	}
	engine float64 // speed [rad/s]
}

// advance sets s to from + h·rate.
func (s *state) advance(from *state, h float64, rate *state) {
	s.chassis.at = along(from.chassis.at, h, rate.chassis.at)
	s.chassis.turn = ahead(from.chassis.turn, h, rate.chassis.turn)
	s.chassis.momentum = along(from.chassis.momentum, h, rate.chassis.momentum)
	s.chassis.spin = along(from.chassis.spin, h, rate.chassis.spin)
	s.axle.at = along(from.axle.at, h, rate.axle.at)
	s.axle.turn = ahead(from.axle.turn, h, rate.axle.turn)
	s.axle.velocity = along(from.axle.velocity, h, rate.axle.velocity)
	s.axle.omega = along(from.axle.omega, h, rate.axle.omega)
	for i := range s.rise {
		s.rise[i] = from.rise[i] + h*rate.rise[i]
		s.lift[i] = from.lift[i] + h*rate.lift[i]
		s.roll[i] = from.roll[i] + h*rate.roll[i]
		s.wheel.stretch[i] = from.wheel.stretch[i] + h*rate.wheel.stretch[i]
	}
	s.wheel.speed = from.wheel.speed + h*rate.wheel.speed
	s.wheel.angle = from.wheel.angle + h*rate.wheel.angle
	s.engine = from.engine + h*rate.engine
}

// ahead returns q + h·rate.
func ahead(q quat.Number, h float64, rate quat.Number) quat.Number {
	return quat.Number{
		Real: q.Real + h*rate.Real, Imag: q.Imag + h*rate.Imag,
		Jmag: q.Jmag + h*rate.Jmag, Kmag: q.Kmag + h*rate.Kmag,
	}
}

// Speeds of chassis and axle beyond which the solution counts as diverged: far
// above what any car reaches.
const (
	maxSpeed        = 1000 // [m/s]
	maxTurningSpeed = 1e4  // [rad/s]
)

// diverged reports whether a number is no longer finite or a body moves faster
// than any car does.
func (s *state) diverged(i *instant) bool {
	sum := s.rise[0] + s.rise[1] + s.lift[0] + s.lift[1] + s.roll[0] + s.roll[1] + s.wheel.stretch[0] + s.wheel.stretch[1] + s.wheel.speed + s.wheel.angle + s.engine +
		total(s.chassis.at) + total(s.axle.at) + quat.Abs(s.chassis.turn) + quat.Abs(s.axle.turn)
	return math.IsNaN(sum) || math.IsInf(sum, 0) ||
		!(length(i.chassis.velocity) < maxSpeed) || !(length(i.axle.velocity) < maxSpeed) ||
		!(length(i.chassis.omega) < maxTurningSpeed) || !(length(i.axle.omega) < maxTurningSpeed)
}

func total(p r3.Vec) float64 { return p.X + p.Y + p.Z }

// scheme is the classical Runge–Kutta method of order four, with its stages.
type scheme struct {
	k    [4]state
	next state
}

// step advances s by h from the time t. The first stage, k[0], must be set.
func (r *scheme) step(m *model, t, h float64, s *state, i *instant) {
	for stage, part := range [...]float64{0.5, 0.5, 1} {
		r.next.advance(s, part*h, &r.k[stage])
		m.evaluate(t+part*h, &r.next, i)
		m.rates(&r.next, i, &r.k[stage+1])
	}
	for stage, weight := range [...]float64{1. / 6, 1. / 3, 1. / 3, 1. / 6} {
		s.advance(s, weight*h, &r.k[stage])
	}
	s.chassis.turn, s.axle.turn = normal(s.chassis.turn), normal(s.axle.turn)
}

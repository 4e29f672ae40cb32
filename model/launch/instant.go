package launch

import "gonum.org/v1/gonum/spatial/r3"

// instant is all that follows from a state at one time: positions, velocities,
// forces and moments.
type instant struct {
	chassis, axle body
	// frame holds the chassis's velocities in its own axes.
	frame struct{ velocity, omega, momentum r3.Vec }

	corners [2]struct {
		arm    r3.Vec  // wheel center from the CG of the sprung mass, body axes [m]
		rate   float64 // of rise [m/s]
		height float64 // of the wheel center above the ground [m]
		load   float64 // on the tire [N]
		along  float64 // force on the wheel along the chassis's z, the suspension's included [N]
		spinUp float64 // rate of its spin [rad/s²]
	}
	tires [2]struct {
		height     float64 // of the wheel center above the ground [m]
		load       float64 // [N]
		thrust     float64 // along the heading [N]
		tread      float64 // speed at which it passes through the contact, z ω [m/s]
		stretching float64 // rate of its deflection, du/dt [m/s]
	}
	tension [RodCount]float64 // [N]
	push    [2]float64        // of rear spring, shock and stops [N]
	reach   [2]float64        // length between a rear spring's mounts [m]
	wheelie float64           // load on the wheelie bar's wheel [N]

	torque   float64 // on both rear wheels from the housing [N·m]
	engine   float64 // torque of the engine [N·m]
	impeller float64 // that the engine gives up [N·m]
	spinUp   float64 // torque on the rear wheels about the axle's y, the housing's included [N·m]
}

// body is a rigid body at an instant.
type body struct {
	at            r3.Vec // CG [m]
	axes          axes
	velocity      r3.Vec // of the CG, world axes [m/s]
	omega         r3.Vec // world axes [rad/s]
	force, moment r3.Vec // that act on it, about the CG, world axes [N, N·m]
}

// point returns a point of the body that has the given place in its axes: its
// lever from the CG, its place and its velocity.
func (b *body) point(p r3.Vec) (lever, at, velocity r3.Vec) {
	lever = b.axes.world(p)
	return lever, r3.Add(b.at, lever), r3.Add(b.velocity, r3.Cross(b.omega, lever))
}

// pull applies a force at a lever.
func (b *body) pull(lever, force r3.Vec) {
	b.force = r3.Add(b.force, force)
	b.moment = r3.Add(b.moment, r3.Cross(lever, force))
}

// twist applies a torque.
func (b *body) twist(moment r3.Vec) { b.moment = r3.Add(b.moment, moment) }

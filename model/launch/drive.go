package launch

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// lockup is the speed ratio at which a converter's torque ratio has come down
// to 1 and its impeller begins to let go.
const lockup = 0.9

// drive lets the engine's torque act on wheels, housing and chassis.
func (m *model) drive(t float64, s *state, i *instant) {
	d := &m.Drive
	ratio := max(0, (s.wheel.speed-s.axle.omega.Y)*d.Gear*d.Axle/s.engine)
	i.impeller = d.Capacity * s.engine * s.engine * max(0, min(1, (1-ratio)/(1-lockup)))
	gain := max(1, d.Stall-(d.Stall-1)*ratio/lockup)
	i.torque = d.released(t) * gain * i.impeller * d.Gear * d.Axle * d.Efficiency
	// Between wheels and housing about the axle's y.
	i.spinUp += i.torque
	i.axle.twist(r3.Scale(-i.torque, i.axle.axes.y))
	// The driveshaft about the chassis's x.
	shaft := r3.Scale(d.Turning*i.torque/d.Axle, i.chassis.axes.x)
	i.chassis.twist(shaft)
	i.axle.twist(r3.Scale(-1, shaft))
}

// released is the part of the torque that the brake lets through, a smooth step
// from 0 at t = 0 to 1 at t = Release.
func (d *Drive) released(t float64) float64 {
	if t >= d.Release {
		return 1
	}
	x := max(0, t/d.Release)
	return x * x * (3 - 2*x)
}

// torqueAt returns the engine's torque at a speed.
func (d *Drive) torqueAt(speed float64) float64 {
	points := d.Torque
	for k := 1; k < len(points); k++ {
		if a, b := points[k-1], points[k]; speed < b.Speed {
			part := max(0, (speed-a.Speed)/(b.Speed-a.Speed))
			return a.Torque + part*(b.Torque-a.Torque)
		}
	}
	return points[len(points)-1].Torque
}

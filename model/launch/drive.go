package launch

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// coupling is the speed ratio of a converter's coupling point, where its torque
// ratio has come down to 1 and the impeller's torque begins to fall: assumption.
const coupling = 0.9

// drive applies the engine's torque to wheels, housing and chassis. The impeller's
// torque goes with its speed squared, by similarity of hydrodynamic drives; its
// course over the speed ratio and that of the torque ratio are assumptions. The
// driveshaft's reaction is that of Gillespie, Fundamentals of Vehicle Dynamics,
// ch. 2.
func (m *model) drive(t float64, s *state, i *instant) {
	d := &m.Drive
	ratio := max(0, d.shaftSpeed(s)*d.Gear/s.engine)
	i.engine = d.share(t) * d.torqueAt(s.engine)
	i.impeller = d.Capacity * s.engine * s.engine * max(0, min(1, (1-ratio)/(1-coupling)))
	gain := max(1, d.Stall-(d.Stall-1)*ratio/coupling)
	i.torque = d.released(t) * gain * i.impeller * d.Gear * d.Axle * d.Efficiency
	// Between wheels and housing about the axle's y.
	i.spinUp += i.torque
	i.axle.twist(r3.Scale(-i.torque, i.axle.axes.y))
	// The driveshaft about the chassis's x.
	shaft := r3.Scale(d.Turning*i.torque/d.Axle, i.chassis.axes.x)
	i.chassis.twist(shaft)
	i.axle.twist(r3.Scale(-1, shaft))
}

// shaftSpeed is the driveshaft's speed: that of the wheels against the housing times
// the axle ratio [rad/s].
func (d *Drive) shaftSpeed(s *state) float64 { return (s.wheel.speed - s.axle.omega.Y) * d.Axle }

// released is the part of the torque that the brake lets through, a smooth step
// from 0 at t = 0 to 1 at t = Release: assumption.
func (d *Drive) released(t float64) float64 {
	if t >= d.Release {
		return 1
	}
	x := max(0, t/d.Release)
	return x * x * (3 - 2*x)
}

// share is the part of the engine's torque that it gives at a time.
func (d *Drive) share(t float64) float64 {
	if len(d.Ramp) == 0 {
		return 1
	}
	for k := range d.Ramp {
		b := d.Ramp[k]
		if t > b.Time {
			continue
		}
		if k == 0 {
			return b.Share
		}
		a := d.Ramp[k-1]
		return a.Share + (t-a.Time)/(b.Time-a.Time)*(b.Share-a.Share)
	}
	return d.Ramp[len(d.Ramp)-1].Share
}

// torqueAt returns the engine's torque [N·m] at a speed [rad/s].
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

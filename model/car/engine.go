package car

// Turning directions of an engine in a car file, seen from the front.
const (
	Clockwise        = "clockwise"
	Counterclockwise = "counterclockwise"
)

// Directions lists the turning directions.
var Directions = []string{Clockwise, Counterclockwise}

// Engine is what the launch asks of the engine besides Drive.
type Engine struct {
	Inertia     float64       // crank, flexplate and converter shell [kg·m²]
	RevLimit    float64       // speed at which ignition is cut [rad/s]; 0: the end of Curve, or 1.5 × Drive.Speed
	ReleaseTime float64       // from the first torque to the full one as the brake lets go [s]
	Direction   string        // seen from the front, as Directions has it
	Ramp        []RampPoint   // share of the torque by rising time after the release, straight between the points and level before and beyond them; nil for the whole torque
	Curve       []TorquePoint // by rising speed; its shape only, which passes through Drive.Torque at Drive.Speed; nil for a constant torque
}

// TorqueAt returns the torque of the curve at a speed, linear between its
// points and level beyond them; 0 without a curve [N·m].
func (e *Engine) TorqueAt(speed float64) float64 {
	for i, p := range e.Curve {
		switch {
		case speed > p.Speed:
			continue
		case i == 0:
			return p.Torque
		}
		before := e.Curve[i-1]
		return before.Torque + (speed-before.Speed)/(p.Speed-before.Speed)*(p.Torque-before.Torque)
	}
	if len(e.Curve) == 0 {
		return 0
	}
	return e.Curve[len(e.Curve)-1].Torque
}

// TorquePoint is the engine's torque at a speed.
type TorquePoint struct {
	Speed  float64 // [rad/s]
	Torque float64 // [N·m]
}

// RampPoint is the share of the engine's torque at a time after the release, as
// boost or timing hold it back.
type RampPoint struct {
	Time  float64 // [s]
	Share float64 // [1]
}

// FullAt returns the first time at which the ramp lets the whole torque through [s], and
// whether it ever does. Without a ramp that is the release, time 0.
func (e *Engine) FullAt() (t float64, ok bool) {
	for i, p := range e.Ramp {
		switch {
		case p.Share < 1:
			continue
		case i == 0:
			return 0, true
		}
		before := e.Ramp[i-1]
		return before.Time + (1-before.Share)/(p.Share-before.Share)*(p.Time-before.Time), true
	}
	return 0, len(e.Ramp) == 0
}

// usualRevs is the rev limit over the launch speed where neither it nor a torque curve
// is given [1]: assumption.
const usualRevs = 1.5

// RevLimit returns the speed at which ignition is cut: Engine.RevLimit, or where that
// is 0 the end of the torque curve, or 1.5 × Drive.Speed without one [rad/s].
func (c *Car) RevLimit() float64 {
	e := &c.Launch.Engine
	switch n := len(e.Curve); {
	case e.RevLimit != 0:
		return e.RevLimit
	case n > 0:
		return e.Curve[n-1].Speed
	}
	return usualRevs * c.Drive.Speed
}

// TorqueScale returns the factor by which the torque curve of a valid car passes
// through Drive.Torque at Drive.Speed; 1 without a curve [1].
func (c *Car) TorqueScale() float64 {
	if len(c.Launch.Engine.Curve) == 0 {
		return 1
	}
	return c.Drive.Torque / c.Launch.Engine.TorqueAt(c.Drive.Speed)
}

// EngineTorque returns the engine's whole torque at a speed below the rev limit: that
// of the scaled curve, or Drive.Torque without one [N·m].
func (c *Car) EngineTorque(speed float64) float64 {
	if len(c.Launch.Engine.Curve) == 0 {
		return c.Drive.Torque
	}
	return c.TorqueScale() * c.Launch.Engine.TorqueAt(speed)
}

// PeakPower returns the engine's greatest power up to the rev limit [W], and the speed
// at which it makes it [rad/s]. On a straight piece T = a + b ω of the curve power is
// a ω + b ω², which is greatest at ω = −a/(2b) where b < 0 and that lies on the piece,
// otherwise at one of its ends.
func (c *Car) PeakPower() (power, speed float64) {
	limit := c.RevLimit()
	try := func(at float64) {
		if p := at * c.EngineTorque(at); p > power {
			power, speed = p, at
		}
	}
	try(limit)
	curve := c.Launch.Engine.Curve
	for i, p := range curve {
		if p.Speed < limit {
			try(p.Speed)
		}
		if i == 0 {
			continue
		}
		q := curve[i-1]
		slope := (p.Torque - q.Torque) / (p.Speed - q.Speed)
		if slope < 0 {
			if top := (q.Speed - q.Torque/slope) / 2; top > q.Speed && top < min(p.Speed, limit) {
				try(top)
			}
		}
	}
	return power, speed
}

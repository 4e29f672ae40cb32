package launch

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	// finest is how far a step may go of the fastest vibration's time, its
	// period over 2π [1]. The method is stable up to 2.8 and at 0.4 follows the
	// vibration to a few parts in ten thousand.
	finest = 0.7
	// fastestDecay is how far a step may go of the shortest decay's time [1]. The
	// method is stable up to 2.8.
	fastestDecay = 2
	// hardest is how many times its load at rest a tire may carry [1].
	hardest = 5
	// longest is the longest step [s].
	longest = 0.5e-3
	// mostSubsteps bounds the steps in one output step, so that a run ends.
	mostSubsteps = 1000
)

// pace returns the rates that bound every vibration and every decay of the car
// near rest [1/s]. A spring of rate k that acts along unit directions on bodies of
// mobility g·M⁻¹g has k·g·M⁻¹g on the trace of M⁻¹K, which bounds the largest
// ω²; dampers bound the largest decay in the same way.
func (m *model) pace() (vibration, decay float64) {
	var square float64
	add := func(rate, damping, mobility float64) {
		square += rate * mobility
		decay += damping * mobility
	}
	for k := range m.Rods {
		r := &m.Rods[k]
		along := r3.Unit(r3.Sub(r3.Add(r.Chassis, m.Chassis.CG), r3.Add(r.Housing, r3.Vec{Z: m.Axle.Height})))
		add(r.Rate, r.Damping, m.chassisMobility(r.Chassis, along)+m.axleMobility(r.Housing, along))
	}
	up, across := r3.Vec{Z: 1}, r3.Vec{Y: 1}
	for _, side := range Sides {
		c, t, f := &m.Coils[side], &m.RearTires[side], &m.Corners[side]
		along := r3.Unit(r3.Sub(r3.Add(c.Chassis, m.Chassis.CG), r3.Add(c.Axle, r3.Vec{Z: m.Axle.Height})))
		add(c.Rate+c.Stop, math.Max(c.Bump, c.Rebound), m.chassisMobility(c.Chassis, along)+m.axleMobility(c.Axle, along))
		foot := r3.Sub(t.Center, r3.Vec{Z: t.Lane.Drop})
		add(t.Rate, t.Damping, m.axleMobility(t.Center, up))
		add(t.Lane.Rate, t.Lane.Damping, m.axleMobility(foot, across))
		// Grip that falls with slip feeds the carcass.
		feed := t.Grip * (1 - t.Sliding) * hardest * t.Rate * (t.Radius - m.Axle.Height) / fade
		add(t.CarcassRate, t.CarcassDamping+feed, m.axleMobility(t.Center, r3.Vec{X: 1})+t.Radius*t.Radius/m.Axle.Spin)
		add(f.Rate+f.Stop+f.TireRate, math.Max(f.Bump, f.Rebound)+f.TireDamping, 1/f.Mass+m.chassisMobility(f.Hub, up))
		foot = r3.Sub(f.Hub, r3.Vec{Z: f.Lane.Drop})
		add(f.Lane.Rate, f.Lane.Damping, m.chassisMobility(foot, across))
		add(m.FrontAntiRoll/(m.trackFront*m.trackFront), 0, 2/f.Mass)
	}
	add(m.RearAntiRoll, 0, 1/m.Chassis.Inertia.X+1/m.Axle.Inertia.X)
	if w := &m.WheelieBar; w.Rate > 0 {
		add(w.Rate, w.Damping, m.chassisMobility(w.Wheel, up))
	}
	// The converter near lockup, where its torque falls within a tenth of speed ratio.
	d := &m.Drive
	ratio := d.Gear * d.Axle
	decay += d.Capacity * d.Speed / (1 - lockup) * (1/d.Inertia + ratio*ratio*(1/m.Axle.Spin+1/m.Axle.Inertia.Y))
	return math.Sqrt(square), decay + d.steepest()/d.Inertia
}

// steepest is the greatest change of the engine's torque over its speed
// [N·m·s/rad].
func (d *Drive) steepest() float64 {
	most := 0.0
	for k := 1; k < len(d.Torque); k++ {
		a, b := d.Torque[k-1], d.Torque[k]
		most = math.Max(most, math.Abs(b.Torque-a.Torque)/(b.Speed-a.Speed))
	}
	return most
}

// chassisMobility is the speed along u that a unit impulse along u gives a
// point of the chassis [1/kg].
func (m *model) chassisMobility(p, u r3.Vec) float64 {
	return mobility(m.Chassis.Mass, m.Chassis.Inertia, p, u)
}

// axleMobility is the same for a point of the axle assembly.
func (m *model) axleMobility(p, u r3.Vec) float64 {
	return mobility(m.Axle.Mass, m.Axle.Inertia, p, u)
}

func mobility(mass float64, inertia, p, u r3.Vec) float64 {
	c := r3.Cross(p, u)
	return 1/mass + c.X*c.X/inertia.X + c.Y*c.Y/inertia.Y + c.Z*c.Z/inertia.Z
}

// substeps returns into how many steps an output step is cut.
func (m *model) substeps(output float64) int {
	vibration, decay := m.pace()
	step := math.Min(longest, math.Min(finest/vibration, fastestDecay/decay))
	return int(math.Min(mostSubsteps, math.Ceil(output/step)))
}

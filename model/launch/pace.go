package launch

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The classical Runge–Kutta method is stable up to step × ω = 2.83 for an undamped
// vibration and up to step × decay rate = 2.79 for a pure decay (Hairer & Wanner,
// Solving Ordinary Differential Equations II, from memory).
const (
	// maxVibrationStep is the largest step × ω_max, ω_max the highest natural
	// angular frequency [1]. At 0.4 the method follows a vibration to a few parts
	// in ten thousand.
	maxVibrationStep = 0.7
	// maxDecayStep is the largest step × the largest decay rate [1].
	maxDecayStep = 2
	// maxTireLoad bounds a rear tire's load over that at rest [1]: assumption.
	maxTireLoad = 5
	// maxStep is the largest step [s].
	maxStep = 0.5e-3
	// maxSteps bounds the steps of one launch, so that none takes longer than a
	// person waits: half a second where a step takes 2.5 µs.
	maxSteps = 200_000
)

// Part is a group of parts of the car that spring or dampen alike.
type Part int

// The parts.
const (
	BarsAndLocator Part = iota
	RearSprings         // with shocks and stops
	RearTires           // up and down, along and across
	FrontCorners        // with tires
	AntiRollBars
	WheelieBarWheel
	EngineAndConverter

	partCount = iota
)

// Parts lists all parts.
var Parts = [partCount]Part{BarsAndLocator, RearSprings, RearTires, FrontCorners, AntiRollBars, WheelieBarWheel, EngineAndConverter}

// String returns the part's name for files, as in "rear_springs".
func (p Part) String() string {
	if p < 0 || p >= partCount {
		return fmt.Sprintf("Part(%d)", int(p))
	}
	return [...]string{"bars", "rear_springs", "rear_tires", "front_corners", "anti_roll_bars", "wheelie_bar", "engine"}[p]
}

// pace is what each part adds to bounds of how fast a car near rest moves: of the
// square of its highest natural angular frequency [1/s²] and of its greatest decay
// rate [1/s].
type pace struct{ vibration, decay [partCount]float64 }

// add adds what a spring and a damper on a mass do.
func (p *pace) add(part Part, rate, damping, inverseMass float64) {
	p.vibration[part] += rate * inverseMass
	p.decay[part] += damping * inverseMass
}

// step returns the largest step that follows the car [s], and the part that has most
// to do with it.
func (p *pace) step() (float64, Part) {
	var square, decay float64
	var stiffest, stickiest Part
	for k := range p.vibration {
		square, decay = square+p.vibration[k], decay+p.decay[k]
		if p.vibration[k] > p.vibration[stiffest] {
			stiffest = Part(k)
		}
		if p.decay[k] > p.decay[stickiest] {
			stickiest = Part(k)
		}
	}
	vibrates, decays := maxVibrationStep/math.Sqrt(square), maxDecayStep/decay
	if decays < vibrates {
		return math.Min(maxStep, decays), stickiest
	}
	return math.Min(maxStep, vibrates), stiffest
}

// pace returns the car's pace. The largest ω² is at most the trace of M⁻¹K, to which a
// spring of rate k adds k times the sum of 1/effective mass of the points it acts on,
// along its line; dampers bound the largest decay rate in the same way. The deflection
// of a rolling tire decays at the rate |z ω|/λ, which takes the greatest speed of the
// wheels within the time limit [s].
func (m *model) pace(limit float64) *pace {
	var p pace
	for k := range m.Rods {
		r := &m.Rods[k]
		along := r3.Unit(r3.Sub(r3.Add(r.Chassis, m.Chassis.CG), r3.Add(r.Housing, r3.Vec{Z: m.Axle.Height})))
		p.add(BarsAndLocator, r.Rate, r.Damping, m.chassisMobility(r.Chassis, along)+m.axleMobility(r.Housing, along))
	}
	up, across := r3.Vec{Z: 1}, r3.Vec{Y: 1}
	for _, side := range Sides {
		c, t, f := &m.Coils[side], &m.RearTires[side], &m.Corners[side]
		along := r3.Unit(r3.Sub(r3.Add(c.Chassis, m.Chassis.CG), r3.Add(c.Axle, r3.Vec{Z: m.Axle.Height})))
		p.add(RearSprings, c.Rate+c.Stop, math.Max(c.Bump, c.Rebound), m.chassisMobility(c.Chassis, along)+m.axleMobility(c.Axle, along))
		foot := r3.Sub(t.Center, r3.Vec{Z: t.Lane.Drop})
		p.add(RearTires, t.Rate, t.Damping, m.axleMobility(t.Center, up))
		p.add(RearTires, t.Lane.Rate, t.Lane.Damping, m.axleMobility(foot, across))
		// The slip curve is steepest where the tire rolls freely.
		tread := maxTireLoad * t.Rate * (t.Radius - m.Axle.Height) * t.Grip * m.curves[side].slope() / t.Relaxation
		p.add(RearTires, tread, t.CarcassDamping, m.axleMobility(t.Center, r3.Vec{X: 1})+t.Radius*t.Radius/m.Axle.Spin)
		p.add(FrontCorners, f.Rate+f.Stop+f.TireRate, math.Max(f.Bump, f.Rebound)+f.TireDamping, 1/f.Mass+m.chassisMobility(f.Hub, up))
		foot = r3.Sub(f.Hub, r3.Vec{Z: f.Lane.Drop})
		p.add(FrontCorners, f.Lane.Rate, f.Lane.Damping, m.chassisMobility(foot, across))
		p.add(AntiRollBars, m.FrontAntiRoll/(m.trackFront*m.trackFront), 0, 2/f.Mass)
	}
	left, right := &m.RearTires[Left], &m.RearTires[Right]
	p.decay[RearTires] += m.Drive.topWheelSpeed(m.Axle.Spin, limit) * math.Max(left.Radius/left.Relaxation, right.Radius/right.Relaxation)
	p.add(AntiRollBars, m.RearAntiRoll, 0, 1/m.Chassis.Inertia.X+1/m.Axle.Inertia.X)
	if w := &m.WheelieBar; w.Rate > 0 {
		p.add(WheelieBarWheel, w.Rate, w.Damping, m.chassisMobility(w.Wheel, up))
	}
	// The converter beyond its coupling point, where its torque falls within a tenth of speed ratio.
	d := &m.Drive
	ratio := d.Gear * d.Axle
	p.add(EngineAndConverter, 0, d.Capacity*d.Speed/(1-coupling), 1/d.Inertia+ratio*ratio*(1/m.Axle.Spin+1/m.Axle.Inertia.Y))
	p.add(EngineAndConverter, 0, d.topShare()*d.steepest(), 1/d.Inertia)
	return &p
}

// topWheelSpeed returns a bound of the speed of wheels of a spin inertia within a
// time [rad/s]: no converter drives them faster than the engine turns, and they spin
// up no further than the greatest torque on them brings them.
func (d *Drive) topWheelSpeed(inertia, limit float64) float64 {
	most, end := 0.0, d.Torque[len(d.Torque)-1]
	for _, p := range d.Torque {
		most = math.Max(most, p.Torque)
	}
	engine := d.Speed + d.topShare()*most/d.Inertia*limit
	if end.Torque == 0 {
		engine = math.Min(engine, math.Max(d.Speed, end.Speed))
	}
	ratio := d.Gear * d.Axle
	spun := d.Capacity * engine * engine * d.Stall * ratio * d.Efficiency / inertia * limit
	return math.Min(engine/ratio, spun)
}

// topShare is the greatest share of the engine's torque over time.
func (d *Drive) topShare() float64 {
	if len(d.Ramp) == 0 {
		return 1
	}
	most := 0.0
	for _, p := range d.Ramp {
		most = math.Max(most, p.Share)
	}
	return most
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

// chassisMobility is 1/effective mass of a point of the chassis along the unit
// vector u, the speed that a unit impulse gives it [1/kg].
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

// substeps returns the number of integration steps in an output step, and the part of
// the car that has most to do with it.
func (m *model) substeps(o *Options) (int, Part) {
	step, fastest := m.pace(o.Limit).step()
	return int(math.Ceil(o.Output / step)), fastest
}

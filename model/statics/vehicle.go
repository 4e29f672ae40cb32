// Package statics computes the side-view loads on the bars, the springs and the
// tires of a four-link car at launch.
//
// It is quasi-static: the car accelerates, the suspension stands still in the
// given pose. Both sides are computed together, and each bar has half. Points
// and directions are in the ground's frame (origin at the rear contact point,
// X forward, Y up); moments and rotations are nose-up positive. A bar's force
// is a tension: pull positive, push negative.
package statics

import (
	"bowline/model/linkage"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Vehicle holds the masses, inertias, tires, torque and springs of a car: what its
// side-view loads depend on besides the linkage.
type Vehicle struct {
	SprungMass        float64 // [kg]
	SprungCG          r2.Vec  // chassis frame [m]
	UnsprungRear      float64 // at the axle centerline [kg]
	UnsprungFront     float64 // at the front wheel centers [kg]
	RearRadius        float64 // loaded tire radius [m]
	FrontRadius       float64 // loaded tire radius [m]
	RearSpinInertia   float64 // both rear wheels and what turns along [kg·m²]
	FrontSpinInertia  float64 // both front wheels [kg·m²]
	Grip              float64 // peak thrust over tire load [1]
	AxleTorque        float64 // greatest, from the drive [N·m]
	SpringAxleMount   r2.Vec  // from the axle centerline, turning with the housing [m]
	SpringChassisSide r2.Vec  // chassis frame [m]
}

// Mass returns the whole car's mass [kg].
func (v *Vehicle) Mass() float64 { return v.SprungMass + v.UnsprungRear + v.UnsprungFront }

// CG returns the whole car's center of gravity at a pose, sprung and unsprung
// parts composed, in the ground's frame [m].
func (v *Vehicle) CG(p *linkage.Pose) r2.Vec {
	moment := r2.Scale(v.SprungMass, v.SprungCG)
	moment = r2.Add(moment, r2.Scale(v.UnsprungRear, p.Axle))
	moment = r2.Add(moment, r2.Scale(v.UnsprungFront, p.FrontWheel))
	return p.Ground.Point(r2.Scale(1/v.Mass(), moment))
}

// AntiSquat returns s·L/h: the slope s of the line from the rear contact
// through the instant center, over the slope of the line to the point at CG
// height above the front contact [1]. At 1 (100 %) the bars carry the whole
// load transfer of a car without unsprung mass. It returns false where the
// line of action stands upright.
//
// For a solid axle the slope is taken from the ground, since the bars react
// the axle torque: T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE
// 1992, chapter 7 (from memory).
func (v *Vehicle) AntiSquat(p *linkage.Pose) (float64, bool) {
	s, ok := p.InstantCenter().Slope()
	if !ok {
		return 0, false
	}
	return s * p.Ground.Wheelbase / v.CG(p).Y, true
}

// translation returns k, the car's acceleration per thrust: a = k·F with the
// front wheels' spin as added mass, k = 1/(m + J_f/r_f²) [1/kg].
func (v *Vehicle) translation() float64 {
	return 1 / (v.Mass() + v.FrontSpinInertia/(v.FrontRadius*v.FrontRadius))
}

// DriveThrust returns the thrust of the full axle torque when the tires do
// not slip: T = F·r + J_r·a/r [N].
func (v *Vehicle) DriveThrust() float64 {
	return v.AxleTorque / v.torquePerThrust()
}

// torquePerThrust is the axle torque for each newton of thrust without slip:
// r + J_r·k/r [m].
func (v *Vehicle) torquePerThrust() float64 {
	return v.RearRadius + v.RearSpinInertia*v.translation()/v.RearRadius
}

// weight is the whole car's weight [N].
func (v *Vehicle) weight() float64 { return v.Mass() * units.Gravity }

package statics

import (
	"testing"

	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
)

// plain is a car without wheel inertia and unsprung mass on a given four-link.
func plain(g linkage.Geometry, mass float64, cg r2.Vec) Vehicle {
	return whole(Vehicle{SpringChassisSide: r2.Vec{Y: g.RearRadius + 1}, Grip: 10, AxleTorque: 1e9}, mass, cg, g)
}

// wheels is a four-link of no interest under a wheelbase [m].
func wheels(wheelbase float64) linkage.Geometry {
	return linkage.Geometry{
		ChassisUpper: r2.Vec{X: 0.5, Y: 0.45}, ChassisLower: r2.Vec{X: 0.6, Y: 0.25},
		HousingUpper: r2.Vec{X: 0.05, Y: 0.15}, HousingLower: r2.Vec{X: 0.05, Y: -0.15},
		Wheelbase: wheelbase, RearRadius: 0.3, FrontRadius: 0.3,
	}
}

// Greatest acceleration of a rear-drive car, a = µ (b/L)/(1 − µ h/L)·g with b
// from the CG to the front axle. Inputs are textbook exercises; their answers
// were recomputed with g = 9.81 and are compared per g.
func TestRearDriveTractionLimit(t *testing.T) {
	const g981 = 9.81
	for _, c := range []struct {
		source          string
		l, h, behind    float64 // wheelbase, CG height, CG behind the front axle [m]
		grip, a, within float64
	}{
		{"an online automobile text, example 31.7", 2.75, 0.85, 1.15, 0.6, 3.0218, 5e-5},
		{"lecture slides, Waluyo 2023", 2.6, 0.7, 1.3, 0.7, 4.2309, 5e-5},
		{"Jazar, Vehicle Dynamics, p. 92 exercise 10", 2.620, 0.720, 1.310, 0.8, 5.0298, 5e-5},
	} {
		g := wheels(c.l)
		v := plain(g, 1550, r2.Vec{X: c.l - c.behind, Y: c.h})
		v.Grip = c.grip
		l := v.Solve(pose(t, g, 0, 0)).Hooked
		near(t, c.source, l.Accel/9.80665*g981, c.a, c.within)
		if l.Governs != Grip {
			t.Errorf("%s: %v governs", c.source, l.Governs)
		}
	}
}

// Tire loads at a given acceleration: Jazar, Vehicle Dynamics, p. 92 exercise
// 12 (inputs; answers recomputed with g = 9.81, here scaled to standard
// gravity at the same a/g).
func TestTireLoadsWhileAccelerating(t *testing.T) {
	const scale = 9.80665 / 9.81
	g := wheels(2.7508)
	v := plain(g, 2058.9, r2.Vec{X: 2.7508 / 2, Y: 0.76})
	v.AxleTorque = 2058.9 * 1.7 * scale * g.RearRadius
	l := v.Solve(pose(t, g, 0, 0)).Hooked
	near(t, "front [N]", l.FrontLoad/scale, 9131.9, 0.1)
	near(t, "rear [N]", l.RearLoad/scale, 11065.9, 0.1)
	if l.Governs != Drive {
		t.Errorf("%v governs", l.Governs)
	}
}

// The textbook identities of a massless axle whose torque the links alone
// react, derived from statics: wheelbase 105 in, CG 22 in high, 3,000 lbf of
// thrust, lower link (0,9)–(24,10), upper link (0,20)–(20,16) in.
func TestIdentitiesOfAPlanePair(t *testing.T) {
	g := linkage.Geometry{
		ChassisUpper: r2.Vec{X: 20 * inch, Y: 16 * inch}, ChassisLower: r2.Vec{X: 24 * inch, Y: 10 * inch},
		HousingUpper: r2.Vec{Y: 6 * inch}, HousingLower: r2.Vec{Y: -5 * inch},
		Wheelbase: 105 * inch, RearRadius: 14 * inch, FrontRadius: 14 * inch,
	}
	v := plain(g, 3000*lb, r2.Vec{X: 50 * inch, Y: 22 * inch})
	v.AxleTorque = 3000 * lbf * g.RearRadius
	p := pose(t, g, 0, 0)
	all := v.Solve(p)
	l := all.Hooked
	near(t, "thrust", l.Thrust/lbf, 3000, 1e-9)
	near(t, "lower pair", 2*l.Lower.Tension/lbf, -5459.278, 5e-4)
	near(t, "upper pair", 2*l.Upper.Tension/lbf, 2503.155, 5e-4)
	near(t, "down on the axle", -2*(l.Upper.OnHousing.Y+l.Lower.OnHousing.Y)/lbf, 718.182, 5e-4)
	near(t, "spring change", (l.Spring-all.Rest.Spring)/lbf, -89.610, 5e-4)
	near(t, "load transfer", (l.RearLoad-all.Rest.RearLoad)/lbf, 628.571, 5e-4)
	as, _ := v.AntiSquat(p)
	near(t, "anti-squat", 100*as, 114.256, 5e-4)
	near(t, "share through the bars", l.BarsShare, as, 1e-12)
}

// The whole-car anti-squat condition of zero rear deflection, e/d = h/l:
// Barton & Fieldhouse, Automotive Chassis Engineering, section 3.11.
func TestFullAntiSquatLeavesTheSpringAlone(t *testing.T) {
	const l, h = 2.6, 0.5
	g := wheels(l)
	// Both bars aim at (1, h/l): heights over x are chosen by similar triangles.
	aim := r2.Vec{X: 1, Y: h / l}
	along := func(from r2.Vec, part float64) r2.Vec {
		return r2.Add(from, r2.Scale(part, r2.Sub(aim, from)))
	}
	axle := r2.Vec{Y: g.RearRadius}
	g.ChassisUpper = along(r2.Add(axle, g.HousingUpper), 0.5)
	g.ChassisLower = along(r2.Add(axle, g.HousingLower), 0.6)
	v := plain(g, 1000, r2.Vec{X: 1.3, Y: h})
	v.Grip = 1.2
	p := pose(t, g, 0, 0)
	all := v.Solve(p)
	near(t, "spring change", all.Hooked.Spring-all.Rest.Spring, 0, 1e-8)
	near(t, "share", all.Hooked.BarsShare, 1, 1e-12)
	if all.Hooked.Thrust < 1000 {
		t.Errorf("thrust %v N is too small for a check", all.Hooked.Thrust)
	}
}

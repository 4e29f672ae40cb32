package statics

import (
	"math"
	"testing"

	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch = 0.0254
	lb   = 0.45359237
	lbf  = lb * 9.80665
	lbft = lbf * 12 * inch
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

// whole describes a car by its whole mass and center of gravity.
func whole(v Vehicle, mass float64, cg r2.Vec, g linkage.Geometry) Vehicle {
	v.SprungMass = mass - v.UnsprungRear - v.UnsprungFront
	m := r2.Scale(mass, cg)
	m = r2.Sub(m, r2.Vec{Y: v.UnsprungRear * g.RearRadius})
	m = r2.Sub(m, r2.Scale(v.UnsprungFront, r2.Vec{X: g.Wheelbase, Y: g.FrontRadius}))
	v.SprungCG = r2.Scale(1/v.SprungMass, m)
	v.RearRadius, v.FrontRadius = g.RearRadius, g.FrontRadius
	return v
}

// reference is a 2,650 lb door car with 1,400 lb-ft.
func reference() (linkage.Geometry, Vehicle) {
	g := linkage.Geometry{
		ChassisUpper: r2.Vec{X: 22.5 * inch, Y: 17 * inch}, ChassisLower: r2.Vec{X: 25.5 * inch, Y: 11.5 * inch},
		HousingUpper: r2.Vec{X: 2.5 * inch, Y: 6.5 * inch}, HousingLower: r2.Vec{X: 2.5 * inch, Y: -5 * inch},
		Wheelbase: 105 * inch, RearRadius: 16 * inch, FrontRadius: 12.5 * inch,
	}
	return g, whole(Vehicle{
		UnsprungRear: 390 * lb, UnsprungFront: 130 * lb,
		RearSpinInertia: 6.2, Grip: 2.6,
		AxleTorque:        1400 * lbft * 1.7 * 1.8 * 4.1 * 0.9,
		SpringChassisSide: r2.Vec{Y: 40 * inch},
	}, 2650*lb, r2.Vec{X: 52.5 * inch, Y: 19.5 * inch}, g)
}

func pose(t *testing.T, g linkage.Geometry, travel, front float64) *linkage.Pose {
	t.Helper()
	l, err := linkage.New(g)
	if err != nil {
		t.Fatal(err)
	}
	p, err := l.Pose(travel, front)
	if err != nil {
		t.Fatal(err)
	}
	return &p
}

// The worked reference point of the design, given to the printed digits.
func TestReferencePoint(t *testing.T) {
	g, v := reference()
	p := pose(t, g, 0, 0)
	ic, _ := p.InstantCenter().Point()
	near(t, "IC x [in]", ic.X/inch, 41.25, 0.005)
	near(t, "IC z [in]", ic.Y/inch, 11.84, 0.005)
	as, _ := v.AntiSquat(p)
	near(t, "anti-squat [%]", 100*as, 154.6, 0.05)
	l := v.Solve(p)
	near(t, "hooked thrust [lbf]", l.Hooked.Thrust/lbf, 6825, 0.5)
	near(t, "hooked torque [lb-ft]", l.Hooked.AxleTorque/lbft, 9384, 0.5)
	near(t, "hooked upper [lbf]", l.Hooked.Upper.Tension/lbf, 3524, 0.5)
	near(t, "hooked lower [lbf]", l.Hooked.Lower.Tension/lbf, -6309, 0.5)
	near(t, "hit thrust [lbf]", l.Hit.Thrust/lbf, 6890, 0.5)
	near(t, "hit torque [lb-ft]", l.Hit.AxleTorque/lbft, 15808, 0.5)
	near(t, "hit upper [lbf]", l.Hit.Upper.Tension/lbf, 6777, 0.5)
	near(t, "hit lower [lbf]", l.Hit.Lower.Tension/lbf, -9475, 0.5)
	if l.Hit.Governs != FrontWheelsOff || l.Hooked.Governs != Grip || l.Rest.Governs != AtRest {
		t.Errorf("limits: hit %v, hooked %v, rest %v", l.Hit.Governs, l.Hooked.Governs, l.Rest.Governs)
	}
}

package plotting_test

import (
	"context"

	"bowline/model/analysis"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// results are analyses of random valid cars, from ordinary to absurd.
var results = rapid.Custom(randomResult).Filter(func(r random) bool { return r.Result != nil })

// random keeps a result from being written out where a test fails.
type random struct{ *analysis.Result }

// GoString implements fmt.GoStringer.
func (r random) GoString() string {
	if r.Result == nil {
		return "no car"
	}
	return r.Car.Body.Name
}

// randomResult analyzes a random car, and returns none for one that cannot be.
func randomResult(t *rapid.T) random {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	point := func(name string, x0, x1, z0, z1 float64) r2.Vec {
		return in(f(name+" x", x0, x1), f(name+" z", z0, z1))
	}
	c := saltgrass()
	c.Chassis.Upper[2], c.Chassis.Lower[1] = point("chassis upper", 8, 60, 12, 34), point("chassis lower", 8, 60, 4, 20)
	c.Housing.Upper[0], c.Housing.Lower[0] = point("housing upper", -4, 5, 1, 10), point("housing lower", -4, 5, -10, -1)
	c.Springs.RearAxleMount, c.Springs.RearChassisMount = point("axle mount", -8, 8, -5, 5), point("chassis mount", -20, 20, 25, 45)
	c.Springs.RearDroop, c.Springs.RearBump = f("droop", 0, 6)*inch, f("bump", 0, 6)*inch
	c.UpperBar.OD, c.LowerBar.OD = f("upper od", 0.3, 4)*inch, f("lower od", 0.3, 4)*inch
	c.UpperBar.Wall, c.LowerBar.Wall = c.UpperBar.OD*f("upper wall", 0.04, 0.5), c.LowerBar.OD*f("lower wall", 0.04, 0.5)
	c.Drive.Torque = f("torque", 1, 4000) * lbft
	c.Tires.Grip = f("grip", 0.1, 5)
	c.Check.Factor, c.Check.Crookedness = f("factor", 1, 10), f("crookedness", 0, 0.05)
	c.Check.TargetAntiSquat = [2]float64{f("least squat", -2, 1), f("greatest squat", 1.01, 9)}
	if rapid.Bool().Draw(t, "straight bars") {
		c.Check.Crookedness = 0
	}
	if rapid.Bool().Draw(t, "parallel bars") {
		c.Chassis.Upper[2] = r2.Add(c.Chassis.Lower[1], r2.Sub(c.Housing.Upper[0], c.Housing.Lower[0]))
	}
	if len(c.Validate(tubes, units.US)) > 0 {
		return random{}
	}
	r, err := analysis.Run(context.Background(), c, tubes, analysis.Options{})
	if err != nil {
		return random{}
	}
	return random{r}
}

// copied returns a copy of a result whose stations may be changed.
func copied(r *analysis.Result) *analysis.Result {
	q := *r
	q.Travel = append([]analysis.Station(nil), r.Travel...)
	q.Car = r.Car.Clone()
	return &q
}

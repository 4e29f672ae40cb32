package car

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"bowline/model/column"
	"bowline/model/linkage"
	"bowline/model/stock"
	"bowline/model/units"
)

// CheckHoles returns everything that Validate would have against a setup with
// these holes in a car that is sound otherwise: that its bars have a length and
// hold the axle over the travel allowed, that the locator reaches across, that no
// rear spring has to pull at ride height, and that the bars' capacity,
// which is c's, can be computed. A problem of the holes
// themselves has no Path; Validate puts the setup's there. It panics when a hole
// does not exist.
func (c *Car) CheckHoles(h Holes, capacity Capacity, s units.System) []Problem {
	with := *c
	with.Setups = []Setup{{Holes: h}}
	v := &validator{car: &with, units: s}
	l, err := with.Linkage(0)
	if err != nil {
		v.add("", err.Error(), "choose other holes")
		return v.problems
	}
	v.travel(l)
	v.sideways()
	v.rearSprings(l)
	for _, pair := range Pairs {
		v.strength(pair, capacity, pair.Length(l))
	}
	return v.problems
}

// linkages checks the holes of each setup.
func (v *validator) linkages(lib stock.Library) {
	capacity := v.car.Capacity(lib)
	for i := range v.car.Setups {
		setup := &v.car.Setups[i]
		for _, p := range v.car.CheckHoles(setup.Holes, capacity, v.units) {
			if p.Path == "" {
				p.Path, p.Wrong = fmt.Sprintf("setup.%d", i), fmt.Sprintf("in %q %s", setup.Name, p.Wrong)
			}
			// What holds for all setups is said once.
			if !slices.Contains(v.problems, p) {
				v.problems = append(v.problems, p)
			}
		}
	}
}

// travel checks that a linkage closes from full droop to full bump.
func (v *validator) travel(l *linkage.Linkage) {
	travel := v.car.Springs
	for _, end := range []struct {
		key string
		q   float64
	}{{"rear_droop", -travel.RearDroop}, {"rear_bump", travel.RearBump}} {
		_, err := l.Pose(end.q, 0)
		var c *linkage.ClosureError
		if errors.As(err, &c) {
			v.add("", fmt.Sprintf("the bars do not reach the %s of %s: they close only to %s", strings.ReplaceAll(end.key, "_", " "), v.length(math.Abs(end.q)), v.units.Format(units.Length, math.Abs(c.Reached))),
				"choose other holes or allow less springs."+end.key)
		}
	}
}

// sideways checks that the locator of the only setup reaches across the car.
func (v *validator) sideways() {
	chassis, housing := v.car.LocatorEnds(0)
	if across := math.Abs(chassis.Y - housing.Y); across < LeastSideways {
		v.add("", "the locator reaches only "+v.units.Format(units.Length, across)+" across the car",
			"put locator.chassis and locator.housing at least "+bound(v.units, units.Length, LeastSideways)+" apart in y")
	}
}

// rearSprings checks that both rear springs push in the only setup while the car
// stands at ride height: a launch starts there.
func (v *validator) rearSprings(l *linkage.Linkage) {
	flat, err := v.car.flatRest(l)
	if err != nil {
		return // Nothing holds the axle: there is no launch, which says so.
	}
	s := &v.car.Body.Scales
	switch {
	case flat.Spring <= 0:
		v.pulls(-flat.Spring)
		return
	case !s.Given:
		return // Both push alike.
	}
	r, err := v.car.rest(0, l)
	if err != nil {
		return
	}
	// How much less than the mean one of them pushes is in proportion to how far the
	// readings of the scales are apart.
	mean := (r.RearSpring[0] + r.RearSpring[1]) / 2
	if less := mean - min(r.RearSpring[0], r.RearSpring[1]); less > 0 {
		apart := math.Abs(s.LeftRear - s.RightRear)
		v.apart("rear", apart, apart*mean/less)
	}
}

// pulls adds the problem that the rear springs would have to pull together with a
// force [N]: that of their mounts when these are upside down, else that of the holes.
func (v *validator) pulls(force float64) {
	s := &v.car.Springs
	wrong := "the rear springs would have to pull " + v.units.Format(units.Force, force) + " to hold the car at ride height"
	if foot := v.car.Tires.RearRadius + s.RearAxleMount.Y; s.RearChassisMount.Y <= foot {
		v.add("springs.rear_chassis_mount", wrong, "put it higher than the mount on the axle, which is "+v.units.Format(units.Length, foot)+" above the ground")
		return
	}
	v.add("", wrong, "choose other holes or put the springs' mounts nearer to the axle")
}

// strength checks that the column formulas hold for one pair of bars of a length.
func (v *validator) strength(pair Pair, capacity Capacity, length float64) {
	_, err := capacity(pair, length)
	var wrong column.Problems
	if !errors.As(err, &wrong) {
		return
	}
	for _, w := range wrong {
		at := ""
		switch w.Field {
		case "od", "wall", "material":
			at = pair.Table() + "." + w.Field
		case "crookedness", "factor", "column":
			at = "check." + w.Field
		}
		v.add(at, fmt.Sprintf("the %s's %s %s", pair, w.Field, w.Wrong), w.Right)
	}
}

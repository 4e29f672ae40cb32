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
// hold the axle over the travel allowed, that the locator reaches across, and
// that the bars' capacity, which is c's, can be computed. A problem of the holes
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
	if across := math.Abs(chassis.Y - housing.Y); across < leastSideways {
		v.add("", "the locator reaches only "+v.units.Format(units.Length, across)+" across the car",
			"put locator.chassis and locator.housing at least "+bound(v.units, units.Length, leastSideways)+" apart in y")
	}
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

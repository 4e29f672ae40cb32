package car

import (
	"reflect"

	"gonum.org/v1/gonum/spatial/r2"
)

// BarLength returns the distance between the holes that a pair's bars run
// between at ride height: their length pin to pin without preload [m]. It
// panics when one of the holes does not exist.
func (c *Car) BarLength(p Pair, h Holes) float64 {
	chassis, housing := p.Rows()
	front := (*chassis.In(c))[*chassis.Of(&h)]
	rear := r2.Add(r2.Vec{Y: c.Tires.RearRadius}, (*housing.In(c))[*housing.Of(&h)])
	return r2.Norm(r2.Sub(front, rear))
}

// FittedLength returns the length that a pair's threads were counted at, which
// is that in the first setup when none is given [m].
func (c *Car) FittedLength(p Pair) float64 {
	if fitted := p.Threads(c).Fitted; fitted != 0 {
		return fitted
	}
	return c.BarLength(p, c.Setups[0].Holes)
}

// KeepFitted records the lengths that bars were fitted at when an edit has
// led from before to c by moving bars to other holes. Without that, a length
// that is not given would follow the first setup, as if choosing holes or
// sorting setups had made new bars. An edit that moves holes or the axle is one
// of the design: bars are then still to be made. Gone back to the holes of
// before, the length is again not given.
func (c *Car) KeepFitted(before *Car) {
	if len(c.Setups) == 0 || c.Tires.RearRadius != before.Tires.RearRadius ||
		!reflect.DeepEqual(c.Chassis, before.Chassis) || !reflect.DeepEqual(c.Housing, before.Housing) {
		return
	}
	for _, p := range Pairs {
		was := before.FittedLength(p)
		to := &p.Threads(c).Fitted
		if p.Threads(before).Fitted != 0 || *to != 0 && *to != was {
			continue // it is given
		}
		*to = 0
		if h := c.Setups[0].Holes; c.hasHoles(h) && c.BarLength(p, h) != was {
			*to = was
		}
	}
}

// hasHoles reports whether all four holes exist.
func (c *Car) hasHoles(h Holes) bool {
	for _, row := range Rows {
		if i := *row.Of(&h); i < 0 || i >= len(*row.In(c)) {
			return false
		}
	}
	return true
}

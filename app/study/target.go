package study

import (
	"math"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// leastTarget is the least width and height that the target for the instant
// center is dragged to, in shop units.
var leastTarget = map[units.System]float64{units.US: 0.25, units.SI: 6.5}

// MoveTarget moves the target for the instant center from where it was in
// before: its rear lower corner by low, its front upper one by high [m], both
// rounded to the grid. Equal distances move it as a whole. An edge that moves
// alone stops before it meets the other. A target beyond what a car file takes
// is refused.
func (s *Study) MoveTarget(before *car.Car, low, high r2.Vec) []car.Problem {
	low, high = s.rounded(low), s.rounded(high)
	k := before.Check
	ahead, above := s.shifted(k.TargetICX, low.X, high.X), s.shifted(k.TargetICZ, low.Y, high.Y)
	return s.doc.Apply("Move target", func(c *car.Car) {
		c.Check.TargetICX, c.Check.TargetICZ = ahead, above
	})
}

// shifted moves the ends of an interval [m].
func (s *Study) shifted(ends [2]float64, low, high float64) [2]float64 {
	if low == 0 && high == 0 {
		return ends
	}
	u := s.Units()
	was := [2]float64{u.Exact(units.Length, ends[0]), u.Exact(units.Length, ends[1])}
	by := [2]float64{u.Exact(units.Length, low), u.Exact(units.Length, high)}
	to := [2]float64{was[0] + by[0], was[1] + by[1]}
	// A target that was typed narrower may stay as it is.
	least := math.Min(leastTarget[u], was[1]-was[0])
	switch {
	case low == high || to[1]-to[0] >= least:
	case low == 0:
		to[1] = to[0] + least
	default:
		to[0] = to[1] - least
	}
	// An end that does not move keeps its digits.
	for i := range ends {
		if x := math.Round(to[i]*1e6) / 1e6; to[i] != was[i] {
			ends[i] = u.ToSI(units.Length, x)
		}
	}
	return ends
}

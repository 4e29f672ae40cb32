package linkage

import (
	"fmt"
	"math"
)

// AdjustmentError says that bars of other lengths cannot be put in.
type AdjustmentError struct {
	Upper, Lower               float64 // lengths asked for [m]
	ReachedUpper, ReachedLower float64 // farthest lengths on the way to them at which the bars meet their holes [m]
}

// Error names the lengths asked for and those reached in millimeters.
func (e *AdjustmentError) Error() string {
	return fmt.Sprintf("with an upper bar of %.1f mm and a lower bar of %.1f mm the axle cannot stay at its height: the bars close only as far as %.1f mm and %.1f mm",
		e.Upper*1e3, e.Lower*1e3, e.ReachedUpper*1e3, e.ReachedLower*1e3)
}

// Adjusted returns where the axle assembly goes at ride height, wheel centers
// kept at their height, when the bars have the lengths upper and lower [m]
// instead of l's own: the axle's fore-aft shift, forward positive [m], and the
// housing's turn, nose-up positive [rad]. Both lengths change together from
// l's own in small steps, so that the assembly branch never jumps; the bars
// keep them to 1e-11 m.
//
// It refuses lengths that are no number or shorter than MinLength
// (ErrShortBar) and those at which, or before which, the bars no longer close
// or hold the axle (*AdjustmentError).
func (l *Linkage) Adjusted(upperLength, lowerLength float64) (shift, turn float64, err error) {
	if !(upperLength >= MinLength) || !(lowerLength >= MinLength) {
		return 0, 0, ErrShortBar
	}
	byUpper, byLower := upperLength-l.UpperLength(), lowerLength-l.LowerLength()
	refusal := &AdjustmentError{Upper: upperLength, Lower: lowerLength, ReachedUpper: l.UpperLength(), ReachedLower: l.LowerLength()}
	change := math.Max(math.Abs(byUpper), math.Abs(byLower))
	switch {
	case change == 0:
		return 0, 0, nil
	case math.IsInf(change, 1):
		return 0, 0, refusal
	}
	c := l.overLengths(byUpper/change, byLower/change)
	end, ok := c.follow(c.start(), change)
	if !ok || !(end.hold() > dead) {
		refusal.ReachedUpper += c.growth[upper] * end.at.Y
		refusal.ReachedLower += c.growth[lower] * end.at.Y
		return 0, 0, refusal
	}
	return end.at.X, end.at.Z / l.scale, nil
}

// Sensitivity is the derivative of the axle's place at ride height by a bar
// length.
type Sensitivity struct {
	Shift float64 // of the axle, forward positive [m/m]
	Turn  float64 // of the housing, nose-up positive [rad/m]
}

// PerLength returns the sensitivities of the axle's place at ride height, wheel
// centers kept at their height, to the lengths of the upper and of the lower
// bars. With the unit vector u from a bar's chassis hole to its housing hole
// and the housing hole's arm a from the axle, the length grows by
//
//	u_x shift + (a_x u_z − a_z u_x) turn
//
// and the sensitivities are the columns of the inverse of these two equations.
func (l *Linkage) PerLength() (byUpper, byLower Sensitivity) {
	c := l.overTravel()
	m := c.measure(l.ride.at)
	sensitivity := func(growth [2]float64) Sensitivity {
		move := m.level(growth)
		return Sensitivity{Shift: move.X, Turn: move.Z / l.scale}
	}
	return sensitivity([2]float64{upper: 1}), sensitivity([2]float64{lower: 1})
}

// Package linkage finds where a four-link axle goes: the exact side-view
// position over its travel, the travel range in which the bars close, and the
// instant center.
//
// Bars are rigid and pinned; tires keep their loaded radius. A side-view point
// is an r2.Vec with X forward and Y up, in the chassis frame unless it says
// otherwise. Rotations are nose-up positive, that is from X toward Y.
package linkage

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Geometry is the four-link in side view at ride height.
type Geometry struct {
	ChassisUpper r2.Vec  // front end of the upper bars, chassis frame [m]
	ChassisLower r2.Vec  // front end of the lower bars, chassis frame [m]
	HousingUpper r2.Vec  // rear end of the upper bars, from the axle centerline [m]
	HousingLower r2.Vec  // rear end of the lower bars, from the axle centerline [m]
	Wheelbase    float64 // [m]
	RearRadius   float64 // loaded tire radius [m]
	FrontRadius  float64 // loaded tire radius [m]
}

const (
	// MinLength is the shortest bar accepted [m]: less is a typing mistake,
	// and the direction of a bar without length means nothing.
	MinLength = 0.01
	// lengthTolerance is the largest miss of a bar length in a returned
	// position [m], a hundredth of what the package promises.
	lengthTolerance = 1e-11
	// dead is the sine of the angle between the two bars' constraints below
	// which a position counts as a dead point. At the end of a travel it is
	// reached within a few nanometers, at a change point within a tenth of a
	// millimeter, and so before rounding could choose the way on.
	dead = 3e-5
)

var (
	// ErrShortBar is returned for a bar shorter than MinLength.
	ErrShortBar = errors.New("the bar has no length: its chassis hole lies on its housing hole")
	// ErrDeadPoint is returned when the bars do not hold the axle at ride
	// height: the instant center lies straight above or below the axle, so a
	// rise of the axle needs an endless turn of the housing.
	ErrDeadPoint = errors.New("the bars do not hold the axle at ride height: their lines meet straight above or below the axle centerline, or are one line")
)

// ClosureError says that a travel cannot be reached.
type ClosureError struct {
	Travel  float64 // asked for [m]
	Reached float64 // farthest travel toward it at which both bars still meet their holes [m]
}

// Error names the travel and the limit in millimeters.
func (e *ClosureError) Error() string {
	return fmt.Sprintf("the bars do not reach a travel of %.1f mm: the linkage closes only to %.1f mm", e.Travel*1e3, e.Reached*1e3)
}

// Linkage is a four-link with fixed bar lengths. It is immutable.
type Linkage struct {
	geometry     Geometry
	upper, lower float64 // bar lengths [m]
}

// New fixes the bar lengths so that the linkage closes at ride height with the
// axle centerline above the origin and the housing not turned. It refuses bars
// shorter than MinLength (ErrShortBar) and a linkage that is at a dead point
// there (ErrDeadPoint).
func New(g Geometry) (*Linkage, error) {
	axle := r2.Vec{Y: g.RearRadius}
	l := &Linkage{
		geometry: g,
		upper:    r2.Norm(r2.Sub(g.ChassisUpper, r2.Add(axle, g.HousingUpper))),
		lower:    r2.Norm(r2.Sub(g.ChassisLower, r2.Add(axle, g.HousingLower))),
	}
	if !(l.upper >= MinLength) || !(l.lower >= MinLength) {
		return nil, ErrShortBar
	}
	if e := l.evaluate(state{z: g.RearRadius}); !(e.sine(l.scale()) > dead) {
		return nil, ErrDeadPoint
	}
	return l, nil
}

// Geometry returns the geometry that l was made from.
func (l *Linkage) Geometry() Geometry { return l.geometry }

// UpperLength returns the upper bars' length, pin to pin [m].
func (l *Linkage) UpperLength() float64 { return l.upper }

// LowerLength returns the lower bars' length, pin to pin [m].
func (l *Linkage) LowerLength() float64 { return l.lower }

// scale is the length that makes a turn of the housing comparable to a shift.
func (l *Linkage) scale() float64 { return (l.upper + l.lower) / 2 }

// state is a position of the axle assembly in the chassis frame.
type state struct {
	x, z float64 // axle centerline [m]
	turn float64 // housing rotation, nose-up positive [rad]
}

// gradient is the derivative of one bar's stretch by the state.
type gradient struct {
	x, z float64 // [1]
	turn float64 // [m/rad]
}

// evaluation is how far both bars miss their lengths in a state.
type evaluation struct {
	stretchUpper, stretchLower float64 // distance between the holes less the bar length [m]
	upper, lower               gradient
	housingUpper, housingLower r2.Vec // housing holes, chassis frame [m]
}

// evaluate places the housing in state s and measures both bars.
func (l *Linkage) evaluate(s state) evaluation {
	sin, cos := math.Sincos(s.turn)
	place := func(h r2.Vec) (arm, hole r2.Vec) {
		arm = r2.Vec{X: cos*h.X - sin*h.Y, Y: sin*h.X + cos*h.Y}
		return arm, r2.Vec{X: s.x + arm.X, Y: s.z + arm.Y}
	}
	measure := func(arm, hole, chassis r2.Vec, length float64) (float64, gradient) {
		d := r2.Sub(hole, chassis)
		n := math.Sqrt(d.X*d.X + d.Y*d.Y)
		ux, uz := d.X/n, d.Y/n
		return n - length, gradient{x: ux, z: uz, turn: arm.X*uz - arm.Y*ux}
	}
	var e evaluation
	var armUpper, armLower r2.Vec
	armUpper, e.housingUpper = place(l.geometry.HousingUpper)
	armLower, e.housingLower = place(l.geometry.HousingLower)
	e.stretchUpper, e.upper = measure(armUpper, e.housingUpper, l.geometry.ChassisUpper, l.upper)
	e.stretchLower, e.lower = measure(armLower, e.housingLower, l.geometry.ChassisLower, l.lower)
	return e
}

// det is the determinant of the stretches' derivative by shift and turn; it
// changes sign where the axle's height has an extreme, the end of the travel.
func (e *evaluation) det() float64 { return e.upper.x*e.lower.turn - e.lower.x*e.upper.turn }

// sine is the sine of the angle between the bars' constraints, with turns made
// lengths by a scale [m].
func (e *evaluation) sine(scale float64) float64 {
	upper, lower := e.upper.turn/scale, e.lower.turn/scale
	return math.Abs(e.det()/scale) / math.Sqrt((e.upper.x*e.upper.x+upper*upper)*(e.lower.x*e.lower.x+lower*lower))
}

// solve returns the shift and turn that change the stretches by (u, w).
func (e *evaluation) solve(u, w float64) (dx, dturn float64) {
	d := e.det()
	return (u*e.lower.turn - w*e.upper.turn) / d, (e.upper.x*w - e.lower.x*u) / d
}

// closed tells whether both bars have their length within lengthTolerance.
func (e *evaluation) closed() bool {
	return math.Abs(e.stretchUpper) <= lengthTolerance && math.Abs(e.stretchLower) <= lengthTolerance
}

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
	"gonum.org/v1/gonum/spatial/r3"
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

// MinLength is the shortest bar accepted [m]: less is a typing mistake, and the
// direction of a bar without length means nothing.
const MinLength = 0.01

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
	geometry Geometry
	bars     [2]bar
	scale    float64 // mean bar length, which makes the housing's turn comparable to a shift [m]
	branch   float64 // which of the two assemblies: the side of the gradients' cross product that paths follow, 1 or −1
	ride     place   // ride height, on the path over travel
}

// The bars of a linkage.
const (
	upper = iota
	lower
)

// bar is one pair of bars, which are alike in side view.
type bar struct {
	chassis r2.Vec  // front hole, chassis frame [m]
	housing r2.Vec  // rear hole, from the axle centerline with the housing not turned [m]
	length  float64 // [m]
}

// New fixes the bar lengths so that the linkage closes at ride height with the
// axle centerline above the origin and the housing not turned. It refuses bars
// shorter than MinLength (ErrShortBar) and a linkage that is at a dead point
// there (ErrDeadPoint).
func New(g Geometry) (*Linkage, error) {
	l := &Linkage{geometry: g, bars: [2]bar{
		upper: {chassis: g.ChassisUpper, housing: g.HousingUpper},
		lower: {chassis: g.ChassisLower, housing: g.HousingLower},
	}}
	axle := r2.Vec{Y: g.RearRadius}
	for i := range l.bars {
		b := &l.bars[i]
		b.length = r2.Norm(r2.Sub(b.chassis, r2.Add(axle, b.housing)))
		if !(b.length >= MinLength) {
			return nil, ErrShortBar
		}
		l.scale += b.length / 2
	}
	c := l.overTravel()
	l.branch = math.Copysign(1, c.measure(r3.Vec{}).cross.Y)
	if l.ride = c.start(); !(l.ride.hold() > dead) {
		return nil, ErrDeadPoint
	}
	return l, nil
}

// Geometry returns the geometry that l was made from.
func (l *Linkage) Geometry() Geometry { return l.geometry }

// UpperLength returns the upper bars' length, pin to pin [m].
func (l *Linkage) UpperLength() float64 { return l.bars[upper].length }

// LowerLength returns the lower bars' length, pin to pin [m].
func (l *Linkage) LowerLength() float64 { return l.bars[lower].length }

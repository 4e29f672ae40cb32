// Package around shows the car from above, from behind and from any side, with the true
// positions of a launch: roll and twist of the axle, four bars with what each carries, the
// forces at the brackets and the driveshaft's twist.
package around

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// From is where the car is looked at from.
type From int

// The views.
const (
	Above  From = iota // the car's nose to the right
	Behind             // its right side to the right
	Around             // from a side that a drag turns
)

// Viewpoint is a view of a study. The view around the car is looked at from the rear and the
// right at first.
type Viewpoint struct {
	study   *study.Study
	from    From
	azimuth float64 // of the eye, from ahead to the left [rad]
	height  float64 // of the eye over the horizon [rad]
	parts   parts.Builder
	ghost   parts.Builder // of a setup that the one shown is held against
	stance  parts.Stance
	fits    []scene.Fit
	sights  [1]r3.Vec
}

// degree is an angle [rad].
const degree = math.Pi / 180

// Where the view around the car is looked at from first [rad].
const (
	firstAzimuth = -142 * degree
	firstHeight  = 20 * degree
)

// The fits, by their place among Fits.
const (
	FitBars = iota // the four-link with the rear tires
	FitCar         // the whole car
)

// New returns a view of a study.
func New(s *study.Study, from From) *Viewpoint {
	v := &Viewpoint{study: s, from: from, azimuth: firstAzimuth, height: firstHeight}
	v.fits = []scene.Fit{
		FitBars: {Key: "f", Framing: v.framing(v.linkBox)},
		FitCar:  {Key: "c", Framing: v.framing(v.carBox)},
	}
	return v
}

// Plane implements scene.Viewpoint.
func (v *Viewpoint) Plane() scene.Plane {
	switch v.from {
	case Above:
		return scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Across: "x", Upright: "y"}
	case Behind:
		return scene.Plane{Right: r3.Vec{Y: -1}, Up: r3.Vec{Z: 1}, Across: "right", Upright: "up"}
	}
	sinA, cosA := math.Sincos(v.azimuth)
	sinH, cosH := math.Sincos(v.height)
	eye := r3.Vec{X: cosH * cosA, Y: cosH * sinA, Z: sinH}
	right := r3.Vec{X: -sinA, Y: cosA}
	return scene.Plane{Right: right, Up: r3.Cross(eye, right), Origin: v.pivot()}
}

// pivot is the point that the view turns about: the middle of the four-link.
func (v *Viewpoint) pivot() r3.Vec {
	c := v.study.Document().Car()
	return r3.Vec{X: 0.12 * c.Body.Wheelbase, Z: c.Tires.RearRadius}
}

// Fits implements scene.Viewpoint.
func (v *Viewpoint) Fits() []scene.Fit { return v.fits }

// linkBox are two corners of what holds the rear tires and the four-link.
func (v *Viewpoint) linkBox() (low, high r3.Vec) {
	c := v.study.Document().Car()
	rr, half := c.Tires.RearRadius, 0.5*c.Body.TrackRear+0.4*c.Tires.RearRadius
	ahead := rr
	for _, row := range car.Rows {
		for _, h := range *row.In(c) {
			if row.OnChassis() {
				ahead = math.Max(ahead, h.X+6*units.Inch)
			}
		}
	}
	return r3.Vec{X: -rr, Y: -half}, r3.Vec{X: ahead, Y: half, Z: 2.1 * rr}
}

// carBox are two corners of what holds the whole car.
func (v *Viewpoint) carBox() (low, high r3.Vec) { return parts.Box(v.study.Document().Car()) }

// framing fits the view to a box.
func (v *Viewpoint) framing(box func() (low, high r3.Vec)) func(width, height float64) scene.Framing {
	return func(width, height float64) scene.Framing {
		plane := v.Plane()
		a, b := box()
		low, high := r2.Vec{X: math.Inf(1), Y: math.Inf(1)}, r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
		for _, x := range [...]float64{a.X, b.X} {
			for _, y := range [...]float64{a.Y, b.Y} {
				for _, z := range [...]float64{a.Z, b.Z} {
					p := plane.On(r3.Vec{X: x, Y: y, Z: z})
					low.X, low.Y, high.X, high.Y = math.Min(low.X, p.X), math.Min(low.Y, p.Y), math.Max(high.X, p.X), math.Max(high.Y, p.Y)
				}
			}
		}
		v.sights[0] = r3.Vec{Z: v.study.Document().Car().Tires.RearRadius}
		return scene.Framing{View: scene.Fitted(plane, width, height, low, high), Sights: v.sights[:], Of: int(v.from)}
	}
}

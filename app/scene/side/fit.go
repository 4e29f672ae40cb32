package side

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// centerReach is how far beyond the chassis bracket a fitted view follows the
// instant center [m].
const centerReach = 45 * units.Inch

// nearCG is how far beyond the rest a fitted view follows the center of gravity
// [m].
const nearCG = 6 * units.Inch

// ViewOfBars returns the view that shows rear tire, brackets and, where it is not
// far off, the instant center.
func ViewOfBars(width, height float64, r *analysis.Result) scene.View {
	low, high := linkCorners(r)
	return scene.Fitted(Plane, width, height, low, high)
}

// ViewOfTarget returns the view that shows, besides what ViewOfBars does, the target
// for the instant center. What is far off does not make the car small: the part
// shown is at most three times as wide and high.
func ViewOfTarget(width, height float64, r *analysis.Result) scene.View {
	return ViewOfCloud(width, height, r, nil)
}

// ViewOfCloud returns the view that shows, besides what ViewOfTarget does, most of the
// dots of a cloud that are no farther off than that.
func ViewOfCloud(width, height float64, r *analysis.Result, c *Cloud) scene.View {
	low, high := linkCorners(r)
	size := r2.Sub(high, low)
	least := r2.Sub(low, r2.Vec{X: 0.5 * size.X, Y: 0.25 * size.Y}) // below the ground there is little to see
	greatest := r2.Add(high, r2.Scale(1.5, size))
	grow := func(p r2.Vec) {
		p = r2.Vec{X: math.Max(least.X, math.Min(greatest.X, p.X)), Y: math.Max(least.Y, math.Min(greatest.Y, p.Y))}
		low, high = grown(low, high, p)
	}
	for _, p := range targetCorners(r.Car) {
		grow(p)
	}
	if from, to, ok := c.bounds(least, greatest); ok {
		grow(from)
		grow(to)
	}
	return scene.Fitted(Plane, width, height, low, high)
}

// grown returns the corners of a box that takes in a point.
func grown(low, high, p r2.Vec) (r2.Vec, r2.Vec) {
	return r2.Vec{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}, r2.Vec{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
}

// linkCorners returns the corners of the box that ViewOfBars shows.
func linkCorners(r *analysis.Result) (low, high r2.Vec) {
	s := &r.Ride
	radius := r.Car.Tires.RearRadius
	low = r2.Vec{X: -radius, Y: -2 * units.Inch}
	high = r2.Vec{X: radius, Y: 2 * radius}
	grow := func(p r2.Vec) { low, high = grown(low, high, p) }
	for _, row := range car.Rows {
		for _, h := range *row.In(r.Car) {
			if row.OnChassis() {
				grow(s.Pose.Ground.Point(h))
			}
		}
	}
	if ic := s.InstantCenter; s.HasInstantCenter && ic.X > low.X-centerReach && ic.X < high.X+centerReach && ic.Y > low.Y-centerReach/3 && ic.Y < high.Y+centerReach/3 {
		grow(r2.Add(ic, r2.Vec{X: 6 * units.Inch}))
		grow(r2.Sub(ic, r2.Vec{X: 2 * units.Inch}))
	}
	// A center of gravity that would stand on the edge gets room too.
	if s.CG.X < high.X+nearCG {
		grow(r2.Add(s.CG, r2.Vec{X: 2 * units.Inch}))
	}
	return low, high
}

// ViewOfCar returns the view that shows the whole car, from the wheelie bar to the nose.
func ViewOfCar(width, height float64, r *analysis.Result) scene.View {
	low, high := parts.Box(r.Car)
	below := r2.Vec{Y: -2 * units.Inch}
	return scene.Fitted(Plane, width, height, r2.Add(flat(low), below), flat(high))
}

package scene

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// View maps the ground's frame to the screen. Screen points have X to the
// right and Y down from the top left corner [px].
type View struct {
	Width, Height float64 // of the picture [px]
	Scale         float64 // pixels per meter
	Middle        r2.Vec  // point of the ground's frame in the picture's middle [m]
}

// Limits of the zoom [px/m].
const (
	leastScale    = 20
	greatestScale = 40000
)

// Screen turns a point of the ground's frame into pixels.
func (v View) Screen(p r2.Vec) r2.Vec {
	return r2.Vec{X: v.Width/2 + (p.X-v.Middle.X)*v.Scale, Y: v.Height/2 - (p.Y-v.Middle.Y)*v.Scale}
}

// World turns pixels into a point of the ground's frame [m].
func (v View) World(p r2.Vec) r2.Vec {
	return r2.Vec{X: v.Middle.X + (p.X-v.Width/2)/v.Scale, Y: v.Middle.Y - (p.Y-v.Height/2)/v.Scale}
}

// Zoomed returns the view magnified by a factor about a point on screen, which
// stays where it is.
func (v View) Zoomed(factor float64, about r2.Vec) View {
	fixed := v.World(about)
	v.Scale = math.Max(leastScale, math.Min(greatestScale, v.Scale*factor))
	v.Middle = r2.Add(v.Middle, r2.Sub(fixed, v.World(about)))
	return v
}

// Panned returns the view moved so that what is drawn follows a pointer by d
// pixels.
func (v View) Panned(d r2.Vec) View {
	v.Middle = r2.Add(v.Middle, r2.Vec{X: -d.X / v.Scale, Y: d.Y / v.Scale})
	return v
}

// Resized returns the view for another picture size, with the same middle and
// scale.
func (v View) Resized(width, height float64) View {
	v.Width, v.Height = width, height
	return v
}

// margin is left free around what a view is fitted to [px].
const margin = 34

// centerDown is where the middle of what a view is fitted to stands in a picture
// with room to spare above and below: that part of the height from the top.
const centerDown = 0.6

// fitted returns a view of the given size that shows the box.
func fitted(width, height float64, low, high r2.Vec) View {
	v := View{Width: width, Height: height, Middle: r2.Scale(0.5, r2.Add(low, high))}
	across := math.Max(width-2*margin, 1) / math.Max(high.X-low.X, 0.01)
	upright := math.Max(height-2*margin, 1) / math.Max(high.Y-low.Y, 0.01)
	v.Scale = math.Max(leastScale, math.Min(greatestScale, math.Min(across, upright)))
	// What is left over in height goes above more than below.
	down := math.Min(centerDown*height, height-margin-(high.Y-low.Y)*v.Scale/2)
	v.Middle.Y += (down - height/2) / v.Scale
	return v
}

// centerReach is how far beyond the chassis bracket a fitted view follows the
// instant center [m].
const centerReach = 45 * units.Inch

// nearCG is how far beyond the rest a fitted view follows the center of gravity
// [m].
const nearCG = 6 * units.Inch

// FitLink returns the view that shows rear tire, brackets and, where it is not
// far off, the instant center.
func FitLink(width, height float64, r *analysis.Result) View {
	low, high := linkCorners(r)
	return fitted(width, height, low, high)
}

// FitTarget returns the view that shows, besides what FitLink does, the target
// for the instant center. What is far off does not make the car small: the part
// shown is at most three times as wide and high.
func FitTarget(width, height float64, r *analysis.Result) View {
	return FitCloud(width, height, r, nil)
}

// FitCloud returns the view that shows, besides what FitTarget does, most of the
// dots of a cloud that are no farther off than that.
func FitCloud(width, height float64, r *analysis.Result, c *Cloud) View {
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
	return fitted(width, height, low, high)
}

// grown returns the corners of a box that takes in a point.
func grown(low, high, p r2.Vec) (r2.Vec, r2.Vec) {
	return r2.Vec{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}, r2.Vec{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
}

// linkCorners returns the corners of the box that FitLink shows.
func linkCorners(r *analysis.Result) (low, high r2.Vec) {
	s := &r.Ride
	radius := r.Car.Tires.RearRadius
	low = r2.Vec{X: -0.45 * radius, Y: -2 * units.Inch}
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

// FitCar returns the view that shows both tires.
func FitCar(width, height float64, r *analysis.Result) View {
	t := r.Car.Tires
	ground := r.Ride.Pose.Ground
	return fitted(width, height,
		r2.Vec{X: -math.Max(t.RearRadius, r.Car.Launch.WheelieBar.Reach+wheelieWheel), Y: -2 * units.Inch},
		r2.Vec{X: ground.Wheelbase + t.FrontRadius, Y: math.Max(2*t.RearRadius, r.Ride.CG.Y)})
}

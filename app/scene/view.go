package scene

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Plane is the plane that a view projects onto, at right angles to it. Its
// points have the distances to the right and up from Origin, the rear contact point unless it
// is set [m].
type Plane struct {
	Right, Up       r3.Vec // unit vectors of the ground's frame, at right angles to each other
	Origin          r3.Vec // of the ground's frame, where the plane's own is [m]
	Across, Upright string // names of the axes that they lie along; empty in a view at an angle, which has no grid and no coordinates
}

// On returns where a point of the ground's frame falls on the plane [m].
func (p Plane) On(q r3.Vec) r2.Vec {
	q = r3.Sub(q, p.Origin)
	return r2.Vec{X: r3.Dot(p.Right, q), Y: r3.Dot(p.Up, q)}
}

// Eye returns the unit vector toward whoever looks at the plane.
func (p Plane) Eye() r3.Vec { return r3.Cross(p.Right, p.Up) }

// measured reports whether distances along both axes have names.
func (p Plane) measured() bool { return p.Across != "" && p.Upright != "" }

// View maps the ground's frame to the screen. Screen points have X to the
// right and Y down from the top left corner [px].
type View struct {
	Plane         Plane
	Width, Height float64 // of the picture [px]
	Scale         float64 // pixels per meter
	Middle        r2.Vec  // point of the plane in the picture's middle [m]
}

// Limits of the zoom [px/m].
const (
	leastScale    = 20
	greatestScale = 40000
)

// Screen turns a point of the ground's frame into pixels.
func (v View) Screen(p r3.Vec) r2.Vec { return v.screen(v.Plane.On(p)) }

// World turns pixels into a point of the ground's frame [m]: of those that are
// drawn there, the one on the plane through Origin.
func (v View) World(p r2.Vec) r3.Vec {
	q := v.onPlane(p)
	return r3.Add(v.Plane.Origin, r3.Add(r3.Scale(q.X, v.Plane.Right), r3.Scale(q.Y, v.Plane.Up)))
}

// screen turns a point of the plane into pixels.
func (v View) screen(p r2.Vec) r2.Vec {
	return r2.Vec{X: v.Width/2 + (p.X-v.Middle.X)*v.Scale, Y: v.Height/2 - (p.Y-v.Middle.Y)*v.Scale}
}

// onPlane turns pixels into a point of the plane [m].
func (v View) onPlane(p r2.Vec) r2.Vec {
	return r2.Vec{X: v.Middle.X + (p.X-v.Width/2)/v.Scale, Y: v.Middle.Y - (p.Y-v.Height/2)/v.Scale}
}

// Shows reports whether a point of the ground's frame is in the picture.
func (v View) Shows(p r3.Vec) bool {
	at := v.Screen(p)
	return at.X >= 0 && at.X <= v.Width && at.Y >= 0 && at.Y <= v.Height
}

// Zoomed returns the view magnified by a factor about a point on screen, which
// stays where it is.
func (v View) Zoomed(factor float64, about r2.Vec) View {
	fixed := v.onPlane(about)
	v.Scale = math.Max(leastScale, math.Min(greatestScale, v.Scale*factor))
	v.Middle = r2.Add(v.Middle, r2.Sub(fixed, v.onPlane(about)))
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

// Fitted returns a view of the given size that shows the box between two
// corners on a plane [m].
func Fitted(plane Plane, width, height float64, low, high r2.Vec) View {
	v := View{Plane: plane, Width: width, Height: height, Middle: r2.Scale(0.5, r2.Add(low, high))}
	across := math.Max(width-2*margin, 1) / math.Max(high.X-low.X, 0.01)
	upright := math.Max(height-2*margin, 1) / math.Max(high.Y-low.Y, 0.01)
	v.Scale = math.Max(leastScale, math.Min(greatestScale, math.Min(across, upright)))
	// What is left over in height goes above more than below, where above is up.
	part := centerDown
	if plane.Up.Z == 0 && plane.Up != (r3.Vec{}) {
		part = 0.5
	}
	down := math.Min(part*height, height-margin-(high.Y-low.Y)*v.Scale/2)
	v.Middle.Y += (down - height/2) / v.Scale
	return v
}

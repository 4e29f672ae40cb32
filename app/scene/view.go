package scene

import (
	"math"

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

// Fitted returns a view of the given size that shows the box.
func Fitted(width, height float64, low, high r2.Vec) View {
	v := View{Width: width, Height: height, Middle: r2.Scale(0.5, r2.Add(low, high))}
	across := math.Max(width-2*margin, 1) / math.Max(high.X-low.X, 0.01)
	upright := math.Max(height-2*margin, 1) / math.Max(high.Y-low.Y, 0.01)
	v.Scale = math.Max(leastScale, math.Min(greatestScale, math.Min(across, upright)))
	// What is left over in height goes above more than below.
	down := math.Min(centerDown*height, height-margin-(high.Y-low.Y)*v.Scale/2)
	v.Middle.Y += (down - height/2) / v.Scale
	return v
}

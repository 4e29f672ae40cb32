package scene

import (
	"image/color"
	"math"

	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// nearest returns how far a screen point is from the nearest dot of a swarm
// [px], the topmost of equals, and the index of its combination.
func (d *Drawn) nearest(at r2.Vec) (distance float64, index int) {
	best, which := math.Inf(1), -1
	for i := len(d.Points) - 1; i >= 0; i-- {
		if n := r2.Norm2(r2.Sub(at, d.Points[i])); n < best {
			best, which = n, i
		}
	}
	if which < 0 {
		return best, which
	}
	return math.Sqrt(best), d.Cloud.dots[which].place.Index
}

// swarm draws the dots of a cloud.
func (r *Renderer) swarm(d *Drawn, colors *palette.Palette) {
	w, h := r.canvas.Size()
	size := math.Max(leastDot, math.Min(greatestDot, d.Radius))
	for i, p := range d.Points {
		if p.X < -size || p.Y < -size || p.X > float64(w)+size || p.Y > float64(h)+size {
			continue
		}
		t := &d.Cloud.dots[i]
		ink := colors.Slack
		if k := t.place.Combination(); k.HasAntiSquat {
			ink = d.Cloud.scale.Shade(&colors.Squat, k.AntiSquat)
		}
		if t.faint {
			r.canvas.Dot(r.at(p), vg.Length(faintSize*size), thinned(ink))
		} else {
			r.canvas.Dot(r.at(p), vg.Length(size), ink)
		}
	}
}

// thinned is an opaque color as that of a dot that stands back.
func thinned(c color.RGBA) color.RGBA {
	part := func(x uint8) uint8 { return uint8(faintShare*float64(x) + 0.5) }
	return color.RGBA{R: part(c.R), G: part(c.G), B: part(c.B), A: part(c.A)}
}

// sightTick is how far the ticks of a sight reach beyond its circle [px].
const sightTick = 7

// sight puts a circle with four ticks outward into the path.
func (r *Renderer) sight(d *Drawn) {
	c, radius := r.at(d.Points[0]), vg.Length(d.Radius)
	r.path.Move(vg.Point{X: c.X + radius, Y: c.Y})
	r.path.Arc(c, radius, 0, 2*math.Pi)
	r.path.Close()
	for _, u := range [...]vg.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		r.path.Move(vg.Point{X: c.X + radius*u.X, Y: c.Y + radius*u.Y})
		r.path.Line(vg.Point{X: c.X + (radius+sightTick)*u.X, Y: c.Y + (radius+sightTick)*u.Y})
	}
}

// kept brings the point of a label that is beyond the picture to its edge and
// has the text say where it points.
func kept(at r2.Vec, text string, w, h float64) (r2.Vec, string) {
	const inset = nearEdge + 1
	in := r2.Vec{X: math.Max(inset, math.Min(w-inset, at.X)), Y: math.Max(inset, math.Min(h-inset, at.Y))}
	switch d := r2.Sub(at, in); {
	case math.Abs(d.X) < nearEdge && math.Abs(d.Y) < nearEdge:
		return in, text
	case math.Abs(d.Y) > math.Abs(d.X) && d.Y < 0:
		return in, "↑ " + text
	case math.Abs(d.Y) > math.Abs(d.X):
		return in, "↓ " + text
	case d.X < 0:
		return in, "← " + text
	}
	return in, text + " →"
}

package scene

import (
	"image/color"
	"math"

	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// Dots are what the points of a Swarm stand for.
type Dots struct {
	List  []Dot         // one a point
	Scale palette.Scale // of their colors

	// Of the legend that explains the colors.
	Title  string
	Mark   string               // what stands at the scale's middle
	Figure func(float64) string // writes a value
}

// Dot is one point of a Swarm.
type Dot struct {
	Index    int     // of the ID that it is picked by
	Value    float64 // that its color stands for
	HasValue bool
	Faint    bool // it stands back
}

// Sizes of dots on screen.
const (
	leastDot    = 1.7  // [px]
	greatestDot = 3.2  // [px]
	faintSize   = 0.78 // of the size of other dots
	faintShare  = 0.34 // of the opacity
)

// nearest returns how far a screen point is from the nearest dot of a swarm
// [px], the topmost of equals, and the dot's index.
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
	return math.Sqrt(best), d.Dots.List[which].Index
}

// swarm draws the dots of a swarm.
func (r *Renderer) swarm(d *Drawn, colors *palette.Palette) {
	w, h := r.canvas.Size()
	size := math.Max(leastDot, math.Min(greatestDot, d.Radius))
	for i, p := range d.Points {
		if p.X < -size || p.Y < -size || p.X > float64(w)+size || p.Y > float64(h)+size {
			continue
		}
		t := &d.Dots.List[i]
		ink := colors.Slack
		if t.HasValue {
			ink = d.Dots.Scale.Shade(&colors.Squat, t.Value)
		}
		if t.Faint {
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

package scene

import (
	"math"

	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// gridSpacing is the least distance of two grid lines [px].
const gridSpacing = 34

// gridSteps are the spacings tried, in shop units.
var gridSteps = map[units.System][]float64{
	units.US: {0.25, 0.5, 1, 2, 5, 10, 20, 50, 100},
	units.SI: {5, 10, 20, 50, 100, 200, 500, 1000, 2000},
}

// spacing returns the grid's spacing [m] at a scale.
func spacing(v View, u units.System) float64 {
	steps := gridSteps[u]
	for _, s := range steps {
		if d := u.ToSI(units.Length, s); d*v.Scale >= gridSpacing {
			return d
		}
	}
	return u.ToSI(units.Length, steps[len(steps)-1])
}

// grid draws lines at round distances from the rear contact, in a view along an
// axis of the car.
func (r *Renderer) grid(v View, u units.System, colors *palette.Palette) {
	if !v.Plane.measured() {
		return
	}
	step := spacing(v, u)
	low, high := v.onPlane(r2.Vec{Y: v.Height}), v.onPlane(r2.Vec{X: v.Width})
	for i := math.Ceil(low.X / step); i*step <= high.X; i++ {
		r.plate(math.Round(v.screen(r2.Vec{X: i * step}).X), 0, 1, v.Height, colors.Grid)
	}
	for i := math.Ceil(low.Y / step); i*step <= high.Y; i++ {
		r.plate(0, math.Round(v.screen(r2.Vec{Y: i * step}).Y), v.Width, 1, colors.Grid)
	}
}

// gridNumbers labels every second line of the grid along the left and the
// bottom edge.
func (r *Renderer) gridNumbers(v View, u units.System, colors *palette.Palette) {
	if !v.Plane.measured() {
		return
	}
	step := spacing(v, u)
	low, high := v.onPlane(r2.Vec{Y: v.Height}), v.onPlane(r2.Vec{X: v.Width})
	for i := math.Ceil(low.X / (2 * step)); i*2*step <= high.X; i++ {
		x := i * 2 * step
		at := v.screen(r2.Vec{X: x})
		r.number(r2.Vec{X: at.X, Y: v.Height - edge}, r.gridText(u, x), r2.Vec{X: 0.5}, colors)
	}
	for i := math.Ceil(low.Y / (2 * step)); i*2*step <= high.Y; i++ {
		y := i * 2 * step
		at := v.screen(r2.Vec{Y: y})
		if at.Y > v.Height-3*small {
			continue
		}
		r.number(r2.Vec{X: edge, Y: at.Y}, r.gridText(u, y), r2.Vec{Y: 0.5}, colors)
	}
}

// number writes a grid line's distance at the edge of the picture.
func (r *Renderer) number(at r2.Vec, text string, anchor r2.Vec, colors *palette.Palette) {
	width := r.letters.width(r.letters.small, text)
	w, _ := r.canvas.Size()
	x := math.Max(edge, math.Min(float64(w)-width-edge, at.X-anchor.X*width))
	y := math.Max(small+edge, at.Y+anchor.Y*0.72*small)
	r.plate(x-platePad, y-0.8*small-platePad, width+2*platePad, small+2*platePad, r.veil(colors.Background))
	r.say(r2.Vec{X: x, Y: y}, text, r.letters.small, Muted, colors)
}

// numberRoom is how wide the numbers along the left edge are [px].
const numberRoom = 34

// gridMark is a grid line: its distance in the numbers of a unit system.
type gridMark struct {
	units units.System
	at    float64
}

// mostMarks is how many grid lines a renderer remembers the words of.
const mostMarks = 1000

// gridText writes a grid line's distance, which is made into words once.
func (r *Renderer) gridText(u units.System, x float64) string {
	mark := gridMark{u, x}
	text, known := r.marks[mark]
	if !known {
		if r.marks == nil || len(r.marks) >= mostMarks {
			r.marks = map[gridMark]string{}
		}
		text = distance(u, x)
		r.marks[mark] = text
	}
	return text
}

// distance writes a grid line's distance.
func distance(u units.System, x float64) string {
	return u.FormatExact(units.Length, u.ToSI(units.Length, math.Round(u.FromSI(units.Length, x)*100)/100+0))
}

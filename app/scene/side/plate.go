package side

import (
	"cmp"
	"math"
	"slices"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r3"
)

// plate returns the outline of the right-hand bracket plate around the holes of
// two rows: in side view their convex hull grown by bracketEdge, with an octagon
// around each hole.
func (b *builder) plate(rows ...car.Row) []r3.Vec {
	var corners []r3.Vec
	for _, row := range rows {
		for _, h := range *row.In(b.result.Car) {
			at := b.hole(row, h)
			for i := range 8 {
				sin, cos := math.Sincos(math.Pi/8 + float64(i)*math.Pi/4)
				corners = append(corners, r3.Vec{X: at.X + bracketEdge*cos, Y: at.Y, Z: at.Z + bracketEdge*sin})
			}
		}
	}
	return hull(corners)
}

// hull returns the convex hull of points in side view, counterclockwise (Andrew's
// monotone chain). It reorders points.
func hull(points []r3.Vec) []r3.Vec {
	if len(points) < 3 {
		return points
	}
	slices.SortFunc(points, func(a, b r3.Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Z, b.Z)) })
	var out []r3.Vec
	chain := func(points []r3.Vec) {
		start := len(out)
		for _, p := range points {
			for len(out) >= start+2 && !left(out[len(out)-2], out[len(out)-1], p) {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		out = out[:len(out)-1]
	}
	chain(points)
	slices.Reverse(points)
	chain(points)
	return out
}

// left reports whether the way from a over b to c turns left in side view.
func left(a, b, c r3.Vec) bool { return (b.X-a.X)*(c.Z-b.Z)-(b.Z-a.Z)*(c.X-b.X) > 0 }

package side

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// plate returns the outline of a bracket plate around holes: their convex hull
// grown by bracketEdge, with an octagon around each hole.
func plate(holes []r2.Vec) []r2.Vec {
	grown := make([]r2.Vec, 0, 8*len(holes))
	for _, h := range holes {
		for i := range 8 {
			sin, cos := math.Sincos(math.Pi/8 + float64(i)*math.Pi/4)
			grown = append(grown, r2.Vec{X: h.X + bracketEdge*cos, Y: h.Y + bracketEdge*sin})
		}
	}
	return hull(grown)
}

// hull returns the convex hull of points, counterclockwise (Andrew's monotone
// chain). It reorders points.
func hull(points []r2.Vec) []r2.Vec {
	if len(points) < 3 {
		return points
	}
	slices.SortFunc(points, func(a, b r2.Vec) int {
		switch {
		case a.X != b.X && a.X < b.X, a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return 0
		}
		return 1
	})
	var out []r2.Vec
	chain := func(points []r2.Vec) {
		start := len(out)
		for _, p := range points {
			for len(out) >= start+2 && r2.Cross(r2.Sub(out[len(out)-1], out[len(out)-2]), r2.Sub(p, out[len(out)-1])) <= 0 {
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

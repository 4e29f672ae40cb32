package scene_test

import (
	"math"
	"testing"

	"bowline/app/scene"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// Planes to look onto: along y, and at an angle.
var (
	sidePlane = scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Z: 1}, Across: "x", Upright: "z"}
	ungraded  = scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Z: 1}} // has no grid
	slanted   = scene.Plane{Right: r3.Vec{X: 0.8, Y: -0.6}, Up: r3.Vec{X: 0.36, Y: 0.48, Z: 0.8}}
)

func TestViewGoesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		plane := rapid.SampledFrom([]scene.Plane{sidePlane, slanted}).Draw(t, "plane")
		v := scene.View{Plane: plane, Width: 800, Height: 600, Scale: f("scale", 30, 3000), Middle: r2.Vec{X: f("x", -2, 2), Y: f("z", -2, 2)}}
		p := r2.Vec{X: f("px", 1, 799), Y: f("py", 1, 599)}
		if back := v.Screen(v.World(p)); r2.Norm(r2.Sub(back, p)) > 1e-6 {
			t.Fatalf("%v came back as %v", p, back)
		}
		if !v.Shows(v.World(p)) {
			t.Fatalf("%v is not in the picture", p)
		}
		// A move toward the eye is not seen.
		toward := r3.Cross(plane.Right, plane.Up)
		if q := v.Screen(r3.Add(v.World(p), r3.Scale(f("depth", -2, 2), toward))); r2.Norm(r2.Sub(q, p)) > 1e-6 {
			t.Fatalf("from nearer %v is seen at %v", p, q)
		}
		// Zoom keeps the point under the pointer, pan follows it.
		if z := v.Zoomed(f("factor", 0.2, 5), p); r3.Norm(r3.Sub(z.World(p), v.World(p))) > 1e-9 {
			t.Fatal("zoom moved the point under the pointer")
		}
		d := r2.Vec{X: 12, Y: -7}
		if m := v.Panned(d); r2.Norm(r2.Sub(m.Screen(v.World(p)), r2.Add(p, d))) > 1e-6 {
			t.Fatal("pan left the pointer")
		}
	})
}

// What is shown stands in a tall picture with its middle three fifths down and
// in a wide one in the middle, with room to all edges.
func TestAFitLeavesRoomAboveAndBelow(t *testing.T) {
	low, high := r2.Vec{X: -0.2, Y: -0.05}, r2.Vec{X: 1.4, Y: 0.85}
	corner := func(p r2.Vec) r3.Vec { return r3.Vec{X: p.X, Z: p.Y} }
	const room = 30
	for _, c := range []struct{ width, height, middle float64 }{{500, 1000, 600}, {500, 700, 420}, {1200, 500, 250}, {500, 348, 0}} {
		v := scene.Fitted(sidePlane, c.width, c.height, low, high)
		lower, upper := v.Screen(corner(low)), v.Screen(corner(high))
		if lower.X < room || upper.X > c.width-room || upper.Y < room || lower.Y > c.height-room {
			t.Errorf("%v × %v: it is drawn from %v to %v", c.width, c.height, lower, upper)
		}
		at := r2.Scale(0.5, r2.Add(lower, upper))
		if math.Abs(at.X-c.width/2) > 1e-9 || c.middle > 0 && math.Abs(at.Y-c.middle) > 1e-9 || at.Y < c.height/2-1e-9 {
			t.Errorf("%v × %v: the middle is at %v, want %v", c.width, c.height, at, c.middle)
		}
	}
}

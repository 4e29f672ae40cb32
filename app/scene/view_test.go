package scene

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

func TestViewGoesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		v := View{Width: 800, Height: 600, Scale: f("scale", 30, 3000), Middle: r2.Vec{X: f("x", -2, 2), Y: f("z", -2, 2)}}
		p := r2.Vec{X: f("px", 0, 800), Y: f("py", 0, 600)}
		if back := v.Screen(v.World(p)); r2.Norm(r2.Sub(back, p)) > 1e-6 {
			t.Fatalf("%v came back as %v", p, back)
		}
		// Zoom keeps the point under the pointer, pan follows it.
		if z := v.Zoomed(f("factor", 0.2, 5), p); r2.Norm(r2.Sub(z.World(p), v.World(p))) > 1e-9 {
			t.Fatal("zoom moved the point under the pointer")
		}
		d := r2.Vec{X: 12, Y: -7}
		if m := v.Panned(d); r2.Norm(r2.Sub(m.Screen(v.World(p)), r2.Add(p, d))) > 1e-6 {
			t.Fatal("pan left the pointer")
		}
	})
}

func TestForwardIsRightAndUpIsUp(t *testing.T) {
	v := View{Width: 100, Height: 100, Scale: 10}
	if p := v.Screen(r2.Vec{X: 1, Y: 1}); p != (r2.Vec{X: 60, Y: 40}) {
		t.Errorf("one meter ahead and up is drawn at %v", p)
	}
}

// What is shown stands in a tall picture with its middle three fifths down and
// in a wide one between the margins, the ground in sight in both.
func TestAFitLeavesRoomAboveAndBelow(t *testing.T) {
	low, high := r2.Vec{X: -0.2, Y: -0.05}, r2.Vec{X: 1.4, Y: 0.85}
	for _, c := range []struct{ width, height, middle float64 }{
		{500, 1000, 600}, {500, 700, 420}, {1200, 500, 250},
		{500, 348, 192.5}, // 121.5 px of it and the margin are below
	} {
		v := Fitted(c.width, c.height, low, high)
		at := v.Screen(r2.Scale(0.5, r2.Add(low, high)))
		bottom := v.Screen(low).Y
		if math.Abs(at.X-c.width/2) > 1e-9 || math.Abs(at.Y-c.middle) > 1e-9 || bottom > c.height-margin+1e-9 || v.Screen(high).Y < margin-1e-9 {
			t.Errorf("%v × %v: the middle is at %v, want %v; the bottom at %v", c.width, c.height, at, c.middle, bottom)
		}
	}
}

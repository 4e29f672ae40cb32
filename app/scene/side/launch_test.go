package side_test

import (
	"math"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// launched shows the reference car at an instant of a launch.
func launched(t *testing.T, l side.Instant) *scene.Picture {
	t.Helper()
	r := reference(t)
	o := options()
	o.Launch = &l
	return picture(r, &r.Ride, o)
}

func TestLaunchShowsLeftAndRightBars(t *testing.T) {
	p := launched(t, side.Instant{Tension: [2][2]float64{{10000, 30000}, {-20000, 60000}}})
	upper, lower := find(p, scene.UpperBar), find(p, scene.LowerBar)
	if len(upper) != 2 || len(lower) != 3 {
		t.Fatalf("%d upper and %d lower bars; want left and right, one marked as beyond its limit", len(upper), len(lower))
	}
	left, right := upper[0], upper[1]
	if !(right.Width > left.Width) || right.Stroke != scene.Pull || left.Arrows != -1 {
		t.Errorf("left %v wide, right %v wide in %v", left.Width, right.Width, right.Stroke)
	}
	if lower[0].Stroke != scene.Push || lower[1].Stroke != scene.Bad || lower[2].Stroke != scene.Pull {
		t.Errorf("lower bars in %v, %v, %v", lower[0].Stroke, lower[1].Stroke, lower[2].Stroke)
	}
	if words := labels(p, scene.UpperBar); len(words) != 1 || !strings.Contains(words[0], "left pull 2,248 lb") || !strings.Contains(words[0], "right pull 6,744 lb") {
		t.Errorf("the upper bars are labeled %q", words)
	}
}

// The left-hand bars are farther from the eye: as far to the left as the others
// are to the right, drawn before them, and so much aside that both are seen.
func TestTheLeftBarsAreBehind(t *testing.T) {
	p := launched(t, side.Instant{Tension: [2][2]float64{{10000, 10000}, {-10000, -10000}}})
	for _, kind := range []scene.Kind{scene.UpperBar, scene.LowerBar} {
		bars := find(p, kind)
		if len(bars) != 2 || bars[0].ID.Side != scene.Left || bars[1].ID.Side != scene.Right {
			t.Fatalf("kind %v: %d bars", kind, len(bars))
		}
		left, right := bars[0], bars[1]
		for i := range left.Item.Points {
			a, b := left.Item.Points[i], right.Item.Points[i]
			if a.Y <= 0 || r3.Norm(r3.Sub(a, r3.Vec{X: b.X, Y: -b.Y, Z: b.Z})) > 1e-12 {
				t.Errorf("kind %v: the left bar is at %v, the right one at %v", kind, a, b)
			}
			if d := r2.Sub(left.Points[i], right.Points[i]); r2.Norm(d) < 5 || d.Y >= 0 {
				t.Errorf("kind %v: the left bar is drawn %v px from the right one", kind, d)
			}
		}
		middle := r2.Scale(0.5, r2.Add(right.Points[0], right.Points[1]))
		if got := p.Pick(middle); got.Kind != kind || got.Side != scene.Right {
			t.Errorf("on the right bar is %+v", got)
		}
		// Of what is seen of the left one nothing is in the way of what is behind.
		across := r2.Sub(left.Points[1], left.Points[0])
		beyond := r2.Add(r2.Scale(0.5, r2.Add(left.Points[0], left.Points[1])), r2.Scale(left.Width/2/r2.Norm(across), r2.Vec{X: across.Y, Y: -across.X}))
		if got := p.Pick(beyond); got.Side == scene.Left {
			t.Errorf("on the left bar is %+v", got)
		}
	}
}

func TestLaunchShowsThePathOfTheInstantCenter(t *testing.T) {
	path := [][]r2.Vec{{{X: 1, Y: 0.3}, {X: 1.1, Y: 0.35}}, {{X: 1.2, Y: 0.4}, {X: 1.3, Y: 0.4}, {X: 1.4, Y: 0.45}}}
	drawn := find(launched(t, side.Instant{CenterPath: path}), scene.CenterPath)
	if len(drawn) != len(path) {
		t.Fatalf("%d pieces are drawn", len(drawn))
	}
	for i, piece := range path {
		if len(drawn[i].Item.Points) != len(piece) {
			t.Fatalf("piece %d has %d points", i, len(drawn[i].Points))
		}
		for j, want := range piece {
			if got := drawn[i].Item.Points[j]; got != seen(want) {
				t.Errorf("piece %d is at %v, want %v", i, got, want)
			}
		}
	}
}

func TestWheelAndTrackMoveWithTheLaunch(t *testing.T) {
	mark := func(p *scene.Picture) float64 { return find(p, scene.Ground)[1].Item.Points[0].X }
	still, moved := launched(t, side.Instant{}), launched(t, side.Instant{Spin: 0.1, Distance: 0.1})
	if d := mark(moved) - mark(still); math.Abs(d+0.1) > 1e-9 {
		t.Errorf("0.1 m on, the track has moved by %v m", d)
	}
	// A foot further, which is how far the marks are apart, the track looks the same.
	if again := launched(t, side.Instant{Distance: 0.1 + units.Foot}); math.Abs(mark(again)-mark(moved)) > 1e-9 {
		t.Error("the marks are not periodic")
	}
	// The tire rolls forward: its spoke on the right goes down.
	spoke := func(p *scene.Picture) float64 { return find(p, scene.RearTire)[2].Item.Points[1].Z }
	if !(spoke(moved) < spoke(still)) {
		t.Errorf("spoke from %v to %v", spoke(still), spoke(moved))
	}
}

func TestWheelieBarIsDrawnWhereItIs(t *testing.T) {
	r := reference(t)
	if n := len(find(picture(r, &r.Ride, options()), scene.WheelieBar)); n != 0 {
		t.Errorf("%d items of a wheelie bar that the car does not have", n)
	}
	q := edited(t, r, func(c *car.Car) { c.Launch.WheelieBar.Reach, c.Launch.WheelieBar.Height = 1.5, 0.1 })
	p := picture(q, &q.Ride, options())
	// Its wheel's lowest point is as high as the car file says.
	wheel := find(p, scene.WheelieBar)[1]
	if at := wheel.Item.Points[0]; math.Abs(at.X+1.5) > 1e-9 || math.Abs(at.Z-wheel.Item.Radius-0.1) > 1e-9 {
		t.Errorf("its wheel of %v m is at %v", wheel.Item.Radius, at)
	}
	if v := side.ViewOfCar(800, 600, q); v.Screen(r3.Vec{X: -1.5 - wheel.Item.Radius}).X < 0 {
		t.Error("the fitted car leaves its wheel out")
	}
}

package side_test

import (
	"math"
	"slices"
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
	left, color := filled(t, p, scene.UpperBar, scene.Left)
	if right, _ := filled(t, p, scene.UpperBar, scene.Right); !(right > left) || color != scene.Pull || arrows(p, scene.UpperBar, scene.Left) != -1 {
		t.Errorf("left filled by %v in %v, right by %v", left, color, right)
	}
	if _, color := filled(t, p, scene.LowerBar, scene.Left); color != scene.Push || struck(p, scene.LowerBar, scene.Left) || !struck(p, scene.LowerBar, scene.Right) {
		t.Errorf("the lower left bar is in %v; of both the right one alone is beyond its limit", color)
	}
	if words := labels(p, scene.UpperBar); len(words) != 1 || !strings.HasPrefix(words[0], "Upper bars pull left 2,248 · right 6,744 lb") {
		t.Errorf("the upper bars are labeled %q", words)
	}
}

// The left-hand bars are farther from the eye: drawn before the others, and so much aside
// that both are seen and can be picked.
func TestTheLeftBarsAreBehind(t *testing.T) {
	p := launched(t, side.Instant{Tension: [2][2]float64{{10000, 10000}, {-10000, -10000}}})
	for _, kind := range []scene.Kind{scene.UpperBar, scene.LowerBar} {
		left, right := tubeOf(t, p, kind, scene.Left), tubeOf(t, p, kind, scene.Right)
		for i := range left.Item.Points {
			a, b := left.Item.Points[i], right.Item.Points[i]
			if a.Y <= 0 || r3.Norm(r3.Sub(a, r3.Vec{X: b.X, Y: -b.Y, Z: b.Z})) > 1e-12 {
				t.Errorf("kind %v: the left bar is at %v, the right one at %v", kind, a, b)
			}
			if d := r2.Sub(left.Points[i], right.Points[i]); r2.Norm(d) < 5 || d.Y >= 0 {
				t.Errorf("kind %v: the left bar is drawn %v px from the right one", kind, d)
			}
		}
		sides := []scene.Side{}
		for _, d := range find(p, kind) {
			sides = append(sides, d.ID.Side)
		}
		if !slices.IsSortedFunc(sides, func(a, b scene.Side) int { return int(a - b) }) {
			t.Errorf("kind %v: the left bar is not behind the right one", kind)
		}
		for _, bar := range []scene.Drawn{left, right} {
			// Off the other one.
			along := r2.Unit(r2.Sub(bar.Points[1], bar.Points[0]))
			out := r2.Scale(bar.Thick/2, r2.Vec{X: -along.Y, Y: along.X})
			if other := map[scene.Side]scene.Drawn{scene.Left: right, scene.Right: left}[bar.ID.Side]; r2.Dot(out, r2.Sub(bar.Points[0], other.Points[0])) < 0 {
				out = r2.Scale(-1, out)
			}
			middle := r2.Add(r2.Scale(0.5, r2.Add(bar.Points[0], bar.Points[1])), out)
			if got := p.Pick(middle); got.Kind != kind || got.Side != bar.ID.Side {
				t.Errorf("on the bar %+v is %+v", bar.ID, got)
			}
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
	// The first post stands where the front tires start.
	mark := func(p *scene.Picture) float64 {
		for _, d := range find(p, scene.Ground) {
			if d.Girth > 0 {
				return d.Item.Points[0].X
			}
		}
		return 0
	}
	still, moved := launched(t, side.Instant{}), launched(t, side.Instant{Spin: 0.1, Distance: 0.1})
	if d := mark(moved) - mark(still); math.Abs(d+0.1) > 1e-9 {
		t.Errorf("0.1 m on, the track has moved by %v m", d)
	}
	if at := mark(still) / inch; math.Abs(at-105) > 1e-9 {
		t.Errorf("at rest the start is at %v in, the front tires at 105 in", at)
	}
	// 60 ft on, the other post is there.
	posts := map[float64]bool{}
	for _, d := range find(launched(t, side.Instant{Distance: 60 * units.Foot}), scene.Ground) {
		if d.Girth > 0 {
			posts[math.Round(d.Item.Points[0].X/inch)] = true
		}
	}
	if !posts[105] || len(posts) != 2 {
		t.Errorf("60 ft on, posts stand at %v in", posts)
	}
	// The tire rolls forward: its spoke on the right goes down.
	spoke := func(p *scene.Picture) float64 {
		for _, d := range find(p, scene.RearTire) {
			if d.Shape == scene.Path && d.ID.Side == scene.Right && d.Item.Points[0].X > 0.05 {
				return d.Item.Points[0].Z // of one ahead of the axle
			}
		}
		return 0
	}
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
	lowest, rearmost := math.Inf(1), math.Inf(1)
	for _, d := range find(p, scene.WheelieBar) {
		for _, q := range d.Item.Points {
			lowest, rearmost = min(lowest, q.Z), min(rearmost, q.X)
		}
	}
	if math.Abs(lowest-0.1) > 1e-9 || rearmost > -1.5 {
		t.Errorf("it reaches down to %v m and back to %v m", lowest, rearmost)
	}
	if v := side.ViewOfCar(800, 600, q); v.Screen(r3.Vec{X: rearmost}).X < 0 {
		t.Error("the fitted car leaves its wheel out")
	}
}

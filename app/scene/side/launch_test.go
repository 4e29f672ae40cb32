package side

import (
	"context"
	"math"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/carfile"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// launched draws the reference car at an instant of a launch.
func launched(t *testing.T, l Instant) *scene.Picture {
	t.Helper()
	r := reference(t)
	o := options()
	o.Launch = &l
	p := new(scene.Picture)
	p.Project(Build(nil, r, &r.Ride, o), FitLink(800, 600, r))
	return p
}

func TestLaunchShowsLeftAndRightBars(t *testing.T) {
	p := launched(t, Instant{Tension: [2][2]float64{{10000, 30000}, {-20000, 60000}}})
	upper, lower := find(p, scene.UpperBar), find(p, scene.LowerBar)
	if len(upper) != 2 || len(lower) != 3 {
		t.Fatalf("%d upper and %d lower bars; want left and right, one marked as beyond its limit", len(upper), len(lower))
	}
	left, right := upper[0], upper[1]
	if d := r2.Sub(left.Points[0], right.Points[0]); math.Abs(d.X-far.X) > 1e-9 || math.Abs(d.Y-far.Y) > 1e-9 {
		t.Errorf("the left bar is drawn %v px from the right one", d)
	}
	if !(right.Width > left.Width) || right.Stroke != scene.Pull || left.Arrows != -1 {
		t.Errorf("left %v wide, right %v wide in %v", left.Width, right.Width, right.Stroke)
	}
	if lower[0].Stroke != scene.Push || lower[1].Stroke != scene.Bad || lower[2].Stroke != scene.Pull {
		t.Errorf("lower bars in %v, %v, %v", lower[0].Stroke, lower[1].Stroke, lower[2].Stroke)
	}
	for _, d := range p.Drawn {
		if d.ID.Kind == scene.UpperBar && d.Shape == scene.Label && (!strings.Contains(d.Text, "left pull 2,248 lb") || !strings.Contains(d.Text, "right pull 6,744 lb")) {
			t.Errorf("the upper bars are labeled %q", d.Text)
		}
	}
}

func TestLaunchShowsThePathOfTheInstantCenter(t *testing.T) {
	path := [][]r2.Vec{{{X: 1, Y: 0.3}, {X: 1.1, Y: 0.35}}, {{X: 1.2, Y: 0.4}, {X: 1.3, Y: 0.4}, {X: 1.4, Y: 0.45}}}
	p := launched(t, Instant{CenterPath: path})
	drawn := find(p, scene.CenterPath)
	if len(drawn) != 2 || len(drawn[1].Points) != 3 {
		t.Fatalf("%d pieces are drawn", len(drawn))
	}
	if want := p.View.Screen(path[1][2]); r2.Norm(r2.Sub(drawn[1].Points[2], want)) > 1e-9 {
		t.Errorf("the path ends at %v, want %v", drawn[1].Points[2], want)
	}
}

func TestWheelAndTrackMoveWithTheLaunch(t *testing.T) {
	still, moved := launched(t, Instant{}), launched(t, Instant{Spin: 0.1, Distance: 0.1})
	mark := func(p *scene.Picture) float64 { return find(p, scene.Ground)[1].Points[0].X }
	if d := mark(moved) - mark(still); math.Abs(d+0.1*still.View.Scale) > 1e-6 {
		t.Errorf("0.1 m on, the track has moved by %v px of %v", d, 0.1*still.View.Scale)
	}
	// A mark's distance further, the track looks the same.
	if again := launched(t, Instant{Distance: 0.1 + trackMark}); math.Abs(mark(again)-mark(moved)) > 1e-6 {
		t.Error("the marks are not periodic")
	}
	// The tire rolls forward: its spoke on the right goes down.
	spoke := func(p *scene.Picture) float64 { return find(p, scene.RearTire)[2].Points[1].Y }
	if !(spoke(moved) > spoke(still)) {
		t.Errorf("spoke from %v to %v", spoke(still), spoke(moved))
	}
}

func TestLaunchNamesBothBars(t *testing.T) {
	r := reference(t)
	o := options()
	o.Launch = &Instant{Tension: [2][2]float64{{}, {-20000, -40000}}}
	words := strings.Join(Describe(scene.ID{Kind: scene.LowerBar}, r, &r.Ride, o), "; ")
	for _, want := range []string{"left: push 4,496 lb", "right: push 8,992 lb", "of " + o.Units.Format(units.Force, r.Bars[1].Push.Allowable)} {
		if !strings.Contains(words, want) {
			t.Errorf("%q lacks %q", words, want)
		}
	}
	for _, k := range []scene.Kind{scene.RearTire, scene.FrontTire} {
		if len(Describe(scene.ID{Kind: k}, r, &r.Ride, o)) == 0 {
			t.Errorf("kind %d has no name in a launch", k)
		}
	}
}

func TestWheelieBarIsDrawnWhereItIs(t *testing.T) {
	r := reference(t)
	if n := len(find(picture(t, r, &r.Ride), scene.WheelieBar)); n != 0 {
		t.Errorf("%d items of a wheelie bar that the car does not have", n)
	}
	c := r.Car.Clone()
	c.Launch.WheelieBar.Reach, c.Launch.WheelieBar.Height = 1.5, 0.1
	q, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := picture(t, q, &q.Ride)
	wheel := find(p, scene.WheelieBar)[1]
	if want := p.View.Screen(r2.Vec{X: -1.5, Y: 0.1 + wheelieWheel}); r2.Norm(r2.Sub(wheel.Points[0], want)) > 1e-6 {
		t.Errorf("its wheel is drawn at %v, want %v", wheel.Points[0], want)
	}
	if v := FitCar(800, 600, q); v.Screen(r2.Vec{X: -1.5 - wheelieWheel}).X < 0 {
		t.Error("the fitted car leaves its wheel out")
	}
}

package side_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"

	"gonum.org/v1/gonum/spatial/r2"
)

// tuning shows the reference car with its target to drag.
func tuning(t testing.TB, hot scene.ID) *scene.Picture {
	r := reference(t)
	o := options()
	o.Tuning, o.Hot = true, hot
	return picture(r, &r.Ride, o)
}

// The reference car aims at 100 to 160 % and at 40 to 60 in ahead, 6 to 14 in up.
func TestTargetCanBeTakenHoldOf(t *testing.T) {
	p := tuning(t, scene.ID{})
	on := func(x, z float64) r2.Vec { return p.View.Screen(at(x, z)) }
	for _, c := range []struct {
		what string
		at   r2.Vec
		want side.Edges
	}{
		{"inside", on(50, 7.6), side.AllEdges},
		{"the rear edge", on(40, 8), side.RearEdge},
		{"beside the rear edge", r2.Add(on(40, 8), r2.Vec{X: -3}), side.RearEdge},
		{"the middle of the rear edge", on(40, 10), side.RearEdge},
		{"the lower edge", on(44, 6), side.LowerEdge},
		{"the rear lower corner", on(40, 6), side.RearEdge | side.LowerEdge},
		{"near the rear upper corner", r2.Add(on(40, 14), r2.Vec{X: 3, Y: 4}), side.RearEdge | side.UpperEdge},
	} {
		if got := p.Pick(c.at); got != (scene.ID{Kind: scene.TargetBox, Index: int(c.want)}) {
			t.Errorf("%s: picked %+v", c.what, got)
		}
	}
	// Elsewhere than in tuning it is one thing.
	r := reference(t)
	o := picture(r, &r.Ride, options())
	for _, at := range []r2.Vec{on(50, 7.6), r2.Add(on(40, 6), r2.Vec{X: 2, Y: -2})} {
		if got := o.Pick(at); got != (scene.ID{Kind: scene.TargetBox}) {
			t.Errorf("picked %+v", got)
		}
	}
}

func TestTargetShowsItsHandlesUnderThePointer(t *testing.T) {
	count := func(p *scene.Picture) (handles, filled int) {
		for _, d := range find(p, scene.TargetBox) {
			if d.Shape == scene.Disc && d.Stroke != scene.None {
				handles++
				if d.Fill == scene.Good {
					filled++
				}
			}
		}
		return handles, filled
	}
	for hot, want := range map[scene.ID][2]int{
		{}: {0, 0},
		{Kind: scene.TargetBox, Index: int(side.AllEdges)}:                  {8, 0},
		{Kind: scene.TargetBox, Index: int(side.RearEdge | side.UpperEdge)}: {8, 1},
		{Kind: scene.TargetBox, Index: int(side.FrontEdge)}:                 {8, 1},
	} {
		if handles, filled := count(tuning(t, hot)); handles != want[0] || filled != want[1] {
			t.Errorf("with the pointer at %+v: %d handles, %d filled; want %v", hot, handles, filled, want)
		}
	}
}

// An instant center at ride height that is on a ray gives the anti-squat aimed
// at: 100 % times z/x of the instant center over height of the center of gravity
// per wheelbase (common practice). The rays stay there wherever the car is, as the
// dots do: 105 in of wheelbase, 19.5 in of height.
func TestTargetRays(t *testing.T) {
	r := reference(t)
	for _, s := range []*analysis.Station{&r.Ride, &r.Travel[0], &r.Travel[len(r.Travel)-1]} {
		for _, launch := range []*side.Instant{nil, {}} {
			o := options()
			o.Tuning, o.Launch = true, launch
			p := picture(r, s, o)
			var rays []scene.Drawn
			for _, d := range find(p, scene.TargetRay) {
				if d.Shape == scene.Path {
					rays = append(rays, d)
				}
			}
			if len(rays) != 2 {
				t.Fatalf("%d rays", len(rays))
			}
			for i, want := range []float64{1, 1.6} {
				end := rays[i].Item.Points[1]
				if got := end.Z / end.X / (19.5 / 105); math.Abs(got-want) > 1e-9 || rays[i].Item.Points[0] != at(0, 0) {
					t.Errorf("travel %v: a ray through %v stands for %v, want %v", s.Pose.Travel, end, got, want)
				}
			}
			words, said := labels(p, scene.TargetRay), say(scene.ID{Kind: scene.TargetRay}, r, s, o)
			want := []string{"target 100 %", "target 160 %"}
			away := s != &r.Ride || launch != nil
			if away {
				want = []string{"target 100 % at ride height", "target 160 % at ride height"}
			}
			if !slices.Equal(words, want) || !strings.HasPrefix(said, "Target: anti-squat 100 to 160 %") || strings.Contains(said, "at ride height") != away {
				t.Errorf("travel %v, launch %v: labels %q, named %q", s.Pose.Travel, launch != nil, words, said)
			}
		}
	}
	p := tuning(t, scene.ID{})
	// They are in sight, and other words are placed first.
	last := ""
	for _, d := range p.Drawn {
		if d.Shape == scene.Label {
			last = d.Text
		}
		if d.Shape == scene.Label && d.ID.Kind == scene.TargetRay && !within(p.View, d.Points[0], 60) {
			t.Errorf("%q stands at %v", d.Text, d.Points[0])
		}
	}
	if last != "target 160 %" {
		t.Errorf("the last words are %q", last)
	}
	if got := p.Pick(p.View.Screen(at(30, 1.6*30*19.5/105))); got != (scene.ID{Kind: scene.TargetRay, Index: 1}) {
		t.Errorf("on the ray is %+v", got)
	}
}

// within reports whether a screen point is in the picture, with at least some
// pixels to its edges.
func within(v scene.View, at r2.Vec, room float64) bool {
	return at.X >= room && at.Y >= room && at.X <= v.Width-room && at.Y <= v.Height-room
}

package side

import (
	"context"
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// tuning shows the reference car with its target to drag.
func tuning(t testing.TB, hot scene.ID) (*analysis.Result, *scene.Picture) {
	r := reference(t)
	o := options()
	o.Tuning, o.Hot = true, hot
	return r, show(r, o)
}

// The reference car aims at 100 to 160 % and at 40 to 60 in ahead, 6 to 14 in up.
func TestTargetCanBeTakenHoldOf(t *testing.T) {
	_, p := tuning(t, scene.ID{})
	world := func(x, z float64) r2.Vec { return p.View.Screen(r2.Vec{X: x * inch, Y: z * inch}) }
	for _, c := range []struct {
		what string
		at   r2.Vec
		want Edges
	}{
		{"inside", world(50, 7.6), AllEdges},
		{"the rear edge", world(40, 8), RearEdge},
		{"beside the rear edge", r2.Add(world(40, 8), r2.Vec{X: -3}), RearEdge},
		{"the middle of the rear edge", world(40, 10), RearEdge},
		{"the lower edge", world(44, 6), LowerEdge},
		{"the rear lower corner", world(40, 6), RearEdge | LowerEdge},
		{"near the rear upper corner", r2.Add(world(40, 14), r2.Vec{X: 3, Y: 4}), RearEdge | UpperEdge},
	} {
		if got := p.Pick(c.at); got != (scene.ID{Kind: scene.TargetBox, Index: int(c.want)}) {
			t.Errorf("%s: picked %+v", c.what, got)
		}
	}
	// Elsewhere than in tuning it is one thing.
	r := reference(t)
	o := show(r, options())
	for _, at := range []r2.Vec{world(50, 7.6), r2.Add(world(40, 6), r2.Vec{X: 2, Y: -2})} {
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
		{Kind: scene.TargetBox, Index: int(AllEdges)}:             {8, 0},
		{Kind: scene.TargetBox, Index: int(RearEdge | UpperEdge)}: {8, 1},
		{Kind: scene.TargetBox, Index: int(FrontEdge)}:            {8, 1},
	} {
		_, p := tuning(t, hot)
		if handles, filled := count(p); handles != want[0] || filled != want[1] {
			t.Errorf("with the pointer at %+v: %d handles, %d filled; want %v", hot, handles, filled, want)
		}
	}
}

func TestCorners(t *testing.T) {
	d := r2.Vec{X: 1, Y: -2}
	for e, want := range map[Edges][2]r2.Vec{
		AllEdges:              {d, d},
		RearEdge:              {{X: 1}, {}},
		UpperEdge:             {{}, {Y: -2}},
		FrontEdge | LowerEdge: {{Y: -2}, {X: 1}},
	} {
		if low, high := e.Corners(d); low != want[0] || high != want[1] {
			t.Errorf("edges %b: %v, %v", e, low, high)
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
		for _, launch := range []*Instant{nil, {}} {
			o := options()
			o.Tuning, o.Launch = true, launch
			p := &scene.Picture{Drawn: drawn(Build(nil, r, s, o))}
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
				end := rays[i].Points[1]
				if got := end.Y / end.X / (19.5 / 105); math.Abs(got-want) > 1e-9 || rays[i].Points[0] != (r2.Vec{}) {
					t.Errorf("travel %v: a ray through %v stands for %v, want %v", s.Pose.Travel, end, got, want)
				}
			}
			words, said := labels(p, scene.TargetRay), strings.Join(Describe(scene.ID{Kind: scene.TargetRay}, r, s, o), "; ")
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
	o := options()
	o.Tuning = true
	p := show(r, o)
	// They are in sight, and other words are placed first.
	last := ""
	for _, d := range p.Drawn {
		if d.Shape == scene.Label {
			last = d.Text
		}
		if d.Shape == scene.Label && d.ID.Kind == scene.TargetRay && !within(p.View, p.View.World(d.Points[0]), 60) {
			t.Errorf("%q stands at %v", d.Text, d.Points[0])
		}
	}
	if last != "target 160 %" {
		t.Errorf("the last words are %q", last)
	}
	if got := p.Pick(p.View.Screen(r2.Vec{X: 30 * inch, Y: 1.6 * 30 * inch * 19.5 / 105})); got != (scene.ID{Kind: scene.TargetRay, Index: 1}) {
		t.Errorf("on the ray is %+v", got)
	}
}

// Outline, word and handles of the target stand above the dots, and so do the
// marks of some of them; the fill, which would change their colors, is below.
func TestTheTargetStandsAboveTheDots(t *testing.T) {
	r := reference(t)
	o := options()
	o.Tuning, o.Cloud, o.Hot = true, clouded(t, r), scene.ID{Kind: scene.TargetBox, Index: int(AllEdges)}
	o.Cloud.Present = o.Cloud.places[3].Index
	swarm, fill, outline, handles, marks := -1, -1, -1, 0, 0
	p := show(r, o)
	for i, d := range p.Drawn {
		switch {
		case d.Shape == scene.Swarm:
			swarm = i
		case d.ID.Kind == scene.TargetBox && d.Fill == scene.Target:
			fill = i
		case d.ID.Kind == scene.TargetBox && d.Shape == scene.Area && d.Stroke == scene.Good:
			outline = i
		case swarm < 0:
		case d.ID.Kind == scene.TargetBox && d.Shape == scene.Disc:
			handles++
		case d.ID.Kind == scene.Combination && d.Shape == scene.Disc, d.ID.Kind == scene.InstantCenter && d.Shape == scene.Disc:
			marks++
		}
	}
	if fill < 0 || fill > swarm || outline < swarm || handles != 8 || marks != 3 {
		t.Errorf("fill %d, dots %d, outline %d; above the dots are %d handles and %d marks", fill, swarm, outline, handles, marks)
	}
	if words := labels(p, scene.TargetBox); !slices.Equal(words, []string{"target"}) {
		t.Errorf("labels %q", words)
	}
	// Dots right under the outline do not show through.
	box := targetCorners(r.Car)
	at := r2.Add(r2.Scale(0.7, box[3]), r2.Scale(0.3, box[0]))
	o.Labels, o.Hot = false, scene.ID{}
	var seen [2][3]color.RGBA
	for i, place := range []r2.Vec{at, {X: -1}} {
		for j := range o.Cloud.points {
			o.Cloud.points[j] = place
		}
		p = show(r, o)
		img := image.NewRGBA(image.Rect(0, 0, 800, 600))
		scene.NewRenderer().Draw(img, 1, p, units.US, &palette.Light)
		q := p.View.Screen(at)
		for j := range seen[i] {
			seen[i][j] = img.RGBAAt(int(q.X)-1+j, int(q.Y))
		}
	}
	if seen[0] != seen[1] || seen[0][0] == seen[0][1] && seen[0][1] == seen[0][2] {
		t.Errorf("the outline on a dot is %v, elsewhere %v", seen[0], seen[1])
	}
}

// Pressing at the target's edge or a handle takes hold of that, so that is what
// stands under the pointer there, even on a dot; within the box dots come first.
func TestTheTargetsEdgesComeBeforeDots(t *testing.T) {
	r := reference(t)
	o := options()
	o.Tuning, o.Cloud = true, clouded(t, r)
	at := func(x, z float64) r2.Vec { return r2.Vec{X: x * inch, Y: z * inch} }
	for _, c := range []struct {
		dot  r2.Vec
		want scene.ID
		say  string
	}{
		{at(40, 8), scene.ID{Kind: scene.TargetBox, Index: int(RearEdge)}, "Target for the instant center, rear edge"},
		{at(43, 14), scene.ID{Kind: scene.TargetBox, Index: int(UpperEdge)}, "Target for the instant center, upper edge"},
		{at(60, 6), scene.ID{Kind: scene.TargetBox, Index: int(FrontEdge | LowerEdge)}, "Target for the instant center, front lower corner"},
		{at(55, 9), scene.ID{Kind: scene.Combination, Index: o.Cloud.places[len(o.Cloud.places)-1].Index}, "Holes "},
	} {
		for i := range o.Cloud.points {
			o.Cloud.points[i] = c.dot
		}
		p := show(r, o)
		got := p.Pick(p.View.Screen(c.dot))
		if words := Describe(got, r, &r.Ride, o); got != c.want || !strings.HasPrefix(words[0], c.say) {
			t.Errorf("at %v: %+v, %q; want %+v", c.dot, got, words, c.want)
		}
		if behind := p.PickBehind(p.View.Screen(c.dot)); behind.Kind != scene.TargetBox || c.want.Kind == scene.TargetBox && behind != got {
			t.Errorf("at %v: behind the dot is %+v", c.dot, behind)
		}
	}
}

// drawn lists items with their points in meters.
func drawn(items []scene.Item) []scene.Drawn {
	var list []scene.Drawn
	for i := range items {
		list = append(list, scene.Drawn{Item: &items[i], Points: items[i].Points})
	}
	return list
}

// withOther shows the reference car's first setup held against its second,
// which has the lower bar in hole 1.
func withOther(t testing.TB, launching bool) (*analysis.Result, *scene.Picture, Options) {
	t.Helper()
	r := reference(t)
	q, err := analysis.Run(context.Background(), r.Car, carfile.Stock(), analysis.Options{Setup: 1})
	if err != nil {
		t.Fatal(err)
	}
	o := options()
	o.Other = &Other{Name: "lower bar up", Result: q, Station: &q.Ride}
	if launching {
		o.Launch = &Instant{}
		o.Other.Tension = &[2][2]float64{{}, {-20000, -40000}}
	}
	return r, show(r, o), o
}

func TestTheOtherSetupIsAGhostBehind(t *testing.T) {
	for _, launching := range []bool{false, true} {
		_, p, o := withOther(t, launching)
		bars := find(p, scene.OtherBar)
		if len(bars) != 2 || len(find(p, scene.OtherBarLine)) != 2 || len(find(p, scene.OtherHole)) != 4 {
			t.Fatalf("%d bars, %d lines, %d holes", len(bars), len(find(p, scene.OtherBarLine)), len(find(p, scene.OtherHole)))
		}
		if want := p.View.Screen(r2.Vec{X: 25.5 * inch, Y: 12.25 * inch}); r2.Norm(r2.Sub(bars[car.Lower].Points[1], want)) > 1e-6 {
			t.Errorf("its lower bar ends at %v, its hole is at %v", bars[car.Lower].Points[1], want)
		}
		ic := p.View.Screen(o.Other.Station.InstantCenter)
		for _, d := range append(find(p, scene.OtherBarLine), find(p, scene.OtherCenter)...) {
			if at := d.Points[len(d.Points)-1]; r2.Norm(r2.Sub(at, ic)) > 1e-6 {
				t.Errorf("%+v ends at %v, its instant center is at %v", d.ID, at, ic)
			}
		}
		if words := labels(p, scene.OtherCenter); len(words) != 1 || words[0] != "lower bar up" {
			t.Errorf("labels %q", words)
		}
		// All of it is drawn before the setup's own bars.
		last, first := 0, len(p.Drawn)
		for i, d := range p.Drawn {
			switch d.ID.Kind {
			case scene.OtherBar, scene.OtherBarLine, scene.OtherHole, scene.OtherCenter:
				last = max(last, i)
			case scene.UpperBar, scene.LowerBar, scene.BarLine, scene.Pivot, scene.InstantCenter:
				first = min(first, i)
			}
		}
		if last > first {
			t.Error("the ghost covers the setup")
		}
	}
}

func TestTheSetupItselfIsPickedFirst(t *testing.T) {
	_, p, o := withOther(t, false)
	world := func(x, z float64) r2.Vec { return p.View.Screen(r2.Vec{X: x * inch, Y: z * inch}) }
	for _, c := range []struct {
		what string
		at   r2.Vec
		want scene.ID
	}{
		// Its lower bar runs from (2.5, 11) to (25.5, 12.25), the setup's own to
		// (25.5, 11.5).
		{"where both lower bars are near", world(6, 11.3), scene.ID{Kind: scene.LowerBar}},
		{"on the other's lower bar", r2.Add(world(24, 12.17), r2.Vec{Y: -6}), scene.ID{Kind: scene.OtherBar, Index: int(car.Lower)}},
		{"the upper bars, one on the other", world(12.5, 19.75), scene.ID{Kind: scene.UpperBar}},
		{"the other's hole", world(25.5, 12.25), scene.ID{Kind: scene.Hole, Row: car.ChassisLower, Index: 0}},
		{"where an upper bar's line runs to both instant centers", p.View.Screen(o.Other.Station.InstantCenter), scene.ID{Kind: scene.BarLine, Index: int(car.Upper)}},
		{"beside the other's instant center", r2.Add(p.View.Screen(o.Other.Station.InstantCenter), r2.Vec{X: 2, Y: -9}), scene.ID{Kind: scene.OtherCenter}},
	} {
		if got := p.Pick(c.at); got != c.want {
			t.Errorf("%s: picked %+v, want %+v", c.what, got, c.want)
		}
	}
}

func TestTheOtherSetupNamesItself(t *testing.T) {
	r, p, o := withOther(t, false)
	for _, d := range p.Drawn {
		if d.Pick > 0 && len(Describe(d.ID, r, &r.Ride, o)) == 0 {
			t.Errorf("%+v has no name", d.ID)
		}
	}
	say := func(o Options, id scene.ID) string { return strings.Join(Describe(id, r, &r.Ride, o), "; ") }
	for id, want := range map[scene.ID]string{
		{Kind: scene.OtherBar, Index: int(car.Lower)}:     `Lower bar of "lower bar up", 23.03 in pin to pin; push `,
		{Kind: scene.OtherBarLine, Index: int(car.Upper)}: `Line of the upper bars of "lower bar up"`,
		{Kind: scene.OtherHole, Row: car.ChassisLower}:    `Lower chassis hole 1 of "lower bar up"; 25.5 in forward, 12.25 in above the ground`,
		{Kind: scene.OtherCenter}:                         `Instant center of "lower bar up"; `,
	} {
		if got := say(o, id); !strings.HasPrefix(got, want) {
			t.Errorf("%+v: %q, want %q", id, got, want)
		}
	}
	_, _, o = withOther(t, true)
	lower := scene.ID{Kind: scene.OtherBar, Index: int(car.Lower)}
	if got := say(o, lower); !strings.Contains(got, "left: push 4,496 lb") || !strings.Contains(got, "right: push 8,992 lb") {
		t.Error(got)
	}
	o.Other.Tension = nil
	if got := say(o, lower); strings.Contains(got, "lb") {
		t.Error(got)
	}
}

// Parallel bars have no instant center to be named at.
func TestTheOtherSetupWithParallelBarsIsNamed(t *testing.T) {
	r := reference(t)
	c := r.Car.Clone()
	// Both bars run level.
	c.Chassis.Upper[2].Y, c.Chassis.Lower[1].Y = 22.5*inch, 11*inch
	q, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if q.Ride.HasInstantCenter {
		t.Fatalf("the bars meet at %v", q.Ride.InstantCenter)
	}
	o := options()
	o.Other = &Other{Name: "level", Result: q, Station: &q.Ride}
	p := show(r, o)
	if words := labels(p, scene.OtherBar); len(words) != 1 || words[0] != "level" || len(find(p, scene.OtherCenter)) != 0 {
		t.Errorf("labels %q", words)
	}
}

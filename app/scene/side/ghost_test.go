package side_test

import (
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// compared shows the reference car's first setup held against its second, which
// has the lower bar in hole 1, and against a car whose lower bars are in the
// lowest chassis hole.
func compared(t testing.TB, launching bool) (*analysis.Result, *scene.Picture, side.Options) {
	t.Helper()
	r := reference(t)
	up := run(t, r.Car, 1)
	down := edited(t, r, func(c *car.Car) { c.Setups[0].Holes.ChassisLower = 2 })
	o := options()
	o.Ghosts = []side.Ghost{{Name: "lower bar up", Result: up, Station: &up.Ride}, {Name: "lower bar down", Result: down, Station: &down.Ride}}
	if launching {
		o.Launch = &side.Instant{}
		o.Ghosts[0].Tension = &[2][2]float64{{}, {-20000, -40000}}
	}
	return r, picture(r, &r.Ride, o), o
}

func TestSetupsHeldAgainstAreGhostsBehind(t *testing.T) {
	for _, launching := range []bool{false, true} {
		_, p, o := compared(t, launching)
		for i, lower := range []float64{12.25, 10.75} { // height of the chassis hole [in]
			ghost := i + 1
			count := map[scene.Kind]int{}
			for _, kind := range []scene.Kind{scene.UpperBar, scene.LowerBar, scene.BarLine, scene.Pivot} {
				count[kind] = len(findGhost(p, kind, ghost))
			}
			if count[scene.UpperBar] != 1 || count[scene.LowerBar] != 1 || count[scene.BarLine] != 2 || count[scene.Pivot] != 4 {
				t.Fatalf("ghost %d: %v", ghost, count)
			}
			if end := findGhost(p, scene.LowerBar, ghost)[0].Item.Points[1]; apart(end, at(25.5, lower)) > 1e-9 {
				t.Errorf("ghost %d: the lower bar ends at %v, its hole is %v in up", ghost, end, lower)
			}
			ic := seen(o.Ghosts[i].Station.InstantCenter)
			for _, d := range append(findGhost(p, scene.BarLine, ghost), findGhost(p, scene.InstantCenter, ghost)...) {
				if end := d.Item.Points[len(d.Item.Points)-1]; apart(end, ic) > 1e-9 {
					t.Errorf("%+v ends at %v, its instant center is at %v", d.ID, end, ic)
				}
			}
		}
		if words := labels(p, scene.InstantCenter); len(words) != 3 || words[0] != "lower bar up" || words[1] != "lower bar down" {
			t.Errorf("labels %q", words)
		}
		// All of them are drawn before the setup's own bars.
		last, first := 0, len(p.Drawn)
		for i, d := range p.Drawn {
			switch d.ID.Kind {
			case scene.UpperBar, scene.LowerBar, scene.BarLine, scene.Pivot, scene.InstantCenter:
				if d.ID.Ghost > 0 {
					last = max(last, i)
				} else {
					first = min(first, i)
				}
			}
		}
		if last > first {
			t.Error("a ghost covers the setup")
		}
	}
}

func TestTheSetupItselfIsPickedFirst(t *testing.T) {
	_, p, o := compared(t, false)
	on := func(x, z float64) r2.Vec { return p.View.Screen(at(x, z)) }
	center := func(ghost int) r2.Vec { return p.View.Screen(seen(o.Ghosts[ghost-1].Station.InstantCenter)) }
	for _, c := range []struct {
		what string
		at   r2.Vec
		want scene.ID
	}{
		// The lower bars run from (2.5, 11) to (25.5, 12.25), the setup's own to
		// (25.5, 11.5) and the other ghost's to (25.5, 10.75).
		{"where all lower bars are near", on(6, 11.1), scene.ID{Kind: scene.LowerBar, Side: scene.Right}},
		{"on the first ghost's lower bar", r2.Add(on(24, 12.17), r2.Vec{Y: -6}), scene.ID{Kind: scene.LowerBar, Ghost: 1}},
		{"on the second ghost's lower bar", r2.Add(on(24, 10.77), r2.Vec{Y: 6}), scene.ID{Kind: scene.LowerBar, Ghost: 2}},
		{"the upper bars, one on the other", on(12.5, 19.75), scene.ID{Kind: scene.UpperBar, Side: scene.Right}},
		{"a ghost's hole", on(25.5, 12.25), scene.ID{Kind: scene.Hole, Row: car.ChassisLower, Index: 0}},
		{"where an upper bar's line runs to all instant centers", center(1), scene.ID{Kind: scene.BarLine, Index: int(car.Upper)}},
		{"beside a ghost's instant center", r2.Add(center(1), r2.Vec{X: 2, Y: -9}), scene.ID{Kind: scene.InstantCenter, Ghost: 1}},
	} {
		if got := p.Pick(c.at); got != c.want {
			t.Errorf("%s: picked %+v, want %+v", c.what, got, c.want)
		}
	}
	if at, ok := p.Pivot(car.ChassisLower); !ok || r2.Norm(r2.Sub(at, on(25.5, 11.5))) > 1e-6 {
		t.Errorf("the setup's own pivot is at %v", at)
	}
}

func TestGhostsNameThemselves(t *testing.T) {
	r, _, o := compared(t, false)
	for id, want := range map[scene.ID]string{
		{Kind: scene.LowerBar, Ghost: 1}:                               `Lower bar of "lower bar up", 23.03 in pin to pin; push `,
		{Kind: scene.BarLine, Index: int(car.Upper), Ghost: 1}:         `Line of the upper bars of "lower bar up"`,
		{Kind: scene.Pivot, Row: car.ChassisLower, Index: 0, Ghost: 1}: `Lower chassis hole 1 of "lower bar up"; 25.5 in forward, 12.25 in above the ground`,
		{Kind: scene.InstantCenter, Ghost: 1}:                          `Instant center of "lower bar up"; `,
		{Kind: scene.LowerBar, Ghost: 2}:                               `Lower bar of "lower bar down", 23`,
		{Kind: scene.Pivot, Row: car.ChassisLower, Index: 2, Ghost: 2}: `Lower chassis hole 3 of "lower bar down"; 25.5 in forward, 10.75 in above the ground`,
	} {
		if got := say(id, r, &r.Ride, o); !strings.HasPrefix(got, want) {
			t.Errorf("%+v: %q, want %q", id, got, want)
		}
	}
	_, _, o = compared(t, true)
	lower := scene.ID{Kind: scene.LowerBar, Ghost: 1}
	if got := say(lower, r, &r.Ride, o); !strings.Contains(got, "left: push 4,496 lb") || !strings.Contains(got, "right: push 8,992 lb") {
		t.Error(got)
	}
	// Without a launch of its own its forces are not known.
	lower.Ghost = 2
	if got := say(lower, r, &r.Ride, o); strings.Contains(got, "lb") {
		t.Error(got)
	}
}

// Parallel bars have no instant center to be named at.
func TestAGhostWithParallelBarsIsNamed(t *testing.T) {
	r := reference(t)
	q := edited(t, r, level)
	if q.Ride.HasInstantCenter {
		t.Fatalf("the bars meet at %v", q.Ride.InstantCenter)
	}
	o := options()
	o.Ghosts = []side.Ghost{{Name: "level", Result: q, Station: &q.Ride}}
	p := picture(r, &r.Ride, o)
	words := labels(p, scene.UpperBar)
	if len(words) != 2 || words[0] != "level" || len(findGhost(p, scene.InstantCenter, 1)) != 0 {
		t.Errorf("labels %q", words)
	}
}

// level puts both bars level.
func level(c *car.Car) { c.Chassis.Upper[2].Y, c.Chassis.Lower[1].Y = 22.5*inch, 11*inch }

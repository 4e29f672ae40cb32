package scene_test

import (
	"cmp"
	"context"
	"math"
	"slices"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// top looks down on the same items that the side view lists: forward is to the
// right and left is up. What is alike on both sides is seen twice, and what is
// higher covers what is lower.
type top struct {
	result  *analysis.Result
	options side.Options
	list    scene.List
}

var _ scene.Viewpoint = (*top)(nil)

// Fill implements scene.Viewpoint.
func (v *top) Fill(l *scene.List, p scene.Pointer) {
	v.options.Hot, v.options.Held = p.Hot, p.Held
	side.Build(&v.list, v.result, &v.result.Ride, v.options)
	l.Clear()
	for _, item := range v.list.Items {
		if item.ID.Side != scene.Both || !slices.ContainsFunc(item.Points, func(p r3.Vec) bool { return p.Y != 0 }) {
			l.Add(item)
			continue
		}
		for _, s := range []scene.Side{scene.Left, scene.Right} {
			twin := item
			twin.ID.Side = s
			twin.Points = l.Points(item.Points...)
			for i := range twin.Points {
				if s == scene.Left {
					twin.Points[i].Y *= -1
				}
			}
			l.Add(twin)
		}
	}
	height := func(i scene.Item) float64 {
		return slices.MaxFunc(i.Points, func(a, b r3.Vec) int { return cmp.Compare(a.Z, b.Z) }).Z
	}
	slices.SortStableFunc(l.Items, func(a, b scene.Item) int { return cmp.Compare(height(a), height(b)) })
}

// Plane implements scene.Viewpoint.
func (v *top) Plane() scene.Plane {
	return scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Across: "x", Upright: "y"}
}

// Fits implements scene.Viewpoint.
func (v *top) Fits() []scene.Fit {
	return []scene.Fit{{Key: "f", Framing: func(width, height float64) scene.Framing {
		half := v.result.Car.Body.TrackRear
		return scene.Framing{View: scene.Fitted(v.Plane(), width, height, r2.Vec{X: -0.5, Y: -half}, r2.Vec{X: 1.5, Y: half})}
	}}}
}

// Describe implements scene.Viewpoint.
func (v *top) Describe(id scene.ID, p scene.Pointer) []string {
	lines := side.Describe(id, v.result, &v.result.Ride, v.options)
	if name := map[scene.Side]string{scene.Left: "left", scene.Right: "right"}[id.Side]; name != "" {
		lines[0] += ", " + name
	}
	return lines
}

// Hands implements scene.Viewpoint.
func (v *top) Hands() scene.Hands { return nil }

// look fills and projects what is seen from a viewpoint.
func look(v scene.Viewpoint) *scene.Picture {
	var l scene.List
	v.Fill(&l, scene.Pointer{})
	p := new(scene.Picture)
	p.Project(l.Items, v.Fits()[0].Framing(1000, 700).View)
	return p
}

// fromTop looks down on the reference car.
func fromTop(t *testing.T, o side.Options) (*car.Car, *top) {
	t.Helper()
	f, err := carfile.Read("../../testdata/reference.toml", carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	// Bars that are farther apart at the chassis, the upper ones more than the lower.
	f.Car.Chassis.SpreadUpper, f.Car.Chassis.SpreadLower = 0.9, 0.7
	f.Car.Housing.SpreadUpper, f.Car.Housing.SpreadLower = 0.8, 0.5
	r, err := analysis.Run(context.Background(), f.Car, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return f.Car, &top{result: r, options: o}
}

// The side view's items have all that another view needs: from above the pivots
// stand where the car file says, left and right, and the highest hole is picked
// there.
func TestTheSameItemsAreSeenFromAbove(t *testing.T) {
	c, v := fromTop(t, side.Options{Labels: true})
	p := look(v)
	spread := map[car.Row]float64{car.ChassisUpper: 0.9, car.ChassisLower: 0.7, car.HousingUpper: 0.8, car.HousingLower: 0.5}
	for _, row := range car.Rows {
		hole, used := row.Hole(c, 0), *row.Of(&c.Setups[0].Holes)
		// Of holes one above the other the highest is seen.
		want := scene.ID{Kind: scene.Pivot, Row: row, Index: used}
		for i, h := range *row.In(c) {
			if h.X == hole.X && h.Y > (*row.In(c))[want.Index].Y {
				want.Kind, want.Index = scene.Hole, i
			}
		}
		for s, y := range map[scene.Side]float64{scene.Left: spread[row] / 2, scene.Right: -spread[row] / 2} {
			at := p.View.Screen(r3.Vec{X: hole.X, Y: y, Z: 5}) // its height is not seen
			if want.Side = s; p.Pick(at) != want {
				t.Errorf("%s, side %v: picked %+v, want %+v", row, s, p.Pick(at), want)
			}
			if found, ok := p.Find(scene.ID{Kind: scene.Pivot, Side: s, Row: row, Index: used}); !ok || r2.Norm(r2.Sub(found, at)) > 1e-6 {
				t.Errorf("%s, side %v: drawn at %v, want %v", row, s, found, at)
			}
		}
	}
	// A tire's middle is half the track away from the middle of the car.
	for s, y := range map[scene.Side]float64{scene.Left: c.Body.TrackRear / 2, scene.Right: -c.Body.TrackRear / 2} {
		if got := p.Pick(p.View.Screen(r3.Vec{X: -0.2, Y: y})); got.Kind != scene.RearTire || got.Side != s {
			t.Errorf("at the tire of side %v is %+v", s, got)
		}
	}
	p.Coordinates(p.View.Screen(r3.Vec{X: 10 * units.Inch, Y: -4 * units.Inch}), units.US)
	if words := p.Tags[0].Lines[0]; words != "x 10.00 in   y −4.00 in" {
		t.Errorf("coordinates %q", words)
	}
}

// A bar is picked along its middle as the bar of its side, and named so.
func TestBarsArePickedFromAbove(t *testing.T) {
	_, v := fromTop(t, side.Options{Case: analysis.Hit})
	p := look(v)
	for _, d := range p.Drawn {
		if d.ID.Kind != scene.UpperBar && d.ID.Kind != scene.LowerBar {
			continue
		}
		middle := r2.Scale(0.5, r2.Add(d.Points[0], d.Points[1]))
		got := p.Pick(middle)
		if got != d.ID || got.Side == scene.Both {
			t.Errorf("on %+v is %+v", d.ID, got)
		}
		if left := p.View.World(middle).Y > 0; left != (got.Side == scene.Left) {
			t.Errorf("%+v is drawn at %v", d.ID, p.View.World(middle))
		}
		if words := v.Describe(got, scene.Pointer{}); len(words) < 2 || words[0] != map[scene.ID]string{
			{Kind: scene.UpperBar, Side: scene.Left}: "Upper bar, 20.74 in pin to pin, left", {Kind: scene.UpperBar, Side: scene.Right}: "Upper bar, 20.74 in pin to pin, right",
			{Kind: scene.LowerBar, Side: scene.Left}: "Lower bar, 23.01 in pin to pin, left", {Kind: scene.LowerBar, Side: scene.Right}: "Lower bar, 23.01 in pin to pin, right",
		}[got] {
			t.Errorf("%+v is named %q", got, words)
		}
	}
	if n := len(p.Drawn); n < 20 {
		t.Errorf("only %d items are seen", n)
	}
}

// In a launch left and right are items of their own in the side view too: they
// are mirror images of each other.
func TestTheSidesOfALaunchAreSeenFromAbove(t *testing.T) {
	_, v := fromTop(t, side.Options{Launch: &side.Instant{Tension: [2][2]float64{{1000, 5000}, {-2000, -6000}}}})
	p := look(v)
	width := map[scene.ID]float64{}
	for _, d := range p.Drawn {
		if d.ID.Kind == scene.LowerBar && d.Shape == scene.Path {
			for _, q := range d.Item.Points {
				if (q.Y > 0) != (d.ID.Side == scene.Left) || math.Abs(q.Y) < 0.2 {
					t.Errorf("%+v is at %v", d.ID, q)
				}
			}
			width[d.ID] = d.Width
		}
	}
	if l, r := width[scene.ID{Kind: scene.LowerBar, Side: scene.Left}], width[scene.ID{Kind: scene.LowerBar, Side: scene.Right}]; len(width) != 2 || !(l < r) {
		t.Errorf("the lower bars are drawn %v wide", width)
	}
}

package side

import (
	"context"
	"slices"
	"testing"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"

	"gonum.org/v1/gonum/spatial/r2"
)

// within tells whether a point is in the picture, with at least some pixels to
// its edges.
func within(v scene.View, p r2.Vec, room float64) bool {
	at := v.Screen(p)
	return at.X >= room && at.Y >= room && at.X <= v.Width-room && at.Y <= v.Height-room
}

// All but one dot in twenty of each direction are in the picture, the faint ones
// left out of account.
func TestFitCloudShowsTheDots(t *testing.T) {
	for name, r := range map[string]*analysis.Result{"reference": reference(t), "demo": demo(t)} {
		c := clouded(t, r)
		low, high := linkCorners(r)
		size := r2.Sub(high, low)
		for _, picture := range []r2.Vec{{X: 700, Y: 650}, {X: 1200, Y: 500}, {X: 400, Y: 900}} {
			v := FitCloud(picture.X, picture.Y, r, c)
			count, cut := 0, 0
			for _, p := range c.points[c.faint:] {
				if p.X > high.X+1.5*size.X || p.Y > high.Y+1.5*size.Y || p.X < low.X-size.X/2 || p.Y < low.Y-size.Y/4 {
					continue
				}
				count++
				if !within(v, p, 20) {
					cut++
				}
			}
			if count < 20 || float64(cut) > 0.1*float64(count) {
				t.Errorf("%s at %v: %d of %d near dots are cut off", name, picture, cut, count)
			}
			for _, p := range targetCorners(r.Car) {
				if !within(v, p, 20) {
					t.Errorf("%s at %v: the target's corner is at %v", name, picture, v.Screen(p))
				}
			}
		}
	}
}

// Combinations far off do not make the car small, nor do they take the place of
// those that are near.
func TestFitCloudPassesFarDotsOver(t *testing.T) {
	r := reference(t)
	c := clouded(t, r)
	want := slices.Clone(c.points)
	for i := range c.points {
		if i%2 == 0 {
			c.points[i].X = 400 * inch
		}
	}
	v := FitCloud(700, 650, r, c)
	low, high := linkCorners(r)
	if link := FitLink(700, 650, r); v.Scale < link.Scale/3.1 || v.Screen(r2.Vec{}).X < 0 {
		t.Errorf("scale %v, of the link %v; contact at %v", v.Scale, link.Scale, v.Screen(r2.Vec{}))
	}
	from, to, ok := c.bounds(low, r2.Add(high, r2.Sub(high, low)))
	if !ok || to.X > 200*inch || from.X > to.X {
		t.Errorf("bounds from %v to %v", from, to)
	}
	// Bounds asked for within another box are those of that box.
	copy(c.points, want)
	if _, _, ok := c.bounds(r2.Vec{X: 500, Y: 500}, r2.Vec{X: 501, Y: 501}); ok {
		t.Error("there are bounds where no dots are")
	}
}

// The target is in the picture as a whole, wherever the bars meet, and one far
// off does not make the car small.
func TestFitTarget(t *testing.T) {
	parallel := reference(t).Car.Clone()
	parallel.Chassis.Upper[2].Y, parallel.Chassis.Lower[1].Y = 22.5*inch, 11*inch
	for name, r := range map[string]*analysis.Result{"reference": reference(t), "parallel": run(t, parallel)} {
		if r.Ride.HasInstantCenter != (name == "reference") {
			t.Fatalf("%s has an instant center: %v", name, r.Ride.HasInstantCenter)
		}
		for _, picture := range []r2.Vec{{X: 700, Y: 650}, {X: 1200, Y: 500}, {X: 340, Y: 900}} {
			v := FitTarget(picture.X, picture.Y, r)
			for _, p := range append(targetCorners(r.Car), r2.Vec{}) {
				if !within(v, p, 25) {
					t.Errorf("%s at %v: %v is drawn at %v", name, picture, p, v.Screen(p))
				}
			}
		}
	}
	far := reference(t).Car.Clone()
	far.Check.TargetICX, far.Check.TargetICZ = [2]float64{300 * inch, 390 * inch}, [2]float64{100 * inch, 140 * inch}
	r := run(t, far)
	if v, link := FitTarget(700, 650, r), FitLink(700, 650, r); v.Scale < link.Scale/3.1 || !within(v, r2.Vec{}, 20) {
		t.Errorf("scale %v, of the link %v; contact at %v", v.Scale, link.Scale, v.Screen(r2.Vec{}))
	}
}

// run analyzes a car.
func run(t testing.TB, c *car.Car) *analysis.Result {
	t.Helper()
	r, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// demo analyzes the car with the most combinations among the examples.
func demo(t testing.TB) *analysis.Result {
	t.Helper()
	return analyzed(t, "../../../assets/cars/saltgrass-7.toml")
}

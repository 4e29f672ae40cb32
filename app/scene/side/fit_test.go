package side_test

import (
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// pictures are sizes of pictures: of a usual one, a wide and a tall one [px].
var pictures = []r2.Vec{{X: 700, Y: 650}, {X: 1200, Y: 500}, {X: 340, Y: 900}}

// targetOf returns the corners of a car's target for the instant center.
func targetOf(c *car.Car) []r3.Vec {
	x, z := c.Check.TargetICX, c.Check.TargetICZ
	return []r3.Vec{{X: x[0], Z: z[0]}, {X: x[1], Z: z[0]}, {X: x[0], Z: z[1]}, {X: x[1], Z: z[1]}}
}

// Nearly all dots that are not far off are in the picture. Those far off, which
// are many, neither make the car small nor take the place of the others.
func TestAllCentersAreInThePicture(t *testing.T) {
	far := 0
	for name, r := range map[string]*analysis.Result{"reference": reference(t), "demo": demo(t)} {
		c := cloudOf(t, r)
		points := swarmOf(t, picture(r, &r.Ride, withCloud(c))).Item.Points
		for _, size := range pictures {
			v := side.ViewOfCloud(size.X, size.Y, r, c)
			count, cut := 0, 0
			for _, p := range points {
				if p.X < 0 || p.X > 80*inch || p.Z < 0 || p.Z > 50*inch {
					far++
					continue
				}
				count++
				if !within(v, v.Screen(p), 20) {
					cut++
				}
			}
			if count < 20 || float64(cut) > 0.1*float64(count) {
				t.Errorf("%s at %v: %d of %d near dots are cut off", name, size, cut, count)
			}
			for _, p := range append(targetOf(r.Car), r3.Vec{}) {
				if !within(v, v.Screen(p), 20) {
					t.Errorf("%s at %v: %v is drawn at %v", name, size, p, v.Screen(p))
				}
			}
			if bars := side.ViewOfBars(size.X, size.Y, r); v.Scale < bars.Scale/3.1 {
				t.Errorf("%s at %v: scale %v, of the bars %v", name, size, v.Scale, bars.Scale)
			}
		}
	}
	if far < 100 {
		t.Errorf("only %d dots are far off: the test proves little", far)
	}
}

// A cloud that was fitted to one car is fitted to another as if it were new.
func TestACloudFitsAnotherCar(t *testing.T) {
	r := demo(t)
	c := cloudOf(t, r)
	side.ViewOfCloud(700, 650, r, c)
	q := edited(t, r, func(c *car.Car) { c.Chassis.Lower[2].X += 50 * inch })
	if got, want := side.ViewOfCloud(700, 650, q, c), side.ViewOfCloud(700, 650, q, cloudOf(t, r)); got != want {
		t.Errorf("view %+v, want %+v", got, want)
	}
}

// The target is in the picture as a whole, wherever the bars meet, and one far
// off does not make the car small.
func TestTheTargetIsInThePicture(t *testing.T) {
	for name, r := range map[string]*analysis.Result{"reference": reference(t), "parallel": edited(t, reference(t), level)} {
		if r.Ride.HasInstantCenter != (name == "reference") {
			t.Fatalf("%s has an instant center: %v", name, r.Ride.HasInstantCenter)
		}
		for _, size := range pictures {
			v := side.ViewOfTarget(size.X, size.Y, r)
			for _, p := range append(targetOf(r.Car), r3.Vec{}) {
				if !within(v, v.Screen(p), 25) {
					t.Errorf("%s at %v: %v is drawn at %v", name, size, p, v.Screen(p))
				}
			}
		}
	}
	far := edited(t, reference(t), func(c *car.Car) {
		c.Check.TargetICX, c.Check.TargetICZ = [2]float64{300 * inch, 390 * inch}, [2]float64{100 * inch, 140 * inch}
	})
	if v, bars := side.ViewOfTarget(700, 650, far), side.ViewOfBars(700, 650, far); v.Scale < bars.Scale/3.1 || !within(v, v.Screen(r3.Vec{}), 20) {
		t.Errorf("scale %v, of the bars %v; contact at %v", v.Scale, bars.Scale, v.Screen(r3.Vec{}))
	}
}

// Both tires, all holes and the instant center are in the pictures that are
// fitted to them, of every size.
func TestBarsAndCarAreInThePicture(t *testing.T) {
	for name, r := range map[string]*analysis.Result{"reference": reference(t), "demo": demo(t)} {
		for _, size := range pictures {
			bars, whole := side.ViewOfBars(size.X, size.Y, r), side.ViewOfCar(size.X, size.Y, r)
			for _, d := range project(r, &r.Ride, options(), bars).Drawn {
				switch d.ID.Kind {
				case scene.Hole, scene.Pivot, scene.InstantCenter:
					if !within(bars, d.Points[0], 10) {
						t.Errorf("%s at %v: %+v is drawn at %v", name, size, d.ID, d.Points[0])
					}
				}
			}
			for _, d := range project(r, &r.Ride, options(), whole).Drawn {
				if d.ID.Kind == scene.RearTire || d.ID.Kind == scene.FrontTire {
					if !within(whole, d.Points[0], d.Radius+10) {
						t.Errorf("%s at %v: a tire is drawn at %v", name, size, d.Points[0])
					}
				}
			}
		}
	}
}

package parts_test

import (
	"context"
	"math"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// example analyzes an example car.
func example(t testing.TB, name string) *analysis.Result {
	t.Helper()
	data, err := assets.Cars.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Decode("car.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(context.Background(), file.Car, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// plane is that of the side view.
var plane = scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Z: 1}}

// A car that stands at a travel has its bodies where the pose of its linkage has them.
func TestStandingIsThePose(t *testing.T) {
	for _, name := range assets.CarNames() {
		r := example(t, name)
		for i := range r.Travel {
			s := &r.Travel[i]
			p := &s.Pose
			st := parts.Standing(r, s)
			for _, h := range []struct {
				what string
				got  r3.Vec
				want r2.Vec
			}{
				{"chassis upper", st.Chassis.At(r3.Vec{X: p.ChassisUpper.X, Z: p.ChassisUpper.Y}), p.Ground.Point(p.ChassisUpper)},
				{"axle", st.Axle.At(r3.Vec{}), p.Ground.Point(p.Axle)},
				{"housing lower", hole(r, st, car.HousingLower), p.Ground.Point(p.HousingLower)},
				{"housing upper", hole(r, st, car.HousingUpper), p.Ground.Point(p.HousingUpper)},
				{"front wheel", r3.Scale(0.5, r3.Add(st.Front[0], st.Front[1])), p.Ground.Point(p.FrontWheel)},
			} {
				if math.Hypot(h.got.X-h.want.X, h.got.Z-h.want.Y) > 1e-9 {
					t.Errorf("%s at %v m: the %s is at %v, want %v", name, p.Travel, h.what, h.got, h.want)
				}
			}
		}
	}
}

// hole is where a hole of the housing is in a stance, in the middle of the car.
func hole(r *analysis.Result, st parts.Stance, row car.Row) r3.Vec {
	h := row.Hole(r.Car, 0)
	return st.Axle.At(r3.Vec{X: h.X, Z: h.Y})
}

// Tires stand on the ground, flat where they do, and reach as high as their radius without
// load says.
func TestTiresStandOnTheGround(t *testing.T) {
	for _, name := range assets.CarNames() {
		r := example(t, name)
		var l scene.List
		var b parts.Builder
		b.Start(&l, r.Car, parts.Standing(r, &r.Ride), plane)
		b.Wheels()
		b.Flush()
		for _, kind := range []scene.Kind{scene.RearTire, scene.FrontTire} {
			low, high, flat := math.Inf(1), math.Inf(-1), 0
			for _, item := range l.Items {
				if item.ID.Kind != kind {
					continue
				}
				for _, q := range item.Points {
					low, high = math.Min(low, q.Z), math.Max(high, q.Z)
					if q.Z == 0 {
						flat++
					}
				}
			}
			loaded := r.Car.Tires.RearRadius
			if kind == scene.FrontTire {
				loaded = r.Car.Tires.FrontRadius
			}
			if low != 0 || flat < 4 || high < 2*loaded || high > 2.2*loaded {
				t.Errorf("%s: a tire of radius %v reaches from %v to %v m, %d corners on the ground", name, loaded, low, high, flat)
			}
		}
	}
}

// Under thrust the tread lags behind the rim: what stands on the ground is moved to the rear,
// so on top the sidewall leans ahead of where it would be without.
func TestTiresWindUp(t *testing.T) {
	r := example(t, assets.DemoCar)
	ribs := func(windUp float64) (lean float64) {
		st := parts.Standing(r, &r.Ride)
		st.WindUp = [2]float64{windUp, windUp}
		var l scene.List
		var b parts.Builder
		b.Start(&l, r.Car, st, plane)
		b.Wheels()
		b.Flush()
		for _, item := range l.Items {
			if item.ID == (scene.ID{Kind: scene.RearTire, Side: scene.Right}) && len(item.Points) == 3 {
				// From the rim to the tread, in the direction of rolling.
				in, out := r3.Sub(item.Points[0], st.Rear[1]), r3.Sub(item.Points[2], st.Rear[1])
				lean += math.Remainder(math.Atan2(out.X, out.Z)-math.Atan2(in.X, in.Z), 2*math.Pi)
			}
		}
		return lean
	}
	if straight := ribs(0); math.Abs(straight) > 0.2 { // those on the ground are bent by it
		t.Errorf("without thrust the ribs lean by %v", straight)
	}
	if !(ribs(0.1) < ribs(0)-0.3) {
		t.Error("under thrust the tread does not lag behind the rim")
	}
}

// Whatever is drawn of a car at ride height is in its box, and parts are listed from the back
// to the front.
func TestBoxAndOrder(t *testing.T) {
	for _, name := range assets.CarNames() {
		r := example(t, name)
		low, high := parts.Box(r.Car)
		for _, eye := range []scene.Plane{plane, {Right: r3.Vec{Y: -1}, Up: r3.Vec{Z: 1}}, {Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}}} {
			var l scene.List
			var b parts.Builder
			b.Start(&l, r.Car, parts.Standing(r, &r.Ride), eye)
			b.Frame()
			b.Wheels()
			b.Housing()
			b.CoilOvers()
			b.Driveshaft()
			b.Locator(0)
			b.WheelieBar()
			b.Brackets()
			var loads [len(launch.Bars)]parts.BarLoad
			b.Bars(0, &loads)
			b.Flush()
			kinds := map[scene.Kind]int{}
			for _, item := range l.Items {
				kinds[item.ID.Kind]++
				for _, q := range item.Points {
					const slack = 0.03
					if q.X < low.X-slack || q.X > high.X+slack || q.Y < low.Y-slack || q.Y > high.Y+slack || q.Z < low.Z-slack || q.Z > high.Z+slack || math.IsNaN(q.X+q.Y+q.Z) {
						t.Fatalf("%s: %+v reaches to %v, out of %v to %v", name, item.ID, q, low, high)
					}
				}
			}
			for _, kind := range []scene.Kind{scene.FrameTube, scene.RearTire, scene.FrontTire, scene.HousingBody, scene.ChassisBody, scene.Spring, scene.Driveshaft, scene.Locator, scene.WheelieBar, scene.UpperBar, scene.LowerBar} {
				// Not every car file gives a driveshaft and a wheelie bar.
				missing := kind == scene.Driveshaft && !r.Car.Driveline.Given || kind == scene.WheelieBar && r.Car.Launch.WheelieBar.Reach == 0
				if (kinds[kind] == 0) != missing {
					t.Errorf("%s: %d items of kind %v are drawn", name, kinds[kind], kind)
				}
			}
			far, near := l.Items[0].Points[0], l.Items[len(l.Items)-1].Points[0]
			if r3.Dot(far, eye.Eye()) > r3.Dot(near, eye.Eye())+1e-9 && l.Items[0].ID.Kind != scene.FrameTube {
				t.Errorf("%s: %+v is listed before %+v", name, l.Items[0].ID, l.Items[len(l.Items)-1].ID)
			}
		}
	}
}

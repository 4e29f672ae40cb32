package roll_test

import (
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/internal/cartest"
	"bowline/model/roll"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

func read(t testing.TB, path string) *car.Car {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

func of(t testing.TB, c *car.Car) *roll.Result {
	t.Helper()
	r, err := roll.Of(c, 0, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Two upright springs, b apart, resist roll with k b²/2; one that leans by α toward the
// middle of the car in side view with cos² α of that. Bars in parallel, one slope and
// one plan, resist with nothing.
func TestStiffnessAgainstSprings(t *testing.T) {
	c := read(t, cars[0])
	c.Springs.RearAxleMount, c.Springs.RearChassisMount = r2.Vec{X: -0.05, Y: -0.07}, r2.Vec{X: -0.05, Y: 0.8}
	c.Launch.Suspension.RearAntiRoll = 5000
	b := c.Launch.Suspension.RearSpread
	want := c.Springs.RearRate * b * b / 2
	r := of(t, c)
	if math.Abs(r.Springs-want) > 1e-9*want || r.AntiRoll != 5000 || want == 0 {
		t.Errorf("springs %v, anti-roll bar %v N·m/rad, want %v and 5000", r.Springs, r.AntiRoll, want)
	}
	if ratio, ok := r.OverSprings(); !ok || math.Abs(ratio-r.Ride.Stiffness/(want+5000)) > 1e-9*ratio || ratio < roll.Binding {
		t.Errorf("ratio %v of %v N·m/rad, %v", ratio, r.Ride.Stiffness, ok)
	}
	c.Springs.RearChassisMount.X += 0.3
	lean := math.Atan2(0.3, 0.8-(c.Tires.RearRadius-0.07))
	if got := of(t, c).Springs; math.Abs(got-want*math.Cos(lean)*math.Cos(lean)) > 1e-9*want {
		t.Errorf("leaning springs %v N·m/rad", got)
	}
	parallel(c)
	if r := of(t, c); r.Ride.Stiffness > 1e-6 {
		t.Errorf("parallel bars resist with %v N·m/rad", r.Ride.Stiffness)
	} else if ratio, ok := r.OverSprings(); !ok || ratio > 1e-9 {
		t.Errorf("parallel bars: ratio %v, %v", ratio, ok)
	}
}

// parallel makes the bars of the first setup level, all in the car's direction.
func parallel(c *car.Car) {
	c.Chassis.SpreadUpper, c.Housing.SpreadUpper = 0.9, 0.9
	c.Chassis.SpreadLower, c.Housing.SpreadLower = 0.9, 0.9
	for _, rows := range [][2]car.Row{{car.ChassisUpper, car.HousingUpper}, {car.ChassisLower, car.HousingLower}} {
		at := rows[1].Hole(c, 0)
		(*rows[0].In(c))[*rows[0].Of(&c.Setups[0].Holes)].Y = c.Tires.RearRadius + at.Y
	}
}

// What is found at a travel is what the linkage has there, and the greatest over the
// travel are not below that; without roll both sides of a symmetric car are alike but
// for its locator.
func TestResultIsTheLinkage(t *testing.T) {
	for _, path := range cars {
		c := read(t, path)
		c.UpperBar.RodEndAngle, c.LowerBar.RodEndAngle = 12*degree, 0
		r := of(t, c)
		for _, travel := range []float64{0, c.Springs.RearBump, -c.Springs.RearDroop, -c.Springs.RearDroop / 2} {
			s, err := r.At(travel)
			if err != nil {
				t.Fatal(path, err)
			}
			if travel == 0 && s != r.Ride {
				t.Errorf("%s: at ride height %+v and %+v", path, s, r.Ride)
			}
			level, _ := r.Linkage.Pose(travel, 0)
			left, _ := r.Linkage.Pose(travel, roll.Tilt)
			right, _ := r.Linkage.Pose(travel, -roll.Tilt)
			stiffness, _ := r.Linkage.Stiffness(travel)
			limit, end, ok := r.Linkage.Limit(travel, roll.Limits{12 * degree, 12 * degree})
			if math.Abs(s.Stiffness-stiffness) > 1e-6*stiffness || math.Abs(s.Limit-limit) > 1e-7 || s.End != end || s.Limited != ok || !ok || s.Short {
				t.Errorf("%s at %v m: %+v, the linkage has %v N·m/rad, %v by %v", path, travel, s, stiffness, limit, end)
			}
			for k := range s.Level {
				for e := range s.Level[k] {
					tilted := max(left.Misalignment[k][e], right.Misalignment[k][e])
					if math.Abs(s.Level[k][e]-level.Misalignment[k][e]) > 1e-9 || math.Abs(s.Tilted[k][e]-tilted) > 1e-9 {
						t.Errorf("%s at %v m: bar %d is misaligned by %v and %v, the linkage by %v and %v", path, travel, k, s.Level[k], s.Tilted[k], level.Misalignment[k], tilted)
					}
					if r.Most.Level[k][e] < s.Level[k][e]-1e-9 || r.Most.Tilted[k][e] < s.Tilted[k][e]-1e-9 {
						t.Errorf("%s at %v m: beyond the greatest over the travel", path, travel)
					}
				}
			}
		}
	}
}

// Any car's numbers are finite; angles are between 0 and 90°.
func TestAnyResult(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, carfile.Stock())
		r, err := roll.Of(c, 0, carfile.Stock())
		if err != nil {
			return
		}
		ratio, _ := r.OverSprings()
		for what, x := range map[string]float64{"stiffness": r.Ride.Stiffness, "springs": r.Springs, "anti-roll bar": r.AntiRoll, "ratio": ratio} {
			if !(x >= 0) || math.IsInf(x, 0) {
				t.Fatalf("%s %v", what, x)
			}
		}
		if !(math.Abs(r.Ride.Limit) <= roll.MaxRoll) {
			t.Fatalf("limit %v", r.Ride.Limit)
		}
		for k := range r.Most.Level {
			for e := range r.Most.Level[k] {
				for _, m := range []roll.Misalignment{r.Ride.Level, r.Ride.Tilted, r.Most.Level, r.Most.Tilted} {
					if !(m[k][e] >= 0 && m[k][e] <= math.Pi/2) {
						t.Fatalf("misaligned by %v", m[k][e])
					}
				}
			}
		}
	})
}

func BenchmarkOf(b *testing.B) {
	c := read(b, cars[1])
	c.UpperBar.RodEndAngle, c.LowerBar.RodEndAngle = 15*degree, 15*degree
	for b.Loop() {
		of(b, c)
	}
}

// BenchmarkAt is what a travel that is dragged costs.
func BenchmarkAt(b *testing.B) {
	c := read(b, cars[1])
	c.UpperBar.RodEndAngle, c.LowerBar.RodEndAngle = 15*degree, 15*degree
	r := of(b, c)
	for b.Loop() {
		if _, err := r.At(-0.05); err != nil {
			b.Fatal(err)
		}
	}
}

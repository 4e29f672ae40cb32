package holes_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/internal/cartest"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// rideWith analyzes a setup at ride height with one of its holes moved.
func rideWith(t interface{ Fatal(...any) }, c *car.Car, setup int, row car.Row, by r2.Vec) *analysis.Station {
	d := c.Clone()
	hole := &(*row.In(d))[*row.Of(&d.Setups[setup].Holes)]
	*hole = r2.Add(*hole, by)
	r, err := analysis.Run(context.Background(), d, carfile.Stock(), analysis.Options{Setup: setup})
	if err != nil {
		t.Fatal(err)
	}
	return &r.Ride
}

// The rates are those of full analyses with the hole moved a little either way.
func TestRatesAgainstFiniteDifferences(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, carfile.Stock())
		setup := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "setup")
		// Room for a hole that moves where the travel ends near closure.
		c.Springs.RearDroop, c.Springs.RearBump = min(c.Springs.RearDroop, 0.02), min(c.Springs.RearBump, 0.02)
		now := rideWith(t, c, setup, car.ChassisUpper, r2.Vec{})
		// Lines that are nearly parallel or upright change too fast for differences.
		if !now.HasInstantCenter || math.Hypot(now.InstantCenter.X, now.InstantCenter.Y) > 8 || math.Abs(now.InstantCenter.X) < 0.2 {
			return
		}
		worth := holes.Sensitivity(c, setup, nil)
		for _, row := range car.Rows {
			w := worth[row]
			if w.Row != row || !w.HasInstantCenter || !w.HasAntiSquat {
				t.Fatalf("%v: %+v", row, w)
			}
			const h = 2e-6
			for _, way := range []struct {
				by                      r2.Vec
				ahead, above, antiSquat float64
			}{
				{r2.Vec{X: h}, w.Ahead.X, w.Above.X, w.AntiSquat.X},
				{r2.Vec{Y: h}, w.Ahead.Y, w.Above.Y, w.AntiSquat.Y},
			} {
				high, low := rideWith(t, c, setup, row, way.by), rideWith(t, c, setup, row, r2.Scale(-1, way.by))
				for _, pair := range [][2]float64{
					{way.ahead, (high.InstantCenter.X - low.InstantCenter.X) / (2 * h)},
					{way.above, (high.InstantCenter.Y - low.InstantCenter.Y) / (2 * h)},
					{way.antiSquat, (high.AntiSquat - low.AntiSquat) / (2 * h)},
				} {
					if !(math.Abs(pair[0]-pair[1]) <= 2e-5*(1+math.Abs(pair[1]))*(1+math.Abs(pair[1])/100)) {
						t.Fatalf("%v by %v: rate %v, differences %v", row, way.by, pair[0], pair[1])
					}
				}
				if way.by.Y != 0 && math.Abs(way.antiSquat) > 0.01 && math.Abs(way.ahead) > 0.01 {
					compared++
				}
			}
		}
	})
	if compared < 100 {
		t.Errorf("only %d rates of the random cars are not nothing", compared)
	}
}

// The same rates by geometry: a line through A and B that B moves across by n
// moves across by t·n at t bar lengths from A, and its meeting point with the
// other line slides along that one.
func TestRatesAgainstSlidingPoint(t *testing.T) {
	c := readCar(t, "../../testdata/reference.toml")
	worth := holes.Sensitivity(c, 0, nil)
	axle := r2.Vec{Y: 16 * inch}
	ends := [2][2]r2.Vec{}
	for i, rows := range [2][2]car.Row{{car.HousingUpper, car.ChassisUpper}, {car.HousingLower, car.ChassisLower}} {
		ends[i] = [2]r2.Vec{r2.Add(axle, rows[0].Hole(c, 0)), rows[1].Hole(c, 0)}
	}
	slope := func(e [2]r2.Vec) float64 { return (e[1].Y - e[0].Y) / (e[1].X - e[0].X) }
	u, l := slope(ends[0]), slope(ends[1])
	x := (ends[1][0].Y - ends[0][0].Y - l*ends[1][0].X + u*ends[0][0].X) / (u - l)
	z := ends[0][0].Y + u*(x-ends[0][0].X)
	for _, row := range car.Rows {
		mine, other, e := u, l, ends[0]
		if row.Pair() == car.Lower {
			mine, other, e = l, u, ends[1]
		}
		part := (x - e[0].X) / (e[1].X - e[0].X)
		if !row.OnChassis() {
			part = 1 - part
		}
		// Up by one, the line is higher by part where it met the other.
		ahead := part / (other - mine)
		above := other * ahead
		antiSquat := (above*x - z*ahead) / (x * x) * 105 / 19.5
		w := worth[row]
		for _, pair := range [][2]float64{
			{w.Ahead.Y, ahead}, {w.Above.Y, above}, {w.AntiSquat.Y, antiSquat},
			// Forward by one is down by the bar's slope.
			{w.Ahead.X, -mine * ahead}, {w.Above.X, -mine * above}, {w.AntiSquat.X, -mine * antiSquat},
		} {
			if !(math.Abs(pair[0]-pair[1]) <= 1e-9*(1+math.Abs(pair[1]))) || pair[1] == 0 {
				t.Errorf("%v: %v, want %v", row, pair[0], pair[1])
			}
		}
	}
}

// Parallel bars keep a rate of anti-squat, that to which nearly parallel ones
// come, though their instant center has none.
func TestRatesOfParallelBars(t *testing.T) {
	parallel := func(tilt float64) *car.Car {
		c := readCar(t, "../../testdata/reference.toml")
		axle := r2.Vec{Y: c.Tires.RearRadius}
		c.Chassis.Upper[0] = r2.Add(axle, r2.Add(c.Housing.Upper[0], r2.Vec{X: 0.5, Y: 0.1 + tilt}))
		c.Chassis.Lower[0] = r2.Add(axle, r2.Add(c.Housing.Lower[0], r2.Vec{X: 0.6, Y: 0.12}))
		c.Setups = []car.Setup{{Name: "parallel"}}
		return c
	}
	exact, nearly := holes.Sensitivity(parallel(0), 0, nil), holes.Sensitivity(parallel(1e-7), 0, nil)
	for _, row := range car.Rows {
		a, b := exact[row], nearly[row]
		if a.HasInstantCenter || a.Ahead != (r2.Vec{}) || a.Above != (r2.Vec{}) || !a.HasAntiSquat || !b.HasInstantCenter {
			t.Errorf("%v: %+v", row, a)
		}
		if !(r2.Norm(r2.Sub(a.AntiSquat, b.AntiSquat)) < 1e-4*r2.Norm(a.AntiSquat)) || math.Abs(a.AntiSquat.Y) < 0.1 {
			t.Errorf("%v: %v, nearly parallel %v", row, a.AntiSquat, b.AntiSquat)
		}
	}
}

// A step is the difference of two full analyses; its hole is the nearest one in
// that direction.
func TestStepsAgainstFullAnalyses(t *testing.T) {
	known, unusable := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c, table := fewHoles(t)
		setup := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "setup")
		if rapid.Bool().Draw(t, "no bar") {
			// A hole that leaves no bar to the housing's.
			c = c.Clone()
			c.Chassis.Upper = append(c.Chassis.Upper, r2.Add(r2.Vec{Y: c.Tires.RearRadius}, car.HousingUpper.Hole(c, setup)))
			table = tableOf(t, c)
		}
		run := func(h car.Holes) *analysis.Result {
			d := c.Clone()
			d.Setups = []car.Setup{{Name: "one", Holes: h}}
			r, err := analysis.Run(context.Background(), d, carfile.Stock(), analysis.Options{})
			if err != nil {
				return nil
			}
			return r
		}
		push := func(r *analysis.Result) float64 {
			most := 0.0
			for i := range r.Travel {
				most = max(most, -r.Travel[i].Loads.Hit.Lower.Tension)
			}
			return most
		}
		here := run(c.Setups[setup].Holes)
		for _, w := range holes.Sensitivity(c, setup, table) {
			list, from := *w.Row.In(c), w.Row.Hole(c, setup)
			for _, way := range []struct {
				step holes.Step
				sign float64
			}{{w.Up, 1}, {w.Down, -1}} {
				s := way.step
				for i, hole := range list {
					rise := way.sign * (hole.Y - from.Y)
					if rise > 0 && (!s.HasHole || rise < way.sign*(list[s.Hole].Y-from.Y)) {
						t.Fatalf("hole %d is nearer than %+v", i, s)
					}
				}
				if s.Known && !s.HasHole {
					t.Fatalf("%+v", s)
				}
				if !s.HasHole {
					continue
				}
				if !(way.sign*(list[s.Hole].Y-from.Y) > 0) {
					t.Fatalf("%v is not that way from %v", list[s.Hole], from)
				}
				h := c.Setups[setup].Holes
				*w.Row.Of(&h) = s.Hole
				if !s.Known {
					if len(c.CheckHoles(h, c.Capacity(carfile.Stock()), units.US)) == 0 {
						t.Fatalf("%+v can be used", s)
					}
					unusable++
					continue
				}
				there := run(h)
				known++
				if s.HasInstantCenter && s.InstantCenter != r2.Sub(there.Ride.InstantCenter, here.Ride.InstantCenter) ||
					s.HasAntiSquat && s.AntiSquat != there.Ride.AntiSquat-here.Ride.AntiSquat ||
					s.HasInstantCenter != (here.Ride.HasInstantCenter && there.Ride.HasInstantCenter) {
					t.Fatalf("%+v", s)
				}
				if math.Abs(s.LowerPush-(push(there)-push(here))) > 1e-9*push(here) {
					t.Fatalf("push changes by %v, want %v", s.LowerPush, push(there)-push(here))
				}
			}
		}
	})
	if known < 100 || unusable < 3 {
		t.Errorf("only %d steps are known, %d cannot be used", known, unusable)
	}
}

func TestStepsThatAreNotKnown(t *testing.T) {
	c, table := byHand(t)
	worth := holes.Sensitivity(c, 0, table)
	for what, step := range map[string]holes.Step{
		"the highest hole": worth[car.HousingUpper].Up, "the lowest hole": worth[car.HousingUpper].Down,
	} {
		if step.HasHole || step.Known {
			t.Errorf("beyond %s: %+v", what, step)
		}
	}
	if s := holes.Sensitivity(c, 0, nil)[car.ChassisLower].Down; !s.HasHole || s.Known {
		t.Errorf("without a search: %+v", s)
	}
	// By hand: from 9,000 lb to 8,000 lb with the lower chassis hole below it.
	s := worth[car.ChassisLower].Down
	if !s.Known || s.Hole != 1 || math.Abs(s.LowerPush/pound+1000) > 1e-6 || math.Abs(s.AntiSquat-0.2) > 1e-12 ||
		math.Abs(s.InstantCenter.X/inch+6) > 1e-9 || math.Abs(s.InstantCenter.Y/inch-2) > 1e-9 {
		t.Errorf("%+v", s)
	}
	c.Setups[0].Holes.ChassisUpper = 1
	if got := holes.Sensitivity(c, 0, table)[car.ChassisUpper].Up; !got.HasHole || !got.Known || math.Abs(got.LowerPush/pound+100) > 1e-6 || math.Abs(got.AntiSquat+0.45) > 1e-12 {
		t.Errorf("%+v", got)
	}
}

package holes_test

import (
	"context"
	"math"
	"reflect"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/holes"
	"bowline/model/internal/cartest"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// some draws a few combinations of a table.
func some(t *rapid.T, table *holes.Table, n int) []*holes.Combination {
	list := make([]*holes.Combination, n)
	for i := range list {
		list[i] = &table.Combinations[rapid.IntRange(0, len(table.Combinations)-1).Draw(t, "combination")]
	}
	return list
}

// one is the car with a single setup.
func one(c *car.Car, h car.Holes) *car.Car {
	d := c.Clone()
	d.Setups = []car.Setup{{Name: "it", Holes: h}}
	return d
}

// A combination is refused when Validate refuses a car with these holes, and
// otherwise is what the analysis of that car says. No value is no number.
func TestSearchIsTheAnalysisOfEachCombination(t *testing.T) {
	lib := carfile.Stock()
	refused, usable := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, lib)
		// A hole that no setup uses, near the housing: bars from it are short,
		// and some do not allow the travel.
		c.Chassis.Upper = append(c.Chassis.Upper, r2.Add(c.Housing.Upper[0], r2.Vec{
			X: rapid.Float64Range(0, 10).Draw(t, "ahead") * units.Inch, Y: c.Tires.RearRadius,
		}))
		travels := rapid.IntRange(3, 41).Draw(t, "travels")
		table, err := holes.Search(context.Background(), c, lib, holes.Options{Travels: travels})
		if err != nil {
			t.Fatal(err)
		}
		for i := range table.Combinations {
			finite(t, reflect.ValueOf(table.Combinations[i]))
		}
		for _, combination := range some(t, table, 20) {
			with := one(c, combination.Holes)
			problems := with.Validate(lib, units.US)
			if (len(problems) > 0) != combination.Refused || combination.Refused != (table.Refusal(combination.Holes, units.US) != "") {
				t.Fatalf("%+v: refused %v, Validate: %v", combination.Holes, combination.Refused, problems)
			}
			if combination.Refused {
				refused++
				if *combination != (holes.Combination{Holes: combination.Holes, Refused: true}) {
					t.Fatalf("values of refused holes: %+v", combination)
				}
				continue
			}
			usable++
			r, err := analysis.Run(context.Background(), with, lib, analysis.Options{Steps: travels})
			if err != nil {
				t.Fatal(err)
			}
			agree(t, combination, r)
		}
	})
	if refused < 10 || usable < 100 {
		t.Errorf("only %d refused and %d usable combinations were looked at", refused, usable)
	}
}

// finite looks at every number within v.
func finite(t *rapid.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatal("a value is no number")
		}
	case reflect.Array:
		for i := range v.Len() {
			finite(t, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, v.Field(i))
		}
	}
}

// same compares to 1e-12 of the larger of 1 and the value.
func same(t *rapid.T, what string, got, want float64) {
	if !(math.Abs(got-want) <= 1e-12*math.Max(1, math.Abs(want))) {
		t.Fatalf("%s: got %.17g, want %.17g", what, got, want)
	}
}

func agree(t *rapid.T, c *holes.Combination, r *analysis.Result) {
	if c.HasInstantCenter != r.Ride.HasInstantCenter || c.HasAntiSquat != r.Ride.HasAntiSquat {
		t.Fatal("one has an instant center or an anti-squat, the other has none")
	}
	same(t, "IC x", c.InstantCenter.X, r.Ride.InstantCenter.X)
	same(t, "IC z", c.InstantCenter.Y, r.Ride.InstantCenter.Y)
	same(t, "anti-squat", c.AntiSquat, r.Ride.AntiSquat)
	same(t, "droop", c.Closure[0], r.Droop)
	same(t, "bump", c.Closure[1], r.Bump)
	least, most := math.Inf(1), math.Inf(-1)
	down, up := math.Inf(1), math.Inf(-1)
	var peak [2][2][2]float64
	for _, s := range r.Travel {
		if s.HasAntiSquat {
			least, most = math.Min(least, s.AntiSquat), math.Max(most, s.AntiSquat)
		}
		down, up = math.Min(down, s.Pose.Turn), math.Max(up, s.Pose.Turn)
		for i, load := range []struct{ upper, lower float64 }{
			{s.Loads.Hooked.Upper.Tension, s.Loads.Hooked.Lower.Tension}, {s.Loads.Hit.Upper.Tension, s.Loads.Hit.Lower.Tension},
		} {
			for p, force := range []float64{load.upper, load.lower} {
				peak[p][i][column.Pull] = math.Max(peak[p][i][column.Pull], force)
				peak[p][i][column.Push] = math.Max(peak[p][i][column.Push], -force)
			}
		}
	}
	if least > most {
		least, most = 0, 0
	}
	same(t, "least anti-squat", c.AntiSquatRange[0], least)
	same(t, "most anti-squat", c.AntiSquatRange[1], most)
	same(t, "least turn", c.PinionRange[0], down)
	same(t, "most turn", c.PinionRange[1], up)
	for p := range peak {
		same(t, "length", c.Length[p], r.Bars[p].Length)
		for d := range 2 {
			same(t, "share", c.Share[p][d], r.Worst[p][d].Share)
			for k := range 2 {
				same(t, "peak", c.Peak[p][k][d], peak[p][k][d])
			}
		}
	}
}

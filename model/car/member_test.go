package car_test

import (
	"errors"
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
)

func reference(t *testing.T) *car.Car {
	t.Helper()
	f, err := carfile.Read("../../testdata/reference.toml", carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// Capacity found once for each pair and length is what it is without that, and
// so is what is wrong with a bar.
func TestKeptCapacity(t *testing.T) {
	c, lib := reference(t), carfile.Stock()
	c.LowerBar.OD *= 1.5
	asked := 0
	kept := car.Capacity(func(p car.Pair, length float64) (column.Result, error) {
		asked++
		return c.Capacity(lib)(p, length)
	}).Kept()
	for range 3 {
		for _, p := range car.Pairs {
			for _, length := range []float64{0.5, 0.6} {
				want, err := c.Capacity(lib)(p, length)
				if err != nil {
					t.Fatal(err)
				}
				got, err := kept(p, length)
				if err != nil || got.Length != length || got.Push != want.Push || got.Pull != want.Pull || got.Euler != want.Euler {
					t.Errorf("%v, %g m: %+v, %v; want %+v", p, length, got, err, want)
				}
			}
		}
		var wrong column.Problems
		if _, err := kept(car.Upper, -1); !errors.As(err, &wrong) || wrong[0].Field != "length" {
			t.Errorf("a bar of -1 m: %v", err)
		}
	}
	if asked != 5 {
		t.Errorf("capacity was found %d times for 5 bars", asked)
	}
}

// A bar is its tube all the way, in the material of the tables, and the locator
// is of the lower bars' material.
func TestMembers(t *testing.T) {
	c, lib := reference(t), carfile.Stock()
	c.LowerBar.Material = "1020 DOM"
	mild, _ := lib.Material("1020 DOM")
	for name, m := range map[string]column.Member{
		"lower":   c.Member(car.Lower, 0.6, lib),
		"locator": c.LocatorMember(0.6, lib),
	} {
		od, wall := c.LowerBar.OD, c.LowerBar.Wall
		if name == "locator" {
			od, wall = c.Launch.Locator.OD, c.Launch.Locator.Wall
		}
		inside := od - 2*wall
		want := 0.6 / (mild.E * math.Pi / 4 * (od*od - inside*inside))
		if m.Length() != 0.6 || !(math.Abs(m.Flexibility()/want-1) < 1e-12) {
			t.Errorf("%s: %g m, %g m/N; want %g m/N", name, m.Length(), m.Flexibility(), want)
		}
	}
	c.LowerBar.Material = "wood"
	if err := c.LocatorMember(0.6, lib).Check(); err == nil {
		t.Error("a locator of an unknown material passes")
	}
}

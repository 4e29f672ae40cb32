package study_test

import (
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/roll"
)

// Roll is that of the car as it is, in any setup, and is computed once for a car.
func TestRollIsOfTheCurrentCar(t *testing.T) {
	r := open(t)
	was := map[int]*roll.Result{}
	for setup := range r.Document().Car().Setups {
		got, err := r.Roll(setup)
		if err != nil {
			t.Fatal(err)
		}
		want, err := roll.Of(r.Document().Car(), setup, carfile.Stock())
		if err != nil {
			t.Fatal(err)
		}
		if got.Ride != want.Ride || got.Most != want.Most {
			t.Errorf("setup %d: %+v, want %+v", setup, got.Ride, want.Ride)
		}
		if again, _ := r.Roll(setup); again != got {
			t.Errorf("setup %d was computed twice", setup)
		}
		was[setup] = got
	}
	r.SetTravel(-2 * inch)
	if got, _ := r.Roll(0); got != was[0] {
		t.Error("computed again for another travel")
	}
	r.Document().Apply("Wider", func(c *car.Car) { c.LowerBar.RodEndAngle, c.Housing.SpreadUpper = 5*math.Pi/180, 30*inch })
	got, err := r.Roll(0)
	if err != nil || got == was[0] || got.Ride.Stiffness == was[0].Ride.Stiffness || !got.Ride.Limited {
		t.Errorf("after an edit %+v, before %+v; %v", got.Ride, was[0].Ride, err)
	}
}

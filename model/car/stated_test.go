package car

import (
	"reflect"
	"slices"
	"testing"
)

// A car gives what differs from its default, and what it states although it does not.
func TestSays(t *testing.T) {
	c := Defaults()
	says := func(path string, want bool) {
		t.Helper()
		if got := c.Says(path); got != want {
			t.Errorf("%s: %v, want %v", path, got, want)
		}
	}
	says("tires.sliding_grip", false)
	says("car.weight", true) // every car gives it
	says("locator.kind", false)
	c.Launch.Tires.SlidingGrip = 0.8
	says("tires.sliding_grip", true)
	for _, path := range []string{"tires.peak_slip", "drive.direction", "check.factor"} {
		c.State(path, true)
		says(path, true)
	}
	if !slices.IsSorted(c.Stated) || len(c.Stated) != 3 {
		t.Errorf("stated: %v", c.Stated)
	}
	c.State("check.factor", false)
	says("check.factor", false)
	// A rule's default says that the number is not known.
	for _, path := range []string{"car.roll_inertia", "tires.rear_spin_inertia", "car.weight", "no.such"} {
		c.State(path, true)
	}
	says("car.roll_inertia", false)
	says("tires.rear_spin_inertia", false)
	// A copy shares nothing, and what has another value needs no statement.
	d := c.Clone()
	d.Launch.Tires.PeakSlip = 0.1
	d.Settle()
	if !reflect.DeepEqual(c.Stated, []string{"drive.direction", "tires.peak_slip"}) || !reflect.DeepEqual(d.Stated, []string{"drive.direction"}) {
		t.Errorf("%v and %v", c.Stated, d.Stated)
	}
	d.State("drive.direction", false)
	if d.Stated != nil {
		t.Errorf("nothing is stated: %v", d.Stated)
	}
}

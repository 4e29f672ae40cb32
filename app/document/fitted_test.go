package document

import (
	"math"
	"testing"

	"bowline/model/car"
)

// The fixture's upper bars run from (2.5, 22.5) to (22.5, 17) in, its lower ones
// from (2.5, 11) to (25.5, 11.5) in.
var fitted = map[car.Pair]float64{
	car.Upper: math.Hypot(20, 5.5) * inch,
	car.Lower: math.Hypot(23, 0.5) * inch,
}

const inch = 0.0254

// wantFitted compares the lengths that are given with what is expected; 0 is
// that of the rule.
func wantFitted(t *testing.T, when string, c *car.Car, upper, lower bool) {
	t.Helper()
	for p, given := range map[car.Pair]bool{car.Upper: upper, car.Lower: lower} {
		got, want := p.Threads(c).Fitted, 0.0
		if given {
			want = fitted[p]
		}
		if math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: the %s was fitted at %v m, want %v m", when, p, got, want)
		}
	}
}

func TestBarsKeepTheLengthTheyWereFittedAt(t *testing.T) {
	d := newDocument(t)
	upper := func(hole int) func(*car.Car) { return func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = hole } }
	d.Apply("Use another hole", upper(0))
	wantFitted(t, "in another hole", d.Car(), true, false)
	d.Undo()
	wantFitted(t, "undone", d.Car(), false, false)
	// "high" has another upper hole, "low" another lower one.
	d.MoveSetup(2, -1)
	wantFitted(t, "sorted below the first", d.Car(), false, false)
	d.MoveSetup(1, -1)
	wantFitted(t, "sorted to the top", d.Car(), false, true)
	d.Undo()
	d.DeleteSetup(0)
	wantFitted(t, "the first one deleted", d.Car(), false, true)
	d.Undo()
	d.Apply("Move a hole", func(c *car.Car) { c.Chassis.Upper[2].Y += 0.01; c.Setups[1].Holes.HousingUpper = 1 })
	wantFitted(t, "another design", d.Car(), false, false)
}

// A drag to another hole and back is no step, and leaves the rule in force.
func TestADragThereAndBackFitsNothing(t *testing.T) {
	d := newDocument(t)
	d.Begin("Drag")
	for _, hole := range []int{0, 1} {
		d.Apply("Drag", func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = hole })
		wantFitted(t, "in the middle of a drag", d.Car(), true, false)
	}
	d.Apply("Drag", func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = 2 })
	d.End()
	wantFitted(t, "back again", d.Car(), false, false)
	if d.UndoLabel() != "" {
		t.Errorf("a drag there and back is the step %q", d.UndoLabel())
	}
}

// A length that was typed stays, whatever the bars do.
func TestATypedLengthStays(t *testing.T) {
	d := newDocument(t)
	d.Apply("Type", func(c *car.Car) { c.UpperBar.Threads.Fitted = 0.5 })
	d.Apply("Use another hole", func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = 0 })
	if got := d.Car().UpperBar.Threads.Fitted; got != 0.5 {
		t.Errorf("the typed length became %v", got)
	}
	d.Apply("Use another hole and type", func(c *car.Car) { c.Setups[0].Holes.ChassisUpper, c.UpperBar.Threads.Fitted = 1, 0.6 })
	if got := d.Car().UpperBar.Threads.Fitted; got != 0.6 {
		t.Errorf("the typed length became %v", got)
	}
}

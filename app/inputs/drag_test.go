package inputs_test

import (
	"testing"
	"time"

	"bowline/app/inputs"
	"bowline/model/car"
)

// While something is dragged the values follow at their own pace; they are
// right when the drag ends, and when the hand rests.
func TestValuesFollowADragAtTheirPace(t *testing.T) {
	d := newDesk(t)
	var waiting []func()
	d.panel.Later = func(after time.Duration, run func()) {
		if after > 200*time.Millisecond {
			t.Errorf("later is after %v", after)
		}
		waiting = append(waiting, run)
	}
	d.panel.SetOpenSections([]string{inputs.TitleCar})
	shown := func() string { return d.entry("car.wheelbase", 0).Text }
	drag := func(inches float64) {
		if problems := d.doc.Apply("Drag", func(c *car.Car) { c.Body.Wheelbase = inches * inch }); len(problems) > 0 {
			t.Fatal(problems)
		}
	}
	before := shown()
	d.doc.Begin("Drag")
	drag(106)
	drag(107)
	if shown() != before || len(waiting) != 1 {
		t.Fatalf("in the middle of a drag the panel shows %q, with %d refreshes to come", shown(), len(waiting))
	}
	waiting[0]()
	if shown() != "107" {
		t.Errorf("after a while it shows %q", shown())
	}
	drag(108)
	if len(waiting) != 2 {
		t.Fatalf("%d refreshes were asked for", len(waiting))
	}
	d.doc.End()
	if shown() != "108" {
		t.Errorf("after the drag it shows %q", shown())
	}
	d.doc.Apply("Type", func(c *car.Car) { c.Body.Wheelbase = 109 * inch })
	if shown() != "109" {
		t.Errorf("after an edit it shows %q", shown())
	}
	waiting[1]() // Nothing is left to show.
}

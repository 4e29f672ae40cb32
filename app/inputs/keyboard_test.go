package inputs_test

import (
	"testing"

	"bowline/app/inputs"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestHelp(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	says := func(want string) {
		t.Helper()
		if got := d.help().Text(); got != want {
			t.Errorf("the help is %q, want %q", got, want)
		}
	}
	says("Enter takes a value, Escape takes it back. Lengths may be typed as 22.5, 22 1/2 or 571 mm. Up and down step a number.")
	d.window.Canvas().Focus(d.entry("car.track_rear", 0))
	says("Rear track: Tire center to tire center. 10 in to 150 in.")
	d.row("check.factor").MouseIn(nil)
	says("Factor: Capacity is divided by this before a load is held against it. 1 to 20. Left empty: 2.")
	d.doc.SetUnits(units.SI)
	d.row("check.factor").MouseOut()
	says("Rear track: Tire center to tire center. 254 mm to 3810 mm.")
	d.window.Canvas().Focus(d.button(inputs.TitleSetup, "Copy"))
	says("Copy: Adds a setup with the same holes and makes it the current one.")
	d.window.Canvas().Unfocus()
	says("Enter takes a value, Escape takes it back. Lengths may be typed as 22.5, 22 1/2 or 571 mm. Up and down step a number.")
}

// Tab goes through everything from top to bottom, left to right, and brings it
// into sight.
func TestTabOrder(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	first := fyne.Focusable(nil)
	var lastY, lastX float32 = -1, -1
	count := 0
	for ; count < 300; count++ {
		test.FocusNext(d.window.Canvas())
		o := d.window.Canvas().Focused()
		if o == first {
			break
		}
		if first == nil {
			first = o
		}
		at := d.boxes()
		here := at[as[fyne.CanvasObject](t, o)]
		if !here.within(at[d.scroll()]) {
			t.Errorf("number %d, a %T, has the focus out of sight at %v", count, o, here)
		}
		y := here.top - at[d.scroll().Content].top
		if y < lastY-slack || (y == lastY && here.left <= lastX) {
			t.Errorf("number %d, a %T at %v, %v, comes after %v, %v", count, o, here.left, y, lastX, lastY)
		}
		lastY, lastX = y, here.left
	}
	// Headers; entries, choices, buttons and the check box.
	others := len(d.titles())
	for r := range d.panel.Rows() {
		for _, e := range append(r.Editors, r.End) {
			if _, ok := e.(fyne.Focusable); ok && r.Visible() {
				others++
			}
		}
	}
	if count != others {
		t.Errorf("tab goes through %d things, there are %d", count, others)
	}
}

package inputs

import (
	"strings"
	"testing"

	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestHelp(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	says := func(want string) {
		t.Helper()
		if got := d.panel.help.text; got != want {
			t.Errorf("the help is %q, want %q", got, want)
		}
	}
	says(idleHelp)
	d.window.Canvas().Focus(d.entry("car.track_rear", 0))
	says("Rear track: Tire center to tire center. 10 in to 150 in.")
	d.row("check.factor").MouseIn(nil)
	says("Factor: Capacity is divided by this before a load is held against it. 1 to 20. Left empty: 2.")
	d.doc.SetUnits(units.SI)
	d.row("check.factor").MouseOut()
	says("Rear track: Tire center to tire center. 254 mm to 3810 mm.")
	d.window.Canvas().Focus(d.button(TitleSetup, "Copy"))
	says("Copy: Adds a setup with the same holes and makes it the current one.")
	d.window.Canvas().Unfocus()
	says(idleHelp)
}

// The later of focus and pointer decides whose help is shown.
func TestHelpFollowsTheLater(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	says := func(want string) {
		t.Helper()
		if got := d.panel.help.text; !strings.HasPrefix(got, want+": ") {
			t.Errorf("the help is %q, want that of %s", got, want)
		}
	}
	d.window.Canvas().Focus(d.entry("car.track_rear", 0))
	d.row("car.wheelbase").MouseIn(nil)
	says("Wheelbase")
	test.FocusNext(d.window.Canvas())
	says("Front track")
	d.row("car.wheelbase").MouseOut()
	says("Front track")
	d.row("car.weight").MouseIn(nil)
	says("Weight")
	test.FocusNext(d.window.Canvas())
	says("Pitch inertia")
	d.window.Canvas().Unfocus()
	says("Weight")
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
		if !here.within(at[d.panel.scroll]) {
			t.Errorf("number %d, a %T, has the focus out of sight at %v", count, o, here)
		}
		y := here.top - at[d.panel.list].top
		if y < lastY-slack || (y == lastY && here.left <= lastX) {
			t.Errorf("number %d, a %T at %v, %v, comes after %v, %v", count, o, here.left, y, lastX, lastY)
		}
		lastY, lastX = y, here.left
	}
	// Headers; entries, choices, buttons and the check box.
	others := len(d.panel.sections)
	for r := range d.panel.rows() {
		for _, e := range append(r.editors, r.end) {
			if _, ok := e.(fyne.Focusable); ok && r.Visible() {
				others++
			}
		}
	}
	if count != others {
		t.Errorf("tab goes through %d things, there are %d", count, others)
	}
}

func TestHeaderByKeyboard(t *testing.T) {
	d := newDesk(t)
	d.panel.SetOpenSections(nil)
	test.FocusNext(d.window.Canvas())
	open := func(want bool) {
		t.Helper()
		if got := len(d.panel.OpenSections()) == 1; got != want {
			t.Errorf("open: %v, want %v", got, want)
		}
	}
	for _, step := range []struct {
		key  fyne.KeyName
		open bool
	}{{fyne.KeySpace, true}, {fyne.KeyReturn, false}, {fyne.KeyRight, true}, {fyne.KeyRight, true}, {fyne.KeyLeft, false}, {fyne.KeyLeft, false}} {
		d.press(step.key)
		open(step.open)
	}
	test.Tap(d.panel.sections[0].header)
	open(true)
}

// A tap on a header takes what is being typed below it.
func TestClosingTakesWhatIsTyped(t *testing.T) {
	d := newDesk(t)
	d.panel.SetOpenSections([]string{TitleCar})
	d.typed(d.entry("car.wheelbase", 0), "110")
	test.Tap(d.row("car.wheelbase").section.header)
	want(t, "wheelbase", d.doc.Car().Body.Wheelbase, 110*inch)
	if len(d.panel.OpenSections()) != 0 {
		t.Error("the section is still open")
	}
}

// The wheel scrolls the panel even over an entry.
func TestWheelOverAnEntry(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.entry("setup.0.name", 0)
	at := d.boxes()[e]
	test.Scroll(d.window.Canvas(), fyne.NewPos((at.left+at.right)/2, (at.top+at.bottom)/2), 0, -40)
	if got := d.panel.scroll.Offset.Y; got != 40 {
		t.Errorf("the panel is scrolled by %v", got)
	}
}

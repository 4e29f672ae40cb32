package inputs_test

import (
	"slices"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

func TestHolesAreListed(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.wantText(d.entry("chassis_bracket.upper.1", 0), "22.5")
	d.wantText(d.entry("chassis_bracket.upper.1", 1), "17.75")
	d.wantText(d.entry("housing_bracket.lower.1", 1), "−5.75")
	// The hole of the current setup stands out, by a mark too.
	for i, want := range []string{"1", "2", "3 •"} {
		r := d.row("chassis_bracket.upper." + string(rune('0'+i)))
		if text := title(r); text.Text != want || text.TextStyle.Bold != (i == 2) {
			t.Errorf("hole %d is titled %q, bold %v", i+1, text.Text, text.TextStyle.Bold)
		}
	}
	d.doc.SelectSetup(1)
	if got := title(d.row("chassis_bracket.upper.0")).Text; got != "1 •" {
		t.Errorf("in the other setup hole 1 is titled %q", got)
	}
}

// title returns the label of a row on screen.
func title(r *form.Row) *canvas.Text {
	for _, o := range screen.Seen(r) {
		if text, ok := o.(*canvas.Text); ok {
			return text
		}
	}
	return nil
}

func TestMoveAHole(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	z := d.entry("chassis_bracket.upper.2", 1)
	d.typed(z, "16 7/8")
	d.press(fyne.KeyReturn)
	want(t, "z", d.doc.Car().Chassis.Upper[2].Y, 16.875*inch)
	d.wantUndo("Move upper chassis hole 3")
	d.typed(z, "500")
	d.press(fyne.KeyReturn)
	if got := why(d.row("chassis_bracket.upper.2")); got != "[22.5 in, 500 in] is out of range; give x and z from −400 in to 400 in" {
		t.Errorf("the reason is %q", got)
	}
}

// What the panel says of the range is what the model holds.
func TestReach(t *testing.T) {
	const reach = 400 * inch
	d := newDesk(t)
	if got := d.row("chassis_bracket.upper.1").Allowed(units.US); got != "−400 in to 400 in" {
		t.Errorf("the panel says %q", got)
	}
	for _, c := range []struct {
		x     float64
		valid bool
	}{{reach, true}, {-reach, true}, {reach * 1.000001, false}, {-reach * 1.000001, false}} {
		moved := saltgrass()
		moved.Chassis.Upper[1].X = c.x // in no setup
		if valid := len(moved.Validate(library(), 0)) == 0; valid != c.valid {
			t.Errorf("a hole at %v m: valid %v", c.x, valid)
		}
	}
}

func TestAddAHole(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	foot := d.row("chassis_bracket.upper")
	test.Tap(as[*form.Button](t, foot.Editors[0]))
	d.wantUndo("Add upper chassis hole")
	holes := d.doc.Car().Chassis.Upper
	if len(holes) != 4 {
		t.Fatalf("there are %d holes", len(holes))
	}
	want(t, "x of the new hole", holes[3].X, 22.5*inch)
	want(t, "z of the new hole", holes[3].Y, 16.25*inch)
	d.wantText(d.entry("chassis_bracket.upper.3", 1), "16.25")
	d.checkLayout(290)
	d.doc.Undo()
	if d.panel.Row("chassis_bracket.upper.3") != nil {
		t.Error("undo leaves the row of the hole")
	}
}

func TestAddASecondHole(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.doc.Apply("One hole", func(c *car.Car) {
		c.Housing.Upper = c.Housing.Upper[:1]
	})
	test.Tap(as[*form.Button](t, d.row("housing_bracket.upper").Editors[0]))
	want(t, "z of the new hole", d.doc.Car().Housing.Upper[1].Y, 5.75*inch)
}

func TestDeleteAHole(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	test.Tap(as[*form.Button](t, d.row("chassis_bracket.upper.1").End))
	d.wantUndo("Delete upper chassis hole 2")
	c := d.doc.Car()
	if !slices.Equal(c.Chassis.Upper, places(22.5, 18.5, 22.5, 17)) {
		t.Errorf("left are %v", c.Chassis.Upper)
	}
	// Each setup keeps its hole, whatever its number.
	if got := c.Setups[0].Holes; got != (car.Holes{ChassisUpper: 1, ChassisLower: 1}) {
		t.Errorf("setup 1 uses %+v", got)
	}
	if got := c.Setups[1].Holes; got != (car.Holes{ChassisUpper: 0, ChassisLower: 1}) {
		t.Errorf("setup 2 uses %+v", got)
	}
	d.doc.Undo()
	if got := d.doc.Car().Setups[0].Holes.ChassisUpper; got != 2 {
		t.Errorf("after undo setup 1 uses hole %d", got+1)
	}
	d.wantText(d.entry("chassis_bracket.upper.2", 1), "17")
}

func TestUsedHoleStays(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	r := d.row("chassis_bracket.lower.1")
	test.Tap(as[*form.Button](t, r.End))
	if got := why(r); got != "Hole 2 stays: it is used by “baseline” and “bite”. Choose another hole there first." {
		t.Errorf("the reason is %q", got)
	}
	d.wantUndo("")
	if d.says("1 refused") {
		t.Error("the header counts a refused text")
	}
	// The reason goes with the next change.
	d.set("chassis_bracket.lower.0", "25")
	if why(r) != "" {
		t.Errorf("it still says %q", why(r))
	}
}

func TestFocusAfterTheLastHoleIsDeleted(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.doc.SelectSetup(1)
	d.doc.Apply("Free hole 3", func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = 0 })
	b := as[*form.Button](t, d.row("chassis_bracket.upper.2").End)
	d.window.Canvas().Focus(b)
	d.press(fyne.KeyReturn)
	if len(d.doc.Car().Chassis.Upper) != 2 {
		t.Fatal("the hole is still there")
	}
	if got := d.window.Canvas().Focused(); got != as[*form.Button](t, d.row("chassis_bracket.upper").Editors[0]) {
		t.Errorf("the focus is on %T", got)
	}
}

func TestTypedHoleGoesWhenTheListChanges(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("chassis_bracket.upper.2", "here")
	d.doc.Apply("New first hole", func(c *car.Car) {
		c.Chassis.Upper = slices.Insert(c.Chassis.Upper, 0, places(22.5, 19.25)...)
		for i := range c.Setups {
			c.Setups[i].Holes.ChassisUpper++
		}
	})
	d.wantText(e, "22.5")
	if e.Refused() || why(d.row("chassis_bracket.upper.2")) != "" {
		t.Error("what was typed for one hole is held against the one that has its number now")
	}
}

func TestTypedHoleGoesWithItsList(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("chassis_bracket.upper.2", "here")
	test.Tap(as[*form.Button](t, d.row("chassis_bracket.upper.1").End))
	if why(d.row("chassis_bracket.upper.1")) != "" || !d.panel.CommitPending() {
		t.Error("what was typed for the third hole is held against the second")
	}
	if e.Refused() {
		t.Error("the third hole, which is gone, is still refused")
	}
}

func TestTypedHoleGoesOutOfSightToo(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.doc.Apply("Free hole 3", func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = 0 })
	d.set("chassis_bracket.upper.2", "here")
	d.panel.SetOpenSections(nil)
	d.doc.Apply("Two holes", func(c *car.Car) { c.Chassis.Upper = c.Chassis.Upper[:2] })
	if !d.panel.CommitPending() {
		t.Error("what was typed for a hole that is gone is refused")
	}
}

// The hole that has the focus can go, as by undo.
func TestFocusedHoleGoes(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	test.Tap(as[*form.Button](t, d.row("chassis_bracket.upper").Editors[0]))
	e := d.entry("chassis_bracket.upper.3", 0)
	d.window.Canvas().Focus(e)
	d.doc.Undo()
	d.typed(e, "22")
	for _, key := range []fyne.KeyName{fyne.KeyUp, fyne.KeyEscape, fyne.KeyReturn} {
		d.press(key)
	}
	test.FocusNext(d.window.Canvas())
	d.wantUndo("")
	if !d.panel.CommitPending() {
		t.Error("what is typed where a hole was is refused")
	}

	test.Tap(as[*form.Button](t, d.row("chassis_bracket.upper").Editors[0]))
	d.window.Canvas().Focus(as[*form.Button](t, d.row("chassis_bracket.upper.3").End))
	d.doc.Undo()
	d.press(fyne.KeyReturn)
	if got := len(d.doc.Car().Chassis.Upper); got != 3 {
		t.Errorf("%d holes are left", got)
	}
}

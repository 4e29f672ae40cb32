package inputs_test

import (
	"testing"

	"bowline/app/form"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestTurnsBelongToTheSetup(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.set("setup.0.turns_lower_right", "1 1/2")
	want(t, "turns", d.doc.Car().Setups[0].Turns.LowerRight, 1.5)
	d.wantUndo("Turn lower right bar")
	// A flat on, by the arrow key.
	d.press(fyne.KeyUp)
	d.press(fyne.KeyReturn)
	want(t, "turns", d.doc.Car().Setups[0].Turns.LowerRight, 1.66667)
	d.doc.SelectSetup(1)
	d.wantText(d.entry("setup.1.turns_lower_right", 0), "0")
	want(t, "turns of the other setup", d.doc.Car().Setups[1].Turns.LowerRight, 0)
	d.set("setup.1.turns_lower_right", "99")
	if got := why(d.row("setup.1.turns_lower_right")); got != "99 turns are out of range; give −24 to 24" {
		t.Errorf("the reason is %q", got)
	}
}

func TestLocatorAndDirection(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.pick(d.row("locator.kind"), car.DiagonalLink)
	d.pick(d.row("drive.direction"), car.Counterclockwise)
	if l := d.doc.Car().Launch; l.Locator.Kind != car.DiagonalLink || l.Engine.Direction != car.Counterclockwise {
		t.Errorf("locator %q, engine %q", l.Locator.Kind, l.Engine.Direction)
	}
	end := d.row("locator.housing")
	if end.Visible() {
		t.Error("the numbers of an end that is not given are shown")
	}
	test.Tap(boxOf(d, "Housing end is given"))
	if !d.doc.Car().Launch.Locator.Housing.Given || !end.Visible() {
		t.Fatal("the end is not given")
	}
	d.checkLayout(290)
	e := d.entry("locator.housing", 1)
	d.typed(e, "-24")
	d.press(fyne.KeyReturn)
	want(t, "housing end, left", d.doc.Car().Launch.Locator.Housing.At.Y, -24*inch)
}

// boxOf returns the check box with a text.
func boxOf(d *desk, text string) *form.Check {
	d.t.Helper()
	for r := range d.panel.Rows() {
		for _, e := range r.Editors {
			if c, ok := e.(*form.Check); ok && c.Text == text {
				return c
			}
		}
	}
	d.t.Fatalf("there is no box %q", text)
	return nil
}

package window

import (
	"testing"

	"fyne.io/fyne/v2"
)

// typeText types into a field.
func typeText(d *desk, f fyne.Focusable, text string) {
	d.window.Canvas().Focus(f)
	for _, r := range text {
		f.TypedRune(r)
	}
}

// Undo and redo are of the text where that is typed, and of the car elsewhere.
func TestUndoOfTextLeavesTheCar(t *testing.T) {
	d := searching(t)
	d.edit()
	height := d.doc.Car().Body.CGHeight
	setups := d.panels[panelSetups].(*setupsPanel)
	filter, log, name := d.field("anti_squat"), setups.log.form.fields[1].entry, setups.name.entry
	for _, f := range []struct {
		what  string
		field fyne.Focusable
		text  func() string
		open  func()
	}{
		{"filter", filter, func() string { return filter.Text }, func() { d.holes.folds.filter.open(true) }},
		{"log", log, func() string { return log.Text }, func() { d.show(panelSetups); log.SetText("") }},
		{"name", name, func() string { return name.Text }, func() { setups.name.open(); name.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd}) }},
	} {
		what := f.what
		f.open()
		before := f.text()
		typeText(d, f.field, "45")
		typed := f.text()
		if typed == before {
			t.Fatalf("%s: nothing is typed", what)
		}
		d.item("Edit", "Undo").Action()
		if got := f.text(); got != before || d.doc.Car().Body.CGHeight != height {
			t.Errorf("%s: undone, the text is %q, the CG height %v", what, got, d.doc.Car().Body.CGHeight)
		}
		// With no text left to undo the car stays as well.
		d.item("Edit", "Undo").Action()
		d.item("Edit", "Redo").Action()
		if got := f.text(); got != typed || d.doc.Car().Body.CGHeight != height {
			t.Errorf("%s: redone, the text is %q, the CG height %v", what, got, d.doc.Car().Body.CGHeight)
		}
	}
	filter.restore()
	d.window.Canvas().Unfocus()
	d.show(panelHoles)
	d.item("Edit", "Undo").Action()
	if got := d.doc.Car().Body.CGHeight; got == height {
		t.Error("with the focus in no field the car's step stays")
	}
	d.item("Edit", "Redo").Action()
	// In a field of the target it is the car's too.
	d.holes.folds.target.open(true)
	d.window.Canvas().Focus(entryWith(d, "160"))
	d.item("Edit", "Undo").Action()
	if got := d.doc.Car().Body.CGHeight; got == height {
		t.Error("in a field of the car the car's step stays")
	}
}

package window

import (
	"path/filepath"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/panel/paneltest"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// typeText types into a field.
func typeText(d *desk, f fyne.Focusable, text string) {
	d.window.Canvas().Focus(f)
	for _, r := range text {
		f.TypedRune(r)
	}
}

// texts lists the fields for text on the panel on show that are none of the
// car's inputs.
func (d *desk) texts() []form.Textual {
	var list []form.Textual
	for _, o := range screen.Seen(d.panels.current().Words()) {
		if f, ok := o.(fyne.Focusable); ok {
			if text := form.UndoesText(f); text != nil {
				list = append(list, text)
			}
		}
	}
	return list
}

// Undo and redo are of the text where that is typed, and of the car elsewhere.
func TestUndoOfTextLeavesTheCar(t *testing.T) {
	d, _ := openDesk(t)
	d.edit()
	height := d.doc.Car().Body.CGHeight
	for _, f := range []struct{ what, panel, button string }{
		{"filter", "Holes", "Filter"}, {"log", "Setups", ""}, {"name", "Setups", "Rename"},
	} {
		d.show(f.panel)
		if f.button != "" {
			test.Tap(paneltest.Button(t, d.split.words, f.button))
		}
		fields := d.texts()
		field := fields[0]
		if f.what == "log" {
			field = fields[len(fields)-1] // the note: day and track are given
		}
		text := func() string {
			if e, ok := field.(interface{ SelectedText() string }); ok {
				field.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
				said := e.SelectedText()
				field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
				return said
			}
			t.Fatalf("%s: a %T", f.what, field)
			return ""
		}
		d.window.Canvas().Focus(field)
		before := text()
		typeText(d, field, "45")
		typed := text()
		if typed == before {
			t.Fatalf("%s: nothing is typed", f.what)
		}
		d.item("Edit", "Undo").Action()
		if got := text(); got != before || d.doc.Car().Body.CGHeight != height {
			t.Errorf("%s: undone, the text is %q, the CG height %v", f.what, got, d.doc.Car().Body.CGHeight)
		}
		// With no text left to undo the car stays as well.
		d.item("Edit", "Undo").Action()
		d.item("Edit", "Redo").Action()
		if got := text(); got != typed || d.doc.Car().Body.CGHeight != height {
			t.Errorf("%s: redone, the text is %q, the CG height %v", f.what, got, d.doc.Car().Body.CGHeight)
		}
		field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	d.window.Canvas().Unfocus()
	d.show("Holes")
	d.item("Edit", "Undo").Action()
	if got := d.doc.Car().Body.CGHeight; got == height {
		t.Error("with the focus in no field the car's step stays")
	}
	d.item("Edit", "Redo").Action()
	// In a field of the target it is the car's too.
	d.target(t)
	d.item("Edit", "Undo").Action()
	if got := d.doc.Car().Body.CGHeight; got == height {
		t.Error("in a field of the car the car's step stays")
	}
}

// target gives the focus to a field of the target on the page of holes.
func (d *desk) target(t *testing.T) fyne.Focusable {
	t.Helper()
	d.show("Holes")
	test.Tap(paneltest.Button(t, d.panels.current().Words(), "Target and wishes: 100 to 160 %"))
	for _, o := range screen.Seen(d.panels.current().Words()) {
		if f, ok := o.(*form.Entry); ok && f.Document {
			d.window.Canvas().Focus(f)
			return f
		}
	}
	t.Fatal("the target has no field")
	return nil
}

// A target typed on the page of holes stops what would lose it, while it is
// refused, and undo takes it back.
func TestARefusedTargetStopsTheWindow(t *testing.T) {
	d, _ := openDesk(t)
	f := d.target(t)
	for _, r := range "many" {
		f.TypedRune(r)
	}
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if d.settled() {
		t.Error("with a refused target the window goes on")
	}
	d.undo()
	if !d.settled() {
		t.Error("undo does not take a refused target back")
	}
}

// A run half typed on the page of setups is asked about, then the car.
func TestLeavingAsksAboutARunAndTheCar(t *testing.T) {
	d, _ := openDesk(t)
	d.edit()
	d.show("Setups")
	fields := d.texts()
	typeText(d, fields[len(fields)-1], "level")
	left := false
	d.leave(func() { left = true })
	d.wantAsked("Run not logged", "A run is typed on the page Setups that is not in the log.")
	d.answer("Keep editing")
	d.wantNoQuestion()
	d.leave(func() { left = true })
	d.answer("Drop it")
	d.wantAsked("Unsaved changes")
	if left {
		t.Fatal("the car was left before the last question")
	}
	d.answer("Discard changes")
	if !left {
		t.Error("the car was not left")
	}
}

// The card of the holes looked at goes to a file, and leaves the car alone.
func TestTheCardGoesToPaper(t *testing.T) {
	d, car := openDesk(t)
	d.show("Holes")
	d.study.Pick(0)
	d.settle()
	test.Tap(paneltest.Button(t, d.panels.current().Words(), "Card as PDF…"))
	d.settle()
	d.wantAsked("Card as PDF")
	d.name("card")
	path := filepath.Join(filepath.Dir(car), "card.pdf")
	checkFormat(t, path)
	d.wantSaid("Card written to " + path)
	if d.doc.Modified() {
		t.Error("the card has changed the car")
	}
}

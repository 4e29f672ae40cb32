package window

import (
	"testing"

	"bowline/model/car"

	"fyne.io/fyne/v2"
)

func TestEditAndDeleteARun(t *testing.T) {
	d, l := logging(t)
	d.log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41, AntiSquat: 1.2}, car.Run{Date: "2031-05-02", SixtyFoot: 1.395, AntiSquat: 1.21, Rear: "level"})
	if !l.edit.Disabled() || !l.remove.Disabled() {
		t.Error("without a selection there is something to edit")
	}
	l.write(t, "60 ft", "1.37", "Note", "half typed")
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	d.tap(l.edit)
	if got := l.form.title.Text(); got != `Edit the run of 2031-05-02 with "baseline"` || l.form.button.Text != "Save run" || !l.form.cancel.Visible() {
		t.Errorf("the form says %q, its button %q", got, l.form.button.Text)
	}
	l.wantForm(t, "2031-05-02", "", "1.395", "level", "", "")
	if d.window.Canvas().Focused() != l.form.fields[0].entry {
		t.Errorf("the focus is on %T", d.window.Canvas().Focused())
	}
	l.write(t, "60 ft", "1.391", "Front", "no air")
	// Another edit does not take the place of one that is not finished.
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	d.tap(l.edit)
	if got := l.form.problem.Text(); got != "Save or cancel this edit first." {
		t.Errorf("it says %q", got)
	}
	// The list may move meanwhile.
	d.doc.MoveSetup(0, 1)
	d.doc.DeleteRun(1, 0)
	d.settle()
	d.tap(l.form.button)
	want := car.Run{Date: "2031-05-02", SixtyFoot: 1.391, AntiSquat: 1.21, Rear: "level", Front: "no air"}
	if runs := d.doc.Car().Setups[1].Runs; len(runs) != 1 || runs[0] != want || d.doc.UndoLabel() != "Edit run" {
		t.Errorf("runs %+v, want %+v; undo %q", runs, want, d.doc.UndoLabel())
	}
	d.wantSaid("Run saved.")
	// What was typed before is back.
	l.wantForm(t, "2031-05-17", "", "1.37", "", "", "half typed")
	if l.form.cancel.Visible() || l.form.button.Text != "Log run" {
		t.Error("the form still edits")
	}
	if r, ok := l.list.selected(); !ok || r.Run != want {
		t.Errorf("selected is %+v, %v", r, ok)
	}
	d.tap(l.remove)
	d.wantSaid("The run of 2031-05-02 is deleted. Undo brings it back.")
	if runs := d.doc.Car().Setups[1].Runs; len(runs) != 0 || d.doc.UndoLabel() != "Delete run" {
		t.Errorf("runs %+v, undo %q", runs, d.doc.UndoLabel())
	}
	d.choose("Edit", "Undo")
	if runs := d.doc.Car().Setups[1].Runs; len(runs) != 1 || l.list.Len() != 1 {
		t.Errorf("undo has brought back %+v", runs)
	}
}

func TestCancelAnEdit(t *testing.T) {
	d, l := logging(t)
	d.log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41})
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	l.list.table.OnActivated(0)
	l.write(t, "60 ft", "fast")
	d.tap(l.form.button)
	if l.reasons() == "" || l.marks() != "60 ft" {
		t.Errorf("a time that is none is refused with %q, framed is %q", l.reasons(), l.marks())
	}
	d.tap(l.form.cancel)
	l.wantForm(t, "2031-05-17", "", "", "", "", "")
	if l.reasons() != "" || l.marks() != "" || d.doc.UndoLabel() != "Log run" {
		t.Errorf("refused with %q, undo %q", l.reasons(), d.doc.UndoLabel())
	}
}

// A run that goes while it is edited leaves what was typed to be logged anew.
func TestTheRunEditedGoes(t *testing.T) {
	d, l := logging(t)
	d.log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41})
	l.write(t, "Note", "half typed")
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	d.tap(l.edit)
	l.write(t, "Rear", "squatted")
	d.doc.Undo()
	d.settle()
	l.wantForm(t, "2031-05-01", "", "1.41", "squatted", "", "")
	if got := l.form.title.Text(); got != `The run edited is not in the log any more. Log what is typed as a new one with "baseline"` {
		t.Errorf("the form says %q", got)
	}
	d.tap(l.form.button)
	if runs := d.doc.Car().Setups[0].Runs; len(runs) != 1 || runs[0].Rear != "squatted" {
		t.Errorf("logged are %+v", runs)
	}
	l.wantForm(t, "2031-05-17", "", "", "", "", "half typed")
}

// A run half typed is asked about before the car is left.
func TestLeavingWithAHalfTypedRun(t *testing.T) {
	d, l := logging(t)
	left := 0
	leave := func() { d.leave(func() { left++ }) }
	leave()
	d.wantNoQuestion()
	if left != 1 {
		t.Fatal("without a run there is something to ask")
	}
	l.write(t, "60 ft", "fast")
	leave()
	d.wantAsked("Run not logged", "A run is typed on the page Setups that is not in the log.")
	d.answer("Keep editing")
	leave()
	d.answer("Log it")
	d.wantNoQuestion()
	d.wantSaid("The run is refused; the page Setups of the tab Tune says why.")
	if l.reasons() == "" || left != 1 {
		t.Errorf("refused with %q, left %d times", l.reasons(), left)
	}
	leave()
	d.answer("Drop it")
	if left != 2 {
		t.Error("the car is not left without the run")
	}
	l.wantForm(t, "2031-05-17", "", "", "", "", "")

	// With an edit at hand as well both are asked about, then the car.
	d.log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41})
	l.write(t, "Note", "half typed")
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	d.tap(l.edit)
	l.write(t, "Rear", "level")
	leave()
	d.answer("Log it")
	d.wantAsked("Run not logged")
	d.answer("Log it")
	d.wantAsked("Unsaved changes")
	d.answer("Discard changes")
	if runs := d.doc.Car().Setups[0].Runs; left != 3 || len(runs) != 2 || runs[0].Rear != "level" || runs[1].Note != "half typed" {
		t.Errorf("left %d times, runs %+v", left, runs)
	}
}

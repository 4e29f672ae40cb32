package runlog

import (
	"testing"

	"bowline/app/words"
	"bowline/model/car"

	"fyne.io/fyne/v2"
)

func TestEditAndDeleteARun(t *testing.T) {
	d, l := logging(t)
	d.Log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41, AntiSquat: 1.2}, car.Run{Date: "2031-05-02", SixtyFoot: 1.395, AntiSquat: 1.21, Rear: "level"})
	if !l.edit.Disabled() || !l.remove.Disabled() {
		t.Error("without a selection there is something to edit")
	}
	l.write(t, "60 ft", "1.37", "Note", "half typed")
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	d.Tap(l.edit)
	if got := l.form.title.Text(); got != `Edit the run of 2031-05-02 with "baseline"` || l.form.button.Text != "Save run" || !l.form.cancel.Visible() {
		t.Errorf("the form says %q, its button %q", got, l.form.button.Text)
	}
	l.wantForm(t, "2031-05-02", "", "1.395", "level", "", "")
	if d.Canvas().Focused() != fyne.Focusable(l.form.fields[0].Draft) {
		t.Errorf("the focus is on %T", d.Canvas().Focused())
	}
	l.write(t, "60 ft", "1.391", "Front", "no air")
	// Another edit does not take the place of one that is not finished.
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	d.Tap(l.edit)
	if got := l.form.problem.Text(); got != "Save or cancel this edit first." {
		t.Errorf("it says %q", got)
	}
	// The list may move meanwhile.
	d.Doc.MoveSetup(0, 1)
	d.Doc.DeleteRun(1, 0)
	d.Settle()
	d.Tap(l.form.button)
	want := car.Run{Date: "2031-05-02", SixtyFoot: 1.391, AntiSquat: 1.21, Rear: "level", Front: "no air"}
	if runs := d.Doc.Car().Setups[1].Runs; len(runs) != 1 || runs[0] != want || d.Doc.UndoLabel() != "Edit run" {
		t.Errorf("runs %+v, want %+v; undo %q", runs, want, d.Doc.UndoLabel())
	}
	d.WantSaid("Run saved.")
	// What was typed before is back.
	l.wantForm(t, "2031-05-17", "", "1.37", "", "", "half typed")
	if l.form.cancel.Visible() || l.form.button.Text != "Log run" {
		t.Error("the form still edits")
	}
	if r, ok := l.list.selected(); !ok || r.Run != want {
		t.Errorf("selected is %+v, %v", r, ok)
	}
	d.Tap(l.remove)
	d.WantSaid(words.RunDeleted(want))
	if runs := d.Doc.Car().Setups[1].Runs; len(runs) != 0 || d.Doc.UndoLabel() != "Delete run" {
		t.Errorf("runs %+v, undo %q", runs, d.Doc.UndoLabel())
	}
	d.Undo()
	if runs := d.Doc.Car().Setups[1].Runs; len(runs) != 1 || l.list.Len() != 1 {
		t.Errorf("undo has brought back %+v", runs)
	}
}

func TestCancelAnEdit(t *testing.T) {
	d, l := logging(t)
	d.Log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41})
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	l.list.table.OnActivated(0)
	l.write(t, "60 ft", "fast")
	d.Tap(l.form.button)
	if l.reasons() == "" || l.marks() != "60 ft" {
		t.Errorf("a time that is none is refused with %q, framed is %q", l.reasons(), l.marks())
	}
	d.Tap(l.form.cancel)
	l.wantForm(t, "2031-05-17", "", "", "", "", "")
	if l.reasons() != "" || l.marks() != "" || d.Doc.UndoLabel() != "Log run" {
		t.Errorf("refused with %q, undo %q", l.reasons(), d.Doc.UndoLabel())
	}
}

// A run that goes while it is edited leaves what was typed to be logged anew.
func TestTheRunEditedGoes(t *testing.T) {
	d, l := logging(t)
	d.Log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41})
	l.write(t, "Note", "half typed")
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	d.Tap(l.edit)
	l.write(t, "Rear", "squatted")
	d.Doc.Undo()
	d.Settle()
	l.wantForm(t, "2031-05-01", "", "1.41", "squatted", "", "")
	if got := l.form.title.Text(); got != `The run edited is not in the log any more. Log what is typed as a new one with "baseline"` {
		t.Errorf("the form says %q", got)
	}
	d.Tap(l.form.button)
	if runs := d.Doc.Car().Setups[0].Runs; len(runs) != 1 || runs[0].Rear != "squatted" {
		t.Errorf("logged are %+v", runs)
	}
	l.wantForm(t, "2031-05-17", "", "", "", "", "half typed")
}

// A run half typed is asked about before the car is left.
func TestLeavingWithAHalfTypedRun(t *testing.T) {
	d, l := logging(t)
	left := 0
	leave := func() { l.Leave(func() { left++ }) }
	leave()
	d.WantNoQuestion()
	if left != 1 {
		t.Fatal("without a run there is something to ask")
	}
	l.write(t, "60 ft", "fast")
	leave()
	if q := d.Asked; q == nil || q.Title != "Run not logged" || q.Text != "A run is typed on the page Setups that is not in the log." {
		t.Errorf("it asks %+v", q)
	}
	d.Answer("Keep editing")
	leave()
	d.Answer("Log it")
	d.WantNoQuestion()
	d.WantSaid("The run is refused; the page Setups of the tab Tune says why.")
	if l.reasons() == "" || left != 1 {
		t.Errorf("refused with %q, left %d times", l.reasons(), left)
	}
	leave()
	d.Answer("Drop it")
	if left != 2 {
		t.Error("the car is not left without the run")
	}
	l.wantForm(t, "2031-05-17", "", "", "", "", "")

	// With an edit at hand as well both are asked about.
	d.Log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41})
	l.write(t, "Note", "half typed")
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	d.Tap(l.edit)
	l.write(t, "Rear", "level")
	leave()
	d.Answer("Log it")
	d.Answer("Log it")
	d.WantNoQuestion()
	if runs := d.Doc.Car().Setups[0].Runs; left != 3 || len(runs) != 2 || runs[0].Rear != "level" || runs[1].Note != "half typed" {
		t.Errorf("left %d times, runs %+v", left, runs)
	}
}

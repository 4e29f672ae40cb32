package inputs_test

import (
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// names lists the car's setups.
func (d *desk) names() string {
	text := ""
	for _, s := range d.doc.Car().Setups {
		text += s.Name + ";"
	}
	return text
}

func (d *desk) wantSetups(names string, current int) {
	d.t.Helper()
	if d.names() != names || d.doc.Setup() != current {
		d.t.Errorf("setups are %q with %d current, want %q with %d", d.names(), d.doc.Setup(), names, current)
	}
}

func TestChooseASetup(t *testing.T) {
	d := newDesk(t)
	setup := d.labeled(inputs.TitleSetup, "Setup")
	d.pick(setup, "bite")
	d.wantSetups("baseline;bite;", 1)
	d.wantUndo("")
	d.wantText(d.entry("setup.1.name", 0), "bite")
	d.wantText(d.entry("setup.1.note", 0), "Loose track.")
	if d.panel.Row("setup.0.name") != nil {
		t.Error("there is still a row of the other setup")
	}
	// By the keyboard: right goes on to the next, which is the first again.
	d.window.Canvas().Focus(as[*form.Select](t, setup.Editors[0]))
	d.press(fyne.KeyRight)
	d.wantSetups("baseline;bite;", 0)
}

func TestChooseAHole(t *testing.T) {
	d := newDesk(t)
	r := d.row("setup.0.chassis_upper")
	c := as[*form.Select](t, r.Editors[0])
	if c.Selected != "3 — 22.50, 17.00 in" || len(c.Options) != 3 {
		t.Errorf("it shows %q of %q", c.Selected, c.Options)
	}
	if lower := as[*form.Select](t, d.row("setup.0.housing_lower").Editors[0]); lower.Selected != "1 — 2.50, −5.00 in" {
		t.Errorf("of the hole below the axle it shows %q", lower.Selected)
	}
	d.pick(r, "1 — 22.50, 18.50 in")
	if got := d.doc.Car().Setups[0].Holes; got != (car.Holes{ChassisLower: 1}) {
		t.Errorf("the setup uses %+v", got)
	}
	d.wantUndo("Choose upper chassis hole")
	d.doc.Undo()
	if c.Selected != "3 — 22.50, 17.00 in" {
		t.Errorf("after undo it shows %q", c.Selected)
	}
	d.doc.SetUnits(units.SI)
	if c.Selected != "3 — 571.5, 431.8 mm" {
		t.Errorf("in SI it shows %q", c.Selected)
	}
	d.doc.Apply("Move pivot", func(c *car.Car) { c.Chassis.Upper[2].X = 0.6 })
	if c.Selected != "3 — 600.0, 431.8 mm" {
		t.Errorf("after a move it shows %q", c.Selected)
	}
}

// A hole that the bars do not reach from is refused; the list goes back.
func TestRefusedHole(t *testing.T) {
	d := newDesk(t)
	d.doc.Apply("Far hole", func(c *car.Car) { c.Chassis.Upper[1].X = 4 * inch })
	r := d.row("setup.0.chassis_upper")
	d.pick(r, "2 — 4.00, 17.75 in")
	if why(r) == "" {
		t.Fatal("it is taken")
	}
	if got := as[*form.Select](t, r.Editors[0]).Selected; got != "3 — 22.50, 17.00 in" {
		t.Errorf("it shows %q", got)
	}
	d.pick(r, "1 — 22.50, 18.50 in")
	if why(r) != "" {
		t.Errorf("after another choice it still says %q", why(r))
	}
}

func TestRenameASetup(t *testing.T) {
	d := newDesk(t)
	e := d.set("setup.0.name", " hot track ")
	d.wantSetups("hot track;bite;", 0)
	d.wantUndo("Rename setup")
	d.wantText(e, "hot track")
	d.set("setup.0.name", "hot track ")
	d.wantSetups("hot track;bite;", 0)
	if why(d.row("setup.0.name")) != "" {
		t.Errorf("its own name is refused: %q", why(d.row("setup.0.name")))
	}
	d.set("setup.0.name", "bite")
	if got := why(d.row("setup.0.name")); got != `setup 2 is called "bite" too; give each setup a name of its own` {
		t.Errorf("the reason is %q", got)
	}
	d.wantText(e, "bite")
	d.set("setup.0.name", "")
	if got := why(d.row("setup.0.name")); got != "the name is empty; give each setup a name of its own" {
		t.Errorf("the reason is %q", got)
	}
	d.pick(d.labeled(inputs.TitleSetup, "Setup"), "bite")
	d.wantText(e, "bite")
	if e.Refused() || e.Pending() {
		t.Error("the refused name of one setup is held against another")
	}
}

func TestNote(t *testing.T) {
	d := newDesk(t)
	e := d.set("setup.0.note", "Cool and dry, 1.38 to sixty feet")
	if got := d.doc.Car().Setups[0].Note; got != e.Text || got == "" {
		t.Errorf("the note is %q", got)
	}
	d.wantUndo("Set note of setup")
}

func TestCopyASetup(t *testing.T) {
	d := newDesk(t)
	test.Tap(d.button(inputs.TitleSetup, "Copy"))
	d.wantSetups("baseline;baseline 2;bite;", 1)
	d.wantUndo("Copy setup")
	if got := d.doc.Car().Setups[1].Holes; got != d.doc.Car().Setups[0].Holes {
		t.Errorf("the copy uses %+v", got)
	}
	d.pick(d.labeled(inputs.TitleSetup, "Setup"), "baseline")
	test.Tap(d.button(inputs.TitleSetup, "Copy"))
	d.wantSetups("baseline;baseline 3;baseline 2;bite;", 1)
	d.doc.Undo()
	d.doc.Undo()
	d.wantSetups("baseline;bite;", 0)
}

func TestDeleteASetup(t *testing.T) {
	d := newDesk(t)
	remove, said := d.button(inputs.TitleSetup, "Delete"), ""
	d.panel.Said = func(text string) { said += text }
	test.Tap(remove)
	d.wantSetups("bite;", 0)
	d.wantUndo("Delete setup")
	d.wantText(d.entry("setup.0.name", 0), "bite")
	test.Tap(remove)
	d.wantSetups("bite;", 0)
	if got := why(d.row("setup")); got != "a car needs a setup and this is the only one; add a copy first" {
		t.Errorf("the reason is %q", got)
	}
	if want := `"baseline" is deleted. Undo brings it back.`; said != want {
		t.Errorf("it says %q, want %q", said, want)
	}
	d.doc.Undo()
	d.wantSetups("baseline;bite;", 0)
	if why(d.row("setup")) != "" {
		t.Errorf("after undo it still says %q", why(d.row("setup")))
	}
}

func TestMoveASetup(t *testing.T) {
	d := newDesk(t)
	up, down := d.button(inputs.TitleSetup, "Move up"), d.button(inputs.TitleSetup, "Move down")
	test.Tap(up)
	d.wantSetups("baseline;bite;", 0)
	d.wantUndo("")
	test.Tap(down)
	d.wantSetups("bite;baseline;", 1)
	d.wantUndo("Move setup")
	d.wantText(d.entry("setup.1.name", 0), "baseline")
	test.Tap(down)
	d.wantSetups("bite;baseline;", 1)
	test.Tap(up)
	d.wantSetups("baseline;bite;", 0)
}

// Turns that a thread does not have are taken, since the bar may get other rod ends,
// and what the thread has is said below them: by hand, 2 threads in sight leave 2
// turns shorter; 1.687 in of thread less those 0.125 in and a nut of 0.422 in have
// 0.390 in beyond 1 D, which are 6.24 turns of 1/16 in an end.
func TestTurnsBeyondTheThread(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.set("upper_bar.shown_threads", "2")
	path := "setup.0.turns_upper_right"
	d.set(path, "10")
	want(t, "turns", d.doc.Car().Setups[0].Turns.UpperRight, 10)
	said := d.row(path).Remark()
	for _, part := range []string{"upper right bar", "10 turns longer", "2 turns shorter", "6 turns 1 flat longer"} {
		if !strings.Contains(said, part) {
			t.Errorf("below 10 turns stands %q without %q", said, part)
		}
	}
	if got := d.row("setup.0.turns_lower_right").Remark(); got != "" {
		t.Errorf("of another bar is said %q", got)
	}
	d.checkLayout(290)
	high := d.row(path).MinSize().Height
	d.set(path, "-2")
	if got := d.row(path).Remark(); got != "" || d.row(path).MinSize().Height >= high {
		t.Errorf("of 2 turns shorter is said %q", got)
	}
	d.set(path, "-2.2")
	if got := d.row(path).Remark(); got == "" {
		t.Error("nothing is said of more turns than threads in sight")
	}
	// Other rod ends, other threads: what is said follows.
	d.set("upper_bar.shown_threads", "3")
	if got := d.row(path).Remark(); got != "" {
		t.Errorf("with 3 threads in sight is said %q", got)
	}
	d.doc.SelectSetup(1)
	if got := d.row("setup.1.turns_upper_right").Remark(); got != "" {
		t.Errorf("of the other setup is said %q", got)
	}
}

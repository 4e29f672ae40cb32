package inputs

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestRefusedValueStays(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("tires.grip", "26")
	if got := why(e.row); got != "26 is out of range; give 0.05 to 10" {
		t.Errorf("the reason is %q", got)
	}
	d.wantText(e, "26")
	test.FocusNext(d.window.Canvas())
	d.wantText(e, "26")
	if !e.refused || !e.mark.Visible() {
		t.Error("a refused text is not marked")
	}
	if got := e.row.section.header.refused; got != 1 {
		t.Errorf("the header counts %d refused", got)
	}
	want(t, "grip", d.doc.Car().Tires.Grip, 2.6)

	d.window.Canvas().Focus(e)
	d.wantText(e, "26")
	d.set("tires.grip", "2.8")
	want(t, "grip", d.doc.Car().Tires.Grip, 2.8)
	if e.refused || e.mark.Visible() || why(e.row) != "" || e.row.section.header.refused != 0 {
		t.Errorf("a corrected text is still marked, or its reason %q stands", why(e.row))
	}
}

func TestGarbageIsRefused(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("car.wheelbase", "long")
	if got := why(e.row); got != `"long" is not a number; type 22.5, 22 1/2 or 571 mm` {
		t.Errorf("the reason is %q", got)
	}
}

func TestReasonMakesRoomForItself(t *testing.T) {
	d := newDesk(t)
	d.panel.SetOpenSections([]string{TitleTires})
	e := d.entry("tires.grip", 0)
	below := d.row("tires.rear_spin_inertia")
	height, y := e.row.Size().Height, below.Position().Y
	d.set("tires.grip", "26")
	if grown := e.row.Size().Height - height; grown <= 0 || below.Position().Y != y+grown {
		t.Errorf("the row grew by %v, the one below moved by %v", grown, below.Position().Y-y)
	}
	d.press(fyne.KeyEscape)
	if e.row.Size().Height != height || below.Position().Y != y {
		t.Error("the room stays when the reason goes")
	}
}

// What a value breaks elsewhere is said in both places, until either is put right.
func TestCrossCheck(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	weight, rear := d.set("car.weight", "1300"), d.row("car.rear_weight")
	message := "1325 lb on the rear tires puts the CG on or behind the rear axle; give less than the car's weight, 1300 lb"
	if got := why(rear); got != message {
		t.Errorf("at the rear weight stands %q", got)
	}
	if got := why(weight.row); got != "Weight on rear tires: "+message {
		t.Errorf("at the weight stands %q", got)
	}
	if as[*entry](t, rear.editors[0]).refused {
		t.Error("the rear weight is marked although nothing was typed there")
	}

	d.set("car.rear_weight", "650")
	if why(rear) != "" {
		t.Errorf("at the new rear weight still stands %q", why(rear))
	}
	if !weight.refused {
		t.Error("the weight is taken without being asked for again")
	}
	d.window.Canvas().Focus(weight)
	d.press(fyne.KeyReturn)
	want(t, "weight", d.doc.Car().Body.Mass, 1300*pound)
	if why(weight.row) != "" {
		t.Errorf("at the weight still stands %q", why(weight.row))
	}
}

// What a text breaks elsewhere is said there no longer than the text is refused
// for it.
func TestReasonsElsewhereGoWithTheirCause(t *testing.T) {
	for _, next := range []string{"", "heavy", "2650", "2650 lb", "2700"} {
		d := newDesk(t)
		d.openAll()
		d.set("car.weight", "1300")
		if why(d.row("car.rear_weight")) == "" {
			t.Fatal("a weight of 1300 lb breaks nothing elsewhere")
		}
		weight := d.set("car.weight", next)
		for r := range d.panel.rows() {
			if r != weight.row && why(r) != "" {
				t.Errorf("after %q in its place, at %s still stands %q", next, r.path, why(r))
			}
		}
		if accepted := !weight.pending(); accepted == weight.refused || accepted != (why(weight.row) == "") {
			t.Errorf("after %q, marked: %v, the reason is %q", next, weight.refused, why(weight.row))
		}
	}
}

func TestEscapeTakesTheReasonElsewhereToo(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.set("car.weight", "1300")
	d.press(fyne.KeyEscape)
	for _, path := range []string{"car.weight", "car.rear_weight"} {
		if got := why(d.row(path)); got != "" {
			t.Errorf("at %s still stands %q", path, got)
		}
	}
}

// A problem that has no row of its own stands where the change was tried.
func TestProblemWithoutARow(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	lines := strings.Split(why(d.set("springs.rear_droop", "30").row), "\n")
	if len(lines) != 2 {
		t.Fatalf("the reasons for two setups are %q", lines)
	}
	for i, name := range []string{"baseline", "bite"} {
		before, after := `in "`+name+`" the bars do not reach the rear droop of 30 in`, "choose other holes or allow less rear droop"
		if !strings.HasPrefix(lines[i], before) || !strings.HasSuffix(lines[i], after) {
			t.Errorf("the reason is %q", lines[i])
		}
	}
}

func TestCommitPending(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	if !d.panel.CommitPending() {
		t.Error("nothing is pending, and it is refused")
	}
	e := d.entry("car.wheelbase", 0)
	d.typed(e, "110")
	if !d.panel.CommitPending() {
		t.Error("110 in is refused")
	}
	want(t, "wheelbase", d.doc.Car().Body.Wheelbase, 110*inch)
	d.doc.Undo()
	d.wantText(e, "105")

	d.typed(e, "1")
	if d.panel.CommitPending() {
		t.Error("a wheelbase of 1 in is taken")
	}
	d.wantText(e, "1")
	d.window.Canvas().Unfocus()
	d.panel.SetOpenSections(nil)
	if d.panel.CommitPending() {
		t.Error("a refused wheelbase is not pending once the focus is elsewhere")
	}
	if got := d.panel.OpenSections(); len(got) != 1 || got[0] != TitleCar || d.window.Canvas().Focused() != e {
		t.Errorf("what is refused is not shown: open are %q", got)
	}
	d.panel.RestorePending()
	d.wantText(e, "105")
	if !d.panel.CommitPending() || e.refused {
		t.Error("a value taken back is still refused")
	}
}

// The reason under the last row in sight comes into sight.
func TestReasonIsInSight(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	for range 300 {
		test.FocusNext(d.window.Canvas())
		at := d.boxes()
		e, ok := d.window.Canvas().Focused().(*entry)
		if !ok || e.row.wide || at[e.row].bottom < at[d.panel.scroll].bottom-10 {
			continue
		}
		d.typed(e, "x")
		d.press(fyne.KeyReturn)
		if at = d.boxes(); why(e.row) == "" || !at[e.row.why].within(at[d.panel.scroll]) {
			t.Errorf("the reason %q is at %v", why(e.row), at[e.row.why])
		}
		return
	}
	t.Error("no entry is last in sight")
}

// Typing the old value again ends a refusal.
func TestTypingTheOldValueBack(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	for _, key := range []fyne.KeyName{fyne.KeyReturn, ""} {
		e := d.set("car.wheelbase", "1")
		d.typed(e, "105")
		if key != "" {
			d.press(key)
		} else {
			d.window.Canvas().Unfocus()
		}
		if e.refused || why(e.row) != "" {
			t.Errorf("the old value is refused: %q", why(e.row))
		}
	}
	d.wantUndo("")
}

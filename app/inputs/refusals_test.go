package inputs_test

import (
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/model/car"

	"fyne.io/fyne/v2"
)

// What a value breaks elsewhere is said in both places, until either is put right.
func TestCrossCheck(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	weight, rear := d.set("car.weight", "1300"), d.row("car.rear_weight")
	message := "1325 lb on the rear tires puts the CG on or behind the rear axle; give less than the car's weight, 1300 lb"
	if got := why(rear); got != message {
		t.Errorf("at the rear weight stands %q", got)
	}
	if got := why(d.row("car.weight")); got != "Weight on rear tires: "+message {
		t.Errorf("at the weight stands %q", got)
	}
	if as[*form.Entry](t, rear.Editors[0]).Refused() {
		t.Error("the rear weight is marked although nothing was typed there")
	}

	d.set("car.rear_weight", "650")
	if why(rear) != "" {
		t.Errorf("at the new rear weight still stands %q", why(rear))
	}
	if !weight.Refused() {
		t.Error("the weight is taken without being asked for again")
	}
	d.window.Canvas().Focus(weight)
	d.press(fyne.KeyReturn)
	want(t, "weight", d.doc.Car().Body.Mass, 1300*pound)
	if why(d.row("car.weight")) != "" {
		t.Errorf("at the weight still stands %q", why(d.row("car.weight")))
	}
}

// A problem that has no row of its own stands where the change was tried.
func TestProblemWithoutARow(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.set("springs.rear_droop", "30")
	lines := strings.Split(why(d.row("springs.rear_droop")), "\n")
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

// Springs that would have to pull at rest are refused where their mounts are typed,
// with the force: by hand 892 lb for springs 2 in behind the axle, since 935 lb rest on
// them and on bars whose lines meet 41.25 in ahead of it.
func TestMountsUpsideDown(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.doc.Apply("Delete setup", func(c *car.Car) { c.Setups = c.Setups[:1] })
	e := d.entry("springs.rear_chassis_mount", 1)
	d.typed(e, "3")
	d.press(fyne.KeyReturn)
	said := why(d.row("springs.rear_chassis_mount"))
	if !e.Refused() || !strings.Contains(said, "would have to pull 892 lb") || !strings.Contains(said, "higher than the mount on the axle") {
		t.Errorf("at the mount stands %q", said)
	}
	d.press(fyne.KeyEscape)
	// From the other end too: 26 in above the axle centerline is 42 in up, over 29 in.
	e = d.entry("springs.rear_axle_mount", 1)
	d.typed(e, "26")
	d.press(fyne.KeyReturn)
	if said := why(d.row("springs.rear_axle_mount")); !e.Refused() || !strings.Contains(said, "would have to pull") {
		t.Errorf("at the mount on the axle stands %q", said)
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
	if got := d.panel.OpenSections(); len(got) != 1 || got[0] != inputs.TitleCar || d.window.Canvas().Focused() != e {
		t.Errorf("what is refused is not shown: open are %q", got)
	}
	d.panel.RestorePending()
	d.wantText(e, "105")
	if !d.panel.CommitPending() || e.Refused() {
		t.Error("a value taken back is still refused")
	}
}

package document

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
)

// wantSetups compares the setups, each with its number of runs, and the
// current one.
func wantSetups(t *testing.T, d *Document, want string, current int) {
	t.Helper()
	var list []string
	for _, s := range d.Car().Setups {
		list = append(list, fmt.Sprintf("%s %d", s.Name, len(s.Runs)))
	}
	if got := strings.Join(list, ", "); got != want || d.Setup() != current {
		t.Errorf("setups %q with %d current, want %q with %d", got, d.Setup(), want, current)
	}
}

// logged returns the fixture's car with runs logged with its setups: 2, 1, 0.
func logged(t *testing.T) *Document {
	t.Helper()
	d := newDocument(t)
	for _, r := range []struct {
		setup int
		run   car.Run
	}{
		{0, car.Run{Date: "2031-05-17", SixtyFoot: 1.402, AntiSquat: 1.2}},
		{0, car.Run{Date: "2031-05-18", SixtyFoot: 1.391, AntiSquat: 1.2}},
		{1, car.Run{Date: "2031-05-18", Track: "Saltgrass Flats"}},
	} {
		if p := d.LogRun(r.setup, r.run); p != nil {
			t.Fatal(p)
		}
	}
	wantSetups(t, d, "baseline 2, high 1, low 0", 0)
	return d
}

func TestACopyIsCurrentAndHasNoRuns(t *testing.T) {
	d := logged(t)
	if p := d.CopySetup(1); p != nil {
		t.Fatal(p)
	}
	wantSetups(t, d, "baseline 2, high 1, high 2 0, low 0", 2)
	if c := d.Car(); c.Setups[2].Holes != c.Setups[1].Holes || c.Setups[2].Turns != c.Setups[1].Turns || d.UndoLabel() != "Copy setup" {
		t.Errorf("copied %+v, undo %q", c.Setups[2], d.UndoLabel())
	}
	d.Undo()
	wantSetups(t, d, "baseline 2, high 1, low 0", 0)
}

func TestRenameASetup(t *testing.T) {
	d := logged(t)
	if p := d.RenameSetup(2, "  loose track "); p != nil {
		t.Fatal(p)
	}
	wantSetups(t, d, "baseline 2, high 1, loose track 0", 0)
	if d.UndoLabel() != "Rename setup" {
		t.Errorf("undo %q", d.UndoLabel())
	}
	if p := d.RenameSetup(0, "baseline "); p != nil || d.UndoLabel() != "Rename setup" {
		t.Errorf("its own name: %v", p)
	}
	for name, want := range map[string]string{
		"high": `setup 1: name: setup 2 is called "high" too; give each setup a name of its own`,
		" ":    "setup 1: name: the name is empty; give each setup a name of its own",
	} {
		if p := d.RenameSetup(0, name); len(p) != 1 || p[0].String() != want {
			t.Errorf("%q: %v, want %q", name, p, want)
		}
	}
	wantSetups(t, d, "baseline 2, high 1, loose track 0", 0)
}

func TestMoveASetup(t *testing.T) {
	d := logged(t)
	d.MoveSetup(0, -1)
	d.MoveSetup(2, 1)
	wantSetups(t, d, "baseline 2, high 1, low 0", 0)
	d.MoveSetup(0, 2)
	wantSetups(t, d, "high 1, low 0, baseline 2", 2)
	d.MoveSetup(1, -1)
	wantSetups(t, d, "low 0, high 1, baseline 2", 2)
	d.Undo()
	d.Undo()
	wantSetups(t, d, "baseline 2, high 1, low 0", 0)
}

// What is deleted is returned, and undo brings all of it back.
func TestDeleteSetups(t *testing.T) {
	d := logged(t)
	for _, want := range []string{"baseline", "high"} {
		before := d.Car().Setups[0]
		if deleted, p := d.DeleteSetup(0); !reflect.DeepEqual(deleted, before) || deleted.Name != want || p != nil {
			t.Errorf("deleted %+v, %v, want %q", deleted, p, want)
		}
	}
	deleted, p := d.DeleteSetup(0)
	if want := "setup 1: a car needs a setup and this is the only one; add a copy first"; deleted.Name != "" || len(p) != 1 || p[0].String() != want {
		t.Errorf("deleted %+v, %v, want %q", deleted, p, want)
	}
	wantSetups(t, d, "low 0", 0)
	d.Undo()
	d.Undo()
	wantSetups(t, d, "baseline 2, high 1, low 0", 0)
	if deleted, p := d.DeleteSetup(2); deleted.Name != "low" || p != nil {
		t.Errorf("deleted %+v, %v", deleted, p)
	}
}

func TestRunsAreLoggedEditedAndDeleted(t *testing.T) {
	d := logged(t)
	before := d.Car()
	d.EditRun(0, 1, car.Run{Date: "2031-05-18", SixtyFoot: 1.389, AntiSquat: 1.2, Rear: "level"})
	if got := d.Car().Setups[0].Runs[1]; got.SixtyFoot != 1.389 || got.Rear != "level" || d.UndoLabel() != "Edit run" {
		t.Errorf("run %+v, undo %q", got, d.UndoLabel())
	}
	d.DeleteRun(0, 0)
	if got := d.Car().Setups[0].Runs; len(got) != 1 || got[0].Rear != "level" || d.UndoLabel() != "Delete run" {
		t.Errorf("runs %+v, undo %q", got, d.UndoLabel())
	}
	d.Undo()
	d.Undo()
	if got := d.Car().Setups[0].Runs; !slices.Equal(got, before.Setups[0].Runs) || d.UndoLabel() != "Log run" {
		t.Errorf("runs %+v, undo %q", got, d.UndoLabel())
	}
	p := d.LogRun(2, car.Run{Date: "17 May", SixtyFoot: 0.1})
	if len(p) != 2 || p[0].Path != "setup.2.run.0.date" || p[1].Path != "setup.2.run.0.sixty_ft" {
		t.Errorf("problems %v", p)
	}
}

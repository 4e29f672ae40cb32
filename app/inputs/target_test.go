package inputs

import (
	"math"
	"testing"

	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// targetDesk is the panel of the target alone, in the scroll of another page.
type targetDesk struct {
	*desk
	grown int
	help  string
}

func newTargetDesk(t *testing.T) *targetDesk {
	d := &targetDesk{desk: newDesk(t)}
	host := container.NewVScroll(nil)
	d.panel = NewTarget(d.doc, library(), host, func(text string) { d.help = text }, func() { d.grown++ })
	host.Content = container.NewVBox(d.panel)
	d.window = test.NewTempWindow(t, host)
	d.window.SetPadded(false)
	d.window.Resize(fyne.NewSize(416, 300))
	return d
}

func TestTheTargetStandsAlone(t *testing.T) {
	d := newTargetDesk(t)
	var paths []string
	for r := range d.panel.rows() {
		paths = append(paths, r.path)
		if !r.Visible() || r.Size().Height == 0 || r.Size().Width > 416 {
			t.Errorf("%s is not to be seen, its size is %v", r.path, r.Size())
		}
	}
	want := []string{"check.target_anti_squat", "check.target_ic.x", "check.target_ic.z", "check.pinion_limit"}
	if len(paths) != len(want) {
		t.Fatalf("rows %q", paths)
	}
	for i := range want {
		if paths[i] != want[i] {
			t.Errorf("row %d is %s, want %s", i+1, paths[i], want[i])
		}
	}
	d.wantText(d.entry("check.target_anti_squat", 0), "100")
	d.set("check.pinion_limit", "3")
	if got := d.doc.Car().Check.PinionLimit; math.Abs(got-3*math.Pi/180) > 1e-12 {
		t.Errorf("the limit is %v rad", got)
	}
	d.wantUndo("Set pinion change limit")
	d.doc.Undo()
	d.wantText(d.entry("check.pinion_limit", 0), "0")
	d.doc.SetUnits(units.SI)
	d.wantText(d.entry("check.target_ic.x", 0), "1016")
}

func TestARefusedTargetMakesRoomForItsReason(t *testing.T) {
	d := newTargetDesk(t)
	least := d.entry("check.target_anti_squat", 0)
	d.window.Canvas().Focus(least)
	if want := "Anti-squat, from and to: Where this car wants its anti-squat."; d.help != want {
		t.Errorf("the help is %q, want %q", d.help, want)
	}
	grown, height := d.grown, d.panel.MinSize().Height
	d.set("check.target_anti_squat", "200")
	if why(least.row) == "" || !least.refused {
		t.Error("a target that ends before it begins is taken")
	}
	if d.grown == grown || d.panel.MinSize().Height <= height {
		t.Errorf("no room is asked for: %v high, before %v", d.panel.MinSize().Height, height)
	}
	if d.panel.CommitPending() {
		t.Error("the refused value counts as taken")
	}
	d.press(fyne.KeyEscape)
	if why(least.row) != "" || d.panel.MinSize().Height != height {
		t.Error("the reason stays")
	}
	d.window.Canvas().Unfocus()
	if d.help != "" {
		t.Errorf("without a focus the help is %q", d.help)
	}
}

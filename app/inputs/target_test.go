package inputs_test

import (
	"math"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// targetDesk is the panel of the target alone, in the scroll of another page.
type targetDesk struct {
	*desk
	target *inputs.Fields
	grown  int
	help   string
}

func newTargetDesk(t *testing.T) *targetDesk {
	d := &targetDesk{desk: newDesk(t)}
	host := container.NewVScroll(nil)
	d.target = inputs.NewTarget(d.doc, library(), form.Host{Scroll: host, Help: func(text string) { d.help = text }, Grown: func() { d.grown++ }})
	host.Content = container.NewVBox(d.target.Form)
	d.window = test.NewTempWindow(t, host)
	d.window.SetPadded(false)
	d.window.Resize(fyne.NewSize(416, 300))
	return d
}

// entry returns an entry of the target.
func (d *targetDesk) entry(path string, i int) *form.Entry {
	return as[*form.Entry](d.t, d.target.Row(path).Editors[i])
}

// set types a text into the first entry of a row of the target, and Enter.
func (d *targetDesk) set(path, text string) {
	d.typed(d.entry(path, 0), text)
	d.press(fyne.KeyReturn)
}

// reason returns what is written under a row of the target.
func (d *targetDesk) reason(path string) string { return why(d.target.Row(path)) }

func TestTheTargetStandsAlone(t *testing.T) {
	d := newTargetDesk(t)
	var paths []string
	for r := range d.target.Rows() {
		paths = append(paths, r.Path)
		if !r.Visible() || r.Size().Height == 0 || r.Size().Width > 416 {
			t.Errorf("%s is not to be seen, its size is %v", r.Path, r.Size())
		}
	}
	want := []string{"check.target_anti_squat", "check.target_ic.x", "check.target_ic.z", "check.pinion_limit", "check.lift_limit"}
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
	d.wantDefault(d.entry("check.pinion_limit", 0), "0")
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
	grown, height := d.grown, d.target.MinSize().Height
	d.set("check.target_anti_squat", "200")
	if d.reason("check.target_anti_squat") == "" || !least.Refused() {
		t.Error("a target that ends before it begins is taken")
	}
	if d.grown == grown || d.target.MinSize().Height <= height {
		t.Errorf("no room is asked for: %v high, before %v", d.target.MinSize().Height, height)
	}
	if d.target.CommitPending() {
		t.Error("the refused value counts as taken")
	}
	d.press(fyne.KeyEscape)
	if d.reason("check.target_anti_squat") != "" || d.target.MinSize().Height != height {
		t.Error("the reason stays")
	}
	d.window.Canvas().Unfocus()
	if d.help != "" {
		t.Errorf("without a focus the help is %q", d.help)
	}
}

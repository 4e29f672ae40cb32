package document

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"
)

// fixture is a car file with the setups baseline, high and low.
func fixture(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "saltgrass.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// newDocument returns a document with the fixture's car, without a path.
func newDocument(t testing.TB) *Document {
	t.Helper()
	file, err := carfile.Decode("saltgrass.toml", fixture(t), carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return New(carfile.Stock(), filepath.Join(t.TempDir(), "state"), file)
}

// torque is an edit.
func torque(x float64) func(*car.Car) { return func(c *car.Car) { c.Drive.Torque = x } }

// apply makes an edit that must be accepted.
func apply(t testing.TB, d *Document, edit func(*car.Car)) {
	t.Helper()
	if problems := d.Apply("Edit", edit); len(problems) > 0 {
		t.Fatalf("refused: %v", problems)
	}
}

// hear collects what the document tells.
func hear(d *Document) *[]Event {
	var heard []Event
	d.Listen(func(e Event) { heard = append(heard, e) })
	return &heard
}

// mustPanic checks that f panics with a text that contains what.
func mustPanic(t *testing.T, what string, f func()) {
	t.Helper()
	defer func() {
		t.Helper()
		if text, ok := recover().(string); !ok || !strings.Contains(text, what) {
			t.Errorf("panicked with %q, want %q in it", text, what)
		}
	}()
	f()
}

func TestNewIsUnmodified(t *testing.T) {
	d := newDocument(t)
	if d.Modified() || d.Path() != "" || d.Setup() != 0 || d.UndoLabel() != "" || d.RedoLabel() != "" || d.Units() != units.US {
		t.Errorf("modified %v, path %q, setup %d, undo %q, redo %q, units %v", d.Modified(), d.Path(), d.Setup(), d.UndoLabel(), d.RedoLabel(), d.Units())
	}
	if title := d.Title(); title != "Saltgrass No. 7" {
		t.Errorf("title %q", title)
	}
	apply(t, d, torque(900))
	if title := d.Title(); title != "Saltgrass No. 7 •" {
		t.Errorf("title %q after an edit", title)
	}
}

func TestApplyRefusesAnInvalidCar(t *testing.T) {
	d := newDocument(t)
	heard := hear(d)
	before, snapshot, revision := d.Car(), d.Car().Clone(), d.Revision()
	problems := d.Apply("Break", func(c *car.Car) {
		c.Body.Mass = -1
		c.Drive.Gear = 1e9
		c.Chassis.Upper[0].X = 7
	})
	var paths []string
	for _, p := range problems {
		paths = append(paths, p.Path)
	}
	for _, want := range []string{"car.weight", "drive.gear"} {
		if !slices.Contains(paths, want) {
			t.Errorf("problems of %v, want one of %s", paths, want)
		}
	}
	if d.Car() != before || !reflect.DeepEqual(before, snapshot) || d.Revision() != revision || d.UndoLabel() != "" || len(*heard) > 0 {
		t.Error("a refused edit changed the document")
	}
}

func TestProblemsAreInScreenUnits(t *testing.T) {
	d := newDocument(t)
	wrong := func(c *car.Car) { c.Body.Wheelbase = -1 }
	us := d.Apply("Break", wrong)
	d.SetUnits(units.SI)
	si := d.Apply("Break", wrong)
	if !strings.Contains(us[0].Wrong, " in ") || !strings.Contains(si[0].Wrong, "−1000 mm") {
		t.Errorf("%q in inches, %q in millimeters", us[0].Wrong, si[0].Wrong)
	}
}

func TestApplyWithoutChangeIsNoStep(t *testing.T) {
	d := newDocument(t)
	heard := hear(d)
	before, revision := d.Car(), d.Revision()
	apply(t, d, func(c *car.Car) { c.Drive.Torque *= 1 })
	if d.Car() != before || d.Revision() != revision || d.UndoLabel() != "" || len(*heard) > 0 {
		t.Error("an edit that changes nothing changed the document")
	}
}

func TestEditsCannotReachAPublishedCar(t *testing.T) {
	d := newDocument(t)
	var kept *car.Car
	setups := slices.Clone(d.Car().Setups)
	apply(t, d, func(c *car.Car) {
		kept = c
		c.Setups = setups
		c.Setups[1].Note = "for a cold track"
	})
	snapshot := d.Car().Clone()
	kept.Body.Name = "changed"
	setups[0].Name = "changed"
	if !reflect.DeepEqual(d.Car(), snapshot) {
		t.Error("what the edit kept reaches into the car")
	}
}

func TestRevisionGrowsWithCarAndSetup(t *testing.T) {
	d := newDocument(t)
	last := d.Revision()
	for _, s := range []struct {
		name  string
		do    func()
		grows bool
	}{
		{"edit", func() { apply(t, d, torque(900)) }, true},
		{"undo", func() { d.Undo() }, true},
		{"redo", func() { d.Redo() }, true},
		{"setup", func() { d.SelectSetup(1) }, true},
		{"the same setup", func() { d.SelectSetup(1) }, false},
		{"units", func() { d.SetUnits(units.SI) }, false},
		{"a step without edits", func() { d.Begin("Drag"); d.End() }, false},
	} {
		s.do()
		if got := d.Revision(); (got > last) != s.grows || got < last {
			t.Errorf("%s: revision %d after %d", s.name, got, last)
		}
		last = d.Revision()
	}
}

func TestSelectSetupRefusesWhatIsNotThere(t *testing.T) {
	d := newDocument(t)
	mustPanic(t, "setup -1 of 3", func() { d.SelectSetup(-1) })
	mustPanic(t, "setup 3 of 3", func() { d.SelectSetup(3) })
}

func TestCurrentSetupFollowsItsName(t *testing.T) {
	remove := func(i int) func(*car.Car) {
		return func(c *car.Car) { c.Setups = slices.Delete(c.Setups, i, i+1) }
	}
	for _, c := range []struct {
		name    string
		current int
		edit    func(*car.Car)
		want    string
	}{
		{"one before it goes", 1, remove(0), "high"},
		{"one behind it goes", 1, remove(2), "high"},
		{"it goes itself", 1, remove(1), "low"},
		{"it goes as the last", 2, remove(2), "high"},
		{"it is renamed", 1, func(c *car.Car) { c.Setups[1].Name = "higher" }, "higher"},
		{"the list is turned round", 2, func(c *car.Car) { slices.Reverse(c.Setups) }, "low"},
	} {
		d := newDocument(t)
		d.SelectSetup(c.current)
		apply(t, d, c.edit)
		if got := d.Car().Setups[d.Setup()].Name; got != c.want {
			t.Errorf("%s: current is %q, want %q", c.name, got, c.want)
		}
		d.Undo()
		if d.Setup() != c.current {
			t.Errorf("%s: setup %d after undo, want %d", c.name, d.Setup(), c.current)
		}
	}
}

func TestUnitsTouchNoValue(t *testing.T) {
	d := newDocument(t)
	before := d.Car()
	d.SetUnits(units.SI)
	if d.Car() != before || d.Modified() || d.UndoLabel() != "" || d.Units() != units.SI {
		t.Error("choosing units changed the car")
	}
	path := filepath.Join(t.TempDir(), "car.toml")
	if err := d.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	if file.Units != units.US || d.Units() != units.SI {
		t.Errorf("file in %v, screen in %v", file.Units, d.Units())
	}
	if err := d.Open(path); err != nil || d.Units() != units.US {
		t.Errorf("units %v after opening (%v)", d.Units(), err)
	}
}

func BenchmarkApplyInADrag(b *testing.B) {
	d := newDocument(b)
	d.Begin("Move pivot")
	for b.Loop() {
		d.Apply("", func(c *car.Car) { c.Chassis.Upper[2].X += 1e-7 })
	}
}

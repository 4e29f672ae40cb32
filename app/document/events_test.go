package document

import (
	"path/filepath"
	"slices"
	"testing"

	"bowline/model/car"
	"bowline/model/units"
)

func TestEvents(t *testing.T) {
	d := newDocument(t)
	path := filepath.Join(t.TempDir(), "car.toml")
	heard := hear(d)
	for _, s := range []struct {
		name string
		do   func()
		want []Event
	}{
		{"first edit", func() { apply(t, d, torque(900)) }, []Event{Changed | FileChanged | HistoryChanged}},
		{"second edit of the same label", func() { apply(t, d, torque(901)) }, []Event{Changed}},
		{"undo", func() { d.Undo() }, []Event{Changed | HistoryChanged}},
		{"save", func() { must(t, d.SaveAs(path)) }, []Event{FileChanged}},
		{"save again", func() { must(t, d.Save()) }, nil},
		{"units", func() { d.SetUnits(units.SI) }, []Event{UnitsChanged}},
		{"the same units", func() { d.SetUnits(units.SI) }, nil},
		{"setup", func() { d.SelectSetup(2) }, []Event{SetupSelected}},
		{"the same setup", func() { d.SelectSetup(2) }, nil},
		{"undo brings back a setup", func() { d.Undo() }, []Event{Changed | SetupSelected | FileChanged | HistoryChanged}},
		{"nothing to undo", func() { d.Undo() }, nil},
		{"begin", func() { d.Begin("Drag") }, []Event{HistoryChanged}},
		{"edit in a drag", func() { apply(t, d, torque(902)) }, []Event{Changed}},
		{"back in a drag", func() { apply(t, d, torque(900)); d.Cancel() }, []Event{Changed | FileChanged, Changed | FileChanged | HistoryChanged}},
		{"open", func() { must(t, d.Open(path)) }, []Event{Changed | UnitsChanged | FileChanged | HistoryChanged | Loaded}},
		{"open again", func() { must(t, d.Open(path)) }, []Event{Changed | Loaded}},
		{"redo of nothing", func() { d.Redo() }, nil},
	} {
		*heard = nil
		s.do()
		if !slices.Equal(*heard, s.want) {
			t.Errorf("%s: heard %b, want %b", s.name, *heard, s.want)
		}
	}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestListenersHearInOrderUntilCanceled(t *testing.T) {
	d := newDocument(t)
	var heard []string
	listen := func(name string) func() {
		return d.Listen(func(Event) { heard = append(heard, name) })
	}
	listen("first")
	var cancelThird func()
	cancelSecond := d.Listen(func(Event) {
		heard = append(heard, "second")
		cancelThird()
	})
	cancelThird = listen("third")
	listen("fourth")
	apply(t, d, torque(900))
	cancelSecond()
	cancelSecond()
	apply(t, d, torque(901))
	if want := []string{"first", "second", "fourth", "first", "fourth"}; !slices.Equal(heard, want) {
		t.Errorf("heard %v, want %v", heard, want)
	}
}

func TestListenersSeeTheNewState(t *testing.T) {
	d := newDocument(t)
	revision := d.Revision()
	d.Listen(func(Event) {
		if d.Car().Drive.Torque != 900 || d.Revision() <= revision || !d.Modified() || d.UndoLabel() != "Edit" {
			t.Errorf("heard too early: torque %v, revision %d", d.Car().Drive.Torque, d.Revision())
		}
	})
	apply(t, d, torque(900))
}

func TestListenersMustNotChangeTheDocument(t *testing.T) {
	for name, change := range map[string]func(*Document){
		"Apply":       func(d *Document) { d.Apply("Edit", torque(901)) },
		"Undo":        func(d *Document) { d.Undo() },
		"Redo":        func(d *Document) { d.Redo() },
		"Begin":       func(d *Document) { d.Begin("Drag") },
		"SelectSetup": func(d *Document) { d.SelectSetup(1) },
		"SetUnits":    func(d *Document) { d.SetUnits(units.SI) },
		"Open":        func(d *Document) { _ = d.Open(filepath.Join("testdata", "saltgrass.toml")) },
		"SaveAs":      func(d *Document) { _ = d.SaveAs(filepath.Join(t.TempDir(), "car.toml")) },
	} {
		d := newDocument(t)
		apply(t, d, torque(899))
		apply(t, d, torque(900))
		d.Undo()
		cancel := d.Listen(func(Event) { change(d) })
		mustPanic(t, "a listener must not change the document", func() { d.SelectSetup(2) })
		cancel()
		if d.Car().Drive.Torque != 899 || d.Setup() != 2 {
			t.Errorf("%s: changed the document", name)
		}
		apply(t, d, torque(902)) // It goes on.
	}
}

func TestListenersMayRepeatWhatIsSo(t *testing.T) {
	d := newDocument(t)
	d.Listen(func(Event) {
		d.SelectSetup(d.Setup())
		d.SetUnits(d.Units())
		d.Apply("Edit", torque(d.Car().Drive.Torque))
	})
	apply(t, d, torque(900))
	d.SelectSetup(1)
}

func TestEditsMustNotChangeTheDocument(t *testing.T) {
	d := newDocument(t)
	mustPanic(t, "an edit must not change the document", func() {
		d.Apply("Edit", func(*car.Car) { d.SelectSetup(1) })
	})
	if d.Setup() != 0 {
		t.Error("an edit selected a setup")
	}
}

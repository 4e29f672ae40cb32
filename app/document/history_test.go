package document

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"bowline/model/car"
	"bowline/model/units"

	"pgregory.net/rapid"
)

func TestHistoryIsBounded(t *testing.T) {
	d := newDocument(t)
	const more = 30
	for i := range MaxSteps + more {
		apply(t, d, torque(1000+float64(i)))
	}
	undone := 0
	for d.Undo() {
		undone++
	}
	if undone != MaxSteps || d.Car().Drive.Torque != 1000+more-1 {
		t.Errorf("undid %d steps to %v, want %d to %d", undone, d.Car().Drive.Torque, MaxSteps, 1000+more-1)
	}
	for d.Redo() {
		undone--
	}
	if undone != 0 || d.Car().Drive.Torque != 1000+MaxSteps+more-1 {
		t.Errorf("%d steps not redone, torque %v", undone, d.Car().Drive.Torque)
	}
}

func TestModifiedEndsAtTheSavedCar(t *testing.T) {
	d := newDocument(t)
	apply(t, d, torque(900))
	must(t, d.SaveAs(t.TempDir()+"/car.toml"))
	check := func(want bool, when string) {
		t.Helper()
		if d.Modified() != want {
			t.Errorf("modified %v %s", !want, when)
		}
	}
	check(false, "after saving")
	d.Undo()
	check(true, "after undoing past the saved car")
	d.Redo()
	check(false, "after redoing to the saved car")
	apply(t, d, torque(901))
	check(true, "after an edit")
	apply(t, d, torque(900))
	check(false, "after typing the saved value again")
}

func TestBeginWithinBegin(t *testing.T) {
	d := newDocument(t)
	d.Begin("Move pivot")
	mustPanic(t, "Begin of Move bracket within Move pivot", func() { d.Begin("Move bracket") })
}

func TestADragEndsWithTheCarItBelongsTo(t *testing.T) {
	d := newDocument(t)
	d.Begin("Move pivot")
	apply(t, d, torque(900))
	must(t, d.OpenBytes("saltgrass.toml", fixture(t)))
	apply(t, d, torque(901))
	d.End()
	d.Cancel()
	if d.UndoLabel() != "Edit" || d.Car().Drive.Torque != 901 {
		t.Errorf("undo %q, torque %v", d.UndoLabel(), d.Car().Drive.Torque)
	}
}

// A setup added and selected in one drag is undone and redone together.
func TestADragKeepsTheSetupsOfItsEnds(t *testing.T) {
	d := newDocument(t)
	d.Begin("Copy setup")
	apply(t, d, func(c *car.Car) {
		c.Setups = append(c.Setups, c.Setups[0])
		c.Setups[3].Name = "copy"
	})
	d.SelectSetup(3)
	d.End()
	if d.Undo(); d.Setup() != 0 || len(d.Car().Setups) != 3 {
		t.Errorf("setup %d of %d after undo", d.Setup(), len(d.Car().Setups))
	}
	d.SelectSetup(1)
	if d.Redo(); d.Setup() != 3 {
		t.Errorf("setup %d after redo", d.Setup())
	}
}

// view is what the model of a document knows of a car.
type view struct {
	torque int // [lb·ft]
	setups []string
	setup  int
}

func (v view) sameCar(w view) bool { return v.torque == w.torque && slices.Equal(v.setups, w.setups) }

// entry is an edit in the model.
type entry struct {
	label         string
	before, after view
}

// machine runs a document beside a model with two plain stacks.
type machine struct {
	doc          *Document
	holes        map[string]car.Holes // By setup name.
	now          view
	saved        view
	undo, redo   []entry
	drag         *entry // Where it began.
	published    []*car.Car
	copies       []*car.Car
	heard        Event
	lastView     view
	lastRevision uint64
	canceled     bool // Canceling may publish an equal car.
}

var setupNames = []string{"baseline", "high", "low", "wet", "bumpy"}

// edit makes an edit in both, where the model's part says what becomes of the car and whether it is allowed.
func (m *machine) edit(t *rapid.T, label string, edit func(*car.Car), change func(*view) bool) {
	next := m.now
	next.setups = slices.Clone(next.setups)
	allowed := change(&next)
	problems := m.doc.Apply(label, edit)
	if (len(problems) == 0) != allowed {
		t.Fatalf("%s: problems %v, want any: %v", label, problems, !allowed)
	}
	if !allowed || next.sameCar(m.now) {
		return
	}
	// The current setup is looked for by name, then by place.
	if i := slices.Index(next.setups, m.now.setups[m.now.setup]); i >= 0 {
		next.setup = i
	} else if next.setup >= len(next.setups) {
		next.setup = len(next.setups) - 1
	}
	if m.drag == nil {
		m.undo, m.redo = append(m.undo, entry{label, m.now, next}), nil
	}
	m.now = next
}

func (m *machine) Torque(t *rapid.T) {
	n := rapid.IntRange(698, 702).Draw(t, "torque")
	m.edit(t, fmt.Sprint("Torque ", n),
		func(c *car.Car) { c.Drive.Torque = units.US.ToSI(units.Torque, float64(n)) },
		func(v *view) bool { v.torque = n; return true })
}

func (m *machine) Invalid(t *rapid.T) {
	m.edit(t, "Invalid",
		func(c *car.Car) { c.Drive.Torque, c.Setups[0].Name = -1, "broken" },
		func(*view) bool { return false })
}

func (m *machine) AddSetup(t *rapid.T) {
	name := rapid.SampledFrom(setupNames).Draw(t, "name")
	at := rapid.IntRange(0, len(m.now.setups)).Draw(t, "at")
	m.edit(t, "Add "+name,
		func(c *car.Car) {
			c.Setups = slices.Insert(c.Setups, at, car.Setup{Name: name, Holes: m.holes[name]})
		},
		func(v *view) bool {
			taken := slices.Contains(v.setups, name)
			v.setups = slices.Insert(v.setups, at, name)
			return !taken
		})
}

func (m *machine) RemoveSetup(t *rapid.T) {
	at := rapid.IntRange(0, len(m.now.setups)-1).Draw(t, "at")
	m.edit(t, fmt.Sprint("Remove ", at),
		func(c *car.Car) { c.Setups = slices.Delete(c.Setups, at, at+1) },
		func(v *view) bool {
			v.setups = slices.Delete(v.setups, at, at+1)
			return len(v.setups) > 0
		})
}

func (m *machine) SelectSetup(t *rapid.T) {
	i := rapid.IntRange(0, len(m.now.setups)-1).Draw(t, "setup")
	m.doc.SelectSetup(i)
	m.now.setup = i
}

func (m *machine) Begin(*rapid.T) {
	if m.drag == nil {
		m.doc.Begin("Drag")
		m.drag = &entry{"Drag", m.now, view{}}
	}
}

func (m *machine) End(*rapid.T) {
	m.doc.End()
	if m.drag != nil && !m.drag.before.sameCar(m.now) {
		m.undo, m.redo = append(m.undo, entry{m.drag.label, m.drag.before, m.now}), nil
	}
	m.drag = nil
}

func (m *machine) Cancel(*rapid.T) {
	m.doc.Cancel()
	m.canceled = true
	if m.drag != nil {
		m.now = m.drag.before
	}
	m.drag = nil
}

func (m *machine) Undo(t *rapid.T) {
	n := len(m.undo)
	if done := m.doc.Undo(); done != (m.drag == nil && n > 0) {
		t.Fatalf("Undo returned %v with %d steps", done, n)
	} else if done {
		e := m.undo[n-1]
		m.undo, m.redo = m.undo[:n-1], append(m.redo, e)
		m.now = e.before
	}
}

func (m *machine) Redo(t *rapid.T) {
	n := len(m.redo)
	if done := m.doc.Redo(); done != (m.drag == nil && n > 0) {
		t.Fatalf("Redo returned %v with %d steps", done, n)
	} else if done {
		e := m.redo[n-1]
		m.redo, m.undo = m.redo[:n-1], append(m.undo, e)
		m.now = e.after
	}
}

func top(stack []entry) string {
	if len(stack) == 0 {
		return ""
	}
	return stack[len(stack)-1].label
}

// Check compares the two after every action.
func (m *machine) Check(t *rapid.T) {
	d := m.doc
	c := d.Car()
	got := view{torque: int(units.US.FromSI(units.Torque, c.Drive.Torque) + 0.5), setup: d.Setup()}
	for _, s := range c.Setups {
		got.setups = append(got.setups, s.Name)
	}
	if !reflect.DeepEqual(got, m.now) {
		t.Fatalf("document %v, model %v", got, m.now)
	}
	if m.drag == nil && (d.UndoLabel() != top(m.undo) || d.RedoLabel() != top(m.redo)) {
		t.Fatalf("undo %q, redo %q; model %q, %q", d.UndoLabel(), d.RedoLabel(), top(m.undo), top(m.redo))
	}
	if m.drag != nil && d.UndoLabel()+d.RedoLabel() != "" {
		t.Fatalf("undo %q, redo %q in a drag", d.UndoLabel(), d.RedoLabel())
	}
	if d.Modified() == m.now.sameCar(m.saved) {
		t.Fatalf("modified %v at %v, saved %v", d.Modified(), m.now, m.saved)
	}
	m.checkHeard(t)
	if !slices.Contains(m.published, c) {
		m.published, m.copies = append(m.published, c), append(m.copies, c.Clone())
	}
	for i := range m.published {
		if !reflect.DeepEqual(m.published[i], m.copies[i]) {
			t.Fatal("a car changed after it was published")
		}
	}
}

// checkHeard compares what was told with what changed.
func (m *machine) checkHeard(t *rapid.T) {
	carChanged, setupChanged := !m.now.sameCar(m.lastView), m.now.setup != m.lastView.setup
	if m.heard.Has(Changed) != carChanged && !m.canceled || m.heard.Has(SetupSelected) != setupChanged {
		t.Fatalf("heard %b from %v to %v", m.heard, m.lastView, m.now)
	}
	if grown := m.doc.Revision() > m.lastRevision; grown != m.heard.Has(Changed|SetupSelected) {
		t.Fatalf("revision %d after %d, heard %b", m.doc.Revision(), m.lastRevision, m.heard)
	}
	m.heard, m.canceled, m.lastView, m.lastRevision = 0, false, m.now, m.doc.Revision()
}

func TestDocumentAgainstModel(t *testing.T) {
	// Lengths that are given are not for the document to keep.
	data := bytes.ReplaceAll(fixture(t), []byte("_bar]\n"), []byte("_bar]\nfitted_length = 21.0\n"))
	folder := t.TempDir()
	base := newDocument(t)
	rapid.Check(t, func(rt *rapid.T) {
		d := base
		if err := d.OpenBytes("saltgrass.toml", data); err != nil {
			rt.Fatal(err)
		}
		start := view{torque: 780, setups: []string{"baseline", "high", "low"}}
		holes := map[string]car.Holes{}
		for i, name := range setupNames {
			holes[name] = d.Car().Setups[i%len(d.Car().Setups)].Holes
		}
		m := &machine{doc: d, holes: holes, now: start, saved: start, lastView: start, lastRevision: d.Revision()}
		cancel := d.Listen(func(e Event) { m.heard |= e })
		defer cancel()
		actions := rapid.StateMachineActions(m)
		actions["Save"] = func(rt *rapid.T) {
			if rapid.IntRange(0, 4).Draw(rt, "save") > 0 {
				return // Saving is slow.
			}
			if err := d.SaveAs(folder + "/car.toml"); err != nil {
				rt.Fatal(err)
			}
			m.saved = m.now
		}
		rt.Repeat(actions)
	})
}

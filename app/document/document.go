// Package document holds the car that is edited in the window: the one way in
// for edits, undo, the current setup, the car's file and its recovery after a
// crash.
//
// A Document belongs to the goroutine that owns the window.
package document

import (
	"fmt"
	"reflect"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/stock"
	"bowline/model/units"
)

// Document is the car being edited. Its car is valid at all times. Make one
// with New.
type Document struct {
	library stock.Library
	units   units.System // on screen

	now      state
	history  history
	drag     *step  // begun and not ended; nil for none
	revision uint64 // counts states

	file  *carfile.File // what the car is written into
	path  string        // absolute; empty for a car without a file
	disk  []byte        // what the file at path held when it was opened or saved last
	saved *car.Car      // the car in disk; nil for none
	loads int           // counts cars taken from a file

	recovery recovery
	audience audience
}

// state is what undo brings back.
type state struct {
	car   *car.Car // not changed once it is here
	setup int      // index of a setup of car
}

// New returns a document with the car of file, which has no path yet; Open
// and OpenBytes load others in its place. Materials are looked up in library.
// Recovery files of cars without a path go to folder, which is made when it is
// needed.
func New(library stock.Library, folder string, file *carfile.File) *Document {
	d := &Document{library: library, recovery: newRecovery(folder)}
	d.load(file, "", nil, file.Car)
	return d
}

// Car returns the current car. Do not change it: use Apply. Later edits make
// other cars and leave this one as it is.
func (d *Document) Car() *car.Car { return d.now.car }

// Revision increases with every change of the car or the current setup, undo
// included, so a result that was computed at another revision is outdated.
func (d *Document) Revision() uint64 { return d.revision }

// Setup returns the index of the current setup.
func (d *Document) Setup() int { return d.now.setup }

// Units returns the unit system on screen. It starts as the file's own.
func (d *Document) Units() units.System { return d.units }

// Title names the car for the window's title, with a mark when it is modified.
func (d *Document) Title() string {
	if d.Modified() {
		return d.now.car.Body.Name + " •"
	}
	return d.now.car.Body.Name
}

// Apply makes one edit, an undo step named label, unless it is part of a drag.
// The edit gets a copy of the car. If the result is not valid, nothing changes and
// the problems are returned, in units of the screen. Bars that go to
// other holes keep the length they were fitted at (car.KeepFitted). An edit that
// changes nothing is no step. The current setup is followed by its name; when
// there is none of that name any more, by its place in the list.
//
// Neither edit nor a listener may change the document: that panics.
func (d *Document) Apply(label string, edit func(*car.Car)) []car.Problem {
	next := d.now.car.Clone()
	d.freeze("an edit", func() { edit(next) })
	next.KeepFitted(d.start().car)
	next.Settle()
	if reflect.DeepEqual(next, d.now.car) {
		return nil
	}
	if problems := next.Validate(d.library, d.units); len(problems) > 0 {
		return problems
	}
	d.mayChange()
	// One more copy: the edit may have put a list into its car that it still holds.
	after := state{next.Clone(), follow(d.now, next)}
	if d.drag == nil {
		d.history.push(step{label, d.now, after})
	}
	d.now = after
	d.tell()
	return nil
}

// start returns the state before the edit at hand; in a drag, before the drag.
func (d *Document) start() state {
	if d.drag != nil {
		return d.drag.before
	}
	return d.now
}

// follow returns the index in next of the setup that was current in was.
func follow(was state, next *car.Car) int {
	if i := next.SetupNamed(was.car.Setups[was.setup].Name); i >= 0 {
		return i
	}
	return min(was.setup, len(next.Setups)-1)
}

// SelectSetup makes setup i the current one. That is no undo step of its own,
// but undo and redo bring back the setup that was current at their step. It
// panics when there is no such setup.
func (d *Document) SelectSetup(i int) {
	if n := len(d.now.car.Setups); i < 0 || i >= n {
		panic(fmt.Sprintf("document: setup %d of %d", i, n))
	}
	if i == d.now.setup {
		return
	}
	d.mayChange()
	d.now.setup = i
	d.tell()
}

// SetUnits chooses the unit system on screen. Neither the car nor the units of
// its file change.
func (d *Document) SetUnits(s units.System) {
	if s == d.units {
		return
	}
	d.mayChange()
	d.units = s
	d.tell()
}

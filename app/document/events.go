package document

import (
	"slices"

	"bowline/model/car"
	"bowline/model/units"
)

// Event says what has changed, all at once.
type Event uint8

// What an Event is made of.
const (
	Changed        Event = 1 << iota // Car returns another car.
	SetupSelected                    // Setup returns another index.
	UnitsChanged                     // Units returns another system.
	FileChanged                      // Path or Modified changed, and perhaps Title.
	HistoryChanged                   // UndoLabel, RedoLabel or Dragging changed.
	Loaded                           // The car comes from another file, or anew from the same one.
)

// Has reports whether any of what is among the changes.
func (e Event) Has(what Event) bool { return e&what != 0 }

// audience holds the listeners of a document and what they were told last.
type audience struct {
	listeners []*listener
	told      facts
	frozen    string // who must not change the document now, as in "a listener"; empty for nobody
}

// listener is one function that hears of changes; nil once it is canceled.
type listener struct{ hear func(Event) }

// facts are what listeners hear about.
type facts struct {
	car        *car.Car
	setup      int
	units      units.System
	path       string
	modified   bool
	undo, redo string
	dragging   bool
	loads      int
}

func (d *Document) facts() facts {
	return facts{d.now.car, d.now.setup, d.units, d.path, d.Modified(), d.UndoLabel(), d.RedoLabel(), d.Dragging(), d.loads}
}

// since says how f differs from what was told before.
func (f facts) since(told facts) Event {
	var e Event
	for _, part := range []struct {
		event   Event
		differs bool
	}{
		{Changed, f.car != told.car},
		{SetupSelected, f.setup != told.setup},
		{UnitsChanged, f.units != told.units},
		{FileChanged, f.path != told.path || f.modified != told.modified},
		{HistoryChanged, f.undo != told.undo || f.redo != told.redo || f.dragging != told.dragging},
		{Loaded, f.loads != told.loads},
	} {
		if part.differs {
			e |= part.event
		}
	}
	return e
}

// Listen has hear called after every change until cancel is called. Listeners
// are called in the order of subscription, once a change. They may read the
// document but not change it: that panics.
func (d *Document) Listen(hear func(Event)) (cancel func()) {
	l := &listener{hear}
	d.audience.listeners = append(d.audience.listeners, l)
	return func() {
		l.hear = nil
		d.audience.listeners = slices.DeleteFunc(slices.Clone(d.audience.listeners), func(other *listener) bool { return other == l })
	}
}

// tell compares the document with what its listeners were told last and tells
// them what has changed.
func (d *Document) tell() {
	now := d.facts()
	e := now.since(d.audience.told)
	d.audience.told = now
	if e.Has(Changed | SetupSelected) {
		d.revision++
	}
	if e == 0 {
		return
	}
	d.freeze("a listener", func() {
		for _, l := range d.audience.listeners {
			if l.hear != nil {
				l.hear(e)
			}
		}
	})
}

// freeze runs f, which must not change the document.
func (d *Document) freeze(who string, f func()) {
	outer := d.audience.frozen
	d.audience.frozen = who
	defer func() { d.audience.frozen = outer }()
	f()
}

// mayChange panics while the document is frozen.
func (d *Document) mayChange() {
	if d.audience.frozen != "" {
		panic("document: " + d.audience.frozen + " must not change the document")
	}
}

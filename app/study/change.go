package study

import "bowline/app/document"

// Change says what has changed at once: one or more of the flags below.
type Change uint32

// Changes of the document, passed on.
const (
	Car     = Change(document.Changed)        // The document's car is another one.
	Setup   = Change(document.SetupSelected)  // Another setup is the current one.
	Units   = Change(document.UnitsChanged)   // The unit system on screen.
	File    = Change(document.FileChanged)    // The car's path, or whether it is modified.
	History = Change(document.HistoryChanged) // What undo and redo would do.
	Loaded  = Change(document.Loaded)         // The car comes from another file, or anew from the same one.
)

// Changes of the study.
const (
	Analysis     Change = 1 << (8 + iota) // Result returns another analysis, as after each change of Car or Setup.
	Position                              // The station: travel, front travel, or the instant of the launch.
	Choice                                // Load case, launch or travel, selected pivot, hole-moving mode, forces on the axle.
	Launches                              // A launch has been computed, or dropped with its car.
	LaunchFailed                          // A launch could not be computed: LaunchError says why.
	Compared                              // The setups that the current one is compared with.
	Ranking                               // The combinations of holes: found, ranked, filtered or outdated.
	Pointing                              // The combination pointed at or picked.
	Progress                              // The progress of the search for the combinations, or of their launches.
	Wanted                                // What is wanted computed.
	Appraised                             // What the assumptions are worth has been found, or dropped with its car.
	TurnsSearch                           // The search for turns that even the rear tires: its progress, or what it has found.
)

// Has reports whether any of what is among the changes.
func (c Change) Has(what Change) bool { return c&what != 0 }

// change is the one way in which a study changes: apply makes the change and
// returns what it is, what depends on it is updated, and then the listeners are
// called once.
func (s *Study) change(apply func() Change) {
	if s.telling {
		panic("study: a listener must not change the study")
	}
	if c := apply(); c != 0 {
		s.tell(c | s.update(c))
	}
}

// update recomputes what depends on a change, submits what is missing to the
// workers, and returns what else has changed by that.
func (s *Study) update(c Change) Change {
	var more Change
	if c.Has(Car) {
		more |= s.keepCombinations()
	}
	if c.Has(Car | Setup) {
		more |= s.rank() | s.outdateTurns()
	}
	if c.Has(Car | Setup | Compared | Analysis) {
		more |= Analysis | Position | s.analyze()
	} else if c.Has(Position | Launches) {
		s.place()
	}
	if c.Has(Car | Setup | Choice | Launches | Compared | Wanted) {
		s.launchNext()
	}
	if c.Has(Car | Ranking | Progress | Wanted) {
		more |= s.searchMissing()
	}
	if c.Has(Car | Setup | Ranking | Progress | Wanted | History) {
		more |= s.launchHolesMissing()
	}
	if c.Has(Car | Setup | History | Launches | Wanted) {
		s.appraiseNext()
	}
	return more
}

// tell calls the listeners, and then what was put off by Then meanwhile.
func (s *Study) tell(c Change) {
	s.callAll(c)
	for len(s.then) > 0 {
		waiting := s.then
		s.then = nil
		for _, f := range waiting {
			f()
		}
	}
}

// callAll calls the listeners in the order of subscription. They must not change
// the study meanwhile.
func (s *Study) callAll(c Change) {
	s.telling = true
	defer func() { s.telling = false }()
	for _, hear := range s.listeners {
		hear(c)
	}
}

// Listen has hear called once after every change; listeners are called in the
// order of subscription. A listener may read the study and its document but not
// change them: that panics. A change that follows from a change goes through Then.
func (s *Study) Listen(hear func(Change)) { s.listeners = append(s.listeners, hear) }

// Then runs f, which may change the study: at once, or, while listeners are being
// called, when all of them have been. So all listeners hear of the changes in the
// same order.
func (s *Study) Then(f func()) {
	if s.telling {
		s.then = append(s.then, f)
	} else {
		f()
	}
}

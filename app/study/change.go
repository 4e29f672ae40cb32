package study

import "bowline/app/document"

// Change says what has changed, all at once: one or more of the flags below.
type Change uint32

// What the document tells, passed on.
const (
	Car     = Change(document.Changed)        // The document's car is another one.
	Setup   = Change(document.SetupSelected)  // Another setup is the current one.
	Units   = Change(document.UnitsChanged)   // The unit system on screen.
	File    = Change(document.FileChanged)    // The car's path, or whether it is modified.
	History = Change(document.HistoryChanged) // What undo and redo would do.
	Loaded  = Change(document.Loaded)         // The car comes from another file, or anew from the same one.
)

// What the study adds.
const (
	Analysis     Change = 1 << (8 + iota) // Result returns another analysis, as after each change of Car or Setup.
	Position                              // The station: travel, front travel, or the instant of the launch.
	Choice                                // Load case, launch or travel, selected pivot, hole-moving mode.
	Launches                              // A launch has come, or there is none any more.
	LaunchFailed                          // A launch could not be computed: LaunchError says why.
	Compared                              // The setups that the current one is compared with.
	Ranking                               // The combinations of holes are found, ranked, filtered or outdated anew.
	Pointing                              // The combination pointed at or picked.
	Progress                              // How the search for the combinations stands.
	Wanted                                // What is wanted computed.
)

// Has reports whether any of what is among the changes.
func (c Change) Has(what Change) bool { return c&what != 0 }

// change is the one way in which a study changes: apply makes the change and
// says what it is, what depends on that is brought up to date, and then the
// listeners are told once.
func (s *Study) change(apply func() Change) {
	if s.telling {
		panic("study: a listener must not change the study")
	}
	if c := apply(); c != 0 {
		s.tell(c | s.update(c))
	}
}

// update brings up to date what depends on a change, sets the workers to what
// is missing, and returns what else has changed by that.
func (s *Study) update(c Change) Change {
	var more Change
	if c.Has(Car) {
		more |= s.keepCombinations()
	}
	if c.Has(Car | Setup) {
		more |= s.rank()
	}
	if c.Has(Car | Setup | Compared | Analysis) {
		more |= Analysis | Position | s.analyze()
	} else if c.Has(Position | Launches) {
		s.place()
	}
	if c.Has(Car | Setup | Choice | Launches | Compared | Wanted) {
		s.launchMissing()
	}
	if c.Has(Car | Ranking | Progress | Wanted) {
		more |= s.searchMissing()
	}
	return more
}

// tell calls the listeners in the order in which they came, and then what waits
// for that.
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

// callAll calls the listeners, who must not change the study meanwhile.
func (s *Study) callAll(c Change) {
	s.telling = true
	defer func() { s.telling = false }()
	for _, hear := range s.listeners {
		hear(c)
	}
}

// Listen has hear called once after every change, after those who listened
// before. A listener may read the study and its document but change neither:
// that panics. What has to follow from a change goes through Then.
func (s *Study) Listen(hear func(Change)) { s.listeners = append(s.listeners, hear) }

// Then has f run, which may change the study: at once, or while listeners are
// being told as soon as all of them have been, so that they hear of every change
// in the same order.
func (s *Study) Then(f func()) {
	if s.telling {
		s.then = append(s.then, f)
	} else {
		f()
	}
}

package study

// Wants is what the panel on show wants computed on workers: none or more of the
// flags below. The analysis is always there.
type Wants uint8

// What can be wanted.
const (
	WantsLaunch        Wants = 1 << iota // The launch of the current setup.
	WantsOtherLaunches                   // While setups are compared, the launch of each one, the current one included.
	WantsAllLaunches                     // The launch of every setup.
	WantsSearch                          // All combinations of holes, ranked.
	WantsWorth                           // With the launch of the current setup, what its assumptions are worth.
)

// Has reports whether any of what is wanted.
func (w Wants) Has(what Wants) bool { return w&what != 0 }

// Want says what is wanted computed from now on, in place of what was before.
func (s *Study) Want(w Wants) {
	s.change(func() Change { return set(&s.wants, w, Wanted) })
}

// Wanted returns what is wanted: what Want was told last, and while the launch
// is looked at over time every launch.
func (s *Study) Wanted() Wants {
	if s.playback.on {
		return s.wants | WantsLaunch | WantsOtherLaunches
	}
	return s.wants
}

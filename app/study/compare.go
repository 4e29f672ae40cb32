package study

import (
	"bowline/model/analysis"
	"bowline/model/launch"
)

// Comparison is a second setup of the car, at the travel or the instant of the
// launch that is looked at.
type Comparison struct {
	Setup   int // index of the setup
	Result  *analysis.Result
	Station analysis.Station
	Launch  *launch.Result // nil until there is one
}

// compared is the setup that the current one is held against. It is known by
// its name, so that it stays the same one while setups are moved.
type compared struct {
	on   bool
	name string
	Comparison
}

// Compare holds the current setup against another one; below zero against
// none.
func (s *Study) Compare(setup int) {
	c := s.doc.Car()
	switch {
	case setup < 0 && !s.other.on:
		return
	case setup < 0:
		s.other = compared{}
	case s.other.on && c.Setups[setup].Name == s.other.name:
		return
	default:
		s.other = compared{on: true, name: c.Setups[setup].Name}
	}
	s.analyze()
	s.tell(Inputs | Position | Compared)
}

// Other returns the setup that the current one is held against, or nil. It is
// nil, too, while that is the current one.
func (s *Study) Other() *Comparison {
	if !s.other.on || s.other.Result == nil {
		return nil
	}
	return &s.other.Comparison
}

// Chosen returns the setup chosen for comparison, even while it is the current
// one, and false when there is none.
func (s *Study) Chosen() (setup int, ok bool) { return s.other.Setup, s.other.on }

// findOther finds the setup again after the car has changed. A renamed one is
// found at its place, a deleted one is compared no more.
func (s *Study) findOther() {
	if !s.other.on {
		return
	}
	c := s.doc.Car()
	at := c.SetupNamed(s.other.name)
	if at < 0 && s.setups == len(c.Setups) && s.other.Setup < len(c.Setups) {
		at = s.other.Setup
	}
	if at < 0 {
		s.other = compared{}
		return
	}
	s.other.Setup, s.other.name = at, c.Setups[at].Name
}

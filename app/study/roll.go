package study

import (
	"bowline/model/car"
	"bowline/model/roll"
)

// rolls are how the axle rolls in the setups of a car, found when somebody asks: it
// takes several times as long as an analysis, and few look at it.
type rolls struct {
	car *car.Car
	of  map[int]rolled // by setup
}

type rolled struct {
	*roll.Result
	error
}

// Roll returns how the axle rolls in a setup of the current car, computed once for
// each car. It fails as roll.Of does.
func (s *Study) Roll(setup int) (*roll.Result, error) {
	if c := s.doc.Car(); s.rolls.car != c {
		s.rolls = rolls{c, map[int]rolled{}}
	}
	found, ok := s.rolls.of[setup]
	if !ok {
		found.Result, found.error = roll.Of(s.rolls.car, setup, s.library)
		s.rolls.of[setup] = found
	}
	return found.Result, found.error
}

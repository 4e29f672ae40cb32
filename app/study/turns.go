package study

import (
	"context"
	"time"

	"bowline/app/runner"
	"bowline/model/car"
	"bowline/model/preload"
)

// turnsSearcher searches on a worker, when somebody asks for it, for the turns that
// make the rear tires of the current setup most even through the launch.
type turnsSearcher struct {
	worker   *runner.Runner[turnsJob, turnsFound]
	progress TurnsProgress
	result   *preload.Result // the last one; nil for none
	taken    *car.Car        // the car with turns of result; nil while none have been taken
}

// turnsJob is a setup to search.
type turnsJob struct {
	car   *car.Car
	setup int
}

// turnsFound is the result of a turnsJob.
type turnsFound struct {
	result *preload.Result
	err    error
}

// TurnsProgress is how far the search for turns is.
type TurnsProgress struct {
	Runs     bool
	Launches int   // that it has taken so far
	Edited   bool  // an edit or another setup has ended the last one
	Err      error // why the last one failed
}

// Turns is what is known of the turns that even the rear tires.
type Turns int

// What is known of them.
const (
	TurnsUnknown  Turns = iota // Nobody has searched.
	TurnsFound                 // They are of the car and setup as they are.
	TurnsTaken                 // They are of the setup before it was given them.
	TurnsOutdated              // They are of the car or the setup before an edit.
)

// startTurnsSearcher starts the worker.
func (s *Study) startTurnsSearcher(by solvers, post func(func())) {
	run := func(ctx context.Context, j turnsJob) turnsFound {
		told := time.Now()
		r, err := by.turns(ctx, j.car, j.setup, s.library, preload.Options{Progress: func(launches int) {
			if now := time.Now(); now.Sub(told) >= pace {
				told = now
				post(func() { s.showTurnsProgress(ctx, launches) })
			}
		}})
		return turnsFound{r, err}
	}
	s.turns.worker = runner.New(run, post, func(found turnsFound) {
		s.change(func() Change { return s.takeFound(found) })
	})
}

// showTurnsProgress records the progress of a search, unless that has been canceled.
func (s *Study) showTurnsProgress(ctx context.Context, launches int) {
	if ctx.Err() != nil {
		return
	}
	s.change(func() Change {
		return set(&s.turns.progress, TurnsProgress{Runs: true, Launches: launches}, TurnsSearch)
	})
}

// takeFound takes a result of the worker.
func (s *Study) takeFound(found turnsFound) Change {
	e := &s.turns
	e.progress = TurnsProgress{Err: found.err}
	if found.err == nil {
		e.result, e.taken = found.result, nil
	}
	return TurnsSearch
}

// SearchTurns searches for the turns that make the rear tires of the current setup most
// even. An edit and another setup end the search.
func (s *Study) SearchTurns() {
	s.change(func() Change {
		s.turns.worker.Replace(turnsJob{s.doc.Car(), s.doc.Setup()})
		s.turns.progress = TurnsProgress{Runs: true}
		return TurnsSearch
	})
}

// StopTurns ends the search for turns. What an earlier one has found stays.
func (s *Study) StopTurns() { s.change(s.dropTurns) }

// dropTurns ends the search under way and forgets how the last one ended.
func (s *Study) dropTurns() Change {
	s.turns.worker.Stop()
	return set(&s.turns.progress, TurnsProgress{}, TurnsSearch)
}

// outdateTurns ends the search under way, since the car or the setup is another one.
func (s *Study) outdateTurns() Change {
	ran := s.turns.progress.Runs
	c := s.dropTurns()
	s.turns.progress.Edited = ran
	return c
}

// forgetTurns drops the turns of the car before.
func (s *Study) forgetTurns() {
	s.dropTurns()
	s.turns.result, s.turns.taken = nil, nil
}

// TurnsProgress returns how far the search for turns is.
func (s *Study) TurnsProgress() TurnsProgress { return s.turns.progress }

// FoundTurns returns what the last search for turns has found and what that is of; nil
// when nobody has searched.
func (s *Study) FoundTurns() (*preload.Result, Turns) {
	e := &s.turns
	switch r := e.result; {
	case r == nil:
		return nil, TurnsUnknown
	case s.doc.Setup() != r.Setup:
		return r, TurnsOutdated
	case s.doc.Car() == r.Car:
		return r, TurnsFound
	case s.doc.Car() == e.taken:
		return r, TurnsTaken
	default:
		return r, TurnsOutdated
	}
}

// TakeTurns gives the current setup the turns of one of the ways found for it.
func (s *Study) TakeTurns(way int) []car.Problem {
	r, of := s.FoundTurns()
	if of != TurnsFound {
		panic("study: the turns are not of the car as it is")
	}
	problems := s.doc.Apply("Turn bars to even the rear tires", func(c *car.Car) { c.Setups[r.Setup].Turns = r.Ways[way].Turns })
	if len(problems) == 0 {
		s.change(func() Change { return set(&s.turns.taken, s.doc.Car(), TurnsSearch) })
	}
	return problems
}

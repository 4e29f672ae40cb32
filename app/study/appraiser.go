package study

import (
	"context"

	"bowline/app/runner"
	"bowline/model/assumptions"
	"bowline/model/car"
)

// appraiser finds what the assumptions of the current setup are worth on a worker
// while that is wanted. It takes some eighty launches, so it waits until a drag has
// ended and the launch of the current setup is there, and an edit ends it.
type appraiser struct {
	worker *runner.Runner[appraisal, appraised]
	asked  appraisal // what was asked for last; zero for nothing
	found  appraised // the newest there is
}

// appraisal is a setup of a car whose assumptions are to be tried out.
type appraisal struct {
	car   *car.Car
	setup int
}

// appraised is the result of an appraisal.
type appraised struct {
	appraisal
	worth []assumptions.Worth
	err   error
}

// startAppraiser starts the worker.
func (s *Study) startAppraiser(by solvers, post func(func())) {
	run := func(ctx context.Context, a appraisal) appraised {
		worth, err := by.appraise(ctx, a.car, a.setup, s.library)
		return appraised{a, worth, err}
	}
	s.appraiser.worker = runner.New(run, post, func(found appraised) {
		s.change(func() Change {
			s.appraiser.found = found
			return Appraised
		})
	})
}

// Worth returns what the assumptions of a setup were worth when that was found last,
// strongest first, and reports whether it is of the current car and setup. The error
// says why it could not be found.
func (s *Study) Worth() (list []assumptions.Worth, current bool, err error) {
	found := &s.appraiser.found
	return found.worth, found.appraisal == s.wantedAppraisal(), found.err
}

// wantedAppraisal is that of the current car and setup.
func (s *Study) wantedAppraisal() appraisal { return appraisal{s.doc.Car(), s.doc.Setup()} }

// appraiseNext submits the current setup to the worker, if that is wanted, missing and
// not asked for yet, and ends a run that is of another car or setup.
func (s *Study) appraiseNext() {
	a := &s.appraiser
	next := s.wantedAppraisal()
	wanted := s.Wanted().Has(WantsWorth) && !s.doc.Dragging() && a.found.appraisal != next && !s.launchMissing(next.setup)
	switch {
	case wanted && a.asked != next:
		a.asked = next
		a.worker.Replace(next)
	case !wanted && a.asked != appraisal{}:
		a.asked = appraisal{}
		a.worker.Stop()
	}
}

// dropWorth drops what was found of the car before.
func (s *Study) dropWorth() {
	s.appraiser.worker.Stop()
	s.appraiser.asked, s.appraiser.found = appraisal{}, appraised{}
}

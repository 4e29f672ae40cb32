package study

import (
	"context"

	"bowline/app/runner"
	"bowline/model/car"
	"bowline/model/launch"
)

// launcher computes launches of the newest car on a worker while they are
// wanted, one by one: that of the current setup first, then those of the setups
// that it is compared with, then those of all others.
type launcher struct {
	worker *runner.Runner[launchJob, launched]
	asked  launchJob // what was asked for last; zero when nothing is missing
	failed error     // why the last launch could not be computed
}

// launchJob is a setup of a car to launch.
type launchJob struct {
	car   *car.Car
	setup int
}

// launched is the result of a launchJob.
type launched struct {
	launchJob
	result *launch.Result
	err    error
}

// startLauncher starts the worker.
func (s *Study) startLauncher(by solvers, post func(func())) {
	run := func(ctx context.Context, j launchJob) launched {
		r, err := by.launch(ctx, j.car, j.setup, s.library, launch.Options{})
		return launched{j, r, err}
	}
	s.launches = map[string]*launch.Result{}
	s.launcher.worker = runner.New(run, post, func(done launched) {
		s.change(func() Change { return s.takeLaunch(done) })
	})
}

// LaunchError returns why a launch could not be computed; nil when the last one
// could.
func (s *Study) LaunchError() error { return s.launcher.failed }

// launchNext submits the next launch that is missing and wanted to the worker.
func (s *Study) launchNext() {
	l := &s.launcher
	setup, missing := s.nextLaunch()
	if !missing {
		l.asked = launchJob{}
		return
	}
	if job := (launchJob{s.doc.Car(), setup}); job != l.asked {
		l.asked = job
		l.worker.Submit(job)
	}
}

// nextLaunch returns the setup whose launch is to be computed next; false when none
// is missing of those wanted.
func (s *Study) nextLaunch() (setup int, missing bool) {
	w, current := s.Wanted(), s.doc.Setup()
	compared := w.Has(WantsOtherLaunches) && len(s.compared.others) > 0
	all := w.Has(WantsAllLaunches)
	if s.launchMissing(current) && (w.Has(WantsLaunch) || compared || all) {
		return current, true
	}
	if compared || all {
		for _, o := range s.compared.others {
			if o.Outdated {
				return o.Setup, true
			}
		}
	}
	if all {
		for i := range s.doc.Car().Setups {
			if s.launchMissing(i) {
				return i, true
			}
		}
	}
	return 0, false
}

// launchMissing reports whether there is no launch of a setup of the car as it is.
func (s *Study) launchMissing(setup int) bool {
	_, current := s.LaunchOf(setup)
	return !current
}

// takeLaunch takes a result of the worker. These come in the order submitted, so
// none is older than the launch there is of the same setup.
func (s *Study) takeLaunch(done launched) Change {
	l := &s.launcher
	if l.failed = done.err; done.err != nil {
		return LaunchFailed
	}
	name := done.car.Setups[done.setup].Name
	s.launches[name] = done.result
	if name == s.doc.Car().Setups[s.doc.Setup()].Name {
		s.play(done.result)
	}
	s.compareLaunches()
	return Launches | Position
}

// recallLaunches takes up launches that are there already after another setup has
// become the current one or is compared, forgets those of setups that are gone, and
// returns what has changed.
func (s *Study) recallLaunches() Change {
	for name := range s.launches {
		if s.doc.Car().SetupNamed(name) < 0 {
			delete(s.launches, name)
		}
	}
	s.compareLaunches()
	l, current := s.LaunchOf(s.doc.Setup())
	if current {
		s.launcher.failed = nil
	}
	if !current || l == s.playback.result {
		return 0
	}
	s.play(l)
	return Launches | Position
}

// compareLaunches hands the setups compared the launches there are of them.
func (s *Study) compareLaunches() {
	for _, o := range s.compared.chosen {
		l, current := s.LaunchOf(o.Setup)
		if l != nil {
			o.Launch = l
		}
		o.Outdated = !current
	}
}

// dropLaunches drops the launches of the car before.
func (s *Study) dropLaunches() {
	s.launcher.worker.Stop()
	s.launcher.asked, s.launcher.failed = launchJob{}, nil
	clear(s.launches)
	s.playback = playback{on: s.playback.on}
}

package study

import (
	"context"

	"bowline/app/runner"
	"bowline/model/car"
	"bowline/model/launch"
)

// launcher computes launches of the newest car on a worker while they are
// wanted: that of the current setup first, then one by one those of the setups
// that it is compared with.
type launcher struct {
	worker *runner.Runner[launchJob, launched]
	asked  launchJob // what was asked for last; zero when nothing is missing
	failed error     // why the last launch could not be computed
}

// launchJob is a setup of a car to launch.
type launchJob struct {
	car      *car.Car
	revision uint64
	setup    int
	other    bool // it is not the current setup
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
	s.launcher.worker = runner.New(run, post, func(done launched) {
		s.change(func() Change { return s.takeLaunch(done) })
	})
}

// LaunchError returns why a launch could not be computed; nil when the last one
// could.
func (s *Study) LaunchError() error { return s.launcher.failed }

// launchMissing submits the next missing launch to the worker, if it is wanted.
func (s *Study) launchMissing() {
	l := &s.launcher
	job, missing := s.missingLaunch()
	switch {
	case !missing:
		l.asked = launchJob{}
	case s.wantsLaunch(job.other) && job != l.asked:
		l.asked = job
		l.worker.Submit(job)
	}
}

// missingLaunch returns which launch is to be computed next: that of the current
// setup, then those of the setups that it is compared with; false when none is
// missing.
func (s *Study) missingLaunch() (job launchJob, missing bool) {
	job = launchJob{car: s.doc.Car(), revision: s.doc.Revision(), setup: s.doc.Setup()}
	if s.playback.result == nil || s.playback.revision != job.revision {
		return job, true
	}
	for _, o := range s.compared.others {
		if o.Outdated {
			job.setup, job.other = o.Setup, true
			return job, true
		}
	}
	return launchJob{}, false
}

// wantsLaunch reports whether the launch of the current or of another setup is
// wanted.
func (s *Study) wantsLaunch(other bool) bool {
	w := s.Wanted()
	return w.Has(WantsOtherLaunches) && len(s.compared.others) > 0 || w.Has(WantsLaunch) && !other
}

// takeLaunch takes a result of the worker. These come in the order submitted, so
// none is older than the launch there is. The launch of a setup that is no longer
// compared is dropped.
func (s *Study) takeLaunch(done launched) Change {
	l := &s.launcher
	if l.failed = done.err; done.err != nil {
		return LaunchFailed
	}
	if done.other {
		o := named(s.compared.chosen, done.car.Setups[done.setup].Name)
		if o == nil {
			return 0
		}
		o.Launch, o.revision = done.result, done.revision
		o.Outdated = done.revision != s.doc.Revision()
		return Launches | Position
	}
	p := &s.playback
	p.result, p.revision, p.path = done.result, done.revision, centerPath(done.result)
	p.time = within(p.time, 0, s.LaunchEnd())
	return Launches | Position
}

// dropLaunches drops the launches of the car before.
func (s *Study) dropLaunches() {
	s.launcher.worker.Stop()
	s.launcher.asked, s.launcher.failed = launchJob{}, nil
	s.playback = playback{on: s.playback.on}
}

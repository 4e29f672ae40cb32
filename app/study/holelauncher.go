package study

import (
	"context"
	"reflect"
	"time"

	"bowline/app/runner"
	"bowline/model/car"
	"bowline/model/holes"
)

// holeLauncher launches all combinations of holes on a worker while a person wants that,
// for as long as they are looked at, none is missing, and no hand is changing the car.
type holeLauncher struct {
	worker  *runner.Runner[holesJob, holesLaunched]
	on      bool     // a person wants them launched
	stopped bool     // by a person
	asked   holesJob // what is launched or has been; zero for nothing
	failed  error    // why they could not be
}

// holesJob is what is to be launched, as it was when somebody asked.
type holesJob struct {
	table  *holes.Table // without launches
	car    *car.Car
	setup  int
	wishes holes.Wishes // by which those come first that are launched first
	target holes.Target
	order  []int
	known  *holes.Launches // what is there already
}

// holesLaunched is the result of a holesJob.
type holesLaunched struct {
	launches *holes.Launches
	err      error
}

// HolesLaunch is how far the launches of all combinations are.
type HolesLaunch struct {
	Phase       HolesPhase
	Done, Total int   // combinations launched and to be launched; 0 before these are found
	Err         error // why there are none, while it is HolesFailed
}

// HolesPhase is a state of the launches of all combinations.
type HolesPhase uint8

// The phases.
const (
	HolesOff     HolesPhase = iota // Nobody wants them.
	HolesWait                      // For the combinations to be found, or for a hand to let go of the car.
	HolesRun                       // They are being launched.
	HolesStopped                   // A person has stopped it, and some are missing.
	HolesDone                      // All are there.
	HolesFailed                    // They could not be launched.
)

// Between two partial results there is a while, so that ranking them takes a small part
// of the time: ranking takes about 2 µs for a combination.
const (
	partPace     = 300 * time.Millisecond
	partPaceEach = 50 * time.Microsecond
)

// startHoleLauncher starts the worker.
func (s *Study) startHoleLauncher(by solvers, post func(func())) {
	run := func(ctx context.Context, j holesJob) holesLaunched {
		l, err := by.launchAll(ctx, j.table, j.car, j.setup, holes.LaunchOptions{
			Order: j.order, Known: j.known,
			Every: partPace + time.Duration(len(j.table.Combinations))*partPaceEach,
			Partial: func(l *holes.Launches) {
				post(func() {
					if ctx.Err() == nil {
						s.change(func() Change { return s.takeHoleLaunches(l) })
					}
				})
			},
		})
		return holesLaunched{l, err}
	}
	s.holeLauncher.worker = runner.New(run, post, func(done holesLaunched) {
		s.change(func() Change {
			if s.holeLauncher.failed = done.err; done.err != nil {
				return Progress
			}
			return s.takeHoleLaunches(done.launches)
		})
	})
}

// takeHoleLaunches takes launches of the combinations there are.
func (s *Study) takeHoleLaunches(l *holes.Launches) Change {
	s.search.launches = l
	s.search.markStale()
	return Ranking | Progress
}

// launchHolesMissing has the worker launch what is missing of the combinations wanted,
// in the order in which they stand now, and ends a run that is outdated. It returns
// Progress when that changes.
func (s *Study) launchHolesMissing() Change {
	h, f := &s.holeLauncher, &s.search
	if !h.on || h.stopped || !s.Searching() || s.TableOutdated() {
		return s.dropHoleLaunching()
	}
	job := holesJob{table: f.table, car: s.doc.Car(), setup: s.doc.Setup(), wishes: f.wishes, target: holes.TargetOf(s.doc.Car())}
	same := h.asked.table == job.table && sameLaunches(h.asked.car, h.asked.setup, job.car, job.setup)
	switch {
	case same && (h.failed != nil || !h.worker.Busy() || h.asked.wishes == job.wishes && h.asked.target == job.target):
		return 0
	case s.doc.Dragging(), f.launches.Complete():
		return s.dropHoleLaunching()
	}
	job.known = f.launches
	places := s.Ranking()
	job.order = make([]int, len(places))
	for i := range places {
		job.order[i] = places[i].Index
	}
	h.asked, h.failed = job, nil
	h.worker.Replace(job)
	return Progress
}

// dropHoleLaunching ends the run under way; what is there stays.
func (s *Study) dropHoleLaunching() Change {
	h := &s.holeLauncher
	if h.asked.table == nil {
		return 0
	}
	h.worker.Stop()
	h.asked, h.failed = holesJob{}, nil
	return Progress
}

// sameLaunches reports whether setups of two cars have the same launches in all
// combinations of holes.
func sameLaunches(a *car.Car, setupA int, b *car.Car, setupB int) bool {
	return a == b && setupA == setupB ||
		a.Setups[setupA].Turns == b.Setups[setupB].Turns && reflect.DeepEqual(a.Launch, b.Launch) && sameSearch(a, b)
}

// keepHoleLaunches drops the launches of the combinations unless they are those of the
// current car and setup.
func (s *Study) keepHoleLaunches() {
	l, c := s.search.launches, s.doc.Car()
	if l != nil && (l.Turns != c.Setups[s.doc.Setup()].Turns || !reflect.DeepEqual(l.Car.Launch, c.Launch) || !sameSearch(l.Car, c)) {
		s.forgetHoleLaunches()
	}
}

// forgetHoleLaunches drops the launches of the combinations: none has been launched of
// those wanted.
func (s *Study) forgetHoleLaunches() {
	f := &s.search
	if f.launches = nil; s.holeLauncher.on && f.table != nil {
		f.launches = holes.NoneLaunched(f.table, s.doc.Car(), s.doc.Setup())
	}
}

// LaunchHoles says whether all combinations of holes are to be launched. When they are
// not, what has been is dropped, and so is what needs it: wishes, conditions and colors.
func (s *Study) LaunchHoles(on bool) { s.change(func() Change { return s.launchHoles(on) }) }

func (s *Study) launchHoles(on bool) Change {
	h, f := &s.holeLauncher, &s.search
	if h.on == on {
		return 0
	}
	h.on, h.stopped = on, false
	s.forgetHoleLaunches()
	if !on {
		f.wishes, f.conditions = f.wishes.OfSideView(), ofSideView(f.conditions)
		if f.colored != nil && f.colored.OfLaunch {
			f.colored = nil
		}
	}
	if f.table != nil {
		f.markStale()
	}
	return Ranking | Progress
}

// ofSideView returns the conditions that need no launches.
func ofSideView(list []holes.ColumnCondition) []holes.ColumnCondition {
	var kept []holes.ColumnCondition
	for _, c := range list {
		if !c.Column.OfLaunch {
			kept = append(kept, c)
		}
	}
	return kept
}

// LaunchesHoles reports whether all combinations are to be launched.
func (s *Study) LaunchesHoles() bool { return s.holeLauncher.on }

// StopHoleLaunches ends the launches of the combinations until ResumeHoleLaunches, or
// until another car is loaded. What is there stays.
func (s *Study) StopHoleLaunches() {
	s.change(func() Change {
		s.holeLauncher.stopped = true
		return Progress
	})
}

// ResumeHoleLaunches launches what is missing after StopHoleLaunches.
func (s *Study) ResumeHoleLaunches() {
	s.change(func() Change { return set(&s.holeLauncher.stopped, false, Progress) })
}

// HolesLaunch returns how far the launches of all combinations are.
func (s *Study) HolesLaunch() HolesLaunch {
	h, f, l := &s.holeLauncher, &s.search, s.search.launches
	if !h.on {
		return HolesLaunch{}
	}
	now := HolesLaunch{Phase: HolesWait}
	if l != nil {
		now.Done, now.Total = l.Done, l.Total
	}
	switch {
	case h.failed != nil:
		now.Phase, now.Err = HolesFailed, h.failed
	case l != nil && l.Complete() && !f.outdated:
		now.Phase = HolesDone
	case h.stopped:
		now.Phase = HolesStopped
	case h.asked.table != nil:
		now.Phase = HolesRun
	}
	return now
}

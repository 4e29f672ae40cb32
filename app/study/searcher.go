package study

import (
	"context"
	"sync/atomic"
	"time"

	"bowline/app/runner"
	"bowline/model/car"
	"bowline/model/holes"
)

// searcher finds all combinations of holes of the newest car on a worker while
// they are wanted.
type searcher struct {
	worker   *runner.Runner[*searchJob, searched]
	asked    *car.Car // searched for last; nil for none
	replaced bool     // the run under way replaced another one
	stopped  bool     // by a person
	failed   error    // why the car cannot be searched
	progress SearchProgress
	current  atomic.Pointer[searchJob] // what the worker is at
}

// searchJob is a car to search.
type searchJob struct {
	car         *car.Car
	done, total atomic.Int64 // combinations evaluated and to be evaluated, once it is current
}

// searched is the result of a searchJob.
type searched struct {
	table *holes.Table
	err   error
}

// SearchProgress is how far the search for the combinations of holes is.
type SearchProgress struct {
	Phase       SearchPhase
	Done, Total int   // combinations evaluated, while it is SearchRuns
	Err         error // why there is no search, while it is SearchFailed
}

// SearchPhase is a state of the search.
type SearchPhase uint8

// The phases.
const (
	SearchIdle    SearchPhase = iota // Nothing to report: not wanted, done, or just begun.
	SearchRuns                       // It has been running for a while.
	SearchStopped                    // A person has stopped it, and combinations are missing or outdated.
	SearchFailed                     // The car cannot be searched.
)

const (
	// patience is how long a search runs before its progress is reported.
	patience = 200 * time.Millisecond
	// pace is the time between two reports of the progress.
	pace = 50 * time.Millisecond
)

// startSearcher starts the worker.
func (s *Study) startSearcher(by solvers, post func(func())) {
	f := &s.searcher
	run := func(ctx context.Context, j *searchJob) searched {
		began := time.Now()
		told := began
		j.total.Store(int64(holes.Count(j.car)))
		f.current.Store(j)
		t, err := by.search(ctx, j.car, s.library, holes.Options{Progress: func(done, total int) {
			j.done.Store(int64(done))
			if now := time.Now(); now.Sub(began) >= patience && now.Sub(told) >= pace {
				told = now
				post(func() { s.showProgress(ctx, done, total) })
			}
		}})
		return searched{t, err}
	}
	f.worker = runner.New(run, post, func(found searched) {
		s.change(func() Change { return s.takeSearched(found) })
	})
}

// showProgress records the progress of a run, unless that has been canceled.
func (s *Study) showProgress(ctx context.Context, done, total int) {
	if ctx.Err() != nil {
		return
	}
	s.change(func() Change {
		return set(&s.searcher.progress, SearchProgress{Phase: SearchRuns, Done: done, Total: total}, Progress)
	})
}

// takeSearched takes a result of the worker.
func (s *Study) takeSearched(found searched) Change {
	f := &s.searcher
	f.current.Store(nil)
	f.replaced, f.failed, f.progress = false, found.err, SearchProgress{}
	if found.err != nil {
		return Progress
	}
	return Progress | s.takeTable(found.table)
}

// searchMissing submits the current car to the worker, if its combinations are
// wanted, outdated and not being searched yet, and returns Progress when that is
// reset.
//
// A run under way goes on, so that lists keep coming during a drag. One with
// more than half to do is given up for a newer car, but not twice in a row.
func (s *Study) searchMissing() Change {
	f, c := &s.searcher, s.doc.Car()
	switch {
	case !s.Searching() || !s.TableOutdated():
		return s.dropSearch()
	case f.stopped, f.asked != nil && sameSearch(f.asked, c):
		return 0
	}
	more := Change(0)
	if f.failed != nil {
		more = Progress
	}
	f.asked, f.failed = c, nil
	job := &searchJob{car: c}
	if j := f.current.Load(); j != nil && !f.replaced && 2*j.done.Load() < j.total.Load() {
		f.replaced, f.progress = true, SearchProgress{}
		f.worker.Replace(job)
		return Progress
	}
	f.worker.Submit(job)
	return more
}

// dropSearch ends the search under way.
func (s *Study) dropSearch() Change {
	f := &s.searcher
	if f.asked == nil {
		return 0
	}
	f.worker.Stop()
	f.current.Store(nil)
	f.asked, f.replaced, f.failed, f.progress = nil, false, nil, SearchProgress{}
	return Progress
}

// dropCombinations drops the combinations of the car before. The next car is
// searched even after a stop.
func (s *Study) dropCombinations() {
	s.search.forget()
	s.dropSearch()
	s.dropHoleLaunching()
	s.searcher.stopped, s.holeLauncher.stopped = false, false
}

// StopSearch ends the search for the combinations of holes until ResumeSearch,
// or until another car is loaded.
func (s *Study) StopSearch() {
	s.change(func() Change {
		s.searcher.stopped = true
		s.dropSearch()
		return Progress
	})
}

// ResumeSearch searches again after StopSearch.
func (s *Study) ResumeSearch() {
	s.change(func() Change { return set(&s.searcher.stopped, false, Progress) })
}

// SearchProgress returns how far the search for the combinations of holes is.
func (s *Study) SearchProgress() SearchProgress {
	switch f := &s.searcher; {
	case f.failed != nil:
		return SearchProgress{Phase: SearchFailed, Err: f.failed}
	case f.stopped && s.TableOutdated():
		return SearchProgress{Phase: SearchStopped}
	default:
		return f.progress
	}
}

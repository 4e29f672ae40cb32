package window

import (
	"context"
	"fmt"
	"sync/atomic"
	"time"

	"bowline/app/document"
	"bowline/app/runner"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/stock"
	"bowline/model/units"
)

// searcher finds all combinations of holes of the newest car, on a worker of its
// own, while they are looked at.
type searcher struct {
	study   *study.Study
	library stock.Library
	worker  *runner.Runner[*searchJob, searched]
	post    func(func())
	changed func() // progress has
	now     func() time.Time

	asked    *car.Car // searched for last; nil for none
	replaced bool     // the newest run took the place of one under way
	halted   bool     // by a person
	failed   error    // why the car cannot be searched
	current  atomic.Pointer[searchJob]
}

// searchJob is a car to search, and how far that is.
type searchJob struct {
	car         *car.Car
	began       time.Time // of the run; read by others than the worker once the job is current
	done, total atomic.Int64
}

// searched is what came of it.
type searched struct {
	table *holes.Table
	err   error
}

const (
	// patience is how long a search runs before its progress is shown.
	patience = 200 * time.Millisecond
	// pace is the time between two looks at the progress.
	pace = 50 * time.Millisecond
)

// newSearcher returns a searcher that hands tables to the study; changed is
// called when there is news of the progress.
func newSearcher(s *study.Study, library stock.Library, post func(func()), changed func()) *searcher {
	f := &searcher{study: s, library: library, post: post, changed: changed, now: time.Now}
	f.worker = runner.New(f.run, post, f.apply)
	s.Listen(func(c study.Change) {
		if c.Has(study.Inputs | study.Search) {
			f.ask()
		}
	})
	s.Document().Listen(func(e document.Event) {
		if e.Has(document.Loaded) {
			f.resume()
		}
	})
	return f
}

// ask searches the current car, if it is to be and is not being searched.
//
// A run under way goes on, so that lists keep coming during a drag. One with more
// than half to do is given up for a newer car, but not twice in a row.
func (f *searcher) ask() {
	c := f.study.Document().Car()
	switch {
	case !f.study.Searching(), !f.study.TableOutdated():
		f.drop()
		return
	case f.halted, f.asked != nil && study.SameSearch(f.asked, c):
		return
	}
	f.asked, f.failed = c, nil
	job := &searchJob{car: c}
	if j := f.current.Load(); j != nil && !f.replaced && 2*j.done.Load() < j.total.Load() {
		f.replaced = true
		f.worker.Replace(job)
		return
	}
	f.worker.Submit(job)
}

// run searches a car; it is called on the worker.
func (f *searcher) run(ctx context.Context, j *searchJob) searched {
	j.began = f.now()
	j.total.Store(int64(holes.Count(j.car)))
	f.current.Store(j)
	told := j.began
	t, err := holes.Search(ctx, j.car, f.library, holes.Options{Progress: func(done, total int) {
		j.done.Store(int64(done))
		if now := f.now(); now.Sub(j.began) >= patience && now.Sub(told) >= pace {
			told = now
			f.post(f.changed)
		}
	}})
	return searched{t, err}
}

// apply hands over what was found.
func (f *searcher) apply(s searched) {
	f.current.Store(nil)
	f.replaced, f.failed = false, s.err
	f.changed()
	if s.err == nil {
		f.study.PutTable(s.table)
	}
}

// drop ends what is under way.
func (f *searcher) drop() {
	if f.asked != nil {
		f.worker.Stop()
		f.current.Store(nil)
		f.asked, f.replaced, f.failed = nil, false, nil
	}
}

// halt stops searching until it is resumed.
func (f *searcher) halt() {
	f.halted = true
	f.drop()
	f.changed()
}

// resume searches again.
func (f *searcher) resume() {
	f.halted = false
	f.ask()
	f.changed()
}

// words say how the search stands, and what a button beside them would do;
// both are empty while there is nothing to tell.
func (f *searcher) words() (text, button string) {
	j := f.current.Load()
	switch {
	case f.failed != nil:
		return "Not searched: " + f.failed.Error() + ".", ""
	case f.halted && f.study.Table() == nil:
		return "The search was stopped.", "Search"
	case f.halted && f.study.TableOutdated():
		return "The search was stopped; the list is of the car as it was before.", "Search"
	case j == nil || f.now().Sub(j.began) < patience:
		return "", ""
	}
	return fmt.Sprintf("%s of %s combinations searched", units.Count(int(j.done.Load())), units.Count(int(j.total.Load()))), "Stop"
}

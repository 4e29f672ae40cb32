package assumptions

import (
	"cmp"
	"context"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/stock"
)

// Worth is what an assumption is worth.
type Worth struct {
	Assumption
	Effects []Effect // of its Changes, in their order
}

// Effect is what a change of an assumption does to a run.
type Effect struct {
	Share   float64        // change of the worst share of what a bar may carry, of side view and launch [1]
	Launch  float64        // change of the worst share in the launch alone, which the side view may hide [1]
	Time    float64        // change of the 60-ft time after the rollout [s]; 0 unless Timed
	Timed   bool           // both runs come to 60 ft
	Outcome launch.Outcome // of the run with the change
}

// Find launches a car that passes Validate once for every change of every assumption
// of one of its setups, on all processors, and returns what each is worth, strongest
// first: by the largest change of the worst share, of equal ones by that of the worst
// share in the launch, both to a tenth of a percent, and then by that of the 60-ft time.
// It fails as analysis.Run and launch.Run do,
// and when the context is done.
func Find(ctx context.Context, c *car.Car, setup int, lib stock.Library) ([]Worth, error) {
	base, l, err := run(ctx, c, setup, lib)
	if err != nil {
		return nil, err
	}
	var list []Worth
	var jobs []job
	for i, a := range Of(l) {
		list = append(list, Worth{a, make([]Effect, len(a.Changes))})
		for k := range a.Changes {
			jobs = append(jobs, job{i, k})
		}
	}
	err = each(ctx, jobs, func(ctx context.Context, j job) error {
		w := &list[j.assumption]
		changed, _, err := run(ctx, w.Changes[j.change].Of(c), setup, lib)
		w.Effects[j.change] = changed.against(base)
		return err
	})
	if err != nil {
		return nil, err
	}
	sort(list)
	return list, nil
}

// job is a change to try out.
type job struct{ assumption, change int }

// outcome is what counts of a run.
type outcome struct {
	share, inLaunch, elapsed float64
	how                      launch.Outcome
}

// run runs side view and launch of a setup.
func run(ctx context.Context, c *car.Car, setup int, lib stock.Library) (outcome, *launch.Result, error) {
	side, err := analysis.Run(ctx, c, lib, analysis.Options{Setup: setup})
	if err != nil {
		return outcome{}, nil, err
	}
	l, err := launch.Run(ctx, c, setup, lib, launch.Options{})
	if err != nil {
		return outcome{}, nil, err
	}
	e := side.Envelope(l)
	_, _, most := side.NearestInLaunch(l)
	return outcome{e.Worst().Share, most.Share, l.Elapsed, l.Outcome}, l, nil
}

// against returns the changes from base to o.
func (o outcome) against(base outcome) Effect {
	e := Effect{Share: o.share - base.share, Launch: o.inLaunch - base.inLaunch, Outcome: o.how}
	if e.Timed = o.how == launch.Finished && base.how == launch.Finished; e.Timed {
		e.Time = o.elapsed - base.elapsed
	}
	return e
}

// each does all jobs on all processors until one fails or the context is done.
func each(ctx context.Context, jobs []job, do func(context.Context, job) error) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var next atomic.Int64
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(jobs)) {
		workers.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(jobs) || ctx.Err() != nil {
					return
				}
				if err := do(ctx, jobs[i]); err != nil {
					cancel(err)
				}
			}
		})
	}
	workers.Wait()
	return context.Cause(ctx)
}

// sort puts the strongest first; equals stay in the order of the car file.
func sort(list []Worth) {
	worst := func(e *Effect) float64 { return e.Share }
	inLaunch := func(e *Effect) float64 { return e.Launch }
	slices.SortStableFunc(list, func(a, b Worth) int {
		return cmp.Or(cmp.Compare(b.share(worst), a.share(worst)), cmp.Compare(b.share(inLaunch), a.share(inLaunch)), cmp.Compare(b.time(), a.time()))
	})
}

// share is the largest change of a share, in tenths of a percent.
func (w *Worth) share(of func(*Effect) float64) float64 {
	most := 0.0
	for i := range w.Effects {
		most = max(most, math.Abs(of(&w.Effects[i])))
	}
	return math.Round(1000 * most)
}

// time is the largest change of the 60-ft time; without one the largest of all.
func (w *Worth) time() float64 {
	most := 0.0
	for _, e := range w.Effects {
		if !e.Timed {
			return math.Inf(1)
		}
		most = max(most, math.Abs(e.Time))
	}
	return most
}

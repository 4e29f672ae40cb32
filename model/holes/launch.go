package holes

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"time"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
)

// Launches are those of a table's combinations, with the turns of one setup. They
// never change after they have been handed over; share them freely.
type Launches struct {
	Car   *car.Car  // that is launched, not to be changed
	Turns car.Turns // of its bars
	List  []Launch  // by index of a combination
	Done  int       // combinations that have been launched
	Total int       // combinations that can be used
}

// Complete reports whether every combination that can be used has been launched.
func (l *Launches) Complete() bool { return l.Done == l.Total }

// NoneLaunched returns the launches of a table's combinations, with the turns of a setup
// of c, before any has been launched.
func NoneLaunched(t *Table, c *car.Car, setup int) *Launches {
	l := &Launches{Car: c, Turns: c.Setups[setup].Turns, List: make([]Launch, len(t.Combinations))}
	for i := range t.Combinations {
		if t.Combinations[i].Usable() {
			l.Total++
		}
	}
	return l
}

// Launch is what came of the launch of one combination.
type Launch struct {
	Done    bool           // false: not launched yet, or the holes cannot be used; all else is then zero
	Outcome launch.Outcome // how it ended
	Fastest launch.Part    // of the car, which could not be followed if it is launch.TooStiff

	// Of a launch to the end of 60 ft.
	SixtyFeet float64 // from the rollout [s]

	// As far as it came.
	Worst      analysis.Demand // most that is asked of a bar, by the side view or the launch
	Unevenness float64         // how far left and right rear tire loads are apart, as launch.History.Unevenness has it [1]
	Lift       float64         // greatest height of a front tire's lowest point above the ground [m]
}

// Finished reports whether the car came to the end of 60 ft.
func (l *Launch) Finished() bool { return l.Done && l.Outcome == launch.Finished }

// Whole reports whether the launch went all the way, to the end of 60 ft or of its time:
// of a car that goes over it is not known what more it would have asked of its bars.
func (l *Launch) Whole() bool { return l.Finished() || l.Done && l.Outcome == launch.TimeUp }

// LaunchOptions say how to launch.
type LaunchOptions struct {
	Order   []int     // indices of the combinations, the first to be launched first; nil means that of the table
	Known   *Launches // of the same car and turns, which are not launched again; nil for none
	Workers int       // combinations launched at a time; 0 means one for each core

	// Partial, when given, hears what is there, at intervals of Every at the
	// least. Its calls do not overlap; they come from other goroutines than the
	// caller's.
	Partial func(*Launches)
	Every   time.Duration
}

// LaunchAll launches every combination of a table that can be used, with the turns of a
// setup of c, each as launch.Run does, and holds what its bars carry against what they
// may. c is the table's car, but that what only the launch depends on may be another.
// It fails with the context's error soon after that is done, and on what Validate
// would have refused; what has been launched by then is returned with the former.
// It panics when the setup does not exist.
func LaunchAll(ctx context.Context, t *Table, c *car.Car, setup int, o LaunchOptions) (*Launches, error) {
	order := o.Order
	if order == nil {
		order = make([]int, len(t.Combinations))
		for i := range order {
			order[i] = i
		}
	}
	all := NoneLaunched(t, c, setup)
	if k := o.Known; k != nil {
		copy(all.List, k.List)
		all.Done = k.Done
	}
	missing := slices.DeleteFunc(slices.Clone(order), func(i int) bool {
		return !t.Combinations[i].Usable() || all.List[i].Done
	})
	workers := o.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	var mutex sync.Mutex // over what follows and all
	next, told := 0, time.Now()
	take := func() (int, bool) {
		mutex.Lock()
		defer mutex.Unlock()
		if next == len(missing) || ctx.Err() != nil {
			return 0, false
		}
		next++
		return missing[next-1], true
	}
	put := func(i int, l Launch) {
		mutex.Lock()
		defer mutex.Unlock()
		all.List[i] = l
		all.Done++
		if now := time.Now(); o.Partial != nil && now.Sub(told) >= o.Every {
			told = now
			part := *all
			part.List = slices.Clone(all.List)
			o.Partial(&part)
		}
	}
	var running sync.WaitGroup
	for range min(workers, len(missing)) {
		running.Go(func() {
			w := newLauncher(t, c, setup)
			for {
				i, more := take()
				if !more {
					return
				}
				l, err := w.launch(ctx, i)
				if err != nil {
					stop(err)
					return
				}
				put(i, l)
			}
		})
	}
	running.Wait()
	if err := context.Cause(ctx); err != nil {
		return all, err
	}
	return all, nil
}

// launcher launches one combination at a time, in a car of its own with a single setup.
type launcher struct {
	*worker
	latest *launch.Result // whose storage the next one takes
}

func newLauncher(t *Table, c *car.Car, setup int) *launcher {
	own := &Table{Car: c, Library: t.Library, Travels: t.Travels}
	w := newWorker(own)
	w.car.Setups[0].Turns = c.Setups[setup].Turns
	return &launcher{worker: w}
}

// launch launches the combination with an index.
func (w *launcher) launch(ctx context.Context, index int) (Launch, error) {
	w.car.Setups[0].Holes = w.holes(index)
	if err := w.run.Renew(ctx, &w.car, w.capacity, analysis.Options{Steps: w.table.Travels}); err != nil {
		return Launch{}, err
	}
	r, err := launch.Run(ctx, &w.car, 0, w.table.Library, launch.Options{Reuse: w.latest})
	if err != nil {
		return Launch{}, fmt.Errorf("holes %s: %w", w.car.Setups[0].Holes, err)
	}
	w.latest = r
	l := Launch{Done: true, Outcome: r.Outcome}
	if r.Outcome == launch.TooStiff {
		l.Fastest = r.Fastest
	}
	if len(r.Time) > 0 && r.Outcome != launch.Diverged {
		envelope := w.run.Envelope(r)
		l.SixtyFeet, l.Worst, l.Unevenness, l.Lift = r.Elapsed, envelope.Worst(), r.Unevenness(), r.Lift.Height
	}
	return l, nil
}

package holes

import (
	"context"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/stock"
	"bowline/model/units"
)

const (
	// DefaultTravels is the number of rear travels from full droop to full bump
	// that each combination is evaluated at.
	DefaultTravels = 21
	// MostCombinations bounds a search: a table of so many takes some 80 MB.
	MostCombinations = 250_000
	// batch is how many combinations a worker takes at a time.
	batch = 32
)

// Options say how to search.
type Options struct {
	Travels int // rear travels, at least analysis.LeastSteps; 0 means DefaultTravels
	Workers int // combinations evaluated at a time; 0 means one for each core

	// Progress, when given, hears how many combinations are done, never fewer
	// than before, and all of them at the end. Its calls do not overlap; they
	// come from other goroutines than the caller's.
	Progress func(done, total int)
}

// TooMany says that the brackets offer more choices than a search takes.
type TooMany struct{ Combinations int }

// Error says how many there are and how many it takes.
func (e *TooMany) Error() string {
	return fmt.Sprintf("the brackets offer %d choices of holes, and a search takes %d; take holes out of the longest rows", e.Combinations, MostCombinations)
}

// Count returns how many choices of holes a car's brackets offer.
func Count(c *car.Car) int {
	n := 1
	for _, row := range car.Rows {
		n *= len(*row.In(c))
	}
	return n
}

// Search evaluates every choice of holes of a car that passes Validate, each
// by analysis.Run. It fails with a *TooMany, with the context's error soon
// after that is done, and for too few travels.
func Search(ctx context.Context, c *car.Car, lib stock.Library, o Options) (*Table, error) {
	if o.Travels == 0 {
		o.Travels = DefaultTravels
	}
	total := Count(c)
	if total > MostCombinations {
		return nil, &TooMany{total}
	}
	t := &Table{Car: c, Library: lib, Travels: o.Travels, Combinations: make([]Combination, total)}
	workers := o.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	var next atomic.Int64 // the first combination that no worker has taken
	var running sync.WaitGroup
	done := progress{total: total, tell: o.Progress}
	for range min(workers, (total+batch-1)/batch) {
		running.Go(func() {
			w := newWorker(t)
			for ctx.Err() == nil {
				from := int(next.Add(batch)) - batch
				if from >= total {
					return
				}
				to := min(from+batch, total)
				for i := from; i < to; i++ {
					if err := w.evaluate(ctx, i); err != nil {
						stop(err)
						return
					}
				}
				done.add(to - from)
			}
		})
	}
	running.Wait()
	if err := context.Cause(ctx); err != nil {
		return nil, err
	}
	return t, nil
}

// progress counts what is done and reports it.
type progress struct {
	mutex       sync.Mutex
	done, total int
	tell        func(done, total int)
}

func (p *progress) add(n int) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.done += n
	if p.tell != nil {
		p.tell(p.done, p.total)
	}
}

// worker evaluates one combination at a time, in a car of its own with a
// single setup.
type worker struct {
	table    *Table
	car      car.Car
	capacity car.Capacity // of its bars
	sizes    [len(car.Rows)]int
	run      analysis.Result // of the last one
}

func newWorker(t *Table) *worker {
	w := &worker{table: t, car: *t.Car}
	w.car.Setups = make([]car.Setup, 1)
	w.car.Driveline = car.Driveline{} // joint angles are not needed
	w.capacity = w.car.Capacity(t.Library).Kept()
	for i, row := range car.Rows {
		w.sizes[i] = len(*row.In(t.Car))
	}
	return w
}

// holes is the inverse of Table.Index.
func (w *worker) holes(index int) (h car.Holes) {
	for i := len(car.Rows) - 1; i >= 0; i-- {
		*car.Rows[i].Of(&h) = index % w.sizes[i]
		index /= w.sizes[i]
	}
	return h
}

// evaluate fills one combination.
func (w *worker) evaluate(ctx context.Context, index int) error {
	c := &w.table.Combinations[index]
	c.Holes = w.holes(index)
	if len(w.car.CheckHoles(c.Holes, w.capacity, units.SI)) > 0 {
		c.Refused = true
		return ctx.Err()
	}
	w.car.Setups[0].Holes = c.Holes
	if err := w.run.Renew(ctx, &w.car, w.capacity, analysis.Options{Steps: w.table.Travels}); err != nil {
		return err
	}
	c.condense(&w.run)
	return nil
}

// condense keeps what a combination shows of its analysis.
func (c *Combination) condense(r *analysis.Result) {
	ride := &r.Ride
	c.HasInstantCenter, c.InstantCenter = ride.HasInstantCenter, ride.InstantCenter
	c.HasAntiSquat, c.AntiSquat = ride.HasAntiSquat, ride.AntiSquat
	c.Closure = [2]float64{r.Droop, r.Bump}
	for _, p := range car.Pairs {
		c.Length[p] = r.Bars[p].Length
		for _, d := range column.Directions {
			c.Share[p][d] = r.Worst[p][d].Share
		}
	}
	c.PinionRange[0], c.PinionRange[1] = r.PinionRange()
	c.AntiSquatRange[0], c.AntiSquatRange[1], _ = r.AntiSquatRange()
	for _, k := range analysis.Cases {
		most := r.Most(k)
		for _, p := range car.Pairs {
			for _, d := range column.Directions {
				c.Peak[p][k][d] = most[p][d].Force
			}
		}
	}
}

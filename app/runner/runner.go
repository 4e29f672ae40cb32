// Package runner computes in the background: one worker that takes the newest
// input and hands its results back to the goroutine that owns the window.
package runner

import (
	"context"
	"sync"
)

// Runner computes results of inputs, one at a time, newest first: an input
// that waits is replaced by the next one. Make one with New. Its methods may
// be called from any goroutine.
type Runner[In, Out any] struct {
	compute func(context.Context, In) Out
	post    func(func())
	apply   func(Out)

	end  context.CancelFunc // tells the worker to return
	wake chan struct{}      // holds one token while an input waits
	done chan struct{}      // closed when the worker has returned

	mu      sync.Mutex
	waiting *In                // not yet taken by the worker; nil for none
	cancel  context.CancelFunc // ends the run whose result is not yet applied; nil for none
	closed  bool
}

// New starts a worker that calls compute and has each result applied by
// post(func() { apply(result) }).
//
// post takes a function to the goroutine that owns the window, in order, at
// once or later, as fyne.Do does. The worker waits until the result is applied
// before it computes again, so results never pile up; a post that blocks until
// its function has run does no harm except to Close. Inputs and results cross
// goroutines: nothing may change them afterwards.
//
// The context of compute ends with Replace, Stop and Close; what compute
// returns after that is dropped.
func New[In, Out any](compute func(context.Context, In) Out, post func(func()), apply func(Out)) *Runner[In, Out] {
	ctx, end := context.WithCancel(context.Background())
	r := &Runner[In, Out]{
		compute: compute,
		post:    post,
		apply:   apply,
		end:     end,
		wake:    make(chan struct{}, 1),
		done:    make(chan struct{}),
	}
	go r.work(ctx)
	return r
}

// Submit asks for the result of in, in place of an input that still waits. A
// run under way goes on, so that results keep coming while inputs come faster
// than they can be computed. After Close it does nothing.
func (r *Runner[In, Out]) Submit(in In) { r.submit(in, false) }

// Replace is Submit that also ends the run under way and drops its result: for
// runs so long that an outdated one is not worth finishing.
func (r *Runner[In, Out]) Replace(in In) { r.submit(in, true) }

func (r *Runner[In, Out]) submit(in In, replace bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.closed {
		return
	}
	if replace {
		r.drop()
	}
	r.waiting = &in
	select {
	case r.wake <- struct{}{}:
	default:
	}
}

// Stop drops the input that waits, ends the run under way and drops its result.
func (r *Runner[In, Out]) Stop() {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.drop()
}

// drop forgets the input that waits and ends the run under way.
func (r *Runner[In, Out]) drop() {
	r.waiting = nil
	if r.cancel != nil {
		r.cancel()
		r.cancel = nil
	}
}

// Busy reports whether a result is still to be applied. While apply runs, it
// reports whether another one follows.
func (r *Runner[In, Out]) Busy() bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.waiting != nil || r.cancel != nil
}

// Close stops and waits until the worker has returned, which takes as long as
// compute needs to notice that its context has ended. Called where results are
// applied, it is the end of applying. With a post that blocks until its
// function has run, call it from another goroutine.
func (r *Runner[In, Out]) Close() {
	r.mu.Lock()
	r.closed = true
	r.drop()
	r.mu.Unlock()
	r.end()
	<-r.done
}

// work computes and hands over until ctx ends.
func (r *Runner[In, Out]) work(ctx context.Context) {
	defer close(r.done)
	for {
		select {
		case <-ctx.Done():
			return
		case <-r.wake:
		}
		r.run(ctx)
	}
}

// run computes the input that waits, if it is still there, has the result
// applied, and waits for that unless the run is ended first.
func (r *Runner[In, Out]) run(ctx context.Context) {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	in, ok := r.take(cancel)
	if !ok {
		return
	}
	out := r.compute(ctx, in)
	if ctx.Err() != nil {
		return
	}
	applied := make(chan struct{})
	r.post(func() {
		defer close(applied)
		if r.settle(ctx) {
			r.apply(out)
		}
	})
	select {
	case <-applied:
	case <-ctx.Done():
	}
}

// take returns the input that waits, if there is one, and lets cancel end its run.
func (r *Runner[In, Out]) take(cancel context.CancelFunc) (in In, ok bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.waiting == nil {
		return in, false
	}
	in, r.waiting, r.cancel = *r.waiting, nil, cancel
	return in, true
}

// settle notes that the result of a run is about to be applied, and reports
// whether it is still wanted.
func (r *Runner[In, Out]) settle(ctx context.Context) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	if ctx.Err() != nil {
		return false
	}
	r.cancel = nil
	return true
}

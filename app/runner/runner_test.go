package runner

import (
	"context"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"pgregory.net/rapid"
)

// queue is the goroutine that owns the window: it runs what is posted when it is told to.
type queue struct {
	mu    sync.Mutex
	posts []func()
}

func (q *queue) post(f func()) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.posts = append(q.posts, f)
}

// run runs everything posted so far and returns how much that was.
func (q *queue) run() int {
	q.mu.Lock()
	posts := q.posts
	q.posts = nil
	q.mu.Unlock()
	for _, f := range posts {
		f()
	}
	return len(posts)
}

// serve runs what is posted at every tick until stop is closed.
func (q *queue) serve(tick time.Duration, stop <-chan struct{}) {
	for {
		select {
		case <-stop:
			return
		case <-time.After(tick):
			q.run()
		}
	}
}

// sleep takes its time, and gives up when the context ends.
func sleep(ctx context.Context, d time.Duration) {
	select {
	case <-time.After(d):
	case <-ctx.Done():
	}
}

// job is one input: its number, how long after the one before it comes, and how long it takes to compute.
type job struct {
	number     int
	gap, takes time.Duration
	replace    bool
}

func drawJobs(t *rapid.T, replace bool) []job {
	jobs := make([]job, rapid.IntRange(1, 60).Draw(t, "jobs"))
	for i := range jobs {
		jobs[i] = job{
			number: i,
			gap:    time.Duration(rapid.IntRange(0, 9).Draw(t, "gap")) * time.Millisecond,
			takes:  time.Duration(rapid.IntRange(0, 30).Draw(t, "takes")) * time.Millisecond,
		}
		jobs[i].replace = replace && rapid.Bool().Draw(t, "replace")
	}
	return jobs
}

// trace is what happened to a series of jobs.
type trace struct {
	newest   atomic.Int64 // The last job submitted.
	applied  []int
	computed []int
	stale    []int // Jobs whose computing began after a newer one had been submitted.
	piled    []int // Jobs whose computing began while a wanted result was not yet applied.
}

// play submits the jobs at their times to a runner whose window runs posts at every tick, and closes it when all has settled.
func play(jobs []job, tick time.Duration) *trace {
	var tr trace
	var q queue
	stop := make(chan struct{})
	go q.serve(tick, stop)
	var unapplied atomic.Bool
	r := New(func(ctx context.Context, j job) int {
		tr.computed = append(tr.computed, j.number)
		if int(tr.newest.Load()) != j.number {
			tr.stale = append(tr.stale, j.number)
		}
		if unapplied.Load() {
			tr.piled = append(tr.piled, j.number)
		}
		sleep(ctx, j.takes)
		unapplied.Store(ctx.Err() == nil)
		return j.number
	}, q.post, func(number int) {
		unapplied.Store(false)
		tr.applied = append(tr.applied, number)
	})
	for _, j := range jobs {
		time.Sleep(j.gap)
		// The worker is idle or computing, never between the two, when an input comes.
		synctest.Wait()
		tr.newest.Store(int64(j.number))
		if j.replace {
			unapplied.Store(false)
			r.Replace(j)
		} else {
			r.Submit(j)
		}
	}
	time.Sleep(200 * time.Millisecond)
	synctest.Wait()
	r.Close()
	close(stop)
	return &tr
}

func checkOrder(t *rapid.T, tr *trace, jobs []job) {
	if n := len(tr.applied); n == 0 || tr.applied[n-1] != len(jobs)-1 {
		t.Fatalf("applied %v, want %d at the end", tr.applied, len(jobs)-1)
	}
	for i := 1; i < len(tr.applied); i++ {
		if tr.applied[i] <= tr.applied[i-1] {
			t.Fatalf("an older result follows a newer one: %v", tr.applied)
		}
	}
	if len(tr.stale) > 0 {
		t.Fatalf("computed %v although newer inputs were there", tr.stale)
	}
	if len(tr.piled) > 0 {
		t.Fatalf("computed %v while a result waited to be applied", tr.piled)
	}
}

func TestSubmitAppliesTheNewest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		jobs := drawJobs(rt, false)
		tick := time.Duration(rapid.IntRange(1, 40).Draw(rt, "tick")) * time.Millisecond
		var tr *trace
		synctest.Test(t, func(*testing.T) { tr = play(jobs, tick) })
		checkOrder(rt, tr, jobs)
		if !slices.Equal(tr.applied, tr.computed) {
			rt.Fatalf("computed %v, applied %v; nothing was replaced or stopped", tr.computed, tr.applied)
		}
	})
}

func TestReplaceAppliesTheNewest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		jobs := drawJobs(rt, true)
		tick := time.Duration(rapid.IntRange(1, 40).Draw(rt, "tick")) * time.Millisecond
		var tr *trace
		synctest.Test(t, func(*testing.T) { tr = play(jobs, tick) })
		checkOrder(rt, tr, jobs)
	})
}

func TestComputesAreBoundedByTime(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		// 200 inputs at 5 kHz last 40 ms: room for 20 computes of 2 ms, and the last one.
		jobs := make([]job, 200)
		for i := range jobs {
			jobs[i] = job{number: i, gap: 200 * time.Microsecond, takes: 2 * time.Millisecond}
		}
		tr := play(jobs, 100*time.Microsecond)
		if n := len(tr.computed); n < 10 || n > 21 {
			t.Errorf("%d computes, want 10 to 21", n)
		}
	})
}

func TestBlockingPost(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var applied []int
		posts := make(chan func())
		defer close(posts)
		go func() {
			for f := range posts {
				f()
			}
		}()
		postAndWait := func(f func()) {
			ran := make(chan struct{})
			posts <- func() { defer close(ran); f() }
			<-ran
		}
		r := New(func(_ context.Context, n int) int { return n * n }, postAndWait, func(n int) { applied = append(applied, n) })
		for n := range 3 {
			r.Submit(n)
			synctest.Wait()
		}
		r.Close()
		if want := []int{0, 1, 4}; !slices.Equal(applied, want) {
			t.Errorf("applied %v, want %v", applied, want)
		}
	})
}

func TestReplaceEndsTheRunUnderWay(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var q queue
		var ended, applied []int
		r := New(func(ctx context.Context, n int) int {
			if n == 1 {
				<-ctx.Done()
				ended = append(ended, n)
			}
			return n
		}, q.post, func(n int) { applied = append(applied, n) })
		defer r.Close()
		r.Submit(1)
		synctest.Wait()
		r.Submit(2)
		synctest.Wait()
		if len(ended) > 0 {
			t.Fatal("Submit ended the run under way")
		}
		r.Replace(3)
		synctest.Wait()
		q.run()
		if !slices.Equal(ended, []int{1}) || !slices.Equal(applied, []int{3}) {
			t.Errorf("ended %v, applied %v; want [1] and [3]", ended, applied)
		}
	})
}

func TestReplaceDropsAResultThatWaits(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var q queue
		var applied []int
		r := New(func(_ context.Context, n int) int { return n }, q.post, func(n int) { applied = append(applied, n) })
		defer r.Close()
		r.Submit(1)
		synctest.Wait()
		r.Replace(2)
		synctest.Wait()
		if n := q.run(); n != 2 || !slices.Equal(applied, []int{2}) {
			t.Errorf("%d posts, applied %v; want 2 and [2]", n, applied)
		}
	})
}

func TestStopAndBusy(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var q queue
		var applied []int
		var r *Runner[int, int]
		var busyInApply []bool
		r = New(func(ctx context.Context, n int) int {
			sleep(ctx, time.Second)
			return n
		}, q.post, func(n int) {
			applied = append(applied, n)
			busyInApply = append(busyInApply, r.Busy())
		})
		defer r.Close()
		busy := func(want bool, when string) {
			t.Helper()
			synctest.Wait()
			if r.Busy() != want {
				t.Errorf("busy %v %s", !want, when)
			}
		}
		busy(false, "at the start")
		r.Submit(1)
		busy(true, "while computing")
		r.Submit(2)
		r.Stop()
		busy(false, "after Stop")
		time.Sleep(3 * time.Second)
		synctest.Wait()
		if q.run(); len(applied) > 0 {
			t.Errorf("applied %v after Stop", applied)
		}
		r.Submit(3)
		time.Sleep(2 * time.Second)
		busy(true, "before the result is applied")
		r.Submit(4)
		q.run()
		time.Sleep(2 * time.Second)
		synctest.Wait()
		q.run()
		busy(false, "after the last result")
		if !slices.Equal(applied, []int{3, 4}) || !slices.Equal(busyInApply, []bool{true, false}) {
			t.Errorf("applied %v with busy %v; want [3 4] with [true false]", applied, busyInApply)
		}
	})
}

func TestCloseWhileComputing(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var q queue
		var computed atomic.Int32
		r := New(func(ctx context.Context, _ int) int {
			<-ctx.Done()
			time.Sleep(time.Second) // Takes a while to notice.
			return int(computed.Add(1))
		}, q.post, func(int) {})
		r.Submit(1)
		synctest.Wait()
		r.Submit(2)
		start := time.Now()
		r.Close()
		if waited := time.Since(start); waited != time.Second || computed.Load() != 1 {
			t.Errorf("Close returned after %v and %d computes, want 1s and 1", waited, computed.Load())
		}
		r.Submit(3)
		r.Replace(4)
		synctest.Wait()
		if n := q.run(); n != 0 || computed.Load() != 1 || r.Busy() {
			t.Errorf("%d posts, %d computed after Close, busy %v", n, computed.Load(), r.Busy())
		}
		r.Close()
	})
}

func TestCloseWhileAResultWaits(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var q queue
		applied := 0
		r := New(func(_ context.Context, n int) int { return n }, q.post, func(int) { applied++ })
		r.Submit(1)
		synctest.Wait()
		r.Close()
		if n := q.run(); n != 1 || applied != 0 {
			t.Errorf("%d posts, %d applied after Close; want 1 and 0", n, applied)
		}
	})
}

func TestCloseFromApply(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var q queue
		var r *Runner[int, int]
		applied := 0
		r = New(func(_ context.Context, n int) int { return n }, q.post, func(int) {
			applied++
			r.Submit(2)
			r.Close()
		})
		r.Submit(1)
		synctest.Wait()
		q.run()
		synctest.Wait()
		if q.run(); applied != 1 {
			t.Errorf("applied %d results, want 1", applied)
		}
	})
}

// TestManySubmitters is for the race detector, on the real scheduler.
func TestManySubmitters(t *testing.T) {
	const submitters, each = 4, 500
	var q queue
	stop := make(chan struct{})
	var window sync.WaitGroup
	window.Go(func() { q.serve(50*time.Microsecond, stop) })
	var last int
	var computes atomic.Int32
	r := New(func(_ context.Context, n int) int {
		computes.Add(1)
		return n
	}, q.post, func(n int) { last = n })
	var submitting sync.WaitGroup
	for s := range submitters {
		submitting.Go(func() {
			for i := range each {
				if i%10 == 0 {
					r.Replace(-s)
				} else {
					r.Submit(-s)
				}
			}
		})
	}
	submitting.Wait()
	r.Submit(7)
	for r.Busy() {
		time.Sleep(50 * time.Microsecond)
	}
	r.Close()
	close(stop)
	window.Wait()
	if last != 7 || computes.Load() > submitters*each+1 {
		t.Errorf("last applied %d after %d computes, want 7 after at most %d", last, computes.Load(), submitters*each+1)
	}
}

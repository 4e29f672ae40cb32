package runner

import "sync"

// Queue keeps functions posted from any goroutine until its owner runs them, where there is
// no window whose goroutine would: in a command, and in tests. Make one with NewQueue.
type Queue struct {
	mu      sync.Mutex
	waiting []func()
	more    chan struct{} // holds a token while something may wait
}

// NewQueue returns an empty queue.
func NewQueue() *Queue { return &Queue{more: make(chan struct{}, 1)} }

// Post adds a function to the end of the queue.
func (q *Queue) Post(f func()) {
	q.mu.Lock()
	q.waiting = append(q.waiting, f)
	q.mu.Unlock()
	select {
	case q.more <- struct{}{}:
	default:
	}
}

// Step runs the function that has waited longest and reports whether there was
// one.
func (q *Queue) Step() bool {
	q.mu.Lock()
	if len(q.waiting) == 0 {
		q.mu.Unlock()
		return false
	}
	f := q.waiting[0]
	q.waiting = q.waiting[1:]
	q.mu.Unlock()
	f()
	return true
}

// Wait blocks until something waits to be run.
func (q *Queue) Wait() {
	for q.empty() {
		<-q.more
	}
}

// empty reports whether nothing waits.
func (q *Queue) empty() bool {
	q.mu.Lock()
	defer q.mu.Unlock()
	return len(q.waiting) == 0
}

// Settle runs what is posted until nothing waits and no worker is busy. A
// worker that is busy must be one that will post.
func (q *Queue) Settle(busy func() bool) {
	for {
		for q.Step() {
		}
		if !busy() {
			return
		}
		q.Wait()
	}
}

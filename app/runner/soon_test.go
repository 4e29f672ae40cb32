package runner

import "testing"

func TestSoonRunsOnceForManyQuestions(t *testing.T) {
	var queue []func()
	runs := 0
	s := NewSoon(func(f func()) { queue = append(queue, f) }, func() { runs++ })
	drain := func() {
		for _, f := range queue {
			f()
		}
		queue = nil
	}
	for range 5 {
		s.Ask()
	}
	if runs != 0 || len(queue) != 1 {
		t.Fatalf("%d runs and %d queued before the queue was served", runs, len(queue))
	}
	drain()
	s.Ask()
	drain()
	if runs != 2 {
		t.Errorf("%d runs for two rounds", runs)
	}
	// What was flushed or dropped does not run again from the queue.
	s.Ask()
	s.Flush()
	s.Ask()
	s.Drop()
	drain()
	if runs != 3 {
		t.Errorf("%d runs after a flush and a drop", runs)
	}
}

func TestSoonMayBeAskedFromItsOwnRun(t *testing.T) {
	var queue []func()
	var s *Soon
	runs := 0
	s = NewSoon(func(f func()) { queue = append(queue, f) }, func() {
		if runs++; runs == 1 {
			s.Ask()
		}
	})
	s.Ask()
	for len(queue) > 0 {
		f := queue[0]
		queue = queue[1:]
		f()
	}
	if runs != 2 {
		t.Errorf("%d runs", runs)
	}
}

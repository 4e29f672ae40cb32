package runnertest_test

import (
	"slices"
	"testing"

	"bowline/app/runner/runnertest"
)

// What is posted runs in order, and settling waits for workers that are busy.
func TestTheQueueRunsWhatIsPosted(t *testing.T) {
	q := runnertest.NewQueue()
	if q.Step() {
		t.Error("an empty queue ran something")
	}
	var ran []int
	busy, start := true, make(chan struct{})
	go func() {
		<-start
		for i := range 100 {
			q.Post(func() {
				ran = append(ran, i)
				busy = i < 99
			})
		}
	}()
	q.Post(func() { close(start) })
	q.Settle(func() bool { return busy })
	if len(ran) != 100 || !slices.IsSorted(ran) {
		t.Errorf("ran %v", ran)
	}
}

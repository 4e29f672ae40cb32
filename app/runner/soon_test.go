package runner

import (
	"testing"
	"time"
)

// bench is a Soon with a queue and a clock of its own.
type bench struct {
	*Soon
	queue []func()
	clock time.Time
	runs  int
}

func newBench() *bench {
	b := &bench{clock: time.Unix(1e9, 0)}
	b.Soon = NewSoon(func(f func()) { b.queue = append(b.queue, f) }, func() { b.runs++ })
	b.now = func() time.Time { return b.clock }
	return b
}

// serve runs what is queued.
func (b *bench) serve() {
	for len(b.queue) > 0 {
		f := b.queue[0]
		b.queue = b.queue[1:]
		f()
	}
}

func (b *bench) want(t *testing.T, when string, runs, queued int) {
	t.Helper()
	if b.runs != runs || len(b.queue) != queued {
		t.Fatalf("%s: %d runs and %d queued, want %d and %d", when, b.runs, len(b.queue), runs, queued)
	}
}

func TestSoonRunsAtOnceAndThenOnceForMany(t *testing.T) {
	b := newBench()
	b.Ask()
	b.want(t, "the first time", 1, 0)
	for range 5 {
		b.Ask()
	}
	b.want(t, "right after it", 1, 1)
	b.serve()
	b.want(t, "when the queue was served", 2, 0)
	b.clock = b.clock.Add(between)
	b.Ask()
	b.want(t, "a frame later", 3, 0)
}

// A frame may come before the queue is served: what waits is then done with the
// first event of that frame, and not again.
func TestSoonDoesNotWaitForTheQueueBeyondAPicture(t *testing.T) {
	b := newBench()
	b.Ask()
	b.Ask()
	b.clock = b.clock.Add(2 * between)
	b.Ask()
	b.want(t, "a frame later", 2, 1)
	b.serve()
	b.want(t, "when the queue was served", 2, 0)
}

// However events, frames and the queue come about, the last question is answered
// by the end, and no two runs at once are closer than a frame.
func TestSoonAnswersEveryQuestion(t *testing.T) {
	b := newBench()
	answered := true
	b.run = func() { b.runs++; answered = true }
	for i := range 1000 {
		answered = false
		b.Ask()
		b.clock = b.clock.Add(time.Duration(i%7) * time.Millisecond)
		if i%5 == 0 {
			b.serve()
		}
	}
	b.serve()
	if !answered {
		t.Error("the last question was forgotten")
	}
	if most := int(b.clock.Sub(time.Unix(1e9, 0))/between) + 1 + 1000/5; b.runs > most {
		t.Errorf("%d runs, at most %d were due", b.runs, most)
	}
}

func TestSoonFlushedOrDroppedDoesNotRunAgain(t *testing.T) {
	b := newBench()
	b.Ask()
	b.Ask()
	b.Flush()
	b.want(t, "flushed", 2, 1)
	b.Ask()
	b.Drop()
	b.serve()
	b.want(t, "dropped", 2, 0)
}

func TestSoonMayBeAskedFromItsOwnRun(t *testing.T) {
	b := newBench()
	b.run = func() {
		if b.runs++; b.runs == 1 {
			b.Ask()
		}
	}
	b.Ask()
	b.want(t, "asked from within", 1, 1)
	b.serve()
	b.want(t, "served", 2, 0)
}

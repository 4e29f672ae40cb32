package stage_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// One event of a drag that moves a hole, all of it: edit, analysis, scene and
// drawing at the size that the view has in a large window.
func BenchmarkDraggedEvent(b *testing.B) {
	h := newHand(b, 1280, 800)
	h.study.SetMoving(true)
	h.frame()
	from := h.at(25.5, 11.5)
	h.press(from)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		h.move(r2.Add(from, r2.Vec{Y: float64(5 + i%20)}))
		h.frame()
	}
}

// The stage's own drawing while a launch plays, with the whole car in sight: at most 4 ms and
// without allocation at the size that it has in a window of 1280 × 800.
func BenchmarkPlaying(b *testing.B) {
	h := newHand(b, 820, 420)
	h.study.SetLaunching(true)
	h.queue.Settle(h.study.Busy)
	h.frame()
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		i++
		h.study.SetTime(float64(i%1000) * 1e-3)
		h.frame()
	}
}

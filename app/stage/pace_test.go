package stage_test

import (
	"testing"

	"bowline/model/car"

	"fyne.io/fyne/v2"
)

// queue collects what is handed to the goroutine that owns the window.
type queue []func()

func (q *queue) post(f func()) { *q = append(*q, f) }

// run runs what has been collected.
func (q *queue) run() {
	for len(*q) > 0 {
		f := (*q)[0]
		*q = (*q)[1:]
		f()
	}
}

// The mouse tells of more places than there are frames: only the last of
// them is taken.
func TestMovesBetweenFramesArePassedOver(t *testing.T) {
	h := newHand(t, 900, 600)
	var q queue
	h.view.Post(q.post)
	h.study.SetMoving(true)
	start := h.doc.Revision()
	h.press(h.at(25.5, 11.5))
	for i := range 50 {
		h.move(h.at(25.5, 11.5+0.01*float64(i)))
	}
	if h.doc.Revision() != start {
		t.Error("the car has changed before the frame")
	}
	q.run()
	if got := h.doc.Revision() - start; got != 1 {
		t.Errorf("50 moves changed the car %d times", got)
	}
	h.wantHole(car.ChassisLower, 1, 25.5, 11.99)
	// What has not come to its turn at the release counts.
	h.move(h.at(25.5, 12.5))
	h.release()
	h.wantHole(car.ChassisLower, 1, 25.5, 12.5)
	q.run()
	h.wantHole(car.ChassisLower, 1, 25.5, 12.5)
	h.wantUndo("Move lower chassis hole")
}

// What has not come to its turn at Escape is forgotten.
func TestEscapeForgetsTheLastMove(t *testing.T) {
	h := newHand(t, 900, 600)
	var q queue
	h.view.Post(q.post)
	before := h.doc.Car()
	h.press(h.at(25.5, 11.5))
	h.move(h.at(25.5, 12.25))
	q.run()
	h.move(h.at(25.5, 10.75))
	h.key(fyne.KeyEscape)
	h.release()
	if h.doc.Car() != before || h.doc.UndoLabel() != "" {
		t.Errorf("holes %v, undo %q", h.holes(), h.doc.UndoLabel())
	}
	// Nor does it become a move of what is pressed next, which is a click.
	h.press(h.at(22.5, 18.5))
	q.run()
	h.release()
	h.wantUndo("Use upper chassis hole 1")
}

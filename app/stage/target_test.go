package stage_test

import (
	"math"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/study"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
)

// The target as the car file has it [in]: ahead, then up.
func (h *hand) target() [4]float64 {
	k := h.doc.Car().Check
	round := func(x float64) float64 { return math.Round(x/inch*1e6) / 1e6 }
	return [4]float64{round(k.TargetICX[0]), round(k.TargetICX[1]), round(k.TargetICZ[0]), round(k.TargetICZ[1])}
}

// The reference car aims at 40 to 60 in ahead and 6 to 14 in up; the whole of it
// is in sight of the fitted car.
func TestDraggingTheTarget(t *testing.T) {
	for _, c := range []struct {
		what     string
		from, to r2.Vec // [in]
		want     [4]float64
		label    string
		cursor   desktop.Cursor
	}{
		{"inside", r2.Vec{X: 56, Y: 7.5}, r2.Vec{X: 58.504, Y: 6.5}, [4]float64{42.5, 62.5, 5, 13}, "Move target", desktop.CrosshairCursor},
		{"the front edge", r2.Vec{X: 60, Y: 12.2}, r2.Vec{X: 64, Y: 3}, [4]float64{40, 64, 6, 14}, "Resize target", desktop.HResizeCursor},
		{"the rear edge", r2.Vec{X: 40, Y: 12.2}, r2.Vec{X: 37.5, Y: 3}, [4]float64{37.5, 60, 6, 14}, "Resize target", desktop.HResizeCursor},
		{"the upper edge", r2.Vec{X: 46, Y: 14}, r2.Vec{X: 70, Y: 12.75}, [4]float64{40, 60, 6, 12.75}, "Resize target", desktop.VResizeCursor},
		{"the front lower corner", r2.Vec{X: 60, Y: 6}, r2.Vec{X: 55, Y: 7}, [4]float64{40, 55, 7, 14}, "Resize target", desktop.CrosshairCursor},
		{"the front edge beyond the rear", r2.Vec{X: 60, Y: 12.2}, r2.Vec{X: 20, Y: 12.2}, [4]float64{40, 40.25, 6, 14}, "Resize target", desktop.HResizeCursor},
	} {
		t.Run(c.what, func(t *testing.T) {
			h := newHand(t, 900, 600)
			h.study.Want(study.WantsSearch)
			h.view.SetFit(side.FitCar)
			h.frame()
			before, view := h.doc.Car(), h.view.Picture().View
			h.press(h.at(c.from.X, c.from.Y))
			if got := h.view.Cursor(); got != c.cursor {
				t.Errorf("cursor %v, want %v", got, c.cursor)
			}
			h.moveAlong(h.at(c.to.X, c.to.Y))
			tag := strings.Join(h.held(), "; ")
			h.release()
			// Half a pixel is more than a hundredth of an inch here.
			got, grid := h.target(), 0.02
			for i := range got {
				if math.Abs(got[i]-c.want[i]) > grid {
					t.Fatalf("target %v, want %v", got, c.want)
				}
			}
			if want := side.Describe(scene.ID{Kind: scene.TargetBox}, h.study.Result(), h.study.Station(), side.Options{})[1]; !strings.Contains(tag, want) {
				t.Errorf("during the drag the tag says %q, want %q", tag, want)
			}
			if !sameView(view, h.view.Picture().View) {
				t.Error("the view has moved")
			}
			h.wantUndo(c.label)
			h.wantOneStep(before)
		})
	}
}

// A drag of the target that begins on a dot moves it all the same, and Escape
// takes it back.
func TestTheTargetIsDraggedFromUnderADot(t *testing.T) {
	h := newHand(t, 900, 600)
	if p := h.doc.Apply("Target", func(c *car.Car) { c.Check.TargetICX[0], c.Check.TargetICZ[1] = 30*inch, 20*inch }); p != nil {
		t.Fatal(p)
	}
	h.search()
	before := h.doc.Car()
	at, _ := h.dot(1, 1, 2, 1)
	if id := h.view.Picture().PickBehind(at); id.Kind != scene.TargetBox {
		t.Fatalf("behind the dot is %+v", id)
	}
	h.press(at)
	h.moveAlong(r2.Add(at, r2.Vec{X: 20, Y: -20}))
	if h.target() == [4]float64{30, 60, 6, 20} || h.study.Picked() != study.None {
		t.Errorf("target %v, picked %d", h.target(), h.study.Picked())
	}
	if h.study.Pointed() != study.None {
		t.Errorf("during the drag %d is pointed at", h.study.Pointed())
	}
	if words := h.held(); len(words) == 0 || words[0] != "Target for the instant center" {
		t.Errorf("during the drag the corner says %q", words)
	}
	h.key(fyne.KeyEscape)
	h.release()
	if h.doc.Car() != before {
		t.Errorf("after Escape the target is %v", h.target())
	}
}

func TestTheTargetStaysPutElsewhere(t *testing.T) {
	h := newHand(t, 900, 600)
	h.view.SetFit(side.FitCar)
	h.frame()
	before := h.doc.Car()
	from := h.at(56, 7.5)
	h.hover(from)
	if h.view.Cursor() != desktop.DefaultCursor {
		t.Error("the cursor promises a drag")
	}
	h.drag(from, r2.Add(from, r2.Vec{X: 20}))
	if h.doc.Car() != before {
		t.Errorf("target %v", h.target())
	}
}

func TestARefusedTargetIsTold(t *testing.T) {
	h := newHand(t, 900, 600)
	if p := h.doc.Apply("Target", func(c *car.Car) { c.Check.TargetICX[1] = 399 * inch }); p != nil {
		t.Fatal(p)
	}
	h.study.Want(study.WantsSearch)
	h.view.SetFit(side.FitCar)
	h.frame()
	before := h.doc.Car()
	h.press(h.at(56, 7.5))
	h.moveAlong(h.at(66, 7.5))
	if last := h.refusals[len(h.refusals)-1]; len(last) == 0 || last[0].Path != "check.target_ic.x" {
		t.Errorf("told %v", last)
	}
	h.release()
	if h.doc.Car() != before {
		t.Errorf("target %v", h.target())
	}
}

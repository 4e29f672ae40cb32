package stage_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
)

func TestDraggingAPivotChoosesTheNearestHole(t *testing.T) {
	h := newHand(t, 900, 600)
	before := h.doc.Car()
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.7, 12.1))
	h.wantHoles(3, 1, 1, 1)
	if h.doc.UndoLabel() != "" {
		t.Errorf("%q can be undone while it is going on", h.doc.UndoLabel())
	}
	h.moveAlong(h.at(25.3, 9))
	h.wantHoles(3, 3, 1, 1)
	h.release()
	h.wantHoles(3, 3, 1, 1)
	h.wantUndo("Use another lower chassis hole")
	h.wantOneStep(before)
}

// The pivots of every row, from one hole to another [in].
func TestEveryRowCanBeDragged(t *testing.T) {
	for _, c := range []struct {
		row      car.Row
		from, to r2.Vec
		want     int
	}{
		{car.ChassisUpper, r2.Vec{X: 22.5, Y: 17}, r2.Vec{X: 22.5, Y: 18.5}, 1},
		{car.ChassisLower, r2.Vec{X: 25.5, Y: 11.5}, r2.Vec{X: 25.5, Y: 10.75}, 3},
		{car.HousingUpper, r2.Vec{X: 2.5, Y: 22.5}, r2.Vec{X: 2.5, Y: 21.75}, 2},
		{car.HousingLower, r2.Vec{X: 2.5, Y: 11}, r2.Vec{X: 2.5, Y: 10.25}, 2},
	} {
		t.Run(c.row.String(), func(t *testing.T) {
			h := newHand(t, 900, 600)
			want := h.holes()
			want[c.row] = c.want
			h.drag(h.at(c.from.X, c.from.Y), h.at(c.to.X, c.to.Y))
			if h.holes() != want {
				t.Errorf("the setup uses holes %v, want %v", h.holes(), want)
			}
			if h.study.Pivot() != c.row {
				t.Errorf("the keyboard moves the %s pivot", h.study.Pivot())
			}
		})
	}
}

// Everything that is shown belongs to the car of the moment, in the middle of
// a drag too.
func TestTheStudyFollowsDuringTheDrag(t *testing.T) {
	h := newHand(t, 900, 600)
	s := h.study
	// Anti-squat is 100 % times z/x of the instant center over height of the
	// center of gravity per wheelbase (common practice).
	squat := func(chassisLower float64) float64 {
		upper, lower := (17-22.5)/20.0, (chassisLower-11)/23.0
		x := 2.5 + (22.5-11)/(lower-upper)
		z := 11 + lower*(x-2.5)
		return z / x * 105 / 19.5
	}
	h.press(h.at(25.5, 11.5))
	for hole, z := range map[int]float64{0: 12.25, 2: 10.75, 1: 11.5} {
		h.moveAlong(h.at(25.5, z))
		if got, want := s.Station().AntiSquat, squat(z); math.Abs(got-want) > 1e-9 || s.Result().Car != h.doc.Car() {
			t.Errorf("in hole %d anti-squat is %v, want %v", hole+1, got, want)
		}
		if at, _ := h.view.Picture().Pivot(car.ChassisLower); !near(at, h.at(25.5, z)) {
			t.Errorf("the pivot is drawn at %v, its hole is at %v", at, h.at(25.5, z))
		}
	}
}

// During a drag nothing stands beside the pointer; the hole that the bar is in by
// now is named in a corner. After it the tag beside the pointer names it.
func TestTheWordsFollowTheDrag(t *testing.T) {
	h := newHand(t, 900, 600)
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.5, 12.25))
	if words := h.held(); len(words) != 3 || words[0] != "Lower chassis hole 1 of 3" || words[1] != "25.5 in forward, 12.25 in above the ground" || words[2] != "x 25.50 in   z 12.25 in" {
		t.Errorf("the corner says %q", words)
	}
	clear := h.view.Picture().Tags[0].Clear
	if want := h.center(); !slices.ContainsFunc(clear, func(p r2.Vec) bool { return near(p, want) }) {
		t.Errorf("the words may cover the instant center at %v: they are clear of %v", want, clear)
	}
	h.release()
	if tag := h.tag(); len(tag) == 0 || tag[0] != "Lower chassis hole 1 of 3" {
		t.Errorf("after the drag the tag says %q", tag)
	}
}

func TestEscapeTakesTheDragBack(t *testing.T) {
	h := newHand(t, 900, 600)
	before := h.doc.Car()
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.5, 12.25))
	h.key(fyne.KeyEscape)
	h.moveAlong(h.at(25.5, 10.75))
	h.release()
	if h.doc.Car() != before || h.doc.UndoLabel() != "" || h.doc.RedoLabel() != "" {
		t.Errorf("holes %v, undo %q, redo %q", h.holes(), h.doc.UndoLabel(), h.doc.RedoLabel())
	}
}

func TestADragBackIsNoStep(t *testing.T) {
	h := newHand(t, 900, 600)
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.5, 12.25))
	h.moveAlong(h.at(25.5, 11.5))
	h.release()
	h.wantHoles(3, 2, 1, 1)
	h.wantUndo("")
}

func TestAClickOnAFreeHoleTakesIt(t *testing.T) {
	h := newHand(t, 900, 600)
	before := h.doc.Car()
	h.press(h.at(22.5, 18.5))
	h.release()
	h.wantHoles(1, 2, 1, 1)
	h.wantUndo("Use upper chassis hole 1")
	h.wantOneStep(before)
	if h.study.Pivot() != car.ChassisUpper {
		t.Error("the row clicked is not the one that the keyboard moves")
	}
}

// A free hole can be dragged as well: the bar goes along.
func TestADragFromAFreeHole(t *testing.T) {
	h := newHand(t, 900, 600)
	h.drag(h.at(22.5, 18.5), h.at(22.5, 17.8))
	h.wantHoles(2, 2, 1, 1)
}

func TestAClickElsewhereChangesNothing(t *testing.T) {
	h := newHand(t, 900, 600)
	before, view := h.doc.Car(), h.view.Picture().View
	for _, p := range []r2.Vec{h.at(25.5, 11.5), h.at(24.2, 14.5), h.at(14, 11.25), h.at(33, 33)} {
		h.press(p)
		h.release()
	}
	if h.doc.Car() != before || h.doc.UndoLabel() != "" || !sameView(view, h.view.Picture().View) {
		t.Errorf("undo %q, view %+v", h.doc.UndoLabel(), h.view.Picture().View)
	}
}

// With Shift, or in hole-moving mode, the hole goes where the pointer goes, to
// the hundredth of an inch.
func TestMovingAHole(t *testing.T) {
	for name, prepare := range map[string]func(h *hand){
		"shift": func(h *hand) { h.modifier = fyne.KeyModifierShift },
		"mode":  func(h *hand) { h.study.SetMoving(true) },
	} {
		t.Run(name, func(t *testing.T) {
			h := newHand(t, 900, 600)
			prepare(h)
			before := h.doc.Car()
			h.drag(h.at(25.5, 11.5), h.at(26.004, 12.996))
			h.wantHoles(3, 2, 1, 1)
			h.wantHole(car.ChassisLower, 1, 26, 13)
			h.wantUndo("Move lower chassis hole")
			h.wantOneStep(before)

			// A free hole moves too, and its bar stays where it is.
			h.drag(h.at(2.5, 21.75), h.at(3, 20.75))
			h.wantHoles(3, 2, 1, 1)
			h.wantHole(car.HousingUpper, 1, 3, 4.75)
			h.press(h.at(22.5, 18.5))
			h.release()
			h.wantHoles(3, 2, 1, 1)
		})
	}
}

// A hole is moved from where it was taken hold of: the pointer need not be on
// its center.
func TestTheGripIsKept(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.SetMoving(true)
	beside := r2.Vec{X: 4, Y: -3}
	h.drag(r2.Add(h.at(25.5, 11.5), beside), r2.Add(h.at(26, 12), beside))
	h.wantHole(car.ChassisLower, 1, 26, 12)
}

// At another travel the hole still follows the pointer.
func TestDraggingAwayFromRideHeight(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.SetTravel(-3 * inch)
	h.study.SetMoving(true)
	h.frame()
	from, _ := h.view.Picture().Pivot(car.ChassisUpper)
	to := r2.Add(from, r2.Vec{X: 12, Y: -15})
	h.press(from)
	h.moveAlong(to)
	// The hole turns its own frame a little as it moves; the next move of the
	// pointer makes up for it.
	h.moveAlong(to)
	at, _ := h.view.Picture().Pivot(car.ChassisUpper)
	// Half a hundredth of an inch of rounding in each direction.
	if d := r2.Norm(r2.Sub(at, to)); d > 0.0075*inch*h.view.Picture().View.Scale {
		t.Errorf("the hole is drawn %.2f px beside the pointer", d)
	}
}

// A bracket's plate takes all its holes along and no others.
func TestDraggingAPlate(t *testing.T) {
	for _, c := range []struct {
		name    string
		at      r2.Vec // on the plate, away from holes and bars [in]
		kind    scene.Kind
		chassis bool
		label   string
	}{
		{"chassis", r2.Vec{X: 24.2, Y: 14.5}, scene.ChassisBody, true, "Move chassis bracket"},
		{"housing", r2.Vec{X: 2.5, Y: 13.2}, scene.HousingBody, false, "Move housing bracket"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := newHand(t, 900, 600)
			before := h.doc.Car()
			if id := h.view.Picture().Pick(h.at(c.at.X, c.at.Y)); id.Kind != c.kind {
				t.Fatalf("picked %+v", id)
			}
			h.drag(h.at(c.at.X, c.at.Y), h.at(c.at.X+0.75, c.at.Y-0.5))
			for _, row := range car.Rows {
				for i, hole := range *row.In(before) {
					x, z := hole.X/inch, hole.Y/inch
					if row.OnChassis() == c.chassis {
						x, z = x+0.75, z-0.5
					}
					got := (*row.In(h.doc.Car()))[i]
					if math.Hypot(got.X/inch-x, got.Y/inch-z) > 1e-9 {
						t.Errorf("%s hole %d is at (%v, %v) in, want (%v, %v)", row, i+1, got.X/inch, got.Y/inch, x, z)
					}
				}
			}
			h.wantUndo(c.label)
			h.wantOneStep(before)
		})
	}
}

func TestDraggingElsewherePans(t *testing.T) {
	h := newHand(t, 900, 600)
	h.press(h.at(33, 33))
	h.moveAlong(r2.Add(h.at(33, 33), r2.Vec{X: 60, Y: -25}))
	if tags := h.view.Picture().Tags; len(tags) != 0 {
		t.Errorf("meanwhile is written %+v", tags)
	}
	h.release()
	want := h.at(25.5, 11.5)
	at, _ := h.view.Picture().Pivot(car.ChassisLower)
	if !near(at, want) || h.doc.UndoLabel() != "" {
		t.Errorf("the pivot is drawn at %v, want %v; undo %q", at, want, h.doc.UndoLabel())
	}
	h2 := newHand(t, 900, 600)
	if p := r2.Add(h2.at(25.5, 11.5), r2.Vec{X: 60, Y: -25}); !near(p, at) {
		t.Errorf("a pan of (60, -25) px brought the pivot to %v, want %v", at, p)
	}
}

func TestTheRightButtonDoesNothing(t *testing.T) {
	h := newHand(t, 900, 600)
	before, view := h.doc.Car(), h.view.Picture().View
	h.study.Select(car.HousingUpper)
	for _, from := range []r2.Vec{h.at(25.5, 11.5), h.at(22.5, 18.5), h.at(33, 33)} {
		h.hover(from)
		h.view.MouseDown(h.event(from, desktop.MouseButtonSecondary))
		h.view.MouseUp(h.event(from, desktop.MouseButtonSecondary))
	}
	h.frame()
	if h.doc.Car() != before || h.study.Pivot() != car.HousingUpper || !sameView(view, h.view.Picture().View) || h.window.Canvas().Focused() != nil {
		t.Error("the right button has done something")
	}
}

// When the button goes up where the view does not hear of it, the next move
// without a button ends the drag.
func TestALostReleaseEndsTheDrag(t *testing.T) {
	h := newHand(t, 900, 600)
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.5, 12.25))
	h.hover(h.at(33, 33))
	h.wantHoles(3, 1, 1, 1)
	h.wantUndo("Use another lower chassis hole")
	h.move(h.at(25.5, 10.75))
	h.release()
	if h.holes() != [4]int{3, 1, 1, 1} {
		t.Errorf("the pivot is still held: holes %v", h.holes())
	}
}

func TestARefusedDragLeavesTheCarAlone(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.SetMoving(true)
	before := h.doc.Car()
	h.press(h.at(25.5, 11.5))
	// The bar would have no length.
	h.move(h.at(2.5, 11))
	last := h.refusals[len(h.refusals)-1]
	if len(last) == 0 || !strings.HasPrefix(last[0].Path, "setup.") {
		t.Fatalf("told %v", last)
	}
	if h.doc.Car() != before {
		t.Error("the car has changed")
	}
	h.move(h.at(25.5, 12))
	if last := h.refusals[len(h.refusals)-1]; last != nil {
		t.Errorf("the refusal stands though the hole fits: %v", last)
	}
	h.wantHole(car.ChassisLower, 1, 25.5, 12)
	h.release()
	h.wantOneStep(before)
}

// Another car in the middle of a drag is not touched by what is left of it.
func TestAnotherCarEndsTheDrag(t *testing.T) {
	h := newHand(t, 900, 600)
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.5, 12.25))
	small := reference(t).Car.Clone()
	small.Chassis.Lower = small.Chassis.Lower[:1]
	for i := range small.Setups {
		small.Setups[i].Holes.ChassisLower = 0
	}
	data, err := reference(t).Encode(small)
	if err != nil {
		t.Fatal(err)
	}
	if err := h.doc.OpenBytes("small.toml", data); err != nil {
		t.Fatal(err)
	}
	h.moveAlong(h.at(25.5, 10))
	h.release()
	if !reflect.DeepEqual(h.doc.Car(), small) || h.doc.UndoLabel() != "" {
		t.Errorf("the drag went on in another car: undo %q", h.doc.UndoLabel())
	}
}

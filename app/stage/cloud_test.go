package stage_test

import (
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/study"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
)

// search finds the car's combinations and looks at them.
func (h *hand) search() {
	h.t.Helper()
	h.study.Want(study.WantsSearch)
	h.queue.Settle(h.study.Busy)
	h.frame()
}

// dot returns where the dot of holes, counted from 1, is drawn, and the index of
// their combination.
func (h *hand) dot(chassisUpper, chassisLower, housingUpper, housingLower int) (r2.Vec, int) {
	h.t.Helper()
	s := h.study
	index := s.Table().Index(car.Holes{ChassisUpper: chassisUpper - 1, ChassisLower: chassisLower - 1, HousingUpper: housingUpper - 1, HousingLower: housingLower - 1})
	p := s.Place(index)
	if p == nil || !p.Combination().HasInstantCenter {
		h.t.Fatal("these holes have no dot")
	}
	at := h.screen(p.Combination().InstantCenter)
	if !h.visible(at) {
		h.t.Fatalf("the dot is at %v, outside of the picture", at)
	}
	return at, index
}

func TestPointingAtADot(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	at, index := h.dot(2, 1, 2, 1)
	h.hover(at)
	if h.study.Pointed() != index || h.view.Cursor() != desktop.PointerCursor {
		t.Errorf("pointed at %d, want %d; cursor %v", h.study.Pointed(), index, h.view.Cursor())
	}
	if tag := strings.Join(h.tag(), "; "); !strings.HasPrefix(tag, "Holes 2·1·2·1; anti-squat ") || !strings.Contains(tag, "IC ") || !strings.Contains(tag, "% of its limit") {
		t.Errorf("the tag says %q", tag)
	}
	// Away from all dots none is pointed at; nor with the pointer out of the view.
	h.hover(h.at(10, 40))
	if got := h.study.Pointed(); got != study.None {
		t.Errorf("beside the dots %d is pointed at", got)
	}
	h.hover(at)
	h.leave()
	if got := h.study.Pointed(); got != study.None {
		t.Errorf("with the pointer away %d is pointed at", got)
	}
}

// What the table points at lights up in the view, and the mouse elsewhere in the
// view does not take that away.
func TestTheTablesPointerLightsUp(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	at, index := h.dot(2, 1, 2, 1)
	h.hover(h.at(10, 40))
	h.study.Point(index)
	h.hover(h.at(11, 40))
	if h.study.Pointed() != index {
		t.Fatal("the view has taken the table's pointer away")
	}
	found := false
	for _, d := range h.view.Picture().Drawn {
		if d.Shape == scene.Sight && near(d.Points[0], at) {
			found = true
		}
	}
	if !found {
		t.Error("its dot is not marked")
	}
}

func TestAClickPicksADot(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	before, view := h.doc.Car(), h.view.Picture().View
	at, index := h.dot(2, 1, 2, 1)
	h.press(at)
	h.release()
	if h.study.Picked() != index || h.doc.Car() != before || !sameView(view, h.view.Picture().View) {
		t.Errorf("picked %d, want %d; undo %q", h.study.Picked(), index, h.doc.UndoLabel())
	}
	// A drag that begins on a dot beside the target pans and picks nothing.
	other, _ := h.dot(3, 1, 2, 2)
	h.drag(other, r2.Add(other, r2.Vec{X: 30, Y: 12}))
	if h.study.Picked() != index || sameView(view, h.view.Picture().View) {
		t.Errorf("after a drag %d is picked; view %+v", h.study.Picked(), h.view.Picture().View)
	}
	// A click beside the dots leaves the one picked.
	h.press(h.at(10, 40))
	h.release()
	if h.study.Picked() != index {
		t.Errorf("after a click beside the dots %d is picked", h.study.Picked())
	}
}

// doubleClick clicks at two places; the toolkit tells of the double click after
// the second release.
func (h *hand) doubleClick(first, second r2.Vec) {
	for _, p := range []r2.Vec{first, second} {
		h.press(p)
		h.release()
	}
	h.view.DoubleTapped(&fyne.PointEvent{Position: position(second)})
	h.frame()
}

func TestADoubleClickUsesTheHoles(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	before := h.doc.Car()
	at, _ := h.dot(2, 1, 2, 1)
	h.doubleClick(at, r2.Add(at, r2.Vec{X: 1}))
	h.wantHoles(2, 1, 2, 1)
	h.wantUndo("Use holes 2·1·2·1")
	h.wantOneStep(before)
	// Two quick clicks on two dots are no double click, nor is one beside them.
	other, index := h.dot(3, 3, 2, 2)
	h.doubleClick(at, other)
	h.doubleClick(h.at(10, 40), h.at(10, 40))
	if h.doc.Car() != before || h.study.Picked() != index {
		t.Errorf("holes %v, picked %d", h.holes(), h.study.Picked())
	}
}

func TestEnterUsesThePickedHoles(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	before := h.doc.Car()
	at, index := h.dot(2, 1, 2, 1)
	h.press(at)
	h.release()
	h.key(fyne.KeyReturn)
	h.wantHoles(2, 1, 2, 1)
	h.wantOneStep(before)
	// Not where the combinations are not looked at, and not without one.
	h.study.Want(0)
	h.key(fyne.KeyEnter)
	h.study.Want(study.WantsSearch)
	h.study.Pick(study.None)
	h.key(fyne.KeyEnter)
	if h.doc.Car() != before {
		t.Errorf("holes %v", h.holes())
	}
	h.study.Pick(index)
	h.key(fyne.KeyEnter)
	h.wantHoles(2, 1, 2, 1)
}

// Holes that are refused are told of where other refusals are.
func TestRefusedHolesAreTold(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	at, index := h.dot(2, 1, 2, 1)
	// The old combinations stay until there are new ones, and by now the upper
	// chassis hole is where the lower housing hole is... of no use to any bar.
	if p := h.doc.Apply("Hole", func(c *car.Car) { c.Chassis.Upper[1] = r2.Vec{X: 2.5 * inch, Y: 21.75 * inch} }); p != nil {
		t.Fatal(p)
	}
	before := h.doc.Car()
	h.doubleClick(at, at)
	if last := h.refusals[len(h.refusals)-1]; len(last) == 0 || h.doc.Car() != before {
		t.Errorf("told %v; holes %v, picked %d of %d", last, h.holes(), h.study.Picked(), index)
	}
}

// Without the page of combinations there are no dots, and keys and mouse do
// what they do without them.
func TestNoDotsWhereTheyAreNotLookedAt(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	at, _ := h.dot(2, 1, 2, 1)
	h.study.Want(0)
	h.hover(at)
	h.press(at)
	h.release()
	if h.study.Pointed() != study.None || h.study.Picked() != study.None || strings.Contains(strings.Join(h.tag(), "; "), "Holes") {
		t.Errorf("pointed at %d, picked %d, the tag says %q", h.study.Pointed(), h.study.Picked(), h.tag())
	}
	for _, d := range h.view.Picture().Drawn {
		if d.Shape == scene.Swarm {
			t.Fatal("dots are drawn")
		}
	}
	h.study.Want(study.WantsSearch)
	h.hover(at)
	if tag := strings.Join(h.tag(), "; "); !strings.HasPrefix(tag, "Holes 2·1·2·1") {
		t.Errorf("back on the page the tag says %q", tag)
	}
	// What is not under the pointer any more is not pointed at, before a frame is
	// drawn.
	h.study.Want(0)
	if h.study.Pointed() != study.None {
		t.Errorf("off the page %d is pointed at", h.study.Pointed())
	}
}

// While dots are there a pivot is dragged as ever, and what is pointed at does
// not change on the way.
func TestADragAmongDots(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	at, index := h.dot(2, 1, 2, 1)
	h.press(h.at(25.5, 11.5))
	h.moveAlong(at)
	if h.study.Pointed() == index {
		t.Error("a drag points at dots")
	}
	h.moveAlong(h.at(25.5, 12.25))
	h.release()
	h.wantHoles(3, 1, 1, 1)
	h.wantUndo("Use another lower chassis hole")
}

func TestLetterHFitsTheCloud(t *testing.T) {
	h := newHand(t, 900, 600)
	link := h.view.Picture().View
	h.search()
	h.typed("h")
	k := h.doc.Car().Check
	for _, p := range []r2.Vec{{X: k.TargetICX[1], Y: k.TargetICZ[1]}, {X: k.TargetICX[0], Y: k.TargetICZ[0]}, {}} {
		if at := h.screen(p); !h.visible(at) {
			t.Errorf("%v is drawn at %v", p, at)
		}
	}
	if v := h.view.Picture().View; sameView(v, link) || v.Scale < link.Scale/3.1 {
		t.Errorf("view %+v, of the link %+v", v, link)
	}
	// Elsewhere than on the page it fits the link.
	h.study.Want(0)
	h.typed("h")
	if !sameView(h.view.Picture().View, link) {
		t.Errorf("view %+v, of the link %+v", h.view.Picture().View, link)
	}
}

// The dots are those of the car by the time that they are looked at again.
func TestDotsAreUpToDateWhenTheyComeBack(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	h.study.Want(0)
	if p := h.doc.Apply("Target", func(c *car.Car) { c.Check.TargetAntiSquat = [2]float64{0.5, 0.75} }); p != nil {
		t.Fatal(p)
	}
	h.study.Want(study.WantsSearch)
	h.frame()
	for _, d := range h.view.Picture().Drawn {
		if d.Shape == scene.Swarm {
			if got := d.Dots.Scale.Target; got != [2]float64{0.5, 0.75} {
				t.Errorf("the dots are colored for %v", got)
			}
			return
		}
	}
	t.Error("no dots are drawn")
}

// A ghost's pivot is not taken hold of: the view moves.
func TestGhostsCannotBeDragged(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.Compare(1)
	h.frame()
	before, view := h.doc.Car(), h.view.Picture().View
	beside := r2.Add(h.at(25.5, 12.25), r2.Vec{X: 3, Y: -8.5})
	h.hover(beside)
	if tag := strings.Join(h.tag(), "; "); !strings.HasPrefix(tag, `Lower chassis hole 1 of "lower bar up"`) || h.view.Cursor() != desktop.DefaultCursor {
		t.Errorf("the tag says %q, the cursor is %v", tag, h.view.Cursor())
	}
	h.drag(beside, r2.Add(beside, r2.Vec{X: 20, Y: 30}))
	if h.doc.Car() != before || sameView(view, h.view.Picture().View) {
		t.Errorf("undo %q, view %+v", h.doc.UndoLabel(), h.view.Picture().View)
	}
}

// The setup held against is shown at the travel looked at.
func TestTheOtherSetupIsShown(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.Compare(1)
	h.study.SetTravel(2 * inch)
	h.frame()
	n := 0
	for _, d := range h.view.Picture().Drawn {
		if d.ID.Kind == scene.InstantCenter && d.ID.Ghost == 1 && d.Shape == scene.Label {
			n++
			want := h.screen(h.study.Others()[0].Station.InstantCenter)
			if d.Text != "lower bar up" || !near(d.Points[0], want) {
				t.Errorf("%q at %v, its instant center is at %v", d.Text, d.Points[0], want)
			}
		}
	}
	if n != 1 {
		t.Errorf("it is named %d times", n)
	}
	h.study.Compare()
	h.frame()
	for _, d := range h.view.Picture().Drawn {
		if d.ID.Ghost > 0 {
			t.Fatal("a setup is shown that none is held against")
		}
	}
}

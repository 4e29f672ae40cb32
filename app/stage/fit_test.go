package stage_test

import (
	"testing"

	"bowline/app/study"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// targetShown reports whether all of the target is in the picture.
func (h *hand) targetShown() bool {
	k := h.doc.Car().Check
	return h.visible(h.screen(r2.Vec{X: k.TargetICX[0], Y: k.TargetICZ[0]})) && h.visible(h.screen(r2.Vec{X: k.TargetICX[1], Y: k.TargetICZ[1]}))
}

// The page of the combinations shows the target, and the view is as before when
// it is left.
func TestThePageOfHolesShowsTheTarget(t *testing.T) {
	for name, edit := range map[string]func(*car.Car){
		"bars that meet": func(*car.Car) {},
		"parallel bars": func(c *car.Car) {
			c.Chassis.Upper[2].Y, c.Chassis.Lower[1].Y = 22.5*inch, 11*inch
		},
	} {
		t.Run(name, func(t *testing.T) {
			h := newHand(t, 900, 600)
			h.doc.Apply("Bars", edit)
			h.typed("f")
			link := h.view.Picture().View
			if h.targetShown() {
				t.Fatal("the bars alone show the target: the test proves nothing")
			}
			h.study.Want(study.WantsSearch)
			h.frame()
			if !h.targetShown() || h.view.Picture().View.Scale < link.Scale/3.1 {
				t.Errorf("the target is not shown: view %+v, of the link %+v", h.view.Picture().View, link)
			}
			h.study.Want(0)
			h.frame()
			if !sameView(h.view.Picture().View, link) {
				t.Errorf("left the view is %+v, before %+v", h.view.Picture().View, link)
			}
		})
	}
}

// A view zoomed by hand, or of the whole car, is left alone by the page.
func TestThePageLeavesAChosenViewAlone(t *testing.T) {
	for _, keys := range []string{"+", "c"} {
		h := newHand(t, 900, 600)
		h.typed(keys)
		before := h.view.Picture().View
		for _, on := range []bool{true, false} {
			h.study.Want(map[bool]study.Wants{true: study.WantsSearch}[on])
			h.frame()
			if !sameView(h.view.Picture().View, before) {
				t.Errorf("after %q, searching %v: the view goes from %+v to %+v", keys, on, before, h.view.Picture().View)
			}
		}
	}
}

// A target that an edit takes out of the picture is brought back, but not while
// it is dragged.
func TestTheViewFollowsTheTarget(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.Want(study.WantsSearch)
	h.frame()
	before := h.view.Picture().View
	h.press(h.at(60, 12.2))
	h.moveAlong(r2.Add(h.at(60, 12.2), r2.Vec{X: 200}))
	if !sameView(h.view.Picture().View, before) || h.targetShown() {
		t.Fatalf("during the drag the view goes from %+v to %+v; target %v", before, h.view.Picture().View, h.target())
	}
	h.release()
	if !h.targetShown() {
		t.Errorf("after the drag target %v is out of the picture", h.target())
	}
	h.typed("f")
	h.doc.Apply("Target", func(c *car.Car) { c.Check.TargetICZ = [2]float64{20 * inch, 46 * inch} })
	h.frame()
	if !h.targetShown() {
		t.Errorf("after the edit target %v is out of the picture", h.target())
	}
}

// A car that becomes longer is shown whole again, if it was.
func TestTheViewFollowsTheFrontOfTheCar(t *testing.T) {
	h := newHand(t, 900, 600)
	h.typed("c")
	if p := h.doc.Apply("Longer", func(c *car.Car) { c.Body.Wheelbase += 20 * inch }); p != nil {
		t.Fatal(p)
	}
	h.frame()
	if front := h.at(125+12.4, 12.5); !h.visible(front) {
		t.Errorf("the front tire reaches to %v", front)
	}
}

// All instant centers asked for before they are found are fitted when they are.
func TestAFitToTheCloudWaitsForIt(t *testing.T) {
	h := newHand(t, 900, 600)
	h.study.Want(study.WantsSearch)
	h.typed("h")
	target := h.view.Picture().View
	h.search()
	found := h.view.Picture().View
	h.typed("h")
	if sameView(target, found) || !sameView(found, h.view.Picture().View) {
		t.Errorf("view before %+v, found %+v, asked again %+v", target, found, h.view.Picture().View)
	}
}

package stage_test

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/model/car"
	"bowline/model/units"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

func (h *hand) visible(p r2.Vec) bool {
	size := h.view.Size()
	return p.X > 0 && p.Y > 0 && p.X < float64(size.Width) && p.Y < float64(size.Height)
}

// center returns where the instant center is drawn.
func (h *hand) center() r2.Vec {
	ic := h.study.Result().Ride.InstantCenter
	return h.screen(ic)
}

func TestTheFirstPictureShowsTheBarsAndTheirCenter(t *testing.T) {
	h := newHand(t, 900, 600)
	// The bars of the reference car meet 41.24 in ahead and 11.84 in up.
	for _, p := range []r2.Vec{h.at(22.5, 17), h.at(25.5, 11.5), h.at(2.5, 22.5), h.at(2.5, 11), h.at(0, 0), h.at(41.24, 11.84)} {
		if !h.visible(p) {
			t.Errorf("something is drawn at %v, outside of the picture", p)
		}
	}
}

func TestFits(t *testing.T) {
	h := newHand(t, 900, 600)
	link := h.view.Picture().View
	h.typed("c")
	for _, p := range []r2.Vec{h.at(-15.9, 16), h.at(105+12.4, 12.5), h.at(0, 31.9)} {
		if !h.visible(p) {
			t.Errorf("fit to the car, a tire reaches to %v", p)
		}
	}
	if sameView(link, h.view.Picture().View) {
		t.Error("both fits show the same")
	}
	h.typed("+")
	h.typed("F")
	if !sameView(link, h.view.Picture().View) {
		t.Error("F does not bring the first view back")
	}
	h.view.SetFit(side.FitCar)
	h.view.SetFit(side.FitBars)
	h.frame()
	if !sameView(link, h.view.Picture().View) {
		t.Error("the command does not bring the first view back")
	}
}

func TestAFitFollowsTheSize(t *testing.T) {
	for _, size := range []fyne.Size{fyne.NewSize(1200, 800), fyne.NewSize(500, 700), fyne.NewSize(340, 260)} {
		h := newHand(t, 900, 600)
		h.window.Resize(size)
		h.frame()
		fresh := newHand(t, size.Width, size.Height)
		if !sameView(h.view.Picture().View, fresh.view.Picture().View) {
			t.Errorf("after a change to %v the view is %+v, a new one %+v", size, h.view.Picture().View, fresh.view.Picture().View)
		}
	}
}

// A view zoomed by hand keeps its scale and its middle.
func TestAFreeViewKeepsItsPlace(t *testing.T) {
	h := newHand(t, 900, 600)
	h.typed("+")
	before := h.view.Picture().View
	h.window.Resize(fyne.NewSize(1200, 800))
	h.frame()
	h.drag(h.at(25.5, 11.5), h.at(25.5, 10.75))
	h.wantHoles(3, 3, 1, 1)
	if v := h.view.Picture().View; v.Scale != before.Scale || v.Middle != before.Middle {
		t.Errorf("the view has gone from %+v to %+v", before, v)
	}
}

// An edit that leaves the instant center in sight leaves the view alone.
func TestTheViewStandsStillThroughEdits(t *testing.T) {
	h := newHand(t, 900, 600)
	before := h.view.Picture().View
	for _, edit := range []struct {
		what string
		do   func()
	}{
		{"a nudge", func() { h.study.Nudge(1, 0) }},
		{"a drag", func() { h.drag(h.at(22.5, 17), h.at(22.5, 17.75)) }},
		{"undo", func() { h.doc.Undo() }},
		{"another setup", func() { h.doc.SelectSetup(1) }},
		{"a travel", func() { h.study.SetTravel(2 * inch) }},
		{"other units", func() { h.doc.SetUnits(units.SI) }},
		{"a typed number", func() {
			h.doc.Apply("CG height", func(c *car.Car) { c.Body.CGHeight = 20 * inch })
		}},
	} {
		edit.do()
		h.frame()
		if !h.visible(h.center()) {
			t.Fatalf("the test's edits are to keep the instant center in sight: %s, %v", edit.what, h.center())
		}
		if !sameView(before, h.view.Picture().View) {
			t.Fatalf("%s moved the view", edit.what)
		}
	}
}

// The instant center that leaves the picture in a drag is brought back when
// the drag is over, not before.
func TestTheViewFollowsTheInstantCenterAfterADrag(t *testing.T) {
	h := newHand(t, 900, 600)
	before := h.view.Picture().View
	h.study.SetMoving(true)
	h.press(h.at(25.5, 11.5))
	h.moveAlong(h.at(25.5, 9.4))
	if !sameView(before, h.view.Picture().View) {
		t.Fatal("the view moved during the drag")
	}
	if h.visible(h.center()) {
		t.Fatalf("the test's drag is to take the instant center out of the picture: %v", h.center())
	}
	h.release()
	if !h.visible(h.center()) {
		t.Errorf("after the drag the instant center is at %v", h.center())
	}
	// So does an edit; the view then goes where a new one would be.
	h.doc.Undo()
	h.frame()
	h.study.SetMoving(false)
	h.doc.Apply("Lower", func(c *car.Car) { c.Chassis.Lower[1].Y = 9.4 * inch })
	h.frame()
	if !h.visible(h.center()) {
		t.Errorf("after the edit the instant center is at %v", h.center())
	}
}

// An instant center that no fit would show does not make the view jump.
func TestAFarInstantCenterLeavesTheView(t *testing.T) {
	h := newHand(t, 900, 600)
	before := h.view.Picture().View
	for _, z := range []float64{6.2, 6.1, 6} {
		h.doc.Apply("Lower", func(c *car.Car) { c.Chassis.Lower[1].Y = z * inch })
		h.frame()
		if x := h.study.Result().Ride.InstantCenter.X / inch; math.Abs(x) < 150 {
			t.Fatalf("the instant center is only %.0f in away", x)
		}
		if !sameView(before, h.view.Picture().View) {
			t.Fatalf("with the lower hole at %v in the view moved", z)
		}
	}
}

func TestAnotherCarIsShownWhole(t *testing.T) {
	for name, fit := range map[string]string{"fit": "f", "zoomed": "+++"} {
		t.Run(name, func(t *testing.T) {
			h := newHand(t, 900, 600)
			want := h.view.Picture().View
			h.doc.Apply("Longer", func(c *car.Car) {
				for i := range c.Chassis.Lower {
					c.Chassis.Lower[i].X += 40 * inch
				}
			})
			h.typed("f" + fit)
			if sameView(want, h.view.Picture().View) {
				t.Fatal("both cars are shown alike")
			}
			data, err := reference(t).Encode(reference(t).Car)
			if err != nil {
				t.Fatal(err)
			}
			if err := h.doc.OpenBytes("reference.toml", data); err != nil {
				t.Fatal(err)
			}
			h.frame()
			if !sameView(want, h.view.Picture().View) {
				t.Errorf("the view is %+v, want %+v", h.view.Picture().View, want)
			}
		})
	}
}

func TestTheWheelZoomsAboutThePointer(t *testing.T) {
	h := newHand(t, 900, 600)
	for _, turn := range []float32{10, 10, -30, 10} {
		p, before := r2.Vec{X: 700, Y: 130}, h.view.Picture().View
		h.view.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: position(p)}, Scrolled: fyne.NewDelta(0, turn)})
		h.frame()
		after := h.view.Picture().View
		if d := r3.Norm(r3.Sub(after.World(p), before.World(p))); d > 1e-9 {
			t.Errorf("the place under the pointer moved by %v m", d)
		}
		if turn > 0 != (after.Scale > before.Scale) {
			t.Errorf("a turn of %v changed the scale from %v to %v", turn, before.Scale, after.Scale)
		}
	}
}

// Zooming before there is a picture spoils nothing.
func TestZoomBeforeTheFirstPicture(t *testing.T) {
	h := newHand(t, 900, 600)
	fresh := stage.New(h.study, side.New(h.study), light)
	fresh.Resize(fyne.NewSize(900, 600))
	fresh.Zoom(1.25)
	frame(t, fresh, 900, 600)
	v, want := fresh.Picture().View, h.view.Picture().View
	if math.Abs(v.Scale-1.25*want.Scale) > 1e-9*v.Scale || r2.Norm(r2.Sub(v.Middle, want.Middle)) > 1e-9 {
		t.Errorf("zoomed by 1.25 the view is %+v, before %+v", v, want)
	}
}

func TestHoverNamesWhatIsUnderThePointer(t *testing.T) {
	h := newHand(t, 900, 600)
	for _, c := range []struct {
		at     r2.Vec
		says   string
		cursor desktop.Cursor
	}{
		{h.at(22.5, 17), "Upper chassis hole 3 of 3", desktop.PointerCursor},
		{h.at(22.5, 18.5), "click to use it", desktop.PointerCursor},
		{h.at(14, 11.25), "Lower bar, 23.01 in pin to pin", desktop.DefaultCursor},
		{h.at(24.2, 14.5), "drag moves all its holes", desktop.CrosshairCursor},
		{h.at(33, 33), "", desktop.DefaultCursor},
	} {
		h.hover(c.at)
		if !strings.Contains(strings.Join(h.tag(), "\n"), c.says) || (h.tag() == nil) != (c.says == "") || h.view.Cursor() != c.cursor {
			t.Errorf("at %.0f: tag %q, cursor %v", c.at, h.tag(), h.view.Cursor())
		}
	}
	h.hover(h.at(22.5, 17))
	coordinates := h.view.Picture().Tags[len(h.view.Picture().Tags)-1]
	if want := []string{"x 22.50 in   z 17.00 in"}; !coordinates.Fixed || !slices.Equal(coordinates.Lines, want) {
		t.Errorf("coordinates %q, want %q", coordinates.Lines, want)
	}
	if n := marked(h.view.Picture()); n != 1 {
		t.Errorf("%d pivots are marked under the pointer", n)
	}
	h.leave()
	if n := marked(h.view.Picture()); n != 0 || len(h.view.Picture().Tags) != 0 {
		t.Errorf("with the pointer away %d pivots are marked and the tags are %v", n, h.view.Picture().Tags)
	}
}

// marked counts the pivots that are drawn as under the pointer.
func marked(p *scene.Picture) (n int) {
	for _, d := range p.Drawn {
		if d.ID.Kind == scene.Pivot && d.Stroke == scene.Accent {
			n++
		}
	}
	return n
}

// What is under a pointer at rest changes with the car, before the next frame is
// drawn.
func TestAPointerAtRestSeesTheChange(t *testing.T) {
	h := newHand(t, 900, 600)
	h.hover(h.at(25.5, 12.25))
	if !strings.Contains(strings.Join(h.tag(), "\n"), "click to use it") {
		t.Fatalf("the tag says %q", h.tag())
	}
	h.study.Choose(car.ChassisLower, 0)
	h.frame()
	if !strings.Contains(strings.Join(h.tag(), "\n"), "drag to another hole") || marked(h.view.Picture()) != 1 {
		t.Errorf("the tag says %q, %d pivots are marked", h.tag(), marked(h.view.Picture()))
	}
	// So it does when another part of the car comes under it.
	h.view.Zoom(40)
	h.frame()
	if strings.Contains(strings.Join(h.tag(), "\n"), "chassis hole") || marked(h.view.Picture()) != 0 {
		t.Errorf("zoomed, the tag says %q, %d pivots are marked", h.tag(), marked(h.view.Picture()))
	}
}

// So it does with the size of the view.
func TestAPointerAtRestSeesTheSizeChange(t *testing.T) {
	h := newHand(t, 900, 600)
	h.hover(h.at(22.5, 17))
	h.window.Resize(fyne.NewSize(1200, 700))
	h.frame()
	if tag := strings.Join(h.tag(), "\n"); strings.Contains(tag, "chassis hole 3") || marked(h.view.Picture()) != 0 {
		t.Errorf("the tag says %q, %d pivots are marked", tag, marked(h.view.Picture()))
	}
}

// The generator keeps its memory while the size stays, and shows at twice the
// pixels just what it shows at one.
func TestTheGeneratorsImage(t *testing.T) {
	h := newHand(t, 900, 600)
	one := h.frame()
	if one.Rect.Dx() != 900 || one.Rect.Dy() != 600 {
		t.Fatalf("asked for 900 × 600, got %v", one.Rect)
	}
	h.typed("+")
	if again := h.frame(); &again.Pix[0] != &one.Pix[0] {
		t.Error("a picture of the same size has memory of its own")
	}
	view := h.view.Picture().View
	two := frame(t, h.view, 1800, 1200)
	if two.Bounds().Dx() != 1800 || two.Bounds().Dy() != 1200 {
		t.Fatalf("asked for 1800 × 1200, got %v", two.Bounds())
	}
	if !sameView(view, h.view.Picture().View) {
		t.Error("the view depends on the screen's resolution")
	}
	p := h.at(14, 11.25)
	for scale, img := range map[int]interface{ At(x, y int) color.Color }{1: h.frame(), 2: frame(t, h.view, 1800, 1200)} {
		if got := img.At(scale*int(p.X), scale*int(p.Y)); got != color.Color(palette.Light.Push) {
			t.Errorf("at %d× the lower bar is painted %v", scale, got)
		}
	}
}

func TestDrawnIsToldOfEveryFrame(t *testing.T) {
	h := newHand(t, 900, 600)
	told := 0
	h.view.Drawn = func(p *scene.Picture) {
		if _, ok := p.Pivot(car.ChassisLower); ok {
			told++
		}
	}
	h.frame()
	h.frame()
	if told != 2 {
		t.Errorf("told of %d frames of 2", told)
	}
}

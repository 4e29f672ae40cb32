package stage_test

import (
	"slices"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/app/study"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rear looks at the rear tires from behind: left is on the left. A drag of either
// makes the track wider or narrower, and W does so by an inch.
type rear struct {
	study  *study.Study
	points []scene.ID // that it has been told to be under the pointer
	clicks []scene.ID
}

var (
	_ scene.Viewpoint = (*rear)(nil)
	_ scene.Hands     = (*rear)(nil)
)

func (v *rear) track() float64 { return v.study.Result().Car.Body.TrackRear }

func (v *rear) setTrack(track float64) []car.Problem {
	return v.study.Document().Apply("Track", func(c *car.Car) { c.Body.TrackRear = track })
}

// Fill implements scene.Viewpoint.
func (v *rear) Fill(l *scene.List, p scene.Pointer) {
	l.Clear()
	radius := v.study.Result().Car.Tires.RearRadius
	for s, y := range map[scene.Side]float64{scene.Left: v.track() / 2, scene.Right: -v.track() / 2} {
		item := scene.Item{ID: scene.ID{Kind: scene.RearTire, Side: s}, Shape: scene.Disc, Points: l.Points(r3.Vec{Y: y, Z: radius}), Radius: 0.15, Fill: scene.Tire, Pick: 5}
		if item.ID == p.Hot {
			item.Fill = scene.Accent
		}
		l.Add(item)
	}
}

// Plane implements scene.Viewpoint.
func (v *rear) Plane() scene.Plane {
	return scene.Plane{Right: r3.Vec{Y: -1}, Up: r3.Vec{Z: 1}, Across: "y", Upright: "z"}
}

// Fits implements scene.Viewpoint: the tires, and the left one alone, which is
// kept in sight.
func (v *rear) Fits() []scene.Fit {
	frame := func(low, high r2.Vec, sights ...r3.Vec) func(width, height float64) scene.Framing {
		return func(width, height float64) scene.Framing {
			return scene.Framing{View: scene.Fitted(v.Plane(), width, height, low, high), Sights: sights}
		}
	}
	half := v.track() / 2
	return []scene.Fit{
		{Key: "f", Framing: frame(r2.Vec{X: -1.5}, r2.Vec{X: 1.5, Y: 1})},
		{Key: "l", Framing: frame(r2.Vec{X: -half - 0.2}, r2.Vec{X: -half + 0.2, Y: 1}, r3.Vec{Y: half, Z: 0.4})},
	}
}

// Describe implements scene.Viewpoint.
func (v *rear) Describe(id scene.ID, p scene.Pointer) []string {
	words := map[scene.Side]string{scene.Left: "Left tire", scene.Right: "Right tire"}[id.Side]
	switch {
	case words == "":
		return nil
	case p.Held:
		words += " is dragged"
	}
	return []string{words}
}

// Hands implements scene.Viewpoint.
func (v *rear) Hands() scene.Hands { return v }

// Cursor implements scene.Hands.
func (v *rear) Cursor(id scene.ID) scene.Cursor {
	if id.Kind == scene.RearTire {
		return scene.Across
	}
	return scene.Arrow
}

// Point implements scene.Hands.
func (v *rear) Point(id scene.ID) { v.points = append(v.points, id) }

// Click implements scene.Hands.
func (v *rear) Click(id scene.ID, _ bool) []car.Problem {
	v.clicks = append(v.clicks, id)
	return nil
}

// DoubleClick implements scene.Hands: the track goes to 1.5 m.
func (v *rear) DoubleClick(scene.ID) []car.Problem { return v.setTrack(1.5) }

// Press implements scene.Hands.
func (v *rear) Press(k scene.Key, shift bool) []car.Problem {
	switch k {
	case "w":
		return v.setTrack(v.track() + inch)
	case scene.EnterKey:
		return v.setTrack(-1)
	}
	return nil
}

// Hold implements scene.Hands.
func (v *rear) Hold(p *scene.Picture, at r2.Vec, _ bool) scene.Hold {
	if id := p.Pick(at); id.Kind == scene.RearTire {
		v.study.Document().Begin("Drag track")
		return &heldTire{v, id}
	}
	return nil
}

// heldTire is a tire that is dragged.
type heldTire struct {
	rear *rear
	id   scene.ID
}

// To implements scene.Hold.
func (h *heldTire) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	half := v.World(at).Y
	if h.id.Side == scene.Right {
		half = -half
	}
	return h.id, h.rear.setTrack(2 * half)
}

// End implements scene.Hold.
func (h *heldTire) End() { h.rear.study.Document().End() }

// Cancel implements scene.Hold.
func (h *heldTire) Cancel() { h.rear.study.Document().Cancel() }

// fromBehind has the stage of a hand look from behind.
func fromBehind(t *testing.T) (*hand, *rear) {
	h := newHand(t, 900, 600)
	v := &rear{study: h.study}
	h.view.Look(v)
	h.frame()
	return h, v
}

// tire returns where a tire is drawn that is so far to the left of the middle [m].
func (h *hand) tire(left float64) r2.Vec {
	return h.view.Picture().View.Screen(r3.Vec{Y: left, Z: h.study.Result().Car.Tires.RearRadius})
}

// A viewpoint that the stage knows nothing of brings its own items, words, drags,
// keys and fits.
func TestAnotherViewpoint(t *testing.T) {
	h, v := fromBehind(t)
	before, track := h.doc.Car(), v.track()
	h.hover(h.tire(track / 2))
	if tag := h.tag(); !slices.Equal(tag, []string{"Left tire"}) || h.view.Cursor() != desktop.HResizeCursor {
		t.Errorf("the tag says %q, the cursor is %v", tag, h.view.Cursor())
	}
	if last := v.points[len(v.points)-1]; last != (scene.ID{Kind: scene.RearTire, Side: scene.Left}) {
		t.Errorf("told that under the pointer is %+v", last)
	}
	// Either tire can be dragged; what is written meanwhile is the view's own.
	h.press(h.tire(track / 2))
	h.moveAlong(h.tire(0.9))
	if words := h.held(); len(words) != 2 || words[0] != "Left tire is dragged" || words[1][:2] != "y " {
		t.Errorf("the corner says %q", words)
	}
	h.release()
	if d := v.track() - 1.8; d > 1e-6 || d < -1e-6 {
		t.Errorf("the track is %v m, want 1.8 m", v.track())
	}
	h.wantUndo("Drag track")
	h.wantOneStep(before)
	h.press(h.tire(-track / 2))
	h.moveAlong(h.tire(-0.7))
	h.key(fyne.KeyEscape)
	h.release()
	if h.doc.Car() != before || len(v.clicks) > 2 {
		t.Errorf("after Escape the track is %v m; clicks %+v", v.track(), v.clicks)
	}
}

func TestAViewpointHasItsKeysAndFits(t *testing.T) {
	h, v := fromBehind(t)
	track, both := v.track(), h.view.Picture().View
	h.typed("W")
	if d := v.track() - track - inch; d > 1e-9 || d < -1e-9 {
		t.Errorf("after W the track is %v m, before %v m", v.track(), track)
	}
	h.press(h.at(0, 0))
	h.release()
	h.key(fyne.KeyEnter)
	if last := h.refusals[len(h.refusals)-1]; len(last) == 0 {
		t.Error("a refused key is not told of")
	}
	h.typed("l")
	left := h.view.Picture().View
	if sameView(both, left) {
		t.Error("both fits show the same")
	}
	// An edit that takes what is kept in sight out of it brings it back.
	if p := v.setTrack(3.6); p != nil {
		t.Fatal(p)
	}
	h.frame()
	if now := h.view.Picture().View; sameView(now, left) || !h.visible(h.tire(v.track()/2)) {
		t.Errorf("the left tire is at %v", h.tire(v.track()/2))
	}
	// The letters of another viewpoint's fits are none here.
	now := h.view.Picture().View
	h.typed("h")
	if !sameView(h.view.Picture().View, now) {
		t.Error("a letter of the side view fits")
	}
	h.typed("f")
	if !sameView(h.view.Picture().View, both) {
		t.Error("F does not bring the first view back")
	}
}

func TestAViewpointHearsOfClicks(t *testing.T) {
	h, v := fromBehind(t)
	track := v.track()
	left, right := h.tire(track/2), h.tire(-track/2)
	h.doubleClick(left, right)
	if v.track() != track {
		t.Error("clicks on two tires are a double click")
	}
	h.doubleClick(left, left)
	if v.track() != 1.5 {
		t.Errorf("after a double click the track is %v m", v.track())
	}
	want := []scene.ID{{Kind: scene.RearTire, Side: scene.Left}, {Kind: scene.RearTire, Side: scene.Right}, {Kind: scene.RearTire, Side: scene.Left}, {Kind: scene.RearTire, Side: scene.Left}}
	if !slices.Equal(v.clicks, want) {
		t.Errorf("clicks %+v, want %+v", v.clicks, want)
	}
	// Beside the tires a drag moves the picture.
	view := h.view.Picture().View
	h.drag(r2.Vec{X: 450, Y: 100}, r2.Vec{X: 500, Y: 120})
	if sameView(h.view.Picture().View, view) || len(v.clicks) != 5 || v.clicks[4] != (scene.ID{}) {
		t.Errorf("the view is %+v, clicks %+v", h.view.Picture().View, v.clicks)
	}
}

// onlooker is a viewpoint without hands.
type onlooker struct{ *rear }

// Hands implements scene.Viewpoint.
func (onlooker) Hands() scene.Hands { return nil }

// A viewpoint that is only looked at can be zoomed and panned.
func TestAViewpointWithoutHands(t *testing.T) {
	h, v := fromBehind(t)
	h.view.Look(onlooker{v})
	h.frame()
	before, view := h.doc.Car(), h.view.Picture().View
	h.hover(h.tire(v.track() / 2))
	if tag := h.tag(); !slices.Equal(tag, []string{"Left tire"}) || h.view.Cursor() != desktop.DefaultCursor {
		t.Errorf("the tag says %q, the cursor is %v", tag, h.view.Cursor())
	}
	h.doubleClick(h.tire(v.track()/2), h.tire(v.track()/2))
	h.typed("w")
	h.key(fyne.KeyUp)
	h.drag(h.tire(v.track()/2), r2.Vec{X: 450, Y: 200})
	if h.doc.Car() != before || sameView(h.view.Picture().View, view) {
		t.Errorf("the car has changed, or the view has not: %+v", h.view.Picture().View)
	}
}

// What a viewpoint has pointed at is let go when another takes its place.
func TestAnotherViewpointPointsAnew(t *testing.T) {
	h := newHand(t, 900, 600)
	h.search()
	at, index := h.dot(2, 1, 2, 1)
	h.hover(at)
	if h.study.Pointed() != index {
		t.Fatalf("%d is pointed at, want %d", h.study.Pointed(), index)
	}
	v := &rear{study: h.study}
	h.view.Look(v)
	if h.study.Pointed() != study.None {
		t.Errorf("from behind %d is pointed at", h.study.Pointed())
	}
}

// Going back to the side view brings its first fit and lets go of what is held.
func TestBackToTheSideView(t *testing.T) {
	h, v := fromBehind(t)
	before := h.doc.Car()
	fresh := newHand(t, 900, 600)
	h.press(h.tire(v.track() / 2))
	h.moveAlong(h.tire(0.9))
	h.view.Look(h.side)
	h.release()
	h.frame()
	if h.doc.Car() != before || !sameView(h.view.Picture().View, fresh.view.Picture().View) {
		t.Errorf("track %v m, view %+v", v.track(), h.view.Picture().View)
	}
	h.drag(h.at(25.5, 11.5), h.at(25.5, 10.75))
	h.wantHoles(3, 3, 1, 1)
}

// What is clicked is told of, and what is lit has an outline in every view.
func TestClicksAreToldAndThingsAreLit(t *testing.T) {
	h := newHand(t, 900, 600)
	var clicked []scene.Kind
	h.view.Clicked = func(id scene.ID) { clicked = append(clicked, id.Kind) }
	tire, sky := h.at(-10, 5), h.at(33, 33)
	h.press(tire)
	h.release()
	h.press(sky)
	h.release()
	h.drag(tire, r2.Add(tire, r2.Vec{X: 20}))
	h.modifier = fyne.KeyModifierShift
	h.press(h.at(-10, 5))
	h.release()
	if want := []scene.Kind{scene.RearTire, scene.Nothing}; !slices.Equal(clicked, want) {
		t.Errorf("clicks on %v are told, want %v", clicked, want)
	}
	lit := func() (kinds []scene.Kind) {
		h.frame()
		for _, d := range h.view.Picture().Drawn {
			if d.Lit {
				kinds = append(kinds, d.ID.Kind)
			}
		}
		return slices.Compact(kinds)
	}
	h.view.Light(scene.ID{Kind: scene.FrontTire})
	if got := lit(); !slices.Equal(got, []scene.Kind{scene.FrontTire}) {
		t.Errorf("lit are %v", got)
	}
	for _, from := range []around.From{around.Above, around.Behind, around.Around} {
		h.view.Look(around.New(h.study, from))
		if got := lit(); !slices.Equal(got, []scene.Kind{scene.FrontTire}) {
			t.Errorf("from %v lit are %v", from, got)
		}
	}
	h.view.Light(scene.ID{})
	if got := lit(); len(got) > 0 {
		t.Errorf("lit are still %v", got)
	}
}

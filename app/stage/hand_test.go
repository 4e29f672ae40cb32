package stage_test

import (
	"image"
	"math"
	"testing"

	"bowline/app/document"
	"bowline/app/runner/runnertest"
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

const inch = 0.0254

// reference reads the car that expected values are taken from: axle centerline
// 16 in above the ground, and in its first setup the pivots
//
//	upper chassis (22.5, 17.0)   lower chassis (25.5, 11.5)
//	upper housing ( 2.5, 22.5)   lower housing ( 2.5, 11.0)   [in]
func reference(t testing.TB) *carfile.File {
	t.Helper()
	const path = "../../testdata/reference.toml"
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// hand works the mouse over a stage in a window, as the toolkit would pass
// its moves on.
type hand struct {
	t        testing.TB
	view     *stage.Stage
	side     *side.Viewpoint
	queue    *runnertest.Queue // of the study's workers
	doc      *document.Document
	study    *study.Study
	window   fyne.Window
	refusals [][]car.Problem // what Refused has heard
	modifier fyne.KeyModifier
	pointer  r2.Vec // where the mouse was last
	dragging bool   // a drag event has been sent since the press
	pressed  bool
	inside   bool // the mouse is over the stage
}

// newHand returns a hand over the side view of the reference car, drawn once.
func newHand(t testing.TB, width, height float32) *hand {
	t.Helper()
	test.NewTempApp(t)
	lib := carfile.Stock()
	h := &hand{t: t, doc: document.New(lib, t.TempDir(), reference(t)), queue: runnertest.NewQueue()}
	h.study = study.New(h.doc, study.Options{Library: lib, Post: h.queue.Post})
	t.Cleanup(h.study.Close)
	h.side = side.New(h.study)
	h.view = stage.New(h.study, h.side, light)
	h.view.Refused = func(p []car.Problem) { h.refusals = append(h.refusals, p) }
	if t, ok := t.(*testing.T); ok {
		// Pictures are large: the toolkit is to forget the view after the test.
		test.TempWidgetRenderer(t, h.view)
	}
	h.window = test.NewTempWindow(t, h.view)
	h.window.SetPadded(false)
	h.window.Resize(fyne.NewSize(width, height))
	h.frame()
	return h
}

func light() *palette.Palette { return &palette.Light }

// frame draws the view at one pixel a unit.
func (h *hand) frame() *image.RGBA {
	h.t.Helper()
	size := h.view.Size()
	return frame(h.t, h.view, int(size.Width), int(size.Height))
}

// frame draws a stage as the toolkit does, at a size in device pixels.
func frame(t testing.TB, v *stage.Stage, width, height int) *image.RGBA {
	t.Helper()
	img, ok := test.WidgetRenderer(v).Objects()[0].(*canvas.Raster).Generator(width, height).(*image.RGBA)
	if !ok {
		t.Fatal("the generator returns another kind of image")
	}
	return img
}

// at returns where a place of the ground's frame [in] is drawn.
func (h *hand) at(x, z float64) r2.Vec {
	return h.screen(r2.Vec{X: x * inch, Y: z * inch})
}

// screen returns where a point of the side view is drawn.
func (h *hand) screen(p r2.Vec) r2.Vec {
	return h.view.Picture().View.Screen(r3.Vec{X: p.X, Z: p.Y})
}

func position(p r2.Vec) fyne.Position { return fyne.NewPos(float32(p.X), float32(p.Y)) }

func (h *hand) event(p r2.Vec, button desktop.MouseButton) *desktop.MouseEvent {
	e := &desktop.MouseEvent{Button: button, Modifier: h.modifier}
	e.Position = position(p)
	return e
}

// hover moves the mouse with no button down and draws what that shows.
func (h *hand) hover(p r2.Vec) {
	if !h.inside {
		h.view.MouseIn(h.event(p, 0))
	} else {
		h.view.MouseMoved(h.event(p, 0))
	}
	h.pointer, h.inside = p, true
	h.frame()
}

// leave moves the mouse away.
func (h *hand) leave() {
	h.view.MouseOut()
	h.inside = false
	h.frame()
}

// press puts the left button down.
func (h *hand) press(p r2.Vec) {
	h.hover(p)
	h.view.MouseDown(h.event(p, desktop.MouseButtonPrimary))
	h.pressed, h.dragging = true, false
}

// move drags the mouse to a place: the event tells the place and how far it is
// from the one before.
func (h *hand) move(p r2.Vec) {
	d := r2.Sub(p, h.pointer)
	h.view.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: position(p)}, Dragged: fyne.NewDelta(float32(d.X), float32(d.Y))})
	h.pointer, h.dragging = p, true
}

// moveAlong drags the mouse to a place in several moves, drawing after each.
func (h *hand) moveAlong(to r2.Vec) {
	from := h.pointer
	for i := 1; i <= 5; i++ {
		h.move(r2.Add(from, r2.Scale(float64(i)/5, r2.Sub(to, from))))
		h.frame()
	}
}

// release lets the left button go: the toolkit tells of the button first, then
// of the end of the drag.
func (h *hand) release() {
	h.view.MouseUp(h.event(h.pointer, desktop.MouseButtonPrimary))
	if h.dragging {
		h.view.DragEnd()
	}
	h.pressed, h.dragging = false, false
	h.frame()
}

// drag is a whole drag.
func (h *hand) drag(from, to r2.Vec) {
	h.press(from)
	h.moveAlong(to)
	h.release()
}

// key presses a key that is no text where the focus is.
func (h *hand) key(name fyne.KeyName) {
	h.t.Helper()
	f := h.window.Canvas().Focused()
	if f == nil {
		h.t.Fatal("nothing has the focus")
	}
	f.TypedKey(&fyne.KeyEvent{Name: name})
	h.frame()
}

// typed types letters into the view.
func (h *hand) typed(text string) {
	for _, r := range text {
		h.view.TypedRune(r)
	}
	h.frame()
}

// holes returns which holes the current setup uses, counted from 1 as in the
// car file.
func (h *hand) holes() [4]int {
	s := h.doc.Car().Setups[h.doc.Setup()].Holes
	return [4]int{s.ChassisUpper + 1, s.ChassisLower + 1, s.HousingUpper + 1, s.HousingLower + 1}
}

func (h *hand) wantHoles(chassisUpper, chassisLower, housingUpper, housingLower int) {
	h.t.Helper()
	if got, want := h.holes(), [4]int{chassisUpper, chassisLower, housingUpper, housingLower}; got != want {
		h.t.Errorf("the setup uses holes %v, want %v", got, want)
	}
}

// wantHole compares a hole's place [in].
func (h *hand) wantHole(row car.Row, i int, x, z float64) {
	h.t.Helper()
	got := (*row.In(h.doc.Car()))[i]
	if u := units.US; u.Exact(units.Length, got.X) != x || u.Exact(units.Length, got.Y) != z {
		h.t.Errorf("%s hole %d is at (%v, %v) in, want (%v, %v) in", row, i+1, got.X/inch, got.Y/inch, x, z)
	}
}

func (h *hand) wantUndo(want string) {
	h.t.Helper()
	if got := h.doc.UndoLabel(); got != want {
		h.t.Errorf("the last undo step is %q, want %q", got, want)
	}
}

// wantOneStep sees to it that one undo brings back a car and that there is no
// second step.
func (h *hand) wantOneStep(before *car.Car) {
	h.t.Helper()
	h.doc.Undo()
	if h.doc.Car() != before || h.doc.UndoLabel() != "" {
		h.t.Errorf("one undo does not bring the car back; the next would take back %q", h.doc.UndoLabel())
	}
}

// tag returns the lines of the tag beside the pointer.
func (h *hand) tag() []string {
	for _, tag := range h.view.Picture().Tags {
		if !tag.Fixed {
			return tag.Lines
		}
	}
	return nil
}

// held returns what is written of a drag in a corner of the picture. Nothing
// stands beside the pointer then.
func (h *hand) held() []string {
	h.t.Helper()
	if tag := h.tag(); tag != nil {
		h.t.Errorf("beside the pointer is %q", tag)
	}
	for _, tag := range h.view.Picture().Tags {
		return tag.Lines
	}
	return nil
}

// near reports whether two places on screen are the same to a hundredth of a
// pixel, which is finer than the toolkit's positions are told.
func near(a, b r2.Vec) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 0.01 }

// sameView reports whether two views show the same part of the world.
func sameView(a, b scene.View) bool {
	return math.Abs(a.Scale-b.Scale) < 1e-9*a.Scale && r2.Norm(r2.Sub(a.Middle, b.Middle)) < 1e-9 && a.Width == b.Width && a.Height == b.Height
}

package form_test

import (
	"math"
	"slices"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/look"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// slope is a line of points that somebody edits: no point may be higher than 90, and
// two of them stay.
type slope struct {
	t      testing.TB
	points []form.Point
	log    []string // of drags
	chart  *form.Curve
	row    *form.Row
	window fyne.Window
}

func newSlope(t testing.TB, points ...form.Point) *slope {
	w := newWorkshop(t)
	s := &slope{t: t, points: points}
	edit := func(next []form.Point) []form.Fault {
		for _, p := range next {
			if p.Y > 90 {
				return form.Wrong("too high")
			}
		}
		if len(next) < 2 {
			return form.Wrong("two points stay")
		}
		s.points = next
		return nil
	}
	s.chart = form.NewCurve(func() form.Plot {
		p := form.Plot{X: "s", Y: "height, m", Points: s.points, Line: s.points}
		if len(s.points) == 0 {
			p.Line = []form.Point{{0, 50}, {10, 50}}
		}
		return p
	}, form.Edits{
		Move: func(i int, to form.Point) []form.Fault {
			next := slices.Clone(s.points)
			next[i] = to
			return edit(next)
		},
		Insert: func(i int, at form.Point) []form.Fault { return edit(slices.Insert(slices.Clone(s.points), i, at)) },
		Delete: func(i int) []form.Fault { return edit(slices.Delete(slices.Clone(s.points), i, i+1)) },
		Begin:  func(int) { s.log = append(s.log, "begin") },
		End:    func() { s.log = append(s.log, "end") },
		Cancel: func() { s.log = append(s.log, "cancel") },
	})
	section := w.form.Section("Slope")
	s.row = section.Row(form.About{Path: "slope", Label: "Slope", Help: "Of the hill."}, s.chart)
	s.row.Wide = true
	s.row.SetTitle("", false)
	s.window = w.window
	s.window.Resize(fyne.NewSize(290, 900))
	w.form.SetOpenSections([]string{"Slope"})
	return s
}

// press presses a button of the mouse on a point of the chart.
func (s *slope) press(at form.Point, b desktop.MouseButton) {
	e := &desktop.MouseEvent{Button: b}
	e.Position = s.chart.Place(at)
	s.chart.MouseDown(e)
}

// drag moves the pointer from one point of the chart to others, without letting go.
func (s *slope) drag(from form.Point, to ...form.Point) {
	s.press(from, desktop.MouseButtonPrimary)
	for _, p := range to {
		e := &fyne.DragEvent{}
		e.Position = s.chart.Place(p)
		s.chart.Dragged(e)
	}
}

func (s *slope) key(name fyne.KeyName) { s.chart.TypedKey(&fyne.KeyEvent{Name: name}) }

// wantPoint compares a point, to about a pixel of the chart.
func (s *slope) wantPoint(i int, x, y float64) {
	s.t.Helper()
	if p := s.points[i]; math.Abs(p.X-x) > 0.06 || math.Abs(p.Y-y) > 1 {
		s.t.Errorf("point %d is at %v, want (%v, %v)", i, p, x, y)
	}
}

func hill() []form.Point { return []form.Point{{0, 20}, {4, 40}, {10, 80}} }

// A drag is one begin and one end; the point follows the pointer from where it was
// taken hold of, and stays between its neighbors.
func TestCurvePointIsDragged(t *testing.T) {
	s := newSlope(t, hill()...)
	s.drag(form.Point{4, 40}, form.Point{5, 45}, form.Point{6, 60})
	s.wantPoint(1, 6, 60)
	s.drag(s.points[1], form.Point{30, 60}) // goes on
	if !slices.Equal(s.log, []string{"begin"}) || s.chart.Selected() != 1 {
		t.Errorf("drag %q, selected %d", s.log, s.chart.Selected())
	}
	if p := s.points[1]; !(p.X > 9.5 && p.X < 10) {
		t.Errorf("dragged beyond its neighbor the point is at %v", p)
	}
	s.chart.DragEnd()
	if !slices.Equal(s.log, []string{"begin", "end"}) {
		t.Errorf("drag %q", s.log)
	}
	// A click is no drag, and one beside all points selects none.
	s.press(form.Point{0, 20}, desktop.MouseButtonPrimary)
	s.chart.MouseUp(&desktop.MouseEvent{})
	s.press(form.Point{5, 5}, desktop.MouseButtonPrimary)
	s.chart.MouseUp(&desktop.MouseEvent{})
	if len(s.log) != 2 || s.chart.Selected() != form.None {
		t.Errorf("drag %q, selected %d", s.log, s.chart.Selected())
	}
}

// The focus brings the chart into sight; the point held stays where it is meanwhile.
func TestCurveScrollsIntoSight(t *testing.T) {
	s := newSlope(t, hill()...)
	s.window.Resize(fyne.NewSize(290, 150))
	before := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.chart)
	s.press(form.Point{4, 40}, desktop.MouseButtonPrimary)
	moved := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.chart).Subtract(before)
	if moved.Y >= 0 {
		t.Fatalf("the chart moved by %v", moved)
	}
	e := &fyne.DragEvent{}
	e.Position = s.chart.Place(form.Point{4, 50}).Subtract(moved)
	s.chart.Dragged(e)
	s.wantPoint(1, 4, 50)
	s.chart.DragEnd()
}

// What is refused leaves the point where it was last right, with the reason below
// the chart, until something is right again.
func TestCurveRefusesInPlace(t *testing.T) {
	s := newSlope(t, hill()...)
	s.drag(form.Point{10, 80}, form.Point{10, 88}, form.Point{10, 92})
	s.wantPoint(2, 10, 88)
	if got := s.row.Why().Text(); got != "too high" || !s.row.Why().Visible() {
		t.Errorf("the reason is %q", got)
	}
	s.drag(s.points[2], form.Point{10, 70})
	if got := s.row.Why().Text(); got != "" {
		t.Errorf("the reason stays: %q", got)
	}
	s.chart.DragEnd()
	// Escape ends a drag where it began.
	s.drag(s.points[1], form.Point{5, 50})
	s.key(fyne.KeyEscape)
	s.chart.DragEnd()
	if !slices.Equal(s.log, []string{"begin", "end", "begin", "cancel"}) {
		t.Errorf("drags %q", s.log)
	}
}

func TestCurvePointsComeAndGo(t *testing.T) {
	s := newSlope(t, hill()...)
	twice := func(p form.Point) {
		s.chart.DoubleTapped(&fyne.PointEvent{Position: s.chart.Place(p)})
	}
	twice(form.Point{7, 10}) // not on the line
	twice(form.Point{4, 40}) // on a point
	if len(s.points) != 3 {
		t.Fatalf("points %v", s.points)
	}
	twice(form.Point{7, 60})
	if len(s.points) != 4 || s.chart.Selected() != 2 {
		t.Fatalf("points %v, selected %d", s.points, s.chart.Selected())
	}
	s.wantPoint(2, 7, 60)
	if on := 40 + (s.points[2].X-4)*40/6; math.Abs(s.points[2].Y-on) > 1e-9 {
		t.Errorf("the new point is at %v, the line at %v", s.points[2], on)
	}
	s.key(fyne.KeyDelete)
	if !slices.Equal(s.points, hill()) || s.chart.Selected() != 1 {
		t.Errorf("points %v, selected %d", s.points, s.chart.Selected())
	}
	s.press(form.Point{0, 20}, desktop.MouseButtonSecondary)
	if !slices.Equal(s.points, hill()[1:]) {
		t.Errorf("points %v", s.points)
	}
	s.press(form.Point{4, 40}, desktop.MouseButtonSecondary)
	if got := s.row.Why().Text(); got != "two points stay" || len(s.points) != 2 {
		t.Errorf("points %v, reason %q", s.points, got)
	}
}

func TestCurveKeys(t *testing.T) {
	s := newSlope(t, hill()...)
	s.window.Canvas().Focus(s.chart)
	s.key(fyne.KeyUp) // Nothing is selected.
	s.key(fyne.KeyPageDown)
	s.key(fyne.KeyPageDown)
	if s.chart.Selected() != 1 || !slices.Equal(s.points, hill()) {
		t.Fatalf("selected %d of %v", s.chart.Selected(), s.points)
	}
	was := s.points[1]
	for key, moved := range map[fyne.KeyName]func(form.Point) bool{
		fyne.KeyUp:    func(p form.Point) bool { return p.Y > was.Y && p.X == was.X },
		fyne.KeyDown:  func(p form.Point) bool { return p.Y < was.Y && p.X == was.X },
		fyne.KeyLeft:  func(p form.Point) bool { return p.Y == was.Y && p.X < was.X },
		fyne.KeyRight: func(p form.Point) bool { return p.Y == was.Y && p.X > was.X },
	} {
		s.points[1] = was
		s.chart.Update()
		if s.key(key); !moved(s.points[1]) {
			t.Errorf("%v moves %v to %v", key, was, s.points[1])
		}
	}
	s.points[1] = was
	s.chart.Update()
	s.key(fyne.KeyInsert)
	if len(s.points) != 4 || s.chart.Selected() != 2 {
		t.Errorf("points %v, selected %d", s.points, s.chart.Selected())
	}
	s.key(fyne.KeyBackspace)
	for key, want := range map[fyne.KeyName]int{fyne.KeyHome: 0, fyne.KeyEnd: 2, fyne.KeyEscape: form.None} {
		if s.key(key); s.chart.Selected() != want {
			t.Errorf("%v selects %d", key, s.chart.Selected())
		}
	}
}

// A line without points of its own is drawn, and nothing can be done to it.
func TestCurveThatIsFixed(t *testing.T) {
	s := newSlope(t)
	s.drag(form.Point{5, 50}, form.Point{5, 60})
	s.chart.DragEnd()
	s.chart.DoubleTapped(&fyne.PointEvent{Position: s.chart.Place(form.Point{5, 50})})
	for _, key := range []fyne.KeyName{fyne.KeyUp, fyne.KeyDelete, fyne.KeyInsert, fyne.KeyPageDown} {
		s.key(key)
	}
	if len(s.points) != 0 || len(s.log) != 0 {
		t.Errorf("points %v, drags %q", s.points, s.log)
	}
	if n := s.ink(form.Point{5, 50}); n == 0 {
		t.Error("the line is not drawn")
	}
}

// Lines and points are drawn where Place says, in both looks; the selected point is
// filled.
func TestCurveIsDrawn(t *testing.T) {
	for _, mode := range []look.Mode{look.Light, look.Dark} {
		s := newSlope(t, hill()...)
		test.ApplyTheme(t, look.New(mode))
		for _, p := range []form.Point{{2, 30}, {7, 60}, {4, 40}} {
			if s.ink(p) == 0 {
				t.Errorf("%v: nothing is drawn at %v", mode, p)
			}
		}
		if n := s.ink(form.Point{8, 20}); n != 0 {
			t.Errorf("%v: beside the line there are %d pixels of it", mode, n)
		}
		hollow := s.ink(form.Point{4, 40})
		s.press(form.Point{4, 40}, desktop.MouseButtonPrimary)
		s.chart.MouseUp(&desktop.MouseEvent{})
		if full := s.ink(form.Point{4, 40}); full <= hollow {
			t.Errorf("%v: selected the point has %d pixels, before %d", mode, full, hollow)
		}
	}
}

// ink counts the pixels in the line's color around a point.
func (s *slope) ink(p form.Point) int {
	s.t.Helper()
	size := s.chart.Size()
	img := screen.Draw(s.chart, int(size.Width), int(size.Height))
	at := s.chart.Place(p)
	n, accent := 0, look.Current().Accent
	for x := int(at.X) - 3; x <= int(at.X)+3; x++ {
		for y := int(at.Y) - 3; y <= int(at.Y)+3; y++ {
			if img.RGBAAt(x, y) == accent {
				n++
			}
		}
	}
	return n
}

// The line of a changed car is shown, and what was selected or held of a longer one
// is forgotten.
func TestCurveFollows(t *testing.T) {
	s := newSlope(t, hill()...)
	s.drag(form.Point{10, 80}, form.Point{10, 70})
	s.points = hill()[:2]
	s.chart.Update()
	e := &fyne.DragEvent{}
	e.Position = s.chart.Place(form.Point{2, 5})
	s.chart.Dragged(e)
	s.chart.DragEnd()
	if !slices.Equal(s.points, hill()[:2]) || s.chart.Selected() != form.None {
		t.Errorf("points %v, selected %d", s.points, s.chart.Selected())
	}
	if !slices.Equal(s.log, []string{"begin", "end"}) {
		t.Errorf("drags %q", s.log)
	}
}

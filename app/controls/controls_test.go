package controls

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/look"
	"bowline/app/panel"
	"bowline/app/panel/paneltest"
	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
)

// see opens the reference car.
func see(t *testing.T) *paneltest.Desk {
	t.Helper()
	return paneltest.Reference(t, nothing)
}

// nothing is a panel that shows and wants nothing.
func nothing(panel.Host) panel.Panel {
	return paneltest.Part(form.Stacked(), func() {}, 0)
}

// on puts a thing into a window of its own.
func on(t *testing.T, o fyne.CanvasObject) {
	t.Helper()
	test.NewTempWindow(t, o).Resize(fyne.NewSize(900, 600))
}

// over returns the toolbar over a stage, with two views of the car.
func over(d *paneltest.Desk, v *stage.Stage) *Toolbar {
	return NewToolbar(d.Study, v, View{"Side", side.New(d.Study)}, View{"3-D", around.New(d.Study, around.Around)})
}

// The toolbar shows the car from another side; what is drawn is what that view lists.
func TestToolbarChoosesTheView(t *testing.T) {
	d := see(t)
	v := stage.New(d.Study, side.New(d.Study), look.Current)
	b := over(d, v)
	on(t, v)
	sees := func(kind scene.Kind) bool {
		test.WidgetRenderer(v).Refresh()
		software.RenderCanvas(fyne.CurrentApp().Driver().CanvasForObject(v), look.New(look.Light))
		return slices.ContainsFunc(v.Picture().Drawn, func(d scene.Drawn) bool { return d.ID.Kind == kind })
	}
	if b.view.Selected != "Side" || !slices.Equal(b.view.Options, []string{"Side", "3-D"}) || !sees(scene.InstantCenter) {
		t.Errorf("of the views %q %q is chosen", b.view.Options, b.view.Selected)
	}
	b.view.SetSelected("3-D")
	if b.view.Selected != "3-D" || sees(scene.InstantCenter) || !sees(scene.BarForce) {
		t.Error("the view around the car is not shown")
	}
	b.view.SetSelected("Side")
	if !sees(scene.InstantCenter) {
		t.Error("the side view does not come back")
	}
}

func TestToolbarChoosesSetupCaseAndMode(t *testing.T) {
	d := see(t)
	b := over(d, stage.New(d.Study, side.New(d.Study), look.Current))
	setups, load, moving := b.setup, b.load, b.moving
	if !slices.Equal(setups.Options, []string{"baseline", "lower bar up"}) || setups.Selected != "baseline" || load.Selected != "Hit" || moving.Checked {
		t.Errorf("setups %q, %q; case %q; moving %v", setups.Options, setups.Selected, load.Selected, moving.Checked)
	}
	setups.SetSelected("lower bar up")
	load.SetSelected("Hooked")
	moving.SetChecked(true)
	if d.Doc.Setup() != 1 || d.Study.Case() != analysis.Hooked || !d.Study.Moving() {
		t.Errorf("setup %d, case %v, moving %v", d.Doc.Setup(), d.Study.Case(), d.Study.Moving())
	}
	if d.Doc.Modified() {
		t.Error("looking at another setup changed the car")
	}

	// What is changed elsewhere is shown here.
	d.Doc.SelectSetup(0)
	d.Study.SetCase(analysis.Hit)
	d.Study.SetMoving(false)
	d.Doc.Apply("Rename", func(c *car.Car) { c.Setups[1].Name = "loose track" })
	if setups.Selected != "baseline" || load.Selected != "Hit" || moving.Checked || setups.Options[1] != "loose track" {
		t.Errorf("setups %q, %q; case %q; moving %v", setups.Options, setups.Selected, load.Selected, moving.Checked)
	}
}

// What the bars show of the study is no step of its own: they listen and do not
// write it, whatever changes in whatever order.
func TestBarsOnlyShowTheStudy(t *testing.T) {
	d := see(t)
	over(d, stage.New(d.Study, side.New(d.Study), look.Current))
	NewTravelBar(d.Study)
	NewTimeBar(d.Study)
	told := 0
	d.Study.Listen(func(study.Change) { told++ })
	for what, change := range map[string]func(){
		"case": func() { d.Study.SetCase(analysis.Hooked) }, "mode": func() { d.Study.SetMoving(true) }, "launch": func() { d.Study.SetLaunching(true) },
		"travel": func() { d.Study.SetTravel(0.01234567) }, "front": func() { d.Study.SetFront(-0.01234567) },
		"setup": func() { d.Doc.SelectSetup(1) }, "bump": func() { d.Doc.Apply("Bump", func(c *car.Car) { c.Springs.RearBump = paneltest.Inch / 2 }) },
	} {
		told = 0
		change()
		if told != 1 {
			t.Errorf("%s: the study has changed %d times", what, told)
		}
	}
	if d.Study.Front() != -0.01234567 {
		t.Errorf("the front travel is %v", d.Study.Front())
	}
}

func TestSlidersMoveTheCar(t *testing.T) {
	d := see(t)
	b := NewTravelBar(d.Study)
	rear, front := b.rear, b.front
	ends := func(s *slider, low, high float64) bool {
		return math.Abs(s.Min-low*paneltest.Inch) < 1e-9 && math.Abs(s.Max-high*paneltest.Inch) < 1e-9
	}
	if !ends(rear, -4, 3) || !ends(front, -4, 3) {
		t.Errorf("the rear goes from %v to %v m, the front from %v to %v m", rear.Min, rear.Max, front.Min, front.Max)
	}
	rear.SetValue(-2 * paneltest.Inch)
	front.SetValue(paneltest.Inch)
	if math.Abs(d.Study.Travel()+2*paneltest.Inch) > 1e-4 || math.Abs(d.Study.Front()-paneltest.Inch) > 1e-4 {
		t.Errorf("travels %v and %v in", d.Study.Travel()/paneltest.Inch, d.Study.Front()/paneltest.Inch)
	}
	// Near ride height the slider catches it.
	rear.SetValue(0.05 * paneltest.Inch)
	if d.Study.Travel() != 0 {
		t.Errorf("travel %v in", d.Study.Travel()/paneltest.Inch)
	}
	// What is changed elsewhere is shown here.
	d.Study.SetTravel(2 * paneltest.Inch)
	if math.Abs(rear.Value-2*paneltest.Inch) > 1e-4 {
		t.Errorf("the slider stands at %v in", rear.Value/paneltest.Inch)
	}
	d.Doc.Apply("Bump", func(c *car.Car) { c.Springs.RearBump = paneltest.Inch })
	if !ends(rear, -4, 1) || math.Abs(d.Study.Travel()-paneltest.Inch) > 1e-9 {
		t.Errorf("with less bump the rear goes to %v in and stands at %v in", rear.Max/paneltest.Inch, d.Study.Travel()/paneltest.Inch)
	}
	d.Edit()
	test.Tap(paneltest.Button(t, b.Object, "Ride height"))
	if d.Study.Travel() != 0 || d.Study.Front() != 0 {
		t.Errorf("travels %v and %v in", d.Study.Travel()/paneltest.Inch, d.Study.Front()/paneltest.Inch)
	}
}

// Both sliders, their words and the button stand side by side in one row, however
// narrow it is, and each slider has its words above it.
func TestTheTravelBarIsOneRow(t *testing.T) {
	d := see(t)
	b := NewTravelBar(d.Study)
	on(t, b.Object)
	ride := paneltest.Button(t, b.Object, "Ride height")
	for _, width := range []float32{900, 500, b.Object.MinSize().Width} {
		b.Object.Resize(fyne.NewSize(width, b.Object.MinSize().Height))
		end := float32(0)
		for _, o := range []fyne.CanvasObject{b.rear.Slider, b.front.Slider, ride} {
			if o.Position().X < end || o.Size().Width < 80 {
				t.Errorf("%v px: a part is at %v with size %v, the one before ends at %v", width, o.Position(), o.Size(), end)
			}
			end = o.Position().X + o.Size().Width
		}
		if end > width+0.01 {
			t.Errorf("%v px: the row ends at %v", width, end)
		}
		for _, s := range []*slider{b.rear, b.front} {
			if s.said.Position().X != s.Slider.Position().X || s.said.Position().Y >= s.Slider.Position().Y {
				t.Errorf("%v px: %q is at %v, its slider at %v", width, s.said.Text, s.said.Position(), s.Slider.Position())
			}
		}
	}
	d.Study.SetTravel(-2 * paneltest.Inch)
	if text := b.rear.said.Text; !strings.Contains(text, "2.00 in droop") {
		t.Errorf("over the rear slider stands %q", text)
	}
}

// Over a chart of travel the rear slider's knob stands where the chart has that travel, and
// no part of the bar lies on another.
func TestTheTravelBarStandsOnTheAxis(t *testing.T) {
	d := see(t)
	b := NewTravelBar(d.Study)
	on(t, b.Object)
	b.Object.Resize(fyne.NewSize(700, b.Object.MinSize().Height))
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.Object).X
	b.Axis = func() (droop, bump float64, ok bool) { return float64(corner) + 80, float64(corner) + 640, true }
	b.Realign()
	k := d.Doc.Car().Springs
	for _, x := range []float32{80, 200, 430, 640} {
		b.rear.Slider.Tapped(&fyne.PointEvent{Position: fyne.NewPos(x-b.rear.Slider.Position().X, 10)})
		want := -k.RearDroop + float64(x-80)/560*(k.RearDroop+k.RearBump)
		if got := d.Study.Travel(); math.Abs(got-want) > 0.01*paneltest.Inch {
			t.Errorf("%v px along, the rear is at %v in, the chart has %v in there", x, got/paneltest.Inch, want/paneltest.Inch)
		}
	}
	ride := paneltest.Button(t, b.Object, "Ride height")
	if b.front.Slider.Position().X+b.front.Slider.Size().Width > ride.Position().X || b.front.said.Position().X+b.front.said.Size().Width > b.front.Slider.Position().X+0.01 ||
		b.rear.said.Position().X+b.rear.said.Size().Width > b.front.said.Position().X+0.01 || b.rear.Slider.Position().Y < b.front.Slider.Position().Y {
		t.Errorf("front at %v and %v, rear at %v", b.front.said.Position(), b.front.Slider.Position(), b.rear.said.Position())
	}
	if width := b.front.said.Size().Width; width < 110 {
		t.Errorf("the words of the front have %v px", width)
	}
	// Without a chart they are side by side.
	b.Axis = func() (droop, bump float64, ok bool) { return 0, 0, false }
	b.Realign()
	if b.front.Slider.Position().Y != b.rear.Slider.Position().Y {
		t.Error("without a chart the sliders are not side by side")
	}
}

// At any width the parts of the bar lie side by side within it, above the view.
func TestTheBarWraps(t *testing.T) {
	d := paneltest.Demo(t, nothing)
	view := stage.New(d.Study, side.New(d.Study), look.Current)
	b := over(d, view)
	below := NewTravelBar(d.Study).Object
	middle := NewMiddle(b, view, below)
	on(t, middle)
	parts := []fyne.CanvasObject{b.setup, b.load, b.view, b.moving, b.fits}
	for _, searching := range []bool{false, true} {
		d.Study.Want(map[bool]study.Wants{true: study.WantsSearch}[searching])
		rows := 0
		for _, width := range []float32{1200, 700, 600, 555, 500, 420, 350, 296} {
			t.Run(fmt.Sprint(searching, width), func(t *testing.T) {
				middle.Resize(fyne.NewSize(width, 600))
				seenRows := map[float32]bool{}
				for i, o := range parts {
					at, size := o.Position(), o.Size()
					if i == 0 && size.Width == 0 {
						continue // Where the bar is narrow the setup is chosen among the inputs alone.
					}
					seenRows[at.Y] = true
					if at.X < 0 || at.X+size.Width > width+0.01 || size.Height < o.MinSize().Height || i > 0 && size.Width < o.MinSize().Width || at.Y+size.Height > view.Position().Y {
						t.Errorf("part %d is at %v with size %v, the view at %v", i, at, size, view.Position())
					}
					for _, q := range parts[:i] {
						if q.Position().Y == at.Y && q.Position().X+q.Size().Width > at.X {
							t.Errorf("part %d at %v covers another at %v", i, at, q.Position())
						}
					}
				}
				if len(seenRows) < rows {
					t.Errorf("%d rows, wider there are %d", len(seenRows), rows)
				}
				rows = len(seenRows)
				if bottom := view.Position().Y + view.Size().Height; view.Size().Width != width || bottom > below.Position().Y || below.Position().Y+below.MinSize().Height > 600.01 || view.Size().Height < 400 {
					t.Errorf("the view is at %v with size %v", view.Position(), view.Size())
				}
			})
		}
		if rows < 2 {
			t.Errorf("at 296 px there are %d rows", rows)
		}
	}
}

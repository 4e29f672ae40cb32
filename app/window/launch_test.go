package window

import (
	"math"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/panel/paneltest"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// leaving opens the demo car and looks at its launch.
func leaving(t *testing.T) *desk {
	t.Helper()
	d := newDesk(t)
	d.study.SetLaunching(true)
	d.settle()
	d.frame()
	if d.study.Launch() == nil {
		t.Fatal("there is no launch")
	}
	return d
}

// The charts of the launch are drawn while it is looked at.
func TestTheLaunchesChartsAreDrawn(t *testing.T) {
	d := leaving(t)
	if keys := d.panels.current().Charts(); len(keys) != 4 {
		t.Errorf("%q are on show", keys)
	}
	for i, key := range d.panels.current().Charts() {
		if d.exhibit(i); !d.drawn(key) {
			t.Errorf("%s is not drawn", key)
		}
	}
}

func TestAnEditBringsANewLaunch(t *testing.T) {
	d := leaving(t)
	first := d.study.Launch()
	if problems := d.study.Choose(car.ChassisLower, 0); problems != nil {
		t.Fatal(problems)
	}
	d.settle()
	if second := d.study.Launch(); second == first || d.study.LaunchOutdated() || second.Car != d.doc.Car() {
		t.Error("the launch did not follow the edit")
	}
	// The verdict rests on the launch while a travel is looked at too.
	d.study.SetLaunching(false)
	d.edit()
	if last := d.study.Launch(); d.study.LaunchOutdated() || last.Car != d.doc.Car() {
		t.Error("the verdict rests on an old launch")
	}
}

func TestToolbarSwitchesToTheLaunch(t *testing.T) {
	d := newDesk(t)
	bar := find(d, func(*form.Radio) bool { return true })
	bar.SetSelected("Launch")
	d.settle()
	if !d.study.Launching() || d.study.Launch() == nil || d.panels.current().Title() != "Launch" {
		t.Fatal("the launch is not shown")
	}
	d.wantSaid(launchHint)
	bar.SetSelected("Hooked")
	d.settle()
	if d.study.Launching() || d.panels.current().Title() != "Check" {
		t.Error("the launch is still shown")
	}
	d.wantSaid(hint)
}

func TestPointingAtAChartOfTheLaunchMovesTime(t *testing.T) {
	d := leaving(t)
	v := d.charts.View("launch-bars")
	if v.At() != d.study.Time() {
		t.Errorf("the marker stands at %v, time is %v", v.At(), d.study.Time())
	}
	d.study.SetTime(0.25)
	if v.At() != 0.25 {
		t.Errorf("the marker stands at %v", v.At())
	}
}

// Held against another setup, the other one's launch follows the first, on the
// same worker, and is drawn with it.
func TestTheLaunchOfAnotherSetupIsComputedToo(t *testing.T) {
	d := leaving(t)
	v := d.charts.View("launch-bars")
	alone := strings.Join(d.charts.Chart("launch-bars").Readout(0.1, units.US), "\n")
	d.study.Compare(1)
	if !d.study.LaunchOutdated() {
		t.Error("the other launch is there at once")
	}
	d.settle()
	other := d.study.Others()[0]
	if d.study.LaunchOutdated() || other.Launch == nil || other.Launch.Car != d.doc.Car() {
		t.Fatal("there is no launch of the other setup")
	}
	if both := strings.Join(d.charts.Chart("launch-bars").Readout(0.1, units.US), "\n"); both == alone || !strings.Contains(both, " vs ") {
		t.Errorf("with two setups the readout is %q, alone it is %q", both, alone)
	}
	d.frame()
	if v.Frame().X == v.Frame().Y || !strings.Contains(paneltest.Texts(v), " vs ") {
		t.Error("the chart on show is not that of both")
	}
	first, second := d.study.Launch(), other.Launch
	d.edit()
	if other := d.study.Others()[0]; d.study.LaunchOutdated() || d.study.Launch() == first || other.Launch == second {
		t.Error("an edit has not brought two new launches")
	}
	// The same one, taken up again, is computed again.
	d.study.Compare()
	d.study.Compare(1)
	d.settle()
	if d.study.LaunchOutdated() {
		t.Error("taken up again, the other setup has no launch")
	}
}

// The marker of the chart over the launch and that of the time line stand above one
// another, whatever chart is on show and however large the window is.
func TestTheTimeLineStandsOnTheChartsAxis(t *testing.T) {
	d := leaving(t)
	for _, size := range []fyne.Size{fyne.NewSize(firstWidth, firstHeight), fyne.NewSize(1440, 900), fyne.NewSize(leastWindow, 720)} {
		d.window.Resize(size)
		for i, key := range d.panels.current().Charts() {
			d.exhibit(i)
			d.frame()
			start, end, ok := d.clock.Axis()
			if !ok {
				t.Fatalf("%s at %v has no axis", key, size)
			}
			v := d.charts.View(key)
			left := float64(fyne.CurrentApp().Driver().AbsolutePositionForObject(v).X)
			if right := left + float64(v.Size().Width); start < left+20 || end > right || end-start < (right-left)/2 {
				t.Errorf("%s at %v: from %v to %v, the chart stands from %v to %v", key, size, start, end, left, right)
			}
			// A click on the line goes to the time that the chart has there.
			inset, _ := d.window.Canvas().InteractiveArea()
			line := fyne.CurrentApp().Driver().AbsolutePositionForObject(d.clock.Object).AddXY(0, d.clock.Object.Size().Height-3)
			for _, at := range []float64{0.5, 0.9, d.study.LaunchEnd()} {
				x, _ := v.Place(at)
				test.TapCanvas(d.window.Canvas(), inset.AddXY(float32(x), line.Y))
				if got := d.study.Time(); math.Abs(got-at) > 0.001 {
					t.Errorf("%s at %v: the chart has %v s where the time line has %v s", key, size, at, got)
				}
			}
		}
	}
	d.show("Here")
	if _, _, ok := d.clock.Axis(); ok {
		t.Error("without a chart over time there is an axis")
	}
}

// Choosing the launch plays it, once: it is at the start, and chosen again nothing
// happens.
func TestChoosingTheLaunchPlaysIt(t *testing.T) {
	d := newDesk(t)
	d.study.SetTime(0.4)
	bar := find(d, func(*form.Radio) bool { return true })
	bar.SetSelected("Launch")
	if !d.clock.Playing() || d.study.Time() != 0 {
		t.Errorf("playing %v at %v s", d.clock.Playing(), d.study.Time())
	}
	d.settle()
	d.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	d.show("Launch")
	if d.clock.Playing() || d.study.Time() != d.study.LaunchEnd() {
		t.Errorf("chosen again: playing %v at %v s", d.clock.Playing(), d.study.Time())
	}
	bar.SetSelected("Hit")
	if d.show("Launch"); !d.clock.Playing() {
		t.Error("chosen in the menu it does not play")
	}
	if d.show("Check"); d.clock.Playing() {
		t.Error("it plays on while the travel is looked at")
	}
}

// Keys play and step while the stage has the focus or nothing has, and not while
// somebody types or is asked.
func TestKeysPlayTheLaunch(t *testing.T) {
	d := leaving(t)
	c := d.window.Canvas()
	typed := func(name fyne.KeyName) {
		e := &fyne.KeyEvent{Name: name}
		if f := c.Focused(); f != nil {
			f.TypedKey(e)
		} else {
			c.OnTypedKey()(e)
		}
	}
	output := d.study.Launch().Options.Output
	for what, focus := range map[string]func(){"the stage": func() { c.Focus(d.view) }, "nothing": c.Unfocus} {
		focus()
		d.study.SetTime(0)
		typed(fyne.KeyRight)
		if d.study.Time() != output {
			t.Errorf("with the focus on %s, right goes to %v s", what, d.study.Time())
		}
		if typed(fyne.KeySpace); !d.clock.Playing() {
			t.Errorf("with the focus on %s, space does not play", what)
		}
		if typed(fyne.KeySpace); d.clock.Playing() {
			t.Errorf("with the focus on %s, space does not pause", what)
		}
		if typed(fyne.KeyPageDown); d.study.Time() <= output {
			t.Errorf("with the focus on %s, page down stays at %v s", what, d.study.Time())
		}
	}
	if f := c.OnTypedRune(); f != nil {
		before := d.study.Time()
		if f(']'); d.study.Time() <= before {
			t.Error("] stays")
		}
	} else {
		t.Error("letters are not heard")
	}
	before := d.study.Time()
	for _, o := range screen.Seen(d.inputs) {
		if e, ok := o.(interface {
			fyne.Focusable
			form.Textual
		}); ok {
			c.Focus(e)
			break
		}
	}
	if c.Focused() == nil {
		t.Fatal("no field takes the focus")
	}
	typed(fyne.KeySpace)
	typed(fyne.KeyHome)
	if d.study.Time() != before || d.clock.Playing() {
		t.Errorf("typing has moved the time to %v s, playing %v", d.study.Time(), d.clock.Playing())
	}
	c.Unfocus()
	d.showKeys()
	if typed(fyne.KeySpace); d.clock.Playing() {
		t.Error("it plays below a dialog")
	}
	c.Overlays().Top().Hide()
	// While a travel is looked at the arrows are the stage's.
	d.study.SetLaunching(false)
	c.Focus(d.view)
	hole := d.doc.Car().Chassis.Lower
	if typed(fyne.KeyRight); hole[1] == d.doc.Car().Chassis.Lower[1] && hole[2] == d.doc.Car().Chassis.Lower[2] {
		t.Error("with a travel the arrows move no hole")
	}
}

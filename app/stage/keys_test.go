package stage_test

import (
	"slices"
	"testing"

	"bowline/app/scene"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// click gives the view the focus.
func (h *hand) click() {
	h.press(h.at(33, 33))
	h.release()
}

func TestArrowsNudgeTheSelectedHole(t *testing.T) {
	h := newHand(t, 900, 600)
	h.click()
	h.typed("1")
	h.key(fyne.KeyRight)
	h.wantHole(car.ChassisUpper, 2, 22.5625, 17)
	h.key(fyne.KeyDown)
	h.wantHole(car.ChassisUpper, 2, 22.5625, 16.9375)
	h.wantUndo("Nudge upper chassis hole 3")
	h.typed("4")
	h.key(fyne.KeyUp)
	h.key(fyne.KeyLeft)
	h.key(fyne.KeyLeft)
	h.wantHole(car.HousingLower, 0, 2.375, -4.9375)
	h.doc.Undo()
	h.wantHole(car.HousingLower, 0, 2.4375, -4.9375)

	h.doc.SetUnits(units.SI)
	h.typed("2")
	h.key(fyne.KeyUp)
	if got := h.doc.Car().Chassis.Lower[1]; !near(r2.Scale(1e6, got), r2.Scale(1e6, r2.Vec{X: 25.5 * inch, Y: 11.5*inch + 0.001})) {
		t.Errorf("nudged by 1 mm the hole is at %v", got)
	}
}

func TestNumbersSelectPivots(t *testing.T) {
	h := newHand(t, 900, 600)
	for key, row := range map[string]car.Row{"1": car.ChassisUpper, "2": car.ChassisLower, "3": car.HousingUpper, "4": car.HousingLower} {
		if h.typed(key); h.study.Pivot() != row {
			t.Errorf("%s selects the %s pivot", key, h.study.Pivot())
		}
	}
}

func TestLetters(t *testing.T) {
	h := newHand(t, 900, 600)
	for _, want := range []bool{true, false} {
		if h.typed("m"); h.study.Moving() != want {
			t.Errorf("after M, holes move: %v", !want)
		}
	}
	scale := h.view.Picture().View.Scale
	middle := r2.Vec{X: 450, Y: 300}
	place := h.view.Picture().View.World(middle)
	h.typed("+")
	if v := h.view.Picture().View; v.Scale <= scale || r3.Norm(r3.Sub(v.World(middle), place)) > 1e-9 {
		t.Errorf("after + the scale is %v, before %v; the middle went from %v to %v", v.Scale, scale, place, v.World(middle))
	}
	h.typed("-")
	if v := h.view.Picture().View; v.Scale < 0.999*scale || v.Scale > 1.001*scale {
		t.Errorf("after + and − the scale is %v, before %v", v.Scale, scale)
	}
}

// held is an app on a desktop where a modifier key is held down.
type held struct {
	fyne.App
	modifier fyne.KeyModifier
}

func (a held) Driver() fyne.Driver { return heldDriver{a.App.Driver(), a.modifier} }

type heldDriver struct {
	fyne.Driver
	modifier fyne.KeyModifier
}

func (d heldDriver) CreateSplashWindow() fyne.Window       { return d.CreateWindow("") }
func (d heldDriver) CurrentKeyModifiers() fyne.KeyModifier { return d.modifier }

var _ desktop.Driver = heldDriver{}

func TestShiftNudgesTenTimesAsFar(t *testing.T) {
	h := newHand(t, 900, 600)
	h.click()
	app := fyne.CurrentApp()
	fyne.SetCurrentApp(held{app, fyne.KeyModifierShift})
	defer fyne.SetCurrentApp(app)
	h.typed("2")
	h.key(fyne.KeyRight)
	h.key(fyne.KeyDown)
	h.wantHole(car.ChassisLower, 1, 26.125, 10.875)
}

func TestARefusedNudgeIsTold(t *testing.T) {
	h := newHand(t, 900, 600)
	h.click()
	// Ever shorter lower bars reach full droop no longer.
	if p := h.doc.Apply("Short", func(c *car.Car) { c.Chassis.Lower[1].X = 6 * inch }); p != nil {
		t.Fatal(p)
	}
	h.typed("2")
	for range 60 {
		before := h.doc.Car()
		h.key(fyne.KeyLeft)
		if len(h.refusals) > 0 {
			if h.doc.Car() != before {
				t.Error("the car has changed")
			}
			return
		}
	}
	t.Error("bars of any length were taken")
}

func TestAPressGivesTheFocus(t *testing.T) {
	h := newHand(t, 900, 600)
	h.click()
	if h.window.Canvas().Focused() != fyne.Focusable(h.view) {
		t.Error("the view has no focus after a click")
	}
}

// Somebody else may take a key first; the others go to the view as before.
func TestKeysTakenElsewhere(t *testing.T) {
	h := newHand(t, 900, 600)
	h.click()
	var asked []scene.Key
	h.view.Keys = func(key scene.Key, _ bool) bool {
		asked = append(asked, key)
		return key == scene.LeftKey
	}
	h.typed("1")
	h.key(fyne.KeyLeft)
	h.wantHole(car.ChassisUpper, 2, 22.5, 17)
	h.key(fyne.KeyRight)
	h.wantHole(car.ChassisUpper, 2, 22.5625, 17)
	for _, name := range []fyne.KeyName{fyne.KeySpace, fyne.KeyHome, fyne.KeyEnd, fyne.KeyPageUp, fyne.KeyPageDown} {
		h.key(name)
	}
	want := []scene.Key{"1", scene.LeftKey, scene.RightKey, scene.SpaceKey, scene.HomeKey, scene.EndKey, scene.PageUpKey, scene.PageDownKey}
	if !slices.Equal(asked, want) {
		t.Errorf("asked for %q, want %q", asked, want)
	}
}

func TestLetterOShowsTheForces(t *testing.T) {
	h := newHand(t, 900, 600)
	shown := func() bool {
		h.frame()
		for _, d := range h.view.Picture().Drawn {
			if d.ID.Kind == scene.AxleForce {
				return true
			}
		}
		return false
	}
	for _, want := range []bool{false, true, false} {
		if shown() != want || h.study.Forces() != want {
			t.Errorf("the forces on the axle are shown: %v, want %v", !want, want)
		}
		h.typed("o")
	}
}

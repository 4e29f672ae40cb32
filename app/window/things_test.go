package window

import (
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
)

// tap clicks what is seen of a kind in the side view.
func (d *desk) tap(kind scene.Kind) {
	d.t.Helper()
	d.frame()
	p, size := d.view.Picture(), d.view.Size()
	for x := float32(2); x < size.Width; x += 3 {
		for y := float32(2); y < size.Height; y += 3 {
			if p.Pick(r2.Vec{X: float64(x), Y: float64(y)}).Kind == kind {
				e := &desktop.MouseEvent{Button: desktop.MouseButtonPrimary}
				e.Position = fyne.NewPos(x, y)
				d.view.MouseIn(&desktop.MouseEvent{PointEvent: e.PointEvent})
				d.view.MouseDown(e)
				d.view.MouseUp(e)
				d.settle()
				d.frame()
				return
			}
		}
	}
	d.t.Errorf("nothing of kind %v can be clicked", kind)
}

// lit lists the kinds of things in the side view that have an outline.
func (d *desk) lit() []scene.Kind {
	d.frame()
	var kinds []scene.Kind
	for _, i := range d.view.Picture().Drawn {
		if i.Lit && !slices.Contains(kinds, i.ID.Kind) {
			kinds = append(kinds, i.ID.Kind)
		}
	}
	return kinds
}

// A click on a thing shows the field that is about it, and the field lights it up.
func TestAClickShowsTheInputs(t *testing.T) {
	d := newDesk(t)
	for _, c := range []struct {
		kind    scene.Kind
		section string
		path    string
	}{
		{scene.RearTire, "Tires", "tires.rear_radius"},
		{scene.UpperBar, "Upper bars", "upper_bar.od"},
		{scene.LowerBar, "Lower bars", "lower_bar.od"},
		{scene.Spring, "Springs", "springs.rear_rate"},
		{scene.Driveshaft, "Driveline", "driveline.pinion_joint"},
		{scene.WheelieBar, "Wheelie bar", "wheelie_bar.reach"},
		{scene.ChassisBody, "Chassis holes", "chassis_bracket.upper.0"},
		{scene.HousingBody, "Housing holes", "housing_bracket.upper.0"},
		{scene.CG, "Car", "car.cg_height"},
	} {
		before := d.doc.Car()
		d.inputs.SetOpenSections(nil)
		d.tap(c.kind)
		if got := d.inputs.OpenSections(); !slices.Equal(got, []string{c.section}) || d.inputs.Marked() != c.path {
			t.Errorf("kind %v: %q open, %q marked", c.kind, got, d.inputs.Marked())
		}
		lit := []scene.Kind{c.kind}
		if strings.HasSuffix(c.path, ".0") {
			lit = []scene.Kind{scene.Hole}
		}
		if got := d.lit(); !slices.Equal(got, lit) {
			t.Errorf("kind %v: lit are %v", c.kind, got)
		}
		if d.doc.Car() != before || d.window.Canvas().Focused() != fyne.Focusable(d.view) {
			t.Errorf("kind %v: the car has changed, or the stage has lost the keyboard", c.kind)
		}
	}
	d.tap(scene.Ground)
	if d.inputs.Marked() != "" || len(d.lit()) > 0 {
		t.Errorf("after a click on the ground %q is marked, lit are %v", d.inputs.Marked(), d.lit())
	}
}

func TestAClickUnfoldsTheInputs(t *testing.T) {
	d := newDesk(t)
	d.choose("View", "Inputs")
	if !d.split.inputs.Folded() {
		t.Fatal("the inputs are not folded away")
	}
	d.tap(scene.Ground)
	if !d.split.inputs.Folded() {
		t.Error("a click on the ground unfolds the inputs")
	}
	d.tap(scene.LowerBar)
	if d.split.inputs.Folded() || d.inputs.Marked() != "lower_bar.od" {
		t.Errorf("the inputs are folded away, or %q is marked", d.inputs.Marked())
	}
}

// A click on a free hole uses it, and marks nothing.
func TestAClickOnAFreeHoleKeepsItsMeaning(t *testing.T) {
	d := newDesk(t)
	d.tap(scene.Hole)
	if d.doc.UndoLabel() == "" || d.inputs.Marked() != "" {
		t.Errorf("to undo is %q, marked is %q", d.doc.UndoLabel(), d.inputs.Marked())
	}
}

// The field with the focus lights up its thing.
func TestAFieldLightsItsThing(t *testing.T) {
	d := newDesk(t)
	d.inputs.SetOpenSections([]string{"Tires", "Chassis holes", "Check"})
	for path, kind := range map[string]scene.Kind{"tires.front_radius": scene.FrontTire, "chassis_bracket.spread_upper": scene.ChassisBody, "check.target_ic.z": scene.TargetBox} {
		d.window.Canvas().Focus(d.inputs.Row(path).Editors[0].(fyne.Focusable))
		if got := d.lit(); !slices.Equal(got, []scene.Kind{kind}) {
			t.Errorf("%s lights up %v, want %v", path, got, kind)
		}
	}
	d.window.Canvas().Unfocus()
	if got := d.lit(); len(got) > 0 {
		t.Errorf("without the focus %v are lit", got)
	}
	c := d.doc.Car()
	hole := c.Setups[0].Holes.ChassisLower
	if got := thingOf("setup.0.chassis_lower", c, 0); got != (scene.ID{Kind: scene.Pivot, Row: car.ChassisLower, Index: hole}) {
		t.Errorf("the setup's choice of a hole is about %+v", got)
	}
}

// Every field that something belongs to exists.
func TestThingsHaveFields(t *testing.T) {
	d := newDesk(t)
	d.inputs.UpdateAll()
	paths := func(yield func(string) bool) {
		for r := range d.inputs.Rows() {
			if !yield(r.Path) {
				return
			}
		}
	}
	for _, thing := range things {
		if d.inputs.Row(thing.path) == nil {
			t.Errorf("no field %s for kind %v", thing.path, thing.kind)
		}
		for _, begins := range thing.of {
			some := false
			for path := range paths {
				some = some || strings.HasPrefix(path, begins)
			}
			if !some {
				t.Errorf("no field begins with %s", begins)
			}
		}
	}
}

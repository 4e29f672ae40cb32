package inputs_test

import (
	"math"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

func rpm(x float64) float64       { return units.US.ToSI(units.Speed, x) }
func poundFeet(x float64) float64 { return units.US.ToSI(units.Torque, x) }

// tuned is a desk with the drive's inputs open, on a car with a torque curve and a ramp.
func tuned(t *testing.T) *desk {
	d := newDesk(t)
	d.doc.Apply("Tune", func(c *car.Car) {
		c.Launch.Engine.Curve = []car.TorquePoint{
			{Speed: rpm(3000), Torque: poundFeet(600)}, {Speed: rpm(5200), Torque: poundFeet(780)}, {Speed: rpm(7000), Torque: poundFeet(700)},
		}
		c.Launch.Engine.Ramp = []car.RampPoint{{Time: 0, Share: 0.4}, {Time: 1, Share: 1}}
	})
	d.panel.SetOpenSections([]string{inputs.TitleDrive})
	d.window.Resize(fyne.NewSize(290, 1600))
	return d
}

// chart returns the chart of the row at a path.
func (d *desk) chart(path string) *form.Curve {
	d.t.Helper()
	return as[*form.Curve](d.t, d.row(path).Editors[0])
}

// dragOn drags from one point of a chart to another and lets go.
func dragOn(c *form.Curve, from, to form.Point) {
	down := &desktop.MouseEvent{Button: desktop.MouseButtonPrimary}
	down.Position = c.Place(from)
	way := c.Place(to).Subtract(down.Position)
	c.MouseDown(down)
	for _, part := range []float32{0.3, 0.6, 1} {
		e := &fyne.DragEvent{}
		e.Position = down.Position.AddXY(part*way.X, part*way.Y)
		c.Dragged(e)
	}
	c.MouseUp(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary})
	c.DragEnd()
}

// about compares a number to about a pixel of a chart.
func about(t *testing.T, what string, got, want, pixel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= pixel) {
		t.Errorf("%s is %v, want about %v", what, got, want)
	}
}

func TestDragAPointOfTheCurve(t *testing.T) {
	d := tuned(t)
	before := d.doc.Car()
	dragOn(d.chart("drive.curve"), form.Point{X: 7000, Y: 700}, form.Point{X: 6500, Y: 500})
	last := d.doc.Car().Launch.Engine.Curve[2]
	about(t, "speed", units.US.FromSI(units.Speed, last.Speed), 6500, 30)
	about(t, "torque", units.US.FromSI(units.Torque, last.Torque), 500, 10)
	d.wantUndo("Move torque curve point 3")
	if e := d.entry("drive.curve.2", 1); e.Pending() || strings.HasPrefix(e.Text, "700") {
		t.Errorf("the row shows %q", e.Text)
	}
	// All of it is one step.
	d.doc.Undo()
	if got := d.doc.Car().Launch.Engine.Curve[2]; got != before.Launch.Engine.Curve[2] || d.doc.UndoLabel() != "Tune" {
		t.Errorf("after undo the point is at %v, the step before %q", got, d.doc.UndoLabel())
	}
	d.wantText(d.entry("drive.curve.2", 1), "700")
}

// A share is in percent, and in either system of units the chart and the rows say what
// the car has.
func TestDragAPointOfTheRamp(t *testing.T) {
	for _, s := range systems {
		d := tuned(t)
		d.doc.SetUnits(s)
		dragOn(d.chart("drive.ramp"), form.Point{X: 0, Y: 40}, form.Point{X: 0, Y: 60})
		about(t, "share", d.doc.Car().Launch.Engine.Ramp[0].Share, 0.6, 0.02)
		if got := d.row("drive.ramp").Remark(); !strings.HasPrefix(got, units.WholePercent(d.doc.Car().Launch.Engine.Ramp[0].Share)) {
			t.Errorf("the chart says %q", got)
		}
		d.wantUndo("Move power over time point 1")
	}
}

// The torque curve is shown in the units of the moment.
func TestCurveInBothUnits(t *testing.T) {
	d := tuned(t)
	for _, s := range systems {
		d.doc.SetUnits(s)
		if got := d.row("drive.curve").Remark(); !strings.Contains(got, s.Symbol(units.Power)) {
			t.Errorf("the chart says %q", got)
		}
		d.checkShown()
		d.typed(d.entry("drive.curve.1", 1), "900")
		d.press(fyne.KeyReturn)
		want(t, "torque", d.doc.Car().Launch.Engine.Curve[1].Torque, s.ToSI(units.Torque, 900))
		dragOn(d.chart("drive.curve"), form.Point{X: 5200, Y: 900}, form.Point{X: 5200, Y: 800})
		about(t, "torque", s.FromSI(units.Torque, d.doc.Car().Launch.Engine.Curve[1].Torque), 800, 15)
		want(t, "speed", d.doc.Car().Launch.Engine.Curve[1].Speed, rpm(5200))
	}
}

// What the car refuses is refused where it was tried, with words.
func TestCurveRefusals(t *testing.T) {
	d := tuned(t)
	e := d.entry("drive.curve.1", 0)
	d.typed(e, "8000")
	d.press(fyne.KeyReturn)
	if got := why(d.row("drive.curve.1")); !e.Refused() || !strings.Contains(got, "no faster than the point before") {
		t.Errorf("the reason is %q", got)
	}
	d.press(fyne.KeyEscape)
	// A curve has two points or none.
	test.Tap(as[*form.Button](t, d.row("drive.curve.2").End))
	d.wantUndo("Delete torque curve point 3")
	test.Tap(as[*form.Button](t, d.row("drive.curve.1").End))
	if got := why(d.row("drive.curve")) + why(d.row("drive.curve.1")); len(d.doc.Car().Launch.Engine.Curve) != 2 || !strings.Contains(got, "give 2 to 100 points") {
		t.Errorf("%d points, the reason is %q", len(d.doc.Car().Launch.Engine.Curve), got)
	}
	// Torque at the launch there must be: the launch is at the second point.
	dragOn(d.chart("drive.curve"), form.Point{X: 5200, Y: 780}, form.Point{X: 5200, Y: -100})
	if got := why(d.row("drive.curve")); !strings.Contains(got, "no torque at the launch speed") || d.doc.Dragging() {
		t.Errorf("the reason is %q, dragging %v", got, d.doc.Dragging())
	}
	d.checkShown()
}

// A car without a curve shows the torque that stays the same; a curve starts from it and
// changes nothing, and can be taken away again.
func TestAddACurveAndTakeItAway(t *testing.T) {
	d := newDesk(t)
	d.panel.SetOpenSections([]string{inputs.TitleDrive})
	for _, c := range []struct{ path, add, section string }{{"drive.curve", "Add a curve", inputs.TitleDrive}, {"drive.ramp", "Add a ramp", inputs.TitleDrive}} {
		without := d.doc.Car()
		said := d.row(c.path).Remark()
		test.Tap(d.button(c.section, c.add))
		d.wantUndo(c.add)
		if d.panel.Row(c.path+".1") == nil {
			t.Fatalf("%s: there are no rows of points", c.path)
		}
		with := d.doc.Car()
		p, at := with.PeakPower()
		q, then := without.PeakPower()
		about(t, "peak power", p, q, 1e-9*q)
		about(t, "its speed", at, then, 1e-9*then)
		for speed := 100.0; speed < with.RevLimit(); speed += 50 {
			about(t, "torque", with.EngineTorque(speed), without.EngineTorque(speed), 1e-9*without.Drive.Torque)
		}
		if full, ok := with.Launch.Engine.FullAt(); !ok || full != 0 {
			t.Errorf("%s: the whole torque at %v s, %v", c.path, full, ok)
		}
		d.checkLayoutOf(c.path)
		n := len(with.Launch.Engine.Curve) + len(with.Launch.Engine.Ramp)
		test.Tap(d.button(c.section, "Add point"))
		now := d.doc.Car().Launch.Engine
		if len(now.Curve)+len(now.Ramp) != n+1 {
			t.Errorf("%s: %d points, there were %d", c.path, len(now.Curve)+len(now.Ramp), n)
		}
		test.Tap(d.button(c.section, "Take it away"))
		if d.panel.Row(c.path+".0") != nil || d.row(c.path).Remark() != said {
			t.Errorf("%s: rows are left, or the chart says %q", c.path, d.row(c.path).Remark())
		}
		if got := d.doc.Car().Launch.Engine; got.Curve != nil || got.Ramp != nil {
			t.Errorf("%s: left are %v, %v", c.path, got.Curve, got.Ramp)
		}
	}
}

// checkLayoutOf checks that the parts of a row and of those of its points do not lie on
// each other.
func (d *desk) checkLayoutOf(path string) {
	d.t.Helper()
	at := d.boxes()
	for r := range d.panel.Rows() {
		if _, seen := at[r]; seen && strings.HasPrefix(r.Path, path) {
			d.checkRow(r, at)
		}
	}
}

// A double click on the line adds a point, Delete and the right button take it away.
func TestPointsOfTheCurveComeAndGo(t *testing.T) {
	d := tuned(t)
	c := d.chart("drive.curve")
	c.DoubleTapped(&fyne.PointEvent{Position: c.Place(form.Point{X: 6100, Y: 740})})
	d.wantUndo("Add torque curve point")
	if got := len(d.doc.Car().Launch.Engine.Curve); got != 4 || d.panel.Row("drive.curve.3") == nil {
		t.Fatalf("%d points", got)
	}
	d.window.Canvas().Focus(c)
	d.press(fyne.KeyDelete)
	d.wantUndo("Delete torque curve point 3")
	if got := len(d.doc.Car().Launch.Engine.Curve); got != 3 || d.panel.Row("drive.curve.3") != nil {
		t.Errorf("%d points", got)
	}
	d.window.Canvas().Focus(c)
	d.press(fyne.KeyHome)
	d.press(fyne.KeyUp)
	d.wantUndo("Move torque curve point 1")
	if !d.says(d.row("drive.curve").Remark()) {
		t.Error("what follows from the curve is not written")
	}
}

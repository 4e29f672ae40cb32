package window

import (
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Nothing in the window changes the study while that tells of a change, which
// would panic: whatever page is on show, wherever the pointer rests and whatever
// is typed and not taken yet.
func TestNothingChangesTheStudyWhileItTells(t *testing.T) {
	changes := []func(*desk){
		func(d *desk) { d.edit() },
		func(d *desk) { d.doc.Undo() },
		func(d *desk) { d.doc.SetUnits(units.SI) },
		func(d *desk) { d.doc.SelectSetup(1) },
		func(d *desk) { d.study.Compare(0, 1) },
		func(d *desk) { d.study.SetLaunching(true) },
		func(d *desk) { d.study.SetTime(0.2) },
		func(d *desk) { d.study.SetLaunching(false) },
		func(d *desk) { d.study.SetCase(analysis.Hooked) },
		func(d *desk) { d.study.SetMoving(true) },
		func(d *desk) { d.study.Select(car.HousingUpper) },
		func(d *desk) { d.study.SetTravel(-0.02) },
		func(d *desk) { d.study.SetFront(0.01) },
		func(d *desk) { d.study.SetWishes(holes.Wishes{Order: holes.FewestTurns, OneBar: true}) },
		func(d *desk) { d.study.Pick(20) },
		func(d *desk) { d.study.Point(11) },
		func(d *desk) { d.study.StopSearch() },
		func(d *desk) { d.edit() },
		func(d *desk) { d.study.ResumeSearch() },
		func(d *desk) { d.doc.RenameSetup(0, "another") },
		func(d *desk) { d.doc.MoveSetup(0, 1) },
		func(d *desk) { d.doc.CopySetup(1) },
		func(d *desk) { d.doc.DeleteSetup(0) },
		func(d *desk) {
			p := d.doc.Apply("Fewer holes", func(c *car.Car) { c.Chassis.Lower = c.Chassis.Lower[:len(c.Chassis.Lower)-1] })
			if p != nil {
				d.t.Fatal(p)
			}
		},
		func(d *desk) { d.study.SetConditions(nil) },
		func(d *desk) { d.open(carFile(d.t)) },
		func(d *desk) { d.doc.SetUnits(units.US) },
	}
	heard := study.Change(0)
	for _, title := range newDesk(t).titles() {
		d, _ := openDesk(t) // has few combinations to launch
		d.study.Listen(func(c study.Change) { heard |= c })
		d.show(title)
		for _, o := range screen.Seen(d.window.Content()) {
			if b, ok := o.(*widget.Button); ok && b.Icon != nil && b.Icon.Name() == theme.Icon(theme.IconNameMenuExpand).Name() {
				test.Tap(b) // a fold
			}
		}
		for _, change := range changes {
			for _, o := range screen.Seen(d.window.Content()) {
				switch o := o.(type) {
				case desktop.Hoverable:
					middle := fyne.NewPos(o.(fyne.CanvasObject).Size().Width/2, o.(fyne.CanvasObject).Size().Height/2)
					o.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: middle}})
				case interface {
					form.Textual
					SetText(string)
				}:
					if form.UndoesText(o) != nil {
						o.SetText(">17")
					}
				}
			}
			d.frame()
			change(d)
			d.settle()
		}
	}
	for c := study.Change(1); c <= study.Wanted; c <<= 1 {
		if known := c <= study.Loaded || c >= study.Analysis; known && c != study.LaunchFailed && !heard.Has(c) {
			t.Errorf("nobody heard of %b", c)
		}
	}
}

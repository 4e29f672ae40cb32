package inputs_test

import (
	"math"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/app/internal/screen"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestTubeSetsODAndWall(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	tube := d.labeled(inputs.TitleUpperBars, "Tube")
	shown := func(want string) {
		t.Helper()
		if got := as[*form.Select](t, tube.Editors[0]).Selected; got != want {
			t.Errorf("the tube is %q, want %q", got, want)
		}
	}
	shown("1 1/4 x 0.095")
	d.pick(tube, "1 1/2 x 0.120")
	want(t, "OD", d.doc.Car().UpperBar.OD, 1.5*inch)
	want(t, "wall", d.doc.Car().UpperBar.Wall, 0.12*inch)
	want(t, "OD of the lower bars", d.doc.Car().LowerBar.OD, 1.25*inch)
	d.wantUndo("Set upper bars: tube")
	d.wantText(d.entry("upper_bar.wall", 0), "0.12")

	d.set("upper_bar.wall", "0.1")
	d.wantUndo("Set upper bars: wall")
	shown("Other size")
	d.set("upper_bar.wall", "2.413 mm") // 0.095 in
	d.set("upper_bar.od", "1 1/4")
	shown("1 1/4 x 0.095")
}

func TestBarTexts(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.pick(d.row("lower_bar.material"), "1020 DOM")
	d.set("lower_bar.rod_end", "5/8-18")
	d.set("lower_bar.adapter", "5/8-18 in 1 1/4 x 0.095")
	if got, want := d.doc.Car().LowerBar, (car.Bar{OD: 1.25 * inch, Wall: 0.095 * inch, Material: "1020 DOM", RodEnd: "5/8-18", Adapter: "5/8-18 in 1 1/4 x 0.095"}); got != want {
		t.Errorf("the bar is %+v", got)
	}
	d.wantUndo("Set lower bars: adapter")
	d.set("lower_bar.adapter", "")
	if got := d.doc.Car().LowerBar.Adapter; got != "" {
		t.Errorf("the adapter is %q", got)
	}
}

func TestMounts(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	x, z := d.entry("springs.rear_chassis_mount", 0), d.entry("springs.rear_chassis_mount", 1)
	d.wantText(x, "−2")
	d.wantText(z, "29")
	d.typed(z, "30 1/2")
	d.press(fyne.KeyReturn)
	want(t, "z", d.doc.Car().Springs.RearChassisMount.Y, 30.5*inch)
	d.wantUndo("Set rear chassis mount")
	// The spring would be shorter than its bump travel: the row at fault says so too.
	d.set("springs.rear_bump", "30")
	if why(d.row("springs.rear_chassis_mount")) == "" || why(d.row("springs.rear_bump")) == "" {
		t.Error("a spring that is too short is not refused in both places")
	}
}

// Values worked out beside this test: 780 lb-ft × 1.7 × 1.8 × 4.1 × 0.9 and
// 780 lb-ft × 5200 rpm / 5252.113.
func TestDriveReadouts(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	for label, text := range map[string]string{"Axle torque": "8807", "Engine power": "772"} {
		if got := as[*form.Readout](t, d.labeled(inputs.TitleDrive, label).Editors[0]).Text(); got != text {
			t.Errorf("%s is %s, want %s", label, got, text)
		}
	}
	d.set("drive.torque", "390")
	if got := as[*form.Readout](t, d.labeled(inputs.TitleDrive, "Axle torque").Editors[0]).Text(); got != "4404" {
		t.Errorf("at half the torque it is %s", got)
	}
	if r := d.labeled(inputs.TitleDrive, "Engine power"); !screen.Writes(r, "hp") {
		t.Error("power is not in hp")
	}
}

func TestDrivelineIsOptional(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	angle := d.row("driveline.pinion_angle")
	if angle.Visible() {
		t.Error("the numbers of a driveshaft that is not given are shown")
	}
	box := as[*form.Check](t, d.labeled(inputs.TitleDriveline, "").Editors[0])
	test.Tap(box)
	if !d.doc.Car().Driveline.Given || !box.Checked || !angle.Visible() {
		t.Fatal("the driveshaft is not given")
	}
	d.checkLayout(290)
	d.wantUndo("Set driveshaft")
	d.set("driveline.pinion_angle", "-2.5")
	want(t, "pinion angle", d.doc.Car().Driveline.PinionAngle, -2.5*math.Pi/180)
	d.set("driveline.pinion_angle", "50")
	if got := why(angle); got != "50° is out of range; give −45° to 45°, nose-up positive" {
		t.Errorf("the reason is %q", got)
	}
	d.press(fyne.KeyEscape)
	joint := d.entry("driveline.pinion_joint", 0)
	d.typed(joint, "9.5")
	d.press(fyne.KeyReturn)
	want(t, "pinion joint", d.doc.Car().Driveline.PinionJoint.X, 9.5*inch)

	// What was given comes back with the check mark; what was refused does not.
	d.set("driveline.pinion_angle", "steep")
	test.Tap(box)
	if d.doc.Car().Driveline.Given || angle.Visible() {
		t.Error("the driveshaft is still given")
	}
	if !d.panel.CommitPending() {
		t.Error("a refused angle that nobody can see keeps the car from being saved")
	}
	test.Tap(box)
	want(t, "pinion joint", d.doc.Car().Driveline.PinionJoint.X, 9.5*inch)
	for range 5 {
		d.doc.Undo()
	}
	if box.Checked || angle.Visible() {
		t.Error("undo leaves the numbers there")
	}
}

func TestColumnCurve(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	r := d.row("check.column")
	d.pick(r, column.PerryCurve.Title())
	if got := d.doc.Car().Check.Column; got != "perry" {
		t.Errorf("the curve is %q", got)
	}
	d.wantUndo("Set column curve")
	if text := column.PerryCurve.Describe(); !d.says(text) {
		t.Errorf("its description %q is not there", text)
	}
	// This library's 4130 has no handbook formula.
	d.pick(r, column.HandbookCurve.Title())
	if why(r) == "" || d.doc.Car().Check.Column != "perry" || as[*form.Select](t, r.Editors[0]).Selected != column.PerryCurve.Title() {
		t.Error("a curve without a formula is taken")
	}
}

func TestTargets(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	least, greatest := d.entry("check.target_anti_squat", 0), d.entry("check.target_anti_squat", 1)
	d.wantText(least, "100")
	d.wantText(greatest, "160")
	d.typed(greatest, "180")
	d.press(fyne.KeyReturn)
	want(t, "greatest", d.doc.Car().Check.TargetAntiSquat[1], 1.8)
	d.wantUndo("Set target anti-squat")
	d.typed(least, "200")
	d.press(fyne.KeyReturn)
	if why(d.row("check.target_anti_squat")) == "" || !least.Refused() || greatest.Refused() {
		t.Error("a range that ends before it begins is not refused at its beginning")
	}
	d.press(fyne.KeyEscape)
	d.doc.SetUnits(units.SI)
	d.wantText(d.entry("check.target_ic.x", 0), "1016")
	if !screen.Writes(d.row("check.target_ic.x"), "mm") {
		t.Error("its unit is not mm")
	}
}

func TestCarName(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.set("car.name", "Saltgrass No. 8")
	if got := d.doc.Car().Body.Name; got != "Saltgrass No. 8" {
		t.Errorf("the car is %q", got)
	}
	d.wantUndo("Rename car")
	d.set("car.name", " ")
	if got := why(d.row("car.name")); got != "the name is empty; give the car a name" {
		t.Errorf("the reason is %q", got)
	}
}

package inputs_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"bowline/app/document"
	"bowline/app/inputs"
	"bowline/app/internal/screen"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

var _ inputs.Document = (*document.Document)(nil)

func TestEnterTakesAValue(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("car.wheelbase", "110 1/4")
	want(t, "wheelbase", d.doc.Car().Body.Wheelbase, 110.25*inch)
	d.wantUndo("Set wheelbase")
	d.wantText(e, "110.25")
	if d.window.Canvas().Focused() != e {
		t.Error("Enter takes the focus away")
	}
	d.doc.Undo()
	want(t, "wheelbase after undo", d.doc.Car().Body.Wheelbase, 105*inch)
	d.wantText(e, "105")
	d.wantUndo("")
}

func TestPassingThroughChangesNothing(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	c := saltgrass()
	c.Body.CGHeight = 1.0 / 3 // not a short number in any system
	file, err := carfile.New("odd.toml", c, units.US, library())
	if err != nil {
		t.Fatal(err)
	}
	data, err := file.Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range systems {
		if err := d.doc.OpenBytes("odd.toml", data); err != nil {
			t.Fatal(err)
		}
		d.doc.SetUnits(s)
		revision := d.doc.Revision()
		for range 150 {
			test.FocusNext(d.window.Canvas())
		}
		if d.doc.Revision() != revision || d.doc.UndoLabel() != "" || d.doc.Car().Body.CGHeight != 1.0/3 {
			t.Errorf("in %v units passing through made the step %q", s, d.doc.UndoLabel())
		}
	}
}

func TestSameValueIsNoStep(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("car.wheelbase", "8.75 ft")
	d.wantUndo("")
	d.wantText(e, "105")
}

func TestOptionalValueLeftEmpty(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.set("check.factor", "3")
	e := d.set("check.factor", "")
	want(t, "factor", d.doc.Car().Check.Factor, 2)
	d.wantDefault(e, "2")
	d.set("car.wheelbase", "")
	if got := why(d.row("car.wheelbase")); !strings.HasPrefix(got, "nothing is typed;") {
		t.Errorf("an empty wheelbase: %q", got)
	}
}

// A number that a rule gives is blank until it is typed.
func TestByRule(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	for path, in := range map[string]func(*car.Launch) *float64{
		"car.pitch_inertia":         func(l *car.Launch) *float64 { return &l.Inertia.Pitch },
		"car.yaw_inertia":           func(l *car.Launch) *float64 { return &l.Inertia.Yaw },
		"car.roll_inertia":          func(l *car.Launch) *float64 { return &l.Inertia.Roll },
		"car.axle_roll_inertia":     func(l *car.Launch) *float64 { return &l.Inertia.AxleRoll },
		"car.housing_pitch_inertia": func(l *car.Launch) *float64 { return &l.Inertia.HousingPitch },
		"drive.rev_limit":           func(l *car.Launch) *float64 { return &l.Engine.RevLimit },
	} {
		e := d.entry(path, 0)
		d.wantText(e, "")
		d.window.Canvas().Focus(e)
		help := d.help().Text()
		if e.PlaceHolder != "by rule" || !strings.HasSuffix(help, "Left empty: by rule.") {
			t.Errorf("%s says %q and %q", path, e.PlaceHolder, help)
		}
		d.window.Canvas().Focus(e)
		d.press(fyne.KeyUp)
		d.wantText(e, "")
		d.set(path, "7000")
		if *in(&d.doc.Car().Launch) <= 0 {
			t.Errorf("%s is not taken: %s", path, why(d.row(path)))
		}
		d.wantText(e, "7000")
		for _, none := range []string{"", "0"} {
			d.set(path, "7000")
			d.set(path, none)
			if got := *in(&d.doc.Car().Launch); got != 0 {
				t.Errorf("%s left blank is %v", path, got)
			}
			d.wantText(e, "")
		}
	}
	d.wantDefault(d.entry("springs.front_anti_roll", 0), "0")
}

// A default stands faintly in an empty entry until somebody types a value, which may be
// the default itself, and again when that is emptied.
func TestADefaultIsNotSaidUntilItIsTyped(t *testing.T) {
	const path = "tires.rear_rate"
	d := newDesk(t)
	d.openAll()
	e := d.entry(path, 0)
	said := func(want bool) {
		t.Helper()
		if got := d.doc.Car().Says(path); got != want {
			t.Errorf("the car says it: %v, want %v", got, want)
		}
	}
	said(false)
	d.wantDefault(e, "1200")
	d.doc.SetUnits(units.SI)
	d.wantDefault(e, "210.152")
	d.doc.SetUnits(units.US)
	d.set(path, "1200")
	said(true)
	d.wantText(e, "1200")
	d.wantUndo("Set rear tire rate, each")
	d.doc.Undo()
	said(false)
	d.wantDefault(e, "1200")
	d.set(path, "1300")
	said(true)
	d.set(path, "")
	said(false)
	d.wantDefault(e, "1200")
	// What has been chosen is said, the default too.
	for _, direction := range []string{car.Counterclockwise, car.Clockwise} {
		d.pick(d.row("drive.direction"), direction)
		if !d.doc.Car().Says("drive.direction") {
			t.Errorf("%q is chosen but not said", direction)
		}
	}
}

func TestStepKeys(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.entry("chassis_bracket.upper.2", 0)
	d.window.Canvas().Focus(e)
	d.press(fyne.KeyUp)
	want(t, "x", d.doc.Car().Chassis.Upper[2].X, 22.5625*inch)
	d.wantText(e, "22.5625")
	d.press(fyne.KeyPageDown)
	want(t, "x", d.doc.Car().Chassis.Upper[2].X, 21.9375*inch)
	d.wantUndo("Move upper chassis hole 3")
	// A step that leaves the range is refused as if it had been typed.
	d.set("drive.efficiency", "1")
	d.press(fyne.KeyUp)
	if got := why(d.row("drive.efficiency")); got != "1.1 is out of range; give 0.1 to 1" {
		t.Errorf("a step too far: %q", got)
	}
}

func TestFollowsTheDocument(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	typing, resting := d.entry("car.wheelbase", 0), d.entry("car.weight", 0)
	d.typed(typing, "110")
	d.doc.Apply("Set weight", func(c *car.Car) { c.Body.Mass = 2700 * pound })
	d.wantText(resting, "2700")
	d.wantText(typing, "110")
	d.doc.SetUnits(units.SI)
	d.wantText(resting, "1224.7")
	if !screen.Writes(d.row("car.weight"), "kg") {
		t.Error("the unit is not kg")
	}
	d.press(fyne.KeyEscape)
	d.wantText(typing, "2667")
	d.doc.Undo()
	d.doc.SetUnits(units.US)
	d.wantText(resting, "2650")
}

func TestAnotherCar(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	e := d.set("car.wheelbase", "1")
	d.set("chassis_bracket.upper.2", "gone")
	d.panel.SetOpenSections([]string{inputs.TitleCar})
	c := saltgrass()
	c.Body.Name, c.Body.Wheelbase = "Saltgrass No. 9", 120*inch
	c.Chassis.Upper = c.Chassis.Upper[:2]
	c.Setups = c.Setups[1:]
	file, err := carfile.New("nine.toml", c, units.SI, library())
	if err != nil {
		t.Fatal(err)
	}
	data, err := file.Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.doc.OpenBytes("nine.toml", data); err != nil {
		t.Fatal(err)
	}
	d.wantText(e, "3048")
	if e.Refused() || why(d.row("car.wheelbase")) != "" {
		t.Error("what was typed for the last car is refused for this one")
	}
	d.wantText(d.entry("car.name", 0), "Saltgrass No. 9")
	if d.panel.Row("chassis_bracket.upper.2") != nil {
		t.Error("the last car's third hole is still there")
	}
}

func TestEveryFieldHasARow(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	paths := map[string]int{}
	for r := range d.panel.Rows() {
		paths[r.Path]++
	}
	for _, s := range car.Sections {
		for _, f := range s.Fields {
			if paths[f.Path] != 1 {
				t.Errorf("%s has %d rows", f.Path, paths[f.Path])
			}
			entry := d.entry(f.Path, 0)
			got := entry.Text
			if !d.doc.Car().Says(f.Path) && !f.Rule && f.Path != "tires.rear_spin_inertia" {
				if got != "" {
					t.Errorf("%s shows %q, which nobody has typed", f.Path, got)
				}
				got = entry.PlaceHolder
			}
			x, err := strconv.ParseFloat(got, 64)
			want := units.US.FromSI(f.Quantity, *f.In(d.doc.Car()))
			if f.Rule && got != "" || !f.Rule && (err != nil || math.Abs(x-want) > 5e-6*math.Abs(want)) {
				t.Errorf("%s shows %q, the car has %v", f.Path, got, want)
			}
		}
	}
	for _, path := range []string{
		"car.name", "upper_bar.material", "upper_bar.rod_end", "upper_bar.adapter", "lower_bar.material", "lower_bar.rod_end", "lower_bar.adapter",
		"springs.rear_axle_mount", "springs.rear_chassis_mount", "driveline.transmission_joint", "driveline.pinion_joint",
		"driveline.transmission_angle", "driveline.pinion_angle", "check.column", "check.target_anti_squat", "check.target_ic.x", "check.target_ic.z",
		"setup.0.name", "setup.0.note", "setup.0.chassis_upper", "setup.0.chassis_lower", "setup.0.housing_upper", "setup.0.housing_lower",
		"chassis_bracket.upper.2", "chassis_bracket.lower.2", "housing_bracket.upper.1", "housing_bracket.lower.1",
	} {
		if paths[path] != 1 {
			t.Errorf("%s has %d rows", path, paths[path])
		}
	}
}

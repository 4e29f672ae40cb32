package inputs_test

import (
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// weigh types a reading as the car stands: row "Front" or "Rear", column 0 on the left.
func (d *desk) weigh(row string, column int, text string) *form.Entry {
	d.t.Helper()
	e := as[*form.Entry](d.t, d.labeled(inputs.TitleCar, row).Editors[column])
	d.typed(e, text)
	d.press(fyne.KeyReturn)
	return e
}

// reads returns what is computed beside the readings.
func (d *desk) reads(label string) string {
	d.t.Helper()
	var texts []string
	for _, e := range d.labeled(inputs.TitleCar, label).Editors {
		texts = append(texts, as[*form.Readout](d.t, e).Text())
	}
	return strings.Join(texts, " ")
}

// By hand, from 700, 640, 655 and 695 lb: 2,690 lb in all, 1,350 of them at the rear
// (50.19 %), 1,355 on the left (50.37 %), 1,295 on the right front and the left rear
// (48.14 %); 60 lb more on the left front 29 in from the middle, 40 lb more on the
// right rear 28 in from it: (60 × 29 − 40 × 28)/2,690 in to the left.
func TestCornerWeights(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	front := d.labeled(inputs.TitleCar, "Front")
	if front.Visible() {
		t.Error("scales that are not given are shown")
	}
	test.Tap(boxOf(d, "Corner weights are given"))
	d.wantUndo("Set corner weights")
	if !front.Visible() {
		t.Fatal("the readings are not shown")
	}
	d.checkLayout(290)
	// They start as the car is: 2,650 lb, half of it at the rear.
	d.wantText(as[*form.Entry](t, front.Editors[0]), "662.5")

	for _, r := range []struct {
		row    string
		column int
		text   string
		total  float64
		undo   string
	}{
		{"Front", 0, "700", 2687.5, "Set left front scale"},
		{"Front", 1, "640", 2665, "Set right front scale"},
		{"Rear", 0, "655", 2657.5, "Set left rear scale"},
		{"Rear", 1, "695", 2690, "Set right rear scale"},
	} {
		d.weigh(r.row, r.column, r.text)
		d.wantUndo(r.undo)
		want(t, "weight", d.doc.Car().Body.Mass, r.total*pound)
	}
	b := d.doc.Car().Body
	want(t, "rear weight", b.RearMass, 1350*pound)
	for i, reading := range []float64{700, 640, 655, 695} {
		at := car.ScalesAt[i]
		want(t, at.Label, *at.Of(&b.Scales), reading*pound)
	}
	d.wantText(d.entry("car.weight", 0), "2690")
	d.wantText(d.entry("car.rear_weight", 0), "1350")
	for label, want := range map[string]string{
		"All four": "2,690.0", "Cross weight": "48.1", "Left weight": "50.4", "Rear weight": "50.2", "CG sideways": "left 0.23",
	} {
		if got := d.reads(label); got != want {
			t.Errorf("%s reads %q, want %q", label, got, want)
		}
	}
	for _, path := range []string{"car.weight", "car.rear_weight"} {
		if got := d.row(path).Remark(); got == "" {
			t.Errorf("nothing says that %s follows", path)
		}
	}
	// In kilograms they are the same.
	d.doc.SetUnits(units.SI)
	d.wantText(as[*form.Entry](t, front.Editors[1]), "290.299")
	if got := d.reads("CG sideways"); got != "left 5.9" {
		t.Errorf("in millimeters the CG is %q", got)
	}
	d.weigh("Front", 1, "292")
	want(t, "right front", d.doc.Car().Body.Scales.RightFront, 292)
	want(t, "weight", d.doc.Car().Body.Mass, 2050*pound+292)
	// One step takes back one reading, and the weights with it.
	d.doc.Undo()
	want(t, "weight", d.doc.Car().Body.Mass, 2690*pound)
}

// A weight that is not what the scales read is refused where it is typed, with both
// sums; so are readings with which a spring would have to pull.
func TestContradictoryWeights(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	test.Tap(boxOf(d, "Corner weights are given"))
	for path, parts := range map[string][]string{
		"car.weight":      {"2600", "2650 lb", "2600 lb", "four scales"},
		"car.rear_weight": {"1300", "1325 lb", "1300 lb", "rear scales"},
	} {
		e := d.set(path, parts[0])
		for _, part := range parts[1:] {
			if got := why(d.row(path)); !strings.Contains(got, part) {
				t.Errorf("at %s stands %q without %q", path, got, part)
			}
		}
		if !e.Refused() {
			t.Errorf("%s is taken", path)
		}
		d.press(fyne.KeyEscape)
	}
	// 662.5 and 80 lb are 583 lb apart; 891.8 lb on springs 36 in apart and a track of
	// 56 in have room for 573.
	rear := d.labeled(inputs.TitleCar, "Rear")
	d.weigh("Rear", 1, "80")
	if got := why(rear); !strings.Contains(got, "583 lb apart") || !strings.Contains(got, "would have to pull") {
		t.Errorf("at the rear scales stands %q", got)
	}
	d.press(fyne.KeyEscape)
	want(t, "right rear", d.doc.Car().Body.Scales.RightRear, 662.5*pound)
	d.weigh("Front", 0, "0")
	if got := why(d.labeled(inputs.TitleCar, "Front")); !strings.Contains(got, "0 lb is out of range") {
		t.Errorf("at the front scales stands %q", got)
	}
}

// Taken away, the readings leave the weights as they were and free to be typed.
func TestTakeCornerWeightsAway(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	box := boxOf(d, "Corner weights are given")
	test.Tap(box)
	d.weigh("Rear", 0, "700")
	test.Tap(box)
	b := d.doc.Car().Body
	if b.Scales != (car.Scales{}) || d.labeled(inputs.TitleCar, "Rear").Visible() || d.row("car.weight").Remark() != "" {
		t.Errorf("there still are readings: %+v", b.Scales)
	}
	want(t, "weight", b.Mass, 2687.5*pound)
	d.set("car.weight", "2700")
	want(t, "weight", d.doc.Car().Body.Mass, 2700*pound)
	d.doc.Undo()
	d.doc.Undo()
	want(t, "left rear after undo", d.doc.Car().Body.Scales.LeftRear, 700*pound)
}

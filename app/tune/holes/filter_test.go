package holes

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// field returns the filter's field of a column.
func (d *desk) field(key string) *filterField {
	d.T.Helper()
	i := slices.IndexFunc(d.p.filter.fields, func(e *filterField) bool { return e.column.Key == key })
	if i < 0 {
		d.T.Fatalf("no field of %s", key)
	}
	return d.p.filter.fields[i]
}

// condition types a condition into the field of a column.
func (d *desk) condition(key, text string) *filterField {
	d.T.Helper()
	e := d.field(key)
	d.Canvas().Focus(e.Entry)
	e.SetText(text)
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	d.Settle()
	return e
}

func TestTheFilterListsWhatMeetsIt(t *testing.T) {
	d := searching(t)
	p := d.p
	n := 0
	for _, c := range holes.Columns {
		if c.Uses&holes.InFilter != 0 {
			n++
		}
	}
	if len(p.filter.fields) != n || p.folds.filter.Title() != "Filter" {
		t.Errorf("%d fields for %d columns under %q", len(p.filter.fields), n, p.folds.filter.Title())
	}
	p.folds.filter.Open(true)
	e := d.condition("anti_squat", "100 to 130")
	want := 0
	for _, c := range d.Study.Table().Combinations {
		if x := math.Round(1000*c.AntiSquat) / 10; c.HasAntiSquat && x >= 100 && x <= 130 {
			want++
		}
	}
	if len(p.list.places) != want || p.list.Len() != want || want == 0 {
		t.Errorf("%d are listed, want %d", len(p.list.places), want)
	}
	if got := p.folds.filter.Title(); got != fmt.Sprintf("Filter: %d of 36 listed", want) {
		t.Errorf("the fold is %q", got)
	}
	// A condition that cannot be read is refused in its place, and the list stays.
	height := p.Words().MinSize().Height
	d.condition("anti_squat", "about 5")
	if got := e.Why().Text(); got != "Anti-squat: ‘about 5’ is no condition; write <5, >100, 100 to 160 or 3." {
		t.Errorf("the reason is %q", got)
	}
	if !e.Why().Visible() || !e.Refused() || p.Words().MinSize().Height <= height || len(p.list.places) != want || e.Text != "about 5" {
		t.Error("the reason is not told, or the list has changed")
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if e.Text != "100 to 130" || e.Why().Visible() || e.Refused() {
		t.Errorf("after Escape the field has %q and says %q", e.Text, e.Why().Text())
	}
	// Another field counts too; leaving a field takes it.
	other := d.field(car.ChassisUpper.SetupKey())
	d.Canvas().Focus(other.Entry)
	other.SetText("1")
	d.Canvas().Unfocus()
	d.Settle()
	for i := range p.list.places {
		if p.list.places[i].Holes().ChassisUpper != 0 {
			t.Errorf("%v is listed", p.list.places[i].Holes())
		}
	}
	test.Tap(p.filter.clear)
	d.Settle()
	if len(p.list.places) != 36 || e.Text != "" || other.Text != "" || p.folds.filter.Title() != "Filter" {
		t.Errorf("cleared, %d are listed and the fields have %q, %q", len(p.list.places), e.Text, other.Text)
	}
	d.condition("hit_lower_push", ">99999")
	if len(p.list.places) != 0 || p.empty() != "No combination meets all conditions of the filter." {
		t.Errorf("%d are listed; the table says %q", len(p.list.places), p.empty())
	}
}

// A condition goes on meaning what was typed when the units change.
func TestConditionsKeepTheirUnits(t *testing.T) {
	d := searching(t)
	p := d.p
	e := d.condition("instant_center_x", "40 to 45")
	listed := len(p.list.places)
	if got := e.label.Text(); got != "IC ahead, in" {
		t.Errorf("the label is %q", got)
	}
	d.Doc.SetUnits(units.SI)
	d.Settle()
	if e.Text != "40 in to 45 in" || e.label.Text() != "IC ahead, mm" || len(p.list.places) != listed || listed == 0 || listed == 36 {
		t.Errorf("in millimeters %q, %q lists %d, before %d", e.label.Text(), e.Text, len(p.list.places), listed)
	}
	d.condition("instant_center_x", "1016 to 1143")
	if len(p.list.places) != listed {
		t.Errorf("1016 to 1143 mm lists %d, 40 to 45 in %d", len(p.list.places), listed)
	}
	d.Doc.SetUnits(units.US)
	d.Settle()
	if e.Text != "1016 mm to 1143 mm" {
		t.Errorf("in inches it is %q", e.Text)
	}
	// What is being typed is meant in the units that it is typed in.
	e.SetText("41 to 44")
	d.Doc.SetUnits(units.SI)
	d.Settle()
	if e.Text != "41 in to 44 in" || len(p.list.places) >= listed {
		t.Errorf("typed in inches, %q lists %d", e.Text, len(p.list.places))
	}
}

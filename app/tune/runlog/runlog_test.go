package runlog

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/panel"
	"bowline/app/panel/paneltest"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// logging shows the run log of the reference car on a day.
func logging(t *testing.T) (*paneltest.Desk, *Log) {
	t.Helper()
	var l *Log
	d := paneltest.Reference(t, func(host panel.Host) panel.Panel {
		l = New(host)
		return paneltest.Part(form.Stacked(l.Said, l.Shown.Tools, l.Shown.Object), l.Refresh, 0)
	})
	l.form.today = func() time.Time { return time.Date(2031, 5, 17, 23, 59, 0, 0, time.FixedZone("", 9*3600)) }
	l.Refresh()
	return d, l
}

// field returns a line of the form by its label.
func (l *Log) field(t *testing.T, label string) *runField {
	t.Helper()
	for _, f := range l.form.fields {
		if f.label == label {
			return f
		}
	}
	t.Fatalf("there is no %q", label)
	return nil
}

// write types texts into lines of the form, in the order of label and text.
func (l *Log) write(t *testing.T, texts ...string) {
	t.Helper()
	for i := 0; i < len(texts); i += 2 {
		l.field(t, texts[i]).SetText(texts[i+1])
	}
}

// wantForm compares the texts of the form.
func (l *Log) wantForm(t *testing.T, want ...string) {
	t.Helper()
	for i, f := range l.form.fields {
		if f.Text != want[i] {
			t.Errorf("%s holds %q, want %q", f.label, f.Text, want[i])
		}
	}
}

// reasons lists why lines are refused.
func (l *Log) reasons() string {
	var list []string
	for _, f := range l.form.fields {
		if f.Why().Text() != "" {
			list = append(list, f.label+": "+f.Why().Text())
		}
	}
	return strings.Join(list, "\n")
}

// marks lists the lines that a red frame lies on.
func (l *Log) marks() string {
	var list []string
	for _, f := range l.form.fields {
		for _, o := range screen.Seen(f.Draft) {
			if frame, ok := o.(*canvas.Rectangle); ok && frame.StrokeColor == theme.Color(theme.ColorNameError) && frame.StrokeWidth > 0 && frame.Size() == f.Size() {
				list = append(list, f.label)
			}
		}
	}
	return strings.Join(list, ", ")
}

func TestLogARun(t *testing.T) {
	d, l := logging(t)
	l.wantForm(t, "2031-05-17", "", "", "", "", "")
	if got := l.form.title.Text(); got != `Log a run with "baseline"` {
		t.Errorf("the form says %q", got)
	}
	l.write(t, "Track", "Saltgrass Flats ", "60 ft", "1.402", "Rear", "separated evenly", "Front", "carried the wheels", "Note", "cool track")
	d.Tap(l.form.button)
	squat := d.Study.Result().Ride.AntiSquat
	want := car.Run{Date: "2031-05-17", Track: "Saltgrass Flats", SixtyFoot: 1.402, Rear: "separated evenly", Front: "carried the wheels", Note: "cool track"}
	if len(d.Doc.Car().Setups[0].Runs) != 1 {
		t.Fatalf("refused: %q, %q", l.reasons(), l.form.problem.Text())
	}
	got := d.Doc.Car().Setups[0].Runs[0]
	if math.Abs(got.AntiSquat-squat) > 0.0005+1e-12 || math.Abs(got.AntiSquat*1000-math.Round(got.AntiSquat*1000)) > 1e-9 {
		t.Errorf("anti-squat %v is noted, the setup has %v", got.AntiSquat, squat)
	}
	want.AntiSquat = got.AntiSquat
	if got != want || d.Doc.UndoLabel() != "Log run" {
		t.Errorf("logged is %+v, want %+v; undo %q", got, want, d.Doc.UndoLabel())
	}
	d.WantSaid(`Run logged with "baseline".`)
	// The next one is probably made on the same day and track.
	l.wantForm(t, "2031-05-17", "Saltgrass Flats", "", "", "", "")
	line := fmt.Sprintf("2031-05-17 | Saltgrass Flats | 1.402 | %.1f | separated evenly | carried the wheels | cool track", 100*squat)
	if l.list.Len() != 1 || paneltest.Cells(l.list, 0, 7) != line {
		t.Errorf("the log has %d runs, the first %q, want %q", l.list.Len(), paneltest.Cells(l.list, 0, 7), line)
	}
	detail := fmt.Sprintf(`2031-05-17, Saltgrass Flats, setup "baseline", 60 ft 1.402 s, Anti-squat %.1f %%. Rear: separated evenly. Front: carried the wheels. Note: cool track.`, 100*squat)
	if l.detail.Text() != detail {
		t.Errorf("of the run it says %q, want %q", l.detail.Text(), detail)
	}
	// What it had then stays, whatever becomes of the setup.
	d.Doc.Apply("Holes", func(c *car.Car) { c.Setups[0].Holes.ChassisLower = 0 })
	d.Settle()
	if got := paneltest.Cells(l.list, 0, 7); got != line {
		t.Errorf("with other holes the log says %q", got)
	}
	d.Doc.Undo()
	d.Undo()
	if l.list.Len() != 0 || l.detail.Text() != "" || !l.edit.Disabled() || !l.remove.Disabled() {
		t.Errorf("after undo the log has %d runs, says %q", l.list.Len(), l.detail.Text())
	}
}

// Why a text is refused stands below it; what is typed stays.
func TestRefusedRuns(t *testing.T) {
	d, l := logging(t)
	l.write(t, "Date", "17 May", "60 ft", "0.1", "Rear", "spun")
	d.Tap(l.form.button)
	want := "Date: \"17 May\" is no day of the calendar; give year, month and day as in 2026-03-14\n" +
		"60 ft: 0.1 s is out of range; give 0.3 s to 30 s, or leave it out"
	if got := l.reasons(); got != want || l.marks() != "Date, 60 ft" {
		t.Errorf("refused with %q, want %q; framed are %q", got, want, l.marks())
	}
	if d.Doc.Modified() || d.Canvas().Focused() != fyne.Focusable(l.field(t, "Date").Draft) {
		t.Errorf("modified %v, focus on %T", d.Doc.Modified(), d.Canvas().Focused())
	}
	l.wantForm(t, "17 May", "", "0.1", "spun", "", "")
	for typed, want := range map[string]string{
		"2031-02-29": `Date: "2031-02-29" is no day of the calendar; give year, month and day as in 2026-03-14`,
		"":           `Date: "" is no day of the calendar; give year, month and day as in 2026-03-14`,
		"2031-05-18": "",
	} {
		l.write(t, "Date", typed, "60 ft", "1.4 s")
		l.field(t, "Date").FocusLost()
		if got := l.reasons(); got != want {
			t.Errorf("date %q is refused with %q, want %q", typed, got, want)
		}
	}
	for typed, want := range map[string]string{
		"fast":   `60 ft: "fast" is not a number; type a number such as 1.35`,
		"0":      "60 ft: 0 s is out of range; give 0.3 s to 30 s, or leave it out",
		"1,402":  `60 ft: "1,402" can be read two ways; type 1402 or 1.402`,
		"1.4 in": `60 ft: "in" is no unit that fits here; type a number such as 1.35`,
		"":       "",
	} {
		l.write(t, "Date", "2031-05-18", "60 ft", typed)
		l.field(t, "60 ft").FocusLost()
		if got := l.reasons(); got != want {
			t.Errorf("time %q is refused with %q, want %q", typed, got, want)
		}
	}
	// A text refused is looked at again with each letter.
	l.write(t, "60 ft", "fast")
	l.field(t, "60 ft").FocusLost()
	if l.write(t, "60 ft", "1"); l.reasons() != "" {
		t.Errorf("corrected, it is refused with %q", l.reasons())
	}
	// Enter logs; all but the date may be left out.
	l.write(t, "60 ft", "")
	l.field(t, "Rear").TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if runs := d.Doc.Car().Setups[0].Runs; len(runs) != 1 || runs[0].Rear != "spun" || runs[0].SixtyFoot != 0 {
		t.Errorf("logged are %+v", runs)
	}
}

// Fields say unit and range before anything is typed.
func TestTheFormSaysWhatIsAllowed(t *testing.T) {
	_, l := logging(t)
	text := paneltest.Texts(l.form.object)
	for _, want := range []string{"year-month-day", "0.3 s to 30 s, or empty"} {
		if !strings.Contains(text, want) {
			t.Errorf("the form says %q, which lacks %q", text, want)
		}
	}
	for i, field := range l.form.fields {
		paneltest.WantRoom(t, "label", field.label, false, 64-2*5)
		if hint := field.PlaceHolder; i == 3 && hint != car.RunTexts[1].Help {
			t.Errorf("%s hints %q", field.label, hint)
		}
		paneltest.WantRoom(t, "hint", field.PlaceHolder, false, paneltest.PanelWidth-64-3-2*5)
	}
}

// A run half typed stays through tabs, edits, undo and other setups, and is
// logged with the setup that is current then.
func TestAHalfTypedRunStays(t *testing.T) {
	d, l := logging(t)
	l.write(t, "60 ft", "1.39", "Note", "half typed")
	d.Hide(true)
	d.Edit()
	d.Doc.SetUnits(units.SI)
	d.Undo()
	d.Hide(false)
	l.wantForm(t, "2031-05-17", "", "1.39", "", "", "half typed")
	d.Doc.SelectSetup(1)
	d.Settle()
	l.wantForm(t, "2031-05-17", "", "1.39", "", "", "half typed")
	if got := l.form.title.Text(); got != `Log a run with "lower bar up"` {
		t.Errorf("the form says %q", got)
	}
	d.Tap(l.form.button)
	if runs := d.Doc.Car().Setups[1].Runs; len(runs) != 1 || runs[0].Note != "half typed" {
		t.Errorf("logged are %+v", runs)
	}
	l.write(t, "Note", "half typed again")
	d.Undo()
	if got := l.field(t, "Note").Text; got != "half typed again" {
		t.Errorf("after undo the note is %q", got)
	}
	d.Reopen()
	l.wantForm(t, "2031-05-17", "", "", "", "", "")
}

// Date and track are those of today and of the last run until someone types
// others.
func TestFirstTextsOfARun(t *testing.T) {
	d, l := logging(t)
	d.Log(0, car.Run{Date: "2031-05-02", Track: "Windmill Lane"}, car.Run{Date: "2031-05-01", Track: "Saltgrass Flats"})
	l.wantForm(t, "2031-05-17", "Windmill Lane", "", "", "", "")
	l.form.today = func() time.Time { return time.Date(2031, 5, 18, 0, 1, 0, 0, time.UTC) }
	l.Refresh()
	l.wantForm(t, "2031-05-18", "Windmill Lane", "", "", "", "")
	// The track logged last counts, even with an older day.
	l.write(t, "Date", "2031-04-30", "Track", "Dry Lake")
	l.form.today = func() time.Time { return time.Date(2031, 5, 19, 0, 1, 0, 0, time.UTC) }
	l.Refresh()
	l.wantForm(t, "2031-04-30", "Dry Lake", "", "", "", "")
	d.Tap(l.form.button)
	l.wantForm(t, "2031-05-19", "Dry Lake", "", "", "", "")
}

// All setups' runs are listed by date, the newest first, with the setup's name;
// a click on a heading lists them by that.
func TestRunsOfAllSetups(t *testing.T) {
	d, l := logging(t)
	d.Log(0, car.Run{Date: "2031-05-01", SixtyFoot: 1.41, Track: "b"}, car.Run{Date: "2031-05-03", Track: "A"})
	d.Log(1, car.Run{Date: "2031-05-02", SixtyFoot: 1.39}, car.Run{Date: "2031-05-03", SixtyFoot: 1.40, Track: "c"})
	order := func(columns int) string {
		var list []string
		for row := range l.list.Len() {
			text := paneltest.Cells(l.list, row, columns)
			list = append(list, text)
		}
		return strings.Join(list, "\n")
	}
	if got, want := order(3), "2031-05-03 | A | —\n2031-05-01 | b | 1.410"; got != want {
		t.Errorf("the setup's runs are %q, want %q", got, want)
	}
	test.Tap(l.all)
	d.Settle()
	byDate := "2031-05-03 | lower bar up | c | 1.400\n2031-05-03 | baseline | A | —\n2031-05-02 | lower bar up |  | 1.390\n2031-05-01 | baseline | b | 1.410"
	if got := order(4); got != byDate {
		t.Errorf("all runs are %q, want %q", got, byDate)
	}
	l.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	chosen, _ := l.list.selected()
	l.list.table.OnSort(3)
	if got, want := order(4), "2031-05-02 | lower bar up |  | 1.390\n2031-05-03 | lower bar up | c | 1.400\n2031-05-01 | baseline | b | 1.410\n2031-05-03 | baseline | A | —"; got != want {
		t.Errorf("by time they are %q, want %q", got, want)
	}
	if r, ok := l.list.selected(); !ok || r != chosen || r.Date != "2031-05-01" {
		t.Errorf("selected is %+v", r)
	}
	l.list.table.OnSort(2)
	if got, want := order(4), "2031-05-03 | baseline | A | —\n2031-05-01 | baseline | b | 1.410\n2031-05-03 | lower bar up | c | 1.400\n2031-05-02 | lower bar up |  | 1.390"; got != want {
		t.Errorf("by track they are %q, want %q", got, want)
	}
	l.list.table.OnSort(1)
	test.Tap(l.all)
	d.Settle()
	if got, want := order(3), "2031-05-03 | A | —\n2031-05-01 | b | 1.410"; got != want {
		t.Errorf("of one setup they are %q, want %q", got, want)
	}
	l.list.table.OnSort(0)
	if got, want := order(1), "2031-05-01\n2031-05-03"; got != want {
		t.Errorf("the other way round they are %q, want %q", got, want)
	}
}

// A setup whose anti-squat has no value, or none that a log may have, is logged
// without.
func TestRunWithoutAntiSquat(t *testing.T) {
	for _, c := range []struct {
		ride analysis.Station
		want float64
	}{
		{analysis.Station{HasAntiSquat: true, AntiSquat: 1.44049}, 1.44},
		{analysis.Station{HasAntiSquat: true, AntiSquat: -0.12351}, -0.124},
		{analysis.Station{HasAntiSquat: true, AntiSquat: 100}, 100},
		{analysis.Station{HasAntiSquat: true, AntiSquat: 100.1}, 0},
		{analysis.Station{HasAntiSquat: true, AntiSquat: -3e5}, 0},
		{analysis.Station{AntiSquat: 1.2}, 0},
	} {
		if got := squatThen(&c.ride); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("of %+v is logged %v, want %v", c.ride.AntiSquat, got, c.want)
		}
	}
}

// The quickest time logged stands against the one computed, both from the rollout.
func TestLoggedTimesStandAgainstTheOneComputed(t *testing.T) {
	var l *Log
	d := paneltest.Demo(t, func(host panel.Host) panel.Panel {
		l = New(host)
		return paneltest.Part(form.Stacked(l.Said, l.Shown.Tools, l.Shown.Object), l.Refresh, study.WantsAllLaunches)
	})
	d.Log(0, car.Run{Date: "2031-05-17", SixtyFoot: 1.5}, car.Run{Date: "2031-05-18", SixtyFoot: 1.2}, car.Run{Date: "2031-05-18"})
	d.Settle()
	if got, want := l.against.Text(), words.LoggedAgainst(1.2, d.Study.Launch(), units.US); got != want || want == "" {
		t.Errorf("it says %q, want %q", got, want)
	}
	d.Edit()
	if l.Refresh(); !strings.Contains(l.against.Text(), words.SixtyFeet(d.Study.Launch(), units.US)) {
		t.Errorf("launched anew it says %q", l.against.Text())
	}
}

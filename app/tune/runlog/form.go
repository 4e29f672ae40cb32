package runlog

import (
	"fmt"
	"math"
	"time"

	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// runForm is where a run is typed: a new one, or one of the log that is edited.
// What is typed stays until it is logged, or until another car is loaded.
type runForm struct {
	study  *study.Study
	on     *panel.Page
	today  func() time.Time
	logged func(setup, run int, said string) // a run is in the log

	fields  []*runField
	title   *readout.Prose
	problem *readout.Prose
	button  *widget.Button
	cancel  *widget.Button
	object  fyne.CanvasObject

	editing *loggedRun // nil while a new run is typed
	draft   []string   // what was typed of a new run when the edit began; nil for none
	lost    bool       // the run that was edited has gone from the log
	track   string     // of the run logged last
}

// newRunForm returns an empty form for a page.
func newRunForm(s *study.Study, on *panel.Page) *runForm {
	f := &runForm{study: s, on: on, today: time.Now, title: panel.Bold(""), problem: panel.Prose(theme.ColorNameError)}
	f.button = widget.NewButton("Log run", func() { f.submit() })
	f.button.Importance = widget.HighImportance
	f.cancel = widget.NewButton("Cancel", f.giveUp)
	box := panel.Group(f.title)
	add := func(field *runField, hint, beside string) {
		field.entry.SetPlaceHolder(hint)
		f.fields = append(f.fields, field)
		var end fyne.CanvasObject
		if beside != "" {
			end = container.New(panel.FixedWidth(190), widget.NewLabel(beside))
		}
		box.Add(container.NewBorder(nil, nil, container.New(panel.FixedWidth(64), widget.NewLabel(field.label)), end, panel.UnderWheel(container.NewStack(field.entry, field.mark), on.Scrolled)))
		box.Add(field.why)
	}
	add(f.dateField(), "", "year-month-day")
	for _, t := range car.RunTexts[:1] {
		add(f.textField(t, f.lastTrack), t.Help, "")
	}
	sixty := car.RunSixtyFoot
	add(f.numberField(sixty), "", sixty.Range(units.US)+", or empty")
	for _, t := range car.RunTexts[1:] {
		add(f.textField(t, nil), t.Help, "")
	}
	box.Add(f.problem)
	box.Add(container.NewHBox(f.button, f.cancel, layout.NewSpacer()))
	f.object = box
	f.fill(nil)
	s.Listen(func(c study.Change) {
		if c.Has(study.Loaded) {
			f.editing, f.draft, f.lost, f.track = nil, nil, false, ""
			f.fill(nil)
		}
	})
	return f
}

// check shows why a text is refused, if it is.
func (f *runForm) check(field *runField) {
	f.refuse(field, field.read(field.text(), new(car.Run)))
}

// refuse marks a line as refused and says why; empty is that it is not.
func (f *runForm) refuse(field *runField, why string) {
	field.mark.Mark(why != "")
	f.tell(field.why, why)
}

// tell shows why something is refused; empty is that it is not.
func (f *runForm) tell(in *readout.Prose, why string) {
	if in.Set(why) {
		f.on.Settle()
	}
}

// fill writes texts into the lines, or without any those of a new run.
func (f *runForm) fill(texts []string) {
	for i, field := range f.fields {
		field.given = ""
		if field.first != nil {
			field.given = field.first()
		}
		text := field.given
		if texts != nil {
			text = texts[i]
		}
		f.refuse(field, "")
		field.entry.SetText(text)
	}
	f.tell(f.problem, "")
	f.refresh()
}

// lastTrack returns where the last run was: that logged last, or the newest one
// of the car.
func (f *runForm) lastTrack() string {
	if f.track != "" {
		return f.track
	}
	track, date := "", ""
	for i := range f.study.Document().Car().Setups {
		for _, r := range f.study.Document().Car().Setups[i].Runs {
			if r.Track != "" && r.Date >= date {
				track, date = r.Track, r.Date
			}
		}
	}
	return track
}

// refresh takes up setup and day; what a person has typed stays.
func (f *runForm) refresh() {
	c, current := f.study.Document().Car(), f.study.Document().Setup()
	if f.editing != nil && !f.find() {
		f.editing, f.lost = nil, true
	}
	title, button := fmt.Sprintf("Log a run with %q", c.Setups[current].Name), "Log run"
	switch {
	case f.editing != nil:
		title, button = fmt.Sprintf("Edit the run of %s with %q", f.editing.Date, f.editing.name), "Save run"
	case f.lost:
		title = fmt.Sprintf("The run edited is not in the log any more. Log what is typed as a new one with %q", c.Setups[current].Name)
	default:
		for _, field := range f.fields {
			if field.first == nil || field.entry.Text != field.given {
				continue
			}
			if text := field.first(); text != field.given {
				field.given = text
				field.entry.SetText(text)
			}
		}
	}
	f.title.Set(title)
	if f.button.Text != button {
		f.button.SetText(button)
	}
	if back := f.editing != nil || f.lost; back != f.cancel.Visible() {
		f.cancel.Hidden = !back
		f.cancel.Refresh()
	}
}

// find finds the run edited again after the car has changed.
func (f *runForm) find() bool {
	c := f.study.Document().Car()
	at := func(setup, index int) bool {
		runs := c.Setups[setup].Runs
		if index >= len(runs) || runs[index] != f.editing.Run {
			return false
		}
		f.editing.setup, f.editing.index, f.editing.name = setup, index, c.Setups[setup].Name
		return true
	}
	if i := c.SetupNamed(f.editing.name); i >= 0 && at(i, f.editing.index) {
		return true
	}
	for i := range c.Setups {
		for j := range c.Setups[i].Runs {
			if at(i, j) {
				return true
			}
		}
	}
	return false
}

// edit begins to edit a run, in its first line. A new one half typed comes back afterwards; another
// edit that is not finished keeps the form.
func (f *runForm) edit(r loggedRun) {
	if f.editing != nil || f.lost {
		if f.changed() {
			f.tell(f.problem, "Save or cancel this edit first.")
			return
		}
	} else {
		f.draft = f.texts()
	}
	f.editing, f.lost = &r, false
	texts := make([]string, len(f.fields))
	for i, field := range f.fields {
		texts[i] = field.write(&r.Run)
	}
	f.fill(texts)
	f.fields[0].entry.Take(f.on)
}

// changed reports whether what is typed is not what the run edited has.
func (f *runForm) changed() bool {
	for _, field := range f.fields {
		if f.editing == nil || field.text() != field.write(&f.editing.Run) {
			return true
		}
	}
	return false
}

// texts returns what is typed. Of a form that nobody has typed in, nil.
func (f *runForm) texts() []string {
	var texts []string
	typed := false
	for _, field := range f.fields {
		texts = append(texts, field.entry.Text)
		typed = typed || field.entry.Text != field.given
	}
	if !typed {
		return nil
	}
	return texts
}

// typed reports whether something is typed that is not in the log.
func (f *runForm) typed() bool {
	switch {
	case f.editing != nil:
		return f.draft != nil || f.changed()
	case f.lost:
		return true
	}
	return f.texts() != nil
}

// drop forgets all that is typed.
func (f *runForm) drop() {
	f.draft = nil
	f.giveUp()
}

// giveUp ends an edit and brings back what was typed before it.
func (f *runForm) giveUp() {
	f.editing, f.lost = nil, false
	draft := f.draft
	f.draft = nil
	f.fill(draft)
}

// submit logs the run typed, or saves the one edited, and reports whether it was
// taken.
func (f *runForm) submit() bool {
	var run car.Run
	if f.editing != nil {
		run = f.editing.Run
	}
	var refused *runField
	for _, field := range f.fields {
		wrong := field.read(field.text(), &run)
		f.refuse(field, wrong)
		if wrong != "" && refused == nil {
			refused = field
		}
	}
	if refused != nil {
		refused.entry.Take(f.on)
		return false
	}
	doc := f.study.Document()
	setup, index, said := doc.Setup(), len(doc.Car().Setups[doc.Setup()].Runs), ""
	var problems []car.Problem
	if f.editing != nil {
		setup, index, said = f.editing.setup, f.editing.index, "Run saved."
		problems = doc.EditRun(setup, index, run)
	} else {
		run.AntiSquat = squatThen(&f.study.Result().Ride)
		said = fmt.Sprintf("Run logged with %q.", doc.Car().Setups[setup].Name)
		problems = doc.LogRun(setup, run)
	}
	if len(problems) > 0 {
		f.tell(f.problem, problems[0].String())
		return false
	}
	if f.editing == nil && run.Track != "" {
		f.track = run.Track
	}
	f.giveUp()
	f.logged(setup, index, said)
	return true
}

// squatThen returns the anti-squat at ride height as it is shown, to a tenth of
// a percent; 0 where it has none that a log may have [1].
func squatThen(ride *analysis.Station) float64 {
	if !ride.HasAntiSquat {
		return 0
	}
	u := units.US
	x := u.ToSI(units.Percent, math.Round(10*u.FromSI(units.Percent, ride.AntiSquat))/10)
	if _, ok := car.RunAntiSquat.Check(x, u); !ok {
		return 0
	}
	return x
}

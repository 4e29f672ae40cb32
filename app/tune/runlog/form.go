package runlog

import (
	"fmt"
	"math"
	"slices"
	"time"

	"bowline/app/form"
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
	on     *form.Page
	today  func() time.Time
	logged func(setup, run int, said string) // a run is in the log

	fields  []*runField
	title   *form.Prose
	problem *form.Prose
	button  *widget.Button
	cancel  *widget.Button
	object  fyne.CanvasObject

	editing *loggedRun // nil while a new run is typed
	draft   []string   // what was typed of a new run when the edit began; nil for none
	lost    bool       // the run that was edited has gone from the log
	track   string     // of the run logged last
}

// newRunForm returns an empty form for a page.
func newRunForm(s *study.Study, on *form.Page) *runForm {
	f := &runForm{study: s, on: on, today: time.Now, title: form.Heading(""), problem: form.Words(theme.ColorNameError)}
	f.button = widget.NewButton("Log run", func() { f.submit() })
	f.button.Importance = widget.HighImportance
	f.cancel = widget.NewButton("Cancel", f.giveUp)
	box := form.Group(f.title)
	add := func(field *runField, hint, beside string) {
		field.SetPlaceHolder(hint)
		f.fields = append(f.fields, field)
		var end fyne.CanvasObject
		if beside != "" {
			end = container.New(form.FixedWidth(190), widget.NewLabel(beside))
		}
		box.Add(container.NewBorder(nil, nil, container.New(form.FixedWidth(64), widget.NewLabel(field.label)), end, field.Draft))
		box.Add(field.Why())
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

// tell shows why all of the run is refused; empty is that it is not.
func (f *runForm) tell(why string) {
	if f.problem.Set(why) {
		f.on.Settle()
	}
}

// fill writes into the lines what was typed before, or without that the run
// edited or what a new one begins with.
func (f *runForm) fill(typed []string) {
	for i, field := range f.fields {
		field.Restore()
		if typed != nil {
			field.Put(typed[i])
		}
	}
	f.tell("")
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
			field.Update()
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

// edit begins to edit a run, in its first line. A new one half typed comes back
// afterwards; another edit that is not finished keeps the form.
func (f *runForm) edit(r loggedRun) {
	if f.editing != nil || f.lost {
		if f.changed() {
			f.tell("Save or cancel this edit first.")
			return
		}
	} else {
		f.draft = f.texts()
	}
	f.editing, f.lost = &r, false
	f.fill(nil)
	f.fields[0].Focus()
}

// changed reports whether something is typed that neither the run edited has nor
// a new one begins with.
func (f *runForm) changed() bool {
	return f.lost || slices.ContainsFunc(f.fields, func(field *runField) bool { return field.Pending() })
}

// texts returns what is typed. Of a form that nobody has typed in, nil.
func (f *runForm) texts() []string {
	if !f.changed() {
		return nil
	}
	var texts []string
	for _, field := range f.fields {
		texts = append(texts, field.Text)
	}
	return texts
}

// typed reports whether something is typed that is not in the log.
func (f *runForm) typed() bool { return f.draft != nil || f.changed() }

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
		wrong := field.read(field.Typing(), &run)
		field.Refuse(wrong)
		if wrong != "" && refused == nil {
			refused = field
		}
	}
	if refused != nil {
		refused.Focus()
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
		f.tell(problems[0].String())
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

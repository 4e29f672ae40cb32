package inputs

import (
	"fmt"

	"bowline/app/document"
	"bowline/app/form"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/gonum/spatial/r2"
)

// fillSetup fills the section of the current setup.
func fillSetup(s *section) {
	f := s.of
	s.Row(form.About{Label: "Setup", Help: "The choice of holes that everything is computed for. A car can have many."},
		form.NewSelect(
			func() []string { return setupNames(f.doc.Car()) },
			func() string { return f.setup().Name },
			form.Always(f.doc.SelectSetup),
		)).Wide = true
	for _, row := range car.Rows {
		s.setupRow(row.SetupKey(), form.About{Label: capital(row.String()), Help: fmt.Sprintf("The hole of the %s bracket that this setup uses.", row)},
			form.NewSelect(
				func() []string { return holeNames(*row.In(f.doc.Car()), f.doc.Units()) },
				func() string {
					return holeName(*row.In(f.doc.Car()), *row.Of(&f.setup().Holes), f.doc.Units())
				},
				func(hole int) []form.Fault {
					return f.editSetup("Choose "+row.String()+" hole", func(to *car.Setup) { *row.Of(&to.Holes) = hole })
				}))
	}
	s.setupRow("name", form.About{Label: "Name", Help: "Each setup has a name of its own."},
		form.NewText(func() string { return f.setup().Name }, f.rename))
	s.setupRow("note", form.About{Label: "Note", Help: "Track, weather, what it did: anything worth keeping with the setup."},
		form.NewText(
			func() string { return f.setup().Note },
			func(text string) []form.Fault {
				return f.editSetup("Set note of setup", func(to *car.Setup) { to.Note = text })
			}).Wrap())
	for _, bar := range launch.Bars {
		s.turns(bar)
	}
	button := func(label, help, text string, do func(i int) []car.Problem) *form.Button {
		return form.NewButton(form.About{Label: label, Help: help}, text, nil, func() []form.Fault { return faults(do(f.doc.Setup())) })
	}
	up := button("Move up", "Moves this setup up in the list.", "", func(i int) []car.Problem { return f.doc.MoveSetup(i, -1) })
	down := button("Move down", "Moves this setup down in the list.", "", func(i int) []car.Problem { return f.doc.MoveSetup(i, 1) })
	up.Icon, down.Icon = theme.MoveUpIcon(), theme.MoveDownIcon()
	s.Row(form.About{Path: "setup"},
		button("Copy", "Adds a setup with the same holes and makes it the current one.", "Copy", f.doc.CopySetup),
		button("Delete", "Deletes this setup. Undo brings it back.", "Delete", f.deleteSetup),
		up, down,
	).Wide = true
}

// rename gives the current setup another name.
func (f *Fields) rename(name string) []form.Fault {
	if p := document.NameTaken(f.doc.Car(), f.doc.Setup(), name); p != nil {
		return form.Wrong(p.Wrong + "; " + p.Right)
	}
	return f.editSetup("Rename setup", func(to *car.Setup) { to.Name = name })
}

// deleteSetup deletes a setup and says how it comes back.
func (f *Fields) deleteSetup(i int) []car.Problem {
	deleted, problems := f.doc.DeleteSetup(i)
	if len(problems) == 0 && f.Said != nil {
		f.Said(words.SetupDeleted(deleted))
	}
	return problems
}

func setupNames(c *car.Car) []string {
	names := make([]string, len(c.Setups))
	for i, s := range c.Setups {
		names[i] = s.Name
	}
	return names
}

func holeNames(holes []r2.Vec, s units.System) []string {
	names := make([]string, len(holes))
	for i := range holes {
		names[i] = holeName(holes, i, s)
	}
	return names
}

// holeName writes a hole's number and place, as in "3 — 22.50, 17.00 in".
func holeName(holes []r2.Vec, i int, s units.System) string {
	return fmt.Sprintf("%d — %s, %s", i+1, s.Figure(units.Length, holes[i].X, 0), s.Format(units.Length, holes[i].Y))
}

// flats are the parts of a turn that a wrench goes by.
const flats = 6

// turns adds the row of the preload of one bar in the current setup, which says when
// the bar's thread does not have them.
func (s *section) turns(bar launch.RodID) {
	f, t := s.of, car.BarTurns[bar]
	s.setupRow(t.Key, form.About{
		Label: "Turns " + words.Initials(t.Label),
		Help:  t.Label + ": turns of the tube from where the bar is at rest without preload: above zero it is longer. A flat is a sixth of a turn, and one step of the arrow keys.",
	}, form.NewNumber(form.Number{
		Units: f.doc.Units, Step: 1.0 / flats,
		Get: func() float64 { return *t.Of(&f.setup().Turns) },
		Set: func(x float64) []form.Fault {
			return f.editSetup("Turn "+lower(t.Label), func(to *car.Setup) { *t.Of(&to.Turns) = x })
		},
	})).PutRemark(theme.ColorNameWarning, func() string {
		if w, ok := analysis.ThreadWarning(f.doc.Car(), f.doc.Setup(), bar); ok {
			return words.Warning(w, f.doc.Units())
		}
		return ""
	})
}

// setupRow is a row about the current setup, whichever that is.
type setupRow struct {
	*form.Row
	of    *Fields
	key   string
	setup int // that it shows
	count int // of setups
}

func (s *section) setupRow(key string, a form.About, e form.Editor) *form.Row {
	r := &setupRow{Row: s.NewRow(a, e), of: s.of, key: key, setup: -1}
	r.Wide = true
	s.Add(r, r.Row)
	return r.Row
}

// Update follows the choice of a setup. What was typed for another one goes.
func (r *setupRow) Update() {
	if i, n := r.of.doc.Setup(), len(r.of.doc.Car().Setups); i != r.setup || n != r.count {
		r.setup, r.count = i, n
		r.Path = fmt.Sprintf("setup.%d.%s", i, r.key)
		r.Restore()
	}
	r.Row.Update()
}

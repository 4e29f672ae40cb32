package inputs

import (
	"errors"
	"fmt"

	"bowline/app/document"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/gonum/spatial/r2"
)

// fillSetup fills the section of the current setup.
func fillSetup(s *section) {
	s.choice(about{label: "Setup", help: "The choice of holes that everything is computed for. A car can have many."},
		newChoice(setupNames, func(v view) string { return v.car.Setups[v.setup].Name },
			func(c *choice, i int) { c.row.panel.doc.SelectSetup(i) }))
	for _, row := range car.Rows {
		label := capital(row.String())
		s.setupRow(row.SetupKey(), about{label: label, help: fmt.Sprintf("The hole of the %s bracket that this setup uses.", row), action: "Choose " + row.String() + " hole"},
			newChoice(
				func(v view) []string { return holeNames(*row.In(v.car), v.units) },
				func(v view) string { return holeName(*row.In(v.car), *row.Of(&v.car.Setups[v.setup].Holes), v.units) },
				func(c *choice, hole int) {
					setup := c.row.panel.doc.Setup()
					c.set(func(to *car.Car) { *row.Of(&to.Setups[setup].Holes) = hole })
				}))
	}
	s.setupRow("name", about{label: "Name", help: "Each setup has a name of its own.", action: "Rename setup"},
		newEntry(&words{in: func(c *car.Car, setup int) *string { return &c.Setups[setup].Name }, clash: nameTaken}))
	s.setupRow("note", about{label: "Note", help: "Track, weather, what it did: anything worth keeping with the setup.", action: "Set note of setup"},
		newLongEntry(&words{in: func(c *car.Car, setup int) *string { return &c.Setups[setup].Note }}))
	fillTurns(s)
	s.row(about{path: "setup"},
		newButton(about{label: "Copy", help: "Adds a setup with the same holes and makes it the current one."}, "Copy", nil, copySetup),
		newButton(about{label: "Delete", help: "Deletes this setup. Undo brings it back."}, "Delete", nil, deleteSetup),
		newButton(about{label: "Move up", help: "Moves this setup up in the list."}, "", theme.MoveUpIcon(), moveSetup(-1)),
		newButton(about{label: "Move down", help: "Moves this setup down in the list."}, "", theme.MoveDownIcon(), moveSetup(1)),
	).wide = true
}

// nameTaken says that another setup has a name.
func nameTaken(name string, v view) error {
	if p := document.NameTaken(v.car, v.setup, name); p != nil {
		return errors.New(p.Wrong + "; " + p.Right)
	}
	return nil
}

func setupNames(v view) []string {
	names := make([]string, len(v.car.Setups))
	for i, s := range v.car.Setups {
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
	decimals := s.Decimals(units.Length)
	return fmt.Sprintf("%d — %.*f, %.*f %s", i+1,
		decimals, s.FromSI(units.Length, holes[i].X), decimals, s.FromSI(units.Length, holes[i].Y), s.Symbol(units.Length))
}

// setupRow is a row about the current setup, whichever that is.
type setupRow struct {
	*row
	key   string
	setup int // that it shows
	count int // of setups
}

func (s *section) setupRow(key string, a about, e editor) {
	r := &setupRow{row: newRow(s, a, e), key: key, setup: -1}
	r.wide = true
	s.add(r, r.row)
}

// show follows the choice of a setup. What was typed for another one goes.
func (r *setupRow) show(v view) {
	if n := len(v.car.Setups); v.setup != r.setup || n != r.count {
		r.setup, r.count = v.setup, n
		r.path = fmt.Sprintf("setup.%d.%s", v.setup, r.key)
		if e, ok := r.editors[0].(*entry); ok {
			e.restore()
		}
	}
	r.row.show(v)
}

// copySetup adds a copy of the current setup behind it.
func copySetup(v view, from origin) {
	p := from.home().panel
	p.try(from, func() []car.Problem { return p.doc.CopySetup(v.setup) })
}

// deleteSetup deletes the current setup.
func deleteSetup(v view, from origin) {
	p, said := from.home().panel, ""
	taken := p.try(from, func() (problems []car.Problem) {
		said, problems = p.doc.DeleteSetup(v.setup)
		return problems
	})
	if taken && p.Said != nil {
		p.Said(said)
	}
}

// moveSetup moves the current setup in the list.
func moveSetup(by int) func(view, origin) {
	return func(v view, from origin) {
		p := from.home().panel
		p.try(from, func() []car.Problem { return p.doc.MoveSetup(v.setup, by) })
	}
}

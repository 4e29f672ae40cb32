package inputs

import (
	"strconv"
	"strings"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// section adds rows about the car to a section of the form.
type section struct {
	*form.Section
	of    *Fields
	owned bool // labels mean nothing without the title
}

// action names the step of changing what a label says.
func (s *section) action(label string) string {
	if s.owned {
		return "Set " + lower(s.Title) + ": " + lower(label)
	}
	return "Set " + lower(label)
}

// numbers adds a row for each plain number of a table of the car file.
func (s *section) numbers(table string) {
	for _, f := range fieldsOf(table) {
		s.field(f)
	}
}

// fieldsOf lists the plain numbers of a table of the car file.
func fieldsOf(table string) []*car.Field {
	for _, t := range car.Sections {
		if t.Table == table {
			return t.Fields
		}
	}
	return nil
}

// byRule stands where no number is typed because a rule gives it.
const byRule = "by rule"

// field adds the row of a plain number.
func (s *section) field(f *car.Field) *form.Row {
	a := form.About{Path: f.Path, Label: f.Label, Help: f.Help, Allowed: f.Range}
	switch {
	case f.Rule:
		a.Default = func(units.System) string { return byRule }
	case f.Optional:
		a.Default = func(u units.System) string { return u.FormatExact(f.Quantity, f.Default) }
	}
	n := form.Number{Quantity: f.Quantity, Optional: f.Optional, Default: f.Default, Blank: f.Rule, Fine: isWall(f.Path)}
	if car.Statable(f.Path) {
		state := func(x float64, given bool) []form.Fault {
			return s.of.edit(s.action(f.Label), func(c *car.Car) {
				*f.In(c) = x
				c.State(f.Path, given)
			})
		}
		n.Given = func() bool { return s.of.doc.Car().Says(f.Path) }
		n.Set = func(x float64) []form.Fault { return state(x, true) }
		n.Clear = func() []form.Fault { return state(f.Default, false) }
	}
	e := s.entry(s.action(f.Label), n, f.In)
	if f.Rule {
		e.SetPlaceHolder(byRule)
	}
	r := s.Row(a, e)
	r.Quantity = f.Quantity
	return r
}

// isWall reports whether a path is that of a wall thickness.
func isWall(path string) bool { return strings.HasSuffix(path, ".wall") }

// entry returns the entry of a number of the car.
func (s *section) entry(action string, n form.Number, in func(*car.Car) *float64) *form.Entry {
	n.Units = s.of.doc.Units
	n.Get = func() float64 { return *in(s.of.doc.Car()) }
	if n.Set == nil {
		n.Set = func(x float64) []form.Fault { return s.of.edit(action, func(c *car.Car) { *in(c) = x }) }
	}
	return form.NewNumber(n)
}

// coordinates returns the entries of coordinates [m].
func (s *section) coordinates(action string, in ...func(*car.Car) *float64) []form.Editor {
	var list []form.Editor
	for _, in := range in {
		list = append(list, s.entry(action, form.Number{Quantity: units.Length}, in))
	}
	return list
}

// reach is how far from the axle a place on the car may be, as car.Validate has it.
const reach = 400 * units.Inch

// reachRange writes the allowed coordinates.
func reachRange(s units.System) string { return span(units.Length, reach)(s) }

// span writes the numbers from -most to most.
func span(q units.Quantity, most float64) func(units.System) string {
	return func(u units.System) string { return u.FormatExact(q, -most) + " to " + u.FormatExact(q, most) }
}

// xz returns the coordinates of a place in side view.
func xz(at func(*car.Car) *r2.Vec) (x, z func(*car.Car) *float64) {
	return func(c *car.Car) *float64 { return &at(c).X }, func(c *car.Car) *float64 { return &at(c).Y }
}

// point adds the row of a place on the car.
func (s *section) point(action string, a form.About, at func(*car.Car) *r2.Vec) *form.Row {
	a.Allowed = reachRange
	x, z := xz(at)
	r := s.Row(a, s.coordinates(action, x, z)...)
	r.Quantity = units.Length
	return r
}

// text adds a row for a text.
func (s *section) text(action string, a form.About, in func(*car.Car) *string) {
	s.Row(a, form.NewText(
		func() string { return *in(s.of.doc.Car()) },
		func(text string) []form.Fault { return s.of.edit(action, func(c *car.Car) { *in(c) = text }) },
	)).Wide = true
}

// choice adds a row to choose a text of the car from a list.
func (s *section) choice(action string, a form.About, options []string, in func(*car.Car) *string) {
	s.pick(action, a, options, func(c *car.Car) string { return *in(c) }, func(c *car.Car, i int) {
		*in(c) = options[i]
		c.State(a.Path, true)
	})
}

// pick adds a row to choose from a list that does not change.
func (s *section) pick(action string, a form.About, options []string, current func(*car.Car) string, choose func(c *car.Car, i int)) {
	s.Row(a, form.NewSelect(
		func() []string { return options },
		func() string { return current(s.of.doc.Car()) },
		func(i int) []form.Fault { return s.of.edit(action, func(c *car.Car) { choose(c, i) }) },
	)).Wide = true
}

// given adds a row with a box for a part that a car may have or not.
func (s *section) given(action, text, help string, get func(*car.Car) bool, set func(c *car.Car, on bool)) (given func() bool) {
	given = func() bool { return get(s.of.doc.Car()) }
	s.Row(form.About{Help: help}, form.NewCheck(text, given,
		func(on bool) []form.Fault { return s.of.edit(action, func(c *car.Car) { set(c, on) }) },
	)).Wide = true
	return given
}

// readout adds a row for a computed number.
func (s *section) readout(a form.About, q units.Quantity, value func(*car.Car) float64) *form.Row {
	r := s.Row(a, form.NewReadout(func() string {
		u := s.of.doc.Units()
		return units.WithMinus(strconv.FormatFloat(u.Shown(q, value(s.of.doc.Car())), 'f', u.Decimals(q), 64))
	}))
	r.Quantity = q
	return r
}

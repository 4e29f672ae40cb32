package inputs

import (
	"strconv"

	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// item is a part of a section that follows the car.
type item interface {
	show(view)
	rows() []*row // that it consists of
}

// section is a group of inputs that opens and closes under its header.
type section struct {
	panel  *Panel
	title  string
	header *header
	body   *fyne.Container
	items  []item
	owned  bool // labels mean nothing without the title
}

func newSection(p *Panel, title string) *section {
	s := &section{panel: p, title: title, body: container.New(stack{gap: rowGap, inset: bodyInset})}
	s.header = newHeader(s)
	s.body.Hide()
	return s
}

const (
	rowGap    = 2 // between rows
	bodyInset = 6 // around the rows of a section
)

// isOpen tells whether the section's inputs can be seen.
func (s *section) isOpen() bool { return s.body.Visible() }

// setOpen opens or closes the section.
func (s *section) setOpen(open bool) {
	if open == s.isOpen() {
		return
	}
	if open {
		s.show(s.panel.view())
		s.body.Show()
	} else {
		s.body.Hide()
	}
	s.header.Refresh()
	s.panel.relayout()
}

// show brings everything in the section up to date.
func (s *section) show(v view) {
	for _, i := range s.items {
		i.show(v)
	}
}

// pending tells whether something was typed in the section that the car has
// not taken.
func (s *section) pending() bool {
	for _, r := range s.rows() {
		for _, e := range r.entries() {
			if e.pending() {
				return true
			}
		}
	}
	return false
}

func (s *section) rows() []*row {
	var all []*row
	for _, i := range s.items {
		all = append(all, i.rows()...)
	}
	return all
}

// add puts an item at the end, which o draws.
func (s *section) add(i item, o fyne.CanvasObject) {
	s.items = append(s.items, i)
	s.body.Objects = append(s.body.Objects, o)
}

func (r *row) rows() []*row { return []*row{r} }

// row adds a row.
func (s *section) row(a about, editors ...editor) *row {
	if s.owned && a.action == "" {
		a.action = "Set " + lower(s.title) + ": " + lower(a.label)
	}
	r := newRow(s, a, editors...)
	s.add(r, r)
	return r
}

// numbers adds a row for each plain number of a table of the car file.
func (s *section) numbers(table string) {
	for _, t := range car.Sections {
		if t.Table != table {
			continue
		}
		for _, f := range t.Fields {
			s.field(f)
		}
	}
}

// byRule stands where no number is typed because a rule gives it.
const byRule = "by rule"

// field adds the row of a plain number.
func (s *section) field(f *car.Field) {
	a := about{path: f.Path, label: f.Label, help: f.Help, allowed: f.Range}
	switch {
	case f.Rule:
		a.fallback = func(units.System) string { return byRule }
	case f.Optional:
		a.fallback = func(u units.System) string { return u.FormatExact(f.Quantity, f.Default) }
	}
	e := newEntry(&number{quantity: f.Quantity, in: f.In, optional: f.Optional, fallback: f.Default, ruled: f.Rule, thin: isWall(f.Path)})
	if f.Rule {
		e.SetPlaceHolder(byRule)
	}
	s.row(a, e).quantity = f.Quantity
}

// text adds a row for a text.
func (s *section) text(a about, in func(*car.Car) *string) *row {
	r := s.row(a, newEntry(&words{in: func(c *car.Car, _ int) *string { return in(c) }}))
	r.wide = true
	return r
}

// choice adds a row to choose from a list.
func (s *section) choice(a about, c *choice) {
	s.row(a, c).wide = true
}

// readout adds a row for a computed number.
func (s *section) readout(a about, q units.Quantity, value func(*car.Car) float64) {
	s.row(a, newReadout(func(v view) string {
		return strconv.FormatFloat(v.units.FromSI(q, value(v.car)), 'f', v.units.Decimals(q), 64)
	})).quantity = q
}

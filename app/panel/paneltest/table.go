package paneltest

import (
	"strings"

	"bowline/app/internal/screen"
	"bowline/app/readout"
	"bowline/assets"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
)

// table is what a table on show says.
type table struct {
	headings []string
	names    []string
	cells    [][]string // by row
}

// tables lists what the tables of the panel say.
func (d *Desk) tables() []table {
	var list []table
	for _, part := range append(screen.Seen(d.Panel.Words()), screen.Seen(d.Panel.Evidence())...) {
		shown, ok := part.(*readout.Table)
		if !ok {
			continue
		}
		var t table
		for i, line := range strings.Split(shown.String(), "\n") {
			fields := strings.Split(line, " | ")
			if i == 0 {
				t.headings = fields
				continue
			}
			t.names, t.cells = append(t.names, fields[0]), append(t.cells, fields[1:])
		}
		list = append(list, t)
	}
	return list
}

// Row returns what stands in a row, by its name; of several the first.
func (d *Desk) Row(name string) []string {
	d.T.Helper()
	for _, t := range d.tables() {
		for i, n := range t.names {
			if n == name {
				return t.cells[i]
			}
		}
	}
	d.T.Fatalf("there is no row %q", name)
	return nil
}

// Cell returns what stands in a row under a heading.
func (d *Desk) Cell(name, heading string) string {
	d.T.Helper()
	for _, t := range d.tables() {
		for i, n := range t.names {
			for column, h := range t.headings {
				if n == name && h == heading {
					return t.cells[i][column]
				}
			}
		}
	}
	d.T.Fatalf("there is no row %q under %q", name, heading)
	return ""
}

// Says writes all words of the panel.
func (d *Desk) Says() string {
	return Texts(d.Panel.Words()) + "\n" + Texts(d.Panel.Evidence())
}

// WantTablesFit sees to it that the panel's tables with equal columns are legible
// in its least width, and their headings in that which it has at first: the
// longest of them loses a part of its last letter in the least.
func (d *Desk) WantTablesFit(what string) {
	d.T.Helper()
	for _, t := range d.tables() {
		names, values := float32(NameRoom), float32(PanelWidth*0.66)
		if len(t.headings) > 2 {
			names, values = ShortRoom, PanelWidth*0.8
		}
		values /= float32(len(t.headings))
		for i, h := range t.headings {
			room := values * FirstWidth / PanelWidth
			if i < len(t.headings)-1 {
				room -= TextGap
			}
			WantRoom(d.T, what+", heading", h, true, room)
		}
		for i, name := range t.names {
			WantRoom(d.T, what, name, false, names-theme.Padding())
			for _, text := range t.cells[i] {
				WantRoom(d.T, what+", "+name, text, false, values-TextGap)
			}
		}
	}
}

// EveryTravel has each example car looked at in both unit systems and at travels
// from droop to bump.
func (d *Desk) EveryTravel(look func(name string)) {
	d.T.Helper()
	for _, name := range assets.CarNames() {
		d.Example(name)
		k := d.Doc.Car().Springs
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			for _, q := range []float64{-k.RearDroop, -0.0987, 0, 0.0333, k.RearBump} {
				d.Study.SetTravel(q)
				d.Study.SetFront(-q)
				d.Settle()
				look(name)
			}
		}
	}
}

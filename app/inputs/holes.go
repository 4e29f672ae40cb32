package inputs

import (
	"fmt"
	"slices"
	"strings"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/gonum/spatial/r2"
)

// fillHoles fills the section of a bracket.
func fillHoles(s *section, table string, upper, lower car.Row) {
	s.owned = true
	for _, row := range []car.Row{upper, lower} {
		addHoles(s, row)
	}
	s.numbers(table)
}

// holeTable lists the holes of one row of a bracket, with a heading above and a
// button to add one below.
type holeTable struct {
	*form.List
	section *section
	row     car.Row
	holes   []*form.Row
	head    *form.Row
	foot    *form.Row
	more    *form.Button // adds a hole
}

func addHoles(s *section, row car.Row) {
	t := &holeTable{section: s, row: row}
	side, _, _ := strings.Cut(row.String(), " ")
	heading := func(text string) form.Editor { return form.NewReadout(func() string { return text }) }
	t.head = s.NewRow(form.About{Label: capital(side), Help: t.meaning()}, heading("x"), heading("z"))
	t.head.Quantity = units.Length
	t.head.SetTitle(capital(side), true)
	t.more = form.NewButton(form.About{Label: "Add hole", Help: fmt.Sprintf("Adds a hole at the end of the %s row, in line with the last two.", row)},
		"Add hole", theme.ContentAddIcon(), t.addHole)
	t.foot = s.NewRow(form.About{Path: row.Path(), Help: t.meaning()}, t.more)
	t.foot.Wide = true
	t.List = s.NewList(t)
	t.Set([]*form.Row{t.head, t.foot})
}

// meaning says where the coordinates are measured from.
func (t *holeTable) meaning() string {
	if t.row.OnChassis() {
		return "Hole centers, x forward of the rear axle centerline, z above the ground, at ride height."
	}
	return "Hole centers, x forward of, z above the axle centerline."
}

// Update shows the holes as they are now, and marks the one in use.
func (t *holeTable) Update() {
	doc := t.section.of.doc
	t.resize(len(*t.row.In(doc.Car())))
	used := *t.row.Of(&t.section.of.setup().Holes)
	for i, r := range t.holes {
		title := fmt.Sprint(i + 1)
		if i == used {
			title += " •"
		}
		r.SetTitle(title, i == used)
	}
	for _, r := range t.Rows() {
		r.Update()
	}
}

// resize makes the list as long as the row of holes. What was typed into it and
// not taken belongs to other holes then and goes.
func (t *holeTable) resize(n int) {
	if n == len(t.holes) {
		return
	}
	for i, r := range t.holes {
		if i >= n {
			r.Retire()
		} else {
			r.Restore()
		}
	}
	for i := len(t.holes); i < n; i++ {
		t.holes = append(t.holes, t.hole(i))
	}
	t.holes = slices.Delete(t.holes, n, len(t.holes))
	t.Set(slices.Concat([]*form.Row{t.head}, t.holes, []*form.Row{t.foot}))
}

// hole returns the row of one hole.
func (t *holeTable) hole(i int) *form.Row {
	name := fmt.Sprintf("%s hole %d", t.row, i+1)
	x, z := xz(func(c *car.Car) *r2.Vec { return &(*t.row.In(c))[i] })
	r := t.section.NewRow(form.About{Path: holePath(t.row, i), Label: capital(name), Help: t.meaning(), Allowed: reachRange},
		t.section.coordinates("Move "+name, x, z)...)
	r.PutEnd(form.NewButton(form.About{Label: "Delete", Help: fmt.Sprintf("Deletes %s. Setups keep their holes, whose numbers may change. A hole that a setup uses stays.", name)},
		"", theme.DeleteIcon(), func() []form.Fault { return t.deleteHole(i) }))
	return r
}

// holePath names a hole as car.Problem does.
func holePath(row car.Row, hole int) string { return fmt.Sprintf("%s.%d", row.Path(), hole) }

// usualPitch is how far below the last hole a new one goes when there is no
// other hole to go by [m].
const usualPitch = 0.75 * units.Inch

// addHole adds a hole at the end, as far from the last one as that is from the
// one before.
func (t *holeTable) addHole() []form.Fault {
	return t.section.of.edit(fmt.Sprintf("Add %s hole", t.row), func(c *car.Car) {
		holes := t.row.In(c)
		n := len(*holes)
		step := r2.Vec{Y: -usualPitch}
		if n > 1 {
			step = r2.Sub((*holes)[n-1], (*holes)[n-2])
		}
		*holes = append(*holes, r2.Add((*holes)[n-1], step))
	})
}

// deleteHole deletes a hole, unless a setup uses it.
func (t *holeTable) deleteHole(i int) []form.Fault {
	if i >= len(t.holes) {
		return nil // It is gone, and its button still has the focus.
	}
	if users := usersOf(t.section.of.doc.Car(), t.row, i); len(users) > 0 {
		return form.Wrong(fmt.Sprintf("Hole %d stays: it is used by %s. Choose another hole there first.", i+1, listed(users)))
	}
	wrong := t.section.of.edit(fmt.Sprintf("Delete %s hole %d", t.row, i+1), func(c *car.Car) {
		holes := t.row.In(c)
		*holes = slices.Delete(*holes, i, i+1)
		for s := range c.Setups {
			if choice := t.row.Of(&c.Setups[s].Holes); *choice > i {
				*choice--
			}
		}
	})
	// The button goes when its hole was the last in the list.
	if len(wrong) == 0 && i == len(t.holes) {
		t.section.of.Focus(t.more)
	}
	return wrong
}

// usersOf returns the names of the setups that use a hole.
func usersOf(c *car.Car, row car.Row, hole int) []string {
	var names []string
	for i := range c.Setups {
		if *row.Of(&c.Setups[i].Holes) == hole {
			names = append(names, c.Setups[i].Name)
		}
	}
	return names
}

// listed writes names in a sentence.
func listed(names []string) string {
	quoted := make([]string, len(names))
	for i, name := range names {
		quoted[i] = "“" + name + "”"
	}
	if n := len(quoted); n > 1 {
		return strings.Join(quoted[:n-1], ", ") + " and " + quoted[n-1]
	}
	return quoted[0]
}

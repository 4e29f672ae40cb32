package inputs

import (
	"fmt"
	"slices"
	"strings"

	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/gonum/spatial/r2"
)

// fillHoles fills the section of a bracket.
func fillHoles(s *section, table string, upper, lower car.Row) {
	s.owned = true
	for _, row := range []car.Row{upper, lower} {
		t := newHoleTable(s, row)
		s.add(t, t.box)
	}
	s.numbers(table)
}

// holeTable lists the holes of one row of a bracket, with a heading above and a
// button to add one below.
type holeTable struct {
	box     *fyne.Container
	section *section
	row     car.Row
	holes   []*row
	head    *row
	foot    *row
	more    *button // adds a hole
}

func newHoleTable(s *section, row car.Row) *holeTable {
	t := &holeTable{box: container.New(stack{gap: rowGap}), section: s, row: row}
	side, _, _ := strings.Cut(row.String(), " ")
	heading := func(text string) *readout {
		return newReadout(func(view) string { return text })
	}
	t.head = newRow(s, about{label: capital(side), help: t.meaning()}, heading("x"), heading("z"))
	t.head.quantity = units.Length
	t.head.setTitle(capital(side), true)
	t.more = newButton(about{label: "Add hole", help: fmt.Sprintf("Adds a hole at the end of the %s row, in line with the last two.", row)},
		"Add hole", theme.ContentAddIcon(), t.addHole)
	t.foot = newRow(s, about{path: row.Path(), help: t.meaning()}, t.more)
	t.foot.wide = true
	t.box.Objects = []fyne.CanvasObject{t.head, t.foot}
	return t
}

// capital writes a word at the start of a sentence.
func capital(word string) string { return strings.ToUpper(word[:1]) + word[1:] }

// meaning says where the coordinates are measured from.
func (t *holeTable) meaning() string {
	if t.row.OnChassis() {
		return "Hole centers, x forward of the rear axle centerline, z above the ground, at ride height."
	}
	return "Hole centers, x forward of, z above the axle centerline."
}

func (t *holeTable) rows() []*row {
	return slices.Concat([]*row{t.head}, t.holes, []*row{t.foot})
}

func (t *holeTable) show(v view) {
	t.resize(len(*t.row.In(v.car)))
	used := *t.row.Of(&v.car.Setups[v.setup].Holes)
	for i, r := range t.holes {
		title := fmt.Sprint(i + 1)
		if i == used {
			title += " •"
		}
		r.setTitle(title, i == used)
	}
	for _, r := range t.rows() {
		r.show(v)
	}
}

// resize makes the list as long as the row of holes. What was typed into it and
// not taken belongs to other holes then and goes.
func (t *holeTable) resize(n int) {
	if n == len(t.holes) {
		return
	}
	for i, r := range t.holes {
		for _, e := range r.entries() {
			if i >= n {
				e.value = nothing{} // It may still have the focus.
			}
			e.restore()
		}
	}
	for i := len(t.holes); i < n; i++ {
		t.holes = append(t.holes, t.hole(i))
	}
	t.holes = slices.Delete(t.holes, n, len(t.holes))
	t.box.Objects = t.box.Objects[:0]
	for _, r := range t.rows() {
		t.box.Objects = append(t.box.Objects, r)
	}
	t.section.panel.loose = true
}

// hole returns the row of one hole.
func (t *holeTable) hole(i int) *row {
	name := fmt.Sprintf("%s hole %d", t.row, i+1)
	x, z := coordinates(func(c *car.Car) *r2.Vec { return &(*t.row.In(c))[i] })
	r := newRow(t.section, about{
		path: holePath(t.row, i), label: capital(name), help: t.meaning(), action: "Move " + name, allowed: reachRange,
	}, x, z)
	remove := newButton(about{label: "Delete", help: fmt.Sprintf("Deletes %s. Setups keep their holes, whose numbers may change. A hole that a setup uses stays.", name)},
		"", theme.DeleteIcon(), func(v view, from origin) { t.deleteHole(v, from, i) })
	remove.place(r)
	r.end = remove
	return r
}

// holePath names a hole as car.Problem does.
func holePath(row car.Row, hole int) string { return fmt.Sprintf("%s.%d", row.Path(), hole) }

// usualPitch is how far below the last hole a new one goes when there is no
// other hole to tell [m].
const usualPitch = 0.75 * units.Inch

// addHole adds a hole at the end, as far from the last one as that is from the
// one before.
func (t *holeTable) addHole(_ view, from origin) {
	t.section.panel.apply(from, fmt.Sprintf("Add %s hole", t.row), func(c *car.Car) {
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
func (t *holeTable) deleteHole(v view, from origin, i int) {
	p := t.section.panel
	if i >= len(t.holes) {
		return // It is gone, and its button still has the focus.
	}
	if users := usersOf(v.car, t.row, i); len(users) > 0 {
		p.refuse(from, fmt.Sprintf("Hole %d stays: it is used by %s. Choose another hole there first.", i+1, listed(users)))
		return
	}
	taken := p.apply(from, fmt.Sprintf("Delete %s hole %d", t.row, i+1), func(c *car.Car) {
		holes := t.row.In(c)
		*holes = slices.Delete(*holes, i, i+1)
		for s := range c.Setups {
			if choice := t.row.Of(&c.Setups[s].Holes); *choice > i {
				*choice--
			}
		}
	})
	// The button goes when its hole was the last in the list.
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); taken && c != nil && i == len(t.holes) {
		c.Focus(t.more)
	}
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

package inputs

import (
	"fmt"
	"slices"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
)

// curve is a list of points of the car that a chart shows.
type curve struct {
	path, name, help string
	add              string // what the button of a car without one says
	x, y             units.Quantity

	count  func(*car.Car) int
	at     func(c *car.Car, i int) (x, y *float64) // in SI
	insert func(c *car.Car, i int, x, y float64)
	remove func(c *car.Car, i int)
	start  func(*car.Car) // gives a car without one points that change nothing
	clear  func(*car.Car)
	plot   func(*car.Car, units.System) form.Plot
	say    func(*car.Car, units.System) string // what follows from it
}

// curveTable is a chart of a curve, and below it the points as rows, with a heading
// above and buttons below them. Of a car without the curve it has the chart and a
// button.
type curveTable struct {
	*form.List
	curve
	section *section
	chart   *form.Curve
	points  []*form.Row
	head    *form.Row
	foot    *form.Row    // of a car that has it
	none    *form.Row    // of one that has not
	first   *form.Button // gives it points
	more    *form.Button // adds one
}

func addCurve(s *section, of curve) {
	t := &curveTable{section: s, curve: of}
	t.chart = form.NewCurve(func() form.Plot { return t.plot(t.car(), t.units()) }, form.Edits{
		Move: t.move, Insert: t.insertShown, Delete: t.delete,
		Begin: func(i int) { s.of.doc.Begin(t.action("Move", i)) }, End: s.of.doc.End, Cancel: s.of.doc.Cancel,
	})
	row := s.Row(form.About{Path: of.path, Label: capital(of.name), Help: of.help}, t.chart)
	row.Wide = true
	row.SetTitle("", false) // The chart says what its lines are.
	row.PutRemark(theme.ColorNameForeground, func() string { return t.say(t.car(), t.units()) })

	symbol := func(q units.Quantity) form.Editor {
		return form.NewReadout(func() string { return t.units().Symbol(q) })
	}
	t.head = s.NewRow(form.About{Label: capital(of.name), Help: of.help}, symbol(of.x), symbol(of.y))
	t.head.SetTitle("Points", true)
	button := func(text, help string, do func() []form.Fault) *form.Button {
		return form.NewButton(form.About{Label: text, Help: help}, text, nil, do)
	}
	t.more = button("Add point", "Adds a point in the middle of the widest gap, on the line.", t.split)
	t.foot = s.NewRow(form.About{Label: capital(of.name), Help: of.help}, t.more,
		button("Take it away", "Takes the "+of.name+" away: the torque stays the same then.", t.takeAway))
	t.foot.Wide = true
	t.foot.SetTitle("", false)
	t.first = button(of.add, "Starts a "+of.name+" from what holds without one.", t.begin)
	t.none = s.NewRow(form.About{Label: capital(of.name), Help: of.help}, t.first)
	t.none.Wide = true
	t.none.SetTitle("", false)
	t.List = s.NewList(t)
	t.Set([]*form.Row{t.none})
}

func (t *curveTable) car() *car.Car       { return t.section.of.doc.Car() }
func (t *curveTable) units() units.System { return t.section.of.doc.Units() }

// action names the step of changing a point.
func (t *curveTable) action(verb string, i int) string {
	return fmt.Sprintf("%s %s point %d", verb, t.name, i+1)
}

// edit makes one change of the car.
func (t *curveTable) edit(action string, change func(*car.Car)) []form.Fault {
	return t.section.of.edit(action, change)
}

// Update shows the points as they are now.
func (t *curveTable) Update() {
	t.resize(t.count(t.car()))
	for _, r := range t.Rows() {
		r.Update()
	}
}

// resize makes the list as long as the curve. What was typed into it and not taken
// belongs to other points then and goes.
func (t *curveTable) resize(n int) {
	if n == len(t.points) {
		return
	}
	for i, r := range t.points {
		if i >= n {
			r.Retire()
		} else {
			r.Restore()
		}
	}
	for i := len(t.points); i < n; i++ {
		t.points = append(t.points, t.point(i))
	}
	t.points = slices.Delete(t.points, n, len(t.points))
	if n == 0 {
		t.Set([]*form.Row{t.none})
		return
	}
	t.Set(slices.Concat([]*form.Row{t.head}, t.points, []*form.Row{t.foot}))
}

// point returns the row of one point.
func (t *curveTable) point(i int) *form.Row {
	name := fmt.Sprintf("%s point %d", t.name, i+1)
	entry := func(q units.Quantity, of func(c *car.Car) *float64) form.Editor {
		return t.section.entry(t.action("Move", i), form.Number{Quantity: q}, of)
	}
	r := t.section.NewRow(form.About{Path: fmt.Sprintf("%s.%d", t.path, i), Label: capital(name), Help: t.help},
		entry(t.x, func(c *car.Car) *float64 { x, _ := t.at(c, i); return x }),
		entry(t.y, func(c *car.Car) *float64 { _, y := t.at(c, i); return y }))
	r.SetTitle(fmt.Sprint(i+1), false)
	r.PutEnd(form.NewButton(form.About{Label: "Delete", Help: "Deletes " + name + "."}, "", theme.DeleteIcon(), func() []form.Fault {
		return t.delete(i)
	}))
	return r
}

// move moves a point to a place in the units shown.
func (t *curveTable) move(i int, to form.Point) []form.Fault {
	return t.edit(t.action("Move", i), func(c *car.Car) {
		u := t.units()
		x, y := t.at(c, i)
		// What stays as it is shown stays to the last bit.
		if u.FromSI(t.x, *x) != to.X {
			*x = u.ToSI(t.x, to.X)
		}
		if u.FromSI(t.y, *y) != to.Y {
			*y = u.ToSI(t.y, to.Y)
		}
	})
}

// insertShown adds a point at a place in the units shown.
func (t *curveTable) insertShown(i int, at form.Point) []form.Fault {
	u := t.units()
	return t.put(i, u.ToSI(t.x, at.X), u.ToSI(t.y, at.Y))
}

// put adds a point.
func (t *curveTable) put(i int, x, y float64) []form.Fault {
	return t.edit("Add "+t.name+" point", func(c *car.Car) { t.insert(c, i, x, y) })
}

// delete deletes a point.
func (t *curveTable) delete(i int) []form.Fault {
	n := len(t.points)
	if i >= n {
		return nil // It is gone, and its button still has the focus.
	}
	wrong := t.edit(t.action("Delete", i), func(c *car.Car) { t.remove(c, i) })
	// The button goes when its point was the last in the list.
	if len(wrong) == 0 && i == n-1 {
		t.attend()
	}
	return wrong
}

// attend puts the focus on the first button below the points, if it was on one that
// is gone.
func (t *curveTable) attend() {
	if len(t.points) == 0 {
		t.section.of.Focus(t.first)
		return
	}
	t.section.of.Focus(t.more)
}

// usualGap is how much later than a ramp's only point another one goes [s].
const usualGap = 0.5

// split adds a point in the middle of the widest gap, so that nothing changes.
func (t *curveTable) split() []form.Fault {
	c, n := t.car(), len(t.points)
	if n == 1 {
		x, y := t.at(c, 0)
		return t.put(1, *x+usualGap, *y)
	}
	widest, gap := 1, 0.0
	for i := 1; i < n; i++ {
		x0, _ := t.at(c, i-1)
		x1, _ := t.at(c, i)
		if *x1-*x0 > gap {
			widest, gap = i, *x1-*x0
		}
	}
	x0, y0 := t.at(c, widest-1)
	x1, y1 := t.at(c, widest)
	return t.put(widest, (*x0+*x1)/2, (*y0+*y1)/2)
}

// begin gives the car a curve.
func (t *curveTable) begin() []form.Fault {
	wrong := t.edit(t.add, t.start)
	if len(wrong) == 0 {
		t.attend()
	}
	return wrong
}

// takeAway takes the curve away.
func (t *curveTable) takeAway() []form.Fault {
	wrong := t.edit("Take "+t.name+" away", t.clear)
	if len(wrong) == 0 {
		t.attend()
	}
	return wrong
}

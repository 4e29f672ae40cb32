// Package compare holds the current setup against another one, in words and in
// numbers side by side: a part of the page of setups.
package compare

import (
	"fmt"
	"math"

	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Part holds the current setup against another one: words, numbers side by side
// with their difference, and how to get there.
type Part struct {
	study   *study.Study
	choice  *form.Select
	verdict *form.Prose
	titles  [tableCount]*form.Prose
	tables  [tableCount]*readout.Table
	plan    *form.Prose
	body    *fyne.Container // hidden while there is nothing to compare
	Object  fyne.CanvasObject
}

// The tables.
const (
	tableRide = iota
	tableTravel
	tableHit
	tableHooked
	tableLaunch
	tableTurns
	tableCount
)

// titles stand over the tables, rowNames before their rows.
var (
	titles = [tableCount]string{
		tableRide: "At ride height", tableTravel: "Over the travel",
		tableHit: "Most in one bar over the travel, hit", tableHooked: "Most in one bar over the travel, hooked",
		tableLaunch: launchTitle,
		tableTurns:  "Turns of each setup, and from one to the other",
	}
	rowNames = [tableCount][]string{
		tableRide:   {"IC ahead", "IC up", "Anti-squat", "Upper bars", "Lower bars"},
		tableTravel: {"Anti-squat", "Pinion in all", "Pinion up", "Pinion down"},
		tableHit:    {"Upper push", "Upper pull", "Lower push", "Lower pull"},
		tableHooked: {"Upper push", "Upper pull", "Lower push", "Lower pull"},
		tableLaunch: {"60 ft", "UL push", "UL pull", "UR push", "UR pull", "LL push", "LL pull", "LR push", "LR pull", "Front lift", "Wheels off"},
		tableTurns:  words.BarInitials(),
	}
)

// Columns of the tables.
const (
	columnA = iota
	columnB
	columnBy
)

// shares are the parts of the width that tables with words in them give
// their names and columns; the others have equal columns.
var shares = map[int][4]float32{
	tableTravel: {0.2, 0.25, 0.25, 0.3},
	tableTurns:  {0.065, 0.3, 0.3, 0.335},
}

// headingRoom is the width of a column at the least width of a panel [px].
const headingRoom = 104

// New returns the part, with nothing compared.
func New(s *study.Study) *Part {
	p := &Part{study: s, verdict: form.Words(theme.ColorNameForeground), plan: form.Words(theme.ColorNameForeground)}
	p.choice = form.NewSelect(p.options, p.chosen, form.Always(func(i int) { p.compare(i - 1) }))
	p.body = form.Group()
	for i := range p.tables {
		p.tables[i] = readout.New([]string{"", "", "Difference"}, rowNames[i])
		p.titles[i] = form.Heading(titles[i])
		p.body.Add(p.titles[i])
		p.body.Add(p.tables[i])
	}
	for table, parts := range shares {
		p.tables[table].SetShares(parts[0], parts[1:]...)
	}
	p.body.Add(p.plan)
	row := container.NewBorder(nil, nil, container.New(form.FixedWidth(100), widget.NewLabel("Compare with")), nil, p.choice)
	p.Object = form.Group(row, p.verdict, p.body)
	return p
}

// compare holds the current setup against another one; below zero against none.
func (p *Part) compare(setup int) {
	if setup < 0 {
		p.study.Compare()
	} else {
		p.study.Compare(setup)
	}
}

// Other returns the setup that the current one is held against on screen, or
// nil: the first one compared.
func Other(s *study.Study) *study.Comparison {
	if others := s.Others(); len(others) > 0 {
		return others[0]
	}
	return nil
}

// Chosen returns the setup chosen for comparison on screen, even while it is
// the current one, and false when there is none.
func Chosen(s *study.Study) (setup int, chosen bool) {
	if list := s.Chosen(); len(list) > 0 {
		return list[0], true
	}
	return 0, false
}

// Refresh writes words and numbers.
func (p *Part) Refresh() {
	p.choice.Update()
	other, c := Other(p.study), p.study.Document().Car()
	if other == nil {
		text := ""
		if i, chosen := Chosen(p.study); chosen {
			text = fmt.Sprintf("%q is the current setup. Click another one in the list to hold it against this.", c.Setups[i].Name)
		}
		p.verdict.Set(text)
		p.body.Hide()
		return
	}
	p.body.Show()
	a, u := p.study.Result(), p.study.Units()
	names := [2]string{c.Setups[a.Options.Setup].Name, c.Setups[other.Setup].Name}
	launches := p.launches()
	p.verdict.Set(words.Compare(words.Setup{Name: names[0], Result: a, Launch: launches[0]}, words.Setup{Name: names[1], Result: other.Result, Launch: launches[1]}, u))
	short := shortened(names)
	for _, t := range p.tables {
		t.SetHeading(columnA, short[0])
		t.SetHeading(columnB, short[1])
	}
	p.writeRide(a, other.Result, u)
	p.writeTravel(a, other.Result, u)
	p.writeForces(tableHit, analysis.Hit, a, other.Result, u)
	p.writeForces(tableHooked, analysis.Hooked, a, other.Result, u)
	p.writeLaunch(a, other.Result, launches, u)
	p.writePlan(names, c, a.Options.Setup, other.Setup, u)
}

// options lists what the current setup can be held against: nothing, and all
// setups.
func (p *Part) options() []string {
	c := p.study.Document().Car()
	none := "no other setup"
	for c.SetupNamed(none) >= 0 {
		none = "(" + none + ")"
	}
	options := []string{none}
	for i := range c.Setups {
		options = append(options, c.Setups[i].Name)
	}
	return options
}

// chosen returns which of the options it is.
func (p *Part) chosen() string {
	i, chosen := Chosen(p.study)
	if !chosen {
		i = -1
	}
	return p.options()[i+1]
}

// set writes a row: both values, and by how much the second differs.
func (p *Part) set(table, row int, a, b, by string) {
	for column, text := range []string{a, b, by} {
		p.tables[table].Set(row, column, text, "")
	}
}

// writeRide writes what is so at ride height.
func (p *Part) writeRide(a, b *analysis.Result, u units.System) {
	const none = "parallel bars"
	ahead, up, by := [2]string{none, none}, [2]string{"—", "—"}, [2]string{"—", "—"}
	for i, r := range []*analysis.Result{a, b} {
		if ride := &r.Ride; ride.HasInstantCenter {
			ahead[i], up[i] = u.Format(units.Length, ride.InstantCenter.X), u.Format(units.Length, ride.InstantCenter.Y)
		}
	}
	switch was, is := &a.Ride, &b.Ride; {
	case was.HasInstantCenter && is.HasInstantCenter:
		by[0] = words.Ahead(was.InstantCenter.X, is.InstantCenter.X, u)
		by[1] = words.Up(was.InstantCenter.Y, is.InstantCenter.Y, u)
	case !was.HasInstantCenter && !is.HasInstantCenter:
		by[0] = words.Same
	}
	p.set(tableRide, 0, ahead[0], ahead[1], by[0])
	p.set(tableRide, 1, up[0], up[1], by[1])
	squat, squatBy := [2]string{"upright", "upright"}, "—"
	for i, r := range []*analysis.Result{a, b} {
		if r.Ride.HasAntiSquat {
			squat[i] = u.Format(units.Percent, r.Ride.AntiSquat)
		}
	}
	if a.Ride.HasAntiSquat && b.Ride.HasAntiSquat {
		squatBy = words.Difference(u, units.Percent, a.Ride.AntiSquat, b.Ride.AntiSquat, "more", "less")
	}
	p.set(tableRide, 2, squat[0], squat[1], squatBy)
	for i, r := range []*analysis.Result{a, b} {
		if r.Ride.HasAntiSquat {
			p.tables[tableRide].Set(2, i, squat[i], panel.TargetColor(r, r.Ride.AntiSquat))
		}
	}
	for _, pair := range car.Pairs {
		was, is := a.Bars[pair].Length, b.Bars[pair].Length
		p.set(tableRide, 3+int(pair), u.Format(units.Length, was), u.Format(units.Length, is), words.Difference(u, units.Length, was, is, "longer", "shorter"))
	}
}

// writeTravel writes what goes on over the travel.
func (p *Part) writeTravel(a, b *analysis.Result, u units.System) {
	was, is := overTravel(a), overTravel(b)
	by := "—"
	if was.squats && is.squats {
		by = words.Points(is.squatWidth()-was.squatWidth(), 0, "wider", "narrower")
	}
	p.set(tableTravel, 0, was.squatText(), is.squatText(), by)
	angle := func(x float64) string { return u.Format(units.Angle, x) }
	for i, of := range []func(*swing) float64{
		func(s *swing) float64 { return s.pinion[1] - s.pinion[0] },
		func(s *swing) float64 { return s.pinion[1] },
		func(s *swing) float64 { return 0 - s.pinion[0] },
	} {
		p.set(tableTravel, 1+i, angle(of(&was)), angle(of(&is)), words.Difference(u, units.Angle, of(&was), of(&is), "more", "less"))
	}
}

// swing is how far a setup's numbers go over the travel.
type swing struct {
	squats bool       // there is an anti-squat at any travel
	squat  [2]float64 // least and greatest anti-squat [1]
	pinion [2]float64 // least and greatest turn of the housing, nose-up positive [rad]
}

// overTravel finds the ends that numbers reach.
func overTravel(r *analysis.Result) swing {
	var s swing
	s.pinion[0], s.pinion[1] = r.PinionRange()
	s.squat[0], s.squat[1], s.squats = r.AntiSquatRange()
	return s
}

// squatText writes the range of anti-squat.
func (s *swing) squatText() string {
	if !s.squats {
		return "upright"
	}
	return units.Decimal(100*s.squat[0], 0) + " to " + units.WholePercent(s.squat[1])
}

// squatWidth returns how wide that range is as it is written [%].
func (s *swing) squatWidth() float64 { return math.Round(100*s.squat[1]) - math.Round(100*s.squat[0]) }

// writeForces writes the most that a bar carries in a load case.
func (p *Part) writeForces(table int, load analysis.Case, a, b *analysis.Result, u units.System) {
	was, is := a.Most(load), b.Most(load)
	for _, pair := range car.Pairs {
		for i, way := range column.Directions {
			row, from, to := 2*int(pair)+i, was[pair][way], is[pair][way]
			p.set(table, row, "", "", words.Difference(u, units.Force, from.Force, to.Force, "more", "less"))
			for side, use := range []analysis.Use{from, to} {
				text, color := useWords(use, u)
				p.tables[table].Set(row, side, text, color)
			}
		}
	}
}

// useWords writes a force with its share of the limit, and its color.
func useWords(use analysis.Use, u units.System) (string, fyne.ThemeColorName) {
	if use.Force == 0 {
		return words.Use(use, u), ""
	}
	return words.Use(use, u), panel.ShareColor(use.Share)
}

// writePlan writes turns, and how to get from the current setup to the other.
func (p *Part) writePlan(names [2]string, c *car.Car, a, b int, u units.System) {
	to := &c.Setups[b]
	plan, err := adjuster.Plan(c, a, to.Holes, to.Turns)
	if err != nil {
		p.plan.Set(words.NoSetupPlan(names[0], names[1], err))
	} else {
		p.plan.Set(words.SetupPlan(names[0], names[1], &plan, u))
	}
	for i, bar := range car.BarTurns {
		by := "—"
		if err == nil {
			pair := &plan.Pairs[i/2]
			by = words.Turn([]adjuster.BarChange{pair.Left, pair.Right}[i%2].Turn())
		}
		p.set(tableTurns, i, words.OwnTurns(*bar.Of(&c.Setups[a].Turns)), words.OwnTurns(*bar.Of(&to.Turns)), by)
	}
}

// Package compare compares the current setup with others, in words and in numbers
// side by side: a part of the page of setups.
package compare

import (
	"fmt"
	"math"
	"strings"

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
	"gonum.org/v1/gonum/spatial/r2"
)

// Part compares the current setup with others: words, numbers side by side with
// their differences, and how to get there.
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
		tableRide:   {"IC ahead", "IC up", "Anti-squat", "Upper bars", "Lower bars", "Roll, bars", "Roll limit"},
		tableTravel: {"Anti-squat", "Pinion in all", "Pinion up", "Pinion down"},
		tableHit:    {"Upper push", "Upper pull", "Lower push", "Lower pull"},
		tableHooked: {"Upper push", "Upper pull", "Lower push", "Lower pull"},
		tableLaunch: {"60 ft", "UL push", "UL pull", "UR push", "UR pull", "LL push", "LL pull", "LR push", "LR pull", "Front lift", "Wheels off"},
		tableTurns:  words.BarInitials(),
	}
)

// beside is how many setups stand side by side: the current one and the first
// that it is compared with.
const beside = 2

// headings are those of the tables before the setups have their names there: a
// column for each setup, then one for what each but the first differs by.
func headings() []string {
	list := make([]string, beside, 2*beside-1)
	for range beside - 1 {
		list = append(list, "Difference")
	}
	return list
}

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
		p.tables[i] = readout.New(headings(), rowNames[i])
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

// compare compares the current setup with another one; below zero with none.
func (p *Part) compare(setup int) {
	if setup < 0 {
		p.study.Compare()
	} else {
		p.study.Compare(setup)
	}
}

// setups returns the current setup and those that it is compared with, as many as
// stand side by side. They are without launches while one is not that of the car
// as it is.
func (p *Part) setups() []words.Setup {
	doc := p.study.Document()
	list := []words.Setup{{Name: doc.Car().Setups[doc.Setup()].Name, Result: p.study.Result(), Launch: p.study.Launch()}}
	for _, o := range p.study.Others() {
		list = append(list, words.Setup{Name: o.Name, Result: o.Result, Launch: o.Launch})
	}
	list = list[:min(len(list), beside)]
	if p.study.LaunchOutdated() {
		for i := range list {
			list[i].Launch = nil
		}
	}
	return list
}

// Refresh writes words and numbers.
func (p *Part) Refresh() {
	p.choice.Update()
	list := p.setups()
	if len(list) < beside {
		text := ""
		if chosen := p.study.Chosen(); len(chosen) > 0 {
			text = fmt.Sprintf("%q is the current setup. Click another one in the list to hold it against this.", list[0].Name)
		}
		p.verdict.Set(text)
		p.body.Hide()
		return
	}
	p.body.Show()
	u := p.study.Units()
	var verdicts []string
	for _, other := range list[1:] {
		verdicts = append(verdicts, words.Compare(list[0], other, u))
	}
	p.verdict.Set(strings.Join(verdicts, "\n"))
	for column, name := range shortened(list) {
		for _, t := range p.tables {
			t.SetHeading(column, name)
		}
	}
	p.writeRide(list, u)
	p.writeRoll(list, u)
	p.writeTravel(list, u)
	p.writeForces(tableHit, analysis.Hit, list, u)
	p.writeForces(tableHooked, analysis.Hooked, list, u)
	p.writeLaunch(list, u)
	p.writePlan(list, u)
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
	option := 0
	if chosen := p.study.Chosen(); len(chosen) > 0 {
		option = 1 + chosen[0]
	}
	return p.options()[option]
}

// write writes a row: the value of each setup with its color, and what each but
// the first differs by from that.
func (p *Part) write(table, row int, value func(setup int) (string, fyne.ThemeColorName), by func(setup int) string) {
	for i := range beside {
		text, color := value(i)
		p.tables[table].Set(row, i, text, color)
	}
	for i := 1; i < beside; i++ {
		p.tables[table].Set(row, beside+i-1, by(i), "")
	}
}

// plain is a value in the usual color.
func plain(value func(setup int) string) func(int) (string, fyne.ThemeColorName) {
	return func(setup int) (string, fyne.ThemeColorName) { return value(setup), "" }
}

// writeRide writes what is so at ride height.
func (p *Part) writeRide(list []words.Setup, u units.System) {
	ride := func(i int) *analysis.Station { return &list[i].Result.Ride }
	center := func(none string, of func(r2.Vec) float64) func(int) (string, fyne.ThemeColorName) {
		return plain(func(i int) string {
			if !ride(i).HasInstantCenter {
				return none
			}
			return u.Format(units.Length, of(ride(i).InstantCenter))
		})
	}
	p.write(tableRide, 0, center("parallel bars", func(c r2.Vec) float64 { return c.X }), func(i int) string {
		switch was, is := ride(0), ride(i); {
		case was.HasInstantCenter && is.HasInstantCenter:
			return words.Ahead(was.InstantCenter.X, is.InstantCenter.X, u)
		case !was.HasInstantCenter && !is.HasInstantCenter:
			return words.Same
		}
		return "—"
	})
	p.write(tableRide, 1, center("—", func(c r2.Vec) float64 { return c.Y }), func(i int) string {
		if !ride(0).HasInstantCenter || !ride(i).HasInstantCenter {
			return "—"
		}
		return words.Up(ride(0).InstantCenter.Y, ride(i).InstantCenter.Y, u)
	})
	p.write(tableRide, 2, func(i int) (string, fyne.ThemeColorName) {
		if !ride(i).HasAntiSquat {
			return "upright", ""
		}
		return u.Format(units.Percent, ride(i).AntiSquat), panel.TargetColor(list[i].Result, ride(i).AntiSquat)
	}, func(i int) string {
		if !ride(0).HasAntiSquat || !ride(i).HasAntiSquat {
			return "—"
		}
		return words.Difference(u, units.Percent, ride(0).AntiSquat, ride(i).AntiSquat, "more", "less")
	})
	for _, pair := range car.Pairs {
		length := func(i int) float64 { return list[i].Result.Bars[pair].Length }
		p.write(tableRide, 3+int(pair),
			plain(func(i int) string { return u.Format(units.Length, length(i)) }),
			func(i int) string {
				return words.Difference(u, units.Length, length(0), length(i), "longer", "shorter")
			})
	}
}

// writeTravel writes what goes on over the travel.
func (p *Part) writeTravel(list []words.Setup, u units.System) {
	swings := make([]swing, len(list))
	for i := range list {
		swings[i] = overTravel(list[i].Result)
	}
	p.write(tableTravel, 0, plain(func(i int) string { return swings[i].squatText() }), func(i int) string {
		if !swings[0].squats || !swings[i].squats {
			return "—"
		}
		return words.Points(swings[i].squatWidth()-swings[0].squatWidth(), 0, "wider", "narrower")
	})
	for row, of := range []func(*swing) float64{
		func(s *swing) float64 { return s.pinion[1] - s.pinion[0] },
		func(s *swing) float64 { return s.pinion[1] },
		func(s *swing) float64 { return 0 - s.pinion[0] },
	} {
		p.write(tableTravel, 1+row,
			plain(func(i int) string { return u.Format(units.Angle, of(&swings[i])) }),
			func(i int) string {
				return words.Difference(u, units.Angle, of(&swings[0]), of(&swings[i]), "more", "less")
			})
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
func (p *Part) writeForces(table int, load analysis.Case, list []words.Setup, u units.System) {
	most := make([][2][2]analysis.Use, len(list))
	for i := range list {
		most[i] = list[i].Result.Most(load)
	}
	for _, pair := range car.Pairs {
		for i, way := range column.Directions {
			p.write(table, 2*int(pair)+i,
				func(i int) (string, fyne.ThemeColorName) { return useWords(way, most[i][pair][way], u) },
				func(i int) string {
					return words.Difference(u, units.Force, most[0][pair][way].Force, most[i][pair][way].Force, "more", "less")
				})
		}
	}
}

// useWords writes a force with its share of the limit, and its color.
func useWords(way column.Direction, use analysis.Use, u units.System) (string, fyne.ThemeColorName) {
	return words.Use(use, u), panel.LoadColor(way, use.Share)
}

// writePlan writes turns, and how to get from the current setup to the others.
func (p *Part) writePlan(list []words.Setup, u units.System) {
	c := p.study.Document().Car()
	setup := func(i int) *car.Setup { return &c.Setups[list[i].Result.Options.Setup] }
	plans, texts := make([]*adjuster.Change, len(list)), []string(nil)
	for i := 1; i < len(list); i++ {
		plan, err := adjuster.Plan(c, list[0].Result.Options.Setup, setup(i).Holes, setup(i).Turns)
		if err != nil {
			texts = append(texts, words.NoSetupPlan(list[0].Name, list[i].Name, err))
			continue
		}
		plans[i] = &plan
		texts = append(texts, words.SetupPlan(list[0].Name, list[i].Name, &plan, u))
	}
	p.plan.Set(strings.Join(texts, "\n"))
	for row, bar := range car.BarTurns {
		p.write(tableTurns, row,
			plain(func(i int) string { return words.OwnTurns(*bar.Of(&setup(i).Turns)) }),
			func(i int) string {
				if plans[i] == nil {
					return "—"
				}
				pair := &plans[i].Pairs[row/2]
				return words.Turn([]adjuster.BarChange{pair.Left, pair.Right}[row%2].Turn())
			})
	}
}

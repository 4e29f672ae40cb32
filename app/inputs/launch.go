package inputs

import (
	"strings"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// TitleLocator is the title of the section of the axle's locator.
const TitleLocator = "Axle locator"

// setupNumber is one plain number of the current setup.
type setupNumber struct {
	in func(c *car.Car, setup int) *float64
}

// at returns the number of the setup that is shown.
func (s *setupNumber) at(v view) *number {
	return &number{quantity: units.Number, in: func(c *car.Car) *float64 { return s.in(c, v.setup) }}
}

func (s *setupNumber) text(v view, full bool) string { return s.at(v).text(v, full) }

func (s *setupNumber) parse(typed string, v view) (func(*car.Car), error) {
	return s.at(v).parse(typed, v)
}

// flats are the parts of a turn that a wrench goes by.
const flats = 6

func (s *setupNumber) stepped(typed string, count int, v view) (string, bool) {
	x, err := s.at(v).read(typed, v)
	if err != nil {
		return "", false
	}
	return digits(x+float64(count)/flats, 6), true
}

// fillTurns adds the rows of the preload in the current setup.
func fillTurns(s *section) {
	for _, t := range car.BarTurns {
		a := about{
			label: "Turns " + initials(t.Label), action: "Turn " + lower(t.Label),
			help: t.Label + ": turns of the tube from where the bar is at rest without preload: above zero it is longer. A flat is a sixth of a turn, and one step of the arrow keys.",
		}
		s.setupRow(t.Key, a, newEntry(&setupNumber{in: func(c *car.Car, setup int) *float64 { return t.Of(&c.Setups[setup].Turns) }}))
	}
}

// initials shortens "Upper left bar" to "UL".
func initials(label string) string {
	words := strings.Fields(strings.ToUpper(label))
	return words[0][:1] + words[1][:1]
}

// fillLocator fills the section of the bar that holds the axle sideways.
func fillLocator(s *section) {
	s.choice(about{path: "locator.kind", label: "Kind", help: "A track bar runs across the car; a diagonal link runs from one lower bar's front to the other's rear.", action: "Choose locator"},
		newChoice(
			func(view) []string { return car.LocatorKinds },
			func(v view) string { return v.car.Launch.Locator.Kind },
			func(c *choice, i int) { c.set(func(to *car.Car) { to.Launch.Locator.Kind = car.LocatorKinds[i] }) }))
	ends := []struct {
		path, label, help string
		in                func(*car.Car) *car.End
	}{
		{"locator.chassis", "Chassis end", "x forward of the rear axle centerline, y left of the car's middle, z above the ground, at ride height.", func(c *car.Car) *car.End { return &c.Launch.Locator.Chassis }},
		{"locator.housing", "Housing end", "x forward of, y left of the middle of, z above the axle centerline.", func(c *car.Car) *car.End { return &c.Launch.Locator.Housing }},
	}
	for _, e := range ends {
		given := func(v view) bool { return e.in(v.car).Given }
		s.row(about{help: "Without it the end stands where such a bar's usually does.", action: "Set " + lower(e.label)},
			newCheck(e.label+" is given", given, func(c *car.Car, on bool) { *e.in(c) = car.End{Given: on, At: e.in(c).At} })).wide = true
		coordinate := func(of func(*r3.Vec) *float64) *entry {
			return newEntry(&number{quantity: units.Length, in: func(c *car.Car) *float64 { return of(&e.in(c).At) }})
		}
		r := s.row(about{path: e.path, label: e.label + ", x, y and z", help: e.help, action: "Set " + lower(e.label), allowed: reachRange},
			coordinate(func(p *r3.Vec) *float64 { return &p.X }), coordinate(func(p *r3.Vec) *float64 { return &p.Y }), coordinate(func(p *r3.Vec) *float64 { return &p.Z }))
		r.quantity, r.wanted = units.Length, given
	}
	s.numbers("locator")
}

// chooseDirection adds the row of the way the engine turns.
func chooseDirection(s *section) {
	s.choice(about{path: "drive.direction", label: "Engine turns", help: "Seen from the front. It decides which side's bars the driveshaft's torque loads.", action: "Choose direction"},
		newChoice(
			func(view) []string { return car.Directions },
			func(v view) string { return v.car.Launch.Engine.Direction },
			func(c *choice, i int) { c.set(func(to *car.Car) { to.Launch.Engine.Direction = car.Directions[i] }) }))
}

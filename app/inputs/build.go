package inputs

import (
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/gonum/spatial/r2"
)

// Titles of the sections, as OpenSections and SetOpenSections use them.
const (
	TitleSetup     = "Setup"
	TitleCar       = "Car"
	TitleTires     = "Tires"
	TitleChassis   = "Chassis holes"
	TitleHousing   = "Housing holes"
	TitleUpperBars = "Upper bars"
	TitleLowerBars = "Lower bars"
	TitleSprings   = "Springs"
	TitleDrive     = "Drive"
	TitleDriveline = "Driveline"
	TitleCheck     = "Check"
)

// build makes the sections: those with more in them than plain numbers, and
// before the last one whatever other tables of plain numbers a car has.
func (p *Panel) build() {
	p.section(TitleSetup, fillSetup)
	p.section(TitleCar, func(s *section) {
		s.text(about{path: "car.name", label: "Name", help: "What the car is called, on screen and on paper.", action: "Rename car"},
			func(c *car.Car) *string { return &c.Body.Name })
		s.numbers("car")
	})
	p.section(TitleTires, func(s *section) { s.numbers("tires") })
	p.section(TitleChassis, func(s *section) { fillHoles(s, "chassis_bracket", car.ChassisUpper, car.ChassisLower) })
	p.section(TitleHousing, func(s *section) { fillHoles(s, "housing_bracket", car.HousingUpper, car.HousingLower) })
	p.section(TitleUpperBars, func(s *section) { fillBars(s, car.Upper) })
	p.section(TitleLowerBars, func(s *section) { fillBars(s, car.Lower) })
	p.section(TitleSprings, fillSprings)
	p.section(TitleDrive, fillDrive)
	p.section(TitleDriveline, fillDriveline)
	p.section(TitleLocator, fillLocator)
	for _, t := range car.Sections {
		if t.Table != "check" && len(t.Fields) > 0 && p.rowAt(t.Fields[0].Path) == nil {
			p.section(t.Title, func(s *section) { s.numbers(t.Table) })
		}
	}
	p.section(TitleCheck, fillCheck)
}

// section adds a section.
func (p *Panel) section(title string, fill func(*section)) {
	s := newSection(p, title)
	fill(s)
	p.sections = append(p.sections, s)
}

func fillSprings(s *section) {
	s.numbers("springs")
	s.point(about{path: "springs.rear_axle_mount", label: "Rear axle mount, x and z", help: "Lower end of a rear spring: x forward of, z above the axle centerline.", action: "Set rear axle mount"},
		func(c *car.Car) *r2.Vec { return &c.Springs.RearAxleMount })
	s.point(about{path: "springs.rear_chassis_mount", label: "Rear chassis mount, x and z", help: "Upper end of a rear spring: x forward of the rear axle centerline, z above the ground, at ride height.", action: "Set rear chassis mount"},
		func(c *car.Car) *r2.Vec { return &c.Springs.RearChassisMount })
}

func fillDrive(s *section) {
	s.numbers("drive")
	chooseDirection(s)
	s.readout(about{label: "Axle torque", help: "What the engine can put on the rear axle at launch: engine torque × converter × gear × axle ratio × efficiency."}, units.Torque,
		func(c *car.Car) float64 { return c.AxleTorque() })
	s.readout(about{label: "Engine power", help: "Engine torque × engine speed at launch."}, units.Power,
		func(c *car.Car) float64 { return c.Power() })
}

func fillCheck(s *section) {
	s.numbers("check")
	s.choice(about{path: "check.column", label: "Column curve", help: "How the strength of a bar in push falls with its length. Whatever is chosen, first yield under the initial bow limits the push too."},
		newChoice(
			func(view) []string {
				var titles []string
				for _, curve := range column.Curves() {
					titles = append(titles, curve.Title())
				}
				return titles
			},
			func(v view) string { return curveOf(v).Title() },
			func(c *choice, i int) {
				c.set(func(to *car.Car) { to.Check.Column = column.Curves()[i].String() })
			}))
	s.remark(func(v view) string { return curveOf(v).Describe() })
	fillTarget(s)
}

// curveOf returns the column curve of a car.
func curveOf(v view) column.Curve {
	curve, err := column.ParseCurve(v.car.Check.Column)
	if err != nil {
		return -1 // A valid car has none of that name.
	}
	return curve
}

// reach is how far from the axle a place on the car may be, as car.Validate has it.
const reach = 400 * units.Inch

// reachRange writes the allowed coordinates.
func reachRange(s units.System) string {
	return s.FormatExact(units.Length, -reach) + " to " + s.FormatExact(units.Length, reach)
}

// coordinates returns the entries of a place on the car.
func coordinates(at func(*car.Car) *r2.Vec) (x, z *entry) {
	return newEntry(&number{quantity: units.Length, in: func(c *car.Car) *float64 { return &at(c).X }}),
		newEntry(&number{quantity: units.Length, in: func(c *car.Car) *float64 { return &at(c).Y }})
}

// point adds the row of a place on the car.
func (s *section) point(a about, at func(*car.Car) *r2.Vec) *row {
	a.allowed = reachRange
	x, z := coordinates(at)
	r := s.row(a, x, z)
	r.quantity = units.Length
	return r
}

// remark is a paragraph that follows the car.
type remark struct {
	prose *prose
	panel *Panel
	text  func(view) string
}

// remark adds a paragraph.
func (s *section) remark(text func(view) string) {
	r := &remark{newProse("", theme.ColorNamePlaceHolder), s.panel, text}
	s.add(r, r.prose)
}

func (r *remark) rows() []*row { return nil }

func (r *remark) show(v view) {
	if r.prose.set(r.text(v)) {
		r.panel.loose = true
	}
}

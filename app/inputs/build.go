package inputs

import (
	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

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
	TitleLocator   = "Axle locator"
	TitleCheck     = "Check"
)

// build makes the sections: those with more in them than plain numbers, and
// before the last one whatever other tables of plain numbers a car has.
func (f *Fields) build() {
	f.section(TitleSetup, fillSetup)
	f.section(TitleCar, fillCar)
	f.section(TitleTires, func(s *section) { s.numbers("tires") })
	f.section(TitleChassis, func(s *section) { fillHoles(s, "chassis_bracket", car.ChassisUpper, car.ChassisLower) })
	f.section(TitleHousing, func(s *section) { fillHoles(s, "housing_bracket", car.HousingUpper, car.HousingLower) })
	f.section(TitleUpperBars, func(s *section) { fillBars(s, car.Upper) })
	f.section(TitleLowerBars, func(s *section) { fillBars(s, car.Lower) })
	f.section(TitleSprings, fillSprings)
	f.section(TitleDrive, fillDrive)
	f.section(TitleDriveline, fillDriveline)
	f.section(TitleLocator, fillLocator)
	for _, t := range car.Sections {
		if t.Table != "check" && len(t.Fields) > 0 && f.Row(t.Fields[0].Path) == nil {
			f.section(t.Title, func(s *section) { s.numbers(t.Table) })
		}
	}
	f.section(TitleCheck, fillCheck)
}

// section adds a section.
func (f *Fields) section(title string, fill func(*section)) {
	fill(&section{Section: f.Section(title), of: f})
}

func fillSprings(s *section) {
	s.numbers("springs")
	s.point("Set rear axle mount", form.About{Path: "springs.rear_axle_mount", Label: "Rear axle mount, x and z", Help: "Lower end of a rear spring: x forward of, z above the axle centerline."},
		func(c *car.Car) *r2.Vec { return &c.Springs.RearAxleMount })
	s.point("Set rear chassis mount", form.About{Path: "springs.rear_chassis_mount", Label: "Rear chassis mount, x and z", Help: "Upper end of a rear spring: x forward of the rear axle centerline, z above the ground, at ride height."},
		func(c *car.Car) *r2.Vec { return &c.Springs.RearChassisMount })
}

func fillDrive(s *section) {
	s.numbers("drive")
	s.choice("Choose direction", form.About{Path: "drive.direction", Label: "Engine turns", Help: "Seen from the front. It decides which side's bars the driveshaft's torque loads."},
		car.Directions, func(c *car.Car) *string { return &c.Launch.Engine.Direction })
	s.readout(form.About{Label: "Axle torque", Help: "What the engine can put on the rear axle at launch: engine torque × converter × gear × axle ratio × efficiency."}, units.Torque,
		func(c *car.Car) float64 { return c.AxleTorque() })
	s.readout(form.About{Label: "Engine power", Help: "Engine torque × engine speed at launch."}, units.Power,
		func(c *car.Car) float64 { return c.Power() })
	addCurve(s, torqueCurve)
	addCurve(s, powerRamp)
}

func fillCheck(s *section) {
	s.numbers("check")
	var titles []string
	for _, curve := range column.Curves() {
		titles = append(titles, curve.Title())
	}
	s.pick("Set column curve", form.About{Path: "check.column", Label: "Column curve", Help: "How the strength of a bar in push falls with its length. Whatever is chosen, first yield under the initial bow limits the push too."},
		titles, func(c *car.Car) string { return curveOf(c).Title() },
		func(c *car.Car, i int) { c.Check.Column = column.Curves()[i].String() })
	s.Remark(func() string { return curveOf(s.of.doc.Car()).Describe() })
	fillTarget(s)
}

// curveOf returns the column curve of a car.
func curveOf(c *car.Car) column.Curve {
	curve, err := column.ParseCurve(c.Check.Column)
	if err != nil {
		return -1 // A valid car has none of that name.
	}
	return curve
}

package car

import (
	"bowline/model/column"
	"bowline/model/units"
)

// Field describes one number a person types: where it stands in the car file,
// what it means, its unit and the values it may take.
type Field struct {
	Path     string         // section and key in the car file, as in "tires.rear_radius"
	Label    string         // name on screen
	Help     string         // what to measure and how, one or two sentences
	Quantity units.Quantity // selects the unit
	Min, Max float64        // allowed values, both included, in SI
	Optional bool           // may be left out of a file
	Default  float64        // value when left out, in SI

	value func(*Car) *float64
}

// In returns the field's place in c.
func (f *Field) In(c *Car) *float64 { return f.value(c) }

// Range writes the allowed values with their unit, as in "0.5 in to 300 in".
func (f *Field) Range(s units.System) string {
	return bound(s, f.Quantity, f.Min) + " to " + bound(s, f.Quantity, f.Max)
}

// Section is a table of the car file and its fields in file order.
type Section struct {
	Table  string // as in "tires"
	Title  string // on screen
	Fields []*Field
}

// Limits of what counts as a drag car's part: far beyond any real one, near
// enough that a slipped decimal point or a wrong unit is caught.
const (
	inch  = units.Inch
	pound = units.Pound
	foot  = units.Foot
	lbf   = units.PoundForce
)

// Sections lists every plain number of a car file, in file order. Holes,
// mounts, names, targets and setups have their own kinds of editor.
var Sections = []Section{
	{"car", "Car", []*Field{
		{"car.wheelbase", "Wheelbase", "Rear axle centerline to front wheel center at ride height.", units.Length, 40 * inch, 400 * inch, false, 0, func(c *Car) *float64 { return &c.Body.Wheelbase }},
		{"car.weight", "Weight", "Race-ready, driver aboard, fuel as at the line.", units.Mass, 200 * pound, 20000 * pound, false, 0, func(c *Car) *float64 { return &c.Body.Mass }},
		{"car.rear_weight", "Weight on rear tires", "Both rear scales together, race-ready.", units.Mass, 50 * pound, 20000 * pound, false, 0, func(c *Car) *float64 { return &c.Body.RearMass }},
		{"car.cg_height", "CG height", "Whole car above the ground, race-ready; from weighing with one axle lifted.", units.Length, 2 * inch, 100 * inch, false, 0, func(c *Car) *float64 { return &c.Body.CGHeight }},
		{"car.unsprung_rear", "Unsprung rear", "Housing, gears, axles, brakes, wheels and tires together.", units.Mass, 10 * pound, 5000 * pound, false, 0, func(c *Car) *float64 { return &c.Body.UnsprungRear }},
		{"car.unsprung_front", "Unsprung front", "Both front wheels, tires, brakes and spindles together.", units.Mass, 2 * pound, 3000 * pound, false, 0, func(c *Car) *float64 { return &c.Body.UnsprungFront }},
		{"car.track_rear", "Rear track", "Tire center to tire center.", units.Length, 10 * inch, 150 * inch, false, 0, func(c *Car) *float64 { return &c.Body.TrackRear }},
		{"car.track_front", "Front track", "Tire center to tire center.", units.Length, 10 * inch, 150 * inch, false, 0, func(c *Car) *float64 { return &c.Body.TrackFront }},
	}},
	{"tires", "Tires", []*Field{
		{"tires.rear_radius", "Rear radius, loaded", "Ground to axle centerline with the car on its wheels.", units.Length, 4 * inch, 40 * inch, false, 0, func(c *Car) *float64 { return &c.Tires.RearRadius }},
		{"tires.front_radius", "Front radius, loaded", "Ground to spindle center with the car on its wheels.", units.Length, 4 * inch, 40 * inch, false, 0, func(c *Car) *float64 { return &c.Tires.FrontRadius }},
		{"tires.grip", "Grip", "Peak thrust over tire load on the track as prepared.", units.Number, 0.05, 10, false, 0, func(c *Car) *float64 { return &c.Tires.Grip }},
		{"tires.rear_spin_inertia", "Rear spin inertia", "Both rear wheels, tires, axles and ring gear about the axle.", units.SpinInertia, 0, 1e5 * pound * foot * foot, true, 0, func(c *Car) *float64 { return &c.Tires.RearSpinInertia }},
		{"tires.front_spin_inertia", "Front spin inertia", "Both front wheels and tires about the spindle.", units.SpinInertia, 0, 1e5 * pound * foot * foot, true, 0, func(c *Car) *float64 { return &c.Tires.FrontSpinInertia }},
	}},
	{"chassis_bracket", "Chassis bracket", []*Field{
		{"chassis_bracket.spread_upper", "Upper bars apart", "Left to right upper bar at the chassis, center to center.", units.Length, 1 * inch, 150 * inch, false, 0, func(c *Car) *float64 { return &c.Chassis.SpreadUpper }},
		{"chassis_bracket.spread_lower", "Lower bars apart", "Left to right lower bar at the chassis, center to center.", units.Length, 1 * inch, 150 * inch, false, 0, func(c *Car) *float64 { return &c.Chassis.SpreadLower }},
	}},
	{"housing_bracket", "Housing bracket", []*Field{
		{"housing_bracket.spread_upper", "Upper bars apart", "Left to right upper bar at the housing, center to center.", units.Length, 1 * inch, 150 * inch, false, 0, func(c *Car) *float64 { return &c.Housing.SpreadUpper }},
		{"housing_bracket.spread_lower", "Lower bars apart", "Left to right lower bar at the housing, center to center.", units.Length, 1 * inch, 150 * inch, false, 0, func(c *Car) *float64 { return &c.Housing.SpreadLower }},
	}},
	{"upper_bar", "Upper bars", barFields("upper_bar", func(c *Car) *Bar { return &c.UpperBar })},
	{"lower_bar", "Lower bars", barFields("lower_bar", func(c *Car) *Bar { return &c.LowerBar })},
	{"springs", "Springs", []*Field{
		{"springs.rear_rate", "Rear rate, each", "Of one rear spring along its own line.", units.SpringRate, 1 * lbf / inch, 10000 * lbf / inch, false, 0, func(c *Car) *float64 { return &c.Springs.RearRate }},
		{"springs.rear_droop", "Rear droop", "How far the rear wheel can fall from ride height.", units.Length, 0, 40 * inch, false, 0, func(c *Car) *float64 { return &c.Springs.RearDroop }},
		{"springs.rear_bump", "Rear bump", "How far the rear wheel can rise from ride height.", units.Length, 0, 40 * inch, false, 0, func(c *Car) *float64 { return &c.Springs.RearBump }},
		{"springs.front_droop", "Front droop", "How far the front wheel can fall from ride height.", units.Length, 0, 40 * inch, true, inches(4), func(c *Car) *float64 { return &c.Springs.FrontDroop }},
		{"springs.front_bump", "Front bump", "How far the front wheel can rise from ride height.", units.Length, 0, 40 * inch, true, inches(3), func(c *Car) *float64 { return &c.Springs.FrontBump }},
		{"springs.front_rate", "Front rate, each", "Of one front corner, measured at the wheel.", units.SpringRate, 1 * lbf / inch, 10000 * lbf / inch, false, 0, func(c *Car) *float64 { return &c.Springs.FrontRate }},
	}},
	{"drive", "Drive", []*Field{
		{"drive.torque", "Engine torque at launch", "At the flywheel, at launch speed.", units.Torque, 1 * lbf * foot, 20000 * lbf * foot, false, 0, func(c *Car) *float64 { return &c.Drive.Torque }},
		{"drive.rpm", "Engine speed at launch", "At the hit of the throttle or the transbrake's release.", units.Speed, units.US.ToSI(units.Speed, 100), units.US.ToSI(units.Speed, 30000), false, 0, func(c *Car) *float64 { return &c.Drive.Speed }},
		{"drive.converter", "Converter torque ratio", "At stall; 1 for a clutch.", units.Number, 1, 5, false, 0, func(c *Car) *float64 { return &c.Drive.Converter }},
		{"drive.gear", "First gear", "Transmission ratio at launch.", units.Number, 0.3, 10, false, 0, func(c *Car) *float64 { return &c.Drive.Gear }},
		{"drive.axle", "Axle ratio", "Pinion turns per wheel turn.", units.Number, 0.5, 20, false, 0, func(c *Car) *float64 { return &c.Drive.Axle }},
		{"drive.efficiency", "Driveline efficiency", "Axle torque over engine torque times the ratios.", units.Number, 0.1, 1, false, 0, func(c *Car) *float64 { return &c.Drive.Efficiency }},
	}},
	{"check", "Check", []*Field{
		{"check.factor", "Factor", "Capacity is divided by this before a load is held against it.", units.Number, 1, 20, true, column.DefaultFactor, func(c *Car) *float64 { return &c.Check.Factor }},
		{"check.crookedness", "Initial bow over length", "0.001 is a bow of one thousandth of the bar; measure yours with a straightedge.", units.Number, 0, 0.05, true, column.DefaultCrookedness, func(c *Car) *float64 { return &c.Check.Crookedness }},
	}},
}

// barFields are the numbers of one pair of bars.
func barFields(table string, bar func(*Car) *Bar) []*Field {
	return []*Field{
		{table + ".od", "Tube OD", "Outside diameter.", units.Length, 0.1 * inch, 12 * inch, false, 0, func(c *Car) *float64 { return &bar(c).OD }},
		{table + ".wall", "Wall", "Wall thickness; half the OD is a solid rod.", units.Length, 0.01 * inch, 6 * inch, false, 0, func(c *Car) *float64 { return &bar(c).Wall }},
	}
}

// FieldAt returns the field with the given path, or nil.
func FieldAt(path string) *Field { return byPath[path] }

var byPath = func() map[string]*Field {
	m := map[string]*Field{}
	for _, s := range Sections {
		for _, f := range s.Fields {
			m[f.Path] = f
		}
	}
	return m
}()

package carfile

import (
	"slices"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// key is one entry of a car file.
type key struct {
	name     string
	comment  string // for a new file
	optional bool   // absent, it has the value of car.Defaults
	path     string // of one that car.Car.Stated may have; empty for others
	beside   string // absent, it follows from this key of its table, if that is there
	fine     bool   // seldom typed: a new file leaves it out while it has its default
	kind
}

// kind is what stands behind a key and where its value goes in a car.
type kind interface {
	// read takes the value at path into c. What is wrong is noted and becomes
	// unknown.
	read(r *reader, path string, raw any, c *car.Car)
	// unknown gives the value in c a form that the rules for other values pass
	// over.
	unknown(c *car.Car)
	// value is what c has there, in the form of a file.
	value(c *car.Car) value
	// give tells what a right value is.
	give(s units.System) string
}

// tables are the tables of a car file in shop order.
var tables = func() []key {
	all := make([]key, 0, len(car.Sections)+2)
	for _, s := range car.Sections {
		if s.Table == "check" {
			all = append(all, key{name: "driveline", comment: "the driveshaft in side view", optional: true, kind: group{keys: drivelineKeys, given: func(c *car.Car) *bool { return &c.Driveline.Given }}})
		}
		keys := sectionKeys(s)
		required := slices.ContainsFunc(keys, func(k key) bool { return !k.optional })
		all = append(all, key{name: s.Table, comment: tableComments[s.Table], optional: !required, kind: group{keys: keys}})
	}
	return append(all, key{name: "setup", comment: "a choice of holes; numbers count from 1 in the order listed above", kind: setups{}})
}()

var tableComments = map[string]string{
	"chassis_bracket": "hole centers [x forward of the rear axle centerline, z above the ground], at ride height",
	"housing_bracket": "hole centers [x forward of, z above] the axle centerline",
	"upper_bar":       "both upper bars",
	"lower_bar":       "both lower bars",
	"locator":         "the bar that holds the axle sideways",
	"wheelie_bar":     "a wheel behind the rear tires, on the chassis",
}

// derived are the required numbers that another key of their table gives too.
var derived = map[string]string{"car.weight": "corner_weights", "car.rear_weight": "corner_weights"}

// sectionKeys puts the numbers of a table and its other keys in file order.
func sectionKeys(s car.Section) []key {
	keys := others[s.Table][""]
	for _, f := range s.Fields {
		name := f.Path[len(s.Table)+1:]
		keys = append(keys, key{name: name, comment: f.Help, optional: f.Optional, path: statable(f), beside: derived[f.Path], fine: f.Fine, kind: number{quantity: f.Quantity, field: f, at: f.In}})
		keys = append(keys, others[s.Table][name]...)
	}
	return keys
}

// statable returns the path of a field whose default a car may give itself.
func statable(f *car.Field) string {
	if !car.Statable(f.Path) {
		return ""
	}
	return f.Path
}

// others are the keys that car.Sections does not list, by table and the key
// they follow.
var others = map[string]map[string][]key{
	"car": {"": {{name: "name", kind: text{at: func(c *car.Car) *string { return &c.Body.Name }}}},
		"rear_weight": {{name: "corner_weights", comment: "The four scales, driver aboard, no preload dialed in.", optional: true, fine: true, kind: group{keys: scaleKeys(), given: func(c *car.Car) *bool { return &c.Body.Scales.Given }}}}},
	"chassis_bracket": {"": {
		{name: "upper", kind: row(car.ChassisUpper)},
		{name: "lower", kind: row(car.ChassisLower)},
	}},
	"housing_bracket": {"": {
		{name: "upper", kind: row(car.HousingUpper)},
		{name: "lower", kind: row(car.HousingLower)},
	}},
	"upper_bar": {"wall": barKeys(car.Upper)},
	"lower_bar": {"wall": barKeys(car.Lower)},
	"springs": {"rear_rate": {
		{name: "rear_axle_mount", comment: "From the axle centerline.", kind: point(func(c *car.Car) *r2.Vec { return &c.Springs.RearAxleMount })},
		{name: "rear_chassis_mount", comment: "In the chassis frame.", kind: point(func(c *car.Car) *r2.Vec { return &c.Springs.RearChassisMount })},
	}},
	"locator": {"": {
		{name: "kind", comment: "Selects where ends that are not given lie.", optional: true, path: "locator.kind", fine: true, kind: text{at: func(c *car.Car) *string { return &c.Launch.Locator.Kind }, names: func(*reader) []string { return car.LocatorKinds }}},
		{name: "chassis", comment: "Its end on the chassis, in the chassis frame.", optional: true, fine: true, kind: spot(func(c *car.Car) *car.End { return &c.Launch.Locator.Chassis })},
		{name: "housing", comment: "Its end on the axle, from the axle centerline.", optional: true, fine: true, kind: spot(func(c *car.Car) *car.End { return &c.Launch.Locator.Housing })},
	}},
	"drive": {"release_time": {
		{name: "direction", comment: "How the engine turns, seen from the front.", optional: true, path: "drive.direction", fine: true, kind: text{at: func(c *car.Car) *string { return &c.Launch.Engine.Direction }, names: func(*reader) []string { return car.Directions }}},
		{name: "curve", comment: "Shape of the engine's torque over its speed; it is scaled to pass through torque at rpm.", optional: true, fine: true, kind: curve},
		{name: "ramp", comment: "Share of the engine's torque over the seconds after the release, as boost or timing hold it back.", optional: true, fine: true, kind: ramp},
	}},
	"check": {"crookedness": {
		{name: "column", comment: "The column curve for bars in push.", optional: true, kind: text{at: func(c *car.Car) *string { return &c.Check.Column }, names: curveNames}},
		{name: "target_anti_squat", optional: true, kind: ends{units.Percent, func(c *car.Car) *[2]float64 { return &c.Check.TargetAntiSquat }}},
		{name: "target_ic", comment: "Where the instant center should be.", optional: true, kind: group{keys: []key{
			{name: "x", optional: true, kind: ends{units.Length, func(c *car.Car) *[2]float64 { return &c.Check.TargetICX }}},
			{name: "z", optional: true, kind: ends{units.Length, func(c *car.Car) *[2]float64 { return &c.Check.TargetICZ }}},
		}}},
	}},
}

// scaleKeys are the readings of the four scales.
func scaleKeys() []key {
	var keys []key
	for _, at := range car.ScalesAt {
		keys = append(keys, key{name: at.Key, kind: number{quantity: units.Mass, at: func(c *car.Car) *float64 { return at.Of(&c.Body.Scales) }}})
	}
	return keys
}

// barKeys are the texts of a pair of bars.
func barKeys(pair car.Pair) []key {
	return []key{
		{name: "material", comment: "A name in the material table.", kind: text{at: func(c *car.Car) *string { return &pair.Bar(c).Material }, names: materialNames}},
		{name: "rod_end", comment: "Thread of the rod ends, such as 3/4-16.", optional: true, kind: text{at: func(c *car.Car) *string { return &pair.Bar(c).RodEnd }}},
		{name: "adapter", comment: "The weld-in tube adapter that takes the rod end.", optional: true, kind: text{at: func(c *car.Car) *string { return &pair.Bar(c).Adapter }}},
	}
}

func materialNames(r *reader) []string { return r.library.MaterialNames() }

func curveNames(*reader) []string {
	names := make([]string, 0, len(column.Curves()))
	for _, c := range column.Curves() {
		names = append(names, c.String())
	}
	return names
}

var drivelineKeys = []key{
	{name: "transmission_joint", comment: "Front joint, in the chassis frame.", kind: point(func(c *car.Car) *r2.Vec { return &c.Driveline.TransmissionJoint })},
	{name: "pinion_joint", comment: "Rear joint, from the axle centerline.", kind: point(func(c *car.Car) *r2.Vec { return &c.Driveline.PinionJoint })},
	{name: "transmission_angle", comment: "Output shaft against the ground, nose-up positive.", optional: true, kind: number{quantity: units.Angle, at: func(c *car.Car) *float64 { return &c.Driveline.TransmissionAngle }}},
	{name: "pinion_angle", comment: "Pinion shaft against the ground, nose-up positive.", optional: true, kind: number{quantity: units.Angle, at: func(c *car.Car) *float64 { return &c.Driveline.PinionAngle }}},
}

// names lists the names of keys; the required ones only, if any are.
func names(keys []key, required bool) []string {
	var list []string
	for _, k := range keys {
		if !required || !k.optional {
			list = append(list, k.name)
		}
	}
	return list
}

package car

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"bowline/model/column"
	"bowline/model/linkage"
	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	// MaxHoles bounds the holes of one row.
	MaxHoles = 64
	// MaxSetups bounds the setups of one car.
	MaxSetups = 500
	// reach bounds where a hole, mount or joint may lie [m].
	reach = 400 * inch
)

// Validate returns everything that keeps c from being computed, in file
// order, or nothing. Values are written in the unit system s; materials are
// looked up in lib. A car without problems never makes the model fail.
func (c *Car) Validate(lib stock.Library, s units.System) []Problem {
	v := &validator{car: c, units: s}
	v.fields()
	v.inertias()
	v.relaxation()
	v.weights()
	v.scales()
	for _, row := range Rows {
		v.holes(row)
	}
	v.bar("upper_bar", c.UpperBar, lib)
	v.bar("lower_bar", c.LowerBar, lib)
	v.springs()
	v.locator()
	v.engine()
	v.driveline()
	v.check()
	v.setups()
	// What the parts do together means something only when each is right.
	if len(v.problems) == 0 {
		v.linkages(lib)
	}
	return v.problems
}

// validator collects problems.
type validator struct {
	car      *Car
	units    units.System
	problems []Problem
}

func (v *validator) add(path, wrong, right string) {
	v.problems = append(v.problems, Problem{Path: path, Wrong: wrong, Right: right})
}

func (v *validator) length(x float64) string { return v.units.FormatExact(units.Length, x) }

// mass writes a mass: as it was typed, or what scales read together.
func (v *validator) mass(x float64) string {
	if v.car.Body.Scales.Given {
		return v.reading(x)
	}
	return v.units.FormatExact(units.Mass, x)
}

// fields checks each plain number against its own range; scales does those that the
// scales give.
func (v *validator) fields() {
	for _, section := range Sections {
		for _, f := range section.Fields {
			if v.car.Body.Scales.Given && (f.Path == "car.weight" || f.Path == "car.rear_weight") {
				continue
			}
			if p, ok := f.Check(*f.In(v.car), v.units); !ok {
				v.problems = append(v.problems, p)
			}
		}
	}
}

// Check reports whether x is allowed, and if not what is wrong.
func (f *Field) Check(x float64, s units.System) (Problem, bool) {
	if x >= f.Min && x <= f.Max {
		return Problem{}, true
	}
	return Problem{f.Path, number(s, f.Quantity, x) + " is out of range", "give " + f.Range(s)}, false
}

// number writes a value with its unit, naming what is not a number.
func number(s units.System, q units.Quantity, x float64) string {
	switch {
	case math.IsNaN(x):
		return "nan"
	case math.IsInf(x, 0):
		return "an infinite value"
	}
	return s.FormatExact(q, x)
}

// bound writes a limit of a range, shortened to four digits.
func bound(s units.System, q units.Quantity, x float64) string {
	y, err := strconv.ParseFloat(strconv.FormatFloat(s.FromSI(q, x), 'g', 4, 64), 64)
	if err != nil {
		return s.FormatExact(q, x)
	}
	return s.FormatExact(q, s.ToSI(q, y))
}

// weights checks the masses and lengths of the car against each other.
func (v *validator) weights() {
	b, t := v.car.Body, v.car.Tires
	if strings.TrimSpace(b.Name) == "" {
		v.add("car.name", "the name is empty", "give the car a name")
	}
	if b.RearMass >= b.Mass {
		v.add("car.rear_weight", v.mass(b.RearMass)+" on the rear tires puts the CG on or behind the rear axle", "give less than the car's weight, "+v.mass(b.Mass))
	}
	if b.UnsprungRear >= b.RearMass {
		v.add("car.unsprung_rear", v.mass(b.UnsprungRear)+" leaves nothing for the rear springs to carry", "give less than the weight on the rear tires, "+v.mass(b.RearMass))
	}
	if front := b.Mass - b.RearMass; front > 0 && b.UnsprungFront >= front {
		v.add("car.unsprung_front", v.mass(b.UnsprungFront)+" leaves nothing for the front springs to carry", "give less than the weight on the front tires, "+v.units.Format(units.Mass, front))
	}
	if moment := b.Mass*b.CGHeight - b.UnsprungRear*t.RearRadius - b.UnsprungFront*t.FrontRadius; moment <= 0 && b.Mass > 0 {
		least := (b.UnsprungRear*t.RearRadius + b.UnsprungFront*t.FrontRadius) / b.Mass
		v.add("car.cg_height", v.length(b.CGHeight)+" puts the CG of the sprung mass on or below the ground", "give more than "+v.units.Format(units.Length, least))
	}
	if b.Wheelbase <= t.RearRadius+t.FrontRadius {
		v.add("car.wheelbase", v.length(b.Wheelbase)+" makes the front and rear tires overlap", "give more than the two tire radii together, "+v.units.Format(units.Length, t.RearRadius+t.FrontRadius))
	}
}

// holes checks one row of holes.
func (v *validator) holes(row Row) {
	list := *row.In(v.car)
	if n := len(list); n == 0 || n > MaxHoles {
		v.add(row.Path(), fmt.Sprintf("there are %d holes", n), fmt.Sprintf("give 1 to %d hole centers as [x, z]", MaxHoles))
	}
	for i, p := range list {
		v.point(fmt.Sprintf("%s.%d", row.Path(), i), p)
	}
}

// point checks a place on the car.
func (v *validator) point(path string, p r2.Vec) {
	if !(math.Abs(p.X) <= reach && math.Abs(p.Y) <= reach) {
		v.add(path, fmt.Sprintf("[%s, %s] is out of range", number(v.units, units.Length, p.X), number(v.units, units.Length, p.Y)),
			fmt.Sprintf("give x and z from −%s to %[1]s", bound(v.units, units.Length, reach)))
	}
}

// bar checks a tube.
func (v *validator) bar(table string, b Bar, lib stock.Library) {
	if b.Wall > b.OD/2 {
		v.add(table+".wall", v.length(b.Wall)+" is more than half the OD", "give at most "+v.length(b.OD/2))
	}
	if _, ok := lib.Material(b.Material); !ok {
		v.add(table+".material", fmt.Sprintf("material %q is not in the table", b.Material), "use one of "+quoted(lib.MaterialNames()))
	}
}

// springs checks mounts and travel.
func (v *validator) springs() {
	s := v.car.Springs
	v.point("springs.rear_axle_mount", s.RearAxleMount)
	v.point("springs.rear_chassis_mount", s.RearChassisMount)
	if s.RearDroop+s.RearBump == 0 {
		v.add("springs.rear_bump", "the rear has no travel", "give droop or bump above zero")
	}
	axle := r2.Add(r2.Vec{Y: v.car.Tires.RearRadius}, s.RearAxleMount)
	length := r2.Norm(r2.Sub(s.RearChassisMount, axle))
	if length <= s.RearBump+linkage.MinLength {
		v.add("springs.rear_chassis_mount", "the spring is "+v.units.Format(units.Length, length)+" long at ride height, no longer than the bump travel",
			"put the mounts farther apart than "+v.units.Format(units.Length, s.RearBump+linkage.MinLength))
	}
}

// driveline checks the optional driveshaft.
func (v *validator) driveline() {
	d := v.car.Driveline
	if !d.Given {
		return
	}
	v.point("driveline.transmission_joint", d.TransmissionJoint)
	v.point("driveline.pinion_joint", d.PinionJoint)
	rear := r2.Add(r2.Vec{Y: v.car.Tires.RearRadius}, d.PinionJoint)
	if length := r2.Norm(r2.Sub(d.TransmissionJoint, rear)); length < 4*inch {
		v.add("driveline.transmission_joint", "the driveshaft is "+v.units.Format(units.Length, length)+" long", "put the joints at least "+bound(v.units, units.Length, 4*inch)+" apart")
	}
	for _, a := range []struct {
		path  string
		angle float64
	}{{"driveline.transmission_angle", d.TransmissionAngle}, {"driveline.pinion_angle", d.PinionAngle}} {
		if !(math.Abs(a.angle) <= math.Pi/4) {
			v.add(a.path, number(v.units, units.Angle, a.angle)+" is out of range", "give −45° to 45°, nose-up positive")
		}
	}
}

// check checks targets and the column curve.
func (v *validator) check() {
	k := v.car.Check
	targets := []struct {
		path     string
		q        units.Quantity
		ends     [2]float64
		min, max float64
	}{
		{"check.target_anti_squat", units.Percent, k.TargetAntiSquat, -10, 10},
		{"check.target_ic.x", units.Length, k.TargetICX, -reach, reach},
		{"check.target_ic.z", units.Length, k.TargetICZ, -reach, reach},
	}
	for _, t := range targets {
		if lo, hi := t.ends[0], t.ends[1]; !(t.min <= lo && lo < hi && hi <= t.max) {
			v.add(t.path, fmt.Sprintf("from %s to %s is not a range", number(v.units, t.q, lo), number(v.units, t.q, hi)),
				fmt.Sprintf("give the least first, then the greatest, within %s to %s", bound(v.units, t.q, t.min), bound(v.units, t.q, t.max)))
		}
	}
	if _, err := column.ParseCurve(k.Column); err != nil {
		names := make([]string, 0, len(column.Curves()))
		for _, c := range column.Curves() {
			names = append(names, c.String())
		}
		v.add("check.column", fmt.Sprintf("column curve %q is unknown", k.Column), "use one of "+quoted(names))
	}
}

// setups checks names, hole numbers, turns and runs.
func (v *validator) setups() {
	if n := len(v.car.Setups); n == 0 || n > MaxSetups {
		v.add("setup", fmt.Sprintf("there are %d setups", n), fmt.Sprintf("give 1 to %d [[setup]] tables", MaxSetups))
	}
	seen := map[string]int{}
	for i := range v.car.Setups {
		s := &v.car.Setups[i]
		path := fmt.Sprintf("setup.%d", i)
		switch first, taken := seen[s.Name]; {
		case strings.TrimSpace(s.Name) == "":
			v.add(path+".name", "the name is empty", "give each setup a name of its own")
		case taken:
			v.add(path+".name", fmt.Sprintf("%q is the name of setup %d too", s.Name, first+1), "give each setup a name of its own")
		default:
			seen[s.Name] = i
		}
		for _, row := range Rows {
			holes := len(*row.In(v.car))
			if n := *row.Of(&s.Holes); (n < 0 || n >= holes) && holes > 0 {
				v.add(path+"."+row.SetupKey(), fmt.Sprintf("the %s bracket has no hole %d", row, n+1), fmt.Sprintf("give a number from 1 to %d", holes))
			}
		}
		for _, bar := range BarTurns {
			if n := *bar.Of(&s.Turns); !(math.Abs(n) <= MaxTurns) {
				v.add(path+"."+bar.Key, number(v.units, units.Number, n)+" turns are out of range", fmt.Sprintf("give −%d to %[1]d", MaxTurns))
			}
		}
		v.runs(path, s.Runs)
	}
}

// quoted lists names in quotes.
func quoted(names []string) string {
	q := make([]string, len(names))
	for i, n := range names {
		q[i] = strconv.Quote(n)
	}
	return strings.Join(q, ", ")
}

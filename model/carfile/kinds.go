package carfile

import (
	"fmt"
	"math"
	"strings"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// number is a plain number.
type number struct {
	quantity units.Quantity
	field    ranged // its range, if it has one of its own
	at       func(*car.Car) *float64
}

// ranged is what knows the range of a number.
type ranged interface {
	Check(x float64, s units.System) (car.Problem, bool)
	Range(s units.System) string
}

func (k number) read(r *reader, path string, raw any, c *car.Car) {
	x := r.number(path, raw, k.quantity, k.give(r.units))
	if k.field != nil && !r.distrusted(path) {
		if p, ok := k.field.Check(x, r.units); !ok {
			r.note(path, p.Wrong, p.Right)
			x = math.NaN()
		}
	}
	*k.at(c) = x
}

func (k number) unknown(c *car.Car) { *k.at(c) = math.NaN() }

func (k number) value(c *car.Car) value { return quantity{*k.at(c), k.quantity} }

func (k number) give(s units.System) string {
	if k.field == nil {
		return giveNumber
	}
	return "give " + k.field.Range(s)
}

// number reads a finite number with a unit; NaN stands for one that is wrong.
func (r *reader) number(path string, raw any, q units.Quantity, give string) float64 {
	shop, wrong := asNumber(raw)
	if wrong != "" {
		r.note(path, "is "+wrong, give)
		return math.NaN()
	}
	if r.unitless {
		r.distrust(path)
		return math.NaN()
	}
	return toSI(r.units, q, shop, r.literal(path))
}

// literal returns a value as the file has it; nothing for one that a migration
// made.
func (r *reader) literal(path string) string {
	at := r.doc.at[path].Value
	return r.text[at.Start:at.End]
}

// numbers reads a list with one number of each of the given quantities; NaN
// stands for what is wrong.
func (r *reader) numbers(path string, raw any, give string, quantities ...units.Quantity) []float64 {
	numbers := make([]float64, len(quantities))
	for i := range numbers {
		numbers[i] = math.NaN()
	}
	list, ok := raw.([]any)
	switch {
	case !ok:
		r.note(path, "is "+kindOf(raw), give)
		return numbers
	case len(list) != len(numbers):
		r.note(path, fmt.Sprintf("is a list of %d", len(list)), give)
		return numbers
	}
	for i, q := range quantities {
		shop, wrong := asNumber(list[i])
		switch {
		case wrong != "":
			r.note(path, "holds something that is "+wrong, give)
		case r.unitless:
			r.distrust(path)
		default:
			numbers[i] = toSI(r.units, q, shop, r.literal(indexPath(path, i)))
		}
	}
	return numbers
}

// text is a text; with names, one of those.
type text struct {
	at    func(*car.Car) *string
	names func(*reader) []string
}

func (k text) read(r *reader, path string, raw any, c *car.Car) {
	s, ok := raw.(string)
	if !ok {
		r.note(path, "is "+kindOf(raw), giveText)
	}
	*k.at(c) = s
	if !ok || k.names == nil {
		return
	}
	// An exact name differs from itself by nothing; the rules refuse the rest.
	if meant, ok := closest(s, k.names(r)); ok && meant != s {
		r.note(path, fmt.Sprintf("%q is unknown", s), didYouMean(meant))
	}
}

func (k text) unknown(c *car.Car) { *k.at(c) = "" }

func (k text) value(c *car.Car) value { return *k.at(c) }

func (k text) give(units.System) string { return giveText }

// hole is the number of a hole, counted from 1 in the file.
type hole func(*car.Car) *int

func (k hole) read(r *reader, path string, raw any, c *car.Car) {
	switch n := raw.(type) {
	case int64:
		*k(c) = int(n) - 1
		return
	case float64:
		r.note(path, "is no whole number", k.give(r.units))
	default:
		r.note(path, "is "+kindOf(raw), k.give(r.units))
	}
	k.unknown(c)
}

func (k hole) unknown(c *car.Car) { *k(c) = -1 }

func (k hole) value(c *car.Car) value { return *k(c) + 1 }

func (k hole) give(units.System) string {
	return "give the number of a hole without a decimal point, counted from 1"
}

// point is a place on the car, [x, z].
type point func(*car.Car) *r2.Vec

const givePoint = "give two numbers, [x, z]"

func (k point) read(r *reader, path string, raw any, c *car.Car) {
	pair := r.numbers(path, raw, givePoint, units.Length, units.Length)
	*k(c) = r2.Vec{X: pair[0], Y: pair[1]}
}

func (k point) unknown(c *car.Car) { *k(c) = r2.Vec{X: math.NaN(), Y: math.NaN()} }

func (k point) value(c *car.Car) value { return place(*k(c)) }

func (k point) give(units.System) string { return givePoint }

// place is a point in the form of a file.
func place(p r2.Vec) []value {
	return []value{quantity{p.X, units.Length}, quantity{p.Y, units.Length}}
}

// spot is a place on the car that may be left out, [x, y, z].
type spot func(*car.Car) *car.End

func (k spot) read(r *reader, path string, raw any, c *car.Car) {
	p := r.numbers(path, raw, k.give(r.units), units.Length, units.Length, units.Length)
	*k(c) = car.End{Given: true, At: r3.Vec{X: p[0], Y: p[1], Z: p[2]}}
}

func (k spot) unknown(c *car.Car) { *k(c) = car.End{} }

func (k spot) value(c *car.Car) value {
	if !k(c).Given {
		return nil
	}
	p := k(c).At
	return []value{quantity{p.X, units.Length}, quantity{p.Y, units.Length}, quantity{p.Z, units.Length}}
}

func (k spot) give(units.System) string { return "give three numbers, [x, y, z]" }

// pairs is a list of points of two numbers each that may be left out.
type pairs struct {
	first, second units.Quantity
	names         string // of the two numbers
	most          int    // points
	get           func(*car.Car) [][2]float64
	set           func(*car.Car, [][2]float64)
}

// curve is the engine's torque over its speed.
var curve = pairs{
	first: units.Speed, second: units.Torque, names: "[rpm, torque]", most: car.MaxCurve,
	get: func(c *car.Car) (list [][2]float64) {
		for _, p := range c.Launch.Engine.Curve {
			list = append(list, [2]float64{p.Speed, p.Torque})
		}
		return list
	},
	set: func(c *car.Car, list [][2]float64) {
		c.Launch.Engine.Curve = nil
		for _, p := range list {
			c.Launch.Engine.Curve = append(c.Launch.Engine.Curve, car.TorquePoint{Speed: p[0], Torque: p[1]})
		}
	},
}

// ramp is the share of the engine's torque over time.
var ramp = pairs{
	first: units.Time, second: units.Number, names: "[seconds, share]", most: car.MaxRamp,
	get: func(c *car.Car) (list [][2]float64) {
		for _, p := range c.Launch.Engine.Ramp {
			list = append(list, [2]float64{p.Time, p.Share})
		}
		return list
	},
	set: func(c *car.Car, list [][2]float64) {
		c.Launch.Engine.Ramp = nil
		for _, p := range list {
			c.Launch.Engine.Ramp = append(c.Launch.Engine.Ramp, car.RampPoint{Time: p[0], Share: p[1]})
		}
	},
}

func (k pairs) read(r *reader, path string, raw any, c *car.Car) {
	list, ok := raw.([]any)
	if !ok {
		r.note(path, "is "+kindOf(raw), k.give(r.units))
		return
	}
	if len(list) > k.most {
		r.note(path, fmt.Sprintf("there are %d points", len(list)), k.give(r.units))
		return
	}
	points := make([][2]float64, len(list))
	for i, element := range list {
		at := indexPath(path, i)
		points[i] = [2]float64(r.numbers(at, element, "give two numbers, "+k.names, k.first, k.second))
		if r.distrusted(at) {
			r.distrust(path)
		}
	}
	// The order of points that are not right says nothing.
	if len(points) > 0 && !r.distrusted(path) {
		k.set(c, points)
	}
}

func (k pairs) unknown(c *car.Car) { k.set(c, nil) }

func (k pairs) value(c *car.Car) value {
	points := k.get(c)
	if len(points) == 0 {
		return nil
	}
	list := make([]value, len(points))
	for i, p := range points {
		list[i] = []value{quantity{p[0], k.first}, quantity{p[1], k.second}}
	}
	return list
}

func (k pairs) give(units.System) string {
	one := k.names[1 : len(k.names)-1]
	return fmt.Sprintf("give up to %d points, [[%[2]s], [%[2]s]]", k.most, one)
}

// ends is a range, [least, greatest].
type ends struct {
	quantity units.Quantity
	at       func(*car.Car) *[2]float64
}

func (k ends) read(r *reader, path string, raw any, c *car.Car) {
	*k.at(c) = [2]float64(r.numbers(path, raw, k.give(r.units), k.quantity, k.quantity))
}

func (k ends) unknown(c *car.Car) { *k.at(c) = [2]float64{math.NaN(), math.NaN()} }

func (k ends) value(c *car.Car) value {
	return []value{quantity{k.at(c)[0], k.quantity}, quantity{k.at(c)[1], k.quantity}}
}

func (k ends) give(units.System) string { return "give two numbers, [least, greatest]" }

// row is a list of hole centers.
type row car.Row

func (k row) read(r *reader, path string, raw any, c *car.Car) {
	list, ok := raw.([]any)
	if !ok {
		r.note(path, "is "+kindOf(raw), k.give(r.units))
		return
	}
	if len(list) > car.MaxHoles {
		r.note(path, fmt.Sprintf("there are %d holes", len(list)), k.give(r.units))
		return
	}
	holes := make([]r2.Vec, len(list))
	for i, element := range list {
		if _, ok := element.([]any); !ok {
			r.note(path, "holds "+kindOf(element), k.give(r.units))
			return
		}
		at := indexPath(path, i)
		point(func(*car.Car) *r2.Vec { return &holes[i] }).read(r, at, element, c)
		if r.distrusted(at) {
			r.distrust(path)
		}
	}
	// The holes of a row that is not right cannot be counted, so the setups'
	// numbers are not held against it.
	if !r.distrusted(path) {
		*car.Row(k).In(c) = holes
	}
}

func (k row) unknown(c *car.Car) { *car.Row(k).In(c) = nil }

func (k row) value(c *car.Car) value {
	holes := *car.Row(k).In(c)
	list := make([]value, len(holes))
	for i, p := range holes {
		list[i] = place(p)
	}
	return list
}

func (k row) give(units.System) string {
	return fmt.Sprintf("give 1 to %d hole centers, [[x, z], [x, z]]", car.MaxHoles)
}

// group is a table.
type group struct {
	keys  []key
	given func(*car.Car) *bool // whether the car has it, if it may lack it
}

func (k group) read(r *reader, path string, raw any, c *car.Car) {
	values, ok := raw.(map[string]any)
	if !ok {
		r.note(path, "is "+kindOf(raw), "give one table")
		k.unknown(c)
		return
	}
	if k.given != nil {
		*k.given(c) = true
	}
	r.table(path, k.keys, values, c)
}

func (k group) unknown(c *car.Car) {
	for _, inner := range k.keys {
		inner.unknown(c)
	}
}

func (k group) value(c *car.Car) value {
	if k.given != nil && !*k.given(c) {
		return nil
	}
	return fieldsOf(k.keys, c, usual)
}

func (k group) give(units.System) string {
	return "add the table with " + strings.Join(names(k.keys, true), ", ")
}

package car

import "bowline/model/units"

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
	Rule     bool           // 0 stands for a value by a rule, which Help names
	Fine     bool           // seldom typed: a new file leaves it out while it has its default

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

// required describes a number that every file gives.
func required(path, label, help string, q units.Quantity, least, most float64, value func(*Car) *float64) *Field {
	return &Field{Path: path, Label: label, Help: help, Quantity: q, Min: least, Max: most, value: value}
}

// optional describes a number that a file may leave out.
func optional(path, label, help string, q units.Quantity, least, most, usual float64, value func(*Car) *float64) *Field {
	f := required(path, label, help, q, least, most, value)
	f.Optional, f.Default = true, usual
	return f
}

// fine describes an optional number that is seldom typed.
func fine(path, label, help string, q units.Quantity, least, most, usual float64, value func(*Car) *float64) *Field {
	f := optional(path, label, help, q, least, most, usual, value)
	f.Fine = true
	return f
}

// ruled describes a fine number that a rule gives while it is left out.
func ruled(path, label, help string, q units.Quantity, most float64, value func(*Car) *float64) *Field {
	f := fine(path, label, help, q, 0, most, 0, value)
	f.Rule = true
	return f
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

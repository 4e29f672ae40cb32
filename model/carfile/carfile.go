// Package carfile reads and writes the files of the program, all TOML: cars,
// and tables of materials and tubes.
//
// A file is refused with everything that is wrong with it, each with file,
// line, key and what would be right. A car goes back into the text it came
// from: comments, order, blank lines and the digits of every unchanged value
// stay as they were typed.
package carfile

import (
	"fmt"
	"reflect"
	"strings"

	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"
)

// Schema is the version of the car file that is written. Older ones are
// migrated in memory, newer ones refused.
const Schema = 1

// mark is the byte order mark that some editors put before UTF-8 text.
const mark = "\uFEFF"

// File is a car file as read. Change a clone of Car and pass it to Encode;
// File itself stays as it is.
type File struct {
	Car    *car.Car
	Units  units.System // that the file is written in
	Schema int          // version of the text; older than the constant Schema after a migration

	name    string
	text    string
	library stock.Library
}

// Decode reads a car file. The name stands in problems; materials are looked
// up in the library.
//
// It refuses, all at once, as Problems with file, line and key: what is no
// valid TOML or UTF-8, a file over MaxSize, unknown and missing keys and
// tables, wrong types, NaN and infinity, and whatever car.Car.Validate
// refuses. A file of a newer schema is refused for that alone.
func Decode(name string, data []byte, library stock.Library) (*File, error) {
	return decode(name, data, library, migrations)
}

func decode(name string, data []byte, library stock.Library, steps map[int]migration) (*File, error) {
	text := strings.TrimPrefix(string(data), mark)
	root, err := parse(name, []byte(text))
	if err != nil {
		return nil, err
	}
	r := reader{doc: root.doc, text: text, library: library}
	schema, err := r.migrate(root.values, steps)
	if err != nil {
		return nil, err
	}
	c := r.car(root.values)
	if err := r.err(); err != nil {
		return nil, err
	}
	return &File{Car: c, Units: r.units, Schema: schema, name: name, text: string(data), library: library}, nil
}

// Encode returns the file's text with the values of c in it. Unchanged values
// keep their digits, and an optional key that is absent stays so while it has
// its default and c does not state it; one that is there then goes. To go on from
// the new text, decode it.
//
// It refuses a car that Validate refuses. Decoding what it returns gives c
// again, bit for bit, but settled; the text is read back to make sure.
func (f *File) Encode(c *car.Car) ([]byte, error) {
	if err := f.check(c); err != nil {
		return nil, err
	}
	c = settled(c)
	text, marked := strings.CutPrefix(f.text, mark)
	at, err := keyLines([]byte(text))
	if err != nil {
		return nil, err
	}
	p := newPatcher(text, at, f.Units)
	p.old = contents(f.Car, f.Units)
	text = p.file(contents(c, f.Units))
	if marked {
		text = mark + text
	}
	if _, err := f.readBack(c, text); err != nil {
		return nil, err
	}
	return []byte(text), nil
}

// New lays out a new file for a car, with short comments. The name stands in
// problems. It refuses a car that Validate refuses.
func New(name string, c *car.Car, system units.System, library stock.Library) (*File, error) {
	f := &File{Units: system, name: name, library: library}
	if err := f.check(c); err != nil {
		return nil, err
	}
	c = settled(c)
	return f.readBack(c, newPatcher("", positions{}, system).fresh(contents(c, system)))
}

// settled returns a copy of a car in which only what has its default is stated.
func settled(c *car.Car) *car.Car {
	d := c.Clone()
	d.Settle()
	return d
}

// check refuses a car that must not be written.
func (f *File) check(c *car.Car) error {
	var found Problems
	for _, p := range c.Validate(f.library, f.Units) {
		found = append(found, Problem{File: f.name, Key: p.Key(), Wrong: p.Wrong, Right: p.Right})
	}
	if found != nil {
		return found
	}
	return nil
}

// readBack decodes a text made of a car and makes sure that it gives that car.
func (f *File) readBack(c *car.Car, text string) (*File, error) {
	g, err := Decode(f.name, []byte(text), f.library)
	if err != nil {
		return nil, fmt.Errorf("the text made of the car is not readable: %w", err)
	}
	want := c.Clone()
	if !want.Driveline.Given {
		want.Driveline = car.Driveline{}
	}
	for i := range want.Setups {
		if s := &want.Setups[i]; len(s.Runs) == 0 {
			s.Runs = nil
		}
	}
	if !reflect.DeepEqual(g.Car, want) {
		return nil, fmt.Errorf("%s: the text made of the car gives another car", f.name)
	}
	return g, nil
}

package carfile

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"
)

// reader reads the values of a parsed car file into a car. It notes what is wrong
// and goes on, so that everything is reported at once.
type reader struct {
	doc      *document
	text     string
	library  stock.Library
	units    units.System
	followed []string // paths that were left out since another key gives the value
	unitless bool     // the unit system is unknown, so numbers cannot be checked
}

// car reads the whole file. The car is complete only if nothing was noted.
func (r *reader) car(root map[string]any) *car.Car {
	c := car.Defaults()
	r.unknownKeys("", append([]string{"schema", "units"}, names(tables, false)...), root)
	if _, ok := root["schema"]; !ok {
		r.note("schema", "is missing", giveSchema)
	}
	r.system(root)
	r.keys("", tables, root, c)
	r.follow(c)
	r.validate(c)
	return c
}

// follow sets what was left out and follows from the scales.
func (r *reader) follow(c *car.Car) {
	whole := c.Clone()
	whole.FollowScales()
	unknown := slices.ContainsFunc(car.ScalesAt[:], func(at car.ScaleAt) bool { return r.distrusted("car.corner_weights." + at.Key) })
	for _, path := range r.followed {
		field := car.FieldAt(path)
		if *field.In(c) = *field.In(whole); unknown {
			r.distrust(path)
		}
	}
}

// system reads the unit system.
func (r *reader) system(root map[string]any) {
	give := "give " + quotedList([]string{units.US.String(), units.SI.String()}, " or ")
	raw, given := root["units"]
	name, isText := raw.(string)
	system, err := units.Parse(name)
	switch {
	case !given:
		r.note("units", "is missing", give)
	case !isText:
		r.note("units", "is "+kindOf(raw), give)
	case err != nil:
		r.note("units", "is "+strconv.Quote(name), give)
	default:
		r.units = system
		return
	}
	r.unitless = true
}

// table reads a table: refuses keys it does not know and reads those it does.
func (r *reader) table(path string, keys []key, values map[string]any, c *car.Car) {
	r.unknownKeys(path, names(keys, false), values)
	r.keys(path, keys, values, c)
}

// keys reads the keys of a table.
func (r *reader) keys(path string, keys []key, values map[string]any, c *car.Car) {
	for _, k := range keys {
		at := joinPath(path, k.name)
		raw, ok := values[k.name]
		switch {
		case ok:
			k.read(r, at, raw, c)
			c.State(at, true)
		case k.beside != "" && values[k.beside] != nil:
			r.followed = append(r.followed, at)
		case !k.optional:
			r.note(at, "is missing", k.give(r.units))
			k.unknown(c)
		}
	}
}

// unknownKeys notes keys that are none of the known ones. A known one that was
// probably meant then is not missing.
func (r *reader) unknownKeys(path string, known []string, values map[string]any) {
	absent := slices.DeleteFunc(slices.Clone(known), func(name string) bool {
		_, there := values[name]
		return there
	})
	for _, name := range slices.Sorted(maps.Keys(values)) {
		if slices.Contains(known, name) {
			continue
		}
		right := "known are " + strings.Join(known, ", ")
		if meant, ok := closest(name, absent); ok {
			right = didYouMean(meant)
			r.distrust(joinPath(path, meant))
		}
		r.note(joinPath(path, name), "is unknown here", right)
	}
}

// note records what is wrong with the entry at path.
func (r *reader) note(path, wrong, right string) {
	r.doc.note(path, car.Problem{Path: path}.Key(), wrong, right)
}

// distrust exempts the entry at path from the rules, since its value could not be
// read.
func (r *reader) distrust(path string) { r.doc.wrong[path] = true }

// distrusted reports whether the entry at path, or one that it is part of, has no
// value that rules could be applied to.
func (r *reader) distrusted(path string) bool {
	for ; path != ""; path = parentPath(path) {
		if r.doc.wrong[path] {
			return true
		}
	}
	return false
}

// validate notes what the rules say, except about values that were not
// readable in the first place.
func (r *reader) validate(c *car.Car) {
	var found Problems
	for _, p := range c.Validate(r.library, r.units) {
		if !r.distrusted(p.Path) {
			found = append(found, Problem{File: r.doc.file, Line: r.doc.at.line(p.Path), Key: p.Key(), Wrong: p.Wrong, Right: p.Right})
		}
	}
	r.doc.problems = append(r.doc.problems, found...)
}

// err returns all that was noted, or nil. What has no line gets that of the first
// table of an array, the first of the file, where schema and units go, or the
// last, where tables go.
func (r *reader) err() error {
	last := 1 + strings.Count(strings.TrimSuffix(r.text, "\n"), "\n")
	for i := range r.doc.problems {
		p := &r.doc.problems[i]
		if p.Line > 0 {
			continue
		}
		p.Line = last
		if p.Key == "schema" || p.Key == "units" {
			p.Line = 1
		} else if first := r.doc.at.line(indexPath(p.Key, 0)); first > 0 {
			p.Line = first
		}
	}
	return r.doc.err()
}

package carfile

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"bowline/model/car"
	"bowline/model/units"

	"github.com/BurntSushi/toml"
)

// value is what a file says at some key: a quantity, a string, an int, a date, a
// []value or a []field; nil for a table that a car does not have.
type value any

// quantity is a number with a unit.
type quantity struct {
	si   float64
	kind units.Quantity
}

// date is a day, as in 2026-03-14.
type date string

// field is a key with its value.
type field struct {
	name    string
	comment string
	needed  bool // must stand in the file; otherwise it may be left out
	fine    bool // not needed, it is left out of a new file
	value   value
}

// written reports whether the field stands in a text that is made anew: all do but
// empty texts and what is seldom typed and has its default.
func (f field) written() bool { return f.needed || !f.fine && f.value != "" }

// tablesIn returns the tables of a list of them.
func tablesIn(v value) ([]value, bool) {
	list, ok := v.([]value)
	if !ok || len(list) == 0 {
		return nil, false
	}
	_, ok = list[0].([]field)
	return list, ok
}

// contents returns a whole car file as values.
func contents(c *car.Car, s units.System) []field {
	head := []field{
		{name: "schema", needed: true, value: Schema},
		{name: "units", needed: true, value: s.String(), comment: unitsComment},
	}
	return append(head, fieldsOf(tables, c, usual)...)
}

const unitsComment = "us: in, lb, lb/in, lb·s/in, lb-ft, psi, hp, deg    si: mm, kg, N/mm, N·s/mm, N·m, MPa, kW, deg"

// usual has the value of every key that is left out.
var usual = car.Defaults()

// fieldsOf returns the values that c has for the keys of a table. Those which
// usual has too need not stand in a file, and must not where that would say that the
// car itself gives them.
func fieldsOf(keys []key, c, usual *car.Car) []field {
	fields := make([]field, 0, len(keys))
	for _, k := range keys {
		v := k.value(c)
		if v == nil {
			continue
		}
		needed := !k.optional || !same(v, k.value(usual)) || k.path != "" && c.Says(k.path)
		if k.path != "" && !needed {
			continue
		}
		fields = append(fields, field{name: k.name, comment: k.comment, needed: needed, fine: k.fine, value: v})
	}
	return fields
}

// same compares bit for bit, so that a changed sign of zero is a change.
func same(a, b value) bool {
	switch a := a.(type) {
	case quantity:
		b, ok := b.(quantity)
		return ok && math.Float64bits(a.si) == math.Float64bits(b.si)
	case []value:
		b, ok := b.([]value)
		if !ok || len(a) != len(b) {
			return false
		}
		for i := range a {
			if !same(a[i], b[i]) {
				return false
			}
		}
		return true
	case []field:
		b, ok := b.([]field)
		if !ok || len(a) != len(b) {
			return false
		}
		for i := range a {
			if a[i].name != b[i].name || !same(a[i].value, b[i].value) {
				return false
			}
		}
		return true
	}
	return a == b
}

// literal writes a value the way a file has it.
func literal(s units.System, v value) string {
	switch v := v.(type) {
	case quantity:
		return fromSI(s, v.kind, v.si)
	case string:
		return quote(v)
	case int:
		return strconv.Itoa(v)
	case date:
		return string(v)
	case []value:
		parts := make([]string, len(v))
		for i, element := range v {
			parts[i] = literal(s, element)
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case []field:
		var parts []string
		for _, f := range v {
			if f.written() {
				parts = append(parts, f.name+" = "+literal(s, f.value))
			}
		}
		return "{ " + strings.Join(parts, ", ") + " }"
	}
	panic(fmt.Sprintf("carfile: no form for a %T", v))
}

// quote writes a TOML basic string.
func quote(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range text {
		switch {
		case c == '"' || c == '\\':
			b.WriteByte('\\')
			b.WriteRune(c)
		case c < ' ' || c == 0x7F:
			fmt.Fprintf(&b, `\u%04X`, c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// says reports whether a value as written in a file, one without parts, gives v.
func says(s units.System, literal string, v value) bool {
	raw := scalar(literal)
	switch v := v.(type) {
	case quantity:
		shop, wrong := asNumber(raw)
		return wrong == "" && same(v, quantity{toSI(s, v.kind, shop, literal), v.kind})
	case int:
		return raw == int64(v)
	case date:
		return raw == string(v) || literal == string(v)
	}
	return raw == v
}

// scalar returns the value of a literal, nil for one that has parts or is none.
func scalar(literal string) any {
	var alone struct{ V any }
	if _, err := toml.Decode("V = "+literal, &alone); err != nil {
		return nil
	}
	switch alone.V.(type) {
	case []any, map[string]any, []map[string]any:
		return nil
	}
	return alone.V
}

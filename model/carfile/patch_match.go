package carfile

import (
	"strconv"
	"strings"
)

// matchTables finds for each table of a list the one of the file that it was,
// −1 for a new one: that of the same name, or among tables without names the one
// that says the same or else has the same date; what is then left over on both
// sides with the same number.
func (p *patcher) matchTables(path string, count int, list []value) []int {
	m := matching{from: make([]int, len(list)), taken: make([]bool, count)}
	for i := range m.from {
		m.from[i] = -1
	}
	old, _ := tablesIn(valueAt(p.old, path))
	old = old[:min(len(old), count)]
	key := func(name string) func(value) string {
		return func(v value) string {
			fields, _ := v.([]field)
			if v, ok := find(fields, name); ok {
				return literal(p.units, v)
			}
			return ""
		}
	}
	if len(list) > 0 && key("name")(list[0]) != "" {
		m.by(key("name"), old, list)
	} else {
		m.by(func(v value) string { return literal(p.units, v) }, old, list)
		m.by(key("date"), old, list)
	}
	for i, k := range m.from {
		if k < 0 && i < count && !m.taken[i] {
			m.from[i] = i
		}
	}
	return m.from
}

// matching says for each of some tables which older one it was.
type matching struct {
	from  []int  // −1 for a new one
	taken []bool // older ones that are
}

// by matches tables that are left over and have the same key.
func (m *matching) by(key func(value) string, old, list []value) {
	known := map[string][]int{}
	for k, v := range old {
		if !m.taken[k] {
			known[key(v)] = append(known[key(v)], k)
		}
	}
	for i, v := range list {
		if m.from[i] >= 0 {
			continue
		}
		if same := known[key(v)]; len(same) > 0 {
			m.from[i], m.taken[same[0]] = same[0], true
			known[key(v)] = same[1:]
		}
	}
}

// valueAt looks up what stands at a path, elements of lists included.
func valueAt(fields []field, path string) value {
	var v value = fields
	for part := range strings.SplitSeq(path, ".") {
		switch inner := v.(type) {
		case []field:
			v, _ = find(inner, part)
		case []value:
			k, err := strconv.Atoi(part)
			if err != nil || k >= len(inner) {
				return nil
			}
			v = inner[k]
		}
	}
	return v
}

package carfile

import (
	"slices"
	"strings"

	"bowline/model/units"
)

// patcher puts values into the text of a file and leaves the rest as it is.
type patcher struct {
	text    string
	at      positions
	order   []string // the paths in at as they stand in the file
	units   units.System
	old     []field // values of the file before, in SI
	page    *page
	defined map[string]bool // every path that has a value or a part of one
}

func newPatcher(text string, at positions, s units.System) *patcher {
	p := &patcher{text: text, at: at, order: at.sorted(), units: s, defined: map[string]bool{}}
	p.page = newPage(text, at, p.order)
	for path := range at {
		for ; path != "" && !p.defined[path]; path = parentPath(path) {
			p.defined[path] = true
		}
	}
	return p
}

// file returns the text with the given values: what differs is replaced, what
// is needed and missing is added in shop order, and what is not among the
// values is taken out.
func (p *patcher) file(want []field) string {
	for i := 0; i < len(p.page.blocks); i++ {
		b := &p.page.blocks[i]
		if fields, ok := tableAt(want, b.path); ok {
			p.entries(b, fields)
		} else if !inList(want, b.path) {
			p.page.remove(i)
			i--
		}
	}
	for i, f := range want {
		switch v := f.value.(type) {
		case []field:
			p.missingTable(want[:i], f.name, v)
		case []value:
			p.arrayOfTables(f.name, f.name, v, -1)
		}
	}
	return p.page.String()
}

// find looks a value up by its path.
func find(want []field, path string) (value, bool) {
	for _, f := range want {
		if f.name == path {
			return f.value, true
		}
		if rest, ok := strings.CutPrefix(path, f.name+"."); ok {
			inner, _ := f.value.([]field)
			return find(inner, rest)
		}
	}
	return nil, false
}

// tableAt finds the fields of a table; the empty path is that of the whole file.
func tableAt(want []field, path string) ([]field, bool) {
	if path == "" {
		return want, true
	}
	v, _ := find(want, path)
	fields, ok := v.([]field)
	return fields, ok
}

// inList reports whether a path lies in a list of the values.
func inList(want []field, path string) bool {
	for ; path != ""; path = parentPath(path) {
		v, _ := find(want, path)
		if _, ok := v.([]value); ok {
			return true
		}
	}
	return false
}

// relative is a path as seen from the table at base.
func relative(path, base string) string {
	if base == "" {
		return path
	}
	return strings.TrimPrefix(path, base+".")
}

// within reports whether path is base or lies in it.
func within(path, base string) bool { return path == base || strings.HasPrefix(path, base+".") }

// entries puts values into a table with its own header. Comments above an entry
// that is taken out stay.
func (p *patcher) entries(b *block, want []field) {
	above := ""
	kept := make([]entry, 0, len(b.entries))
	for _, e := range b.entries {
		e.above, above = above+e.above, ""
		v, ok := find(want, relative(e.path, b.path))
		if !ok {
			above = e.above
			continue
		}
		kept = append(kept, e.with(p.value(e.path, e.at, v)))
	}
	b.entries, b.below = kept, above+b.below
	if b.path != "" {
		p.missingEntries(b, b.path, "", want)
	}
}

// missingEntries adds what a table needs and the file lacks to a block, but for
// lists of tables, which have headers of their own. Keys are written with the
// given prefix.
func (p *patcher) missingEntries(b *block, base, prefix string, want []field) {
	p.eachMissing(base, prefix, want, func(path, name string, v value, elder []string) {
		if _, apart := tablesIn(v); apart {
			return
		}
		paths := make([]string, len(b.entries))
		for i, e := range b.entries {
			paths[i] = e.path
		}
		e := entry{path: path, before: b.indent() + name + " = ", value: literal(p.units, v), after: p.page.newline}
		b.entries = slices.Insert(b.entries, placeOf(paths, base, elder), e)
	})
}

// eachMissing calls add for what a table needs and the file lacks, with path,
// key, value and the paths of the keys that go before it. Tables within that
// are written with dotted keys have their keys added in the same way.
func (p *patcher) eachMissing(base, prefix string, want []field, add func(path, name string, v value, elder []string)) {
	var elder []string
	for _, f := range want {
		path := joinPath(base, f.name)
		_, whole := p.at[path]
		inner, isTable := f.value.([]field)
		switch {
		case !p.defined[path] && f.needed:
			add(path, prefix+f.name, f.value, elder)
		case p.defined[path] && isTable && !whole:
			p.eachMissing(path, prefix+f.name+".", inner, add)
		}
		elder = append(elder, path)
	}
}

// placeOf returns where among the paths of a table's entries a new one goes:
// behind the last of the keys that go before it, or else first in its table.
func placeOf(paths []string, base string, elder []string) int {
	for _, e := range slices.Backward(elder) {
		for i, path := range slices.Backward(paths) {
			if within(path, e) {
				return i + 1
			}
		}
	}
	for i, path := range paths {
		if within(path, base) {
			return i
		}
	}
	return len(paths)
}

// missingTable adds what a table of the first level needs where the file has
// neither a header nor a value for it: to its dotted keys, or with a header of
// its own behind the tables that go before it.
func (p *patcher) missingTable(elder []field, name string, want []field) {
	if _, whole := p.at[name]; whole {
		return
	}
	root := &p.page.blocks[0]
	if slices.ContainsFunc(root.entries, func(e entry) bool { return within(e.path, name) }) {
		p.missingEntries(root, name, name+".", want)
		return
	}
	b := block{path: name, header: "[" + name + "]" + p.page.newline}
	p.missingEntries(&b, name, "", want)
	if len(b.entries) > 0 {
		p.page.insert(p.lastOf(elder), b)
	}
}

// lastOf returns the index of the last block of the last table that has any, or
// of the one before any header.
func (p *patcher) lastOf(tables []field) int {
	for _, f := range slices.Backward(tables) {
		for i, b := range slices.Backward(p.page.blocks) {
			if within(b.path, f.name) {
				return i
			}
		}
	}
	return 0
}

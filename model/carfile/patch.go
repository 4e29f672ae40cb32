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
		} else if _, ok := listAt(want, parentPath(b.path)); !ok {
			p.page.remove(i)
			i--
		}
	}
	for i, f := range want {
		switch v := f.value.(type) {
		case []field:
			p.missingTable(want[:i], f.name, v)
		case []value:
			p.arrayOfTables(f.name, v)
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

func listAt(want []field, path string) ([]value, bool) {
	v, _ := find(want, path)
	list, ok := v.([]value)
	return list, ok
}

// relative is a path as seen from the table at base.
func relative(path, base string) string {
	if base == "" {
		return path
	}
	return strings.TrimPrefix(path, base+".")
}

// within tells whether path is base or lies in it.
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

// missingEntries adds what a table needs and the file lacks to a block. Keys are
// written with the given prefix.
func (p *patcher) missingEntries(b *block, base, prefix string, want []field) {
	p.eachMissing(base, prefix, want, func(path, name string, v value, elder []string) {
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

// arrayOfTables puts a list of tables into the blocks with their headers. Each
// block moves to its table's new place with the comments right around it.
func (p *patcher) arrayOfTables(name string, list []value) {
	var slots []int
	for i, b := range p.page.blocks {
		if parentPath(b.path) == name {
			slots = append(slots, i)
		}
	}
	if len(slots) == 0 {
		return
	}
	made := make([]block, len(list))
	for i, from := range p.matchTables(name, len(slots), list) {
		fields, _ := list[i].([]field)
		if from >= 0 {
			made[i] = p.page.blocks[slots[from]]
			p.entries(&made[i], fields)
			continue
		}
		made[i] = block{path: indexPath(name, len(slots)+i), header: "[[" + name + "]]" + p.page.newline}
		p.missingEntries(&made[i], made[i].path, "", fields)
	}
	for i, b := range made {
		if i < len(slots) {
			b.above = p.page.blocks[slots[i]].above
			p.page.blocks[slots[i]] = b
			continue
		}
		p.page.insert(slots[len(slots)-1]+i-len(slots), b)
	}
	for i := len(slots) - 1; i >= len(list); i-- {
		p.page.remove(slots[i])
	}
}

// matchTables finds for each table of a list the one of the file that it was:
// that of the same name, or else that of the same number if both are left over.
func (p *patcher) matchTables(path string, count int, list []value) []int {
	byName := map[any]int{}
	for i := range count {
		at := p.at[joinPath(indexPath(path, i), "name")].Value
		byName[scalar(p.text[at.Start:at.End])] = i
	}
	from, taken := make([]int, len(list)), make([]bool, count)
	for i, v := range list {
		fields, _ := v.([]field)
		name, _ := find(fields, "name")
		from[i] = -1
		if old, ok := byName[name]; ok {
			from[i], taken[old] = old, true
		}
	}
	for i := range from {
		if from[i] < 0 && i < count && !taken[i] {
			from[i] = i
		}
	}
	return from
}

package carfile

import (
	"slices"
	"strconv"
	"strings"
)

// arrayOfTables puts the tables of the list at path, and the lists within them,
// into the blocks with their headers, named as given. Where there is none yet
// they go behind the block with the index home; a negative one means that the
// list is not written with headers.
func (p *patcher) arrayOfTables(path, header string, list []value, home int) {
	count := 0
	for _, b := range p.page.blocks {
		if parentPath(b.path) == path {
			count++
		}
	}
	if count == 0 && home < 0 {
		return
	}
	from := p.matchTables(path, count, list)
	paths := make([]string, len(list))
	for i := range list {
		if paths[i] = indexPath(path, from[i]); from[i] < 0 {
			paths[i] = indexPath(path, count+i)
		}
	}
	switch {
	case count == 0:
		for i, new := range paths {
			p.page.insert(home+i, p.newTable(new, header, blanks(p.page.blocks[home].header)))
		}
	case !inOrder(from, count):
		p.rearrange(path, header, paths, count)
	}
	for i, v := range list {
		fields, _ := v.([]field)
		at := slices.IndexFunc(p.page.blocks, func(b block) bool { return b.path == paths[i] })
		p.entries(&p.page.blocks[at], fields)
		for _, f := range fields {
			inner, isList := f.value.([]value)
			below := joinPath(paths[i], f.name)
			if _, whole := p.at[below]; isList && !whole {
				p.arrayOfTables(below, header+"."+f.name, inner, p.lastWithin(paths[i]))
			}
		}
	}
}

// newTable makes the block of a table of a list, without entries.
func (p *patcher) newTable(path, header, margin string) block {
	return block{path: path, above: p.page.newline, header: margin + "[[" + header + "]]" + p.page.newline, margin: margin}
}

// inOrder tells whether tables stay what and where they were.
func inOrder(from []int, count int) bool {
	for i, k := range from {
		if k != i {
			return false
		}
	}
	return len(from) == count
}

// lastWithin returns the index of the last block of a table.
func (p *patcher) lastWithin(path string) int {
	for i, b := range slices.Backward(p.page.blocks) {
		if within(b.path, path) {
			return i
		}
	}
	return 0
}

// rearrange brings the count tables of the list at path into the order of
// paths. A table moves with the tables in it and the comments right around it;
// paths that no block has become new tables. What stands apart above a table
// stays where it is.
func (p *patcher) rearrange(path, header string, paths []string, count int) {
	r := arrangement{newline: p.page.newline}
	groups := make([][]block, count)
	margin := ""
	for _, b := range p.page.blocks {
		if k := elementOf(b.path, path); k >= 0 {
			groups[k] = append(groups[k], b)
			if b.path == indexPath(path, k) {
				margin = blanks(b.header)
			}
		}
	}
	table := func(i int) []block {
		if k := elementOf(paths[i], path); k < count {
			return groups[k]
		}
		return []block{p.newTable(paths[i], header, margin)}
	}
	// Tables that keep their order stay; others trade places.
	order := make([]int, 0, count)
	for _, at := range paths {
		if k := elementOf(at, path); k < count {
			order = append(order, k)
		}
	}
	rising := slices.IsSorted(order)
	next := 0
	for _, b := range p.page.blocks {
		k := elementOf(b.path, path)
		if k < 0 {
			r.put(b.above, b)
			continue
		}
		at := indexPath(path, k)
		head, kept := b.path == at, slices.Contains(paths, at)
		switch {
		case head && rising && kept:
			for ; paths[next] != at; next++ {
				r.put("", table(next)...)
			}
			r.put(b.above, table(next)...)
			next++
		case head && !rising && next < len(paths):
			r.put(b.above, table(next)...)
			next++
		case head || !kept:
			r.leave(b.above)
		}
		if head && k == count-1 {
			for ; next < len(paths); next++ {
				r.put("", table(next)...)
			}
		}
	}
	p.page.blocks, p.page.end = r.blocks, r.loose+p.page.end
}

// arrangement is a list of blocks in the making.
type arrangement struct {
	blocks  []block
	loose   string // remarks that stood apart above what is gone
	apart   bool   // the last block is new, so that the next is a blank line apart
	newline string
}

// put adds a table and those in it. Above it stands the given text, or a blank
// line when the table is new or follows such a one.
func (r *arrangement) put(above string, group ...block) {
	fresh := len(group[0].entries) == 0 && above == ""
	if above == "" && (fresh || r.apart) {
		above = r.newline
	}
	group[0].above = r.loose + above
	r.loose, r.apart = "", fresh
	r.blocks = append(r.blocks, group...)
}

// leave keeps the remarks above a table that is gone.
func (r *arrangement) leave(above string) {
	if strings.Contains(above, "#") {
		r.loose += above
	}
}

// elementOf returns which element of a list a path is or lies in, −1 for none.
func elementOf(path, list string) int {
	rest, ok := strings.CutPrefix(path, list+".")
	if !ok {
		return -1
	}
	number, _, _ := strings.Cut(rest, ".")
	k, err := strconv.Atoi(number)
	if err != nil {
		return -1
	}
	return k
}

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

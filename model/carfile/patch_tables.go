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
		for i, at := range paths {
			p.page.insert(home+i, p.newTable(at, header, blanks(p.page.blocks[home].header)))
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

// inOrder reports whether tables stay what and where they were.
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

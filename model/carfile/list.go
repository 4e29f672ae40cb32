package carfile

import "slices"

// value returns the text for a value at path that stands at the given place:
// the text there where it says the same.
func (p *patcher) value(path string, at Range, v value) string {
	old := p.text[at.Start:at.End]
	switch v := v.(type) {
	case []value:
		if old[0] == '[' {
			return p.array(path, at, v)
		}
	case []field:
		if old[0] == '{' {
			return p.inlineTable(path, at, v)
		}
	default:
		if says(p.units, old, v) {
			return old
		}
	}
	return literal(p.units, v)
}

// array puts values into an array. Elements that stay keep their comments.
func (p *patcher) array(path string, at Range, list []value) string {
	var old []Range
	for here, ok := p.at[indexPath(path, 0)]; ok; here, ok = p.at[indexPath(path, len(old))] {
		old = append(old, here.Value)
	}
	parts := takeApart(p.text, at, old)
	chunks := parts.chunks
	parts.chunks = nil
	for i, from := range p.matchElements(path, old, list) {
		if from < 0 {
			parts.chunks = append(parts.chunks, freshChunk(chunks, literal(p.units, list[i])))
			continue
		}
		c := chunks[from]
		c.body = p.value(indexPath(path, from), old[from], list[i])
		parts.chunks = append(parts.chunks, c)
	}
	return parts.join(p.page.newline)
}

// matchElements finds for each value of a list the element of the file that it
// was. With as many as before they are matched by number; otherwise those that
// did not change are, and what lies between them in turn.
func (p *patcher) matchElements(path string, old []Range, list []value) []int {
	if len(list) > 0 {
		if _, ok := list[0].([]field); ok {
			return p.matchTables(path, len(old), list)
		}
	}
	from := make([]int, len(list))
	if len(list) == len(old) {
		for i := range from {
			from[i] = i
		}
		return from
	}
	unchanged := func(i, j int) bool {
		text := p.text[old[i].Start:old[i].End]
		return p.value(indexPath(path, i), old[i], list[j]) == text
	}
	i, j := 0, 0
	for _, pair := range append(longestCommon(len(old), len(list), unchanged), [2]int{len(old), len(list)}) {
		for ; j < pair[1]; j++ {
			from[j] = -1
			if i < pair[0] {
				from[j] = i
				i++
			}
		}
		if j < len(list) {
			from[j] = pair[0]
		}
		i, j = pair[0]+1, pair[1]+1
	}
	return from
}

// longestCommon returns the pairs of equal elements, rising, of the longest
// common subsequence of two lists.
func longestCommon(m, n int, equal func(i, j int) bool) [][2]int {
	length := make([][]int, m+1)
	length[m] = make([]int, n+1)
	for i := m - 1; i >= 0; i-- {
		length[i] = make([]int, n+1)
		for j := n - 1; j >= 0; j-- {
			length[i][j] = max(length[i+1][j], length[i][j+1])
			if equal(i, j) {
				length[i][j] = 1 + length[i+1][j+1]
			}
		}
	}
	var pairs [][2]int
	for i, j := 0, 0; i < m && j < n; {
		switch {
		case equal(i, j):
			pairs = append(pairs, [2]int{i, j})
			i, j = i+1, j+1
		case length[i+1][j] >= length[i][j+1]:
			i++
		default:
			j++
		}
	}
	return pairs
}

// inlineTable puts values into a table in braces.
func (p *patcher) inlineTable(path string, at Range, want []field) string {
	var paths []string
	var old []Range
	done := at.Start
	for _, inner := range p.order {
		here := p.at[inner]
		if here.Key.End > here.Key.Start && here.Key.Start > done && here.Value.End < at.End {
			paths, old = append(paths, inner), append(old, Range{here.Key.Start, here.Value.End})
			done = here.Value.End
		}
	}
	parts := takeApart(p.text, at, old)
	chunks := parts.chunks
	parts.chunks = nil
	var kept []string
	for i, c := range chunks {
		here := p.at[paths[i]]
		if v, ok := find(want, relative(paths[i], path)); ok {
			c.body = p.text[here.Key.Start:here.Value.Start] + p.value(paths[i], here.Value, v)
			kept, parts.chunks = append(kept, paths[i]), append(parts.chunks, c)
		}
	}
	p.eachMissing(path, "", want, func(inner, name string, v value, elder []string) {
		i := placeOf(kept, path, elder)
		kept = slices.Insert(kept, i, inner)
		parts.chunks = slices.Insert(parts.chunks, i, freshChunk(chunks, name+" = "+literal(p.units, v)))
	})
	return parts.join(p.page.newline)
}

package carfile

import (
	"strings"
	"unicode/utf8"
)

// fresh lays out a new file with comments.
func (p *patcher) fresh(want []field) string {
	root := &p.page.blocks[0]
	for _, f := range want {
		switch v := f.value.(type) {
		case []field:
			if b := p.freshTable("["+f.name+"]", f.comment, v); len(b.entries) > 0 {
				p.page.insert(len(p.page.blocks)-1, b)
			}
		case []value:
			p.freshTables(f.name, f.comment, v)
		default:
			root.entries = append(root.entries, p.freshEntry(f))
		}
	}
	alignComments(root.entries)
	return p.page.String()
}

// freshTables lays out a list of tables, each with the lists in it. The comment
// stands with the first one.
func (p *patcher) freshTables(name, comment string, list []value) {
	for _, v := range list {
		fields, _ := v.([]field)
		p.page.insert(len(p.page.blocks)-1, p.freshTable("[["+name+"]]", comment, fields))
		for _, f := range fields {
			if inner, ok := tablesIn(f.value); ok {
				p.freshTables(name+"."+f.name, f.comment, inner)
			}
		}
		comment = ""
	}
}

func (p *patcher) freshTable(header, comment string, fields []field) block {
	b := block{header: header + behind(comment) + p.page.newline}
	for _, f := range fields {
		if _, apart := tablesIn(f.value); f.written() && !apart {
			b.entries = append(b.entries, p.freshEntry(f))
		}
	}
	alignComments(b.entries)
	return b
}

func (p *patcher) freshEntry(f field) entry {
	return entry{before: f.name + " = ", value: literal(p.units, f.value), after: behind(f.comment) + p.page.newline}
}

// behind writes a comment to stand behind something else.
func behind(comment string) string {
	if comment == "" {
		return ""
	}
	return "  # " + strings.TrimSuffix(comment, ".")
}

// alignComments puts the comments of a table below each other.
func alignComments(entries []entry) {
	width := func(e entry) int { return utf8.RuneCountInString(e.before + e.value) }
	widest := 0
	for _, e := range entries {
		if strings.Contains(e.after, "#") {
			widest = max(widest, width(e))
		}
	}
	for i, e := range entries {
		if strings.Contains(e.after, "#") {
			entries[i].after = strings.Repeat(" ", widest-width(e)) + e.after
		}
	}
}

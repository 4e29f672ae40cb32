package carfile

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// page is the text of a file in pieces. Printed in order, the pieces give the
// text again, byte for byte.
type page struct {
	blocks  []block // the first is what stands before any header
	end     string  // blank lines and comments at the end of the file
	newline string
}

// block is a table with its own header.
type block struct {
	path    string // as in positions, empty for the first
	above   string // blank lines, and comments apart from the header
	remarks string // comments right above the header
	header  string // the header's line
	entries []entry
	below   string // comments right below the last entry
	margin  string // before its keys as long as there are none
}

// entry is a key with its value, on lines of its own.
type entry struct {
	path   string
	above  string // blank lines and comments
	before string // from the start of the line to the value
	value  string
	after  string // the rest of the line
	at     Range  // where the value was
}

// with returns the entry with another value. A comment behind it stays in its
// column while there is room.
func (e entry) with(value string) entry {
	comment := strings.TrimLeft(e.after, " ")
	if value != e.value && strings.HasPrefix(comment, "#") {
		room := len(e.after) - len(comment) + utf8.RuneCountInString(e.value) - utf8.RuneCountInString(value)
		e.after = strings.Repeat(" ", max(1, room)) + comment
	}
	e.value = value
	return e
}

// indent is what stands before the keys of the table.
func (b *block) indent() string {
	if len(b.entries) == 0 {
		return b.margin
	}
	return blanks(b.entries[0].before)
}

// blanks are what a line begins with.
func blanks(line string) string { return line[:len(line)-len(strings.TrimLeft(line, " \t"))] }

// newPage takes a text apart.
func newPage(text string, at positions, order []string) *page {
	p := &page{blocks: []block{{}}, newline: "\n"}
	if strings.Contains(text, "\r\n") {
		p.newline = "\r\n"
	}
	done := 0
	for _, path := range order {
		here := at[path]
		if here.Key.End == here.Key.Start || here.Key.Start < done {
			continue // An element, or a key inside a value that was passed already.
		}
		line := strings.LastIndexByte(text[:here.Key.Start], '\n') + 1
		gap := text[done:line]
		last := &p.blocks[len(p.blocks)-1]
		if text[here.Key.Start] == '[' {
			done = lineEnd(text, here.Key.End)
			b := block{path: path, header: text[line:done]}
			last.below, b.above, b.remarks = splitGap(gap)
			p.blocks = append(p.blocks, b)
			continue
		}
		done = lineEnd(text, here.Value.End)
		last.entries = append(last.entries, entry{
			path: path, above: gap,
			before: text[line:here.Value.Start], value: text[here.Value.Start:here.Value.End], after: text[here.Value.End:done],
			at: here.Value,
		})
	}
	below, above, remarks := splitGap(text[done:])
	if below == "" && above == "" {
		below, remarks = remarks, ""
	}
	p.blocks[len(p.blocks)-1].below, p.end = below, above+remarks
	return p
}

// lineEnd returns the start of the line after the one that at is in.
func lineEnd(text string, at int) int {
	if n := strings.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(text)
}

// splitGap splits what stands between two tables at its first and its last
// blank line: what belongs to the table above, to neither, and to the one
// below. Without a blank line all of it belongs to the one below.
func splitGap(gap string) (above, between, below string) {
	first, last, start := -1, 0, 0
	for line := range strings.Lines(gap) {
		start += len(line)
		if strings.TrimSpace(line) == "" {
			if first < 0 {
				first = start - len(line)
			}
			last = start
		}
	}
	if first < 0 {
		return "", "", gap
	}
	return gap[:first], gap[first:last], gap[last:]
}

// String puts the pieces together.
func (p *page) String() string {
	var b strings.Builder
	ended := true
	line := func(text string) {
		if text == "" {
			return
		}
		if !ended {
			b.WriteString(p.newline)
		}
		b.WriteString(text)
		ended = strings.HasSuffix(text, "\n")
	}
	for _, table := range p.blocks {
		line(table.above)
		line(table.remarks)
		line(table.header)
		for _, e := range table.entries {
			line(e.above)
			line(e.before + e.value + e.after)
		}
		line(table.below)
	}
	line(p.end)
	return b.String()
}

// insert puts a table behind the one with the index i, a blank line apart.
func (p *page) insert(i int, b block) {
	b.above = p.newline
	p.blocks = slices.Insert(p.blocks, i+1, b)
	if next := i + 2; next < len(p.blocks) && p.blocks[next].above == "" {
		p.blocks[next].above = p.newline
	}
}

// remove takes out the table with the index i. Comments apart from it stay.
func (p *page) remove(i int) {
	if above := p.blocks[i].above; strings.Contains(above, "#") {
		if i+1 < len(p.blocks) {
			p.blocks[i+1].above = above + p.blocks[i+1].above
		} else {
			p.end = above + p.end
		}
	}
	p.blocks = slices.Delete(p.blocks, i, i+1)
}

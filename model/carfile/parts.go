package carfile

import "strings"

// parts is the text of an array or of a table in braces, taken apart. Joined
// again in order, the parts give the same text.
type parts struct {
	open     string // the first bracket
	chunks   []chunk
	end      string // what follows the last chunk, with the second bracket
	first    string // lead of the first chunk
	trailing bool   // there is a comma behind the last chunk
}

// chunk is one item with what belongs to it.
type chunk struct {
	lead  string // from the comma, or the comment behind it, to the item
	body  string // the item
	comma string // a comma with what stands before it, or nothing
	tail  string // a comment on the same line
	head  bool   // it was the first
}

// takeApart cuts the text of a value with the given items.
func takeApart(text string, at Range, items []Range) parts {
	p := parts{open: text[at.Start : at.Start+1]}
	rest := at.Start + 1
	for i, item := range items {
		next := at.End - 1
		if i+1 < len(items) {
			next = items[i+1].Start
		}
		c := chunk{lead: text[rest:item.Start], body: text[item.Start:item.End], head: i == 0}
		c.comma, c.tail = cutGap(text[item.End:next])
		rest = item.End + len(c.comma) + len(c.tail)
		p.trailing = c.comma != ""
		p.chunks = append(p.chunks, c)
	}
	if len(p.chunks) > 0 {
		p.first = p.chunks[0].lead
	}
	p.end = text[rest:at.End]
	return p
}

// cutGap finds what belongs to an item in the text behind it.
func cutGap(gap string) (comma, tail string) {
	comma = gap[:commaEnd(gap)]
	line, _, more := strings.Cut(gap[len(comma):], "\n")
	if more && strings.HasPrefix(strings.TrimLeft(line, " \t"), "#") {
		tail = strings.TrimSuffix(line, "\r")
	}
	return comma, tail
}

// commaEnd returns where the first comma outside of comments ends, or 0.
func commaEnd(gap string) int {
	inComment := false
	for i := range len(gap) {
		switch c := gap[i]; {
		case c == '\n':
			inComment = false
		case c == '#':
			inComment = true
		case c == ',' && !inComment:
			return i + 1
		}
	}
	return 0
}

// freshChunk makes a chunk with the spacing of the others.
func freshChunk(others []chunk, body string) chunk {
	c := chunk{lead: " ", body: body}
	if len(others) > 0 {
		last := others[len(others)-1].lead
		if i := strings.LastIndexByte(last, '\n'); i >= 0 {
			c.lead = last[len(strings.TrimSuffix(last[:i], "\r")):]
		}
	}
	return c
}

// join puts the chunks, of which some may be new, gone or moved, into the
// brackets.
func (p *parts) join(newline string) string {
	var b strings.Builder
	b.WriteString(p.open)
	tail := ""
	after := func(text string) {
		// Nothing may follow a comment on its line.
		if tail != "" && !strings.HasPrefix(strings.TrimPrefix(text, "\r"), "\n") {
			b.WriteString(newline)
		}
		b.WriteString(text)
	}
	for i, c := range p.chunks {
		after(p.lead(i))
		b.WriteString(c.body)
		switch last := i == len(p.chunks)-1; {
		case (!last || p.trailing) && c.comma == "":
			b.WriteByte(',')
		case last && !p.trailing:
			b.WriteString(strings.TrimSuffix(c.comma, ","))
		default:
			b.WriteString(c.comma)
		}
		tail = c.tail
		b.WriteString(tail)
	}
	after(p.end)
	return b.String()
}

// lead returns what stands before the chunk with the index i: the first and
// the others trade their spacing when they trade places.
func (p *parts) lead(i int) string {
	c := p.chunks[i]
	switch {
	case strings.Contains(c.lead, "#") || c.head == (i == 0):
		return c.lead
	case i > 0 && !strings.Contains(c.lead, "\n"):
		return " "
	case i == 0 && !strings.Contains(p.first, "#"):
		return p.first
	}
	return c.lead
}

package report

import "strings"

// ruler measures text and lays tables out, in characters for text or points
// on paper.
type ruler struct {
	width func(string) float64 // Of a text.
	gap   float64              // Between columns.
	limit float64              // Width of a line.
	least float64              // A column of words is not made narrower than this.
}

// place is a table column's place: its left edge, the width of its figures,
// which stand to the right in it, and the width of the whole.
type place struct{ left, figures, whole float64 }

// wrap breaks text into lines of up to a width, at spaces where there are any.
func (r *ruler) wrap(text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for _, part := range r.parts(word, width) {
			switch {
			case line == "":
				line = part
			case r.width(line+" "+part) <= width:
				line += " " + part
			default:
				lines, line = append(lines, line), part
			}
		}
	}
	return append(lines, line)
}

// parts cuts a word that is wider than a line. Each part takes all that fits,
// one letter at least.
func (r *ruler) parts(word string, width float64) []string {
	if r.width(word) <= width {
		return []string{word}
	}
	var list []string
	begin, wide := 0, 0.0
	for i, letter := range word {
		next := r.width(string(letter))
		if wide+next > width && i > begin {
			list = append(list, word[begin:i])
			begin, wide = i, 0
		}
		wide += next
	}
	return append(list, word[begin:])
}

// columns places the columns of a table. Figures without words stand right
// under their heading. Where a line would be too long, columns of words are
// narrowed, the widest first, and then the gaps.
func (r *ruler) columns(t *table) []place {
	list := make([]place, len(t.columns))
	for i, h := range t.columns {
		c := &list[i]
		heading, wordless := max(r.width(h.title), r.width(h.bracketed())), true
		for _, row := range t.rows {
			c.figures = max(c.figures, r.width(row[i].figure))
			wordless = wordless && row[i].words == ""
		}
		if wordless {
			c.figures = max(c.figures, heading)
		}
		c.whole = max(heading, c.figures)
		for _, row := range t.rows {
			c.whole = max(c.whole, r.words(row[i], c)+r.width(row[i].words))
		}
	}
	r.narrow(list)
	gap := r.gap
	if excess := r.total(list) - r.limit; excess > 0 {
		gap = max(r.width(" "), gap-excess/float64(len(list)-1))
	}
	left := 0.0
	for i := range list {
		list[i].left = left
		left += list[i].whole + gap
	}
	return list
}

// words returns where in its column a cell's words begin.
func (r *ruler) words(c cell, in *place) float64 {
	if c.figure == "" || c.words == "" {
		return 0
	}
	return in.figures + r.width(" ")
}

// narrow takes what a line has too much from columns of words.
func (r *ruler) narrow(list []place) {
	excess := r.total(list) - r.limit
	for excess > 0 {
		var widest *place
		for i := range list {
			if c := &list[i]; c.figures == 0 && c.whole > r.least && (widest == nil || c.whole > widest.whole) {
				widest = c
			}
		}
		if widest == nil {
			return
		}
		cut := min(excess, widest.whole-r.least, max(1, widest.whole/10))
		widest.whole -= cut
		excess -= cut
	}
}

// total returns the width of columns and the gaps between them.
func (r *ruler) total(list []place) float64 {
	total := r.gap * float64(len(list)-1)
	for _, c := range list {
		total += c.whole
	}
	return total
}

// lines breaks a cell's words where its column is too narrow for them.
func (r *ruler) lines(c cell, in *place) []string {
	if room := in.whole - r.words(c, in); c.figure == "" && r.width(c.words) > room {
		return r.wrap(c.words, room)
	}
	return []string{c.words}
}

// bracketed writes a heading's unit.
func (h heading) bracketed() string {
	if h.unit == "" {
		return ""
	}
	return "[" + h.unit + "]"
}

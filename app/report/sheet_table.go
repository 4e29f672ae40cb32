package report

import (
	"gonum.org/v1/plot/vg"
)

// left is where the text of sections begins.
const left = vg.Length(margin + indent)

// airAfter is the room after a paragraph.
const airAfter = 3.0

// paragraph adds lines of text; a point of a list has a dash.
func (l *sheets) paragraph(text string, point bool) {
	x := left
	if point {
		x += indent
	}
	for i, s := range l.ruler.wrap(text, l.ruler.limit-(x-left).Points()) {
		l.need(line)
		if point && i == 0 {
			l.text(l.body, ink.Muted, left, l.y-baseline, "–")
		}
		l.text(l.body, ink.Ink, x, l.y-baseline, s)
		l.y -= line
	}
	l.y -= airAfter
}

// paperRow is a row with its words broken into lines.
type paperRow struct {
	cells []cell
	words [][]string
	lines int
}

// rows breaks the words of a table into lines.
func (l *sheets) rows(t *table, columns []place) []paperRow {
	list := make([]paperRow, len(t.rows))
	for i, row := range t.rows {
		r := paperRow{cells: row, lines: 1}
		for j, c := range row {
			words := l.ruler.lines(c, &columns[j])
			r.words = append(r.words, words)
			r.lines = max(r.lines, len(words))
		}
		list[i] = r
	}
	return list
}

// sectionHeight returns how much of a page a section takes.
func (l *sheets) sectionHeight(part *section, rows []paperRow) vg.Length {
	lines := len(headingLines(&part.table))
	for _, p := range part.lines {
		lines += len(l.ruler.wrap(p, l.ruler.limit-indent))
	}
	for _, r := range rows {
		lines += r.lines
	}
	return airBefore + 1.5*headSize + airAfter*vg.Length(len(part.lines)) + vg.Length(lines)*line
}

// headingLines returns the lines of headings that a table has: its titles
// and its units, or none.
func headingLines(t *table) []func(heading) string {
	var list []func(heading) string
	if len(t.groups) > 0 {
		list = append(list, nil)
	}
	for _, of := range []func(heading) string{func(h heading) string { return h.title }, heading.bracketed} {
		for _, h := range t.columns {
			if of(h) != "" {
				list = append(list, of)
				break
			}
		}
	}
	return list
}

// headings adds the lines above a table's rows.
func (l *sheets) headings(t *table, columns []place) {
	for _, of := range headingLines(t) {
		if of == nil {
			l.groups(t, columns)
			l.y -= line
			continue
		}
		for i, h := range t.columns {
			c, text := &columns[i], of(h)
			x := vg.Length(c.left + max(0, c.figures-l.ruler.width(text)))
			l.text(l.body, ink.Muted, left+x, l.y-baseline, text)
		}
		l.y -= line
	}
}

// groups sets the group titles, each over a rule as wide as its columns.
func (l *sheets) groups(t *table, columns []place) {
	at := 0
	for _, g := range t.groups {
		if g.title != "" {
			from, to := &columns[at], &columns[at+g.span-1]
			x0, x1 := left+vg.Length(from.left), left+vg.Length(to.left+to.whole)
			l.text(l.bold, ink.Muted, x0, l.y-baseline, g.title)
			l.fill(ink.Grid, x0, l.y-line+0.3, x1, l.y-line+0.9)
		}
		at += g.span
	}
}

// row adds a row; every second one has a tinted ground.
func (l *sheets) row(r paperRow, columns []place, number int) {
	height := vg.Length(r.lines) * line
	l.need(height)
	if number%2 == 0 {
		l.fill(ink.Raised, left-3, l.y-height, l.width-margin, l.y)
	}
	for i, c := range r.cells {
		in := &columns[i]
		x := left + vg.Length(in.left)
		l.text(l.body, ink.Ink, x+vg.Length(in.figures-l.ruler.width(c.figure)), l.y-baseline, c.figure)
		for j, words := range r.words[i] {
			l.text(l.body, ink.Ink, x+vg.Length(l.ruler.words(c, in)), l.y-baseline-vg.Length(j)*line, words)
		}
	}
	l.y -= height
}

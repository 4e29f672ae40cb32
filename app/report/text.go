package report

import (
	"io"
	"strings"
	"unicode/utf8"

	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"
)

// textRuler counts characters. With the indent a line has 100 at most.
var textRuler = ruler{width: characters, gap: 2, limit: 98, least: 20}

func characters(s string) float64 { return float64(utf8.RuneCountInString(s)) }

// WriteText writes the report for a terminal or a printed page, in the unit
// system s and lines of up to 100 characters, a little more only where forces
// run into hundreds of thousands. Forces are magnitudes with the word push or
// pull. l is the launch of the same car and setup, nil for none, and worth what
// its assumptions are worth, nil where that has not been found.
func WriteText(out io.Writer, r *analysis.Result, l *launch.Result, worth []assumptions.Worth, s units.System) error {
	w := writer{r, l, worth, s}
	var text textWriter
	for _, line := range textRuler.wrap(w.title(), textRuler.limit) {
		text.line("", line)
	}
	for _, part := range w.sections() {
		text.section(part)
	}
	text.line("", "")
	text.paragraph(chart.Caution, false)
	_, err := io.WriteString(out, text.String())
	return err
}

// textWriter collects lines of text.
type textWriter struct{ strings.Builder }

// line adds a line without trailing space.
func (t *textWriter) line(indent, s string) {
	t.WriteString(strings.TrimRight(indent+s, " ") + "\n")
}

func (t *textWriter) section(part section) {
	t.line("", "")
	t.line("", strings.ToUpper(part.title))
	for _, p := range part.lines {
		t.paragraph(p, part.list)
	}
	t.table(&part.table)
}

// paragraph adds indented lines; a point of a list has a dash.
func (t *textWriter) paragraph(text string, point bool) {
	indent, rest := "  ", "  "
	if point {
		indent, rest = "  - ", "    "
	}
	for _, line := range textRuler.wrap(text, textRuler.limit+2-characters(indent)) {
		t.line(indent, line)
		indent = rest
	}
}

// table adds the lines of a table.
func (t *textWriter) table(table *table) {
	columns := textRuler.columns(table)
	t.filled(groupLine(table, columns))
	for _, of := range []func(heading) string{func(h heading) string { return h.title }, heading.bracketed} {
		var line textLine
		for i, h := range table.columns {
			line.put(columns[i].left, padLeft(of(h), columns[i].figures))
		}
		t.filled(line)
	}
	for _, row := range table.rows {
		for _, line := range rowLines(row, columns) {
			t.filled(line)
		}
	}
}

// filled adds a line unless it is empty.
func (t *textWriter) filled(line textLine) {
	if strings.TrimSpace(string(line)) != "" {
		t.line("  ", string(line))
	}
}

// rowLines writes a row, in as many lines as its longest cell takes.
func rowLines(row []cell, columns []place) []textLine {
	lines := make([]textLine, 1)
	for i, c := range row {
		in := &columns[i]
		lines[0].put(in.left, padLeft(c.figure, in.figures))
		for j, words := range textRuler.lines(c, in) {
			if j == len(lines) {
				lines = append(lines, nil)
			}
			lines[j].put(in.left+textRuler.words(c, in), words)
		}
	}
	return lines
}

// groupLine writes the groups between dashes over their columns.
func groupLine(t *table, columns []place) textLine {
	var line textLine
	at := 0
	for _, g := range t.groups {
		if g.title != "" {
			from, to := columns[at], columns[at+g.span-1]
			line.put(from.left, dashed(g.title, to.left+to.whole-from.left))
		}
		at += g.span
	}
	return line
}

// textLine is a line of characters that grows as it is written on.
type textLine []rune

// put writes text from a column on; empty text leaves what is there.
func (l *textLine) put(left float64, text string) {
	for i, r := range []rune(text) {
		at := int(left) + i
		for at >= len(*l) {
			*l = append(*l, ' ')
		}
		if r != ' ' {
			(*l)[at] = r
		}
	}
}

func padLeft(s string, n float64) string {
	return strings.Repeat(" ", max(0, int(n-characters(s)))) + s
}

// dashed centers a title between dashes.
func dashed(title string, n float64) string {
	title = " " + title + " "
	dashes := max(0, int(n-characters(title)))
	return strings.Repeat("-", dashes/2) + title + strings.Repeat("-", dashes-dashes/2)
}

// Package readout shows a table of words and numbers that follow a drag, drawn on
// a sheet.
package readout

import (
	"strings"

	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Table has a column of names and columns of values.
type Table struct {
	widget.BaseWidget
	headings []string
	names    []string
	cells    [][]cell  // by row
	shares   []float32 // of the width, that of the names first; nil for those of New
	sheet    *sheet.Sheet
}

// cell is one value with the name of its color; empty is the foreground.
type cell struct {
	text  string
	color fyne.ThemeColorName
}

const (
	// rowHeight is the distance of two rows over the text size.
	rowHeight = 1.5
	// nameShare is the part of the width that names take beside two columns of
	// values, shortShare beside more.
	nameShare  = 0.34
	shortShare = 0.2
	// leastWidth is the width over the text size that two columns of values
	// with their units need.
	leastWidth = 32
	// baseline is where letters stand in a row, from its top.
	baseline = 0.69
)

// New returns a table with headings of the value columns and names of the
// rows.
func New(headings []string, names []string) *Table {
	t := &Table{headings: append([]string(nil), headings...), names: names}
	for range names {
		t.cells = append(t.cells, make([]cell, len(headings)))
	}
	t.sheet = sheet.New(t.paint)
	t.ExtendBaseWidget(t)
	return t
}

// Set writes a cell. color names a theme color; empty is the foreground.
func (t *Table) Set(row, column int, text string, color fyne.ThemeColorName) {
	if c := (cell{text, color}); t.cells[row][column] != c {
		t.cells[row][column] = c
		t.sheet.Refresh()
	}
}

// SetHeading writes the heading of a column.
func (t *Table) SetHeading(column int, text string) {
	if t.headings[column] != text {
		t.headings[column] = text
		t.sheet.Refresh()
	}
}

// SetShares sets the parts of the width that the names and each column of values
// take, which New gives equal columns.
func (t *Table) SetShares(names float32, values ...float32) {
	t.shares = append([]float32{names}, values...)
	t.sheet.Refresh()
}

// Heading returns what stands over a column.
func (t *Table) Heading(column int) string { return t.headings[column] }

// Text returns what a cell shows.
func (t *Table) Text(row, column int) string { return t.cells[row][column].text }

// String writes headings and rows, a line each.
func (t *Table) String() string {
	lines := []string{strings.Join(t.headings, " | ")}
	for i, name := range t.names {
		line := name
		for _, c := range t.cells[i] {
			line += " | " + c.text
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

// CreateRenderer implements fyne.Widget.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	return t.sheet.Renderer()
}

// MinSize does not depend on what is written, so that nothing moves as numbers
// change.
func (t *Table) MinSize() fyne.Size {
	return fyne.NewSize(leastWidth*theme.TextSize(), pitch()*float32(len(t.names)+1)+theme.Padding())
}

// pitch is the height of one row.
func pitch() float32 { return theme.TextSize() * rowHeight }

// column returns where a column of values begins.
func (t *Table) column(i int) float32 {
	if t.shares != nil {
		left := float32(0)
		for _, share := range t.shares[:i+1] {
			left += share
		}
		return left * t.Size().Width
	}
	share := float32(nameShare)
	if len(t.headings) > 2 {
		share = shortShare
	}
	width := t.Size().Width
	return width*share + float32(i)*width*(1-share)/float32(len(t.headings))
}

// paint draws rows below the headings.
func (t *Table) paint(p *sheet.Pen) {
	size := theme.TextSize()
	regular, bold := sheet.Face(fyne.TextStyle{}, size), sheet.Face(fyne.TextStyle{Bold: true}, size)
	for i, h := range t.headings {
		p.Words(t.column(i), pitch()*baseline, h, bold, sheet.Ink(""))
	}
	for i, name := range t.names {
		top := float32(i+1) * pitch()
		if i%2 == 1 {
			p.Box(0, top, t.Size().Width, pitch(), theme.Color(theme.ColorNameInputBackground))
		}
		y := top + pitch()*baseline
		p.Words(theme.Padding(), y, name, regular, theme.Color(theme.ColorNamePlaceHolder))
		for j, c := range t.cells[i] {
			p.Words(t.column(j), y, c.text, regular, sheet.Ink(c.color))
		}
	}
}

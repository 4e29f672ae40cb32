// Package readout shows numbers in a table whose cells change cheaply: a cell
// is drawn anew only when its words differ.
package readout

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Table has a column of names and columns of values.
type Table struct {
	widget.BaseWidget
	columns int
	header  []*canvas.Text
	names   []*canvas.Text
	cells   [][]*canvas.Text // by row
	colors  [][]fyne.ThemeColorName
	rules   []*canvas.Rectangle // behind every second row
}

// rowHeight is the distance of two rows over the text size.
const rowHeight = 1.5

// nameShare is the part of the width that names take.
const nameShare = 0.34

// leastWidth is the width over the text size that two columns of values with
// their units need.
const leastWidth = 32

// New returns a table with headings of the value columns and names of the
// rows; an empty first heading leaves the corner free.
func New(headings []string, names []string) *Table {
	t := &Table{columns: len(headings)}
	for _, h := range headings {
		t.header = append(t.header, canvas.NewText(h, nil))
	}
	for _, n := range names {
		t.names = append(t.names, canvas.NewText(n, nil))
		row := make([]*canvas.Text, t.columns)
		for i := range row {
			row[i] = canvas.NewText("", nil)
		}
		t.cells = append(t.cells, row)
		t.colors = append(t.colors, make([]fyne.ThemeColorName, t.columns))
		t.rules = append(t.rules, canvas.NewRectangle(nil))
	}
	t.ExtendBaseWidget(t)
	return t
}

// Set writes a cell. color names a theme color; empty is the foreground.
func (t *Table) Set(row, column int, text string, color fyne.ThemeColorName) {
	c := t.cells[row][column]
	if c.Text == text && t.colors[row][column] == color {
		return
	}
	c.Text, t.colors[row][column] = text, color
	t.paint(c, color)
	c.Refresh()
}

// SetHeading writes the heading of a column.
func (t *Table) SetHeading(column int, text string) {
	if h := t.header[column]; h.Text != text {
		h.Text = text
		h.Refresh()
	}
}

// Text returns what a cell shows.
func (t *Table) Text(row, column int) string { return t.cells[row][column].Text }

// paint gives a text its color.
func (t *Table) paint(c *canvas.Text, name fyne.ThemeColorName) {
	if name == "" {
		name = theme.ColorNameForeground
	}
	c.Color = theme.Color(name)
}

// CreateRenderer implements fyne.Widget.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	r := &renderer{table: t}
	for i := range t.rules {
		if i%2 == 1 {
			r.objects = append(r.objects, t.rules[i])
		}
	}
	for _, h := range t.header {
		r.objects = append(r.objects, h)
	}
	for i := range t.names {
		r.objects = append(r.objects, t.names[i])
		for _, c := range t.cells[i] {
			r.objects = append(r.objects, c)
		}
	}
	r.Refresh()
	return r
}

type renderer struct {
	table   *Table
	objects []fyne.CanvasObject
}

func (r *renderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *renderer) Destroy()                     {}

// pitch is the height of one row.
func pitch() float32 { return theme.TextSize() * rowHeight }

// MinSize does not depend on what is written, so that nothing moves as numbers
// change.
func (r *renderer) MinSize() fyne.Size {
	return fyne.NewSize(leastWidth*theme.TextSize(), pitch()*float32(len(r.table.names)+1)+theme.Padding())
}

// Layout places rows below the headings and columns side by side.
func (r *renderer) Layout(size fyne.Size) {
	t := r.table
	first := size.Width * nameShare
	width := (size.Width - first) / float32(t.columns)
	place := func(c *canvas.Text, x, w float32, row int) {
		c.Move(fyne.NewPos(x, float32(row)*pitch()+(pitch()-c.MinSize().Height)/2))
		c.Resize(fyne.NewSize(w, c.MinSize().Height))
	}
	for i, h := range t.header {
		place(h, first+float32(i)*width, width, 0)
	}
	for i, n := range t.names {
		place(n, theme.Padding(), first, i+1)
		for j, c := range t.cells[i] {
			place(c, first+float32(j)*width, width, i+1)
		}
		t.rules[i].Move(fyne.NewPos(0, float32(i+1)*pitch()))
		t.rules[i].Resize(fyne.NewSize(size.Width, pitch()))
	}
}

// Refresh takes up the theme.
func (r *renderer) Refresh() {
	t := r.table
	for _, h := range t.header {
		h.TextStyle.Bold, h.TextSize = true, theme.TextSize()
		t.paint(h, "")
	}
	for i, n := range t.names {
		n.TextSize = theme.TextSize()
		t.paint(n, theme.ColorNamePlaceHolder)
		for j, c := range t.cells[i] {
			c.TextSize = theme.TextSize()
			t.paint(c, t.colors[i][j])
		}
		t.rules[i].FillColor = theme.Color(theme.ColorNameInputBackground)
	}
	for _, o := range r.objects {
		o.Refresh()
	}
}

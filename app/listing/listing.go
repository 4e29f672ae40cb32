// Package listing shows a table of any number of rows, of which only those in
// sight are asked for and drawn, all as one picture on a sheet.
package listing

import (
	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// None stands for no row where a key is meant, and for no column.
const None = -1

// Align tells to which side of its column a text keeps.
type Align int

// The sides.
const (
	Left  Align = iota // for words
	Right              // for numbers, so that their digits stand below each other
)

// Column is one column of a table.
type Column struct {
	Title string // "\n" breaks it
	Unit  string // below the title; may be empty
	// Width is room for this many digits. A column is never narrower than its
	// heading.
	Width int
	// Grow is the column's part of the room that is left when the table is wider
	// than its columns together. When no column has one, all grow by the same
	// factor.
	Grow  float32
	Align Align
}

// Source is what a table shows. Its rows may change at any time; Refresh tells
// the table that they have.
type Source interface {
	// Len returns the number of rows.
	Len() int
	// Cell returns the text of a cell and the theme's name of its color; empty
	// is that of text. Only cells in sight are asked for.
	Cell(row, column int) (text string, color fyne.ThemeColorName)
	// Key returns what a row is known by wherever it stands: 0 or more, no two
	// alike.
	Key(row int) int
}

// Table is a list that scrolls both ways below a heading that stays. A row is
// known by its key, so that it stays selected when rows are sorted anew. It
// belongs to the goroutine of the window.
type Table struct {
	widget.BaseWidget

	// What the table tells, if set. What is selected or highlighted from outside
	// is not told.
	OnSelected  func(key int)    // a row was selected by mouse or key
	OnActivated func(key int)    // a row was double-clicked, or Enter pressed on it
	OnHovered   func(key int)    // the pointer is on another row; None: on no row
	OnSort      func(column int) // a heading was clicked
	OnPointed   func(column int) // the pointer is on another heading; None: on none

	columns     []Column
	frozen      int // columns that do not scroll sideways
	placeholder string
	source      Source
	sheet       *sheet.Sheet
	redraw      func()
	held        func() fyne.KeyModifier // the modifier keys held down

	view     view
	columned columned
	reveal   bool   // the selected row is to be brought into sight
	hint     int    // row at which a key was found last
	pointer  *point // nil: not over the table
	under    int    // key of the row under the pointer
	grab     grab
	presses  [2]int // keys of the rows pressed last
	ink      inks
}

// view is everything that the picture depends on but the source.
type view struct {
	x, y       float64 // how far the rows are scrolled [px]
	selected   int     // key
	hovered    int     // key
	heading    int     // column of the heading under the pointer
	bar        part    // bar under the pointer or held
	focused    bool
	sorted     int // column
	descending bool
}

// point is a place in the table [px].
type point struct{ x, y float32 }

// New returns a table without rows, of which the first columns, as many as
// frozen says, stay in sight when the others scroll sideways.
func New(columns []Column, frozen int) *Table {
	t := &Table{columns: columns, frozen: min(max(frozen, 0), len(columns)), held: modifiers, under: None, presses: [2]int{None, None}}
	t.view = view{selected: None, hovered: None, heading: None, sorted: None}
	t.sheet = sheet.New(t.paint)
	t.redraw = t.sheet.Refresh
	t.ExtendBaseWidget(t)
	return t
}

// modifiers returns the modifier keys held down, where the driver tells.
func modifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

// CreateRenderer implements fyne.Widget.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	return t.sheet.Renderer()
}

// MinSize is room for the heading, three rows and the frozen columns with one
// more.
func (t *Table) MinSize() fyne.Size {
	c := t.natural()
	width := BarWidth
	for _, w := range c.widths[:min(t.frozen+1, len(c.widths))] {
		width += w
	}
	return fyne.NewSize(width, c.heading+3*pitch()+BarWidth)
}

// ColumnWidth returns how wide a column is at least [px].
func (t *Table) ColumnWidth(column int) float32 { return t.natural().widths[column] }

// Measure returns how wide columns would be in the table at least [px].
func (t *Table) Measure(columns []Column) []float32 {
	c := *t.natural()
	c.widths = nil
	c.measure(columns)
	return c.widths
}

// SetSource shows other rows. The table stays scrolled as it is, as far as
// there are rows.
func (t *Table) SetSource(s Source) {
	t.source = s
	t.Refresh()
}

// SetPlaceholder sets the sentence that stands in a table without rows.
func (t *Table) SetPlaceholder(text string) {
	t.placeholder = text
	t.redraw()
}

// SetColumns shows other columns of the source, such as with other units.
func (t *Table) SetColumns(columns []Column, frozen int) {
	t.columns, t.frozen = columns, min(max(frozen, 0), len(columns))
	t.columned = columned{}
	t.Refresh()
}

// SetSorted marks the column that rows are sorted by; None: none is.
func (t *Table) SetSorted(column int, descending bool) {
	defer t.update(t.view)
	t.view.sorted, t.view.descending = column, descending
}

// Refresh looks at the source again and draws it in the next frame.
func (t *Table) Refresh() {
	t.settle()
	t.point(nil)
}

// Select selects the row with a key and brings it into sight; None selects
// none. A key that no row has stays selected until another one is, so that the
// row is selected again when it is back.
func (t *Table) Select(key int) {
	f := t.frame()
	if key == t.view.selected && f.touches(t.find(key), t.view.y) {
		return // So the table stands still when it is told what it has told.
	}
	before := t.view
	t.view.selected, t.reveal = key, key != None
	t.settle()
	t.point(&before)
}

// Selected returns the key selected, of a row that is there or not; None if
// none is.
func (t *Table) Selected() int { return t.view.selected }

// Hover highlights the row with a key as if the pointer were on it; None: none.
func (t *Table) Hover(key int) {
	defer t.update(t.view)
	t.view.hovered = key
}

// ScrollToTop brings the first row into sight.
func (t *Table) ScrollToTop() {
	before := t.view
	t.reveal = false
	t.scroll(t.view.x, 0)
	t.point(&before)
}

// update has the table drawn anew if it looks different from before.
func (t *Table) update(before view) {
	if t.view != before {
		t.redraw()
	}
}

// rows returns the number of rows.
func (t *Table) rows() int {
	if t.source == nil {
		return 0
	}
	return max(t.source.Len(), 0)
}

// find returns the row with a key; None if there is none.
func (t *Table) find(key int) int {
	n := t.rows()
	if key == None {
		return None
	}
	if t.hint < n && t.source.Key(t.hint) == key {
		return t.hint
	}
	for row := range n {
		if t.source.Key(row) == key {
			t.hint = row
			return row
		}
	}
	return None
}

// tell calls back, if there is someone to hear.
func tell(f func(int), n int) {
	if f != nil {
		f(n)
	}
}

// pitch is the height of one row: whole pixels, so that all look alike.
func pitch() float32 { return float32(int(theme.TextSize()*rowHeight + 0.5)) }

// rowHeight is the distance of two rows over the text size.
const rowHeight = 1.5

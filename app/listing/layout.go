package listing

import (
	"math"
	"strings"

	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/plot/font"
)

const (
	// titleHeight is the distance of two lines of a heading over the text size.
	titleHeight = 1.25
	// triangle is the width of the mark of a sorted column over the text size.
	triangle = 0.62
	// mostFrozen is the part of the width up to which columns are kept from
	// scrolling; of what is left the others must be read.
	mostFrozen = 0.6
)

// columned is the natural layout of the columns, and what it was made for.
type columned struct {
	size, caption, pad float32
	bold               font.Face
	sorts              bool       // headings have room for the mark of a sorted column
	titles             [][]string // lines by column
	widths             []float32  // [px]
	total              float32    // [px]
	grow               []float32  // part of the room left, by column; nil when all grow by a factor
	lines              int        // of the highest heading
	heading            float32    // its height [px]
}

// natural returns the layout of the columns when there is room for them.
func (t *Table) natural() *columned {
	size, caption, pad := theme.TextSize(), theme.CaptionTextSize(), theme.InnerPadding()
	bold := sheet.Face(fyne.TextStyle{Bold: true}, size)
	sorts := t.OnSort != nil || t.view.sorted != None
	if c := &t.columned; c.titles != nil && c.size == size && c.caption == caption && c.pad == pad && c.bold == bold && c.sorts == sorts {
		return c
	}
	t.columned = columned{size: size, caption: caption, pad: pad, bold: bold, sorts: sorts}
	t.columned.measure(t.columns)
	return &t.columned
}

// measure lays columns out.
func (c *columned) measure(columns []Column) {
	mark := float32(0)
	if c.sorts {
		mark = c.size * triangle * 1.5
	}
	c.grow, c.titles = grown(columns), make([][]string, len(columns))
	digit := width(sheet.Face(fyne.TextStyle{}, c.size), "0")
	small := sheet.Face(fyne.TextStyle{}, c.caption)
	for i, column := range columns {
		c.titles[i] = strings.Split(column.Title, "\n")
		lines := len(c.titles[i])
		room := float32(column.Width) * digit
		for j, line := range c.titles[i] {
			w := width(c.bold, line)
			if column.Unit == "" && j == lines-1 {
				w += mark
			}
			room = max(room, w)
		}
		if column.Unit != "" {
			room = max(room, width(small, column.Unit)+mark)
			lines++
		}
		c.lines = max(c.lines, lines)
		room += 2 * c.pad
		if i == 0 {
			room += marker
		}
		c.widths = append(c.widths, float32(math.Ceil(float64(room))))
		c.total += c.widths[i]
	}
	c.heading = float32(math.Ceil(float64(float32(c.lines)*c.size*titleHeight + 2*c.pad)))
}

// grown returns each column's part of the room left over, which add up to 1; nil
// when none has one.
func grown(columns []Column) []float32 {
	total := float32(0)
	for _, c := range columns {
		total += c.Grow
	}
	if !(total > 0) {
		return nil
	}
	parts := make([]float32, len(columns))
	for i, c := range columns {
		parts[i] = c.Grow / total
	}
	return parts
}

// width measures a text; without a font it has none.
func width(f font.Face, text string) float32 {
	if f.Face == nil {
		return 0
	}
	return float32(f.Width(text))
}

// frame is where things are in the table at its present size [px].
type frame struct {
	*columned
	pitch         float32
	rows          int
	width, height float32 // of the part that shows rows
	stretch       float32 // columns are wider than natural by this factor
	spare         float32 // or share this room
	frozen        int     // columns that stay
	fixed         float32 // and their width
	down, across  bool    // there are bars
}

// frame measures the table.
func (t *Table) frame() frame {
	size, bar := t.Size(), BarWidth
	f := frame{columned: t.natural(), pitch: pitch(), rows: t.rows(), stretch: 1}
	tall := float64(f.rows) * float64(f.pitch)
	f.height = max(size.Height-f.heading, 0)
	f.width = max(size.Width, 0)
	f.down = tall > float64(f.height)
	if f.down {
		f.width = max(f.width-bar, 0)
	}
	if f.across = f.total > f.width; f.across {
		f.height = max(f.height-bar, 0)
		if !f.down && tall > float64(f.height) {
			f.down, f.width = true, max(f.width-bar, 0)
		}
	} else if f.grow != nil {
		f.spare = f.width - f.total
	} else if f.total > 0 {
		f.stretch = f.width / f.total
	}
	for i := range t.frozen {
		f.fixed += f.wide(i)
	}
	if f.frozen = t.frozen; f.across && f.fixed > mostFrozen*f.width {
		f.frozen, f.fixed = 0, 0
	}
	return f
}

// most returns how far rows can be scrolled.
func (f *frame) most() (x, y float64) {
	y = max(float64(f.rows)*float64(f.pitch)-float64(f.height), 0)
	if f.across {
		x = float64(f.total - f.width)
	}
	return x, y
}

// column returns where a column is drawn when the rows are scrolled sideways.
func (f *frame) column(i int, scrolled float32) (left, width float32) {
	for j := range i {
		left += f.wide(j)
	}
	if i >= f.frozen {
		left -= scrolled
	}
	return left, f.wide(i)
}

// wide returns the width of a column.
func (f *frame) wide(i int) float32 {
	if f.grow != nil {
		return f.widths[i] + f.spare*f.grow[i]
	}
	return f.widths[i] * f.stretch
}

// scroll moves the rows, no farther than there are any.
func (t *Table) scroll(x, y float64) {
	f := t.frame()
	mostX, mostY := f.most()
	t.view.x, t.view.y = min(max(x, 0), mostX), min(max(y, 0), mostY)
}

// settle brings the rows back to where there are any, and the selected row into
// sight if it was selected from outside.
func (t *Table) settle() {
	t.scroll(t.view.x, t.view.y)
	if !t.reveal {
		return
	}
	f := t.frame()
	row := t.find(t.view.selected)
	if row == None || f.height <= 0 {
		return
	}
	t.reveal = false
	if f.touches(row, t.view.y) {
		t.show(row)
		return
	}
	// In the middle, with what is around it.
	t.scroll(t.view.x, float64(row)*float64(f.pitch)-float64(f.height-f.pitch)/2)
}

// touches reports whether a part of a row is in sight.
func (f *frame) touches(row int, y float64) bool {
	top := float64(row) * float64(f.pitch)
	return row != None && top+float64(f.pitch) > y && top < y+float64(f.height)
}

// show scrolls no farther than needed to see a row.
func (t *Table) show(row int) {
	f := t.frame()
	top := float64(row) * float64(f.pitch)
	t.scroll(t.view.x, min(max(t.view.y, top+float64(f.pitch)-float64(f.height)), top))
}

// part is a part of the table.
type part int

// The parts.
const (
	nothing   part = iota // beside everything
	body                  // a row
	heading               // the heading of a column
	barDown               // the bar that scrolls rows
	barAcross             // the bar that scrolls columns
)

// spot is what is at a place.
type spot struct {
	part   part
	row    int // None but on a row
	column int // None but on a row or a heading
}

// spot returns what is at a place.
func (t *Table) spot(p point) spot {
	f := t.frame()
	s := spot{row: None, column: None}
	size := t.Size()
	if !(p.x >= 0 && p.y >= 0 && p.x < size.Width && p.y < size.Height) {
		return s
	}
	switch {
	case p.y < f.heading:
		if s.column = t.columnAt(&f, p.x); s.column != None {
			s.part = heading
		}
	case p.y >= f.heading+f.height:
		if p.x < f.width {
			s.part = barAcross
		}
	case p.x >= f.width:
		s.part = barDown
	default:
		row := math.Floor((float64(p.y-f.heading) + t.view.y) / float64(f.pitch))
		if row >= 0 && row < float64(f.rows) {
			s.part, s.row, s.column = body, int(row), t.columnAt(&f, p.x)
		}
	}
	return s
}

// columnAt returns the column at a place, frozen ones before those that scroll
// below them; None beside all.
func (t *Table) columnAt(f *frame, x float32) int {
	for i := range t.columns {
		left, width := f.column(i, float32(t.view.x))
		if x >= left && x < left+width {
			return i
		}
	}
	return None
}

package report

import (
	"fmt"
	"image/color"
	"time"

	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/palette"
	"bowline/plotting/paper"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Sizes on paper [pt].
const (
	margin    = 46
	titleSize = 20
	headSize  = 10
	bodySize  = 8.6
	footSize  = 7.2
	pitch     = 1.3  // Distance of lines over the size of their letters.
	airBefore = 11.0 // Above a section.
	barWidth  = 3.0  // Of the bar beside a section.
	indent    = 9.0
	footRoom  = 36.0 // From the text's lower edge to the margin.
)

// ink are the colors on paper, which is white.
var ink, white = &palette.Light, color.RGBA{R: 0xff, G: 0xff, B: 0xff, A: 0xff}

// face returns letters of a size.
func face(size vg.Length, weight xfont.Weight) font.Face {
	return plot.DefaultTextHandler.Cache().Lookup(font.Font{Typeface: "Liberation", Variant: "Sans", Weight: weight}, size)
}

// sheets lays the report out on pages before any of it is drawn. Heights are
// measured from the page's lower edge.
type sheets struct {
	width, height vg.Length
	body, bold    font.Face
	ruler         ruler
	y             vg.Length // Upper edge of what comes next.
	bar           vg.Length // Upper end of the bar beside a section; 0 outside of one.
	pages         [][]func(*paper.Canvas)
}

// newSheets starts the first page, of letter or A4 size.
func newSheets(s units.System) *sheets {
	l := &sheets{width: 8.5 * vg.Inch, height: 11 * vg.Inch}
	if s == units.SI {
		l.width, l.height = 210*vg.Millimeter, 297*vg.Millimeter
	}
	l.body, l.bold = face(bodySize, xfont.WeightNormal), face(bodySize, xfont.WeightBold)
	l.ruler = ruler{
		width: func(s string) float64 { return l.body.Width(s).Points() },
		gap:   15, limit: (l.width - 2*margin - indent).Points(), least: 90,
	}
	l.turn()
	return l
}

// turn begins a page.
func (l *sheets) turn() {
	open := l.bar > 0
	if open {
		l.endBar()
	}
	l.pages = append(l.pages, nil)
	l.y = l.height - margin
	if open {
		l.bar = l.y
	}
}

// endBar draws the bar beside a section down to here.
func (l *sheets) endBar() {
	l.fill(ink.Accent, margin, l.y, margin+barWidth, l.bar)
	l.bar = 0
}

// need turns the page when less than a height is left on it.
func (l *sheets) need(height vg.Length) {
	if l.y-height < margin+footRoom && l.y < l.height-margin {
		l.turn()
	}
}

// draw adds to the current page.
func (l *sheets) draw(f func(*paper.Canvas)) {
	last := len(l.pages) - 1
	l.pages[last] = append(l.pages[last], f)
}

// text adds a line with its baseline at a height.
func (l *sheets) text(f font.Face, c color.Color, x, y vg.Length, s string) {
	if s == "" {
		return
	}
	l.draw(func(p *paper.Canvas) {
		p.SetColor(c)
		p.FillString(f, vg.Point{X: x, Y: y}, s)
	})
}

// fill adds a filled rectangle.
func (l *sheets) fill(c color.Color, x0, y0, x1, y1 vg.Length) {
	l.draw(func(p *paper.Canvas) {
		p.SetColor(c)
		p.Fill(vg.Rectangle{Min: vg.Point{X: x0, Y: y0}, Max: vg.Point{X: x1, Y: y1}}.Path())
	})
}

// line is the height of a line of body text.
const line = vg.Length(bodySize * pitch)

// baseline is how far a line's baseline lies under its upper edge.
const baseline = vg.Length(bodySize * (1 + pitch) / 2 * 0.92)

// title sets the report's title on the first page.
func (l *sheets) title(text string) {
	big := face(titleSize, xfont.WeightBold)
	for _, s := range measure(big).wrap(text, (l.width - 2*margin).Points()) {
		l.need(1.3 * titleSize)
		l.text(big, ink.Ink, margin, l.y-titleSize, s)
		l.y -= 1.3 * titleSize
	}
}

// measure returns a ruler that wraps text set in a face.
func measure(f font.Face) *ruler {
	return &ruler{width: func(s string) float64 { return f.Width(s).Points() }}
}

// section adds a part of the report. A page ends before it rather than in it,
// unless it is longer than a page.
func (l *sheets) section(part *section) {
	columns := l.ruler.columns(&part.table)
	rows := l.rows(&part.table, columns)
	l.need(l.sectionHeight(part, rows))
	l.y -= airBefore
	l.bar = l.y
	l.text(face(headSize, xfont.WeightBold), ink.Accent, left, l.y-headSize, part.title)
	l.y -= 1.5 * headSize
	for _, p := range part.lines {
		l.paragraph(p, part.list)
	}
	l.headings(&part.table, columns)
	for i, row := range rows {
		l.row(row, columns, i)
	}
	l.endBar()
}

// foot draws the caution, the date, the title and the page number.
func (l *sheets) foot(p *paper.Canvas, title string, date time.Time, number int) {
	small, room := face(footSize, xfont.WeightNormal), l.width-2*margin
	put := func(c color.Color, x, y vg.Length, s string) {
		p.SetColor(c)
		p.FillString(small, vg.Point{X: x, Y: y}, s)
	}
	y := vg.Length(margin + footRoom - 8)
	p.SetColor(ink.Grid)
	p.Fill(vg.Rectangle{Min: vg.Point{X: margin, Y: y}, Max: vg.Point{X: l.width - margin, Y: y + 0.6}}.Path())
	for _, s := range measure(small).wrap(chart.Caution, room.Points()) {
		y -= footSize * pitch
		put(ink.Ink, margin, y, s)
	}
	y -= footSize * pitch
	count := fmt.Sprintf("%d / %d", number, len(l.pages))
	name := measure(small).wrap(date.Format(time.DateOnly)+" · "+title, (room - 2*small.Width(count)).Points())
	put(ink.Muted, margin, y, name[0])
	put(ink.Muted, l.width-margin-small.Width(count), y, count)
}

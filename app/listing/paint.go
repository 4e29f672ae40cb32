package listing

import (
	"image/color"

	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"gonum.org/v1/plot/font"
)

const (
	// baseline is where letters stand in a row, from its top.
	baseline = 0.69
	// marker is the width of the bar beside the selected row [px].
	marker = 4
	// tint is how much of the selection's color is behind the selected row.
	tint = 0.16
	// deepen is how far colors of texts are moved to that of text on a row that
	// is not on the plain background, so that they can be read as well.
	deepen = 0.35
)

// inks are the colors of one picture.
type inks struct {
	plain, stripe, ink, muted, accent color.Color
	selected, hovered, edge           color.Color
	cells                             map[inkKey]color.Color
}

// inkKey is a color by its name in the theme, deepened or not.
type inkKey struct {
	name fyne.ThemeColorName
	deep bool
}

// mix returns a color with a share of another in it, both opaque.
func mix(a, b color.Color, share float64) color.Color {
	ar, ag, ab, _ := a.RGBA()
	br, bg, bb, _ := b.RGBA()
	of := func(x, y uint32) uint8 { return uint8((float64(x)*(1-share)+float64(y)*share)/0x101 + 0.5) }
	return color.RGBA{of(ar, br), of(ag, bg), of(ab, bb), 0xff}
}

// dip takes the colors from the theme.
func (i *inks) dip() {
	i.plain, i.ink, i.accent = sheet.Ink(theme.ColorNameBackground), sheet.Ink(""), sheet.Ink(theme.ColorNamePrimary)
	i.stripe, i.muted = sheet.Ink(theme.ColorNameInputBackground), sheet.Ink(theme.ColorNamePlaceHolder)
	i.selected = mix(i.plain, i.accent, tint)
	i.hovered = mix(i.stripe, i.ink, 0.07)
	i.edge = mix(i.plain, i.muted, 0.6)
	if i.cells == nil {
		i.cells = map[inkKey]color.Color{}
	}
	clear(i.cells)
}

// cell returns the color of a cell's text.
func (i *inks) cell(name fyne.ThemeColorName, deep bool) color.Color {
	key := inkKey{name, deep}
	c, ok := i.cells[key]
	if !ok {
		c = sheet.Ink(name)
		if deep {
			c = mix(c, i.ink, deepen)
		}
		i.cells[key] = c
	}
	return c
}

// painter draws one picture.
type painter struct {
	*sheet.Pen
	*inks
	table   *Table
	frame   frame
	x       float32 // how far columns are scrolled, to whole device pixels
	regular font.Face
	small   font.Face
	line    float32 // width of a thin line
}

// paint draws the table.
func (t *Table) paint(pen *sheet.Pen) {
	t.settle()
	t.ink.dip()
	p := painter{Pen: pen, inks: &t.ink, table: t, frame: t.frame(), x: pen.Snap(float32(t.view.x)), line: pen.Hairline()}
	p.regular = sheet.Face(fyne.TextStyle{}, p.frame.size)
	p.small = sheet.Face(fyne.TextStyle{}, p.frame.caption)
	if p.frame.rows == 0 {
		p.nothing()
	}
	p.rows()
	p.headings()
	p.bars()
	if size := t.Size(); t.view.focused {
		p.Frame(0, 0, size.Width, size.Height, 2, p.accent)
	}
}

// nothing writes the placeholder.
func (p *painter) nothing() {
	size := p.table.Size()
	margin := 2 * p.frame.size
	lines := sheet.Lines(p.table.placeholder, p.regular, size.Width-2*margin)
	for i, line := range lines {
		y := p.frame.heading + margin + float32(i)*p.frame.size*rowHeight
		p.Words(p.Snap(margin), p.Snap(y+p.frame.size*baseline), line, p.regular, p.muted)
	}
}

// rows draws those in sight.
func (p *painter) rows() {
	f, y := &p.frame, p.table.view.y
	first := int(y / float64(f.pitch))
	// Snapped once, so that all rows move together.
	top := p.Snap(f.heading + float32(float64(first)*float64(f.pitch)-y))
	for row := first; row < f.rows && top < f.heading+f.height; row++ {
		p.row(row, top)
		top += f.pitch
	}
	if f.across && f.frozen > 0 && p.x > 0 {
		p.Box(p.Snap(f.fixed)-p.line, f.heading, p.line, min(f.height, top-f.heading), p.edge)
	}
}

// row draws one row.
func (p *painter) row(row int, top float32) {
	f, v := &p.frame, &p.table.view
	key := p.table.source.Key(row)
	selected, hovered := key == v.selected, key == v.hovered
	back := p.plain
	switch {
	case selected:
		back = p.inks.selected
	case hovered:
		back = p.inks.hovered
	case row%2 == 1:
		back = p.stripe
	}
	p.Box(0, top, f.width, f.pitch, back)
	p.cells(row, top, f.frozen, len(p.table.columns), selected || hovered)
	if f.frozen > 0 {
		if p.x > 0 {
			p.Box(0, top, p.Snap(f.fixed), f.pitch, back)
		}
		p.cells(row, top, 0, f.frozen, selected || hovered)
	}
	if hovered {
		p.Frame(0, top, f.width, f.pitch, p.line, p.muted)
	}
	if selected {
		p.Box(0, top, f.width, p.line, p.accent)
		p.Box(0, top+f.pitch-p.line, f.width, p.line, p.accent)
		p.Box(0, top, marker, f.pitch, p.accent)
	}
}

// cells writes a row in some of the columns.
func (p *painter) cells(row int, top float32, from, to int, deep bool) {
	f := &p.frame
	y := p.Snap(top + (f.pitch-f.size*rowHeight)/2 + f.size*rowHeight*baseline)
	for i := from; i < to; i++ {
		left, width := f.column(i, p.x)
		if left >= f.width || i >= f.frozen && left+width <= f.fixed {
			continue
		}
		text, name := p.table.source.Cell(row, i)
		if text != "" {
			p.words(i, text, left, width, y, p.regular, p.cell(name, deep))
		}
	}
}

// words writes a text to its side of a column. A number may reach into the space
// at its left, as a minus does.
func (p *painter) words(column int, text string, left, width, y float32, face font.Face, c color.Color) {
	align := p.table.columns[column].Align
	x, room := p.room(column, left, width)
	w, most := p.Width(text, face), room+0.5
	if align == Right {
		most += p.frame.pad - 1
	}
	if w > most {
		text = p.cut(text, room, align, face)
		w = p.Width(text, face)
	}
	if align == Right {
		x += room - w
	}
	p.Words(p.Snap(x), y, text, face, c)
}

// room returns where the texts of a column begin and how wide they may be: in
// the first column beside the marker of the selected row.
func (p *painter) room(column int, left, width float32) (x, room float32) {
	x, room = left+p.frame.pad, width-2*p.frame.pad
	if column == 0 {
		x, room = x+marker, room-marker
	}
	return x, room
}

// cut shortens a text to a width. Of a number nothing is left: a part of it
// would be another number.
func (p *painter) cut(text string, room float32, align Align, face font.Face) string {
	const more = "…"
	if align == Right {
		return more
	}
	runes := []rune(text)
	for n := len(runes) - 1; n > 0; n-- {
		if short := string(runes[:n]) + more; p.Width(short, face) <= room {
			return short
		}
	}
	return more
}

package listing

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// headings draws the heading over the rows.
func (p *painter) headings() {
	f, columns := &p.frame, len(p.table.columns)
	size := p.table.Size()
	bottom := p.Snap(f.heading)
	p.Box(0, 0, size.Width, bottom, p.stripe)
	for i := f.frozen; i < columns; i++ {
		p.heading(i)
	}
	if f.frozen > 0 {
		if p.x > 0 {
			p.Box(0, 0, p.Snap(f.fixed), bottom, p.stripe)
		}
		for i := range f.frozen {
			p.heading(i)
		}
		if p.x > 0 {
			p.Box(p.Snap(f.fixed)-p.line, 0, p.line, bottom, p.edge)
		}
	}
	p.Box(0, bottom-p.line, size.Width, p.line, p.muted)
}

// heading draws that of one column: the title above the unit, and the mark of a
// sorted one on its last line.
func (p *painter) heading(i int) {
	f, column, v := &p.frame, &p.table.columns[i], &p.table.view
	left, width := f.column(i, p.x)
	if left >= f.width || i >= f.frozen && left+width <= f.fixed {
		return
	}
	from, to, bottom := p.Snap(left), p.Snap(left+width), p.Snap(f.heading)
	if v.heading == i {
		p.Box(from, 0, to-from, bottom, p.inks.hovered)
	}
	line := f.size * titleHeight
	y := f.heading - f.pad - line*(1-baseline)
	last := p.Snap(y)
	if column.Unit != "" {
		p.words(i, column.Unit, left, width, last, p.small, p.cell(theme.ColorNamePlaceHolder, true))
		y -= line
	}
	for j := len(f.titles[i]) - 1; j >= 0; j-- {
		p.words(i, f.titles[i][j], left, width, p.Snap(y), f.bold, p.ink)
		y -= line
	}
	if v.sorted == i {
		p.triangle(i, left, width, last)
		p.Box(from, bottom-3*p.line, to-from, 2*p.line, p.accent) // Above the line below all headings.
	}
}

// triangle points up where the least is first and down where the most is; it is
// on the free side of the last line.
func (p *painter) triangle(column int, left, width, baseline float32) {
	w := p.frame.size * triangle
	x, room := p.room(column, left, width)
	if p.table.columns[column].Align == Left {
		x += room - w
	}
	high, low := baseline-w*0.9, baseline-w*0.1
	if p.table.view.descending {
		high, low = low, high
	}
	p.Shape(p.accent, fyne.NewPos(x, low), fyne.NewPos(x+w, low), fyne.NewPos(x+w/2, high))
}

// bars draws the scroll bars over what reaches below them.
func (p *painter) bars() {
	f, v := &p.frame, p.table.view
	size := p.table.Size()
	if f.down {
		p.Box(f.width, f.heading, size.Width-f.width, size.Height-f.heading, p.plain)
		b := f.bar(barDown, v)
		thick := p.thumb(barDown)
		p.Box(p.Snap(f.width+(BarWidth-thick)/2), p.Snap(b.at), thick, b.size, p.thumbInk(barDown))
	}
	if f.across {
		p.Box(0, f.heading+f.height, size.Width, size.Height-f.heading-f.height, p.plain)
		b := f.bar(barAcross, v)
		thick := p.thumb(barAcross)
		p.Box(p.Snap(b.at), p.Snap(f.heading+f.height+(BarWidth-thick)/2), b.size, thick, p.thumbInk(barAcross))
	}
}

// thumb returns the thickness of a thumb: slim until it is pointed at.
func (p *painter) thumb(which part) float32 {
	if p.table.view.bar == which {
		return BarWidth - 2
	}
	return BarWidth * 0.5
}

// thumbInk returns the color of a thumb.
func (p *painter) thumbInk(which part) color.Color {
	if p.table.view.bar == which {
		return p.muted
	}
	return p.edge
}

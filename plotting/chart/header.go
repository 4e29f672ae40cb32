package chart

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// header is what stands above the data area, laid out from its top left.
type header struct {
	height   vg.Length
	subtitle vg.Length // how far down its baseline is; 0 for none
	entries  []entry
	notes    []noteLine
}

// noteLine is a line of notes below the legend.
type noteLine struct {
	text string
	down vg.Length
}

// layHeader lays the header out. Where that leaves little height for the data, the
// legend is brief.
func (p *picture) layHeader(paper bool) header {
	h := p.headerWith(p.legend(false), paper)
	if p.height-h.height-p.bottom() < briefBelow*p.scale {
		if brief := p.headerWith(p.legend(true), paper); brief.height < h.height {
			return brief
		}
	}
	return h
}

// headerWith finds the places: title, subtitle, legend, notes. The legend stands beside
// the title where there is room.
func (p *picture) headerWith(entries []entry, paper bool) header {
	s := p.scale
	h := header{height: edge*s + p.title.row()}
	if paper {
		h.height += p.body.row()
		h.subtitle = h.height - 0.3*p.body.size
	}
	if p.asideBelow() {
		entries = append([]entry{{text: p.asideText(), muted: true}}, entries...)
	}
	total := -swatchGap * s
	for i := range entries {
		total += p.entryWidth(&entries[i]) + swatchGap*s
	}
	title := edge*s + p.title.width(p.titleText) + gap*s + p.body.width(p.asideText()) + 2*swatchGap*s
	if !paper && title+total+2*edge*s <= p.width {
		p.line(entries, p.width-2*edge*s-total, h.height)
	} else {
		h.height += gap * s
		h.height = p.rows(entries, h.height)
	}
	h.entries = entries
	for _, text := range p.noteLines(p.height - h.height - p.bottom()) {
		h.height += p.body.row()
		h.notes = append(h.notes, noteLine{text, h.height})
	}
	return h
}

// noteLines breaks the notes into lines. Where little height is left for
// them and the data, only the first lines are kept and end in dots.
func (p *picture) noteLines(height vg.Length) []string {
	var lines []string
	width := p.width - 2*edge*p.scale
	for _, note := range p.Notes {
		lines = append(lines, p.body.wrap(note(p.frame), width)...)
	}
	most := max(1, int((height-comfort*p.scale)/p.body.row()))
	if len(lines) > most {
		lines = lines[:most]
		lines[most-1] = p.body.dotted(lines[most-1], width)
	}
	return lines
}

// fitTitle returns the title; one of several setups with their names cut as short as
// the width asks for, or without them where there is no room at all.
func (p *picture) fitTitle() string {
	room := p.width - 2*edge*p.scale
	for length := NameLength; length >= leastName && len(p.Setups) > 1; length-- {
		if text := p.heading(length); p.title.width(text) <= room {
			return text
		}
	}
	return p.Title
}

// leastName is the least number of letters to tell a setup by.
const leastName = 5

// asideBelow reports whether the aside of a comparison finds no room beside the
// title.
func (p *picture) asideBelow() bool {
	if len(p.Setups) < 2 || p.Aside == nil {
		return false
	}
	return (2*edge+2*gap)*p.scale+p.title.width(p.titleText)+p.body.width(p.asideText()) > p.width
}

func (p *picture) asideText() string {
	if p.Aside == nil {
		return ""
	}
	return p.Aside(p.style.Units)
}

// drawHeader draws title, legend and notes at the top of a drawing: gonum centers
// its title, and its legend is a column that never wraps.
func (p *picture) drawHeader(to draw.Canvas) {
	s := p.scale
	at := func(right, down vg.Length) vg.Point { return vg.Point{X: to.Min.X + right, Y: to.Max.Y - down} }
	baseline := edge*s + p.title.row() - 0.3*p.title.size
	p.title.draw(to, p.style.Palette.Ink, at(edge*s, baseline), 0, p.titleText)
	if !p.asideBelow() {
		p.body.draw(to, p.style.Palette.Muted, at((edge+gap)*s+p.title.width(p.titleText)+gap*s, baseline), 0, p.asideText())
	}
	if p.header.subtitle > 0 {
		p.body.draw(to, p.style.Palette.Muted, at(edge*s, p.header.subtitle), 0, p.Subtitle)
	}
	lift := 0.3 * p.body.size
	for i := range p.header.entries {
		e := &p.header.entries[i]
		p.drawIcons(to, e.icons, at(e.at.X, e.at.Y-lift-p.body.middle()))
		ink := p.style.Palette.Ink
		switch {
		case e.muted:
			ink = p.style.Palette.Muted
		case e.over:
			ink = p.style.Palette.Bad
		}
		p.body.draw(to, ink, at(e.at.X+p.swatchWidth(e), e.at.Y-lift), 0, e.text)
	}
	for _, n := range p.header.notes {
		p.body.draw(to, p.style.Palette.Ink, at(edge*s, n.down-lift), 0, n.text)
	}
}

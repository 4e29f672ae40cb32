package chart

import (
	"slices"
	"strings"

	"gonum.org/v1/plot/vg"
)

// header is what stands above the data area, laid out from its top left.
type header struct {
	height   vg.Length
	subtitle vg.Length // how far down its baseline is; 0 for none
	entries  []entry
	notes    []noteLine
}

// entry is one line of the legend at its place.
type entry struct {
	text string
	at   vg.Point                         // left end of the swatch, on the baseline, down from the top
	draw func(v *view, from, to vg.Point) // nil without a swatch
	// muted tells that it is no name of anything drawn.
	muted bool
}

// noteLine is a line of remarks below the legend.
type noteLine struct {
	text string
	down vg.Length
}

// layHeader finds the places: title, subtitle, legend, notes. The legend
// stands beside the title where there is room.
func (p *picture) layHeader(paper bool) header {
	s := p.scale
	h := header{height: edge*s + p.title.row()}
	if paper {
		h.height += p.body.row()
		h.subtitle = h.height - 0.3*p.body.size
	}
	width := p.style.Width
	entries := p.legend()
	if p.asideBelow() {
		entries = append([]entry{{text: p.asideText(), muted: true}}, entries...)
	}
	total := -swatchGap * s
	for i := range entries {
		total += p.entryWidth(&entries[i]) + swatchGap*s
	}
	title := edge*s + p.title.width(p.titleText) + gap*s + p.body.width(p.asideText()) + 2*swatchGap*s
	if !paper && (width <= 0 || title+total+2*edge*s <= width) {
		// Beside the title, at the right where the width is known.
		x := title
		if width > 0 {
			x = width - 2*edge*s - total
		}
		p.line(entries, x, h.height)
	} else {
		h.height += gap * s
		h.height = p.rows(entries, h.height)
	}
	h.entries = entries
	for _, text := range p.remarkLines(p.style.Height - h.height - p.bottom()) {
		h.height += p.body.row()
		h.notes = append(h.notes, noteLine{text, h.height})
	}
	return h
}

// remarkLines breaks the remarks into lines. Where little height is left for
// them and the data, only the first lines are kept and end in dots.
func (p *picture) remarkLines(height vg.Length) []string {
	var lines []string
	width := p.style.Width - 2*edge*p.scale
	for _, remark := range p.Notes {
		lines = append(lines, p.body.wrap(remark(p.frame), width)...)
	}
	if p.style.Height <= 0 {
		return lines
	}
	most := max(1, int((height-comfort*p.scale)/p.body.row()))
	if len(lines) > most {
		lines = lines[:most]
		lines[most-1] = p.body.dotted(lines[most-1], width)
	}
	return lines
}

// line puts all entries in one line.
func (p *picture) line(entries []entry, x, down vg.Length) {
	for i := range entries {
		entries[i].at = vg.Point{X: x, Y: down}
		x += p.entryWidth(&entries[i]) + swatchGap*p.scale
	}
}

// rows breaks the entries into rows from down on and returns the height
// reached.
func (p *picture) rows(entries []entry, down vg.Length) vg.Length {
	left := edge * p.scale
	x := left
	down += p.body.row()
	for i := range entries {
		w := p.entryWidth(&entries[i])
		if p.style.Width > 0 && x > left && x+w > p.style.Width-left {
			x = left
			down += p.body.row()
		}
		entries[i].at = vg.Point{X: x, Y: down}
		x += w + swatchGap*p.scale
	}
	return down
}

func (p *picture) entryWidth(e *entry) vg.Length {
	return p.swatchWidth(e) + p.body.width(e.text)
}

func (p *picture) swatchWidth(e *entry) vg.Length {
	if e.draw == nil {
		return 0
	}
	return (swatch + gap) * p.scale
}

// fitTitle returns the title; one of several setups with their names cut as short as
// the width asks for, or without them where there is no room at all.
func (p *picture) fitTitle() string {
	room := p.style.Width - 2*edge*p.scale
	if len(p.Setups) < 2 || p.style.Width <= 0 || p.title.width(p.Title) <= room {
		return p.Title
	}
	for length := NameLength - 1; length >= leastName; length-- {
		if text := versus(p.Heading, ShortNames(p.Setups, length)); p.title.width(text) <= room {
			return text
		}
	}
	return p.Heading
}

// leastName is the least number of letters to tell a setup by.
const leastName = 5

// asideBelow tells that the aside of a comparison finds no room beside the
// title.
func (p *picture) asideBelow() bool {
	if len(p.Setups) < 2 || p.Aside == nil || p.style.Width <= 0 {
		return false
	}
	return (2*edge+2*gap)*p.scale+p.title.width(p.titleText)+p.body.width(p.asideText()) > p.style.Width
}

func (p *picture) asideText() string {
	if p.Aside == nil {
		return ""
	}
	return p.Aside(p.style.Units)
}

// legend lists what is drawn by name, each name once.
func (p *picture) legend() []entry {
	var list []entry
	known := map[string]bool{"": true}
	add := func(name string, f func(v *view, from, to vg.Point)) {
		if !known[name] {
			known[name] = true
			list = append(list, entry{text: name, draw: f})
		}
	}
	if len(p.Setups) > 1 {
		list = p.comparedLines()
	} else {
		for i := range p.Lines {
			l := &p.Lines[i]
			name := l.Name
			if l.Most != nil {
				name += " " + l.Most(p.style.Units)
			}
			add(name, func(v *view, from, to vg.Point) {
				v.StrokeLine2(p.stroke(l.Ink, l.Dash, lineWidth), from.X, from.Y, to.X, to.Y)
			})
		}
	}
	for i := range p.Points {
		m := &p.Points[i]
		add(m.Name, func(v *view, from, to vg.Point) {
			in := Ink(PlainInk)
			if m.Colored {
				in = m.Ink
			}
			p.glyph(v, m, p.ink(in), vg.Point{X: (from.X + to.X) / 2, Y: from.Y})
		})
	}
	for i := range p.Regions {
		r := &p.Regions[i]
		if r.Name == nil {
			continue
		}
		add(r.Name(p.style.Units), func(v *view, from, to vg.Point) {
			half := 0.4 * p.body.size
			p.fillTarget(v, vg.Rectangle{Min: vg.Point{X: from.X, Y: from.Y - half}, Max: vg.Point{X: to.X, Y: to.Y + half}})
		})
	}
	return list
}

// comparedLines lists the setups, told apart by how their lines look, and then
// each quantity with the looks of all.
func (p *picture) comparedLines() []entry {
	var list []entry
	for i, name := range ShortNames(p.Setups, NameLength) {
		list = append(list, entry{text: name, draw: func(v *view, from, to vg.Point) {
			v.StrokeLine2(p.strokeOf(PlainInk, Solid, lineWidth, i), from.X, from.Y, to.X, to.Y)
		}})
	}
	for i := range p.Lines {
		if slices.ContainsFunc(p.Lines[:i], func(o Line) bool { return o.Name == p.Lines[i].Name }) {
			continue // listed with the first of the name
		}
		var all, drawn []*Line
		for k := range p.Lines[i:] {
			if l := &p.Lines[i+k]; l.Name == p.Lines[i].Name {
				all = append(all, l)
				if k == 0 || len(l.Runs) > 0 {
					drawn = append(drawn, l)
				}
			}
		}
		list = append(list, entry{text: p.comparedName(all, len(drawn) > 1), draw: func(v *view, from, to vg.Point) {
			for k, l := range drawn {
				// One above the other.
				n := vg.Length(len(drawn))
				lift := min(0.4, 0.8/(n-1)) * p.body.size * ((n-1)/2 - vg.Length(k))
				v.StrokeLine2(p.strokeOf(l.Ink, l.Dash, lineWidth, l.Setup), from.X, from.Y+lift, to.X, to.Y+lift)
			}
		}})
	}
	return list
}

// comparedName names a quantity of several setups, with how far each goes.
func (p *picture) comparedName(all []*Line, differ bool) string {
	if all[0].Brief == nil {
		return all[0].Name
	}
	if !differ {
		all = all[:1]
	}
	var parts []string
	for _, l := range all {
		parts = append(parts, l.Brief(p.style.Units))
	}
	return all[0].Name + " " + strings.Join(parts, " vs ")
}

// drawHeader draws title, legend and notes above the data area.
func (p *picture) drawHeader(v *view) {
	s := p.scale
	left, top := v.Min.X-p.margins.left, v.Max.Y+p.margins.top
	at := func(right, down vg.Length) vg.Point { return vg.Point{X: left + right, Y: top - down} }
	baseline := edge*s + p.title.row() - 0.3*p.title.size
	p.title.draw(v, p.style.Palette.Ink, at(edge*s, baseline), 0, p.titleText)
	if !p.asideBelow() {
		p.body.draw(v, p.style.Palette.Muted, at((edge+gap)*s+p.title.width(p.titleText)+gap*s, baseline), 0, p.asideText())
	}
	if p.header.subtitle > 0 {
		p.body.draw(v, p.style.Palette.Muted, at(edge*s, p.header.subtitle), 0, p.Subtitle)
	}
	lift := 0.3 * p.body.size
	for i := range p.header.entries {
		e := &p.header.entries[i]
		from := at(e.at.X, e.at.Y-lift-p.body.middle())
		if e.draw != nil {
			e.draw(v, from, from.Add(vg.Point{X: swatch * s}))
		}
		ink := p.style.Palette.Ink
		if e.muted {
			ink = p.style.Palette.Muted
		}
		p.body.draw(v, ink, at(e.at.X+p.swatchWidth(e), e.at.Y-lift), 0, e.text)
	}
	for _, n := range p.header.notes {
		p.body.draw(v, p.style.Palette.Ink, at(edge*s, n.down-lift), 0, n.text)
	}
}

// fillTarget draws a target's area with its outline.
func (p *picture) fillTarget(v *view, r vg.Rectangle) {
	v.SetColor(targetFill(&p.style.Palette))
	v.Fill(r.Path())
	v.SetLineStyle(p.stroke(goodInk, Solid, edgeWidth))
	v.Stroke(r.Path())
}

package chart

import (
	"slices"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// entry is one line of the legend at its place.
type entry struct {
	text  string
	at    vg.Point           // left end of the swatch, on the baseline, down from the top
	icons []plot.Thumbnailer // one above the other in the swatch; none without a swatch
	muted bool               // no name of anything drawn
	over  bool               // more than allowed
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
		if x > left && x+w > p.width-left {
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
	if len(e.icons) == 0 {
		return 0
	}
	return (swatch + gap) * p.scale
}

// legend lists what is drawn by name, each name once; briefly on demand.
func (p *picture) legend(brief bool) []entry {
	var list []entry
	known := map[string]bool{"": true}
	put := func(e entry) {
		if !known[e.text] {
			known[e.text] = true
			list = append(list, e)
		}
	}
	add := func(name string, icon plot.Thumbnailer) {
		put(entry{text: name, icons: []plot.Thumbnailer{icon}})
	}
	if len(p.Setups) > 1 {
		list = p.comparedLines()
	} else {
		for i := range p.Lines {
			l := &p.Lines[i]
			name := l.Name
			switch {
			case brief && l.Brief != nil:
				name += " " + l.Brief(p.style.Units)
			case l.Most != nil:
				name += " " + l.Most(p.style.Units)
			}
			put(entry{text: name, icons: []plot.Thumbnailer{p.lineIcon(l)}, over: l.Over})
		}
	}
	for i := range p.Points {
		m := &p.Points[i]
		in := Ink(PlainInk)
		if m.Colored {
			in = m.Ink
		}
		add(m.Name, &plotter.Scatter{GlyphStyle: p.glyph(m.Shape, p.ink(in), m.Size)})
	}
	for i := range p.Regions {
		if r := &p.Regions[i]; r.Name != nil {
			add(r.Name(p.style.Units), &plotter.Polygon{Color: p.fill(r), LineStyle: p.stroke(goodInk, Solid, edgeWidth, 0)})
		}
	}
	for i := range p.Areas {
		if a := &p.Areas[i]; len(a.Rings) > 0 {
			add(a.Name, &plotter.Polygon{Color: p.areaFill(a)})
		}
	}
	return list
}

// lineIcon returns the sample of a line; of one of two colors it shows only pattern and
// width.
func (p *picture) lineIcon(l *Line) plot.Thumbnailer {
	ink := l.Ink
	if l.Below != nil {
		ink = PlainInk
	}
	return &plotter.Line{LineStyle: p.stroke(ink, l.Dash, lineWidth*usual(l.Width), l.Setup)}
}

// comparedLines lists the setups, told apart by how their lines look, and then
// each quantity with the looks of all.
func (p *picture) comparedLines() []entry {
	var list []entry
	for i, name := range ShortNames(p.Setups, NameLength) {
		list = append(list, entry{text: name, icons: []plot.Thumbnailer{p.lineIcon(&Line{Ink: PlainInk, Setup: i})}})
	}
	for i := range p.Lines {
		if slices.ContainsFunc(p.Lines[:i], func(o Line) bool { return o.Name == p.Lines[i].Name }) {
			continue // listed with the first of the name
		}
		var all []*Line
		var icons []plot.Thumbnailer
		over := false
		for k := range p.Lines[i:] {
			if l := &p.Lines[i+k]; l.Name == p.Lines[i].Name {
				all, over = append(all, l), over || l.Over
				if k == 0 || len(l.Runs) > 0 {
					icons = append(icons, p.lineIcon(l))
				}
			}
		}
		list = append(list, entry{text: p.comparedName(all, len(icons) > 1), icons: icons, over: over})
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

// drawIcons draws an entry's icons one above the other, from the middle of the left
// side of their swatch on.
func (p *picture) drawIcons(to draw.Canvas, icons []plot.Thumbnailer, from vg.Point) {
	n := vg.Length(len(icons))
	for k, icon := range icons {
		lift := min(0.4, 0.8/(n-1)) * p.body.size * ((n-1)/2 - vg.Length(k))
		half := 0.4 * p.body.size
		icon.Thumbnail(&draw.Canvas{Canvas: to, Rectangle: vg.Rectangle{
			Min: vg.Point{X: from.X, Y: from.Y + lift - half}, Max: vg.Point{X: from.X + swatch*p.scale, Y: from.Y + lift + half},
		}})
	}
}

package chart

import "gonum.org/v1/plot/vg"

// Sizes of the marks of events at scale 1 [pt].
const (
	bandWidth   = 2.0
	strokeWidth = 1.5
	strokeTall  = 5.0
	furtherTall = 3.0 // of further setups' strokes
	// sparing is what the label of an event may cost at most: it stands back behind
	// everything else.
	sparing = 4
)

// eventRow returns how far below the upper edge the marks of a setup's events begin
// and end: each has its row.
func (p *picture) eventRow(setup int) (from, to vg.Length) {
	if setup == 0 {
		return 0, strokeTall * p.scale
	}
	from = (strokeTall + vg.Length(setup-1)*furtherTall) * p.scale
	return from, from + furtherTall*p.scale
}

// eventRoom is how much of the upper edge the events take.
func (p *picture) eventRoom() vg.Length {
	var room vg.Length
	for i := range p.Events {
		_, to := p.eventRow(p.Events[i].Setup)
		room = max(room, to)
	}
	return room
}

// drawEvents marks the events, bands below strokes.
func (p *picture) drawEvents(v *view) {
	for _, band := range []bool{true, false} {
		for i := range p.Events {
			e := &p.Events[i]
			shown := Span{e.From, e.To}.clip(p.frame.X)
			if e.Band != band || shown.empty() {
				continue
			}
			top, foot := p.eventRow(e.Setup)
			top, foot = v.Max.Y-top, v.Max.Y-foot
			if from := v.x(shown.Min); band {
				y := top - bandWidth/2*p.scale
				v.StrokeLine2(p.stroke(e.Ink, Solid, bandWidth, e.Setup), from, y, max(v.x(shown.Max), from+strokeWidth*p.scale), y)
			} else {
				v.StrokeLine2(p.stroke(e.Ink, Solid, strokeWidth, e.Setup), from, top, from, foot)
			}
		}
	}
}

// ofEvent places the label of an event below its mark, where it covers next to
// nothing.
func (l *labeler) ofEvent(v *view, e *Event) {
	if e.empty() || !l.p.frame.X.Contains(e.From) {
		return
	}
	at := vg.Point{X: v.x(e.From), Y: l.area.Max.Y}
	text := e.Label(l.p.style.Units)
	l.put(&wish{text: text, ink: l.p.style.Palette.Muted, places: l.besideUpright(at.X, text), mark: &at}, sparing)
}

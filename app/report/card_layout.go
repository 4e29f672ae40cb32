package report

import (
	"image/color"
	"math"
	"sort"
	"time"

	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/paper"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Sizes on a card at a scale of 1, but for its margin and the caution [pt].
const (
	cardMargin  = 11.0
	cardName    = 13.0
	cardTitle   = 7.0
	cardBody    = 7.8
	cardHole    = 5.6 // Numbers in the drawing of the holes.
	cardCaution = 6.6
	cardGap     = 5.0 // Above a part.
	cardDrawing = 96.0
	cardHand    = 19.0 // To write by hand in.
)

// Scales of letters between which a card is set: smaller ones are hard to read
// at the car.
const leastScale, mostScale = 0.64, 1.16

// cardText is a line of text on a card, from the left end of its baseline.
type cardText struct {
	face font.Face
	ink  color.Color
	at   vg.Point
	text string
}

// cardShape is something drawn on a card within a box.
type cardShape struct {
	box  vg.Rectangle
	draw func(*paper.Canvas)
}

// cardSheet is a card laid out, its lower left corner at the origin.
type cardSheet struct {
	width, height vg.Length
	scale         float64
	y             vg.Length // Upper edge of what comes next.
	wide          bool      // A table is wider than the card.
	texts         []cardText
	shapes        []cardShape
}

// layout sets the card in the largest letters in which everything fits.
func (k *Card) layout(date time.Time) *cardSheet {
	const step = 0.02
	for scale := mostScale; ; scale -= step {
		l := k.set(date, scale)
		if l.y >= cardMargin && !l.wide || scale-step < leastScale {
			return l
		}
	}
}

// set lays the card out at a scale of letters.
func (k *Card) set(date time.Time, scale float64) *cardSheet {
	l := &cardSheet{width: 4 * vg.Inch, height: 6 * vg.Inch, scale: scale}
	if k.units == units.SI {
		l.width, l.height = 100*vg.Millimeter, 150*vg.Millimeter
	}
	l.y = l.height - cardMargin
	k.head(l, date)
	k.holes(l)
	l.part("Turn each bar (UL: upper left)", k.bars(), func(row, col int) bool { return col < 2 })
	for _, alert := range k.alerts() {
		l.paragraph(l.bold(cardBody), ink.Bad, alert)
	}
	for _, note := range k.assumptions() {
		l.paragraph(l.plain(cardBody), ink.Ink, note)
	}
	l.part("Pinion", k.pinion(), func(row, col int) bool { return row == 0 && col == 1 })
	l.part("Before and after", k.compared(), func(row, col int) bool { return col == 2 })
	l.ticks(k.boxes())
	l.hand("Date", "Track", "60 ft")
	small := face(cardCaution, xfont.WeightNormal)
	for _, s := range measure(small).wrap(chart.Caution, l.room().Points()) {
		l.line(small, ink.Ink, cardMargin, s)
	}
	return l
}

func (l *cardSheet) room() vg.Length { return l.width - 2*cardMargin }

func (l *cardSheet) plain(size vg.Length) font.Face {
	return face(size*vg.Length(l.scale), xfont.WeightNormal)
}

func (l *cardSheet) bold(size vg.Length) font.Face {
	return face(size*vg.Length(l.scale), xfont.WeightBold)
}

// put adds text with its baseline's left end at a point.
func (l *cardSheet) put(f font.Face, c color.Color, x, y vg.Length, text string) {
	if text != "" {
		l.texts = append(l.texts, cardText{f, c, vg.Point{X: x, Y: y}, text})
	}
}

// leading is the height of a line.
func leading(f font.Face) vg.Length { return f.Font.Size * 1.25 }

// line adds a line of text at x.
func (l *cardSheet) line(f font.Face, c color.Color, x vg.Length, text string) {
	l.put(f, c, x, l.y-f.Font.Size*0.95, text)
	l.y -= leading(f)
}

// paragraph adds lines of text.
func (l *cardSheet) paragraph(f font.Face, c color.Color, text string) {
	for _, s := range measure(f).wrap(text, l.room().Points()) {
		l.line(f, c, cardMargin, s)
	}
}

// clipped returns the text, or as much of it with an ellipsis as fits.
func clipped(f font.Face, text string, width vg.Length) string {
	if f.Width(text) <= width {
		return text
	}
	letters := []rune(text)
	cut := func(n int) string { return string(letters[:n]) + "…" }
	return cut(sort.Search(len(letters)-1, func(n int) bool { return f.Width(cut(n+1)) > width }))
}

// shape adds a drawing.
func (l *cardSheet) shape(x0, y0, x1, y1 vg.Length, draw func(*paper.Canvas)) {
	l.shapes = append(l.shapes, cardShape{vg.Rectangle{Min: vg.Point{X: x0, Y: y0}, Max: vg.Point{X: x1, Y: y1}}, draw})
}

// rule adds a thin line from x0 to x1 under y.
func (l *cardSheet) rule(c color.Color, x0, x1, y vg.Length) {
	box := vg.Rectangle{Min: vg.Point{X: x0, Y: y - 0.5}, Max: vg.Point{X: x1, Y: y}}
	l.shape(x0, y-0.5, x1, y, func(p *paper.Canvas) {
		p.SetColor(c)
		p.Fill(box.Path())
	})
}

// heading begins a part with its title over a rule.
func (l *cardSheet) heading(title string) {
	l.y -= cardGap * vg.Length(l.scale)
	l.line(l.bold(cardTitle), ink.Accent, cardMargin, title)
	l.rule(ink.Grid, cardMargin, l.width-cardMargin, l.y)
	l.y -= 1.5
}

// part adds a title and a table.
func (l *cardSheet) part(title string, t table, bold func(row, col int) bool) {
	l.heading(title)
	l.table(t, cardMargin, l.room(), bold)
}

// table adds a table's headings, if it has any, and its rows. It is measured in
// bold letters.
func (l *cardSheet) table(t table, x, room vg.Length, bold func(row, col int) bool) {
	heavy, light := l.bold(cardBody), l.plain(cardBody)
	r := measure(heavy)
	r.gap, r.limit, r.least = 10*l.scale, room.Points(), math.Inf(1)
	columns := r.columns(&t)
	if last := columns[len(columns)-1]; last.left+last.whole > r.limit {
		l.wide = true
	}
	put := func(f font.Face, c color.Color, col int, text string) {
		l.put(f, c, x+vg.Length(columns[col].left), l.y-f.Font.Size*0.95, text)
	}
	if len(headingLines(&t)) > 0 {
		for i, h := range t.columns {
			put(light, ink.Muted, i, h.title)
		}
		l.y -= leading(light)
	}
	for i, row := range t.rows {
		for j, c := range row {
			f := light
			if bold(i, j) {
				f = heavy
			}
			put(f, ink.Ink, j, c.words)
		}
		l.y -= leading(light)
	}
}

// head adds the car's name, the date, the setup's name and both choices of holes.
func (k *Card) head(l *cardSheet, date time.Time) {
	day, small, big := date.Format(time.DateOnly), l.plain(cardBody), l.bold(cardName)
	right := l.width - cardMargin
	l.put(small, ink.Muted, right-small.Width(day), l.y-big.Font.Size*0.95, day)
	l.line(big, ink.Ink, cardMargin, clipped(big, plainText(k.car.Body.Name), l.room()-small.Width(day)-8))
	heavy := l.bold(cardBody)
	to := k.from().String() + " → " + k.to.String()
	if k.from() == k.to {
		to = k.to.String()
	}
	l.put(heavy, ink.Ink, right-heavy.Width("holes "+to), l.y-heavy.Font.Size*0.95, "holes "+to)
	l.line(heavy, ink.Ink, cardMargin, clipped(heavy, "setup "+plainText(k.car.Setups[k.setup].Name), l.room()-heavy.Width("holes "+to)-8))
}

// ticks adds boxes to tick, two in a row.
func (l *cardSheet) ticks(labels []string) {
	f := l.plain(cardBody)
	l.y -= cardGap * vg.Length(l.scale)
	side := f.Font.Size * 0.95
	for i, label := range labels {
		x := vg.Length(cardMargin)
		if i%2 == 1 {
			x += l.room() / 2
		}
		low := l.y - side - 1
		box := vg.Rectangle{Min: vg.Point{X: x, Y: low}, Max: vg.Point{X: x + side, Y: low + side}}
		l.shape(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y, func(p *paper.Canvas) {
			p.SetColor(ink.Ink)
			p.SetLineWidth(0.7)
			p.Stroke(box.Path())
		})
		l.put(f, ink.Ink, x+side+4, low+side*0.16, label)
		if i%2 == 1 || i == len(labels)-1 {
			l.y -= side + 5*vg.Length(l.scale)
		}
	}
}

// hand adds a line of labels with room behind each to write in.
func (l *cardSheet) hand(labels ...string) {
	f := l.plain(cardBody)
	l.y -= cardHand * vg.Length(l.scale)
	each := l.room() / vg.Length(len(labels))
	for i, label := range labels {
		x := cardMargin + vg.Length(i)*each
		l.put(f, ink.Ink, x, l.y+2, label)
		l.rule(ink.Muted, x+f.Width(label)+4, x+each-6, l.y)
	}
	l.y -= 6
}

// draw draws the card.
func (l *cardSheet) draw(p *paper.Canvas) {
	for _, s := range l.shapes {
		p.Push()
		s.draw(p)
		p.Pop()
	}
	for _, t := range l.texts {
		p.SetColor(t.ink)
		p.FillString(t.face, t.at, t.text)
	}
}

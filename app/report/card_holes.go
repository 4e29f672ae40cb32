package report

import (
	"fmt"
	"image/color"
	"math"

	"bowline/model/car"
	"bowline/plotting/chart"
	"bowline/plotting/paper"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// Shares of the card's room and sizes of the drawing of the holes [pt].
const (
	drawingShare = 0.42 // Of the card's width.
	panelGap     = 8.0
	panelEdge    = 5.0  // Room for a ring above and below a row.
	panelSide    = 12.0 // Room for a number on either side.
	numberAir    = 0.8  // Around a number.
)

// markSizes are the radii of the marks of holes, rings with their line [pt].
type markSizes struct{ hole, ring vg.Length }

// legendMarks are those of the legend.
var legendMarks = markSizes{1.8, 3.2}

// ringLine is the width of a ring's line [pt].
const ringLine = 0.9

// sizes returns marks small enough for holes that far apart not to cover each
// other, but large enough to be seen.
func sizes(apart vg.Length) markSizes {
	hole := max(0.8, min(0.32*apart, 1.9))
	return markSizes{hole, max(hole+1.1, min(0.95*apart-hole, 3.4))}
}

// holes adds where each bar end goes, and both brackets' holes in side view.
func (k *Card) holes(l *cardSheet) {
	l.heading("Holes")
	top := l.y
	split := cardMargin + l.room()*(1-drawingShare)
	t, moved := k.ends()
	l.table(t, cardMargin, split-cardMargin-6, func(row, col int) bool { return moved[row] })
	l.legend()
	text := l.y
	l.y = top
	k.brackets(l, split)
	l.y = min(l.y, text)
}

// legend says what the marks in the drawing mean.
func (l *cardSheet) legend() {
	f := l.plain(cardTitle)
	l.y -= 4
	r := legendMarks.ring
	x, y := cardMargin+r, l.y-f.Font.Size*0.62
	for _, mark := range []struct {
		label  string
		filled bool
	}{{"in use", true}, {"go to", false}} {
		at := vg.Point{X: x, Y: y}
		l.shape(x-r, y-r, x+r, y+r, func(p *paper.Canvas) {
			if mark.filled {
				disk(p, ink.Ink, at, legendMarks.hole)
			} else {
				ring(p, ink.Accent, at, r-ringLine/2, ringLine)
			}
		})
		l.put(f, ink.Muted, x+r+3, l.y-f.Font.Size*0.95, mark.label)
		x += 2*r + 6 + f.Width(mark.label) + 6
	}
	l.put(f, ink.Muted, x-r, l.y-f.Font.Size*0.95, "car's front →")
	l.y -= leading(f)
}

// brackets draws the housing's holes and ahead of them the chassis's, the upper
// row above the lower one, from x to the right edge. All four rows have one
// scale and each stands in the middle of its half of the bracket, so that
// neighbors stay apart.
func (k *Card) brackets(l *cardSheet, x vg.Length) {
	f := l.plain(cardTitle)
	right, low := l.width-cardMargin, l.y-cardDrawing*vg.Length(l.scale)
	panel, bottom := (right-x-panelGap)/2, low+leading(f)
	cell := vg.Point{X: panel - 2*panelSide, Y: (l.y-bottom)/2 - 2*panelEdge}
	scale := math.Inf(1) // Points a meter.
	for _, row := range car.Rows {
		least, most := bounds(*row.In(k.car))
		scale = min(scale, cell.X.Points()/(most.X-least.X), cell.Y.Points()/(most.Y-least.Y))
	}
	// Without two places for holes there is nothing to scale.
	marks := legendMarks
	if math.IsInf(scale, 1) {
		scale = 0
	} else if apart := k.apart(); !math.IsInf(apart, 1) {
		marks = sizes(vg.Length(scale * apart))
	}
	for i, rows := range bracketRows {
		left := x + vg.Length(i)*(panel+panelGap)
		frame := vg.Rectangle{Min: vg.Point{X: left, Y: bottom}, Max: vg.Point{X: left + panel, Y: l.y}}
		name := [...]string{"housing", "chassis"}[i]
		l.put(f, ink.Muted, left+(panel-f.Width(name))/2, low+leading(f)-f.Font.Size, name)
		k.panel(l, frame, rows, scale, marks)
	}
	l.y = low
}

// bracketRows are the rows of the housing's and of the chassis's bracket, the
// upper one first.
var bracketRows = [2][2]car.Row{{car.HousingUpper, car.HousingLower}, {car.ChassisUpper, car.ChassisLower}}

// bounds returns the least and the greatest coordinates of holes.
func bounds(list []r2.Vec) (least, most r2.Vec) {
	least, most = list[0], list[0]
	for _, h := range list {
		least = r2.Vec{X: min(least.X, h.X), Y: min(least.Y, h.Y)}
		most = r2.Vec{X: max(most.X, h.X), Y: max(most.Y, h.Y)}
	}
	return least, most
}

// apart returns the least distance between holes of a row that are not in one
// place [m]; infinite where there are none.
func (k *Card) apart() float64 {
	least := math.Inf(1)
	for _, row := range car.Rows {
		list := *row.In(k.car)
		for i := range list {
			for j := range i {
				if d := r2.Norm(r2.Sub(list[i], list[j])); d > 0 {
					least = min(least, d)
				}
			}
		}
	}
	return least
}

// panel draws one bracket's holes, with the numbers of those in use and gone to
// where they hide nothing.
func (k *Card) panel(l *cardSheet, frame vg.Rectangle, rows [2]car.Row, scale float64, size markSizes) {
	from, f := k.from(), l.bold(cardHole)
	var taken []vg.Rectangle
	type mark struct {
		at           vg.Point
		number       int
		used, target bool
	}
	var marks []mark
	half := (frame.Max.Y - frame.Min.Y) / 2
	for i, row := range rows {
		middle := vg.Point{X: (frame.Min.X + frame.Max.X) / 2, Y: frame.Max.Y - half*(vg.Length(i)+0.5)}
		least, most := bounds(*row.In(k.car))
		center := r2.Scale(0.5, r2.Add(least, most))
		for i, h := range *row.In(k.car) {
			off := r2.Scale(scale, r2.Sub(h, center))
			m := mark{middle.Add(vg.Point{X: vg.Length(off.X), Y: vg.Length(off.Y)}), i + 1, i == *row.Of(&from), i == *row.Of(&k.to)}
			marks = append(marks, m)
			r := size.hole
			if m.target {
				r = size.ring
			}
			taken = append(taken, vg.Rectangle{Min: m.at.Sub(vg.Point{X: r, Y: r}), Max: m.at.Add(vg.Point{X: r, Y: r})})
		}
	}
	l.shape(frame.Min.X, frame.Min.Y, frame.Max.X, frame.Max.Y, func(p *paper.Canvas) {
		p.SetColor(ink.Grid)
		p.SetLineWidth(0.6)
		p.Stroke(frame.Path())
		var halves vg.Path
		halves.Move(vg.Point{X: frame.Min.X, Y: frame.Max.Y - half})
		halves.Line(vg.Point{X: frame.Max.X, Y: frame.Max.Y - half})
		p.Stroke(halves)
		for _, m := range marks {
			if m.used {
				disk(p, ink.Ink, m.at, size.hole)
			} else {
				ring(p, ink.Muted, m.at, size.hole-0.2, 0.4)
			}
			if m.target {
				ring(p, ink.Accent, m.at, size.ring-ringLine/2, ringLine)
			}
		}
	})
	for _, m := range marks {
		if !m.used && !m.target {
			continue
		}
		text := fmt.Sprint(m.number)
		w, h := f.Width(text), f.Font.Size*0.72
		far := size.ring + 1
		for _, corner := range []vg.Point{
			{X: m.at.X + far, Y: m.at.Y - h/2}, {X: m.at.X - far - w, Y: m.at.Y - h/2},
			{X: m.at.X - w/2, Y: m.at.Y + far}, {X: m.at.X - w/2, Y: m.at.Y - far - h},
		} {
			box := vg.Rectangle{Min: corner, Max: vg.Point{X: corner.X + w, Y: corner.Y + h}}
			if within(box, frame) && !overlapsAny(box, taken) {
				l.put(f, ink.Ink, corner.X, corner.Y, text)
				air := vg.Point{X: numberAir, Y: numberAir}
				taken = append(taken, vg.Rectangle{Min: box.Min.Sub(air), Max: box.Max.Add(air)})
				break
			}
		}
	}
}

// within reports whether a is inside b.
func within(a, b vg.Rectangle) bool {
	return a.Min.X >= b.Min.X && a.Min.Y >= b.Min.Y && a.Max.X <= b.Max.X && a.Max.Y <= b.Max.Y
}

func overlapsAny(a vg.Rectangle, list []vg.Rectangle) bool {
	for _, b := range list {
		if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
			return true
		}
	}
	return false
}

func disk(p *paper.Canvas, c color.Color, at vg.Point, r vg.Length) {
	p.SetColor(c)
	p.Fill(chart.Circle(at, r))
}

func ring(p *paper.Canvas, c color.Color, at vg.Point, r, width vg.Length) {
	p.SetColor(c)
	p.SetLineWidth(width)
	p.Stroke(chart.Circle(at, r))
}

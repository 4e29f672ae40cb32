package chart

import "gonum.org/v1/plot/vg"

const (
	// edgeRows is how many labels find room above each other at an edge of the
	// data.
	edgeRows = 4
	// levelRows is how many heights a label may have on either side of its level
	// line, and levelStep how far they are apart, in rows.
	levelRows = 4
	levelStep = 0.4
)

// spread returns places along a height: right, left, and between.
func (l *labeler) spread(baseline vg.Length, text string) []vg.Point {
	left, right := l.area.Min.X+2*l.air, l.area.Max.X-2*l.air-l.width(text)
	points := make([]vg.Point, 0, 10)
	for _, part := range []vg.Length{1, 0, 0.5, 0.75, 0.25} {
		points = append(points, vg.Point{X: left + part*(right-left), Y: baseline})
	}
	return points
}

// atEdge returns places at the upper or lower edge of the data, so many rows away from
// it.
func (l *labeler) atEdge(upper bool, rows vg.Length, text string) []vg.Point {
	if upper {
		return l.spread(l.area.Max.Y-(capHeight+0.25)*l.size-rows*l.row(), text)
	}
	return l.spread(l.area.Min.Y+(descent+0.25)*l.size+rows*l.row(), text)
}

// offEdge returns places row by row away from an edge, on its side of zero.
func (l *labeler) offEdge(upper bool, zero vg.Length, text string) []vg.Point {
	var points []vg.Point
	for rows := vg.Length(1); rows < edgeRows; rows++ {
		for _, at := range l.atEdge(upper, rows, text) {
			if above := at.Y+l.middle() > zero; above == upper {
				points = append(points, at)
			}
		}
	}
	return points
}

// onLevel returns places on a level line, which stops for them.
func (l *labeler) onLevel(y vg.Length, text string) []vg.Point { return l.spread(y-l.middle(), text) }

// alongLevel returns places outside of a level line, where below is outside, and then
// inside of it, so far away from it.
func (l *labeler) alongLevel(y vg.Length, below bool, off vg.Length, text string) []vg.Point {
	over, under := l.spread(y+(descent+0.12)*l.size+off, text), l.spread(y-(capHeight+0.22)*l.size-off, text)
	if below {
		return append(under, over...)
	}
	return append(over, under...)
}

// offLevel returns places farther and farther away from a level line.
func (l *labeler) offLevel(y vg.Length, below bool, text string) []vg.Point {
	var points []vg.Point
	for i := vg.Length(1); i < levelRows; i++ {
		points = append(points, l.alongLevel(y, below, i*levelStep*l.row(), text)...)
	}
	return points
}

// besideUpright returns places right and left of an upright line, from the top
// down.
func (l *labeler) besideUpright(x vg.Length, text string) []vg.Point {
	points := make([]vg.Point, 0, 8)
	for i := range 4 {
		y := l.area.Max.Y - (capHeight+0.3)*l.size - vg.Length(i)*l.row()
		points = append(points, vg.Point{X: x + 2*l.air, Y: y}, vg.Point{X: x - 2*l.air - l.width(text), Y: y})
	}
	return points
}

// atFoot returns places right and left of an upright line, from the bottom up.
func (l *labeler) atFoot(x vg.Length, text string) []vg.Point {
	points := make([]vg.Point, 0, 8)
	for i := range 4 {
		y := l.area.Min.Y + (descent+0.4)*l.size + vg.Length(i)*l.row()
		points = append(points, vg.Point{X: x + 2*l.air, Y: y}, vg.Point{X: x - 2*l.air - l.width(text), Y: y})
	}
	return points
}

// around returns places right of a point, left, above, below and at the
// corners.
func (l *labeler) around(at vg.Point, r vg.Length, text string) []vg.Point {
	w := l.width(text)
	right, left, center := at.X+r, at.X-r-w, at.X-w/2
	middle, above, below := at.Y-l.middle(), at.Y+r+descent*l.size, at.Y-r-capHeight*l.size
	return []vg.Point{
		{X: right, Y: middle}, {X: left, Y: middle}, {X: center, Y: above}, {X: center, Y: below},
		{X: right, Y: above}, {X: left, Y: above}, {X: right, Y: below}, {X: left, Y: below},
	}
}

// apart returns places beside a point, row by row away from it on its side of
// zero, and then at the edges.
func (l *labeler) apart(at vg.Point, r, zero vg.Length, text string) []vg.Point {
	w := l.width(text)
	var beside, edges []vg.Point
	for i := vg.Length(0); i*l.row() < l.area.Size().Y; i++ {
		for _, y := range []vg.Length{at.Y + i*l.row(), at.Y - i*l.row()} {
			if (y-zero)*(at.Y-zero) < 0 {
				continue
			}
			y -= l.middle()
			for away := r; away <= r+3*l.row(); away += l.row() {
				beside = append(beside, vg.Point{X: at.X + away, Y: y}, vg.Point{X: at.X - away - w, Y: y})
			}
			edges = append(edges, vg.Point{X: l.area.Max.X - w - 2*l.air, Y: y}, vg.Point{X: l.area.Min.X + 2*l.air, Y: y})
		}
	}
	return append(beside, edges...)
}

package side

import (
	"fmt"
	"math"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/linkage"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Options say how a car is shown.
type Options struct {
	Units    units.System
	Case     analysis.Case
	Selected car.Row  // the pivot that the keyboard moves
	Hot      scene.ID // under the pointer
	Labels   bool     // numbers at the items
	Moving   bool     // dragging moves holes rather than choosing them
	Tuning   bool     // the target can be dragged
	Launch   *Instant // one instant of a launch; nil for a travel and Case
	Held     bool     // what is Hot is being dragged
	Cloud    *Cloud   // combinations of holes; nil for none
	Ghosts   []Ghost  // setups that this one is held against
}

// away reports whether a station is another than ride height.
func (o Options) away(s *analysis.Station) bool {
	return o.Launch != nil || math.Abs(s.Pose.Travel) > 1e-9 || math.Abs(s.Pose.FrontTravel) > 1e-9
}

// Instant is one instant of a launch.
type Instant struct {
	Tension  [2][2]float64 // by car.Pair, left and right, pull positive [N]
	Spin     float64       // that the rear wheels have turned forward [rad]
	Distance float64       // that the car has come [m]
	// CenterPath is where the instant center goes over the whole launch, in
	// pieces, ground's frame [m].
	CenterPath [][]r2.Vec
}

// Sizes of parts whose real size is not among the inputs, drawn to give an
// idea of the place.
const (
	tubeRadius   = 1.75 * units.Inch // axle tube
	caseRadius   = 4.5 * units.Inch  // gear case
	pinionReach  = 10 * units.Inch   // pinion yoke ahead of the axle
	pinionRadius = 1.6 * units.Inch
	coilRadius   = 1.6 * units.Inch
	coilTurns    = 7
	bracketEdge  = 0.75 * units.Inch // plate beyond the outermost holes
	ghostTravel  = 0.02 * units.Inch // least travel that shows the ride-height ghost
	farCenter    = 400 * units.Inch  // an instant center beyond is not drawn
	lineReach    = 500 * units.Inch  // lines that run out of the picture
	rimShare     = 0.52              // rim over tire radius
	spokeCount   = 5
	wheelieWheel = 2 * units.Inch // radius of the wheelie bar's wheel
	trackMark    = units.Foot     // between marks on the track that a launch runs over
	trackReach   = 20             // marks ahead of and behind the contact
)

// Widths and sizes on screen [px].
const (
	thin      = 1.0
	line      = 1.6
	barLeast  = 4.0
	barSpan   = 7.0 // added at full use of the capacity
	holeSize  = 3.2
	pivotSize = 6.0
	easyPick  = 11.0
	closePick = 6.0
)

// builder collects items.
type builder struct {
	result  *analysis.Result
	station *analysis.Station
	options Options
	list    *scene.List
}

// Build fills a list with what is drawn of a result at a station, back to front.
func Build(list *scene.List, r *analysis.Result, s *analysis.Station, o Options) {
	list.Clear()
	b := &builder{result: r, station: s, options: o, list: list}
	b.target()
	b.ground()
	b.rideHeight()
	b.wheels()
	b.referenceLines()
	b.targetRays()
	b.spring()
	b.chassis()
	b.housing()
	b.driveshaft()
	b.wheelieBar()
	b.cloud()
	b.targetOutline()
	b.ghosts()
	b.barLines()
	b.bars()
	b.centerPath()
	b.holes()
	b.marks()
	b.cloudMarks()
	b.rayLabels()
	b.targetHandles()
}

func (b *builder) add(i scene.Item) { b.list.Add(i) }

// middle keeps points of the side view that are in the middle of the car.
func (b *builder) middle(p ...r2.Vec) []r3.Vec { return b.list.Aside(0, p...) }

// right keeps points of the side view that are on the right, out from the middle
// of the car [m].
func (b *builder) right(out float64, p ...r2.Vec) []r3.Vec { return b.list.Aside(-out, p...) }

// across returns the point of the ground's frame that is y to the left of the
// middle of the car and seen at p in side view.
func across(p r2.Vec, y float64) r3.Vec { return r3.Vec{X: p.X, Y: y, Z: p.Y} }

// flat returns where a point of the ground's frame is seen in side view.
func flat(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Z} }

// outboard returns how far the bars in a row of holes, on either side, are from
// the middle of the car [m].
func outboard(row car.Row, c *car.Car) float64 {
	bracket := &c.Housing
	if row.OnChassis() {
		bracket = &c.Chassis
	}
	if row.Pair() == car.Upper {
		return bracket.SpreadUpper / 2
	}
	return bracket.SpreadLower / 2
}

// place turns a point of the chassis frame into the ground's frame.
func (b *builder) place(p r2.Vec) r2.Vec { return b.station.Pose.Ground.Point(p) }

// onHousing turns a point given from the axle centerline into the ground's
// frame, turning with the housing.
func (b *builder) onHousing(p r2.Vec) r2.Vec { return b.place(housingPoint(&b.station.Pose, p)) }

// housingPoint turns a point given from the axle centerline into the chassis
// frame at a pose.
func housingPoint(p *linkage.Pose, h r2.Vec) r2.Vec {
	return r2.Add(p.Axle, r2.Rotate(h, p.Turn, r2.Vec{}))
}

// label adds text beside a point.
func (b *builder) label(id scene.ID, at r3.Vec, text string, color scene.Color, anchor, offset r2.Vec) {
	if b.options.Labels {
		b.add(scene.Item{ID: id, Shape: scene.Label, Points: b.list.Points(at), Text: text, Stroke: color, Anchor: anchor, Offset: offset, Size: scene.Letter})
	}
}

// ground draws the ground line with the contact points.
func (b *builder) ground() {
	b.add(scene.Item{ID: scene.ID{Kind: scene.Ground}, Points: b.middle(r2.Vec{X: -lineReach}, r2.Vec{X: lineReach}), Stroke: scene.GroundColor, Width: line, Pick: closePick})
	if l := b.options.Launch; l != nil {
		into := math.Mod(l.Distance, trackMark)
		for i := -trackReach; i <= trackReach; i++ {
			x := float64(i)*trackMark - into
			b.add(scene.Item{ID: scene.ID{Kind: scene.Ground}, Points: b.middle(r2.Vec{X: x}, r2.Vec{X: x - 0.4*trackMark, Y: -0.25 * trackMark}), Stroke: scene.GroundColor, Width: thin})
		}
	}
}

// rideHeight draws bars, instant center and center of gravity as they stand at
// ride height.
func (b *builder) rideHeight() {
	p := &b.station.Pose
	if math.Abs(p.Travel) < ghostTravel && math.Abs(p.FrontTravel) < ghostTravel {
		return
	}
	then := builder{result: b.result, station: &b.result.Ride}
	id := scene.ID{Kind: scene.RideHeight}
	for _, pair := range car.Pairs {
		b.add(scene.Item{ID: id, Points: b.list.Points(then.ends(pair)), Stroke: scene.Ghost, Width: 3})
	}
	if ic := b.result.Ride; ic.HasInstantCenter {
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: b.middle(ic.InstantCenter), Pixels: 4, Stroke: scene.Ghost, Width: line})
	}
	b.add(scene.Item{ID: id, Shape: scene.Quarter, Points: b.middle(b.result.Ride.CG), Pixels: 6, Fill: scene.Ghost, Stroke: scene.Ghost, Width: thin})
}

// referenceLines draws the 100 % line and the line of action.
func (b *builder) referenceLines() {
	s := b.station
	corner := r2.Vec{X: s.Pose.Ground.Wheelbase, Y: s.CG.Y}
	b.add(scene.Item{ID: scene.ID{Kind: scene.WholeLine}, Points: b.middle(r2.Vec{}, corner), Stroke: scene.Whole, Width: line, Dashed: true, Pick: closePick})
	b.label(scene.ID{Kind: scene.WholeLine}, across(r2.Scale(0.62, corner), 0), "100 %", scene.Whole, r2.Vec{X: 0.5, Y: 0}, r2.Vec{Y: 4})
	slope, ok := s.Pose.InstantCenter().Slope()
	if !ok {
		b.add(scene.Item{ID: scene.ID{Kind: scene.ActionLine}, Points: b.middle(r2.Vec{}, r2.Vec{Y: lineReach}), Stroke: scene.Action, Width: line, Pick: closePick})
		return
	}
	end := corner.X
	if s.HasInstantCenter && math.Abs(s.InstantCenter.X) < farCenter {
		end = math.Max(1.06*s.InstantCenter.X, math.Min(1.06*s.InstantCenter.X, 0))
		if s.InstantCenter.X > 0 && s.InstantCenter.X < 0.5*corner.X {
			end = 0.5 * corner.X
		}
	}
	b.add(scene.Item{ID: scene.ID{Kind: scene.ActionLine}, Points: b.middle(r2.Vec{}, r2.Vec{X: end, Y: slope * end}), Stroke: scene.Action, Width: line, Pick: closePick})
}

// holes draws every hole and the four pivots.
func (b *builder) holes() {
	c := b.result.Car
	setup := &c.Setups[b.result.Options.Setup]
	for _, row := range car.Rows {
		used := *row.Of(&setup.Holes)
		for i, h := range *row.In(c) {
			if i == used {
				continue
			}
			id := scene.ID{Kind: scene.Hole, Row: row, Index: i}
			item := scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(b.hole(row, h)), Pixels: holeSize, Fill: scene.Background, Stroke: scene.HoleColor, Width: line, Pick: closePick}
			if b.options.Hot == id {
				item.Stroke, item.Pixels = scene.Accent, holeSize+2
			}
			b.add(item)
		}
	}
	for _, row := range car.Rows {
		id := scene.ID{Kind: scene.Pivot, Row: row, Index: *row.Of(&setup.Holes)}
		item := scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(b.pivot(row)), Pixels: pivotSize, Fill: scene.Background, Stroke: scene.Ink, Width: 2, Pick: easyPick}
		if row == b.options.Selected {
			item.Fill = scene.Accent
		}
		if b.options.Hot.Kind == scene.Pivot && b.options.Hot.Row == row {
			item.Stroke, item.Pixels = scene.Accent, pivotSize+2
		}
		b.add(item)
	}
}

// hole places a right-hand hole of a row.
func (b *builder) hole(row car.Row, h r2.Vec) r3.Vec {
	out := outboard(row, b.result.Car)
	if row.OnChassis() {
		return across(b.place(h), -out)
	}
	return across(b.onHousing(h), -out)
}

// pivot places the right-hand hole of a row that the setup uses.
func (b *builder) pivot(row car.Row) r3.Vec {
	return b.hole(row, row.Hole(b.result.Car, b.result.Options.Setup))
}

// ends places the ends of a right-hand bar.
func (b *builder) ends(pair car.Pair) (housing, chassis r3.Vec) {
	atChassis, atHousing := pair.Rows()
	return b.pivot(atHousing), b.pivot(atChassis)
}

// centerPath draws where the instant center goes over a launch.
func (b *builder) centerPath() {
	if b.options.Launch == nil {
		return
	}
	for _, piece := range b.options.Launch.CenterPath {
		b.add(scene.Item{ID: scene.ID{Kind: scene.CenterPath}, Points: b.middle(piece...), Stroke: scene.Center, Width: line, Pick: closePick})
	}
}

// marks draws the center of gravity and the instant center on top.
func (b *builder) marks() {
	s, u := b.station, b.options.Units
	b.add(scene.Item{ID: scene.ID{Kind: scene.CG}, Shape: scene.Quarter, Points: b.middle(s.CG), Pixels: 8, Fill: scene.CGColor, Stroke: scene.CGColor, Width: line, Pick: easyPick})
	b.label(scene.ID{Kind: scene.CG}, across(s.CG, 0), "CG "+u.Format(units.Length, s.CG.Y), scene.Ink, r2.Vec{X: 0.5}, r2.Vec{Y: 13})
	if s.HasInstantCenter && math.Abs(s.InstantCenter.X) < farCenter && math.Abs(s.InstantCenter.Y) < farCenter {
		ic := s.InstantCenter
		b.add(scene.Item{ID: scene.ID{Kind: scene.InstantCenter}, Shape: scene.Disc, Points: b.middle(ic), Pixels: 6.5, Fill: scene.Center, Stroke: scene.Background, Width: 2, Pick: easyPick})
		text := fmt.Sprintf("IC %s, %s", u.Format(units.Length, ic.X), u.Format(units.Length, ic.Y))
		if s.HasAntiSquat {
			text += "  anti-squat " + units.WholePercent(s.AntiSquat)
		}
		b.label(scene.ID{Kind: scene.InstantCenter}, across(ic, 0), text, scene.Center, r2.Vec{X: 0.5}, r2.Vec{Y: 14})
	}
}

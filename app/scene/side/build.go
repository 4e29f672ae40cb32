package side

import (
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
	Selected car.Row           // the pivot that the keyboard moves
	Hot      scene.ID          // under the pointer
	Labels   bool              // numbers at the items
	Moving   bool              // dragging moves holes rather than choosing them
	Tuning   bool              // the target can be dragged
	Most     analysis.Envelope // the most that side view and launch ask of each bar
	Launch   *Instant          // one instant of a launch; nil for a travel and Case
	Held     bool              // what is Hot is being dragged
	Cloud    *Cloud            // combinations of holes; nil for none
	Ghosts   []Ghost           // setups that this one is held against
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

// label adds words of one line or, with a figure, two beside a point.
func (b *builder) label(id scene.ID, at r3.Vec, text, figure string, color scene.Color, beside r2.Vec, rank scene.Rank) {
	if b.options.Labels {
		b.add(scene.Item{ID: id, Shape: scene.Label, Points: b.list.Points(at), Text: text, Figure: figure, Stroke: color, Beside: beside, Rank: rank})
	}
}

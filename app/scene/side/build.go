package side

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/parts"
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
	Forces   bool              // the free body of the axle is shown, at a travel
	Most     analysis.Envelope // the most that side view and launch ask of each bar
	Launch   *Instant          // one instant of a launch; nil for a travel and Case
	Held     bool              // what is Hot is being dragged
	Cloud    *Cloud            // combinations of holes; nil for none
	Ghosts   []Ghost           // setups that this one is held against

	memory *memory // nil for none
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
	Stance     *parts.Stance // where all bodies are; nil as at the station
}

// Distances [m].
const (
	ghostTravel = 0.02 * units.Inch // least travel that shows the ride-height ghost
	farCenter   = 400 * units.Inch  // an instant center beyond is not drawn
	lineReach   = 500 * units.Inch  // lines that run out of the picture
)

// Widths and sizes on screen [px].
const (
	thin      = 1.0
	line      = 1.6
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
	parts   *parts.Builder
}

// Build fills a list with what is drawn of a result at a station, back to front.
func Build(list *scene.List, r *analysis.Result, s *analysis.Station, o Options) {
	list.Clear()
	if o.memory == nil {
		o.memory = new(memory)
	}
	b := &builder{result: r, station: s, options: o, list: list, parts: &o.memory.shown}
	b.start()
	if b.options.Launch != nil {
		b.parts.Track()
		b.parts.Flush()
	}
	b.parts.Frame()
	b.parts.Flush()
	b.parts.Wheels()
	b.parts.Flush()
	b.target()
	b.ground()
	b.rideHeight()
	b.referenceLines()
	b.targetRays()
	b.ghosts()
	b.car()
	b.cloud()
	b.targetOutline()
	b.barLines()
	b.barLabels()
	b.centerPath()
	b.holes()
	b.forces()
	b.marks()
	b.cloudMarks()
	b.rayLabels()
	b.targetHandles()
}

// memory is used anew for each picture.
type memory struct{ shown, other parts.Builder }

// start places the car as it stands.
func (b *builder) start() {
	stance := parts.Standing(b.result, b.station)
	if l := b.options.Launch; l != nil {
		stance.Spin, stance.Come = l.Spin, l.Distance
		if l.Stance != nil {
			stance = *l.Stance
		}
	}
	b.parts.Start(b.list, b.result.Car, stance, Plane)
}

// beside returns a builder of another setup or station, to place its bars.
func (b *builder) beside(r *analysis.Result, s *analysis.Station) *builder {
	of := &builder{result: r, station: s, parts: &b.options.memory.other}
	of.start()
	return of
}

// car lists what carries load, with the left-hand bars beside the right-hand ones in a
// launch.
func (b *builder) car() {
	if b.options.Launch != nil {
		b.parts.Part(far)
	}
	b.parts.Housing()
	b.parts.CoilOvers()
	b.parts.Driveshaft()
	b.parts.Locator(b.result.Options.Setup)
	b.parts.WheelieBar()
	b.parts.Brackets()
	loads := b.loads()
	b.parts.Bars(b.result.Options.Setup, &loads)
	b.parts.Flush()
}

func (b *builder) add(i scene.Item) { b.list.Add(i) }

// middle keeps points of the side view that are in the middle of the car.
func (b *builder) middle(p ...r2.Vec) []r3.Vec { return b.list.Aside(0, p...) }

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

// stay has the label added last stay at the picture's edge.
func (b *builder) stay() { b.last(func(i *scene.Item) { i.Stays = true }) }

// keepRoom keeps room for a figure at the label added last.
func (b *builder) keepRoom(widest string) { b.last(func(i *scene.Item) { i.Widest = widest }) }

// last changes the label added last, if labels are shown.
func (b *builder) last(change func(*scene.Item)) {
	if i := &b.list.Items[len(b.list.Items)-1]; i.Shape == scene.Label {
		change(i)
	}
}

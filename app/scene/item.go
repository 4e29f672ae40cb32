// Package scene describes a view of the car as data: what is drawn, where, and
// what stands under the pointer.
//
// A Viewpoint, such as that of scene/side, lists items in meters in the ground's
// frame: axes of ISO 8855, x forward, y left, z up, with the origin at the rear
// contact point midway between the tires. Picture.Project turns them into pixels
// of a View, ready to draw and to pick from; both read the same list.
package scene

import (
	"image/color"

	"bowline/model/car"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Kind is what an item stands for.
type Kind int

// The kinds of items.
const (
	Nothing Kind = iota
	Ground
	RearTire
	FrontTire
	HousingBody
	ChassisBody
	Hole
	Pivot // the end of a bar, in the hole it uses
	UpperBar
	LowerBar
	BarLine // Index is a car.Pair
	Spring
	Driveshaft
	WheelieBar
	Locator
	BarForce  // of a bar on the chassis
	Twist     // of the driveshaft on the axle
	AxleForce // on the axle assembly, of its free body; Index is its place there
	AxleTorque
	FrameTube // what is drawn for orientation only
	InstantCenter
	CenterPath
	ActionLine
	WholeLine
	CG
	TargetBox   // Index says which part of it
	TargetRay   // Index 0 is of the least anti-squat aimed at, 1 of the greatest
	Combination // a dot of a combination of holes; Index is that of the combination
	RideHeight  // bars, center of gravity and instant center as they stand at ride height
)

// Side is the side of the car that an item is on.
type Side int

// The sides.
const (
	Both  Side = iota // alike on both sides, of which the right-hand one is listed, or in the middle or across the car
	Left              // y above zero
	Right             // y below zero
)

// ID names one item. Row and Index say which hole or pivot.
type ID struct {
	Kind  Kind
	Side  Side
	Row   car.Row
	Index int
	Ghost int // 0 of the car shown, else of one held against it, counted from 1
}

// Same reports whether another item stands for the same thing of the car shown, on
// whichever side. A hole is the same with a bar in it.
func (id ID) Same(other ID) bool {
	if id.Ghost != 0 || other.Ghost != 0 {
		return false
	}
	hole := func(k Kind) bool { return k == Hole || k == Pivot }
	if hole(id.Kind) && hole(other.Kind) {
		return id.Row == other.Row && id.Index == other.Index
	}
	return id.Kind == other.Kind
}

// Pair returns the bars that a bar or bar line belongs to.
func (id ID) Pair() car.Pair {
	if id.Kind == LowerBar || id.Kind == BarLine && id.Index == int(car.Lower) {
		return car.Lower
	}
	return car.Upper
}

// Color is a role that a palette fills.
type Color int

// The color roles; None draws nothing.
const (
	None Color = iota
	Background
	Raised
	Ink
	Muted
	Grid
	Accent
	Push
	Pull
	Slack
	Good
	Bad
	Target
	GroundColor
	Tire
	Rim
	Housing
	Chassis
	HoleColor
	SpringColor
	Shaft
	Center
	Action
	Whole
	CGColor
	Ghost
	Frame
	FrameEdge
	Shell
)

// In returns the role's color.
func (c Color) In(p *palette.Palette) color.RGBA {
	return [...]color.RGBA{
		None: {}, Background: p.Background, Raised: p.Raised, Ink: p.Ink, Muted: p.Muted, Grid: p.Grid, Accent: p.Accent,
		Push: p.Push, Pull: p.Pull, Slack: p.Slack, Good: p.Good, Bad: p.Bad, Target: p.Target, GroundColor: p.Ground, Tire: p.Tire, Rim: p.Rim,
		Housing: p.Housing, Chassis: p.Chassis, HoleColor: p.Hole, SpringColor: p.Spring, Shaft: p.Shaft, Center: p.Center,
		Action: p.Action, Whole: p.Whole, CGColor: p.CG, Ghost: p.Ghost, Frame: p.Frame, FrameEdge: p.FrameEdge, Shell: p.Shell,
	}[c]
}

// Shape is how an item's points are joined.
type Shape int

// The shapes.
const (
	Path    Shape = iota // a line through the points
	Area                 // a closed polygon
	Disc                 // a circle around the first point
	Label                // Text at the first point
	Quarter              // a circle with two opposite quarters filled, the sign of a center of gravity
	Sight                // a circle with four ticks outward
	Diamond              // a square on its corner
	Swarm                // a dot at each point
	Force                // a line through the points with a head at the last one
)

// Rank is which labels are placed first; of those that find no room the last are left out.
type Rank int

// The ranks, first come first.
const (
	Foremost  Rank = iota // what the bars carry, what is pointed at
	Leading               // the instant center
	Ordinary              // other things of the car
	Secondary             // lines and areas for reference
)

// Item is one thing drawn, in meters.
type Item struct {
	ID     ID
	Shape  Shape
	Points []r3.Vec // ground's frame [m]
	Radius float64  // of a Disc, a Quarter or the dots of a Swarm [m]; 0 takes Pixels
	Pixels float64  // radius on screen of what stands at a point [px]
	Stroke Color
	Width  float64 // of the stroke [px]; on a Path with Girth, on top of that
	Girth  float64 // of a Path: how thick it is to scale [m]; 0 for a line
	Edge   Color   // of a Path with Girth: a line along both its sides
	Dashed bool
	Fill   Color
	Arrows int     // on a Path: 1 heads point out at both ends (push), −1 in (pull), 0 none
	Text   string  // of a Label: the name, or all of it
	Figure string  // of a Label: the numbers below its name; none for words of one line
	Widest string  // of a Label: a figure as wide as it gets while the car moves, whose room is kept
	Beside r2.Vec  // of a Label: which way from its point it stands best, right and up [1]
	Rank   Rank    // of a Label
	Stays  bool    // of a Label: it stays at the picture's edge when its point is beyond
	Shift  r2.Vec  // of the whole item on screen, right and down [px]
	Clear  bool    // no label covers it; bars, forces, pivots, holes, instant center and center of gravity are kept clear anyhow
	Dots   *Dots   // of a Swarm: what its points stand for
	Pick   float64 // how near a pointer must come [px]; 0 cannot be picked
	Lit    bool    // it has an outline that calls attention to it
}

// List is what is drawn, back to front. It keeps its memory from one filling to
// the next; the zero value is empty.
type List struct {
	Items  []Item
	points []r3.Vec
}

// Clear empties the list. What was listed is not to be used any more.
func (l *List) Clear() { l.Items, l.points = l.Items[:0], l.points[:0] }

// Add puts an item in front of those there.
func (l *List) Add(i Item) { l.Items = append(l.Items, i) }

// Light gives an outline to all that can be picked of a thing.
func (l *List) Light(id ID) {
	for i := range l.Items {
		if item := &l.Items[i]; item.Pick > 0 && item.ID.Same(id) {
			item.Lit = true
		}
	}
}

// Points keeps points for an item.
func (l *List) Points(p ...r3.Vec) []r3.Vec {
	from := len(l.points)
	l.points = append(l.points, p...)
	return l.points[from:len(l.points):len(l.points)]
}

// Aside keeps points for an item that are y to the left of the car's middle [m]
// and given in side view, X forward and Y up.
func (l *List) Aside(y float64, p ...r2.Vec) []r3.Vec {
	from := len(l.points)
	for _, q := range p {
		l.points = append(l.points, r3.Vec{X: q.X, Y: y, Z: q.Y})
	}
	return l.points[from:len(l.points):len(l.points)]
}

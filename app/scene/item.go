// Package scene describes a view of the car as data: what is drawn, where, and
// what stands under the pointer.
//
// A view, such as that of scene/side, lists items in meters in the ground's frame
// (origin at the rear contact point, X forward, Y up). Picture.Project turns them
// into pixels, ready to draw and to pick from; both read the same list.
package scene

import (
	"image/color"

	"bowline/model/car"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
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
	BarLine
	Spring
	Driveshaft
	WheelieBar
	InstantCenter
	CenterPath
	ActionLine
	WholeLine
	CG
	TargetBox   // Index says which part of it
	TargetRay   // Index 0 is of the least anti-squat aimed at, 1 of the greatest
	Combination // a dot of a combination of holes; Index is that of the combination
	OtherBar    // of the setup held against; Index is a car.Pair
	OtherBarLine
	OtherHole
	OtherCenter
	RideHeight
	ScaleBar
)

// ID names one item. Row and Index say which hole or pivot.
type ID struct {
	Kind  Kind
	Row   car.Row
	Index int
}

// Pair returns the bars that a bar or bar line belongs to.
func (id ID) Pair() car.Pair {
	if id.Kind == LowerBar || id.Index == int(car.Lower) {
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
)

// In returns the role's color.
func (c Color) In(p *palette.Palette) color.RGBA {
	return [...]color.RGBA{
		None: {}, Background: p.Background, Raised: p.Raised, Ink: p.Ink, Muted: p.Muted, Grid: p.Grid, Accent: p.Accent,
		Push: p.Push, Pull: p.Pull, Slack: p.Slack, Good: p.Good, Bad: p.Bad, Target: p.Target, GroundColor: p.Ground, Tire: p.Tire, Rim: p.Rim,
		Housing: p.Housing, Chassis: p.Chassis, HoleColor: p.Hole, SpringColor: p.Spring, Shaft: p.Shaft, Center: p.Center,
		Action: p.Action, Whole: p.Whole, CGColor: p.CG, Ghost: p.Ghost,
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
)

// Item is one thing drawn, in meters.
type Item struct {
	ID     ID
	Shape  Shape
	Points []r2.Vec // ground frame [m]
	Radius float64  // of a Disc, a Quarter or the dots of a Swarm [m]; 0 takes Pixels
	Pixels float64  // radius on screen of what stands at a point [px]
	Stroke Color
	Width  float64 // of the stroke [px]
	Dashed bool
	Fill   Color
	Arrows int     // on a Path: 1 heads point out at both ends (push), −1 in (pull), 0 none
	Text   string  // of a Label
	Anchor r2.Vec  // of a Label: part of its width and height left of and below the point [1]
	Offset r2.Vec  // of a Label, right and up [px]
	Shift  r2.Vec  // of the whole item on screen, right and down [px]
	Size   float64 // of a Label's letters [px]
	Stays  bool    // of a Label: it stays at the picture's edge when its point is beyond
	Dots   *Dots   // of a Swarm: what its points stand for
	Pick   float64 // how near a pointer must come [px]; 0 cannot be picked
}

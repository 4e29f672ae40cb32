package side

import (
	"fmt"

	"bowline/app/scene"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Edges are edges of the target for the instant center that a drag takes along,
// added up.
type Edges int

// The edges.
const (
	RearEdge Edges = 1 << iota
	FrontEdge
	LowerEdge
	UpperEdge

	AllEdges = RearEdge | FrontEdge | LowerEdge | UpperEdge
)

// corners returns how far the rear lower and the front upper corner go when the
// edges are dragged by d.
func (e Edges) corners(d r2.Vec) (low, high r2.Vec) {
	if e&RearEdge != 0 {
		low.X = d.X
	}
	if e&FrontEdge != 0 {
		high.X = d.X
	}
	if e&LowerEdge != 0 {
		low.Y = d.Y
	}
	if e&UpperEdge != 0 {
		high.Y = d.Y
	}
	return low, high
}

// cursor shows which way the edges can be dragged.
func (e Edges) cursor() scene.Cursor {
	switch e {
	case RearEdge, FrontEdge:
		return scene.Across
	case LowerEdge, UpperEdge:
		return scene.Upright
	case 0: // the target cannot be dragged
		return scene.Arrow
	}
	return scene.Cross
}

// Sizes of the target's handles [px].
const (
	gripSize = 4.0
	gripPick = 7.0
	edgePick = 5.0
)

// target fills the box where the instant center should be.
func (b *builder) target() {
	box := targetCorners(b.result.Car)
	item := scene.Item{ID: scene.ID{Kind: scene.TargetBox}, Shape: scene.Area, Points: b.middle(box[:]...), Fill: scene.Target, Pick: 1}
	if !b.options.Tuning {
		b.add(item)
		b.label(scene.ID{Kind: scene.TargetBox}, across(box[0], 0), targetWord, "", scene.Muted, r2.Vec{X: 1, Y: 1}, scene.Secondary)
		return
	}
	item.ID.Index = int(AllEdges)
	b.add(item)
}

// targetWord stands at the target.
const targetWord = "target"

// targetOutline draws the edges that the target is resized by, clear of the dots
// around it, with its word above, where it hides none of those within.
func (b *builder) targetOutline() {
	if !b.options.Tuning {
		return
	}
	box := targetCorners(b.result.Car)
	id := scene.ID{Kind: scene.TargetBox, Index: int(AllEdges)}
	b.add(scene.Item{ID: id, Shape: scene.Area, Points: b.middle(box[:]...), Stroke: scene.Background, Width: 4.5})
	b.add(scene.Item{ID: id, Shape: scene.Area, Points: b.middle(box[:]...), Stroke: scene.Good, Width: line})
	b.label(id, across(box[3], 0), targetWord, "", scene.Good, r2.Vec{X: 1, Y: 1}, scene.Secondary)
	for i, e := range [...]Edges{LowerEdge, FrontEdge, UpperEdge, RearEdge} {
		id := scene.ID{Kind: scene.TargetBox, Index: int(e)}
		item := scene.Item{ID: id, Points: b.middle(box[i], box[(i+1)%4]), Pick: edgePick}
		if b.options.Hot == id {
			item.Stroke, item.Width = scene.Good, 3
		}
		b.add(item)
	}
}

// targetCorners returns the corners of the target for the instant center, the
// rear lower one first, then ahead.
func targetCorners(c *car.Car) [4]r2.Vec {
	x, z := c.Check.TargetICX, c.Check.TargetICZ
	return [4]r2.Vec{{X: x[0], Y: z[0]}, {X: x[1], Y: z[0]}, {X: x[1], Y: z[1]}, {X: x[0], Y: z[1]}}
}

// targetHandles draws what the target is resized by while it is under the
// pointer.
func (b *builder) targetHandles() {
	if !b.options.Tuning {
		return
	}
	box := targetCorners(b.result.Car)
	for i, e := range [...]Edges{RearEdge | LowerEdge, FrontEdge | LowerEdge, FrontEdge | UpperEdge, RearEdge | UpperEdge} {
		b.handle(box[i], e)
	}
	for i, e := range [...]Edges{LowerEdge, FrontEdge, UpperEdge, RearEdge} {
		b.handle(r2.Scale(0.5, r2.Add(box[i], box[(i+1)%4])), e)
	}
}

// handle draws a handle of the target, or has it there unseen.
func (b *builder) handle(at r2.Vec, e Edges) {
	item := scene.Item{ID: scene.ID{Kind: scene.TargetBox, Index: int(e)}, Shape: scene.Disc, Points: b.middle(at), Pixels: gripSize, Pick: gripPick}
	if b.options.Hot.Kind == scene.TargetBox {
		item.Fill, item.Stroke, item.Width = scene.Background, scene.Good, line
		if b.options.Hot == item.ID {
			item.Fill = scene.Good
		}
	}
	b.add(item)
}

// targetRays draws the lines of action of the least and the greatest
// anti-squat aimed at: anti-squat is the line's slope times wheelbase over the
// height of the center of gravity. Like the target and the dots they are for ride
// height, wherever the car is.
func (b *builder) targetRays() {
	if !b.options.Tuning {
		return
	}
	for i := range b.result.Car.Check.TargetAntiSquat {
		b.add(scene.Item{ID: scene.ID{Kind: scene.TargetRay, Index: i}, Points: b.middle(r2.Vec{}, b.onRay(i, lineReach)), Stroke: scene.Good, Width: thin, Pick: closePick})
	}
}

// onRay returns the point of a target ray at a distance ahead of the contact [m].
func (b *builder) onRay(i int, x float64) r2.Vec {
	ride := &b.result.Ride
	return r2.Vec{X: x, Y: b.result.Car.Check.TargetAntiSquat[i] * ride.CG.Y / ride.Pose.Ground.Wheelbase * x}
}

// rayLabels names the target rays, after all else that has more to say.
func (b *builder) rayLabels() {
	if !b.options.Tuning {
		return
	}
	at := ""
	if b.options.away(b.station) {
		at = rideWords
	}
	for i, squat := range b.result.Car.Check.TargetAntiSquat {
		beside := r2.Vec{X: 1, Y: -1} // below the least, above the greatest
		if i == 1 {
			beside = r2.Vec{X: -1, Y: 1}
		}
		place := b.onRay(i, rayLabel*b.result.Ride.Pose.Ground.Wheelbase)
		b.label(scene.ID{Kind: scene.TargetRay, Index: i}, across(place, 0), "target "+b.options.Units.FormatExact(units.Percent, squat)+at, "", scene.Good, beside, scene.Secondary)
	}
}

// rayLabel is where the rays are named, as a part of the wheelbase: behind most
// instant centers, below the bars and in sight of every fit.
const rayLabel = 0.12

// rideWords says of what is shown for ride height that the car is elsewhere.
const rideWords = " at ride height"

// targetWords names the anti-squat aimed at.
func targetWords(c *car.Car, u units.System) string {
	k := c.Check.TargetAntiSquat
	return "Target: anti-squat " + u.SpanExact(units.Percent, k[0], k[1])
}

// edgeWords names what a drag of the target takes along.
func edgeWords(e Edges) string {
	along, upright := map[Edges]string{RearEdge: "rear", FrontEdge: "front"}[e&(RearEdge|FrontEdge)], map[Edges]string{LowerEdge: "lower", UpperEdge: "upper"}[e&(LowerEdge|UpperEdge)]
	switch {
	case e == AllEdges || e == 0:
		return ""
	case along == "":
		return upright + " edge"
	case upright == "":
		return along + " edge"
	}
	return along + " " + upright + " corner"
}

// describeTarget names the target for the instant center, or an edge or a corner
// of it.
func describeTarget(id scene.ID, c *car.Car, o Options) []string {
	length := func(x float64) string { return o.Units.Format(units.Length, x) }
	k := c.Check
	lines := []string{"Target for the instant center", fmt.Sprintf("%s to %s ahead, %s to %s up", length(k.TargetICX[0]), length(k.TargetICX[1]), length(k.TargetICZ[0]), length(k.TargetICZ[1]))}
	part := edgeWords(Edges(id.Index))
	if part != "" {
		lines[0] += ", " + part
	}
	switch {
	case !o.Tuning || o.Held:
	case part != "":
		lines = append(lines, "drag resizes it")
	default:
		lines = append(lines, "drag moves it; an edge or a corner resizes it")
	}
	return lines
}

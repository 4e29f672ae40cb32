package side

import (
	"math"

	"bowline/app/scene"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// ground draws the ground line with the contact points.
func (b *builder) ground() {
	b.add(scene.Item{ID: scene.ID{Kind: scene.Ground}, Points: b.middle(r2.Vec{X: -lineReach}, r2.Vec{X: lineReach}), Stroke: scene.GroundColor, Width: line, Pick: closePick})
}

// referenceLines draws the 100 % line and the line of action.
func (b *builder) referenceLines() {
	s := b.station
	corner := r2.Vec{X: s.Pose.Ground.Wheelbase, Y: s.CG.Y}
	b.add(scene.Item{ID: scene.ID{Kind: scene.WholeLine}, Points: b.middle(r2.Vec{}, corner), Stroke: scene.Whole, Width: line, Dashed: true, Pick: closePick})
	b.label(scene.ID{Kind: scene.WholeLine}, across(r2.Scale(0.62, corner), 0), "100 %", "", scene.Whole, r2.Vec{Y: 1}, scene.Secondary)
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

// barLines draws the bars' lines on to the instant center.
func (b *builder) barLines() {
	s := b.station
	for _, pair := range car.Pairs {
		housing, chassis := b.seen(pair)
		end := r2.Add(chassis, r2.Scale(lineReach, r2.Unit(r2.Sub(chassis, housing))))
		from := chassis
		if s.HasInstantCenter && r2.Norm(r2.Sub(s.InstantCenter, b.place(s.Pose.Axle))) < farCenter {
			end = s.InstantCenter
			from = nearer(end, housing, chassis)
		}
		b.add(scene.Item{ID: scene.ID{Kind: scene.BarLine, Index: int(pair)}, Points: b.middle(from, end), Stroke: scene.Center, Width: thin, Dashed: true, Pick: closePick})
	}
}

// nearer returns the end of a bar that its line to the instant center starts at:
// behind the axle the housing's.
func nearer(center, housing, chassis r2.Vec) r2.Vec {
	if r2.Norm(r2.Sub(center, housing)) < r2.Norm(r2.Sub(center, chassis)) {
		return housing
	}
	return chassis
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

package side

import (
	"fmt"
	"math"

	"bowline/app/scene"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// rideHeight draws bars, instant center and center of gravity as they stand at
// ride height.
func (b *builder) rideHeight() {
	p := &b.station.Pose
	if math.Abs(p.Travel) < ghostTravel && math.Abs(p.FrontTravel) < ghostTravel {
		return
	}
	then := b.beside(b.result, &b.result.Ride)
	id := scene.ID{Kind: scene.RideHeight}
	for _, pair := range car.Pairs {
		b.add(scene.Item{ID: id, Points: b.list.Points(then.ends(pair)), Stroke: scene.Ghost, Width: 3})
	}
	if ic := b.result.Ride; ic.HasInstantCenter {
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: b.middle(ic.InstantCenter), Pixels: 4, Stroke: scene.Ghost, Width: line})
	}
	b.add(scene.Item{ID: id, Shape: scene.Quarter, Points: b.middle(b.result.Ride.CG), Pixels: 6, Fill: scene.Ghost, Stroke: scene.Ghost, Width: thin})
}

// centerWords says in short where an instant center is, as in "45.7 ahead, 23.5 in up".
func centerWords(ic r2.Vec, u units.System) string {
	along, upright := "ahead", "up"
	if ic.X < 0 {
		along = "behind"
	}
	if ic.Y < 0 {
		upright = "below"
	}
	return fmt.Sprintf("%s %s, %s %s", u.Figure(units.Length, math.Abs(ic.X), 0), along, u.Format(units.Length, math.Abs(ic.Y)), upright)
}

// marks draws the center of gravity and the instant center on top.
func (b *builder) marks() {
	s, u := b.station, b.options.Units
	b.add(scene.Item{ID: scene.ID{Kind: scene.CG}, Shape: scene.Quarter, Points: b.middle(s.CG), Pixels: 8, Fill: scene.CGColor, Stroke: scene.CGColor, Width: line, Pick: easyPick})
	b.label(scene.ID{Kind: scene.CG}, across(s.CG, 0), "CG "+u.Format(units.Length, s.CG.Y), "", scene.Ink, r2.Vec{Y: 1}, scene.Ordinary)
	if s.HasInstantCenter && math.Abs(s.InstantCenter.X) < farCenter && math.Abs(s.InstantCenter.Y) < farCenter {
		ic := s.InstantCenter
		b.add(scene.Item{ID: scene.ID{Kind: scene.InstantCenter}, Shape: scene.Disc, Points: b.middle(ic), Pixels: 6.5, Fill: scene.Center, Stroke: scene.Background, Width: 2, Pick: easyPick})
		name, figure := "Instant center", centerWords(ic, u)
		if s.HasAntiSquat {
			name, figure = "Anti-squat "+units.WholePercent(s.AntiSquat), "IC "+figure
		}
		b.label(scene.ID{Kind: scene.InstantCenter}, across(ic, 0), name, figure, scene.Center, r2.Vec{X: 0.5, Y: 1}, scene.Leading)
	}
}

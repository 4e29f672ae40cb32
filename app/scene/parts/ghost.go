package parts

import (
	"bowline/app/scene"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r3"
)

// GhostBars adds the four bars of a setup that the one shown is held against, as dashed
// lines. number counts these setups from 1.
func (b *Builder) GhostBars(setup, number int) {
	for _, bar := range launch.Bars {
		id := BarID(bar)
		id.Ghost = number
		housing, chassis := b.Joints(bar, setup)
		item := scene.Item{ID: id, Points: b.list.Points(housing, chassis), Stroke: scene.Muted, Width: line, Dashed: true, Pick: 6}
		if bar.Side() == launch.Left {
			item.Shift = b.far
		}
		b.add(middle(housing, chassis), item)
	}
}

// GhostTires adds the outlines of the tires of such a setup, dashed.
func (b *Builder) GhostTires(number int) {
	c := b.car
	rear, front := b.unloaded()
	tire := func(kind scene.Kind, side int, center, axis r3.Vec, radius, width float64) {
		b.tread(center, axis, radius, width)
		b.add(center, scene.Item{ID: scene.ID{Kind: kind, Side: sideOf(side), Ghost: number}, Shape: scene.Area, Points: b.outline(), Stroke: scene.Muted, Width: line, Dashed: true})
	}
	for side, y := range sides {
		tire(scene.RearTire, side, b.stance.Rear[side], b.turned(b.stance.Axle, y), rear, rearWidth*c.Tires.RearRadius)
		tire(scene.FrontTire, side, b.stance.Front[side], b.turned(b.stance.Chassis, y), front, frontWidth*c.Tires.FrontRadius)
	}
}

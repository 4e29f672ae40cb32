package side

import (
	"bowline/app/scene"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

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
func (b *builder) hole(row car.Row, h r2.Vec) r3.Vec { return b.parts.Hole(row, -1, h) }

// pivot places the right-hand hole of a row that the setup uses.
func (b *builder) pivot(row car.Row) r3.Vec {
	return b.hole(row, row.Hole(b.result.Car, b.result.Options.Setup))
}

// ends places the ends of a right-hand bar.
func (b *builder) ends(pair car.Pair) (housing, chassis r3.Vec) {
	atChassis, atHousing := pair.Rows()
	return b.pivot(atHousing), b.pivot(atChassis)
}

// seen returns the ends of a pair's bars in side view [m].
func (b *builder) seen(pair car.Pair) (housing, chassis r2.Vec) {
	h, c := b.ends(pair)
	return flat(h), flat(c)
}

package parts

import (
	"bowline/app/scene"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// Sizes of the track [m].
const (
	tenFeet    = 10 * units.Foot
	lane       = 6 * units.Foot // half its width
	curb       = 4 * inch       // height of the strip at its edge, below the ground
	postHigh   = 30 * inch      // of the posts at the start and at 60 ft
	postChecks = 6
)

// Track adds what the car runs past in a launch: a strip along the track, every other 10 ft of
// it filled, and posts where the front tires start and where they have come 60 ft.
func (b *Builder) Track() {
	id := scene.ID{Kind: scene.Ground}
	start := b.car.Body.Wheelbase - b.stance.Come
	far := r3.Scale(-200, b.eye) // behind all else
	for k := -2; k < 12; k++ {
		x0, x1 := start+float64(k)*tenFeet, start+float64(k+1)*tenFeet
		fill := scene.None
		if k%2 == 0 {
			fill = scene.Frame
		}
		b.corner = append(b.corner[:0], r3.Vec{X: x0}, r3.Vec{X: x1}, r3.Vec{X: x1, Z: -curb}, r3.Vec{X: x0, Z: -curb})
		if b.eye.Z > 0.05 { // seen from above it lies flat beside the lane
			for i := range b.corner {
				b.corner[i] = r3.Vec{X: b.corner[i].X, Y: -lane + b.corner[i].Z}
			}
		}
		b.add(far, scene.Item{ID: id, Shape: scene.Area, Points: b.list.Points(b.corner...), Fill: fill, Stroke: scene.FrameEdge, Width: thin})
		if b.eye.Z > 0.05 && k%2 == 0 {
			b.add(far, scene.Item{ID: id, Points: b.list.Points(r3.Vec{X: x0, Y: -lane}, r3.Vec{X: x0, Y: lane}), Stroke: scene.FrameEdge, Width: thin})
		}
	}
	for _, x := range []float64{start, start + 60*units.Foot} {
		for _, y := range sides {
			for i := range postChecks {
				low, high := postHigh*float64(i)/postChecks, postHigh*float64(i+1)/postChecks
				fill := scene.Ink
				if i%2 == 1 {
					fill = scene.Raised
				}
				b.add(far, scene.Item{ID: id, Points: b.list.Points(r3.Vec{X: x, Y: y * lane, Z: low}, r3.Vec{X: x, Y: y * lane, Z: high}), Girth: 2 * inch, Stroke: fill})
			}
		}
	}
}

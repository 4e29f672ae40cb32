package parts

import (
	"math"

	"bowline/app/scene"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r3"
)

// Sizes of a coil-over, for orientation [m].
const (
	coilRadius = 1.5 * inch
	coilTurns  = 8
	coilPoints = 12 // of a turn
	shockGirth = 1.5 * inch
	rodGirth   = 0.6 * inch
	eyeRadius  = 0.7 * inch
)

// CoilOvers adds the rear springs with their shocks between their mounts.
func (b *Builder) CoilOvers() {
	for side, j := range b.car.RearSprings() {
		low, high := b.stance.Axle.At(j.Axle), b.stance.Chassis.At(j.Chassis)
		b.coilOver(scene.ID{Kind: scene.Spring, Side: sideOf(side)}, low, high)
	}
}

func (b *Builder) coilOver(id scene.ID, low, high r3.Vec) {
	axis := r3.Sub(high, low)
	length := r3.Norm(axis)
	if length == 0 {
		return
	}
	axis = r3.Scale(1/length, axis)
	at := middle(low, high)
	put := func(i scene.Item) { b.add(at, i) }
	put(scene.Item{ID: id, Points: b.list.Points(low, along(low, high, 0.5)), Girth: rodGirth, Stroke: scene.Raised, Edge: scene.SpringColor})
	put(scene.Item{ID: id, Points: b.list.Points(along(low, high, 0.45), along(low, high, 0.93)), Girth: shockGirth, Stroke: scene.Raised, Edge: scene.SpringColor, Pick: 6})
	u := r3.Cross(axis, r3.Vec{Y: 1})
	if r3.Norm(u) < 1e-9 {
		u = r3.Vec{X: 1}
	}
	u = r3.Unit(u)
	w := r3.Cross(axis, u)
	b.corner = b.corner[:0]
	for i := range coilTurns*coilPoints + 1 {
		turn := 2 * math.Pi * float64(i) / coilPoints
		sin, cos := math.Sincos(turn)
		p := along(low, high, 0.12+0.76*float64(i)/(coilTurns*coilPoints))
		b.corner = append(b.corner, r3.Add(p, r3.Add(r3.Scale(coilRadius*cos, u), r3.Scale(coilRadius*sin, w))))
	}
	put(scene.Item{ID: id, Points: b.list.Points(b.corner...), Stroke: scene.SpringColor, Width: 2.2, Pick: 6})
	for _, end := range []r3.Vec{low, high} {
		put(scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(end), Radius: eyeRadius, Fill: scene.Raised, Stroke: scene.Housing, Width: thin})
	}
}

// Locator adds the track bar or the diagonal link of a setup.
func (b *Builder) Locator(setup int) {
	j := b.car.Rods(setup)[launch.Locator]
	b.tube(scene.ID{Kind: scene.Locator}, b.stance.Axle.At(j.Axle), b.stance.Chassis.At(j.Chassis), max(b.car.Launch.Locator.OD, 0.5*inch), scene.Raised, scene.Housing, 4)
}

// Sizes of a wheelie bar, for orientation [m].
const (
	wheelieWheel  = 2 * inch // radius
	wheelieGirth  = 1 * inch
	wheelieSpread = 16 * inch // from wheel to wheel
)

// WheelieBar adds the wheels behind the rear tires and the bars that hold them.
func (b *Builder) WheelieBar() {
	w := b.car.Launch.WheelieBar
	if w.Reach == 0 {
		return
	}
	id := scene.ID{Kind: scene.WheelieBar}
	for _, y := range sides {
		hub := b.chassis(-w.Reach, y*wheelieSpread/2, w.Height+wheelieWheel)
		for _, z := range []float64{-0.8 * caseRadius, 0.9 * caseRadius} {
			b.tube(id, b.axle(-0.6*caseRadius, y*8*inch, z), hub, wheelieGirth, scene.Raised, scene.Chassis, 4)
		}
		b.add(hub, scene.Item{ID: id, Shape: scene.Area, Points: b.circle(hub, b.turned(b.stance.Chassis, 1), wheelieWheel), Fill: scene.Tire, Stroke: scene.Rim, Width: thin, Pick: 4})
	}
}

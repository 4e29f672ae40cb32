package parts

import (
	"math"

	"bowline/app/scene"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// Tires and rims, for orientation.
const (
	rearWidth  = 0.85 // of a rear tire, over its radius
	frontWidth = 0.32 // of a front tire, over its radius
	rearRim    = 0.48 // radius over that of the tire
	frontRim   = 0.60
	spokes     = 5
	ribs       = 12 // lines on the sidewall that show how far it is wound up
)

// Wheels adds tires and rims of one axle or both: those of the rear with their rims turned as
// the launch has it, flat where they stand on the ground.
func (b *Builder) Wheels() {
	c := b.car
	rear, front := b.unloaded()
	for side, y := range sides {
		axis := b.turned(b.stance.Axle, y)
		b.wheel(scene.ID{Kind: scene.RearTire, Side: sideOf(side)}, b.stance.Rear[side], axis, rear, rearWidth*c.Tires.RearRadius, rearRim, b.stance.Spin, b.stance.WindUp[side])
		axis = b.turned(b.stance.Chassis, y)
		b.wheel(scene.ID{Kind: scene.FrontTire, Side: sideOf(side)}, b.stance.Front[side], axis, front, frontWidth*c.Tires.FrontRadius, frontRim, b.stance.Roll, 0)
	}
}

// unloaded returns the radii of the tires where nothing presses on them [m].
func (b *Builder) unloaded() (rear, front float64) {
	c := b.car
	radius := func(loaded, load, rate float64) float64 { return loaded + load/rate }
	return radius(c.Tires.RearRadius, c.Body.RearMass*units.Gravity/2, c.Launch.Tires.RearRate),
		radius(c.Tires.FrontRadius, (c.Body.Mass-c.Body.RearMass)*units.Gravity/2, c.Launch.Tires.FrontRate)
}

// tread puts the corners of a tire's outer and inner edge into corner.
func (b *Builder) tread(center, axis r3.Vec, radius, width float64) {
	b.corner = b.corner[:0]
	b.ring(r3.Add(center, r3.Scale(width/2, axis)), axis, radius)
	b.ring(r3.Sub(center, r3.Scale(width/2, axis)), axis, radius)
	b.flatten()
}

// turned is a body's y axis, outward on a side.
func (b *Builder) turned(p launch.Placement, y float64) r3.Vec {
	return r3.Sub(p.At(r3.Vec{Y: y}), p.Origin)
}

// wheel adds a tire with its rim. axis points outward.
func (b *Builder) wheel(id scene.ID, center, axis r3.Vec, radius, width, rim, spin, windUp float64) {
	outer, inner := r3.Add(center, r3.Scale(width/2, axis)), r3.Sub(center, r3.Scale(width/2, axis))
	b.tread(center, axis, radius, width)
	b.add(center, scene.Item{ID: id, Shape: scene.Area, Points: b.outline(), Fill: scene.Tire, Stroke: scene.Rim, Width: line, Pick: 1})
	face := outer
	if r3.Dot(axis, b.eye) < 0 {
		face = inner
	}
	b.corner = b.corner[:0]
	b.ring(face, axis, radius)
	b.flatten()
	at := r3.Add(face, r3.Scale(1e-3, b.eye)) // just before the tire
	b.add(at, scene.Item{ID: id, Shape: scene.Area, Points: b.list.Points(b.corner...), Stroke: scene.Rim, Width: thin})
	// Ribs of the sidewall: straight ones are not wound up.
	forward, up := b.facing(axis)
	spoke := func(angle, r float64) r3.Vec {
		sin, cos := math.Sincos(angle)
		p := r3.Add(face, r3.Add(r3.Scale(r*cos, up), r3.Scale(r*sin, forward)))
		p.Z = max(p.Z, 0)
		return p
	}
	for i := range ribs {
		turn := spin + 2*math.Pi*float64(i)/ribs
		b.add(at, scene.Item{ID: id, Points: b.list.Points(spoke(turn, rim*radius), spoke(turn-windUp/2, (1+rim)/2*radius), spoke(turn-windUp, 0.97*radius)), Stroke: scene.FrameEdge, Width: thin})
	}
	b.add(at, scene.Item{ID: id, Shape: scene.Area, Points: b.circle(face, axis, rim*radius), Fill: scene.Raised, Stroke: scene.Rim, Width: line})
	for i := range spokes {
		turn := spin + 2*math.Pi*float64(i)/spokes
		b.add(at, scene.Item{ID: id, Points: b.list.Points(spoke(turn, 0.18*radius), spoke(turn, rim*radius)), Stroke: scene.Rim, Width: line})
	}
	b.add(at, scene.Item{ID: id, Shape: scene.Area, Points: b.circle(face, axis, 0.13*radius), Stroke: scene.Rim, Width: thin})
}

// facing are the directions forward and up on a wheel's face, along which its spin is
// counted.
func (b *Builder) facing(axis r3.Vec) (forward, up r3.Vec) {
	forward = r3.Unit(r3.Cross(r3.Scale(math.Copysign(1, axis.Y), axis), r3.Vec{Z: 1}))
	return forward, r3.Unit(r3.Cross(forward, r3.Scale(math.Copysign(1, axis.Y), axis)))
}

// flatten takes the corners that would be below the ground up to it.
func (b *Builder) flatten() {
	for i := range b.corner {
		b.corner[i].Z = max(b.corner[i].Z, 0)
	}
}

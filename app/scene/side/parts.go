package side

import (
	"bowline/app/scene"
	"bowline/model/car"

	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// wheels draws the tires.
func (b *builder) wheels() {
	p, c := &b.station.Pose, b.result.Car
	for _, w := range []struct {
		kind   scene.Kind
		center r2.Vec
		radius float64
		track  float64
	}{{scene.RearTire, p.Axle, c.Tires.RearRadius, c.Body.TrackRear}, {scene.FrontTire, p.FrontWheel, c.Tires.FrontRadius, c.Body.TrackFront}} {
		id, center := scene.ID{Kind: w.kind}, b.place(w.center)
		at := b.right(w.track/2, center)
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: at, Radius: w.radius, Fill: scene.Tire, Stroke: scene.Rim, Width: line, Pick: closePick})
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: at, Radius: w.radius * rimShare, Stroke: scene.Rim, Width: thin})
		if l := b.options.Launch; l != nil && w.kind == scene.RearTire {
			b.spokes(center, w.radius*rimShare, l.Spin)
		}
	}
}

// spokes shows how far the rear wheels have turned forward.
func (b *builder) spokes(center r2.Vec, radius, spin float64) {
	for i := range spokeCount {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/spokeCount - spin)
		out := r2.Vec{X: cos, Y: sin}
		spoke := b.right(b.result.Car.Body.TrackRear/2, r2.Add(center, r2.Scale(0.55*radius, out)), r2.Add(center, r2.Scale(radius, out)))
		b.add(scene.Item{ID: scene.ID{Kind: scene.RearTire}, Points: spoke, Stroke: scene.Rim, Width: line})
	}
}

// spring draws the coil-over between its mounts.
func (b *builder) spring() {
	k := b.result.Car.Springs
	low, high := b.onHousing(k.RearAxleMount), b.place(k.RearChassisMount)
	d := r2.Sub(high, low)
	along := r2.Unit(d)
	aside := r2.Vec{X: -along.Y, Y: along.X}
	var points [2*coilTurns + 3]r2.Vec
	points[0], points[len(points)-1] = low, high
	for i := 0; i <= 2*coilTurns; i++ {
		side := coilRadius
		if i%2 == 1 {
			side = -coilRadius
		}
		part := 0.15 + 0.7*float64(i)/(2*coilTurns)
		points[i+1] = r2.Add(low, r2.Add(r2.Scale(part, d), r2.Scale(side, aside)))
	}
	spread := b.result.Car.Launch.Suspension.RearSpread
	b.add(scene.Item{ID: scene.ID{Kind: scene.Spring}, Points: b.right(spread/2, points[:]...), Stroke: scene.SpringColor, Width: line, Pick: closePick})
}

// chassis draws the chassis bracket plate.
func (b *builder) chassis() {
	b.add(scene.Item{ID: scene.ID{Kind: scene.ChassisBody}, Shape: scene.Area, Points: b.plate(car.ChassisUpper, car.ChassisLower), Fill: scene.Raised, Stroke: scene.Chassis, Width: line, Pick: 1})
}

// housing draws bracket plate, axle tube, gear case and pinion.
func (b *builder) housing() {
	c := b.result.Car
	id := scene.ID{Kind: scene.HousingBody}
	axle := b.middle(b.place(b.station.Pose.Axle))
	yoke := r2.Vec{X: pinionReach}
	if c.Driveline.Given {
		yoke = c.Driveline.PinionJoint
	}
	snout := b.middle(
		b.onHousing(r2.Vec{X: 0, Y: caseRadius * 0.8}), b.onHousing(r2.Add(yoke, r2.Vec{Y: pinionRadius})),
		b.onHousing(r2.Sub(yoke, r2.Vec{Y: pinionRadius})), b.onHousing(r2.Vec{X: 0, Y: -caseRadius * 0.8}),
	)
	b.add(scene.Item{ID: id, Shape: scene.Area, Points: snout, Fill: scene.Raised, Stroke: scene.Muted, Width: thin, Pick: 1})
	b.add(scene.Item{ID: id, Shape: scene.Disc, Points: axle, Radius: caseRadius, Fill: scene.Raised, Stroke: scene.Muted, Width: thin, Pick: 1})
	b.add(scene.Item{ID: id, Shape: scene.Area, Points: b.plate(car.HousingUpper, car.HousingLower), Fill: scene.Raised, Stroke: scene.Housing, Width: line, Pick: 1})
	b.add(scene.Item{ID: id, Shape: scene.Disc, Points: axle, Radius: tubeRadius, Fill: scene.Background, Stroke: scene.Housing, Width: line, Pick: 1})
	b.add(scene.Item{ID: id, Shape: scene.Disc, Points: axle, Pixels: 1.5, Fill: scene.Housing})
}

// driveshaft draws the shaft where the car file gives its joints.
func (b *builder) driveshaft() {
	d := b.result.Car.Driveline
	if !d.Given {
		return
	}
	ends := b.middle(b.onHousing(d.PinionJoint), b.place(d.TransmissionJoint))
	b.add(scene.Item{ID: scene.ID{Kind: scene.Driveshaft}, Points: ends, Stroke: scene.Shaft, Width: 5, Pick: closePick})
	for i := range ends {
		b.add(scene.Item{ID: scene.ID{Kind: scene.Driveshaft}, Shape: scene.Disc, Points: ends[i : i+1], Pixels: 4, Fill: scene.Shaft, Stroke: scene.Muted, Width: thin})
	}
}

// wheelieBar draws the wheel behind the rear tires and the bar that holds it.
func (b *builder) wheelieBar() {
	w := b.result.Car.Launch.WheelieBar
	if w.Reach == 0 {
		return
	}
	hub := r2.Vec{X: -w.Reach, Y: w.Height + wheelieWheel}
	root := r2.Vec{X: -caseRadius, Y: b.result.Car.Tires.RearRadius - caseRadius}
	id := scene.ID{Kind: scene.WheelieBar}
	b.add(scene.Item{ID: id, Points: b.middle(b.place(root), b.place(hub)), Stroke: scene.Chassis, Width: line, Pick: closePick})
	b.add(scene.Item{ID: id, Shape: scene.Disc, Points: b.middle(b.place(hub)), Radius: wheelieWheel, Fill: scene.Tire, Stroke: scene.Rim, Width: thin, Pick: closePick})
}

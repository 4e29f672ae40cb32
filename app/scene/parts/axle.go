package parts

import (
	"math"

	"bowline/app/scene"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Sizes of the housing, for orientation [m].
const (
	tubeRadius   = 1.5 * inch // axle tube
	caseRadius   = 4.5 * inch // gear case
	pinionReach  = 10 * inch  // pinion yoke ahead of the axle, where it is not given
	pinionRadius = 1.5 * inch
	bracketEdge  = 0.75 * inch // plate beyond the outermost holes
)

// Housing adds axle tubes, gear case and pinion.
func (b *Builder) Housing() {
	id := scene.ID{Kind: scene.HousingBody}
	half := b.car.Body.TrackRear/2 - 0.3*rearWidth*b.car.Tires.RearRadius
	for _, y := range sides {
		b.tube(id, b.axle(0, y*0.6*caseRadius, 0), b.axle(0, y*half, 0), 2*tubeRadius, scene.Raised, scene.Housing, 1)
	}
	yoke := b.yoke()
	nose := b.axle(yoke.X, 0, yoke.Y)
	b.tube(id, b.axle(0.5*caseRadius, 0, 0.5*yoke.Y), nose, 2*pinionRadius, scene.Raised, scene.Housing, 1)
	b.add(b.axle(0, 0, 0), scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(b.axle(0, 0, 0)), Radius: caseRadius, Fill: scene.Raised, Stroke: scene.Housing, Width: line, Pick: 1})
	b.add(b.axle(0, 0, 0), scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(b.axle(0, 0, 0)), Radius: 0.62 * caseRadius, Stroke: scene.Housing, Width: thin})
}

// yoke returns the pinion joint, from the axle centerline.
func (b *Builder) yoke() r2.Vec {
	if b.car.Driveline.Given {
		return b.car.Driveline.PinionJoint
	}
	return r2.Vec{X: pinionReach}
}

// Brackets adds the plates that the holes are in: two on the chassis and two on the housing.
func (b *Builder) Brackets() {
	for side, y := range sides {
		b.plate(scene.ID{Kind: scene.ChassisBody, Side: sideOf(side)}, y, scene.Chassis, car.ChassisUpper, car.ChassisLower)
		b.plate(scene.ID{Kind: scene.HousingBody, Side: sideOf(side)}, y, scene.Housing, car.HousingUpper, car.HousingLower)
	}
}

// plate adds the plate around the holes of two rows on a side: what bounds circles around
// them.
func (b *Builder) plate(id scene.ID, y float64, edge scene.Color, rows ...car.Row) {
	b.corner = b.corner[:0]
	var sum r3.Vec
	n := 0.0
	for _, row := range rows {
		for _, h := range *row.In(b.car) {
			for i := range 8 {
				sin, cos := math.Sincos(math.Pi/8 + float64(i)*math.Pi/4)
				b.corner = append(b.corner, b.Hole(row, y, r2.Vec{X: h.X + bracketEdge*cos, Y: h.Y + bracketEdge*sin}))
			}
			sum, n = r3.Add(sum, b.Hole(row, y, h)), n+1
		}
	}
	b.add(r3.Scale(1/n, sum), scene.Item{ID: id, Shape: scene.Area, Points: b.outline(), Fill: scene.Raised, Stroke: edge, Width: line, Pick: 1})
}

// Hole places a hole of a row, y above zero on the left and below on the right.
func (b *Builder) Hole(row car.Row, y float64, h r2.Vec) r3.Vec {
	out := math.Copysign(Outboard(row, b.car), y)
	if row.OnChassis() {
		return b.chassis(h.X, out, h.Y)
	}
	return b.axle(h.X, out, h.Y)
}

// Outboard returns how far the bars in a row of holes, on either side, are from the middle
// of the car [m].
func Outboard(row car.Row, c *car.Car) float64 { return *row.Spread(c) / 2 }

// Driveshaft adds the shaft between its joints, where the car file gives them.
func (b *Builder) Driveshaft() {
	d := b.car.Driveline
	if !d.Given {
		return
	}
	const girth = 3 * units.Inch
	id := scene.ID{Kind: scene.Driveshaft}
	rear, front := b.axle(d.PinionJoint.X, 0, d.PinionJoint.Y), b.chassis(d.TransmissionJoint.X, 0, d.TransmissionJoint.Y)
	b.tube(id, along(rear, front, 0.05), along(rear, front, 0.95), girth, scene.Shaft, scene.FrameEdge, 4)
	b.tube(id, rear, along(rear, front, 0.05), 0.6*girth, scene.Shaft, scene.FrameEdge, 4)
	b.tube(id, along(rear, front, 0.95), front, 0.6*girth, scene.Shaft, scene.FrameEdge, 4)
	for _, joint := range []r3.Vec{rear, front} {
		b.add(joint, scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(joint), Radius: 0.45 * girth, Fill: scene.Raised, Stroke: scene.Housing, Width: thin})
	}
}

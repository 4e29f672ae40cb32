package parts

import (
	"math"

	"bowline/app/scene"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Girths of what is invented [m].
const (
	railGirth = 2.0 * inch
	cageGirth = 1.6 * inch
)

// The body's ends over the radii of the tires, and its roof over the cage's.
const (
	nose     = 2.1
	tail     = 2.1
	bodyRoof = 1.08
)

// Frame adds rails, cage, body, engine and transmission, for orientation: they follow from
// the wheelbase, the radii and the holes of the chassis bracket.
func (b *Builder) Frame() {
	c := b.car
	wb, rr, rf := c.Body.Wheelbase, c.Tires.RearRadius, c.Tires.FrontRadius
	low, high, ahead := b.bracketEnds()
	half := math.Min(c.Chassis.SpreadUpper, c.Chassis.SpreadLower)/2 + 1.2*inch
	roof := roofHeight(c)
	b.body(wb, rr, rf, roof)
	hoop, pillar := 0.30*wb, 0.62*wb
	for _, y := range sides {
		at := func(x, out, z float64) r3.Vec { return b.chassis(x, y*out, z) }
		// The lower rail from the bracket to the front axle, and the kick-up over the rear one.
		b.pipe(railGirth, at(0.97*wb, 0.8*half, 0.75*rf), at(0.80*wb, 0.9*half, low), at(ahead, half, low), at(ahead, half, high))
		b.pipe(railGirth, at(ahead, half, high), at(0.1*rr, half, 2*rr), at(-0.9*rr, half, 2.0*rr), at(-1.7*rr, half, 1.5*rr))
		// The cage: hoop, halo, pillar, and struts to the front and to the rear.
		b.pipe(cageGirth, at(hoop, half+2*inch, low), at(hoop, half, 0.8*roof), at(hoop, 0.7*half, roof), at(pillar, 0.7*half, 0.97*roof), at(pillar+0.09*wb, half, 0.55*roof), at(pillar+0.10*wb, half, low))
		b.pipe(cageGirth, at(hoop, 0.75*half, 0.97*roof), at(0.02*wb, half, 2.0*rr))
		b.pipe(cageGirth, at(pillar+0.09*wb, half, 0.55*roof), at(0.97*wb, 0.8*half, 0.75*rf))
		b.pipe(cageGirth, at(hoop, half+2*inch, low+0.35*(roof-low)), at(pillar+0.10*wb, half+2*inch, low+0.25*(roof-low)))
		// The mount of the coil-over.
		mount := c.Springs.RearChassisMount
		b.pipe(cageGirth, at(mount.X, c.Launch.Suspension.RearSpread/2, mount.Y), at(mount.X, half, 2*rr))
	}
	across := func(x, out, z float64) { b.pipe(cageGirth, b.chassis(x, out, z), b.chassis(x, -out, z)) }
	across(ahead, half, high)
	across(ahead, half, low)
	across(hoop, 0.7*half, roof)
	across(pillar, 0.7*half, 0.97*roof)
	across(0.97*wb, 0.8*half, 0.75*rf)
	across(-1.7*rr, half, 1.5*rr)
	across(c.Springs.RearChassisMount.X, c.Launch.Suspension.RearSpread/2, c.Springs.RearChassisMount.Y)
	b.engine(wb)
}

// roofHeight returns how high the cage is [m].
func roofHeight(c *car.Car) float64 { return math.Max(2.6*c.Tires.RearRadius, 2.2*c.Body.CGHeight) }

// Box returns two corners of what holds all that is drawn of a car at ride height, in the
// ground's frame: from the wheelie bar to the nose, both tires, the body's roof [m].
func Box(c *car.Car) (low, high r3.Vec) {
	half := math.Max(c.Body.TrackRear+rearWidth*c.Tires.RearRadius, c.Body.TrackFront+frontWidth*c.Tires.FrontRadius) / 2
	back := math.Max(tail*c.Tires.RearRadius, c.Launch.WheelieBar.Reach+wheelieWheel)
	return r3.Vec{X: -back, Y: -half}, r3.Vec{X: c.Body.Wheelbase + nose*c.Tires.FrontRadius, Y: half, Z: bodyRoof * roofHeight(c)}
}

// bracketEnds returns how low and high the chassis bracket reaches, and how far ahead.
func (b *Builder) bracketEnds() (low, high, ahead float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, row := range []car.Row{car.ChassisUpper, car.ChassisLower} {
		for _, h := range *row.In(b.car) {
			low, high, ahead = math.Min(low, h.Y), math.Max(high, h.Y), math.Max(ahead, h.X)
		}
	}
	return math.Max(low-2*inch, 3.5*inch), high + 2*inch, ahead + 1.5*inch
}

// body adds the outline of a body, seen from the side.
func (b *Builder) body(wb, rr, rf, roof float64) {
	shape := [...]r2.Vec{
		{X: -2.0 * rr, Y: 0.9 * rr}, {X: -tail * rr, Y: 2.1 * rr}, {X: -0.5 * rr, Y: 2.5 * rr}, {X: 0.16 * wb, Y: 2.6 * rr},
		{X: 0.28 * wb, Y: bodyRoof * roof}, {X: 0.62 * wb, Y: 1.05 * roof}, {X: 0.78 * wb, Y: 0.80 * roof},
		{X: wb + 0.6*rf, Y: 0.66 * roof}, {X: wb + nose*rf, Y: 1.25 * rf}, {X: wb + 2.0*rf, Y: 0.55 * rf},
		{X: wb + 1.15*rf, Y: 0.5 * rf}, {X: 0.9 * wb, Y: 0.42 * rf}, {X: 1.2 * rr, Y: 0.35 * rr}, {X: -1.2 * rr, Y: 0.7 * rr},
	}
	b.corner = b.corner[:0]
	for _, p := range shape {
		b.corner = append(b.corner, b.chassis(p.X, 0, p.Y))
	}
	b.add(r3.Scale(-100, b.eye), scene.Item{ID: scene.ID{Kind: scene.FrameTube}, Shape: scene.Area, Points: b.list.Points(b.corner...), Fill: scene.Shell, Stroke: scene.FrameEdge, Width: thin})
}

// engine adds transmission and engine, ahead of the driveshaft's front joint where it is
// given.
func (b *Builder) engine(wb float64) {
	joint := r2.Vec{X: 0.55 * wb, Y: b.car.Tires.RearRadius + 1.5*inch}
	if b.car.Driveline.Given {
		joint = b.car.Driveline.TransmissionJoint
	}
	b.box(joint.X, joint.X+18*inch, joint.Y-3*inch, joint.Y+3*inch, 3*inch)
	b.box(joint.X+18*inch, joint.X+27*inch, joint.Y-6.5*inch, joint.Y+6*inch, 7*inch)
	b.box(joint.X+27*inch, joint.X+49*inch, joint.Y-8*inch, joint.Y+9*inch, 10*inch)
	b.box(joint.X+30*inch, joint.X+46*inch, joint.Y+9*inch, joint.Y+16*inch, 5*inch)
}

// box adds a block of the chassis frame, half its width to either side.
func (b *Builder) box(x0, x1, z0, z1, half float64) {
	b.corner = b.corner[:0]
	for _, x := range [...]float64{x0, x1} {
		for _, y := range [...]float64{-half, half} {
			for _, z := range [...]float64{z0, z1} {
				b.corner = append(b.corner, b.chassis(x, y, z))
			}
		}
	}
	b.add(b.chassis((x0+x1)/2, 0, (z0+z1)/2), scene.Item{ID: scene.ID{Kind: scene.FrameTube}, Shape: scene.Area, Points: b.outline(), Fill: scene.Frame, Stroke: scene.FrameEdge, Width: thin})
}

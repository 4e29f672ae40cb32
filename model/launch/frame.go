package launch

import (
	"math"

	"bowline/model/linkage"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Placement is where a body is in the world: x along the track, y to the left,
// z up, origin on the ground below the middle of the rear axle at ride height.
type Placement struct {
	Origin r3.Vec      // of the body's frame [m]
	Turn   r3.Rotation // body to world
}

// At returns where a point of the body is in the world [m].
func (p Placement) At(point r3.Vec) r3.Vec { return r3.Add(p.Origin, p.Turn.Rotate(point)) }

// From returns where a point of the world is in the body [m].
func (p Placement) From(point r3.Vec) r3.Vec {
	back := r3.Rotation(quat.Conj(quat.Number(p.Turn)))
	return back.Rotate(r3.Sub(point, p.Origin))
}

// Frame is where everything is at one instant, for a picture.
type Frame struct {
	Chassis     Placement // of the chassis frame
	Axle        Placement // of the middle of the axle centerline
	RearWheels  [2]r3.Vec // centers, by Side, in the world [m]
	FrontWheels [2]r3.Vec // centers, by Side, in the world [m]
	Spin        float64   // angle that the rear wheels have turned, forward positive [rad]
}

// frame collects positions.
func (m *model) frame(s *state, i *instant) Frame {
	chassis := axesOf(s.chassis.turn)
	f := Frame{
		Chassis: Placement{r3.Sub(s.chassis.at, chassis.world(m.Chassis.CG)), r3.Rotation(s.chassis.turn)},
		Axle:    Placement{s.axle.at, r3.Rotation(s.axle.turn)},
		Spin:    s.wheel.angle,
	}
	for _, side := range Sides {
		f.RearWheels[side] = f.Axle.At(m.RearTires[side].Center)
		f.FrontWheels[side] = r3.Add(s.chassis.at, chassis.world(i.corners[side].arm))
	}
	return f
}

// Between returns the frame between a and b at the part x of the way, 0 for a
// and 1 for b. The two must be near each other.
func Between(a, b Frame, x float64) Frame {
	point := func(p, q r3.Vec) r3.Vec { return along(p, x, r3.Sub(q, p)) }
	place := func(p, q Placement) Placement {
		u, v := quat.Number(p.Turn), quat.Number(q.Turn)
		return Placement{point(p.Origin, q.Origin), r3.Rotation(normal(quat.Add(quat.Scale(1-x, u), quat.Scale(x, v))))}
	}
	f := Frame{Chassis: place(a.Chassis, b.Chassis), Axle: place(a.Axle, b.Axle), Spin: a.Spin + x*(b.Spin-a.Spin)}
	for _, side := range Sides {
		f.RearWheels[side] = point(a.RearWheels[side], b.RearWheels[side])
		f.FrontWheels[side] = point(a.FrontWheels[side], b.FrontWheels[side])
	}
	return f
}

// Pitch returns the chassis's pitch, nose-up positive [rad].
func (f Frame) Pitch() float64 { return pitch(f.Chassis.axes()) }

// Roll returns the chassis's roll about its own x, left side up positive [rad].
func (f Frame) Roll() float64 { return roll(f.Chassis.axes()) }

func (p Placement) axes() axes { return axesOf(quat.Number(p.Turn)) }

func pitch(a axes) float64 { return math.Asin(math.Max(-1, math.Min(1, a.x.Z))) }

func roll(a axes) float64 { return math.Atan2(a.y.Z, a.z.Z) }

// SideView returns the four-link of a frame in side view, its ends midway
// between left and right, on the ground as it lies under the rear axle. The
// ground's frame then has its origin below the axle and runs along the track,
// also while the front wheels are in the air. Travels are those of the middle
// of each axle.
func (p *Parameters) SideView(f Frame) linkage.Pose {
	flat := func(v r3.Vec) r2.Vec { return r2.Vec{X: v.X, Y: v.Z} }
	middle := func(a, b r3.Vec) r3.Vec { return r3.Scale(0.5, r3.Add(a, b)) }
	front := func(a RodID) r2.Vec { return flat(middle(p.Rods[a].Chassis, p.Rods[a+1].Chassis)) }
	rear := func(a RodID) r2.Vec {
		return flat(f.Chassis.From(f.Axle.At(middle(p.Rods[a].Housing, p.Rods[a+1].Housing))))
	}
	axle := flat(f.Chassis.From(f.Axle.Origin))
	wheel := flat(f.Chassis.From(middle(f.FrontWheels[Left], f.FrontWheels[Right])))
	chassis, housing := f.Chassis.axes(), f.Axle.axes()
	// The world's up in the chassis's x and z, and the ground square to it.
	up := r2.Unit(r2.Vec{X: chassis.x.Z, Y: chassis.z.Z})
	ahead := r2.Vec{X: up.Y, Y: -up.X}
	return linkage.Pose{
		Travel:       axle.Y - p.Axle.Height,
		FrontTravel:  wheel.Y - middle(p.Corners[Left].Hub, p.Corners[Right].Hub).Z,
		Shift:        axle.X,
		Turn:         math.Atan2(r3.Dot(housing.x, chassis.z), r3.Dot(housing.x, chassis.x)),
		Axle:         axle,
		FrontWheel:   wheel,
		ChassisUpper: front(UpperLeft),
		ChassisLower: front(LowerLeft),
		HousingUpper: rear(UpperLeft),
		HousingLower: rear(LowerLeft),
		Ground: linkage.Ground{
			Contact:   r2.Sub(axle, r2.Scale(f.Axle.Origin.Z, up)),
			Along:     ahead,
			Wheelbase: r2.Dot(r2.Sub(wheel, axle), ahead),
		},
	}
}

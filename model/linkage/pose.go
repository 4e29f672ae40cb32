package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Pose is one position of the axle under the chassis. All points are in the
// chassis frame; Ground turns them into the ground's frame.
type Pose struct {
	Travel       float64 // rise of the rear wheel center [m]
	FrontTravel  float64 // rise of the front wheel center [m]
	Shift        float64 // fore-aft move of the axle, forward positive [m]
	Turn         float64 // housing rotation and so pinion angle change, nose-up positive [rad]
	Axle         r2.Vec  // axle centerline [m]
	FrontWheel   r2.Vec  // front wheel center [m]
	ChassisUpper r2.Vec  // [m]
	ChassisLower r2.Vec  // [m]
	HousingUpper r2.Vec  // [m]
	HousingLower r2.Vec  // [m]
	Ground       Ground
}

// Range returns the travels between which the linkage closes, seen from ride
// height: the axle rises or falls along its path until the path turns back.
// droop is negative, bump positive [m]. Both are found to 1e-7 m, and to 1e-4 m
// where the travel ends in a change point, the two bars and the brackets in one
// line.
func (l *Linkage) Range() (droop, bump float64) {
	c := l.overTravel()
	down, _ := c.follow(l.ride, math.Inf(-1))
	up, _ := c.follow(l.ride, math.Inf(1))
	// Ride height itself is reached, whatever rounding says.
	return math.Min(down.at.Y, 0), math.Max(up.at.Y, 0)
}

// Pose returns the position at the given rear and front travel [m], continued
// from ride height so that the assembly branch never jumps. Bar lengths hold
// to 1e-9 m; a travel beyond Range is a *ClosureError.
func (l *Linkage) Pose(travel, frontTravel float64) (Pose, error) {
	f := l.Follow()
	return f.To(travel, frontTravel)
}

// Sweep returns the positions at the given rear travels, each continued from
// the one before, so that an ordered list is cheapest; the first is continued
// from ride height. It ends at the first travel out of reach with a
// *ClosureError and the positions so far.
func (l *Linkage) Sweep(travels []float64, frontTravel float64) ([]Pose, error) {
	poses := make([]Pose, 0, len(travels))
	f := l.Follow()
	for _, q := range travels {
		p, err := f.To(q, frontTravel)
		if err != nil {
			return poses, err
		}
		poses = append(poses, p)
	}
	return poses, nil
}

// Follower finds positions one after another, each continued from the one
// before.
type Follower struct {
	linkage *Linkage
	at      place
}

// Follow returns a follower at ride height.
func (l *Linkage) Follow() Follower { return Follower{linkage: l, at: l.ride} }

// To goes to the given rear and front travel [m]. A travel out of reach is a
// *ClosureError, and the follower stays where it is.
func (f *Follower) To(travel, frontTravel float64) (Pose, error) {
	c := f.linkage.overTravel()
	next, ok := c.follow(f.at, travel)
	if !ok {
		return Pose{}, &ClosureError{Travel: travel, Reached: next.at.Y}
	}
	f.at = next
	return f.linkage.pose(next.at, frontTravel), nil
}

// pose collects what a place on the path over travel means.
func (l *Linkage) pose(at r3.Vec, frontTravel float64) Pose {
	g := &l.geometry
	p := Pose{
		Travel:       at.Y,
		FrontTravel:  frontTravel,
		Shift:        at.X,
		Turn:         at.Z / l.scale,
		Axle:         r2.Vec{X: at.X, Y: g.RearRadius + at.Y},
		FrontWheel:   r2.Vec{X: g.Wheelbase, Y: g.FrontRadius + frontTravel},
		ChassisUpper: g.ChassisUpper,
		ChassisLower: g.ChassisLower,
	}
	sin, cos := math.Sincos(p.Turn)
	p.HousingUpper = r2.Add(p.Axle, rotate(g.HousingUpper, sin, cos))
	p.HousingLower = r2.Add(p.Axle, rotate(g.HousingLower, sin, cos))
	p.Ground = tangentGround(p.Axle, g.RearRadius, p.FrontWheel, g.FrontRadius)
	return p
}

// Ground is the ground's frame seen from the chassis: origin at the rear
// contact point, X along the ground toward the front, Y up from it.
type Ground struct {
	Contact   r2.Vec  // rear contact point, chassis frame [m]
	Along     r2.Vec  // unit vector along the ground, chassis frame [1]
	Wheelbase float64 // distance between the contact points [m]
}

// tangentGround lays the common lower tangent under two wheels that do not
// overlap.
func tangentGround(rear r2.Vec, rearRadius float64, front r2.Vec, frontRadius float64) Ground {
	d := r2.Sub(front, rear)
	span, rise := norm(d), rearRadius-frontRadius
	// The ground's direction is the line of centers turned by the angle whose
	// sine is rise/span.
	along := math.Sqrt(span*span - rise*rise)
	c, s := along/span, rise/span
	e := r2.Scale(1/span, r2.Vec{X: c*d.X - s*d.Y, Y: s*d.X + c*d.Y})
	return Ground{
		Contact:   r2.Add(rear, r2.Vec{X: rearRadius * e.Y, Y: -rearRadius * e.X}),
		Along:     e,
		Wheelbase: along,
	}
}

// Pitch returns the chassis pitch against the ground, nose-up positive [rad].
func (g Ground) Pitch() float64 { return -math.Atan2(g.Along.Y, g.Along.X) }

// Point turns a point of the chassis frame into the ground's frame.
func (g Ground) Point(p r2.Vec) r2.Vec { return g.Direction(r2.Sub(p, g.Contact)) }

// Direction turns a direction of the chassis frame into the ground's frame.
func (g Ground) Direction(d r2.Vec) r2.Vec {
	return r2.Vec{X: r2.Dot(g.Along, d), Y: r2.Cross(g.Along, d)}
}

// Chassis turns a point of the ground's frame into the chassis frame.
func (g Ground) Chassis(p r2.Vec) r2.Vec {
	return r2.Vec{
		X: g.Contact.X + g.Along.X*p.X - g.Along.Y*p.Y,
		Y: g.Contact.Y + g.Along.Y*p.X + g.Along.X*p.Y,
	}
}

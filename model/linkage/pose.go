package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
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

// Pose returns the position at the given rear and front travel [m], continued
// from ride height so that the assembly branch never jumps. Bar lengths hold
// to 1e-9 m; a travel beyond Range is a *ClosureError.
func (l *Linkage) Pose(travel, frontTravel float64) (Pose, error) {
	s, e, err := l.reach(state{z: l.geometry.RearRadius}, travel)
	if err != nil {
		return Pose{}, err
	}
	return l.pose(s, &e, travel, frontTravel), nil
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
	at      state
}

// Follow returns a follower at ride height.
func (l *Linkage) Follow() Follower {
	return Follower{linkage: l, at: state{z: l.geometry.RearRadius}}
}

// To goes to the given rear and front travel [m]. A travel out of reach is a
// *ClosureError, and the follower stays where it is.
func (f *Follower) To(travel, frontTravel float64) (Pose, error) {
	s, e, err := f.linkage.reach(f.at, travel)
	if err != nil {
		return Pose{}, err
	}
	f.at = s
	return f.linkage.pose(s, &e, travel, frontTravel), nil
}

// reach continues from s to a rear travel.
func (l *Linkage) reach(s state, travel float64) (state, evaluation, error) {
	next, e, ok := l.follow(s, l.geometry.RearRadius+travel)
	if !ok {
		return next, e, &ClosureError{Travel: travel, Reached: next.z - l.geometry.RearRadius}
	}
	return next, e, nil
}

// pose collects what a state means.
func (l *Linkage) pose(s state, e *evaluation, travel, frontTravel float64) Pose {
	g := l.geometry
	p := Pose{
		Travel:       travel,
		FrontTravel:  frontTravel,
		Shift:        s.x,
		Turn:         s.turn,
		Axle:         r2.Vec{X: s.x, Y: s.z},
		FrontWheel:   r2.Vec{X: g.Wheelbase, Y: g.FrontRadius + frontTravel},
		ChassisUpper: g.ChassisUpper,
		ChassisLower: g.ChassisLower,
		HousingUpper: e.housingUpper,
		HousingLower: e.housingLower,
	}
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

// norm is the length of v, which is far from the ends of floating point: what
// math.Hypot guards against cannot happen.
func norm(v r2.Vec) float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y) }

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

package roll

import (
	"errors"
	"fmt"
	"math"

	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrNoPose is returned where the linkage finds no position near the last one, since
// travel or roll are beyond what its bars reach.
var ErrNoPose = errors.New("the bars do not reach")

// Linkage is bars and locator between chassis and axle.
type Linkage struct {
	rods    [launch.RodCount]launch.Rod
	weights [launch.RodCount]float64 // square roots of their rates
	bolts   [len(launch.Bars)]r3.Vec // of both ends of a bar, at ride height
	height  float64                  // of the axle centerline at ride height [m]
}

// New returns the linkage of a launch's parameters, without preload.
func New(p *launch.Parameters) *Linkage {
	l := &Linkage{rods: p.Rods, height: p.Axle.Height}
	for k := range l.rods {
		l.weights[k] = math.Sqrt(l.rods[k].Rate)
	}
	for k, bar := range launch.Bars {
		rod := &l.rods[bar]
		along := r3.Sub(rod.Chassis, r3.Add(rod.Housing, r3.Vec{Z: l.height}))
		// A bar that stands upright has no plan; its bolt lies across the car.
		if l.bolts[k] = r3.Cross(r3.Vec{Z: 1}, along); r3.Norm(l.bolts[k]) == 0 {
			l.bolts[k] = r3.Vec{Y: 1}
		}
		l.bolts[k] = r3.Unit(l.bolts[k])
	}
	return l
}

// Pose is the linkage at a travel and a roll.
type Pose struct {
	Travel, Roll float64                  // of the axle [m, rad]
	Shift, Aside float64                  // of the middle of the centerline, forward and to the left [m]
	Pitch, Yaw   float64                  // of the axle, nose-up and to the left [rad]
	Tension      [launch.RodCount]float64 // pull positive [N]
	Torque       float64                  // that holds the roll, about the axis of Roll [N·m]
	Misalignment
}

// Misalignment is that of the rod ends by bar, at the chassis and at the housing [rad].
type Misalignment [len(launch.Bars)][2]float64

const (
	// settled is the last step of Newton's method [m, rad].
	settled = 1e-12
	// maxSteps bounds its steps to one pose.
	maxSteps = 50
	// travelStep and rollStep are the largest steps from one pose to the next, so that
	// each lies near the last [m, rad].
	travelStep, rollStep = 0.02, 0.03
	// reaching is the greatest step of Newton's method that does not mean that the
	// bars are beyond their reach [m, rad].
	reaching = 0.5
)

// equations are those of the rods at a placement for the right side of each rod, all
// of them times √k, so that the least squares are twice the least energy.
func (l *Linkage) equations(change *[launch.RodCount][count]float64, right func(rod int) float64) (s system) {
	for k := range s {
		for f := range free {
			s[k][f] = l.weights[k] * change[k][f]
		}
		s[k][free] = l.weights[k] * right(k)
	}
	return s
}

// relax moves the axle's free freedoms to least energy, by Gauss and Newton: the
// lengths' second derivatives count for nothing where bars hardly stretch.
func (l *Linkage) relax(p *placement) error {
	for range maxSteps {
		stretch, change := l.stretches(p)
		s := l.equations(&change, func(rod int) float64 { return -stretch[rod] })
		step, _ := s.solve()
		size := 0.0
		for f, by := range step {
			p.at[f] += by
			size = math.Max(size, math.Abs(by)) // NaN stays
		}
		if !(size < reaching) {
			return ErrNoPose
		}
		if size < settled {
			return nil
		}
	}
	return ErrNoPose
}

// follow moves the axle from where it is to a travel [m] and a roll [rad], in small
// steps.
func (l *Linkage) follow(p *placement, travel, roll float64) error {
	fromTravel, fromRoll := p.travel, p.at[rolling]
	steps := max(1, int(math.Ceil(math.Max(math.Abs(travel-fromTravel)/travelStep, math.Abs(roll-fromRoll)/rollStep))))
	for n := 1; n <= steps; n++ {
		part := float64(n) / float64(steps)
		p.travel, p.at[rolling] = fromTravel+part*(travel-fromTravel), fromRoll+part*(roll-fromRoll)
		if err := l.relax(p); err != nil {
			return fmt.Errorf("at a travel of %v m and a roll of %v rad: %w", p.travel, p.at[rolling], err)
		}
	}
	return nil
}

// Pose returns the linkage at a travel [m] and a roll of the axle [rad], reached from
// ride height in small steps. It fails with ErrNoPose.
func (l *Linkage) Pose(travel, roll float64) (Pose, error) {
	var p placement
	if err := l.follow(&p, travel, roll); err != nil {
		return Pose{}, err
	}
	return l.pose(&p), nil
}

// pose collects what follows from a placement.
func (l *Linkage) pose(p *placement) Pose {
	stretch, change := l.stretches(p)
	pose := Pose{
		Travel: p.travel, Roll: p.at[rolling], Shift: p.at[foreAft], Aside: p.at[sideways],
		Pitch: p.at[pitch], Yaw: p.at[yaw], Misalignment: l.misalignment(p),
	}
	for k := range l.rods {
		pose.Tension[k] = l.rods[k].Rate * stretch[k]
		pose.Torque += pose.Tension[k] * change[k][rolling]
	}
	return pose
}

// misalignment returns the angles of the rod ends.
func (l *Linkage) misalignment(p *placement) (m Misalignment) {
	axes, middle := p.turn(), l.middle(p)
	for k, bar := range launch.Bars {
		rod := &l.rods[bar]
		along := r3.Unit(r3.Sub(rod.Chassis, r3.Add(middle, axes.of(rod.Housing))))
		for end, bolt := range [2]r3.Vec{l.bolts[k], axes.of(l.bolts[k])} {
			m[k][end] = math.Asin(math.Min(1, math.Abs(r3.Dot(along, bolt))))
		}
	}
	return m
}

// Stiffness returns the linkage's own roll stiffness at a travel [m], the torque over
// a small roll: the second derivative of the least energy [N·m/rad]. It fails with
// ErrNoPose.
func (l *Linkage) Stiffness(travel float64) (float64, error) {
	var p placement
	if err := l.follow(&p, travel, 0); err != nil {
		return 0, err
	}
	return l.stiffness(&p), nil
}

// stiffness is what is left of the roll's part in the rods' stretches, each times √k,
// after the other freedoms have taken up what they can.
func (l *Linkage) stiffness(p *placement) float64 {
	_, change := l.stretches(p)
	s := l.equations(&change, func(rod int) float64 { return change[rod][rolling] })
	_, k := s.solve()
	return k
}

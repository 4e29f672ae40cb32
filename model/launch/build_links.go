package launch

import (
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rods sets the four bars and the locator.
func (b *builder) rods() error {
	c := b.car
	ends := c.Rods(b.setup)
	for _, r := range Bars {
		pair := r.Pair()
		made, err := rod(ends[r], c.Member(pair, b.span(ends[r]), b.library), pair.Ends(c))
		if err != nil {
			return fmt.Errorf("the %v: %w", r, err)
		}
		made.Lead = pair.Bar(c).Lead()
		b.p.Rods[r] = made
	}
	member := c.LocatorMember(b.span(ends[Locator]), b.library)
	made, err := rod(ends[Locator], member, &c.Launch.Locator.BarEnds)
	if err != nil {
		return fmt.Errorf("the locator: %w", err)
	}
	b.p.Rods[Locator] = made
	return nil
}

// span is the length between two ends at ride height [m].
func (b *builder) span(ends car.Joints) float64 {
	return length(r3.Sub(ends.Chassis, r3.Add(ends.Axle, r3.Vec{Z: b.p.Axle.Height})))
}

// rod returns a member between two joints, whose segments and ends are springs in
// series: 1/k = Σ L/(EA) + 2/k_end. It fails as column.Member.Check does.
func rod(joints car.Joints, member column.Member, ends *car.BarEnds) (Rod, error) {
	if err := member.Check(); err != nil {
		return Rod{}, err
	}
	return Rod{
		Chassis: joints.Chassis, Housing: joints.Axle, Length: member.Length(),
		Rate: 1 / (member.Flexibility() + 2/ends.EndRate), Damping: ends.Damping,
	}, nil
}

// travelSteps is the number of rear travels on either side of ride height at which
// the length between a rear spring's mounts is sampled for its extremes.
const travelSteps = 33

// coils sets rear springs, shocks and stops.
func (b *builder) coils(l *linkage.Linkage) error {
	s, launch := &b.car.Springs, &b.car.Launch.Suspension
	shortest, longest, err := b.coilLengths(l)
	if err != nil {
		return err
	}
	for side, mounts := range b.car.RearSprings() {
		b.p.Coils[side] = Coil{
			Chassis: mounts.Chassis, Axle: mounts.Axle, Length: b.span(mounts),
			Rate: s.RearRate,
			Bump: launch.RearBumpDamping, Rebound: launch.RearReboundDamping,
			Shortest: shortest, Longest: longest, Stop: launch.StopRate,
		}
	}
	b.p.RearAntiRoll, b.p.FrontAntiRoll = launch.RearAntiRoll, launch.FrontAntiRoll
	return nil
}

// sign is that of y on each side.
var sign = [...]float64{Left: 1, Right: -1}

// coilLengths returns the shortest and the longest length of a rear spring as the
// axle follows its path from full droop to full bump [m].
func (b *builder) coilLengths(l *linkage.Linkage) (shortest, longest float64, err error) {
	s := &b.car.Springs
	shortest, longest = math.Inf(1), 0
	// From ride height outward, so that each position continues the last.
	for _, end := range []float64{-s.RearDroop, s.RearBump} {
		var travels [travelSteps]float64
		for i := range travels {
			travels[i] = end * float64(i) / (travelSteps - 1)
		}
		poses, err := l.Sweep(travels[:], 0)
		if err != nil {
			return 0, 0, err
		}
		for i := range poses {
			at := coilLength(s, &poses[i])
			shortest, longest = math.Min(shortest, at), math.Max(longest, at)
		}
	}
	return shortest, longest, nil
}

// coilLength is the length between a rear spring's mounts in a pose [m].
func coilLength(s *car.Springs, p *linkage.Pose) float64 {
	sin, cos := math.Sincos(p.Turn)
	m := s.RearAxleMount
	mount := r2.Vec{X: cos*m.X - sin*m.Y, Y: sin*m.X + cos*m.Y}
	return r2.Norm(r2.Sub(s.RearChassisMount, r2.Add(p.Axle, mount)))
}

package roll

import (
	"math"

	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/stock"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	// Tilt is the roll to either side at which misalignments are found [rad].
	Tilt = 3 * math.Pi / 180
	// travels is at how many travels from ride height to either end of the springs'
	// range they are.
	travels = 8
)

// Result is how the axle of one setup rolls. It never changes.
type Result struct {
	Linkage  *Linkage
	Limits   Limits
	Springs  float64 // roll stiffness of the rear springs at ride height [N·m/rad]
	AntiRoll float64 // of the rear anti-roll bar [N·m/rad]
	Ride     State
	Most     Misalignments // the greatest over the whole travel
}

// State is how the axle rolls at a travel.
type State struct {
	Stiffness float64 // the linkage's own [N·m/rad]
	Limit     float64 // roll to the side where a rod end first comes to its limit, left side up positive; 0: it is there without roll [rad]
	End       End     // which one
	Limited   bool    // false: none is checked, or none comes to it
	Misalignments
}

// Misalignments are those of the rod ends without roll and, the greater of both sides,
// at a roll of Tilt.
type Misalignments struct {
	Level, Tilted Misalignment
	Short         bool // bars that do not reach that far are left out
}

// Of returns how the axle of a setup of a car rolls that passes Validate. It fails as
// launch.New does, and with ErrNoPose.
func Of(c *car.Car, setup int, lib stock.Library) (*Result, error) {
	p, err := launch.New(c, setup, lib)
	if err != nil {
		return nil, err
	}
	return OfParameters(c, &p)
}

// OfParameters returns the same from the parameters of a launch of the car. It fails
// with ErrNoPose.
func OfParameters(c *car.Car, p *launch.Parameters) (*Result, error) {
	r := &Result{Linkage: New(p), Limits: LimitsOf(c), Springs: Springs(p), AntiRoll: p.RearAntiRoll}
	var err error
	if r.Ride, err = r.At(0); err != nil {
		return nil, err
	}
	for _, end := range [...]float64{-c.Springs.RearDroop, c.Springs.RearBump} {
		r.sweep(end)
	}
	return r, nil
}

// LimitsOf returns the limits of a car's rod ends.
func LimitsOf(c *car.Car) (l Limits) {
	for k, bar := range launch.Bars {
		l[k] = bar.Pair().Bar(c).RodEndAngle
	}
	return l
}

// Springs returns the roll stiffness of the rear springs about the middle of the axle
// centerline, Σ k (dl/dφ)² [N·m/rad]. What their push adds as they lean is left out.
func Springs(p *launch.Parameters) (sum float64) {
	for _, coil := range p.Coils {
		along := r3.Unit(r3.Sub(coil.Chassis, r3.Add(coil.Axle, r3.Vec{Z: p.Axle.Height})))
		turns := r3.Cross(coil.Axle, along).X
		sum += coil.Rate * turns * turns
	}
	return sum
}

// At returns how the axle rolls at a travel [m]. It fails with ErrNoPose.
func (r *Result) At(travel float64) (State, error) {
	var p placement
	if err := r.Linkage.follow(&p, travel, 0); err != nil {
		return State{}, err
	}
	s := State{Stiffness: r.Linkage.stiffness(&p)}
	s.Limit, s.End, s.Limited = r.Linkage.Limit(travel, r.Limits)
	s.Level = r.Linkage.misalignment(&p)
	for _, side := range sides {
		tilted := p
		if r.Linkage.follow(&tilted, travel, side*Tilt) != nil {
			s.Short = true
			continue
		}
		s.Tilted.raise(r.Linkage.misalignment(&tilted))
	}
	return s, nil
}

// sides are the signs of roll.
var sides = [...]float64{1, -1}

// sweep raises Most by the misalignments from ride height to a travel [m].
func (r *Result) sweep(end float64) {
	for _, part := range [...]struct {
		roll float64
		most *Misalignment
	}{{0, &r.Most.Level}, {Tilt, &r.Most.Tilted}, {-Tilt, &r.Most.Tilted}} {
		var p placement
		for n := range travels + 1 {
			if r.Linkage.follow(&p, end*float64(n)/travels, part.roll) != nil {
				r.Most.Short = true
				break
			}
			part.most.raise(r.Linkage.misalignment(&p))
		}
	}
}

// raise makes m the greater of both at each end.
func (m *Misalignment) raise(by Misalignment) {
	for k := range m {
		for end := range m[k] {
			m[k][end] = max(m[k][end], by[k][end])
		}
	}
}

// OverSprings returns the linkage's own roll stiffness at ride height over that of
// rear springs and anti-roll bar [1]. It reports false where these resist no roll.
func (r *Result) OverSprings() (ratio float64, ok bool) {
	if sum := r.Springs + r.AntiRoll; sum > 0 {
		return r.Ride.Stiffness / sum, true
	}
	return 0, false
}

// Binding is the ratio of OverSprings from which on the four-link is said to bind in
// roll [1]: no standard, a choice. It resists roll more than all that is there to do so.
const Binding = 1

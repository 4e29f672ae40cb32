// Package analysis turns a car into everything the screen, the charts and the
// report show of its side view. It is the one place where the linkage, the
// statics and the columns meet.
package analysis

import (
	"context"
	"fmt"
	"math"
	"slices"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/linkage"
	"bowline/model/statics"
	"bowline/model/stock"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	// DefaultSteps is the number of rear travels from full droop to full bump.
	DefaultSteps = 41
	// LeastSteps has room for full droop, ride height and full bump.
	LeastSteps = 3
)

// Options say what to analyze.
type Options struct {
	Setup       int     // index of the setup
	FrontTravel float64 // rise of the front wheels, bump positive [m]
	Steps       int     // rear travels, at least LeastSteps; 0 means DefaultSteps
}

// Result is one analysis. It never changes after Run returns; share it freely,
// unless it is renewed.
type Result struct {
	Car     *car.Car // the inputs, not to be changed
	Options Options
	Linkage *linkage.Linkage
	Vehicle statics.Vehicle

	// Droop and Bump are the travels between which the linkage closes [m].
	Droop, Bump float64
	// Bars are the upper and the lower bars by car.Pair.
	Bars [2]column.Result
	// Ride is the car at ride height, front and rear; its Loads.Rest is what
	// changes are counted from.
	Ride Station
	// Travel runs from full droop to full bump and includes ride height.
	Travel []Station
	// Worst is the largest share of capacity by car.Pair and column.Direction.
	Worst [2][2]Use

	warnings []Warning // all but those of loads, in the order of Kind
}

// Station is the car at one travel.
type Station struct {
	Pose             linkage.Pose
	InstantCenter    r2.Vec // ahead of the rear contact and above the ground [m]
	HasInstantCenter bool   // false for parallel bars
	AntiSquat        float64
	HasAntiSquat     bool   // false where the line of action stands upright
	CG               r2.Vec // whole car, ground frame [m]
	Loads            statics.Loads
	Joints           Joints
}

// Case is one of the two load cases.
type Case int

// The load cases.
const (
	Hooked Case = iota
	Hit
)

// Cases lists both cases.
var Cases = [...]Case{Hooked, Hit}

// String returns the case's name.
func (c Case) String() string { return [...]string{"hooked", "hit"}[c] }

// Of returns the case's load.
func (c Case) Of(l *statics.Loads) *statics.Load {
	if c == Hooked {
		return &l.Hooked
	}
	return &l.Hit
}

// Tension returns a bar's force in a load, pull positive [N].
func Tension(p car.Pair, l *statics.Load) float64 {
	if p == car.Upper {
		return l.Upper.Tension
	}
	return l.Lower.Tension
}

// Use is a bar's force held against its capacity.
type Use struct {
	Force  float64 // magnitude [N]; 0 when the bar is never loaded this way
	Share  float64 // of the allowable load [1]
	Travel float64 // where it occurs [m]
	Case   Case
}

// Run analyzes one setup of a car that passes Validate. It fails when the
// setup does not exist, when there are too few steps, when the context is done,
// and on whatever Validate would have refused.
func Run(ctx context.Context, c *car.Car, lib stock.Library, o Options) (*Result, error) {
	r := &Result{}
	if err := r.Renew(ctx, c, c.Capacity(lib), o); err != nil {
		return nil, err
	}
	return r, nil
}

// Renew recomputes r in place, reusing its storage, with the capacity of c's
// bars; on error r is undefined.
func (r *Result) Renew(ctx context.Context, c *car.Car, capacity car.Capacity, o Options) error {
	if o.Setup < 0 || o.Setup >= len(c.Setups) {
		return fmt.Errorf("the car has no setup %d; it has %d", o.Setup+1, len(c.Setups))
	}
	if o.Steps == 0 {
		o.Steps = DefaultSteps
	}
	if o.Steps < LeastSteps {
		return fmt.Errorf("an analysis of %d travels leaves out an end or ride height; it takes at least %d", o.Steps, LeastSteps)
	}
	l, err := c.Linkage(o.Setup)
	if err != nil {
		return err
	}
	*r = Result{Car: c, Options: o, Linkage: l, Vehicle: c.Vehicle(), Travel: r.Travel, warnings: r.warnings[:0]}
	for _, p := range car.Pairs {
		if r.Bars[p], err = capacity(p, p.Length(l)); err != nil {
			return err
		}
	}
	r.Droop, r.Bump = l.Range()
	if err := r.sweep(ctx); err != nil {
		return err
	}
	r.findWorst()
	r.warn()
	return nil
}

// sweep fills Ride and Travel, from ride height outward.
func (r *Result) sweep(ctx context.Context) error {
	ride, err := r.At(0, 0)
	if err != nil {
		return err
	}
	r.Ride = ride
	travels, zero := travels(r.Car.Springs.RearDroop, r.Car.Springs.RearBump, r.Options.Steps)
	r.Travel = slices.Grow(r.Travel[:0], len(travels))[:len(travels)]
	// Bump from ride height up, then droop from ride height down.
	up := r.Linkage.Follow()
	for i := zero; i < len(travels); i++ {
		if err := r.visit(ctx, &up, i, travels[i]); err != nil {
			return err
		}
	}
	down := r.Linkage.Follow()
	for i := zero - 1; i >= 0; i-- {
		if err := r.visit(ctx, &down, i, travels[i]); err != nil {
			return err
		}
	}
	return nil
}

// visit fills one station of Travel.
func (r *Result) visit(ctx context.Context, f *linkage.Follower, i int, travel float64) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	p, err := f.To(travel, r.Options.FrontTravel)
	if err != nil {
		return err
	}
	r.Travel[i] = r.station(p)
	return nil
}

// At returns the car at any rear and front travel [m]; beyond the closure
// range it fails with a *linkage.ClosureError.
func (r *Result) At(travel, frontTravel float64) (Station, error) {
	p, err := r.Linkage.Pose(travel, frontTravel)
	if err != nil {
		return Station{}, err
	}
	return r.station(p), nil
}

// station computes all that follows from a pose.
func (r *Result) station(p linkage.Pose) Station {
	s := Station{Pose: p, CG: r.Vehicle.CG(&p), Loads: r.Vehicle.Solve(&p), Joints: joints(r.Car.Driveline, &p)}
	s.InstantCenter, s.HasInstantCenter = p.InstantCenter().Point()
	s.AntiSquat, s.HasAntiSquat = r.Vehicle.AntiSquat(&p)
	return s
}

// SpringChange returns how much more the rear springs push in a load than at
// rest at ride height, both together [N]. Below zero they have let go: the
// rear rises. Above zero it squats.
func (r *Result) SpringChange(l *statics.Load) float64 {
	return l.Spring - r.Ride.Loads.Rest.Spring
}

// travels spaces steps travels from −droop to bump with one at exactly 0, and
// returns its index.
func travels(droop, bump float64, steps int) (list []float64, zero int) {
	below := int(math.Round(float64(steps-1) * droop / (droop + bump)))
	// A side that moves at all gets a step of its own.
	if droop > 0 {
		below = max(below, 1)
	}
	if bump > 0 {
		below = min(below, steps-2)
	}
	above := steps - 1 - below
	list = make([]float64, 0, steps)
	for i := below; i > 0; i-- {
		list = append(list, -droop*(float64(i)/float64(below)))
	}
	list = append(list, 0)
	for i := 1; i <= above; i++ {
		list = append(list, bump*(float64(i)/float64(above)))
	}
	return list, below
}

// findWorst holds every force against its capacity.
func (r *Result) findWorst() {
	for i := range r.Travel {
		s := &r.Travel[i]
		for _, c := range Cases {
			for _, p := range car.Pairs {
				u, d := r.Use(p, c, s)
				if u.Share > r.Worst[p][d].Share {
					r.Worst[p][d] = u
				}
			}
		}
	}
}

// Use holds one bar's force in a case at a station against its capacity.
func (r *Result) Use(p car.Pair, c Case, s *Station) (Use, column.Direction) {
	u, d := r.Hold(p, Tension(p, c.Of(&s.Loads)))
	u.Travel, u.Case = s.Pose.Travel, c
	return u, d
}

// Hold holds a tension of one bar [N], pull positive, against its capacity.
func (r *Result) Hold(p car.Pair, tension float64) (Use, column.Direction) {
	direction := column.Pull
	if tension < 0 {
		direction = column.Push
	}
	force := math.Abs(tension)
	return Use{Force: force, Share: force / r.Limit(p, direction).Allowable}, direction
}

// Limit returns the governing limit of a pair in a direction.
func (r *Result) Limit(p car.Pair, d column.Direction) column.Limit {
	if d == column.Pull {
		return r.Bars[p].Pull
	}
	return r.Bars[p].Push
}

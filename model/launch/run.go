package launch

import (
	"context"
	"errors"
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// Options say how to run. The zero value runs a launch over 60 ft.
type Options struct {
	Distance float64 // at which the launch ends [m]; 0 is 60 ft
	Limit    float64 // time at which it ends at the latest [s]; 0 is 3 s
	Rollout  float64 // part of the distance that the car travels before the clock starts [m]; 0 in Run is what the car says
	Output   float64 // time between two values of the history [s]; 0 is 1 ms
	Hold     bool    // find Result.Holds too, which takes some ten launches
	Substeps int     // integration steps in one output step; 0 takes them from the highest natural frequency
	Reuse    *Result // one whose storage the new one takes over, so that nobody may use it any more; nil for none
}

const (
	defaultDistance = 60 * units.Foot
	defaultLimit    = 3
	defaultOutput   = 1e-3
	// maxOutputs bounds the length of a history.
	maxOutputs = 200_000
)

// checked returns o with its defaults, or what is wrong with it.
func (o Options) checked() (Options, error) {
	for _, v := range []struct {
		name         string
		value        *float64
		usual, least float64
	}{
		{"distance", &o.Distance, defaultDistance, 0},
		{"time limit", &o.Limit, defaultLimit, 0},
		{"output step", &o.Output, defaultOutput, 0},
		{"rollout", &o.Rollout, 0, 0},
	} {
		if *v.value == 0 {
			*v.value = v.usual
		}
		if !(*v.value >= v.least) || math.IsInf(*v.value, 0) {
			return o, fmt.Errorf("the %s is %v; give a number that is not below zero", v.name, *v.value)
		}
	}
	if o.Rollout >= o.Distance {
		return o, fmt.Errorf("the rollout of %v m is no shorter than the distance of %v m", o.Rollout, o.Distance)
	}
	if o.Substeps < 0 {
		return o, fmt.Errorf("there are %d steps in an output step; give 1 or more, or 0 to have them chosen", o.Substeps)
	}
	if o.Limit/o.Output > maxOutputs {
		return o, fmt.Errorf("%v s in steps of %v s are more than %d values; give a longer output step", o.Limit, o.Output, maxOutputs)
	}
	return o, nil
}

// Run launches one setup of a car that passes Validate. How the car fares is
// reported in Outcome, not as an error. It fails on options out of range, on a
// setup that does not exist, on what Validate would have refused, and when the
// context is done; then the result has the history so far, with the outcome
// Stopped.
func Run(ctx context.Context, c *car.Car, setup int, lib stock.Library, o Options) (*Result, error) {
	if o.Rollout == 0 {
		o.Rollout = c.Check.Rollout
	}
	o, err := o.checked()
	if err != nil {
		return nil, err
	}
	p, err := New(c, setup, lib)
	if errors.Is(err, car.ErrNotHeld) {
		o.Reuse = nil
		return &Result{Car: c, Setup: setup, Options: o, Outcome: NotHeld}, nil
	}
	if err != nil {
		return nil, err
	}
	r, err := Simulate(ctx, p, o)
	if r != nil {
		r.Car, r.Setup = c, setup
	}
	return r, err
}

// Simulate launches the car that the parameters describe. It fails on options out
// of range and when the context is done.
func Simulate(ctx context.Context, p Parameters, o Options) (*Result, error) {
	o, err := o.checked()
	if err != nil {
		return nil, err
	}
	m := newModel(p)
	r := &Result{Outcome: NoRest}
	if o.Reuse != nil {
		r.History, o.Reuse = o.Reuse.History, nil
		r.empty()
	}
	r.Parameters, r.Options = p, o
	var i instant
	s, ok := m.rest(&i)
	if !ok {
		return r, nil
	}
	m.evaluate(braked, &s, &i)
	r.Static = static(&i)
	if r.PerTurn, ok = m.perTurn(&s); !ok {
		return r, nil
	}
	if err := m.launch(ctx, s, r); err != nil || !o.Hold || !r.spun() || o.Limit/r.Step > maxHoldSteps {
		return r, err
	}
	r.Holds, err = m.holds(ctx, s, r)
	return r, err
}

// launch integrates from a state at rest and fills in the rest of the result.
func (m *model) launch(ctx context.Context, s state, r *Result) error {
	steps, fastest := m.substeps(&r.Options)
	outputs := int(math.Ceil(r.Options.Limit/r.Options.Output - 1e-9))
	if r.Options.Substeps > 0 {
		steps = r.Options.Substeps
	}
	r.Step, r.Fastest = r.Options.Output/float64(steps), fastest
	if r.Options.Substeps == 0 && steps*outputs > maxSteps {
		r.Outcome = TooStiff
		return nil
	}
	r.reserve(outputs + 1)
	var method scheme
	var i instant
	events := newWatch(m, &r.Static)
	defer func() { r.Events = events.done() }()
	c := clock{start: m.distance(&s), options: &r.Options}
	for n := 0; ; n++ {
		t := float64(n) * r.Step
		m.evaluate(t, &s, &i)
		if s.diverged(&i) {
			r.Outcome = Diverged
			return nil
		}
		r.note(m, t, &i)
		events.note(m, t, &s, &i)
		c.pass(t, m.distance(&s))
		if n%steps == 0 {
			r.record(m, t, &s, &i)
			if err := ctx.Err(); err != nil {
				r.Outcome = Stopped
				return err
			}
			if ended, how := m.ended(&c, n/steps == outputs, &i); ended {
				r.Outcome, r.Elapsed, r.FromRelease = how, c.elapsed(), c.ended
				return nil
			}
		}
		m.rates(&s, &i, &method.k[0])
		method.step(m, t, r.Step, &s, &i)
	}
}

// note updates peaks and lift with an instant.
func (r *Result) note(m *model, t float64, i *instant) {
	for k := range r.Peaks {
		r.Peaks[k].note(i.tension[k], t)
	}
	for k := range i.corners {
		if height := i.corners[k].height - m.Corners[k].Radius; height > r.Lift.Height {
			r.Lift.Height, r.Lift.Time = height, t
		}
	}
	if i.corners[Left].load > 0 || i.corners[Right].load > 0 {
		return
	}
	if r.Lift.Duration == 0 {
		r.Lift.Start = t
	}
	r.Lift.Duration += r.Step
}

// maxTilt is the tilt of the chassis or the axle beyond which a car has gone over
// [rad]: assumption.
const maxTilt = math.Pi / 3

// ended reports whether the launch is over, and how.
func (m *model) ended(c *clock, late bool, i *instant) (bool, Outcome) {
	tilted := i.chassis.axes.z.Z < math.Cos(maxTilt) || math.Abs(i.axle.axes.y.Z) > math.Sin(maxTilt)
	switch {
	case c.done:
		return true, Finished
	case tilted:
		return true, WentOver
	case late:
		return true, TimeUp
	}
	return false, 0
}

// distance is how far the sprung mass's CG has traveled [m].
func (m *model) distance(s *state) float64 { return s.chassis.at.X - m.Chassis.CG.X }

// rearTravel is the rise of a rear wheel center in the chassis frame, bump
// positive [m].
func (m *model) rearTravel(side int, i *instant) float64 {
	lever := i.axle.axes.world(m.RearTires[side].Center)
	center := r3.Sub(r3.Add(i.axle.at, lever), i.chassis.at)
	return r3.Dot(center, i.chassis.axes.z) + m.Chassis.CG.Z - m.Axle.Height
}

// clock takes the time to the end of the distance, from the release and from the end
// of the rollout.
type clock struct {
	options        *Options
	start          float64 // distance at the brake's first give [m]
	time, distance float64 // of the last update
	started, ended float64 // [s]
	running, done  bool
}

// pass updates the clock with the distance at a time.
func (c *clock) pass(t, distance float64) {
	distance -= c.start
	// When a mark was passed since the last update, by interpolation.
	passed := func(mark float64) float64 {
		return c.time + (t-c.time)*(mark-c.distance)/(distance-c.distance)
	}
	if rollout := c.options.Rollout; !c.running && distance > rollout {
		if c.running = true; rollout > 0 {
			c.started = passed(rollout)
		}
	}
	if mark := c.options.Distance; c.running && !c.done && distance >= mark {
		c.done, c.ended = true, passed(mark)
	}
	c.time, c.distance = t, distance
}

// elapsed is the time from the rollout to the end of the distance; 0 while that is
// not reached.
func (c *clock) elapsed() float64 {
	if !c.done {
		return 0
	}
	return c.ended - c.started
}

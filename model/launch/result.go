package launch

import (
	"slices"

	"bowline/model/car"
	"bowline/model/linkage"
	"bowline/model/statics"

	"gonum.org/v1/gonum/spatial/r2"
)

// Result is one launch. It never changes after Run or Simulate returns; share
// it freely.
type Result struct {
	Car        *car.Car // the inputs, not to be changed; nil after Simulate
	Setup      int
	Parameters Parameters
	Options    Options // with the defaults filled in
	Outcome    Outcome
	Step       float64 // of the integration [s]; with TooStiff that which it would take
	Fastest    Part    // of the car, which determines Step unless Options.Substeps does

	Static  Static           // at rest with the preload, before the brake lets go
	PerTurn [barCount]Static // change of Static for a turn that lengthens one bar, by RodID

	History
	Peaks [RodCount]Peak // by RodID
	Lift  Lift
	// Events are what happened, in the order in which it began.
	Events []Event
	// Holds is the engine torque at launch speed at which no rear tire would slip
	// beyond its peak grip all the way, with the whole torque curve scaled alike
	// [N·m]; 0 without Wheelspin, unless Options.Hold asks for it, and for a car that needs
	// so small steps that looking for it would take seconds.
	Holds float64
	// Elapsed is the time from the end of the rollout, when the front tires leave the
	// starting beam and the clock starts, to the end of Options.Distance; FromRelease
	// is that from the brake's first give [s]; 0 unless Finished.
	Elapsed, FromRelease float64
}

// History is what happens over time, one value for each output step; the last
// is where the launch ended. It is empty when the car found no rest.
type History struct {
	Time        []float64           // from the brake's first give [s]
	Tension     [RodCount][]float64 // by RodID, pull positive [N]
	RearLoad    [2][]float64        // on the rear tires, by Side [N]
	FrontLoad   [2][]float64        // on the front tires, by Side [N]
	Thrust      []float64           // of both rear tires, forward positive [N]
	TireThrust  [2][]float64        // of each rear tire, by Side [N]
	Slip        [2][]float64        // driving slip s of each rear tire, its tread's deflection over its relaxation length, by Side [1]
	WheelSpeed  []float64           // of the rear tires' tread through the contact, z ω, mean of both sides [m/s]
	Driveshaft  []float64           // driveshaft speed, which is the rear wheels' against the housing times the axle ratio [rad/s]
	Torque      []float64           // on both rear wheels [N·m]
	Pitch       []float64           // of the chassis, nose-up positive [rad]
	Roll        []float64           // of the chassis about its x, left side up positive [rad]
	AxleRoll    []float64           // of the axle assembly in the same way [rad]
	RearTravel  [2][]float64        // rise of the rear wheel centers in the chassis frame, by Side [m]
	FrontTravel [2][]float64        // rise of the front wheels, by Side [m]
	Speed       []float64           // of the sprung mass's CG along the track [m/s]
	Distance    []float64           // that it has traveled [m]
	Engine      []float64           // engine speed [rad/s]
	WheelieBar  []float64           // load on the wheelie bar's wheel [N]
	Frames      []Frame             // for pictures
}

// Tensions returns what the bars carry at an instant, by car.Pair and Side, pull positive
// [N].
func (h *History) Tensions(i int) (tension [2][2]float64) {
	for _, bar := range Bars {
		tension[bar.Pair()][bar.Side()] = h.Tension[bar][i]
	}
	return tension
}

// Peak is the largest pull and push of a member, both as magnitudes, over every
// step of the integration; 0 where it never occurs.
type Peak struct {
	Pull     float64 // [N]
	PullTime float64 // [s]
	Push     float64 // [N]
	PushTime float64 // [s]
}

// note updates the peaks with a tension [N] at a time [s].
func (p *Peak) note(tension, t float64) {
	if tension > p.Pull {
		p.Pull, p.PullTime = tension, t
	}
	if -tension > p.Push {
		p.Push, p.PushTime = -tension, t
	}
}

// Extremes are the least and the greatest value of a history.
type Extremes struct {
	Least, Most         float64
	LeastTime, MostTime float64 // when they first were [s]
}

// Extremes returns those of one of the lists of h; zeros when it is empty.
func (h *History) Extremes(list []float64) Extremes {
	if len(list) == 0 {
		return Extremes{}
	}
	least, most := 0, 0
	for i, x := range list {
		if x < list[least] {
			least = i
		}
		if x > list[most] {
			most = i
		}
	}
	return Extremes{list[least], list[most], h.Time[least], h.Time[most]}
}

// Lift is how the front wheels left the ground. They are off the ground while
// neither front tire carries anything.
type Lift struct {
	Height   float64 // greatest height of a front tire's lowest point above the ground [m]
	Time     float64 // when that was [s]
	Start    float64 // when they first were off the ground [s]; 0 if never
	Duration float64 // how long they were off the ground in all [s]
}

// spun reports whether a rear tire slipped beyond its peak grip.
func (r *Result) spun() bool {
	return slices.ContainsFunc(r.Events, func(e Event) bool { return e.Kind == Wheelspin })
}

// SideView is the side view at one instant.
type SideView struct {
	Pose             linkage.Pose
	InstantCenter    r2.Vec // ahead of the point below the rear axle and above the ground [m]
	HasInstantCenter bool   // false for parallel bars
	AntiSquat        float64
	HasAntiSquat     bool   // false where the line of action stands upright
	CG               r2.Vec // whole car, ground frame [m]
}

// SideView returns the side view at the output step with the index i. Unlike
// the analysis of a travel, it includes the tires' deflection and the bars'
// stretch.
func (r *Result) SideView(i int) SideView {
	v := r.Parameters.vehicle()
	s := SideView{Pose: r.Parameters.SideView(r.Frames[i])}
	s.CG = v.CG(&s.Pose)
	s.InstantCenter, s.HasInstantCenter = s.Pose.InstantCenter().Point()
	s.AntiSquat, s.HasAntiSquat = v.AntiSquat(&s.Pose)
	return s
}

// vehicle returns the masses of the side view.
func (p *Parameters) vehicle() statics.Vehicle {
	return statics.Vehicle{
		SprungMass: p.Chassis.Mass, SprungCG: r2.Vec{X: p.Chassis.CG.X, Y: p.Chassis.CG.Z},
		UnsprungRear: p.Axle.Mass, UnsprungFront: p.Corners[Left].Mass + p.Corners[Right].Mass,
	}
}

// FrameAt returns where everything is at a time, between the output steps on
// either side of it; before the start and after the end it is that of the
// first and the last. It panics when the car never came to a launch, and so has
// no frames.
func (r *Result) FrameAt(t float64) Frame {
	last := len(r.Frames) - 1
	x := t / r.Options.Output
	switch {
	case !(x > 0):
		return r.Frames[0]
	case x >= float64(last):
		return r.Frames[last]
	}
	i := int(x)
	return Between(r.Frames[i], r.Frames[i+1], x-float64(i))
}

// empty takes all output steps out and keeps their room.
func (h *History) empty() {
	for _, list := range h.lists() {
		*list = (*list)[:0]
	}
	h.Frames = h.Frames[:0]
}

// reserve sees to room for n output steps of an empty history.
func (h *History) reserve(n int) {
	for _, list := range h.lists() {
		*list = slices.Grow(*list, n)
	}
	h.Frames = slices.Grow(h.Frames, n)
}

// lists returns every list of numbers.
func (h *History) lists() []*[]float64 {
	lists := []*[]float64{
		&h.Time, &h.Thrust, &h.WheelSpeed, &h.Driveshaft, &h.Torque, &h.Pitch, &h.Roll, &h.AxleRoll,
		&h.Speed, &h.Distance, &h.Engine, &h.WheelieBar,
	}
	for k := range h.Tension {
		lists = append(lists, &h.Tension[k])
	}
	for k := range Sides {
		lists = append(lists, &h.RearLoad[k], &h.FrontLoad[k], &h.RearTravel[k], &h.FrontTravel[k], &h.TireThrust[k], &h.Slip[k])
	}
	return lists
}

// record adds an output step.
func (h *History) record(m *model, t float64, s *state, i *instant) {
	add := func(list *[]float64, x float64) { *list = append(*list, x) }
	add(&h.Time, t)
	for k := range h.Tension {
		add(&h.Tension[k], i.tension[k])
	}
	for k := range Sides {
		add(&h.RearLoad[k], i.tires[k].load)
		add(&h.FrontLoad[k], i.corners[k].load)
		add(&h.RearTravel[k], m.rearTravel(k, i))
		add(&h.FrontTravel[k], s.rise[k])
		add(&h.TireThrust[k], i.tires[k].thrust)
		add(&h.Slip[k], s.wheel.stretch[k]/m.RearTires[k].Relaxation)
	}
	add(&h.Thrust, i.tires[Left].thrust+i.tires[Right].thrust)
	add(&h.WheelSpeed, (i.tires[Left].tread+i.tires[Right].tread)/2)
	add(&h.Driveshaft, m.Drive.shaftSpeed(s))
	add(&h.Torque, i.torque)
	add(&h.Pitch, pitch(i.chassis.axes))
	add(&h.Roll, roll(i.chassis.axes))
	add(&h.AxleRoll, roll(i.axle.axes))
	add(&h.Speed, i.chassis.velocity.X)
	add(&h.Distance, m.distance(s))
	add(&h.Engine, s.engine)
	add(&h.WheelieBar, i.wheelie)
	h.Frames = append(h.Frames, m.frame(s, i))
}

package report

import (
	"bowline/app/words"
	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"
)

// LaunchData is a launch for other programs. Its lists run over time, one value
// for each of Time; they are empty when the car found no rest to start from.
// Bar forces are pull positive, pitch is nose-up positive, roll is positive
// with the left side up, travels are bump positive and the mean of both sides.
// Speed is in mph (us) or km/h (si), times are in seconds.
type LaunchData struct {
	Outcome    string          `json:"outcome"` // As launch.Outcome names it, "finished" for one over the whole distance.
	Verdict    string          `json:"verdict"`
	SixtyFeet  *float64        `json:"sixty_ft"` // null when the car did not come that far, or was not to.
	Peaks      ByBar[PeakData] `json:"peaks"`
	FrontLift  LiftData        `json:"front_lift"`
	Rest       RestData        `json:"rest"`     // Before the brake lets go.
	PerTurn    ByBar[RestData] `json:"per_turn"` // Change of Rest for a turn that lengthens one bar.
	Assumed    []AssumedData   `json:"assumed"`  // What the car does not say, strongest first.
	Time       []float64       `json:"t"`
	UpperLeft  []float64       `json:"upper_left"`
	UpperRight []float64       `json:"upper_right"`
	LowerLeft  []float64       `json:"lower_left"`
	LowerRight []float64       `json:"lower_right"`
	Pitch      []float64       `json:"pitch"`
	Roll       []float64       `json:"roll"`
	Rear       []float64       `json:"rear_travel"`
	Front      []float64       `json:"front_travel"`
	Thrust     []float64       `json:"thrust"` // Of both rear tires.
	RearLeft   []float64       `json:"rear_left"`
	RearRight  []float64       `json:"rear_right"`
	FrontLeft  []float64       `json:"front_left"`
	FrontRight []float64       `json:"front_right"`
	Speed      []float64       `json:"speed"` // Of the car over the ground.

	Scales           ScalesData    `json:"scales"`       // What the scales read at rest, the turns dialed in.
	EvenRear         *EvenRearData `json:"even_rear"`    // null where no turn brings left and right rear together.
	Rollout          float64       `json:"rollout"`      // What the car rolls before the clock starts.
	FromRelease      *float64      `json:"from_release"` // The time to 60 ft from the release, rollout included; null as sixty_ft.
	Events           []EventData   `json:"events"`
	Slip             []float64     `json:"slip"` // Driving slip of the rear tires, 1 on the spot; mean of both sides.
	SlipLeft         []float64     `json:"slip_left"`
	SlipRight        []float64     `json:"slip_right"`
	WheelSpeed       []float64     `json:"wheel_speed"`  // Of the rear tires' tread.
	EngineSpeed      []float64     `json:"engine_speed"` // In rpm.
	DriveshaftSpeed  []float64     `json:"driveshaft_speed"`
	AxleTorque       []float64     `json:"axle_torque"` // On both rear wheels.
	Wheelie          []float64     `json:"wheelie"`     // Load on the wheelie bar.
	ThrustLeft       []float64     `json:"thrust_left"`
	ThrustRight      []float64     `json:"thrust_right"`
	RearTravelLeft   []float64     `json:"rear_travel_left"`
	RearTravelRight  []float64     `json:"rear_travel_right"`
	FrontTravelLeft  []float64     `json:"front_travel_left"`
	FrontTravelRight []float64     `json:"front_travel_right"`
	Distance         []float64     `json:"distance"`       // Since the release.
	InstantCenter    []*[2]float64 `json:"instant_center"` // As of a travel; null for parallel bars.
	AntiSquat        []*float64    `json:"anti_squat"`     // In percent; null where the line of action stands upright.
}

// ScalesData is what four scales read.
type ScalesData struct {
	LeftFront   float64 `json:"lf"`
	RightFront  float64 `json:"rf"`
	LeftRear    float64 `json:"lr"`
	RightRear   float64 `json:"rr"`
	CrossWeight float64 `json:"cross_weight"` // Right front and left rear over all four, 1 is all.
}

// EvenRearData is the turn of one bar that brings the loads of the left and the right
// rear tire together at rest, by the derivative there.
type EvenRearData struct {
	Bar    string  `json:"bar"`    // As in limits.worst.
	Turns  float64 `json:"turns"`  // Beyond those it has; longer above zero.
	Thread bool    `json:"thread"` // Its thread has them.
}

// EventData is something that happened in a launch.
type EventData struct {
	Kind  string  `json:"kind"` // As launch.EventKind names it.
	Side  string  `json:"side"` // "left" or "right"; empty for both or the car.
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Value float64 `json:"value"` // Greatest slip, force, height or rpm, least tire load, as launch.EventKind says.
	Time  float64 `json:"t"`     // When that was.
	// Holds is the engine torque at launch that the tires just hold all the way, on
	// wheelspin; null where it was not looked for.
	Holds *float64 `json:"holds"`
}

// ByBar holds one value for each of the four bars.
type ByBar[T any] struct {
	UpperLeft  T `json:"upper_left"`
	UpperRight T `json:"upper_right"`
	LowerLeft  T `json:"lower_left"`
	LowerRight T `json:"lower_right"`
}

// PeakData is a bar's largest pull and push, as magnitudes; 0 where it never
// pulls or pushes.
type PeakData struct {
	Pull      float64 `json:"pull"`
	Push      float64 `json:"push"`
	Time      float64 `json:"t"` // Of the larger of the two.
	PullTime  float64 `json:"pull_t"`
	PushTime  float64 `json:"push_t"`
	PullShare float64 `json:"pull_share"` // Of the capacity, 1 at the limit.
	PushShare float64 `json:"push_share"`
}

// LiftData tells how the front wheels left the ground.
type LiftData struct {
	Height   float64 `json:"height"`   // Greatest, of either wheel.
	Time     float64 `json:"t"`        // When that was.
	Start    float64 `json:"start"`    // When both first were off the ground.
	Duration float64 `json:"duration"` // How long they were so in all.
}

// RestData is what bars and tires carry while the car stands.
type RestData struct {
	UpperLeft     float64 `json:"upper_left"`
	UpperRight    float64 `json:"upper_right"`
	LowerLeft     float64 `json:"lower_left"`
	LowerRight    float64 `json:"lower_right"`
	RearLeftTire  float64 `json:"rear_left"`
	RearRightTire float64 `json:"rear_right"`
	FrontLeft     float64 `json:"front_left"`
	FrontRight    float64 `json:"front_right"`
}

// launch describes a launch; none for nil.
func (b builder) launch(l *launch.Result, worth []assumptions.Worth) *LaunchData {
	if l == nil {
		return nil
	}
	force, angle, length, speed := b.units.Factor(units.Force), b.units.Factor(units.Angle), b.units.Factor(units.Length), b.units.Factor(units.RoadSpeed)
	d := &LaunchData{
		Outcome: l.Outcome.String(), Verdict: words.LaunchVerdict(l, b.units),
		FrontLift: LiftData{b.shop(units.Length, l.Lift.Height), l.Lift.Time, l.Lift.Start, l.Lift.Duration},
		Rest:      b.rest(&l.Static),
		Assumed:   b.assumed(assumedIn(l, worth)),
		Time:      scaled(1, l.Time),
		UpperLeft: scaled(force, l.Tension[launch.UpperLeft]), UpperRight: scaled(force, l.Tension[launch.UpperRight]),
		LowerLeft: scaled(force, l.Tension[launch.LowerLeft]), LowerRight: scaled(force, l.Tension[launch.LowerRight]),
		Pitch: scaled(angle, l.Pitch), Roll: scaled(angle, l.Roll),
		Rear: scaled(length, l.RearTravel[:]...), Front: scaled(length, l.FrontTravel[:]...),
		Thrust:   scaled(force, l.Thrust),
		RearLeft: scaled(force, l.RearLoad[launch.Left]), RearRight: scaled(force, l.RearLoad[launch.Right]),
		FrontLeft: scaled(force, l.FrontLoad[launch.Left]), FrontRight: scaled(force, l.FrontLoad[launch.Right]),
		Speed: scaled(speed, l.Speed),
	}
	if overSixtyFeet(l) {
		elapsed, whole := l.Elapsed, l.FromRelease
		d.SixtyFeet, d.FromRelease = &elapsed, &whole
	}
	b.history(l, d)
	b.sideViews(l, d)
	b.events(l, d)
	b.scales(l, d)
	for _, bar := range launch.Bars {
		*d.Peaks.of(bar), *d.PerTurn.of(bar) = b.peak(l, bar), b.rest(&l.PerTurn[bar])
	}
	return d
}

// history fills in the lists that tell more of tires and drive.
func (b builder) history(l *launch.Result, d *LaunchData) {
	force, length, speed := b.units.Factor(units.Force), b.units.Factor(units.Length), b.units.Factor(units.RoadSpeed)
	d.Rollout = b.shop(units.Length, l.Options.Rollout)
	d.Slip, d.SlipLeft, d.SlipRight = scaled(1, l.Slip[:]...), scaled(1, l.Slip[launch.Left]), scaled(1, l.Slip[launch.Right])
	d.WheelSpeed, d.EngineSpeed = scaled(speed, l.WheelSpeed), scaled(b.units.Factor(units.Speed), l.Engine)
	d.DriveshaftSpeed = scaled(b.units.Factor(units.Speed), l.Driveshaft)
	d.AxleTorque, d.Wheelie = scaled(b.units.Factor(units.Torque), l.Torque), scaled(force, l.WheelieBar)
	d.ThrustLeft, d.ThrustRight = scaled(force, l.TireThrust[launch.Left]), scaled(force, l.TireThrust[launch.Right])
	d.RearTravelLeft, d.RearTravelRight = scaled(length, l.RearTravel[launch.Left]), scaled(length, l.RearTravel[launch.Right])
	d.FrontTravelLeft, d.FrontTravelRight = scaled(length, l.FrontTravel[launch.Left]), scaled(length, l.FrontTravel[launch.Right])
	d.Distance = scaled(length, l.Distance)
}

// sideViews fills in instant center and anti-squat over the launch.
func (b builder) sideViews(l *launch.Result, d *LaunchData) {
	d.InstantCenter, d.AntiSquat = make([]*[2]float64, len(l.Frames)), make([]*float64, len(l.Frames))
	for i := range l.Frames {
		view := l.SideView(i)
		if view.HasInstantCenter {
			at := b.pair(units.Length, view.InstantCenter)
			d.InstantCenter[i] = &at
		}
		if view.HasAntiSquat {
			percent := b.shop(units.Percent, view.AntiSquat)
			d.AntiSquat[i] = &percent
		}
	}
}

// events fills in what happened.
func (b builder) events(l *launch.Result, d *LaunchData) {
	d.Events = []EventData{}
	for _, e := range l.Events {
		event := EventData{Kind: e.Kind.String(), From: e.From, To: e.To, Value: b.shop(e.Kind.Quantity(), e.Value), Time: e.Time}
		if e.Sided {
			event.Side = e.Side.String()
		}
		if e.Kind == launch.Wheelspin && l.Holds > 0 {
			holds := b.shop(units.Torque, l.Holds)
			event.Holds = &holds
		}
		d.Events = append(d.Events, event)
	}
}

// scales fills in what the scales read at rest and what brings the rear together.
func (b builder) scales(l *launch.Result, d *LaunchData) {
	if l.Static == (launch.Static{}) {
		return // The car found no rest.
	}
	read := words.Readings(&l.Static)
	mass := func(si float64) float64 { return b.shop(units.Mass, si) }
	d.Scales = ScalesData{mass(read.LeftFront), mass(read.RightFront), mass(read.LeftRear), mass(read.RightRear), read.Cross()}
	if e := b.EvenRear(l); e.Found {
		d.EvenRear = &EvenRearData{barKeys[e.Bar], e.Turns, e.Thread}
	}
}

// of returns one bar's value.
func (d *ByBar[T]) of(bar launch.RodID) *T {
	return [...]*T{&d.UpperLeft, &d.UpperRight, &d.LowerLeft, &d.LowerRight}[bar]
}

// overSixtyFeet reports whether a launch was one over 60 ft and came through.
func overSixtyFeet(l *launch.Result) bool {
	return l.Outcome == launch.Finished && l.Options.Distance == 60*units.Foot
}

// scaled returns the mean of lists in a unit of so many SI units; the sum turns
// a negative zero into zero.
func scaled(unit float64, lists ...[]float64) []float64 {
	out := make([]float64, len(lists[0]))
	for i := range out {
		sum := 0.0
		for _, list := range lists {
			sum += list[i]
		}
		out[i] = sum/float64(len(lists))/unit + 0
	}
	return out
}

func (b builder) peak(l *launch.Result, bar launch.RodID) PeakData {
	p, strength := &l.Peaks[bar], &b.Bars[bar.Pair()]
	d := PeakData{
		Pull: b.shop(units.Force, p.Pull), Push: b.shop(units.Force, p.Push),
		Time: p.PullTime, PullTime: p.PullTime, PushTime: p.PushTime,
		PullShare: p.Pull / strength.Pull.Allowable, PushShare: p.Push / strength.Push.Allowable,
	}
	if p.Push > p.Pull {
		d.Time = p.PushTime
	}
	return d
}

func (b builder) rest(s *launch.Static) RestData {
	force := func(si float64) float64 { return b.shop(units.Force, si) }
	return RestData{
		UpperLeft: force(s.Tension[launch.UpperLeft]), UpperRight: force(s.Tension[launch.UpperRight]),
		LowerLeft: force(s.Tension[launch.LowerLeft]), LowerRight: force(s.Tension[launch.LowerRight]),
		RearLeftTire: force(s.RearLoad[launch.Left]), RearRightTire: force(s.RearLoad[launch.Right]),
		FrontLeft: force(s.FrontLoad[launch.Left]), FrontRight: force(s.FrontLoad[launch.Right]),
	}
}

// Package report writes an analysis and a launch down: as text for a terminal or a printed
// page, as a JSON document and CSV tables for other programs, and as a PDF.
// Nothing in it needs a display.
package report

import (
	"encoding/json"
	"io"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/statics"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Schema is the version of Document.
const Schema = 1

// Document is an analysis and a launch for other programs, in shop units: lengths in in or
// mm, forces and loads in lb or N, torques in lb-ft or N·m, angles in degrees,
// nose-up positive. Points are [ahead, up] in the ground's frame of their pose,
// from the rear contact point. Bar and hole forces are for one bar, pull
// positive; tires and springs count both sides together.
type Document struct {
	Schema      int             `json:"schema"`
	Units       string          `json:"units"` // "us" or "si".
	Car         string          `json:"car"`
	Setup       string          `json:"setup"`
	Note        string          `json:"note"`
	Holes       HoleNumbers     `json:"holes"`
	FrontTravel float64         `json:"front_travel"` // Rise of the front wheels in every row.
	Factor      float64         `json:"factor"`       // Capacities are divided by it.
	Bars        ByPair[BarData] `json:"bars"`
	Travel      []TravelRow     `json:"travel"` // From full droop to full bump, ride height (0) included.
	Limits      Limits          `json:"limits"`
	Launch      *LaunchData     `json:"launch,omitempty"` // Left out where none was run.
	Roll        *RollData       `json:"roll,omitempty"`   // Left out where no launch was run.
	Verdict     []string        `json:"verdict"`
	Warnings    []string        `json:"warnings"`
}

// ByPair holds one value for the upper and one for the lower bars.
type ByPair[T any] struct {
	Upper T `json:"upper"`
	Lower T `json:"lower"`
}

// HoleNumbers are the holes of a setup, counted from 1.
type HoleNumbers struct {
	ChassisUpper int `json:"chassis_upper"`
	ChassisLower int `json:"chassis_lower"`
	HousingUpper int `json:"housing_upper"`
	HousingLower int `json:"housing_lower"`
}

// BarData is one bar. Strengths are loads at failure, capacities those over
// the factor; all are magnitudes.
type BarData struct {
	OD           float64    `json:"od"`
	Wall         float64    `json:"wall"`
	Material     string     `json:"material"`
	Length       float64    `json:"length"`      // Pin to pin.
	Slenderness  float64    `json:"slenderness"` // Length over radius of gyration.
	Euler        float64    `json:"euler"`
	Johnson      float64    `json:"johnson"`
	FirstYield   float64    `json:"first_yield"` // Under the initial bow.
	CapacityPush float64    `json:"capacity_push"`
	CapacityPull float64    `json:"capacity_pull"`
	GovernsPush  string     `json:"governs_push"`
	GovernsPull  string     `json:"governs_pull"`
	Modes        []ModeData `json:"modes"`
	Worst        Worst      `json:"worst"`
}

// ModeData is a way the bar can fail.
type ModeData struct {
	Mode      string  `json:"mode"`
	Direction string  `json:"direction"` // "push" or "pull".
	Strength  float64 `json:"strength"`  // Load at failure.
	Allowable float64 `json:"allowable"` // The same over the factor.
	Source    string  `json:"source"`
}

// Worst are the uses that come nearest to the capacity over the travel; null
// for a direction in which the bar is never loaded.
type Worst struct {
	Push *UseData `json:"push"`
	Pull *UseData `json:"pull"`
}

// UseData is a bar's force held against its capacity.
type UseData struct {
	Force  float64 `json:"force"` // Magnitude.
	Share  float64 `json:"share"` // Of the capacity, 1 at the limit.
	Travel float64 `json:"travel"`
	Case   string  `json:"case"` // "hooked" or "hit".
}

// TravelRow is the car at one rear travel, bump positive.
type TravelRow struct {
	Travel        float64     `json:"travel"`
	InstantCenter *[2]float64 `json:"instant_center"` // null for parallel bars.
	AntiSquat     *float64    `json:"anti_squat"`     // In percent; null where the line of action stands upright.
	PinionChange  float64     `json:"pinion_change"`
	AxleShift     float64     `json:"axle_shift"` // In the chassis frame, forward positive.
	CGHeight      float64     `json:"cg_height"`
	Joints        *JointData  `json:"joints,omitempty"` // Left out for a car without a driveline.
	Hooked        LoadData    `json:"hooked"`
	Hit           LoadData    `json:"hit"`
}

// JointData are the driveshaft's joint angles.
type JointData struct {
	Pinion       float64 `json:"pinion"`       // Pinion shaft against the driveshaft.
	Transmission float64 `json:"transmission"` // Driveshaft against the output shaft.
}

// LoadData is a load case. What bars and springs carry is null where their
// lines meet in one point and they cannot hold the axle.
type LoadData struct {
	Thrust       float64     `json:"thrust"`
	AxleTorque   float64     `json:"axle_torque"`
	AccelG       float64     `json:"accel_g"`
	RearLoad     float64     `json:"rear_load"`
	FrontLoad    float64     `json:"front_load"`
	Upper        *float64    `json:"upper"`
	Lower        *float64    `json:"lower"`
	Spring       *float64    `json:"spring"` // Push of both springs.
	Governs      string      `json:"governs"`
	SpringChange *float64    `json:"spring_change"` // Against rest at ride height; below 0 the rear rises.
	BarsShare    *float64    `json:"bars_share"`    // Part of the load transfer that goes through the bars.
	HoleForces   *HoleForces `json:"hole_forces"`
}

// HoleForces are the forces into the bracket holes, [forward, up].
type HoleForces struct {
	ChassisUpper [2]float64 `json:"chassis_upper"`
	ChassisLower [2]float64 `json:"chassis_lower"`
	HousingUpper [2]float64 `json:"housing_upper"`
	HousingLower [2]float64 `json:"housing_lower"`
}

// Limits are the travels the linkage and the car allow, as [droop, bump].
type Limits struct {
	Closure [2]float64 `json:"closure"` // Beyond these the bars do not close.
	Travel  [2]float64 `json:"travel"`
	Worst   WorstOfAll `json:"worst"` // Of side view and launch; the side view alone where no launch was run.
}

// WorstOfAll is the demand on each bar, and on any of them, that comes nearest to what
// it may carry.
type WorstOfAll struct {
	ByBar[DemandData]
	All DemandData `json:"all"`
}

// DemandData is the most that is asked of a bar; the travel where in the side view,
// the time when in the launch.
type DemandData struct {
	Bar       string   `json:"bar"`
	Direction string   `json:"direction"` // "push" or "pull".
	Force     float64  `json:"force"`     // Magnitude, 0 for a bar that nothing loads.
	Share     float64  `json:"share"`     // Of the capacity, 1 at the limit.
	Source    string   `json:"source"`    // "hooked", "hit" or "launch".
	Travel    *float64 `json:"travel,omitempty"`
	Time      *float64 `json:"t,omitempty"`
}

// NewDocument describes an analysis, and the launch of the same car and setup
// unless that is nil, with what its assumptions are worth, unless that is nil, in the
// unit system s. Numbers are not rounded: turned back
// into SI they are those of r and l, but for the last bit.
func NewDocument(r *analysis.Result, l *launch.Result, worth []assumptions.Worth, s units.System) *Document {
	b := builder{r, s}
	setup := r.Car.Setups[r.Options.Setup]
	d := &Document{
		Schema: Schema, Units: s.String(),
		Car: r.Car.Body.Name, Setup: setup.Name, Note: setup.Note,
		Holes:       holeNumbers(setup.Holes),
		FrontTravel: b.shop(units.Length, r.Options.FrontTravel),
		Factor:      r.Car.Check.Factor,
		Bars:        ByPair[BarData]{b.bar(car.Upper), b.bar(car.Lower)},
		Limits: Limits{
			Closure: b.pair(units.Length, r2.Vec{X: r.Droop, Y: r.Bump}),
			Travel:  b.pair(units.Length, r2.Vec{X: -r.Car.Springs.RearDroop, Y: r.Car.Springs.RearBump}),
			Worst:   b.worstOfAll(l),
		},
		Launch:   b.launch(l, worth),
		Roll:     b.roll(l),
		Verdict:  words.Verdicts(r, l, s),
		Warnings: words.Warnings(r.Warnings(l), s),
	}
	for i := range r.Travel {
		d.Travel = append(d.Travel, b.row(&r.Travel[i]))
	}
	return d
}

// worstOfAll describes the envelope.
func (b builder) worstOfAll(l *launch.Result) WorstOfAll {
	e := b.Envelope(l)
	demand := func(d analysis.Demand) DemandData {
		data := DemandData{
			Bar: barKeys[d.Bar], Direction: d.Way.String(),
			Force: b.shop(units.Force, d.Force), Share: d.Share, Source: d.Source.String(),
		}
		if d.Source == analysis.FromLaunch {
			data.Time = &d.Time
		} else {
			travel := b.shop(units.Length, d.Travel)
			data.Travel = &travel
		}
		return data
	}
	of := func(bar launch.RodID) DemandData { return demand(e.Of(bar)) }
	return WorstOfAll{
		ByBar: ByBar[DemandData]{of(launch.UpperLeft), of(launch.UpperRight), of(launch.LowerLeft), of(launch.LowerRight)},
		All:   demand(e.Worst()),
	}
}

// barKeys are the names of the bars for other programs.
var barKeys = [...]string{launch.UpperLeft: "upper_left", launch.UpperRight: "upper_right", launch.LowerLeft: "lower_left", launch.LowerRight: "lower_right"}

// WriteJSON writes a Document.
func WriteJSON(w io.Writer, r *analysis.Result, l *launch.Result, worth []assumptions.Worth, s units.System) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	return encoder.Encode(NewDocument(r, l, worth, s))
}

// holeNumbers counts from 1.
func holeNumbers(h car.Holes) HoleNumbers {
	return HoleNumbers{h.ChassisUpper + 1, h.ChassisLower + 1, h.HousingUpper + 1, h.HousingLower + 1}
}

// builder turns parts of a result into shop units.
type builder struct {
	*analysis.Result
	units units.System
}

// shop converts; the sum turns a negative zero into zero.
func (b builder) shop(q units.Quantity, si float64) float64 { return b.units.Exact(q, si) + 0 }

func (b builder) pair(q units.Quantity, v r2.Vec) [2]float64 {
	return [2]float64{b.shop(q, v.X), b.shop(q, v.Y)}
}

func (b builder) bar(p car.Pair) BarData {
	tube, strength := p.Bar(b.Car), &b.Bars[p]
	force := func(si float64) float64 { return b.shop(units.Force, si) }
	modes := []ModeData{}
	for _, m := range strength.Modes() {
		modes = append(modes, ModeData{m.Kind.String(), m.Kind.Direction().String(), force(m.Strength), force(m.Strength / b.Car.Check.Factor), m.Kind.Source()})
	}
	return BarData{
		OD: b.shop(units.Length, tube.OD), Wall: b.shop(units.Length, tube.Wall), Material: tube.Material,
		Length: b.shop(units.Length, strength.Length), Slenderness: strength.Slenderness,
		Euler: force(strength.Euler), Johnson: force(strength.Johnson), FirstYield: force(strength.FirstYield),
		CapacityPush: force(strength.Push.Allowable), CapacityPull: force(strength.Pull.Allowable),
		GovernsPush: b.Limit(p, column.Push).Kind.String(), GovernsPull: b.Limit(p, column.Pull).Kind.String(),
		Modes: modes, Worst: Worst{Push: b.use(p, column.Push), Pull: b.use(p, column.Pull)},
	}
}

func (b builder) use(p car.Pair, d column.Direction) *UseData {
	u := b.Worst[p][d]
	if u.Force == 0 {
		return nil
	}
	return &UseData{Force: b.shop(units.Force, u.Force), Share: u.Share, Travel: b.shop(units.Length, u.Travel), Case: u.Case.String()}
}

func (b builder) row(s *analysis.Station) TravelRow {
	row := TravelRow{
		Travel:       b.shop(units.Length, s.Pose.Travel),
		PinionChange: b.shop(units.Angle, s.Pose.Turn),
		AxleShift:    b.shop(units.Length, s.Pose.Shift),
		CGHeight:     b.shop(units.Length, s.CG.Y),
		Hooked:       b.load(&s.Loads.Hooked),
		Hit:          b.load(&s.Loads.Hit),
	}
	if s.HasInstantCenter {
		center := b.pair(units.Length, s.InstantCenter)
		row.InstantCenter = &center
	}
	if s.HasAntiSquat {
		percent := b.shop(units.Percent, s.AntiSquat)
		row.AntiSquat = &percent
	}
	if s.Joints.Given {
		row.Joints = &JointData{b.shop(units.Angle, s.Joints.Pinion), b.shop(units.Angle, s.Joints.Transmission)}
	}
	return row
}

func (b builder) load(l *statics.Load) LoadData {
	data := LoadData{
		Thrust:     b.shop(units.Force, l.Thrust),
		AxleTorque: b.shop(units.Torque, l.AxleTorque),
		AccelG:     l.Accel / units.Gravity,
		RearLoad:   b.shop(units.Force, l.RearLoad),
		FrontLoad:  b.shop(units.Force, l.FrontLoad),
		Governs:    l.Governs.String(),
	}
	if !l.Balanced {
		return data
	}
	force := func(si float64) *float64 {
		x := b.shop(units.Force, si)
		return &x
	}
	share := l.BarsShare
	data.Upper, data.Lower, data.Spring = force(l.Upper.Tension), force(l.Lower.Tension), force(l.Spring)
	data.SpringChange, data.BarsShare = force(b.SpringChange(l)), &share
	data.HoleForces = &HoleForces{
		ChassisUpper: b.pair(units.Force, l.Upper.OnChassis()),
		ChassisLower: b.pair(units.Force, l.Lower.OnChassis()),
		HousingUpper: b.pair(units.Force, l.Upper.OnHousing),
		HousingLower: b.pair(units.Force, l.Lower.OnHousing),
	}
	return data
}

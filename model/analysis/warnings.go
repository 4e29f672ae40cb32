package analysis

import (
	"cmp"
	"math"
	"slices"

	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/statics"
	"bowline/model/units"
)

// Kind is a kind of warning.
type Kind int

// The warnings, most urgent first.
const (
	BeyondThread    Kind = iota // a bar is preloaded by turns that its thread does not have
	OverCapacity                // a bar is loaded beyond its allowable load
	NotBalanced                 // bars and spring cannot hold the axle at some travel
	LittleThread                // turns of preload leave little thread engaged
	ThinWall                    // D/t beyond the limit of 0.11 E/Fy
	Slender                     // a bar longer than 200 radii of gyration
	NearClosure                 // the travel comes close to where the bars stop closing
	WheelsOff                   // the front wheels leave the ground
	NoCenter                    // parallel bars at ride height
	OffTarget                   // anti-squat outside the target at ride height
	CenterOffTarget             // instant center outside the target at ride height
	SquatReversal               // anti-squat changes sign over the travel
)

// Warning is one thing the user should know.
type Warning struct {
	Kind   Kind
	Pair   car.Pair      // for ThinWall, Slender
	Case   Case          // for WheelsOff
	Bar    launch.RodID  // for BeyondThread, LittleThread
	Room   adjuster.Room // likewise: what the bar's thread allows
	Value  float64       // what was found: turns, D/t, L/r, an anti-squat or a travel [m]
	Limit  float64       // what it is held against
	Travel float64       // where [m]
	Demand Demand        // for OverCapacity; on both bars of a pair where it is the side view's
}

const (
	// slendernessPreferred is the largest L/r that AISC 360-22 section E2
	// prefers for columns.
	slendernessPreferred = 200
	// closureMargin is how much travel must be left before the bars stop
	// closing without a warning [m].
	closureMargin = 0.5 * units.Inch
)

// Warnings returns what the user should know of the side view and of a launch of the
// same car and setup, in the order of Kind, the worst of each; of the side view alone
// with nil.
func (r *Result) Warnings(l *launch.Result) []Warning {
	list, e := slices.Clone(r.warnings), r.Envelope(l)
	for _, bar := range launch.Bars {
		for way := range e[bar] {
			d := e[bar][way]
			// Both bars of a pair are alike in the side view: one warning speaks of both.
			if d.Share > 1 && (d.Source == FromLaunch || bar.Side() == launch.Left || e[bar.Opposite()][way].Source == FromLaunch) {
				list = append(list, Warning{Kind: OverCapacity, Demand: d})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b Warning) int { return cmp.Compare(a.Kind, b.Kind) })
	return list
}

// warn collects the warnings of the side view but for those of loads.
func (r *Result) warn() {
	add := func(w Warning) { r.warnings = append(r.warnings, w) }
	r.warnOfThreads(BeyondThread, add)
	for i := range r.Travel {
		if s := &r.Travel[i]; !s.Loads.Hit.Balanced {
			add(Warning{Kind: NotBalanced, Travel: s.Pose.Travel})
			break
		}
	}
	r.warnOfThreads(LittleThread, add)
	for _, p := range car.Pairs {
		b := &r.Bars[p]
		if b.Wall.Slender() {
			add(Warning{Kind: ThinWall, Pair: p, Value: b.Wall.Ratio, Limit: b.Wall.Limit})
		}
		if b.Slenderness > slendernessPreferred {
			add(Warning{Kind: Slender, Pair: p, Value: b.Slenderness, Limit: slendernessPreferred})
		}
	}
	springs := r.Car.Springs
	if left := math.Min(r.Bump-springs.RearBump, -r.Droop-springs.RearDroop); left < closureMargin {
		add(Warning{Kind: NearClosure, Value: left, Limit: closureMargin})
	}
	for _, c := range Cases {
		if c.Of(&r.Ride.Loads).Governs == statics.FrontWheelsOff {
			add(Warning{Kind: WheelsOff, Case: c})
			break
		}
	}
	r.warnOfTargets(add)
}

// warnOfTargets compares ride height with the targets and looks along the
// travel for a change of sign.
func (r *Result) warnOfTargets(add func(Warning)) {
	if !r.Ride.HasInstantCenter {
		add(Warning{Kind: NoCenter})
	}
	if a := r.Car.Check.TargetAntiSquat; r.Ride.HasAntiSquat && (r.Ride.AntiSquat < a[0] || r.Ride.AntiSquat > a[1]) {
		limit := a[0]
		if r.Ride.AntiSquat > a[1] {
			limit = a[1]
		}
		add(Warning{Kind: OffTarget, Value: r.Ride.AntiSquat, Limit: limit})
	}
	if k := r.Car.Check; r.Ride.HasInstantCenter {
		if ic := r.Ride.InstantCenter; ic.X < k.TargetICX[0] || ic.X > k.TargetICX[1] || ic.Y < k.TargetICZ[0] || ic.Y > k.TargetICZ[1] {
			add(Warning{Kind: CenterOffTarget})
		}
	}
	for i := 1; i < len(r.Travel); i++ {
		a, b := &r.Travel[i-1], &r.Travel[i]
		if a.HasAntiSquat && b.HasAntiSquat && a.AntiSquat*b.AntiSquat < 0 {
			add(Warning{Kind: SquatReversal, Travel: b.Pose.Travel})
			break
		}
	}
}

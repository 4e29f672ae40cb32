package holes

import (
	"cmp"
	"math"
	"slices"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// ReasonKind is a kind of Reason.
type ReasonKind int

// The kinds, each with what Value and Limit mean where they do.
const (
	Refused        ReasonKind = iota // the holes cannot be used; Table.Refusal says why
	AreInUse                         // they are the present ones
	BothMoved                        // a wish unmet: both pairs of bars would be moved
	NoStart                          // the present holes cannot be used, so that no turns can be counted from them
	ShortThread                      // Pair's rod ends have too little thread for any tube
	NewTube                          // Pair needs a tube longer by Value [m], below zero shorter
	PinionTurn                       // the pinion turns by Value, more than Limit [rad]
	TargetMet                        // all of it
	SquatOff                         // anti-squat is by Value outside the target, below zero too low [1]
	NoSquat                          // there is no anti-squat: the line of action stands upright
	AheadOff                         // the instant center is by Value outside the target along the car, below zero too far back [m]
	AboveOff                         // likewise in height, below zero too low [m]
	FarAhead                         // AheadOff by so much that it only says that the bars are nearly parallel; its sign is Value's
	FarAbove                         // AboveOff likewise
	NoCenter                         // there is no instant center: the bars are parallel
	PinionOff                        // the pinion turns by Value beyond its limit [rad]
	MostPush                         // Pair is pushed most of all bars, by Value [N]
	NearestPush                      // Pair is nearest to its limit in push, with Value [N] at a share of Limit [1]
	NoPush                           // no bar is pushed
	MostShare                        // the largest share of the allowable load is Value [1]
	BarTurns                         // the bars are turned by Turns
	Overload                         // Pair would carry Value times its allowable load in Way [1]
	NotLaunched                      // the combination is still to be launched
	LaunchEnded                      // its launch did not come to 60 ft: Outcome, and Part with launch.TooStiff
	SixtyFeet                        // it takes Value to 60 ft in the launch [s]
	MostDemand                       // the largest share of the allowable load, launch included, is that of Demand
	RearApart                        // left and right rear tire loads are Value apart through the launch, over both [1]
	FrontLift                        // a front tire comes off the ground by Value [m]
	LiftOver                         // FrontLift, beyond Limit [m]
	LaunchOverload                   // the launch asks more of a bar than it may carry: Demand
	Tie                              // Others are as good by Order, and Decider sets the place apart from them
)

// Reason is one thing that tells why a place stands where it stands.
type Reason struct {
	Kind         ReasonKind
	Pair         car.Pair
	Way          column.Direction
	Value, Limit float64
	Turns        [2]float64 // by car.Pair, positive lengthens [1]
	Order        Order
	Others       int
	Decider      Decider
	Demand       analysis.Demand
	Outcome      launch.Outcome
	Part         launch.Part
}

// Reasons returns why the place stands where it stands, what counts most first:
// what is special about it, the wishes that it does not fulfil, what it is ordered
// by, how it stands to the target, what its bars carry, and what sets it apart
// from its equals.
func (p *Place) Reasons() []Reason {
	if !p.Combination().Usable() {
		return []Reason{{Kind: Refused}}
	}
	var list []Reason
	if p.Present {
		list = append(list, Reason{Kind: AreInUse})
	}
	if p.Unmet != 0 {
		return slices.Concat(list, p.unmet(), p.launched(), p.near(), p.overload())
	}
	list = slices.Concat(list, p.leads(), p.launched(), p.near())
	if p.ranking.wishes.Order != LeastPush && (p.Inside || p.Others > 0 && p.Decider == ByPush) {
		list = append(list, p.push())
	}
	list = append(list, p.overload()...)
	if p.Others > 0 {
		list = append(list, Reason{Kind: Tie, Order: p.ranking.wishes.Order, Others: p.Others, Decider: p.Decider})
	}
	return list
}

// Refusal says why the place's holes cannot be used, as Table.Refusal does.
func (p *Place) Refusal(s units.System) string { return p.ranking.table.Refusal(p.Holes(), s) }

// unmet returns the wishes that are not fulfilled, but for those of being in the
// target and within the loads, of which near and overload tell.
func (p *Place) unmet() (list []Reason) {
	if p.Unmet&OneBar != 0 {
		list = append(list, Reason{Kind: BothMoved})
	}
	if p.Unmet&InReach != 0 {
		list = append(list, p.reach()...)
	}
	if p.Unmet&WithinPinion != 0 {
		list = append(list, Reason{Kind: PinionTurn, Value: p.Combination().PinionChange(), Limit: p.ranking.target.PinionLimit})
	}
	return list
}

// overload returns which bars are beyond their allowable load.
func (p *Place) overload() (list []Reason) {
	for _, pair := range car.Pairs {
		for _, d := range column.Directions {
			if share := p.Combination().Share[pair][d]; share > 1 {
				list = append(list, Reason{Kind: Overload, Pair: pair, Way: d, Value: share})
			}
		}
	}
	if l := p.Launch(); l != nil && l.Worst.Source == analysis.FromLaunch && l.Worst.Share > 1 {
		list = append(list, Reason{Kind: LaunchOverload, Demand: l.Worst})
	}
	return list
}

// launched returns what stands out in the launch: that it ended early or lifts the front
// tires beyond the limit, or that it is still to come where it counts.
func (p *Place) launched() (list []Reason) {
	l, w, limit := p.Launch(), p.ranking.wishes, p.ranking.target.LiftLimit
	switch {
	case l == nil && (w.Order.NeedsLaunches() || p.Unmet&WithinLift != 0):
		return []Reason{{Kind: NotLaunched}}
	case l == nil:
		return nil
	}
	if !l.Finished() {
		list = append(list, Reason{Kind: LaunchEnded, Outcome: l.Outcome, Part: l.Fastest})
	}
	if limit > 0 && l.Whole() && l.Lift > limit {
		list = append(list, Reason{Kind: LiftOver, Value: l.Lift, Limit: limit})
	}
	return list
}

// reach returns which bars need new tubes.
func (p *Place) reach() (list []Reason) {
	if !p.HasTurns {
		return []Reason{{Kind: NoStart}}
	}
	for _, pair := range car.Pairs {
		switch bar := &p.ranking.bars[pair]; {
		case !p.Recut(pair):
		case !bar.Usable():
			list = append(list, Reason{Kind: ShortThread, Pair: pair})
		default:
			list = append(list, Reason{Kind: NewTube, Pair: pair, Value: p.Tube[pair]})
		}
	}
	return list
}

// far is the miss of an instant center beyond which the bars are called nearly
// parallel instead of giving its size [m].
const far = 10.0

// near returns how near the target is, the worst miss first, less what an unmet
// wish says already.
func (p *Place) near() []Reason {
	if p.Inside {
		return []Reason{{Kind: TargetMet}}
	}
	c := p.Combination()
	_, parts, off := p.ranking.target.distance(c)
	type missing struct {
		part float64 // of the distance
		Reason
	}
	var missed []missing
	add := func(part float64, kind ReasonKind, by float64) {
		if part > 0 {
			missed = append(missed, missing{part, Reason{Kind: kind, Value: by}})
		}
	}
	if c.HasAntiSquat {
		add(parts.antiSquat, SquatOff, off.AntiSquat)
	} else {
		add(parts.antiSquat, NoSquat, 0)
	}
	switch farAhead, farAbove := math.Abs(off.Ahead) > far, math.Abs(off.Above) > far; {
	case !c.HasInstantCenter:
		add(parts.center, NoCenter, 0)
	case farAhead && farAbove:
		add(max(parts.ahead, parts.above), FarAhead, off.Ahead)
	case farAhead:
		add(parts.ahead, FarAhead, off.Ahead)
		add(parts.above, AboveOff, off.Above)
	case farAbove:
		add(parts.ahead, AheadOff, off.Ahead)
		add(parts.above, FarAbove, off.Above)
	default:
		add(parts.ahead, AheadOff, off.Ahead)
		add(parts.above, AboveOff, off.Above)
	}
	if p.Unmet&WithinPinion == 0 {
		add(parts.pinion, PinionOff, off.Pinion)
	}
	slices.SortStableFunc(missed, func(a, b missing) int { return cmp.Compare(b.part, a.part) })
	list := make([]Reason, len(missed))
	for i := range missed {
		list[i] = missed[i].Reason
	}
	return list
}

// push returns which bars are nearest to their limit in push.
func (p *Place) push() Reason {
	c := p.Combination()
	pair := car.Lower
	if c.Share[car.Upper][column.Push] > c.Share[car.Lower][column.Push] {
		pair = car.Upper
	}
	push := max(c.Peak[pair][analysis.Hooked][column.Push], c.Peak[pair][analysis.Hit][column.Push])
	if push == 0 {
		return Reason{Kind: NoPush}
	}
	return Reason{Kind: NearestPush, Pair: pair, Value: push, Limit: c.Share[pair][column.Push]}
}

// leads returns what the order asked for goes by, nothing for the nearest.
func (p *Place) leads() []Reason {
	c, l, order := p.Combination(), p.Launch(), p.ranking.wishes.Order
	if order.NeedsLaunches() && l.by(order) == unknown {
		return nil // launched says why.
	}
	switch order {
	case LeastPush:
		pair, push := c.largestPush()
		if push == 0 {
			return []Reason{{Kind: NoPush}}
		}
		return []Reason{{Kind: MostPush, Pair: pair, Value: push}}
	case LeastShare:
		return []Reason{{Kind: MostShare, Value: c.Highest()}}
	case FewestTurns:
		return []Reason{{Kind: BarTurns, Turns: p.Turns}}
	case Quickest:
		return []Reason{{Kind: SixtyFeet, Value: l.SixtyFeet}}
	case LeastEnvelope:
		return []Reason{{Kind: MostDemand, Demand: l.Worst}}
	case MostEven:
		return []Reason{{Kind: RearApart, Value: l.Unevenness}}
	case LeastLift:
		return []Reason{{Kind: FrontLift, Value: l.Lift}}
	}
	return nil
}

package holes

import (
	"cmp"
	"math"
	"slices"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
)

// Order is what places are ordered by first.
type Order int

// The orders.
const (
	NearestTarget Order = iota // the least distance to the target
	LeastPush                  // the least of the largest push in a bar
	LeastShare                 // the least of the largest share of the allowable load, push or pull
	FewestTurns                // the fewest turns of the bars from the present setup

	// These need the launches.
	Quickest      // the least time to 60 ft
	LeastEnvelope // the least of the largest share of the allowable load, launch included
	MostEven      // left and right rear tire loads the least apart through the launch
	LeastLift     // the front tires the least off the ground
)

// Orders lists the orders.
var Orders = [...]Order{NearestTarget, LeastPush, LeastShare, FewestTurns, Quickest, LeastEnvelope, MostEven, LeastLift}

// String returns the order's name, as in "nearest to the target".
func (o Order) String() string {
	return [...]string{
		"nearest to the target", "least push", "least share of the limit", "fewest turns",
		"least time to 60 ft", "least share of the limit, launch included", "rear tires most even in the launch", "least front-wheel lift",
	}[o]
}

// NeedsLaunches reports whether places can be ordered so only when their combinations
// have been launched.
func (o Order) NeedsLaunches() bool { return o >= Quickest }

// Wishes say which places come first. The zero value has no wish but to be near
// the target.
type Wishes struct {
	Order        Order
	OneBar       bool // only one pair of bars is moved, at either or both of its ends
	InReach      bool // the adjusters reach it with the present tubes
	WithinPinion bool // the pinion's limit is kept
	WithinLoad   bool // no bar is beyond its allowable load, in its launch either where there is one
	InTarget     bool // all of the target is met
	WithinLift   bool // the limit of front-wheel lift is kept in the launch
}

// Of returns the wishes that mean something with a target: without a limit of the
// pinion or of front-wheel lift there is none to be kept.
func (w Wishes) Of(t Target) Wishes {
	w.WithinPinion = w.WithinPinion && t.PinionLimit != 0
	w.WithinLift = w.WithinLift && t.LiftLimit != 0
	return w
}

// OfSideView returns the wishes without those that need launches.
func (w Wishes) OfSideView() Wishes {
	if w.WithinLift = false; w.Order.NeedsLaunches() {
		w.Order = NearestTarget
	}
	return w
}

// Any reports whether there is a wish beyond the order.
func (w Wishes) Any() bool { return w != Wishes{Order: w.Order} }

// Wish is one of the Wishes that may be unmet, or several.
type Wish uint8

// The wishes.
const (
	OneBar Wish = 1 << iota
	InReach
	WithinPinion
	WithinLoad
	InTarget
	WithinLift
)

// Decider is the criterion that separates a place from the others that are equal
// by the order asked for. They apply in the order of these constants.
type Decider int

// The deciders.
const (
	ByOrder    Decider = iota // the order asked for; no other is as good
	ByDistance                // the least distance to the target
	ByPush                    // the least share of the limit in push
	ByMoved                   // the fewest ends moved
	ByTurns                   // the fewest turns
	ByHoles                   // the holes' order, since all else is the same
)

// Place is a combination's place in a ranking.
type Place struct {
	Rank     int     // from 1
	Index    int     // of the combination in the table
	Distance float64 // to the target; the largest there is for holes that cannot be used [1]
	Inside   bool    // all of the target is met: the distance is 0
	Off      Off     // what is missed of the target
	Present  bool    // these are the holes of the present setup
	Moved    [2]int  // ends moved from the present setup by car.Pair
	Unmet    Wish    // wishes that are not fulfilled

	// From the present setup, of holes that can be used. Either bar of a pair
	// is turned alike, so that what they differ by stays.
	HasTurns bool
	Turns    [2]float64         // of each bar by car.Pair, positive lengthens [1]
	Status   [2]adjuster.Status // of the bar of each pair that is worse off
	Tube     [2]float64         // by how much a new tube has to be longer, by car.Pair; zero where the present one does [m]

	Others  int     // as good by the order asked for
	Decider Decider // what sets it apart from them

	ranking *ranking
}

// ranking is what all places of one ranking share.
type ranking struct {
	table  *Table
	target Target
	wishes Wishes
	bars   [2]adjuster.Bar
}

// Combination returns the combination that the place is of, not to be changed.
func (p *Place) Combination() *Combination { return &p.ranking.table.Combinations[p.Index] }

// Holes returns the holes that the place is of.
func (p *Place) Holes() car.Holes { return p.Combination().Holes }

// Launches returns those of the table that the place is of; nil when they are not asked
// for.
func (p *Place) Launches() *Launches { return p.ranking.table.Launches }

// Wishes returns what the place is ranked by besides the target.
func (p *Place) Wishes() Wishes { return p.ranking.wishes }

// Target returns the target that the place is ranked by.
func (p *Place) Target() Target { return p.ranking.target }

// Launch returns the launch of the combination that the place is of, not to be changed;
// nil while that has not been launched.
func (p *Place) Launch() *Launch {
	if all := p.Launches(); all != nil && all.List[p.Index].Done {
		return &all.List[p.Index]
	}
	return nil
}

// Awaited reports whether the combination is to be launched and has not been yet.
func (p *Place) Awaited() bool {
	return p.Launches() != nil && p.Launch() == nil && p.Combination().Usable()
}

// MovedEnds returns how many of the four ends move from the present setup.
func (p *Place) MovedEnds() int { return p.Moved[car.Upper] + p.Moved[car.Lower] }

// AllTurns returns the turns of an upper and a lower bar together, in whatever
// sense [1].
func (p *Place) AllTurns() float64 {
	return math.Abs(p.Turns[car.Upper]) + math.Abs(p.Turns[car.Lower])
}

// Rank gives every combination of a table its place, the best first: those that
// fulfil all wishes, then those that do not, then those that cannot be used.
// Within each they come by the order asked for; equals by the distance to the
// target, the share of the limit in push, the ends moved, the turns and at last
// the holes, lowest numbers first. None is left out. What is ordered by its launch and
// has not been launched yet, or did not come so far, is behind all that have.
//
// Moves and turns count from a setup of c, whose holes are those that the table
// was searched for. Rank panics when the setup does not exist.
func Rank(table *Table, c *car.Car, setup int, target Target, wishes Wishes) []Place {
	r := &ranking{table: table, target: target, wishes: wishes}
	from := &c.Setups[setup]
	present := &table.Combinations[table.Index(from.Holes)]
	for _, pair := range car.Pairs {
		r.bars[pair] = adjuster.Of(c, pair)
	}
	places := make([]Place, len(table.Combinations))
	keys := make([]key, len(places))
	for i := range places {
		p := &places[i]
		p.Index, p.ranking = i, r
		p.move(from, present)
		keys[i] = p.judge()
	}
	slices.SortFunc(keys, key.compare)
	sorted := make([]Place, len(places))
	for i := range keys {
		sorted[i] = places[keys[i].index]
		sorted[i].Rank = i + 1
	}
	settle(sorted, keys)
	return sorted
}

// move finds what has to be done to get from a setup to the place.
func (p *Place) move(from *car.Setup, present *Combination) {
	c := p.Combination()
	for _, row := range car.Rows {
		if *row.Of(&c.Holes) != *row.Of(&from.Holes) {
			p.Moved[row.Pair()]++
		}
	}
	p.Present = c.Holes == from.Holes
	if !c.Usable() || !present.Usable() {
		return
	}
	p.HasTurns = true
	preload := [2][2]float64{
		car.Upper: {from.Turns.UpperLeft, from.Turns.UpperRight},
		car.Lower: {from.Turns.LowerLeft, from.Turns.LowerRight},
	}
	for _, pair := range car.Pairs {
		bar := &p.ranking.bars[pair]
		p.Turns[pair] = bar.Turns(present.Length[pair], c.Length[pair])
		for side, turns := range preload[pair] {
			if side > 0 && turns == preload[pair][0] {
				break
			}
			state := bar.At(c.Length[pair] + turns*bar.Lead())
			p.Status[pair] = max(p.Status[pair], state.Status)
			if math.Abs(state.Tube) > math.Abs(p.Tube[pair]) {
				p.Tube[pair] = state.Tube
			}
		}
	}
}

// Recut reports whether a pair of bars needs new tubes.
func (p *Place) Recut(pair car.Pair) bool {
	return p.Status[pair] == adjuster.TooShort || p.Status[pair] == adjuster.TooLong
}

// judge compares the place with target and wishes and returns its sorting key.
func (p *Place) judge() key {
	r, c := p.ranking, p.Combination()
	if !c.Usable() {
		p.Distance = mostDistance
		return key{class: 2, index: p.Index}
	}
	p.Distance, _, p.Off = r.target.distance(c)
	p.Inside = p.Distance == 0
	unmet := func(asked bool, w Wish, met bool) {
		if asked && !met {
			p.Unmet |= w
		}
	}
	unmet(r.wishes.OneBar, OneBar, p.Moved[car.Upper] == 0 || p.Moved[car.Lower] == 0)
	unmet(r.wishes.InReach, InReach, p.HasTurns && !p.Recut(car.Upper) && !p.Recut(car.Lower))
	unmet(r.wishes.WithinPinion, WithinPinion, p.Off.Pinion == 0)
	l := p.Launch()
	whole := l != nil && l.Whole()
	unmet(r.wishes.WithinLoad, WithinLoad, c.Highest() <= 1 && (l == nil || l.Worst.Share <= 1))
	unmet(r.wishes.InTarget, InTarget, p.Inside)
	unmet(r.wishes.WithinLift, WithinLift, whole && (r.target.LiftLimit == 0 || l.Lift <= r.target.LiftLimit))
	share := grid(max(c.Share[car.Upper][column.Push], c.Share[car.Lower][column.Push]), slack)
	turns := grid(p.AllTurns(), slack)
	k := key{index: p.Index, by: [ByHoles]float64{ByDistance: p.Distance, ByPush: share, ByMoved: float64(p.MovedEnds()), ByTurns: turns}}
	if p.Unmet != 0 {
		k.class = 1
	}
	switch r.wishes.Order {
	case NearestTarget:
		k.by[ByOrder] = p.Distance
	case LeastPush:
		_, push := c.largestPush()
		k.by[ByOrder] = grid(push, 1e-6)
	case LeastShare:
		k.by[ByOrder] = grid(c.Highest(), slack)
	case FewestTurns:
		k.by[ByOrder] = turns
	default:
		k.by[ByOrder] = l.by(r.wishes.Order)
	}
	return k
}

// unknown is the sorting key of what is ordered by a launch that has not come so far.
var unknown = math.Inf(1)

// by returns the sorting key of a launch, or of none with nil, for one of the orders
// that need launches.
func (l *Launch) by(o Order) float64 {
	switch {
	case l == nil || !l.Whole() || o == Quickest && !l.Finished():
		return unknown
	case o == Quickest:
		return grid(l.SixtyFeet, slack)
	case o == LeastEnvelope:
		return grid(l.Worst.Share, slack)
	case o == MostEven:
		return grid(l.Unevenness, slack)
	}
	return grid(l.Lift, slack)
}

// largestPush returns the pair with the largest push in a bar, and that push over
// both load cases [N].
func (c *Combination) largestPush() (car.Pair, float64) {
	pair, most := car.Lower, 0.0
	for _, p := range car.Pairs {
		for _, load := range analysis.Cases {
			if push := c.Peak[p][load][column.Push]; push > most {
				pair, most = p, push
			}
		}
	}
	return pair, most
}

// key is the sorting key of a place.
type key struct {
	class int // 0 fulfils all wishes, 1 does not, 2 cannot be used
	by    [ByHoles]float64
	index int
}

func (k key) compare(l key) int {
	if order := cmp.Compare(k.class, l.class); order != 0 {
		return order
	}
	if d := k.differs(l); d < ByHoles {
		return cmp.Compare(k.by[d], l.by[d])
	}
	return cmp.Compare(k.index, l.index)
}

// differs returns the first decider by which two keys differ.
func (k *key) differs(l key) Decider {
	d := ByOrder
	for d < ByHoles && k.by[d] == l.by[d] {
		d++
	}
	return d
}

// settle counts the equals of each place and finds what sets it apart from the
// one before it, or the first from the one after it.
func settle(places []Place, keys []key) {
	equal := func(i, j int) bool {
		return keys[i].class == keys[j].class && keys[i].by[ByOrder] == keys[j].by[ByOrder]
	}
	for first := 0; first < len(places); {
		last := first
		for last+1 < len(places) && equal(first, last+1) {
			last++
		}
		compared := keys[first].class < 2 && keys[first].by[ByOrder] != unknown
		for i := first; i <= last && last > first && compared; i++ {
			neighbor := i - 1
			if i == first {
				neighbor = i + 1
			}
			places[i].Others, places[i].Decider = last-first, keys[i].differs(keys[neighbor])
		}
		first = last + 1
	}
}

package holes_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/holes"
	"bowline/model/internal/cartest"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

const pound = 0.45359237 * 9.80665 // of force

func readCar(t testing.TB, path string) *car.Car {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// byHand is a car with 3 × 2 × 1 × 2 holes, of which the last upper chassis hole
// lies on the housing hole, and a table of made-up results. Its bars have 3/4-16
// rod ends, four threads in sight at 20 in: there they can be made 0.5 in
// shorter and 0.53 in longer, a turn being 1/8 in.
func byHand(t testing.TB) (*car.Car, *holes.Table) {
	c := readCar(t, "../../testdata/reference.toml")
	upper := c.Housing.Upper[0]
	c.Chassis.Upper = append(c.Chassis.Upper[:2:2], r2.Vec{X: upper.X, Y: upper.Y + c.Tires.RearRadius})
	c.Chassis.Lower, c.Housing.Upper, c.Housing.Lower = c.Chassis.Lower[:2], c.Housing.Upper[:1], c.Housing.Lower[:2]
	for _, p := range car.Pairs {
		p.Bar(c).RodEnd = "3/4-16"
		*p.Threads(c) = car.Threads{Length: 1.687 * inch, JamNut: 0.421875 * inch, Shown: 4, Fitted: 20 * inch}
	}
	c.Setups = []car.Setup{{Name: "present"}}
	table := &holes.Table{Car: c, Library: carfile.Stock()}
	for i := range 12 {
		table.Combinations = append(table.Combinations, holes.Combination{
			Holes:   car.Holes{ChassisUpper: i / 4, ChassisLower: i / 2 % 2, HousingLower: i % 2},
			Refused: i >= 8,
		})
	}
	for i, row := range []struct {
		holes.Combination
		upper, lower float64 // length [in]
		push, share  float64 // of the lower bars [lb], [1]
		highest      float64 // the upper bars' share in pull
	}{
		0: {at(1.3, 50, 10), 20, 20, 9000, 0.70, 0.75},
		1: {at(1.1, 42, 8), 20, 20.25, 8000, 0.60, 0.62},
		2: {at(1.5, 44, 12), 20, 19.75, 8000, 0.60, 0.61},
		3: {at(1.2, 50, 11), 20, 20.25, 7000, 0.60, 0.50},
		4: {at(1.75, 50, 10), 20.5, 20, 9100, 0.65, 0.50},
		5: {at(1.3, 61.2, 10), 20.5, 19, 6000, 0.55, 0.50},
		6: {holes.Combination{HasAntiSquat: true, AntiSquat: 1.3}, 20, 20, 5000, 0.50, 0.20},
		7: {holes.Combination{HasInstantCenter: true, InstantCenter: r2.Vec{X: 50 * inch, Y: 10 * inch}}, 20, 20, 4000, 0.40, 0.90},
	} {
		row.Holes = table.Combinations[i].Holes
		row.Length = [2]float64{row.upper * inch, row.lower * inch}
		row.Peak[car.Lower][analysis.Hit][column.Push] = row.push * pound
		row.Peak[car.Lower][analysis.Hooked][column.Push] = 0.6 * row.push * pound
		row.Share[car.Lower][column.Push], row.Share[car.Upper][column.Pull] = row.share, row.highest
		table.Combinations[i] = row.Combination
	}
	table.Combinations[3].PinionRange = [2]float64{-3 * degree, 1 * degree}
	return c, table
}

func indices(places []holes.Place) []int {
	list := make([]int, len(places))
	for i := range places {
		list[i] = places[i].Index
	}
	return list
}

// Distances by hand: 0, 1 and 2 are inside, 5 is 1.2 in of 10 outside, 3 turns
// its pinion by half of its limit too far, 4 has half of 30 % too much, 6 and 7
// lack a value.
func TestRankByHand(t *testing.T) {
	c, table := byHand(t)
	for _, want := range []struct {
		name   string
		wishes holes.Wishes
		order  []int
	}{
		{"nearest", holes.Wishes{}, []int{1, 2, 0, 5, 3, 4, 7, 6, 8, 9, 10, 11}},
		{"one pair of bars", holes.Wishes{OneBar: true}, []int{1, 2, 0, 3, 4, 5, 7, 6, 8, 9, 10, 11}},
		{"in reach", holes.Wishes{InReach: true}, []int{1, 2, 0, 3, 4, 7, 6, 5, 8, 9, 10, 11}},
		{"pinion", holes.Wishes{WithinPinion: true}, []int{1, 2, 0, 5, 4, 7, 6, 3, 8, 9, 10, 11}},
		{"in the target, least push", holes.Wishes{InTarget: true, Order: holes.LeastPush}, []int{1, 2, 0, 7, 6, 5, 3, 4, 8, 9, 10, 11}},
		{"least push", holes.Wishes{Order: holes.LeastPush}, []int{7, 6, 5, 3, 1, 2, 0, 4, 8, 9, 10, 11}},
		{"least share", holes.Wishes{Order: holes.LeastShare}, []int{6, 5, 3, 2, 1, 4, 0, 7, 8, 9, 10, 11}},
		{"fewest turns", holes.Wishes{Order: holes.FewestTurns}, []int{0, 7, 6, 1, 2, 3, 4, 5, 8, 9, 10, 11}},
	} {
		if got := indices(holes.Rank(table, c, 0, box, want.wishes)); !slices.Equal(got, want.order) {
			t.Errorf("%s: %v, want %v", want.name, got, want.order)
		}
	}
}

// wantReasons compares reasons, numbers within a millionth.
func wantReasons(t *testing.T, what string, got, want []holes.Reason) {
	t.Helper()
	near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Abs(b)+1e-9 }
	same := func(a, b holes.Reason) bool {
		if !near(a.Value, b.Value) || !near(a.Limit, b.Limit) || !near(a.Turns[0], b.Turns[0]) || !near(a.Turns[1], b.Turns[1]) {
			return false
		}
		a.Value, a.Limit, a.Turns = b.Value, b.Limit, b.Turns
		return a == b
	}
	if !slices.EqualFunc(got, want, same) {
		t.Errorf("%s:\n got %+v\nwant %+v", what, got, want)
	}
}

// reasonsOf ranks a table and returns the reasons of one of its combinations.
func reasonsOf(table *holes.Table, c *car.Car, wishes holes.Wishes, index int) []holes.Reason {
	places := holes.Rank(table, c, 0, box, wishes)
	return places[slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == index })].Reasons()
}

func TestReasonsByHand(t *testing.T) {
	c, table := byHand(t)
	push := func(lb, share float64) holes.Reason {
		return holes.Reason{Kind: holes.NearestPush, Pair: car.Lower, Value: lb * pound, Limit: share}
	}
	most := func(lb float64) holes.Reason {
		return holes.Reason{Kind: holes.MostPush, Pair: car.Lower, Value: lb * pound}
	}
	tie := func(o holes.Order, others int, by holes.Decider) holes.Reason {
		return holes.Reason{Kind: holes.Tie, Order: o, Others: others, Decider: by}
	}
	kind := func(k holes.ReasonKind, value, limit float64) holes.Reason {
		return holes.Reason{Kind: k, Value: value, Limit: limit}
	}
	met, moved, ahead := kind(holes.TargetMet, 0, 0), kind(holes.BothMoved, 0, 0), kind(holes.AheadOff, 1.2*inch, 0)
	// 0.0625 in × 2 × (4 + 2.242) threads, see the adjuster's own tests.
	recut := holes.Reason{Kind: holes.NewTube, Pair: car.Lower, Value: -0.78025 * inch}
	for _, want := range []struct {
		name   string
		wishes holes.Wishes
		index  int
		list   []holes.Reason
	}{
		{"present", holes.Wishes{}, 0, []holes.Reason{kind(holes.AreInUse, 0, 0), met, push(9000, 0.7), tie(holes.NearestTarget, 2, holes.ByPush)}},
		{"equal", holes.Wishes{}, 1, []holes.Reason{met, push(8000, 0.6), tie(holes.NearestTarget, 2, holes.ByHoles)}},
		{"ahead", holes.Wishes{}, 5, []holes.Reason{ahead}},
		{"pinion", holes.Wishes{}, 3, []holes.Reason{kind(holes.PinionOff, degree, 0), push(7000, 0.6), tie(holes.NearestTarget, 1, holes.ByPush)}},
		{"anti-squat", holes.Wishes{}, 4, []holes.Reason{kind(holes.SquatOff, 0.15, 0), push(9100, 0.65), tie(holes.NearestTarget, 1, holes.ByPush)}},
		{"parallel", holes.Wishes{}, 6, []holes.Reason{kind(holes.NoCenter, 0, 0), push(5000, 0.5), tie(holes.NearestTarget, 1, holes.ByPush)}},
		{"upright", holes.Wishes{}, 7, []holes.Reason{kind(holes.NoSquat, 0, 0), push(4000, 0.4), tie(holes.NearestTarget, 1, holes.ByPush)}},
		{"refused", holes.Wishes{}, 8, []holes.Reason{kind(holes.Refused, 0, 0)}},
		{"one pair", holes.Wishes{OneBar: true}, 5, []holes.Reason{moved, ahead}},
		{"in reach", holes.Wishes{InReach: true}, 5, []holes.Reason{recut, ahead}},
		{"two wishes", holes.Wishes{InReach: true, OneBar: true}, 5, []holes.Reason{moved, recut, ahead}},
		{"pinion's limit", holes.Wishes{WithinPinion: true}, 3, []holes.Reason{kind(holes.PinionTurn, 3*degree, 2*degree)}},
		{"in target", holes.Wishes{InTarget: true}, 4, []holes.Reason{kind(holes.SquatOff, 0.15, 0)}},
		{"least push", holes.Wishes{Order: holes.LeastPush}, 3, []holes.Reason{most(7000), kind(holes.PinionOff, degree, 0)}},
		{"equal push", holes.Wishes{Order: holes.LeastPush}, 2, []holes.Reason{most(8000), met, tie(holes.LeastPush, 1, holes.ByHoles)}},
		{"least share", holes.Wishes{Order: holes.LeastShare}, 4, []holes.Reason{kind(holes.MostShare, 0.65, 0), kind(holes.SquatOff, 0.15, 0)}},
		{"turns", holes.Wishes{Order: holes.FewestTurns}, 5, []holes.Reason{{Kind: holes.BarTurns, Turns: [2]float64{4, -8}}, ahead}},
		{"equal turns", holes.Wishes{Order: holes.FewestTurns}, 3, []holes.Reason{{Kind: holes.BarTurns, Turns: [2]float64{0, 2}}, kind(holes.PinionOff, degree, 0), tie(holes.FewestTurns, 2, holes.ByDistance)}},
	} {
		wantReasons(t, want.name, reasonsOf(table, c, want.wishes, want.index), want.list)
	}
	if places := holes.Rank(table, c, 0, box, holes.Wishes{}); !strings.Contains(places[8].Refusal(units.US), "has no length") || places[0].Refusal(units.US) != "" {
		t.Errorf("refusals %q and %q", places[8].Refusal(units.US), places[0].Refusal(units.US))
	}
}

// An instant center far off tells that the bars are nearly parallel.
func TestFarCenters(t *testing.T) {
	for _, want := range []struct {
		x, z float64 // [in]
		list []holes.Reason
	}{
		{31883, 10, []holes.Reason{{Kind: holes.FarAhead, Value: 31823 * inch}}},
		{-31883, 10, []holes.Reason{{Kind: holes.FarAhead, Value: -31923 * inch}}},
		{31883, -4000, []holes.Reason{{Kind: holes.FarAhead, Value: 31823 * inch}}},
		{31883, 15, []holes.Reason{{Kind: holes.FarAhead, Value: 31823 * inch}, {Kind: holes.AboveOff, Value: inch}}},
		{50, 4000, []holes.Reason{{Kind: holes.FarAbove, Value: 3986 * inch}}},
		{50, -4000, []holes.Reason{{Kind: holes.FarAbove, Value: -4006 * inch}}},
		{400, 10, []holes.Reason{{Kind: holes.AheadOff, Value: 340 * inch}}},
	} {
		c, table := byHand(t)
		table.Combinations[5].InstantCenter = r2.Vec{X: want.x * inch, Y: want.z * inch}
		got := reasonsOf(table, c, holes.Wishes{OneBar: true}, 5)
		wantReasons(t, "far", got, append([]holes.Reason{{Kind: holes.BothMoved}}, want.list...))
	}
}

// Without usable holes in use nothing can be counted, and a rod end too short for
// any tube needs no new one.
func TestReasonsOutOfReach(t *testing.T) {
	c, table := byHand(t)
	table.Combinations[0].Refused = true
	if got := reasonsOf(table, c, holes.Wishes{InReach: true}, 5); got[0] != (holes.Reason{Kind: holes.NoStart}) {
		t.Errorf("%+v", got)
	}
	c, table = byHand(t)
	c.LowerBar.Threads.Length = 1 * inch
	if got := reasonsOf(table, c, holes.Wishes{InReach: true}, 1); got[0] != (holes.Reason{Kind: holes.ShortThread, Pair: car.Lower}) {
		t.Errorf("%+v", got)
	}
}

// Without a limit there is no wish to keep it.
func TestWishesOfATarget(t *testing.T) {
	if none := (holes.Wishes{Order: holes.LeastPush}); none.Any() || !(holes.Wishes{InTarget: true}).Any() {
		t.Error("an order is no wish, a target to be met is one")
	}
	all := holes.Wishes{Order: holes.LeastPush, OneBar: true, InReach: true, WithinPinion: true, WithinLoad: true, InTarget: true}
	if got := all.Of(box); got != all {
		t.Errorf("with a limit: %+v", got)
	}
	free, want := box, all
	free.PinionLimit, want.WithinPinion = 0, false
	if got := all.Of(free); got != want {
		t.Errorf("without one: %+v", got)
	}
}

// A bar that carries more than it may is named whether that is asked for or not.
func TestOverloadByHand(t *testing.T) {
	c, table := byHand(t)
	table.Combinations[1].Share[car.Lower][column.Push] = 1.06
	over := holes.Reason{Kind: holes.Overload, Pair: car.Lower, Way: column.Push, Value: 1.06}
	met := holes.Reason{Kind: holes.TargetMet}
	for _, want := range []struct {
		wishes holes.Wishes
		rank   int
		list   []holes.Reason
	}{
		{holes.Wishes{}, 3, []holes.Reason{met, {Kind: holes.NearestPush, Pair: car.Lower, Value: 8000 * pound, Limit: 1.06}, over, {Kind: holes.Tie, Others: 2, Decider: holes.ByPush}}},
		{holes.Wishes{WithinLoad: true}, 8, []holes.Reason{met, over}},
	} {
		p := holes.Rank(table, c, 0, box, want.wishes)[want.rank-1]
		if p.Index != 1 {
			t.Errorf("place %d is %d", want.rank, p.Index)
		}
		wantReasons(t, "overload", p.Reasons(), want.list)
	}
}

// A bar that is preloaded keeps it: with the upper left bar one turn longer than
// its mate, 20.5 in between the holes are 20.625 in of bar, too long for its tube.
// Turns are those from hole to hole all the same.
func TestPreloadCountsForReach(t *testing.T) {
	c, table := byHand(t)
	find := func(index int) holes.Place {
		places := holes.Rank(table, c, 0, box, holes.Wishes{InReach: true})
		return places[slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == index })]
	}
	if p := find(4); p.Unmet != 0 || p.Recut(car.Upper) {
		t.Errorf("without preload: %+v", p)
	}
	c.Setups[0].Turns.UpperLeft = 1
	p := find(4)
	if p.Unmet != holes.InReach || !p.Recut(car.Upper) || p.Recut(car.Lower) || !(p.Tube[car.Upper] > 0) {
		t.Errorf("with preload: %+v", p)
	}
	if !(math.Abs(p.Turns[car.Upper]-4) < 1e-9) || p.Turns[car.Lower] != 0 {
		t.Errorf("turns %v, want 4 and 0", p.Turns)
	}
	if p := find(5); p.Moved != [2]int{1, 1} || !(math.Abs(p.Turns[car.Lower]+8) < 1e-9) {
		t.Errorf("moved %v, turns %v", p.Moved, p.Turns)
	}
}

// tableOf evaluates every combination by a full analysis each.
func tableOf(t interface{ Fatal(...any) }, c *car.Car) *holes.Table {
	library := carfile.Stock()
	table := &holes.Table{Car: c, Library: library}
	with := c.Clone()
	for upper := range c.Chassis.Upper {
		for lower := range c.Chassis.Lower {
			for rearUpper := range c.Housing.Upper {
				for rearLower := range c.Housing.Lower {
					h := car.Holes{ChassisUpper: upper, ChassisLower: lower, HousingUpper: rearUpper, HousingLower: rearLower}
					combination := holes.Combination{Holes: h, Refused: len(c.CheckHoles(h, c.Capacity(library), units.US)) > 0}
					if !combination.Refused {
						with.Setups = []car.Setup{{Name: "one", Holes: h}}
						r, err := analysis.Run(context.Background(), with, library, analysis.Options{})
						if err != nil {
							t.Fatal(err)
						}
						fill(&combination, r)
					}
					table.Combinations = append(table.Combinations, combination)
				}
			}
		}
	}
	return table
}

// fill takes what a combination knows from an analysis.
func fill(c *holes.Combination, r *analysis.Result) {
	c.HasInstantCenter, c.InstantCenter = r.Ride.HasInstantCenter, r.Ride.InstantCenter
	c.HasAntiSquat, c.AntiSquat = r.Ride.HasAntiSquat, r.Ride.AntiSquat
	c.Closure = [2]float64{r.Droop, r.Bump}
	for _, p := range car.Pairs {
		c.Length[p] = r.Bars[p].Length
		for _, d := range column.Directions {
			c.Share[p][d] = r.Worst[p][d].Share
		}
	}
	for i := range r.Travel {
		s := &r.Travel[i]
		c.PinionRange[0], c.PinionRange[1] = min(c.PinionRange[0], s.Pose.Turn), max(c.PinionRange[1], s.Pose.Turn)
		for _, load := range analysis.Cases {
			for _, p := range car.Pairs {
				tension := analysis.Tension(p, load.Of(&s.Loads))
				d := column.Pull
				if tension < 0 {
					d = column.Push
				}
				c.Peak[p][load][d] = max(c.Peak[p][load][d], math.Abs(tension))
			}
		}
	}
}

// fewHoles draws a car with up to three holes a row, and its table.
func fewHoles(t *rapid.T) (*car.Car, *holes.Table) {
	c := cartest.Random(t, carfile.Stock())
	for _, row := range car.Rows {
		list := row.In(c)
		for len(*list) > 3 && !slices.ContainsFunc(c.Setups, func(s car.Setup) bool { return *row.Of(&s.Holes) == len(*list)-1 }) {
			*list = (*list)[:len(*list)-1]
		}
	}
	return c, tableOf(t, c)
}

// Whatever the car and the wishes: every combination has one place and a reason;
// those in the target are those at no distance; groups follow each other, and
// within each the order holds; ranking again changes nothing.
func TestRankOfAnyCar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, table := fewHoles(t)
		setup := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "setup")
		target := holes.TargetOf(c)
		wish := rapid.Bool()
		wishes := holes.Wishes{
			Order:  rapid.SampledFrom(holes.Orders[:]).Draw(t, "order"),
			OneBar: wish.Draw(t, "one bar"), InReach: wish.Draw(t, "in reach"), WithinPinion: wish.Draw(t, "within pinion"), WithinLoad: wish.Draw(t, "within load"), InTarget: wish.Draw(t, "in target"),
		}
		places := holes.Rank(table, c, setup, target, wishes)
		seen := make([]bool, len(table.Combinations))
		group := func(p *holes.Place) int {
			switch {
			case !p.Combination().Usable():
				return 2
			case p.Unmet != 0:
				return 1
			}
			return 0
		}
		first := func(p *holes.Place) float64 {
			c := p.Combination()
			switch wishes.Order {
			case holes.LeastPush:
				most := 0.0
				for _, pair := range c.Peak {
					most = max(most, pair[analysis.Hooked][column.Push], pair[analysis.Hit][column.Push])
				}
				return most
			case holes.LeastShare:
				return c.Highest()
			case holes.FewestTurns:
				return math.Abs(p.Turns[0]) + math.Abs(p.Turns[1])
			}
			return p.Distance
		}
		for i := range places {
			p := &places[i]
			if seen[p.Index] || p.Rank != i+1 {
				t.Fatalf("place %d: %+v", i+1, p)
			}
			seen[p.Index] = true
			if list := p.Reasons(); len(list) == 0 || (list[0].Kind == holes.Refused) == p.Combination().Usable() {
				t.Fatalf("the reasons %+v for %+v", list, p)
			}
			for _, x := range []float64{p.Distance, p.Off.AntiSquat, p.Off.Ahead, p.Off.Above, p.Off.Pinion, p.Turns[0], p.Turns[1], p.Tube[0], p.Tube[1]} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("no number in %+v", p)
				}
			}
			inside := p.Combination().Usable() && p.Off == holes.Off{} && p.Combination().HasInstantCenter && p.Combination().HasAntiSquat
			if p.Inside != inside || p.Inside != (p.Distance == 0) {
				t.Fatalf("inside and yet not: %+v", p)
			}
			if p.Present != (p.MovedEnds() == 0) {
				t.Fatalf("present and yet not: %+v", p)
			}
			if i == 0 {
				continue
			}
			q := &places[i-1]
			if group(q) > group(p) || group(q) == group(p) && first(q) > first(p)*(1+1e-9)+2e-6 {
				t.Fatalf("%+v comes before %+v", q, p)
			}
		}
		again := holes.Rank(table, c, setup, target, wishes)
		if !slices.Equal(indices(again), indices(places)) {
			t.Fatal("another order the second time")
		}
	})
}

// The table is made up, as large as that of the demo car.
func BenchmarkRank(b *testing.B) {
	c := readCar(b, "../../assets/cars/saltgrass-7.toml")
	one := &holes.Combination{}
	r, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		b.Fatal(err)
	}
	fill(one, r)
	table := &holes.Table{Car: c, Library: carfile.Stock()}
	for i := range 8 * 8 * 6 * 6 {
		combination := *one
		combination.Holes = car.Holes{ChassisUpper: i / 288, ChassisLower: i / 36 % 8, HousingUpper: i / 6 % 6, HousingLower: i % 6}
		combination.AntiSquat *= 0.5 + float64(i*7919%2304)/2304
		combination.InstantCenter.X *= 0.5 + float64(i*104729%2304)/2304
		table.Combinations = append(table.Combinations, combination)
	}
	for b.Loop() {
		holes.Rank(table, c, 0, holes.TargetOf(c), holes.Wishes{InReach: true})
	}
}

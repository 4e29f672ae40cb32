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

func TestReasonsByHand(t *testing.T) {
	c, table := byHand(t)
	for _, want := range []struct {
		wishes holes.Wishes
		index  int
		system units.System
		text   string
	}{
		{holes.Wishes{}, 0, units.US, "the present holes; inside the target; lower bars push 9,000 lb, 70 % of their limit; same distance as 2 others, least push decides"},
		{holes.Wishes{}, 1, units.US, "inside the target; lower bars push 8,000 lb, 60 % of their limit; same distance as 2 others, all else is the same, so the holes' order decides"},
		{holes.Wishes{}, 5, units.US, "instant center 1.20 in too far ahead"},
		{holes.Wishes{}, 5, units.SI, "instant center 30.5 mm too far ahead"},
		{holes.Wishes{}, 3, units.US, "pinion turns 1.00° beyond its limit; lower bars push 7,000 lb, 60 % of their limit; same distance as 1 other, least push decides"},
		{holes.Wishes{}, 4, units.SI, "anti-squat 15.0 % too high; lower bars push 40,479 N, 65 % of their limit; same distance as 1 other, least push decides"},
		{holes.Wishes{}, 6, units.US, "no instant center, since the bars are parallel; lower bars push 5,000 lb, 50 % of their limit; same distance as 1 other, least push decides"},
		{holes.Wishes{}, 8, units.US, "the bar has no length: its chassis hole lies on its housing hole"},
		{holes.Wishes{OneBar: true}, 5, units.US, "both pairs would be moved; instant center 1.20 in too far ahead"},
		// 0.0625 in × 2 × (4 + 2.242) threads, see the adjuster's own tests.
		{holes.Wishes{InReach: true}, 5, units.US, "lower bars would have to be recut 0.78 in shorter; instant center 1.20 in too far ahead"},
		{holes.Wishes{InReach: true, OneBar: true}, 5, units.US, "both pairs would be moved; lower bars would have to be recut 0.78 in shorter; instant center 1.20 in too far ahead"},
		{holes.Wishes{WithinPinion: true}, 3, units.US, "the pinion turns 3.00°, its limit is 2.00°"},
		{holes.Wishes{InTarget: true}, 4, units.US, "anti-squat 15.0 % too high"},
		{holes.Wishes{Order: holes.LeastPush}, 3, units.US, "lower bars push 7,000 lb, the most of all bars; pinion turns 1.00° beyond its limit"},
		{holes.Wishes{Order: holes.LeastPush}, 2, units.US, "lower bars push 8,000 lb, the most of all bars; inside the target; same push as 1 other, all else is the same, so the holes' order decides"},
		{holes.Wishes{Order: holes.LeastShare}, 4, units.US, "share of limit at most 65 %; anti-squat 15.0 % too high"},
		{holes.Wishes{Order: holes.FewestTurns}, 5, units.US, "4.00 turns on the upper bars, 8.00 on the lower; instant center 1.20 in too far ahead"},
		{holes.Wishes{Order: holes.FewestTurns}, 3, units.US, "2.00 turns on the lower bars, none on the upper; pinion turns 1.00° beyond its limit; same turns as 2 others, nearness to the target decides"},
	} {
		places := holes.Rank(table, c, 0, box, want.wishes)
		i := slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == want.index })
		if got := places[i].Reason(want.system); got != want.text {
			t.Errorf("%+v, %d:\n got %s\nwant %s", want.wishes, want.index, got, want.text)
		}
	}
}

// An instant center far off is told in words, and so are no turns.
func TestFarAndNothingInWords(t *testing.T) {
	for _, want := range []struct {
		x, z float64 // [in]
		text string
	}{
		{31883, 10, "bars nearly parallel: instant center far ahead of the target"},
		{-31883, 10, "bars nearly parallel: instant center far behind the target"},
		{31883, -4000, "bars nearly parallel: instant center far ahead of the target"},
		{-31883, 4000, "bars nearly parallel: instant center far behind the target"},
		{31883, 15, "bars nearly parallel: instant center far ahead of the target, instant center 1.00 in too high"},
		{50, 4000, "bars nearly parallel: instant center far above the target"},
		{50, -4000, "bars nearly parallel: instant center far below the target"},
		{400, 10, "instant center 340.00 in too far ahead"},
	} {
		c, table := byHand(t)
		table.Combinations[5].InstantCenter = r2.Vec{X: want.x * inch, Y: want.z * inch}
		places := holes.Rank(table, c, 0, box, holes.Wishes{OneBar: true})
		i := slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == 5 })
		if got := places[i].Reason(units.US); got != "both pairs would be moved; "+want.text {
			t.Errorf("instant center at %v, %v in:\n got %s\nwant %s", want.x, want.z, got, want.text)
		}
	}
	c, table := byHand(t)
	table.Combinations[4].Length[car.Lower] = table.Combinations[0].Length[car.Lower]
	for index, want := range map[int]string{0: "the present holes; no turns; ", 4: "4.00 turns on the upper bars, none on the lower; "} {
		places := holes.Rank(table, c, 0, box, holes.Wishes{Order: holes.FewestTurns})
		i := slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == index })
		if got := places[i].Reason(units.US); !strings.HasPrefix(got, want) {
			t.Errorf("%d: %q does not begin with %q", index, got, want)
		}
	}
}

// Without a limit there is no wish to keep it.
func TestWishesOfATarget(t *testing.T) {
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
	for _, want := range []struct {
		wishes holes.Wishes
		rank   int
		text   string
	}{
		{holes.Wishes{}, 3, "inside the target; lower bars push 8,000 lb, 106 % of their limit; lower bars would carry 106.0 % of what they may in push; same distance as 2 others, least push decides"},
		{holes.Wishes{WithinLoad: true}, 8, "inside the target; lower bars would carry 106.0 % of what they may in push"},
	} {
		p := holes.Rank(table, c, 0, box, want.wishes)[want.rank-1]
		if got := p.Reason(units.US); p.Index != 1 || got != want.text {
			t.Errorf("place %d is %d: %s", want.rank, p.Index, got)
		}
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
			for _, s := range []units.System{units.US, units.SI} {
				if p.Reason(s) == "" {
					t.Fatalf("no reason for %+v", p)
				}
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

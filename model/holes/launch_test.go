package holes_test

import (
	"context"
	"errors"
	"math"
	"reflect"
	"runtime"
	"slices"
	"testing"
	"time"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/holes"
	"bowline/model/internal/cartest"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// preloaded is the reference car, with 36 combinations, and a setup with preload.
func preloaded(t testing.TB) *car.Car {
	t.Helper()
	c := readCar(t, "../../testdata/reference.toml").Clone()
	c.Setups = append(c.Setups, car.Setup{Name: "preloaded", Holes: c.Setups[0].Holes, Turns: car.Turns{UpperRight: -1.5}})
	return c
}

func launched(t testing.TB, table *holes.Table, c *car.Car, setup int, o holes.LaunchOptions) *holes.Launches {
	t.Helper()
	l, err := holes.LaunchAll(context.Background(), table, c, setup, o)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// What a combination does in its launch is what the launch of a car with these holes
// and turns does, run by itself, and what its bars carry is the envelope of that car.
func TestEveryLaunchIsThatOfItsCombination(t *testing.T) {
	lib, outcomes := carfile.Stock(), map[launch.Outcome]int{}
	for name, c := range map[string]*car.Car{"reference": preloaded(t), "saltgrass": thinned(t)} {
		table := search(t, c, holes.Options{})
		for setup := range c.Setups {
			all := launched(t, table, c, setup, holes.LaunchOptions{})
			if !all.Complete() || all.Car != c || all.Turns != c.Setups[setup].Turns || len(all.List) != len(table.Combinations) {
				t.Fatalf("%s: %d of %d are launched", name, all.Done, all.Total)
			}
			for i := range table.Combinations {
				combination, got := &table.Combinations[i], &all.List[i]
				if combination.Refused {
					if *got != (holes.Launch{}) {
						t.Errorf("%s %s cannot be used, and is launched: %+v", name, combination.Holes, got)
					}
					continue
				}
				alone := one(c, combination.Holes)
				alone.Setups[0].Turns = c.Setups[setup].Turns
				r, err := launch.Run(context.Background(), alone, 0, lib, launch.Options{})
				if err != nil {
					t.Fatal(err)
				}
				a, err := analysis.Run(context.Background(), alone, lib, analysis.Options{Steps: table.Travels})
				if err != nil {
					t.Fatal(err)
				}
				e := a.Envelope(r)
				outcomes[r.Outcome]++
				want := holes.Launch{Done: true, Outcome: r.Outcome, SixtyFeet: r.Elapsed, Worst: e.Worst(), Unevenness: r.Unevenness(), Lift: r.Lift.Height}
				if *got != want {
					t.Errorf("%s %s:\n got %+v\nwant %+v", name, combination.Holes, *got, want)
				}
			}
		}
	}
	if outcomes[launch.Finished] < 10 || outcomes[launch.WentOver] < 10 {
		t.Errorf("they are one-sided: %v", outcomes)
	}
}

// thinned is the car with the largest brackets with fewer holes, one of which cannot be
// used.
func thinned(t testing.TB) *car.Car {
	c := saltgrass(t).Clone()
	c.Setups = c.Setups[:1]
	c.Setups[0].Holes = car.Holes{}
	for _, row := range car.Rows {
		list := row.In(c)
		*list = (*list)[2:4]
	}
	upper := c.Housing.Upper[0]
	upper.Y += c.Tires.RearRadius
	c.Chassis.Upper = append(c.Chassis.Upper, upper)
	return c
}

// With any number of workers the launches are the same.
func TestAnyNumberOfWorkersLaunchesTheSame(t *testing.T) {
	c := thinned(t)
	table := search(t, c, holes.Options{})
	want := launched(t, table, c, 0, holes.LaunchOptions{Workers: 1})
	for _, workers := range []int{0, 3, 1000} {
		if got := launched(t, table, c, 0, holes.LaunchOptions{Workers: workers}); !reflect.DeepEqual(got, want) {
			t.Errorf("%d workers find other launches", workers)
		}
	}
}

// Launches come in the order asked for; what is handed over meanwhile does not change
// any more and is part of what comes in the end.
func TestLaunchesComeInOrder(t *testing.T) {
	c := thinned(t)
	table := search(t, c, holes.Options{})
	var order []int
	usable := 0
	for _, p := range holes.Rank(table, c, 0, holes.TargetOf(c), holes.Wishes{}) {
		order = append(order, p.Index)
		if p.Combination().Usable() {
			usable++
		}
	}
	var parts, copies []*holes.Launches
	const workers = 2
	all := launched(t, table, c, 0, holes.LaunchOptions{Order: order, Workers: workers, Partial: func(l *holes.Launches) {
		kept := *l
		kept.List = slices.Clone(l.List)
		parts, copies = append(parts, l), append(copies, &kept)
	}})
	if len(parts) != usable || all.Total != usable {
		t.Fatalf("told %d times of %d launches", len(parts), usable)
	}
	for i, l := range parts {
		if !reflect.DeepEqual(l, copies[i]) {
			t.Fatalf("part %d has changed", i)
		}
		done := 0
		for place, index := range order {
			if !l.List[index].Done {
				continue
			}
			done++
			if l.List[index] != all.List[index] {
				t.Errorf("part %d has another launch of %d", i, index)
			}
			// Each worker may be at one more than the first that is missing.
			if place >= i+workers {
				t.Errorf("part %d has place %d", i, place)
			}
		}
		if done != i+1 || l.Done != done || l.Total != usable || l.Complete() != (done == usable) {
			t.Errorf("part %d: %d are launched, it says %d of %d", i, done, l.Done, l.Total)
		}
	}
}

// Launching ends with its context, keeps what it has, and goes on with what is missing.
func TestLaunchingStopsAndGoesOn(t *testing.T) {
	c := thinned(t)
	table := search(t, c, holes.Options{})
	before := runtime.NumGoroutine()
	ctx, cancel := context.WithCancel(context.Background())
	part, err := holes.LaunchAll(ctx, table, c, 0, holes.LaunchOptions{Workers: 2, Partial: func(l *holes.Launches) {
		if l.Done == 5 {
			cancel()
		}
	}})
	if !errors.Is(err, context.Canceled) || part.Done < 5 || part.Done > 7 || part.Complete() {
		t.Fatalf("stopped with %d launches: %v", part.Done, err)
	}
	for range 100 {
		if runtime.NumGoroutine() <= before {
			break
		}
		time.Sleep(time.Millisecond)
	}
	if n := runtime.NumGoroutine(); n > before {
		t.Errorf("%d goroutines before, %d after", before, n)
	}
	told := 0
	all := launched(t, table, c, 0, holes.LaunchOptions{Known: part, Partial: func(*holes.Launches) { told++ }})
	if want := launched(t, table, c, 0, holes.LaunchOptions{}); !reflect.DeepEqual(all, want) || told != all.Total-part.Done {
		t.Errorf("gone on with, %d are launched where %d are missing", told, all.Total-part.Done)
	}
	if again := launched(t, table, c, 0, holes.LaunchOptions{Known: all}); !reflect.DeepEqual(again, all) {
		t.Error("with nothing missing something changes")
	}
}

// What a launch does not come to is told apart from what has not been launched.
func TestLaunchesThatStopEarly(t *testing.T) {
	c := thinned(t)
	c.Launch.Inertia.Roll = 1e-4
	table := search(t, c, holes.Options{Travels: 3})
	all := launched(t, table, c, 0, holes.LaunchOptions{})
	table = table.With(all)
	for _, p := range holes.Rank(table, c, 0, holes.TargetOf(c), holes.Wishes{Order: holes.Quickest}) {
		if !p.Combination().Usable() {
			continue
		}
		l := p.Launch()
		if l == nil || l.Outcome != launch.TooStiff || l.Finished() || l.Whole() || p.Awaited() {
			t.Fatalf("%s: %+v", p.Holes(), l)
		}
		if r := p.Reasons(); !slices.Contains(r, holes.Reason{Kind: holes.LaunchEnded, Outcome: launch.TooStiff, Part: l.Fastest}) {
			t.Errorf("%s: %+v", p.Holes(), r)
		}
		for _, key := range launchKeys {
			if text := columnOf(t, key).Text(&p, units.US); text != "–" {
				t.Errorf("%s of a launch that is none: %q", key, text)
			}
		}
	}
}

// launchKeys are the columns that are of the launch.
var launchKeys = []string{"sixty_ft", "envelope_share", "rear_apart", "front_lift"}

// byHandLaunched is the table by hand with made-up launches: 1 has not been launched
// yet, 4 goes over and 7 runs out of time.
func byHandLaunched(t *testing.T) (*car.Car, *holes.Table) {
	c, table := byHand(t)
	of := func(seconds, share, apart, lift float64) holes.Launch {
		source := analysis.FromLaunch
		if share < 0.7 {
			source = analysis.FromHit
		}
		return holes.Launch{Done: true, SixtyFeet: seconds, Unevenness: apart, Lift: lift * inch,
			Worst: analysis.Demand{Bar: launch.LowerRight, Way: column.Push, Source: source, Share: share}}
	}
	list := make([]holes.Launch, len(table.Combinations))
	list[0] = of(1.3, 0.9, 0.05, 4)
	list[2] = of(1.25, 1.1, 0.02, 9)
	list[3] = of(1.25, 0.6, 0.20, 0)
	list[4] = holes.Launch{Done: true, Outcome: launch.WentOver}
	list[5] = of(1.4, 0.6, 0.10, 0)
	list[6] = of(1.2, 0.8, 0.08, 13)
	list[7] = of(0, 1.3, 0.30, 0)
	list[7].Outcome = launch.TimeUp
	return c, table.With(&holes.Launches{Car: c, List: list, Done: 7, Total: 8})
}

// What is not known is last in its class, by nearness to the target.
func TestOrdersOfLaunchesByHand(t *testing.T) {
	c, table := byHandLaunched(t)
	limited := box
	limited.LiftLimit = 8 * inch
	for _, want := range []struct {
		name   string
		wishes holes.Wishes
		order  []int
	}{
		{"least time", holes.Wishes{Order: holes.Quickest}, []int{6, 2, 3, 0, 5, 1, 4, 7, 8, 9, 10, 11}},
		{"least share", holes.Wishes{Order: holes.LeastEnvelope}, []int{5, 3, 6, 0, 2, 7, 1, 4, 8, 9, 10, 11}},
		{"most even", holes.Wishes{Order: holes.MostEven}, []int{2, 0, 6, 5, 3, 7, 1, 4, 8, 9, 10, 11}},
		{"least lift", holes.Wishes{Order: holes.LeastLift}, []int{5, 3, 7, 0, 2, 6, 1, 4, 8, 9, 10, 11}},
		{"least time within the lift", holes.Wishes{Order: holes.Quickest, WithinLift: true}, []int{3, 0, 5, 7, 6, 2, 1, 4, 8, 9, 10, 11}},
		{"least time within the load", holes.Wishes{Order: holes.Quickest, WithinLoad: true}, []int{6, 3, 0, 5, 1, 4, 2, 7, 8, 9, 10, 11}},
		{"nearest", holes.Wishes{}, []int{1, 2, 0, 5, 3, 4, 7, 6, 8, 9, 10, 11}},
	} {
		places := holes.Rank(table, c, 0, limited, want.wishes)
		if got := indices(places); !slices.Equal(got, want.order) {
			t.Errorf("%s: %v, want %v", want.name, got, want.order)
		}
		for _, p := range places {
			tie := p.Others > 0
			if unknown := want.wishes.Order.NeedsLaunches() && (p.Index == 1 || p.Index == 4 || p.Index == 7 && want.wishes.Order == holes.Quickest); unknown && tie {
				t.Errorf("%s: place %d is not known, and ties with %d", want.name, p.Rank, p.Others)
			}
		}
	}
	without := table.With(nil)
	if got, want := indices(holes.Rank(without, c, 0, box, holes.Wishes{Order: holes.Quickest})), []int{1, 2, 0, 5, 3, 4, 7, 6, 8, 9, 10, 11}; !slices.Equal(got, want) {
		t.Errorf("without launches: %v, want %v", got, want)
	}
}

func TestReasonsOfLaunchesByHand(t *testing.T) {
	c, table := byHandLaunched(t)
	limited := box
	limited.LiftLimit = 8 * inch
	over := holes.Reason{Kind: holes.LiftOver, Value: 9 * inch, Limit: 8 * inch}
	demand := func(i int) analysis.Demand { return table.Launches.List[i].Worst }
	for _, want := range []struct {
		index  int
		wishes holes.Wishes
		first  []holes.Reason // what is said first, but for that they are in use
		all    []holes.Reason // and what is said as well
	}{
		{2, holes.Wishes{Order: holes.Quickest}, []holes.Reason{{Kind: holes.SixtyFeet, Value: 1.25}, over, {Kind: holes.TargetMet}},
			[]holes.Reason{{Kind: holes.LaunchOverload, Demand: demand(2)}, {Kind: holes.Tie, Order: holes.Quickest, Others: 1, Decider: holes.ByDistance}}},
		{3, holes.Wishes{Order: holes.LeastEnvelope}, []holes.Reason{{Kind: holes.MostDemand, Demand: demand(3)}}, nil},
		{5, holes.Wishes{Order: holes.MostEven}, []holes.Reason{{Kind: holes.RearApart, Value: 0.1}}, nil},
		{5, holes.Wishes{Order: holes.LeastLift}, []holes.Reason{{Kind: holes.FrontLift}}, []holes.Reason{{Kind: holes.Tie, Order: holes.LeastLift, Others: 2, Decider: holes.ByDistance}}},
		{1, holes.Wishes{Order: holes.Quickest}, []holes.Reason{{Kind: holes.NotLaunched}, {Kind: holes.TargetMet}}, nil},
		{1, holes.Wishes{WithinLift: true}, []holes.Reason{{Kind: holes.NotLaunched}}, nil},
		{4, holes.Wishes{Order: holes.MostEven}, []holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.WentOver}}, nil},
		{4, holes.Wishes{}, []holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.WentOver}}, nil},
		{7, holes.Wishes{Order: holes.Quickest}, []holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.TimeUp}}, []holes.Reason{{Kind: holes.LaunchOverload, Demand: demand(7)}}},
		{2, holes.Wishes{WithinLift: true}, []holes.Reason{over, {Kind: holes.TargetMet}}, nil},
	} {
		places := holes.Rank(table, c, 0, limited, want.wishes)
		got := places[slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == want.index })].Reasons()
		if len(got) < len(want.first) {
			t.Errorf("%d %+v: %+v", want.index, want.wishes, got)
			continue
		}
		wantReasons(t, "what is said first", got[:len(want.first)], want.first)
		for _, r := range want.all {
			if !slices.Contains(got, r) {
				t.Errorf("%d %+v: %+v lacks %+v", want.index, want.wishes, got, r)
			}
		}
	}
}

// What has no value sorts last either way, is "not yet" while it is to come, and meets
// no condition.
func TestColumnsOfLaunchesByHand(t *testing.T) {
	c, table := byHandLaunched(t)
	places := holes.Rank(table, c, 0, box, holes.Wishes{})
	shown := map[int][]string{
		0: {"1.300 s", "90.0 %", "5.0 %", "4.00 in"},
		1: {"not yet", "not yet", "not yet", "not yet"},
		4: {"–", "–", "–", "–"},
		7: {"–", "130.0 %", "30.0 %", "0.00 in"},
		8: {"–", "–", "–", "–"},
	}
	for i := range places {
		for k, key := range launchKeys {
			if want, ok := shown[places[i].Index]; ok {
				if got := columnOf(t, key).Text(&places[i], units.US); got != want[k] {
					t.Errorf("%d %s: %q, want %q", places[i].Index, key, got, want[k])
				}
			}
			if !columnOf(t, key).OfLaunch {
				t.Errorf("%s is not of the launch", key)
			}
		}
	}
	for _, falling := range []bool{false, true} {
		holes.Sort(places, columnOf(t, "sixty_ft"), falling)
		known := indices(places)[:5]
		if slices.Sort(known); !slices.Equal(known, []int{0, 2, 3, 5, 6}) {
			t.Errorf("first are %v", known)
		}
	}
	column := columnOf(t, "sixty_ft")
	condition, err := column.Parse("< 1.3", units.US)
	if err != nil {
		t.Fatal(err)
	}
	met := indices(holes.Filter(places, []holes.ColumnCondition{{Column: column, Condition: condition}}))
	if slices.Sort(met); !slices.Equal(met, []int{2, 3, 6}) {
		t.Errorf("less than 1.3 s: %v", met)
	}
}

func TestWishesWithoutLaunches(t *testing.T) {
	for _, o := range holes.Orders {
		w := holes.Wishes{Order: o, WithinLoad: true, WithinLift: true}
		want := holes.Wishes{Order: o, WithinLoad: true}
		if o.NeedsLaunches() {
			want.Order = holes.NearestTarget
		}
		if got := w.OfSideView(); got != want {
			t.Errorf("%v: %+v", o, got)
		}
		if w.Of(holes.Target{}).WithinLift || !w.Of(holes.Target{LiftLimit: 0.1}).WithinLift {
			t.Error("a limit of lift is wished for where there is none, or not where there is")
		}
	}
}

// So it is with any car; no value is no number, and a time is there for those that came
// to 60 ft and for no others.
func TestLaunchesOfAnyCar(t *testing.T) {
	lib := carfile.Stock()
	cars := rapid.Custom(func(t *rapid.T) *car.Car {
		c := cartest.Random(t, lib)
		c.Setups = c.Setups[:1]
		c.Setups[0].Holes = car.Holes{}
		for _, row := range car.Rows {
			list := row.In(c)
			*list = (*list)[:1:1]
		}
		c.Chassis.Lower = append(c.Chassis.Lower, r2.Add(c.Chassis.Lower[0], r2.Vec{Y: -0.5 * inch}))
		return c
	})
	outcomes := map[launch.Outcome]int{}
	for seed := range 12 {
		c := cars.Example(seed)
		table := search(t, c, holes.Options{})
		all := launched(t, table, c, 0, holes.LaunchOptions{})
		for i := range table.Combinations {
			combination, l := &table.Combinations[i], &all.List[i]
			if combination.Refused {
				continue
			}
			outcomes[l.Outcome]++
			alone := one(c, combination.Holes)
			alone.Setups[0].Turns = c.Setups[0].Turns
			r, err := launch.Run(context.Background(), alone, 0, lib, launch.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if l.Outcome != r.Outcome || l.SixtyFeet != r.Elapsed || l.Finished() != (l.SixtyFeet > 0) {
				t.Errorf("car %d, %s: %+v, by itself %v in %v s", seed, combination.Holes, l, r.Outcome, r.Elapsed)
			}
			for _, x := range []float64{l.SixtyFeet, l.Worst.Share, l.Worst.Force, l.Unevenness, l.Lift} {
				if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
					t.Errorf("car %d, %s: %+v", seed, combination.Holes, l)
				}
			}
			if l.Whole() && l.Worst.Share < combination.Highest()-1e-12 {
				t.Errorf("car %d, %s: the envelope is at %v, the side view at %v", seed, combination.Holes, l.Worst.Share, combination.Highest())
			}
		}
	}
	if len(outcomes) < 2 {
		t.Errorf("they are one-sided: %v", outcomes)
	}
}

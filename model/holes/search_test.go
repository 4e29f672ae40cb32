package holes_test

import (
	"context"
	"errors"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

func search(t testing.TB, c *car.Car, o holes.Options) *holes.Table {
	t.Helper()
	table, err := holes.Search(context.Background(), c, carfile.Stock(), o)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestEveryCombinationStandsAtItsIndex(t *testing.T) {
	c := saltgrass(t)
	table := search(t, c, holes.Options{Travels: 3})
	if n := len(table.Combinations); n != 8*8*6*6 {
		t.Fatalf("%d combinations", n)
	}
	if table.Car != c || table.Travels != 3 {
		t.Errorf("table of %d travels", table.Travels)
	}
	seen := map[car.Holes]bool{}
	for i := range table.Combinations {
		h := table.Combinations[i].Holes
		seen[h] = true
		if table.Index(h) != i {
			t.Fatalf("%+v stands at %d, its index is %d", h, i, table.Index(h))
		}
	}
	if len(seen) != len(table.Combinations) {
		t.Errorf("only %d are different", len(seen))
	}
}

func TestAnyNumberOfWorkersFindsTheSame(t *testing.T) {
	c := saltgrass(t)
	want := search(t, c, holes.Options{Workers: 1})
	for _, workers := range []int{0, 2, 7, 1000} {
		if got := search(t, c, holes.Options{Workers: workers, Travels: holes.DefaultTravels}); !reflect.DeepEqual(got, want) {
			t.Errorf("%d workers find other values", workers)
		}
	}
}

func TestProgressRisesToTheTotal(t *testing.T) {
	last, calls := 0, 0
	table := search(t, saltgrass(t), holes.Options{Workers: 5, Travels: 3, Progress: func(done, total int) {
		calls++
		if done <= last || done > total || total != 2304 {
			t.Errorf("%d of %d after %d", done, total, last)
		}
		last = done
	}})
	if last != len(table.Combinations) || calls < 10 {
		t.Errorf("%d calls, the last at %d", calls, last)
	}
}

// wide is a car with 200,000 combinations.
func wide(t testing.TB) *car.Car {
	c := saltgrass(t).Clone()
	for _, row := range []struct {
		row car.Row
		n   int
	}{{car.ChassisUpper, 40}, {car.ChassisLower, 50}, {car.HousingUpper, 10}, {car.HousingLower, 10}} {
		list := row.row.In(c)
		first := (*list)[0]
		*list = nil
		for i := range row.n {
			*list = append(*list, r2.Vec{X: first.X, Y: first.Y - 0.001*float64(i)})
		}
	}
	return c
}

// A search ends with its context, long before it is done, and leaves no
// goroutine behind.
func TestSearchStopsWithItsContext(t *testing.T) {
	before := runtime.NumGoroutine()
	ctx, cancel := context.WithCancel(context.Background())
	most := 0
	_, err := holes.Search(ctx, wide(t), carfile.Stock(), holes.Options{Workers: 4, Progress: func(done, total int) {
		most = done
		cancel()
	}})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
	// Each worker may end the batch it has.
	if most == 0 || most > 1000 {
		t.Errorf("%d combinations were done", most)
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
	table, err := holes.Search(ctx, saltgrass(t), carfile.Stock(), holes.Options{})
	if table != nil || !errors.Is(err, context.Canceled) {
		t.Errorf("a context done before: %v", err)
	}
}

func TestSearchRefusals(t *testing.T) {
	c := wide(t)
	c.Chassis.Lower = append(c.Chassis.Lower, c.Chassis.Lower...)
	var many *holes.TooMany
	if _, err := holes.Search(context.Background(), c, carfile.Stock(), holes.Options{}); !errors.As(err, &many) ||
		err.Error() != "the brackets offer 400000 choices of holes, and a search takes 250000; take holes out of the longest rows" {
		t.Errorf("too many: %v", err)
	}
	if _, err := holes.Search(context.Background(), saltgrass(t), carfile.Stock(), holes.Options{Travels: 2}); err == nil || !strings.Contains(err.Error(), "at least 3") {
		t.Errorf("two travels: %v", err)
	}
}

// Holes that Validate would refuse are told apart, with its words.
func TestRefusedHolesSayWhy(t *testing.T) {
	c := saltgrass(t).Clone()
	axle := c.Tires.RearRadius
	c.Chassis.Lower[7] = r2.Add(c.Housing.Lower[0], r2.Vec{Y: axle})
	c.Chassis.Upper[0] = r2.Vec{X: c.Housing.Upper[0].X + 0.06, Y: axle + c.Housing.Upper[0].Y}
	table := search(t, c, holes.Options{Travels: 3})
	short := table.Combinations[table.Index(car.Holes{ChassisUpper: 3, ChassisLower: 7})]
	if want := "The bar has no length: its chassis hole lies on its housing hole."; !short.Refused || table.Refusal(short.Holes, units.US) != want {
		t.Errorf("no length: %q", table.Refusal(short.Holes, units.US))
	}
	far := table.Combinations[table.Index(car.Holes{})]
	for system, unit := range map[units.System]string{units.US: " in", units.SI: " mm"} {
		text := table.Refusal(far.Holes, system)
		if !far.Refused || !strings.HasPrefix(text, "The bars do not reach the rear droop of ") || !strings.Contains(text, unit) {
			t.Errorf("out of reach: %q", text)
		}
	}
	usable := table.Combinations[table.Index(c.Setups[0].Holes)]
	if !usable.Usable() || table.Refusal(usable.Holes, units.US) != "" {
		t.Errorf("the car's own holes: %q", table.Refusal(usable.Holes, units.US))
	}
}

package launch

import (
	"context"
	"testing"

	"bowline/model/carfile"

	"gonum.org/v1/gonum/spatial/r3"
)

// A launch of 1.5 s, from the car to the whole result: less than 6 ms on one
// core.
func BenchmarkLaunch(b *testing.B) {
	c := reference(b)
	c.Tires.Grip = 1.8
	b.ReportAllocs()
	for b.Loop() {
		r, err := Run(context.Background(), c, 0, carfile.Stock(), Options{Limit: 1.5, Distance: 1000})
		if err != nil || r.Outcome != TimeUp {
			b.Fatal(r.Outcome, err)
		}
	}
}

// The loop over time allocates nothing: a launch of 1,800 more steps allocates as
// often, but for the storage that a collection of garbage takes from pools.
func TestLaunchAllocatesNothingAsItRuns(t *testing.T) {
	p := parameters(t, reference(t))
	p.WheelieBar = WheelieBar{Wheel: r3.Vec{X: -1.4, Z: 0.08}, Rate: 3e5, Damping: 2e3}
	allocations := func(limit float64) float64 {
		return testing.AllocsPerRun(3, func() {
			if r := simulate(t, p, Options{Limit: limit, Distance: 1000}); r.Outcome != TimeUp {
				t.Fatal(r.Outcome)
			}
		})
	}
	if short, long := allocations(0.1), allocations(1); long > short+10 {
		t.Errorf("%v allocations in 0.1 s, %v in a second", short, long)
	}
}

// One evaluation of all forces and rates, of which a step takes four.
func BenchmarkEvaluate(b *testing.B) {
	m := newModel(parameters(b, reference(b)))
	s := upset(m)
	var i instant
	var d state
	b.ReportAllocs()
	for b.Loop() {
		m.evaluate(0.01, &s, &i)
		m.rates(&s, &i, &d)
	}
}

// The car at rest with its preload, and what a turn of each bar does.
func BenchmarkRest(b *testing.B) {
	c := reference(b)
	c.Setups[0].Turns.UpperRight = -1
	p := parameters(b, c)
	for b.Loop() {
		m := newModel(p)
		var i instant
		s, ok := m.rest(&i)
		if !ok {
			b.Fatal("no rest")
		}
		m.perTurn(&s)
	}
}

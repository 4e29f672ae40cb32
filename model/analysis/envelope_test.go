package analysis_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/statics"
)

// example reads a car that comes with the program.
func example(t *testing.T, name string) *car.Car {
	t.Helper()
	text, err := assets.Cars.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	f, err := carfile.Decode(name, text, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// both analyzes and launches the first setup of a car.
func both(t *testing.T, c *car.Car) (*analysis.Result, *launch.Result) {
	t.Helper()
	r, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	l, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r, l
}

// sought is the largest share that stations and the history of a launch hold of a bar
// in a direction, looked through one by one.
func sought(r *analysis.Result, l *launch.Result, bar launch.RodID, way column.Direction) float64 {
	allowable := r.Limit(bar.Pair(), way).Allowable
	sign := map[column.Direction]float64{column.Push: -1, column.Pull: 1}[way]
	most := 0.0
	for i := range r.Travel {
		for _, load := range []*statics.Load{&r.Travel[i].Loads.Hooked, &r.Travel[i].Loads.Hit} {
			if load.Balanced {
				most = max(most, sign*analysis.Tension(bar.Pair(), load)/allowable)
			}
		}
	}
	if l != nil {
		for _, tension := range l.Tension[bar] {
			most = max(most, sign*tension/allowable)
		}
	}
	return most
}

// The envelope is the greatest of all stations and of the launch's history. Between
// two outputs of the history a bar can reach a little more.
func TestEnvelopeIsTheMostOfAll(t *testing.T) {
	const between = 2e-3
	launched := 0
	var cars []*car.Car
	for _, name := range assets.CarNames() {
		held, whole := example(t, name), example(t, name)
		whole.Body.Name += ", all of its torque at once"
		whole.Launch.Engine.Ramp = nil
		cars = append(cars, held, whole)
	}
	for _, c := range cars {
		name := c.Body.Name
		r, l := both(t, c)
		e, alone := r.Envelope(l), r.Envelope(nil)
		worst := 0.0
		for _, bar := range launch.Bars {
			for _, way := range column.Directions {
				d := e[bar][way]
				if want := sought(r, l, bar, way); d.Share < want*(1-1e-12) || d.Share > want*(1+between)+1e-9 {
					t.Errorf("%s: %s, %s: share %v, sought %v", name, bar, way, d.Share, want)
				}
				if want := sought(r, nil, bar, way); math.Abs(alone[bar][way].Share-want) > 1e-12 || alone[bar][way].Source == analysis.FromLaunch {
					t.Errorf("%s: %s, %s: %+v without a launch, sought %v", name, bar, way, alone[bar][way], want)
				}
				if d.Bar != bar || d.Way != way || d.Force > 0 && math.Abs(d.Force/r.Limit(bar.Pair(), way).Allowable-d.Share) > 1e-12 {
					t.Errorf("%s: %+v", name, d)
				}
				if d.Source == analysis.FromLaunch {
					launched++
					i := int(d.Time/l.Options.Output + 0.5)
					if held := math.Abs(l.Tension[bar][min(i, len(l.Time)-1)]); math.Abs(held/d.Force-1) > 0.01 {
						t.Errorf("%s: %s at %v s carries %v N, want about %v", name, bar, d.Time, held, d.Force)
					}
				}
				worst = max(worst, d.Share)
			}
		}
		if got := e.Worst(); got.Share != worst || got != e.Of(got.Bar) {
			t.Errorf("%s: the worst is %+v, want a share of %v", name, got, worst)
		}
	}
	if launched == 0 {
		t.Error("no launch asks more than the side view")
	}
}

// Ten turns of preload that shorten the upper right bar of the demo car take the lower right
// bar over its limit in the launch, of which the side view knows nothing.
func TestPreloadIsInTheEnvelope(t *testing.T) {
	c := example(t, assets.CarNames()[0])
	c.Setups[0].Turns.UpperRight = -10
	r, l := both(t, c)
	e, alone := r.Envelope(l), r.Envelope(nil)
	d := e.Worst()
	if d.Bar != launch.LowerRight || d.Way != column.Push || d.Source != analysis.FromLaunch || d.Share <= 1 {
		t.Errorf("the worst is %+v", d)
	}
	if side := alone.Worst(); side.Share >= 1 {
		t.Errorf("the side view alone finds %+v", side)
	}
	// What is over its limit is warned of, each bar by itself where the launch asks it.
	over := func(l *launch.Result) (list []analysis.Demand) {
		warnings := r.Warnings(l)
		if !slices.IsSortedFunc(warnings, func(a, b analysis.Warning) int { return int(a.Kind - b.Kind) }) || warnings[0].Kind != analysis.BeyondThread {
			t.Errorf("the warnings are out of order: %+v", warnings)
		}
		for _, w := range warnings {
			if w.Kind == analysis.OverCapacity {
				list = append(list, w.Demand)
			}
		}
		return list
	}
	if warned := over(nil); len(warned) != 0 {
		t.Errorf("the side view alone warns of %+v", warned)
	}
	want := 0
	for _, bar := range launch.Bars {
		for _, way := range column.Directions {
			if d := e[bar][way]; d.Share > 1 {
				want++
				if !slices.Contains(over(l), d) {
					t.Errorf("nothing warns of %+v", d)
				}
			}
		}
	}
	if got := len(over(l)); got != want {
		t.Errorf("%d warnings, want %d", got, want)
	}
}

// A launch mirrored left to right asks of the left what the other asks of the right.
func TestEnvelopeOfAMirroredLaunch(t *testing.T) {
	r, l := both(t, example(t, assets.CarNames()[0]))
	m := *l
	for _, bar := range launch.Bars {
		m.Peaks[bar] = l.Peaks[bar^1]
	}
	a, b := r.Envelope(l), r.Envelope(&m)
	for _, bar := range launch.Bars {
		want := a[bar^1]
		for way := range want {
			want[way].Bar = bar
		}
		if b[bar] != want {
			t.Errorf("%s: %+v, want %+v", bar, b[bar], want)
		}
	}
}

package analysis_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/internal/cartest"

	"pgregory.net/rapid"
)

// No travel goes beyond the ends told, and some reach them.
func TestRangesOverTheTravel(t *testing.T) {
	library := carfile.Stock()
	rapid.Check(t, func(t *rapid.T) {
		r, err := analysis.Run(context.Background(), cartest.Random(t, library), library, analysis.Options{Steps: 5})
		if err != nil {
			t.Fatal(err)
		}
		within := func(what string, least, greatest float64, values []float64) {
			var low, high bool
			for _, x := range values {
				if x < least || x > greatest {
					t.Fatalf("%s %v is beyond %v to %v", what, x, least, greatest)
				}
				low, high = low || x == least, high || x == greatest
			}
			if !low || !high {
				t.Fatalf("%s reaches no end of %v to %v: %v", what, least, greatest, values)
			}
		}
		var turns, squats []float64
		for i := range r.Travel {
			turns = append(turns, r.Travel[i].Pose.Turn)
			if r.Travel[i].HasAntiSquat {
				squats = append(squats, r.Travel[i].AntiSquat)
			}
		}
		least, greatest := r.PinionRange()
		within("turn", least, greatest, turns)
		if least > 0 || greatest < 0 {
			t.Fatalf("turns of %v to %v leave out ride height", least, greatest)
		}
		least, greatest, ok := r.AntiSquatRange()
		if ok != (len(squats) > 0) {
			t.Fatalf("%d travels have an anti-squat, told %v", len(squats), ok)
		}
		if ok {
			within("anti-squat", least, greatest, squats)
		}
		for _, load := range analysis.Cases {
			most := r.Most(load)
			for _, pair := range car.Pairs {
				pushes, pulls := []float64{0}, []float64{0}
				for i := range r.Travel {
					tension := analysis.Tension(pair, load.Of(&r.Travel[i].Loads))
					pushes, pulls = append(pushes, math.Max(-tension, 0)), append(pulls, math.Max(tension, 0))
				}
				for way, values := range map[column.Direction][]float64{column.Push: pushes, column.Pull: pulls} {
					use := most[pair][way]
					within(pair.String()+" "+way.String(), 0, use.Force, append(values, 0))
					if use.Force > 0 && (use.Case != load || math.Abs(use.Share*r.Limit(pair, way).Allowable-use.Force) > 1e-9*use.Force) {
						t.Fatalf("%s %s: %+v", pair, way, use)
					}
				}
			}
		}
	})
}

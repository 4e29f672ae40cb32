package analysis

import (
	"math"

	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
)

// Even is how to bring the loads of the left and the right rear tire together at rest
// by turning one bar.
type Even struct {
	Apart  float64      // left load less right load [N]
	Bar    launch.RodID // that takes the fewest flats, of those whose threads have them
	Turns  float64      // of it, beyond those it has; longer above zero [1]
	Thread bool         // its thread has them
	Found  bool         // a bar changes how the loads differ; else Bar, Turns and Thread are zero
}

// turned lists the bars in the order in which they are turned for preload: the upper
// right one first. Common practice.
var turned = [...]launch.RodID{launch.UpperRight, launch.UpperLeft, launch.LowerRight, launch.LowerLeft}

// EvenRear returns which bar brings the left and the right rear tire of a launch of
// the same car and setup together at rest:
//
//	turns = −(N_left − N_right) / d(N_left − N_right)/d(turns)
//
// with the derivative at the preload as it is, so the more turns it takes the less
// exact they are.
func (r *Result) EvenRear(l *launch.Result) Even {
	apart := func(s *launch.Static) float64 { return s.RearLoad[launch.Left] - s.RearLoad[launch.Right] }
	best := Even{Apart: apart(&l.Static)}
	flats := func(turns float64) float64 { return math.Round(math.Abs(turns) * adjuster.Flats) }
	for _, bar := range turned {
		perTurn := apart(&l.PerTurn[bar])
		if perTurn == 0 {
			continue
		}
		turns := -best.Apart / perTurn
		dialed := *car.BarTurns[bar].Of(&r.Car.Setups[r.Options.Setup].Turns)
		thread := adjuster.RoomOf(r.Car, r.Options.Setup, bar.Pair()).Allows(dialed + turns)
		better := thread && !best.Thread || thread == best.Thread && flats(turns) < flats(best.Turns)
		if !best.Found || better {
			best.Bar, best.Turns, best.Thread, best.Found = bar, turns, thread, true
		}
	}
	return best
}

// Package preload searches for the turns of the four bars that make the rear tires
// carry the most alike through the launch.
//
// How unlike left and right are is the unevenness of a launch, see
// launch.History.Unevenness. The driveshaft's torque lifts the right rear tire, with an
// engine that turns clockwise; preload in the bars can press it down again, and loads
// the bars for it.
//
// # What is searched
//
// A change of the four lengths is a sum of four: the two bars of the upper or of the
// lower pair alike, or as far opposite ways. Alike they turn the pinion and move the
// axle, which is another linkage rather than preload and is left alone but for the half
// of it that a single bar brings along. Opposite ways they leave pinion and axle where
// they are. Of these two it is the difference between upper and lower pair that moves
// load from one rear tire to the other; turned the same way they mostly steer the axle.
// So one number counts most, and a single bar can set it. The search covers, in whole
// flats,
//
//   - each bar alone, as preload is dialed by common practice, usually at the upper one
//     on the side that the driveshaft lifts: the right;
//   - either pair, left and right as far opposite ways;
//   - both pairs so.
//
// Holes, tubes and the turns of all other bars stay as the setup has them.
//
// # What may be found
//
// Turns that the threads have (adjuster.Room), and launches that end as that of the
// setup does or better, in which no bar is loaded beyond its limit, side view and
// launch taken together (analysis.Envelope), or not further beyond than by the setup
// as it stands.
//
// Of these the best has the least
//
//	cost = unevenness + 0.005 · bars turned + 0.001 · turns of all bars
//
// so that a bar is turned only where it takes off half a percent, and a turn a
// tenth. The prices are a convention of this program: what a launch's numbers are
// good for, and a mechanic's time. A single bar other than the usual one has to be
// better by the price of a turn.
package preload

import (
	"context"
	"fmt"
	"math"
	"runtime"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/stock"
)

const (
	// barPrice is what turning one more bar has to take off the unevenness [1].
	barPrice = 0.005
	// turnPrice is what one more turn has to [1].
	turnPrice = 0.001
)

// Kind is which bars a way turns.
type Kind int

// The kinds, the fewest bars first.
const (
	OneBar    Kind = iota // a single bar
	OnePair               // the bars of a pair opposite ways, which keeps pinion and axle in place
	BothPairs             // those of both pairs
)

// Kinds lists all kinds.
var Kinds = [...]Kind{OneBar, OnePair, BothPairs}

// State is a setup with some turns and its launch.
type State struct {
	Turns      car.Turns
	Unevenness float64
	Launch     *launch.Result
	Envelope   analysis.Envelope // what side view and launch ask of each bar
}

// Way is a choice of turns that makes the rear tires more alike.
type Way struct {
	Kind Kind
	State
	// Effect is what the turns do to pinion and axle at ride height, against the setup
	// as it stands.
	Effect adjuster.Effect
	// Stop is what keeps the rear tires from being more alike in this way.
	Stop Stop
}

// Stop is why a way ends where it does.
type Stop struct {
	Kind  StopKind
	Bar   launch.RodID
	Share float64 // of its limit that the bar would reach, with StoppedByLimit [1]
}

// StopKind is what ends a way.
type StopKind int

// What ends a way. One flat more would be better but for a thread or a limit.
const (
	NotStopped      StopKind = iota // one flat more or less is no better
	StoppedByThread                 // the thread of Bar is used up
	StoppedByLimit                  // Bar would be loaded beyond its limit, or further beyond
)

// Result is what a search has found. It never changes after Find returns; share it
// freely.
type Result struct {
	Car    *car.Car // the inputs, not to be changed
	Setup  int
	Before State // the setup as it stands
	// Ways are the best of each kind that is worth its turns, by Kind; of a setup with
	// turns that a thread does not have, the best of each kind with these bars turned
	// back to where their threads end.
	Ways []Way
	// Best is the index of the way with the least cost; −1 when none is worth its
	// turns. Stop is then what keeps a turn from being worth it.
	Best     int
	Stop     Stop
	Launches int // that the search has taken
}

// Chosen returns the best way; nil when none is worth its turns.
func (r *Result) Chosen() *Way {
	if r.Best < 0 {
		return nil
	}
	return &r.Ways[r.Best]
}

// Turn returns what a way turns a bar by from the setup as it stands, longer above
// zero [1].
func (r *Result) Turn(w *Way, bar launch.RodID) float64 {
	return *car.BarTurns[bar].Of(&w.Turns) - *car.BarTurns[bar].Of(&r.Before.Turns)
}

// Left returns how far the thread of a bar still lets it be turned with the turns of a
// state.
func (r *Result) Left(s *State, bar launch.RodID) adjuster.Room {
	room, turns := adjuster.RoomOf(r.Car, r.Setup, bar.Pair()), *car.BarTurns[bar].Of(&s.Turns)
	return adjuster.Room{
		Shorter: math.Max(0, room.Shorter+turns),
		Longer:  math.Max(0, room.Longer-turns),
		Well:    room.Well - turns,
	}
}

// NoLaunch is why a setup cannot be searched: it has no launch to be made even.
type NoLaunch struct {
	Outcome launch.Outcome
}

// Error implements error.
func (e *NoLaunch) Error() string {
	return fmt.Sprintf("there is no launch to make even: %s", e.Outcome)
}

// Options say how to search. The zero value does as Find says.
type Options struct {
	Workers  int                // launches at the same time; 0 is GOMAXPROCS
	Progress func(launches int) // called with the number of launches done so far, by one goroutine at a time; nil for nobody
}

// Find searches for the turns of a setup's bars that make the rear tires most alike
// through the launch. It finds the same for any number of workers. It fails with a
// *NoLaunch for a setup without a launch, as launch.Run and analysis.Run do, and when
// the context is done.
//
// It launches a coarse grid of turns of every kind first, no finer than a whole turn,
// and goes on from the best of each by ever smaller steps, down to a flat, as long as
// that helps (pattern search; Hooke and Jeeves, "Direct search" solution of numerical
// and statistical problems, Journal of the ACM 8, 1961). What it finds is the best of
// its neighbors a flat away, and the best of all where the cost has one valley.
func Find(ctx context.Context, c *car.Car, setup int, lib stock.Library, o Options) (*Result, error) {
	if o.Workers == 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	side, err := analysis.Run(ctx, c, lib, analysis.Options{Setup: setup})
	if err != nil {
		return nil, err
	}
	f := &finder{options: o, car: c, setup: setup, library: lib, side: side, known: map[flats]trial{}}
	before, err := f.state(ctx, c.Setups[setup].Turns)
	if err != nil {
		return nil, err
	}
	switch before.Launch.Outcome {
	case launch.Finished, launch.TimeUp, launch.WentOver:
	default:
		return nil, &NoLaunch{before.Launch.Outcome}
	}
	f.begin(before)
	if err := f.search(ctx); err != nil {
		return nil, err
	}
	return f.result(ctx)
}

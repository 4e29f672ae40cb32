package preload

import (
	"context"
	"math"
	"slices"

	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
)

// result collects the best of each kind.
func (f *finder) result(ctx context.Context) (*Result, error) {
	var beyond []flats
	for _, y := range f.families {
		for _, step := range y.steps() {
			beyond = append(beyond, y.best.plus(1, step))
		}
	}
	if err := f.tryAll(ctx, beyond); err != nil {
		return nil, err
	}
	r := &Result{Car: f.car, Setup: f.setup, Before: f.before, Best: -1, Launches: f.launches}
	// What it costs to leave the bars as they are, where their threads allow that.
	least := math.Inf(1)
	if f.start == f.before.Turns {
		least = f.before.Unevenness
	}
	stay := least
	for _, kind := range Kinds {
		y := f.bestOf(kind)
		turns := f.turns(y.best)
		if f.worth(y.best) >= stay || slices.ContainsFunc(r.Ways, func(w Way) bool { return w.Turns == turns }) {
			continue
		}
		w, err := f.way(ctx, kind, turns)
		if err != nil {
			return nil, err
		}
		w.Stop = f.stop(y)
		r.Ways = append(r.Ways, w)
		if cost := f.worth(y.best); cost < least {
			r.Best, least = len(r.Ways)-1, cost
		}
	}
	if r.Best < 0 {
		for _, y := range f.families {
			if r.Stop.Kind == NotStopped {
				r.Stop = f.stop(y)
			}
		}
	}
	return r, nil
}

// bestOf returns the family of a kind whose best costs least; of single bars the usual
// one, unless another one costs less by more than the price of a turn.
func (f *finder) bestOf(kind Kind) *family {
	var best *family
	lead := 0.0
	for _, y := range f.families {
		switch {
		case y.kind != kind:
		case best == nil:
			best = y
			if kind == OneBar {
				lead = turnPrice
			}
		case f.worth(y.best) < f.worth(best.best)-lead:
			best, lead = y, 0
		}
	}
	return best
}

// way returns a way with its launch and what it does to pinion and axle.
func (f *finder) way(ctx context.Context, kind Kind, turns car.Turns) (Way, error) {
	s, err := f.state(ctx, turns)
	if err != nil {
		return Way{}, err
	}
	change, err := adjuster.Plan(f.car, f.setup, f.car.Setups[f.setup].Holes, turns)
	if err != nil {
		return Way{}, err
	}
	return Way{Kind: kind, State: *s, Effect: change.Turned}, nil
}

// stop returns what keeps a family from going one flat further, where that would be
// more even by more than the price of turning.
func (f *finder) stop(y *family) Stop {
	gain := func(t *trial, k flats) float64 {
		_, turns := f.turned(f.turns(k))
		return t.unevenness + turnPrice*turns
	}
	here, ok := f.known[y.best]
	if !ok {
		return Stop{}
	}
	s, most := Stop{}, gain(&here, y.best)
	for _, step := range y.steps() {
		k := y.best.plus(1, step)
		t := f.known[k]
		if g := gain(&t, k); t.ends && g < most {
			if bar, lacks := f.lacksThread(k); lacks {
				s, most = Stop{Kind: StoppedByThread, Bar: bar}, g
			} else if bar, over := f.overloaded(&t); over {
				s, most = Stop{Kind: StoppedByLimit, Bar: bar, Share: t.shares[bar]}, g
			}
		}
	}
	return s
}

// turned returns how many bars turns move from the setup as it stands, and by how many
// turns in all.
func (f *finder) turned(t car.Turns) (bars int, turns float64) {
	for _, bar := range launch.Bars {
		if by := math.Abs(*car.BarTurns[bar].Of(&t) - *car.BarTurns[bar].Of(&f.before.Turns)); by > 0 {
			bars, turns = bars+1, turns+by
		}
	}
	return bars, turns
}

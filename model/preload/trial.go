package preload

import (
	"context"
	"math"
	"slices"
	"sync"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/stock"
)

// flats are what the bars are turned by from where the search starts, by RodID,
// longer above zero.
type flats [len(launch.Bars)]int

// plus returns a + n·b.
func (a flats) plus(n int, b flats) flats {
	for i := range a {
		a[i] += n * b[i]
	}
	return a
}

// trial is what a launch with some turns came to.
type trial struct {
	cost       float64
	unevenness float64
	shares     [len(launch.Bars)]float64 // of each bar's limit
	ends       bool                      // as the launch of the setup does, or better
}

// finder is a search under way.
type finder struct {
	options Options
	car     *car.Car
	setup   int
	library stock.Library
	side    *analysis.Result

	before State
	limits [len(launch.Bars)]float64 // share of each bar's limit that it may reach
	room   [len(launch.Bars)]adjuster.Room
	start  car.Turns // where flats are counted from: the setup's turns, within the threads

	families []*family
	known    map[flats]trial
	launches int
}

// begin notes where the search starts.
func (f *finder) begin(before *State) {
	f.before, f.start = *before, before.Turns
	for _, bar := range launch.Bars {
		f.limits[bar] = math.Max(1, before.Envelope.Of(bar).Share)
		f.room[bar] = adjuster.RoomOf(f.car, f.setup, bar.Pair())
		if turns := car.BarTurns[bar].Of(&f.start); !f.room[bar].Allows(*turns) {
			*turns = within(f.room[bar], *turns)
		}
	}
}

// within returns the turns in whole flats that a thread has and that are nearest to
// turns it does not have.
func within(room adjuster.Room, turns float64) float64 {
	n := math.Floor(adjuster.Flats * room.Longer)
	if turns < 0 {
		n = -math.Floor(adjuster.Flats * room.Shorter)
	}
	return n / adjuster.Flats
}

// turns returns the turns of a setup whose bars are turned by k from the start.
func (f *finder) turns(k flats) car.Turns {
	t := f.start
	for i, bar := range car.BarTurns {
		if k[i] != 0 {
			*bar.Of(&t) = onward(*bar.Of(&t), k[i])
		}
	}
	return t
}

// onward returns turns and a number of flats more, without what adding sixths leaves
// behind where the turns are whole flats.
func onward(turns float64, more int) float64 {
	const rounding = 1e-9
	if whole := math.Round(adjuster.Flats * turns); math.Abs(adjuster.Flats*turns-whole) < rounding {
		return (whole + float64(more)) / adjuster.Flats
	}
	return turns + float64(more)/adjuster.Flats
}

// lacksThread returns a bar whose thread does not have the turns of k, if there is one.
func (f *finder) lacksThread(k flats) (bar launch.RodID, lacks bool) {
	t := f.turns(k)
	for _, bar := range launch.Bars {
		if k[bar] != 0 && !f.room[bar].Allows(*car.BarTurns[bar].Of(&t)) {
			return bar, true
		}
	}
	return 0, false
}

// overloaded returns the bar that a trial takes furthest beyond what it may reach.
func (f *finder) overloaded(t *trial) (bar launch.RodID, over bool) {
	const rounding = 1e-9
	most := 1 + rounding
	for _, b := range launch.Bars {
		if part := t.shares[b] / f.limits[b]; part > most {
			bar, over, most = b, true, part
		}
	}
	return bar, over
}

// allowed reports whether a trial may be found.
func (f *finder) allowed(t *trial) bool {
	_, over := f.overloaded(t)
	return t.ends && !over
}

// cost returns what turns cost that come to an unevenness.
func (f *finder) cost(t car.Turns, unevenness float64) float64 {
	bars, turns := f.turned(t)
	return unevenness + barPrice*float64(bars) + turnPrice*turns
}

// state launches the setup with some turns.
func (f *finder) state(ctx context.Context, t car.Turns) (*State, error) {
	turned := *f.car
	turned.Setups = slices.Clone(f.car.Setups)
	turned.Setups[f.setup].Turns = t
	l, err := launch.Run(ctx, &turned, f.setup, f.library, launch.Options{})
	if err != nil {
		return nil, err
	}
	return &State{Turns: t, Unevenness: l.Unevenness(), Launch: l, Envelope: f.side.Envelope(l)}, nil
}

// try launches with the bars turned by k.
func (f *finder) try(ctx context.Context, k flats) (trial, error) {
	s, err := f.state(ctx, f.turns(k))
	if err != nil {
		return trial{}, err
	}
	t := trial{unevenness: s.Unevenness, cost: f.cost(s.Turns, s.Unevenness)}
	for _, bar := range launch.Bars {
		t.shares[bar] = s.Envelope.Of(bar).Share
	}
	how := s.Launch.Outcome
	t.ends = how == launch.Finished || how == f.before.Launch.Outcome
	return t, nil
}

// tryAll launches what of a list is not known yet.
func (f *finder) tryAll(ctx context.Context, list []flats) error {
	var missing []flats
	for _, k := range list {
		if _, ok := f.known[k]; !ok && !slices.Contains(missing, k) {
			missing = append(missing, k)
		}
	}
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var (
		next int
		mu   sync.Mutex
		all  sync.WaitGroup
	)
	take := func() (flats, bool) {
		mu.Lock()
		defer mu.Unlock()
		if next == len(missing) || ctx.Err() != nil {
			return flats{}, false
		}
		next++
		return missing[next-1], true
	}
	put := func(k flats, t trial) {
		mu.Lock()
		defer mu.Unlock()
		f.known[k] = t
		f.launches++
		if f.options.Progress != nil {
			f.options.Progress(f.launches)
		}
	}
	for range min(f.options.Workers, len(missing)) {
		all.Go(func() {
			for k, ok := take(); ok; k, ok = take() {
				t, err := f.try(ctx, k)
				if err != nil {
					cancel(err)
					return
				}
				put(k, t)
			}
		})
	}
	all.Wait()
	return context.Cause(ctx)
}

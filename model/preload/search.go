package preload

import (
	"context"
	"math"
	"slices"

	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
)

// family is a line or a plane of turns that is searched.
type family struct {
	kind   Kind
	axes   []flats // one flat along each
	best   flats   // so far
	stride int     // to its neighbors, in flats; 0 when none of them is better
}

// families returns what is searched. The first is the usual bar, which preload is dialed
// with by common practice: the upper one on the side that the driveshaft lifts, the
// right with an engine that turns clockwise.
func families(c *car.Car) []*family {
	lifted := launch.Right
	if c.Launch.Engine.Direction == car.Counterclockwise {
		lifted = launch.Left
	}
	var list []*family
	var pairs [2]flats // the lifted side's bar longer
	for _, pair := range car.Pairs {
		for _, side := range []launch.Side{lifted, 1 - lifted} {
			var one flats
			one[2*int(pair)+int(side)] = 1
			list = append(list, &family{kind: OneBar, axes: []flats{one}})
			if side == lifted {
				pairs[pair] = one
			} else {
				pairs[pair] = pairs[pair].plus(-1, one)
			}
		}
	}
	for _, pair := range pairs {
		list = append(list, &family{kind: OnePair, axes: []flats{pair}})
	}
	return append(list, &family{kind: BothPairs, axes: pairs[:]})
}

// steps returns the turns one flat from the start along the axes and between them.
func (y *family) steps() []flats {
	list := []flats{{}}
	for _, axis := range y.axes {
		for _, k := range slices.Clone(list) {
			list = append(list, k.plus(1, axis), k.plus(-1, axis))
		}
	}
	return list[1:]
}

// mostCoarse bounds the steps of the coarse grid along an axis.
const mostCoarse = 12

// coarse returns the grid that a family is searched on first, in steps of a turn of
// one bar or of a pair, of two turns of both pairs, or of more on long threads.
func (f *finder) coarse(y *family) (grid []flats, stride int) {
	var least, most [2]int
	stride = adjuster.Flats
	for i, axis := range y.axes {
		least[i], most[i] = f.reach(axis)
		stride = max(stride, (most[i]-least[i]+mostCoarse-1)/mostCoarse)
	}
	stride *= len(y.axes)
	grid = []flats{{}}
	for i, axis := range y.axes {
		for _, k := range slices.Clone(grid) {
			for n := -stride; n >= least[i]; n -= stride {
				grid = append(grid, k.plus(n, axis))
			}
			for n := stride; n <= most[i]; n += stride {
				grid = append(grid, k.plus(n, axis))
			}
		}
	}
	return grid, stride
}

// reach returns how many flats the threads allow either way along an axis.
func (f *finder) reach(axis flats) (least, most int) {
	const end = 2 * adjuster.Flats * car.MaxTurns
	along := func(n int) bool {
		_, lacks := f.lacksThread(flats{}.plus(n, axis))
		return !lacks
	}
	for least > -end && along(least-1) {
		least--
	}
	for most < end && along(most+1) {
		most++
	}
	return least, most
}

// worth returns the cost of turns that have been tried, and +Inf for those that may
// not be found.
func (f *finder) worth(k flats) float64 {
	if t, tried := f.known[k]; tried && f.allowed(&t) {
		return t.cost
	}
	return math.Inf(1)
}

// search finds the best turns of each family.
func (f *finder) search(ctx context.Context) error {
	f.families = families(f.car)
	near := make([][]flats, len(f.families)) // what each family looks at next
	for i, y := range f.families {
		near[i], y.stride = f.coarse(y)
		if y.kind == BothPairs {
			// A pair alone, on its finer grid, is a turn of both too.
			for j, other := range f.families {
				if other.kind == OnePair {
					near[i] = append(near[i], near[j]...)
				}
			}
		}
	}
	// The families go on side by side, so that there is work for all workers.
	for {
		all := slices.Concat(near...)
		if len(all) == 0 {
			return nil
		}
		if err := f.tryAll(ctx, all); err != nil {
			return err
		}
		for i, y := range f.families {
			near[i] = f.follow(y, near[i])
		}
	}
}

// follow moves a family to the best of what it has seen, and returns what it looks at
// next: the neighbors of the best, at half the distance when it has not moved; nothing
// when no neighbor a flat away is better.
func (f *finder) follow(y *family, seen []flats) (next []flats) {
	from := y.best
	for _, k := range seen {
		if f.worth(k) < f.worth(y.best) {
			y.best = k
		}
	}
	if y.best == from {
		y.stride /= 2
	}
	for ; y.stride > 0; y.stride /= 2 {
		if next = f.about(y); len(next) > 0 {
			return next
		}
	}
	return nil
}

// about returns the neighbors of a family's best that the threads allow.
func (f *finder) about(y *family) (list []flats) {
	for _, step := range y.steps() {
		k := y.best.plus(y.stride, step)
		if _, lacks := f.lacksThread(k); !lacks {
			list = append(list, k)
		}
	}
	return list
}

package adjuster

import (
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/linkage"
)

// Change is how to get from a setup of a car to other holes and turns.
//
// Bars between two holes are as long as keeps wheelbase and pinion angle at
// ride height, and then longer by the turns of the setup, which preload them.
// Effects are counted from the setup as it stands, at ride height with both
// bars of a pair at the mean of their lengths.
type Change struct {
	Pairs [2]PairChange // by car.Pair
	// Unturned is what the new holes do before any bar is turned.
	Unturned Effect
	// Turned is what the whole change does. It is zero where the setup's turns
	// are zero, or even out between left and right, before and after.
	Turned Effect
	// InFlats is what the change does when bars are turned to the nearest flat.
	InFlats Effect
}

// PairChange is what to do to one pair of bars.
type PairChange struct {
	Pair             car.Pair
	Bar              Bar
	Assumed          Assumed
	Chassis, Housing Move
	From, To         float64 // lengths between the holes, without the setup's turns [m]
	Left, Right      BarChange
	// Alone is what the change does when all bars are in their new holes but
	// only this pair is turned, the other one still having its old length.
	Alone Effect
	// PerTurn is what one more turn longer of both bars of the pair does in the
	// new holes, by the derivative there.
	PerTurn Effect
}

// Assumed marks what the name of the rod ends does not say of their thread, so
// that car.Bar.Pitch and car.Bar.ThreadDiameter assume it.
type Assumed struct{ Pitch, Diameter bool }

// Move is where an end of a pair goes.
type Move struct {
	Row      car.Row
	From, To int // holes, counted from 0
}

// Moved reports whether the end goes to another hole.
func (m Move) Moved() bool { return m.From != m.To }

// BarChange is what to do to one bar.
type BarChange struct {
	Turns         float64 // positive lengthens; the change between the holes over the lead, and the change of the setup's turns [1]
	Before, After State   // at the real lengths, the setup's turns included
}

// Turn returns the turns in whole turns and flats.
func (b *BarChange) Turn() Turn { return InFlats(b.Turns) }

// Effect is what a change does at ride height, wheel centers kept at their
// height.
type Effect struct {
	Pinion float64 // turn of the housing and so of the pinion, nose-up positive [rad]
	Shift  float64 // of the axle, forward positive [m]
	// Cannot says why the bars cannot be put in so; nil when they can. Pinion and
	// Shift are then zero.
	Cannot error
}

// Moved reports whether an end of the pair goes to another hole.
func (p *PairChange) Moved() bool { return p.Chassis.Moved() || p.Housing.Moved() }

// Turned reports whether a bar of the pair is turned by a flat or more.
func (p *PairChange) Turned() bool { return !p.Left.Turn().None() || !p.Right.Turn().None() }

// Recut reports whether a bar of the pair needs another tube.
func (p *PairChange) Recut() bool { return p.Left.After.Recut() || p.Right.After.Recut() }

// Plan returns how to get from the setup with index from to the given holes and
// turns. It refuses a setup or holes that c does not have, turns beyond
// car.MaxTurns, and holes between which the bars have no length or do not hold
// the axle at ride height (linkage.ErrShortBar, linkage.ErrDeadPoint).
func Plan(c *car.Car, from int, holes car.Holes, turns car.Turns) (Change, error) {
	if err := check(c, from, holes, turns); err != nil {
		return Change{}, err
	}
	setup := c.Setups[from]
	before, err := c.Linkage(from)
	if err != nil {
		return Change{}, fmt.Errorf("setup %d: %w; choose other holes", from+1, err)
	}
	with := *c
	with.Setups = []car.Setup{{Holes: holes}}
	after, err := with.Linkage(0)
	if err != nil {
		return Change{}, fmt.Errorf("in the new holes: %w; choose other holes", err)
	}

	var change Change
	upper, lower := after.PerLength()
	sensitivities := [2]linkage.Sensitivity{car.Upper: upper, car.Lower: lower}
	// Mean lengths of each pair: as it stands, turned, and turned in flats.
	var was, is, flat [2]float64
	for _, p := range car.Pairs {
		bar := Of(c, p)
		_, pitch := p.Bar(c).Pitch()
		_, diameter := p.Bar(c).ThreadDiameter()
		chassis, housing := p.Rows()
		pair := PairChange{
			Pair: p, Bar: bar, Assumed: Assumed{Pitch: !pitch, Diameter: !diameter},
			Chassis: Move{chassis, *chassis.Of(&setup.Holes), *chassis.Of(&holes)},
			Housing: Move{housing, *housing.Of(&setup.Holes), *housing.Of(&holes)},
			From:    p.Length(before), To: p.Length(after),
			PerTurn: Effect{Pinion: sensitivities[p].Turn * bar.Lead(), Shift: sensitivities[p].Shift * bar.Lead()},
		}
		for side, b := range []*BarChange{&pair.Left, &pair.Right} {
			had, has := *preload(p, side, &setup.Turns), *preload(p, side, &turns)
			b.Turns = bar.Turns(pair.From, pair.To) + has - had
			b.Before = bar.At(pair.From + bar.Lead()*had)
			b.After = bar.At(pair.To + bar.Lead()*has)
			was[p] += b.Before.Length / 2
			is[p] += b.After.Length / 2
			flat[p] += (b.Before.Length + bar.Lead()*b.Turn().Rounded()) / 2
		}
		change.Pairs[p] = pair
	}

	var start Effect
	start.Shift, start.Pinion, start.Cannot = before.Adjusted(was[car.Upper], was[car.Lower])
	effect := func(upper, lower float64) Effect {
		if start.Cannot != nil {
			return Effect{Cannot: fmt.Errorf("with the turns of the setup as it stands, %w", start.Cannot)}
		}
		shift, turn, err := after.Adjusted(upper, lower)
		if err != nil {
			return Effect{Cannot: err}
		}
		return Effect{Pinion: turn - start.Pinion, Shift: shift - start.Shift}
	}
	change.Unturned = effect(was[car.Upper], was[car.Lower])
	change.Pairs[car.Upper].Alone = effect(is[car.Upper], was[car.Lower])
	change.Pairs[car.Lower].Alone = effect(was[car.Upper], is[car.Lower])
	change.Turned = effect(is[car.Upper], is[car.Lower])
	change.InFlats = effect(flat[car.Upper], flat[car.Lower])
	return change, nil
}

// preload returns the turns of a pair's left (side 0) or right bar in t.
func preload(p car.Pair, side int, t *car.Turns) *float64 {
	return car.BarTurns[2*int(p)+side].Of(t)
}

// check refuses what c does not have.
func check(c *car.Car, from int, holes car.Holes, turns car.Turns) error {
	if from < 0 || from >= len(c.Setups) {
		return fmt.Errorf("the car has no setup %d; give a number from 1 to %d", from+1, len(c.Setups))
	}
	for _, row := range car.Rows {
		count := len(*row.In(c))
		for _, where := range []struct {
			name  string
			holes *car.Holes
		}{{fmt.Sprintf("setup %d", from+1), &c.Setups[from].Holes}, {"the new holes", &holes}} {
			if n := *row.Of(where.holes); n < 0 || n >= count {
				return fmt.Errorf("%s: the %s bracket has no hole %d; give a number from 1 to %d", where.name, row, n+1, count)
			}
		}
	}
	for _, bar := range car.BarTurns {
		if n := *bar.Of(&turns); !(math.Abs(n) <= car.MaxTurns) {
			return fmt.Errorf("%s: %v turns are out of range; give −%d to %[3]d", bar.Label, n, car.MaxTurns)
		}
	}
	return nil
}

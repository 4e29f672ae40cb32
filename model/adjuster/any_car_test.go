package adjuster

import (
	"errors"
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/internal/cartest"
	"bowline/model/linkage"

	"pgregory.net/rapid"
)

// Of any valid car: the plan to where it is is nothing; its lengths are those
// of the linkage and the turns lead from one to the other; there and back
// cancel; effects are Adjusted's; no number is lost.
func TestPlanOfAnyCar(t *testing.T) {
	library := carfile.Stock()
	moved, assembled := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, library)
		from := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "from")
		same, err := Plan(c, from, c.Setups[from].Holes, c.Setups[from].Turns)
		if err != nil {
			t.Fatal(err)
		}
		unchanged(t, &same)

		var to car.Setup
		for _, row := range car.Rows {
			*row.Of(&to.Holes) = rapid.IntRange(0, len(*row.In(c))-1).Draw(t, row.String())
		}
		for _, bar := range car.BarTurns {
			*bar.Of(&to.Turns) = float64(rapid.IntRange(-6, 6).Draw(t, bar.Label)) / 4
		}
		change, err := Plan(c, from, to.Holes, to.Turns)
		if err != nil {
			if !errors.Is(err, linkage.ErrShortBar) && !errors.Is(err, linkage.ErrDeadPoint) {
				t.Fatal(err)
			}
			return
		}
		moved++
		finite(t, &change)
		c.Setups = append(c.Setups, to)
		lengths(t, c, from, &change)
		back, err := Plan(c, len(c.Setups)-1, c.Setups[from].Holes, c.Setups[from].Turns)
		if err != nil {
			t.Fatal(err)
		}
		cancel(t, &change, &back)
		if change.Turned.Cannot == nil {
			effects(t, c, from, &change)
			assembled++
		}
	})
	if moved < 50 || assembled < 50 {
		t.Errorf("%d changes, of which %d can be put together", moved, assembled)
	}
}

// sides are the bars of a change.
func sides(c *Change) (bars []*BarChange) {
	for i := range c.Pairs {
		bars = append(bars, &c.Pairs[i].Left, &c.Pairs[i].Right)
	}
	return bars
}

func unchanged(t *rapid.T, c *Change) {
	for _, b := range sides(c) {
		if b.Turns != 0 || b.Before != b.After {
			t.Fatalf("to where it is: %+v", b)
		}
	}
	for _, e := range []Effect{c.Unturned, c.Turned, c.InFlats, c.Pairs[0].Alone, c.Pairs[1].Alone} {
		if e.Pinion != 0 || e.Shift != 0 {
			t.Fatalf("to where it is: %+v", e)
		}
	}
	for i := range c.Pairs {
		if p := &c.Pairs[i]; p.Moved() || p.Turned() {
			t.Fatalf("to where it is: %+v", p)
		}
	}
}

func finite(t *rapid.T, c *Change) {
	var values []float64
	for _, b := range sides(c) {
		for _, s := range []State{b.Before, b.After} {
			values = append(values, b.Turns, s.Length, s.Shown, s.Engaged, s.Diameters, s.CanShorten, s.CanLengthen, s.Tube)
		}
	}
	for _, e := range []Effect{c.Unturned, c.Turned, c.InFlats, c.Pairs[0].Alone, c.Pairs[1].Alone, c.Pairs[0].PerTurn, c.Pairs[1].PerTurn} {
		values = append(values, e.Pinion, e.Shift)
	}
	for _, x := range values {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("no number in %+v", c)
		}
	}
}

func lengths(t *rapid.T, c *car.Car, from int, change *Change) {
	before, err := c.Linkage(from)
	if err != nil {
		t.Fatal(err)
	}
	after, err := c.Linkage(len(c.Setups) - 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range car.Pairs {
		pair := &change.Pairs[p]
		lead := p.Bar(c).Lead()
		near(t, "from", pair.From, p.Length(before), 0)
		near(t, "to", pair.To, p.Length(after), 0)
		old, next := c.Setups[from].Turns, c.Setups[len(c.Setups)-1].Turns
		for i, b := range []*BarChange{&pair.Left, &pair.Right} {
			turns := car.BarTurns[2*int(p)+i]
			near(t, "turned bar", p.Length(before)+lead*(*turns.Of(&old)+b.Turns), p.Length(after)+lead**turns.Of(&next), 1e-12)
			near(t, "its length", b.After.Length, p.Length(after)+lead**turns.Of(&next), 1e-12)
			near(t, "from its length", b.Before.Length+lead*b.Turns, b.After.Length, 1e-12)
		}
	}
}

func cancel(t *rapid.T, there, back *Change) {
	backs := sides(back)
	for i, b := range sides(there) {
		near(t, "turns there and back", b.Turns+backs[i].Turns, 0, 1e-9)
		if b.Before != backs[i].After || b.After != backs[i].Before {
			t.Fatalf("there %+v, back %+v", b, backs[i])
		}
		if there, back := b.Turn(), backs[i].Turn(); there.Whole != -back.Whole || there.Flats != -back.Flats {
			// Half a flat may be rounded to either side.
			near(t, "half a flat", math.Abs(there.Rest), 1.0/12, 1e-9)
		}
	}
	if there.Turned.Cannot == nil && back.Turned.Cannot == nil {
		near(t, "pinion there and back", there.Turned.Pinion+back.Turned.Pinion, 0, 1e-9)
		near(t, "shift there and back", there.Turned.Shift+back.Turned.Shift, 0, 1e-9)
	}
}

// effects holds a change against Adjusted, with lengths put together here, and
// one turn against differences of it.
func effects(t *rapid.T, c *car.Car, from int, change *Change) {
	before, _ := c.Linkage(from)
	after, _ := c.Linkage(len(c.Setups) - 1)
	mean := func(p car.Pair, setup int) float64 {
		turns := c.Setups[setup].Turns
		if p == car.Upper {
			return (turns.UpperLeft + turns.UpperRight) / 2 * c.UpperBar.Lead()
		}
		return (turns.LowerLeft + turns.LowerRight) / 2 * c.LowerBar.Lead()
	}
	to := len(c.Setups) - 1
	oldUpper, oldLower := before.UpperLength()+mean(car.Upper, from), before.LowerLength()+mean(car.Lower, from)
	newUpper, newLower := after.UpperLength()+mean(car.Upper, to), after.LowerLength()+mean(car.Lower, to)
	shift0, turn0, err := before.Adjusted(oldUpper, oldLower)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range []struct {
		name         string
		effect       Effect
		upper, lower float64
	}{
		{"unturned", change.Unturned, oldUpper, oldLower},
		{"upper turned", change.Pairs[car.Upper].Alone, newUpper, oldLower},
		{"lower turned", change.Pairs[car.Lower].Alone, oldUpper, newLower},
		{"turned", change.Turned, newUpper, newLower},
	} {
		shift, turn, err := after.Adjusted(w.upper, w.lower)
		if (err == nil) != (w.effect.Cannot == nil) {
			t.Fatalf("%s: %v, want %v", w.name, w.effect.Cannot, err)
		}
		if err == nil {
			near(t, w.name+", pinion", w.effect.Pinion, turn-turn0, 1e-9)
			near(t, w.name+", shift", w.effect.Shift, shift-shift0, 1e-9)
		}
	}
	const h = 1e-4 // of a turn
	for _, p := range car.Pairs {
		at := func(part float64) (shift, turn float64) {
			upper, lower := after.UpperLength(), after.LowerLength()
			if p == car.Upper {
				upper += part * c.UpperBar.Lead()
			} else {
				lower += part * c.LowerBar.Lead()
			}
			shift, turn, err := after.Adjusted(upper, lower)
			if err != nil {
				t.Fatal(err)
			}
			return shift, turn
		}
		x1, t1 := at(h)
		x0, t0 := at(-h)
		got := change.Pairs[p].PerTurn
		near(t, "pinion per turn", got.Pinion, (t1-t0)/(2*h), 1e-6*(1+1e3*math.Abs(got.Pinion*got.Pinion)))
		near(t, "shift per turn", got.Shift, (x1-x0)/(2*h), 1e-6*(1+1e3*math.Abs(got.Pinion*got.Pinion)))
		if got.Pinion == 0 {
			t.Fatal("a turn does nothing to the pinion")
		}
	}
}

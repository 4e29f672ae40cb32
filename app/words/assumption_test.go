package words_test

import (
	"math"
	"testing"

	"bowline/app/words"
	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"
)

func TestAssumed(t *testing.T) {
	for _, c := range []struct {
		a      assumptions.Assumption
		us, si string
	}{
		{assumptions.Assumption{Quantity: units.SpringRate, Value: 200000 * lbf / inch}, "200,000 lb/in", "35,025.37 N/mm"},
		{assumptions.Assumption{Quantity: units.Number, Value: 0.75}, "0.75", "0.75"},
		{assumptions.Assumption{Quantity: units.Time, Value: 0.03}, "0.03 s", "0.03 s"},
		{assumptions.Assumption{Quantity: units.Length, Value: 35.6189 / 3 * inch}, "11.87 in", "301.6 mm"},
		{assumptions.Assumption{Quantity: units.Speed, Value: 1.05 * 5800 * math.Pi / 30}, "6,090 rpm", "6,090 rpm"},
		{assumptions.Assumption{Choice: "track bar"}, "track bar", "track bar"},
		{assumptions.Assumption{Quantity: units.Length, Changes: []assumptions.Change{{Kind: assumptions.CGToLeft}}}, "in the middle", "in the middle"},
	} {
		check(t, "US", words.Assumed(c.a, units.US), c.us)
		check(t, "SI", words.Assumed(c.a, units.SI), c.si)
	}
}

func TestTried(t *testing.T) {
	usual := assumptions.Assumption{Name: "Release time", Quantity: units.Time, Changes: []assumptions.Change{{Kind: assumptions.Doubled}, {Kind: assumptions.Halved}}}
	grip := assumptions.Assumption{Name: "Sliding grip", Quantity: units.Number, Changes: []assumptions.Change{{Kind: assumptions.Moved, Value: 1}, {Kind: assumptions.Halved}}}
	check(t, "usual", words.TriedAll(usual, units.US), "doubled; halved")
	check(t, "sliding grip", words.TriedAll(grip, units.US), "to 1; halved")
	check(t, "all usual", words.TriedOtherwise([]assumptions.Assumption{usual}, units.US), "")
	check(t, "otherwise", words.TriedOtherwise([]assumptions.Assumption{usual, grip}, units.US), "Not doubled and halved but tried as follows. Sliding grip: to 1; halved.")
	said := map[string]bool{}
	for kind := assumptions.Doubled; kind <= assumptions.CGToRight; kind++ {
		text := words.Tried(grip, assumptions.Change{Kind: kind, Value: 0.5, Choice: "another"}, units.SI)
		if text == "" || said[text] {
			t.Errorf("%v: %q", kind, text)
		}
		said[text] = true
	}
}

func TestWorth(t *testing.T) {
	a, half := assumptions.Assumption{}, assumptions.Change{Kind: assumptions.Halved}
	check(t, "effect", words.TriedWith(a, half, &assumptions.Effect{Launch: 0.3, Time: -0.064, Timed: true}, units.US), "halved: 0.0 / +30 %, −0.064 s")
	check(t, "effect without a time", words.TriedWith(a, half, &assumptions.Effect{Outcome: launch.WentOver}, units.US), "halved: 0.0 / 0.0 %, went over")
	check(t, "no effect yet", words.TriedWith(a, half, nil, units.US), "halved: …")
	check(t, "share", words.WorthOfShare(assumptions.Effect{Share: 0.085, Launch: -0.0004}), "+8.5 / 0.0")
	check(t, "large share", words.WorthOfShare(assumptions.Effect{Share: -0.454, Launch: 0.3}), "−45 / +30")
	check(t, "time", words.WorthOfTime(assumptions.Effect{Time: -0.064, Timed: true}), "−0.064")
	check(t, "went over", words.WorthOfTime(assumptions.Effect{Outcome: launch.WentOver}), "went over")
	check(t, "finished", words.WorthOfTime(assumptions.Effect{Outcome: launch.Finished}), "comes through")
}

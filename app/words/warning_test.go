package words_test

import (
	"slices"
	"testing"

	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

func TestWarning(t *testing.T) {
	warnings := []analysis.Warning{
		{Kind: analysis.BeyondThread, Bar: launch.UpperRight, Value: 10, Room: adjuster.Room{Shorter: 2, Longer: 6.242}},
		{Kind: analysis.OverCapacity, Demand: analysis.Demand{Bar: launch.LowerLeft, Way: column.Push, Source: analysis.FromHit, Share: 1.403, Travel: -4 * inch}},
		{Kind: analysis.NotBalanced, Travel: 1.5 * inch},
		{Kind: analysis.LittleThread, Bar: launch.LowerLeft, Value: 1.5, Limit: 1.5},
		{Kind: analysis.ThinWall, Pair: car.Upper, Value: 81.25, Limit: 42.53},
		{Kind: analysis.Slender, Pair: car.Lower, Value: 254.9, Limit: 200},
		{Kind: analysis.NearClosure, Value: 0.31 * inch, Limit: 0.5 * inch},
		{Kind: analysis.WheelsOff, Case: analysis.Hooked},
		{Kind: analysis.NoCenter},
		{Kind: analysis.OffTarget, Value: -0.546, Limit: 1},
		{Kind: analysis.CenterOffTarget},
		{Kind: analysis.SquatReversal, Travel: -2 * inch},
	}
	want := []string{
		"The upper right bar's thread does not allow 10 turns longer: from its length without preload it allows 2 turns shorter and 6 turns 1 flat longer.",
		"The lower bars reach 140 % of what they may carry in push, in the hit case at 4.00 in droop.",
		"At 1.50 in bump the lines of both bars and the spring meet in one point: they cannot hold the axle there, and no force is given.",
		"The lower left bar, 1 turn 3 flats longer, has less than 1.5 D of thread engaged: a longer tube is better.",
		"The wall of the upper bars is slender: OD over wall is 81, beyond 43 it may buckle before the tube yields.",
		"The lower bars are slender: length over radius of gyration is 255; up to 200 is preferred.",
		"The bars stop closing 0.31 in beyond the travel allowed.",
		"In the hooked case the front wheels carry nothing: the rear tires hold the whole car.",
		"At ride height the bars are parallel: there is no instant center, and the line of action has their slope.",
		"Anti-squat at ride height is −55 %, outside the target that ends at 100 %.",
		"The instant center at ride height is outside its target box.",
		"Anti-squat changes sign near 2.00 in droop.",
	}
	if got := words.Warnings(warnings, units.US); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	// They are all the kinds that there are.
	for i, w := range warnings {
		if w.Kind != analysis.Kind(i) {
			t.Errorf("warning %d is of kind %d", i, w.Kind)
		}
	}
	if beyond := (analysis.Warning{Kind: analysis.Kind(len(warnings))}); words.Warning(beyond, units.US) != "" {
		t.Errorf("there is one more kind: %q", words.Warning(beyond, units.US))
	}
	check(t, "in SI", words.Warning(warnings[slices.IndexFunc(warnings, func(w analysis.Warning) bool { return w.Kind == analysis.NearClosure })], units.SI), "The bars stop closing 7.9 mm beyond the travel allowed.")
	leaving := analysis.Warning{Kind: analysis.OverCapacity, Demand: analysis.Demand{Bar: launch.UpperRight, Way: column.Pull, Source: analysis.FromLaunch, Share: 1.571, Time: 0.054}}
	check(t, "in the launch", words.Warning(leaving, units.US), "The upper right bar reaches 157 % of what it may carry in pull, at 0.054 s of the launch.")
}

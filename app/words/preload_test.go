package words_test

import (
	"errors"
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/units"
)

// reaching is a state in which each bar reaches a share of its limit.
func reaching(unevenness float64, turns car.Turns, shares ...float64) preload.State {
	s := preload.State{Turns: turns, Unevenness: unevenness, Launch: &launch.Result{Outcome: launch.Finished, Elapsed: 1.234}}
	for _, bar := range launch.Bars {
		for _, way := range column.Directions {
			s.Envelope[bar][way] = analysis.Demand{Bar: bar, Way: way, Share: shares[bar]}
		}
	}
	return s
}

// evened is a result with one way.
func evened(before preload.State, w preload.Way) (*preload.Result, *preload.Way) {
	r := &preload.Result{Before: before, Ways: []preload.Way{w}}
	return r, &r.Ways[0]
}

func TestTurnsThatEven(t *testing.T) {
	before := reaching(0.1026, car.Turns{}, 0.6, 0.6, 0.9, 0.91)
	for _, c := range []struct {
		name string
		way  preload.Way
		want string
	}{
		{"one bar", preload.Way{
			State: reaching(0.0927, car.Turns{UpperRight: -10.0 / 6}, 0.6, 0.6, 0.9, 0.98),
			Stop:  preload.Stop{Kind: preload.StoppedByLimit, Bar: launch.LowerRight, Share: 1.013},
		}, "Make the upper right bar 1 turn 4 flats shorter: left and right rear tire then differ by 9.3 % of what both carry, instead of 10.3 %. " +
			"Nearest to its limit comes the lower right bar, 98 % of it instead of 91 %. " +
			"One flat more would even them further, but it takes the lower right bar beyond its limit, to 101 %."},
		{"a pair", preload.Way{
			State: reaching(0.0927, car.Turns{UpperLeft: 0.5, UpperRight: -0.5}, 0.6, 0.6, 0.9, 0.91),
			Stop:  preload.Stop{Kind: preload.StoppedByThread, Bar: launch.UpperLeft},
		}, "Make the upper left bar 3 flats longer and the upper right bar 3 flats shorter: left and right rear tire then differ by 9.3 % of what both carry, instead of 10.3 %. " +
			"No bar comes nearer to its limit than the lower right bar does already, 91 %. " +
			"One flat more would even them further, but the thread of the upper left bar ends here."},
		{"all four", preload.Way{State: reaching(0.0927, car.Turns{UpperLeft: 1, UpperRight: -1, LowerLeft: -2, LowerRight: 2}, 0.95, 0.6, 0.9, 0.91)},
			"Make the upper left bar 1 turn longer, the upper right bar 1 turn shorter, the lower left bar 2 turns shorter and the lower right bar 2 turns longer: left and right rear tire then differ by 9.3 % of what both carry, instead of 10.3 %. " +
				"Nearest to its limit comes the upper left bar, 95 % of it instead of 60 %."},
	} {
		if got := words.EvenTurns(evened(before, c.way)); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
	over := reaching(0.2, car.Turns{}, 0.6, 0.6, 0.9, 1.2)
	got := words.EvenTurns(evened(over, preload.Way{State: reaching(0.1, car.Turns{UpperRight: 1}, 0.6, 0.6, 0.9, 1.1)}))
	if want := "The lower right bar is over its limit as it stands, at 120 %, and stays over it, at 110 %."; !strings.Contains(got, want) {
		t.Errorf("over its limit it says %q, want %q", got, want)
	}
}

func TestNoTurnsThatEven(t *testing.T) {
	r := &preload.Result{Before: reaching(0.0412, car.Turns{}, 0, 0, 0, 0), Best: -1}
	want := "No turn of the bars is worth it: left and right rear tire differ by 4.1 % of what both carry, and no bar that is turned takes off half a percent."
	if got := words.NoTurns(r); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	r.Stop = preload.Stop{Kind: preload.StoppedByLimit, Bar: launch.LowerRight, Share: 1.2}
	if got := words.NoTurns(r); !strings.HasPrefix(got, want+" ") || !strings.Contains(got, "the lower right bar beyond its limit, to 120 %") {
		t.Errorf("stopped by a bar it says %q", got)
	}
}

func TestNamesOfWays(t *testing.T) {
	before := reaching(0.1, car.Turns{UpperRight: 1}, 0, 0, 0, 0)
	for want, turns := range map[string]car.Turns{
		"Upper right bar: 4.0 %": {UpperRight: -1},
		"Both upper bars: 4.0 %": {UpperLeft: 1},
		"Both lower bars: 4.0 %": {UpperRight: 1, LowerLeft: 1, LowerRight: -1},
		"2 bars: 4.0 %":          {LowerLeft: 1},
		"All four bars: 4.0 %":   {UpperLeft: 1, LowerLeft: 1, LowerRight: 2},
	} {
		if got := words.TurnsWay(evened(before, preload.Way{State: reaching(0.04, turns, 0, 0, 0, 0)})); got != want {
			t.Errorf("%+v is %q, want %q", turns, got, want)
		}
	}
}

func TestTurnsOfASetupThen(t *testing.T) {
	w := preload.Way{State: reaching(0.04, car.Turns{UpperRight: 0.5, LowerLeft: -1}, 0, 0, 0, 0)}
	if got := words.TurnsThen(evened(reaching(0.1, car.Turns{}, 0, 0, 0, 0), w)); got != "" {
		t.Errorf("from no preload it says %q", got)
	}
	had := reaching(0.1, car.Turns{UpperRight: 1}, 0, 0, 0, 0)
	if got, want := words.TurnsThen(evened(had, w)), "The setup then has: upper right bar 3 flats longer, lower left bar 1 turn shorter."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	w.Turns = car.Turns{}
	if got, want := words.TurnsThen(evened(had, w)), "The setup then has no preload."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestWhatTheCarDoesEvened(t *testing.T) {
	s := reaching(0.0927, car.Turns{}, 0, 0, 0, 0)
	s.Launch.Static.RearLoad = [2]float64{units.US.ToSI(units.Force, 1623), units.US.ToSI(units.Force, 702)}
	got := words.EvenCar(&s, &adjuster.Effect{Pinion: units.US.ToSI(units.Angle, -0.51), Shift: units.US.ToSI(units.Length, 0.12)}, units.US)
	if want := "9.3 % | 1.234 s | 1,623 / 702 lb | 0 / 0 lb | 0.51° nose down | 0.12 in forward"; strings.Join(got, " | ") != want || len(got) != len(words.EvenCarNames) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := words.EvenCar(&s, nil, units.US); got[4] != "—" || len(got) != len(words.EvenCarNames) {
		t.Errorf("not turned it says %q", got)
	}
	if got := words.EvenCar(&s, &adjuster.Effect{Cannot: errors.New("so")}, units.US); len(got) != len(words.EvenCarNames) {
		t.Errorf("not to be turned it says %q", got)
	}
}

func TestProgressOfTurns(t *testing.T) {
	for want, got := range map[string]string{
		"":                                  words.TurnsProgress(false, 0, false, nil),
		"Searching.":                        words.TurnsProgress(true, 0, false, nil),
		"Searching, 1,087 launches so far.": words.TurnsProgress(true, 1087, false, nil),
		"Not searched: the setup has no launch to be made even (found no rest).": words.TurnsProgress(false, 0, false, &preload.NoLaunch{Outcome: launch.NoRest}),
		"Not searched: so.": words.TurnsProgress(false, 0, false, errors.New("so")),
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := words.TurnsProgress(false, 0, true, nil); !strings.Contains(got, "stopped") {
		t.Errorf("edited it says %q", got)
	}
}

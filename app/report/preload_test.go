package report_test

import (
	"bytes"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/units"
	"bowline/plotting/chart"
)

// evened is a result as a search finds it, of the reference car.
func evened(t *testing.T) *preload.Result {
	c := threaded(t)
	state := func(unevenness, elapsed float64, turns car.Turns, share float64) preload.State {
		s := preload.State{Turns: turns, Unevenness: unevenness, Launch: &launch.Result{Outcome: launch.Finished, Elapsed: elapsed}}
		s.Launch.Time, s.Launch.RearLoad = []float64{0}, [2][]float64{{1 + unevenness}, {1 - unevenness}}
		s.Launch.Static.RearLoad = [2]float64{units.US.ToSI(units.Force, 623), units.US.ToSI(units.Force, 702)}
		for _, bar := range launch.Bars {
			s.Envelope[bar][column.Push] = analysis.Demand{Bar: bar, Way: column.Push, Share: share + float64(bar)/100}
		}
		return s
	}
	return &preload.Result{
		Car: c, Before: state(0.1026, 1.2345, car.Turns{}, 0.8),
		Ways: []preload.Way{
			{State: state(0.0927, 1.2336, car.Turns{UpperRight: -1.5}, 0.9), Stop: preload.Stop{Kind: preload.StoppedByThread, Bar: launch.UpperRight}},
			{Kind: preload.OnePair, State: state(0.091, 1.2336, car.Turns{LowerLeft: -0.5, LowerRight: 0.5}, 0.9)},
		},
	}
}

func writtenPreload(t *testing.T, r *preload.Result) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.WritePreload(&out, r, units.US); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(out.String()) {
		if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > 100 {
			t.Errorf("%q has %d characters", line, n)
		}
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

func TestWritePreload(t *testing.T) {
	r := evened(t)
	got := writtenPreload(t, r)
	at := 0
	for _, want := range []string{
		`Reference, setup "baseline" TURNS THAT EVEN THE REAR TIRES`,
		words.RearApart(r.Before.Launch, units.US), words.EvenTurns(r, &r.Ways[0]),
		"Upper left — 80 90 — Upper right 1 turn 3 flats shorter 81 91 " + words.ThreadLeft(r, &r.Ways[0], launch.UpperRight) + " of thread left Lower left — 82 92 —",
		"WHAT THE CAR DOES", "Rear tires differ 10.3 % 9.3 %", "60 ft 1.235 s 1.234 s", "623 / 702 lb",
		"OTHER WAYS - " + words.EvenTurns(r, &r.Ways[1]), chart.Caution,
	} {
		i := strings.Index(got[at:], want)
		if i < 0 {
			t.Fatalf("%q is missing or out of order in\n%s", want, got)
		}
		at += i
	}
	// With turns before, what the setup then has is said.
	r.Before.Turns.UpperRight = 1
	if got, want := writtenPreload(t, r), words.TurnsThen(r, &r.Ways[0]); want == "" || !strings.Contains(got, want) {
		t.Errorf("%q is missing in\n%s", want, got)
	}
}

func TestWritePreloadWithoutAWay(t *testing.T) {
	r := evened(t)
	r.Ways, r.Best = nil, -1
	got := writtenPreload(t, r)
	if !strings.Contains(got, words.NoTurns(r)) || strings.Contains(got, "WHAT THE CAR DOES") || strings.Contains(got, "OTHER WAYS") {
		t.Errorf("without a way it says\n%s", got)
	}
}

package car

import (
	"math"
	"slices"
	"testing"

	"bowline/model/units"
)

// Every refusal of a run, with its whole message.
func TestProblemsOfRuns(t *testing.T) {
	const date = "2026-03-14"
	for _, c := range []struct {
		run  Run
		want string // empty for a run that is taken
	}{
		{Run{Date: date}, ""},
		{Run{Date: "2024-02-29", SixtyFoot: 0.3, AntiSquat: -100}, ""},
		{Run{Date: date, SixtyFoot: 30, AntiSquat: 100, Note: "x\n\"y\""}, ""},
		{Run{}, `setup 2: run 2: date: "" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{Run{Date: "2026-02-29"}, `setup 2: run 2: date: "2026-02-29" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{Run{Date: "2026-3-14"}, `setup 2: run 2: date: "2026-3-14" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{Run{Date: date + " "}, `setup 2: run 2: date: "2026-03-14 " is no day of the calendar; give year, month and day as in 2026-03-14`},
		{Run{Date: date, SixtyFoot: 0.299}, `setup 2: run 2: sixty_ft: 0.299 s is out of range; give 0.3 s to 30 s, or leave it out`},
		{Run{Date: date, SixtyFoot: -1}, `setup 2: run 2: sixty_ft: −1 s is out of range; give 0.3 s to 30 s, or leave it out`},
		{Run{Date: date, SixtyFoot: math.NaN()}, `setup 2: run 2: sixty_ft: nan is out of range; give 0.3 s to 30 s, or leave it out`},
		{Run{Date: date, AntiSquat: 101}, `setup 2: run 2: anti_squat: 10100 % is out of range; give −10000 % to 10000 %, or leave it out`},
		{Run{Date: date, AntiSquat: math.NaN()}, `setup 2: run 2: anti_squat: nan is out of range; give −10000 % to 10000 %, or leave it out`},
		{Run{Date: date, AntiSquat: math.Inf(-1)}, `setup 2: run 2: anti_squat: an infinite value is out of range; give −10000 % to 10000 %, or leave it out`},
	} {
		car := sound()
		car.Setups[1].Runs = []Run{{Date: date}, c.run}
		var got []string
		for _, p := range car.Validate(library, units.US) {
			got = append(got, p.String())
		}
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%+v:\ngot  %q\nwant %q", c.run, got, want)
		}
	}
	long := sound()
	long.Setups[0].Runs = make([]Run, MaxRuns+1)
	if got := long.Validate(library, units.US); len(got) != 1 || got[0].String() != "setup 1: run: there are 1001 runs; give at most 1000" {
		t.Errorf("got %v", got)
	}
}

// Each key of a run has a place of its own.
func TestPlacesOfARun(t *testing.T) {
	var r Run
	for i, n := range RunNumbers {
		*n.Of(&r) = float64(i + 1)
	}
	for _, text := range RunTexts {
		*text.Of(&r) = text.Key
	}
	if want := (Run{Track: "track", SixtyFoot: 1, Rear: "rear", Front: "front", Note: "note", AntiSquat: 2}); r != want {
		t.Errorf("got %+v, want %+v", r, want)
	}
}

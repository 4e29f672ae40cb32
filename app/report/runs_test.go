package report_test

import (
	"fmt"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"
)

// part returns the lines of a text report from one title to the next.
func part(t *testing.T, text, title string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, "\n"+title+"\n")
	if !ok {
		t.Fatalf("no part %q in\n%s", title, text)
	}
	part, _, _ := strings.Cut(rest, "\n\n")
	return part
}

func TestTextOfRuns(t *testing.T) {
	c, s := read(t, reference)
	c.Setups[0].Runs = []car.Run{
		{Date: "2026-03-14", Track: "Saltgrass Flats", SixtyFoot: 1.342, Rear: "separated, then settled", Front: "carried the wheels to 30 ft", Note: "Cool track,\nfresh tires.", AntiSquat: 1.546},
		{Date: "2026-04-01"},
		{Date: "2026-04-18", SixtyFoot: 10.5, Note: "Lifted."},
	}
	const want = `  date         60 ft  anti-squat  track            what it did
                 [s]         [%]
  2026-03-14   1.342       154.6  Saltgrass Flats  rear separated, then settled; front carried the
                                                   wheels to 30 ft; Cool track, fresh tires
  2026-04-01
  2026-04-18  10.500                               Lifted`
	if got := part(t, text(t, analyze(t, c), s), "RUNS LOGGED"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// The longest logs end with their last runs; a setup without runs has no table.
func TestTextOfManyRunsAndNone(t *testing.T) {
	c, s := read(t, reference)
	if got := text(t, analyze(t, c), s); strings.Contains(got, "RUNS") {
		t.Errorf("runs of a setup that has none:\n%s", got)
	}
	for i := range 30 {
		c.Setups[0].Runs = append(c.Setups[0].Runs, car.Run{Date: fmt.Sprintf("2026-04-%02d", i+1), Track: strings.Repeat("Long ", 40), Rear: strings.Repeat("w", 300)})
	}
	got := part(t, text(t, analyze(t, c), s), "RUNS LOGGED")
	if !strings.HasPrefix(got, "  The last 12 of 30; the car file has all.\n") || strings.Count(got, "2026-04-") != 12 || !strings.Contains(got, "2026-04-19") || !strings.Contains(got, "2026-04-30") {
		t.Error(got)
	}
	for l := range strings.Lines(got) {
		if n := len(strings.TrimRight(l, "\n")); n > 100 {
			t.Errorf("a line of %d characters: %q", n, l)
		}
	}
}

func TestPDFOfRuns(t *testing.T) {
	c, s := read(t, reference)
	c.Setups[0].Runs = []car.Run{{Date: "2026-03-14", Track: "Saltgrass Flats", SixtyFoot: 1.342, Rear: "spun"}}
	_, pages := pdf(t, analyze(t, c), nil, s)
	for _, want := range []string{"Runs logged", "2026-03-14", "1.342", "Saltgrass Flats", "rear spun"} {
		if !strings.Contains(pages[0], squeezed(want)) {
			t.Errorf("the first page lacks %q", want)
		}
	}
	if si := text(t, analyze(t, c), units.SI); !strings.Contains(si, "1.342") {
		t.Errorf("no time in\n%s", si)
	}
}

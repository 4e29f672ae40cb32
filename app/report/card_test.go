package report_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/paper/papertest"

	"gonum.org/v1/gonum/spatial/r2"
)

// threaded is the reference car with bars as they are screwed together: 2 in of
// 3/4-16 thread, 6 threads in sight and a jam nut of 27/64 in, fitted in the
// first setup.
func threaded(t testing.TB) *car.Car {
	t.Helper()
	c, _ := read(t, reference)
	for _, p := range car.Pairs {
		p.Bar(c).RodEnd = "3/4-16"
		p.Bar(c).Threads = car.Threads{Length: 2 * inch, Shown: 6}
	}
	c.Driveline = car.Driveline{Given: true, TransmissionJoint: r2.Vec{X: 58 * inch, Y: 18 * inch}, PinionJoint: r2.Vec{X: 12 * inch, Y: 0.5 * inch}, PinionAngle: -1.25 * degree}
	return c
}

const degree = 3.14159265358979 / 180

// card returns a card's document and its text without spaces.
func card(t *testing.T, c *car.Car, to car.Holes, s units.System) (document []byte, text string) {
	t.Helper()
	k, err := report.NewCard(t.Context(), c, 0, to, carfile.Stock(), s)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := k.Write(&out, date); err != nil {
		t.Fatal(err)
	}
	pages, err := papertest.Pages(out.Bytes())
	if err != nil || len(pages) != 1 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	return out.Bytes(), squeezed(papertest.Text(pages[0]))
}

func checkWords(t *testing.T, text string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(text, squeezed(w)) {
			t.Errorf("%q is missing in\n%s", w, text)
		}
	}
}

// From chassis holes 3 and 2 to 2 and 1. By hand: the upper bars go from
// √(20² + 5.5²) to √(20² + 4.75²) in, 0.1862 in at 1/8 in a turn: 1 turn and
// 2.94 flats shorter. 1.4899 turns fewer leave 4.51 threads in sight, 0.282 in;
// 2 − 0.282 − 27/64 = 1.296 in engaged, 1.73 D. The lower bars go from
// √(23² + 0.5²) to √(23² + 1.25²) in, 0.0285 in: 0.228 turns, 1.37 flats.
func TestCard(t *testing.T) {
	_, text := card(t, threaded(t), car.Holes{ChassisUpper: 1}, units.US)
	checkWords(t, text,
		"Reference", "setup baseline", "2031-05-17", "holes 3·2·1·1 → 2·1·1·1",
		"Upper bar, chassis: hole 3 → 2", "Upper bar, housing: stays in 1", "Lower bar, chassis: hole 2 → 1", "Lower bar, housing: stays in 1",
		"UL 1 turn 3 flats shorter 20.556 in 1.30 in, 1.7 D", "UR 1 turn 3 flats shorter 20.556 in 1.30 in, 1.7 D",
		"LL 1 flat longer 23.034 in", "LR 1 flat longer 23.034 in",
		"all bars turned stays at 1.25° nose down",
		"only uppers turned goes", "only lowers turned goes",
		"Anti-squat 154.6 %", "IC ahead 41.25 in", "IC up 11.84 in", "Bottom-bar push", "of its limit",
		"jam nuts tight", "turned equal left/right", "pinion angle checked", "ride height checked",
		"Date", "Track", "60 ft", chart.Caution)
	if n := strings.Count(text, squeezed(chart.Caution)); n != 2 {
		t.Errorf("the caution stands %d times, want on the card and on the sheet", n)
	}
	if strings.Contains(text, "(!)") || strings.Contains(text, "newtube") {
		t.Errorf("a warning in\n%s", text)
	}
}

// Before and after are those of the reports of both setups.
func TestCardComparesTwoAnalyses(t *testing.T) {
	c := threaded(t)
	_, got := card(t, c, c.Setups[1].Holes, units.US)
	c.Setups = c.Setups[1:]
	r := analyze(t, c)
	l, err := launch.Run(t.Context(), c, 0, carfile.Stock(), launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	after := documentOf(t, r, l, units.US)
	row, push := atRide(t, after), after.Limits.Worst.LowerRight
	if push.Direction != "push" || push.Share < after.Limits.Worst.LowerLeft.Share {
		t.Fatal("the example is another one")
	}
	checkWords(t, got,
		units.US.Format(units.Percent, *row.AntiSquat/100), units.US.Format(units.Length, row.InstantCenter[0]*inch),
		units.US.Format(units.Length, row.InstantCenter[1]*inch), units.US.Format(units.Force, push.Force*lbf)+", "+push.Source,
		units.Share(push.Share))
}

// Bars that run out of thread, or have little of it, say so; so do loads beyond
// the limit, and bars turned differently left and right.
func TestCardWarns(t *testing.T) {
	c := threaded(t)
	c.UpperBar.Threads.Shown = 0
	c.LowerBar.Threads.Shown = 11
	c.Drive.Torque *= 3
	c.Tires.Grip = 3.5
	_, text := card(t, c, car.Holes{ChassisUpper: 0}, units.US)
	checkWords(t, text, "UL new tube", "old tube: used up", "UL, UR: tube too long, cut ", "LL, LR: (!) under 1.5 D engaged, a longer tube is better", "of what it may carry")
	c = threaded(t)
	c.LowerBar.Threads.Shown = 25
	_, text = card(t, c, car.Holes{ChassisUpper: 2}, units.US)
	checkWords(t, text, "LL new tube", "old tube: 0.", "LL, LR: tube too short, make one ")
	c, _ = read(t, reference)
	_, text = card(t, c, car.Holes{ChassisUpper: 2}, units.US)
	checkWords(t, text, "UL, UR, LL, LR: thread assumed to be 3/4 in, 16 per inch")
}

// Holes as they are: nothing moves and nothing turns.
func TestCardOfTheSameHoles(t *testing.T) {
	c := threaded(t)
	_, text := card(t, c, c.Setups[0].Holes, units.US)
	checkWords(t, text, "holes 3·2·1·1", "stays in 3", "UL no turn 20.742 in", "LR no turn 23.005 in", "in these holes stays at 1.25° nose down")
	if strings.Contains(text, "→3") || strings.Contains(text, "onlyuppers") {
		t.Error(text)
	}
}

// Letter paper for US units, A4 for SI, in points.
func TestCardPaper(t *testing.T) {
	for s, want := range map[units.System]string{units.US: "612.00 792.00", units.SI: "595.28 841.89"} {
		document, text := card(t, threaded(t), car.Holes{ChassisUpper: 1}, s)
		if m := regexp.MustCompile(`/MediaBox \[0 0 ([\d. ]+)\]`).FindSubmatch(document); m == nil || string(m[1]) != want {
			t.Errorf("paper %q, want %q", m, want)
		}
		if s == units.SI {
			checkWords(t, text, "UL 1 turn 3 flats shorter 522.13 mm 32.9 mm, 1.7 D", "IC ahead 1,047.9 mm", " N, launch")
		}
		if again, _ := card(t, threaded(t), car.Holes{ChassisUpper: 1}, s); !bytes.Equal(document, again) {
			t.Error("two documents differ")
		}
	}
}

func TestCardRefuses(t *testing.T) {
	far := threaded(t)
	far.Chassis.Lower = append(far.Chassis.Lower, r2.Vec{X: 3 * inch, Y: 12 * inch})
	turned := threaded(t)
	turned.Setups[0].Turns = car.Turns{UpperLeft: 20, UpperRight: 20, LowerLeft: -20, LowerRight: -20}
	turned.UpperBar.RodEnd, turned.LowerBar.RodEnd = "M80x7", "M80x7"
	for _, c := range []struct {
		car   *car.Car
		setup int
		to    car.Holes
		want  string
	}{
		{threaded(t), 5, car.Holes{}, "the car has no setup 6; give a number from 1 to 2"},
		{threaded(t), -1, car.Holes{}, "the car has no setup 0; give a number from 1 to 2"},
		{threaded(t), 0, car.Holes{HousingLower: 2}, "the new holes: the lower housing bracket has no hole 3; give a number from 1 to 2"},
		{far, 0, car.Holes{ChassisLower: 3}, "holes 1·4·1·1 cannot be used: the bars do not reach the rear droop of 4 in: they close only to "},
		{turned, 0, car.Holes{}, "the bars cannot be put together: upper bars of "},
	} {
		_, err := report.NewCard(t.Context(), c.car, c.setup, c.to, carfile.Stock(), units.US)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

func TestSaveCard(t *testing.T) {
	c := threaded(t)
	k, err := report.NewCard(t.Context(), c, 0, car.Holes{ChassisUpper: 1}, carfile.Stock(), units.US)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "card.pdf")
	if err := k.Save(path, date); err != nil {
		t.Fatal(err)
	}
	want, _ := card(t, c, car.Holes{ChassisUpper: 1}, units.US)
	if got, err := os.ReadFile(path); err != nil || !bytes.Equal(got, want) {
		t.Errorf("another document: %v", err)
	}
	if err := k.Save(filepath.Join(path, "none.pdf"), date); err == nil {
		t.Error("a card was written into a folder that does not exist")
	}
}

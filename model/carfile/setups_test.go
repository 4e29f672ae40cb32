package carfile

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"
)

// holes are those of the setups below.
const holes = "chassis_upper = 3\nchassis_lower = 2\nhousing_upper = 1\nhousing_lower = 1\n"

// runLog follows the example's only setup: its runs, and two setups more, the
// first with runs and the second without.
const runLog = `
# first time out
[[setup.run]]
date = 2026-03-14
track = "Saltgrass Flats"     # eighth mile
sixty_ft = 1.310
rear = "squatted"

[[setup.run]]   # after lunch
date = "2026-03-14"
anti_squat = 121.5
sixty_ft = 1.295

# the second car's
[[setup]]
name = "bite"
` + holes + `
  [[setup.run]]
  date = 2026-04-02
  note = ""
  # spun
  [[setup.run]]
  date = 2026-04-03
  rear = "spun"

# for rain

[[setup]] # soft
name = "tame"
` + holes

const runsInBraces = `run = [
  { date = 2026-03-14, rear = "squatted" }, # first
  { date = '2026-03-15', sixty_ft = 1.3, track = "" },
]
[[setup]]
name = "bite"
` + holes + "run = []\n"

// runsApart puts another table between a setup and its runs, and between these.
func runsApart(plain string) string {
	head, setup, _ := strings.Cut(plain, "[[setup]]")
	front, check, _ := strings.Cut(head, "[check]")
	return front + "[[setup]]" + setup + "[[setup.run]]\ndate = 2026-03-14\n[check]" + check + "[[setup.run]]\n# windy\ndate = 2026-03-15\n"
}

func TestRunsAreRead(t *testing.T) {
	want := [][]car.Run{
		{
			{Date: "2026-03-14", Track: "Saltgrass Flats", SixtyFoot: 1.31, Rear: "squatted"},
			{Date: "2026-03-14", SixtyFoot: 1.295, AntiSquat: 1.215},
		},
		{{Date: "2026-04-02"}, {Date: "2026-04-03", Rear: "spun"}},
		nil,
	}
	c := mustDecodeCar(t, fixture(t, "example.toml")+runLog).Car
	for i, runs := range want {
		if got := c.Setups[i].Runs; !reflect.DeepEqual(got, runs) {
			t.Errorf("setup %d: %+v", i+1, got)
		}
	}
}

// Each edit of runs, and of setups with runs, changes just these places.
func TestEditsOfRuns(t *testing.T) {
	first := `[[setup.run]]
date = 2026-03-14
track = "Saltgrass Flats"     # eighth mile
sixty_ft = 1.310
rear = "squatted"
`
	second := `[[setup.run]]   # after lunch
date = "2026-03-14"
anti_squat = 121.5
sixty_ft = 1.295
`
	bite := `[[setup]]
name = "bite"
` + holes + `
  [[setup.run]]
  date = 2026-04-02
  note = ""
  # spun
  [[setup.run]]
  date = 2026-04-03
  rear = "spun"
`
	tame := "[[setup]] # soft\nname = \"tame\"\n" + holes
	for _, c := range []struct {
		name    string
		runs    string // behind the example
		edit    func(s *[]car.Setup)
		changes []string // old, new, old, new…
	}{
		{"values", runLog, func(s *[]car.Setup) {
			(*s)[0].Runs[0].SixtyFoot, (*s)[0].Runs[0].Front = 1.3, "carried"
			(*s)[0].Runs[1].Date, (*s)[0].Runs[1].AntiSquat = "2026-03-15", 0
			(*s)[1].Runs[0].Track, (*s)[1].Runs[1].Rear = "away", ""
		}, []string{
			"sixty_ft = 1.310\nrear = \"squatted\"\n", "sixty_ft = 1.3\nrear = \"squatted\"\nfront = \"carried\"\n",
			`date = "2026-03-14"`, `date = 2026-03-15`, "anti_squat = 121.5\n", "", "  date = 2026-04-02\n", "  date = 2026-04-02\n  track = \"away\"\n", `"spun"`, `""`,
		}},
		{"added between and behind", runLog, func(s *[]car.Setup) {
			(*s)[0].Runs = slices.Insert((*s)[0].Runs, 1, car.Run{Date: "2026-03-16", Note: "hot", AntiSquat: 1.2})
			(*s)[1].Runs = append((*s)[1].Runs, car.Run{Date: "2026-04-04", SixtyFoot: 1.25})
			(*s)[2].Runs = []car.Run{{Date: "2026-05-01"}, {Date: "2026-05-02"}}
		}, []string{
			"\n" + second, "\n[[setup.run]]\ndate = 2026-03-16\nnote = \"hot\"\nanti_squat = 120.0\n\n" + second,
			"  rear = \"spun\"\n", "  rear = \"spun\"\n\n  [[setup.run]]\n  date = 2026-04-04\n  sixty_ft = 1.25\n",
			tame, tame + "\n[[setup.run]]\ndate = 2026-05-01\n\n[[setup.run]]\ndate = 2026-05-02\n",
		}},
		{"dropped", runLog, func(s *[]car.Setup) { (*s)[0].Runs, (*s)[1].Runs = (*s)[0].Runs[1:], nil }, []string{
			"# first time out\n" + first + "\n" + second, second,
			"\n  [[setup.run]]\n  date = 2026-04-02\n  note = \"\"\n  # spun\n  [[setup.run]]\n  date = 2026-04-03\n  rear = \"spun\"\n", "",
		}},
		{"in another order", runLog, func(s *[]car.Setup) { slices.Reverse((*s)[0].Runs) }, []string{
			"# first time out\n" + first + "\n" + second, second + "\n# first time out\n" + first,
		}},
		{"setups in another order", runLog, func(s *[]car.Setup) { (*s)[1], (*s)[2] = (*s)[2], (*s)[1] }, []string{
			"# the second car's\n" + bite, "§", tame, "# the second car's\n" + bite, "§", tame,
		}},
		{"a setup dropped", runLog, func(s *[]car.Setup) { *s = slices.Delete(*s, 1, 2) }, []string{"\n# the second car's\n" + bite, ""}},
		{"a setup twice", runLog, func(s *[]car.Setup) {
			twin := (*s)[1].Clone()
			twin.Name = "more"
			*s = slices.Insert(*s, 1, twin)
		}, []string{
			"# the second car's\n" + bite,
			"[[setup]]\nname = \"more\"\n" + holes + "\n[[setup.run]]\ndate = 2026-04-02\n\n[[setup.run]]\ndate = 2026-04-03\nrear = \"spun\"\n\n# the second car's\n" + bite,
		}},
		{"in braces", runsInBraces, func(s *[]car.Setup) {
			(*s)[0].Runs = append((*s)[0].Runs[1:], car.Run{Date: "2026-03-16", Front: "up"})
			(*s)[1].Runs = []car.Run{{Date: "2026-04-01"}}
		}, []string{
			`  { date = 2026-03-14, rear = "squatted" }, # first` + "\n", "",
			`track = "" },`, `track = "" },` + "\n  { date = 2026-03-16, front = \"up\" },",
			"run = []", "run = [{ date = 2026-04-01 }]",
		}},
	} {
		text := fixture(t, "example.toml") + c.runs
		want := text
		for i := 0; i < len(c.changes); i += 2 {
			if !strings.Contains(want, c.changes[i]) {
				t.Errorf("%s: no %q in %s", c.name, c.changes[i], want)
			}
			want = strings.Replace(want, c.changes[i], c.changes[i+1], 1)
		}
		f := mustDecodeCar(t, text)
		edited := f.Car.Clone()
		c.edit(&edited.Setups)
		got, err := f.Encode(edited)
		if err != nil || string(got) != want {
			t.Errorf("%s: %v\ngot  %s\nwant %s", c.name, err, got, want)
		}
	}
}

// A new file has the runs below their setup, and only what is known of them.
func TestRunsInNewFile(t *testing.T) {
	c := mustDecodeCar(t, fixture(t, "example.toml")+runLog).Car
	f, err := New("new.toml", c, units.US, Stock())
	if err != nil {
		t.Fatal(err)
	}
	_, got, _ := strings.Cut(f.text, "[[setup]]")
	const want = `  # a choice of holes; numbers count from 1 in the order listed above
name = "baseline"
` + holes + `
[[setup.run]]  # one pass on a track
date = 2026-03-14
track = "Saltgrass Flats"
sixty_ft = 1.31
rear = "squatted"

[[setup.run]]
date = 2026-03-14
sixty_ft = 1.295
anti_squat = 121.5

[[setup]]
name = "bite"
` + holes + `
[[setup.run]]  # one pass on a track
date = 2026-04-02

[[setup.run]]
date = 2026-04-03
rear = "spun"

[[setup]]
name = "tame"
` + holes
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// Each rule of runs, alone, and all that is said of it.
func TestRefusalsOfRuns(t *testing.T) {
	const run = "[[setup.run]]\ndate = 2026-03-14\n"
	text := fixture(t, "example.toml")
	for _, c := range []struct{ runs, want string }{
		{"[[setup.run]]\n", `a.toml:79: setup 1: run 1: date: is missing; give year, month and day as in 2026-03-14`},
		{run + "[[setup.run]]\nDate = 2026-03-14\n", `a.toml:82: setup 1: run 2: Date: is unknown here; did you mean "date"?`},
		{run + "sixty_foot = 1.3\n", `a.toml:81: setup 1: run 1: sixty_foot: is unknown here; did you mean "sixty_ft"?`},
		{run + "weather = \"dry\"\n", `a.toml:81: setup 1: run 1: weather: is unknown here; known are date, track, sixty_ft, rear, front, note, anti_squat`},
		{"[[setup.run]]\ndate = 2026-02-30\n", `a.toml:80: setup 1: run 1: date: "2026-02-30" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = 2026-13-01\n", `a.toml:80: setup 1: run 1: date: "2026-13-01" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = \"2026-02-29\"\n", `a.toml:80: setup 1: run 1: date: "2026-02-29" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = \"14.3.2026\"\n", `a.toml:80: setup 1: run 1: date: "14.3.2026" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = 20260314\n", `a.toml:80: setup 1: run 1: date: is a number; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = 2026-03-14T10:00:00\n", `a.toml:80: setup 1: run 1: date: is a time, or a date with one; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = 2026-02-30T10:00:00Z\n", `a.toml:80: setup 1: run 1: date: is a time, or a date with one; give year, month and day as in 2026-03-14`},
		{"[[setup.run]]\ndate = 10:00:00\n", `a.toml:80: setup 1: run 1: date: is a time, or a date with one; give year, month and day as in 2026-03-14`},
		{run + "track = 2026-02-30\n", `a.toml:81: setup 1: run 1: track: is a date or time; give a text in quotes`},
		{run + "sixty_ft = 0\n", `a.toml:81: setup 1: run 1: sixty_ft: 0 s is out of range; give 0.3 s to 30 s, or leave it out`},
		{run + "sixty_ft = 131\n", `a.toml:81: setup 1: run 1: sixty_ft: 131 s is out of range; give 0.3 s to 30 s, or leave it out`},
		{run + "sixty_ft = \"1.31\"\n", `a.toml:81: setup 1: run 1: sixty_ft: is a text; give 0.3 s to 30 s`},
		{run + "sixty_ft = nan\n", `a.toml:81: setup 1: run 1: sixty_ft: is not finite; give 0.3 s to 30 s`},
		{run + "anti_squat = nan\n", `a.toml:81: setup 1: run 1: anti_squat: is not finite; give −10000 % to 10000 %`},
		{run + "anti_squat = 10001\n", `a.toml:81: setup 1: run 1: anti_squat: 10001 % is out of range; give −10000 % to 10000 %, or leave it out`},
		{run + "anti_squat = -0.0\n", `a.toml:81: setup 1: run 1: anti_squat: is 0, which is taken for not known; give another number, or leave it out`},
		{run + "rear = true\n", `a.toml:81: setup 1: run 1: rear: is true or false; give a text in quotes`},
		{run + "front = 3\n", `a.toml:81: setup 1: run 1: front: is a number; give a text in quotes`},
		{run + "note = []\n", `a.toml:81: setup 1: run 1: note: is a list; give a text in quotes`},
		{"run = 3\n", `a.toml:79: setup 1: run: is a number; add [[setup.run]] tables with date`},
		{"run = [2026-03-14]\n", `a.toml:79: setup 1: run: is a list; add [[setup.run]] tables with date`},
		{"[setup.run]\ndate = 2026-03-14\n", `a.toml:79: setup 1: run: is a table; add [[setup.run]] tables with date`},
		{"run = [{ date = 2026-03-14 },\n  { date = 2026-02-30, sixty_ft = 99 }]\n", "a.toml:80: setup 1: run 2: sixty_ft: 99 s is out of range; give 0.3 s to 30 s, or leave it out\n" +
			`a.toml:80: setup 1: run 2: date: "2026-02-30" is no day of the calendar; give year, month and day as in 2026-03-14`},
		{"runs = []\n", `a.toml:79: setup 1: runs: is unknown here; did you mean "run"?`},
		{strings.Repeat(run, 1001), `a.toml:72: setup 1: run: there are 1001 runs; give at most 1000`},
		{runLog + "\n[[setup.run]]\ndate = 2026-06-31\n[[setup.run]]\nfrnt = \"up\"\nsixty_ft = -1\n", "a.toml:118: setup 3: run 1: date: \"2026-06-31\" is no day of the calendar; give year, month and day as in 2026-03-14\n" +
			"a.toml:119: setup 3: run 2: date: is missing; give year, month and day as in 2026-03-14\na.toml:120: setup 3: run 2: frnt: is unknown here; did you mean \"front\"?\n" +
			`a.toml:121: setup 3: run 2: sixty_ft: −1 s is out of range; give 0.3 s to 30 s, or leave it out`},
	} {
		_, err := Decode("a.toml", []byte(text+c.runs), Stock())
		if err == nil || err.Error() != c.want {
			t.Errorf("%.80q\ngot  %v\nwant %s", c.runs, err, c.want)
		}
	}
}

// A long log is saved in a moment: no work grows with its square.
func BenchmarkEncodeLongLog(b *testing.B) {
	f := mustDecodeCar(b, fixture(b, "example.toml"))
	c := f.Car.Clone()
	for i := range car.MaxRuns {
		c.Setups[0].Runs = append(c.Setups[0].Runs, car.Run{Date: fmt.Sprintf("2026-%02d-%02d", 1+i%12, 1+i%28), SixtyFoot: 1 + float64(i)/1000})
	}
	data, err := f.Encode(c)
	if err != nil {
		b.Fatal(err)
	}
	f = mustDecodeCar(b, string(data))
	c.Setups[0].Runs = slices.Delete(c.Setups[0].Runs, 10, 11)
	for b.Loop() {
		if _, err := f.Encode(c); err != nil {
			b.Fatal(err)
		}
	}
}

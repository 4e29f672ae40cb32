package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

const reference = "../../testdata/reference.toml"

var now = time.Date(2031, 5, 17, 8, 9, 10, 0, time.UTC)

// outcome is what a run of the command leaves.
type outcome struct {
	status         int
	stdout, stderr string
}

func command(args ...string) outcome {
	var stdout, stderr bytes.Buffer
	status := run(args, &stdout, &stderr, now)
	return outcome{status, stdout.String(), stderr.String()}
}

// changed writes the reference car with some of its text replaced.
func changed(t *testing.T, oldnew ...string) string {
	t.Helper()
	data, err := os.ReadFile(reference)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(oldnew...).Replace(string(data))
	if text == string(data) {
		t.Fatal("nothing is replaced")
	}
	path := filepath.Join(t.TempDir(), "car.toml")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestWrongUsage(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "there is no car"},
		{[]string{"-json"}, "there is no car"},
		{[]string{"-demo", "car.toml"}, "exclude each other"},
		{[]string{"a.toml", "b.toml"}, `"b.toml" is too much`},
		{[]string{"a.toml", "-json"}, "after the options"},
		{[]string{"-pdf"}, "-pdf"},
		{[]string{"-colour", "car.toml"}, "-colour"},
		{[]string{"-json=perhaps", "car.toml"}, "perhaps"},
		{[]string{""}, "is empty"},
		{[]string{"-setup", "", reference}, "bowline-report: -setup is empty; give it a NAME or leave it out\n"},
		{[]string{"-pdf", "", reference}, "bowline-report: -pdf is empty; give it a FILE or leave it out\n"},
		{[]string{"-csv=", "-demo"}, "bowline-report: -csv is empty; give it a DIR or leave it out\n"},
		{[]string{"-charts", "", reference}, "bowline-report: -charts is empty; give it a DIR or leave it out\n"},
		{[]string{"-card=", "-demo"}, "bowline-report: -card is empty; give it a FILE or leave it out\n"},
		{[]string{"-card", "card.pdf", "-demo"}, "bowline-report: -card is without holes to go to; give -holes N,N,N,N too\n"},
		{[]string{"-holes", "4,3,2,3", "-demo"}, "bowline-report: -holes is without a card to write; give -card FILE too\n"},
		{[]string{"-holes", "4,3,2", "-card", "card.pdf", "-demo"}, "give four numbers, as in 4,3,2,3\n"},
		{[]string{"-holes", "", "-card", "card.pdf", "-demo"}, "give four numbers, as in 4,3,2,3\n"},
		{[]string{"-holes", "4,0,2,3", "-card", "card.pdf", "-demo"}, `the lower chassis hole "0" is no number from 1 on` + "\n"},
		{[]string{"-holes", "4,3,two,3", "-card", "card.pdf", "-demo"}, `the upper housing hole "two" is no number from 1 on` + "\n"},
		{[]string{"-holes", "4,3,2,3", "-card", "x.pdf", "-pdf", "./x.pdf", "-demo"}, "bowline-report: -card and -pdf are the same file; give each one of its own\n"},
		{[]string{"-search", "0", "-demo"}, "bowline-report: -search 0 is too few; give a number from 1 on\n"},
		{[]string{"-search", "-3", "-demo"}, "-search -3 is too few"},
		{[]string{"-search", "best", "-demo"}, "-search"},
		{[]string{"-launch-all", "-demo"}, "bowline-report: -launch-all and -by are about a search; give -search N too\n"},
		{[]string{"-search", "5", "-by", "luck", "-demo"}, "bowline-report: -by \"luck\" is unknown; give one of target, push, share, turns, time, envelope, even, lift\n"},
		{[]string{"-search", "5", "-by", "time", "-demo"}, "bowline-report: -by time needs the launch of every combination; give -launch-all too\n"},
		{[]string{"-search", "5", "-json", "-demo"}, "bowline-report: -search and -json exclude each other; -search with -csv DIR writes a table for other programs\n"},
		{[]string{"-tables=", "-pdf=", reference}, "bowline-report: -tables is empty; give it a FILE or leave it out\n"},
	} {
		got := command(c.args...)
		if got.status != 2 || got.stdout != "" || !strings.Contains(got.stderr, c.says) || !strings.Contains(got.stderr, "usage: bowline-report") {
			t.Errorf("%q: %+v", c.args, got)
		}
	}
}

func TestHelp(t *testing.T) {
	got := command("-h")
	if got.status != 0 || got.stderr != "" || !strings.HasPrefix(got.stdout, "usage: bowline-report") {
		t.Errorf("%+v", got)
	}
	for _, option := range []string{"-setup NAME", "-json", "-pdf FILE", "-csv DIR", "-charts DIR", "-card FILE", "-holes N,N,N,N", "-search N", "-tables FILE", "-demo"} {
		if !strings.Contains(got.stdout, "\n  "+option) {
			t.Errorf("%s is not explained in\n%s", option, got.stdout)
		}
	}
}

func TestText(t *testing.T) {
	got := command(reference)
	if got.status != 0 || got.stderr != "" || !strings.HasPrefix(got.stdout, "Reference, setup \"baseline\"\n") || !strings.Contains(got.stdout, "154.6 %") || !strings.Contains(got.stdout, "\nLAUNCH\n") {
		t.Errorf("%+v", got)
	}
}

func TestDemo(t *testing.T) {
	got := command("-demo")
	if got.status != 0 || got.stderr != "" || !strings.Contains(got.stdout, "Saltgrass No. 7") {
		t.Errorf("%+v", got)
	}
}

// With -json there is one document on standard output and nothing else.
func TestJSON(t *testing.T) {
	got := command("-json", "-setup", "lower bar up", reference)
	if got.status != 0 || got.stderr != "" {
		t.Fatalf("%+v", got)
	}
	var document struct{ Setup, Units string }
	d := json.NewDecoder(strings.NewReader(got.stdout))
	if err := d.Decode(&document); err != nil || document.Setup != "lower bar up" || document.Units != "us" || d.More() {
		t.Errorf("%v, %+v", err, document)
	}
}

// The launch is that of the setup asked for, over time from the start on, with
// peaks that the history bears out.
func TestLaunch(t *testing.T) {
	type document struct {
		Launch struct {
			Outcome    string
			T, Speed   []float64
			UpperRight []float64 `json:"upper_right"`
			LowerRight []float64 `json:"lower_right"`
			Peaks      struct {
				LowerRight struct{ Push, T float64 } `json:"lower_right"`
			}
		}
	}
	run := func(args ...string) (d document) {
		t.Helper()
		got := command(append([]string{"-json"}, args...)...)
		if err := json.Unmarshal([]byte(got.stdout), &d); err != nil {
			t.Fatal(err, got.stderr)
		}
		return d
	}
	l := run(reference).Launch
	if len(l.T) < 100 || l.T[0] != 0 || len(l.UpperRight) != len(l.T) || len(l.LowerRight) != len(l.T) || len(l.Speed) != len(l.T) || l.Outcome == "" {
		t.Fatalf("%d times, %d speeds, outcome %q", len(l.T), len(l.Speed), l.Outcome)
	}
	push, at := 0.0, 0.0
	for i, force := range l.LowerRight {
		if -force > push {
			push, at = -force, l.T[i]
		}
	}
	if p := l.Peaks.LowerRight; p.Push < push || p.Push > 1.02*push || p.T < at-0.002 || p.T > at+0.002 {
		t.Errorf("peak %+v, in the history %v at %v", p, push, at)
	}
	if other := run("-setup", "lower bar up", reference).Launch; slices.Equal(other.LowerRight, l.LowerRight) {
		t.Error("both setups launch the same")
	}
}

// A car whose springs stand on the line through the instant center is not held
// at ride height: it is reported, and its launch is none.
func TestCarWithoutLaunch(t *testing.T) {
	type row struct {
		Travel        float64
		InstantCenter [2]float64 `json:"instant_center"`
	}
	var d struct{ Travel []row }
	if err := json.Unmarshal([]byte(command("-json", reference).stdout), &d); err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(d.Travel, func(r row) bool { return r.Travel == 0 })
	center := d.Travel[i].InstantCenter
	mount := fmt.Sprintf("rear_chassis_mount = [%v, %v]", -center[0]/2, 16-(center[1]-16)/2)
	got := command("-json", changed(t, "rear_chassis_mount = [0.0, 32.0]", mount))
	var none struct {
		Launch struct {
			Outcome string
			T       []float64
		}
	}
	if err := json.Unmarshal([]byte(got.stdout), &none); got.status != 0 || got.stderr != "" || err != nil || none.Launch.Outcome != "axle not held" || len(none.Launch.T) != 0 {
		t.Errorf("%d, %q, %v, %+v", got.status, got.stderr, err, none)
	}
}

func TestUnknownSetup(t *testing.T) {
	got := command("-setup", "rain", reference)
	want := "bowline-report: " + reference + `: there is no setup "rain"; give one of "baseline", "lower bar up"` + "\n"
	if got != (outcome{1, "", want}) {
		t.Errorf("%+v, want %q", got, want)
	}
	if got := command("-setup", "rain", "-demo"); got.status != 1 || !strings.HasPrefix(got.stderr, "bowline-report: saltgrass-7.toml: there is no setup") {
		t.Errorf("%+v", got)
	}
}

// A refused car shows everything that is wrong with it, each with its line.
func TestRefusedCar(t *testing.T) {
	path := changed(t, "wheelbase = 105.0", "wheelbase = -105.0", "grip = 2.6", "grip = nan", "chassis_lower = 1", "chassis_lower = 9", "[drive]", "[drive]\nboost = 1")
	got := command(path)
	if got.status != 1 || got.stdout != "" {
		t.Fatalf("%+v", got)
	}
	lines := strings.Split(strings.TrimSuffix(got.stderr, "\n"), "\n")
	for _, want := range []string{"wheelbase", "grip", "setup 2: chassis_lower", "boost"} {
		if !slices.ContainsFunc(lines, func(l string) bool { return strings.HasPrefix(l, path+":") && strings.Contains(l, want) }) {
			t.Errorf("no line about %s in\n%s", want, got.stderr)
		}
	}
	if len(lines) != 4 {
		t.Errorf("%d lines:\n%s", len(lines), got.stderr)
	}
}

func TestMissingFiles(t *testing.T) {
	none := filepath.Join(t.TempDir(), "none.toml")
	for _, args := range [][]string{{none}, {"-tables", none, reference}, {t.TempDir()}} {
		if got := command(args...); got.status != 1 || got.stdout != "" || strings.Count(got.stderr, "\n") != 1 || !strings.HasPrefix(got.stderr, "bowline-report: ") {
			t.Errorf("%q: %+v", args, got)
		}
	}
}

func TestFiles(t *testing.T) {
	folder := t.TempDir()
	in := func(name string) string { return filepath.Join(folder, name) }
	got := command("-json", "-pdf", in("report.pdf"), "-csv", in("tables"), "-charts", in("charts"), reference)
	if got.status != 0 || got.stderr != "" || !json.Valid([]byte(got.stdout)) {
		t.Fatalf("%+v", got)
	}
	for name, begin := range map[string]string{
		"report.pdf": "%PDF", "tables/travel.csv": "travel [in],", "tables/bars.csv": "bar,", "tables/launch.csv": "t [s],", "charts/launch-bars.svg": "<?xml", "charts/launch-tires.png": "\x89PNG", "charts/bar-force.svg": "<?xml", "charts/anti-squat.png": "\x89PNG",
	} {
		data, err := os.ReadFile(in(name))
		if err != nil || !strings.HasPrefix(string(data), begin) {
			t.Errorf("%s: %v, %.20q", name, err, data)
		}
	}
	if data, err := os.ReadFile(in("report.pdf")); err != nil || !bytes.Contains(data, []byte("(D:20310517080910")) {
		t.Errorf("the PDF has another date: %v", err)
	}
}

// What cannot be written is reported, all of it and by the names asked for. The
// other files are written, and there is no report.
func TestUnwritableFiles(t *testing.T) {
	folder := t.TempDir()
	in := func(name string) string { return filepath.Join(folder, name) }
	if err := os.WriteFile(in("file"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"travel.csv", "bars.csv"} {
		if err := os.MkdirAll(filepath.Join(in("tables"), name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, options := range [][]string{nil, {"-json"}} {
		got := command(append(options, "-pdf", in("none/x.pdf"), "-charts", in("file"), "-csv", in("tables"), reference)...)
		if got.status != 1 || got.stdout != "" {
			t.Errorf("%q: %+v", options, got)
		}
		lines := strings.Split(strings.TrimSuffix(got.stderr, "\n"), "\n")
		want := []string{"write " + in("none/x.pdf") + ": ", "write " + in("tables/travel.csv") + ": is no plain file", "write " + in("tables/bars.csv") + ": is no plain file", "mkdir " + in("file") + ": "}
		if !slices.EqualFunc(lines, want, func(l, w string) bool { return strings.HasPrefix(l, "bowline-report: "+w) }) {
			t.Errorf("%q, want those that begin with %q", lines, want)
		}
		launch := in("tables/launch.csv")
		if _, err := os.Stat(launch); err != nil {
			t.Error(err)
		}
		os.Remove(launch)
	}
}

// A PDF never takes the place of what it was made from.
func TestPDFOverAnInput(t *testing.T) {
	car := changed(t, "Reference", "Precious")
	got := command("-pdf", car, car)
	if got.status != 1 || !strings.Contains(got.stderr, "another file") {
		t.Errorf("%+v", got)
	}
	if data, err := os.ReadFile(car); err != nil || !strings.Contains(string(data), "Precious") {
		t.Errorf("the car is gone: %v, %.80q", err, data)
	}
}

// A material of the user's own is known, and one of a built-in name takes its
// place: with twice the yield strength the bars may pull twice as much.
func TestTables(t *testing.T) {
	tables := filepath.Join(t.TempDir(), "tables.toml")
	const own = `units = "us"

[[material]]
name = "4130 normalized"
elastic_modulus = 29e6
yield = 150e3
welded_yield = 120e3
ultimate = 180e3
density = 0.283

[[material]]
name = "shop rod"
elastic_modulus = 29e6
yield = 36e3
ultimate = 58e3
density = 0.283
`
	if err := os.WriteFile(tables, []byte(own), 0o644); err != nil {
		t.Fatal(err)
	}
	pull := func(args ...string) (upper, lower float64) {
		t.Helper()
		got := command(append([]string{"-json"}, args...)...)
		if got.status != 0 {
			t.Fatalf("%+v", got)
		}
		var d struct {
			Bars struct {
				Upper, Lower struct {
					Pull float64 `json:"capacity_pull"`
				}
			}
		}
		if err := json.Unmarshal([]byte(got.stdout), &d); err != nil {
			t.Fatal(err)
		}
		return d.Bars.Upper.Pull, d.Bars.Lower.Pull
	}
	was, _ := pull(reference)
	if is, _ := pull("-tables", tables, reference); is < 1.999*was || is > 2.001*was {
		t.Errorf("%v with twice the as-welded yield strength, %v before", is, was)
	}
	car := changed(t, "4130 normalized", "shop rod")
	if got := command(car); got.status != 1 || !strings.Contains(got.stderr, "shop rod") {
		t.Errorf("without its table: %+v", got)
	}
	if is, _ := pull("-tables", tables, car); is < 0.599*was || is > 0.601*was {
		t.Errorf("%v with a yield strength of 36 over 60 as welded, %v before", is, was)
	}
}

func TestRefusedTables(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tables.toml")
	if err := os.WriteFile(path, []byte("units = \"us\"\n[[material]]\nname = \"x\"\nyeild = 1\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if got := command("-tables", path, reference); got.status != 1 || got.stdout != "" || !strings.HasPrefix(got.stderr, path+":2:") || !strings.Contains(got.stderr, "\n"+path+":4:") {
		t.Errorf("%+v", got)
	}
}

// full fails as a pipe that nobody reads.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestOutputThatFails(t *testing.T) {
	for _, args := range [][]string{{reference}, {"-json", reference}} {
		var stderr bytes.Buffer
		if status := run(args, full{}, &stderr, now); status != 1 || stderr.String() != "bowline-report: no room\n" {
			t.Errorf("%q: %d, %q", args, status, stderr.String())
		}
	}
}

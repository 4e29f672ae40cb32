package report_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"bowline/app/report"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"

	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "write the text reports that the tests compare with")

func text(t rapid.TB, r *analysis.Result, s units.System) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.WriteText(&out, r, nil, nil, s); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestText(t *testing.T) {
	for _, c := range []struct{ car, golden string }{{reference, "reference.txt"}, {referenceSI, "reference-si.txt"}} {
		r, s := load(t, c.car)
		got, path := text(t, r, s), filepath.Join("testdata", c.golden)
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != strings.ReplaceAll(string(want), "\r\n", "\n") {
			t.Errorf("%s reads\n%s", c.golden, got)
		}
	}
}

// line returns the words of the first line that begins with a label.
func line(t *testing.T, text, label string) string {
	t.Helper()
	for l := range strings.Lines(text) {
		if words := strings.Join(strings.Fields(l), " "); strings.HasPrefix(words, label) {
			return words
		}
	}
	t.Fatalf("no line begins with %q in\n%s", label, text)
	return ""
}

// The reference point in words: every force a magnitude with its direction.
func TestTextOfTheReferencePoint(t *testing.T) {
	r, s := load(t, reference)
	got := text(t, r, s)
	for label, want := range map[string]string{
		"instant center 4":        "instant center 41.25 in ahead of the rear contact, 11.84 in up",
		"anti-squat 1":            "anti-squat 154.6 %",
		"thrust [lb]":             "thrust [lb] 0 6,825 6,890",
		"axle torque [lb-ft]":     "axle torque [lb-ft] 0 9,384 15,808",
		"upper bar, each [lb]":    "upper bar, each [lb] 0 3,524 pull 6,777 pull",
		"lower bar, each [lb]":    "lower bar, each [lb] 0 6,309 push 9,475 push",
		"rear springs, both [lb]": "rear springs, both [lb] 935 push 92 push 1,746 pull",
		"governed by grip":        "governed by grip front wheels off",
		"upper chassis 3":         "upper chassis 3 of 3 22.50 17.00 ground under the axle, at ride height",
		"lower housing 1":         "lower housing 1 of 2 2.50 5.00 below axle centerline",
		"0.00 ride 41":            "0.00 ride 41.25 11.84 154.6 0.00 0.00 19.50",
		"0.00 ride 3,524":         "0.00 ride 3,524 pull 6,309 push 92 push 6,777 pull 9,475 push 1,746 pull 92 lower",
	} {
		if l := line(t, got, label); l != want {
			t.Errorf("%q, want %q", l, want)
		}
	}
	if bare := regexp.MustCompile(`[^\w]-\d`).FindString(got); bare != "" {
		t.Errorf("a bare sign: %q", bare)
	}
}

// The car's numbers have their units' usual decimals, in whatever units they were
// typed; tubes and ratios have the digits typed.
func TestTextOfTheCar(t *testing.T) {
	c, _ := read(t, reference)
	c.Body.Mass, c.Body.RearMass = 1202.0197, 601.0093
	c.Drive.Efficiency, c.Check.Crookedness = 0.9125, 0.00125
	r, err := analysis.Run(t.Context(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []struct {
		units units.System
		lines map[string]string
	}{
		{units.SI, map[string]string{
			"wheelbase":  "wheelbase 2,667.0 mm",
			"weight":     "weight 1,202.0 kg, 601.0 kg of it on the rear tires",
			"rear tires": "rear tires radius 406.4 mm loaded, grip 2.6",
			"engine":     "engine 1,898 N·m at 5,200 rpm",
			"tube":       "tube 31.75 × 2.413 mm 31.75 × 2.413 mm",
		}},
		{units.US, map[string]string{
			"wheelbase":  "wheelbase 105.00 in",
			"weight":     "weight 2,650 lb, 1,325 lb of it on the rear tires",
			"rear tires": "rear tires radius 16.00 in loaded, grip 2.6",
			"bars are":   "bars are held against Johnson and Euler, a bow of 0.00125 of the length, a factor of 2",
			"tube":       "tube 1.25 × 0.095 in 1.25 × 0.095 in",
			"targets":    "targets anti-squat 100.0 to 160.0 %, instant center 40.00 to 60.00 in ahead and 6.00 to",
		}},
	} {
		got := text(t, r, s.units)
		for label, want := range s.lines {
			if l := line(t, got, label); l != want {
				t.Errorf("%q, want %q", l, want)
			}
		}
		if !strings.Contains(got, "efficiency 0.9125") {
			t.Errorf("the efficiency in\n%s", got)
		}
	}
}

func TestTextWhereThereIsNoValue(t *testing.T) {
	got := text(t, parallel(t), units.US)
	if l := line(t, got, "instant center none"); l != "instant center none, the bars are parallel" {
		t.Error(l)
	}
	if l := line(t, got, "0.00 ride none"); !strings.HasPrefix(l, "0.00 ride none none ") {
		t.Error(l)
	}
	got = text(t, unheld(t), units.US)
	for label, want := range map[string]string{
		"upper bar, each": "upper bar, each [lb] none none none",
		"upper chassis n": "upper chassis none none none none",
		"0.00 ride none":  "0.00 ride none none none none none none none",
	} {
		if l := line(t, got, label); l != want {
			t.Errorf("%q, want %q", l, want)
		}
	}
	r, s := load(t, reference)
	changed := *r
	changed.Ride.HasAntiSquat = false
	if l := line(t, text(t, &changed, s), "anti-squat no"); l != "anti-squat no value, the line of action stands upright" {
		t.Error(l)
	}
}

// Whatever the car, lines are short, clean and free of impossible numbers,
// and all writers manage.
func TestAnyCar(t *testing.T) {
	base, _ := read(t, reference)
	_, made := handmade(t)
	rapid.Check(t, func(t *rapid.T) {
		c := base.Clone()
		near := func(label string, x *float64, by float64) {
			*x += rapid.Float64Range(-by, by).Draw(t, label) * inch
		}
		for _, row := range car.Rows {
			for i := range *row.In(c) {
				near(row.String(), &(*row.In(c))[i].X, 4)
				near(row.String(), &(*row.In(c))[i].Y, 4)
			}
		}
		near("spring", &c.Springs.RearChassisMount.X, 30)
		c.Springs.RearDroop = rapid.SampledFrom([]float64{0, 0.01, 1, 4, 7.77}).Draw(t, "droop") * inch
		c.Springs.RearBump = rapid.SampledFrom([]float64{0, 0.3, 3, 12}).Draw(t, "bump") * inch
		c.Driveline = car.Driveline{Given: rapid.Bool().Draw(t, "driveline")}
		c.Driveline.TransmissionJoint.X, c.Driveline.TransmissionJoint.Y = 50*inch, 15*inch
		c.Drive.Torque *= rapid.Float64Range(0.01, 4).Draw(t, "torque")
		c.Body.Name = rapid.StringN(1, 300, -1).Draw(t, "name") + "x"
		c.Setups[0].Name = rapid.StringN(1, 300, -1).Draw(t, "setup") + "x"
		for _, turns := range car.BarTurns {
			*turns.Of(&c.Setups[0].Turns) = rapid.Float64Range(-20, 20).Draw(t, turns.Key)
		}
		c.Setups[0].Note = rapid.StringN(0, 300, -1).Draw(t, "note")
		for range rapid.IntRange(0, 20).Draw(t, "runs") {
			run := car.Run{Date: "2026-03-14", SixtyFoot: rapid.Float64Range(0.3, 30).Draw(t, "60 ft")}
			for _, text := range car.RunTexts {
				*text.Of(&run) = rapid.StringN(0, 100, -1).Draw(t, text.Key)
			}
			c.Setups[0].Runs = append(c.Setups[0].Runs, run)
		}
		s := rapid.SampledFrom([]units.System{units.US, units.SI}).Draw(t, "units")
		if len(c.Validate(carfile.Stock(), s)) > 0 {
			// Keep the words; holes and mounts that go together are those of base.
			setups, name := c.Setups, c.Body.Name
			c = base.Clone()
			c.Setups, c.Body.Name = setups, name
		}
		r, err := analysis.Run(t.Context(), c, carfile.Stock(), analysis.Options{FrontTravel: rapid.SampledFrom([]float64{0, 1, -2}).Draw(t, "front") * inch})
		if err != nil {
			t.Fatal(err)
		}
		l := []*launch.Result{nil, made, {Outcome: launch.NoRest}}[rapid.IntRange(0, 2).Draw(t, "launch")]
		var out bytes.Buffer
		if err := report.WriteText(&out, r, l, nil, s); err != nil {
			t.Fatal(err)
		}
		checkText(t, out.String())
		for name, write := range map[string]func() error{
			"JSON":   func() error { return report.WriteJSON(&bytes.Buffer{}, r, l, nil, s) },
			"travel": func() error { return report.WriteTravelCSV(&bytes.Buffer{}, r, s) },
			"bars":   func() error { return report.WriteBarsCSV(&bytes.Buffer{}, r, s) },
		} {
			if err := write(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	})
}

// checkText checks what holds of every text report.
func checkText(t *rapid.T, got string) {
	huge := regexp.MustCompile(`\d{3},\d{3}|e\+`).MatchString(got)
	for l := range strings.Lines(got) {
		l = strings.TrimSuffix(l, "\n")
		if n := utf8.RuneCountInString(l); n > 100 && !huge {
			t.Errorf("a line of %d characters: %q", n, l)
		}
		if strings.IndexFunc(l, unicode.IsControl) >= 0 || strings.HasSuffix(l, " ") {
			t.Errorf("control characters or trailing space: %q", l)
		}
	}
	if impossible := regexp.MustCompile(`\b(NaN|[+-]?Inf)\b|(?m:(?:^|[ (])-[.\d])`).FindString(strings.SplitN(got, "VERDICT", 2)[1]); impossible != "" && !strings.Contains(got, "Note: ") {
		t.Errorf("%s in\n%s", impossible, got)
	}
	if !strings.HasSuffix(strings.Join(strings.Fields(got), " "), chart.Caution) {
		t.Error("the caution is missing")
	}
	rows := 0
	for l := range strings.Lines(got[strings.Index(got, "TRAVEL: LOADS"):]) {
		if regexp.MustCompile(`^ +[\d.]+ (droop|ride|bump)`).MatchString(l) {
			rows++
		}
	}
	if rows < 6 || rows > 16 {
		t.Errorf("%d travels shown in\n%s", rows, got)
	}
}

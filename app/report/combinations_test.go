package report_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/gonum/spatial/r2"
)

// ranked searches and ranks all combinations of a car's holes from its first
// setup.
func ranked(t testing.TB, c *car.Car) []holes.Place {
	t.Helper()
	table, err := holes.Search(t.Context(), c, carfile.Stock(), holes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return holes.Rank(table, c, 0, holes.TargetOf(c), holes.Wishes{})
}

// few is the reference car with four combinations of holes, two of which do not
// reach the travel allowed.
func few(t testing.TB) *car.Car {
	t.Helper()
	c := threaded(t)
	c.Chassis.Upper = c.Chassis.Upper[1:]
	c.Chassis.Lower = []r2.Vec{c.Chassis.Lower[1], {X: 3 * inch, Y: 12 * inch}}
	c.Housing.Upper, c.Housing.Lower = c.Housing.Upper[:1], c.Housing.Lower[:1]
	c.Setups = []car.Setup{{Name: "baseline", Holes: car.Holes{ChassisUpper: 1}}}
	return c
}

func writtenHoles(t *testing.T, c *car.Car, n int, s units.System) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.WriteHoles(&out, c, 0, ranked(t, c), n, s); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestWriteHoles(t *testing.T) {
	const want = `Reference, setup "baseline"

COMBINATIONS OF HOLES
  4 of 4; 2 can be used. Holes: upper chassis, lower chassis, upper housing, lower housing.
  Target: anti-squat 100.0 to 160.0 %, instant center 40.00 to 60.00 in ahead and 6.00 to 14.00 in
  up.
  Nearest to the target, by the side view alone.
                                                                             turns from here
  rank  holes    anti-squat  IC ahead  IC up  lower push  of limit  pinion  upper  lower
                        [%]      [in]   [in]        [lb]       [%]     [°]
     1  2·1·1·1       154.6     41.25  11.84       9,598      93.6    5.30   0.00   0.00  in use
     2  1·1·1·1       137.5     46.86  11.96       9,625      93.8    4.65  −1.49   0.00
     3  1·2·1·1                                                                           refused
     4  2·2·1·1                                                                           refused

WHY
  - 1, holes 2·1·1·1: the present holes; inside the target; lower bars push 9,598 lb, 94 % of their
    limit; same distance as 1 other, least push decides
  - 2, holes 1·1·1·1: inside the target; lower bars push 9,625 lb, 94 % of their limit; same
    distance as 1 other, least push decides
  - 3, holes 1·2·1·1: the bars do not reach the rear droop of 4 in: they close only to 0.27 in; the
    bars do not reach the rear bump of 3 in: they close only to 2.17 in
  - 4, holes 2·2·1·1: the bars do not reach the rear droop of 4 in: they close only to 0.27 in; the
    bars do not reach the rear bump of 3 in: they close only to 2.18 in

  Arithmetic on the numbers typed in, not a certificate. A bar that fails at launch can hurt
  someone: the sanctioning body's rules, the maker's instructions and a qualified chassis builder
  and welder decide.
`
	got := writtenHoles(t, few(t), 10, units.US)
	if got != want {
		t.Errorf("got\n%s", got)
	}
}

// No more lines than asked for, in the order of the ranking, in either unit
// system and no wider than a page.
func TestWriteHolesOfManyHoles(t *testing.T) {
	c, _ := read(t, reference)
	places := ranked(t, c)
	for _, s := range []units.System{units.US, units.SI} {
		got := writtenHoles(t, c, 7, s)
		table := part(t, got, "COMBINATIONS OF HOLES")
		last := -1
		for i := range places {
			h := places[i].Holes()
			name := strings.Join([]string{strconv.Itoa(h.ChassisUpper + 1), strconv.Itoa(h.ChassisLower + 1), strconv.Itoa(h.HousingUpper + 1), strconv.Itoa(h.HousingLower + 1)}, "·")
			at := strings.Index(table, " "+name+" ")
			if i < 7 && at <= last || i >= 7 && at >= 0 {
				t.Errorf("%s of rank %d at %d in\n%s", name, i+1, at, table)
			}
			last = at
		}
		if !strings.Contains(table, "7 of 36; 36 can be used.") {
			t.Error(table)
		}
		for l := range strings.Lines(got) {
			if n := len([]rune(strings.TrimRight(l, "\n"))); n > 100 {
				t.Errorf("a line of %d characters: %q", n, l)
			}
		}
		if !strings.HasSuffix(strings.Join(strings.Fields(got), " "), chart.Caution) {
			t.Error("the caution is missing")
		}
	}
}

// Combinations that have been launched are listed with what came of it, no wider than a
// page, and the table says how each launch ended.
func TestHolesLaunched(t *testing.T) {
	c := few(t)
	table, err := holes.Search(t.Context(), c, carfile.Stock(), holes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	launches, err := holes.LaunchAll(t.Context(), table, c, 0, holes.LaunchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	places := holes.Rank(table.With(launches), c, 0, holes.TargetOf(c), holes.Wishes{})
	for _, s := range []units.System{units.US, units.SI} {
		var out, lines bytes.Buffer
		if err := report.WriteHoles(&out, c, 0, places, 4, s); err != nil {
			t.Fatal(err)
		}
		for l := range strings.Lines(out.String()) {
			if n := len([]rune(strings.TrimRight(l, "\n"))); n > 100 {
				t.Errorf("a line of %d characters: %q", n, l)
			}
		}
		if !strings.Contains(out.String(), "loads by side view and launch") {
			t.Errorf("nothing says that they are launched:\n%s", &out)
		}
		if err := report.WriteHolesCSV(&lines, places, s); err != nil {
			t.Fatal(err)
		}
		list, err := csv.NewReader(&lines).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, line := range list[1:] {
			want := ""
			if l := places[i].Launch(); l != nil {
				want = l.Outcome.String()
			}
			if got := line[len(line)-1]; got != want || (want == "") == places[i].Combination().Usable() {
				t.Errorf("line %d ends with %q, want %q", i+1, got, want)
			}
		}
	}
}

// The table has every combination with the values of the search, and nothing
// where there is none.
func TestHolesCSV(t *testing.T) {
	c := few(t)
	places := ranked(t, c)
	folder := filepath.Join(t.TempDir(), "new", "tables")
	if err := report.SaveHolesCSV(folder, places, units.US); err != nil {
		t.Fatal(err)
	}
	file, err := os.Open(filepath.Join(folder, report.HolesFile))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) != 5 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	const head = "rank,usable,chassis_upper,chassis_lower,housing_upper,housing_lower,instant_center_x [in],instant_center_z [in],anti_squat [%],anti_squat_least [%],anti_squat_greatest [%],pinion_change [deg],closure_droop [in],closure_bump [in],hit_lower_push [lb],hit_upper_pull [lb],hooked_lower_push [lb],hooked_upper_pull [lb],highest_share [%],upper_length [in],lower_length [in],upper_turns,lower_turns,moved_ends,distance,sixty_ft [s],envelope_share [%],rear_apart [%],front_lift [in],launch"
	if got := strings.Join(lines[0], ","); got != head {
		t.Errorf("the header is\n%s", got)
	}
	for i, line := range lines[1:] {
		p := &places[i]
		h := p.Holes()
		if line[0] != strconv.Itoa(i+1) || line[2] != strconv.Itoa(h.ChassisUpper+1) || line[3] != strconv.Itoa(h.ChassisLower+1) {
			t.Errorf("line %d: %q", i+1, line)
		}
		if line[1] != strconv.FormatBool(h.ChassisLower == 0) {
			t.Errorf("usable %q of holes %v", line[1], h)
		}
		for j := 6; j < 23; j++ {
			if usable := line[1] == "true"; usable == (line[j] == "") {
				t.Errorf("line %d, %s: %q", i+1, lines[0][j], line[j])
			}
		}
		if h == c.Setups[0].Holes {
			// The reference point.
			for name, want := range map[string]float64{"instant_center_x [in]": 41.25, "anti_squat [%]": 154.6, "upper_length [in]": math.Hypot(20, 5.5), "upper_turns": 0, "moved_ends": 0} {
				for j := range lines[0] {
					if lines[0][j] == name {
						got, err := strconv.ParseFloat(line[j], 64)
						if err != nil {
							t.Error(err)
						}
						near(t, name, got, want, 0.05)
					}
				}
			}
		}
	}
	blocked := filepath.Join(folder, report.HolesFile)
	if err := report.SaveHolesCSV(blocked, places, units.US); err == nil || !strings.Contains(err.Error(), blocked) {
		t.Errorf("into a file: %v", err)
	}
}

package report_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/model/analysis"
	"bowline/model/units"
)

// parsed reads a table back as a list of lines by column name.
func parsed(t *testing.T, write func(io.Writer, *analysis.Result, units.System) error, r *analysis.Result, s units.System) (header []string, lines []map[string]string) {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out, r, s); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, record := range records[1:] {
		line := map[string]string{}
		for i, name := range records[0] {
			if _, twice := line[name]; twice {
				t.Errorf("two columns are named %q", name)
			}
			line[name] = record[i]
		}
		lines = append(lines, line)
	}
	return records[0], lines
}

// field reads a number of a line.
func field(t *testing.T, line map[string]string, name string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(line[name], 64)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return x
}

func TestTravelCSV(t *testing.T) {
	r, s := load(t, reference)
	header, lines := parsed(t, report.WriteTravelCSV, r, s)
	want := strings.Split("travel [in],instant_center_x [in],instant_center_z [in],anti_squat [%],pinion_change [deg],axle_shift [in],cg_height [in]", ",")
	for _, c := range []string{"hooked", "hit"} {
		for _, name := range []string{"thrust [lb]", "axle_torque [lb-ft]", "accel_g", "rear_load [lb]", "front_load [lb]", "upper_pull [lb]", "lower_pull [lb]", "spring_push [lb]", "spring_change [lb]", "bars_share"} {
			want = append(want, c+"_"+name)
		}
		for _, hole := range []string{"chassis_upper", "chassis_lower", "housing_upper", "housing_lower"} {
			want = append(want, c+"_"+hole+"_forward [lb]", c+"_"+hole+"_up [lb]")
		}
	}
	if want = append(want, "hooked_governs", "hit_governs"); !slices.Equal(header, want) {
		t.Errorf("header\n%q, want\n%q", header, want)
	}

	d := written(t, r, s)
	if len(lines) != len(d.Travel) {
		t.Fatalf("%d lines for %d rows", len(lines), len(d.Travel))
	}
	for i, line := range lines {
		row := &d.Travel[i]
		for name, want := range map[string]float64{
			"travel [in]": row.Travel, "instant_center_x [in]": row.InstantCenter[0], "instant_center_z [in]": row.InstantCenter[1],
			"anti_squat [%]": *row.AntiSquat, "pinion_change [deg]": row.PinionChange, "axle_shift [in]": row.AxleShift, "cg_height [in]": row.CGHeight,
			"hooked_thrust [lb]": row.Hooked.Thrust, "hooked_axle_torque [lb-ft]": row.Hooked.AxleTorque, "hooked_accel_g": row.Hooked.AccelG,
			"hooked_rear_load [lb]": row.Hooked.RearLoad, "hit_front_load [lb]": row.Hit.FrontLoad,
			"hit_upper_pull [lb]": *row.Hit.Upper, "hit_lower_pull [lb]": *row.Hit.Lower, "hooked_spring_push [lb]": *row.Hooked.Spring,
			"hit_spring_change [lb]": *row.Hit.SpringChange, "hooked_bars_share": *row.Hooked.BarsShare,
			"hit_chassis_upper_forward [lb]": row.Hit.HoleForces.ChassisUpper[0], "hit_chassis_lower_up [lb]": row.Hit.HoleForces.ChassisLower[1],
			"hooked_housing_upper_up [lb]": row.Hooked.HoleForces.HousingUpper[1], "hooked_housing_lower_forward [lb]": row.Hooked.HoleForces.HousingLower[0],
		} {
			if got := field(t, line, name); got != want {
				t.Errorf("line %d, %s: %v, want %v", i, name, got, want)
			}
		}
		if line["hooked_governs"] != row.Hooked.Governs || line["hit_governs"] != row.Hit.Governs {
			t.Errorf("line %d governed by %q, %q", i, line["hooked_governs"], line["hit_governs"])
		}
	}
}

func TestTravelCSVInSI(t *testing.T) {
	r, s := load(t, referenceSI)
	_, lines := parsed(t, report.WriteTravelCSV, r, s)
	ride := lines[rideIndex(t, r)]
	near(t, "instant center", field(t, ride, "instant_center_x [mm]"), 41.25*25.4, 0.2)
	near(t, "torque", field(t, ride, "hit_axle_torque [N m]"), 15808*1.3558179, 1)
	near(t, "upper", field(t, ride, "hit_upper_pull [N]"), 6777*lbf, 3)
	near(t, "pinion joint", field(t, ride, "pinion_joint [deg]"), -1.1405, 1e-4)
	near(t, "transmission joint", field(t, ride, "transmission_joint [deg]"), 2.6405, 1e-4)
}

func TestCSVIsEmptyWhereThereIsNoValue(t *testing.T) {
	r := parallel(t)
	_, lines := parsed(t, report.WriteTravelCSV, r, units.US)
	if line := lines[rideIndex(t, r)]; line["instant_center_x [in]"] != "" || line["instant_center_z [in]"] != "" || line["anti_squat [%]"] == "" {
		t.Errorf("parallel bars: %v", line)
	}
	r = unheld(t)
	_, lines = parsed(t, report.WriteTravelCSV, r, units.US)
	line := lines[rideIndex(t, r)]
	for _, name := range []string{"upper_pull [lb]", "lower_pull [lb]", "spring_push [lb]", "spring_change [lb]", "bars_share", "chassis_upper_up [lb]"} {
		if got, ok := line["hit_"+name]; got != "" || !ok {
			t.Errorf("an axle that is not held: %s %q", name, got)
		}
	}
	if line["hit_thrust [lb]"] == "" {
		t.Error("there is no thrust")
	}
}

func TestBarsCSV(t *testing.T) {
	r, s := load(t, reference)
	_, lines := parsed(t, report.WriteBarsCSV, r, s)
	if len(lines) != 2 || lines[0]["bar"] != "upper" || lines[1]["bar"] != "lower" {
		t.Fatalf("lines %v", lines)
	}
	d := written(t, r, s)
	for i, b := range []report.BarData{d.Bars.Upper, d.Bars.Lower} {
		for name, want := range map[string]float64{
			"od [in]": b.OD, "wall [in]": b.Wall, "length [in]": b.Length, "slenderness": b.Slenderness, "euler [lb]": b.Euler, "johnson [lb]": b.Johnson,
			"first_yield [lb]": b.FirstYield, "capacity_push [lb]": b.CapacityPush, "capacity_pull [lb]": b.CapacityPull,
		} {
			if got := field(t, lines[i], name); got != want {
				t.Errorf("line %d, %s: %v, want %v", i, name, got, want)
			}
		}
		if l := lines[i]; l["material"] != b.Material || l["governs_push"] != b.GovernsPush || l["governs_pull"] != b.GovernsPull {
			t.Errorf("words %v", l)
		}
	}
	pull, push := d.Bars.Upper.Worst.Pull, d.Bars.Lower.Worst.Push
	if field(t, lines[0], "worst_pull [lb]") != pull.Force || field(t, lines[0], "worst_pull_share") != pull.Share || field(t, lines[0], "worst_pull_travel [in]") != pull.Travel || lines[0]["worst_pull_case"] != pull.Case {
		t.Errorf("worst pull %v, want %+v", lines[0], pull)
	}
	if field(t, lines[1], "worst_push [lb]") != push.Force || lines[1]["worst_push_case"] != push.Case {
		t.Errorf("worst push %v, want %+v", lines[1], push)
	}
	if lines[0]["worst_push [lb]"] != "" || lines[1]["worst_pull_case"] != "" {
		t.Errorf("a bar that is never loaded that way: %v", lines)
	}
}

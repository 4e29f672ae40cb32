package report_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
)

// handmade is a launch of the reference car that never was, with a preload,
// over 60 ft in 1.5 s.
func handmade(t testing.TB) (*analysis.Result, *launch.Result) {
	t.Helper()
	c, _ := read(t, reference)
	c.Setups[0].Turns.UpperLeft, c.Setups[0].Turns.LowerRight = 1.5, -0.25
	const pound, degree = lbf, math.Pi / 180
	l := &launch.Result{
		Options: launch.Options{Distance: 60 * 12 * inch, Limit: 3, Rollout: 12 * inch, Output: 0.5}, Outcome: launch.Finished, Elapsed: 1.5,
		Lift: launch.Lift{Height: 3 * inch, Time: 0.4, Start: 0.25, Duration: 0.625},
		History: launch.History{
			Time:     []float64{0, 0.5, 1, 1.5},
			Tension:  [launch.RodCount][]float64{{10 * pound, 100 * pound, 200 * pound, 0}, {-10 * pound, 150 * pound, 7000 * pound, 0}, {0, -50 * pound, -60 * pound, 0}, {0, -9000 * pound, -80 * pound, 0}, {1, 2, 3, 4}},
			RearLoad: [2][]float64{{600 * pound, 700 * pound, 800 * pound, 900 * pound}, {625 * pound, 725 * pound, 825 * pound, 925 * pound}}, FrontLoad: [2][]float64{{650 * pound, 0, 0, 10 * pound}, {675 * pound, 0, 0, 20 * pound}},
			Thrust: []float64{0, 4000 * pound, 3000 * pound, 2000 * pound}, Pitch: []float64{0, 1 * degree, 2 * degree, -1 * degree}, Roll: []float64{0, 0.5 * degree, -0.25 * degree, 0},
			RearTravel: [2][]float64{{0, -inch, -2 * inch, 0}, {0, -3 * inch, inch, 0}}, FrontTravel: [2][]float64{{0, -2 * inch, -2 * inch, 0}, {0, -4 * inch, -2 * inch, 0}},
			Speed: []float64{0, 8.9408, 17.8816, 26.8224}, Distance: []float64{0, 2, 9, 18.288},
			Slip: [2][]float64{{0, 0.5, 0.25, 0.125}, {0, 0.75, 0.25, 0.0625}}, WheelSpeed: []float64{0, 17.8816, 22.352, 26.8224}, Engine: []float64{0, 100 * math.Pi, 200 * math.Pi, 220 * math.Pi},
			Driveshaft: []float64{0, 50 * math.Pi, 120 * math.Pi, 140 * math.Pi},
			Torque:     []float64{0, 9000 * pound * 12 * inch, 8000 * pound * 12 * inch, 1000 * pound * 12 * inch}, WheelieBar: []float64{0, 100 * pound, 0, 0},
			TireThrust: [2][]float64{{0, 2500 * pound, 1500 * pound, 900 * pound}, {0, 1500 * pound, 1500 * pound, 1100 * pound}},
		},
		FromRelease: 1.75, Holds: 700 * pound * 12 * inch,
		Events: []launch.Event{
			{Kind: launch.Wheelspin, From: 0.25, To: 1, Value: 0.75, Time: 0.5},
			{Kind: launch.TireUnloaded, Sided: true, Side: launch.Right, From: 0.5, To: 0.625, Value: 12 * pound, Time: 0.5},
			{Kind: launch.FrontWheelsOff, From: 0.5, To: 1, Value: 3 * inch, Time: 0.75},
			{Kind: launch.AtRevLimit, From: 0.75, To: 1, Value: 260 * math.Pi, Time: 0.875},
		},
	}
	l.Peaks[launch.UpperLeft] = launch.Peak{Pull: 201 * pound, PullTime: 1}
	l.Peaks[launch.UpperRight] = launch.Peak{Pull: 7001 * pound, PullTime: 1, Push: 11 * pound, PushTime: 0.002}
	l.Peaks[launch.LowerLeft] = launch.Peak{Push: 61 * pound, PushTime: 1}
	l.Peaks[launch.LowerRight] = launch.Peak{Push: 9001 * pound, PushTime: 0.501, Pull: 1 * pound, PullTime: 1.499}
	l.Static = launch.Static{Tension: [launch.RodCount]float64{10 * pound, -10 * pound}, RearLoad: [2]float64{600 * pound, 625 * pound}, FrontLoad: [2]float64{650 * pound, 675 * pound}}
	for b := range l.PerTurn {
		by := float64(b+1) * pound
		l.PerTurn[b].Tension[b] = -100 * by
		l.PerTurn[b].RearLoad, l.PerTurn[b].FrontLoad = [2]float64{-20 * by, 20 * by}, [2]float64{25 * by, -25 * by}
	}
	// Where everything is: as in the first instants of a launch that was.
	was, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{Limit: 0.01})
	if err != nil {
		t.Fatal(err)
	}
	l.Parameters, l.Frames = was.Parameters, was.Frames[:len(l.Time)]
	return analyze(t, c), l
}

// overTime is one quantity of a launch over its times.
type overTime struct {
	header string // In the CSV.
	values []float64
}

// handmadeLists are what JSON and CSV list of the launch that handmade returns,
// in the order of the CSV.
func handmadeLists(s units.System) []overTime {
	type unit struct {
		symbol string
		size   float64 // of a pound, an inch or a mile an hour
	}
	force, length, speed, torque := unit{"lb", 1}, unit{"in", 1}, unit{"mph", 1}, unit{"lb-ft", 1}
	if s == units.SI {
		force, length, speed, torque = unit{"N", lbf}, unit{"mm", 25.4}, unit{"km/h", 1.609344}, unit{"N m", lbf * 12 * inch}
	}
	second, degree := unit{"s", 1}, unit{"deg", 1}
	list := func(name string, u unit, values ...float64) overTime {
		for i := range values {
			values[i] *= u.size
		}
		return overTime{name + " [" + u.symbol + "]", values}
	}
	return []overTime{
		list("t", second, 0, 0.5, 1, 1.5),
		list("upper_left_pull", force, 10, 100, 200, 0),
		list("upper_right_pull", force, -10, 150, 7000, 0),
		list("lower_left_pull", force, 0, -50, -60, 0),
		list("lower_right_pull", force, 0, -9000, -80, 0),
		list("pitch", degree, 0, 1, 2, -1),
		list("roll", degree, 0, 0.5, -0.25, 0),
		// The mean of both sides.
		list("rear_travel", length, 0, -2, -0.5, 0),
		list("front_travel", length, 0, -3, -2, 0),
		list("thrust", force, 0, 4000, 3000, 2000),
		list("rear_left", force, 600, 700, 800, 900),
		list("rear_right", force, 625, 725, 825, 925),
		list("front_left", force, 650, 0, 0, 10),
		list("front_right", force, 675, 0, 0, 20),
		// 20 mph is 8.9408 m/s.
		list("speed", speed, 0, 20, 40, 60),
		{"slip_left", []float64{0, 0.5, 0.25, 0.125}},
		{"slip_right", []float64{0, 0.75, 0.25, 0.0625}},
		list("wheel_speed", speed, 0, 40, 50, 60),
		list("engine_speed", unit{"rpm", 1}, 0, 3000, 6000, 6600),
		list("axle_torque", torque, 0, 9000, 8000, 1000),
		list("wheelie", force, 0, 100, 0, 0),
		list("thrust_left", force, 0, 2500, 1500, 900),
		list("thrust_right", force, 0, 1500, 1500, 1100),
		list("rear_travel_left", length, 0, -1, -2, 0),
		list("rear_travel_right", length, 0, -3, 1, 0),
		list("front_travel_left", length, 0, -2, -2, 0),
		list("front_travel_right", length, 0, -4, -2, 0),
		list("distance", length, 0, 2/inch, 9/inch, 18.288/inch),
		list("driveshaft_speed", unit{"rpm", 1}, 0, 1500, 3600, 4200),
	}
}

// documentOf returns the JSON document, read back strictly.
func documentOf(t *testing.T, r *analysis.Result, l *launch.Result, s units.System) *report.Document {
	t.Helper()
	var out bytes.Buffer
	if err := report.WriteJSON(&out, r, l, handmadeWorth(), s); err != nil {
		t.Fatal(err)
	}
	d := json.NewDecoder(&out)
	d.DisallowUnknownFields()
	var document report.Document
	if err := d.Decode(&document); err != nil {
		t.Fatal(err)
	}
	return &document
}

// The names are what other programs read.
func TestJSONNamesOfALaunch(t *testing.T) {
	r, l := handmade(t)
	var out bytes.Buffer
	if err := report.WriteJSON(&out, r, l, handmadeWorth(), units.US); err != nil {
		t.Fatal(err)
	}
	var d struct{ Launch map[string]any }
	if err := json.Unmarshal(out.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	fields := func(what string, value any, want string) map[string]any {
		t.Helper()
		object, ok := value.(map[string]any)
		names := strings.Fields(want)
		slices.Sort(names)
		if got := slices.Sorted(maps.Keys(object)); !ok || !slices.Equal(got, names) {
			t.Errorf("%s has\n%v, want\n%v", what, got, names)
		}
		return object
	}
	const bars, tires = "upper_left upper_right lower_left lower_right", "rear_left rear_right front_left front_right"
	fields("launch", d.Launch, "outcome verdict sixty_ft peaks front_lift rest per_turn scales even_rear assumed t pitch roll rear_travel front_travel thrust speed rollout from_release events slip slip_left slip_right wheel_speed engine_speed driveshaft_speed axle_torque wheelie thrust_left thrust_right rear_travel_left rear_travel_right front_travel_left front_travel_right distance instant_center anti_squat "+bars+" "+tires)
	peaks, turns := fields("peaks", d.Launch["peaks"], bars), fields("per_turn", d.Launch["per_turn"], bars)
	for _, bar := range strings.Fields(bars) {
		fields(bar, peaks[bar], "pull push t pull_t push_t pull_share push_share")
		fields(bar, turns[bar], bars+" "+tires)
	}
	fields("event", d.Launch["events"].([]any)[0], "kind side from to value t holds")
	assumed := fields("assumed", d.Launch["assumed"].([]any)[0], "path name value unit changes")
	fields("change", assumed["changes"].([]any)[0], "kind value said worst_share launch_share sixty_ft outcome")
	fields("rest", d.Launch["rest"], bars+" "+tires)
	fields("scales", d.Launch["scales"], "lf rf lr rr cross_weight")
	fields("even_rear", d.Launch["even_rear"], "bar turns thread")
	fields("front_lift", d.Launch["front_lift"], "height t start duration")
}

func TestJSONOfALaunch(t *testing.T) {
	r, l := handmade(t)
	for s, unit := range map[units.System]struct{ force, length float64 }{units.US: {1, 1}, units.SI: {lbf, 25.4}} {
		d := documentOf(t, r, l, s).Launch
		if d == nil || d.Outcome != "finished" || d.Verdict != words.LaunchVerdict(l, s) || len(d.Assumed) != 3 {
			t.Fatalf("%v: %+v", s, d)
		}
		near(t, "60 ft", *d.SixtyFeet, 1.5, 0)
		near(t, "from release", *d.FromRelease, 1.75, 0)
		near(t, "rollout", d.Rollout, 12*unit.length, 1e-9)
		near(t, "mean slip", d.Slip[1], 0.625, 1e-12)
		near(t, "held torque", *d.Events[0].Holds, 700*map[units.System]float64{units.US: 1, units.SI: lbf * 12 * inch}[s], 1e-6)
		d.Events[0].Holds = nil
		want := []report.EventData{
			{Kind: "wheelspin", From: 0.25, To: 1, Value: 0.75, Time: 0.5},
			{Kind: "tire_unloaded", Side: "right", From: 0.5, To: 0.625, Value: 12 * unit.force, Time: 0.5},
			{Kind: "front_wheels_off", From: 0.5, To: 1, Value: 3 * unit.length, Time: 0.75},
			{Kind: "rev_limit", From: 0.75, To: 1, Value: 7800, Time: 0.875},
		}
		for k, e := range d.Events {
			near(t, e.Kind, e.Value, want[k].Value, 1e-9*want[k].Value)
			if e.Value = want[k].Value; e != want[k] {
				t.Errorf("%v: %+v, want %+v", s, e, want[k])
			}
		}
		lists := [][]float64{d.Time, d.UpperLeft, d.UpperRight, d.LowerLeft, d.LowerRight, d.Pitch, d.Roll, d.Rear, d.Front, d.Thrust, d.RearLeft, d.RearRight, d.FrontLeft, d.FrontRight, d.Speed,
			d.SlipLeft, d.SlipRight, d.WheelSpeed, d.EngineSpeed, d.AxleTorque, d.Wheelie, d.ThrustLeft, d.ThrustRight,
			d.RearTravelLeft, d.RearTravelRight, d.FrontTravelLeft, d.FrontTravelRight, d.Distance, d.DriveshaftSpeed}
		for k, want := range handmadeLists(s) {
			if len(lists[k]) != len(want.values) {
				t.Fatalf("%v, %s: %v", s, want.header, lists[k])
			}
			for i := range want.values {
				near(t, want.header, lists[k][i], want.values[i], 1e-9*(1+math.Abs(want.values[i])))
			}
		}
		p := d.Peaks.LowerRight
		near(t, "push", p.Push, 9001*unit.force, 1e-6)
		near(t, "pull", p.Pull, unit.force, 1e-6)
		if p.Time != 0.501 || p.PushTime != 0.501 || p.PullTime != 1.499 || d.Peaks.UpperRight.Time != 1 {
			t.Errorf("%v: %+v", s, p)
		}
		near(t, "share", p.PushShare, 9001/10257., 1e-4)
		near(t, "share", d.Peaks.UpperRight.PullShare, 7001/10341.3, 1e-4)
		near(t, "height", d.FrontLift.Height, 3*unit.length, 1e-9)
		near(t, "rest", d.Rest.FrontRight, 675*unit.force, 1e-6)
		// The scales read masses: 675 + 600 of 2,550 lb cross weight. 25 lb apart, a turn
		// of the lower right bar makes 160 lb more of that.
		pound := map[units.System]float64{units.US: 1, units.SI: lbf / 9.80665}[s]
		if got, want := d.Scales, (report.ScalesData{LeftFront: 650 * pound, RightFront: 675 * pound, LeftRear: 600 * pound, RightRear: 625 * pound, CrossWeight: 0.5}); math.Abs(got.LeftFront-want.LeftFront)+math.Abs(got.RightFront-want.RightFront)+math.Abs(got.LeftRear-want.LeftRear)+math.Abs(got.RightRear-want.RightRear)+math.Abs(got.CrossWeight-want.CrossWeight) > 1e-9 {
			t.Errorf("%v: scales %+v, want %+v", s, got, want)
		}
		if e := d.EvenRear; e == nil || e.Bar != "lower_right" || math.Abs(e.Turns+25./160) > 1e-9 || !e.Thread {
			t.Errorf("%v: %+v", s, e)
		}
		near(t, "per turn", d.PerTurn.LowerLeft.LowerLeft, -300*unit.force, 1e-6)
		near(t, "per turn", d.PerTurn.UpperRight.RearLeftTire, -40*unit.force, 1e-6)
	}
}

func TestJSONOfLaunchesThatAreNone(t *testing.T) {
	r, l := handmade(t)
	if d := documentOf(t, r, nil, units.US); d.Launch != nil {
		t.Errorf("%+v", d.Launch)
	}
	d := documentOf(t, r, &launch.Result{Outcome: launch.NoRest}, units.US).Launch
	if d == nil || d.Outcome != "found no rest" || d.SixtyFeet != nil || d.Time == nil || len(d.Time) != 0 || d.Rear == nil || d.Assumed == nil || d.EvenRear != nil {
		t.Errorf("%+v", d)
	}
	short := *l
	short.Outcome, short.Elapsed = launch.TimeUp, 0
	if d := documentOf(t, r, &short, units.US).Launch; d.SixtyFeet != nil {
		t.Errorf("60 ft in %v of a car that did not come so far", *d.SixtyFeet)
	}
	eighth := *l
	eighth.Options.Distance = 660 * 12 * inch
	if d := documentOf(t, r, &eighth, units.US).Launch; d.SixtyFeet != nil {
		t.Errorf("60 ft in %v of a launch over 660 ft", *d.SixtyFeet)
	}
}

// launchText returns the sections of the text report that tell of a launch.
func launchText(t *testing.T, r *analysis.Result, l *launch.Result, worth []assumptions.Worth, s units.System) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.WriteText(&out, r, l, worth, s); err != nil {
		t.Fatal(err)
	}
	_, found, ok := strings.Cut(out.String(), "\nLAUNCH\n")
	if !ok {
		t.Fatalf("there is no launch in\n%s", out.String())
	}
	found, _, _ = strings.Cut(found, "\n  Arithmetic ")
	return found
}

func TestTextOfALaunch(t *testing.T) {
	r, l := handmade(t)
	for s, golden := range map[units.System]string{units.US: "launch.txt", units.SI: "launch-si.txt"} {
		verdict, got, _ := strings.Cut(launchText(t, r, l, handmadeWorth(), s), "\n  outcome ")
		if said := strings.Join(strings.Fields(verdict), " "); said != words.LaunchVerdict(l, s) {
			t.Errorf("the verdict reads %q", said)
		}
		path := filepath.Join("testdata", golden)
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
			t.Errorf("%s reads\n%s", golden, got)
		}
	}
}

func TestTextOfLaunchesThatEndOtherwise(t *testing.T) {
	r, l := handmade(t)
	for lift, want := range map[launch.Lift]string{
		{}:                         "front wheels stay on the ground",
		{Height: inch, Time: 0.25}: "front wheels one at a time off the ground, up to 1.00 in at 0.250 s",
	} {
		l.Lift, l.Outcome, l.Elapsed = lift, launch.TimeUp, 0
		_, facts, _ := strings.Cut(launchText(t, r, l, nil, units.US), "\n  outcome ")
		got := "  outcome " + facts
		if words := line(t, got, "front wheels"); words != want {
			t.Errorf("%q, want %q", words, want)
		}
		if words := line(t, got, "60 ft"); words != "60 ft not reached" {
			t.Error(words)
		}
		if words := line(t, got, "outcome"); words != "outcome time up after 1.500 s and 60.0 ft" {
			t.Error(words)
		}
		if strings.Contains(got, "ASSUMED") {
			t.Error("nothing is assumed, yet there is a list")
		}
	}
	none := &launch.Result{Outcome: launch.NoRest}
	if said := strings.Join(strings.Fields(launchText(t, r, none, nil, units.US)), " "); said != words.LaunchVerdict(none, units.US) {
		t.Error(said)
	}
}

// The PDF says what the text says, and shows the charts.
func TestPDFOfALaunch(t *testing.T) {
	r, l := handmade(t)
	for _, l := range []*launch.Result{l, {Outcome: launch.NoRest}} {
		_, pages := pdf(t, r, l, units.US)
		all := strings.ToUpper(strings.Join(pages, ""))
		for _, word := range strings.Fields(launchText(t, r, l, handmadeWorth(), units.US)) {
			if strings.Trim(word, "-") != "" && !strings.Contains(all, strings.ToUpper(word)) {
				t.Errorf("%q is missing", word)
			}
		}
		for _, c := range plotting.All(plotting.Of(r, l)) {
			if c.Blank {
				continue
			}
			if !strings.Contains(strings.Join(pages[2:], ""), squeezed(c.Title)) {
				t.Errorf("the chart %q is missing", c.Title)
			}
		}
	}
}

func TestLaunchCSV(t *testing.T) {
	r, l := handmade(t)
	write := func(w io.Writer, r *analysis.Result, s units.System) error { return report.WriteLaunchCSV(w, r, l, s) }
	for _, s := range []units.System{units.US, units.SI} {
		header, lines := parsed(t, write, r, s)
		want := handmadeLists(s)
		if len(header) != len(want)+3 || len(lines) != 4 {
			t.Fatalf("%v: %d lines under\n%q", s, len(lines), header)
		}
		for k, column := range want {
			if header[k] != column.header {
				t.Fatalf("%v: column %d is %q, want %q", s, k, header[k], column.header)
			}
			for i, value := range column.values {
				near(t, column.header, field(t, lines[i], column.header), value, 1e-9*(1+math.Abs(value)))
			}
		}
	}
}

// What a launch reports over time, by its name in JSON and in the CSV: bars, tire
// loads, thrust, slip, speeds, torque, wheelie bar, attitude, travels and side view,
// left and right apart.
var reported = map[string]string{
	"upper_left": "upper_left_pull [lb]", "upper_right": "upper_right_pull [lb]", "lower_left": "lower_left_pull [lb]", "lower_right": "lower_right_pull [lb]",
	"rear_left": "rear_left [lb]", "rear_right": "rear_right [lb]", "front_left": "front_left [lb]", "front_right": "front_right [lb]",
	"thrust": "thrust [lb]", "thrust_left": "thrust_left [lb]", "thrust_right": "thrust_right [lb]", "slip_left": "slip_left", "slip_right": "slip_right",
	"wheel_speed": "wheel_speed [mph]", "speed": "speed [mph]", "engine_speed": "engine_speed [rpm]", "driveshaft_speed": "driveshaft_speed [rpm]",
	"axle_torque": "axle_torque [lb-ft]", "wheelie": "wheelie [lb]", "pitch": "pitch [deg]", "roll": "roll [deg]",
	"rear_travel_left": "rear_travel_left [in]", "rear_travel_right": "rear_travel_right [in]",
	"front_travel_left": "front_travel_left [in]", "front_travel_right": "front_travel_right [in]",
	"anti_squat": "anti_squat [%]", "t": "t [s]", "distance": "distance [in]",
}

// JSON and CSV carry all of it at the same, evenly spaced times.
func TestJSONAndCSVCarryTheWholeLaunch(t *testing.T) {
	c, _ := read(t, reference)
	r := analyze(t, c)
	l, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := report.WriteJSON(&out, r, l, nil, units.US); err != nil {
		t.Fatal(err)
	}
	var d struct{ Launch map[string]any }
	if err := json.Unmarshal(out.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	_, lines := parsed(t, func(w io.Writer, r *analysis.Result, s units.System) error { return report.WriteLaunchCSV(w, r, l, s) }, r, units.US)
	list := func(name string) []any {
		list, _ := d.Launch[name].([]any)
		if len(list) != len(lines) || len(list) < 500 {
			t.Fatalf("%s has %d values in JSON, the CSV %d lines", name, len(list), len(lines))
		}
		return list
	}
	for name, header := range reported {
		moves := false
		for i, value := range list(name) {
			if value != nil {
				near(t, header, field(t, lines[i], header), value.(float64), 0)
				moves = moves || value != list(name)[0]
			}
		}
		if !moves && name != "wheelie" { // the car has no wheelie bar
			t.Errorf("%s stays as it is", name)
		}
	}
	step := list("t")[1].(float64)
	for i, at := range list("t") {
		near(t, "even time", at.(float64), float64(i)*step, 1e-9)
	}
	for i, point := range list("instant_center") {
		for k, header := range []string{"instant_center_x [in]", "instant_center_z [in]"} {
			near(t, header, field(t, lines[i], header), point.([]any)[k].(float64), 0)
		}
	}
	// At the start the car stands at the reference point of the side view, but for
	// the bars' stretch and what its rest leaves of the ride height.
	near(t, "instant center", field(t, lines[0], "instant_center_x [in]"), 41.25, 0.3)
	near(t, "instant center", field(t, lines[0], "instant_center_z [in]"), 11.84, 0.3)
	near(t, "anti-squat", field(t, lines[0], "anti_squat [%]"), 154.6, 3)
	// Both tires' thrust is the whole thrust.
	for i := range lines {
		near(t, "thrust", field(t, lines[i], "thrust_left [lb]")+field(t, lines[i], "thrust_right [lb]"), field(t, lines[i], "thrust [lb]"), 1e-6)
	}
}

// The summary has the times, the peaks and what happened, each in its line.
func TestSummaryOfALaunch(t *testing.T) {
	r, l := handmade(t)
	for s, want := range map[units.System][]string{
		units.US: {
			"sixty_ft,,1.5,s,,,,", "from_release,,1.75,s,,,,", "rollout,,12,in,,,,", "upper_left_pull,,201,lb,1,,,*", "lower_right_push,,9001,lb,0.501,,,*",
			"lower_right_pull,,1,lb,1.499,,,*", "upper_left_push,,0,lb,0,,,*", "front_lift_height,,3,in,0.4,,,", "front_lift_start,,0.25,s,,,,", "front_lift_duration,,0.625,s,,,,",
			"holds,,700,lb-ft,,,,", "wheelspin,,0.75,,0.5,0.25,1,", "tire_unloaded,right,12,lb,0.5,0.5,0.625,", "front_wheels_off,,3,in,0.75,0.5,1,", "rev_limit,,7800,rpm,0.875,0.75,1,",
		},
		units.SI: {"rollout,,304.8,mm,,,,", "front_lift_height,,76.2,mm,0.4,,,"},
	} {
		var out bytes.Buffer
		if err := report.WriteLaunchSummaryCSV(&out, r, l, s); err != nil {
			t.Fatal(err)
		}
		table, err := csv.NewReader(&out).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if head := strings.Join(table[0], ","); head != "figure,side,value,unit,t [s],from [s],to [s],share" || len(table) != 1+3+8+3+1+4 {
			t.Errorf("%d lines under %q", len(table), head)
		}
		for _, line := range want {
			cells := strings.Split(line, ",")
			if !slices.ContainsFunc(table, func(row []string) bool {
				return slices.EqualFunc(row, cells, func(a, b string) bool {
					x, errA := strconv.ParseFloat(a, 64)
					y, errB := strconv.ParseFloat(b, 64)
					return a == b || b == "*" && errA == nil || errA == nil && errB == nil && math.Abs(x-y) < 1e-9*y
				})
			}) {
				t.Errorf("%v: no line %q in\n%q", s, line, table)
			}
		}
	}
	// A car that found no rest has nothing but its rollout.
	var out bytes.Buffer
	if err := report.WriteLaunchSummaryCSV(&out, r, &launch.Result{Outcome: launch.NoRest}, units.US); err != nil || !strings.Contains(out.String(), "sixty_ft,,,s,,,,\n") {
		t.Errorf("%v\n%s", err, out.String())
	}
}

func TestSaveALaunch(t *testing.T) {
	r, l := handmade(t)
	folder := t.TempDir()
	if err := report.SaveCSV(folder, r, l, units.US); err != nil {
		t.Fatal(err)
	}
	if got := names(t, folder); !slices.Equal(got, []string{"bars.csv", "launch-summary.csv", "launch.csv", "travel.csv"}) {
		t.Errorf("files %q", got)
	}
	folder = t.TempDir()
	if err := report.SaveCharts(folder, r, l, units.US); err != nil {
		t.Fatal(err)
	}
	files := names(t, folder)
	for _, want := range []string{"bar-force.svg", "launch-bars.svg", "launch-wheels.svg", "launch-attitude.png", "launch-tires.svg"} {
		if !slices.Contains(files, want) {
			t.Errorf("%s is missing in %q", want, files)
		}
	}
}

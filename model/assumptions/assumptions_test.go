package assumptions_test

import (
	"context"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/internal/cartest"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const (
	inch  = units.Inch
	pound = units.Pound
	foot  = units.Foot
)

// read returns the car of a file.
func read(t testing.TB, path string) *car.Car {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// bare is a car that leaves out all that may be left out, with a wheelie bar.
func bare(t testing.TB) *car.Car {
	c := read(t, "../../testdata/reference.toml")
	c.Tires.RearSpinInertia = 0
	c.Launch.WheelieBar.Reach = 56 * inch
	return c
}

// found lists the assumptions of the first setup of a valid car by their paths.
func found(t testing.TB, c *car.Car) map[string]assumptions.Assumption {
	t.Helper()
	wantValid(t, c, "the car")
	r, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{Limit: 0.001})
	if err != nil {
		t.Fatal(err)
	}
	byPath := map[string]assumptions.Assumption{}
	for _, a := range assumptions.Of(r) {
		if _, twice := byPath[a.Path]; twice {
			t.Errorf("%s is listed twice", a.Path)
		}
		byPath[a.Path] = a
	}
	return byPath
}

func wantValid(t interface{ Errorf(string, ...any) }, c *car.Car, what string) {
	if problems := c.Validate(carfile.Stock(), units.US); len(problems) > 0 {
		t.Errorf("%s: %v", what, problems)
	}
}

// without are the optional numbers that a run does not rest on when they are left
// out, with the reason.
var without = map[string]string{
	"tires.carcass_rate":      "acts through the relaxation length alone, which is listed",
	"springs.rear_anti_roll":  "left out, the car has no bar",
	"springs.front_anti_roll": "left out, the car has no bar",
	"wheelie_bar.reach":       "left out, the car has no wheelie bar",
	"check.pinion_limit":      "judges combinations of holes, not the run",
	"check.lift_limit":        "judges combinations of holes, not the run",
}

func init() {
	for _, bar := range []string{"upper_bar", "lower_bar"} {
		for _, key := range []string{"thread_length", "jam_nut", "shown_threads", "fitted_length"} {
			without[bar+"."+key] = "what the adjusters allow, not what the bars carry"
		}
		without[bar+".rod_end_angle"] = "left out, the rod ends are not checked"
	}
}

// Every number that a car file may leave out is assumed by a car that does, or is
// known not to matter: a new input cannot be forgotten.
func TestEveryOptionalNumberIsListed(t *testing.T) {
	listed, without := found(t, bare(t)), maps.Clone(without)
	for _, s := range car.Sections {
		for _, f := range s.Fields {
			_, is := listed[f.Path]
			reason := without[f.Path]
			switch {
			case !f.Optional && is:
				t.Errorf("%s is listed, but every car gives it", f.Path)
			case f.Optional && is == (reason != ""):
				t.Errorf("%s: listed %v, and to be left out %q", f.Path, is, reason)
			}
			delete(without, f.Path)
		}
	}
	if len(without) > 0 {
		t.Errorf("no numbers of a car file: %v", without)
	}
	for _, path := range []string{"car.corner_weights", "upper_bar.rod_end", "lower_bar.rod_end", "locator.kind", "locator.chassis", "locator.housing", "drive.direction", "drive.curve"} {
		if _, is := listed[path]; !is {
			t.Errorf("%s is not listed", path)
		}
	}
	for path, a := range listed {
		if a.Name == "" || len(a.Changes) == 0 || a.Choice != "" && a.Value != 0 {
			t.Errorf("%s: %+v", path, a)
		}
	}
}

// give makes a car give an entry that it leaves out: as it is assumed, or near it.
func give(c *car.Car, path string, a assumptions.Assumption) {
	l, s := &c.Launch, func() float64 { return c.Body.Mass - c.Body.RearMass }
	switch path {
	case "car.corner_weights":
		c.Body.Scales = car.Scales{Given: true, LeftFront: s() / 2, RightFront: s() / 2, LeftRear: c.Body.RearMass / 2, RightRear: c.Body.RearMass / 2}
	case "upper_bar.rod_end":
		c.UpperBar.RodEnd = "3/4-16"
	case "lower_bar.rod_end":
		c.LowerBar.RodEnd = "3/4-16"
	case "locator.chassis":
		l.Locator.Chassis = car.End{Given: true, At: r3.Vec{Y: 0.4, Z: 0.3}}
	case "locator.housing":
		l.Locator.Housing = car.End{Given: true, At: r3.Vec{Y: -0.4}}
	case "drive.curve":
		l.Engine.Curve = []car.TorquePoint{{Speed: c.Drive.Speed / 2, Torque: c.Drive.Torque}, {Speed: 1.5 * c.Drive.Speed, Torque: c.Drive.Torque}}
	case "locator.kind", "drive.direction":
		c.State(path, true)
	default:
		if f := car.FieldAt(path); f.Default == 0 {
			*f.In(c) = a.Changes[0].Value
		} else {
			c.State(path, true) // with its default
		}
	}
}

// What a car gives is not assumed, even when it is what would be: each entry by
// itself, and all of them.
func TestWhatIsGivenIsNotAssumed(t *testing.T) {
	all := bare(t)
	before := found(t, all)
	for path, a := range before {
		c := bare(t)
		give(c, path, a)
		after := found(t, c)
		if _, still := after[path]; still {
			t.Errorf("%s is given and still listed", path)
		}
		if len(after) != len(before)-1 {
			t.Errorf("with %s given %d of %d are listed", path, len(after), len(before))
		}
		give(all, path, a)
	}
	if left := found(t, all); len(left) > 0 {
		t.Errorf("a car that gives everything still assumes %v", left)
	}
	// One end of the locator depends on its kind as long as it is left out; a carcass
	// rate gives the relaxation length.
	c := bare(t)
	c.State("tires.carcass_rate", true)
	if _, still := found(t, c)["tires.relaxation_length"]; still {
		t.Error("the carcass rate is given, but the relaxation length is still assumed")
	}
	c.Launch.WheelieBar.Reach = 0
	for path := range found(t, c) {
		if strings.HasPrefix(path, "wheelie_bar") {
			t.Errorf("a car without a wheelie bar assumes %s", path)
		}
	}
}

// stiffnessOf returns the driving stiffness of a tire over grip and load, B·C of the
// magic formula sin(C·atan(B·s)) that has its peak at a slip and keeps a part of it at
// a slip of 1, by bisection.
func stiffnessOf(peak, sliding float64) float64 {
	b := func(c float64) float64 { return math.Tan(math.Pi/2/c) / peak }
	low, high := 1.1, 3.0
	for range 100 {
		c := (low + high) / 2
		if math.Sin(c*math.Atan(b(c))) > sliding {
			low = c
		} else {
			high = c
		}
	}
	return low * b(low)
}

// What is assumed has the value that the run takes, worked out by hand.
func TestValues(t *testing.T) {
	stiffness := stiffnessOf(0.15, 0.75)
	listed := found(t, bare(t))
	for path, want := range map[string]float64{
		"tires.relaxation_length":   662.5 * 2.6 * stiffness / 800 * inch,
		"tires.rear_spin_inertia":   0.2 * 390 * pound * 16 * 16 * inch * inch,
		"tires.front_spin_inertia":  0,
		"car.roll_inertia":          2130 * pound * 22.4 * 22.4 * inch * inch,
		"car.axle_roll_inertia":     390 * pound * 22.4 * 22.4 * inch * inch,
		"car.housing_pitch_inertia": 390 * pound * 16 * inch * inch,
		"drive.rev_limit":           7800 * math.Pi / 30,
		"drive.release_time":        0.03,
		"upper_bar.rod_end":         inch / 16,
		"lower_bar.end_rate":        200000 * units.PoundForce / inch,
		"locator.chassis":           16.8 * inch,
		"locator.housing":           16.8 * inch,
		"tires.sliding_grip":        0.75,
	} {
		if got := listed[path].Value; math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("%s: %v, want %v", path, got, want)
		}
	}
	for path, want := range map[string]string{"locator.kind": car.TrackBar, "drive.direction": car.Clockwise, "drive.curve": assumptions.Constant} {
		if got := listed[path].Choice; got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	}
	for path, side := range map[string]string{"locator.chassis": "to the left", "locator.housing": "to the right"} {
		if !strings.Contains(listed[path].Name, side) {
			t.Errorf("%s: %q, want it %s", path, listed[path].Name, side)
		}
	}
	c := bare(t)
	c.Launch.Engine.Curve = []car.TorquePoint{{Speed: c.Drive.Speed / 2, Torque: c.Drive.Torque / 2}, {Speed: 2 * c.Drive.Speed, Torque: c.Drive.Torque / 2}}
	a := found(t, c)["drive.curve"]
	if math.Abs(a.Value-2) > 1e-12 || len(a.Changes) != 1 || math.Abs(a.Changes[0].Of(c).Drive.Torque-c.Drive.Torque/2) > 1e-9 {
		t.Errorf("a curve of half the torque: %+v", a)
	}
}

// Each number is doubled and halved, or says where it goes instead.
func TestChanges(t *testing.T) {
	c := bare(t)
	listed := found(t, c)
	for path, want := range map[string][]float64{
		"lower_bar.end_rate":      {2, 0.5},
		"tires.sliding_grip":      {1 / 0.75, 0.5}, // a tire that slides does not grip better
		"drive.rev_limit":         {2, 1.05 / 1.5}, // an engine turns at its launch speed
		"tires.peak_slip":         {2, 0.5},
		"check.factor":            {2, 0.5},
		"drive.release_time":      {2, 0.5},
		"tires.relaxation_length": {2, 0.5},
		"wheelie_bar.height":      {2, 0.5},
	} {
		a := listed[path]
		if len(a.Changes) != 2 {
			t.Errorf("%s has %d changes", path, len(a.Changes))
			continue
		}
		for i, change := range a.Changes {
			kind := [...]assumptions.Kind{assumptions.Doubled, assumptions.Halved}[i]
			if want[i] != 2 && want[i] != 0.5 {
				kind = assumptions.Moved
			}
			to := *car.FieldAt(path).In(change.Of(c))
			if change.Kind != kind || math.Abs(change.Value-want[i]*a.Value) > 1e-9*a.Value || to != change.Value {
				t.Errorf("%s: kind %v to %v, the car has %v; want %v times %v", path, change.Kind, change.Value, to, want[i], a.Value)
			}
		}
	}
	left := listed["car.corner_weights"].Changes[0]
	if got := left.Of(c).CGAside(); left.Kind != assumptions.CGToLeft || math.Abs(got-inch) > 1e-12 {
		t.Errorf("to the left is %v m by kind %v", got, left.Kind)
	}
	if d := listed["upper_bar.rod_end"].Changes[0].Of(c); math.Abs(d.UpperBar.Lead()-inch/4) > 1e-12 {
		t.Errorf("twice the pitch leads by %v m", d.UpperBar.Lead())
	}
}

// Whatever the car, each change makes a valid one that differs, of which the entry
// is then given, and leaves the car as it is.
func TestChangesOfAnyCarAreValid(t *testing.T) {
	library := carfile.Stock()
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, library)
		before := c.Clone()
		r, err := launch.Run(context.Background(), c, 0, library, launch.Options{Limit: 0.001})
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range assumptions.Of(r) {
			for _, change := range a.Changes {
				d := change.Of(c)
				wantValid(t, d, a.Path)
				if reflect.DeepEqual(c, d) {
					t.Errorf("%s: %+v changes nothing", a.Path, change)
				}
				if math.IsNaN(change.Value) || math.IsInf(change.Value, 0) {
					t.Errorf("%s: to %v", a.Path, change.Value)
				}
			}
		}
		if !reflect.DeepEqual(c, before) {
			t.Error("the car has been changed")
		}
	})
}

// A launch of parameters, or of a car that nothing holds, assumes nothing.
func TestNoLaunchNoAssumptions(t *testing.T) {
	r, err := launch.Run(context.Background(), bare(t), 0, carfile.Stock(), launch.Options{Limit: 0.001})
	if err != nil {
		t.Fatal(err)
	}
	if list := assumptions.Of(&launch.Result{Parameters: r.Parameters}); list != nil {
		t.Errorf("parameters alone assume %v", list)
	}
	if list := assumptions.Of(&launch.Result{Car: r.Car, Outcome: launch.NotHeld}); list != nil {
		t.Errorf("a car that is not held assumes %v", list)
	}
	if !slices.IsSortedFunc(assumptions.Of(r), func(a, b assumptions.Assumption) int { return section(a) - section(b) }) {
		t.Error("the list does not follow the car file")
	}
}

// section is the place of an assumption's table in the car file.
func section(a assumptions.Assumption) int {
	table, _, _ := strings.Cut(a.Path, ".")
	return slices.IndexFunc(car.Sections, func(s car.Section) bool { return s.Table == table })
}

//go:build mujoco

package launch_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"bowline/model/carfile"
	"bowline/model/launch"
)

const (
	// scripts is the folder of the script that launches a car file in MuJoCo.
	scripts = "../../testdata/mujoco"
	// agreement is how far the two may be apart, over the quantity's peak [1].
	// They share the step and every law of force, so what is left is rounding,
	// which a wheel that just touches the ground can magnify.
	agreement = 1e-3
)

// reference is what the script prints.
type reference struct {
	Version     string
	Seconds     float64              // for the launch
	BareSeconds float64              `json:"bare_seconds"` // the part that MuJoCo alone takes
	History     map[string][]float64 // by quantity, SI
}

// launchInMuJoCo runs the script on a car file.
func launchInMuJoCo(t *testing.T, path string, options map[string]any) reference {
	t.Helper()
	path, err := filepath.Abs(path)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(options)
	if err != nil {
		t.Fatal(err)
	}
	var complaint bytes.Buffer
	node := exec.Command("node", "launch.mjs", path, string(text))
	node.Dir, node.Stderr = scripts, &complaint
	out, err := node.Output()
	if err != nil {
		t.Fatalf("%v\n%s\n(npm ci in %s installs what the script needs)", err, complaint.Bytes(), scripts)
	}
	var r reference
	if err := json.Unmarshal(out, &r); err != nil {
		t.Fatal(err)
	}
	return r
}

// quantities are the histories that are compared, as the script names them.
func quantities(r *launch.Result) map[string][]float64 {
	return map[string][]float64{
		"upper_left": r.Tension[launch.UpperLeft], "upper_right": r.Tension[launch.UpperRight],
		"lower_left": r.Tension[launch.LowerLeft], "lower_right": r.Tension[launch.LowerRight],
		"locator": r.Tension[launch.Locator],
		"pitch":   r.Pitch, "roll": r.Roll,
		"rear_travel_left": r.RearTravel[launch.Left], "rear_travel_right": r.RearTravel[launch.Right],
		"front_travel_left": r.FrontTravel[launch.Left], "front_travel_right": r.FrontTravel[launch.Right],
		"rear_left": r.RearLoad[launch.Left], "rear_right": r.RearLoad[launch.Right],
		"front_left": r.FrontLoad[launch.Left], "front_right": r.FrontLoad[launch.Right],
		"wheelie_bar": r.WheelieBar, "thrust": r.Thrust, "speed": r.Speed, "engine": r.Engine,
		"thrust_left": r.TireThrust[launch.Left], "thrust_right": r.TireThrust[launch.Right],
		"slip_left": r.Slip[launch.Left], "slip_right": r.Slip[launch.Right],
		"wheel_speed": r.WheelSpeed, "driveshaft": r.Driveshaft, "axle_torque": r.Torque,
	}
}

// difference returns the greatest difference of two histories over the first's
// peak, and its index.
func difference(ours, theirs []float64) (worst float64, at int) {
	peak := 0.0
	for _, x := range ours {
		peak = math.Max(peak, math.Abs(x))
	}
	for i := range ours {
		if d := math.Abs(theirs[i] - ours[i]); d != 0 && !(d/peak <= worst) {
			worst, at = d/peak, i
		}
	}
	return worst, at
}

// MuJoCo, a general-purpose physics engine, launches the same car files in
// steps of the same length. There the car is built of its file anew, and moves
// by the equations of motion of MuJoCo.
func TestMuJoCoAgrees(t *testing.T) {
	for _, c := range []struct {
		name, file string
		setup      int
		turning    bool // whether the driveshaft's torque acts on chassis and axle
	}{
		{"Saltgrass No. 7", "../../assets/cars/saltgrass-7.toml", 0, true},
		{"Saltgrass Heavy", "../../assets/cars/saltgrass-heavy.toml", 0, true},
		{"Saltgrass Light", "../../assets/cars/saltgrass-light.toml", 0, true},
		{"preload, wheelie bar, diagonal link, counterclockwise", scripts + "/odd.toml", 1, true},
		{"ramp, wheelspin, stops, no wheelie bar", scripts + "/slick.toml", 0, true},
		{"no driveshaft torque", "../../testdata/reference.toml", 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, err := carfile.Read(c.file, carfile.Stock())
			if err != nil {
				t.Fatal(err)
			}
			p, err := launch.New(f.Car, c.setup, carfile.Stock())
			if err != nil {
				t.Fatal(err)
			}
			if !c.turning {
				p.Drive.Turning = 0
			}
			ours, took := timed(t, p)
			theirs := launchInMuJoCo(t, c.file, map[string]any{
				"setup": c.setup, "driveshaft": c.turning,
				"step": ours.Step, "output": ours.Options.Output, "until": ours.Time[len(ours.Time)-1],
			})
			sayHowFast(t, ours, &theirs, took)
			compare(t, ours, &theirs)
		})
	}
}

// compare holds every quantity of a launch against MuJoCo's.
func compare(t *testing.T, ours *launch.Result, theirs *reference) {
	t.Helper()
	most, where := 0.0, ""
	histories := quantities(ours)
	for _, name := range slices.Sorted(maps.Keys(histories)) {
		history, other := histories[name], theirs.History[name]
		if len(other) != len(history) {
			t.Fatalf("MuJoCo has %d values of %s, want %d", len(other), name, len(history))
		}
		apart, at := difference(history, other)
		text := fmt.Sprintf("%.4f %% of the peak of %s, at %.3f s: %.6g, MuJoCo %.6g", 100*apart, name, ours.Time[at], history[at], other[at])
		if !(apart <= agreement) {
			t.Error("apart by " + text)
		}
		if where == "" || apart > most {
			most, where = apart, text
		}
	}
	t.Log("apart by at most " + where)
}

// timed launches several times and returns the shortest time taken.
func timed(t *testing.T, p launch.Parameters) (result *launch.Result, shortest time.Duration) {
	t.Helper()
	shortest = math.MaxInt64
	for range 5 {
		start := time.Now()
		r, err := launch.Simulate(context.Background(), p, launch.Options{})
		if err != nil {
			t.Fatal(err)
		}
		result, shortest = r, min(shortest, time.Since(start))
	}
	return result, shortest
}

// sayHowFast prints how long both took. Nothing is judged by it.
func sayHowFast(t *testing.T, ours *launch.Result, theirs *reference, took time.Duration) {
	t.Helper()
	own := took.Seconds()
	t.Logf("%.3f s of launch, %.0f µs steps in both, one thread each: ours %.1f ms; MuJoCo %s %.0f ms with the script's forces, %.0f times as long, and %.0f ms of it in MuJoCo itself, %.0f times",
		ours.Time[len(ours.Time)-1], 1e6*ours.Step, 1e3*own,
		theirs.Version, 1e3*theirs.Seconds, theirs.Seconds/own, 1e3*theirs.BareSeconds, theirs.BareSeconds/own)
}

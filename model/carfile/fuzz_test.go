package carfile

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// Whatever the text, it is refused in words or gives a car that can be computed
// and that goes back into its text.
func FuzzDecode(f *testing.F) {
	for _, text := range forms(f) {
		f.Add(text)
		f.Add(strings.Replace(text, `"us"`, `"si"`, 1))
	}
	for _, text := range []string{
		"", mark, "\x00", "schema = 1\n[car]\nname = 'x\n", "schema = 9", "[[setup]]\n[setup.x]\n", "setup = [1, {}]", "a.b.c = {d = [[]]}",
		"[[setup]]\n[[setup.run]]\ndate = 2026-02-30\n[setup.run.x]\n", "[[setup.run]]\n[[setup]]\nrun = 1", "[[setup]]\nrun = [{date = 07:32:00}, {date = 2026-03-14T07:32:00Z}]\n",
		"[chassis_bracket]\nupper = [[1, nan], 2, [], [[1]], {}]\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file, err := Decode("a.toml", []byte(text), Stock())
		if err != nil {
			for _, line := range strings.Split(err.Error(), "\n") {
				if !strings.HasPrefix(line, "a.toml:") {
					t.Fatalf("%q does not name the file", line)
				}
			}
			return
		}
		if found := file.Car.Validate(Stock(), units.SI); len(found) > 0 {
			t.Fatal(found)
		}
		for _, s := range car.Sections {
			for _, field := range s.Fields {
				if x := *field.In(file.Car); math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("%s is %v", field.Path, x)
				}
			}
		}
		if got, err := file.Encode(file.Car); err != nil || string(got) != text {
			t.Fatalf("%v: %q", err, got)
		}
		turned := turnAround(file.Car)
		turned.Settle()
		got, err := file.Encode(turned)
		if err != nil {
			t.Fatal(err)
		}
		if again := mustDecodeCar(t, string(got)); bits(again.Car) != bits(turned) {
			t.Fatalf("%v\n%v\n%s", bits(again.Car), bits(turned), got)
		}
	})
}

// turnAround returns a car that differs from c in items of every kind.
func turnAround(c *car.Car) *car.Car {
	d := c.Clone()
	d.Body.Name += "!"
	d.Drive.Gear = math.Nextafter(c.Drive.Gear, 1)
	d.Check.Factor, d.Tires.FrontSpinInertia = 3, 0.125
	d.Launch.WheelieBar.Reach, d.Launch.Engine.Direction = 1.5, car.Counterclockwise
	if d.Launch.Locator.Chassis.Given = !c.Launch.Locator.Chassis.Given; d.Launch.Locator.Chassis.Given {
		d.Launch.Locator.Chassis.At = r3.Vec{X: -0.1, Y: 0.5, Z: 0.4}
	} else {
		d.Launch.Locator.Chassis.At = r3.Vec{}
	}
	if d.Launch.Engine.Curve = nil; c.Launch.Engine.Curve == nil {
		d.Launch.Engine.Curve = []car.TorquePoint{{Speed: 0.5 * c.Drive.Speed, Torque: c.Drive.Torque}, {Speed: 2 * c.Drive.Speed, Torque: 1}}
	}
	if d.Launch.Engine.Ramp = nil; c.Launch.Engine.Ramp == nil {
		d.Launch.Engine.Ramp = []car.RampPoint{{Time: 0, Share: 0.5}, {Time: 1, Share: 1}}
	}
	if d.Body.Scales = (car.Scales{}); !c.Body.Scales.Given {
		front, rear := (c.Body.Mass-c.Body.RearMass)/2, c.Body.RearMass/2
		d.Body.Scales = car.Scales{Given: true, LeftFront: front, RightFront: front, LeftRear: rear, RightRear: rear}
	}
	if c.Driveline.Given {
		d.Driveline = car.Driveline{}
	} else {
		d.Driveline.Given = true
		d.Driveline.TransmissionJoint.X = 2
	}
	for _, row := range car.Rows {
		holes := row.In(d)
		if len(*holes) < car.MaxHoles {
			*holes = append(*holes, (*holes)[0])
		}
	}
	added := c.Setups[0].Clone()
	added.Name = d.Body.Name
	added.Runs = append(added.Runs, car.Run{Date: "2026-03-14", Rear: "squatted", SixtyFoot: 1.25})
	for i := range d.Setups {
		slices.Reverse(d.Setups[i].Runs)
	}
	if len(c.Setups) < car.MaxSetups && d.SetupNamed(added.Name) < 0 {
		d.Setups = append([]car.Setup{added}, d.Setups...)
	}
	if len(d.Validate(Stock(), units.US)) > 0 {
		return c
	}
	return d
}

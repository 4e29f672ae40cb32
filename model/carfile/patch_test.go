package carfile

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Each edit changes just these places of the text.
func TestEditsChangeOnlyWhatTheyMust(t *testing.T) {
	inch, poundFootFoot := 0.0254, 0.45359237*0.3048*0.3048
	at := func(x, z float64) r2.Vec { return r2.Vec{X: x * inch, Y: z * inch} }
	baseline := car.Setup{Name: "baseline", Holes: car.Holes{ChassisUpper: 2, ChassisLower: 1}}
	for _, c := range []struct {
		name, file string
		edit       func(*car.Car)
		changes    []string // old, new, old, new…
	}{
		{"numbers and texts", "example.toml", func(c *car.Car) {
			c.Body.Name = "Saltgrass \"8\"\n"
			c.Body.CGHeight = 20.125 * inch
			c.Tires.RearSpinInertia = 0
			c.Springs.RearChassisMount.Y = 30 * inch
			c.Drive.Speed = 5000 * (2 * math.Pi / 60)
			c.Check.TargetAntiSquat[1] = 1.5
			c.Check.TargetICZ[0] = 7 * inch
			c.Setups[0].Holes.ChassisUpper = 0
			c.Setups[0].Note = "hooked"
		}, []string{
			`"Saltgrass No. 7"`, `"Saltgrass \"8\"\u000A"`,
			`cg_height = 19.5              #`, `cg_height = 20.125            #`,
			`rear_spin_inertia = 147.0     #`, `rear_spin_inertia = 0.0       #`,
			`[-2.0, 29.0] `, `[-2.0, 30.0] `, `5200.0`, `5000.0`, `[100.0, 160.0]`, `[100.0, 150.0]`,
			`z = [6.0, 14.0]`, `z = [7.0, 14.0]`, `chassis_upper = 3`, `chassis_upper = 1`, `note = ""`, `note = "hooked"`,
		}},
		{"other forms keep their digits", "odd.toml", func(c *car.Car) {
			c.Body.Wheelbase = 106 * inch
			c.Springs.RearAxleMount.X = -3 * inch
			c.Springs.RearChassisMount.Y = 30 * inch
			c.Chassis.Upper[1].Y = 17.5 * inch
			c.Setups[1].Name = "two lines"
		}, []string{
			`105 # whole`, `106.0 # whole`, `[-2, -3]`, `[-3.0, -3]`, `29.0  # z`, `30.0  # z`,
			`[22.5, 17.75],  # second`, `[22.5, 17.5],  # second`, "\"\"\"\ntwo\nlines\"\"\"", `"two lines"`,
		}},
		{"a number that no float64 in inches gives", "example.toml", func(c *car.Car) {
			c.Chassis.Upper[0].X = math.Nextafter(9.75*inch, 1)
		}, []string{`[22.5, 18.5]`, `[9.75000000000000075, 18.5]`}},
		{"a needed key goes to its place, with the indent of its table", "odd.toml", func(c *car.Car) {
			c.Springs.FrontDroop = 5 * inch
			c.Tires.RearSpinInertia = 147 * poundFootFoot
			c.LowerBar.Adapter = "long"
			c.Check.TargetICX[0] = 41 * inch
			c.Setups[0].Note = "first"
		}, []string{
			"rear_bump = 3\n", "rear_bump = 3\n\tfront_droop = 5.0\n", `grip = 2.6 }`, `grip = 2.6, rear_spin_inertia = 147.0 }`,
			"# the end", "adapter = \"long\"\n# the end", "[check.target_ic]\n", "[check.target_ic]\nx = [41.0, 60.0]\n",
			"housing_lower = 1\n\n[drive]", "housing_lower = 1\nnote = \"first\"\n\n[drive]",
		}},
		{"needed tables go to their place", "odd.toml", func(c *car.Car) {
			c.Driveline = car.Driveline{Given: true, TransmissionJoint: at(48, 17), PinionJoint: at(11, 0.5), PinionAngle: 2 * (math.Pi / 180)}
			c.Check.Factor = 3
		}, []string{
			"efficiency = 0.90\n", "efficiency = 0.90\n\n[driveline]\ntransmission_joint = [48.0, 17.0]\npinion_joint = [11.0, 0.5]\npinion_angle = 2.0\n\n[check]\nfactor = 3.0\n",
		}},
		{"what the launch asks for goes to its place", "example.toml", func(c *car.Car) {
			rpm, poundFoot := 2*math.Pi/60, 0.45359237*9.80665*0.3048
			c.Launch.Suspension.RearAntiRoll = 900 * poundFoot * (180 / math.Pi)
			c.Launch.Locator.Kind = car.DiagonalLink
			c.Launch.Locator.Housing = car.End{Given: true, At: r3.Vec{X: -6 * inch, Y: -18 * inch, Z: 1.5 * inch}}
			c.Launch.WheelieBar.Reach = 56 * inch
			c.Launch.Engine.Direction = car.Counterclockwise
			c.Launch.Engine.Curve = []car.TorquePoint{{Speed: 4000 * rpm, Torque: 700 * poundFoot}, {Speed: 7000 * rpm, Torque: 640 * poundFoot}}
			c.Setups[0].Turns.UpperRight = -1.5
		}, []string{
			"# at the wheel, each\n", "# at the wheel, each\nrear_anti_roll = 900.0\n",
			"as the launch needs them\n\n", "as the launch needs them\n\n[locator]\nkind = \"diagonal link\"\nhousing = [-6.0, -18.0, 1.5]\n\n[wheelie_bar]\nreach = 56.0\n\n",
			"efficiency = 0.90\n", "efficiency = 0.90\ndirection = \"counterclockwise\"\ncurve = [[4000.0, 700.0], [7000.0, 640.0]]\n",
			"housing_lower = 1\n", "housing_lower = 1\nturns_upper_right = -1.5\n",
		}},
		{"a default that is stated is written, and one that is no more goes", "example.toml", func(c *car.Car) {
			c.State("tires.sliding_grip", true)
			c.State("drive.direction", true)
			c.State("check.factor", false)
		}, []string{
			"front_spin_inertia = 0.0\n", "front_spin_inertia = 0.0\nsliding_grip = 0.75\n",
			"efficiency = 0.90\n", "efficiency = 0.90\ndirection = \"clockwise\"\n",
			"factor = 2.0                  # capacity is divided by this\n", "",
		}},
		{"a table that is no longer there", "inline.toml", func(c *car.Car) { c.Driveline = car.Driveline{} }, []string{
			"driveline.transmission_joint=[1200.0,420.0] # where the shaft begins\ndriveline.pinion_joint=[300.0,10.0]\ndriveline.pinion_angle=2.5\n", "",
		}},
		{"keys with dots", "inline.toml", func(c *car.Car) {
			c.Driveline.TransmissionAngle = -1 * (math.Pi / 180)
			c.Check.TargetICZ = [2]float64{0.1, 0.25}
			c.Check.Crookedness = 0
		}, []string{
			"driveline.pinion_angle", "driveline.transmission_angle = -1.0\ndriveline.pinion_angle",
			`{target_ic.x=[1016,1524], factor=2}`, `{target_ic.x=[1016,1524], target_ic.z = [100.0, 250.0], factor=2, crookedness = 0.0}`,
		}},
		{"holes dropped", "odd.toml", func(c *car.Car) {
			c.Chassis.Upper = slices.Delete(c.Chassis.Upper, 1, 2)
			c.Chassis.Lower = c.Chassis.Lower[:2]
			c.Housing.Upper = c.Housing.Upper[1:]
			c.Setups[0].Holes, c.Setups[1].Holes = car.Holes{}, car.Holes{}
		}, []string{
			"  [22.5, 17.75],  # second\n", "", `,[25.5,10.75],]`, `,]`, `[ [2.5, 6.5], [2.5, 5.75], # two`, `[ [2.5, 5.75], # two`,
			`chassis_upper = 3`, `chassis_upper = 1`, `chassis_lower = 2`, `chassis_lower = 1`, `housing_upper = 2`, `housing_upper = 1`,
		}},
		{"the last hole dropped", "odd.toml", func(c *car.Car) {
			c.Chassis.Upper = c.Chassis.Upper[:2]
			c.Setups[0].Holes.ChassisUpper = 1
		}, []string{",  # second\n  [22.5, 17.0]    # third\n", "  # second\n", `chassis_upper = 3`, `chassis_upper = 2`}},
		{"holes added", "odd.toml", func(c *car.Car) {
			c.Chassis.Upper = slices.Insert(c.Chassis.Upper, 3, at(22.5, 16.25))
			c.Chassis.Lower = slices.Insert(c.Chassis.Lower, 0, at(25.5, 13))
			c.Housing.Upper = slices.Insert(c.Housing.Upper, 2, at(2.5, 5.5))
		}, []string{
			"17.0]    # third\n", "17.0],    # third\n  [22.5, 16.25]\n", `[[25.5,12.25],`, `[[25.5, 13.0], [25.5,12.25],`,
			"# two a line\n", "# two a line\n [2.5, 5.5],\n",
		}},
		{"setups moved with their comments", "odd.toml", func(c *car.Car) { slices.Reverse(c.Setups) }, []string{
			"[[setup]]\nname = \"baseline\"\nchassis_upper = 3\nchassis_lower = 2\nhousing_upper = 1\nhousing_lower = 1\n", "§",
			"# drives well\n[[setup]]\nname = \"\"\"\ntwo\nlines\"\"\"\nhousing_lower = 1\nhousing_upper = 2\nchassis_lower = 1\nchassis_upper = 1\nnote = ''\n",
			"[[setup]]\nname = \"baseline\"\nchassis_upper = 3\nchassis_lower = 2\nhousing_upper = 1\nhousing_lower = 1\n",
			"§", "# drives well\n[[setup]]\nname = \"\"\"\ntwo\nlines\"\"\"\nhousing_lower = 1\nhousing_upper = 2\nchassis_lower = 1\nchassis_upper = 1\nnote = ''\n",
		}},
		{"a setup dropped with its comment", "odd.toml", func(c *car.Car) { c.Setups = c.Setups[:1] }, []string{
			"# drives well\n[[setup]]\nname = \"\"\"\ntwo\nlines\"\"\"\nhousing_lower = 1\nhousing_upper = 2\nchassis_lower = 1\nchassis_upper = 1\nnote = ''\n\n", "",
		}},
		{"setups added", "example.toml", func(c *car.Car) {
			more, less := baseline, baseline
			more.Name, less.Name, less.Note = "more", "less", "soft"
			c.Setups = append(c.Setups, more, less)
		}, []string{
			`note = ""` + "\n", `note = ""` + "\n\n[[setup]]\nname = \"more\"\nchassis_upper = 3\nchassis_lower = 2\nhousing_upper = 1\nhousing_lower = 1\n" +
				"\n[[setup]]\nname = \"less\"\nchassis_upper = 3\nchassis_lower = 2\nhousing_upper = 1\nhousing_lower = 1\nnote = \"soft\"\n",
		}},
		{"setups in brackets", "inline.toml", func(c *car.Car) {
			c.Setups[1].Name = "calm"
			c.Setups = slices.Delete(c.Setups, 0, 1)
			slices.Reverse(c.Setups)
		}, []string{
			`{name="baseline",chassis_upper=2,chassis_lower=1,housing_upper=1,housing_lower=1}, # goes straight
  # tried once
  {name="tame",chassis_upper=1,chassis_lower=1,housing_upper=1,housing_lower=1,note="slow"}, {name="bite",chassis_upper=1,chassis_lower=2,housing_upper=1,housing_lower=1}
`, `{name="bite",chassis_upper=1,chassis_lower=2,housing_upper=1,housing_lower=1},
  # tried once
  {name="calm",chassis_upper=1,chassis_lower=1,housing_upper=1,housing_lower=1,note="slow"}
`,
		}},
	} {
		text := fixture(t, c.file)
		want := text
		for i := 0; i < len(c.changes); i += 2 {
			if !strings.Contains(want, c.changes[i]) {
				t.Errorf("%s: no %q in %s", c.name, c.changes[i], want)
			}
			want = strings.Replace(want, c.changes[i], c.changes[i+1], 1)
		}
		f := mustDecodeCar(t, text)
		edited := f.Car.Clone()
		c.edit(edited)
		got, err := f.Encode(edited)
		if err != nil || string(got) != want {
			t.Errorf("%s: %v\ngot  %s\nwant %s", c.name, err, got, want)
		}
	}
}

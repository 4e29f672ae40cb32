package car

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

const ksi = 1000 * lbf / (inch * inch)

// library has one steel, with the strength handbooks give normalized 4130.
var library = stock.Library{Materials: []stock.Material{{Name: "steel", E: 29000 * ksi, Yield: 75 * ksi, Ultimate: 95 * ksi, Density: 7850}}}

// typed holds the plain numbers of a sound car in shop units.
var typed = map[string]float64{
	"car.wheelbase": 105, "car.weight": 2650, "car.rear_weight": 1325, "car.cg_height": 19.5,
	"car.unsprung_rear": 390, "car.unsprung_front": 130, "car.track_rear": 56, "car.track_front": 58,
	"tires.rear_radius": 16, "tires.front_radius": 12.5, "tires.grip": 2.6, "tires.rear_spin_inertia": 147,
	"chassis_bracket.spread_upper": 36, "chassis_bracket.spread_lower": 36, "housing_bracket.spread_upper": 36, "housing_bracket.spread_lower": 36,
	"upper_bar.od": 1.25, "upper_bar.wall": 0.095, "lower_bar.od": 1.25, "lower_bar.wall": 0.095,
	"springs.rear_rate": 150, "springs.rear_droop": 4, "springs.rear_bump": 3, "springs.front_rate": 120,
	"drive.torque": 780, "drive.rpm": 5200, "drive.converter": 1.7, "drive.gear": 1.8, "drive.axle": 4.1, "drive.efficiency": 0.9,
}

// sound returns a car without problems.
func sound() *Car {
	c := Defaults()
	for path, x := range typed {
		f := FieldAt(path)
		*f.In(c) = units.US.ToSI(f.Quantity, x)
	}
	at := func(x, z float64) r2.Vec { return r2.Vec{X: x * inch, Y: z * inch} }
	c.Body.Name = "Saltgrass No. 7"
	c.UpperBar.Material, c.LowerBar.Material = "steel", "steel"
	c.Chassis.Upper = []r2.Vec{at(22.5, 18.5), at(22.5, 17.75), at(22.5, 17)}
	c.Chassis.Lower = []r2.Vec{at(25.5, 12.25), at(25.5, 11.5), at(25.5, 10.75)}
	c.Housing.Upper = []r2.Vec{at(2.5, 6.5), at(2.5, 5.75)}
	c.Housing.Lower = []r2.Vec{at(2.5, -5), at(2.5, -5.75)}
	c.Springs.RearAxleMount, c.Springs.RearChassisMount = at(-2, -3), at(-2, 29)
	c.Setups = []Setup{{Name: "baseline", Holes: Holes{2, 1, 0, 0}}, {Name: "tame", Holes: Holes{0, 2, 0, 0}}}
	return c
}

func TestSoundCarHasNoProblems(t *testing.T) {
	if p := sound().Validate(library, units.US); len(p) > 0 {
		t.Error(p)
	}
}

// Every refusal, with its whole message, in the unit system asked for.
func TestProblems(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Car)
		want  string
	}{
		{func(c *Car) { c.Body.Wheelbase = -c.Body.Wheelbase }, "car.wheelbase: −105 in is out of range; give 40 in to 400 in\ncar.wheelbase: −105 in makes the front and rear tires overlap; give more than the two tire radii together, 28.50 in"},
		{func(c *Car) { c.Body.Wheelbase = math.NaN() }, "car.wheelbase: nan is out of range; give 40 in to 400 in"},
		{func(c *Car) { c.Drive.Torque = math.Inf(1) }, "drive.torque: an infinite value is out of range; give 1 lb-ft to 20000 lb-ft"},
		{func(c *Car) { c.Body.Name = " " }, "car.name: the name is empty; give the car a name"},
		{func(c *Car) { c.Body.RearMass = c.Body.Mass }, "car.rear_weight: 2650 lb on the rear tires puts the CG on or behind the rear axle; give less than the car's weight, 2650 lb"},
		{func(c *Car) { c.Body.RearMass = -c.Body.RearMass }, "car.rear_weight: −1325 lb is out of range; give 50 lb to 20000 lb\ncar.unsprung_rear: 390 lb leaves nothing for the rear springs to carry; give less than the weight on the rear tires, −1325 lb"},
		{func(c *Car) { c.Body.UnsprungRear = c.Body.RearMass }, "car.unsprung_rear: 1325 lb leaves nothing for the rear springs to carry; give less than the weight on the rear tires, 1325 lb"},
		{func(c *Car) { c.Body.UnsprungFront = c.Body.Mass - c.Body.RearMass }, "car.unsprung_front: 1325 lb leaves nothing for the front springs to carry; give less than the weight on the front tires, 1,325 lb"},
		{func(c *Car) { c.Body.CGHeight = 2 * inch }, "car.cg_height: 2 in puts the CG of the sprung mass on or below the ground; give more than 2.97 in"},
		{func(c *Car) { c.Chassis.Lower = nil }, "chassis_bracket.lower: there are 0 holes; give 1 to 64 hole centers as [x, z]"},
		{func(c *Car) { c.Chassis.Upper[1].Y = math.NaN() }, "chassis_bracket.upper: hole 2: [22.5 in, nan] is out of range; give x and z from −400 in to 400 in"},
		{func(c *Car) { c.LowerBar.Wall = units.US.ToSI(units.Length, 0.7) }, "lower_bar.wall: 0.7 in is more than half the OD; give at most 0.625 in"},
		{func(c *Car) { c.UpperBar.Material = "cheese" }, `upper_bar.material: material "cheese" is not in the table; use one of "steel"`},
		{func(c *Car) { c.Springs.RearDroop, c.Springs.RearBump = 0, 0 }, "springs.rear_bump: the rear has no travel; give droop or bump above zero"},
		{func(c *Car) { c.Springs.RearChassisMount = r2.Vec{X: -2 * inch, Y: 14 * inch} }, "springs.rear_chassis_mount: the spring is 1.00 in long at ride height, no longer than the bump travel; put the mounts farther apart than 3.39 in"},
		{func(c *Car) { c.Launch.Suspension.StopRate = -rate(5) }, "springs.stop_rate: −5 lb/in is out of range; give 10 lb/in to 100000 lb/in"},
		{func(c *Car) { c.Launch.Tires.PeakSlip = 0.5 }, "tires.peak_slip: 0.5 is out of range; give 0.02 to 0.3"},
		{func(c *Car) { c.Launch.Tires.RelaxationLength = 0.1 * inch }, "tires.relaxation_length: 0.1 in is shorter than that of any tire; give 0 or at least 0.5 in"},
		{func(c *Car) { c.Launch.Tires.SlidingGrip = 1.5 }, "tires.sliding_grip: 1.5 is out of range; give 0.1 to 1"},
		{func(c *Car) { c.Launch.UpperBar.EndRate = math.NaN() }, "upper_bar.end_rate: nan is out of range; give 1000 lb/in to 10000000 lb/in"},
		{func(c *Car) { c.Launch.Engine.ReleaseTime = 9 }, "drive.release_time: 9 s is out of range; give 0 s to 5 s"},
		{func(c *Car) { c.Launch.Inertia.Pitch = -1 }, "car.pitch_inertia: −23.730360404231938 lb·ft² is out of range; give 0 lb·ft² to 1000000 lb·ft²"},
		{func(c *Car) { c.Tires.RearSpinInertia = spin(0.04) }, "tires.rear_spin_inertia: 0.04 lb·ft² is less than any part of a car has; give 0 or at least 0.05 lb·ft²"},
		{func(c *Car) { c.Launch.Locator.Kind = "" }, `locator.kind: kind of locator "" is unknown; use one of "track bar", "diagonal link"`},
		{func(c *Car) { c.Launch.Locator.Housing = End{true, r3.Vec{Y: math.Inf(1)}} }, "locator.housing: [0 in, an infinite value, 0 in] is out of range; give x, y and z from −400 in to 400 in"},
		{func(c *Car) { c.Launch.Locator.Wall = 0.6 * inch }, "locator.wall: 0.6 in is more than half the OD; give at most 0.5 in"},
		{func(c *Car) {
			c.Launch.Locator.Chassis = End{true, r3.Vec{X: 12 * inch, Y: 16 * inch, Z: 16 * inch}}
			c.Launch.Locator.Housing = End{true, r3.Vec{Y: 15 * inch}}
			c.Setups = c.Setups[:1]
		}, "setup 1: in \"baseline\" the locator reaches only 1.00 in across the car; put locator.chassis and locator.housing at least 2 in apart in y"},
		{func(c *Car) { c.Launch.WheelieBar.Reach = inches(201) }, "wheelie_bar.reach: 201 in is out of range; give 0 in to 200 in"},
		{func(c *Car) { c.Launch.Engine.Direction = "up" }, `drive.direction: direction "up" is unknown; use one of "clockwise", "counterclockwise"`},
		{func(c *Car) { c.Launch.Engine.RevLimit = c.Drive.Speed }, "drive.rev_limit: 5200 rpm is no higher than the launch speed; give more than 5200 rpm, or 0"},
		{func(c *Car) {
			c.Body.Scales = Scales{Given: true, LeftFront: c.Body.Mass, RightFront: -1, LeftRear: 1, RightRear: math.NaN()}
		}, "car.corner_weights.rf: −2.2046226218487757 lb is out of range; give more than 0 and at most 20000 lb\ncar.corner_weights.rr: nan is out of range; give more than 0 and at most 20000 lb"},
		{func(c *Car) {
			c.Body.Scales = Scales{true, 11000.1 * pound, 600.1 * pound, 10000.1 * pound, 500.1 * pound}
			c.FollowScales()
		}, "car.corner_weights: the four scales together read 22100.4 lb; give readings that are 200 lb to 20000 lb together"},
		{func(c *Car) { c.Launch.Engine.Ramp = []RampPoint{{0, 0.5}, {0.2, 2.5}} }, "drive.ramp: point 2: [0.2 s, 2.5] is out of range; give 0 to 60 s and a share of 0 to 2"},
		{func(c *Car) { c.Launch.Engine.Ramp = []RampPoint{{-0.1, 0.5}} }, "drive.ramp: point 1: [−0.1 s, 0.5] is out of range; give 0 to 60 s and a share of 0 to 2"},
		{func(c *Car) { c.Launch.Engine.Ramp = []RampPoint{{0, 0.5}, {math.NaN(), 1}} }, "drive.ramp: point 2: [nan, 1] is out of range; give 0 to 60 s and a share of 0 to 2"},
		{func(c *Car) { c.Launch.Engine.Ramp = []RampPoint{{0.1, 0.5}, {0.1, 1}} }, "drive.ramp: point 2: 0.1 s is no later than the point before; list the points by rising time"},
		{func(c *Car) { c.Launch.Engine.Ramp = make([]RampPoint, 101) }, "drive.ramp: the number of points is 101; give up to 100 points as [seconds, share], or none"},
		{func(c *Car) { c.Launch.Engine.Curve = []TorquePoint{{500, 1000}} }, "drive.curve: the number of points is 1; give 2 to 100 points as [rpm, torque], or none"},
		{func(c *Car) { c.Launch.Engine.Curve = []TorquePoint{{0, 1000}, {500, math.NaN()}} }, "drive.curve: point 2: [4774.6482927568595 rpm, nan] is out of range; give 0 to 30000 rpm and 0 to 20000 lb-ft"},
		{func(c *Car) {
			speed := units.US.ToSI(units.Speed, 5200)
			c.Launch.Engine.Curve = []TorquePoint{{speed / 2, 1000}, {speed, 1000}, {speed, 1000}}
		}, "drive.curve: point 3: 5200 rpm is no faster than the point before; list the points by rising speed"},
		{func(c *Car) { c.Launch.Engine.Curve = []TorquePoint{{0, 1000}, {500, 0}} }, "drive.curve: there is no torque at the launch speed of 5200 rpm; give points around the launch speed"},
		{func(c *Car) { c.Setups[1].Turns.LowerRight = -25 }, "setup 2: turns_lower_right: −25 turns are out of range; give −24 to 24"},
		{func(c *Car) { c.Driveline = Driveline{Given: true, PinionAngle: 1} }, "driveline.pinion_angle: 57.29577951308232° is out of range; give −45° to 45°, nose-up positive"},
		{func(c *Car) {
			c.Driveline = Driveline{Given: true, TransmissionJoint: r2.Vec{Y: c.Tires.RearRadius}}
		}, "driveline.transmission_joint: the driveshaft is 0.00 in long; put the joints at least 4 in apart"},
		{func(c *Car) { c.Check.TargetAntiSquat = [2]float64{1.6, 1} }, "check.target_anti_squat: from 160 % to 100 % is not a range; give the least first, then the greatest, within −1000 % to 1000 %"},
		{func(c *Car) { c.Check.TargetICZ[0] = math.Inf(-1) }, "check.target_ic.z: from an infinite value to 14 in is not a range; give the least first, then the greatest, within −400 in to 400 in"},
		{func(c *Car) { c.Check.Factor = 0.5 }, "check.factor: 0.5 is out of range; give 1 to 20"},
		{func(c *Car) { c.Check.Column = "guess" }, `check.column: column curve "guess" is unknown; use one of "johnson-euler", "perry", "aisc-e3", "handbook-4130"`},
		{func(c *Car) { c.Check.Column = "handbook-4130" }, "check.column: the upper bar's column is \"handbook-4130\", and \"steel\" has no such formula; choose normalized 4130 or \"johnson-euler\"\ncheck.column: the lower bar's column is \"handbook-4130\", and \"steel\" has no such formula; choose normalized 4130 or \"johnson-euler\""},
		{func(c *Car) { c.LowerBar.OD, c.LowerBar.Wall = 12*inch, 0.01*inch }, "lower_bar.wall: the lower bar's wall is too thin: OD over wall is 1200, and no formula holds beyond 174; choose a thicker wall"},
		{func(c *Car) { c.Setups = nil }, "setup: there are 0 setups; give 1 to 500 [[setup]] tables"},
		{func(c *Car) { c.Setups[1].Name = "" }, "setup 2: name: the name is empty; give each setup a name of its own"},
		{func(c *Car) { c.Setups[1].Name = "baseline" }, `setup 2: name: "baseline" is the name of setup 1 too; give each setup a name of its own`},
		{func(c *Car) { c.Setups[1].Holes.ChassisUpper = 3 }, "setup 2: chassis_upper: the upper chassis bracket has no hole 4; give a number from 1 to 3"},
		{func(c *Car) { c.Setups[0].Holes.HousingLower = -1 }, "setup 1: housing_lower: the lower housing bracket has no hole 0; give a number from 1 to 2"},
		{func(c *Car) {
			c.Springs.RearBump = inches(25)
			c.Springs.RearChassisMount.Y = 60 * inch
			c.Setups = c.Setups[:1]
		}, "setup 1: in \"baseline\" the bars do not reach the rear bump of 25 in: they close only to 21.17 in; choose other holes or allow less springs.rear_bump"},
		// By hand, as if they stood right way up: 891.8 lb, since they stand 2 in behind
		// the axle and the bars' lines meet 41.25 in ahead of it, 935 × 41.25/43.25.
		{func(c *Car) {
			c.Springs.RearChassisMount.Y, c.Springs.RearAxleMount.Y = 3*inch, 13*inch
			c.Setups = c.Setups[:1]
		}, "springs.rear_chassis_mount: the rear springs would have to pull 892 lb to hold the car at ride height; put it higher than the mount on the axle, which is 29.00 in above the ground"},
		// Farther ahead than the bars' lines meet a spring lifts the axle: 935 ×
		// 41.2546/(45 − 41.2546) lb.
		{func(c *Car) {
			c.Springs.RearChassisMount.X, c.Springs.RearAxleMount.X = 45*inch, 45*inch
			c.Setups = c.Setups[:1]
		}, "setup 1: in \"baseline\" the rear springs would have to pull 10,299 lb to hold the car at ride height; choose other holes or put the springs' mounts nearer to the axle"},
		{func(c *Car) { c.Chassis.Lower[2] = r2.Vec{X: 2.5 * inch, Y: 11 * inch} }, "setup 2: in \"tame\" the bar has no length: its chassis hole lies on its housing hole; choose other holes"},
	} {
		car := sound()
		c.spoil(car)
		var lines []string
		for _, p := range car.Validate(library, units.US) {
			lines = append(lines, p.String())
		}
		if got := strings.Join(lines, "\n"); got != c.want {
			t.Errorf("got\n%s\nwant\n%s\n", got, c.want)
		}
	}
}

func TestProblemsComeAllAtOnceInTheUnitsAskedFor(t *testing.T) {
	c := sound()
	c.Tires.RearRadius, c.UpperBar.Wall = -1, 1
	problems := c.Validate(library, units.SI)
	if len(problems) < 2 || problems[0].String() != "tires.rear_radius: −1000 mm is out of range; give 101.6 mm to 1016 mm" {
		t.Error(problems)
	}
}

func TestCloneSharesNothing(t *testing.T) {
	c := sound()
	d := c.Clone()
	for _, row := range Rows {
		(*row.In(d))[0].X = 99
	}
	d.Setups[0].Name, d.Body.Name = "other", "other"
	c.Setups[1].Runs = []Run{{Track: "home"}}
	c.Clone().Setups[1].Runs[0].Track = "away"
	if c.Setups[1].Runs[0].Track != "home" {
		t.Error("a run changed with the clone")
	}
	c.Setups[1].Runs = nil
	c.Launch.Engine.Curve, c.Launch.Engine.Ramp = []TorquePoint{{1, 2}}, []RampPoint{{1, 2}}
	e := c.Clone()
	e.Launch.Engine.Curve[0].Torque, e.Launch.Engine.Ramp[0].Share = 99, 99
	if c.Launch.Engine.Curve[0].Torque != 2 || c.Launch.Engine.Ramp[0].Share != 2 {
		t.Error("the torque curve changed with the clone")
	}
	want := sound()
	for _, row := range Rows {
		if !slices.Equal(*row.In(c), *row.In(want)) {
			t.Errorf("%s holes changed with the clone", row)
		}
	}
	if !reflect.DeepEqual(c.Setups, want.Setups) || c.Body.Name != want.Body.Name {
		t.Error("setups or name changed with the clone")
	}
}

// The sprung mass and the unsprung ones compose to the whole car.
func TestSprungAndUnsprungMakeTheWholeCar(t *testing.T) {
	c := sound()
	m, cg := c.Sprung()
	b := c.Body
	x := (m*cg.X + b.UnsprungFront*b.Wheelbase) / b.Mass
	z := (m*cg.Y + b.UnsprungRear*c.Tires.RearRadius + b.UnsprungFront*c.Tires.FrontRadius) / b.Mass
	if math.Abs(x-52.5*inch) > 1e-12 || math.Abs(z-19.5*inch) > 1e-12 || math.Abs(m-2130*pound) > 1e-9 {
		t.Errorf("mass %v, center %v, %v", m, x, z)
	}
}

func TestAxleTorqueAndPower(t *testing.T) {
	c := sound()
	// 780 × 1.7 × 1.8 × 4.1 × 0.9 lb-ft, and 780 lb-ft at 5,200 rpm over 5,252.
	if got := units.US.FromSI(units.Torque, c.AxleTorque()); math.Abs(got-8807.292) > 1e-3 {
		t.Errorf("axle torque %v lb-ft", got)
	}
	if got := units.US.FromSI(units.Power, c.Power()); math.Abs(got-780*5200/5252.113) > 1e-3 {
		t.Errorf("power %v hp", got)
	}
}

func TestEveryFieldIsDescribed(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Sections {
		for _, f := range s.Fields {
			if seen[f.Path] || f.Label == "" || f.Help == "" || !strings.HasPrefix(f.Path, s.Table+".") || !(f.Min < f.Max) {
				t.Errorf("field %+v", f)
			}
			seen[f.Path] = true
			if f.Optional && (f.Default < f.Min || f.Default > f.Max) {
				t.Errorf("%s: default %v is out of range", f.Path, f.Default)
			}
			// Each field has a place of its own.
			c := Defaults()
			*f.In(c) = 12345
			for _, s := range Sections {
				for _, g := range s.Fields {
					if g != f && *g.In(c) == 12345 {
						t.Errorf("%s and %s share a place", f.Path, g.Path)
					}
				}
			}
		}
	}
}

func TestFreeSetupName(t *testing.T) {
	c := sound()
	c.Setups = []Setup{{Name: "tame"}, {Name: "tame 2"}, {Name: "base"}}
	for like, want := range map[string]string{"tame": "tame 3", "base": "base 2", "green": "green"} {
		if got := c.FreeSetupName(like); got != want {
			t.Errorf("a name like %q is %q, want %q", like, got, want)
		}
	}
}

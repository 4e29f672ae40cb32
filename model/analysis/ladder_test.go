package analysis_test

import (
	"io/fs"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
)

// tier is one rung of the ladder of bars that shops sell: the lower and the
// upper tube [in].
type tier struct {
	name                                   string
	lowerOD, lowerWall, upperOD, upperWall float64
}

// ladder is common practice, in order of power: 1 1/4 × 0.095 up to about
// 1,200 to 1,500 hp, 1 3/8 × 0.095 to about 2,000 hp, beyond that 1 5/8 × 0.120
// below with 1 1/2 × 0.120 above.
var ladder = []tier{
	{"1 1/4 x 0.095", 1.25, 0.095, 1.25, 0.095},
	{"1 3/8 x 0.095", 1.375, 0.095, 1.375, 0.095},
	{"1 5/8 x 0.120 below, 1 1/2 x 0.120 above", 1.625, 0.120, 1.5, 0.120},
}

// The hit case with one factor for all picks the same rung as common practice
// for each of the example cars.
//
// Assumptions, all of them invented but of the size that such cars have: power
// is the engine's peak; at the launch, below the speed of peak power, the
// engine makes the torque given; it reaches the axle through converter, first
// gear and axle ratio at 90 % efficiency, all of it at once. 4130 normalized
// tube, pinned ends, a bow of 0.001, Johnson–Euler, factor 2.
func TestHitCaseRanksTheTubeLadder(t *testing.T) {
	const factor = 2
	for _, c := range []struct {
		file                                       string
		power                                      float64 // engine's peak [hp]
		torque, converter, gear, axle, weight, hub float64 // at launch [lb-ft, 1, 1, 1, lb, in]
		want                                       int     // rung of the ladder
	}{
		{"saltgrass-light", 1200, 860, 1.75, 1.76, 4.3, 2250, 13.75, 0},
		{"saltgrass-7", 1900, 1650, 1.7, 1.8, 4.1, 2650, 16, 1},
		{"saltgrass-heavy", 3000, 2500, 1.65, 1.75, 3.9, 3300, 17.5, 2},
	} {
		original := read(t, "../../assets/cars/"+c.file+".toml")
		checkAssumptions(t, original, c.torque, c.converter, c.gear, c.axle, c.weight, c.hub)
		if launch := units.US.FromSI(units.Power, original.Power()); launch > c.power || launch < 0.6*c.power {
			t.Errorf("%s: %.0f hp at launch with a peak of %.0f hp", c.file, launch, c.power)
		}
		rung := -1
		for i, step := range ladder {
			if holds(t, original, step, factor) {
				rung = i
				break
			}
		}
		if rung != c.want {
			t.Errorf("%s, %.0f hp: the hit case picks rung %d, common practice %s", c.file, c.power, rung, ladder[c.want].name)
		}
		// The file has the bars that the ladder gives it.
		want := ladder[c.want]
		if original.LowerBar.OD != want.lowerOD*inch || original.UpperBar.Wall != want.upperWall*inch {
			t.Errorf("%s does not have %s", c.file, want.name)
		}
	}
}

// The peak power of an example car's torque curve is what the head of its file says, and
// the curve passes through the torque at launch speed. Torque is straight between the
// curve's points, so power is sought in steps of 1 rpm.
func TestPeakPowerIsThatOfTheDescription(t *testing.T) {
	said := regexp.MustCompile(`^# .* of about ([0-9,]+) hp\n`)
	for _, name := range assets.CarNames() {
		text, err := fs.ReadFile(assets.Cars, name)
		if err != nil {
			t.Fatal(err)
		}
		match := said.FindSubmatch(text)
		if match == nil {
			t.Errorf("%s: its head names no power", name)
			continue
		}
		want, err := strconv.ParseFloat(strings.ReplaceAll(string(match[1]), ",", ""), 64)
		if err != nil {
			t.Fatal(err)
		}
		c := example(t, name)
		e, peak := &c.Launch.Engine, 0.0
		for rpm := 1.0; rpm <= 12000; rpm++ {
			speed := rpm * math.Pi / 30
			if n := len(e.Curve); n > 0 && speed <= e.Curve[n-1].Speed {
				peak = max(peak, e.TorqueAt(speed)*speed)
			}
		}
		const horsepower = 745.69987 // W
		near(t, name+": peak power [hp]", peak/horsepower, want, 0.01*want)
		near(t, name+": torque at launch speed", e.TorqueAt(c.Drive.Speed), c.Drive.Torque, 1e-9*c.Drive.Torque)
	}
}

// checkAssumptions holds the written-out numbers against the file.
func checkAssumptions(t *testing.T, c *car.Car, torque, converter, gear, axle, weight, radius float64) {
	t.Helper()
	near(t, "torque", units.US.FromSI(units.Torque, c.Drive.Torque), torque, 1e-9)
	near(t, "converter", c.Drive.Converter, converter, 0)
	near(t, "gear", c.Drive.Gear, gear, 0)
	near(t, "axle ratio", c.Drive.Axle, axle, 0)
	near(t, "weight", units.US.FromSI(units.Mass, c.Body.Mass), weight, 1e-9)
	near(t, "radius", c.Tires.RearRadius/inch, radius, 1e-9)
}

// holds reports whether all bars of a rung stay within capacity in the hit case
// over the whole travel of the first setup.
func holds(t *testing.T, original *car.Car, step tier, factor float64) bool {
	t.Helper()
	c := original.Clone()
	c.LowerBar.OD, c.LowerBar.Wall = step.lowerOD*inch, step.lowerWall*inch
	c.UpperBar.OD, c.UpperBar.Wall = step.upperOD*inch, step.upperWall*inch
	c.Check.Factor = factor
	r := run(t, c, analysis.Options{})
	for i := range r.Travel {
		for _, p := range car.Pairs {
			use, way := r.Use(p, analysis.Hit, &r.Travel[i])
			if use.Share > 1 {
				return false
			}
			if p == car.Lower && way != column.Push {
				t.Errorf("lower bars %v in the hit case", way)
			}
		}
	}
	return true
}

package plotting_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/stock"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch  = 0.0254           // m
	pound = 0.45359237       // kg
	lbf   = 4.4482216152605  // N
	lbft  = lbf * 12 * inch  // N·m
	ksi   = 6894757.29316836 // Pa
)

// tubes is a library with the one material that the test cars use.
var tubes = stock.Library{Materials: []stock.Material{{Name: "4130 normalized", E: 29000 * ksi, Yield: 75 * ksi, Ultimate: 95 * ksi, Density: 7830}}}

func in(x, z float64) r2.Vec { return r2.Vec{X: x * inch, Y: z * inch} }

// saltgrass is a 2,650 lb car with 780 lb-ft.
func saltgrass() *car.Car {
	c := car.Defaults()
	c.Body = car.Body{
		Name: "Saltgrass No. 7", Wheelbase: 105 * inch, Mass: 2650 * pound, RearMass: 1325 * pound, CGHeight: 19.5 * inch,
		UnsprungRear: 390 * pound, UnsprungFront: 130 * pound, TrackRear: 56 * inch, TrackFront: 58 * inch,
	}
	c.Tires.RearRadius, c.Tires.FrontRadius, c.Tires.Grip, c.Tires.RearSpinInertia = 16*inch, 12.5*inch, 2.6, 6.2
	c.Chassis = car.Bracket{
		Upper: []r2.Vec{in(22.5, 18.5), in(22.5, 17.75), in(22.5, 17)}, Lower: []r2.Vec{in(25.5, 12.25), in(25.5, 11.5), in(25.5, 10.75)},
		SpreadUpper: 36 * inch, SpreadLower: 36 * inch,
	}
	c.Housing = car.Bracket{
		Upper: []r2.Vec{in(2.5, 6.5), in(2.5, 5.75)}, Lower: []r2.Vec{in(2.5, -5), in(2.5, -5.75)},
		SpreadUpper: 36 * inch, SpreadLower: 36 * inch,
	}
	bar := car.Bar{OD: 1.25 * inch, Wall: 0.095 * inch, Material: "4130 normalized"}
	c.UpperBar, c.LowerBar = bar, bar
	c.Springs.RearRate, c.Springs.FrontRate = 150*lbf/inch, 120*lbf/inch
	c.Springs.RearAxleMount, c.Springs.RearChassisMount = in(-2, -3), in(-2, 29)
	c.Springs.RearDroop, c.Springs.RearBump = 4*inch, 3*inch
	c.Drive = car.Drive{Torque: 780 * lbft, Speed: units.US.ToSI(units.Speed, 5200), Converter: 1.7, Gear: 1.8, Axle: 4.1, Efficiency: 0.9}
	c.Setups = []car.Setup{{Name: "baseline", Holes: car.Holes{ChassisUpper: 2, ChassisLower: 1}}}
	return c
}

// analyze runs a car that must be valid.
func analyze(t testing.TB, c *car.Car) *analysis.Result {
	t.Helper()
	if wrong := c.Validate(tubes, units.US); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	r, err := analysis.Run(context.Background(), c, tubes, analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// launched runs a car that must be valid, and analyzes it.
func launched(t testing.TB, c *car.Car) (*launch.Result, *analysis.Result) {
	t.Helper()
	r := analyze(t, c)
	l, err := launch.Run(context.Background(), c, 0, tubes, launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return l, r
}

// everyChart returns the charts of a car that must be valid, and of its launch.
func everyChart(t testing.TB, c *car.Car) []*chart.Chart {
	t.Helper()
	l, r := launched(t, c)
	return append(overTravels(plotting.Of(r, nil)), overLaunch(plotting.Of(r, l))...)
}

// overTravels and overLaunch return the charts of setups that stand at a travel or
// at nothing, and those over the launch.
func overTravels(first plotting.Setup, others ...plotting.Setup) []*chart.Chart {
	return slices.DeleteFunc(plotting.All(first, others...), func(c *chart.Chart) bool { return c.Key == plotting.SixtyFootKey || isOverLaunch(c) })
}

func overLaunch(first plotting.Setup, others ...plotting.Setup) []*chart.Chart {
	return slices.DeleteFunc(plotting.All(first, others...), func(c *chart.Chart) bool { return !isOverLaunch(c) })
}

func isOverLaunch(c *chart.Chart) bool { return strings.HasPrefix(string(c.Key), "launch-") }

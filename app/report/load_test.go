package report_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	reference   = "../../testdata/reference.toml"
	referenceSI = "testdata/reference-si.toml"

	inch  = 0.0254
	pound = 0.45359237
	lbf   = pound * 9.80665
)

// read returns the car of a file.
func read(t testing.TB, path string) (*car.Car, units.System) {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car, f.Units
}

// analyze runs the first setup of a car.
func analyze(t testing.TB, c *car.Car) *analysis.Result {
	t.Helper()
	for _, p := range c.Validate(carfile.Stock(), units.US) {
		t.Fatal(p)
	}
	r, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// load analyzes the first setup of a file.
func load(t testing.TB, path string) (*analysis.Result, units.System) {
	t.Helper()
	c, s := read(t, path)
	return analyze(t, c), s
}

// parallel analyzes the reference car with bars of the same length and slope:
// no instant center at any travel.
func parallel(t testing.TB) *analysis.Result {
	t.Helper()
	c, _ := read(t, reference)
	c.Chassis.Upper = []r2.Vec{{X: 22.5 * inch, Y: 20 * inch}}
	c.Chassis.Lower = []r2.Vec{{X: 22.5 * inch, Y: 8.5 * inch}}
	c.Setups = []car.Setup{{Name: "parallel"}}
	return analyze(t, c)
}

// unheld analyzes the reference car with its springs on the line through the
// instant center at ride height, where bars and springs cannot hold the axle.
func unheld(t testing.TB) *analysis.Result {
	t.Helper()
	c, _ := read(t, reference)
	center := analyze(t, c).Ride.InstantCenter
	axle := r2.Vec{Y: 16 * inch}
	c.Springs.RearChassisMount = r2.Add(axle, r2.Scale(0.5, r2.Sub(center, axle)))
	c.Setups = c.Setups[:1] // whose instant center that is
	return analyze(t, c)
}

// rideIndex returns the place of ride height in a result's travel.
func rideIndex(t testing.TB, r *analysis.Result) int {
	t.Helper()
	for i := range r.Travel {
		if r.Travel[i].Pose.Travel == 0 {
			return i
		}
	}
	t.Fatal("there is no ride height")
	return 0
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

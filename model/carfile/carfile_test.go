package carfile

import (
	"math"
	"os"
	"strings"
	"testing"

	"bowline/assets"
	"bowline/model/units"
)

func TestExampleCarsLoadAndSaveUnchanged(t *testing.T) {
	list := assets.CarNames()
	if len(list) != 3 {
		t.Errorf("%v", list)
	}
	drivelines := 0
	for _, name := range list {
		data, err := assets.Cars.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, err := Decode(name, data, Stock())
		if err != nil {
			t.Error(err)
			continue
		}
		if got, err := f.Encode(f.Car); err != nil || string(got) != string(data) {
			t.Errorf("%s: %v", name, err)
		}
		if f.Car.Driveline.Given {
			drivelines++
		}
	}
	if drivelines == 0 {
		t.Error("no example has a driveline")
	}
}

// The same car in both unit systems: 2.54 cm to the inch and 0.45359237 kg to
// the pound (international yard and pound, 1959), g = 9.80665 m/s² (3rd CGPM).
func TestUnits(t *testing.T) {
	us := mustDecodeCar(t, fixture(t, "example.toml")).Car
	for _, c := range []struct{ got, want float64 }{
		{us.Body.Wheelbase, 2.667}, {us.Body.Mass, 1202.0197805}, {us.Tires.RearSpinInertia, 6.194596183789305},
		{us.Springs.RearRate, 26269.025286971457}, {us.Springs.RearAxleMount.Y, -0.0762}, {us.Chassis.Upper[1].X, 0.5715}, {us.Housing.Lower[1].Y, -0.14605},
		{us.Drive.Torque, 1057.5379996984923}, {us.Drive.Speed, 544.5427266222308}, {us.Check.TargetAntiSquat[1], 1.6}, {us.Check.TargetICZ[1], 0.3556},
	} {
		if math.Abs(c.got-c.want) > 1e-15*math.Abs(c.want) {
			t.Errorf("%v, want %v", c.got, c.want)
		}
	}
	si := mustDecodeCar(t, fixture(t, "inline.toml")).Car
	for _, c := range []struct{ got, want float64 }{
		{si.Body.Wheelbase, 2.667}, {si.Body.Mass, 1202}, {si.Tires.RearSpinInertia, 6.2}, {si.Springs.RearRate, 26300},
		{si.Springs.RearAxleMount.Y, -0.076}, {si.Drive.Torque, 1057}, {si.Driveline.PinionAngle, 0.0436332312998582}, {si.Check.TargetICX[1], 1.524},
	} {
		if math.Abs(c.got-c.want) > 1e-15*math.Abs(c.want) {
			t.Errorf("%v, want %v", c.got, c.want)
		}
	}
	if got := us.Setups[0]; got.Name != "baseline" || got.Holes.ChassisUpper != 2 || got.Holes.HousingLower != 0 {
		t.Errorf("%+v", got)
	}
}

func TestNewFileIsLaidOutInShopOrder(t *testing.T) {
	f, err := New("new.toml", mustDecodeCar(t, fixture(t, "example.toml")).Car, units.US, Stock())
	if err != nil {
		t.Fatal(err)
	}
	if want := fixture(t, "new.toml"); f.text != want {
		t.Errorf("got  %s\nwant %s", f.text, want)
	}
	if got, err := f.Encode(f.Car); err != nil || string(got) != f.text {
		t.Errorf("%v", err)
	}
}

func TestCarThatCannotBeIsNotSaved(t *testing.T) {
	f := mustDecodeCar(t, fixture(t, "example.toml"))
	c := f.Car.Clone()
	c.Body.Wheelbase, c.Setups[0].Holes.HousingLower = math.NaN(), 2
	const want = `car.toml: car.wheelbase: nan is out of range; give 40 in to 400 in
car.toml: setup 1: housing_lower: the lower housing bracket has no hole 3; give a number from 1 to 2`
	if _, err := f.Encode(c); err == nil || err.Error() != want {
		t.Errorf("%v", err)
	}
	if _, err := New("car.toml", c, units.US, Stock()); err == nil || err.Error() != want {
		t.Errorf("%v", err)
	}
	c = f.Car.Clone()
	c.Body.Name = "\xFF"
	if _, err := f.Encode(c); err == nil || err.Error() != "car.toml: the text made of the car gives another car" {
		t.Errorf("%v", err)
	}
}

// The scales give the weights that are left out beside them, and only those.
func TestScalesGiveTheWeights(t *testing.T) {
	text, err := os.ReadFile("../../testdata/reference.toml")
	if err != nil {
		t.Fatal(err)
	}
	scales := "corner_weights = { lf = 665.25, rf = 659.75, lr = 670.5, rr = 654.5 }\n"
	for _, without := range []string{"weight = 2650.0\nrear_weight = 1325.0\n", "weight = 2650.0\n", "rear_weight = 1325.0\n", ""} {
		changed := strings.Replace(strings.Replace(string(text), without, "", 1), "cg_height", scales+"cg_height", 1)
		f, err := Decode("a.toml", []byte(changed), Stock())
		if err != nil {
			t.Fatal(err)
		}
		b := f.Car.Body
		if math.Abs(b.Mass-2650*0.45359237) > 1e-9 || math.Abs(b.RearMass-1325*0.45359237) > 1e-9 || !b.Scales.Given {
			t.Errorf("without %q: %+v", without, b)
		}
	}
}

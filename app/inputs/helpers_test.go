package inputs

import (
	"testing"

	"bowline/app/document"
	"bowline/app/look"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/stock"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch  = 0.0254
	pound = 0.45359237
	lbf   = pound * 9.80665
)

// library holds two materials and two tube sizes.
func library() stock.Library {
	const psi = lbf / (inch * inch)
	return stock.Library{
		Materials: []stock.Material{
			{Name: "4130 normalized", E: 29e6 * psi, Yield: 75e3 * psi, Ultimate: 95e3 * psi, Density: 7833},
			{Name: "1020 DOM", E: 29e6 * psi, Yield: 60e3 * psi, Ultimate: 70e3 * psi, Density: 7861},
		},
		Tubes: []stock.Tube{
			{Name: "1 1/4 x 0.095", OD: 1.25 * inch, Wall: 0.095 * inch},
			{Name: "1 1/2 x 0.120", OD: 1.5 * inch, Wall: 0.120 * inch},
		},
	}
}

// places are side-view points in inches.
func places(xz ...float64) []r2.Vec {
	var list []r2.Vec
	for i := 0; i < len(xz); i += 2 {
		list = append(list, r2.Vec{X: xz[i] * inch, Y: xz[i+1] * inch})
	}
	return list
}

// saltgrass is a car of the Saltgrass Racing team.
func saltgrass() *car.Car {
	c := car.Defaults()
	c.Body = car.Body{
		Name: "Saltgrass No. 7", Wheelbase: 105 * inch, Mass: 2650 * pound, RearMass: 1325 * pound, CGHeight: 19.5 * inch,
		UnsprungRear: 390 * pound, UnsprungFront: 130 * pound, TrackRear: 56 * inch, TrackFront: 58 * inch,
	}
	c.Tires.RearRadius, c.Tires.FrontRadius, c.Tires.Grip = 16*inch, 12.5*inch, 2.6
	c.Chassis = car.Bracket{Upper: places(22.5, 18.5, 22.5, 17.75, 22.5, 17), Lower: places(25.5, 12.25, 25.5, 11.5, 25.5, 10.75), SpreadUpper: 36 * inch, SpreadLower: 36 * inch}
	c.Housing = car.Bracket{Upper: places(2.5, 6.5, 2.5, 5.75), Lower: places(2.5, -5, 2.5, -5.75), SpreadUpper: 36 * inch, SpreadLower: 36 * inch}
	c.UpperBar = car.Bar{OD: 1.25 * inch, Wall: 0.095 * inch, Material: "4130 normalized", RodEnd: "3/4-16"}
	c.LowerBar = c.UpperBar
	c.Springs.RearRate, c.Springs.FrontRate = 150*lbf/inch, 120*lbf/inch
	c.Springs.RearAxleMount, c.Springs.RearChassisMount = places(-2, -3)[0], places(-2, 29)[0]
	c.Springs.RearDroop, c.Springs.RearBump = 4*inch, 3*inch
	c.Drive = car.Drive{Torque: 780 * lbf * 12 * inch, Speed: units.US.ToSI(units.Speed, 5200), Converter: 1.7, Gear: 1.8, Axle: 4.1, Efficiency: 0.9}
	c.Setups = []car.Setup{
		{Name: "baseline", Holes: car.Holes{ChassisUpper: 2, ChassisLower: 1}},
		{Name: "bite", Holes: car.Holes{ChassisUpper: 0, ChassisLower: 1}, Note: "Loose track."},
	}
	return c
}

// desk is a panel in a window, and its document.
type desk struct {
	t      testing.TB
	doc    *document.Document
	panel  *Panel
	window fyne.Window
}

func newDesk(t testing.TB) *desk {
	t.Helper()
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Light))
	file, err := carfile.New("saltgrass.toml", saltgrass(), units.US, library())
	if err != nil {
		t.Fatal(err)
	}
	doc := document.New(library(), t.TempDir(), file)
	p := New(doc, library())
	w := test.NewTempWindow(t, p)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(290, 900))
	return &desk{t, doc, p, w}
}

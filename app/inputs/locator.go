package inputs

import (
	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
)

// fillLocator fills the section of the bar that holds the axle sideways.
func fillLocator(s *section) {
	s.choice("Choose locator", form.About{Path: "locator.kind", Label: "Kind", Help: "A track bar runs across the car; a diagonal link runs from one lower bar's front to the other's rear."},
		car.LocatorKinds, func(c *car.Car) *string { return &c.Launch.Locator.Kind })
	ends := []struct {
		path, label, help string
		in                func(*car.Car) *car.End
	}{
		{"locator.chassis", "Chassis end", "x forward of the rear axle centerline, y left of the car's middle, z above the ground, at ride height.", func(c *car.Car) *car.End { return &c.Launch.Locator.Chassis }},
		{"locator.housing", "Housing end", "x forward of, y left of the middle of, z above the axle centerline.", func(c *car.Car) *car.End { return &c.Launch.Locator.Housing }},
	}
	for _, e := range ends {
		action := s.action(e.label)
		given := s.given(action, e.label+" is given", "Without it the end stands where such a bar's usually does.",
			func(c *car.Car) bool { return e.in(c).Given },
			func(c *car.Car, on bool) { *e.in(c) = car.End{Given: on, At: e.in(c).At} })
		at := func(of func(*r3.Vec) *float64) func(*car.Car) *float64 {
			return func(c *car.Car) *float64 { return of(&e.in(c).At) }
		}
		r := s.Row(form.About{Path: e.path, Label: e.label + ", x, y and z", Help: e.help, Allowed: reachRange}, s.coordinates(action,
			at(func(p *r3.Vec) *float64 { return &p.X }), at(func(p *r3.Vec) *float64 { return &p.Y }), at(func(p *r3.Vec) *float64 { return &p.Z }))...)
		r.Quantity, r.Wanted = units.Length, given
	}
	s.numbers("locator")
}

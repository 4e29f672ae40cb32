package inputs

import (
	"math"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// fillDriveline fills the section of the optional driveshaft: a check box, and
// below it the numbers while they are wanted.
func fillDriveline(s *section) {
	given := s.given("Set driveshaft", "Driveshaft is given", "With the driveshaft given, its joint angles are worked out over the travel. It starts as a guess: measure yours.",
		func(c *car.Car) bool { return c.Driveline.Given },
		func(c *car.Car, on bool) {
			c.Driveline.Given = on
			if c.Driveline == (car.Driveline{Given: true}) {
				c.Driveline = guessedDriveline(c)
			}
		})
	for _, r := range []*form.Row{
		s.point("Set front joint", form.About{Path: "driveline.transmission_joint", Label: "Front joint, x and z", Help: "Center of the joint at the transmission: x forward of the rear axle centerline, z above the ground, at ride height."},
			func(c *car.Car) *r2.Vec { return &c.Driveline.TransmissionJoint }),
		s.point("Set rear joint", form.About{Path: "driveline.pinion_joint", Label: "Rear joint, x and z", Help: "Center of the joint at the pinion: x forward of, z above the axle centerline, at ride height."},
			func(c *car.Car) *r2.Vec { return &c.Driveline.PinionJoint }),
		s.angle(form.About{Path: "driveline.transmission_angle", Label: "Transmission angle", Help: "Output shaft against the ground at ride height, nose-up positive."},
			func(c *car.Car) *float64 { return &c.Driveline.TransmissionAngle }),
		s.angle(form.About{Path: "driveline.pinion_angle", Label: "Pinion angle", Help: "Pinion shaft against the ground at ride height, nose-up positive."},
			func(c *car.Car) *float64 { return &c.Driveline.PinionAngle }),
	} {
		r.Wanted = given
	}
}

// guessedDriveline returns a driveshaft that might be this car's, for its owner
// to correct: a pinion joint 9 in ahead of the axle, and a transmission at two
// fifths of the wheelbase.
func guessedDriveline(c *car.Car) car.Driveline {
	return car.Driveline{
		Given:             true,
		PinionJoint:       r2.Vec{X: 9 * units.Inch},
		TransmissionJoint: r2.Vec{X: 0.4 * c.Body.Wheelbase, Y: c.Tires.RearRadius},
	}
}

// steepest is the greatest angle of a shaft, as car.Validate has it.
const steepest = math.Pi / 4

// angle adds the row of the angle of a shaft.
func (s *section) angle(a form.About, in func(*car.Car) *float64) *form.Row {
	a.Allowed = span(units.Angle, steepest)
	r := s.Row(a, s.entry(s.action(a.Label), form.Number{Quantity: units.Angle}, in))
	r.Quantity = units.Angle
	return r
}

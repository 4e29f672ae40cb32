package inputs

import (
	"math"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// fillDriveline fills the section of the optional driveshaft: a check box, and
// below it the numbers while they are wanted.
func fillDriveline(s *section) {
	given := func(v view) bool { return v.car.Driveline.Given }
	s.row(about{help: "With the driveshaft given, its joint angles are worked out over the travel. It starts as a guess: measure yours.", action: "Set driveshaft"},
		newCheck("Driveshaft is given", given, func(c *car.Car, on bool) {
			c.Driveline.Given = on
			if c.Driveline == (car.Driveline{Given: true}) {
				c.Driveline = guessedDriveline(c)
			}
		})).wide = true
	for _, r := range []*row{
		s.point(about{path: "driveline.transmission_joint", label: "Front joint, x and z", help: "Center of the joint at the transmission: x forward of the rear axle centerline, z above the ground, at ride height.", action: "Set front joint"},
			func(c *car.Car) *r2.Vec { return &c.Driveline.TransmissionJoint }),
		s.point(about{path: "driveline.pinion_joint", label: "Rear joint, x and z", help: "Center of the joint at the pinion: x forward of, z above the axle centerline, at ride height.", action: "Set rear joint"},
			func(c *car.Car) *r2.Vec { return &c.Driveline.PinionJoint }),
		s.angle(about{path: "driveline.transmission_angle", label: "Transmission angle", help: "Output shaft against the ground at ride height, nose-up positive."},
			func(c *car.Car) *float64 { return &c.Driveline.TransmissionAngle }),
		s.angle(about{path: "driveline.pinion_angle", label: "Pinion angle", help: "Pinion shaft against the ground at ride height, nose-up positive."},
			func(c *car.Car) *float64 { return &c.Driveline.PinionAngle }),
	} {
		r.wanted = given
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
func (s *section) angle(a about, in func(*car.Car) *float64) *row {
	a.allowed = func(u units.System) string {
		return u.FormatExact(units.Angle, -steepest) + " to " + u.FormatExact(units.Angle, steepest)
	}
	r := s.row(a, newEntry(&number{quantity: units.Angle, in: in}))
	r.quantity = units.Angle
	return r
}

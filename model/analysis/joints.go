package analysis

import (
	"math"

	"bowline/model/car"
	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
)

// Joints are the angles of the driveshaft's two joints in side view.
type Joints struct {
	Given        bool
	Pinion       float64 // pinion shaft against the driveshaft, nose-up positive [rad]
	Transmission float64 // driveshaft against the output shaft, front-up positive [rad]
}

// joints places the driveshaft between its joints at a pose. The transmission
// stays with the chassis, the pinion turns with the housing.
func joints(d car.Driveline, p *linkage.Pose) Joints {
	if !d.Given {
		return Joints{}
	}
	sin, cos := math.Sincos(p.Turn)
	j := d.PinionJoint
	rear := r2.Add(p.Axle, r2.Vec{X: cos*j.X - sin*j.Y, Y: sin*j.X + cos*j.Y})
	shaft := r2.Sub(d.TransmissionJoint, rear)
	slope := math.Atan2(shaft.Y, shaft.X)
	return Joints{
		Given:        true,
		Pinion:       math.Remainder(d.PinionAngle+p.Turn-slope, 2*math.Pi),
		Transmission: math.Remainder(slope-d.TransmissionAngle, 2*math.Pi),
	}
}

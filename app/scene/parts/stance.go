package parts

import (
	"bowline/model/analysis"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Stance is where the car's bodies are in the ground's frame, and what is going on in them.
type Stance struct {
	Chassis launch.Placement // of the chassis frame
	Axle    launch.Placement // of the middle of the axle centerline
	Rear    [2]r3.Vec        // wheel centers, by launch.Side [m]
	Front   [2]r3.Vec        // wheel centers, by launch.Side [m]
	Spin    float64          // that the rear wheels have turned forward [rad]
	Roll    float64          // that the front wheels have turned forward [rad]
	WindUp  [2]float64       // of a rear tire's tread against its rim, by launch.Side [rad]
	Come    float64          // how far the car has come [m]
}

// Standing returns the stance of a station: both sides alike.
func Standing(r *analysis.Result, s *analysis.Station) Stance {
	p := &s.Pose
	nose := p.Ground.Pitch() // a turn about −y
	chassis := launch.Placement{Turn: r3.NewRotation(-nose, r3.Vec{Y: 1})}
	chassis.Origin = across(p.Ground.Point(r2.Vec{}), 0)
	axle := launch.Placement{Origin: across(p.Ground.Point(p.Axle), 0), Turn: r3.NewRotation(-nose-p.Turn, r3.Vec{Y: 1})}
	st := Stance{Chassis: chassis, Axle: axle}
	front := p.Ground.Point(p.FrontWheel)
	for side, y := range sides {
		st.Rear[side] = axle.At(r3.Vec{Y: y * r.Car.Body.TrackRear / 2})
		st.Front[side] = across(front, y*r.Car.Body.TrackFront/2)
	}
	return st
}

// Launched returns the stance at an instant of a launch. The ground's frame goes along with
// the rear axle.
func Launched(l *launch.Result, i int) Stance {
	f := &l.Frames[i]
	back := r3.Vec{X: -f.Axle.Origin.X}
	st := Stance{
		Chassis: launch.Placement{Origin: r3.Add(f.Chassis.Origin, back), Turn: f.Chassis.Turn},
		Axle:    launch.Placement{Origin: r3.Add(f.Axle.Origin, back), Turn: f.Axle.Turn},
		Spin:    f.Spin, Come: l.Distance[i], Roll: l.Distance[i] / l.Car.Tires.FrontRadius,
	}
	for side := range sides {
		st.Rear[side] = r3.Add(f.RearWheels[side], back)
		st.Front[side] = r3.Add(f.FrontWheels[side], back)
		st.WindUp[side] = l.TireThrust[side][i] / (l.Car.Launch.Tires.CarcassRate * l.Car.Tires.RearRadius)
	}
	return st
}

// sides are where left and right are, by launch.Side.
var sides = [2]float64{1, -1}

// across returns the point that is y to the left of the middle and seen at p in side view.
func across(p r2.Vec, y float64) r3.Vec { return r3.Vec{X: p.X, Y: y, Z: p.Y} }

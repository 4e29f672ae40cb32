package report

import (
	"encoding/csv"
	"io"

	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"
)

// WriteLaunchCSV writes the lists of a Document's launch as a table: a header
// of names and units, then one line for each time. A cell is empty where the
// document has null.
func WriteLaunchCSV(w io.Writer, r *analysis.Result, l *launch.Result, s units.System) error {
	d := builder{r, s}.launch(l, nil)
	type column struct {
		name  string
		value func(i int) *float64
	}
	in := func(name string, q units.Quantity, list []float64) column {
		return column{columnName(name, q, s), func(i int) *float64 { return &list[i] }}
	}
	center := func(name string, k int) column {
		return column{columnName(name, units.Length, s), func(i int) *float64 { return part(d.InstantCenter[i], k) }}
	}
	columns := []column{
		in("t", units.Time, d.Time),
		in("upper_left_pull", units.Force, d.UpperLeft), in("upper_right_pull", units.Force, d.UpperRight),
		in("lower_left_pull", units.Force, d.LowerLeft), in("lower_right_pull", units.Force, d.LowerRight),
		in("pitch", units.Angle, d.Pitch), in("roll", units.Angle, d.Roll),
		in("rear_travel", units.Length, d.Rear), in("front_travel", units.Length, d.Front), in("thrust", units.Force, d.Thrust),
		in("rear_left", units.Force, d.RearLeft), in("rear_right", units.Force, d.RearRight),
		in("front_left", units.Force, d.FrontLeft), in("front_right", units.Force, d.FrontRight), in("speed", units.RoadSpeed, d.Speed),
		in("slip_left", units.Number, d.SlipLeft), in("slip_right", units.Number, d.SlipRight), in("wheel_speed", units.RoadSpeed, d.WheelSpeed),
		in("engine_speed", units.Speed, d.EngineSpeed), in("axle_torque", units.Torque, d.AxleTorque), in("wheelie", units.Force, d.Wheelie),
		in("thrust_left", units.Force, d.ThrustLeft), in("thrust_right", units.Force, d.ThrustRight),
		in("rear_travel_left", units.Length, d.RearTravelLeft), in("rear_travel_right", units.Length, d.RearTravelRight),
		in("front_travel_left", units.Length, d.FrontTravelLeft), in("front_travel_right", units.Length, d.FrontTravelRight),
		in("distance", units.Length, d.Distance), in("driveshaft_speed", units.Speed, d.DriveshaftSpeed),
		center("instant_center_x", 0), center("instant_center_z", 1),
		{columnName("anti_squat", units.Percent, s), func(i int) *float64 { return d.AntiSquat[i] }},
	}
	lines := make([][]string, 1+len(d.Time))
	for _, c := range columns {
		lines[0] = append(lines[0], c.name)
		for i := range d.Time {
			lines[1+i] = append(lines[1+i], number(c.value(i)))
		}
	}
	return csv.NewWriter(w).WriteAll(lines)
}

package report

import (
	"encoding/csv"
	"io"

	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"
)

// WriteLaunchCSV writes the lists of a Document's launch as a table: a header
// of names and units, then one line for each time.
func WriteLaunchCSV(w io.Writer, r *analysis.Result, l *launch.Result, s units.System) error {
	d := builder{r, s}.launch(l, nil)
	speed := func(name string) string { return columnName(name, units.RoadSpeed, s) }
	force := func(name string) string { return columnName(name, units.Force, s) }
	angle := func(name string) string { return columnName(name, units.Angle, s) }
	length := func(name string) string { return columnName(name, units.Length, s) }
	columns := []struct {
		name string
		list []float64
	}{
		{columnName("t", units.Time, s), d.Time},
		{force("upper_left_pull"), d.UpperLeft}, {force("upper_right_pull"), d.UpperRight},
		{force("lower_left_pull"), d.LowerLeft}, {force("lower_right_pull"), d.LowerRight},
		{angle("pitch"), d.Pitch}, {angle("roll"), d.Roll},
		{length("rear_travel"), d.Rear}, {length("front_travel"), d.Front}, {force("thrust"), d.Thrust},
		{force("rear_left"), d.RearLeft}, {force("rear_right"), d.RearRight},
		{force("front_left"), d.FrontLeft}, {force("front_right"), d.FrontRight}, {speed("speed"), d.Speed},
		{"slip_left", d.SlipLeft}, {"slip_right", d.SlipRight}, {speed("wheel_speed"), d.WheelSpeed},
		{columnName("engine_speed", units.Speed, s), d.EngineSpeed}, {columnName("axle_torque", units.Torque, s), d.AxleTorque},
		{force("wheelie"), d.Wheelie}, {force("thrust_left"), d.ThrustLeft}, {force("thrust_right"), d.ThrustRight},
		{length("rear_travel_left"), d.RearTravelLeft}, {length("rear_travel_right"), d.RearTravelRight},
		{length("front_travel_left"), d.FrontTravelLeft}, {length("front_travel_right"), d.FrontTravelRight}, {length("distance"), d.Distance},
	}
	lines := make([][]string, 1+len(d.Time))
	for _, c := range columns {
		lines[0] = append(lines[0], c.name)
		for i := range c.list {
			lines[1+i] = append(lines[1+i], number(&c.list[i]))
		}
	}
	return csv.NewWriter(w).WriteAll(lines)
}

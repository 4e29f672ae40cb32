package report

import (
	"math"
	"slices"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"
)

// rows is about how many travels a table shows.
const rows = 10

// stations returns the car at full droop, full bump, ride height and every
// round travel between.
func (w writer) stations() []analysis.Station {
	springs := w.Car.Springs
	var list []analysis.Station
	for _, q := range roundTravels(springs.RearDroop, springs.RearBump, w.units.Factor(units.Length)) {
		s, err := w.At(q, w.Options.FrontTravel)
		if err != nil {
			// Run has reached both ends, and with them all between.
			panic(err)
		}
		list = append(list, s)
	}
	return list
}

// roundTravels lists −droop, bump and the multiples of a round step between
// them, in a unit of so many meters.
func roundTravels(droop, bump, unit float64) []float64 {
	step := roundStep((droop+bump)/unit) * unit
	list := []float64{0 - droop}
	for i := math.Ceil(-droop / step); i*step < bump; i++ {
		q := i*step + 0
		// Next to an end, a multiple says nothing new; ride height always does.
		if i == 0 || math.Min(q+droop, bump-q) > step/4 {
			list = append(list, q)
		}
	}
	return slices.Compact(append(list, bump))
}

// roundStep returns the step of 1, 2 or 5 times a power of ten that divides a
// span into the number of rows nearest to rows.
func roundStep(span float64) float64 {
	best := 0.0
	for _, exponent := range []float64{-1, 0, 1} {
		power := math.Pow(10, math.Floor(math.Log10(span/rows))+exponent)
		for _, digit := range []float64{1, 2, 5} {
			if step := digit * power; best == 0 || math.Abs(span/step+1-rows) < math.Abs(span/best+1-rows) {
				best = step
			}
		}
	}
	return best
}

// geometry shows how the linkage moves over the travel.
func (w writer) geometry() section {
	length, angle := w.units.Symbol(units.Length), w.units.Symbol(units.Angle)
	s := section{title: "Over the travel: geometry", table: table{
		columns: []heading{{"travel", length}, {"ahead", length}, {"up", length}, {"anti-squat", "%"}, {"pinion", angle}, {"axle move", length}, {"CG up", length}},
		groups:  []group{{"", 1}, {"instant center", 2}},
	}}
	joints := w.Car.Driveline.Given
	if joints {
		s.table.columns = append(s.table.columns, heading{"rear", angle}, heading{"front", angle})
		s.table.groups = append(s.table.groups, group{"", 4}, group{"joints", 2})
	}
	for _, station := range w.stations() {
		row := []cell{w.travelCell(station.Pose.Travel), said("none"), said("none"), said("none")}
		if station.HasInstantCenter {
			row[1] = w.coordinate(station.InstantCenter.X, "behind")
			row[2] = w.coordinate(station.InstantCenter.Y, "below")
		}
		if station.HasAntiSquat {
			row[3] = w.number(units.Percent, station.AntiSquat)
		}
		row = append(row,
			w.signed(units.Angle, station.Pose.Turn, "up", "down"),
			w.signed(units.Length, station.Pose.Shift, "fore", "aft"),
			w.number(units.Length, station.CG.Y),
		)
		if joints {
			row = append(row, w.signed(units.Angle, station.Joints.Pinion, "up", "down"), w.signed(units.Angle, station.Joints.Transmission, "up", "down"))
		}
		s.table.rows = append(s.table.rows, row)
	}
	return s
}

// far is the distance beyond which it does not matter where an instant center
// is [m].
const far = 25

// coordinate is a coordinate of the instant center.
func (w writer) coordinate(x float64, negative string) cell {
	switch {
	case x > far:
		return said("far")
	case x < -far:
		return said("far " + negative)
	}
	return w.signed(units.Length, x, "", negative)
}

// loads shows what the bars and springs carry over the travel.
func (w writer) loads() section {
	force := w.units.Symbol(units.Force)
	s := section{title: "Over the travel: loads (bars each, springs both together)", table: table{columns: []heading{{"travel", w.units.Symbol(units.Length)}}, groups: []group{{"", 1}}}}
	for _, c := range analysis.Cases {
		s.table.columns = append(s.table.columns, heading{"upper bar", force}, heading{"lower bar", force}, heading{"springs", force})
		s.table.groups = append(s.table.groups, group{c.String(), 3})
	}
	s.table.columns = append(s.table.columns, heading{"most used", "%"})
	for _, station := range w.stations() {
		row := []cell{w.travelCell(station.Pose.Travel)}
		for _, c := range analysis.Cases {
			l := c.Of(&station.Loads)
			if l.Balanced {
				row = append(row, w.pull(l.Upper.Tension), w.pull(l.Lower.Tension), w.pull(-l.Spring))
			} else {
				row = append(row, said("none"), said("none"), said("none"))
			}
		}
		s.table.rows = append(s.table.rows, append(row, w.mostUsed(&station)))
	}
	return s
}

// mostUsed is the greatest use of any bar at a station.
func (w writer) mostUsed(s *analysis.Station) cell {
	var worst analysis.Use
	name := ""
	for _, c := range analysis.Cases {
		for p, bars := range [...]string{car.Upper: "upper", car.Lower: "lower"} {
			if u, _ := w.Use(car.Pair(p), c, s); u.Share > worst.Share {
				worst, name = u, bars
			}
		}
	}
	if worst.Force == 0 {
		return said("none")
	}
	return cell{figure: units.ShareFigure(worst.Share), words: name}
}

// holeForces shows what one bar does to the brackets at ride height.
func (w writer) holeForces() section {
	force := w.units.Symbol(units.Force)
	s := section{title: "Into each bracket hole at ride height, from one bar", table: table{columns: []heading{{"bar end", ""}}, groups: []group{{"", 1}}}}
	for _, c := range analysis.Cases {
		s.table.columns = append(s.table.columns, heading{"horizontal", force}, heading{"vertical", force})
		s.table.groups = append(s.table.groups, group{c.String(), 2})
	}
	for _, row := range car.Rows {
		line := []cell{said(row.String())}
		for _, c := range analysis.Cases {
			l := c.Of(&w.Ride.Loads)
			if !l.Balanced {
				line = append(line, said("none"), said("none"))
				continue
			}
			f := row.Force(l)
			line = append(line, w.signed(units.Force, f.X, "fore", "aft"), w.signed(units.Force, f.Y, "up", "down"))
		}
		s.table.rows = append(s.table.rows, line)
	}
	return s
}

// travelCell is a travel in a table.
func (w writer) travelCell(q float64) cell {
	if q == 0 {
		return cell{w.number(units.Length, 0).figure, "ride"}
	}
	return w.signed(units.Length, q, "bump", "droop")
}

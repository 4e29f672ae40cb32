package report

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"
)

// Names of the tables that SaveCSV writes.
const (
	TravelFile  = "travel.csv"
	BarsFile    = "bars.csv"
	LaunchFile  = "launch.csv"
	SummaryFile = "launch-summary.csv"
)

// figure is one column of the travel table.
type figure struct {
	name     string
	quantity units.Quantity
	of       func(*TravelRow) *float64
}

// WriteTravelCSV writes the travel rows of a Document as a table: first a
// header of names and units, then one line a travel. A cell is empty where
// the document has null. Load columns begin with their case, those of holes
// end with the direction in which the force is positive.
func WriteTravelCSV(w io.Writer, r *analysis.Result, s units.System) error {
	document := NewDocument(r, nil, nil, s)
	figures := travelFigures(r.Car.Driveline.Given)
	table := csv.NewWriter(w)
	header := make([]string, len(figures))
	governs := []string{"hooked_governs", "hit_governs"}
	for i, f := range figures {
		header[i] = columnName(f.name, f.quantity, s)
	}
	lines := [][]string{append(header, governs...)}
	for i := range document.Travel {
		row := &document.Travel[i]
		line := make([]string, len(figures))
		for j, f := range figures {
			line[j] = number(f.of(row))
		}
		lines = append(lines, append(line, row.Hooked.Governs, row.Hit.Governs))
	}
	return table.WriteAll(lines)
}

// WriteBarsCSV writes the bars of a Document as a table: a header, then one
// line for the upper and one for the lower bar.
func WriteBarsCSV(w io.Writer, r *analysis.Result, s units.System) error {
	b := builder{r, s}
	length := func(name string) string { return columnName(name, units.Length, s) }
	force := func(name string) string { return columnName(name, units.Force, s) }
	lines := [][]string{{
		"bar", "material", length("od"), length("wall"), length("length"), "slenderness",
		force("euler"), force("johnson"), force("first_yield"),
		force("capacity_push"), "governs_push", force("capacity_pull"), "governs_pull",
		force("worst_push"), "worst_push_share", length("worst_push_travel"), "worst_push_case",
		force("worst_pull"), "worst_pull_share", length("worst_pull_travel"), "worst_pull_case",
	}}
	for _, p := range car.Pairs {
		bar := b.bar(p)
		line := []string{
			[...]string{car.Upper: "upper", car.Lower: "lower"}[p], bar.Material, number(&bar.OD), number(&bar.Wall), number(&bar.Length), number(&bar.Slenderness),
			number(&bar.Euler), number(&bar.Johnson), number(&bar.FirstYield),
			number(&bar.CapacityPush), bar.GovernsPush, number(&bar.CapacityPull), bar.GovernsPull,
		}
		line = append(line, useCells(bar.Worst.Push)...)
		lines = append(lines, append(line, useCells(bar.Worst.Pull)...))
	}
	return csv.NewWriter(w).WriteAll(lines)
}

// useCells are the four cells of a use, empty for none.
func useCells(u *UseData) []string {
	if u == nil {
		return make([]string, 4)
	}
	return []string{number(&u.Force), number(&u.Share), number(&u.Travel), u.Case}
}

// number writes a number with as few digits as keep it, and null as nothing.
func number(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'f', -1, 64)
}

// columnName writes a column's name and unit in plain characters, which every
// spreadsheet reads the same.
func columnName(name string, q units.Quantity, s units.System) string {
	unit := plainUnit(q, s)
	if unit == "" {
		return name
	}
	return name + " [" + unit + "]"
}

// plainUnit writes a unit in plain characters.
func plainUnit(q units.Quantity, s units.System) string {
	return strings.NewReplacer("°", "deg", "·", " ").Replace(s.Symbol(q))
}

// travelFigures lists the numbers of a travel row.
func travelFigures(joints bool) []figure {
	list := []figure{
		{"travel", units.Length, func(t *TravelRow) *float64 { return &t.Travel }},
		{"instant_center_x", units.Length, func(t *TravelRow) *float64 { return part(t.InstantCenter, 0) }},
		{"instant_center_z", units.Length, func(t *TravelRow) *float64 { return part(t.InstantCenter, 1) }},
		{"anti_squat", units.Percent, func(t *TravelRow) *float64 { return t.AntiSquat }},
		{"pinion_change", units.Angle, func(t *TravelRow) *float64 { return &t.PinionChange }},
		{"axle_shift", units.Length, func(t *TravelRow) *float64 { return &t.AxleShift }},
		{"cg_height", units.Length, func(t *TravelRow) *float64 { return &t.CGHeight }},
	}
	if joints {
		list = append(list,
			figure{"pinion_joint", units.Angle, func(t *TravelRow) *float64 { return &t.Joints.Pinion }},
			figure{"transmission_joint", units.Angle, func(t *TravelRow) *float64 { return &t.Joints.Transmission }},
		)
	}
	list = append(list, loadFigures("hooked", func(t *TravelRow) *LoadData { return &t.Hooked })...)
	return append(list, loadFigures("hit", func(t *TravelRow) *LoadData { return &t.Hit })...)
}

// loadFigures lists the numbers of one load case.
func loadFigures(name string, of func(*TravelRow) *LoadData) []figure {
	var list []figure
	add := func(what string, q units.Quantity, pick func(*LoadData) *float64) {
		list = append(list, figure{name + "_" + what, q, func(t *TravelRow) *float64 { return pick(of(t)) }})
	}
	add("thrust", units.Force, func(l *LoadData) *float64 { return &l.Thrust })
	add("axle_torque", units.Torque, func(l *LoadData) *float64 { return &l.AxleTorque })
	add("accel_g", units.Number, func(l *LoadData) *float64 { return &l.AccelG })
	add("rear_load", units.Force, func(l *LoadData) *float64 { return &l.RearLoad })
	add("front_load", units.Force, func(l *LoadData) *float64 { return &l.FrontLoad })
	add("upper_pull", units.Force, func(l *LoadData) *float64 { return l.Upper })
	add("lower_pull", units.Force, func(l *LoadData) *float64 { return l.Lower })
	add("spring_push", units.Force, func(l *LoadData) *float64 { return l.Spring })
	add("spring_change", units.Force, func(l *LoadData) *float64 { return l.SpringChange })
	add("bars_share", units.Number, func(l *LoadData) *float64 { return l.BarsShare })
	for _, hole := range []struct {
		name string
		of   func(*HoleForces) *[2]float64
	}{
		{"chassis_upper", func(h *HoleForces) *[2]float64 { return &h.ChassisUpper }},
		{"chassis_lower", func(h *HoleForces) *[2]float64 { return &h.ChassisLower }},
		{"housing_upper", func(h *HoleForces) *[2]float64 { return &h.HousingUpper }},
		{"housing_lower", func(h *HoleForces) *[2]float64 { return &h.HousingLower }},
	} {
		for i, direction := range []string{"forward", "up"} {
			add(hole.name+"_"+direction, units.Force, func(l *LoadData) *float64 {
				if l.HoleForces == nil {
					return nil
				}
				return &hole.of(l.HoleForces)[i]
			})
		}
	}
	return list
}

// part returns one coordinate of a point that may be missing.
func part(point *[2]float64, i int) *float64 {
	if point == nil {
		return nil
	}
	return &point[i]
}

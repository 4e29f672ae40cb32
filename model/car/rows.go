package car

import (
	"fmt"

	"bowline/model/statics"

	"gonum.org/v1/gonum/spatial/r2"
)

// Row is one of the four hole rows; each bar's end sits in a hole of one row.
type Row int

// The four rows.
const (
	ChassisUpper Row = iota
	ChassisLower
	HousingUpper
	HousingLower
)

// Rows lists the four rows in file order.
var Rows = [...]Row{ChassisUpper, ChassisLower, HousingUpper, HousingLower}

// String returns the row's name for people, as in "upper chassis".
func (r Row) String() string {
	return [...]string{"upper chassis", "lower chassis", "upper housing", "lower housing"}[r]
}

// Path returns the row's key in a car file, as in "chassis_bracket.upper".
func (r Row) Path() string {
	return [...]string{"chassis_bracket.upper", "chassis_bracket.lower", "housing_bracket.upper", "housing_bracket.lower"}[r]
}

// SetupKey returns the key of a setup that picks a hole of this row.
func (r Row) SetupKey() string {
	return [...]string{"chassis_upper", "chassis_lower", "housing_upper", "housing_lower"}[r]
}

// OnChassis reports whether the row is in the chassis bracket.
func (r Row) OnChassis() bool { return r == ChassisUpper || r == ChassisLower }

// Pair returns the pair of bars whose ends sit in the row.
func (r Row) Pair() Pair {
	if r == ChassisUpper || r == HousingUpper {
		return Upper
	}
	return Lower
}

// Rows returns the rows that the pair's ends sit in.
func (p Pair) Rows() (chassis, housing Row) {
	if p == Upper {
		return ChassisUpper, HousingUpper
	}
	return ChassisLower, HousingLower
}

// Force returns the force of one bar on a hole of the row, forward and up [N].
func (r Row) Force(l *statics.Load) r2.Vec {
	bar := l.Upper
	if r.Pair() == Lower {
		bar = l.Lower
	}
	if r.OnChassis() {
		return bar.OnChassis()
	}
	return bar.OnHousing
}

// String writes the holes in the order of Rows, counted from 1, as in
// "4·3·2·3".
func (h Holes) String() string {
	return fmt.Sprintf("%d·%d·%d·%d", h.ChassisUpper+1, h.ChassisLower+1, h.HousingUpper+1, h.HousingLower+1)
}

// In returns the row's holes in c: the chassis frame for chassis rows, from
// the axle centerline for housing rows.
func (r Row) In(c *Car) *[]r2.Vec {
	switch r {
	case ChassisUpper:
		return &c.Chassis.Upper
	case ChassisLower:
		return &c.Chassis.Lower
	case HousingUpper:
		return &c.Housing.Upper
	default:
		return &c.Housing.Lower
	}
}

// Spread returns how far apart the left and the right bars are held in the row, center to
// center [m].
func (r Row) Spread(c *Car) *float64 {
	return [...]*float64{&c.Chassis.SpreadUpper, &c.Chassis.SpreadLower, &c.Housing.SpreadUpper, &c.Housing.SpreadLower}[r]
}

// Of returns the row's choice in h.
func (r Row) Of(h *Holes) *int {
	return [...]*int{&h.ChassisUpper, &h.ChassisLower, &h.HousingUpper, &h.HousingLower}[r]
}

// Hole returns the center of the hole that setup s of car c uses in this row.
// It panics when the setup or the hole does not exist.
func (r Row) Hole(c *Car, s int) r2.Vec { return (*r.In(c))[*r.Of(&c.Setups[s].Holes)] }

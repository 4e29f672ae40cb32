// Package units converts between SI, which the whole model computes in, and
// the two systems a shop writes: US customary and metric.
//
// Conversion factors are exact by definition: the international inch and
// pound (1959) and the standard acceleration of gravity (3rd CGPM, 1901).
package units

import (
	"fmt"
	"math"
	"strconv"
)

const (
	// Inch is the international inch [m].
	Inch = 0.0254
	// Foot is the international foot [m].
	Foot = 12 * Inch
	// Pound is the international avoirdupois pound [kg].
	Pound = 0.45359237
	// Gravity is the standard acceleration of gravity [m/s²].
	Gravity = 9.80665
	// PoundForce is the weight of a pound under standard gravity [N].
	PoundForce = Pound * Gravity
)

// System is a set of shop units. The zero value is US.
type System int

// The systems a car file may be written in and the screen may show.
const (
	US System = iota // in, lb, lb/in, lb·s/in, lb-ft, psi, hp, deg
	SI               // mm, kg, N/mm, N·s/mm, N·m, MPa, kW, deg
)

// String returns the name used in car files, "us" or "si".
func (s System) String() string {
	if s == SI {
		return "si"
	}
	return "us"
}

// Parse returns the system with the given car-file name.
func Parse(name string) (System, error) {
	switch name {
	case "us":
		return US, nil
	case "si":
		return SI, nil
	}
	return US, fmt.Errorf("unit system %q is unknown; use \"us\" or \"si\"", name)
}

// Quantity is a kind of physical value; it selects a unit of a System.
type Quantity int

// The quantities that appear in car files and on screen, with their SI unit.
const (
	Number       Quantity = iota // a plain ratio or count [1]
	Percent                      // a ratio shown in percent [1]
	Length                       // [m]
	Mass                         // [kg]
	Force                        // [N]
	SpringRate                   // [N/m]
	Damping                      // [N·s/m]
	Torque                       // [N·m]
	Stress                       // [Pa]
	Power                        // [W]
	Angle                        // [rad]
	SpinInertia                  // [kg·m²]
	Speed                        // shaft speed [rad/s]
	Area                         // [m²]
	SecondMoment                 // second moment of area [m⁴]
	RollRate                     // torque over angle [N·m/rad]
	Time                         // [s]
	RoadSpeed                    // of the car and of its tires' tread [m/s]
	quantities
)

// unit is one shop unit: its symbol, SI units per shop unit, and the decimals
// that suffice to read it.
type unit struct {
	symbol   string
	factor   float64
	decimals int
}

const degree = math.Pi / 180

var tables = [2][quantities]unit{
	US: {
		Number:       {"", 1, 3},
		Percent:      {"%", 0.01, 1},
		Length:       {"in", Inch, 2},
		Mass:         {"lb", Pound, 0},
		Force:        {"lb", PoundForce, 0},
		SpringRate:   {"lb/in", PoundForce / Inch, 1},
		Damping:      {"lb·s/in", PoundForce / Inch, 2},
		Torque:       {"lb-ft", PoundForce * Foot, 0},
		Stress:       {"psi", PoundForce / (Inch * Inch), 0},
		Power:        {"hp", 550 * PoundForce * Foot, 0},
		Angle:        {"°", degree, 2},
		SpinInertia:  {"lb·ft²", Pound * Foot * Foot, 1},
		Speed:        {"rpm", 2 * math.Pi / 60, 0},
		Area:         {"in²", Inch * Inch, 4},
		SecondMoment: {"in⁴", Inch * Inch * Inch * Inch, 5},
		RollRate:     {"lb-ft/°", PoundForce * Foot / degree, 0},
		Time:         {"s", 1, 3},
		RoadSpeed:    {"mph", 5280 * Foot / 3600, 1},
	},
	SI: {
		Number:       {"", 1, 3},
		Percent:      {"%", 0.01, 1},
		Length:       {"mm", 1e-3, 1},
		Mass:         {"kg", 1, 1},
		Force:        {"N", 1, 0},
		SpringRate:   {"N/mm", 1e3, 2},
		Damping:      {"N·s/mm", 1e3, 3},
		Torque:       {"N·m", 1, 0},
		Stress:       {"MPa", 1e6, 1},
		Power:        {"kW", 1e3, 0},
		Angle:        {"°", degree, 2},
		SpinInertia:  {"kg·m²", 1, 2},
		Speed:        {"rpm", 2 * math.Pi / 60, 0},
		Area:         {"mm²", 1e-6, 1},
		SecondMoment: {"mm⁴", 1e-12, 0},
		RollRate:     {"N·m/°", 1 / degree, 0},
		Time:         {"s", 1, 3},
		RoadSpeed:    {"km/h", 1 / 3.6, 1},
	},
}

// Symbol returns the unit's symbol, empty for a plain number.
func (s System) Symbol(q Quantity) string { return tables[s][q].symbol }

// Factor returns how many SI units one shop unit is.
func (s System) Factor(q Quantity) float64 { return tables[s][q].factor }

// ToSI converts a shop value to SI.
func (s System) ToSI(q Quantity, shop float64) float64 { return shop * tables[s][q].factor }

// FromSI converts an SI value to the shop unit, for showing it.
func (s System) FromSI(q Quantity, si float64) float64 { return si / tables[s][q].factor }

// Exact returns the shop value with the fewest decimal digits that ToSI turns
// back into exactly si, so that a value read from a file and written again
// keeps every digit. When no 17-digit decimal does, the nearest is returned.
func (s System) Exact(q Quantity, si float64) float64 {
	f := tables[s][q].factor
	x := si / f
	for digits := 1; digits <= 17; digits++ {
		d, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
		if err == nil && d*f == si {
			return d
		}
	}
	for _, y := range []float64{math.Nextafter(x, math.Inf(1)), math.Nextafter(x, math.Inf(-1))} {
		if y*f == si {
			return y
		}
	}
	return x
}

// Format writes an SI value in the shop unit with the unit's usual decimals,
// commas between thousands and its symbol, as in "22.50 in" and "−9,475 lb".
func (s System) Format(q Quantity, si float64) string {
	return join(s.Figure(q, si, 0), s.Symbol(q))
}

// FormatExact writes an SI value with as few digits as keep it exactly, and
// the unit's symbol, as in "22.5 in" and "−90°".
func (s System) FormatExact(q Quantity, si float64) string {
	return join(s.FigureExact(q, si), s.Symbol(q))
}

// FigureExact writes an SI value as FormatExact does, without its symbol.
func (s System) FigureExact(q Quantity, si float64) string {
	return WithMinus(strconv.FormatFloat(s.Exact(q, si), 'f', -1, 64))
}

// Decimals returns the decimals that suffice to read the quantity.
func (s System) Decimals(q Quantity) int { return tables[s][q].decimals }

// join puts the symbol behind the number; a degree sign takes no space.
func join(number, symbol string) string {
	switch symbol {
	case "":
		return number
	case "°":
		return number + symbol
	}
	return number + " " + symbol
}

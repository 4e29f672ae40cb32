package units

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Typed is a number as a person typed it.
type Typed struct {
	Number   float64 // in the unit that System has for the quantity
	System   System  // that the typed unit belongs to
	Decimals int     // that Number is written with: those typed, or for a fraction and a multiple of the unit as many as it takes, up to 9
}

// ErrNoNumber says that a text is no number.
var ErrNoNumber = errors.New("not a number")

// TwoWaysError says that the comma of a number may stand between thousands or
// before decimals.
type TwoWaysError struct{ Text string }

// Error says so.
func (e *TwoWaysError) Error() string { return e.Text + " can be read two ways" }

// Readings returns the two numbers that may be meant, as they can be typed.
func (e *TwoWaysError) Readings() (thousands, decimals string) {
	return strings.Replace(e.Text, ",", "", 1), strings.Replace(e.Text, ",", ".", 1)
}

// UnitError says that a number's unit is none of the quantity.
type UnitError struct{ Unit string }

// Error says so.
func (e *UnitError) Error() string { return e.Unit + " is no unit of the quantity" }

// shape is a number as people write it: a decimal with point or comma, or a
// fraction with or without a whole number before it, and perhaps a unit. Its
// groups are sign, whole number, numerator, denominator, decimal and unit.
var shape = regexp.MustCompile(`^([-+−])?\s*(?:(?:(\d+)[\s-]+)?(\d+)\s*/\s*(\d+)|(\d+(?:[.,]\d*)?|[.,]\d+))\s*([\pL"″'′°%].*)?$`)

// grouped is a comma that may stand between thousands: it is one in 2,650 as
// Format writes it, and none in 0,125.
var grouped = regexp.MustCompile(`^[1-9]\d{0,2},\d{3}$`)

// multiple is a unit as a multiple of a system's, so that 8.75 ft is the very
// same number as 105 in.
type multiple struct {
	system System
	times  float64
}

// otherUnits are units that may be typed beside those of the two systems.
var otherUnits = map[Quantity]map[string]multiple{
	Length: {
		`"`: {US, 1}, "inch": {US, 1}, "inches": {US, 1}, "ft": {US, 12}, "'": {US, 12},
		"cm": {SI, 10}, "m": {SI, 1000},
	},
	Mass:       {"lbs": {US, 1}},
	SpringRate: {"lbs/in": {US, 1}},
	Torque:     {"ftlb": {US, 1}, "ftlbs": {US, 1}},
	Angle:      {"deg": {US, 1}},
}

// ReadNumber reads what a person typed as a quantity: a decimal with point or
// comma, or a fraction as in 22 1/2, and perhaps a unit of the quantity in
// either system. Without one it is in the unit of s. It fails with ErrNoNumber, a
// *TwoWaysError or a *UnitError. Number is finite, and so it is in SI.
func (s System) ReadNumber(typed string, q Quantity) (Typed, error) {
	parts := shape.FindStringSubmatch(strings.TrimSpace(typed))
	if parts == nil {
		return Typed{}, ErrNoNumber
	}
	if grouped.MatchString(parts[5]) {
		return Typed{}, &TwoWaysError{parts[5]}
	}
	unit, known := unitNamed(parts[6], q, s)
	if !known {
		return Typed{}, &UnitError{parts[6]}
	}
	x := magnitude(parts) * unit.times
	if si := unit.system.ToSI(q, x); math.IsNaN(si) || math.IsInf(si, 0) || math.IsInf(x, 0) {
		return Typed{}, ErrNoNumber
	}
	if parts[1] == "-" || parts[1] == "−" {
		x = -x
	}
	decimals := len(parts[5]) - strings.IndexAny(parts[5]+".", ".,") - 1
	switch {
	case parts[5] == "" || unit.times != 1:
		decimals = needed(x)
	case decimals < 0:
		decimals = 0
	}
	return Typed{Number: x, System: unit.system, Decimals: decimals}, nil
}

// magnitude computes the number that shape has taken apart, without its sign.
// It is infinite or NaN for digits beyond all bounds and a denominator of zero.
func magnitude(parts []string) float64 {
	value := func(text string) float64 {
		if text == "" {
			return 0
		}
		x, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil {
			return math.NaN()
		}
		return x
	}
	if parts[5] != "" {
		return value(parts[5])
	}
	return value(parts[2]) + value(parts[3])/value(parts[4])
}

// needed returns the decimals that it takes to write x, up to 9.
func needed(x float64) int {
	text := strings.TrimRight(strconv.FormatFloat(x, 'f', 9, 64), "0")
	return len(text) - strings.IndexByte(text, '.') - 1
}

// unitNamed returns what unit is typed; none is that of s, and so is a symbol
// that both systems have.
func unitNamed(typed string, q Quantity, s System) (unit multiple, known bool) {
	if typed == "" {
		return multiple{s, 1}, true
	}
	name := plain(typed)
	for _, system := range [...]System{s, US, SI} {
		if name == plain(system.Symbol(q)) {
			return multiple{system, 1}, true
		}
	}
	unit, known = otherUnits[q][name]
	return unit, known
}

// plain drops what people write units with or without: spaces, dots, hyphens,
// capitals and raised figures.
func plain(unit string) string {
	return strings.ToLower(strings.NewReplacer(" ", "", "·", "", ".", "", "*", "", "-", "", "²", "2", "^", "", "″", `"`, "′", "'").Replace(unit))
}

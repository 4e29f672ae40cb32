package inputs

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"bowline/model/units"
)

// shape is a number as people write it: a decimal with point or comma, or a
// fraction with or without a whole number before it, and perhaps a unit. Its
// groups are sign, whole number, numerator, denominator, decimal and unit.
var shape = regexp.MustCompile(`^([-+−])?\s*(?:(?:(\d+)[\s-]+)?(\d+)\s*/\s*(\d+)|(\d+(?:[.,]\d*)?|[.,]\d+))\s*([\pL"″'′°%].*)?$`)

// grouped is a comma that may stand between thousands: it is one in 2,650 as the
// window writes it, and none in 0,125.
var grouped = regexp.MustCompile(`^[1-9]\d{0,2},\d{3}$`)

// otherUnits are units that may be typed beside those of the two systems, as
// multiples of them, so that 8.75 ft is the very same number as 105 in.
var otherUnits = map[units.Quantity]map[string]struct {
	system units.System
	times  float64
}{
	units.Length: {
		`"`: {units.US, 1}, "inch": {units.US, 1}, "inches": {units.US, 1}, "ft": {units.US, 12}, "'": {units.US, 12},
		"cm": {units.SI, 10}, "m": {units.SI, 1000},
	},
	units.Mass:       {"lbs": {units.US, 1}},
	units.SpringRate: {"lbs/in": {units.US, 1}},
	units.Torque:     {"ftlb": {units.US, 1}, "ftlbs": {units.US, 1}},
	units.Angle:      {"deg": {units.US, 1}},
}

// ParseNumber reads what a person typed as a quantity, in SI. Without a unit it
// is in the unit of s. The error says what is wrong with it and names the kinds
// of text that would do; now is the present value, for an example.
func ParseNumber(typed string, q units.Quantity, s units.System, now float64) (float64, error) {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return 0, errors.New("nothing is typed; type " + examples(q, s, now))
	}
	parts := shape.FindStringSubmatch(typed)
	if parts == nil {
		return 0, fmt.Errorf("%q is not a number; type %s", typed, examples(q, s, now))
	}
	if grouped.MatchString(parts[5]) {
		return 0, fmt.Errorf("%q can be read two ways; type %s or %s", parts[5],
			strings.Replace(parts[5], ",", "", 1), strings.Replace(parts[5], ",", ".", 1))
	}
	system, times, known := unitNamed(parts[6], q, s)
	if !known {
		return 0, fmt.Errorf("%q is no unit that fits here; type %s", parts[6], examples(q, s, now))
	}
	x := system.ToSI(q, magnitude(parts)*times)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, fmt.Errorf("%q is not a number; type %s", typed, examples(q, s, now))
	}
	if parts[1] != "" && parts[1] != "+" {
		x = -x
	}
	return x, nil
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

// unitNamed returns the system a typed unit belongs to and how many units of
// that system it is; none typed is the unit of s.
func unitNamed(typed string, q units.Quantity, s units.System) (system units.System, times float64, known bool) {
	if typed == "" {
		return s, 1, true
	}
	name := plain(typed)
	for _, system := range systems {
		if name == plain(system.Symbol(q)) {
			return system, 1, true
		}
	}
	unit, known := otherUnits[q][name]
	return unit.system, unit.times, known
}

var systems = [...]units.System{units.US, units.SI}

// plain drops what people write units with or without: spaces, dots, hyphens,
// capitals and raised figures.
func plain(unit string) string {
	return strings.ToLower(strings.NewReplacer(" ", "", "·", "", ".", "", "*", "", "-", "", "²", "2", "^", "", "″", `"`, "′", "'").Replace(unit))
}

// examples writes what may be typed for a quantity.
func examples(q units.Quantity, s units.System, now float64) string {
	if q == units.Length {
		if s == units.SI {
			return "571.5, 571 or 22 1/2 in"
		}
		return "22.5, 22 1/2 or 571 mm"
	}
	text := "a number such as " + digits(s.FromSI(q, now), 4)
	for _, other := range systems {
		if other.Symbol(q) != s.Symbol(q) {
			text += " or " + digits(other.FromSI(q, now), 4) + " " + other.Symbol(q)
		}
	}
	return text
}

// digits writes x with so many significant digits, as few as will do.
func digits(x float64, significant int) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', significant, 64), 64)
	if err != nil {
		rounded = x
	}
	return strconv.FormatFloat(rounded+0, 'f', -1, 64)
}

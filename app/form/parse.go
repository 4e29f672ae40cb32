package form

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"bowline/model/units"
)

// ParseNumber reads what a person typed as a quantity, in SI, as
// units.System.ReadNumber does. The error says what is wrong with it and names
// the kinds of text that would do; now is the present value, for an example.
func ParseNumber(typed string, q units.Quantity, s units.System, now float64) (float64, error) {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return 0, errors.New("nothing is typed; type " + examples(q, s, now))
	}
	n, err := s.ReadNumber(typed, q)
	var ways *units.TwoWaysError
	var unit *units.UnitError
	switch {
	case errors.As(err, &ways):
		thousands, decimals := ways.Readings()
		return 0, fmt.Errorf("%q can be read two ways; type %s or %s", ways.Text, thousands, decimals)
	case errors.As(err, &unit):
		return 0, fmt.Errorf("%q is no unit that fits here; type %s", unit.Unit, examples(q, s, now))
	case err != nil:
		return 0, fmt.Errorf("%q is not a number; type %s", typed, examples(q, s, now))
	}
	return n.System.ToSI(q, n.Number), nil
}

var systems = [...]units.System{units.US, units.SI}

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
	return units.WithMinus(strconv.FormatFloat(rounded+0, 'f', -1, 64))
}

package plotting

import (
	"math"
	"strconv"

	"bowline/model/units"
)

// minus is the sign that is as wide as a plus.
const minus = "−"

// number writes a value with its thousands set apart, as in "11,240".
func number(x float64, decimals int) string {
	text := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	whole := len(text)
	if decimals > 0 {
		whole -= decimals + 1
	}
	b := make([]byte, 0, len(minus)+len(text)+whole/3)
	if x < 0 && text != strconv.FormatFloat(0, 'f', decimals, 64) {
		b = append(b, minus...)
	}
	for i := range whole {
		if i > 0 && (whole-i)%3 == 0 {
			b = append(b, ',')
		}
		b = append(b, text[i])
	}
	return string(append(b, text[whole:]...))
}

// value writes an SI value with the usual decimals and the unit.
func value(s units.System, q units.Quantity, si float64) string {
	return valueTo(s, q, si, s.Decimals(q))
}

// valueTo writes an SI value with the given decimals and the unit.
func valueTo(s units.System, q units.Quantity, si float64, decimals int) string {
	text := number(s.FromSI(q, si), decimals)
	switch symbol := s.Symbol(q); symbol {
	case "", "°":
		return text + symbol
	default:
		return text + " " + symbol
	}
}

// percent writes a ratio in whole percent.
func percent(ratio float64) string { return number(100*ratio, 0) + " %" }

// travelName names a rear travel: "ride height", "2.00 in droop".
func travelName(s units.System, travel float64) string {
	text := value(s, units.Length, math.Abs(travel))
	switch {
	case text == value(s, units.Length, 0):
		return "ride height"
	case travel < 0:
		return text + " droop"
	}
	return text + " bump"
}

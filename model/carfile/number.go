package carfile

import (
	"math"
	"math/big"
	"strconv"
	"strings"

	"bowline/model/units"
)

const (
	// longest is the number of digits that identify any float64. A number of
	// more digits is converted to SI with all of them, rounded once at the end;
	// so every SI value can be written, also those that no float64 in shop units
	// converts to.
	longest = 17
	// wide is the precision of that conversion [bits], far beyond a float64's 53.
	wide = 256
)

// toSI converts a number to SI, given as the file has it too, if it does.
func toSI(s units.System, q units.Quantity, shop float64, literal string) float64 {
	if digits(literal) <= longest {
		return s.ToSI(q, shop)
	}
	exact, _, err := big.ParseFloat(strings.ReplaceAll(literal, "_", ""), 10, wide, big.ToNearestEven)
	if err != nil {
		return s.ToSI(q, shop)
	}
	if same, _ := exact.Float64(); same != shop {
		return s.ToSI(q, shop)
	}
	si, _ := exact.Mul(exact, big.NewFloat(s.Factor(q))).Float64()
	return si
}

// digits counts the significant digits of a decimal number as written,
// trailing zeros included.
func digits(literal string) int {
	n := 0
	for _, c := range literal {
		switch {
		case c == 'e' || c == 'E':
			return n
		case c >= '1' && c <= '9' || c == '0' && n > 0:
			n++
		}
	}
	return n
}

// fromSI writes an SI value in the shop unit with as few digits as toSI needs
// to return it exactly.
func fromSI(s units.System, q units.Quantity, si float64) string {
	shop := s.Exact(q, si)
	if s.ToSI(q, shop) == si {
		return decimal(shop)
	}
	exact := new(big.Float).SetPrec(wide).SetFloat64(si)
	exact.Quo(exact, big.NewFloat(s.Factor(q)))
	return spell(exact, longest+1)
}

// spell writes a number with the given count of digits.
func spell(x *big.Float, count int) string {
	text := x.Text('e', count-1)
	_, exponent, _ := strings.Cut(text, "e")
	if n, err := strconv.Atoi(exponent); err == nil && n >= -6 && n < count-1 {
		return x.Text('f', count-1-n)
	}
	return text
}

// decimal writes a float that reads as one, with a point or an exponent.
func decimal(x float64) string {
	if a := math.Abs(x); a != 0 && (a < 1e-6 || a >= 1e15) {
		return strconv.FormatFloat(x, 'e', -1, 64)
	}
	text := strconv.FormatFloat(x, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	return text
}

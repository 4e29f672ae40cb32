package units

import (
	"math"
	"strconv"
	"strings"
)

// Minus is the sign of a negative number on screen and on paper, as wide as a
// plus. CSV, JSON and car files have the hyphen of a keyboard instead.
const Minus = "−"

// Decimal writes a number with so many decimals and commas between thousands, as
// in "−11,240.50". Halves are rounded away from zero, and what rounds to zero has
// no sign.
func Decimal(x float64, decimals int) string {
	return Group(strconv.FormatFloat(round(x, decimals), 'f', decimals, 64))
}

// Signed writes a change as Decimal does, with its sign: "+1,234", "−0.50", "0".
func Signed(x float64, decimals int) string {
	text := Decimal(x, decimals)
	if round(x, decimals) > 0 {
		return "+" + text
	}
	return text
}

// Signed writes a change of an SI value as Format does, with its sign: "+0.45°".
func (s System) Signed(q Quantity, si float64) string {
	return join(Signed(s.FromSI(q, si), s.Decimals(q)), s.Symbol(q))
}

// Share writes a load's share of what may be carried in whole percent, as in
// "71 %". A share beyond the limit never reads as the limit: it is "100.4 %"
// instead of "100 %", and "100.1 %" at least.
func Share(share float64) string { return ShareFigure(share) + " %" }

// ShareFigure writes a share as Share does, for a column of percents: "71".
func ShareFigure(share float64) string {
	if share > 1 && math.Round(100*share) == 100 {
		return Decimal(max(100*share, 100.1), 1)
	}
	return Decimal(100*share, 0)
}

// WholePercent writes a ratio in whole percent, as in "155 %" and "−12 %".
func WholePercent(ratio float64) string { return Decimal(100*ratio, 0) + " %" }

// Count writes a number of things with commas between thousands.
func Count(n int) string { return Group(strconv.Itoa(n)) }

// FormatFine writes an SI value as Format does, with one decimal more, as a tape
// or caliper on a bar reads it: "21.430 in", "544.32 mm".
func (s System) FormatFine(q Quantity, si float64) string {
	return join(s.Figure(q, si, 1), s.Symbol(q))
}

// Figure writes an SI value in the shop unit without its symbol, with commas
// between thousands and so many decimals more than is usual; fewer for a negative
// number, but never less than none.
func (s System) Figure(q Quantity, si float64, more int) string {
	return Decimal(s.FromSI(q, si), max(0, s.Decimals(q)+more))
}

// Span writes two SI values as Format does with the unit once, as in "40.00 to 60.00
// in".
func (s System) Span(q Quantity, from, to float64) string {
	return s.Figure(q, from, 0) + " to " + s.Format(q, to)
}

// SpanExact writes two SI values as FormatExact does with the unit once, as in "100
// to 160 %".
func (s System) SpanExact(q Quantity, from, to float64) string {
	return s.FigureExact(q, from) + " to " + s.FormatExact(q, to)
}

// Shown returns an SI value in the shop unit, rounded as Format shows it. The
// difference of two such numbers is the one that a reader finds between their
// figures.
func (s System) Shown(q Quantity, si float64) float64 {
	return round(s.FromSI(q, si), s.Decimals(q))
}

// ReadsZero reports whether Format shows an SI value as zero.
func (s System) ReadsZero(q Quantity, si float64) bool { return s.Shown(q, si) == 0 }

// Group writes a decimal number, given as strconv does, with commas between
// thousands and Minus before it.
func Group(number string) string {
	number = WithMinus(number)
	sign := len(number) - len(strings.TrimPrefix(number, Minus))
	end := strings.IndexByte(number, '.')
	if end < 0 {
		end = len(number)
	}
	if end-sign <= 3 {
		return number
	}
	b := make([]byte, 0, len(number)+(end-sign-1)/3)
	b = append(b, number[:sign]...)
	for i := sign; i < end; i++ {
		if i > sign && (end-i)%3 == 0 {
			b = append(b, ',')
		}
		b = append(b, number[i])
	}
	return string(append(b, number[end:]...))
}

// WithMinus writes a number, given as strconv does, with Minus before it and without
// commas, as in a field that it can be edited in.
func WithMinus(number string) string {
	if digits, negative := strings.CutPrefix(number, "-"); negative {
		return Minus + digits
	}
	return number
}

// round rounds to the given decimals, halves away from zero, and turns a negative
// zero into zero.
func round(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	y := math.Round(x * p)
	if math.IsInf(y, 0) {
		return x // too large to have decimals
	}
	return y/p + 0
}

package units

import (
	"math"
	"strconv"
)

// ReadsZero tells whether Format shows an SI value as zero.
func (s System) ReadsZero(q Quantity, si float64) bool {
	return s.Format(q, si) == s.Format(q, 0)
}

// Directed writes the magnitude of an SI value as Format does and the word for
// its sign behind it, as in "0.45° nose up"; alone what ReadsZero.
func (s System) Directed(q Quantity, si float64, positive, negative string) string {
	text := s.Format(q, math.Abs(si))
	switch {
	case s.ReadsZero(q, si):
		return text
	case si > 0:
		return text + " " + positive
	}
	return text + " " + negative
}

// FormatFine writes an SI value as Format does, with one decimal more, as a tape
// or caliper on a bar reads it: "21.430 in", "544.32 mm".
func (s System) FormatFine(q Quantity, si float64) string {
	return join(s.Figure(q, si, 1), s.Symbol(q))
}

// Figure writes an SI value in the shop unit without its symbol, with commas
// between thousands and so many decimals more than is usual; fewer for a negative
// number, but never less than none.
func (s System) Figure(q Quantity, si float64, more int) string {
	decimals := max(0, s.Decimals(q)+more)
	return Group(strconv.FormatFloat(round(s.FromSI(q, si), decimals), 'f', decimals, 64))
}

// Shown returns an SI value in the shop unit, rounded as Format shows it. The
// difference of two such numbers is the one that a reader finds between their
// figures.
func (s System) Shown(q Quantity, si float64) float64 {
	return round(s.FromSI(q, si), s.Decimals(q))
}

// Count writes a number of things with commas between thousands.
func Count(n int) string { return Group(strconv.Itoa(n)) }

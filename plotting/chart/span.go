package chart

import "math"

// Span is a range of values [SI].
type Span struct{ Min, Max float64 }

// Between returns the span from a value to another.
func Between(from, to float64) Span { return Span{from, to} }

// Nowhere is a span that contains nothing and grows by what it is given.
func Nowhere() Span { return Span{math.Inf(1), math.Inf(-1)} }

// Everywhere is the span without ends.
func Everywhere() Span { return Span{math.Inf(-1), math.Inf(1)} }

// Contains reports whether x is in the span, ends included.
func (s Span) Contains(x float64) bool { return x >= s.Min && x <= s.Max }

func (s Span) empty() bool { return !(s.Min <= s.Max) }

// Length returns how far the ends are apart.
func (s Span) Length() float64 { return s.Max - s.Min }

// With returns the span grown to contain the values.
func (s Span) With(values ...float64) Span {
	for _, v := range values {
		s.Min, s.Max = math.Min(s.Min, v), math.Max(s.Max, v)
	}
	return s
}

// Clamp returns the value of the span nearest to x.
func (s Span) Clamp(x float64) float64 { return math.Max(s.Min, math.Min(s.Max, x)) }

// clip returns the part of the span within another.
func (s Span) clip(other Span) Span {
	return Span{math.Max(s.Min, other.Min), math.Min(s.Max, other.Max)}
}

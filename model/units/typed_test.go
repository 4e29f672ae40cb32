package units

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestReadNumber(t *testing.T) {
	for _, c := range []struct {
		typed string
		q     Quantity
		s     System
		want  Typed
	}{
		{"22.50", Length, US, Typed{22.5, US, 2}},
		{" 22,5 mm", Length, US, Typed{22.5, SI, 1}},
		{"22.", Length, SI, Typed{22, SI, 0}},
		{"-.5", Length, SI, Typed{-0.5, SI, 1}},
		{"−3", Number, US, Typed{-3, US, 0}},
		{"+ 22 1/2", Length, US, Typed{22.5, US, 1}},
		{"-22-1/2 in", Length, SI, Typed{-22.5, US, 1}},
		{"1/3", Number, SI, Typed{1.0 / 3, SI, 9}},
		{"8.750 ft", Length, SI, Typed{105, US, 0}},
		{"0.1 ft", Length, US, Typed{1.2000000000000002, US, 1}},
		{"2 m", Length, US, Typed{2000, SI, 0}},
		{"90 %", Percent, SI, Typed{90, SI, 0}},
		{"90°", Angle, US, Typed{90, US, 0}},
		{"12 Lb-Ft", Torque, SI, Typed{12, US, 0}},
		{"1234,125", Number, US, Typed{1234.125, US, 3}},
	} {
		got, err := c.s.ReadNumber(c.typed, c.q)
		if err != nil || got != c.want {
			t.Errorf("%q is %+v (%v), want %+v", c.typed, got, err, c.want)
		}
	}
}

func TestReadNumberRefuses(t *testing.T) {
	for _, typed := range []string{"", "abc", "1.2.3", "1 2", "1/0", "0/0", "--1", "NaN", strings.Repeat("9", 400)} {
		if got, err := US.ReadNumber(typed, Length); err != ErrNoNumber {
			t.Errorf("%q is %+v, %v", typed, got, err)
		}
	}
	var unit *UnitError
	if _, err := US.ReadNumber("3 kg", Length); !errors.As(err, &unit) || unit.Unit != "kg" {
		t.Errorf("a unit of mass for a length: %v", err)
	}
	var ways *TwoWaysError
	if _, err := US.ReadNumber("-2,650 lb", Mass); !errors.As(err, &ways) {
		t.Fatalf("a comma between thousands: %v", err)
	}
	if thousands, decimals := ways.Readings(); ways.Text != "2,650" || thousands != "2650" || decimals != "2.650" {
		t.Errorf("%q is read as %q or %q", ways.Text, thousands, decimals)
	}
}

// What is written with a unit's symbol is read as the same number.
func TestReadNumberReadsFormatExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, reader := System(rapid.IntRange(0, 1).Draw(t, "system")), System(rapid.IntRange(0, 1).Draw(t, "reader"))
		q := Quantity(rapid.IntRange(0, int(quantities)-1).Draw(t, "quantity"))
		si := s.ToSI(q, rapid.Float64Range(-1e6, 1e6).Draw(t, "shop value"))
		got, err := reader.ReadNumber(s.FormatExact(q, si), q)
		if two := (*TwoWaysError)(nil); errors.As(err, &two) {
			t.Fatalf("%q has no comma", s.FormatExact(q, si))
		}
		if err != nil || got.System.ToSI(q, got.Number) != si {
			t.Fatalf("%v of %v is %+v when %q is read: %v", si, q, got, s.FormatExact(q, si), err)
		}
	})
}

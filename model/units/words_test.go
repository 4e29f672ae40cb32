package units

import (
	"math"
	"testing"
)

func TestReadsZero(t *testing.T) {
	for _, c := range []struct {
		s    System
		q    Quantity
		si   float64
		want bool
	}{
		{US, Length, 0.0049 * Inch, true},
		{US, Length, -0.0049 * Inch, true},
		{US, Length, 0.0051 * Inch, false},
		{SI, Length, 0.00006, false},
		{SI, Length, 0.00004, true},
		{SI, Number, 0, true},
	} {
		if got := c.s.ReadsZero(c.q, c.si); got != c.want {
			t.Errorf("%v in %v: %v", c.si, c.s, got)
		}
	}
}

func TestFigure(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.Figure(Length, 1234.567*Inch, 0), "1,234.57"},
		{US.Figure(Length, 1234.567*Inch, 1), "1,234.567"},
		{US.Figure(Length, 1234.567*Inch, -1), "1,234.6"},
		{US.Figure(Force, -9475.4*PoundForce, -1), "−9,475"},
		{SI.Figure(Length, -1e-9, 0), "0.0"},
		{Count(2304), "2,304"},
		{Count(36), "36"},
		{US.Span(Length, -40*Inch, 1234.5*Inch), "−40.00 to 1,234.50 in"},
		{SI.SpanExact(Percent, 1, 1.605), "100 to 160.5 %"},
		{US.FigureExact(Percent, -0.125), "−12.5"},
		{WithMinus("-12345.5"), "−12345.5"},
		{WithMinus("5"), "5"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestFormatFine(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.FormatFine(Length, 21.43*Inch), "21.430 in"},
		{SI.FormatFine(Length, 0.54432), "544.32 mm"},
		{SI.FormatFine(Length, 1.05), "1,050.00 mm"},
		{US.FormatFine(Length, -1e-9), "0.000 in"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// The difference of two numbers shown is that of their figures.
func TestShown(t *testing.T) {
	for _, c := range []struct {
		s    System
		q    Quantity
		si   float64
		want float64
	}{
		{US, Length, 23.0049 * Inch, 23}, {US, Length, 23.0051 * Inch, 23.01}, {US, Length, -0.001 * Inch, 0},
		{SI, Length, 0.58434, 584.3}, {US, Percent, 1.44049, 144}, {US, Time, 1.32849, 1.328},
	} {
		if got := c.s.Shown(c.q, c.si); got != c.want {
			t.Errorf("%v is shown as %v, want %v", c.si, got, c.want)
		}
	}
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{
		{0, 0, "0"}, {-0.2, 0, "0"}, {-0.5, 0, "−1"}, {-0.5, 1, "−0.5"}, {0.125, 2, "0.13"}, {-0.125, 2, "−0.13"}, {0.0284, 3, "0.028"},
		{999, 0, "999"}, {-999, 0, "−999"}, {1000, 0, "1,000"}, {-1000, 0, "−1,000"}, {-99999.99, 1, "−100,000.0"}, {999999.6, 0, "1,000,000"}, {-1234567.891, 2, "−1,234,567.89"},
		{1e21, 0, "1,000,000,000,000,000,000,000"},
	} {
		if got := Decimal(c.x, c.decimals); got != c.want {
			t.Errorf("%v to %d decimals is %q, want %q", c.x, c.decimals, got, c.want)
		}
	}
	if got := len(Decimal(-math.MaxFloat64, 2)); got != len(Minus)+309+102+3 { // digits, commas and decimals
		t.Errorf("the largest number has %d bytes", got)
	}
}

func TestSigned(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Signed(1234.4, 0), "+1,234"}, {Signed(-3.5, 2), "−3.50"}, {Signed(0.004, 2), "0.00"}, {Signed(-0.004, 2), "0.00"},
		{US.Signed(Angle, math.Pi/180), "+1.00°"}, {US.Signed(Force, -10*PoundForce), "−10 lb"}, {SI.Signed(Length, 0), "0.0 mm"}, {US.Signed(Percent, 0.0125), "+1.3 %"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// What is over its limit never reads as what is not.
func TestShare(t *testing.T) {
	for share, want := range map[float64]string{
		0: "0 %", 0.714: "71 %", 0.996: "100 %", 1: "100 %", 1.00001: "100.1 %", 1.0014: "100.1 %", 1.004: "100.4 %", 1.0051: "101 %", 2.5: "250 %", 12.34: "1,234 %",
	} {
		if got := Share(share); got != want {
			t.Errorf("a share of %v is %q, want %q", share, got, want)
		}
	}
	if got := WholePercent(-0.123); got != "−12 %" {
		t.Errorf("got %q", got)
	}
}

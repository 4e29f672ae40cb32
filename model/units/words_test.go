package units

import "testing"

func TestDirected(t *testing.T) {
	for _, c := range []struct {
		s    System
		q    Quantity
		si   float64
		want string
	}{
		{US, Length, 2.1 * Inch, "2.10 in forward"},
		{US, Length, -2.1 * Inch, "2.10 in back"},
		{US, Length, -0.0049 * Inch, "0.00 in"},
		{US, Length, 0.0051 * Inch, "0.01 in forward"},
		{SI, Length, -1.2345, "1,234.5 mm back"},
		{SI, Angle, 0, "0.00°"},
	} {
		if got := c.s.Directed(c.q, c.si, "forward", "back"); got != c.want {
			t.Errorf("%v is %q, want %q", c.si, got, c.want)
		}
	}
}

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
		{US.Figure(Force, -9475.4*PoundForce, -1), "-9,475"},
		{SI.Figure(Length, -1e-9, 0), "0.0"},
		{Count(2304), "2,304"},
		{Count(36), "36"},
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

package units

import (
	"math"
	"testing"
)

func TestDirected(t *testing.T) {
	for _, c := range []struct {
		s    System
		q    Quantity
		si   float64
		want string
	}{
		{US, Length, 2.1 * Inch, "2.10 in above"},
		{US, Length, -2.1 * Inch, "2.10 in below"},
		{US, Length, -0.0049 * Inch, "0.00 in"},
		{US, Length, 0.0051 * Inch, "0.01 in above"},
		{SI, Length, -1.2345, "1,234.5 mm below"},
		{SI, Angle, 0, "0.00°"},
	} {
		if got := c.s.Directed(c.q, c.si, "above", "below"); got != c.want {
			t.Errorf("%v is %q, want %q", c.si, got, c.want)
		}
	}
}

func TestTravel(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.Travel(2 * Inch), "2.00 in bump"},
		{US.Travel(-0.5 * Inch), "0.50 in droop"},
		{SI.Travel(-0.05), "50.0 mm droop"},
		{US.Travel(0), "ride height"},
		{US.Travel(1e-6), "ride height"},
		{SI.Travel(-1e-6), "ride height"},
		{US.Travels(-0.5*Inch, 1.2*Inch), "0.50 in droop to 1.20 in bump"},
		{US.Travels(-2.26*Inch, -2.09*Inch), "2.26 to 2.09 in droop"},
		{SI.Travels(0.01, 0.025), "10.0 to 25.0 mm bump"},
		{SI.Travels(-0.01, 1e-6), "10.0 mm droop to ride height"},
		{SI.Travels(0.01, 0.010001), "10.0 mm bump"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestNoseAndForeAft(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.Nose(0.45 * math.Pi / 180), "0.45° nose up"},
		{SI.Nose(-0.45 * math.Pi / 180), "0.45° nose down"},
		{US.Nose(-1e-9), "0.00°"},
		{US.ForeAft(0.12 * Inch), "0.12 in forward"},
		{SI.ForeAft(-0.0012), "1.2 mm back"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

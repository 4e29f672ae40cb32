package units

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// The expected values are published conversion factors: NIST Special
// Publication 811, appendix B.8, to its printed seven digits.
func TestFactorsAgainstNIST811(t *testing.T) {
	for _, c := range []struct {
		system System
		q      Quantity
		want   float64
	}{
		{US, Length, 2.54e-2},
		{US, Mass, 4.535924e-1},
		{US, Force, 4.448222},
		{US, SpringRate, 1.751268e2},
		{US, Torque, 1.355818},
		{US, Stress, 6.894757e3},
		{US, Power, 7.456999e2},
		{US, Angle, 1.745329e-2},
		{US, SpinInertia, 4.214011e-2},
		{US, Speed, 1.047198e-1},
		{US, SecondMoment, 4.162314e-7},
		{US, RollRate, 1.355818 * 57.2957795},
		{US, RoadSpeed, 4.4704e-1},
		{SI, RoadSpeed, 2.777778e-1},
		{SI, Length, 1e-3},
		{SI, SpringRate, 1e3},
		{SI, Stress, 1e6},
	} {
		got := c.system.ToSI(c.q, 1)
		if math.Abs(got/c.want-1) > 5e-7 { // half of the last printed digit
			t.Errorf("%v %s: one is %.9g SI, published %.7g", c.system, c.system.Symbol(c.q), got, c.want)
		}
	}
}

func TestExactKeepsWhatWasTyped(t *testing.T) {
	for _, typed := range []string{"22.5", "0.095", "105", "17.75", "1.625", "-5.75", "0.1", "780", "1e-9", "0"} {
		v, err := strconv.ParseFloat(typed, 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []System{US, SI} {
			for q := Number; q < quantities; q++ {
				if got := s.Exact(q, s.ToSI(q, v)); got != v {
					t.Errorf("%v %s: %s came back as %v", s, s.Symbol(q), typed, got)
				}
			}
		}
	}
}

func TestExactConvertsBackToTheSameBits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "shop value")
		s := System(rapid.IntRange(0, 1).Draw(t, "system"))
		q := Quantity(rapid.IntRange(0, int(quantities)-1).Draw(t, "quantity"))
		si := s.ToSI(q, v)
		if back := s.ToSI(q, s.Exact(q, si)); back != si {
			t.Fatalf("%v %s: %v became %v SI, then %v SI", s, s.Symbol(q), v, si, back)
		}
	})
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		got, want string
	}{
		{US.Format(Length, 22.5*Inch), "22.50 in"},
		{US.Format(Length, -1e-9), "0.00 in"},
		{SI.Format(Length, 0.5715), "571.5 mm"},
		{US.Format(Angle, math.Pi/2), "90.00°"},
		{US.Format(Force, -6309*PoundForce), "−6,309 lb"},
		{US.FormatExact(Angle, -math.Pi/2), "−90°"},
		{US.Format(Force, 999.4*PoundForce), "999 lb"},
		{SI.Format(Force, 1234567.8), "1,234,568 N"},
		{US.FormatExact(Length, US.ToSI(Length, 0.095)), "0.095 in"},
		{SI.Format(Number, 1.5), "1.500"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestParse(t *testing.T) {
	for _, s := range []System{US, SI} {
		if got, err := Parse(s.String()); err != nil || got != s {
			t.Errorf("%v: %v %v", s, got, err)
		}
	}
	if _, err := Parse("US"); err == nil || err.Error() != `unit system "US" is unknown; use "us" or "si"` {
		t.Errorf("wrong refusal: %v", err)
	}
}

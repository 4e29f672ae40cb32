package carfile

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"bowline/model/units"

	"pgregory.net/rapid"
)

func TestNumbersAreWrittenShort(t *testing.T) {
	inch, mm := 0.0254, 0.001
	for _, c := range []struct {
		system units.System
		kind   units.Quantity
		si     float64
		want   string
	}{
		{units.US, units.Length, 105 * inch, "105.0"},
		{units.US, units.Length, -5.75 * inch, "-5.75"},
		{units.US, units.Number, 0.001, "0.001"},
		{units.US, units.Number, 2.5e-7, "2.5e-07"},
		{units.US, units.Number, 3e15, "3e+15"},
		{units.US, units.Number, 0, "0.0"},
		{units.US, units.Number, math.Copysign(0, -1), "-0.0"},
		{units.SI, units.Length, 2667 * mm, "2667.0"},
		{units.US, units.Percent, 1.6, "160.0"},
		{units.US, units.Angle, 2 * (math.Pi / 180), "2.0"},
		// One bit above 9.75 in, which no float64 in inches converts to.
		{units.US, units.Length, math.Nextafter(9.75*inch, 1), "9.75000000000000075"},
		{units.US, units.Length, math.Nextafter(9.75*inch, 1) * 0x1p-30, "9.08039510250091623e-09"},
	} {
		if got := fromSI(c.system, c.kind, c.si); got != c.want {
			t.Errorf("%v: %s, want %s", c.si, got, c.want)
		}
	}
}

func TestNumbersReadAsTheyAreWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// All that leaves a float64 room for the conversion.
		si := rapid.Float64().Draw(t, "si")
		if size := math.Abs(si); size > 1e290 || size < 1e-290 && size != 0 {
			return
		}
		system := rapid.SampledFrom([]units.System{units.US, units.SI}).Draw(t, "system")
		kind := units.Quantity(rapid.IntRange(int(units.Number), int(units.SecondMoment)).Draw(t, "kind"))
		literal := fromSI(system, kind, si)
		if !strings.ContainsAny(literal, ".e") {
			t.Fatalf("%s reads as a whole number", literal)
		}
		shop, err := strconv.ParseFloat(literal, 64)
		if err != nil {
			t.Fatal(err)
		}
		if got := toSI(system, kind, shop, literal); math.Float64bits(got) != math.Float64bits(si) {
			t.Fatalf("%v → %s → %v", si, literal, got)
		}
	})
}

// However a number is typed, it is what units makes of it, within a rounding
// where it has more digits than a float64 holds.
func TestTypedNumbers(t *testing.T) {
	for literal, shop := range map[string]float64{
		"105": 105, "1_050e-1": 105, "+105.00": 105, "0x69": 105, "-0.5": -0.5,
		"105.00000000000000000000": 105, "0.000_000_000_000_000_000_105e21": 105, "104.99999999999999999999": 105,
	} {
		got, want := toSI(units.US, units.Length, shop, literal), units.US.ToSI(units.Length, shop)
		if math.Abs(got-want) > 5e-16 || digits(literal) <= 17 && got != want {
			t.Errorf("%s: %v, want %v", literal, got, want)
		}
	}
	if got := toSI(units.US, units.Length, 0, "0.00000000000000000001e-999999999"); got != 0 {
		t.Errorf("a number too small for a float64: %v", got)
	}
}

func TestClosestName(t *testing.T) {
	known := []string{"gear", "axle", "torque", "rear_radius", "front_radius", "4130 normalized"}
	for name, want := range map[string]string{
		"Gear": "gear", "axel": "", "axl": "axle", "tourqe": "torque", "rearradius": "rear_radius", "radius": "",
		"4130 normalised": "4130 normalized", "": "", "x": "", strings.Repeat("axle", 17): "",
	} {
		if got, ok := closest(name, known); got != want || ok != (want != "") {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

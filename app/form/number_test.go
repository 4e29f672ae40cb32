package form_test

import (
	"math"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/model/units"

	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"
)

func TestNumbersAsPeopleTypeThem(t *testing.T) {
	for _, c := range []struct {
		typed string
		q     units.Quantity
		s     units.System
		want  float64 // SI
	}{
		{"22.5", units.Length, units.US, 0.5715},
		{"22,5", units.Length, units.US, 0.5715},
		{"0,125", units.Length, units.US, 0.003175},
		{"1234,125", units.Number, units.US, 1234.125},
		{"  22.5  ", units.Length, units.US, 0.5715},
		{"22.", units.Length, units.US, 0.5588},
		{".5", units.Length, units.US, 0.0127},
		{"22 1/2", units.Length, units.US, 0.5715},
		{"22-1/2", units.Length, units.US, 0.5715},
		{"5/8", units.Length, units.US, 0.015875},
		{"22 1 / 2 in", units.Length, units.US, 0.5715},
		{"-5 3/4", units.Length, units.US, -0.14605},
		{"−5.75", units.Length, units.US, -0.14605},
		{"+5.75", units.Length, units.US, 0.14605},
		{"571.5", units.Length, units.SI, 0.5715},
		{"571.5 mm", units.Length, units.US, 0.5715},
		{"571.5mm", units.Length, units.US, 0.5715},
		{"57.15 cm", units.Length, units.US, 0.5715},
		{"0.5715 m", units.Length, units.US, 0.5715},
		{`22.5"`, units.Length, units.SI, 0.5715},
		{"22.5 IN", units.Length, units.SI, 0.5715},
		{"8.75 ft", units.Length, units.SI, 2.667},
		{"1200 kg", units.Mass, units.US, 1200},
		{"100 lbs", units.Mass, units.SI, 45.359237},
		{"10 N/mm", units.SpringRate, units.US, 10000},
		{"1000 N·m", units.Torque, units.US, 1000},
		{"1000 Nm", units.Torque, units.US, 1000},
		{"100 ft-lb", units.Torque, units.SI, 135.5817948331400},
		{"100 lb-ft", units.Torque, units.SI, 135.5817948331400},
		{"6 kg·m2", units.SpinInertia, units.US, 6},
		{"90 deg", units.Angle, units.US, math.Pi / 2},
		{"-90°", units.Angle, units.SI, -math.Pi / 2},
		{"6000", units.Speed, units.US, 200 * math.Pi},
		{"90", units.Percent, units.US, 0.9},
		{"90 %", units.Percent, units.US, 0.9},
		{"0.9", units.Number, units.SI, 0.9},
	} {
		got, err := form.ParseNumber(c.typed, c.q, c.s, 1)
		if err != nil {
			t.Errorf("%q: %v", c.typed, err)
			continue
		}
		if math.Abs(got-c.want) > 1e-14*math.Abs(c.want) {
			t.Errorf("%q is %v, want %v", c.typed, got, c.want)
		}
	}
}

func TestTextThatIsNoNumber(t *testing.T) {
	huge := strings.Repeat("9", 400)
	for _, c := range []struct {
		typed string
		q     units.Quantity
		want  string
	}{
		{"abc", units.Length, `"abc" is not a number; type 22.5, 22 1/2 or 571 mm`},
		{"", units.Length, "nothing is typed; type 22.5, 22 1/2 or 571 mm"},
		{"1.2.3", units.Length, `"1.2.3" is not a number; type 22.5, 22 1/2 or 571 mm`},
		{"1/0", units.Length, `"1/0" is not a number; type 22.5, 22 1/2 or 571 mm`},
		{"0/0", units.Length, `"0/0" is not a number; type 22.5, 22 1/2 or 571 mm`},
		{"8' 9\"", units.Length, `"' 9\"" is no unit that fits here; type 22.5, 22 1/2 or 571 mm`},
		{"22 kg", units.Length, `"kg" is no unit that fits here; type 22.5, 22 1/2 or 571 mm`},
		{"1e3", units.Length, `"e3" is no unit that fits here; type 22.5, 22 1/2 or 571 mm`},
		{"nan", units.Mass, `"nan" is not a number; type a number such as 2205 or 1000 kg`},
		{"Inf", units.Mass, `"Inf" is not a number; type a number such as 2205 or 1000 kg`},
		{"0x10", units.Number, `"x10" is no unit that fits here; type a number such as 1000`},
		{"1_000", units.Number, `"1_000" is not a number; type a number such as 1000`},
		{huge, units.Number, `"` + huge + `" is not a number; type a number such as 1000`},
		{"1 2", units.Number, `"1 2" is not a number; type a number such as 1000`},
		{"2,650", units.Mass, `"2,650" can be read two ways; type 2650 or 2.650`},
		{"-1,200 lb/in", units.SpringRate, `"1,200" can be read two ways; type 1200 or 1.200`},
		{"1,234,567", units.Number, `"1,234,567" is not a number; type a number such as 1000`},
		{"--1", units.Number, `"--1" is not a number; type a number such as 1000`},
	} {
		got, err := form.ParseNumber(c.typed, c.q, units.US, 1000)
		if err == nil {
			t.Errorf("%q is read as %v", c.typed, got)
		} else if err.Error() != c.want {
			t.Errorf("%q: %s\nwant %s", c.typed, err, c.want)
		}
	}
}

// Whatever is typed, what comes out is a finite number or an error.
func FuzzParseNumber(f *testing.F) {
	for _, text := range []string{"22 1/2 in", "-.5", "1e400", "9/0", "−3,5 N·s/mm", "½", "1/" + strings.Repeat("0", 50)} {
		f.Add(text, uint8(2))
	}
	f.Fuzz(func(t *testing.T, typed string, q uint8) {
		x, err := form.ParseNumber(typed, units.Quantity(q%15), units.US, 1)
		if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("%q is read as %v", typed, x)
		}
	})
}

// length returns an entry of a length [m].
func length(at *float64, s units.System) *form.Entry {
	return form.NewNumber(form.Number{
		Quantity: units.Length, Units: func() units.System { return s }, Get: func() float64 { return *at },
		Set: func(x float64) []form.Fault { *at = x; return nil },
	})
}

var systems = []units.System{units.US, units.SI}

// A number that is opened for editing and handed over as it stands keeps its
// last digit, in either system.
func TestFullTextKeepsTheNumber(t *testing.T) {
	test.NewTempApp(t)
	rapid.Check(t, func(t *rapid.T) {
		before := rapid.Float64Range(-400, 400).Draw(t, "x") * inch
		after := before
		e := length(&after, rapid.SampledFrom(systems).Draw(t, "units"))
		if faults := e.Take(e.Get(true)); len(faults) > 0 || after != before {
			t.Errorf("%v became %v by way of %q: %v", before, after, e.Get(true), faults)
		}
	})
}

func TestNumbersAreShownShort(t *testing.T) {
	test.NewTempApp(t)
	for _, c := range []struct {
		si   float64
		s    units.System
		want string
	}{
		{22.5 * 0.0254, units.US, "22.5"},
		{1.0 / 3 * 0.0254, units.US, "0.333333"},
		{22.5 * 0.0254, units.SI, "571.5"},
		{105 * 0.0254, units.SI, "2667"},
		{22.4375 * 0.0254, units.US, "22.4375"},
		{22.0 / 7 * 0.0254, units.SI, "79.8286"},
		{0, units.US, "0"},
		{math.Copysign(0, -1), units.US, "0"},
	} {
		if got := length(&c.si, c.s).Get(false); got != c.want {
			t.Errorf("%v m in %v is shown as %q, want %q", c.si, c.s, got, c.want)
		}
	}
}

func TestSteps(t *testing.T) {
	test.NewTempApp(t)
	stepped := func(n form.Number, s units.System, typed string, count int) (string, bool) {
		n.Units, n.Get = func() units.System { return s }, func() float64 { return 1 }
		return form.NewNumber(n).Step(typed, count)
	}
	for _, c := range []struct {
		number form.Number
		s      units.System
		typed  string
		n      int
		want   string
	}{
		{form.Number{Quantity: units.Length}, units.US, "22.5", 1, "22.5625"},
		{form.Number{Quantity: units.Length}, units.US, "0", -1, "−0.0625"},
		{form.Number{Quantity: units.Length}, units.US, "22 1/2", 10, "23.125"},
		{form.Number{Quantity: units.Length}, units.SI, "571.5", -1, "570.5"},
		{form.Number{Quantity: units.Length, Fine: true}, units.US, "0.095", 1, "0.096"},
		{form.Number{Quantity: units.Mass}, units.US, "2650", 1, "2655"},
		{form.Number{Quantity: units.Speed}, units.SI, "5200", -1, "5150"},
		{form.Number{Quantity: units.Percent}, units.US, "100", 1, "105"},
		{form.Number{}, units.US, "1.7", 1, "1.8"},
		{form.Number{}, units.US, "0.9", -1, "0.89"},
		{form.Number{}, units.US, "0.001", 1, "0.0011"},
		{form.Number{Step: 1. / 6}, units.US, "1.5", 1, "1.66667"},
		{form.Number{Step: 1. / 6}, units.US, "0", -3, "−0.5"},
	} {
		if got, ok := stepped(c.number, c.s, c.typed, c.n); !ok || got != c.want {
			t.Errorf("%d steps from %s give %q, %v, want %q", c.n, c.typed, got, ok, c.want)
		}
	}
	for typed, n := range map[string]form.Number{"abc": {}, "0": {}, "0.0": {Quantity: units.Length, Blank: true}} {
		if got, ok := stepped(n, units.US, typed, 1); ok {
			t.Errorf("a step from %q gives %q", typed, got)
		}
	}
}

// A number that is left blank is typed as zero or nothing.
func TestBlankNumber(t *testing.T) {
	test.NewTempApp(t)
	x := 2.5
	e := form.NewNumber(form.Number{
		Units: func() units.System { return units.US }, Optional: true, Blank: true,
		Get: func() float64 { return x }, Set: func(to float64) []form.Fault { x = to; return nil },
	})
	for _, typed := range []string{"", "0"} {
		x = 2.5
		wantText(t, e.Get(false), "2.5")
		if e.Take(typed); x != 0 || e.Get(false) != "" || e.Get(true) != "" {
			t.Errorf("%q gives %v, shown as %q", typed, x, e.Get(false))
		}
	}
}

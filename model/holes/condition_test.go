package holes_test

import (
	"math"
	"strings"
	"testing"

	"bowline/model/holes"
	"bowline/model/units"
)

// parse reads a condition for values with the quantity's usual decimals.
func parse(text string, q units.Quantity, s units.System) (holes.Condition, error) {
	return holes.ParseCondition(text, q, s, func(s units.System) int { return s.Decimals(q) })
}

func TestConditionsByHand(t *testing.T) {
	const us, si = units.US, units.SI
	for _, c := range []struct {
		text     string
		quantity units.Quantity
		system   units.System
		met, not []float64 // SI
	}{
		{"", units.Length, us, []float64{0, -5, 1e9}, nil},
		{"<5", units.Length, us, []float64{4.99 * inch, -1}, []float64{5 * inch, 4.996 * inch, 6 * inch}},
		{"<= 5", units.Length, us, []float64{5 * inch, 5.004 * inch}, []float64{5.006 * inch}},
		{"≤5 in", units.Length, si, []float64{5 * inch}, []float64{5.006 * inch}},
		{"< 5", units.Length, si, []float64{4.9e-3}, []float64{5e-3, 4.96e-3}},
		{"<127 mm", units.Length, us, []float64{126.9e-3}, []float64{127e-3, 126.96e-3}},
		{">100", units.Percent, us, []float64{1.01, 1.001}, []float64{1, 1.0004}},
		{">=100 %", units.Percent, us, []float64{1, 0.9996}, []float64{0.999}},
		{"100 to 160", units.Percent, us, []float64{1, 1.3, 1.6}, []float64{0.99, 1.61}},
		{"100to160", units.Percent, us, []float64{1.3}, []float64{0.99, 1.61}},
		{"100..160", units.Percent, us, []float64{1, 1.6}, []float64{0.99, 1.61}},
		{"100–160", units.Percent, us, []float64{1, 1.6}, []float64{0.99, 1.61}},
		{"-2,5 to −1.5", units.Length, us, []float64{-2 * inch}, []float64{-3 * inch, -1 * inch, 2 * inch}},
		{".5..1.5", units.Number, us, []float64{0.5, 1.5}, []float64{0.4, 1.6}},
		{"=3", units.Number, us, []float64{3, 3.0004}, []float64{3.0006, 2}},
		{"3", units.Angle, us, []float64{3 * degree, 2.996 * degree}, []float64{3.006 * degree}},
		{"1.2345", units.Length, us, []float64{1.23451 * inch}, []float64{1.2344 * inch, 1.23 * inch}},
		{"<9475", units.Force, us, []float64{9474 * pound}, []float64{9474.6 * pound, 9475 * pound}},
		{"< 5 1/2", units.Length, us, []float64{5.49 * inch}, []float64{5.5 * inch}},
		{"1/64", units.Length, us, []float64{inch / 64}, []float64{0.02 * inch}},
		{"> 1 ft", units.Length, si, []float64{12.01 * inch}, []float64{12 * inch}},
		{"1/3 to 1/2", units.Number, us, []float64{1.0 / 3, 0.5}, []float64{0.333, 0.501}},
		{"1 in to 50.8 mm", units.Length, us, []float64{inch, 2 * inch}, []float64{0.9 * inch, 2.1 * inch}},
	} {
		condition, err := parse(c.text, c.quantity, c.system)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if condition.String() != c.text || condition.Any() != (c.text == "") || condition.Met(0, false) != (c.text == "") {
			t.Errorf("%q: any or missing values are taken wrongly", c.text)
		}
		for _, x := range c.met {
			if !condition.Met(x, true) {
				t.Errorf("%q is not met by %v", c.text, x)
			}
		}
		for _, x := range c.not {
			if condition.Met(x, true) {
				t.Errorf("%q is met by %v", c.text, x)
			}
		}
	}
}

func TestConditionRefusals(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"abc", "‘abc’ is no condition; write <5, >100, 100 to 160 or 3"},
		{"<", "‘<’ lacks a number; write <5, >100, 100 to 160 or 3"},
		{"<abc", "‘<abc’ is no condition; write <5, >100, 100 to 160 or 3"},
		{"=<5", "‘=<5’ is no condition; write <5, >100, 100 to 160 or 3"},
		{"160 to 100", "‘160 to 100’ begins with the greater number; write 100 to 160"},
		{"<9,475", "‘9,475’ can be read two ways; write 9475 or 9.475"},
		{"<5 lb", "‘lb’ is no unit that fits here; write in or mm, or none for in"},
		{"1 to 2 to 3", "‘1 to 2 to 3’ is no condition; write <5, >100, 100 to 160 or 3"},
		{"NaN", "‘NaN’ is no condition; write <5, >100, 100 to 160 or 3"},
		{"<1e400", "‘<1e400’ is no condition; write <5, >100, 100 to 160 or 3"},
		{"<99999999999999999999", "‘99999999999999999999’ has more digits than can be compared; write <5, >100, 100 to 160 or 3"},
	} {
		if _, err := parse(c.text, units.Length, units.US); err == nil || err.Error() != c.says {
			t.Errorf("%q:\n got %v\nwant %s", c.text, err, c.says)
		}
	}
	if _, err := parse("3 in", units.Number, units.US); err == nil || !strings.HasSuffix(err.Error(), "write the number alone") {
		t.Errorf("a unit for a count: %v", err)
	}
}

// For a reader of other units a condition names its own.
func TestConditionsInOtherUnits(t *testing.T) {
	for _, c := range []struct {
		text, in string
		quantity units.Quantity
	}{
		{"40 to 45.50", "40 in to 45.50 in", units.Length},
		{" < 5", "<5 in", units.Length},
		{"<=5", "<=5 lb", units.Force},
		{"> 1.250", ">1.250 in", units.Length},
		{"≥ 3", ">=3 in", units.Length},
		{"= 3", "3 in", units.Length},
		{"39 in–1000 mm", "39 in to 1000 mm", units.Length},
		{"25 mm", "25 mm", units.Length},
		{"<= 5 3/4", "<=5.75 in", units.Length},
		{"100..160", "100..160", units.Percent},
		{"", "", units.Length},
	} {
		read, err := parse(c.text, c.quantity, units.US)
		if err != nil {
			t.Fatal(err)
		}
		if got := read.In(units.SI); got != c.in {
			t.Errorf("%q is %q for a reader of SI, want %q", c.text, got, c.in)
		}
		if got := read.In(units.US); c.text != "39 in–1000 mm" && c.text != "25 mm" && got != strings.TrimSpace(c.text) {
			t.Errorf("%q is %q for a reader of its own units", c.text, got)
		}
	}
}

// Any text is refused in words or read; what is read can be written and read
// again to the same end, and lets a value pass or not without failing.
func FuzzParseCondition(f *testing.F) {
	for _, text := range []string{"", "<5", "<= 5", ">100", "100 to 160", "100..160", "=3", "3", "-2,5 to −1.5", "1 in–50 mm", "9,475", "1/3", "2 ft", "9999999.123456789", "‘", "....", "to to to"} {
		f.Add(text, int(units.Length), false, 0.1)
	}
	f.Fuzz(func(t *testing.T, text string, quantity int, metric bool, x float64) {
		q, s := units.Quantity(quantity), units.US
		if q < units.Number || q > units.Time {
			q = units.Percent
		}
		if metric {
			s = units.SI
		}
		c, err := parse(text, q, s)
		if err != nil {
			if !strings.Contains(err.Error(), "write ") {
				t.Fatalf("%q: %v does not say what would be right", text, err)
			}
			return
		}
		again, err := parse(c.String(), q, s)
		if err != nil || again.Any() != c.Any() {
			t.Fatalf("%q: read again %v, %v", text, again, err)
		}
		if !math.IsNaN(x) && !math.IsInf(x, 0) && again.Met(x, true) != c.Met(x, true) {
			t.Fatalf("%q: %v is met once and not again", text, x)
		}
		for _, other := range []units.System{units.US, units.SI} {
			moved, err := parse(c.In(other), q, other)
			if err != nil || moved.Any() != c.Any() || !math.IsNaN(x) && !math.IsInf(x, 0) && moved.Met(x, true) != c.Met(x, true) {
				t.Fatalf("%q: for a reader of other units it is %q, which is met otherwise: %v", text, c.In(other), err)
			}
		}
	})
}

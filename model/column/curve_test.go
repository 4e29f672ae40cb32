package column

import (
	"slices"
	"strings"
	"testing"
)

// Car files rest on these names.
func TestCurveNamesAreStable(t *testing.T) {
	want := []string{"johnson-euler", "perry", "aisc-e3", "handbook-4130"}
	var got []string
	for _, c := range Curves() {
		got = append(got, c.String())
		if back, err := ParseCurve(c.String()); err != nil || back != c {
			t.Errorf("%v parses as %v, %v", c, back, err)
		}
		if c.Title() == "" || c.Title() == c.String() || len(c.Describe()) < 60 {
			t.Errorf("%v isn't described: %q, %q", c, c.Title(), c.Describe())
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	var zero Curve
	if zero != JohnsonEuler {
		t.Error("the zero value is not the default")
	}
}

func TestParseCurveRefusesWithTheNames(t *testing.T) {
	for _, name := range []string{"", "Perry", "euler"} {
		_, err := ParseCurve(name)
		if err == nil || !strings.Contains(err.Error(), `"johnson-euler", "perry", "aisc-e3", "handbook-4130"`) {
			t.Errorf("%q: %v", name, err)
		}
	}
}

func TestUnknownEnumsPrintTheirNumber(t *testing.T) {
	for got, want := range map[string]string{
		Curve(9).String(): "Curve(9)", Curve(-1).Title(): "Curve(-1)", Curve(9).Describe(): "Curve(9)",
		Kind(99).String(): "Kind(99)", Kind(-1).String(): "Kind(-1)",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestKindsAreNamed(t *testing.T) {
	seen := map[string]bool{}
	for k := Kind(0); k < kinds; k++ {
		if name := k.String(); name == "" || seen[name] {
			t.Errorf("kind %d: %q", k, name)
		}
		seen[k.String()] = true
		if k.Source() == "" {
			t.Errorf("%v has no source", k)
		}
		if k.Direction() != Push && k != TubeYield && k != WeldYield {
			t.Errorf("%v: in %v", k, k.Direction())
		}
	}
	if TubeYield.Direction() != Pull || WeldYield.Direction() != Pull {
		t.Error("tension yield comes in push")
	}
	if Push.String() != "push" || Pull.String() != "pull" {
		t.Error("directions")
	}
}

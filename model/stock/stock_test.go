package stock

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func steel(name string) Material {
	return Material{Name: name, E: 2e11, Yield: 5e8, Ultimate: 6e8, Density: 7850}
}

func formula() Handbook {
	return Handbook{Short: 5.5e8, Coefficient: 3.6e5, Exponent: 1.5, Transition: 91, Long: 1.97e12, MaxSlenderness: 150, MaxDiameterToWall: 50}
}

func TestLookUpByName(t *testing.T) {
	l := Library{Materials: []Material{steel("a"), steel("b")}, Tubes: []Tube{{Name: "1 x 0.065", OD: 0.0254, Wall: 0.00165}}}
	if m, ok := l.Material("b"); !ok || m.Name != "b" {
		t.Errorf("material b: %v, %v", m, ok)
	}
	if m, ok := l.Material("c"); ok || m != (Material{}) {
		t.Errorf("material c: %v, %v", m, ok)
	}
	if tube, ok := l.Tube("1 x 0.065"); !ok || tube.Wall != 0.00165 {
		t.Errorf("tube: %v, %v", tube, ok)
	}
	if got := l.MaterialNames(); !slices.Equal(got, []string{"a", "b"}) {
		t.Errorf("material names %v", got)
	}
	if got := l.TubeNames(); !slices.Equal(got, []string{"1 x 0.065"}) {
		t.Errorf("tube names %v", got)
	}
}

func TestMergeOverridesInPlaceAndAppends(t *testing.T) {
	stronger := steel("b")
	stronger.Yield = 5.5e8
	ours := Library{Materials: []Material{steel("a"), steel("b"), steel("c")}}
	theirs := Library{Materials: []Material{steel("d"), stronger}, Tubes: []Tube{{Name: "t"}}}
	merged := ours.Merge(theirs)
	if got := merged.MaterialNames(); !slices.Equal(got, []string{"a", "b", "c", "d"}) {
		t.Errorf("names %v", got)
	}
	if m, _ := merged.Material("b"); m.Yield != 5.5e8 {
		t.Errorf("yield %g, want the overriding one", m.Yield)
	}
	if len(merged.Tubes) != 1 || ours.Materials[1].Yield != 5e8 || len(ours.Materials) != 3 {
		t.Errorf("merging changed its operand or lost a table: %v %v", merged, ours)
	}
}

func TestMergeLaws(t *testing.T) {
	library := rapid.Custom(func(t *rapid.T) Library {
		var l Library
		for _, name := range rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"a", "b", "c", "d"}), 0, 4, rapid.ID[string]).Draw(t, "names") {
			m := steel(name)
			m.Yield = rapid.Float64Range(1e8, 1e9).Draw(t, "yield")
			l.Materials = append(l.Materials, m)
		}
		return l
	})
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := library.Draw(t, "a"), library.Draw(t, "b"), library.Draw(t, "c")
		if left, right := a.Merge(b).Merge(c), a.Merge(b.Merge(c)); !slices.Equal(left.Materials, right.Materials) {
			t.Fatalf("not associative: %v, %v", left, right)
		}
		if twice := a.Merge(a); !slices.Equal(twice.Materials, a.Materials) {
			t.Fatalf("merging with itself gives %v", twice)
		}
	})
}

func TestValidLibraryHasNoProblems(t *testing.T) {
	withFormula := steel("b")
	withFormula.Handbook = formula()
	l := Library{Materials: []Material{steel("a"), withFormula}, Tubes: []Tube{{Name: "t", OD: 0.03, Wall: 0.002}}}
	if found := l.Validate(); len(found) != 0 {
		t.Error(found)
	}
	if found := (Library{}).Validate(); len(found) != 0 {
		t.Error(found)
	}
}

func TestValidateNamesEveryProblemAtOnce(t *testing.T) {
	incomplete := steel("i")
	incomplete.Handbook = formula()
	incomplete.Handbook.Long = 0
	late := steel("l")
	late.Handbook = formula()
	late.Handbook.Transition = 151
	spent := steel("s")
	spent.Handbook = formula()
	spent.Handbook.Coefficient = 1e6
	welded := steel("w")
	welded.WeldedYield = 5.1e8
	l := Library{
		Materials: []Material{
			{Name: "", E: math.NaN(), Yield: -1, Ultimate: math.Inf(1), Density: 0},
			steel("a"),
			{Name: "a", E: 2e11, Yield: 5e8, Ultimate: 4e8, Density: 7850},
			incomplete, late, spent, welded,
		},
		Tubes: []Tube{{Name: "t", OD: 0.02, Wall: 0.01}, {Name: "u", OD: 0, Wall: 0.001}},
	}
	var got []string
	for _, p := range l.Validate() {
		if p.Wrong == "" || p.Right == "" {
			t.Errorf("says too little: %v", p)
		}
		got = append(got, p.Path)
	}
	want := []string{
		"material.0.name", "material.2.name",
		"material.0.elastic_modulus", "material.0.density", "material.0.yield", "material.0.ultimate",
		"material.2.ultimate", "material.3.column.long", "material.4.column.transition", "material.4.column.coefficient",
		"material.5.column.coefficient", "material.6.welded_yield",
		"tube.0.wall", "tube.1.od",
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

func TestProblemCountsFromOneForPeople(t *testing.T) {
	p := Problem{Path: "material.2.column.long", Wrong: "is bad", Right: "give a good one"}
	if got, want := p.String(), "material 3: column.long: is bad; give a good one"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

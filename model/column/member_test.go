package column_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/column"
	"bowline/model/stock"

	"pgregory.net/rapid"
)

const inch, psi = 0.0254, 4.4482216152605 / (0.0254 * 0.0254) // m, Pa

// steel has the modulus and the yield strength of normalized 4130.
var steel = stock.Material{Name: "4130 normalized", E: 29e6 * psi, Yield: 75e3 * psi}

// softened is the same steel, annealed by a weld to 60 ksi.
var softened = stock.Material{Name: "4130 as welded", E: 29e6 * psi, Yield: 60e3 * psi}

// segment is a tube, sizes in inches.
func segment(length, od, wall float64, m stock.Material) column.Segment {
	return column.Segment{Length: length * inch, OD: od * inch, Wall: wall * inch, Material: m}
}

func capacity(t testing.TB, m column.Member, o column.Options) column.Result {
	t.Helper()
	r, err := column.Capacity(m, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func within(got, want, relative float64) bool {
	return math.Abs(got-want) <= relative*math.Abs(want)
}

// Springs in series by hand, in inches and pounds. Two solid steel shanks of 3/4
// x 1.5, A 0.4417865, give 1.170795e-7 in/lb each; a steel tube of 1.25 x 0.095 x
// 20, A 0.3447113, gives 2.000675e-6; a solid rod of 1 x 2 and 10e6 psi, A
// 0.7853982, gives 2.546479e-7.
func TestFlexibilityByHand(t *testing.T) {
	shank, tube := segment(1.5, 0.75, 0.375, steel), segment(20, 1.25, 0.095, steel)
	rod := segment(2, 1, 0.5, stock.Material{Name: "aluminum", E: 10e6 * psi, Yield: 40e3 * psi})
	for _, c := range []struct {
		name                string
		member              column.Member
		length, flexibility float64 // in, in/lb
	}{
		{"tube", column.Member{tube}, 20, 2.000675e-6},
		{"tube between shanks", column.Member{shank, tube, shank}, 23, 2.234834e-6},
		{"two materials", column.Member{rod, shank}, 3.5, 3.717274e-7},
		{"none", nil, 0, 0},
	} {
		if got := c.member.Length() / inch; !within(got, c.length, 1e-12) {
			t.Errorf("%s: %g in long, want %g", c.name, got, c.length)
		}
		if got := c.member.Flexibility() / inch * 4.4482216152605; !within(got, c.flexibility, 1e-6) {
			t.Errorf("%s: %g in/lb, want %g", c.name, got, c.flexibility)
		}
	}
}

// anyTube draws a segment that any shop could make, and how it is judged.
func anyTube(t *rapid.T) (column.Segment, column.Options) {
	od := rapid.Float64Range(0.3, 4).Draw(t, "od")
	s := segment(rapid.Float64Range(0.5, 200).Draw(t, "length"), od, od*rapid.Float64Range(0.02, 0.5).Draw(t, "wall over od"), steel)
	return s, column.Options{
		Curve:       rapid.SampledFrom([]column.Curve{column.JohnsonEuler, column.PerryCurve, column.AISCCurve}).Draw(t, "curve"),
		Crookedness: rapid.SampledFrom([]float64{0, 0.001, 0.02}).Draw(t, "crookedness"),
		Factor:      rapid.Float64Range(1, 5).Draw(t, "factor"),
	}
}

// cut cuts a segment in two to nine pieces at places of its own choice.
func cut(t *rapid.T, s column.Segment) column.Member {
	pieces := rapid.SliceOfN(rapid.Float64Range(0.05, 1), 2, 9).Draw(t, "pieces")
	whole := 0.0
	for _, x := range pieces {
		whole += x
	}
	m := make(column.Member, len(pieces))
	for i, x := range pieces {
		m[i] = s
		m[i].Length = s.Length * x / whole
	}
	return m
}

// A bar cut in pieces and put together again is the same bar.
func TestEqualSegmentsAreOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, o := anyTube(t)
		whole := column.Member{s}
		m := cut(t, s)
		one, err := column.Capacity(whole, o)
		if err != nil {
			t.Fatal(err)
		}
		several, err := column.Capacity(m, o)
		if err != nil {
			t.Fatal(err)
		}
		push := rapid.Float64Range(-1, 0.9).Draw(t, "push over Euler") * one.Euler
		bow, stress, err := one.Bow(push)
		if err != nil {
			t.Fatal(err)
		}
		bow2, stress2, err := several.Bow(push)
		if err != nil {
			t.Fatal(err)
		}
		for what, pair := range map[string][2]float64{
			"length": {one.Length, several.Length}, "flexibility": {whole.Flexibility(), m.Flexibility()},
			"slenderness": {one.Slenderness, several.Slenderness}, "transition": {one.Transition, several.Transition},
			"squash": {one.Squash, several.Squash}, "euler": {one.Euler, several.Euler}, "johnson": {one.Johnson, several.Johnson},
			"first yield": {one.FirstYield, several.FirstYield}, "critical": {one.Critical, several.Critical},
			"initial bow": {one.InitialBow, several.InitialBow}, "wall": {one.Wall.Ratio, several.Wall.Ratio},
			"push": {one.Push.Allowable, several.Push.Allowable}, "pull": {one.Pull.Allowable, several.Pull.Allowable},
			"bow": {bow, bow2}, "stress": {stress, stress2},
		} {
			if !within(pair[1], pair[0], 1e-12) {
				t.Fatalf("%s: %.17g in one piece, %.17g in %d", what, pair[0], pair[1], len(m))
			}
		}
		if one.Push.Kind != several.Push.Kind || one.Pull.Kind != several.Pull.Kind || len(one.Modes()) != len(several.Modes()) {
			t.Fatalf("%v and %v govern one piece, %v and %v several", one.Push.Kind, one.Pull.Kind, several.Push.Kind, several.Pull.Kind)
		}
	})
}

// Of steels of one modulus the weakest yields first in pull and under pure
// compression. Under a bow the place counts too: a softened end matters less than
// a softened middle. At first yield the worst fiber of one segment has just come
// to its yield strength and none is beyond, as P/A + P·e·c/I along a half sine says.
func TestTheWeakestSegmentCounts(t *testing.T) {
	o := column.Options{Crookedness: 0.01, Factor: 1}
	tube := func(length float64, m stock.Material) column.Segment { return segment(length, 1.25, 0.095, m) }
	const area, inertia, fiber = 0.3447113, 0.0578706, 0.625 // in², in⁴, in
	sound := capacity(t, column.Member{tube(24, steel)}, o)
	weak := capacity(t, column.Member{tube(24, softened)}, o)
	pushes := []float64{}
	for _, c := range []struct {
		name   string
		member column.Member
	}{
		{"soft middle", column.Member{tube(10, steel), tube(4, softened), tube(10, steel)}},
		{"soft quarter", column.Member{tube(4, steel), tube(4, softened), tube(16, steel)}},
		{"soft end", column.Member{tube(0.5, softened), tube(23.5, steel)}},
	} {
		r := capacity(t, c.member, o)
		if !within(r.Euler, sound.Euler, 1e-12) || !within(r.Squash, weak.Squash, 1e-12) || !within(r.Pull.Strength, weak.Pull.Strength, 1e-12) {
			t.Errorf("%s: Euler %g, squash %g, pull %g", c.name, r.Euler, r.Squash, r.Pull.Strength)
		}
		push, euler := r.FirstYield/4.4482216152605, r.Euler/4.4482216152605
		bow := 0.24 / (1 - push/euler)
		worst, at := 0.0, 0.0
		for _, s := range c.member {
			from, to := at, at+s.Length/inch
			for k := range 1001 {
				x := from + (to-from)*float64(k)/1000
				stress := push/area + push*bow*math.Sin(math.Pi*x/24)*fiber/inertia
				worst = math.Max(worst, stress/(s.Material.Yield/psi))
			}
			at = to
		}
		if !within(worst, 1, 1e-5) {
			t.Errorf("%s: at first yield the worst fiber has %g of its yield strength", c.name, worst)
		}
		pushes = append(pushes, r.FirstYield)
	}
	if !slices.IsSorted(pushes) || !within(pushes[0], weak.FirstYield, 1e-12) || !(pushes[2] > pushes[1]) {
		t.Errorf("first yield at %v; all sound %g, all soft %g", pushes, sound.FirstYield, weak.FirstYield)
	}
	if end := pushes[2]; end > sound.FirstYield {
		t.Errorf("a soft end carries %g, a sound bar %g", end, sound.FirstYield)
	}
}

// Turned end for end a bar is the same bar.
func TestEndForEnd(t *testing.T) {
	o := column.Options{Crookedness: 0.002, Factor: 2}
	m := column.Member{segment(3, 1.25, 0.095, softened), segment(20, 1.25, 0.095, steel), segment(1, 1.25, 0.095, softened)}
	turned := slices.Clone(m)
	slices.Reverse(turned)
	a, b := capacity(t, m, o), capacity(t, turned, o)
	if !within(a.Push.Strength, b.Push.Strength, 1e-12) || !within(m.Flexibility(), turned.Flexibility(), 1e-12) {
		t.Errorf("push %g and %g, flexibility %g and %g", a.Push.Strength, b.Push.Strength, m.Flexibility(), turned.Flexibility())
	}
}

func TestMemberRefusals(t *testing.T) {
	sound := segment(10, 1.25, 0.095, steel)
	with := func(change func(*column.Segment)) column.Segment {
		s := sound
		change(&s)
		return s
	}
	for _, c := range []struct {
		name   string
		member column.Member
		want   []string // starts of the problems
		check  bool     // whether Check refuses it too
	}{
		{"none", nil, []string{"length is not given"}, true},
		{"unlike", column.Member{sound, segment(2, 0.75, 0.375, steel)}, []string{"segments differ in bending stiffness"}, false},
		{"no length", column.Member{sound, with(func(s *column.Segment) { s.Length = 0 })}, []string{"length of segment 2 of 2 is not a finite number above 0"}, true},
		{"all at once", column.Member{with(func(s *column.Segment) { s.OD = -1 }), sound, with(func(s *column.Segment) { s.Wall, s.Material = 1, stock.Material{Name: "wood"} })},
			[]string{"od of segment 1 of 3 is", "wall of segment 3 of 3 is more than half the OD", `material of segment 3 of 3 "wood" has`}, true},
		{"foil", column.Member{with(func(s *column.Segment) { s.Wall = s.OD / 200 }), with(func(s *column.Segment) { s.Wall = s.OD / 200 })},
			[]string{"wall of segment 1 of 2 is too thin", "wall of segment 2 of 2 is too thin"}, false},
		{"NaN", column.Member{with(func(s *column.Segment) { s.Length = math.NaN() })}, []string{"length is not a finite number above 0"}, true},
		{"endless together", column.Member{with(func(s *column.Segment) { s.Length = 1e308 }), with(func(s *column.Segment) { s.Length = 1e308 })}, []string{"length and section are too extreme"}, false},
	} {
		r, err := column.Capacity(c.member, column.Options{Factor: 2})
		var wrong column.Problems
		if !errors.As(err, &wrong) || len(wrong) != len(c.want) || len(r.Modes()) != 0 || r.Push.Allowable != 0 {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		for i, want := range c.want {
			if got := wrong[i].Field + " " + wrong[i].Wrong; !strings.HasPrefix(got, want) || wrong[i].Right == "" {
				t.Errorf("%s: problem %d is %q, want %q", c.name, i, got, want)
			}
		}
		if refused := c.member.Check() != nil; refused != c.check {
			t.Errorf("%s: Check refuses it is %v, want %v", c.name, refused, c.check)
		}
	}
	if err := (column.Member{sound}).Check(); err != nil {
		t.Error(err)
	}
}

package column

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/model/stock"

	"pgregory.net/rapid"
)

// normalized is 4130, condition N: Bruhn, ch. C4, round steel tubes.
func normalized() stock.Material {
	h := bruhn4130
	h.Short, h.Coefficient, h.Long = h.Short*psi, h.Coefficient*psi, h.Long*psi
	return stock.Material{Name: "4130 normalized", E: 29000 * ksi, Yield: 75 * ksi, Ultimate: 95 * ksi, Density: 7833, Handbook: h}
}

func mild() stock.Material {
	return stock.Material{Name: "1020 DOM", E: 29000 * ksi, Yield: 60 * ksi, Ultimate: 70 * ksi, Density: 7861}
}

// bar is a tube of normalized 4130 all the way [in].
func bar(od, wall, length float64) Member {
	return Member{{OD: od * inch, Wall: wall * inch, Material: normalized(), Length: length * inch}}
}

// changed returns a bar of one segment after a change of that.
func changed(m Member, change func(*Segment)) Member {
	segment := m[0]
	change(&segment)
	return Member{segment}
}

func usual(curve Curve) Options {
	return Options{Curve: curve, Crookedness: DefaultCrookedness, Factor: DefaultFactor}
}

func mustCapacity(t testing.TB, b Member, o Options) Result {
	t.Helper()
	r, err := Capacity(b, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Bruhn, ch. C4, row 4130: pinned tubes, computed from the printed formula apart
// from this program. OD, wall in; A in²; ρ in; P lb at 18, 24, 30 and 36 in.
func TestHandbookCapacityTable(t *testing.T) {
	for _, c := range []struct {
		od, wall, area, rho, ratio float64
		loads                      [4]float64
	}{
		{1.000, .065, 0.1909, 0.3314, 15.4, [4]float64{11212, 9071, 6643, 4627}},
		{1.250, .065, 0.2420, 0.4196, 19.2, [4]float64{15709, 13805, 11645, 9257}},
		{1.500, .065, 0.2930, 0.5079, 23.1, [4]float64{20087, 18356, 16391, 14220}},
		{1.500, .083, 0.3695, 0.5018, 18.1, [4]float64{25255, 23032, 20511, 17723}},
		{1.500, .120, 0.5202, 0.4897, 12.5, [4]float64{35343, 32097, 28415, 24343}},
		{1.625, .083, 0.4021, 0.5460, 19.6, [4]float64{28015, 25883, 23466, 20792}},
		{1.750, .120, 0.6145, 0.5779, 14.6, [4]float64{43308, 40316, 36922, 33170}},
	} {
		for i, length := range []float64{18, 24, 30, 36} {
			r := mustCapacity(t, bar(c.od, c.wall, length), usual(HandbookCurve))
			name := fmt.Sprintf("%.3f x %.3f, %g in", c.od, c.wall, length)
			section := tube(t, r.Member[0].OD, r.Member[0].Wall)
			printed(t, name+", A", section.Area/inch/inch, c.area, 4)
			printed(t, name+", ρ", section.Gyration/inch, c.rho, 4)
			printed(t, name+", D/t", r.Wall.Ratio, c.ratio, 1)
			printed(t, name+", P", r.Critical/lbf, c.loads[i], 0)
		}
	}
}

// A lower bar by hand: 1.25 x 0.095 in, 4130 normalized, 23.01 in. d = 1.06;
// A = 0.344711 in², I = 0.0578706 in⁴, ρ = 0.409733 in; Pe = π²·29e6·I/L² = 31 284,
// FyA = 25 853; Johnson 25 853·(1 − 25 853/(4·31 284)) = 20 512; η = 0.02301·0.625/ρ²
// = 0.085663, and half of b − √(b² − 4·Pe·FyA) with b = FyA + (1 + η)·Pe is 20 650 lb.
func TestCapacityOfABarByHand(t *testing.T) {
	r := mustCapacity(t, bar(1.25, 0.095, 23.01), usual(JohnsonEuler))
	for _, c := range []struct {
		name      string
		got, want float64
		tolerance float64
	}{
		{"slenderness", r.Slenderness, 23.01 / 0.409733, 1e-5},
		{"transition", r.Transition, 87.364, 1e-5},
		{"euler", r.Euler / lbf, 31284, 2e-5},
		{"johnson", r.Johnson / lbf, 20512, 2e-5},
		{"first yield", r.FirstYield / lbf, 20650, 3e-5},
		{"critical", r.Critical, r.Johnson, 0},
		{"bow", r.InitialBow / inch, 0.02301, 1e-12},
		{"push", r.Push.Allowable / lbf, 20512. / 2, 1e-4},
		{"pull", r.Pull.Allowable / lbf, 25853. / 2, 1e-4},
		{"wall", r.Wall.Ratio, 1.25 / 0.095, 1e-12},
		{"wall limit", r.Wall.Limit, 0.11 * 29000 / 75, 1e-12},
	} {
		if !near(c.got, c.want, c.tolerance) {
			t.Errorf("%s: %.6g, want %.6g", c.name, c.got, c.want)
		}
	}
	if r.Push.Kind != JohnsonBuckling || r.Pull.Kind != TubeYield || r.Wall.Slender() {
		t.Errorf("push %v, pull %v, slender %v", r.Push.Kind, r.Pull.Kind, r.Wall.Slender())
	}
}

// The stress that the bow leads to at first yield is the yield strength.
func TestFirstYieldIsWhereTheBowedTubeYields(t *testing.T) {
	for _, length := range []float64{12, 24, 36, 60} {
		r := mustCapacity(t, bar(1.25, 0.095, length), usual(PerryCurve))
		bow, stress, err := r.Bow(r.FirstYield)
		if err != nil || !near(stress, 75*ksi, 1e-9) || !(bow > r.InitialBow) {
			t.Errorf("%g in: bow %g, stress %g psi, %v", length, bow, stress/psi, err)
		}
		if _, _, err := r.Bow(r.Euler); err == nil {
			t.Error("a bow under the Euler load")
		}
	}
}

func TestGoverningModes(t *testing.T) {
	thin := bar(2, 0.03, 20) // D/t 66.7 against a limit of 42.5
	for _, c := range []struct {
		name    string
		bar     Member
		options Options
		want    Kind
		modes   []Kind
	}{
		{"short", bar(1.25, 0.095, 20), usual(JohnsonEuler), JohnsonBuckling, []Kind{JohnsonBuckling, BowYield, TubeYield}},
		{"long and straight", bar(1.25, 0.095, 60), Options{Factor: 2}, EulerBuckling, []Kind{EulerBuckling, BowYield, TubeYield}},
		{"long", bar(1.25, 0.095, 60), usual(JohnsonEuler), BowYield, []Kind{EulerBuckling, BowYield, TubeYield}},
		{"bent", bar(1.25, 0.095, 20), Options{Crookedness: 0.01, Factor: 2}, BowYield, []Kind{JohnsonBuckling, BowYield, TubeYield}},
		{"perry", bar(1.25, 0.095, 20), usual(PerryCurve), BowYield, []Kind{BowYield, TubeYield}},
		{"aisc", bar(1.25, 0.095, 20), usual(AISCCurve), AISCBuckling, []Kind{AISCBuckling, BowYield, TubeYield}},
		{"handbook, middling", bar(1.25, 0.095, 24), usual(HandbookCurve), HandbookBuckling, []Kind{HandbookBuckling, BowYield, TubeYield}},
		{"handbook, very short", bar(1.25, 0.095, 6), usual(HandbookCurve), BowYield, []Kind{HandbookBuckling, BowYield, TubeYield}},
		{"thin", thin, usual(JohnsonEuler), LocalBuckling, []Kind{JohnsonBuckling, BowYield, LocalBuckling, TubeYield}},
	} {
		r := mustCapacity(t, c.bar, c.options)
		var got []Kind
		for _, mode := range r.Modes() {
			got = append(got, mode.Kind)
			if weaker := mode.Kind.Direction() == Push && mode.Strength < r.Push.Strength; weaker {
				t.Errorf("%s: %v is weaker than what governs", c.name, mode.Kind)
			}
		}
		if r.Push.Kind != c.want || !slices.Equal(got, c.modes) {
			t.Errorf("%s: %v governs, want %v; modes %v", c.name, r.Push.Kind, c.want, got)
		}
		if r.Pull.Kind != TubeYield || !near(r.Pull.Strength, 75*ksi*tube(t, c.bar[0].OD, c.bar[0].Wall).Area, 1e-12) {
			t.Errorf("%s: pull %+v", c.name, r.Pull)
		}
		if !near(r.Push.Allowable*c.options.Factor, r.Push.Strength, 1e-12) {
			t.Errorf("%s: allowable %g of %g", c.name, r.Push.Allowable, r.Push.Strength)
		}
	}
	// AISC 360-22 E7.2 by hand: 0.038·(29000/75)/66.667 + 2/3.
	r := mustCapacity(t, thin, usual(JohnsonEuler))
	if !near(r.Push.Strength, 0.8870667*r.Johnson, 1e-6) {
		t.Errorf("effective area %g", r.Push.Strength/r.Johnson)
	}
}

// Where the material has an as-welded yield, the welds at the ends pull off first:
// 1.25 x 0.095 in by hand, 60 ksi · 0.344711 in² = 20 683 lb, the tube 25 853 lb.
// Push, in the middle of the tube, stays as it is.
func TestPullAtTheWeld(t *testing.T) {
	plain := bar(1.25, 0.095, 23.01)
	welded := func(yield float64) Member {
		return changed(plain, func(s *Segment) { s.Material.WeldedYield = yield * ksi })
	}
	base := mustCapacity(t, plain, usual(JohnsonEuler))
	r := mustCapacity(t, welded(60), usual(JohnsonEuler))
	if r.Pull.Kind != WeldYield || !near(r.Pull.Allowable/lbf, 20683./2, 1e-4) || !near(r.Squash/lbf, 25853, 1e-4) {
		t.Errorf("pull %+v of a tube that yields at %v", r.Pull, r.Squash)
	}
	if r.Push != base.Push || r.FirstYield != base.FirstYield || r.Wall != base.Wall {
		t.Errorf("push %+v, without welds %+v", r.Push, base.Push)
	}
	if same := mustCapacity(t, welded(75), usual(JohnsonEuler)); same.Pull.Kind != TubeYield || same.Pull != base.Pull {
		t.Errorf("as strong welded: %+v", same.Pull)
	}
	var kinds []Kind
	for _, mode := range r.Modes() {
		kinds = append(kinds, mode.Kind)
	}
	if want := []Kind{JohnsonBuckling, BowYield, TubeYield, WeldYield}; !slices.Equal(kinds, want) {
		t.Errorf("modes %v, want %v", kinds, want)
	}
	// The weakest segment governs, and one without an as-welded yield has no say.
	half := func(s Segment) Segment { s.Length /= 2; return s }
	for _, m := range []Member{{half(welded(60)[0]), half(plain[0])}, {half(welded(66)[0]), half(welded(60)[0])}} {
		if got := mustCapacity(t, m, usual(JohnsonEuler)); got.Pull != r.Pull {
			t.Errorf("of two segments: %+v, want %+v", got.Pull, r.Pull)
		}
	}
}

func TestCapacityRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	with := func(change func(*Segment, *Options)) (Member, Options) {
		b, o := bar(1.25, 0.095, 24), usual(JohnsonEuler)
		change(&b[0], &o)
		return b, o
	}
	for _, c := range []struct {
		name   string
		change func(*Segment, *Options)
		fields string
		says   string
	}{
		{"no OD", func(b *Segment, o *Options) { b.OD = 0 }, "od", "above 0"},
		{"thick wall", func(b *Segment, o *Options) { b.Wall = b.OD }, "wall", "half the OD"},
		{"NaN length", func(b *Segment, o *Options) { b.Length = nan }, "length", "above 0"},
		{"endless", func(b *Segment, o *Options) { b.Length = inf }, "length", "above 0"},
		{"no material", func(b *Segment, o *Options) { b.Material = stock.Material{} }, "material", "choose a material"},
		{"negative as welded", func(b *Segment, o *Options) { b.Material.WeldedYield = -1 }, "material", "choose a material"},
		{"endless as welded", func(b *Segment, o *Options) { b.Material.WeldedYield = inf }, "material", "choose a material"},
		{"negative bow", func(b *Segment, o *Options) { o.Crookedness = -1e-9 }, "crookedness", "0 or more"},
		{"NaN bow", func(b *Segment, o *Options) { o.Crookedness = nan }, "crookedness", "0 or more"},
		{"factor below 1", func(b *Segment, o *Options) { o.Factor = 0.99 }, "factor", "1 or more"},
		{"no factor", func(b *Segment, o *Options) { o.Factor = 0 }, "factor", "1 or more"},
		{"endless factor", func(b *Segment, o *Options) { o.Factor = inf }, "factor", "1 or more"},
		{"unknown curve", func(b *Segment, o *Options) { o.Curve = 17 }, "column", "johnson-euler"},
		{"all at once", func(b *Segment, o *Options) { *b, *o = Segment{}, Options{Curve: -1} }, "od wall material length factor column", ""},
		{"foil", func(b *Segment, o *Options) { b.Wall = b.OD / 200 }, "wall", "OD over wall is 200, and no formula holds beyond 174"},
		{"handbook for 1020", func(b *Segment, o *Options) { b.Material, o.Curve = mild(), HandbookCurve }, "column", `"1020 DOM" has no such formula`},
		{"handbook, slender", func(b *Segment, o *Options) { b.Length, o.Curve = 63*inch, HandbookCurve }, "column", "a slenderness of 150; this bar has 153.8"},
		{"handbook, thin", func(b *Segment, o *Options) { b.Wall, o.Curve = b.OD/50, HandbookCurve }, "column", "below 50 walls; this tube has 50.0"},
		{"speck", func(b *Segment, o *Options) { b.Length = 1e-200 }, "length", "too extreme"},
		{"planet", func(b *Segment, o *Options) { b.OD, b.Wall = 1e200, 1e199 }, "length", "too extreme"},
	} {
		b, o := with(c.change)
		r, err := Capacity(b, o)
		var wrong Problems
		if !errors.As(err, &wrong) || !reflect.DeepEqual(r, Result{}) {
			t.Errorf("%s: %+v, %v", c.name, r, err)
			continue
		}
		var fields []string
		for _, p := range wrong {
			if p.Wrong == "" || p.Right == "" {
				t.Errorf("%s: says too little: %+v", c.name, p)
			}
			fields = append(fields, p.Field)
		}
		if got := strings.Join(fields, " "); got != c.fields || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// anyBar draws a bar that any shop could make, and more.
func anyBar(t *rapid.T) (Member, Options) {
	od := rapid.Float64Range(0.3, 4).Draw(t, "od")
	b := bar(od, od*rapid.Float64Range(0.02, 0.5).Draw(t, "wall over od"), rapid.Float64Range(0.5, 200).Draw(t, "length"))
	b[0].Material.Yield = rapid.Float64Range(30, 200).Draw(t, "yield") * ksi
	return b, Options{
		Curve:       rapid.SampledFrom(Curves()).Draw(t, "curve"),
		Crookedness: rapid.SampledFrom([]float64{0, 1e-6, 0.001, 0.01, 0.05}).Draw(t, "crookedness"),
		Factor:      rapid.Float64Range(1, 5).Draw(t, "factor"),
	}
}

func TestNoValidBarGivesNaN(t *testing.T) {
	const rounding = 1 + 1e-12
	rapid.Check(t, func(t *rapid.T) {
		b, o := anyBar(t)
		r, err := Capacity(b, o)
		if err != nil {
			if o.Curve != HandbookCurve {
				t.Fatal(err)
			}
			return
		}
		squash := b[0].Material.Yield * r.Member[0].section().Area
		for name, x := range map[string]float64{
			"euler": r.Euler, "johnson": r.Johnson, "first yield": r.FirstYield, "critical": r.Critical,
			"push": r.Push.Allowable, "pull": r.Pull.Allowable, "slenderness": r.Slenderness, "wall": r.Wall.Effective,
		} {
			if !(x > 0) || math.IsInf(x, 0) {
				t.Fatalf("%s is %g", name, x)
			}
		}
		if r.Johnson > squash*rounding || r.FirstYield > math.Min(squash, r.Euler)*rounding {
			t.Fatalf("johnson %g, first yield %g, squash %g, euler %g", r.Johnson, r.FirstYield, squash, r.Euler)
		}
		if r.Push.Strength > math.Min(squash, r.Euler)*rounding || r.Pull.Strength > squash*rounding {
			t.Fatalf("push %g, pull %g", r.Push.Strength, r.Pull.Strength)
		}
		// Close to the Euler load the bow magnifies rounding.
		if bow, stress, err := r.Bow(r.Push.Allowable); err == nil && !(bow >= r.InitialBow && stress <= b[0].Material.Yield*(1+1e-6)) {
			t.Fatalf("bow %g, stress %g at the allowable push", bow, stress)
		}
	})
}

// Any floating-point numbers at all give a result or an error.
func TestExtremeNumbersGiveNoNaN(t *testing.T) {
	number := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, 1e-320, 1e-160, 1e-12, 1, 1e12, 1e160, 1e308, math.Inf(1), math.NaN()}))
	rapid.Check(t, func(t *rapid.T) {
		b := Member{{OD: number.Draw(t, "od"), Wall: number.Draw(t, "wall"), Length: number.Draw(t, "length"), Material: normalized()}}
		b[0].Material.E, b[0].Material.Yield, b[0].Material.WeldedYield = number.Draw(t, "e"), number.Draw(t, "yield"), number.Draw(t, "welded")
		o := Options{Curve: rapid.SampledFrom(Curves()).Draw(t, "curve"), Crookedness: number.Draw(t, "crookedness"), Factor: number.Draw(t, "factor")}
		r, err := Capacity(b, o)
		if err != nil {
			return
		}
		for _, x := range []float64{r.Euler, r.Johnson, r.FirstYield, r.Critical, r.Welded, r.Push.Strength, r.Pull.Strength, r.InitialBow, r.Slenderness, r.Transition} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v", r)
			}
		}
	})
}

func TestPushFallsWithLengthAndRisesWithWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, o := anyBar(t)
		before, err := Capacity(b, o)
		longer := changed(b, func(s *Segment) { s.Length *= 1 + rapid.Float64Range(0.01, 1).Draw(t, "longer") })
		thicker := changed(b, func(s *Segment) {
			s.Wall = math.Min(s.OD/2, s.Wall*(1+rapid.Float64Range(0.05, 1).Draw(t, "thicker")))
		})
		if err != nil {
			return
		}
		if after, err := Capacity(longer, o); err == nil && after.Push.Strength > before.Push.Strength*(1+1e-12) {
			t.Fatalf("longer carries %g over %g", after.Push.Strength, before.Push.Strength)
		}
		if after, err := Capacity(thicker, o); err == nil && b[0].Wall < 0.45*b[0].OD && !(after.Push.Strength > before.Push.Strength) {
			t.Fatalf("thicker carries %g, not over %g", after.Push.Strength, before.Push.Strength)
		}
	})
}

// All lengths k times as large: the same slenderness, k² the loads. Modulus and
// strength k times as large: k times the loads.
func TestCapacityScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, o := anyBar(t)
		k := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		r, err := Capacity(b, o)
		if err != nil {
			return
		}
		size := changed(b, func(s *Segment) { s.OD, s.Wall, s.Length = k*s.OD, k*s.Wall, k*s.Length })
		stress := changed(b, func(s *Segment) {
			m, h := &s.Material, &s.Material.Handbook
			m.E, m.Yield = k*m.E, k*m.Yield
			h.Short, h.Coefficient, h.Long = k*h.Short, k*h.Coefficient, k*h.Long
		})
		if scaled, err := Capacity(size, o); err == nil && !near(scaled.Push.Strength, k*k*r.Push.Strength, 1e-9) {
			t.Fatalf("size: %g, want %g", scaled.Push.Strength, k*k*r.Push.Strength)
		}
		if scaled, err := Capacity(stress, o); err == nil && !near(scaled.Push.Strength, k*r.Push.Strength, 1e-9) {
			t.Fatalf("stress: %g, want %g", scaled.Push.Strength, k*r.Push.Strength)
		}
	})
}

func TestMoreCrookednessCarriesLess(t *testing.T) {
	before := mustCapacity(t, bar(1.25, 0.095, 24), Options{Curve: PerryCurve, Factor: 1})
	for _, crookedness := range []float64{0.0005, 0.001, 0.002, 0.01} {
		after := mustCapacity(t, bar(1.25, 0.095, 24), Options{Curve: PerryCurve, Crookedness: crookedness, Factor: 1})
		if !(after.Push.Allowable < before.Push.Allowable) {
			t.Errorf("crookedness %g carries %g, not below %g", crookedness, after.Push.Allowable, before.Push.Allowable)
		}
		before = after
	}
}

func TestCapacityAllocatesNothing(t *testing.T) {
	b := bar(1.25, 0.095, 24)
	for _, curve := range Curves() {
		o := usual(curve)
		if n := testing.AllocsPerRun(100, func() { mustCapacity(t, b, o) }); n != 0 {
			t.Errorf("%v: %g allocations", curve, n)
		}
	}
}

func BenchmarkCapacityOfBothBars(b *testing.B) {
	upper, lower := bar(1.25, 0.095, 20.74), bar(1.5, 0.12, 23.01)
	for _, curve := range Curves() {
		o := usual(curve)
		b.Run(curve.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				first, err := Capacity(upper, o)
				second, err2 := Capacity(lower, o)
				if err != nil || err2 != nil || first.Push.Allowable > second.Push.Allowable {
					b.Fatal(err, err2)
				}
			}
		})
	}
}

package column

import (
	"fmt"
	"math"
	"testing"

	"bowline/model/stock"

	"pgregory.net/rapid"
)

// eulerStress is the elastic buckling stress at a slenderness, in the unit of e.
func eulerStress(e, slenderness float64) float64 { return Euler(e, 1, slenderness) }

// AISC 360-22 Commentary, Table C-E3.1: the slenderness and the elastic stress
// between the two branches, as printed.
func TestAISCBranchLimits(t *testing.T) {
	for _, c := range []struct {
		fy, slenderness, fe float64
		decimals            int
	}{{36, 134, 16.0, 0}, {50, 113, 22.2, 0}, {65, 99.5, 28.9, 1}, {70, 95.9, 31.1, 1}} {
		limit := math.Pi * math.Sqrt(29000*2.25/c.fy) // Fy/Fe = 2.25
		printed(t, "Lc/r", limit, c.slenderness, c.decimals)
		printed(t, "Fe", eulerStress(29000, limit), c.fe, 1)
		// A little shorter is inelastic, a little longer 0.877 of elastic.
		short, long := eulerStress(29000, limit*(1-1e-9)), eulerStress(29000, limit*(1+1e-9))
		if got := AISC(c.fy, short); !near(got, 0.38995*c.fy, 1e-5) {
			t.Errorf("Fy %g: short branch ends at %g", c.fy, got)
		}
		if got := AISC(c.fy, long); !near(got, 0.877*c.fy/2.25, 1e-8) {
			t.Errorf("Fy %g: long branch starts at %g", c.fy, got)
		}
	}
}

// AISC 360-22 Commentary E2: at Lc/r 200 Fn is below 6.3 ksi (6.275).
func TestAISCAtSlenderness200(t *testing.T) {
	if got := AISC(50, eulerStress(29000, 200)); !(got < 6.3) || !near(got, 6.275, 1e-4) {
		t.Errorf("Fn %g ksi", got)
	}
}

// AISC Design Examples v14, Ex. E.11 (Pipe 10 Std), and AISC Manual Table 4-5
// (HSS20.000x0.500), both as quoted in other texts. The book rounds the critical
// stress of the pipe, hence 0.5 %.
func TestAISCTabulatedStrengths(t *testing.T) {
	for _, c := range []struct {
		name                                 string
		area, r, fy, length, want, tolerance float64
	}{
		{"Pipe 10 Std", 11.5, 3.68, 35, 360, 221, 0.005},
		{"Pipe 10 Std, recomputed", 11.5, 3.68, 35, 360, 221.97, 5e-5},
		{"HSS20, 18 ft", 28.5, 6.91, 50, 216, 1190, 0.005},
		{"HSS20, 40 ft", 28.5, 6.91, 50, 480, 901, 0.001},
		{"HSS20, 18 ft, recomputed", 28.5, 6.91, 50, 216, 1194.1, 5e-5},
	} {
		if got := 0.9 * c.area * AISC(c.fy, eulerStress(29000, c.length/c.r)); !near(got, c.want, c.tolerance) {
			t.Errorf("%s: %g kip, want %g", c.name, got, c.want)
		}
	}
	if got := 11.5 * AISC(35, eulerStress(29000, 360/3.68)) / 1.67; !near(got, 147, 0.005) {
		t.Errorf("Pipe 10 Std: %g kip allowable, printed 147", got)
	}
	if got := 0.9 * 28.5 * AISC(50, eulerStress(29000, 1e-3)); !near(got, 1280, 0.0025) {
		t.Errorf("HSS20, no length: %g kip, printed 1280", got)
	}
}

// AISC 360-22 section E3 with radii and areas of the AISC Shapes Database v16;
// strengths computed from the formula, apart from this program.
func TestAISCSmallTubes(t *testing.T) {
	lengths := []float64{24, 36, 48, 72}
	for _, c := range []struct {
		name        string
		area, r, fy float64
		fn, pn      [4]float64
	}{
		{"HSS1.660x0.140", 0.625, 0.543, 50, [4]float64{43.345, 36.257, 28.238, 14.277}, [4]float64{27.09, 22.66, 17.65, 8.92}},
		{"HSS1.900x0.145", 0.749, 0.626, 50, [4]float64{44.905, 39.260, 32.529, 18.975}, [4]float64{33.63, 29.41, 24.36, 14.21}},
		{"Pipe 1-1/2 Std", 0.749, 0.626, 35, [4]float64{32.464, 29.550, 25.905, 17.784}, [4]float64{24.32, 22.13, 19.40, 13.32}},
	} {
		for i, length := range lengths {
			fn := AISC(c.fy, eulerStress(29000, length/c.r))
			printed(t, fmt.Sprintf("%s, %g in, Fn", c.name, length), fn, c.fn[i], 3)
			printed(t, fmt.Sprintf("%s, %g in, Pn", c.name, length), fn*c.area, c.pn[i], 2)
		}
	}
}

// Beer, Johnston & DeWolf, Mechanics of Materials, Sample Problem 10.3, and
// Popov, Engineering Mechanics of Solids, Ex. 11.8, as quoted in worked
// solutions. The first rounds the slenderness.
func TestAISCTextbooks(t *testing.T) {
	beer := func(length float64) float64 {
		return 11.5 * AISC(36, eulerStress(29000, length/1.98)) / 1.67
	}
	if got := beer(288); !near(got, 81.65, 1e-3) || !near(got, 81.70, 1e-4) {
		t.Errorf("Beer (a): %g kip", got)
	}
	if got := beer(144); !near(got, 187.64, 2e-4) {
		t.Errorf("Beer (b): %g kip", got)
	}
	if got := 0.85 * 46.7 * AISC(36, eulerStress(29000, 180/4.0)); !near(got, 1284.5, 1e-4) {
		t.Errorf("Popov: %g kip", got)
	}
}

// Wentzell, Machine Design, Ex. 3.5: round rod 5/8 in, 30 in long.
func TestEulerWentzell(t *testing.T) {
	rod := tube(t, 0.625, 0.3125)
	printed(t, "L/r", 30/rod.Gyration, 192, 0)
	printed(t, "Cc", Transition(30e6, 42000), 118.74, 2)
	printed(t, "Pcr", Euler(30e6, rod.I, 30), 2464, 0)
}

// Gere, Mechanics of Materials, Ex. 11.1: the weak axis is braced at mid-height.
func TestEulerGere(t *testing.T) {
	allowable := math.Min(Euler(29000, 98, 300), Euler(29000, 21.7, 150)) / 2.5
	printed(t, "allowable load", allowable, 110, 0)
	printed(t, "allowable load, recomputed", allowable, 110.42, 2)
}

// Gere, Ex. 11.5: the column parabola with the safety factor of older steel
// design, 5/3 + 3x/8 − x³/8 where x = (L/r)/Cc.
func TestJohnsonGere(t *testing.T) {
	cc, slenderness := Transition(29000, 36), 240/2.57
	x := slenderness / cc
	factor := 5./3 + 3*x/8 - x*x*x/8
	stress := Johnson(36, eulerStress(29000, slenderness))
	printed(t, "Cc", cc, 126.10, 2)
	printed(t, "factor", factor, 1.8936, 4)
	printed(t, "stress", stress, 26.128, 3)
	printed(t, "allowable load", stress*17.6/factor, 242.84, 1)
}

// Pytel & Kiusalaas, Mechanics of Materials, Ex. 10.2, with the same safety
// factor, and 23/12 beyond Cc.
func TestJohnsonEulerPytel(t *testing.T) {
	cc := Transition(200e9, 380e6)
	for _, c := range []struct{ slenderness, want float64 }{{142.9, 782}, {79.37, 2161}, {55.56, 2710}} {
		factor := 23. / 12
		if x := c.slenderness / cc; x < 1 {
			factor = 5./3 + 3*x/8 - x*x*x/8
		}
		got := Johnson(380e6, eulerStress(200e9, c.slenderness)) * 15.5e-3 / factor / 1000
		if math.Abs(got-c.want) > 0.55 {
			t.Errorf("L/r %g: %g kN, printed %g", c.slenderness, got, c.want)
		}
	}
}

// IS 800:2007 Table 9(c): Perry's formula with η = 0.49·(λ − 0.2), over 1.10.
func TestFirstYieldIS800(t *testing.T) {
	for _, c := range []struct {
		slenderness, want float64
		decimals          int
	}{{50, 183, 0}, {80, 136, 0}, {100, 107, 0}, {130, 74.3, 1}, {160, 53.3, 1}} {
		fe := eulerStress(200e3, c.slenderness)
		eta := 0.49 * (math.Sqrt(250/fe) - 0.2)
		printed(t, fmt.Sprintf("KL/r %g", c.slenderness), FirstYield(250, fe, eta)/1.10, c.want, c.decimals)
	}
}

// Case, Chilver & Ross, Strength of Materials and Structures, Eqs 18.32–18.36:
// the smaller root of the quadratic, found here by bisection.
func TestFirstYieldSolvesPerrysQuadratic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fy := rapid.Float64Range(100, 1000).Draw(t, "yield")
		fe := fy * math.Exp(rapid.Float64Range(-7, 7).Draw(t, "log ratio"))
		eta := math.Exp(rapid.Float64Range(-12, 3).Draw(t, "log eta"))
		low, high := 0.0, math.Min(fy, fe)
		for range 200 {
			mid := (low + high) / 2
			// At first yield P/A + η·σ/(1 − σ/σe) is the yield strength.
			if mid+eta*mid/(1-mid/fe) < fy {
				low = mid
			} else {
				high = mid
			}
		}
		if got := FirstYield(fy, fe, eta); !near(got, low, 1e-9) {
			t.Fatalf("got %g, bisection %g", got, low)
		}
	})
}

func TestFirstYieldOfStraightBar(t *testing.T) {
	for _, fe := range []float64{1e-6, 1, 249, 250, 251, 1e4, 1e12} {
		if got := FirstYield(250, fe, 0); !near(got, math.Min(250, fe), 1e-12) {
			t.Errorf("Fe %g: %g", fe, got)
		}
	}
}

func TestCurvesNeverExceedTheirBounds(t *testing.T) {
	const rounding = 1 + 1e-12
	rapid.Check(t, func(t *rapid.T) {
		fy := rapid.Float64Range(100e6, 1500e6).Draw(t, "yield")
		fe := fy * math.Exp(rapid.Float64Range(-12, 12).Draw(t, "log ratio"))
		eta := rapid.Float64Range(0, 5).Draw(t, "eta")
		johnson, perry, aisc := Johnson(fy, fe), FirstYield(fy, fe, eta), AISC(fy, fe)
		for name, stress := range map[string]float64{"johnson": johnson, "perry": perry, "aisc": aisc} {
			if !(stress > 0) || math.IsInf(stress, 0) {
				t.Fatalf("%s %g", name, stress)
			}
		}
		if johnson > math.Min(fy, fe)*rounding || aisc > math.Min(fy, fe)*rounding {
			t.Fatalf("johnson %g or aisc %g over yield %g or euler %g", johnson, aisc, fy, fe)
		}
		if perry > math.Min(fy, fe)*rounding {
			t.Fatalf("perry %g over yield %g or euler %g", perry, fy, fe)
		}
	})
}

// The curves take stresses and loads alike.
func TestCurvesAreHomogeneous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fy := rapid.Float64Range(100, 1000).Draw(t, "yield")
		fe := rapid.Float64Range(10, 10000).Draw(t, "euler")
		k := rapid.Float64Range(1e-6, 1e6).Draw(t, "scale")
		for name, curve := range map[string]func(a, b float64) float64{
			"johnson": Johnson, "aisc": AISC,
			"perry": func(a, b float64) float64 { return FirstYield(a, b, 0.1) },
		} {
			if !near(curve(k*fy, k*fe), k*curve(fy, fe), 1e-9) {
				t.Fatalf("%s isn't homogeneous", name)
			}
		}
	})
}

// Johnson's parabola touches Euler's curve at half the yield strength: value and
// slope agree. AISC leaves a step of 0.05 % between its branches.
func TestContinuityAtTransitions(t *testing.T) {
	const fy, e = 75.0, 29000.0
	johnson := func(x float64) float64 { return Johnson(fy, eulerStress(e, x)) }
	aisc := func(x float64) float64 { return AISC(fy, eulerStress(e, x)) }
	at := Transition(e, fy)
	if !near(johnson(at), fy/2, 1e-12) || !near(johnson(at*(1+1e-9)), johnson(at*(1-1e-9)), 1e-8) {
		t.Errorf("Johnson to Euler: %g, %g", johnson(at*(1-1e-9)), johnson(at*(1+1e-9)))
	}
	if longer := eulerStress(e, at*1.01); johnson(at*1.01) != longer || !(johnson(at*0.99) < eulerStress(e, at*0.99)) {
		t.Error("the branches meet elsewhere")
	}
	const h = 1e-4
	below, above := (johnson(at-h)-johnson(at-2*h))/h, (johnson(at+2*h)-johnson(at+h))/h
	if !near(below, above, 1e-4) || !(below < -0.5) {
		t.Errorf("slopes %g and %g", below, above)
	}
	limit := math.Pi * math.Sqrt(2.25*e/fy)
	step := aisc(limit*(1-1e-9)) - aisc(limit*(1+1e-9))
	if !(step > 0) || step > 0.0005*aisc(limit) {
		t.Errorf("AISC step %g", step)
	}
}

// Slopes by the calculus against finite differences.
func TestSlopes(t *testing.T) {
	const fy, fe, h = 75.0, 110.0, 1e-5
	slope := func(f func(float64) float64, x float64) float64 { return (f(x+h) - f(x-h)) / (2 * h) }
	x := fe / fy
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"Johnson over Fe", slope(func(fe float64) float64 { return Johnson(fy, fe) }, fe), fy * fy / (4 * fe * fe)},
		{"Euler over L", slope(func(l float64) float64 { return Euler(29000, 0.5, l) }, 30), -2 * math.Pi * math.Pi * 29000 * 0.5 / 27000},
		{"AISC over Fe", slope(func(fe float64) float64 { return AISC(fy, fe) }, fe), -math.Log(0.658) * fy * fy / (fe * fe) * math.Exp(math.Log(0.658)/x)},
		// Implicit differentiation of σ² − σ(Fy + (1+η)Fe) + FyFe = 0.
		{"Perry over η", slope(func(eta float64) float64 { return FirstYield(fy, fe, eta) }, 0.2),
			func() float64 {
				s := FirstYield(fy, fe, 0.2)
				return s * fe / (2*s - fy - 1.2*fe)
			}()},
	} {
		if !near(c.got, c.want, 1e-6) || c.want == 0 {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
}

// Bruhn, Analysis and Design of Flight Vehicle Structures, ch. C4, column
// formulas for round steel tubes; psi. Coefficients of HT 125 and the transition
// of HT 150 from memory.
var (
	bruhn4130  = stock.Handbook{Short: 79500, Coefficient: 51.9, Exponent: 1.5, Transition: 91, Long: 286e6, MaxSlenderness: 150, MaxDiameterToWall: 50}
	bruhnOther = []stock.Handbook{
		{Short: 113000, Coefficient: 11.15, Exponent: 2, Transition: 73, Long: 286e6},
		{Short: 145000, Coefficient: 18.36, Exponent: 2, Transition: 63, Long: 286e6},
		{Short: 179000, Coefficient: 27.95, Exponent: 2, Transition: 56, Long: 286e6},
	}
	bruhn1025 = stock.Handbook{Short: 36000, Coefficient: 1.172, Exponent: 2, Transition: 122, Long: 286e6}
)

// Both printed branches, away from the step where they meet; computed by hand.
func TestHandbookBranches(t *testing.T) {
	for _, c := range []struct {
		formula     stock.Handbook
		slenderness float64
		want        float64
	}{
		{bruhn4130, 1e-6, 79500}, {bruhn4130, 25, 79500 - 51.9*125}, {bruhn4130, 64, 79500 - 51.9*512}, {bruhn4130, 91, 34446},
		{bruhn4130, 100, 28600}, {bruhn4130, 150, 12711.1},
		{bruhn1025, 100, 24280}, {bruhn1025, 122, 18556}, {bruhn1025, 143, 13986.0},
	} {
		if got := Handbook(c.formula, c.slenderness); !near(got, c.want, 2e-5) {
			t.Errorf("L/ρ %g: %g psi, want %g", c.slenderness, got, c.want)
		}
	}
}

// The printed branches meet to 0.3 % for the alloy rows, and do not for 1025
// (18 556 against 19 215 psi). The strength has no step and never rises with
// length for any of them, and stays within the larger step of the printed one.
func TestHandbookNeverRisesWithLength(t *testing.T) {
	for _, c := range append(bruhnOther, bruhn4130, bruhn1025) {
		short := c.Short - c.Coefficient*math.Pow(c.Transition, c.Exponent)
		long := c.Long / (c.Transition * c.Transition)
		step := math.Abs(long-short) / short
		if c != bruhn1025 && step > 0.003 {
			t.Errorf("Fco %g: the branches are %.2f %% apart", c.Short, 100*step)
		}
		before := Handbook(c, 20)
		for x := 20.01; x < 150; x += 0.01 {
			now := Handbook(c, x)
			if now > before || before-now > 40 {
				t.Fatalf("Fco %g: from %g to %g psi at %g", c.Short, before, now, x)
			}
			before = now
		}
	}
}

package column

import (
	"math"

	"bowline/model/stock"
)

// Euler returns the elastic buckling load π²·E·I/L² [N] of a uniform pinned
// column of modulus e [Pa], second moment of area i [m⁴] and length [m].
func Euler(e, i, length float64) float64 {
	return math.Pi * math.Pi * e * i / (length * length)
}

// Transition returns the slenderness √(2π²E/Fy) where Johnson's parabola meets
// Euler's curve, at half the yield strength. Both arguments in [Pa].
func Transition(e, yield float64) float64 {
	return math.Pi * math.Sqrt(2*e/yield)
}

// The curves below are homogeneous: with yield as stress Fy and euler as stress
// π²E/(L/ρ)² they return a stress, with the loads Fy·A and π²EI/L² a load.

// Johnson returns the buckling strength by Johnson's parabola,
// Fy·(1 − Fy/(4·Fe)), up to the transition slenderness, and by Euler beyond.
// Source: Wentzell, Machine Design, ch. 3; the parabola is that of the Column
// Research Council, Fy·[1 − (L/ρ)²/(2·Cc²)].
func Johnson(yield, euler float64) float64 {
	if shortColumn(yield, euler) {
		return yield * (1 - yield/(4*euler))
	}
	return euler
}

// shortColumn reports whether Johnson's parabola holds rather than Euler.
func shortColumn(yield, euler float64) bool { return euler >= yield/2 }

// AISC returns the nominal strength of AISC 360-22, section E3:
// 0.658^(Fy/Fe)·Fy where Fy/Fe ≤ 2.25, and 0.877·Fe beyond.
func AISC(yield, euler float64) float64 {
	if yield <= 2.25*euler {
		return math.Pow(0.658, yield/euler) * yield
	}
	return 0.877 * euler
}

// FirstYield returns the strength at which the most stressed fiber of a bowed
// column yields (Perry): the smaller root of
//
//	σ² − σ·[Fy + (1 + η)·Fe] + Fy·Fe = 0
//
// with η = e0·c/ρ² for an initial bow e0 in the shape of a half sine. It never
// exceeds the lesser of yield and euler, and reaches it without a bow.
// Source: Case, Chilver & Ross, Strength of Materials and Structures, Eqs
// 18.32–18.36.
func FirstYield(yield, euler, eta float64) float64 {
	// The root in the form that loses no digits, over the ratio y = Fy/Fe.
	y, grown := yield/euler, 1+eta
	return 2 * yield / (y + grown + math.Sqrt((y-grown)*(y-grown)+4*eta*y))
}

// Handbook returns the failing stress [Pa] of a handbook's column formula at a
// slenderness. The printed branches do not quite meet: where they leave a step,
// the lower one counts until the other has come down to it, so that the strength
// never rises with length. The change is 0.3 % at most for 4130.
func Handbook(h stock.Handbook, slenderness float64) float64 {
	short := h.Short - h.Coefficient*math.Pow(math.Min(slenderness, h.Transition), h.Exponent)
	return math.Min(short, h.Long/(slenderness*slenderness))
}

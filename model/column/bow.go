package column

import (
	"fmt"
	"math"
)

// Buckled is the error for a push at or beyond the Euler load, at which the bow
// grows without bound.
type Buckled struct {
	Push  float64 // [N]
	Euler float64 // Elastic buckling load of the bar [N].
}

// Error says which push exceeds what.
func (b Buckled) Error() string {
	return fmt.Sprintf("the bar buckles: a push of %.0f N reaches its Euler load of %.0f N; it needs a shorter bar or a larger tube", b.Push, b.Euler)
}

// Bow returns the bow at mid-length under a push [N], e0/(1 − P/Pe), from the
// initial bow [m] and the Euler load [N]. A negative push is a pull and
// straightens the bar. It refuses a push that reaches the Euler load, with
// Buckled, and numbers that aren't finite or an Euler load that isn't positive.
// Source: Case, Chilver & Ross, Strength of Materials and Structures, p. 439.
func Bow(initial, push, euler float64) (float64, error) {
	if !finitePositive(euler) || math.IsNaN(initial+push) || math.IsInf(initial+push, 0) {
		return 0, fmt.Errorf("a bow of %g m, a push of %g N and an Euler load of %g N give no bow under load; give finite numbers, the Euler load above 0", initial, push, euler)
	}
	if push >= euler {
		return 0, Buckled{Push: push, Euler: euler}
	}
	return initial / (1 - push/euler), nil
}

// BowStress returns the stress P/A + P·e·c/I in the most stressed fiber [Pa]
// under a push [N] at a bow e [m]: compression positive, so a pull (a negative
// push) gives a negative one.
func BowStress(s Section, push, bow float64) float64 {
	return push/s.Area + push*bow*s.C/s.I
}

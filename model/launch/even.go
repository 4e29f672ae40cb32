package launch

import "math"

// Unevenness is how far the loads of the left and the right rear tire are apart
// through the launch,
//
//	∫ |N_l − N_r| dt / ∫ (N_l + N_r) dt
//
// from the brake's first give to the end, over the output steps: 0 when both always
// carry the same, 1 when one of them carries everything. It is 0 without a history.
func (h *History) Unevenness() float64 {
	apart, both := 0.0, 0.0
	for i, left := range h.RearLoad[Left] {
		right := h.RearLoad[Right][i]
		apart += math.Abs(left - right)
		both += left + right
	}
	if both == 0 {
		return 0
	}
	return apart / both
}

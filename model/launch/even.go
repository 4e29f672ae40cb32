package launch

import "math"

// Unevenness returns how unlike the loads of the rear tires are through a launch, as
// part of what both carry,
//
//	∫ |N_l − N_r| dt / ∫ (N_l + N_r) dt
//
// from the brake's first give to the end, by sums over the output steps, which are
// evenly spaced: 0 while left and right carry alike, 1 with everything on one side.
// Grip is in proportion to load, so thrust is as uneven. It is 0 when neither tire
// carries anything, as of a launch without a history [1].
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

package analysis

import (
	"bowline/model/car"
)

// PinionRange returns the least and the greatest turn of the housing over the
// travel, nose-up positive [rad]. None, at ride height, is among them.
func (r *Result) PinionRange() (least, greatest float64) {
	for i := range r.Travel {
		turn := r.Travel[i].Pose.Turn
		least, greatest = min(least, turn), max(greatest, turn)
	}
	return least, greatest
}

// AntiSquatRange returns the least and the greatest anti-squat of the travels
// that have one, and false where none has [1].
func (r *Result) AntiSquatRange() (least, greatest float64, ok bool) {
	for i := range r.Travel {
		s := &r.Travel[i]
		switch {
		case !s.HasAntiSquat:
		case !ok:
			least, greatest, ok = s.AntiSquat, s.AntiSquat, true
		default:
			least, greatest = min(least, s.AntiSquat), max(greatest, s.AntiSquat)
		}
	}
	return least, greatest, ok
}

// Most returns the most that one bar of each pair carries in either direction in
// a load case over the travel; zero where it is never loaded so.
func (r *Result) Most(c Case) (most [2][2]Use) {
	for i := range r.Travel {
		for _, p := range car.Pairs {
			if use, way := r.Use(p, c, &r.Travel[i]); use.Force > most[p][way].Force {
				most[p][way] = use
			}
		}
	}
	return most
}

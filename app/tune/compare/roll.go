package compare

import (
	"math"

	"bowline/app/words"
	"bowline/model/roll"
	"bowline/model/units"
)

// Rows of roll among those of ride height, below the lengths of the bars.
const (
	rowRoll = 5 + iota
	rowRollLimit
)

// writeRoll writes how stiff the bars alone are in roll, and how far the axle can roll
// before a rod end comes to its limit.
func (p *Part) writeRoll(list []words.Setup, u units.System) {
	rolls := make([]*roll.Result, len(list))
	for i := range list {
		if r, err := p.study.Roll(list[i].Result.Options.Setup); err == nil {
			rolls[i] = r
		}
	}
	known := func(value func(i int) string) func(i int) string {
		return func(i int) string {
			if rolls[0] == nil || rolls[i] == nil {
				return "—"
			}
			return value(i)
		}
	}
	stiffness := func(i int) float64 { return rolls[i].Ride.Stiffness }
	p.write(tableRide, rowRoll,
		plain(known(func(i int) string { return u.Format(units.RollRate, stiffness(i)) })),
		known(func(i int) string {
			return words.Difference(u, units.RollRate, stiffness(0), stiffness(i), "more", "less")
		}))
	limit := func(i int) float64 { return math.Abs(rolls[i].Ride.Limit) }
	p.write(tableRide, rowRollLimit,
		plain(known(func(i int) string { return words.RollLimit(rolls[i].Limits, &rolls[i].Ride, u) })),
		known(func(i int) string {
			switch was, is := rolls[0].Ride.Limited, rolls[i].Ride.Limited; {
			case !was && !is:
				return words.Same
			case !was || !is:
				return "—"
			}
			return words.Difference(u, units.Angle, limit(0), limit(i), "more", "less")
		}))
}

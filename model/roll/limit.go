package roll

import (
	"math"

	"bowline/model/launch"
)

// End names a rod end.
type End struct {
	Bar     launch.RodID
	Housing bool // that on the housing; otherwise that on the chassis
}

// Limits are the greatest misalignments of the rod ends by bar [rad]; 0: not checked.
type Limits [len(launch.Bars)]float64

// String names the end, as in "lower right bar, housing".
func (e End) String() string {
	if e.Housing {
		return e.Bar.String() + ", housing"
	}
	return e.Bar.String() + ", chassis"
}

const (
	// MaxRoll is the greatest roll at which a limit is looked for [rad].
	MaxRoll = math.Pi / 4
	// limitSteps is in how many steps from one pose to the next that is.
	limitSteps = 22
	// limitBisections narrow a step down to less than a ten-thousandth of a degree.
	limitBisections = 15
)

// Limit returns how far the axle can roll at a travel [m], to the side where it goes
// less far, before a rod end comes to its limit, which end that is and to which side:
// above zero with the left side up [rad]. It reports false when no end has a limit, or
// none comes to it before the bars' reach ends or the axle has rolled by 45°.
func (l *Linkage) Limit(travel float64, limits Limits) (roll float64, end End, ok bool) {
	for _, side := range []float64{1, -1} {
		if angle, at, found := l.limit(travel, side, limits); found && (!ok || angle < math.Abs(roll)) {
			roll, end, ok = side*angle, at, true
		}
	}
	return roll, end, ok
}

// limit is Limit to one side.
func (l *Linkage) limit(travel, side float64, limits Limits) (float64, End, bool) {
	if limits == (Limits{}) {
		return 0, End{}, false
	}
	var at placement
	if l.follow(&at, travel, 0) != nil {
		return 0, End{}, false
	}
	if end, over := limits.broken(l.misalignment(&at)); over {
		return 0, end, true
	}
	rolled := func(from placement, angle float64) (placement, bool) {
		from.at[rolling] = side * angle
		return from, l.relax(&from) == nil
	}
	for n := range limitSteps {
		inside, outside := MaxRoll*float64(n)/limitSteps, MaxRoll*float64(n+1)/limitSteps
		next, ok := rolled(at, outside)
		if !ok {
			return 0, End{}, false
		}
		end, over := limits.broken(l.misalignment(&next))
		if !over {
			at = next
			continue
		}
		for range limitBisections {
			middle := (inside + outside) / 2
			between, ok := rolled(at, middle)
			if !ok {
				return 0, End{}, false
			}
			if e, over := limits.broken(l.misalignment(&between)); over {
				outside, end = middle, e
			} else {
				inside, at = middle, between
			}
		}
		return outside, end, true
	}
	return 0, End{}, false
}

// broken returns the rod end that is farthest beyond its limit, and whether one is.
func (limits *Limits) broken(m Misalignment) (worst End, over bool) {
	most := 0.0
	for k, bar := range launch.Bars {
		for end, angle := range m[k] {
			if beyond := angle - limits[k]; limits[k] > 0 && beyond >= most {
				most, worst, over = beyond, End{bar, end == 1}, true
			}
		}
	}
	return worst, over
}

package holes

import (
	"math"

	"bowline/model/car"
	"bowline/model/units"
)

// Target is what a choice of holes is wanted to have.
type Target struct {
	AntiSquat   [2]float64 // least and greatest at ride height, 1 is 100 % [1]
	Ahead       [2]float64 // instant center ahead of the rear contact at ride height [m]
	Above       [2]float64 // instant center above the ground at ride height [m]
	PinionLimit float64    // most that the pinion may turn from ride height over the travel [rad]; 0: no limit
	LiftLimit   float64    // most that the front tires may come off the ground in the launch [m]; 0: no limit
}

// TargetOf returns the target that a car's check gives.
func TargetOf(c *car.Car) Target {
	k := &c.Check
	return Target{AntiSquat: k.TargetAntiSquat, Ahead: k.TargetICX, Above: k.TargetICZ, PinionLimit: k.PinionLimit, LiftLimit: k.LiftLimit}
}

const (
	// Farthest is the most that anti-squat, instant center and pinion each
	// count in a distance: a hundred times half of what the target allows.
	// Beyond it, nearer is no better.
	Farthest = 100.0

	// Half widths of an interval below which it counts as this wide, so that a
	// target typed as one value does not make its quantity count alone. About
	// what setting a hole by 1/16 in does.
	leastAntiSquat = 0.02              // [1]
	leastLength    = 0.25 * units.Inch // [m]
	leastPinion    = math.Pi / 1800    // a tenth of a degree [rad]

	// slack is the greatest distance that counts as none, above rounding [1].
	slack = 1e-9
)

// mostDistance is the distance of holes that miss everything.
var mostDistance = grid(Farthest*math.Sqrt(3), slack)

// Off is by how much a combination misses each part of a target, below it
// negative and above it positive; 0 inside and where there is no value.
type Off struct {
	AntiSquat float64 // [1]
	Ahead     float64 // [m]
	Above     float64 // [m]
	Pinion    float64 // turned beyond the limit, never negative [rad]
}

// Distance returns how far a usable combination is from the target, 0 inside
// all of it, and by how much it misses each part. It is
//
//	√(a² + c² + p²)
//
// where a is how far anti-squat is outside its interval over half the
// interval's width, c = √(x² + z²) the same of the instant center, and p how
// far the pinion turns beyond its limit over the limit. An interval of nearly no
// width counts as a little wider. Each of a, c and p is Farthest at most. Bars
// that come parallel send their instant center away without bound, and a line of
// action that comes to stand upright sends anti-squat there: without the one c
// is Farthest, without the other a is.
func (t Target) Distance(c *Combination) (distance float64, off Off) {
	distance, _, off = t.distance(c)
	return distance, off
}

// parts are what the parts of a target add to a distance.
type parts struct {
	antiSquat, ahead, above, center, pinion float64
}

func (t Target) distance(c *Combination) (float64, parts, Off) {
	var p parts
	var off Off
	if p.antiSquat = Farthest; c.HasAntiSquat {
		p.antiSquat, off.AntiSquat = miss(c.AntiSquat, t.AntiSquat, leastAntiSquat)
	}
	if p.center = Farthest; c.HasInstantCenter {
		p.ahead, off.Ahead = miss(c.InstantCenter.X, t.Ahead, leastLength)
		p.above, off.Above = miss(c.InstantCenter.Y, t.Above, leastLength)
		p.center = min(math.Hypot(p.ahead, p.above), Farthest)
	}
	if t.PinionLimit > 0 {
		width := max(t.PinionLimit, leastPinion)
		if over := c.PinionChange() - t.PinionLimit; over > slack*width {
			p.pinion, off.Pinion = min(over/width, Farthest), over
		}
	}
	return grid(math.Hypot(math.Hypot(p.antiSquat, p.center), p.pinion), slack), p, off
}

// miss returns how far x is outside an interval over half its width, and by how
// much.
func miss(x float64, interval [2]float64, least float64) (share, by float64) {
	half := max((interval[1]-interval[0])/2, least)
	switch {
	case interval[0]-x > slack*half:
		by = x - interval[0]
	case x-interval[1] > slack*half:
		by = x - interval[1]
	}
	return min(math.Abs(by)/half, Farthest), by
}

// grid rounds to multiples of a step, so that rounding makes no difference
// between equals.
func grid(x, step float64) float64 { return math.Round(x/step) * step }

// PinionChange returns the most that the pinion turns from ride height over the
// travel, a magnitude [rad].
func (c *Combination) PinionChange() float64 {
	return max(math.Abs(c.PinionRange[0]), math.Abs(c.PinionRange[1]))
}

package plotting

import (
	"math"

	"bowline/model/units"
)

// Span is a range of values [SI].
type Span struct{ Min, Max float64 }

// nowhere is a span that contains nothing and grows by what it is given.
func nowhere() Span { return Span{math.Inf(1), math.Inf(-1)} }

func everywhere() Span { return Span{math.Inf(-1), math.Inf(1)} }

// Contains reports whether x is in the span, ends included.
func (s Span) Contains(x float64) bool { return x >= s.Min && x <= s.Max }

func (s Span) empty() bool     { return !(s.Min <= s.Max) }
func (s Span) length() float64 { return s.Max - s.Min }

// with returns the span grown to contain the values.
func (s Span) with(values ...float64) Span {
	for _, v := range values {
		s.Min, s.Max = math.Min(s.Min, v), math.Max(s.Max, v)
	}
	return s
}

// clamp returns the value of the span nearest to x.
func (s Span) clamp(x float64) float64 { return math.Max(s.Min, math.Min(s.Max, x)) }

// clip returns the part of the span within another.
func (s Span) clip(other Span) Span {
	return Span{math.Max(s.Min, other.Min), math.Min(s.Max, other.Max)}
}

// Frame is what the axes of a drawn chart show. Passed on to the next drawing
// it keeps the axes from jumping: an axis stays while what must be in sight
// fits into it and fills at least half of it.
type Frame struct {
	Key   string // of the chart
	Units units.System
	X, Y  Span // [SI]
	// Right is what one unit of the right axis is on the left one [SI over SI];
	// 0 for a chart without a right axis.
	Right float64
}

// axis describes one axis of a chart.
type axis struct {
	label     string // without the unit
	quantity  units.Quantity
	low, high string // words for its two ends or halves
	lowInk    ink    // of the words for halves
	highInk   ink
	unsigned  bool // ticks are magnitudes; the words tell the side
	tight     bool // ends close to the data rather than on round numbers
	sight     Span // what must be in sight
	least     float64
}

const (
	// held is the part of a kept axis that the data must fill.
	held = 0.5
	// tickCount is the largest number of intervals between ticks.
	tickCount = 7
	// smallestHalf is the least part of an axis with two sides that either
	// takes, so that its word has room.
	smallestHalf = 0.25
)

// frame returns what the axes show.
func (c *Chart) frame(s *Style) Frame {
	old := s.Frame
	if old.Key != c.Key || old.Units != s.Units {
		old.X, old.Y = nowhere(), nowhere()
	}
	f := Frame{Key: c.Key, Units: s.Units, X: c.x.span(s.Units, old.X), Y: c.y.span(s.Units, old.Y)}
	if c.right != nil {
		f.Right = c.rightScale(&f, &old)
	}
	return f
}

// rightScale fits the right axis to the left one. Their zeros are one, and so
// are their ticks: a step on the left is a round step on the right, the
// smallest that leaves all in sight. The old one stays while it is at most twice that.
func (c *Chart) rightScale(f, old *Frame) float64 {
	need, by := c.right.wide(), c.y.step(f.Units, f.Y)
	var least float64
	if need.Max > 0 {
		least = need.Max / f.Y.Max * by
	}
	if need.Min < 0 {
		least = math.Max(least, need.Min/f.Y.Min*by)
	}
	factor := f.Units.Factor(c.right.quantity)
	fresh, _ := round(least / factor * (1 - 1e-9))
	if was := by / old.Right; old.Y == f.Y && was >= least && was*held <= fresh*factor*(1+1e-9) {
		return old.Right
	}
	return by / (fresh * factor)
}

// span returns what the axis shows: the old span where it still serves, else
// what must be in sight with some air.
func (a *axis) span(s units.System, old Span) Span {
	need := a.wide()
	if old.Contains(need.Min) && old.Contains(need.Max) && need.length() >= held*old.length() {
		return old
	}
	fresh := a.aired(need)
	if a.tight {
		return fresh
	}
	// Half a tick outward, but never across zero.
	half := a.step(s, fresh) / 2
	return Span{math.Floor(fresh.Min/half+0.01) * half, math.Ceil(fresh.Max/half-0.01) * half}
}

// wide returns what must be in sight, at least the least length.
func (a *axis) wide() Span {
	s := a.sight
	if missing := a.least - s.length(); missing > 0 {
		if s.Min == 0 {
			return Span{0, a.least}
		}
		return Span{s.Min - missing/2, s.Max + missing/2}
	}
	return s
}

// aired returns the span with air at its ends; an end at zero needs none on an
// axis that counts from there.
func (a *axis) aired(s Span) Span {
	air := 0.05 * s.length()
	if a.tight {
		air = 0.02 * s.length()
	}
	low, high := s.Min-air, s.Max+air
	if !a.tight && s.Min == 0 {
		low = 0
	}
	if !a.tight && s.Max == 0 {
		high = 0
	}
	if a.unsigned && low < 0 && high > 0 {
		high = math.Max(high, -low*smallestHalf/(1-smallestHalf))
		low = math.Min(low, -high*smallestHalf/(1-smallestHalf))
	}
	return Span{low, high}
}

// step returns the distance of ticks, 1, 2, 2.5 or 5 times a power of ten of
// the unit that is factor SI units, and the decimals to write them with.
func step(s Span, factor float64) (by float64, decimals int) {
	return round(s.length() / factor / tickCount)
}

// step returns the distance of ticks on an axis that shows a span [SI].
func (a *axis) step(s units.System, shown Span) float64 {
	factor := s.Factor(a.quantity)
	by, _ := step(shown, factor)
	return by * factor
}

// round returns the least 1, 2, 2.5 or 5 times a power of ten that is not below
// x, and the decimals to write its multiples with.
func round(x float64) (by float64, decimals int) {
	power := math.Floor(math.Log10(x))
	for _, m := range []float64{1, 2, 2.5, 5} {
		by = m * math.Pow(10, power)
		if by >= x {
			if m == 2.5 {
				power--
			}
			return by, max(0, -int(power))
		}
	}
	return math.Pow(10, power+1), max(0, -int(power)-1)
}

// tick is a labeled place on an axis.
type tick struct {
	at    float64 // [SI]
	label string
}

// ticks returns the ticks of an axis that shows a span, in ascending order.
func (a *axis) ticks(s units.System, shown Span) []tick {
	factor := s.Factor(a.quantity)
	by, decimals := step(shown, factor)
	first := math.Ceil(shown.Min/factor/by - 1e-9)
	last := math.Floor(shown.Max/factor/by + 1e-9)
	list := make([]tick, 0, tickCount+1)
	for i := first; i <= last; i++ {
		list = append(list, tick{i * by * factor, number(a.shown(i*by), decimals)})
	}
	return list
}

// shown is what is written for a value.
func (a *axis) shown(value float64) float64 {
	if a.unsigned {
		return math.Abs(value)
	}
	return value
}

// rightTicks returns what the right axis has at the ticks of the left one.
func (c *Chart) rightTicks(f *Frame) []tick {
	factor := f.Units.Factor(c.right.quantity)
	by := c.y.step(f.Units, f.Y) / f.Right / factor
	_, decimals := round(by * (1 - 1e-9))
	list := c.y.ticks(f.Units, f.Y)
	for i := range list {
		list[i].label = number(c.right.shown(list[i].at/f.Right/factor), decimals)
	}
	return list
}

// title returns the axis label with its unit.
func (a *axis) title(s units.System) string {
	if symbol := s.Symbol(a.quantity); symbol != "" {
		return a.label + ", " + symbol
	}
	return a.label
}

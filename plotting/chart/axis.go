package chart

import (
	"math"

	"bowline/model/units"
)

// Frame is what the axes of a drawn chart show. Passed on to the next drawing
// it keeps the axes from jumping: an axis stays while what must be in sight
// fits into it and fills at least half of it.
type Frame struct {
	Key   Key // of the chart
	Units units.System
	X, Y  Span // [SI]
	// Right is what one unit of the right axis is on the left one [SI over SI];
	// 0 for a chart without a right axis.
	Right float64
}

// onLeft returns a value as the left axis has it.
func (f *Frame) onLeft(y float64, right bool) float64 {
	if right {
		return y * f.Right
	}
	return y
}

// Axis describes one axis of a chart.
type Axis struct {
	Label     string // without the unit
	Quantity  units.Quantity
	Low, High string // words for its two ends or halves
	LowInk    Ink    // of the words for halves
	HighInk   Ink
	Unsigned  bool    // numbers are magnitudes; the words say which side
	Tight     bool    // ends close to the data rather than on round numbers
	Sight     Span    // what must be in sight [SI]
	Least     float64 // least length of what is in sight [SI]
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

// Frame returns what the axes show.
func (c *Chart) Frame(s *Style) Frame {
	old := s.Frame
	if old.Key != c.Key || old.Units != s.Units {
		old.X, old.Y = Nowhere(), Nowhere()
	}
	f := Frame{Key: c.Key, Units: s.Units, X: c.X.span(s.Units, old.X), Y: c.Y.span(s.Units, old.Y)}
	if c.Right != nil {
		f.Right = c.rightScale(&f, &old)
	}
	return f
}

// rightScale fits the right axis to the left one. Their zeros are one, and so
// are their ticks: a step on the left is a round step on the right, the
// smallest that leaves all in sight. The old one stays while it is at most twice that.
func (c *Chart) rightScale(f, old *Frame) float64 {
	need, by := c.Right.Need(), c.Y.step(f.Units, f.Y)
	var least float64
	if need.Max > 0 {
		least = need.Max / f.Y.Max * by
	}
	if need.Min < 0 {
		least = math.Max(least, need.Min/f.Y.Min*by)
	}
	factor := f.Units.Factor(c.Right.Quantity)
	fresh, _ := round(least / factor * (1 - 1e-9))
	if was := by / old.Right; old.Y == f.Y && was >= least && was*held <= fresh*factor*(1+1e-9) {
		return old.Right
	}
	return by / (fresh * factor)
}

// span returns what the axis shows: the old span where it still serves, else
// what must be in sight with some air.
func (a *Axis) span(s units.System, old Span) Span {
	need := a.Need()
	if old.Contains(need.Min) && old.Contains(need.Max) && need.Length() >= held*old.Length() {
		return old
	}
	fresh := a.aired(need)
	if a.Tight {
		return fresh
	}
	// Half a tick outward, but never across zero.
	half := a.step(s, fresh) / 2
	return Span{math.Floor(fresh.Min/half+0.01) * half, math.Ceil(fresh.Max/half-0.01) * half}
}

// Need returns what must be in sight, at least the least length.
func (a *Axis) Need() Span {
	s := a.Sight
	if missing := a.Least - s.Length(); missing > 0 {
		if s.Min == 0 {
			return Span{0, a.Least}
		}
		return Span{s.Min - missing/2, s.Max + missing/2}
	}
	return s
}

// ShareZero returns the left span, grown so that a right one with the same zero
// can use as much of the height.
func ShareZero(left, right Span) Span {
	scale := math.Max(left.Max, -left.Min) / math.Max(right.Max, -right.Min)
	return left.With(right.Min*scale, right.Max*scale)
}

// aired returns the span with air at its ends; an end at zero needs none on an
// axis that counts from there.
func (a *Axis) aired(s Span) Span {
	air := 0.05 * s.Length()
	if a.Tight {
		air = 0.02 * s.Length()
	}
	low, high := s.Min-air, s.Max+air
	if !a.Tight && s.Min == 0 {
		low = 0
	}
	if !a.Tight && s.Max == 0 {
		high = 0
	}
	if a.Unsigned && low < 0 && high > 0 {
		high = math.Max(high, -low*smallestHalf/(1-smallestHalf))
		low = math.Min(low, -high*smallestHalf/(1-smallestHalf))
	}
	return Span{low, high}
}

// step returns the distance of ticks, 1, 2, 2.5 or 5 times a power of ten of
// the unit that is factor SI units, and the decimals to write them with.
func step(s Span, factor float64) (by float64, decimals int) {
	return round(s.Length() / factor / tickCount)
}

// step returns the distance of ticks on an axis that shows a span [SI].
func (a *Axis) step(s units.System, shown Span) float64 {
	factor := s.Factor(a.Quantity)
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
func (a *Axis) ticks(s units.System, shown Span) []tick {
	factor := s.Factor(a.Quantity)
	by, decimals := step(shown, factor)
	first := math.Ceil(shown.Min/factor/by - 1e-9)
	last := math.Floor(shown.Max/factor/by + 1e-9)
	list := make([]tick, 0, tickCount+1)
	for i := first; i <= last; i++ {
		list = append(list, tick{i * by * factor, units.Decimal(a.shown(i*by), decimals)})
	}
	return list
}

// shown is what is written for a value.
func (a *Axis) shown(value float64) float64 {
	if a.Unsigned {
		return math.Abs(value)
	}
	return value
}

// rightTicks returns what the right axis has at the ticks of the left one.
func (c *Chart) rightTicks(f *Frame) []tick {
	factor := f.Units.Factor(c.Right.Quantity)
	by := c.Y.step(f.Units, f.Y) / f.Right / factor
	_, decimals := round(by * (1 - 1e-9))
	list := c.Y.ticks(f.Units, f.Y)
	for i := range list {
		list[i].label = units.Decimal(c.Right.shown(list[i].at/f.Right/factor), decimals)
	}
	return list
}

// title returns the axis label with its unit.
func (a *Axis) title(s units.System) string {
	if symbol := s.Symbol(a.Quantity); symbol != "" {
		return a.Label + ", " + symbol
	}
	return a.Label
}

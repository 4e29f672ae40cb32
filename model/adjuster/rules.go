package adjuster

import (
	"bowline/model/car"
	"bowline/model/units"
)

const inch = units.Inch

// standard is the length of external thread of rod ends AS81935/1A by the
// thread's nominal diameter [m].
var standard = []struct{ diameter, length float64 }{
	{0.5 * inch, 1.468 * inch},
	{0.625 * inch, 1.562 * inch},
	{0.75 * inch, 1.687 * inch},
	{0.875 * inch, 2.000 * inch},
	{1.25 * inch, 2.343 * inch},
}

// ThreadLength returns the length of a rod end's thread by its nominal diameter
// [m]: that of AS81935/1A for 1/2, 5/8, 3/4, 7/8 and 1 1/4 in, linear between
// them, and in proportion to the diameter below and above: 2.94 and 1.87
// diameters.
func ThreadLength(diameter float64) float64 {
	first, last := standard[0], standard[len(standard)-1]
	switch {
	case diameter <= first.diameter:
		return diameter * first.length / first.diameter
	case diameter >= last.diameter:
		return diameter * last.length / last.diameter
	}
	i := 1
	for diameter > standard[i].diameter {
		i++
	}
	a, b := standard[i-1], standard[i]
	return a.length + (diameter-a.diameter)/(b.diameter-a.diameter)*(b.length-a.length)
}

// JamNut returns the thickness of a jam nut by the thread's nominal diameter,
// 9/16 of it [m]; common practice.
func JamNut(diameter float64) float64 { return diameter * 9 / 16 }

// Of returns a pair's bars in c, with its rules where an input is 0:
// ThreadLength and JamNut of the thread's diameter, and the length between the
// holes of the first setup as the one that the bars were fitted at. It panics
// when that length is asked for and the setup or one of its holes does not
// exist.
func Of(c *car.Car, p car.Pair) Bar {
	tube, threads := p.Bar(c), p.Threads(c)
	pitch, _ := tube.Pitch()
	diameter, _ := tube.ThreadDiameter()
	b := Bar{
		Pitch: pitch, Diameter: diameter,
		ThreadLength: threads.Length, JamNut: threads.JamNut, Shown: threads.Shown, Fitted: c.FittedLength(p),
	}
	if b.ThreadLength == 0 {
		b.ThreadLength = ThreadLength(diameter)
	}
	if b.JamNut == 0 {
		b.JamNut = JamNut(diameter)
	}
	return b
}

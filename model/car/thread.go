package car

import (
	"regexp"
	"slices"
	"strconv"

	"bowline/model/units"
)

// Threads are the adjusters of a bar: a rod end screwed into each end of its
// tube, held by a jam nut between the rod end's shoulder and the tube. Both ends
// are alike.
type Threads struct {
	Length float64 // threaded part of a rod end's shank, shoulder to tip [m]; 0: a rule from the thread's diameter
	JamNut float64 // thickness of a jam nut [m]; 0: 9/16 of the thread's diameter
	Shown  float64 // threads to be seen at each end between shoulder and jam nut when the bar is Fitted long, a count
	Fitted float64 // pin to pin when Shown was counted [m]; 0: the length in the first setup
}

// Threads returns what the pair's bars have at each end in c.
func (p Pair) Threads(c *Car) *Threads { return &p.Bar(c).Threads }

const (
	// defaultPitch is that of a 16 per inch thread [m].
	defaultPitch = units.Inch / 16
	// defaultDiameter is that of a 3/4 in thread [m].
	defaultDiameter = 0.75 * units.Inch
)

// A rod end's thread has a pitch and a diameter between these [m]; other numbers
// in a name mean something else.
const (
	leastPitch, mostPitch       = 0.2e-3, 7e-3
	leastDiameter, mostDiameter = 3e-3, 4 * units.Inch
)

// ThreadDiameter returns the nominal diameter of the rod ends' thread as their
// name has it, as in "3/4-16", "1 1/4-12", "1.25-12" or "M20x1.5" [m], or
// 3/4 in, and whether the name has one.
func (b Bar) ThreadDiameter() (diameter float64, named bool) {
	if d, _ := b.thread(); d > 0 {
		return d, true
	}
	return defaultDiameter, false
}

// Pitch returns the pitch of the rod ends' thread as their name has it [m], or
// that of 16 threads per inch, and whether the name has one.
func (b Bar) Pitch() (pitch float64, named bool) {
	if _, p := b.thread(); p > 0 {
		return p, true
	}
	return defaultPitch, false
}

// Lead returns by how much one turn lengthens the bar: two pitches, since the
// threads at its ends are left-hand and right-hand [m].
func (b Bar) Lead() float64 {
	pitch, _ := b.Pitch()
	return 2 * pitch
}

// The forms of a thread's name.
var (
	// metric is a diameter and a pitch in millimeters.
	metric = regexp.MustCompile(`(?i)\bM\s*(\d+(?:\.\d+)?)(?:\s*[x×-]\s*(\d+(?:\.\d+)?))?`)
	// fractional is a diameter in inches, as in "3/4" or "1 1/4", and the threads
	// per inch.
	fractional = regexp.MustCompile(`(?:(\d+)(?:\s+|\s*-\s*))?\b(\d+)/(\d+)(?:\s*(?:"|in\.?))?(?:\s*-\s*(\d+(?:\.\d+)?))?`)
	// decimalInch is a diameter in inches as in "1" or "1.25" and the threads per
	// inch.
	decimalInch = regexp.MustCompile(`((?:\d*\.)?\d+)(?:\s*(?:"|in\.?))?\s*-\s*(\d+(?:\.\d+)?)`)
)

// thread reads the rod ends' thread from their name [m]; 0 for what the name
// does not have.
func (b Bar) thread() (diameter, pitch float64) {
	if m := metric.FindStringSubmatch(b.RodEnd); m != nil {
		return plausible(1e-3*parsed(m[1]), 1e-3*parsed(m[2]))
	}
	if all := fractional.FindAllStringSubmatch(b.RodEnd, -1); all != nil {
		// The bore may stand before the thread, which has its threads per inch.
		m := all[max(0, slices.IndexFunc(all, func(m []string) bool { return m[4] != "" }))]
		return plausible((parsed(m[1])+parsed(m[2])/parsed(m[3]))*units.Inch, units.Inch/parsed(m[4]))
	}
	if m := decimalInch.FindStringSubmatch(b.RodEnd); m != nil {
		return plausible(parsed(m[1])*units.Inch, units.Inch/parsed(m[2]))
	}
	return 0, 0
}

// parsed reads digits; nothing, and more than a float64 holds, give 0.
func parsed(digits string) float64 {
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return 0
	}
	return x
}

// plausible returns 0 for both when no rod end has such a diameter, and for a
// pitch that none has.
func plausible(diameter, pitch float64) (float64, float64) {
	if !(diameter >= leastDiameter && diameter <= mostDiameter) {
		return 0, 0
	}
	if !(pitch >= leastPitch && pitch <= mostPitch) {
		pitch = 0
	}
	return diameter, pitch
}

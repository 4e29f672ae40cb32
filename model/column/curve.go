package column

import (
	"fmt"
	"strconv"
	"strings"
)

// Curve is a choice of column curve: how the strength in push falls with
// length. The zero value is the default.
type Curve int

// The column curves. Whatever is chosen, first yield under the initial bow
// limits the push too.
const (
	JohnsonEuler  Curve = iota // Johnson's parabola for short columns, Euler beyond.
	PerryCurve                 // First yield under the initial bow, by itself.
	AISCCurve                  // AISC 360-22 section E3.
	HandbookCurve              // The handbook formula of the material.
)

// curves holds what is known of each curve, in the order of the constants.
var curves = [...]struct{ file, title, text, limits string }{
	JohnsonEuler: {
		"johnson-euler", "Johnson and Euler",
		"A straight tube. A short one fails as its steel starts to yield (Johnson's parabola), a long one bends out elastically (Euler). The two meet at half the yield strength.",
		"Any slenderness.",
	},
	PerryCurve: {
		"perry", "Perry, first yield",
		"A tube that is bowed from the start by the crookedness given. It counts as failed when its most stressed fiber yields, so nothing bends for good.",
		"Any slenderness; without crookedness it is the lesser of yield and Euler.",
	},
	AISCCurve: {
		"aisc-e3", "AISC 360-22 E3",
		"The curve that steel buildings are designed by. It allows for a bow of one thousandth of the length and for stresses locked in by rolling and welding.",
		"Best kept to a slenderness of 200.",
	},
	HandbookCurve: {
		"handbook-4130", "Aircraft handbook, 4130 tube",
		"The formula that aircraft handbooks print for normalized 4130 round tube (the form of MIL-HDBK-5). It may lie above the yield strength in very short bars; first yield limits those.",
		"Only for a material that has such a formula, a slenderness up to 150 and an OD below 50 walls.",
	},
}

// Curves lists the curves, the default first.
func Curves() []Curve {
	all := make([]Curve, len(curves))
	for i := range all {
		all[i] = Curve(i)
	}
	return all
}

// ParseCurve returns the curve of a name as car files write it.
func ParseCurve(name string) (Curve, error) {
	names := make([]string, len(curves))
	for i, curve := range curves {
		if curve.file == name {
			return Curve(i), nil
		}
		names[i] = strconv.Quote(curve.file)
	}
	return JohnsonEuler, fmt.Errorf("column curve %q is unknown; use %s", name, strings.Join(names, ", "))
}

// valid reports whether c is one of the constants.
func (c Curve) valid() bool { return c >= 0 && int(c) < len(curves) }

// String returns the name that car files use, such as "johnson-euler".
func (c Curve) String() string {
	if !c.valid() {
		return fmt.Sprintf("Curve(%d)", int(c))
	}
	return curves[c].file
}

// Title returns a short name for the screen.
func (c Curve) Title() string {
	if !c.valid() {
		return c.String()
	}
	return curves[c].title
}

// Describe returns what the curve stands for and where it holds, in words for
// the screen.
func (c Curve) Describe() string {
	if !c.valid() {
		return c.String()
	}
	return curves[c].text + " " + curves[c].limits
}

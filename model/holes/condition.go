package holes

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bowline/model/units"
)

// Condition is what a column's values have to meet, as a person types it. The
// zero value is met by anything. Values are compared as they are shown, so that
// what is read on screen is what is held against it: "3" is met by whatever is
// shown as 3, and "<5" by nothing that is shown as 5.
type Condition struct {
	text        string
	quantity    units.Quantity
	least, most *bound // nil where there is none
}

// bound is one end of what a condition lets pass.
type bound struct {
	shop     float64      // in the unit of system
	system   units.System // of the unit that was typed
	typed    int          // decimals that were
	decimals int          // that values are rounded to before they are compared
	strict   bool         // the bound itself does not pass
}

// ParseCondition reads a condition for a quantity whose numbers are in the unit
// of s unless they name another unit of it:
//
//	                 anything, missing values too
//	<5   <= 5        less than 5, at most 5
//	>100   >= 100    more than 100, at least 100
//	100 to 160       both ends included; 100..160 and 100–160 do as well
//	3   =3           what is shown as 3
//
// A decimal comma is read as a point. The error says what is wrong with the
// text and what would be right.
func ParseCondition(text string, q units.Quantity, s units.System) (Condition, error) {
	return parseCondition(text, q, s, func(s units.System) int { return s.Decimals(q) })
}

// examples are what error messages offer.
const examples = "write <5, >100, 100 to 160 or 3"

// The forms of a condition. A number is anything that is not part of a form;
// bounded looks at it.
var (
	comparison = regexp.MustCompile(`^(<=|>=|≤|≥|<|>|=)(.*)$`)
	span       = regexp.MustCompile(`^(.*?\S)\s*(?:to|\.\.\.?|…|–)\s*(\S.*)$`)
)

// parseCondition reads a condition for values shown with so many decimals.
func parseCondition(text string, q units.Quantity, s units.System, decimals func(units.System) int) (Condition, error) {
	text = strings.TrimSpace(text)
	c := Condition{text: text, quantity: q}
	number := func(typed string) (*bound, error) { return bounded(text, typed, q, s, decimals) }
	var err error
	if text == "" {
		return c, nil
	}
	if m := comparison.FindStringSubmatch(text); m != nil {
		b, err := number(m[2])
		if err != nil {
			return Condition{}, err
		}
		b.strict = m[1] == "<" || m[1] == ">"
		if m[1] != ">" && m[1] != ">=" && m[1] != "≥" {
			c.most = b
		}
		if m[1] != "<" && m[1] != "<=" && m[1] != "≤" {
			c.least = b
		}
		return c, nil
	}
	if m := span.FindStringSubmatch(text); m != nil {
		if c.least, err = number(m[1]); err != nil {
			return Condition{}, err
		}
		if c.most, err = number(m[2]); err != nil {
			return Condition{}, err
		}
		if c.least.si(q) > c.most.si(q) {
			return Condition{}, fmt.Errorf("‘%s’ begins with the greater number; write %s to %s", text, strings.TrimSpace(m[2]), strings.TrimSpace(m[1]))
		}
		return c, nil
	}
	if c.least, err = number(text); err != nil {
		return Condition{}, err
	}
	c.most = c.least
	return c, nil
}

// typedNumber is a number with point or comma and perhaps a unit.
var typedNumber = regexp.MustCompile(`^([+\-−]?)\s*(\d*)(?:([.,])(\d*))?\s*([^\d\s.,+\-−]\D*)?$`)

// bounded reads one number of a condition.
func bounded(text, typed string, q units.Quantity, s units.System, decimals func(units.System) int) (*bound, error) {
	typed = strings.TrimSpace(typed)
	m := typedNumber.FindStringSubmatch(typed)
	switch {
	case typed == "":
		return nil, fmt.Errorf("‘%s’ lacks a number; %s", text, examples)
	case m == nil || m[2]+m[4] == "":
		return nil, fmt.Errorf("‘%s’ is no condition; %s", text, examples)
	case m[3] == "," && len(m[4]) == 3 && m[2] != "" && m[2][0] != '0' && len(m[2]) <= 3:
		return nil, fmt.Errorf("‘%s,%s’ can be read two ways; write %[1]s%[2]s or %[1]s.%[2]s", m[2], m[4])
	}
	system, known := unitOf(m[5], q, s)
	if !known {
		return nil, fmt.Errorf("‘%s’ is no unit that fits here; %s", m[5], unitsOf(q, s))
	}
	x, err := strconv.ParseFloat("0"+m[2]+"."+m[4]+"0", 64)
	b := &bound{shop: x, system: system, typed: len(m[4]), decimals: max(decimals(system), len(m[4]))}
	if m[1] == "-" || m[1] == "−" {
		b.shop = -b.shop
	}
	// Beyond so many digits a float64 has no decimals to round to.
	if si := b.si(q); err != nil || len(m[4]) > mostDecimals || math.IsInf(si, 0) || math.Abs(b.shop) > mostShop {
		return nil, fmt.Errorf("‘%s’ has more digits than can be compared; %s", typed, examples)
	}
	return b, nil
}

const (
	mostDecimals = 9
	mostShop     = 1e9
)

// unitOf returns the system that a typed unit belongs to; none is that of s.
func unitOf(typed string, q units.Quantity, s units.System) (units.System, bool) {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return s, true
	}
	// Where both systems have the same unit it is that of s.
	for _, system := range []units.System{s, units.US, units.SI} {
		if strings.EqualFold(typed, system.Symbol(q)) {
			return system, true
		}
	}
	return s, false
}

// unitsOf says which units may be typed.
func unitsOf(q units.Quantity, s units.System) string {
	names := []string{s.Symbol(q)}
	for _, system := range []units.System{units.US, units.SI} {
		if !slices.Contains(names, system.Symbol(q)) {
			names = append(names, system.Symbol(q))
		}
	}
	if names[0] == "" {
		return "write the number alone"
	}
	return "write " + strings.Join(names, " or ") + ", or none for " + names[0]
}

// si returns the bound in SI.
func (b *bound) si(q units.Quantity) float64 { return b.system.ToSI(q, b.shop) }

// shown returns a value as it is shown beside the bound, a number in its unit.
func (b *bound) shown(q units.Quantity, si float64) float64 {
	p := math.Pow(10, float64(b.decimals))
	if x := math.Round(b.system.FromSI(q, si)*p) / p; !math.IsInf(x, 0) {
		return x
	}
	return b.system.FromSI(q, si)
}

// Any tells whether everything meets the condition.
func (c Condition) Any() bool { return c.least == nil && c.most == nil }

// String returns the condition as it was typed, without spaces around it.
func (c Condition) String() string { return c.text }

// In writes the condition for a reader of a unit system: as it was typed, or
// with the units of its numbers where they are another system's. Parsed for s it
// is the same condition.
func (c Condition) In(s units.System) string {
	own := func(b *bound) bool { return b == nil || b.system.Symbol(c.quantity) == s.Symbol(c.quantity) }
	if c.Any() || own(c.least) && own(c.most) {
		return c.text
	}
	number := func(b *bound) string {
		return strconv.FormatFloat(b.shop, 'f', b.typed, 64) + " " + b.system.Symbol(c.quantity)
	}
	sign := func(b *bound, strict, loose string) string {
		if b.strict {
			return strict
		}
		return loose
	}
	switch {
	case c.most == nil:
		return sign(c.least, ">", ">=") + number(c.least)
	case c.least == nil:
		return sign(c.most, "<", "<=") + number(c.most)
	case c.least == c.most:
		return number(c.least)
	}
	return number(c.least) + " to " + number(c.most)
}

// Met tells whether a value in SI meets the condition; known is false for a
// missing one, which meets only the condition that anything does.
func (c Condition) Met(si float64, known bool) bool {
	if c.Any() {
		return true
	}
	if !known {
		return false
	}
	if b := c.least; b != nil {
		if x := b.shown(c.quantity, si); !(x > b.shop || x == b.shop && !b.strict) {
			return false
		}
	}
	if b := c.most; b != nil {
		if x := b.shown(c.quantity, si); !(x < b.shop || x == b.shop && !b.strict) {
			return false
		}
	}
	return true
}

package holes

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bowline/model/units"
)

// Condition is what a column's values have to meet, as a person types it. The
// zero value is met by anything. Values are compared as they are shown on screen:
// "3" is met by whatever is shown as 3, and "<5" by nothing that is shown as 5.
type Condition struct {
	text        string
	quantity    units.Quantity
	least, most *bound // nil where there is none
}

// bound is one end of a condition's interval.
type bound struct {
	shop     float64      // in the unit of system
	system   units.System // of the unit that was typed
	typed    int          // decimals that were
	decimals int          // that values are rounded to before they are compared
	strict   bool         // the bound itself is outside
}

// examples are what error messages offer.
const examples = "write <5, >100, 100 to 160 or 3"

// The forms of a condition. A number is anything that is not part of a form;
// bounded looks at it.
var (
	comparison = regexp.MustCompile(`^(<=|>=|≤|≥|<|>|=)(.*)$`)
	span       = regexp.MustCompile(`^(.*?\S)\s*(?:to|\.\.\.?|…|–)\s*(\S.*)$`)
)

// ParseCondition reads a condition for a quantity whose numbers are in the unit
// of s unless they name another unit of it:
//
//	                 anything, missing values too
//	<5   <= 5        less than 5, at most 5
//	>100   >= 100    more than 100, at least 100
//	100 to 160       both ends included; 100..160 and 100–160 do as well
//	3   =3           what is shown as 3
//
// Numbers are read as units.System.ReadNumber does, and values compared with the
// decimals that they are shown with in a system, or those typed if they are more.
// The error says what is wrong with the text and what would be right.
func ParseCondition(text string, q units.Quantity, s units.System, decimals func(units.System) int) (Condition, error) {
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

// bounded reads one number of a condition.
func bounded(text, typed string, q units.Quantity, s units.System, decimals func(units.System) int) (*bound, error) {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return nil, fmt.Errorf("‘%s’ lacks a number; %s", text, examples)
	}
	n, err := s.ReadNumber(typed, q)
	var ways *units.TwoWaysError
	var unit *units.UnitError
	switch {
	case errors.As(err, &ways):
		thousands, decimals := ways.Readings()
		return nil, fmt.Errorf("‘%s’ can be read two ways; write %s or %s", ways.Text, thousands, decimals)
	case errors.As(err, &unit) && !strings.ContainsAny(unit.Unit, "0123456789"):
		return nil, fmt.Errorf("‘%s’ is no unit that fits here; %s", unit.Unit, unitsOf(q, s))
	case err != nil:
		return nil, fmt.Errorf("‘%s’ is no condition; %s", text, examples)
	}
	shown := max(decimals(n.System), n.Decimals)
	if n.Decimals > mostDecimals || math.Abs(n.Number)*math.Pow(10, float64(shown)) > mostDigits {
		return nil, fmt.Errorf("‘%s’ has more digits than can be compared; %s", typed, examples)
	}
	// Rounded as values are, for a fraction such as 1/3.
	return &bound{shop: rounded(n.Number, shown), system: n.System, typed: n.Decimals, decimals: shown}, nil
}

// Numbers of more digits have no decimals in a float64 to round to.
const (
	mostDecimals = 9
	mostDigits   = 1 << 53
)

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
	x := b.system.FromSI(q, si)
	if y := rounded(x, b.decimals); !math.IsInf(y, 0) {
		return y
	}
	return x
}

// Any reports whether everything meets the condition.
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
		return units.WithMinus(strconv.FormatFloat(b.shop, 'f', b.typed, 64)) + " " + b.system.Symbol(c.quantity)
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

// Met reports whether a value in SI meets the condition; known is false for a
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

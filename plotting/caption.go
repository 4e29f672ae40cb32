package plotting

import "bowline/model/units"

// caption is the text beside a mark or a rule; the zero value is none.
type caption struct {
	// of is what the caption tells of. In a comparison those of both setups
	// that tell of the same stand as one; empty keeps them apart.
	of     string
	head   string // the text, or what comes before the amount
	amount words  // nil for the head alone
	brief  words  // the amount where two stand together; nil for all of it
	alone  bool   // left out of a comparison, whose legend says as much
}

// valueCaption names a value: "lower limit 10,257 lb".
func valueCaption(name string, q units.Quantity, si float64) caption {
	return caption{of: name, head: name, amount: func(s units.System) string { return value(s, q, si) }}
}

func (c caption) empty() bool { return c.head == "" && c.amount == nil }

// label writes the caption.
func (c caption) label(s units.System) string {
	if c.amount == nil {
		return c.head
	}
	return joined(c.head, c.amount(s))
}

// versus returns the caption of two amounts, "lower limit 10,257 lb vs 9,980 lb",
// or of one where both read the same.
func (c caption) versus(other caption) caption {
	short := func(c caption, s units.System) string {
		switch {
		case c.brief != nil:
			return c.brief(s)
		case c.amount != nil:
			return c.amount(s)
		}
		return ""
	}
	both := c
	both.amount = func(s units.System) string {
		a, b := short(c, s), short(other, s)
		switch {
		case c.head != other.head:
			return a + " vs " + joined(other.head, b)
		case a == b:
			return a
		}
		return a + " vs " + b
	}
	both.brief = nil
	return both
}

// by returns the caption with the setup that it is of.
func (c caption) by(setup string) caption {
	if c.of == "" {
		return c
	}
	d := c
	d.brief = nil
	d.amount = func(s units.System) string {
		if c.amount == nil {
			return "(" + setup + ")"
		}
		return c.amount(s) + " (" + setup + ")"
	}
	return d
}

package chart

import "bowline/model/units"

// Caption is the text beside a point or a rule; the zero value is none.
type Caption struct {
	// Of is what the caption is about. In a comparison the captions of all
	// setups that are about the same thing stand as one; empty keeps them apart.
	Of     string
	Head   string // the text, or what comes before the amount
	Amount Words  // nil for the head alone
	Brief  Words  // the amount where several stand together; nil for all of it
	Alone  bool   // the legend says as much: left out of a comparison, and where it is crowded
	Over   bool   // more than allowed, and looks it: on a filled box
}

// ValueCaption names a value: "lower limit 10,257 lb".
func ValueCaption(name string, q units.Quantity, si float64) Caption {
	return Caption{Of: name, Head: name, Amount: func(s units.System) string { return s.Format(q, si) }}
}

func (c Caption) empty() bool { return c.Head == "" && c.Amount == nil }

// Label writes the caption.
func (c Caption) Label(s units.System) string {
	if c.Amount == nil {
		return c.Head
	}
	return joined(c.Head, c.Amount(s))
}

// short is the amount where several stand together.
func (c Caption) short(s units.System) string {
	switch {
	case c.Brief != nil:
		return c.Brief(s)
	case c.Amount != nil:
		return c.Amount(s)
	}
	return ""
}

// by returns the caption with the setup that it is of.
func (c Caption) by(setup string) Caption {
	if c.Of == "" {
		return c
	}
	d := c
	d.Brief = nil
	d.Amount = func(s units.System) string {
		if c.Amount == nil {
			return "(" + setup + ")"
		}
		return c.Amount(s) + " (" + setup + ")"
	}
	return d
}

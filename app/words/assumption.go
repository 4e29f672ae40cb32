package words

import (
	"math"
	"strings"

	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"
)

// AssumedTitle stands over a list of assumptions.
const AssumedTitle = "Assumed, since the car does not say"

// AssumedHelp says what the figures beside assumptions are.
const AssumedHelp = "What each is worth: how much is added to the worst share of what a bar may carry, behind the stroke to that in the launch alone, and to the 60-ft time when the value is doubled and when it is halved."

// AssumedPending says that it is being found what assumptions are worth.
const AssumedPending = "What each is worth is being worked out."

// NothingAssumed says that there are no assumptions.
const NothingAssumed = "Nothing: the car says all that the launch asks for."

// AssumedUnknown says that nobody has found what assumptions are worth.
const AssumedUnknown = "What each is worth has not been computed."

// Assumed writes what is assumed: "0.03 s", "track bar".
func Assumed(a assumptions.Assumption, s units.System) string {
	if a.Choice != "" {
		return a.Choice
	}
	if len(a.Changes) > 0 && (a.Changes[0].Kind == assumptions.CGToLeft) {
		return "in the middle"
	}
	return entered(a.Quantity, a.Value, s)
}

// entered writes a value as somebody would type it: with all its digits when these
// are few, as a default has them, and rounded otherwise.
func entered(q units.Quantity, si float64, s units.System) string {
	const fine = 1e4
	x := s.FromSI(q, si) * fine
	if math.Abs(x-math.Round(x)) > 1e-6 {
		return s.Format(q, si)
	}
	si = s.ToSI(q, math.Round(x)/fine) // without what reckoning leaves behind the digits
	exact, figures := s.FormatExact(q, si), s.FigureExact(q, si)
	return units.Group(figures) + strings.TrimPrefix(exact, figures)
}

// Tried says what was put in the place of an assumption: "doubled", "to 1".
func Tried(a assumptions.Assumption, ch assumptions.Change, s units.System) string {
	switch ch.Kind {
	case assumptions.Doubled, assumptions.Halved:
		return ch.Kind.String()
	case assumptions.Moved:
		return "to " + entered(a.Quantity, ch.Value, s)
	case assumptions.Other:
		return ch.Choice
	case assumptions.Falling:
		return "falling to half at the rev limit"
	case assumptions.Unscaled:
		return "1, the curve as it is typed"
	case assumptions.CGToLeft:
		return s.Format(units.Length, ch.Value) + " left"
	}
	return s.Format(units.Length, ch.Value) + " right"
}

// TriedAll says what was put in the place of an assumption, one after the other:
// "doubled, halved".
func TriedAll(a assumptions.Assumption, s units.System) string {
	var all []string
	for _, ch := range a.Changes {
		all = append(all, Tried(a, ch, s))
	}
	return strings.Join(all, "; ")
}

// usual reports whether an assumption was doubled and halved and nothing else.
func usual(a assumptions.Assumption) bool {
	for _, ch := range a.Changes {
		if ch.Kind > assumptions.Halved {
			return false
		}
	}
	return true
}

// TriedOtherwise says of those assumptions that were not doubled and halved what was
// put in their place; nothing when all were.
func TriedOtherwise(list []assumptions.Assumption, s units.System) string {
	var said []string
	for _, a := range list {
		if !usual(a) {
			said = append(said, a.Name+": "+TriedAll(a, s)+".")
		}
	}
	if len(said) == 0 {
		return ""
	}
	return "Not doubled and halved but tried as follows. " + strings.Join(said, " ")
}

// WorthOfShare writes what an effect adds to the worst share and to that in the launch
// alone, in percent of what the bar may carry: "0.0 / +8.5".
func WorthOfShare(e assumptions.Effect) string {
	return gain(100*e.Share) + " / " + gain(100*e.Launch)
}

// WorthOfTime writes what an effect adds to the 60-ft time in seconds, or how the car
// fares where one of the two runs does not come so far: "−0.064".
func WorthOfTime(e assumptions.Effect) string {
	switch {
	case e.Timed:
		return units.Signed(e.Time, 3)
	case e.Outcome == launch.Finished:
		return "comes through"
	}
	return e.Outcome.String()
}

// gain writes a change with a decimal while it is small.
func gain(x float64) string {
	if math.Abs(x) < 9.95 {
		return units.Signed(x, 1)
	}
	return units.Signed(x, 0)
}

// TriedWith says what was put in the place of an assumption and what that adds to the
// worst share, to that in the launch and to the 60-ft time: "doubled: 0.0 / +30 %, −0.064 s". Without an effect, nil,
// it is not known yet.
func TriedWith(a assumptions.Assumption, ch assumptions.Change, e *assumptions.Effect, s units.System) string {
	if e == nil {
		return Tried(a, ch, s) + ": …"
	}
	time := WorthOfTime(*e)
	if e.Timed {
		time += " " + s.Symbol(units.Time)
	}
	return Tried(a, ch, s) + ": " + WorthOfShare(*e) + " %, " + time
}

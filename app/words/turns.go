package words

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"bowline/model/adjuster"
	"bowline/model/linkage"
	"bowline/model/units"
)

// Turn says what to turn a bar by, as in "2 turns 3 flats longer", "1 flat
// shorter" and "no turn".
func Turn(t adjuster.Turn) string {
	if t.None() {
		return "no turn"
	}
	var said []string
	for _, part := range []struct {
		n     int
		thing string
	}{{t.Whole, "turn"}, {t.Flats, "flat"}} {
		if part.n != 0 {
			said = append(said, counted(max(part.n, -part.n), part.thing))
		}
	}
	way := "longer"
	if t.Whole < 0 || t.Flats < 0 {
		way = "shorter"
	}
	return strings.Join(append(said, way), " ")
}

// counted writes a number of things, as in "3 flats".
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return units.Count(n) + " " + thing + "s"
}

// OwnTurns says by how many turns a setup preloads a bar [1]: in flats, or where
// they end between two of them in decimals.
func OwnTurns(turns float64) string {
	t := adjuster.InFlats(turns)
	if math.Abs(t.Rest) < 0.005 {
		return Turn(t)
	}
	return toward(units.Decimal(math.Abs(turns), 2)+" turns", "", turns > 0, "longer", "shorter")
}

// Plan says how to get to other holes and turns, one thing a line: what to do to
// the upper and to the lower bars, what the pinion does on the way, and what is
// left when bars are turned to the nearest flat.
func Plan(c *adjuster.Change, s units.System) []string {
	var lines []string
	moved, turned := false, 0
	for i := range c.Pairs {
		p := &c.Pairs[i]
		lines = append(lines, PairPlan(p, s))
		moved = moved || p.Moved()
		if p.Turned() {
			turned++
		}
	}
	if moved {
		lines = append(lines, "In the new holes, no bar turned: "+Effect(c.Unturned, s))
	}
	if turned == len(c.Pairs) {
		for i := range c.Pairs {
			lines = append(lines, fmt.Sprintf("Only the %s turned: %s", c.Pairs[i].Pair.Bars(), Effect(c.Pairs[i].Alone, s)))
		}
	}
	if turned > 0 {
		lines = append(lines, "All bars turned to the nearest flat: "+Effect(c.InFlats, s))
	}
	return lines
}

// PairPlan says what to do to a pair of bars in one line, as in "Lower bars:
// housing end hole 3 to 1; 2 turns 3 flats longer (21.430 in to 21.742 in); thread
// engaged 1.05 in, 1.4 D".
func PairPlan(p *adjuster.PairChange, s units.System) string {
	var parts []string
	for _, end := range []struct {
		name string
		adjuster.Move
	}{{"chassis", p.Chassis}, {"housing", p.Housing}} {
		if end.Moved() {
			parts = append(parts, fmt.Sprintf("%s end hole %d to %d", end.name, end.From+1, end.To+1))
		}
	}
	both := func(text func(*adjuster.BarChange) string) string {
		left, right := text(&p.Left), text(&p.Right)
		if left == right {
			return left
		}
		return "left " + left + ", right " + right
	}
	parts = append(parts,
		both(func(b *adjuster.BarChange) string { return turned(b, s) }),
		both(func(b *adjuster.BarChange) string { return engaged(&b.After, s) }))
	switch {
	case !p.Bar.Usable():
		parts = append(parts, "the rod ends' "+ShortThread(p.Bar, s))
	case p.Recut():
		parts = append(parts, both(func(b *adjuster.BarChange) string { return Tube(&b.After, s) }))
	}
	switch {
	case p.Assumed.Diameter:
		parts = append(parts, "a thread of 3/4 in, 16 per inch, is assumed: the rod end's name has none")
	case p.Assumed.Pitch:
		parts = append(parts, "16 threads per inch are assumed: the rod end's name has no pitch")
	}
	return Capital(p.Pair.Bars()) + ": " + strings.Join(parts, "; ")
}

// turned says how to turn a bar, with its real lengths.
func turned(b *adjuster.BarChange, s units.System) string {
	from, to := s.FormatFine(units.Length, b.Before.Length), s.FormatFine(units.Length, b.After.Length)
	if from != to {
		from += " to " + to
	}
	return Turn(b.Turn()) + " (" + from + ")"
}

// engaged says how much thread is engaged and whether that is little.
func engaged(b *adjuster.State, s units.System) string {
	if b.Engaged <= 0 {
		return "no thread engaged"
	}
	text := "thread engaged " + s.Format(units.Length, b.Engaged) + ", " + Diameters(b)
	if b.Status == adjuster.Shallow {
		text += fmt.Sprintf(", under %v D", adjuster.WellEngaged)
	}
	return text
}

// Diameters writes the thread engaged in diameters, as in "1.4 D". It is rounded
// down, so that 1.46 D do not read as the 1.5 D that they lack.
func Diameters(b *adjuster.State) string {
	return units.Decimal(math.Floor(10*b.Diameters+1e-6)/10, 1) + " D"
}

// ShortThread says by which measures the thread of a bar that is not Usable is
// too short.
func ShortThread(b adjuster.Bar, s units.System) string {
	return fmt.Sprintf("thread of %s is too short for a jam nut of %s and 1 D engaged", s.FormatFine(units.Length, b.ThreadLength), s.FormatFine(units.Length, b.JamNut))
}

// Tube says what is to be done to a bar's tube, as in "tube too long, cut 0.250 in
// off".
func Tube(b *adjuster.State, s units.System) string {
	by := s.FormatFine(units.Length, math.Abs(b.Tube))
	switch b.Status {
	case adjuster.TooShort:
		return "tube too short, make one " + by + " longer"
	case adjuster.TooLong:
		return "tube too long, cut " + by + " off"
	}
	return "tube stays"
}

// Effect says what a change does at ride height, as in "pinion 0.45° nose up, axle
// 0.120 in forward".
func Effect(e adjuster.Effect, s units.System) string {
	var stuck *linkage.AdjustmentError
	switch {
	case errors.As(e.Cannot, &stuck):
		return fmt.Sprintf("cannot be put together: upper bars of %s and lower bars of %s do not close; they do only as far as %s and %s",
			s.FormatFine(units.Length, stuck.Upper), s.FormatFine(units.Length, stuck.Lower), s.FormatFine(units.Length, stuck.ReachedUpper), s.FormatFine(units.Length, stuck.ReachedLower))
	case e.Cannot != nil:
		return "cannot be put together: " + e.Cannot.Error()
	}
	pinion, axle := "pinion unchanged", "axle stays"
	if !s.ReadsZero(units.Angle, e.Pinion) {
		pinion = "pinion " + s.Nose(e.Pinion)
	}
	if shift := s.FormatFine(units.Length, math.Abs(e.Shift)); shift != s.FormatFine(units.Length, 0) {
		axle = "axle " + shift + map[bool]string{true: " forward", false: " back"}[e.Shift > 0]
	}
	return pinion + ", " + axle
}

// SetupPlan says how to get from one setup to another one by its name.
func SetupPlan(from, to string, c *adjuster.Change, s units.System) string {
	return fmt.Sprintf("From %q to %q:\n", from, to) + List(Plan(c, s))
}

// NoSetupPlan says why there is no way from one setup to another one.
func NoSetupPlan(from, to string, why error) string {
	return fmt.Sprintf("%q cannot be reached from %q: %v.", to, from, why)
}

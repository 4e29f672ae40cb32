package adjuster

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"bowline/model/car"
	"bowline/model/linkage"
	"bowline/model/units"
)

// Text writes the change for a screen or a card, one thing a line: what to do
// to each pair, what the pinion does on the way, and what is left when bars are
// turned to the nearest flat.
func (c *Change) Text(s units.System) []string {
	lines := []string{c.Pairs[car.Upper].Text(s), c.Pairs[car.Lower].Text(s)}
	var moved, turned bool
	for i := range c.Pairs {
		p := &c.Pairs[i]
		moved = moved || p.Moved()
		turned = turned || p.Turned()
	}
	if !moved && !turned {
		return lines
	}
	if moved {
		lines = append(lines, "In the new holes, no bar turned: "+c.Unturned.Text(s))
	}
	if c.Pairs[car.Upper].Turned() && c.Pairs[car.Lower].Turned() {
		for i := range c.Pairs {
			p := &c.Pairs[i]
			lines = append(lines, fmt.Sprintf("Only the %s turned: %s", p.Pair.Bars(), p.Alone.Text(s)))
		}
	}
	if turned {
		lines = append(lines, "All bars turned to the nearest flat: "+c.InFlats.Text(s))
	}
	return lines
}

// Text writes what to do to the pair in one line, as in "Lower bars: housing
// end hole 3 to 1; 2 turns 3 flats longer (21.430 in to 21.742 in); thread
// engaged 1.05 in, 1.4 D".
func (p *PairChange) Text(s units.System) string {
	var parts []string
	for _, end := range []struct {
		name string
		Move
	}{{"chassis", p.Chassis}, {"housing", p.Housing}} {
		if end.Moved() {
			parts = append(parts, fmt.Sprintf("%s end hole %d to %d", end.name, end.From+1, end.To+1))
		}
	}
	both := func(text func(*BarChange) string) string {
		left, right := text(&p.Left), text(&p.Right)
		if left == right {
			return left
		}
		return "left " + left + ", right " + right
	}
	parts = append(parts,
		both(func(b *BarChange) string { return b.text(s) }),
		both(func(b *BarChange) string { return b.After.text(s) }))
	if !p.Bar.Usable() {
		parts = append(parts, "the rod ends' "+p.Bar.ShortThread(s))
	} else if p.Recut() {
		parts = append(parts, both(func(b *BarChange) string { return b.After.TubeText(s) }))
	}
	switch {
	case p.Assumed.Diameter:
		parts = append(parts, "a thread of 3/4 in, 16 per inch, is assumed: the rod end's name has none")
	case p.Assumed.Pitch:
		parts = append(parts, "16 threads per inch are assumed: the rod end's name has no pitch")
	}
	return [...]string{"Upper bars: ", "Lower bars: "}[p.Pair] + strings.Join(parts, "; ")
}

// text writes the turn and the real lengths.
func (b *BarChange) text(s units.System) string {
	from, to := s.FormatFine(units.Length, b.Before.Length), s.FormatFine(units.Length, b.After.Length)
	if from == to {
		return fmt.Sprintf("%s (%s)", b.Turn(), from)
	}
	return fmt.Sprintf("%s (%s to %s)", b.Turn(), from, to)
}

// text writes the thread engaged and whether it is little.
func (s *State) text(u units.System) string {
	if s.Engaged <= 0 {
		return "no thread engaged"
	}
	words := fmt.Sprintf("thread engaged %s, %s", u.Format(units.Length, s.Engaged), s.DiametersText())
	if s.Status == Shallow {
		words += fmt.Sprintf(", under %v D", WellEngaged)
	}
	return words
}

// DiametersText writes the thread engaged in diameters, as in "1.4 D". It is
// rounded down, so that 1.46 D do not read as the 1.5 D that they lack.
func (s *State) DiametersText() string {
	return fmt.Sprintf("%.1f D", math.Floor(10*s.Diameters+1e-6)/10)
}

// ShortThread says by which measures the thread of a bar that is not Usable is
// too short.
func (b Bar) ShortThread(s units.System) string {
	return fmt.Sprintf("thread of %s is too short for a jam nut of %s and 1 D engaged", s.FormatFine(units.Length, b.ThreadLength), s.FormatFine(units.Length, b.JamNut))
}

// TubeText writes what has to be done to the tube, as in "tube too long, cut
// 0.250 in off".
func (s *State) TubeText(u units.System) string {
	by := u.FormatFine(units.Length, math.Abs(s.Tube))
	switch s.Status {
	case TooShort:
		return "tube too short, make one " + by + " longer"
	case TooLong:
		return "tube too long, cut " + by + " off"
	}
	return "tube stays"
}

// Text writes the effect in words, as in "pinion 0.45° nose up, axle 0.120 in
// forward".
func (e Effect) Text(s units.System) string {
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
		pinion = "pinion " + s.Directed(units.Angle, e.Pinion, "nose up", "nose down")
	}
	if shift := s.FormatFine(units.Length, math.Abs(e.Shift)); shift != s.FormatFine(units.Length, 0) {
		axle = "axle " + shift + map[bool]string{true: " forward", false: " back"}[e.Shift > 0]
	}
	return pinion + ", " + axle
}

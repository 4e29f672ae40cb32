package words

import (
	"fmt"
	"strings"

	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"
)

// Ranking says what came of a search: how many of all combinations meet the
// target, how many fulfil all wishes where there are any, what the best one needs,
// and where the holes in use stand, if their place is known.
func Ranking(places []holes.Place, present *holes.Place, wishes bool) string {
	inside, wished, refused := 0, 0, 0
	for i := range places {
		p := &places[i]
		if !p.Combination().Usable() {
			refused++
			continue
		}
		if p.Unmet == 0 {
			wished++
		}
		if p.Inside {
			inside++
		}
	}
	all := units.Count(len(places))
	meets := fmt.Sprintf("%s of %s combinations meet the target", units.Count(inside), all)
	switch inside {
	case 0:
		meets = fmt.Sprintf("None of %s combinations meets the target", all)
	case 1:
		meets = fmt.Sprintf("1 of %s combinations meets the target", all)
	}
	said := []string{meets}
	if wishes {
		said = append(said, fulfilled(wished))
	}
	text := strings.Join(append(said, best(&places[0])), "; ") + "."
	if present != nil {
		text += fmt.Sprintf(" Holes in use: %s, rank %s.", present.Holes(), units.Count(present.Rank))
	}
	if refused > 0 {
		text += fmt.Sprintf(" %s cannot be used.", units.Count(refused))
	}
	return text
}

// RankedBy says what a ranking goes by and rests on: the side view alone, or the launch
// too, and of how many combinations while some are missing.
func RankedBy(places []holes.Place) string {
	if len(places) == 0 {
		return ""
	}
	p := &places[0]
	order, l := p.Wishes().Order, p.Launches()
	text := Capital(order.String())
	switch {
	case l == nil && order.NeedsLaunches():
		return text + ": not launched yet, so by nearness to the target."
	case l == nil:
		return text + ", by the side view alone."
	case !l.Complete():
		return fmt.Sprintf("%s; loads by side view and launch, %s of %s so far.", text, units.Count(l.Done), units.Count(l.Total))
	}
	return text + "; loads by side view and launch."
}

// fulfilled says how many combinations fulfil all wishes.
func fulfilled(n int) string {
	switch n {
	case 0:
		return "none fulfils all wishes"
	case 1:
		return "1 fulfils all wishes"
	}
	return units.Count(n) + " fulfil all wishes"
}

// best says what the best combination needs.
func best(p *holes.Place) string {
	name := "the best, " + p.Holes().String() + ","
	switch {
	case !p.Combination().Usable():
		return "no combination can be used"
	case p.Present:
		return "the holes in use are the best"
	case !p.HasTurns:
		return name + " is ahead of the holes in use"
	}
	return name + " needs " + needs(p)
}

// needs says how bars are to be turned, or made anew.
func needs(p *holes.Place) string {
	var said []string
	and := " and "
	for _, pair := range car.Pairs {
		turn := adjuster.InFlats(p.Turns[pair])
		switch {
		case p.Recut(pair):
			said = append(said, "new tubes for the "+pair.Bars())
			and = ", and "
		case !turn.None():
			said = append(said, "the "+pair.Bars()+" "+Turn(turn))
		}
	}
	if len(said) == 0 {
		return "no bar turned"
	}
	return strings.Join(said, and)
}

// WhichHoles says which hole is which in the numbers of a combination, as in
// "Upper chassis 4, lower chassis 3, upper housing 2, lower housing 3."
func WhichHoles(h car.Holes) string {
	var said []string
	for _, row := range car.Rows {
		said = append(said, fmt.Sprintf("%s %d", row, *row.Of(&h)+1))
	}
	return Sentence(strings.Join(said, ", "))
}

package holes

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
)

// amount writes a magnitude, one that would be shown as nothing as less than
// the least that is shown.
func amount(s units.System, q units.Quantity, si float64) string {
	si = math.Abs(si)
	if text := s.Format(q, si); si == 0 || text != s.Format(q, 0) {
		return text
	}
	return "less than " + s.Format(q, s.ToSI(q, math.Pow(10, -float64(s.Decimals(q)))))
}

// Reason says in words why the place stands where it stands, as in "inside the
// target; lower bars push 9,475 lb, 68 % of their limit" or "both pairs would be
// moved".
func (p *Place) Reason(s units.System) string {
	c := p.Combination()
	if !c.Usable() {
		return phrase(p.ranking.table.Refusal(c.Holes, s))
	}
	var said []string
	say := func(texts ...string) {
		for _, text := range texts {
			if text != "" {
				said = append(said, text)
			}
		}
	}
	if p.Present {
		say("the present holes")
	}
	if p.Unmet != 0 {
		say(p.unmet(s)...)
		say(p.near(s), p.overload())
		return strings.Join(said, "; ")
	}
	say(p.leads(s), p.near(s))
	if p.ranking.wishes.Order != LeastPush && (p.Inside || p.Others > 0 && p.Decider == ByPush) {
		say(p.push(s))
	}
	say(p.overload(), p.tie())
	return strings.Join(said, "; ")
}

// unmet says which wishes are not fulfilled, but for those of being in the target
// and within the loads, of which near and overload tell.
func (p *Place) unmet(s units.System) []string {
	var said []string
	for _, wish := range []struct {
		Wish
		words func() string
	}{
		{OneBar, func() string { return "both pairs would be moved" }},
		{InReach, func() string { return p.reach(s) }},
		{WithinPinion, func() string {
			return fmt.Sprintf("the pinion turns %s, its limit is %s", s.Format(units.Angle, p.Combination().PinionChange()), s.Format(units.Angle, p.ranking.target.PinionLimit))
		}},
	} {
		if p.Unmet&wish.Wish != 0 {
			said = append(said, wish.words())
		}
	}
	return said
}

// overload says which bars carry more than they may.
func (p *Place) overload() string {
	c := p.Combination()
	var said []string
	for _, pair := range car.Pairs {
		for _, d := range column.Directions {
			if share := c.Share[pair][d]; share > 1 {
				said = append(said, fmt.Sprintf("%s would carry %.1f %% of what they may in %s", pair.Bars(), 100*share, d))
			}
		}
	}
	return strings.Join(said, ", ")
}

// reach says which bars need new tubes.
func (p *Place) reach(s units.System) string {
	if !p.HasTurns {
		return "the present holes cannot be used, so nothing can be turned from them"
	}
	var said []string
	for _, pair := range car.Pairs {
		switch bar := &p.ranking.bars[pair]; {
		case !p.Recut(pair):
		case !bar.Usable():
			said = append(said, pair.Bars()+" have too little thread for any tube")
		default:
			way := "longer"
			if p.Status[pair] == adjuster.TooLong {
				way = "shorter"
			}
			said = append(said, fmt.Sprintf("%s would have to be recut %s %s", pair.Bars(), amount(s, units.Length, p.Tube[pair]), way))
		}
	}
	return strings.Join(said, ", ")
}

// missing is a part of the target that is missed, by how much of a distance.
type missing struct {
	part float64
	text string
}

// far is by how much an instant center misses the target from which on a number
// tells less than that the bars are nearly parallel [m].
const far = 10.0

// near says how near the target is, the worst miss first, less what an unmet
// wish says already.
func (p *Place) near(s units.System) string {
	if p.Inside {
		return "inside the target"
	}
	c := p.Combination()
	_, parts, off := p.ranking.target.distance(c)
	way := func(by float64, below, above string) string {
		if by < 0 {
			return below
		}
		return above
	}
	var missed []missing
	add := func(part float64, text string) {
		if part > 0 {
			missed = append(missed, missing{part, text})
		}
	}
	if c.HasAntiSquat {
		add(parts.antiSquat, fmt.Sprintf("anti-squat %s too %s", amount(s, units.Percent, off.AntiSquat), way(off.AntiSquat, "low", "high")))
	} else {
		add(parts.antiSquat, "no anti-squat, since the line of action stands upright")
	}
	if c.HasInstantCenter {
		ahead := fmt.Sprintf("instant center %s too far %s", amount(s, units.Length, off.Ahead), way(off.Ahead, "back", "ahead"))
		above := fmt.Sprintf("instant center %s too %s", amount(s, units.Length, off.Above), way(off.Above, "low", "high"))
		const parallel = "bars nearly parallel: instant center far "
		switch farAhead, farAbove := math.Abs(off.Ahead) > far, math.Abs(off.Above) > far; {
		case farAhead && farAbove:
			add(max(parts.ahead, parts.above), parallel+way(off.Ahead, "behind", "ahead of")+" the target")
		case farAhead:
			add(parts.ahead, parallel+way(off.Ahead, "behind", "ahead of")+" the target")
			add(parts.above, above)
		case farAbove:
			add(parts.ahead, ahead)
			add(parts.above, parallel+way(off.Above, "below", "above")+" the target")
		default:
			add(parts.ahead, ahead)
			add(parts.above, above)
		}
	} else {
		add(parts.center, "no instant center, since the bars are parallel")
	}
	if p.Unmet&WithinPinion == 0 {
		add(parts.pinion, fmt.Sprintf("pinion turns %s beyond its limit", amount(s, units.Angle, off.Pinion)))
	}
	slices.SortStableFunc(missed, func(a, b missing) int { return cmp.Compare(b.part, a.part) })
	texts := make([]string, len(missed))
	for i := range missed {
		texts[i] = missed[i].text
	}
	return strings.Join(texts, ", ")
}

// push says which bars are nearest to their limit in push.
func (p *Place) push(s units.System) string {
	c := p.Combination()
	pair := car.Lower
	if c.Share[car.Upper][column.Push] > c.Share[car.Lower][column.Push] {
		pair = car.Upper
	}
	push := max(c.Peak[pair][analysis.Hooked][column.Push], c.Peak[pair][analysis.Hit][column.Push])
	if push == 0 {
		return "no bar is pushed"
	}
	return fmt.Sprintf("%s push %s, %.0f %% of their limit", pair.Bars(), s.Format(units.Force, push), 100*c.Share[pair][column.Push])
}

// leads says what the order asked for goes by, nothing for the nearest.
func (p *Place) leads(s units.System) string {
	c := p.Combination()
	switch p.ranking.wishes.Order {
	case LeastPush:
		pair, push := c.largestPush()
		if push == 0 {
			return "no bar is pushed"
		}
		return fmt.Sprintf("%s push %s, the most of all bars", pair.Bars(), s.Format(units.Force, push))
	case LeastShare:
		return fmt.Sprintf("share of limit at most %.0f %%", 100*c.Highest())
	case FewestTurns:
		return p.turns()
	}
	return ""
}

// turns says how far the bars of either pair are turned.
func (p *Place) turns() string {
	text := func(pair car.Pair) string { return fmt.Sprintf("%.2f", math.Abs(p.Turns[pair])) }
	upper, lower, none := text(car.Upper), text(car.Lower), fmt.Sprintf("%.2f", 0.0)
	switch {
	case upper == none && lower == none:
		return "no turns"
	case upper == none:
		return lower + " turns on the lower bars, none on the upper"
	case lower == none:
		return upper + " turns on the upper bars, none on the lower"
	}
	return fmt.Sprintf("%s turns on the upper bars, %s on the lower", upper, lower)
}

// tie says how many are as good and what decides between them.
func (p *Place) tie() string {
	if p.Others == 0 {
		return ""
	}
	same := [...]string{"same distance as", "same push as", "same share as", "same turns as"}[p.ranking.wishes.Order]
	others := units.Count(p.Others) + " others"
	if p.Others == 1 {
		others = "1 other"
	}
	decides := [...]string{
		ByDistance: "nearness to the target decides",
		ByPush:     "least push decides",
		ByMoved:    "fewest moved ends decide",
		ByTurns:    "fewest turns decide",
		ByHoles:    "all else is the same, so the holes' order decides",
	}[p.Decider]
	return same + " " + others + ", " + decides
}

// phrase makes part of a sentence of one.
func phrase(sentence string) string {
	if sentence == "" {
		return ""
	}
	return strings.ToLower(sentence[:1]) + strings.TrimSuffix(sentence[1:], ".")
}

package words

import (
	"fmt"
	"slices"
	"strings"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// Setup is a setup to be compared: its name and what was found of it.
type Setup struct {
	Name   string
	Result *analysis.Result
	Launch *launch.Result // nil for none
}

// Compare says what setup b does otherwise than a, as in `"more bite" against
// "baseline": instant center 2.10 in nearer, anti-squat 24 points more (168 % for
// 144 %). In side view lower bars push 5 % less; in the launch the lower right bar
// comes to 92 % of its limit instead of 84 %.` Without both launches it tells of
// the side view only.
func Compare(a, b Setup, s units.System) string {
	said := together(", ", centerMoves(&a.Result.Ride, &b.Result.Ride, s), squatBecomes(&a.Result.Ride, &b.Result.Ride))
	side := together(", ", barsCarry(a.Result, b.Result, car.Upper), barsCarry(a.Result, b.Result, car.Lower))
	leaving, crossed := inLaunches(a, b, s), crossedLimits(a, b)
	text := fmt.Sprintf("%q against %q: ", b.Name, a.Name)
	switch {
	case said != "":
		text += said + "."
	case side == "" && leaving == "" && crossed == "":
		return text + "instant center, anti-squat and loads are the same."
	default:
		text += "instant center and anti-squat are the same."
	}
	switch {
	case side != "" && leaving != "":
		text += fmt.Sprintf(" In side view %s; in the launch %s.", side, leaving)
	case side != "":
		text += fmt.Sprintf(" In side view %s.", side)
	case leaving != "":
		text += fmt.Sprintf(" In side view the bars carry the same; in the launch %s.", leaving)
	}
	return text + crossed
}

// together joins what there is to tell.
func together(by string, texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(text string) bool { return text == "" || text == Same }), by)
}

// centerMoves says where the instant center goes; nothing where it stays.
func centerMoves(a, b *analysis.Station, s units.System) string {
	switch {
	case !a.HasInstantCenter && !b.HasInstantCenter:
		return ""
	case !b.HasInstantCenter:
		return "bars parallel, without an instant center"
	case !a.HasInstantCenter:
		return fmt.Sprintf("bars no more parallel, instant center %s ahead and %s up",
			s.Format(units.Length, b.InstantCenter.X), s.Format(units.Length, b.InstantCenter.Y))
	}
	moves := together(" and ", Ahead(a.InstantCenter.X, b.InstantCenter.X, s), Up(a.InstantCenter.Y, b.InstantCenter.Y, s))
	if moves == "" {
		return ""
	}
	return "instant center " + moves
}

// squatBecomes says what anti-squat becomes; nothing where it stays.
func squatBecomes(a, b *analysis.Station) string {
	switch {
	case !a.HasAntiSquat && !b.HasAntiSquat:
		return ""
	case !a.HasAntiSquat:
		return fmt.Sprintf("anti-squat %s where it had no value", units.WholePercent(b.AntiSquat))
	case !b.HasAntiSquat:
		return "anti-squat without a value"
	}
	text := WholePoints(a.AntiSquat, b.AntiSquat, "more", "less")
	if text == Same {
		return ""
	}
	return fmt.Sprintf("anti-squat %s (%s for %s)", text, units.WholePercent(b.AntiSquat), units.WholePercent(a.AntiSquat))
}

// barsCarry says what a pair of bars carries where the first setup loads it most,
// in percent of what it carries there; nothing where that is the same.
func barsCarry(a, b *analysis.Result, pair car.Pair) string {
	way := column.Push
	if a.Worst[pair][column.Pull].Share > a.Worst[pair][column.Push].Share {
		way = column.Pull
	}
	from, to := a.Worst[pair][way].Force, b.Worst[pair][way].Force
	switch {
	case from == 0 && to == 0:
		return ""
	case from == 0:
		return fmt.Sprintf("%s %s where they were without load", pair.Bars(), way)
	case to == 0:
		return fmt.Sprintf("%s do not %s", pair.Bars(), way)
	}
	by := relative(from, to)
	if by == Same {
		return ""
	}
	return fmt.Sprintf("%s %s %s", pair.Bars(), way, by)
}

// inLaunches says what becomes in the launch of the bar that comes nearest to its
// limit in either setup, and of the 60-ft time; nothing without launches.
func inLaunches(a, b Setup, s units.System) string {
	if a.Launch == nil || b.Launch == nil || len(a.Launch.Time) == 0 || len(b.Launch.Time) == 0 {
		return ""
	}
	bar, way, most := b.Result.NearestInLaunch(b.Launch)
	if other, w, u := a.Result.NearestInLaunch(a.Launch); u.Share > most.Share {
		bar, way = other, w
	}
	from, to := units.Share(a.Result.InLaunch(a.Launch, bar, way).Share), units.Share(b.Result.InLaunch(b.Launch, bar, way).Share)
	bars := fmt.Sprintf("the %s comes to %s of its limit instead of %s", bar, to, from)
	if from == to {
		bars = fmt.Sprintf("the %s comes to %s of its limit in both", bar, to)
	}
	return together(", and ", bars, sixtyFeetBecome(a.Launch, b.Launch, s))
}

// sixtyFeetBecome says what becomes of the 60-ft time; nothing where it stays.
func sixtyFeetBecome(a, b *launch.Result, s units.System) string {
	from, to := SixtyFeet(a, s), SixtyFeet(b, s)
	switch {
	case a.Outcome == launch.Finished && b.Outcome == launch.Finished:
		if from == to {
			return ""
		}
		return fmt.Sprintf("60 ft takes %s instead of %s", to, from)
	case b.Outcome == launch.Finished:
		return fmt.Sprintf("60 ft takes %s where it was not reached (%s)", to, from)
	case a.Outcome == launch.Finished:
		return fmt.Sprintf("60 ft is not reached (%s)", to)
	}
	return ""
}

// crossedLimits says which bars are loaded beyond their limit in one setup only, in side
// view or, with both launches, in the launch.
func crossedLimits(a, b Setup) string {
	if a.Launch == nil || b.Launch == nil {
		a.Launch, b.Launch = nil, nil
	}
	before, after := a.Result.Envelope(a.Launch), b.Result.Envelope(b.Launch)
	text := ""
	for _, pair := range car.Pairs {
		was, is := most(&before, pair), most(&after, pair)
		switch {
		case is.Share > 1 && was.Share <= 1:
			text += fmt.Sprintf(" %s it takes %s limit, to %s of it.", in(is), loaded(is, "beyond"), units.Share(is.Share))
		case is.Share <= 1 && was.Share > 1:
			text += fmt.Sprintf(" It brings %s limit, to %s of it.", loaded(is, "back within"), units.Share(is.Share))
		}
	}
	return text
}

// most returns the demand on a pair that comes nearest to what it may carry.
func most(e *analysis.Envelope, pair car.Pair) analysis.Demand {
	push, pull := e.OfPair(pair, column.Push), e.OfPair(pair, column.Pull)
	if pull.Share > push.Share {
		return pull
	}
	return push
}

// in says where a demand comes from, at the beginning of a sentence.
func in(d analysis.Demand) string {
	if d.Source == analysis.FromLaunch {
		return "In the launch"
	}
	return "In side view"
}

// loaded names the bars that a demand is on, and how they stand to their limit.
func loaded(d analysis.Demand, how string) string {
	if d.Source == analysis.FromLaunch {
		return fmt.Sprintf("the %s %s its", d.Bar, how)
	}
	return fmt.Sprintf("the %s %s their", d.Bar.Pair().Bars(), how)
}

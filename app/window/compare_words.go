package window

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// same stands for a difference that does not show.
const same = "the same"

// manyUnits is the amount from which a difference is told in whole units.
const manyUnits = 1000

// differs writes by how much the second of two SI values is more than the first,
// with the word for its direction. It is the difference of the figures shown;
// that of two percentages is in points.
func differs(u units.System, q units.Quantity, from, to float64, more, less string) string {
	shop := u.Shown(q, to) - u.Shown(q, from)
	by := u.ToSI(q, math.Abs(shop))
	switch {
	case q == units.Percent:
		return points(shop, u.Decimals(q), more, less)
	case math.Abs(shop) >= manyUnits:
		return towards(units.Group(fmt.Sprintf("%.0f", math.Abs(shop)))+" "+u.Symbol(q), "", shop > 0, more, less)
	}
	return towards(u.Format(q, by), u.Format(q, 0), shop > 0, more, less)
}

// points writes a difference of percentages.
func points(by float64, decimals int, more, less string) string {
	figure := fmt.Sprintf("%.*f", decimals, math.Abs(by))
	unit := " points"
	if figure == "1" {
		unit = " point"
	}
	return towards(figure+unit, fmt.Sprintf("%.*f", decimals, 0.)+unit, by > 0, more, less)
}

// wholePoints writes the difference of two shares that are shown in whole
// percent.
func wholePoints(from, to float64, more, less string) string {
	return points(math.Round(100*to)-math.Round(100*from), 0, more, less)
}

// towards puts the word for a direction behind an amount, unless that is
// nothing.
func towards(amount, nothing string, up bool, more, less string) string {
	switch {
	case amount == nothing:
		return same
	case up:
		return amount + " " + more
	}
	return amount + " " + less
}

// ownTurns writes the turns of a setup, which preload its bars: in flats, or
// where they end between two of them in decimals.
func ownTurns(turns float64) string {
	t := adjuster.InFlats(turns)
	if math.Abs(t.Rest) < 0.005 {
		return t.String()
	}
	return towards(fmt.Sprintf("%.2f turns", math.Abs(turns)), "", turns > 0, "longer", "shorter")
}

// compareWords says in words what the second setup does otherwise than the
// first, as in `"more bite" against "baseline": instant center 2.10 in nearer,
// anti-squat 24 points more (168 % for 144 %). In side view lower bars push 5 %
// less; in the launch the lower right bar comes to 92 % of its limit instead of
// 84 %.` Without both launches it tells of the side view only.
func compareWords(names [2]string, a, b *analysis.Result, launches [2]*launch.Result, u units.System) string {
	said := told(", ", centerWords(&a.Ride, &b.Ride, u), squatWords(&a.Ride, &b.Ride))
	side := told(", ", barWords(a, b, car.Upper), barWords(a, b, car.Lower))
	leaving := launchWords(a, b, launches)
	text := fmt.Sprintf("%q against %q: ", names[1], names[0])
	switch {
	case said != "":
		text += said + "."
	case side == "" && leaving == "":
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
	return text + limitWords(a, b)
}

// told joins what there is to tell.
func told(by string, texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(text string) bool { return text == "" }), by)
}

// centerWords says where the instant center goes.
func centerWords(a, b *analysis.Station, u units.System) string {
	switch {
	case !a.HasInstantCenter && !b.HasInstantCenter:
		return ""
	case !b.HasInstantCenter:
		return "bars parallel, without an instant center"
	case !a.HasInstantCenter:
		return fmt.Sprintf("bars no more parallel, instant center %s ahead and %s up",
			u.Format(units.Length, b.InstantCenter.X), u.Format(units.Length, b.InstantCenter.Y))
	}
	var parts []string
	for _, part := range []string{
		aheadBy(a.InstantCenter.X, b.InstantCenter.X, u),
		differs(u, units.Length, a.InstantCenter.Y, b.InstantCenter.Y, "higher", "lower"),
	} {
		if part != same {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "instant center " + strings.Join(parts, " and ")
}

// squatWords says what anti-squat becomes.
func squatWords(a, b *analysis.Station) string {
	switch {
	case !a.HasAntiSquat && !b.HasAntiSquat:
		return ""
	case !a.HasAntiSquat:
		return fmt.Sprintf("anti-squat %s where it had no value", units.WholePercent(b.AntiSquat))
	case !b.HasAntiSquat:
		return "anti-squat without a value"
	}
	text := wholePoints(a.AntiSquat, b.AntiSquat, "more", "less")
	if text == same {
		return ""
	}
	return fmt.Sprintf("anti-squat %s (%s for %s)", text, units.WholePercent(b.AntiSquat), units.WholePercent(a.AntiSquat))
}

// barWords says what a pair of bars carries where the first setup loads it
// most, in percent of what it carries there.
func barWords(a, b *analysis.Result, pair car.Pair) string {
	way := column.Push
	if a.Worst[pair][column.Pull].Share > a.Worst[pair][column.Push].Share {
		way = column.Pull
	}
	from, to := a.Worst[pair][way].Force, b.Worst[pair][way].Force
	bars, verb := pair.Bars(), way.String()
	switch {
	case from == 0 && to == 0:
		return ""
	case from == 0:
		return fmt.Sprintf("%s %s where they were without load", bars, verb)
	case to == 0:
		return fmt.Sprintf("%s do not %s", bars, verb)
	}
	by := 100 * (to/from - 1)
	text := towards(fmt.Sprintf("%.0f %%", math.Abs(by)), "0 %", by > 0, "more", "less")
	if text == same {
		return ""
	}
	return fmt.Sprintf("%s %s %s", bars, verb, text)
}

// limitWords says what bars are loaded beyond their limit in one setup only.
func limitWords(a, b *analysis.Result) string {
	text := ""
	for _, pair := range car.Pairs {
		was, is := mostShare(a, pair), mostShare(b, pair)
		switch {
		case is > 1 && was <= 1:
			text += fmt.Sprintf(" In side view it takes the %s beyond their limit, to %s of it.", pair.Bars(), units.Share(is))
		case is <= 1 && was > 1:
			text += fmt.Sprintf(" In side view it brings the %s back within their limit, to %s of it.", pair.Bars(), units.Share(is))
		}
	}
	return text
}

// mostShare returns the largest share of the allowable load in a pair [1].
func mostShare(r *analysis.Result, pair car.Pair) float64 {
	return max(r.Worst[pair][column.Push].Share, r.Worst[pair][column.Pull].Share)
}

// shortened cuts two names to the room over a column. Names that would be cut
// alike tell which is which by a letter.
func shortened(names [2]string) [2]string {
	short := [2]string{cutTo(names[0]), cutTo(names[1])}
	if short[0] == short[1] {
		return [2]string{cutTo("A " + names[0]), cutTo("B " + names[1])}
	}
	return short
}

// cutTo cuts a heading to its room.
func cutTo(text string) string {
	wide := func(s string) bool {
		return fyne.MeasureText(s, theme.TextSize(), fyne.TextStyle{Bold: true}).Width > headingRoom
	}
	if !wide(text) {
		return text
	}
	letters := []rune(text)
	for len(letters) > 1 && wide(string(letters)+"…") {
		letters = letters[:len(letters)-1]
	}
	return strings.TrimSpace(string(letters)) + "…"
}

package window

import (
	"fmt"
	"math"
	"strings"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// same stands for a difference that does not show.
const same = "the same"

// manyUnits is the amount from which a difference is told in whole units.
const manyUnits = 1000

// differs writes a difference in SI with the word for its direction.
func differs(u units.System, q units.Quantity, by float64, more, less string) string {
	if shop := math.Abs(u.FromSI(q, by)); shop >= manyUnits {
		return towards(units.Group(fmt.Sprintf("%.0f", shop))+" "+u.Symbol(q), "", by > 0, more, less)
	}
	return towards(u.Format(q, math.Abs(by)), u.Format(q, 0), by > 0, more, less)
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

// turnsBy writes turns of a tube as longer or shorter.
func turnsBy(turns float64) string {
	return towards(fmt.Sprintf("%.2f", math.Abs(turns)), "0.00", turns > 0, "longer", "shorter")
}

// ownTurns writes the turns of a setup, which preload its bars.
func ownTurns(turns float64) string {
	return strings.Replace(turnsBy(turns), same, "none", 1)
}

// compareWords says in words what the second setup does otherwise than the
// first, as in `"more bite" against "baseline": instant center 2.10 in nearer,
// anti-squat 12 % more, lower bars push 6 % more.`
func compareWords(names [2]string, a, b *analysis.Result, u units.System) string {
	var said []string
	for _, text := range []string{centerWords(&a.Ride, &b.Ride, u), squatWords(&a.Ride, &b.Ride), barWords(a, b, car.Upper), barWords(a, b, car.Lower)} {
		if text != "" {
			said = append(said, text)
		}
	}
	text := fmt.Sprintf("%q against %q: ", names[1], names[0])
	if len(said) == 0 {
		return text + "instant center, anti-squat and loads are the same."
	}
	return text + strings.Join(said, ", ") + "." + limitWords(a, b)
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
		differs(u, units.Length, b.InstantCenter.Y-a.InstantCenter.Y, "higher", "lower"),
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

// squatWords says what anti-squat becomes, in percent of anti-squat.
func squatWords(a, b *analysis.Station) string {
	switch {
	case !a.HasAntiSquat && !b.HasAntiSquat:
		return ""
	case !a.HasAntiSquat:
		return fmt.Sprintf("anti-squat %.0f %% where it had no value", 100*b.AntiSquat)
	case !b.HasAntiSquat:
		return "anti-squat without a value"
	}
	by := 100 * (b.AntiSquat - a.AntiSquat)
	text := towards(fmt.Sprintf("%.0f %%", math.Abs(by)), "0 %", by > 0, "more", "less")
	if text == same {
		return ""
	}
	return fmt.Sprintf("anti-squat %s (%.0f %% for %.0f %%)", text, 100*b.AntiSquat, 100*a.AntiSquat)
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
			text += fmt.Sprintf(" It takes the %s beyond their limit, to %.0f %% of it.", pair.Bars(), 100*is)
		case is <= 1 && was > 1:
			text += fmt.Sprintf(" It brings the %s back within their limit, to %.0f %% of it.", pair.Bars(), 100*is)
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

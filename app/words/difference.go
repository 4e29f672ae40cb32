package words

import (
	"fmt"
	"math"

	"bowline/model/units"
)

// Same stands for a difference that does not show.
const Same = "the same"

// manyUnits is the amount from which a difference is told in whole units.
const manyUnits = 1000

// Difference says by how much the second of two SI values is more than the first,
// with the word for its direction, as in "2.10 in longer". It is the difference of
// the figures shown; that of two percentages is in points.
func Difference(s units.System, q units.Quantity, from, to float64, more, less string) string {
	shop := s.Shown(q, to) - s.Shown(q, from)
	amount := s.Format(q, s.ToSI(q, math.Abs(shop)))
	switch {
	case q == units.Percent:
		return Points(shop, s.Decimals(q), more, less)
	case math.Abs(shop) >= manyUnits:
		amount = units.Decimal(math.Abs(shop), 0) + " " + s.Symbol(q)
	}
	return toward(amount, s.Format(q, 0), shop > 0, more, less)
}

// Points writes a difference of percentages in percent points: "24 points more".
func Points(by float64, decimals int, more, less string) string {
	figure, unit := units.Decimal(math.Abs(by), decimals), " points"
	if figure == "1" {
		unit = " point"
	}
	return toward(figure+unit, units.Decimal(0, decimals)+unit, by > 0, more, less)
}

// WholePoints writes the difference of two ratios that are shown in whole
// percent.
func WholePoints(from, to float64, more, less string) string {
	return Points(math.Round(100*to)-math.Round(100*from), 0, more, less)
}

// Ahead says how an instant center's distance ahead of the rear contact differs
// [m]: of a swing arm that reaches forward in both, how its length does.
func Ahead(from, to float64, s units.System) string {
	if from > 0 && to > 0 {
		return Difference(s, units.Length, from, to, "farther", "nearer")
	}
	return Difference(s, units.Length, from, to, "forward", "back")
}

// Up says how a height differs [m].
func Up(from, to float64, s units.System) string {
	return Difference(s, units.Length, from, to, "higher", "lower")
}

// relative says by how much a second amount is more than a first one that is not
// zero, in whole percent of the first.
func relative(from, to float64) string {
	by := 100 * (to/from - 1)
	return toward(fmt.Sprintf("%.0f %%", math.Abs(by)), "0 %", by > 0, "more", "less")
}

// toward puts the word for a direction behind an amount, unless that is nothing.
func toward(amount, nothing string, up bool, more, less string) string {
	switch {
	case amount == nothing:
		return Same
	case up:
		return amount + " " + more
	}
	return amount + " " + less
}

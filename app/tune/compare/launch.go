package compare

import (
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
)

// launchTitle stands over the launches of both setups.
const launchTitle = "In the launch"

// Rows of the launches' table: the 60-ft time, push and pull of each bar, and
// how the front wheels leave the ground.
const (
	rowSixty = 0
	rowBars  = 1
	rowLift  = rowBars + 2*len(launch.Bars)
	rowOff   = rowLift + 1
)

// writeLaunch writes what the setups do as the car leaves.
func (p *Part) writeLaunch(list []words.Setup, u units.System) {
	title := launchTitle
	if list[0].Launch == nil {
		title += ": the launches are being computed"
	}
	p.titles[tableLaunch].Set(title)
	// Of a launch without a history only how it ended is known.
	ran := func(i int) bool { return list[i].Launch != nil && len(list[i].Launch.Time) > 0 }
	row := func(row int, value func(i int) (string, fyne.ThemeColorName), by func(i int) string) {
		p.write(tableLaunch, row, func(i int) (string, fyne.ThemeColorName) {
			if !ran(i) && (row != rowSixty || list[i].Launch == nil) {
				return "—", ""
			}
			return value(i)
		}, func(i int) string {
			if !ran(0) || !ran(i) {
				return "—"
			}
			return by(i)
		})
	}
	row(rowSixty, plain(func(i int) string { return words.SixtyFeet(list[i].Launch, u) }), func(i int) string {
		switch was, is := list[0].Launch, list[i].Launch; {
		case was.Outcome == launch.Finished && is.Outcome == launch.Finished:
			return words.Difference(u, units.Time, was.Elapsed, is.Elapsed, "slower", "quicker")
		case was.Outcome == is.Outcome:
			return words.Same
		}
		return "—"
	})
	for _, bar := range launch.Bars {
		for _, way := range column.Directions {
			use := func(i int) analysis.Use { return list[i].Result.InLaunch(list[i].Launch, bar, way) }
			row(barRow(bar, way),
				func(i int) (string, fyne.ThemeColorName) { return useWords(way, use(i), u) },
				func(i int) string { return words.WholePoints(use(0).Share, use(i).Share, "more", "less") })
		}
	}
	lift := func(i int) *launch.Lift { return &list[i].Launch.Lift }
	row(rowLift, plain(func(i int) string { return orNone(lift(i).Height, units.Length, u) }),
		func(i int) string { return words.Up(lift(0).Height, lift(i).Height, u) })
	row(rowOff, plain(func(i int) string { return orNone(lift(i).Duration, units.Time, u) }),
		func(i int) string {
			return words.Difference(u, units.Time, lift(0).Duration, lift(i).Duration, "longer", "shorter")
		})
}

// orNone writes a value that is above zero.
func orNone(x float64, q units.Quantity, u units.System) string {
	if x > 0 {
		return u.Format(q, x)
	}
	return "none"
}

// barRow returns the row of a bar's largest push or pull.
func barRow(bar launch.RodID, way column.Direction) int {
	row := rowBars + 2*int(bar)
	if way == column.Pull {
		row++
	}
	return row
}

package compare

import (
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
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

// launches returns the launches of the current setup and of the one that it is
// held against; none while one of them is not that of the car as it is.
func (p *Part) launches() [2]*launch.Result {
	other := Other(p.study)
	if other == nil || p.study.LaunchOutdated() {
		return [2]*launch.Result{}
	}
	return [2]*launch.Result{p.study.Launch(), other.Launch}
}

// writeLaunch writes what both setups do as the car leaves.
func (p *Part) writeLaunch(a, b *analysis.Result, launches [2]*launch.Result, u units.System) {
	title := launchTitle
	if launches[0] == nil {
		title += ": the launches are being computed"
	}
	p.titles[tableLaunch].Set(title)
	for row := range rowNames[tableLaunch] {
		p.set(tableLaunch, row, "—", "—", "—")
	}
	if launches[0] == nil {
		return
	}
	for side, r := range launches {
		if len(r.Time) == 0 {
			p.tables[tableLaunch].Set(rowSixty, side, r.Outcome.String(), "")
			continue
		}
		p.writeLaunchOf(side, []*analysis.Result{a, b}[side], r, u)
	}
	was, is := launches[0], launches[1]
	if len(was.Time) == 0 || len(is.Time) == 0 {
		return
	}
	by := func(row int, text string) { p.tables[tableLaunch].Set(row, columnBy, text, "") }
	switch {
	case was.Outcome == launch.Finished && is.Outcome == launch.Finished:
		by(rowSixty, words.Difference(u, units.Time, was.Elapsed, is.Elapsed, "slower", "quicker"))
	case was.Outcome == is.Outcome:
		by(rowSixty, words.Same)
	}
	for _, bar := range launch.Bars {
		for _, way := range column.Directions {
			from, to := a.InLaunch(was, bar, way), b.InLaunch(is, bar, way)
			by(barRow(bar, way), words.WholePoints(from.Share, to.Share, "more", "less"))
		}
	}
	by(rowLift, words.Up(was.Lift.Height, is.Lift.Height, u))
	by(rowOff, words.Difference(u, units.Time, was.Lift.Duration, is.Lift.Duration, "longer", "shorter"))
}

// writeLaunchOf writes one setup's launch.
func (p *Part) writeLaunchOf(side int, a *analysis.Result, r *launch.Result, u units.System) {
	t := p.tables[tableLaunch]
	t.Set(rowSixty, side, words.SixtyFeet(r, u), "")
	for _, bar := range launch.Bars {
		for _, way := range column.Directions {
			text, color := useWords(a.InLaunch(r, bar, way), u)
			t.Set(barRow(bar, way), side, text, color)
		}
	}
	lift, off := "none", "none"
	if r.Lift.Height > 0 {
		lift = u.Format(units.Length, r.Lift.Height)
	}
	if r.Lift.Duration > 0 {
		off = u.Format(units.Time, r.Lift.Duration)
	}
	t.Set(rowLift, side, lift, "")
	t.Set(rowOff, side, off, "")
}

// barRow returns the row of a bar's largest push or pull.
func barRow(bar launch.RodID, way column.Direction) int {
	row := rowBars + 2*int(bar)
	if way == column.Pull {
		row++
	}
	return row
}

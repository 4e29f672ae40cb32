package setups

import (
	"math"
	"strconv"

	"bowline/app/listing"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// setupList lists the car's setups with what they do; a row selected is the
// current setup.
type setupList struct {
	study *study.Study
	table *listing.Table
	units units.System // of the headings; -1 before the first

	of      setupBasis
	results []*analysis.Result // by setup, of what is in sight; nil for not yet
}

// setupBasis is what the results were made for.
type setupBasis struct {
	car   *car.Car
	front float64
}

// Columns of the list.
const (
	setupName = iota
	setupHoles
	setupSquat
	setupAhead
	setupUp
	setupShare
	setupSixty
	setupBest
	setupRuns
)

func newSetupList(s *study.Study) *setupList {
	l := &setupList{study: s, units: -1}
	l.table = listing.New(nil, 1)
	l.table.OnSelected = s.Document().SelectSetup
	return l
}

// refresh takes up the setups as they are.
func (l *setupList) refresh() {
	if u := l.study.Units(); u != l.units {
		l.units = u
		length := u.Symbol(units.Length)
		l.table.SetColumns([]listing.Column{
			setupName:  {Title: "Setup", Width: 8, Grow: 1},
			setupHoles: {Title: "Holes", Width: 6},
			setupSquat: {Title: "Anti-squat", Unit: "%", Width: 5, Align: listing.Right},
			setupAhead: {Title: "IC ahead", Unit: length, Width: 5, Align: listing.Right},
			setupUp:    {Title: "IC up", Unit: length, Width: 5, Align: listing.Right},
			setupShare: {Title: "Share\nof limit", Unit: "%", Width: 4, Align: listing.Right},
			setupSixty: {Title: "60 ft\ncomputed", Unit: "s", Width: 6, Align: listing.Right},
			setupBest:  {Title: "60 ft\nlogged", Unit: "s", Width: 5, Align: listing.Right},
			setupRuns:  {Title: "Log", Unit: "runs", Width: 3, Align: listing.Right},
		}, 1)
	}
	if now := (setupBasis{l.study.Document().Car(), l.study.Front()}); now != l.of {
		l.of, l.results = now, make([]*analysis.Result, len(now.car.Setups))
	}
	l.table.SetSource(l)
	// A list scrolled by hand stays where it is.
	if current := l.study.Document().Setup(); current != l.table.Selected() {
		l.table.Select(current)
	}
}

// Len implements listing.Source.
func (l *setupList) Len() int { return len(l.results) }

// Key implements listing.Source.
func (l *setupList) Key(row int) int { return row }

// Cell implements listing.Source.
func (l *setupList) Cell(row, column int) (string, fyne.ThemeColorName) {
	setup := &l.of.car.Setups[row]
	switch column {
	case setupName:
		return setup.Name, ""
	case setupHoles:
		return setup.Holes.String(), ""
	case setupRuns:
		return strconv.Itoa(len(setup.Runs)), ""
	case setupBest:
		return bestSixty(setup.Runs, l.units), ""
	}
	if l.results[row] == nil {
		l.results[row] = l.study.ResultOf(row)
	}
	r, u := l.results[row], l.units
	ride := &r.Ride
	length := func(x float64) string {
		if !ride.HasInstantCenter {
			return "—"
		}
		return coarse(u, x)
	}
	switch column {
	case setupSquat:
		if !ride.HasAntiSquat {
			return "upright", ""
		}
		return u.Figure(units.Percent, ride.AntiSquat, 0), panel.TargetColor(r, ride.AntiSquat)
	case setupAhead:
		return length(ride.InstantCenter.X), ""
	case setupUp:
		return length(ride.InstantCenter.Y), ""
	}
	launched, current := l.study.LaunchOf(row)
	text, color := "—", fyne.ThemeColorName("")
	switch column {
	case setupSixty:
		if launched != nil && launched.Outcome == launch.Finished {
			text = u.Figure(units.Time, launched.Elapsed, 0)
		}
	case setupShare:
		share := r.LoadVerdict(launched).Demand.Share
		text, color = units.ShareFigure(share), panel.ShareColor(share)
	}
	if !current {
		return text + "…", theme.ColorNamePlaceHolder
	}
	return text, color
}

// bestSixty writes the least 60-ft time of runs [s].
func bestSixty(runs []car.Run, u units.System) string {
	best, ok := car.Quickest(runs)
	if !ok {
		return "—"
	}
	return u.Figure(units.Time, best, 0)
}

// coarse writes a length with a decimal less than is usual, as a list has room
// for.
func coarse(u units.System, si float64) string {
	if math.Abs(si) > panel.FarAway {
		return "far"
	}
	return u.Figure(units.Length, si, -1)
}

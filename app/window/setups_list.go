package window

import (
	"math"
	"strconv"

	"bowline/app/listing"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
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
	setupRuns
	setupBest
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
			setupName: {Title: "Setup", Width: 7, Grow: 1}, setupHoles: {Title: "Holes", Width: 6},
			setupSquat: {Title: "Anti-\nsquat", Unit: "%", Width: 5, Align: listing.Right},
			setupAhead: {Title: "IC\nahead", Unit: length, Width: 5, Align: listing.Right},
			setupUp:    {Title: "IC\nup", Unit: length, Width: 5, Align: listing.Right},
			setupShare: {Title: "Share\nof\nlimit", Unit: "%", Width: 3, Align: listing.Right},
			setupRuns:  {Title: "Log", Unit: "runs", Width: 2, Align: listing.Right},
			setupBest:  {Title: "Best\n60 ft", Unit: "s", Width: 5, Align: listing.Right},
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
		return bestSixty(setup.Runs), ""
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
		return u.Figure(units.Percent, ride.AntiSquat, 0), targetColor(r, ride.AntiSquat)
	case setupAhead:
		return length(ride.InstantCenter.X), ""
	case setupUp:
		return length(ride.InstantCenter.Y), ""
	}
	pair, way := r.Highest()
	share := r.Worst[pair][way].Share
	return units.ShareFigure(share), shareColor(share)
}

// bestSixty writes the least 60-ft time of runs [s].
func bestSixty(runs []car.Run) string {
	best := math.Inf(1)
	for i := range runs {
		if t := runs[i].SixtyFoot; t != 0 {
			best = math.Min(best, t)
		}
	}
	if math.IsInf(best, 1) {
		return "—"
	}
	return units.US.Figure(units.Time, best, 0)
}

// farAway is from which distance on a list does not tell how far off an instant
// center is [m].
const farAway = 9.99

// coarse writes a length with a decimal less than is usual, as a list has room
// for.
func coarse(u units.System, si float64) string {
	if math.Abs(si) > farAway {
		return "far"
	}
	return u.Figure(units.Length, si, -1)
}

// listRoom gives a list of rows the height of those that there are, within
// bounds.
type listRoom struct {
	rows func() int
	most int // rows
}

// listRow is the room for a row over the text size.
const listRow = 1.55

// MinSize implements fyne.Layout.
func (r listRoom) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize() // has three rows
	least.Height += float32(max(0, min(r.rows(), r.most)-3)) * theme.TextSize() * listRow
	return least
}

// Layout implements fyne.Layout.
func (listRoom) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(0, 0))
		o.Resize(size)
	}
}

// scrolls tells whether the list has more rows than room.
func (r listRoom) scrolls() bool { return r.rows() > r.most }

// listed puts a list into a page: it is as high as its rows, and gives the wheel
// to the page unless it has more rows than room or is turned sideways.
func listed(table *listing.Table, rows func() int, most int, on *page) *fyne.Container {
	room := listRoom{rows: rows, most: most}
	return container.New(room, underWheel(table, func(e *fyne.ScrollEvent) {
		if room.scrolls() || e.Scrolled.DX != 0 {
			table.Scrolled(e)
			return
		}
		on.scroll.Scrolled(e)
	}))
}

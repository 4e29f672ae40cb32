package holes

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"bowline/app/listing"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// list is the table of the combinations: their ranks, then the columns of
// package holes that are for the screen, then why each stands where it does.
type list struct {
	study   *study.Study
	table   *listing.Table
	columns []*holes.Column // on screen
	places  []holes.Place   // as they are sorted
	units   units.System
	sorted  int // column; listRank to begin with
	falling bool
	made    listMade
	asked   listAsked
	picked  int // the row that the table selects
	say     func(string)
}

// listAsked is what a person has asked the list for, but for its order.
type listAsked struct {
	wishes     holes.Wishes
	target     holes.Target
	conditions []holes.ColumnCondition
}

// same reports whether nothing else is asked for.
func (a *listAsked) same(b *listAsked) bool {
	return a.wishes == b.wishes && a.target == b.target && slices.Equal(a.conditions, b.conditions)
}

// listMade is what the order of places was made of, and the table shows.
type listMade struct {
	ranking  uint64 // revision of the study's list
	units    units.System
	wide     int // digits that the holes need; 0 before the table has its columns
	launched bool
	present  int
	sorted   int
	falling  bool
}

// listRank is the column of the ranks; it and the one with the holes stay when
// the others scroll.
const (
	listRank   = 0
	listHoles  = 1
	listFrozen = 2
)

// columnWidth is the room for most values, in digits.
const columnWidth = 6

// reasonWidth is the room for reasons, in digits.
const reasonWidth = 90

// newList returns the table without rows; say hears why the row under the
// pointer stands where it does.
func newList(s *study.Study, say func(string), use func(index int)) *list {
	l := &list{study: s, say: say, sorted: listRank, picked: study.None}
	l.columns = onScreen(false)
	l.table = listing.New(l.headings(), listFrozen)
	l.table.SetSource(l)
	l.table.OnHovered = l.hovered
	l.table.OnSelected = func(key int) {
		l.picked = key
		s.Pick(key)
	}
	l.table.OnActivated = use
	l.table.OnSort = l.sort
	l.table.OnPointed = l.pointed
	return l
}

// onScreen returns the columns of the list: while all combinations are to be launched, what comes
// of that stands next to the holes.
func onScreen(launched bool) []*holes.Column {
	var list []*holes.Column
	add := func(ofLaunch bool) {
		for _, c := range holes.Columns {
			if c.Uses&holes.OnScreen != 0 && c.OfLaunch == ofLaunch && c.Key != "holes" {
				list = append(list, c)
			}
		}
	}
	names, _ := holes.ColumnOf("holes")
	list = append(list, names)
	if launched {
		add(true)
	}
	add(false)
	return list
}

// show shows the columns that there are, sorted as before where there is that column.
func (l *list) show(launched bool) {
	var by *holes.Column
	if l.sorted != listRank {
		by = l.columns[l.sorted-1]
	}
	l.columns = onScreen(launched)
	if l.sorted = slices.Index(l.columns, by) + 1; l.sorted == listRank {
		l.falling = l.falling && by == nil
	}
}

// headings returns the table's columns in the units shown.
func (l *list) headings() []listing.Column {
	list := []listing.Column{{Title: "Rank", Width: 5, Align: listing.Right}}
	for _, c := range l.columns {
		list = append(list, l.heading(c))
	}
	return append(list, listing.Column{Title: "Why", Width: reasonWidth})
}

// heading returns a column as the table has it.
func (l *list) heading(c *holes.Column) listing.Column {
	if c.Key == "holes" {
		return listing.Column{Title: c.Title, Unit: holesOrder, Width: l.holesWidth()}
	}
	return listing.Column{Title: c.Title, Unit: l.units.Symbol(c.Quantity), Width: columnWidth, Align: listing.Right}
}

// holesOrder says below the heading which number is which hole: upper and lower
// chassis, upper and lower housing.
const holesOrder = "UC·LC·UH·LH"

// holesWidth returns the room for the highest numbers of holes with the mark of
// those in use, in digits.
func (l *list) holesWidth() int {
	room := len([]rune(presentMark)) + len(car.Rows) - 1
	for _, row := range car.Rows {
		room += len(strconv.Itoa(len(*row.In(l.study.Document().Car()))))
	}
	return room
}

// refresh shows what the study lists, where it points and what it has picked.
func (l *list) refresh() {
	l.units = l.study.Units()
	launched := l.study.LaunchesHoles()
	if launched != l.made.launched {
		l.show(launched)
	}
	now := listMade{launched: launched, ranking: l.study.RankingRevision(), units: l.units, wide: l.holesWidth(), present: l.study.Present(), sorted: l.sorted, falling: l.falling}
	if now != l.made {
		l.order(l.study.Listed())
		if now.wide != l.made.wide || now.launched != l.made.launched || now.units != l.made.units {
			l.table.SetColumns(l.headings(), listFrozen)
		}
		l.table.SetSorted(l.sorted, l.falling)
		l.table.Refresh()
		l.made = now
	}
	asked := listAsked{l.study.Wishes(), holes.TargetOf(l.study.Document().Car()), l.study.Conditions()}
	if !asked.same(&l.asked) {
		l.asked = asked
		l.table.ScrollToTop()
	}
	l.table.Hover(l.study.Pointed())
	// The table shows a row picked elsewhere once, and then stays where the
	// person scrolls.
	if picked := l.study.Picked(); picked != l.picked {
		l.picked = picked
		l.table.Select(picked)
	}
}

// order sorts the places by the column that the person has chosen.
func (l *list) order(listed []holes.Place) {
	l.places = listed
	switch {
	case l.sorted == listRank && !l.falling:
	case l.sorted == listRank:
		l.places = slices.Clone(listed)
		slices.Reverse(l.places)
	default:
		l.places = slices.Clone(listed)
		holes.Sort(l.places, l.columns[l.sorted-1], l.falling)
	}
}

// sort sorts by a column: rising at first, then falling, then by rank again.
func (l *list) sort(column int) {
	switch {
	case column > len(l.columns):
		return // Reasons have no order.
	case column != l.sorted:
		l.sorted, l.falling = column, false
	case !l.falling:
		l.falling = true
	default:
		l.sorted, l.falling = listRank, false
	}
	l.refresh()
	l.table.ScrollToTop()
}

// pointed explains the column whose heading is under the pointer.
func (l *list) pointed(column int) {
	switch {
	case column == listRank:
		l.say("Place by the target and wishes: 1 is the best.")
	case column == listing.None:
		l.hovered(l.study.Pointed()) // What is under the pointer instead may have been named before.
	case column > len(l.columns):
		l.say("Why the combination stands where it does.")
	default:
		l.say(l.columns[column-1].Help)
	}
}

// hovered points at a row. Rows move under the pointer, too, while the list is
// refreshed.
func (l *list) hovered(key int) {
	l.study.Then(func() { l.study.Point(key) })
	p := l.study.Place(key)
	if p == nil {
		l.say("")
		return
	}
	l.say(p.Holes().String() + ": " + words.Reason(p, l.units) + ".")
}

// Len implements listing.Source.
func (l *list) Len() int { return len(l.places) }

// Key implements listing.Source: rows are known by the combination's index.
func (l *list) Key(row int) int { return l.places[row].Index }

// presentMark stands behind the holes in use.
const presentMark = " •"

// Cell implements listing.Source.
func (l *list) Cell(row, at int) (string, fyne.ThemeColorName) {
	p := &l.places[row]
	present := p.Index == l.made.present
	switch {
	case at == listRank:
		return strconv.Itoa(p.Rank), rowColor(p, present)
	case at > len(l.columns):
		return words.Reason(p, l.units), rowColor(p, false)
	}
	c := l.columns[at-1]
	text := farText(c, p)
	if text == "" {
		text = bareText(c, p, l.units)
	}
	if at == listHoles && present {
		return text + presentMark, rowColor(p, true)
	}
	if color := rowColor(p, present && at == listHoles); color != "" {
		return text, color
	}
	return text, valueColor(c, p)
}

// farText writes where an instant center is that nearly parallel bars send too
// far off for a number of use; empty when it is not.
func farText(c *holes.Column, p *holes.Place) string {
	x, ok := c.Value(p)
	back, center := map[string]string{"instant_center_x": "far back", "instant_center_z": "far down"}[c.Key]
	switch {
	case !ok || !center || math.Abs(x) <= panel.FarAway:
		return ""
	case x < 0:
		return back
	}
	return "far"
}

// rowColor sets apart the holes in use, and combinations that cannot be used or do
// not fulfil the wishes.
func rowColor(p *holes.Place, present bool) fyne.ThemeColorName {
	switch {
	case present:
		return theme.ColorNamePrimary
	case !p.Combination().Usable() || p.Unmet != 0:
		return theme.ColorNamePlaceHolder
	}
	return ""
}

// valueColor marks values that meet the target, and those that must not be.
func valueColor(c *holes.Column, p *holes.Place) fyne.ThemeColorName {
	met := func(off float64) fyne.ThemeColorName {
		if off == 0 {
			return theme.ColorNameSuccess
		}
		return ""
	}
	o := p.Combination()
	switch c.Key {
	case "anti_squat":
		if o.HasAntiSquat {
			return met(p.Off.AntiSquat)
		}
	case "instant_center_x":
		if o.HasInstantCenter {
			return met(p.Off.Ahead)
		}
	case "instant_center_z":
		if o.HasInstantCenter {
			return met(p.Off.Above)
		}
	case "pinion_change":
		if p.Off.Pinion > 0 {
			return theme.ColorNameWarning
		}
	case "highest_share":
		if o.Highest() > 1 {
			return theme.ColorNameError
		}
	case "envelope_share":
		if l := p.Launch(); l != nil && l.Worst.Share > 1 {
			return theme.ColorNameError
		}
	case "front_lift":
		if l, limit := p.Launch(), p.Target().LiftLimit; l != nil && limit > 0 && l.Lift > limit {
			return theme.ColorNameWarning
		}
	case "upper_turns":
		return recutColor(p, car.Upper)
	case "lower_turns":
		return recutColor(p, car.Lower)
	}
	return ""
}

// recutColor marks turns that the bars of a pair do not have.
func recutColor(p *holes.Place, pair car.Pair) fyne.ThemeColorName {
	if p.Recut(pair) {
		return theme.ColorNameError
	}
	return ""
}

// bareText writes a value without its unit, which stands over the column.
func bareText(c *holes.Column, p *holes.Place, u units.System) string {
	return strings.TrimSpace(strings.TrimSuffix(c.Text(p, u), u.Symbol(c.Quantity)))
}

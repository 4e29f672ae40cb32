package holes

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"bowline/app/form"
	"bowline/app/listing"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// list is the table of the combinations: their ranks, then columns of package holes, as
// many as there is room for, then why each stands where it does.
type list struct {
	study   *study.Study
	table   *listing.Table
	every   *form.Check     // whether all columns are shown, and scroll sideways
	columns []*holes.Column // on show
	why     bool            // reasons are on show
	places  []holes.Place   // as they are sorted
	units   units.System
	by      *holes.Column // sorted by; nil: by rank
	falling bool
	width   float32 // of the table [px]
	all     bool    // columns, whether they fit or not
	made    listMade
	asked   listAsked
	picked  int // the row that the table selects
	say     func(string)
	object  *fyne.Container
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

// listMade is what the order of places and the columns were made of, and the table shows.
type listMade struct {
	ranking uint64 // revision of the study's list
	present int
	by      *holes.Column
	falling bool
	listColumns
}

// listColumns is what the table's columns depend on beside the order.
type listColumns struct {
	units    units.System
	wide     int // digits that the holes need; 0 before the table has its columns
	launched bool
	all      bool
	width    float32
}

// listRank is the column of the ranks; it and the one with the holes stay when
// the others scroll.
const (
	listRank   = 0
	listHoles  = 1
	listFrozen = 2
)

// newList returns the table without rows; say hears why the row under the
// pointer stands where it does.
func newList(s *study.Study, say func(string), use func(index int)) *list {
	l := &list{study: s, say: say, picked: study.None}
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
	l.every = form.NewCheck("All columns", func() bool { return l.all }, form.Always(func(on bool) {
		l.all = on
		l.refresh()
	}))
	l.object = container.New(listRoom{l}, l.table)
	return l
}

// listRoom gives the table all the room there is, and as many columns as fit.
type listRoom struct{ list *list }

// MinSize implements fyne.Layout.
func (r listRoom) MinSize([]fyne.CanvasObject) fyne.Size { return r.list.table.MinSize() }

// Layout implements fyne.Layout.
func (r listRoom) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r.list.table.Resize(size)
	if size.Width != r.list.width {
		r.list.width = size.Width
		r.list.refresh()
	}
}

// sorted returns the place of the column sorted by.
func (l *list) sorted() int { return slices.Index(l.columns, l.by) + 1 }

// refresh shows what the study lists, where it points and what it has picked.
func (l *list) refresh() {
	l.units = l.study.Units()
	now := listMade{ranking: l.study.RankingRevision(), present: l.study.Present(), by: l.by, falling: l.falling, listColumns: listColumns{units: l.units, wide: l.holesWidth(), launched: l.study.LaunchesHoles(), all: l.all, width: l.width}}
	if now != l.made {
		columns := now.listColumns != l.made.listColumns || now.by != l.made.by
		l.made = now
		if columns {
			l.arrange()
			l.made.by, l.made.falling = l.by, l.falling
			l.table.SetColumns(l.headings(), listFrozen)
		}
		l.order(l.study.Listed())
		l.table.SetSorted(l.sorted(), l.falling)
		l.table.Refresh()
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
	case l.by == nil && !l.falling:
	case l.by == nil:
		l.places = slices.Clone(listed)
		slices.Reverse(l.places)
	default:
		l.places = slices.Clone(listed)
		holes.Sort(l.places, l.by, l.falling)
	}
}

// sort sorts by a column: rising at first, then falling, then by rank again.
func (l *list) sort(column int) {
	if column > len(l.columns) {
		return // Reasons have no order.
	}
	var by *holes.Column
	if column != listRank {
		by = l.columns[column-1]
	}
	switch {
	case by != l.by:
		l.by, l.falling = by, false
	case !l.falling:
		l.falling = true
	default:
		l.by, l.falling = nil, false
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

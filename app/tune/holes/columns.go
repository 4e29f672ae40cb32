package holes

import (
	"slices"
	"strconv"

	"bowline/app/listing"
	"bowline/model/car"
	"bowline/model/holes"
)

// columnWidth is the room for most values, in digits.
const columnWidth = 6

// reasonWidth is the room for reasons, in digits.
const reasonWidth = 90

// usual are the keys of the columns that are wanted most, in their order; the others
// follow as they stand in package holes.
var usual = []string{"instant_center_x", "instant_center_z", "anti_squat", "highest_share", "upper_turns", "lower_turns", "pinion_change", "hit_lower_push"}

// onScreen returns the columns for the screen, those wanted most first: while all
// combinations are to be launched, what comes of that stands next to the holes.
func onScreen(launched bool) []*holes.Column {
	names, _ := holes.ColumnOf("holes")
	list := []*holes.Column{names}
	add := func(wanted func(*holes.Column) bool) {
		for _, c := range holes.Columns {
			if c.Uses&holes.OnScreen != 0 && !slices.Contains(list, c) && wanted(c) {
				list = append(list, c)
			}
		}
	}
	if launched {
		add(func(c *holes.Column) bool { return c.OfLaunch })
	}
	for _, key := range usual {
		add(func(c *holes.Column) bool { return c.Key == key })
	}
	add(func(c *holes.Column) bool { return !c.OfLaunch })
	return list
}

// arrange chooses the columns: all, or those that fit, that sorted by among them.
func (l *list) arrange() {
	l.columns, l.why = onScreen(l.made.launched), true
	if !slices.Contains(l.columns, l.by) {
		l.by, l.falling = nil, l.falling && l.by == nil
	}
	if l.all {
		return
	}
	widths := l.table.Measure(l.headings())
	room := l.width - listing.BarWidth
	for _, w := range widths[:listFrozen] {
		room -= w
	}
	if at := slices.Index(l.columns, l.by); at > 0 {
		room -= widths[at+1]
	}
	l.why = false
	var fit []*holes.Column
	full := false
	for i, c := range l.columns {
		if i > 0 && c != l.by {
			if room -= widths[i+1]; room < 0 {
				full = true
			}
			if full {
				continue
			}
		}
		fit = append(fit, c)
	}
	l.columns, l.why = fit, !full && room >= widths[len(widths)-1]
}

// headings returns the table's columns in the units shown.
func (l *list) headings() []listing.Column {
	list := []listing.Column{{Title: "Rank", Width: 5, Align: listing.Right}}
	for _, c := range l.columns {
		list = append(list, l.heading(c))
	}
	if l.why {
		list = append(list, listing.Column{Title: "Why", Width: reasonWidth})
	}
	return list
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

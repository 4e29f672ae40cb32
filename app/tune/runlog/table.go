package runlog

import (
	"cmp"
	"slices"
	"strings"

	"bowline/app/listing"
	"bowline/app/study"

	"fyne.io/fyne/v2"
)

// runTable lists the runs of the current setup or of all, the newest first or by
// another column.
type runTable struct {
	study *study.Study
	table *listing.Table
	all   bool // setups
	by    int  // column sorted by
	up    bool // from the least

	headed bool // columns are those that are wanted
	runs   []loggedRun
	rows   []int     // indices of runs, as listed
	chosen loggedRun // selected last
	picked bool      // there is one
}

func newRunTable(s *study.Study) *runTable {
	t := &runTable{study: s, table: listing.New(nil, 1), by: byDate}
	t.table.OnSelected = func(key int) { t.chosen, t.picked = t.runs[key], true }
	t.table.OnSort = func(column int) { t.sort(t.columns()[column]) }
	return t
}

// columns returns which columns are there.
func (t *runTable) columns() []int {
	var there []int
	for i := range columns {
		if t.all || i != bySetup {
			there = append(there, i)
		}
	}
	return there
}

// setAll lists the runs of all setups, or of the current one.
func (t *runTable) setAll(on bool) {
	t.all, t.headed = on, false
	if !on && t.by == bySetup {
		t.by, t.up = byDate, false
	}
	t.refresh()
}

// sort sorts by a column, or if it is sorted by it the other way round.
func (t *runTable) sort(column int) {
	if column == t.by {
		t.up = !t.up
	} else {
		t.by, t.up = column, !columns[column].greatest
	}
	t.order()
}

// refresh takes up the log as it is. A run stays selected wherever it goes.
func (t *runTable) refresh() {
	doc := t.study.Document()
	if !t.headed {
		t.headed = true
		var headings []listing.Column
		for _, c := range t.columns() {
			headings = append(headings, columns[c].Column)
		}
		t.table.SetColumns(headings, 1)
	}
	t.runs = t.runs[:0]
	for i := range doc.Car().Setups {
		setup := &doc.Car().Setups[i]
		for j, r := range setup.Runs {
			t.runs = append(t.runs, loggedRun{r, i, j, setup.Name})
		}
	}
	t.find()
	t.order()
	t.table.SetPlaceholder(t.empty())
}

// find finds the selected run again after the car has changed: where it was, or
// else wherever it is.
func (t *runTable) find() {
	if !t.picked {
		return
	}
	at := slices.IndexFunc(t.runs, func(r loggedRun) bool {
		return r.Run == t.chosen.Run && r.name == t.chosen.name && r.index == t.chosen.index
	})
	if at < 0 {
		at = slices.IndexFunc(t.runs, func(r loggedRun) bool { return r.Run == t.chosen.Run })
	}
	if t.picked = at >= 0; t.picked {
		t.chosen = t.runs[at]
	}
}

// selected returns the run selected, if it is listed.
func (t *runTable) selected() (loggedRun, bool) {
	for _, i := range t.rows {
		if t.picked && t.runs[i] == t.chosen {
			return t.chosen, true
		}
	}
	return loggedRun{}, false
}

// choose selects a run of the car.
func (t *runTable) choose(setup, index int) {
	for _, r := range t.runs {
		if r.setup == setup && r.index == index {
			t.chosen, t.picked = r, true
		}
	}
	t.order()
}

// empty says why there are no rows.
func (t *runTable) empty() string {
	if t.all {
		return "No run is logged yet."
	}
	return "No run is logged with this setup yet."
}

// order lists the runs that are wanted.
func (t *runTable) order() {
	t.rows = t.rows[:0]
	current, key := t.study.Document().Setup(), listing.None
	for i := range t.runs {
		if t.all || t.runs[i].setup == current {
			t.rows = append(t.rows, i)
			if t.picked && t.runs[i] == t.chosen {
				key = i
			}
		}
	}
	slices.SortStableFunc(t.rows, func(a, b int) int { return t.compare(&t.runs[a], &t.runs[b]) })
	t.table.SetSource(t)
	t.table.SetSorted(slices.Index(t.columns(), t.by), !t.up)
	if key != t.table.Selected() {
		t.table.Select(key)
	}
}

// compare orders two runs by the column sorted by, what is left out last, and
// then by date and log, the newest first.
func (t *runTable) compare(a, b *loggedRun) int {
	direction := -1
	if t.up {
		direction = 1
	}
	n := 0
	if c := &columns[t.by]; c.number != nil {
		x, y := *c.number.Of(&a.Run), *c.number.Of(&b.Run)
		if n = lastIf(x == 0, y == 0); n == 0 {
			n = direction * cmp.Compare(x, y)
		}
	} else {
		x, y := c.text(a), c.text(b)
		if n = lastIf(x == "", y == ""); n == 0 {
			n = direction * strings.Compare(strings.ToLower(x), strings.ToLower(y))
		}
	}
	return cmp.Or(n, strings.Compare(b.Date, a.Date), cmp.Compare(b.setup, a.setup), cmp.Compare(b.index, a.index))
}

// lastIf orders what is left out behind what is not.
func lastIf(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

// Len implements listing.Source.
func (t *runTable) Len() int { return len(t.rows) }

// Key implements listing.Source.
func (t *runTable) Key(row int) int { return t.rows[row] }

// Cell implements listing.Source.
func (t *runTable) Cell(row, column int) (string, fyne.ThemeColorName) {
	r, c := &t.runs[t.rows[row]], &columns[t.columns()[column]]
	if c.number == nil {
		return c.text(r), ""
	}
	x := *c.number.Of(&r.Run)
	if x == 0 {
		return "—", ""
	}
	return t.study.Units().Figure(c.number.Quantity, x, 0), ""
}

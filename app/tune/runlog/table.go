package runlog

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"bowline/app/listing"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/units"

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

// loggedRun is a run with its place in the car.
type loggedRun struct {
	car.Run
	setup, index int
	name         string // of the setup
}

// Columns of the list, as sorted by. That of setups is there only with all of
// them.
const (
	runDate = iota
	runSetup
	runTrack
	runSixty
	runSquat
	runRear
	runFront
	runNote
)

func newRunTable(s *study.Study) *runTable {
	t := &runTable{study: s, table: listing.New(nil, 1)}
	t.table.OnSelected = func(key int) { t.chosen, t.picked = t.runs[key], true }
	t.table.OnSort = func(column int) { t.sort(t.columns()[column]) }
	return t
}

// columns returns which columns are there.
func (t *runTable) columns() []int {
	if t.all {
		return []int{runDate, runSetup, runTrack, runSixty, runSquat, runRear, runFront, runNote}
	}
	return []int{runDate, runTrack, runSixty, runSquat, runRear, runFront, runNote}
}

// runHeadings are the columns' headings. Those up to the anti-squat have room
// beside each other in the least width of a page; what is wider goes to words.
var runHeadings = [...]listing.Column{
	runDate: {Title: "Date", Width: 10}, runSetup: {Title: "Setup", Width: 8, Grow: 1}, runTrack: {Title: "Track", Width: 8, Grow: 1},
	runSixty: {Title: "60 ft", Unit: "s", Width: 6, Align: listing.Right},
	runSquat: {Title: "Anti-squat\nthen", Unit: "%", Width: 6, Align: listing.Right},
	runRear:  {Title: "Rear", Width: 10, Grow: 3}, runFront: {Title: "Front", Width: 10, Grow: 3}, runNote: {Title: "Note", Width: 8, Grow: 2},
}

// setAll lists the runs of all setups, or of the current one.
func (t *runTable) setAll(on bool) {
	t.all, t.headed = on, false
	if !on && t.by == runSetup {
		t.by, t.up = runDate, false
	}
	t.refresh()
}

// sort sorts by a column, or if it is sorted by it the other way round.
func (t *runTable) sort(column int) {
	if column == t.by {
		t.up = !t.up
	} else {
		t.by, t.up = column, column != runDate && column != runSquat
	}
	t.order()
}

// refresh takes up the log as it is. A run stays selected wherever it goes.
func (t *runTable) refresh() {
	doc := t.study.Document()
	if !t.headed {
		t.headed = true
		var columns []listing.Column
		for _, c := range t.columns() {
			columns = append(columns, runHeadings[c])
		}
		t.table.SetColumns(columns, 1)
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
	if number := runNumberOf(t.by); number != nil {
		x, y := *number.Of(&a.Run), *number.Of(&b.Run)
		if n = lastIf(x == 0, y == 0); n == 0 {
			n = direction * cmp.Compare(x, y)
		}
	} else {
		x, y := t.text(a, t.by), t.text(b, t.by)
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

// runNumberOf returns the number of a run that a column shows; nil for none.
func runNumberOf(column int) *car.RunNumber {
	switch column {
	case runSixty:
		return car.RunSixtyFoot
	case runSquat:
		return car.RunAntiSquat
	}
	return nil
}

// text returns the words of a column.
func (t *runTable) text(r *loggedRun, column int) string {
	switch column {
	case runDate:
		return r.Date
	case runSetup:
		return r.name
	case runTrack:
		return r.Track
	case runRear:
		return r.Rear
	case runFront:
		return r.Front
	}
	return r.Note
}

// Len implements listing.Source.
func (t *runTable) Len() int { return len(t.rows) }

// Key implements listing.Source.
func (t *runTable) Key(row int) int { return t.rows[row] }

// Cell implements listing.Source.
func (t *runTable) Cell(row, column int) (string, fyne.ThemeColorName) {
	r, what := &t.runs[t.rows[row]], t.columns()[column]
	number := runNumberOf(what)
	if number == nil {
		return t.text(r, what), ""
	}
	x := *number.Of(&r.Run)
	if x == 0 {
		return "—", ""
	}
	return t.study.Units().Figure(number.Quantity, x, 0), ""
}

// describe writes all of a run, which the list may cut.
func (r *loggedRun) describe(u units.System) string {
	parts := []string{r.Date}
	for _, text := range []string{r.Track, fmt.Sprintf("setup %q", r.name)} {
		if text != "" {
			parts = append(parts, text)
		}
	}
	for _, n := range car.RunNumbers {
		if x := *n.Of(&r.Run); x != 0 {
			parts = append(parts, n.Label+" "+u.Format(n.Quantity, x))
		}
	}
	text := strings.Join(parts, ", ") + "."
	for _, field := range car.RunTexts[1:] {
		if said := *field.Of(&r.Run); said != "" {
			text += fmt.Sprintf(" %s: %s.", field.Label, strings.TrimSuffix(said, "."))
		}
	}
	return text
}

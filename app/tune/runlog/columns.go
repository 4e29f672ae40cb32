package runlog

import (
	"fmt"
	"strings"

	"bowline/app/listing"
	"bowline/model/car"
	"bowline/model/units"
)

// loggedRun is a run with its place in the car.
type loggedRun struct {
	car.Run
	setup, index int
	name         string // of the setup
}

// column is a column of the list. Those up to the anti-squat have room beside each other
// in the least width of a window; what is wider goes to words.
type column struct {
	listing.Column
	text     func(*loggedRun) string // nil where there is a number
	number   *car.RunNumber
	greatest bool // sorted from the greatest at first
}

var columns = []column{
	{Column: listing.Column{Title: "Date", Width: 10}, text: func(r *loggedRun) string { return r.Date }, greatest: true},
	{Column: listing.Column{Title: "Setup", Width: 8, Grow: 1}, text: func(r *loggedRun) string { return r.name }},
	textColumn(car.RunTexts[0], 8, 1),
	{Column: listing.Column{Title: "60 ft", Unit: "s", Width: 6, Align: listing.Right}, number: car.RunSixtyFoot},
	{Column: listing.Column{Title: "Anti-squat\nthen", Unit: "%", Width: 6, Align: listing.Right}, number: car.RunAntiSquat, greatest: true},
	textColumn(car.RunTexts[1], 10, 3),
	textColumn(car.RunTexts[2], 10, 3),
	textColumn(car.RunTexts[3], 8, 2),
}

// Places of columns that are more than the others: the list is sorted by date at
// first, and setups are there only with the runs of all.
const (
	byDate = iota
	bySetup
)

// textColumn returns the column of a text.
func textColumn(t *car.RunText, width int, grow float32) column {
	return column{Column: listing.Column{Title: t.Label, Width: width, Grow: grow}, text: func(r *loggedRun) string { return *t.Of(&r.Run) }}
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

package car

import (
	"slices"
	"time"

	"bowline/model/units"
)

// Run is one pass on a track, logged with the setup that made it. All of it
// but the date may be left out.
type Run struct {
	Date      string  // as in "2026-03-14"
	Track     string  // where
	SixtyFoot float64 // time to 60 ft [s]; 0 when it was not taken
	Rear      string  // what the rear did
	Front     string  // what the front did
	Note      string
	// AntiSquat is what the setup had at ride height when the run was logged,
	// 1 is 100 %; 0 when it is not known. It stays as it is when the setup's
	// holes change later.
	AntiSquat float64
}

// DateForm is the form of a run's date, that of ISO 8601.
const DateForm = time.DateOnly

// GiveDate says what a right date is.
const GiveDate = "give year, month and day as in 2026-03-14"

// MaxRuns bounds the runs logged with one setup.
const MaxRuns = 1000

// Clone returns a copy that shares nothing with s.
func (s Setup) Clone() Setup {
	s.Runs = slices.Clone(s.Runs)
	return s
}

// RunNumber is a number of a run that may be left out; 0 stands for that.
type RunNumber struct {
	Key      string // in a run of the car file
	Label    string // on screen
	Help     string
	Quantity units.Quantity
	Min, Max float64 // allowed values, both included, in SI

	Of func(*Run) *float64
}

// The numbers of a run.
var (
	RunSixtyFoot = &RunNumber{"sixty_ft", "60 ft", "Time to 60 ft as on the time slip.", units.Time, 0.3, 30, func(r *Run) *float64 { return &r.SixtyFoot }}
	RunAntiSquat = &RunNumber{"anti_squat", "Anti-squat", "What the setup had at ride height when the run was made.", units.Percent, percent(-10000), percent(10000), func(r *Run) *float64 { return &r.AntiSquat }}
)

// RunNumbers lists the numbers of a run in file order.
var RunNumbers = [...]*RunNumber{RunSixtyFoot, RunAntiSquat}

// Range writes the allowed values with their unit, as in "0.3 s to 30 s".
func (n *RunNumber) Range(s units.System) string {
	return bound(s, n.Quantity, n.Min) + " to " + bound(s, n.Quantity, n.Max)
}

// Check reports whether a number that is given is allowed, and if not what is
// wrong.
func (n *RunNumber) Check(x float64, s units.System) (Problem, bool) {
	if x >= n.Min && x <= n.Max {
		return Problem{}, true
	}
	return Problem{n.Key, number(s, n.Quantity, x) + " is out of range", "give " + n.Range(s) + ", or leave it out"}, false
}

// RunText is a text of a run that may be left empty.
type RunText struct {
	Key   string // in a run of the car file
	Label string // on screen
	Help  string

	Of func(*Run) *string
}

// RunTexts lists the texts of a run in file order.
var RunTexts = [...]*RunText{
	{"track", "Track", "Where the run was made.", func(r *Run) *string { return &r.Track }},
	{"rear", "Rear", "What the rear did, such as separated, squatted or spun.", func(r *Run) *string { return &r.Rear }},
	{"front", "Front", "What the front did, such as carried the wheels to 60 ft.", func(r *Run) *string { return &r.Front }},
	{"note", "Note", "Weather, tire pressure, or what else was changed.", func(r *Run) *string { return &r.Note }},
}

// IsDate reports whether a text is a day of the calendar in the form DateForm.
func IsDate(text string) bool {
	day, err := time.Parse(DateForm, text)
	return err == nil && day.Format(DateForm) == text
}

// Quickest returns the least 60-ft time of runs [s]; false, and 0, where none has one.
func Quickest(runs []Run) (best float64, ok bool) {
	for i := range runs {
		if t := runs[i].SixtyFoot; t != 0 && (!ok || t < best) {
			best, ok = t, true
		}
	}
	return best, ok
}

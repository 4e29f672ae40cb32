package car

import (
	"slices"
	"time"
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

// Clone returns a copy that shares nothing with s.
func (s Setup) Clone() Setup {
	s.Runs = slices.Clone(s.Runs)
	return s
}

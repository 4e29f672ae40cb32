package launch

import (
	"fmt"

	"bowline/model/column"
)

// Outcome is how a launch ended.
type Outcome int

// The outcomes.
const (
	Finished Outcome = iota // the car came to the end of the distance
	TimeUp                  // the time limit came first
	WentOver                // it turned over, backward or on its side
	NotHeld                 // bars and rear springs do not hold the axle at ride height
	NoRest                  // no static equilibrium with the preload was found
	Diverged                // the solution diverged
	TooStiff                // a part vibrates or settles too fast to be followed, as Result.Fastest names it
	Stopped                 // the run was canceled
)

// Outcomes lists all outcomes.
var Outcomes = [...]Outcome{Finished, TimeUp, WentOver, NotHeld, NoRest, Diverged, TooStiff, Stopped}

// String returns the outcome's name in reports.
func (o Outcome) String() string {
	if o < 0 || int(o) >= len(Outcomes) {
		return fmt.Sprintf("Outcome(%d)", int(o))
	}
	return [...]string{"finished", "time up", "went over", "axle not held", "found no rest", "diverged", "too stiff", "stopped"}[o]
}

// Strongest returns the bar with the largest force of all, as a magnitude [N],
// with its direction and when it was [s]. The force is 0 when no bar is loaded.
func (r *Result) Strongest() (bar RodID, way column.Direction, force, at float64) {
	for _, b := range Bars {
		p := &r.Peaks[b]
		if p.Pull > force {
			bar, way, force, at = b, column.Pull, p.Pull, p.PullTime
		}
		if p.Push > force {
			bar, way, force, at = b, column.Push, p.Push, p.PushTime
		}
	}
	return bar, way, force, at
}

package launch

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"bowline/model/units"
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
	Stopped                 // the run was canceled
)

// Outcomes lists all outcomes.
var Outcomes = [...]Outcome{Finished, TimeUp, WentOver, NotHeld, NoRest, Diverged, Stopped}

// String returns the outcome's name in reports.
func (o Outcome) String() string {
	if o < 0 || int(o) >= len(Outcomes) {
		return fmt.Sprintf("Outcome(%d)", int(o))
	}
	return [...]string{"finished", "time up", "went over", "axle not held", "found no rest", "diverged", "stopped"}[o]
}

// Verdict says in words how the launch went.
func (r *Result) Verdict(s units.System) string {
	switch {
	case r.Outcome == NotHeld:
		return "There is no launch: the lines of the bars and the rear springs meet in one point, and nothing holds the axle."
	case r.Outcome == NoRest:
		return "There is no launch: the car finds no rest with this preload. Take turns off the bars."
	case len(r.Time) == 0:
		return "There is no launch: the run was stopped before it began."
	}
	said := []string{r.ending(s)}
	if r.Lift.Height > 0 {
		said = append(said, fmt.Sprintf("The front wheels rise up to %s and are off the ground for %.2f s.", s.Format(units.Length, r.Lift.Height), r.Lift.Duration))
	}
	if bar, force, way, at := r.highest(); force > 0 {
		said = append(said, fmt.Sprintf("The %s carries the most: %s in %s at %.3f s.", bar, s.Format(units.Force, force), way, at))
	}
	return strings.Join(said, " ")
}

// ending is the sentence on the outcome itself.
func (r *Result) ending(s units.System) string {
	last := len(r.Time) - 1
	end := r.Time[last]
	switch r.Outcome {
	case Finished:
		return fmt.Sprintf("%s in %.3f s.", far(s, r.Options.Distance), r.Elapsed)
	case TimeUp:
		return fmt.Sprintf("After %.2f s the car has come %s.", end, far(s, r.Distance[last]))
	case WentOver:
		return fmt.Sprintf("The car goes over after %.2f s.", end)
	case Diverged:
		return fmt.Sprintf("The numbers run away after %.3f s: some part is too light, too stiff or too hard damped to be computed.", end)
	}
	return fmt.Sprintf("Stopped after %.2f s.", end)
}

// far writes a distance along the track: "60 ft", "18.29 m".
func far(s units.System, distance float64) string {
	if s == units.SI {
		return strconv.FormatFloat(math.Round(distance*100)/100, 'f', -1, 64) + " m"
	}
	return strconv.FormatFloat(math.Round(distance/units.Foot*10)/10, 'f', -1, 64) + " ft"
}

// highest returns the bar with the largest force of all.
func (r *Result) highest() (bar RodID, force float64, way string, at float64) {
	for _, b := range Bars {
		p := &r.Peaks[b]
		if p.Pull > force {
			bar, force, way, at = b, p.Pull, "pull", p.PullTime
		}
		if p.Push > force {
			bar, force, way, at = b, p.Push, "push", p.PushTime
		}
	}
	return bar, force, way, at
}

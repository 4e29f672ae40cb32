package words

import (
	"fmt"
	"strings"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

// LaunchVerdict says how a launch went: how it ended, how the front wheels rose,
// and which bar carried most.
func LaunchVerdict(r *launch.Result, s units.System) string {
	switch {
	case r.Outcome == launch.NotHeld:
		return "There is no launch: the lines of the bars and the rear springs meet in one point, and nothing holds the axle."
	case r.Outcome == launch.TooStiff:
		return "There is no launch: " + Part(r.Fastest) + " move too fast to be computed. A mass or an inertia is too small for the springs and dampers on it, or one of these is too stiff."
	case r.Outcome == launch.NoRest:
		if r.Car == nil || r.Car.Setups[r.Setup].Turns == (car.Turns{}) {
			return "There is no launch: the car finds no rest at ride height on its springs and tires."
		}
		return "There is no launch: the car finds no rest with this preload. Take turns off the bars."
	case len(r.Time) == 0:
		return "There is no launch: the run was stopped before it began."
	}
	said := []string{ending(r, s)}
	if spin := r.Of(launch.Wheelspin); len(spin) > 0 {
		said = append(said, spinning(r, spin, s))
	}
	if r.Lift.Height > 0 {
		height := s.Format(units.Length, r.Lift.Height)
		if r.Lift.Duration < leastFlight {
			said = append(said, fmt.Sprintf("One front wheel at a time leaves the ground, up to %s.", height))
		} else {
			said = append(said, fmt.Sprintf("The front wheels rise up to %s and are both off the ground for %.2f s.", height, r.Lift.Duration))
		}
	}
	if bar, way, force, at := r.Strongest(); force > 0 {
		said = append(said, fmt.Sprintf("The %s carries the most: %s in %s at %s.", bar, s.Format(units.Force, force), way, s.Format(units.Time, at)))
	}
	return strings.Join(said, " ")
}

// spinning says when the rear tires spin.
func spinning(r *launch.Result, spin []launch.Event, s units.System) string {
	text := "The rear tires spin past their peak grip from " + s.Format(units.Time, spin[0].From)
	all, _ := spells(spin, 0)
	switch end := r.Time[len(r.Time)-1]; {
	case all.count > 1:
		return text + fmt.Sprintf(", for %s in %d spells.", s.Format(units.Time, all.duration), all.count)
	case all.most.To+r.Options.Output < end:
		return text + " to " + s.Format(units.Time, all.most.To) + "."
	}
	return text + " on."
}

// leastFlight is for how long both front wheels are off the ground at least to be said so [s]:
// less reads as nothing.
const leastFlight = 0.005

// ending says how a launch that has a history ended.
func ending(r *launch.Result, s units.System) string {
	last := len(r.Time) - 1
	end := r.Time[last]
	switch r.Outcome {
	case launch.Finished:
		text := fmt.Sprintf("%s in %s", Distance(r.Options.Distance, s), s.Format(units.Time, r.Elapsed))
		if r.Options.Rollout > 0 {
			text += fmt.Sprintf(" after a rollout of %s, %s from release", s.Format(units.Length, r.Options.Rollout), s.Format(units.Time, r.FromRelease))
		}
		return text + "."
	case launch.TimeUp:
		return fmt.Sprintf("After %.2f s the car has come %s.", end, Distance(r.Distance[last], s))
	case launch.WentOver:
		return fmt.Sprintf("The car goes over after %.2f s.", end)
	case launch.Diverged:
		return fmt.Sprintf("The numbers run away after %s: some part is too light, too stiff or too hard damped to be computed.", s.Format(units.Time, end))
	}
	return fmt.Sprintf("Stopped after %.2f s.", end)
}

// Distance writes a distance along the track [m] with no more decimals than it
// takes: "60 ft", "18.29 m".
func Distance(x float64, s units.System) string {
	figure, symbol := track(x, s)
	return strings.TrimSuffix(strings.TrimRight(figure, "0"), ".") + symbol
}

// Come writes how far the car has come [m], with decimals that hold still while
// it rolls: "59.8 ft", "18.20 m".
func Come(x float64, s units.System) string {
	figure, symbol := track(x, s)
	return figure + symbol
}

// track writes a distance along the track, in feet or meters.
func track(x float64, s units.System) (figure, symbol string) {
	if s == units.SI {
		return units.Decimal(x, 2), " m"
	}
	return units.Decimal(x/units.Foot, 1), " ft"
}

// SixtyFeet writes the time of a launch over its distance, or how it ended
// without one.
func SixtyFeet(r *launch.Result, s units.System) string {
	if r.Outcome == launch.Finished {
		return s.Format(units.Time, r.Elapsed)
	}
	return r.Outcome.String()
}

// FromRelease writes the time of a launch over its distance from the brake's first
// give, or how it ended without one.
func FromRelease(r *launch.Result, s units.System) string {
	if r.Outcome == launch.Finished {
		return s.Format(units.Time, r.FromRelease)
	}
	return r.Outcome.String()
}

// NearestInLaunch says how near the bars come to their limits in a launch, left
// against right; nothing when none is loaded.
func NearestInLaunch(a *analysis.Result, r *launch.Result) string {
	bar, way, most := a.NearestInLaunch(r)
	if most.Share == 0 {
		return ""
	}
	return fmt.Sprintf("Nearest to its limit comes the %s: %s of what it may %s.", bar, units.Share(most.Share), way)
}

// OtherLaunch says how a setup leaves that the current one is compared with.
func OtherLaunch(o Setup, s units.System) string {
	return strings.TrimSpace(fmt.Sprintf("Compared with it, %q: 60 ft %s. %s", o.Name, SixtyFeet(o.Launch, s), NearestInLaunch(o.Result, o.Launch)))
}

// Part names a group of parts of the car.
func Part(p launch.Part) string {
	return [...]string{"the bars and the locator", "the rear springs", "the rear tires", "the front wheels", "the anti-roll bars", "the wheels of the wheelie bar", "the engine and the converter"}[p]
}

// FrontLift says how the front wheels leave the ground.
func FrontLift(l launch.Lift, s units.System) string {
	up := fmt.Sprintf("up to %s at %s", s.Format(units.Length, l.Height), s.Format(units.Time, l.Time))
	switch {
	case l.Duration > 0:
		return fmt.Sprintf("off the ground for %s in all, first at %s, %s", s.Format(units.Time, l.Duration), s.Format(units.Time, l.Start), up)
	case l.Height > 0:
		return "one at a time off the ground, " + up
	}
	return "stay on the ground"
}

// LoggedAgainst says how the quickest 60-ft time logged with a setup [s], 0 for none,
// stands to the one computed, which like it is counted from the rollout; nothing without
// both.
func LoggedAgainst(best float64, l *launch.Result, s units.System) string {
	if best == 0 || l.Outcome != launch.Finished {
		return ""
	}
	text := fmt.Sprintf("Quickest 60 ft logged %s, computed %s", s.Format(units.Time, best), s.Format(units.Time, l.Elapsed))
	by := Difference(s, units.Time, l.Elapsed, best, "slower than computed", "quicker than computed")
	if by == Same {
		return text + ": the same."
	}
	return text + ": the car was " + by + "."
}

package words

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/units"
)

// Unevenness says how unlike left and right rear are, as in "10.3 % of what both
// carry".
func Unevenness(x float64) string { return Apart(x) + " of what both carry" }

// Apart writes an unevenness as a figure, as in "10.3 %".
func Apart(x float64) string { return units.Decimal(100*x, 1) + " %" }

// RearApart says how unlike the rear tires are through a launch, and what preload does
// about it.
func RearApart(l *launch.Result, s units.System) string {
	if len(l.Time) == 0 {
		return LaunchVerdict(l, s)
	}
	return "Through the launch left and right rear tire differ on average by " + Unevenness(l.Unevenness()) + ". The driveshaft's torque lifts one of them; preload in the bars presses it down again, and loads the bars for it."
}

// EvenTurns says what to turn by a way that evens the rear tires, what comes of it, what
// it costs the bars, and why not more.
func EvenTurns(r *preload.Result, w *preload.Way) string {
	var turned []string
	for _, bar := range launch.Bars {
		if t := r.Turn(w, bar); t != 0 {
			turned = append(turned, fmt.Sprintf("the %s %s", bar, OwnTurns(t)))
		}
	}
	text := fmt.Sprintf("Make %s: left and right rear tire then differ by %s, instead of %s.", and(turned), Unevenness(w.Unevenness), Apart(r.Before.Unevenness))
	return text + " " + turnsCost(r, w) + after(stopped(w.Stop))
}

// NoTurns says that no turn is worth it, and what stands in its way.
func NoTurns(r *preload.Result) string {
	text := fmt.Sprintf("No turn of the bars is worth it: left and right rear tire differ by %s, and no bar that is turned takes off half a percent.", Unevenness(r.Before.Unevenness))
	return text + after(stopped(r.Stop))
}

// turnsCost says what a way costs the bar that comes nearest to its limit with it.
func turnsCost(r *preload.Result, w *preload.Way) string {
	most := w.Envelope.Worst()
	before := r.Before.Envelope.Of(most.Bar).Share
	switch {
	case most.Share > 1:
		return fmt.Sprintf("The %s is over its limit as it stands, at %s, and stays over it, at %s.", most.Bar, units.Share(before), units.Share(most.Share))
	case units.Share(before) == units.Share(most.Share):
		return fmt.Sprintf("No bar comes nearer to its limit than the %s does already, %s.", most.Bar, units.Share(before))
	}
	return fmt.Sprintf("Nearest to its limit comes the %s, %s of it instead of %s.", most.Bar, units.Share(most.Share), units.Share(before))
}

// stopped says what keeps the rear tires from being more even; nothing when nothing
// does.
func stopped(s preload.Stop) string {
	switch s.Kind {
	case preload.StoppedByThread:
		return fmt.Sprintf("One flat more would even them further, but the thread of the %s ends here.", s.Bar)
	case preload.StoppedByLimit:
		return fmt.Sprintf("One flat more would even them further, but it takes the %s beyond its limit, to %s.", s.Bar, units.Share(s.Share))
	}
	return ""
}

// after returns a sentence with a space before it.
func after(sentence string) string {
	if sentence == "" {
		return ""
	}
	return " " + sentence
}

// and joins phrases, as in "this, that and the other".
func and(phrases []string) string {
	last := len(phrases) - 1
	if last < 1 {
		return strings.Join(phrases, "")
	}
	return strings.Join(phrases[:last], ", ") + " and " + phrases[last]
}

// TurnsWay names a way by the bars that it turns and what it comes to, as in "Upper
// right bar: 9.3 %".
func TurnsWay(r *preload.Result, w *preload.Way) string {
	var turned []launch.RodID
	for _, bar := range launch.Bars {
		if r.Turn(w, bar) != 0 {
			turned = append(turned, bar)
		}
	}
	name := fmt.Sprintf("%d bars", len(turned))
	switch {
	case len(turned) == 1:
		name = Capital(turned[0].String())
	case len(turned) == 2 && turned[0].Pair() == turned[1].Pair():
		name = "Both " + turned[0].Pair().Bars()
	case len(turned) == len(launch.Bars):
		name = "All four bars"
	}
	return name + ": " + Apart(w.Unevenness)
}

// TurnOf says what a way turns a bar by; "—" when it stays.
func TurnOf(r *preload.Result, w *preload.Way, bar launch.RodID) string {
	if t := r.Turn(w, bar); t != 0 {
		return OwnTurns(t)
	}
	return "—"
}

// ThreadLeft says what the thread of a bar that a way turns still has in the same
// direction, as in "6.2 turns"; "—" when it stays.
func ThreadLeft(r *preload.Result, w *preload.Way, bar launch.RodID) string {
	room := r.Left(&w.State, bar)
	left := room.Longer
	switch t := r.Turn(w, bar); {
	case t == 0:
		return "—"
	case t < 0:
		left = room.Shorter
	}
	// Down to a tenth, past what rounding leaves below one.
	return units.Decimal(math.Floor(10*left+1e-6)/10, 1) + " turns"
}

// EvenCar says in the rows of EvenCarNames what the car does with a state, and what its
// turns do to pinion and axle; nil for none.
func EvenCar(s *preload.State, effect *adjuster.Effect, u units.System) []string {
	pair := func(load [2]float64) string {
		return u.Figure(units.Force, load[launch.Left], 0) + " / " + u.Format(units.Force, load[launch.Right])
	}
	list := []string{Apart(s.Unevenness), SixtyFeet(s.Launch, u), pair(s.Launch.Static.RearLoad), pair(s.Launch.Static.FrontLoad)}
	switch {
	case effect == nil:
		return append(list, "—", "—")
	case effect.Cannot != nil:
		return append(list, "cannot be turned so", "—")
	}
	return append(list, u.Nose(effect.Pinion), u.ForeAft(effect.Shift))
}

// EvenCarNames names the rows of EvenCar.
var EvenCarNames = []string{"Rear tires differ", "60 ft", "Rear tires at rest", "Front tires at rest", "Pinion", "Axle"}

// TurnsThen says what a setup's bars are turned to with a way; nothing for one without
// preload before.
func TurnsThen(r *preload.Result, w *preload.Way) string {
	if r.Before.Turns == (car.Turns{}) {
		return ""
	}
	t := w.Turns
	var list []string
	for i, bar := range car.BarTurns {
		if x := *bar.Of(&t); x != 0 {
			list = append(list, launch.RodID(i).String()+" "+OwnTurns(x))
		}
	}
	if len(list) == 0 {
		return "The setup then has no preload."
	}
	return "The setup then has: " + strings.Join(list, ", ") + "."
}

// What turns that have been found are of, where that is not the car as it is.
const (
	TurnsTaken    = "The setup has these turns now. Undo takes them back."
	TurnsOutdated = "These turns are those for the car or the setup before the last edit: search again."
)

// TurnsProgress says how a search for turns stands; nothing when there is nothing to
// say.
func TurnsProgress(runs bool, launches int, edited bool, err error) string {
	var none *preload.NoLaunch
	switch {
	case runs && launches > 0:
		return "Searching, " + units.Count(launches) + " launches so far."
	case runs:
		return "Searching."
	case edited:
		return "The search was stopped: the car or the setup is another one now."
	case errors.As(err, &none):
		return "Not searched: the setup has no launch to be made even (" + none.Outcome.String() + ")."
	case err != nil:
		return "Not searched: " + err.Error() + "."
	}
	return ""
}

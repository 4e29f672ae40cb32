package words

import (
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

// RearApart says how unlike the rear tires are through a launch.
func RearApart(l *launch.Result) string {
	return "Through the launch the loads of left and right rear tire are " + Unevenness(preload.Unevenness(&l.History)) + " apart."
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
	text := fmt.Sprintf("Turn %s: left and right rear are then %s apart, instead of %s.", and(turned), Unevenness(w.Unevenness), Apart(r.Before.Unevenness))
	return text + " " + turnsCost(r, w) + after(stopped(w.Stop))
}

// NoTurns says that no turn is worth it, and what stands in its way.
func NoTurns(r *preload.Result) string {
	text := fmt.Sprintf("No turn of the bars is worth it: left and right rear are %s apart, and no bar takes off half a percent.", Unevenness(r.Before.Unevenness))
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
		return fmt.Sprintf("No bar comes nearer to its limit than the %s does now, %s.", most.Bar, units.Share(before))
	}
	return fmt.Sprintf("Nearest to its limit comes the %s, %s of it; now it is at %s.", most.Bar, units.Share(most.Share), units.Share(before))
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

// EvenBar is what a way does to one bar, in the words of a table.
type EvenBar struct {
	Turn         string // what to turn it by, "—" when it stays
	Before, Then string // share of its limit
	Over         bool   // Then is beyond it
	Left         string // what its thread has left on in the same direction, "—" when it stays
}

// EvenBars says what a way does to each bar, by RodID.
func EvenBars(r *preload.Result, w *preload.Way) (list [len(launch.Bars)]EvenBar) {
	for _, bar := range launch.Bars {
		then := w.Envelope.Of(bar).Share
		b := EvenBar{Turn: "—", Left: "—", Before: units.Share(r.Before.Envelope.Of(bar).Share), Then: units.Share(then), Over: then > 1}
		if t := r.Turn(w, bar); t != 0 {
			room := r.Left(&w.State, bar)
			left := room.Longer
			if t < 0 {
				left = room.Shorter
			}
			// Down to a flat, past what rounding leaves below one.
			left = math.Floor(left*adjuster.Flats+1e-6) / adjuster.Flats
			b.Turn, b.Left = OwnTurns(t), units.Decimal(left, 1)+" turns"
		}
		list[bar] = b
	}
	return list
}

// EvenCar says in the rows of EvenCarNames what the car does with a state, and what its
// turns do to pinion and axle.
func EvenCar(s *preload.State, effect adjuster.Effect, u units.System) []string {
	pair := func(load [2]float64) string {
		return units.Group(units.Decimal(u.FromSI(units.Force, load[launch.Left]), 0)) + " / " + u.Format(units.Force, load[launch.Right])
	}
	list := []string{Apart(s.Unevenness), SixtyFeet(s.Launch, u), pair(s.Launch.Static.RearLoad), pair(s.Launch.Static.FrontLoad)}
	if effect.Cannot != nil {
		return append(list, Effect(effect, u), "—")
	}
	return append(list, u.Nose(effect.Pinion), u.ForeAft(effect.Shift))
}

// EvenCarNames names the rows of EvenCar.
var EvenCarNames = []string{"Rear tires apart", "60 ft", "Rear at rest", "Front at rest", "Pinion", "Axle"}

// TurnsTo says what a setup's bars are turned to, as in "upper right 1 turn 4 flats
// shorter"; "no preload" for none.
func TurnsTo(t car.Turns) string {
	var list []string
	for i, bar := range car.BarTurns {
		if x := *bar.Of(&t); x != 0 {
			list = append(list, strings.TrimSuffix(launch.RodID(i).String(), " bar")+" "+OwnTurns(x))
		}
	}
	if len(list) == 0 {
		return "no preload"
	}
	return strings.Join(list, ", ")
}

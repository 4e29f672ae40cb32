package analysis

import (
	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
)

// ThreadWarning returns what is to be said of the turns that a setup preloads a bar
// by: BeyondThread when its thread does not have them, LittleThread when they leave
// fewer than adjuster.WellEngaged diameters engaged; false when nothing is.
func ThreadWarning(c *car.Car, setup int, bar launch.RodID) (Warning, bool) {
	turns := *car.BarTurns[bar].Of(&c.Setups[setup].Turns)
	if turns == 0 {
		return Warning{}, false
	}
	room := adjuster.RoomOf(c, setup, bar.Pair())
	w := Warning{Pair: bar.Pair(), Bar: bar, Value: turns, Room: room}
	switch {
	case !room.Allows(turns):
		w.Kind = BeyondThread
	case turns > 0 && turns > room.Well:
		w.Kind, w.Limit = LittleThread, adjuster.WellEngaged
	default:
		return Warning{}, false
	}
	return w, true
}

// warnOfThreads warns of turns of preload, bar by bar.
func (r *Result) warnOfThreads(kind Kind, add func(Warning)) {
	for _, bar := range launch.Bars {
		if w, ok := ThreadWarning(r.Car, r.Options.Setup, bar); ok && w.Kind == kind {
			add(w)
		}
	}
}

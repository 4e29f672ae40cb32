package adjuster

import "math"

// Flats is the number of flats of a bar's hexagon in a turn.
const Flats = 6

// Turn is what to turn a bar by as a wrench does it: whole turns and flats.
// Both are positive to lengthen the bar and negative to shorten it.
type Turn struct {
	Whole int     // turns [1]
	Flats int     // sixths of a turn beyond them, −5 to 5 [1]
	Rest  float64 // what is left of the exact turns, −1/12 to 1/12 [1]
}

// mostTurns bounds the turns that a Turn counts one by one; no bar has room
// for as many.
const mostTurns = 1e6

// InFlats splits turns [1] into whole turns and the nearest flat. Turns beyond
// a million count as a million, with what is left in Rest.
func InFlats(turns float64) Turn {
	flats := int(math.Round(Flats * max(-mostTurns, min(mostTurns, turns))))
	return Turn{
		Whole: flats / Flats,
		Flats: flats % Flats,
		Rest:  turns - float64(flats)/Flats,
	}
}

// Exact returns the turns, rest included [1].
func (t Turn) Exact() float64 { return t.Rounded() + t.Rest }

// Rounded returns the turns without the rest [1].
func (t Turn) Rounded() float64 { return float64(t.Whole) + float64(t.Flats)/Flats }

// None reports whether there is no flat to turn by.
func (t Turn) None() bool { return t.Whole == 0 && t.Flats == 0 }

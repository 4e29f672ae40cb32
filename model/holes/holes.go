// Package holes evaluates every choice of holes that a car's brackets offer,
// ranks them by a target, and says what each hole is worth.
package holes

import (
	"strings"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Table is every combination of one car's holes. It never changes after Search
// returns; share it freely.
type Table struct {
	Car          *car.Car      // the inputs, not to be changed
	Library      stock.Library // the materials
	Travels      int           // rear travels that each combination was evaluated at
	Combinations []Combination // in the order of Index
	Launches     *Launches     // of the combinations; nil: they are not asked for
}

// With returns the table with launches of its combinations, or without any for nil.
func (t *Table) With(l *Launches) *Table {
	with := *t
	with.Launches = l
	return &with
}

// Combination is one choice of holes, with the bars as long as they have to be
// to keep wheelbase and pinion angle at ride height.
type Combination struct {
	Holes car.Holes

	// Refused is true for holes that cannot be used, since Validate would refuse a
	// setup with them: Table.Refusal says why. All else is then zero.
	Refused bool

	// At ride height.
	Length           [2]float64 // pin to pin, by car.Pair [m]
	HasInstantCenter bool       // false for parallel bars
	InstantCenter    r2.Vec     // X is the swing arm: ahead of the rear contact; Y above the ground [m]
	HasAntiSquat     bool       // false where the line of action stands upright
	AntiSquat        float64    // 1 is 100 %

	// Over the travel from full droop to full bump.
	AntiSquatRange [2]float64       // least and greatest of the travels that have one [1]
	PinionRange    [2]float64       // least and greatest turn of the housing, nose-up positive [rad]
	Closure        [2]float64       // travels between which the linkage closes [m]
	Peak           [2][2][2]float64 // largest force in one bar by car.Pair, analysis.Case and column.Direction [N]
	Share          [2][2]float64    // largest share of the allowable load by car.Pair and column.Direction [1]
}

// Usable reports whether the holes can be used.
func (c *Combination) Usable() bool { return !c.Refused }

// Highest returns the largest share of the allowable load in any bar [1].
func (c *Combination) Highest() float64 {
	return max(c.Share[car.Upper][column.Pull], c.Share[car.Upper][column.Push], c.Share[car.Lower][column.Pull], c.Share[car.Lower][column.Push])
}

// Index returns the place of holes in Combinations: lower housing holes count
// fastest, upper chassis holes slowest.
func (t *Table) Index(h car.Holes) int {
	i := 0
	for _, row := range car.Rows {
		i = i*len(*row.In(t.Car)) + *row.Of(&h)
	}
	return i
}

// Refusal says in a sentence why holes cannot be used, with values in the unit
// system s; it is empty when they can.
func (t *Table) Refusal(h car.Holes, s units.System) string {
	var wrong []string
	for _, p := range t.Car.CheckHoles(h, t.Car.Capacity(t.Library), s) {
		wrong = append(wrong, p.Wrong)
	}
	if len(wrong) == 0 {
		return ""
	}
	text := strings.Join(wrong, "; ") + "."
	return strings.ToUpper(text[:1]) + text[1:]
}

package words

import (
	"math"

	"bowline/model/adjuster"
	"bowline/model/units"
)

// OwnTurns says by how many turns a setup preloads a bar [1]: in flats, or where
// they end between two of them in decimals.
func OwnTurns(turns float64) string {
	t := adjuster.InFlats(turns)
	if math.Abs(t.Rest) < 0.005 {
		return t.String()
	}
	return toward(units.Decimal(math.Abs(turns), 2)+" turns", "", turns > 0, "longer", "shorter")
}

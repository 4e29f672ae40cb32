package words

import (
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"
)

// PullLimit says what a bar of a pair may pull beside its welds and by its tube, over
// the factor, as in "10,341 lb at the weld, as welded; the tube itself 12,927 lb".
func PullLimit(r *analysis.Result, p car.Pair, s units.System) string {
	b, factor := &r.Bars[p], r.Car.Check.Factor
	tube := s.Format(units.Force, b.Squash/factor)
	if b.Welded == 0 {
		return tube + ", at the weld as in the tube: the material table has no as-welded yield for " + p.Bar(r.Car).Material
	}
	return s.Format(units.Force, b.Welded/factor) + " at the weld, as welded; the tube itself " + tube
}

// PullLimits says in sentences what the bars may pull, at the welds and by the tube,
// and what push is judged on.
func PullLimits(r *analysis.Result, s units.System) []string {
	upper, lower := PullLimit(r, car.Upper, s), PullLimit(r, car.Lower, s)
	list := []string{"Upper bars may pull " + upper + ".", "Lower bars may pull " + lower + "."}
	if upper == lower {
		list = []string{"Each bar may pull " + upper + "."}
	}
	return append(list, "Push is judged on the middle of the tube, with the yield of its base metal.")
}

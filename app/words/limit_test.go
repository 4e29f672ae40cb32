package words_test

import (
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
)

func TestPullLimits(t *testing.T) {
	c := new(car.Car)
	c.Check.Factor = 2
	c.UpperBar.Material, c.LowerBar.Material = "4130 normalized", "1020 DOM"
	r := &analysis.Result{Car: c}
	strength := func(p car.Pair, tube, weld float64) {
		r.Bars[p].Strengths = column.Strengths{Squash: tube * lbf, Welded: weld * lbf}
	}
	strength(car.Upper, 45000, 36000)
	strength(car.Lower, 20000, 0)
	check(t, "unlike", strings.Join(words.PullLimits(r, units.US), " "),
		"Upper bars may pull 18,000 lb at the weld, as welded; the tube itself 22,500 lb. "+
			"Lower bars may pull 10,000 lb, at the weld as in the tube: the material table has no as-welded yield for 1020 DOM. "+
			"Push is judged on the middle of the tube, with the yield of its base metal.")
	strength(car.Lower, 45000, 36000)
	check(t, "alike", words.PullLimits(r, units.SI)[0], "Each bar may pull 80,068 N at the weld, as welded; the tube itself 100,085 N.")
}

package words_test

import (
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch = 0.0254
	lbf  = 0.45359237 * 9.80665
)

// check compares sentences, by what they are of.
func check(t *testing.T, what string, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s:\ngot  %s\nwant %s", what, got, want)
	}
}

func TestLoadVerdict(t *testing.T) {
	v := analysis.LoadVerdict{
		Standing: analysis.Within, Governs: column.JohnsonBuckling, Margin: 2.137, Factor: 2, Preload: true,
		Demand: analysis.Demand{Bar: launch.LowerLeft, Way: column.Push, Source: analysis.FromHit, Force: 9598 * lbf, Share: 0.936, Travel: -4 * inch},
	}
	check(t, "within", words.LoadVerdict(v, units.US),
		"Lower bars reach 94 % of what they may carry, in push at 4.00 in droop in the hit case. It would fail first by column buckling (Johnson), at 2.1 times this load.")
	check(t, "in SI", words.LoadVerdict(v, units.SI),
		"Lower bars reach 94 % of what they may carry, in push at 101.6 mm droop in the hit case. It would fail first by column buckling (Johnson), at 2.1 times this load.")
	v.Standing, v.Demand.Share, v.Demand.Travel, v.Factor, v.Margin = analysis.FactorShort, 1.0013, 0, 2.25, 1.9
	check(t, "over", words.LoadVerdict(v, units.US),
		"Lower bars reach 100.1 % of what they may carry, in push at ride height in the hit case. The tube would still hold: column buckling (Johnson) comes at 1.9 times this load, less than the factor of 2.25 asked for.")
	v.Standing, v.Demand.Bar, v.Demand.Way, v.Governs, v.Demand.Source, v.Margin = analysis.Failing, launch.UpperRight, column.Pull, column.TubeYield, analysis.FromHooked, 0.714
	check(t, "failing", words.LoadVerdict(v, units.US),
		"Upper bars reach 100.1 % of what they may carry, in pull at ride height in the hooked case. The tube fails: tension yield of the tube comes at 71 % of this load.")
	v.Demand = analysis.Demand{Bar: launch.LowerRight, Way: column.Push, Source: analysis.FromLaunch, Share: 1.574, Time: 0.0535}
	v.Standing, v.Governs, v.Margin = analysis.FactorShort, column.JohnsonBuckling, 1.27
	check(t, "in the launch", words.LoadVerdict(v, units.US),
		"The lower right bar reaches 157 % of what it may carry, in push at 0.054 s of the launch, with the preload of this setup. The tube would still hold: column buckling (Johnson) comes at 1.3 times this load, less than the factor of 2.25 asked for.")
	v.Standing, v.Demand.Share, v.Preload = analysis.Within, 0.88, false
	check(t, "without preload", words.LoadVerdict(v, units.US),
		"The lower right bar reaches 88 % of what it may carry, in push at 0.054 s of the launch. It would fail first by column buckling (Johnson), at 1.3 times this load.")
	check(t, "no load", words.LoadVerdict(analysis.LoadVerdict{Factor: 2}, units.US), "No bar is loaded: nothing drives the axle.")
}

func TestCenterVerdict(t *testing.T) {
	v := analysis.CenterVerdict{
		InstantCenter: r2.Vec{X: 41.25 * inch, Y: 11.84 * inch}, HasInstantCenter: true, AntiSquat: 1.546, HasAntiSquat: true,
		Target: [2]float64{1, 1.6}, Against: analysis.Inside, Rear: analysis.RearRises,
	}
	check(t, "reference", words.CenterVerdict(v, units.US),
		"Instant center 41.25 in ahead of the rear contact, 11.84 in up: anti-squat 155 %, inside the target of 100 to 160 %. Hooked, the rear rises off its springs.")
	v.InstantCenter, v.AntiSquat, v.Against, v.Rear = r2.Vec{X: -1.2, Y: -0.1}, -0.123, analysis.Below, analysis.RearSquats
	check(t, "behind", words.CenterVerdict(v, units.SI),
		"Instant center 1,200.0 mm behind the rear contact, 100.0 mm below the ground: anti-squat −12 %, below the target of 100 to 160 %. Hooked, the rear squats on its springs.")
	v.HasInstantCenter, v.AntiSquat, v.Against, v.Rear = false, 2, analysis.Above, analysis.RearSteady
	check(t, "parallel", words.CenterVerdict(v, units.US),
		"The bars are parallel: anti-squat 200 %, above the target of 100 to 160 %. Hooked, the rear neither rises nor squats.")
	v.Rear = analysis.RearUnknown
	check(t, "not held", words.CenterVerdict(v, units.US), "The bars are parallel: anti-squat 200 %, above the target of 100 to 160 %.")
	check(t, "upright", words.CenterVerdict(analysis.CenterVerdict{Rear: analysis.RearRises}, units.US),
		"The line of action stands upright over the rear contact: anti-squat has no value here.")
}

// Every way to fail has a name that a cell has room for.
func TestFailureCell(t *testing.T) {
	seen := map[string]bool{}
	for k := column.Kind(0); !strings.HasPrefix(k.String(), "Kind("); k++ {
		text := words.FailureCell(k)
		if text == "" || len(text) > 22 || seen[text] {
			t.Errorf("%v is %q in a cell", k, text)
		}
		seen[text] = true
	}
}

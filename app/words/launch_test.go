package words_test

import (
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"pgregory.net/rapid"
)

// history returns a launch that ended so at a time and distance, in which the
// lower right bar was pushed most.
func history(o launch.Outcome, t, distance float64) *launch.Result {
	r := &launch.Result{Outcome: o, Options: launch.Options{Distance: 60 * units.Foot}, Elapsed: 1.3951}
	r.Time, r.Distance = []float64{0, t}, []float64{0, distance}
	r.Peaks[launch.UpperRight] = launch.Peak{Pull: 7000 * lbf, PullTime: 0.2}
	r.Peaks[launch.LowerRight] = launch.Peak{Pull: 10 * lbf, Push: 12345 * lbf, PushTime: 0.1104}
	return r
}

func TestLaunchVerdict(t *testing.T) {
	const most = " The lower right bar carries the most: 12,345 lb in push at 0.110 s."
	lifted := history(launch.Finished, 1.5, 60.02*units.Foot)
	lifted.Lift = launch.Lift{Height: 3.21 * inch, Duration: 0.456}
	lifted.Options.Rollout, lifted.FromRelease = 12*inch, 1.5702
	lifted.Events = []launch.Event{{Kind: launch.FrontWheelsOff, From: 0.01}, {Kind: launch.Wheelspin, From: 0.031, To: 1.2}, {Kind: launch.Wheelspin, From: 1.3, To: 1.4}}
	hooked, spun := history(launch.Finished, 1.5, 60), history(launch.Finished, 1.5, 60)
	hooked.Events = []launch.Event{{Kind: launch.Wheelspin, From: 0.034, To: 0.334}}
	spun.Events = []launch.Event{{Kind: launch.Wheelspin, From: 0.034, To: 1.5}}
	pulled := history(launch.TimeUp, 3, 12.34*units.Foot)
	pulled.Peaks[launch.LowerRight] = launch.Peak{}
	unloaded := history(launch.Stopped, 0.4, 1)
	unloaded.Peaks = [launch.RodCount]launch.Peak{}
	for what, c := range map[string]struct {
		of   *launch.Result
		want string
	}{
		"not held":   {&launch.Result{Outcome: launch.NotHeld}, "There is no launch: the lines of the bars and the rear springs meet in one point, and nothing holds the axle."},
		"no rest":    {&launch.Result{Outcome: launch.NoRest, Car: &car.Car{Setups: []car.Setup{{}}}}, "There is no launch: the car finds no rest at ride height on its springs and tires."},
		"wound up":   {&launch.Result{Outcome: launch.NoRest, Car: &car.Car{Setups: []car.Setup{{Turns: car.Turns{UpperLeft: 9}}}}}, "There is no launch: the car finds no rest with this preload. Take turns off the bars."},
		"no history": {&launch.Result{Outcome: launch.Stopped}, "There is no launch: the run was stopped before it began."},
		"finished":   {lifted, "60 ft in 1.395 s after a rollout of 12.00 in, 1.570 s from release. The rear tires spin past their peak grip from 0.031 s, for 1.269 s in 2 spells. The front wheels rise up to 3.21 in and are both off the ground for 0.46 s." + most},
		"no rollout": {history(launch.Finished, 1.5, 60), "60 ft in 1.395 s." + most},
		"hooks":      {hooked, "60 ft in 1.395 s. The rear tires spin past their peak grip from 0.034 s to 0.334 s." + most},
		"spins":      {spun, "60 ft in 1.395 s. The rear tires spin past their peak grip from 0.034 s on." + most},
		"time up":    {pulled, "After 3.00 s the car has come 12.3 ft. The upper right bar carries the most: 7,000 lb in pull at 0.200 s."},
		"went over":  {history(launch.WentOver, 0.987, 4), "The car goes over after 0.99 s." + most},
		"diverged":   {history(launch.Diverged, 0.0123, 0), "The numbers run away after 0.012 s: some part is too light, too stiff or too hard damped to be computed." + most},
		"stopped":    {unloaded, "Stopped after 0.40 s."},
	} {
		check(t, what, words.LaunchVerdict(c.of, units.US), c.want)
	}
	check(t, "in SI", words.LaunchVerdict(pulled, units.SI), "After 3.00 s the car has come 3.76 m. The upper right bar carries the most: 31,138 N in pull at 0.200 s.")
}

// Whatever comes of a launch, there are whole words for it.
func TestAnyLaunchHasAVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := history(rapid.SampledFrom(launch.Outcomes[:]).Draw(t, "outcome"), rapid.Float64Range(0, 10).Draw(t, "time"), rapid.Float64Range(-1, 500).Draw(t, "distance"))
		r.Lift.Height, r.Lift.Duration = rapid.Float64Range(0, 2).Draw(t, "height"), rapid.Float64Range(0, 10).Draw(t, "duration")
		for _, s := range []units.System{units.US, units.SI} {
			if said := words.LaunchVerdict(r, s); len(said) < 20 || strings.ContainsAny(said, "(%") || !strings.HasSuffix(said, ".") {
				t.Fatalf("verdict %q", said)
			}
		}
	})
}

func TestDistance(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{words.Distance(60*units.Foot, units.US), "60 ft"},
		{words.Distance(60*units.Foot, units.SI), "18.29 m"},
		{words.Distance(1320*units.Foot, units.US), "1,320 ft"},
		{words.Distance(100, units.SI), "100 m"},
		{words.Distance(12.34*units.Foot, units.US), "12.3 ft"},
		{words.Come(60*units.Foot, units.US), "60.0 ft"},
		{words.Come(18.2, units.SI), "18.20 m"},
		{words.Come(-0.001, units.US), "0.0 ft"},
	} {
		check(t, "distance", c.got, c.want)
	}
}

func TestSixtyFeet(t *testing.T) {
	check(t, "finished", words.SixtyFeet(history(launch.Finished, 1.5, 18.3), units.US), "1.395 s")
	check(t, "went over", words.SixtyFeet(history(launch.WentOver, 1.5, 3), units.SI), "went over")
}

func TestNearestInLaunch(t *testing.T) {
	a := &analysis.Result{}
	for p := range a.Bars {
		a.Bars[p].Push, a.Bars[p].Pull = column.Limit{Allowable: 15000 * lbf}, column.Limit{Allowable: 8000 * lbf}
	}
	check(t, "pulled", words.NearestInLaunch(a, history(launch.Finished, 1, 1)), "Nearest to its limit comes the upper right bar: 88 % of what it may pull.")
	a.Bars[1].Push.Allowable = 12300 * lbf
	check(t, "pushed", words.NearestInLaunch(a, history(launch.Finished, 1, 1)), "Nearest to its limit comes the lower right bar: 100.4 % of what it may push.")
	check(t, "unloaded", words.NearestInLaunch(a, &launch.Result{}), "")
}

// Front wheels that are never both off the ground for a while are not said to be.
func TestOneFrontWheelAtATime(t *testing.T) {
	r := history(launch.Finished, 1.5, 60.02*units.Foot)
	r.Lift = launch.Lift{Height: 1.29 * inch, Duration: 0.001}
	text := words.LaunchVerdict(r, units.US)
	if !strings.Contains(text, "One front wheel at a time leaves the ground, up to 1.29 in.") || strings.Contains(text, "0.00 s") {
		t.Errorf("it says %q", text)
	}
}

func TestFrontLift(t *testing.T) {
	lift := launch.Lift{Height: 2 * inch, Time: 0.31, Start: 0.15, Duration: 0.25}
	check(t, "both", words.FrontLift(lift, units.US), "off the ground for 0.250 s in all, first at 0.150 s, up to 2.00 in at 0.310 s")
	lift.Duration = 0
	check(t, "one", words.FrontLift(lift, units.SI), "one at a time off the ground, up to 50.8 mm at 0.310 s")
	check(t, "none", words.FrontLift(launch.Lift{}, units.US), "stay on the ground")
}

// A car that is not launched names the part that is to blame.
func TestTooStiff(t *testing.T) {
	said := map[string]bool{}
	for _, p := range launch.Parts {
		r := &launch.Result{Outcome: launch.TooStiff, Fastest: p}
		if text := words.LaunchVerdict(r, units.US); !strings.Contains(text, words.Part(p)) || said[text] {
			t.Errorf("%v: %s", p, text)
		} else {
			said[text] = true
		}
	}
}

func TestFromRelease(t *testing.T) {
	r := history(launch.Finished, 1.5, 18.3)
	r.FromRelease = 1.5702
	check(t, "finished", words.FromRelease(r, units.US), "1.570 s")
	check(t, "went over", words.FromRelease(history(launch.WentOver, 1.5, 3), units.SI), "went over")
}

func TestLoggedAgainst(t *testing.T) {
	r := history(launch.Finished, 1.402, 18.3)
	r.Elapsed = 1.402
	check(t, "slower", words.LoggedAgainst(1.42, r, units.US), "Quickest 60 ft logged 1.420 s, computed 1.402 s: the car was 0.018 s slower than computed.")
	check(t, "quicker", words.LoggedAgainst(1.388, r, units.US), "Quickest 60 ft logged 1.388 s, computed 1.402 s: the car was 0.014 s quicker than computed.")
	check(t, "the same", words.LoggedAgainst(1.402, r, units.US), "Quickest 60 ft logged 1.402 s, computed 1.402 s: the same.")
	check(t, "none logged", words.LoggedAgainst(0, r, units.US), "")
	check(t, "none computed", words.LoggedAgainst(1.4, history(launch.WentOver, 1.5, 3), units.US), "")
}

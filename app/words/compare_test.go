package words_test

import (
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestDifference(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{words.Difference(units.SI, units.Length, 0, 1.2344, "longer", "shorter"), "1,234 mm longer"},
		{words.Difference(units.SI, units.Length, 0.9996, 0, "longer", "shorter"), "999.6 mm shorter"},
		{words.Difference(units.US, units.Force, 0, 12345*lbf, "more", "less"), "12,345 lb more"},
		{words.Difference(units.US, units.Angle, 0, 0.00001, "more", "less"), words.Same},
		// What a reader finds between the figures: 23.00 and 23.01 in, 23.00 twice.
		{words.Difference(units.US, units.Length, 23.0049*inch, 23.0051*inch, "longer", "shorter"), "0.01 in longer"},
		{words.Difference(units.US, units.Length, 22.9951*inch, 23.0049*inch, "longer", "shorter"), words.Same},
		{words.Difference(units.US, units.Percent, 1.44049, 1.68051, "more", "less"), "24.1 points more"},
		{words.Points(-1234, 0, "wider", "narrower"), "1,234 points narrower"},
		{words.Points(0, 1, "wider", "narrower"), words.Same},
		{words.WholePoints(1.444, 1.676, "more", "less"), "24 points more"},
		{words.WholePoints(0.92, 0.914, "more", "less"), "1 point less"},
		{words.WholePoints(0.915, 0.924, "more", "less"), words.Same},
		{words.Ahead(50*inch, 48.5*inch, units.US), "1.50 in nearer"},
		{words.Ahead(50*inch, 51*inch, units.US), "1.00 in farther"},
		{words.Ahead(50*inch, -50*inch, units.US), "100.00 in back"},
		{words.Ahead(-50*inch, -49*inch, units.US), "1.00 in forward"},
		{words.Up(0.2, 0.19, units.SI), "10.0 mm lower"},
		{words.OwnTurns(2), "2 turns longer"}, {words.OwnTurns(-1.0 / 6), "1 flat shorter"}, {words.OwnTurns(0), "no turn"},
		{words.OwnTurns(-0.25), "0.25 turns shorter"}, {words.OwnTurns(0.5), "3 flats longer"},
	} {
		check(t, "difference", c.got, c.want)
	}
}

// setup returns a setup to be compared, with its instant center [in] and
// anti-squat, and of which the lower bars are pushed.
func setup(name string, x, z, squat, push float64) words.Setup {
	r := &analysis.Result{Ride: analysis.Station{HasInstantCenter: true, InstantCenter: r2.Vec{X: x * inch, Y: z * inch}, HasAntiSquat: true, AntiSquat: squat}}
	for p := range r.Bars {
		r.Bars[p].Push, r.Bars[p].Pull = column.Limit{Allowable: 10000 * lbf}, column.Limit{Allowable: 12000 * lbf}
	}
	r.Worst[car.Lower][column.Push] = analysis.Use{Force: push * lbf, Share: push / 10000}
	r.Worst[car.Upper][column.Pull] = analysis.Use{Force: 6000 * lbf, Share: 0.5}
	r.Worst[car.Upper][column.Push] = analysis.Use{Force: 100 * lbf, Share: 0.01}
	return words.Setup{Name: name, Result: r}
}

// leaving adds a launch with pushes of the lower right bar and pulls of the upper
// left one [lb].
func leaving(s words.Setup, o launch.Outcome, elapsed, push, pull float64) words.Setup {
	s.Launch = &launch.Result{Outcome: o, Elapsed: elapsed}
	s.Launch.Time = []float64{0, 1}
	s.Launch.Peaks[launch.LowerRight].Push, s.Launch.Peaks[launch.UpperLeft].Pull = push*lbf, pull*lbf
	return s
}

func TestCompare(t *testing.T) {
	base := setup("baseline", 50, 10, 1.44, 8000)
	parallel, upright := setup("parallel", 0, 0, 0.3, 8000), setup("upright", 50, 10, 0, 8000)
	parallel.Result.Ride.HasInstantCenter, upright.Result.Ride.HasAntiSquat = false, false
	free := setup("free", 50, 10, 1.44, 0)
	beyond, within := setup("beyond", 50, 10, 1.44, 10004), setup("within", 50, 10, 1.44, 9960)
	for what, c := range map[string]struct {
		a, b words.Setup
		want string
	}{
		"all": {
			leaving(base, launch.Finished, 1.402, 8400, 9000), leaving(setup("more bite", 48.5, 11, 1.68, 7600), launch.Finished, 1.395, 9200, 9000),
			`"more bite" against "baseline": instant center 1.50 in nearer and 1.00 in higher, anti-squat 24 points more (168 % for 144 %). In side view lower bars push 5 % less; in the launch the lower right bar comes to 92 % of its limit instead of 84 %, and 60 ft takes 1.395 s instead of 1.402 s.`,
		},
		"the nearest bar is another one": {
			leaving(base, launch.Finished, 1.4, 8400, 11400), leaving(base, launch.Finished, 1.4, 9200, 9600),
			`"baseline" against "baseline": instant center and anti-squat are the same. In side view the bars carry the same; in the launch the upper left bar comes to 80 % of its limit instead of 95 %.`,
		},
		"alike":               {base, base, `"baseline" against "baseline": instant center, anti-squat and loads are the same.`},
		"launches alike":      {leaving(base, launch.Finished, 1.4, 8400, 9000), leaving(base, launch.Finished, 1.4, 8400, 9000), `"baseline" against "baseline": instant center and anti-squat are the same. In side view the bars carry the same; in the launch the lower right bar comes to 84 % of its limit in both.`},
		"one launch only":     {leaving(base, launch.Finished, 1.4, 8400, 9000), base, `"baseline" against "baseline": instant center, anti-squat and loads are the same.`},
		"60 ft is lost":       {leaving(base, launch.Finished, 1.4, 8400, 9000), leaving(base, launch.WentOver, 0, 8400, 9000), `"baseline" against "baseline": instant center and anti-squat are the same. In side view the bars carry the same; in the launch the lower right bar comes to 84 % of its limit in both, and 60 ft is not reached (went over).`},
		"60 ft is gained":     {leaving(base, launch.TimeUp, 0, 8400, 9000), leaving(base, launch.Finished, 1.4, 8400, 9000), `"baseline" against "baseline": instant center and anti-squat are the same. In side view the bars carry the same; in the launch the lower right bar comes to 84 % of its limit in both, and 60 ft takes 1.400 s where it was not reached (time up).`},
		"the center is lost":  {base, parallel, `"parallel" against "baseline": bars parallel, without an instant center, anti-squat 114 points less (30 % for 144 %).`},
		"it is gained":        {parallel, base, `"baseline" against "parallel": bars no more parallel, instant center 50.00 in ahead and 10.00 in up, anti-squat 114 points more (144 % for 30 %).`},
		"anti-squat is lost":  {base, upright, `"upright" against "baseline": anti-squat without a value.`},
		"or gained":           {upright, base, `"baseline" against "upright": anti-squat 144 % where it had no value.`},
		"parallel both":       {parallel, parallel, `"parallel" against "parallel": instant center, anti-squat and loads are the same.`},
		"unloaded":            {base, free, `"free" against "baseline": instant center and anti-squat are the same. In side view lower bars do not push.`},
		"loaded":              {free, base, `"baseline" against "free": instant center and anti-squat are the same. In side view lower bars push where they were without load.`},
		"beyond the limit":    {within, beyond, `"beyond" against "within": instant center and anti-squat are the same. In side view it takes the lower bars beyond their limit, to 100.1 % of it.`},
		"beyond it in launch": {leaving(base, launch.Finished, 1.4, 8400, 9000), leaving(base, launch.Finished, 1.4, 10200, 9000), `"baseline" against "baseline": instant center and anti-squat are the same. In side view the bars carry the same; in the launch the lower right bar comes to 102 % of its limit instead of 84 %. In the launch it takes the lower right bar beyond its limit, to 102 % of it.`},
		"within it again":     {beyond, base, `"baseline" against "beyond": instant center and anti-squat are the same. In side view lower bars push 20 % less. It brings the lower bars back within their limit, to 80 % of it.`},
	} {
		check(t, what, words.Compare(c.a, c.b, units.US), c.want)
	}
	check(t, "in SI", words.Compare(base, setup("b", 50, 9, 1.44, 8000), units.SI), `"b" against "baseline": instant center 25.4 mm lower.`)
}

func TestOtherLaunch(t *testing.T) {
	check(t, "finished", words.OtherLaunch(leaving(setup("more bite", 50, 10, 1, 1), launch.Finished, 1.395, 9200, 9000), units.US),
		`Compared with it, "more bite": 60 ft 1.395 s. Nearest to its limit comes the lower right bar: 92 % of what it may push.`)
	check(t, "unloaded", words.OtherLaunch(leaving(setup("wet", 50, 10, 1, 1), launch.WentOver, 0, 0, 0), units.US), `Compared with it, "wet": 60 ft went over.`)
}

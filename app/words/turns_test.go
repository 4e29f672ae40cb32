package words_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/assets"
	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

func TestTurn(t *testing.T) {
	for turns, want := range map[float64]string{
		0: "no turn", 0.09: "1 flat longer", -1.0 / 6: "1 flat shorter", 1: "1 turn longer", -2: "2 turns shorter",
		2.248: "2 turns 1 flat longer", 2.5: "2 turns 3 flats longer", -1.3: "1 turn 2 flats shorter",
	} {
		check(t, "turn", words.Turn(adjuster.InFlats(turns)), want)
	}
}

// level is a car with level bars of 20 in and 23 in, 11.5 in apart, and 3/4-16
// rod ends; the second lower chassis hole is 0.311 in farther ahead, the third
// 1.5 in, the fourth 2 in behind.
func level() *car.Car {
	c := car.Defaults()
	c.Body.Wheelbase = 105 * inch
	c.Tires.RearRadius, c.Tires.FrontRadius = 16*inch, 12.5*inch
	c.Chassis.Upper = []r2.Vec{{X: 22.5 * inch, Y: 22.5 * inch}, {X: 23 * inch, Y: 22.5 * inch}}
	for _, x := range []float64{25.5, 25.811, 27, 23.5} {
		c.Chassis.Lower = append(c.Chassis.Lower, r2.Vec{X: x * inch, Y: 11 * inch})
	}
	c.Housing.Upper, c.Housing.Lower = []r2.Vec{{X: 2.5 * inch, Y: 6.5 * inch}}, []r2.Vec{{X: 2.5 * inch, Y: -5 * inch}}
	c.UpperBar.RodEnd, c.LowerBar.RodEnd = "3/4-16", "3/4-16"
	c.Setups = []car.Setup{{Name: "as it stands"}}
	return c
}

func plan(t *testing.T, c *car.Car, holes car.Holes, turns car.Turns) *adjuster.Change {
	t.Helper()
	change, err := adjuster.Plan(c, 0, holes, turns)
	if err != nil {
		t.Fatal(err)
	}
	return &change
}

func TestPlan(t *testing.T) {
	const upper = "Upper bars: no turn (20.000 in); thread engaged 1.14 in, 1.5 D"
	for what, c := range map[string]struct {
		holes car.Holes
		want  []string
	}{
		"to where it is": {car.Holes{}, []string{upper, "Lower bars: no turn (23.000 in); thread engaged 1.14 in, 1.5 D"}},
		"lower bars": {car.Holes{ChassisLower: 1}, []string{
			upper,
			"Lower bars: chassis end hole 1 to 2; 2 turns 3 flats longer (23.000 in to 23.311 in); thread engaged 0.98 in, 1.3 D, under 1.5 D",
			"In the new holes, no bar turned: pinion 1.55° nose up, axle 0.177 in forward",
			"All bars turned to the nearest flat: pinion 0.01° nose down, axle 0.001 in back",
		}},
		"both pairs": {car.Holes{ChassisUpper: 1, ChassisLower: 1}, []string{
			"Upper bars: chassis end hole 1 to 2; 4 turns longer (20.000 in to 20.500 in); thread engaged 0.89 in, 1.1 D, under 1.5 D",
			"Lower bars: chassis end hole 1 to 2; 2 turns 3 flats longer (23.000 in to 23.311 in); thread engaged 0.98 in, 1.3 D, under 1.5 D",
			"In the new holes, no bar turned: pinion 0.94° nose down, axle 0.394 in forward",
			"Only the upper bars turned: pinion 1.55° nose up, axle 0.177 in forward",
			"Only the lower bars turned: pinion 2.49° nose down, axle 0.220 in forward",
			"All bars turned to the nearest flat: pinion 0.01° nose down, axle 0.001 in back",
		}},
	} {
		if got := words.Plan(plan(t, level(), c.holes, car.Turns{}), units.US); !slices.Equal(got, c.want) {
			t.Errorf("%s:\ngot\n%s\nwant\n%s", what, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
	check(t, "of setups", words.SetupPlan("a", "b", plan(t, level(), car.Holes{}, car.Turns{}), units.US),
		"From \"a\" to \"b\":\n• "+upper+"\n• Lower bars: no turn (23.000 in); thread engaged 1.14 in, 1.5 D")
	check(t, "no way", words.NoSetupPlan("a", "b", errors.New("the bars are too short")), `"b" cannot be reached from "a": the bars are too short.`)
}

func TestPairPlan(t *testing.T) {
	lower := func(c *car.Car, hole int, turns car.Turns) *adjuster.PairChange {
		return &plan(t, c, car.Holes{ChassisLower: hole}, turns).Pairs[car.Lower]
	}
	check(t, "in SI", words.PairPlan(lower(level(), 1, car.Turns{}), units.SI),
		"Lower bars: chassis end hole 1 to 2; 2 turns 3 flats longer (584.20 mm to 592.10 mm); thread engaged 25.0 mm, 1.3 D, under 1.5 D")
	check(t, "too short", words.PairPlan(lower(level(), 2, car.Turns{}), units.US),
		"Lower bars: chassis end hole 1 to 3; 12 turns longer (23.000 in to 24.500 in); thread engaged 0.39 in, 0.5 D; tube too short, make one 1.500 in longer")
	check(t, "too long", words.PairPlan(lower(level(), 3, car.Turns{}), units.US),
		"Lower bars: chassis end hole 1 to 4; 16 turns shorter (23.000 in to 21.000 in); thread engaged 2.14 in, 2.8 D; tube too long, cut 2.000 in off")

	assumed := level()
	assumed.LowerBar.RodEnd = ""
	check(t, "no name", words.PairPlan(lower(assumed, 0, car.Turns{}), units.US),
		"Lower bars: no turn (23.000 in); thread engaged 1.14 in, 1.5 D; a thread of 3/4 in, 16 per inch, is assumed: the rod end's name has none")
	assumed.LowerBar.RodEnd = "3/4"
	check(t, "no pitch", words.PairPlan(lower(assumed, 0, car.Turns{}), units.US),
		"Lower bars: no turn (23.000 in); thread engaged 1.14 in, 1.5 D; 16 threads per inch are assumed: the rod end's name has no pitch")

	short := level()
	short.LowerBar.Threads.Length = 1 * inch
	check(t, "short thread", words.PairPlan(lower(short, 0, car.Turns{}), units.US),
		"Lower bars: no turn (23.000 in); thread engaged 0.45 in, 0.6 D; the rod ends' thread of 1.000 in is too short for a jam nut of 0.422 in and 1 D engaged")
	short.LowerBar.Threads.Length = 0.5 * inch
	check(t, "no thread", words.PairPlan(lower(short, 0, car.Turns{}), units.US),
		"Lower bars: no turn (23.000 in); no thread engaged; the rod ends' thread of 0.500 in is too short for a jam nut of 0.422 in and 1 D engaged")

	preloaded := level()
	preloaded.Setups[0].Turns = car.Turns{LowerLeft: 1, LowerRight: -0.4}
	check(t, "preload", words.PairPlan(lower(preloaded, 0, car.Turns{LowerLeft: 2, LowerRight: -0.4}), units.US),
		"Lower bars: left 1 turn longer (23.125 in to 23.250 in), right no turn (22.950 in); left thread engaged 1.02 in, 1.3 D, under 1.5 D, right thread engaged 1.17 in, 1.5 D")
}

// What is less than enough does not read as enough.
func TestDiameters(t *testing.T) {
	for diameters, want := range map[float64]string{1.46: "1.4 D", 1.4999: "1.4 D", 1.5: "1.5 D", 1.49999999: "1.5 D", 0.05: "0.0 D"} {
		check(t, "diameters", words.Diameters(&adjuster.State{Diameters: diameters}), want)
	}
}

func TestTubeThatStays(t *testing.T) {
	check(t, "tube", words.Tube(&adjuster.State{Status: adjuster.Shallow}, units.US), "tube stays")
}

func TestEffect(t *testing.T) {
	check(t, "none", words.Effect(adjuster.Effect{Pinion: 1e-9, Shift: -1e-9}, units.US), "pinion unchanged, axle stays")
	check(t, "some", words.Effect(adjuster.Effect{Pinion: 0.45 * math.Pi / 180, Shift: -0.12 * inch}, units.SI), "pinion 0.45° nose up, axle 3.05 mm back")
	check(t, "why", words.Effect(adjuster.Effect{Cannot: errors.New("a bar is missing")}, units.US), "cannot be put together: a bar is missing")
	c := level()
	c.Chassis.Upper[1].X = 60 * inch
	const want = "cannot be put together: upper bars of 20.000 in and lower bars of 23.000 in do not close; they do only as far as "
	if got := words.Effect(plan(t, c, car.Holes{ChassisUpper: 1}, car.Turns{}).Unturned, units.US); !strings.HasPrefix(got, want) {
		t.Errorf("got  %s\nwant %s…", got, want)
	}
}

// Whatever the holes and turns, a plan has no sign to be puzzled over.
func TestPlansHaveNoSigns(t *testing.T) {
	var cars []*car.Car
	for _, name := range assets.CarNames() {
		f, err := carfile.Read("../../assets/"+name, carfile.Stock())
		if err != nil {
			t.Fatal(err)
		}
		cars = append(cars, f.Car)
	}
	plans := 0
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(cars).Draw(t, "car")
		var to car.Holes
		for _, row := range car.Rows {
			*row.Of(&to) = rapid.IntRange(0, len(*row.In(c))-1).Draw(t, row.String())
		}
		var turns car.Turns
		for _, bar := range car.BarTurns {
			*bar.Of(&turns) = rapid.Float64Range(-car.MaxTurns, car.MaxTurns).Draw(t, bar.Label)
		}
		change, err := adjuster.Plan(c, 0, to, turns)
		if err != nil {
			return
		}
		plans++
		for _, s := range []units.System{units.US, units.SI} {
			for _, line := range words.Plan(&change, s) {
				if strings.ContainsAny(line, "-−%") || strings.Contains(line, "NaN") {
					t.Fatalf("a sign to be puzzled over: %s", line)
				}
			}
		}
	})
	if plans < 20 {
		t.Errorf("only %d plans", plans)
	}
}

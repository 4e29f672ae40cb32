package words_test

import (
	"testing"

	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/holes"

	"gonum.org/v1/gonum/spatial/r2"
)

// ranked ranks the eight combinations of the level car's holes as if each had an
// anti-squat in percent; one without can not be used.
func ranked(wishes holes.Wishes, squats [8]float64) []holes.Place {
	c := level()
	table := &holes.Table{Car: c}
	for i, squat := range squats {
		h := car.Holes{ChassisUpper: i / 4, ChassisLower: i % 4}
		length := [2]float64{20 * inch, 23 * inch}
		length[car.Upper] += c.Chassis.Upper[h.ChassisUpper].X - c.Chassis.Upper[0].X
		length[car.Lower] += c.Chassis.Lower[h.ChassisLower].X - c.Chassis.Lower[0].X
		table.Combinations = append(table.Combinations, holes.Combination{
			Holes: h, Refused: squat == 0, Length: length,
			HasInstantCenter: true, InstantCenter: r2.Vec{X: 50 * inch, Y: 10 * inch}, HasAntiSquat: true, AntiSquat: squat / 100,
		})
	}
	target := holes.Target{AntiSquat: [2]float64{1, 1.6}, Ahead: [2]float64{1, 1.5}, Above: [2]float64{0.2, 0.3}}
	return holes.Rank(table, c, 0, target, wishes)
}

func TestRanking(t *testing.T) {
	for what, c := range map[string]struct {
		squats [8]float64
		wishes holes.Wishes
		want   string
	}{
		"in use":        {[8]float64{120, 120, 80, 70, 60, 50, 40, 30}, holes.Wishes{}, "2 of 8 combinations meet the target; the holes in use are the best. Holes in use: 1·1·1·1, rank 1."},
		"turns":         {[8]float64{80, 120, 70, 60, 50, 40, 30, 20}, holes.Wishes{}, "1 of 8 combinations meets the target; the best, 1·2·1·1, needs the lower bars 2 turns 3 flats longer. Holes in use: 1·1·1·1, rank 2."},
		"no turns":      {[8]float64{80, 70, 60, 50, 90, 70, 60, 50}, holes.Wishes{}, "None of 8 combinations meets the target; the best, 2·1·1·1, needs the upper bars 4 turns longer. Holes in use: 1·1·1·1, rank 2."},
		"both":          {[8]float64{80, 70, 60, 50, 80, 120, 70, 60}, holes.Wishes{}, "1 of 8 combinations meets the target; the best, 2·2·1·1, needs the upper bars 4 turns longer and the lower bars 2 turns 3 flats longer. Holes in use: 1·1·1·1, rank 2."},
		"a tube":        {[8]float64{80, 70, 120, 50, 40, 0, 0, 30}, holes.Wishes{}, "1 of 8 combinations meets the target; the best, 1·3·1·1, needs new tubes for the lower bars. Holes in use: 1·1·1·1, rank 2. 2 cannot be used."},
		"a tube, turns": {[8]float64{80, 70, 60, 50, 40, 0, 120, 30}, holes.Wishes{}, "1 of 8 combinations meets the target; the best, 2·3·1·1, needs the upper bars 4 turns longer, and new tubes for the lower bars. Holes in use: 1·1·1·1, rank 2. 1 cannot be used."},
		"wishes":        {[8]float64{80, 120, 70, 60, 50, 140, 30, 20}, holes.Wishes{OneBar: true}, "2 of 8 combinations meet the target; 5 fulfil all wishes; the best, 1·2·1·1, needs the lower bars 2 turns 3 flats longer. Holes in use: 1·1·1·1, rank 2."},
		"one fulfils":   {[8]float64{80, 120, 70, 60, 50, 40, 30, 20}, holes.Wishes{InTarget: true}, "1 of 8 combinations meets the target; 1 fulfils all wishes; the best, 1·2·1·1, needs the lower bars 2 turns 3 flats longer. Holes in use: 1·1·1·1, rank 2."},
		"none fulfils":  {[8]float64{80, 90, 70, 60, 50, 40, 30, 20}, holes.Wishes{InTarget: true}, "None of 8 combinations meets the target; none fulfils all wishes; the best, 1·2·1·1, needs the lower bars 2 turns 3 flats longer. Holes in use: 1·1·1·1, rank 2."},
		"not in use":    {[8]float64{0, 120, 70, 60, 50, 40, 30, 20}, holes.Wishes{}, "1 of 8 combinations meets the target; the best, 1·2·1·1, is ahead of the holes in use. Holes in use: 1·1·1·1, rank 8. 1 cannot be used."},
		"none at all":   {[8]float64{}, holes.Wishes{}, "None of 8 combinations meets the target; no combination can be used. Holes in use: 1·1·1·1, rank 1. 8 cannot be used."},
	} {
		places := ranked(c.wishes, c.squats)
		var present *holes.Place
		for i := range places {
			if places[i].Present {
				present = &places[i]
			}
		}
		check(t, what, words.Ranking(places, present, c.wishes.Any()), c.want)
	}
	places := ranked(holes.Wishes{}, [8]float64{120, 120, 80, 70, 60, 50, 40, 30})
	check(t, "nobody knows which are in use", words.Ranking(places, nil, false), "2 of 8 combinations meet the target; the holes in use are the best.")
}

func TestWhichHoles(t *testing.T) {
	check(t, "holes", words.WhichHoles(car.Holes{ChassisUpper: 3, ChassisLower: 2, HousingUpper: 1}), "Upper chassis 4, lower chassis 3, upper housing 2, lower housing 1.")
}

func TestRankedBy(t *testing.T) {
	by := func(o holes.Order, l *holes.Launches) string {
		c := level()
		table := (&holes.Table{Car: c}).With(l)
		for i := range 8 {
			table.Combinations = append(table.Combinations, holes.Combination{Holes: car.Holes{ChassisUpper: i / 4, ChassisLower: i % 4}})
		}
		return words.RankedBy(holes.Rank(table, c, 0, holes.Target{}, holes.Wishes{Order: o}))
	}
	some := &holes.Launches{List: make([]holes.Launch, 8), Done: 3, Total: 8}
	all := &holes.Launches{List: make([]holes.Launch, 8), Done: 8, Total: 8}
	check(t, "side view", by(holes.NearestTarget, nil), "Nearest to the target, by the side view alone.")
	check(t, "nothing yet", by(holes.Quickest, nil), "Least time to 60 ft: not launched yet, so by nearness to the target.")
	check(t, "some", by(holes.Quickest, some), "Least time to 60 ft; loads by side view and launch, 3 of 8 so far.")
	check(t, "all", by(holes.NearestTarget, all), "Nearest to the target; loads by side view and launch.")
	check(t, "envelope", by(holes.LeastEnvelope, all), "Least share of the limit, launch included; loads by side view and launch.")
	check(t, "none", words.RankedBy(nil), "")
}

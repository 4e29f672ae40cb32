package cartest

import (
	"time"

	"bowline/model/car"

	"pgregory.net/rapid"
)

// runs draws the run log of a setup; half of the setups have none.
func runs(t *rapid.T) []car.Run {
	if rapid.Bool().Draw(t, "no runs") {
		return nil
	}
	list := make([]car.Run, rapid.IntRange(1, 4).Draw(t, "runs"))
	day := time.Date(2026, time.January, 1, 0, 0, 0, 0, time.UTC)
	for i := range list {
		r := &list[i]
		// Few days, so that some have several runs.
		r.Date = day.AddDate(0, 0, 40*rapid.IntRange(-3, 12).Draw(t, "day")).Format(car.DateForm)
		for _, text := range car.RunTexts {
			*text.Of(r) = rapid.SampledFrom([]string{"", "", "spun", "carried the wheels, \"then\"\nset down", "Saltgrass Flats # 2"}).Draw(t, text.Key)
		}
		if rapid.Bool().Draw(t, "timed") {
			r.SixtyFoot = number(t, 0.9, 2.5, 1)
		}
		if x := number(t, -1, 3, 1); x != 0 && rapid.Bool().Draw(t, "anti-squat known") {
			r.AntiSquat = x
		}
	}
	return list
}

package plotting_test

import (
	"math"

	"bowline/model/launch"

	"pgregory.net/rapid"
)

// randomLaunch draws the result of a launch that no car may ever make, from
// none at all to one whose numbers ran away.
func randomLaunch(t *rapid.T) *launch.Result {
	n := rapid.SampledFrom([]int{0, 1, 2, 50, 599, 601, 3001}).Draw(t, "steps")
	size := func(label string, least, most float64) float64 {
		return math.Pow(10, rapid.Float64Range(least, most).Draw(t, label))
	}
	force, travel, pitch := size("force", -2, 8), size("travel", -6, 1), size("pitch", -6, 0.4)
	fast, shift, spikes := rapid.Float64Range(0.1, 200).Draw(t, "fast"), rapid.Float64Range(-1, 1).Draw(t, "shift"), rapid.Bool().Draw(t, "spikes")
	l := history(n, func(quantity int, part float64) float64 {
		x := shift + math.Sin(fast*part*float64(1+quantity%5)+float64(quantity))
		if spikes && math.Mod(997*part, 1) < 0.01 {
			x *= 50
		}
		switch {
		case quantity < leftRearLoad:
			return force * x
		case quantity < leftRearTravel:
			return math.Max(0, force*x)
		case quantity == pitchOver:
			return math.Max(-1.5, math.Min(1.5, pitch*x))
		}
		return travel * x
	})
	for _, b := range launch.Bars {
		for i, tension := range l.Tension[b] {
			p := &l.Peaks[b]
			if tension > p.Pull {
				p.Pull, p.PullTime = tension, l.Time[i]
			}
			if -tension > p.Push {
				p.Push, p.PushTime = -tension, l.Time[i]
			}
		}
	}
	if rapid.Bool().Draw(t, "alike") {
		l.RearTravel[launch.Right], l.Tension[launch.UpperRight], l.Tension[launch.LowerRight] = l.RearTravel[launch.Left], l.Tension[launch.UpperLeft], l.Tension[launch.LowerLeft]
	}
	end := 0.001 * float64(max(0, n-1))
	for range rapid.IntRange(0, 12).Draw(t, "events") {
		from, to := rapid.Float64Range(0, end).Draw(t, "from"), rapid.Float64Range(0, end).Draw(t, "to")
		if n == 0 {
			break
		}
		l.Events = append(l.Events, launch.Event{
			Kind: rapid.SampledFrom(launch.EventKinds[:]).Draw(t, "kind"), Sided: rapid.Bool().Draw(t, "sided"),
			From: min(from, to), To: max(from, to), Value: rapid.Float64Range(0, 1e5).Draw(t, "value"),
		})
	}
	l.Lift.Height = rapid.Float64Range(0, 3).Draw(t, "height")
	l.Lift.Duration = rapid.Float64Range(0, 1).Draw(t, "duration")
	return l
}

package words_test

import (
	"math"
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/units"
)

const degree = math.Pi / 180

func TestReasons(t *testing.T) {
	push := holes.Reason{Kind: holes.NearestPush, Pair: car.Lower, Value: 9000 * lbf, Limit: 0.7}
	ahead := holes.Reason{Kind: holes.AheadOff, Value: 1.2 * inch}
	right := analysis.Demand{Bar: launch.LowerRight, Way: column.Push, Source: analysis.FromLaunch, Share: 1.52, Time: 0.11}
	said := map[holes.ReasonKind]bool{holes.Refused: true}
	for _, c := range []struct {
		list []holes.Reason
		want string
	}{
		{[]holes.Reason{{Kind: holes.AreInUse}, {Kind: holes.TargetMet}, push, {Kind: holes.Tie, Order: holes.NearestTarget, Others: 2345, Decider: holes.ByPush}},
			"the present holes; inside the target; lower bars push 9,000 lb, 70 % of their limit; same distance as 2,345 others, least push decides"},
		{[]holes.Reason{{Kind: holes.BothMoved}, {Kind: holes.NewTube, Pair: car.Upper, Value: 0.3 * inch}, {Kind: holes.NewTube, Pair: car.Lower, Value: -0.78 * inch}, {Kind: holes.PinionTurn, Value: 3 * degree, Limit: 2 * degree}, ahead},
			"both pairs would be moved; upper bars would have to be recut 0.30 in longer, lower bars would have to be recut 0.78 in shorter; the pinion turns 3.00°, its limit is 2.00°; instant center 1.20 in too far ahead"},
		{[]holes.Reason{{Kind: holes.ShortThread, Pair: car.Upper}, {Kind: holes.NewTube, Pair: car.Lower, Value: -1e-5}}, "upper bars have too little thread for any tube, lower bars would have to be recut less than 0.01 in shorter"},
		{[]holes.Reason{{Kind: holes.NoStart}, ahead}, "the present holes cannot be used, so nothing can be turned from them; instant center 1.20 in too far ahead"},
		{[]holes.Reason{{Kind: holes.SquatOff, Value: 0.15}, {Kind: holes.AheadOff, Value: -1 * inch}, {Kind: holes.AboveOff, Value: 2 * inch}, {Kind: holes.PinionOff, Value: degree}},
			"anti-squat 15.0 % too high, instant center 1.00 in too far back, instant center 2.00 in too high, pinion turns 1.00° beyond its limit"},
		{[]holes.Reason{{Kind: holes.SquatOff, Value: -0.00001}, {Kind: holes.AboveOff, Value: -inch}}, "anti-squat less than 0.1 % too low, instant center 1.00 in too low"},
		{[]holes.Reason{{Kind: holes.NoCenter}, {Kind: holes.NoSquat}}, "no instant center, since the bars are parallel, no anti-squat, since the line of action stands upright"},
		{[]holes.Reason{{Kind: holes.FarAhead, Value: 800}, {Kind: holes.AboveOff, Value: inch}}, "bars nearly parallel: instant center far ahead of the target, instant center 1.00 in too high"},
		{[]holes.Reason{{Kind: holes.FarAhead, Value: -800}}, "bars nearly parallel: instant center far behind the target"},
		{[]holes.Reason{{Kind: holes.FarAbove, Value: 800}}, "bars nearly parallel: instant center far above the target"},
		{[]holes.Reason{{Kind: holes.FarAbove, Value: -800}}, "bars nearly parallel: instant center far below the target"},
		{[]holes.Reason{{Kind: holes.MostPush, Pair: car.Lower, Value: 7000 * lbf}, {Kind: holes.TargetMet}, {Kind: holes.Tie, Order: holes.LeastPush, Others: 1, Decider: holes.ByHoles}},
			"lower bars push 7,000 lb, the most of all bars; inside the target; same push as 1 other, all else is the same, so the holes' order decides"},
		{[]holes.Reason{{Kind: holes.NoPush}, {Kind: holes.Tie, Order: holes.LeastPush, Others: 3, Decider: holes.ByMoved}}, "no bar is pushed; same push as 3 others, fewest moved ends decide"},
		{[]holes.Reason{{Kind: holes.MostShare, Value: 0.65}, {Kind: holes.Tie, Order: holes.LeastShare, Others: 2, Decider: holes.ByTurns}}, "share of limit at most 65 %; same share as 2 others, fewest turns decide"},
		{[]holes.Reason{{Kind: holes.BarTurns, Turns: [2]float64{4, -8}}, {Kind: holes.Tie, Order: holes.FewestTurns, Others: 2, Decider: holes.ByDistance}},
			"4.00 turns on the upper bars, 8.00 on the lower; same turns as 2 others, nearness to the target decides"},
		{[]holes.Reason{{Kind: holes.BarTurns, Turns: [2]float64{0.001, -2}}}, "2.00 turns on the lower bars, none on the upper"},
		{[]holes.Reason{{Kind: holes.BarTurns, Turns: [2]float64{4, 0}}}, "4.00 turns on the upper bars, none on the lower"},
		{[]holes.Reason{{Kind: holes.BarTurns}}, "no turns"},
		{[]holes.Reason{{Kind: holes.TargetMet}, {Kind: holes.Overload, Pair: car.Upper, Way: column.Pull, Value: 1.0004}, {Kind: holes.Overload, Pair: car.Lower, Way: column.Push, Value: 1.06}},
			"inside the target; upper bars would carry 100.1 % of what they may in pull, lower bars would carry 106 % of what they may in push"},
		{[]holes.Reason{{Kind: holes.SixtyFeet, Value: 1.2345}, {Kind: holes.LiftOver, Value: 13 * inch, Limit: 8 * inch}, {Kind: holes.TargetMet}, {Kind: holes.LaunchOverload, Demand: right},
			{Kind: holes.Tie, Order: holes.Quickest, Others: 1, Decider: holes.ByPush}},
			"60 ft in 1.235 s; the front comes up 13.00 in in the launch, its limit is 8.00 in; inside the target; the lower right bar reaches 152 % of what it may carry in push, at 0.110 s of the launch; same time as 1 other, least push decides"},
		{[]holes.Reason{{Kind: holes.MostDemand, Demand: analysis.Demand{Bar: launch.UpperLeft, Way: column.Pull, Source: analysis.FromHit, Share: 0.6, Travel: -2 * inch}}, {Kind: holes.Tie, Order: holes.LeastEnvelope, Others: 1, Decider: holes.ByTurns}},
			"the upper bars reach 60 % of what they may carry in pull, in the hit case at 2.00 in droop; same share as 1 other, fewest turns decide"},
		{[]holes.Reason{{Kind: holes.RearApart, Value: 0.0812}, {Kind: holes.Tie, Order: holes.MostEven, Others: 2, Decider: holes.ByTurns}}, "rear tires 8.1 % apart in the launch; as even as 2 others, fewest turns decide"},
		{[]holes.Reason{{Kind: holes.FrontLift}, {Kind: holes.Tie, Order: holes.LeastLift, Others: 2, Decider: holes.ByTurns}}, "the front tires stay on the ground; same lift as 2 others, fewest turns decide"},
		{[]holes.Reason{{Kind: holes.FrontLift, Value: inch}}, "the front comes up 1.00 in in the launch"},
		{[]holes.Reason{{Kind: holes.NotLaunched}, {Kind: holes.TargetMet}}, "not launched yet; inside the target"},
		{[]holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.WentOver}}, "the car goes over in the launch"},
		{[]holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.TimeUp}}, "the launch is over before 60 ft: its time is up"},
		{[]holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.NoRest}}, "no launch: the car finds no rest with these turns"},
		{[]holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.NotHeld}}, "no launch: nothing holds the axle"},
		{[]holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.TooStiff, Part: launch.RearTires}}, "no launch: the rear tires move too fast to be computed"},
		{[]holes.Reason{{Kind: holes.LaunchEnded, Outcome: launch.Diverged}}, "no launch: the numbers run away"},
	} {
		check(t, "reasons", words.Reasons(c.list, units.US), c.want)
		for _, r := range c.list {
			said[r.Kind] = true
		}
	}
	check(t, "in SI", words.Reasons([]holes.Reason{ahead, push}, units.SI), "instant center 30.5 mm too far ahead; lower bars push 40,034 N, 70 % of their limit")
	// Every kind has words, and they are here.
	for k := holes.ReasonKind(0); k <= holes.Tie; k++ {
		if !said[k] {
			t.Errorf("nothing is said of kind %d", k)
		}
	}
}

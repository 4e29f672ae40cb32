package words

import (
	"fmt"
	"math"
	"strings"

	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/units"
)

// Reason says why a place stands where it stands in a ranking, as in "inside the
// target; lower bars push 9,475 lb, 68 % of their limit" or "both pairs would be
// moved".
func Reason(p *holes.Place, s units.System) string {
	if !p.Combination().Usable() {
		return Phrase(p.Refusal(s))
	}
	return Reasons(p.Reasons(), s)
}

// Reasons says the reasons of a place whose holes can be used.
func Reasons(list []holes.Reason, s units.System) string {
	text := ""
	for i, r := range list {
		switch {
		case i == 0:
		case subject(list[i-1].Kind) == subject(r.Kind):
			text += ", "
		default:
			text += "; "
		}
		text += reason(r, s)
	}
	return text
}

// Subjects of reasons that are told together.
const (
	tubes = iota
	misses
	overloads
	others // each alone: others + kind
)

// subject returns what a kind of reason is about; those of one subject stand
// between commas.
func subject(k holes.ReasonKind) int {
	switch k {
	case holes.ShortThread, holes.NewTube:
		return tubes
	case holes.SquatOff, holes.NoSquat, holes.AheadOff, holes.AboveOff, holes.FarAhead, holes.FarAbove, holes.NoCenter, holes.PinionOff:
		return misses
	case holes.Overload:
		return overloads
	}
	return others + int(k)
}

// reason says one reason.
func reason(r holes.Reason, s units.System) string {
	bars := r.Pair.Bars()
	way := func(below, above string) string {
		if r.Value < 0 {
			return below
		}
		return above
	}
	switch r.Kind {
	case holes.AreInUse:
		return "the present holes"
	case holes.BothMoved:
		return "both pairs would be moved"
	case holes.NoStart:
		return "the present holes cannot be used, so nothing can be turned from them"
	case holes.ShortThread:
		return bars + " have too little thread for any tube"
	case holes.NewTube:
		return fmt.Sprintf("%s would have to be recut %s %s", bars, amount(s, units.Length, r.Value), way("shorter", "longer"))
	case holes.PinionTurn:
		return fmt.Sprintf("the pinion turns %s, its limit is %s", s.Format(units.Angle, r.Value), s.Format(units.Angle, r.Limit))
	case holes.TargetMet:
		return "inside the target"
	case holes.SquatOff:
		return fmt.Sprintf("anti-squat %s too %s", amount(s, units.Percent, r.Value), way("low", "high"))
	case holes.NoSquat:
		return "no anti-squat, since the line of action stands upright"
	case holes.AheadOff:
		return fmt.Sprintf("instant center %s too far %s", amount(s, units.Length, r.Value), way("back", "ahead"))
	case holes.AboveOff:
		return fmt.Sprintf("instant center %s too %s", amount(s, units.Length, r.Value), way("low", "high"))
	case holes.FarAhead:
		return "bars nearly parallel: instant center far " + way("behind", "ahead of") + " the target"
	case holes.FarAbove:
		return "bars nearly parallel: instant center far " + way("below", "above") + " the target"
	case holes.NoCenter:
		return "no instant center, since the bars are parallel"
	case holes.PinionOff:
		return fmt.Sprintf("pinion turns %s beyond its limit", amount(s, units.Angle, r.Value))
	case holes.MostPush:
		return fmt.Sprintf("%s push %s, the most of all bars", bars, s.Format(units.Force, r.Value))
	case holes.NearestPush:
		return fmt.Sprintf("%s push %s, %s of their limit", bars, s.Format(units.Force, r.Value), units.Share(r.Limit))
	case holes.NoPush:
		return "no bar is pushed"
	case holes.MostShare:
		return "share of limit at most " + units.Share(r.Value)
	case holes.BarTurns:
		return barTurns(r.Turns)
	case holes.Overload:
		return fmt.Sprintf("%s would carry %s of what they may in %s", bars, units.Share(r.Value), r.Way)
	case holes.NotLaunched:
		return "not launched yet"
	case holes.LaunchEnded:
		return noSixtyFeet(r.Outcome, r.Part)
	case holes.SixtyFeet:
		return "60 ft in " + s.Format(units.Time, r.Value)
	case holes.MostDemand, holes.LaunchOverload:
		return Phrase(reaches(r.Demand, s))
	case holes.RearApart:
		return fmt.Sprintf("rear tires %s apart in the launch", s.Format(units.Percent, r.Value))
	case holes.FrontLift:
		if s.ReadsZero(units.Length, r.Value) {
			return "the front tires stay on the ground"
		}
		return fmt.Sprintf("the front comes up %s in the launch", s.Format(units.Length, r.Value))
	case holes.LiftOver:
		return fmt.Sprintf("the front comes up %s in the launch, its limit is %s", s.Format(units.Length, r.Value), s.Format(units.Length, r.Limit))
	case holes.Tie:
		return tie(r)
	}
	return ""
}

// noSixtyFeet says why a launch does not come to 60 ft.
func noSixtyFeet(o launch.Outcome, fastest launch.Part) string {
	switch o {
	case launch.TimeUp:
		return "the launch is over before 60 ft: its time is up"
	case launch.WentOver:
		return "the car goes over in the launch"
	case launch.NotHeld:
		return "no launch: nothing holds the axle"
	case launch.NoRest:
		return "no launch: the car finds no rest with these turns"
	case launch.TooStiff:
		return "no launch: " + Part(fastest) + " move too fast to be computed"
	}
	return "no launch: the numbers run away"
}

// amount writes a magnitude, one that would be shown as nothing as less than the
// least that is shown.
func amount(s units.System, q units.Quantity, si float64) string {
	si = math.Abs(si)
	if si == 0 || !s.ReadsZero(q, si) {
		return s.Format(q, si)
	}
	return "less than " + s.Format(q, s.ToSI(q, math.Pow(10, -float64(s.Decimals(q)))))
}

// barTurns says how far the bars of either pair are turned.
func barTurns(turns [2]float64) string {
	figure := func(pair car.Pair) string { return units.Decimal(math.Abs(turns[pair]), 2) }
	upper, lower, none := figure(car.Upper), figure(car.Lower), units.Decimal(0, 2)
	switch {
	case upper == none && lower == none:
		return "no turns"
	case upper == none:
		return lower + " turns on the lower bars, none on the upper"
	case lower == none:
		return upper + " turns on the upper bars, none on the lower"
	}
	return fmt.Sprintf("%s turns on the upper bars, %s on the lower", upper, lower)
}

// tie says how many are as good and what decides between them.
func tie(r holes.Reason) string {
	same := map[holes.Order]string{
		holes.NearestTarget: "same distance as", holes.LeastPush: "same push as", holes.LeastShare: "same share as", holes.FewestTurns: "same turns as",
		holes.Quickest: "same time as", holes.LeastEnvelope: "same share as", holes.MostEven: "as even as", holes.LeastLift: "same lift as",
	}[r.Order]
	decides := map[holes.Decider]string{
		holes.ByDistance: "nearness to the target decides",
		holes.ByPush:     "least push decides",
		holes.ByMoved:    "fewest moved ends decide",
		holes.ByTurns:    "fewest turns decide",
		holes.ByHoles:    "all else is the same, so the holes' order decides",
	}[r.Decider]
	return strings.Join([]string{same, counted(r.Others, "other") + ",", decides}, " ")
}

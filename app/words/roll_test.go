package words_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/model/launch"
	"bowline/model/roll"
	"bowline/model/units"
)

func TestRollVerdict(t *testing.T) {
	const degree = math.Pi / 180
	perDegree := 12 * inch * lbf / degree // N·m/rad in 1 lb-ft/°
	r := &roll.Result{Springs: 140 * perDegree, Ride: roll.State{Stiffness: 3100 * perDegree}}
	said := func(what, want string) {
		t.Helper()
		check(t, what, strings.Join(words.RollVerdict(r, units.US), " "), want)
	}
	said("springs alone, nothing checked", "At ride height the bars alone resist axle roll with 3,100 lb-ft/°, 22 times what the rear springs do: bars that are not parallel, in side view or in plan, bind in roll. "+
		"Rod-end angle not given: how far the axle can roll before a rod end comes to its limit is not checked.")
	r.AntiRoll, r.Limits = 4000*perDegree, roll.Limits{15 * degree, 15 * degree}
	r.Ride.Limited, r.Ride.Limit, r.Ride.End = true, -24.988*degree, roll.End{Bar: launch.UpperRight, Housing: true}
	said("anti-roll bar, upper ends", "At ride height the bars alone resist axle roll with 3,100 lb-ft/°, 0.75 times what the rear springs and the anti-roll bar do. "+
		"The axle can roll 24.99° before the housing end of the upper right bar comes to its limit of 15.00°. The ends of the lower bars are not checked: their rod-end angle is not given.")
	check(t, "cell", words.RollLimitCell(r.Limits, &r.Ride, units.US), "24.99°, UR housing")
	r.Springs, r.AntiRoll, r.Ride.Limit = 0, 0, 0
	r.Limits = roll.Limits{4 * degree, 4 * degree, 4 * degree, 4 * degree}
	said("at the limit, no springs", "At ride height the bars alone resist axle roll with 3,100 lb-ft/°; no spring or anti-roll bar does. "+
		"At ride height, without any roll, the housing end of the upper right bar is at its limit of 4.00°.")
	r.Ride.Stiffness, r.Ride.Limited, r.Most.Short = 1e-9, false, true
	said("free", "The bars are parallel and leave the axle free to roll: only springs and anti-roll bar resist. "+
		"No rod end comes to its limit within 45° of axle roll. Rolled by 3° the bars do not reach all of the travel; the rest is left out below.")
	check(t, "cell without a limit", words.RollLimitCell(r.Limits, &r.Ride, units.US), "over 45°")
	check(t, "cell unchecked", words.RollLimitCell(roll.Limits{}, &r.Ride, units.US), "not checked")
	check(t, "unknown", words.RollUnknown(errors.New("the bars do not reach")), "How the axle rolls is not known: the bars do not reach.")
}

func TestRodEnds(t *testing.T) {
	check(t, "all ends", strings.Join(words.RodEnds(), ", "), "UL chassis, UL housing, UR chassis, UR housing, LL chassis, LL housing, LR chassis, LR housing")
}

func TestTimes(t *testing.T) {
	for ratio, want := range map[float64]string{0.354: "0.35", 0.994: "0.99", 0.996: "1.0", 2.44: "2.4", 9.96: "10", 22.1: "22", 1234: "1,234"} {
		check(t, "ratio", words.Times(ratio), want)
	}
}

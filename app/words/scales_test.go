package words_test

import (
	"testing"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

// 675 + 600 of 2,550 lb are half of them.
func TestRest(t *testing.T) {
	l := &launch.Static{RearLoad: [2]float64{600 * lbf, 625 * lbf}, FrontLoad: [2]float64{650 * lbf, 675 * lbf}}
	check(t, "rest", words.Rest(l, car.Turns{LowerLeft: 1}, units.US), "With the turns dialed in the scales read 650 lb left front, 675 lb right front, 600 lb left rear and 625 lb right rear: cross weight 50.0 %.")
	l.RearLoad[launch.Left] += 100 * lbf
	check(t, "no preload", words.Rest(l, car.Turns{}, units.SI), "With no preload dialed in the scales read 294.8 kg left front, 306.2 kg right front, 317.5 kg left rear and 283.5 kg right rear: cross weight 51.9 %.")
}

func TestEvenRear(t *testing.T) {
	right := analysis.Even{Apart: -25 * lbf, Bar: launch.UpperRight, Turns: 1.34, Thread: true, Found: true}
	check(t, "right", words.EvenRear(right, units.US), "The right rear carries 25 lb more than the left: about 1 turn 2 flats longer on the upper right bar brings them together.")
	left := right
	left.Apart, left.Turns, left.Thread = 250*lbf, -9, false
	check(t, "left", words.EvenRear(left, units.US), "The left rear carries 250 lb more than the right: no bar's thread has the turns that bring them together; it would take about 9 turns shorter on the upper right bar.")
	little := right
	little.Apart, little.Turns = -2*lbf, 0.05
	check(t, "little", words.EvenRear(little, units.US), "The right rear carries 2 lb more than the left: less than a flat of a bar.")
	check(t, "alike", words.EvenRear(analysis.Even{Apart: 0.3 * lbf, Found: true}, units.US), "Left and right rear carry alike.")
	check(t, "stuck", words.EvenRear(analysis.Even{Apart: 30 * lbf}, units.US), "The left rear carries 30 lb more than the right: no turn of a bar changes that.")
}

// Of a car that finds no rest there is nothing to say.
func TestPreloadWithoutRest(t *testing.T) {
	check(t, "no rest", words.Preload(&analysis.Result{}, &launch.Result{}, units.US), "")
}

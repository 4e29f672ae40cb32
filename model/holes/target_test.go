package holes_test

import (
	"math"
	"testing"

	"bowline/model/holes"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch   = 0.0254
	degree = math.Pi / 180
)

// box is a target with half widths of 30 %, 10 in and 4 in.
var box = holes.Target{AntiSquat: [2]float64{1, 1.6}, Ahead: [2]float64{40 * inch, 60 * inch}, Above: [2]float64{6 * inch, 14 * inch}, PinionLimit: 2 * degree}

// at is a combination with both an instant center [in] and anti-squat.
func at(antiSquat, ahead, above float64) holes.Combination {
	return holes.Combination{
		HasInstantCenter: true, InstantCenter: r2.Vec{X: ahead * inch, Y: above * inch},
		HasAntiSquat: true, AntiSquat: antiSquat,
	}
}

func TestDistanceByHand(t *testing.T) {
	turning := func(c holes.Combination, least, greatest float64) holes.Combination {
		c.PinionRange = [2]float64{least * degree, greatest * degree}
		return c
	}
	narrow, open := box, box
	narrow.AntiSquat, narrow.Ahead = [2]float64{1.5, 1.5}, [2]float64{50 * inch, 50 * inch}
	open.PinionLimit = 0
	for _, c := range []struct {
		name        string
		target      holes.Target
		combination holes.Combination
		distance    float64
		off         holes.Off
	}{
		{"middle", box, at(1.3, 50, 10), 0, holes.Off{}},
		{"corners", box, at(1.6, 40, 14), 0, holes.Off{}},
		{"rounding", box, at(1.6+1e-13, 40-1e-12, 14+1e-12), 0, holes.Off{}},
		{"too much anti-squat", box, at(1.9, 50, 10), 1, holes.Off{AntiSquat: 0.3}},
		{"too little anti-squat", box, at(-0.5, 50, 10), 5, holes.Off{AntiSquat: -1.5}},
		{"far ahead", box, at(1.3, 65, 10), 0.5, holes.Off{Ahead: 5 * inch}},
		{"behind", box, at(1.3, -10, 10), 5, holes.Off{Ahead: -50 * inch}},
		{"all", box, at(1.9, 65, 4), math.Sqrt(1 + 0.25 + 0.25), holes.Off{AntiSquat: 0.3, Ahead: 5 * inch, Above: -2 * inch}},
		{"pinion", box, turning(at(1.3, 50, 10), -3, 1), 0.5, holes.Off{Pinion: 1 * degree}},
		{"pinion the other way", box, turning(at(1.3, 50, 10), -1, 4), 1, holes.Off{Pinion: 2 * degree}},
		{"pinion within", box, turning(at(1.3, 50, 10), -2, 2), 0, holes.Off{}},
		{"no limit of the pinion", open, turning(at(1.3, 50, 10), -30, 1), 0, holes.Off{}},
		{"one value for anti-squat", narrow, at(1.54, 50, 10), 2, holes.Off{AntiSquat: 0.04}},
		{"one value for the center", narrow, at(1.5, 49.5, 10), 2, holes.Off{Ahead: -0.5 * inch}},
		{"parallel", box, holes.Combination{HasAntiSquat: true, AntiSquat: 1.3}, 100, holes.Off{}},
		{"parallel and steep", box, holes.Combination{HasAntiSquat: true, AntiSquat: 1.9}, math.Sqrt(100*100 + 1), holes.Off{AntiSquat: 0.3}},
		{"upright", box, holes.Combination{HasInstantCenter: true, InstantCenter: r2.Vec{Y: 10 * inch}}, math.Sqrt(100*100 + 4*4), holes.Off{Ahead: -40 * inch}},
		{"neither", box, holes.Combination{}, 100 * math.Sqrt2, holes.Off{}},
	} {
		distance, off := c.target.Distance(&c.combination)
		if !(math.Abs(distance-c.distance) < 2e-9) || (distance == 0) != (c.distance == 0) {
			t.Errorf("%s: distance %v, want %v", c.name, distance, c.distance)
		}
		for i, d := range []float64{off.AntiSquat - c.off.AntiSquat, off.Ahead - c.off.Ahead, off.Above - c.off.Above, off.Pinion - c.off.Pinion} {
			if !(math.Abs(d) < 1e-12) {
				t.Errorf("%s: part %d is off by %v", c.name, i, d)
			}
		}
	}
}

// As bars come parallel and as a line of action comes to stand upright, the
// distance comes to that of having none, without a step.
func TestDistanceHasNoStepAtParallelBars(t *testing.T) {
	parallel := holes.Combination{HasAntiSquat: true, AntiSquat: 1.75}
	want, _ := box.Distance(&parallel)
	last := 0.0
	for _, ahead := range []float64{100, 500, 900, 1200, 1e5, 1e9, 1e300} {
		c := at(1.75, ahead, 0.2*ahead)
		got, _ := box.Distance(&c)
		if !(got >= last && got <= want) {
			t.Errorf("%v in ahead: distance %v after %v, parallel %v", ahead, got, last, want)
		}
		last = got
	}
	if last != want {
		t.Errorf("distance comes to %v, with parallel bars it is %v", last, want)
	}
	upright := at(0, 50, 10)
	upright.HasAntiSquat = false
	want, _ = box.Distance(&upright)
	steep := at(1e12, 50, 10)
	if got, _ := box.Distance(&steep); got != want || want != holes.Farthest {
		t.Errorf("distance comes to %v, upright it is %v", got, want)
	}
}

package report

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestRoundTravels(t *testing.T) {
	for _, c := range []struct {
		droop, bump, unit float64
		want              []float64 // In units.
	}{
		{4, 3, 1, []float64{-4, -3, -2, -1, 0, 1, 2, 3}},
		{4, 0, 1, []float64{-4, -3.5, -3, -2.5, -2, -1.5, -1, -0.5, 0}},
		{0, 2, 1, []float64{0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2}},
		{0.1016, 0.0762, 1e-3, []float64{-101.6, -80, -60, -40, -20, 0, 20, 40, 60, 76.2}},
		{0.01, 10, 1, []float64{-0.01, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}},
	} {
		got := roundTravels(c.droop, c.bump, c.unit)
		same := slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a/c.unit-b) < 1e-9 })
		if !same {
			t.Errorf("%g droop, %g bump: %v, want %v", c.droop, c.bump, got, c.want)
		}
	}
}

func TestRoundTravelsOfAnyCar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		droop := rapid.OneOf(rapid.Just(0.), rapid.Float64Range(1e-6, 1)).Draw(t, "droop")
		bump := rapid.OneOf(rapid.Just(0.), rapid.Float64Range(1e-6, 1)).Draw(t, "bump")
		if droop+bump == 0 {
			bump = 0.1
		}
		list := roundTravels(droop, bump, rapid.SampledFrom([]float64{0.0254, 1e-3}).Draw(t, "unit"))
		if !slices.IsSorted(list) || len(slices.Compact(slices.Clone(list))) != len(list) {
			t.Errorf("not in order: %v", list)
		}
		if list[0] != -droop || list[len(list)-1] != bump || !slices.Contains(list, 0) {
			t.Errorf("ends or ride height are missing: %v", list)
		}
		if len(list) < 6 || len(list) > 15 {
			t.Errorf("%d travels: %v", len(list), list)
		}
		if slices.ContainsFunc(list, func(q float64) bool { return q == 0 && math.Signbit(q) }) {
			t.Errorf("a negative zero: %v", list)
		}
	})
}

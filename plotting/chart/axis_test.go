package chart

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/units"

	"pgregory.net/rapid"
)

func labelsOf(list []tick) string {
	var all []string
	for _, t := range list {
		all = append(all, t.label)
	}
	return strings.Join(all, " ")
}

func TestTicks(t *testing.T) {
	force := Axis{Quantity: units.Force, Unsigned: true}
	length := Axis{Quantity: units.Length}
	percent := Axis{Quantity: units.Percent}
	for _, c := range []struct {
		axis  Axis
		units units.System
		shown Span // in the unit shown
		want  string
	}{
		{force, units.US, Span{-11000, 7000}, "10,000 5,000 0 5,000"},
		{force, units.US, Span{-6000, 9000}, "5,000 2,500 0 2,500 5,000 7,500"},
		{force, units.SI, Span{-1.2e6, 1e5}, "1,200,000 1,000,000 800,000 600,000 400,000 200,000 0"},
		{length, units.US, Span{-4, 3}, "−4 −3 −2 −1 0 1 2 3"},
		{length, units.US, Span{0, 0.05}, "0.00 0.01 0.02 0.03 0.04 0.05"},
		{length, units.US, Span{0, 0.17}, "0.000 0.025 0.050 0.075 0.100 0.125 0.150"},
		{length, units.SI, Span{-101.6, 76.2}, "−100 −50 0 50"},
		{percent, units.US, Span{90, 201}, "100 120 140 160 180 200"},
	} {
		f := c.units.Factor(c.axis.Quantity)
		got := c.axis.ticks(c.units, Span{c.shown.Min * f, c.shown.Max * f})
		if labelsOf(got) != c.want {
			t.Errorf("%v %v: %q, want %q", c.units, c.shown, labelsOf(got), c.want)
		}
	}
}

// Ticks are at round multiples of the unit, in order, in sight, neither few
// nor many, and their labels tell the value.
func TestTicksOfAnySpan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(-1e6, 1e6).Draw(t, "from")
		length := math.Pow(10, rapid.Float64Range(-3, 6).Draw(t, "log length"))
		a := Axis{Quantity: units.Length}
		s := units.System(rapid.IntRange(0, 1).Draw(t, "units"))
		shown := Span{from, from + length}
		list := a.ticks(s, shown)
		if len(list) < 3 || len(list) > tickCount+1 {
			t.Fatalf("%d ticks", len(list))
		}
		by := s.FromSI(units.Length, list[1].at-list[0].at)
		for i, tick := range list {
			if !(tick.at >= from-1e-8*length && tick.at <= shown.Max+1e-8*length) {
				t.Fatalf("tick %g is out of %v", tick.at, shown)
			}
			if i > 0 && math.Abs(s.FromSI(units.Length, tick.at-list[i-1].at)/by-1) > 1e-4 {
				t.Fatalf("ticks are uneven: %v", list)
			}
		}
		if labels := labelsOf(list); len(slices.Compact(strings.Fields(labels))) != len(list) {
			t.Fatalf("labels repeat: %s", labels)
		}
	})
}

// Both halves of the force axis have room for their word.
func TestHalvesHaveRoom(t *testing.T) {
	a := Axis{Quantity: units.Force, Unsigned: true, Least: 1}
	for _, sight := range []Span{{-10000, 1}, {-1, 10000}} {
		a.Sight = sight
		got := a.span(units.SI, Nowhere())
		if -got.Min < 0.24*got.Length() || got.Max < 0.24*got.Length() {
			t.Errorf("%v is shown in %v", sight, got)
		}
	}
	a.Sight = Span{-10000, 0}
	if got := a.span(units.SI, Nowhere()); got.Max != 0 {
		t.Errorf("nothing pulls, yet the axis runs to %g", got.Max)
	}
}

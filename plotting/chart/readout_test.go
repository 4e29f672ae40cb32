package chart_test

import (
	"slices"
	"testing"

	"bowline/model/units"
	"bowline/plotting/chart"
)

// What several setups have in common is said once, with the values of all; what
// they have not comes with the setup's name.
func TestReadoutsOfSeveral(t *testing.T) {
	here := func(r chart.Reading) []chart.Reading { return []chart.Reading{chart.Plain("here"), r} }
	hit := func(value string) []chart.Reading { return here(chart.Reading{Name: "lower hit", Value: value}) }
	none := here(chart.Reading{Name: "lower hit", Lack: "no hold"})
	center := func(value, after string) []chart.Reading {
		return here(chart.Reading{Name: "c", Value: value, After: after})
	}
	for _, c := range []struct {
		of   [][]chart.Reading
		want []string
	}{
		{[][]chart.Reading{hit("5 lb"), hit("5 lb")}, []string{"here, a vs b", "lower hit 5 lb"}},
		{[][]chart.Reading{hit("5 lb"), hit("6 lb")}, []string{"here, a vs b", "lower hit 5 lb vs 6 lb"}},
		{[][]chart.Reading{hit("5 lb"), none}, []string{"here, a vs b", "lower hit 5 lb vs no value"}},
		{[][]chart.Reading{none, none}, []string{"here, a vs b", "lower hit has no value: no hold"}},
		{[][]chart.Reading{hit("5 lb"), {chart.Plain("here"), chart.Plain("off"), chart.Plain("gone")}}, []string{"here, a vs b", "a: lower hit 5 lb", "b: off", "b: gone"}},
		{[][]chart.Reading{hit("5 lb"), here(chart.Plain("off"))}, []string{"here, a vs b", "a: lower hit 5 lb", "b: off"}},
		{[][]chart.Reading{center("1 in", "ahead"), center("2 in", "ahead")}, []string{"here, a vs b", "c 1 in vs 2 in ahead"}},
		{[][]chart.Reading{center("1 in", "ahead"), center("2 in", "behind")}, []string{"here, a vs b", "c 1 in ahead vs 2 in behind"}},
		{[][]chart.Reading{{chart.Plain("not held")}, hit("5 lb")}, []string{"a: not held", "b: here", "b: lower hit 5 lb"}},
		{[][]chart.Reading{nil, hit("5 lb")}, []string{"here", "lower hit 5 lb"}},
		{[][]chart.Reading{hit("5 lb"), hit("5 lb"), hit("6 lb")}, []string{"here, a vs b vs c", "lower hit 5 lb vs 5 lb vs 6 lb"}},
		{[][]chart.Reading{hit("5 lb"), nil, hit("6 lb")}, []string{"here, a vs c", "lower hit 5 lb vs 6 lb"}},
		{[][]chart.Reading{hit("5 lb"), none, here(chart.Plain("off"))}, []string{"here, a vs b vs c", "a: lower hit 5 lb", "b: lower hit has no value: no hold", "c: off"}},
	} {
		var charts []*chart.Chart
		for i, readings := range c.of {
			charts = append(charts, made(string(rune('a'+i)), axis(0, 1), axis(0, 1), fake{readings: readings}))
		}
		if got := chart.Compare(charts...).Readout(0, units.US); !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

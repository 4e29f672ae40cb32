package chart_test

import (
	"slices"
	"testing"

	"bowline/plotting/chart"

	"pgregory.net/rapid"
)

func TestShortNames(t *testing.T) {
	for _, c := range []struct{ names, want []string }{
		{[]string{"baseline", "more bite"}, []string{"baseline", "more bite"}},
		{[]string{"a very long name", "another"}, []string{"a very lo…", "another"}},
		{[]string{"hot track, upper 2", "hot track, upper 3"}, []string{"hot t…er 2", "hot t…er 3"}},
		{[]string{"hot track 2 and cold", "hot track 3 and cold"}, []string{"1 hot tra…", "2 hot tra…"}},
		{[]string{"Überhöhung links", "x"}, []string{"Überhöhun…", "x"}},
	} {
		if got := chart.ShortNames(c.names, 10); !slices.Equal(got, c.want) {
			t.Errorf("%q became %q, want %q", c.names, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfNDistinct(rapid.StringN(1, 40, -1), 2, 4, rapid.ID).Draw(t, "names")
		length := rapid.IntRange(5, chart.NameLength).Draw(t, "length")
		got := chart.ShortNames(names, length)
		if len(slices.Compact(slices.Sorted(slices.Values(got)))) != len(names) {
			t.Fatalf("%q became %q", names, got)
		}
		for _, name := range got {
			if n := len([]rune(name)); n > length {
				t.Fatalf("%q has %d letters", name, n)
			}
		}
	})
}

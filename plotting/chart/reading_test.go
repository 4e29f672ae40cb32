package chart

import (
	"slices"
	"testing"
)

func TestReadingsOfTwoKinds(t *testing.T) {
	p := several{shorts: []string{"a", "b"}}
	force := func(text string) []Reading {
		return []Reading{Plain("here"), {Name: "lower hit", Value: text}}
	}
	for _, c := range []struct {
		a, b []Reading
		want []string
	}{
		{force("5 lb"), force("5 lb"), []string{"here, a vs b", "lower hit 5 lb"}},
		{force("5 lb"), []Reading{Plain("here"), {Name: "lower hit", Lack: "no hold"}}, []string{"here, a vs b", "lower hit 5 lb vs no value"}},
		{[]Reading{Plain("here"), {Name: "lower hit", Lack: "no hold"}}, []Reading{Plain("here"), {Name: "lower hit", Lack: "no hold"}}, []string{"here, a vs b", "lower hit has no value: no hold"}},
		{force("5 lb"), []Reading{Plain("here"), Plain("off"), Plain("gone")}, []string{"here, a vs b", "a: lower hit 5 lb", "b: off", "b: gone"}},
		{force("5 lb"), []Reading{Plain("here"), Plain("off")}, []string{"here, a vs b", "a: lower hit 5 lb", "b: off"}},
		{[]Reading{Plain("x"), {Name: "c", Value: "1 in", After: "ahead"}}, []Reading{Plain("x"), {Name: "c", Value: "2 in", After: "behind"}}, []string{"x, a vs b", "c 1 in ahead vs 2 in behind"}},
		{[]Reading{Plain("not held")}, force("5 lb"), []string{"a: not held", "b: here", "b: lower hit 5 lb"}},
		{nil, force("5 lb"), []string{"here", "lower hit 5 lb"}},
	} {
		if got := written(p.join([][]Reading{c.a, c.b})); !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

package sheet

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestLinesBreakAtSpaces(t *testing.T) {
	test.NewTempApp(t)
	f := Face(fyne.TextStyle{}, 11)
	width := float32(f.Width("twelve words")) + 0.01
	for text, want := range map[string][]string{
		"":                         nil,
		"twelve words":             {"twelve words"},
		"twelve  words":            {"twelve words"},
		"twelve words x":           {"twelve words", "x"},
		"one\ntwo":                 {"one", "two"},
		"a":                        {"a"},
		"incomprehensibilities as": {"incomprehensibilities", "as"},
	} {
		if got := Lines(text, f, width); !slices.Equal(got, want) {
			t.Errorf("%q breaks into %q", text, got)
		}
	}
}

// No line is wider than asked for, none has room for the next word, and no word
// is lost.
func TestLinesBreakWhereTheyMust(t *testing.T) {
	test.NewTempApp(t)
	f := Face(fyne.TextStyle{}, 13)
	const sentence = "Lower bars reach 91 % of what they may carry, in push at 4.00 in droop in the hit case."
	for width := float32(120); width < 500; width += 17 {
		lines := Lines(sentence, f, width)
		if strings.Join(lines, " ") != sentence {
			t.Errorf("in %v: lines %q", width, lines)
		}
		for i, line := range lines {
			if w := float32(f.Width(line)); w > width {
				t.Errorf("in %v: line %q is %v wide", width, line, w)
			}
			if i > 0 {
				word, _, _ := strings.Cut(line, " ")
				if w := float32(f.Width(lines[i-1] + " " + word)); w <= width {
					t.Errorf("in %v: %q had room behind %q", width, word, lines[i-1])
				}
			}
		}
	}
}

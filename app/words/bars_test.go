package words_test

import (
	"slices"
	"testing"

	"bowline/app/words"
)

func TestBarNames(t *testing.T) {
	if got := words.BarNames(); !slices.Equal(got, []string{"Upper left", "Upper right", "Lower left", "Lower right"}) {
		t.Errorf("%q", got)
	}
	if got := words.BarInitials(); !slices.Equal(got, []string{"UL", "UR", "LL", "LR"}) {
		t.Errorf("%q", got)
	}
	check(t, "initials", words.Initials("Lower right bar"), "LR")
}

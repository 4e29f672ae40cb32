package panel_test

import (
	"testing"

	"bowline/app/look"
	"bowline/app/panel"
	"bowline/model/column"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// A load has the color of its direction up to its limit, and beyond it that of an error.
func TestLoadColor(t *testing.T) {
	for _, c := range []struct {
		way   column.Direction
		share float64
		want  fyne.ThemeColorName
	}{
		{column.Push, 0.3, look.ColorNamePush}, {column.Pull, 0.3, look.ColorNamePull}, {column.Push, 1, look.ColorNamePush},
		{column.Push, 1.001, theme.ColorNameError}, {column.Pull, 2, theme.ColorNameError}, {column.Pull, 0, theme.ColorNameForeground},
	} {
		if got := panel.LoadColor(c.way, c.share); got != c.want {
			t.Errorf("%s at %g is %s, want %s", c.way, c.share, got, c.want)
		}
	}
}

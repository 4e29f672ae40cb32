package panel

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// The functions below have a widget show what the program holds. The widgets'
// own setters report to OnChanged as if a person had made the change; these do
// not, so that showing the study never writes it.

// ShowChecked ticks a box or not.
func ShowChecked(c *widget.Check, on bool) {
	if c.Checked != on {
		c.Checked = on
		c.Refresh()
	}
}

// ShowChosen chooses one of the words of a group.
func ShowChosen(r *widget.RadioGroup, word string) {
	if r.Selected != word {
		r.Selected = word
		r.Refresh()
	}
}

// ShowSelected selects one of some options.
func ShowSelected(s *widget.Select, options []string, option string) {
	if s.Selected != option || !slices.Equal(s.Options, options) {
		s.Options, s.Selected = options, option
		s.Refresh()
	}
}

// ShowSlid puts the thumb of a slider between two ends.
func ShowSlid(s *widget.Slider, low, high, at float64) {
	if s.Min != low || s.Max != high || s.Value != at {
		s.Min, s.Max, s.Value = low, high, at
		s.Refresh()
	}
}

// Enable has a button or a box react or not.
func Enable(b fyne.Disableable, on bool) {
	if on == b.Disabled() {
		if on {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

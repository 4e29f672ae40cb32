package form

import (
	"math"

	"fyne.io/fyne/v2/widget"
)

// Slider moves a number along a range. Only what a person moves is reported.
type Slider struct {
	widget.Slider
	get func() (low, high, at float64)
}

// NewSlider returns a slider whose range and place follow get.
func NewSlider(step float64, get func() (low, high, at float64), moved func(to float64)) *Slider {
	s := &Slider{get: get}
	s.Step, s.OnChanged = step, moved
	s.ExtendBaseWidget(s)
	s.Update()
	return s
}

// Update shows range and place as they are now.
func (s *Slider) Update() {
	low, high, at := s.get()
	if s.Min == low && s.Max == high && math.Abs(s.Value-at) <= s.Step/2 { // The toolkit rounds to steps.
		return
	}
	s.Min, s.Max, s.Value = low, high, at
	s.Refresh()
}

package controls

import (
	"math"

	"bowline/app/panel"
	"bowline/app/study"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// TravelBar has a slider for the rear and one for the front travel.
type TravelBar struct {
	study       *study.Study
	rear, front *slider
	Object      fyne.CanvasObject
}

// slider is a named slider with its value in words.
type slider struct {
	*widget.Slider
	value *widget.Label
}

// sliderSteps is how finely the sliders divide a meter.
const sliderSteps = 1e-4

// newSlider returns a slider over set, from droop to bump.
func newSlider(set func(float64)) *slider {
	s := &slider{Slider: widget.NewSlider(-1, 1), value: widget.NewLabel("")}
	s.Step = sliderSteps
	s.OnChanged = func(x float64) {
		// Ride height catches the slider.
		if math.Abs(x) < 0.012*(s.Max-s.Min) {
			x = 0
		}
		set(x)
	}
	return s
}

// show moves the slider and writes the value.
func (s *slider) show(low, high, x float64, u units.System) {
	panel.ShowSlid(s.Slider, low, high, x)
	if text := u.Travel(x); s.value.Text != text {
		s.value.SetText(text)
	}
}

// NewTravelBar returns the bar under the side view.
func NewTravelBar(s *study.Study) *TravelBar {
	b := &TravelBar{study: s, rear: newSlider(s.SetTravel), front: newSlider(s.SetFront)}
	ride := widget.NewButton("Ride height", func() {
		s.SetTravel(0)
		s.SetFront(0)
	})
	row := func(name string, k *slider) fyne.CanvasObject {
		value := container.New(panel.FixedWidth(108), k.value)
		return container.NewBorder(nil, nil, container.New(panel.FixedWidth(46), widget.NewLabel(name)), value, k.Slider)
	}
	b.Object = container.NewBorder(nil, nil, nil, container.NewCenter(ride), container.NewVBox(row("Rear", b.rear), row("Front", b.front)))
	s.Listen(func(c study.Change) {
		if c.Has(study.Analysis | study.Position | study.Units) {
			b.refresh()
		}
	})
	b.refresh()
	return b
}

// refresh takes up ranges and values.
func (b *TravelBar) refresh() {
	k, u := b.study.Document().Car().Springs, b.study.Units()
	b.rear.show(-k.RearDroop, k.RearBump, b.study.Travel(), u)
	b.front.show(-k.FrontDroop, k.FrontBump, b.study.Front(), u)
}

package controls

import (
	"math"

	"bowline/app/form"
	"bowline/app/study"
	"bowline/model/car"
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
	*form.Slider
	value *widget.Label
	at    func() float64
}

// sliderSteps is how finely sliders divide a meter or a second.
const sliderSteps = 1e-4

// newSlider returns a slider of a travel from droop to bump.
func newSlider(stops func() (droop, bump float64), at func() float64, set func(float64)) *slider {
	s := &slider{value: widget.NewLabel(""), at: at}
	s.Slider = form.NewSlider(sliderSteps, func() (low, high, x float64) {
		droop, bump := stops()
		return -droop, bump, at()
	}, func(x float64) {
		// Ride height catches the slider.
		if math.Abs(x) < 0.012*(s.Max-s.Min) {
			x = 0
		}
		set(x)
	})
	return s
}

// update moves the slider and writes the value.
func (s *slider) update(u units.System) {
	s.Update()
	if text := u.Travel(s.at()); s.value.Text != text {
		s.value.SetText(text)
	}
}

// NewTravelBar returns the bar under the side view.
func NewTravelBar(s *study.Study) *TravelBar {
	b := &TravelBar{study: s}
	springs := func() car.Springs { return s.Document().Car().Springs }
	b.rear = newSlider(func() (droop, bump float64) { return springs().RearDroop, springs().RearBump }, s.Travel, s.SetTravel)
	b.front = newSlider(func() (droop, bump float64) { return springs().FrontDroop, springs().FrontBump }, s.Front, s.SetFront)
	ride := widget.NewButton("Ride height", func() {
		s.SetTravel(0)
		s.SetFront(0)
	})
	row := func(name string, k *slider) fyne.CanvasObject {
		value := container.New(form.FixedWidth(108), k.value)
		return container.NewBorder(nil, nil, container.New(form.FixedWidth(46), widget.NewLabel(name)), value, k.Slider)
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
	b.rear.update(b.study.Units())
	b.front.update(b.study.Units())
}

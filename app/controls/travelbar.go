package controls

import (
	"math"

	"bowline/app/form"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// TravelBar has a slider for the rear and one for the front travel, side by side.
type TravelBar struct {
	study       *study.Study
	rear, front *slider
	Object      fyne.CanvasObject
}

// slider is a slider under its name and its value in words.
type slider struct {
	*form.Slider
	name string
	said *widget.Label
	at   func() float64
}

// sliderSteps is how finely sliders divide a meter.
const sliderSteps = 1e-4

// newSlider returns a slider of a travel from droop to bump.
func newSlider(name string, stops func() (droop, bump float64), at func() float64, set func(float64)) *slider {
	s := &slider{name: name, said: widget.NewLabel(""), at: at}
	s.said.SizeName = theme.SizeNameCaptionText
	s.said.Truncation = fyne.TextTruncateClip
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
	if text := s.name + "  " + u.Travel(s.at()); s.said.Text != text {
		s.said.SetText(text)
	}
}

// NewTravelBar returns the bar under the side view.
func NewTravelBar(s *study.Study) *TravelBar {
	b := &TravelBar{study: s}
	springs := func() car.Springs { return s.Document().Car().Springs }
	b.rear = newSlider("Rear", func() (droop, bump float64) { return springs().RearDroop, springs().RearBump }, s.Travel, s.SetTravel)
	b.front = newSlider("Front", func() (droop, bump float64) { return springs().FrontDroop, springs().FrontBump }, s.Front, s.SetFront)
	ride := widget.NewButton("Ride height", func() {
		s.SetTravel(0)
		s.SetFront(0)
	})
	parts := &travelLayout{b.rear, b.front, ride}
	b.Object = container.New(parts, b.rear.said, b.rear.Slider, b.front.said, b.front.Slider, ride)
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

// travelLayout is one row: both sliders, which share the room, and the button.
type travelLayout struct {
	rear, front *slider
	ride        *widget.Button
}

const (
	travelHeight = 32  // of the row [px]
	leastTravel  = 96  // width of a slider [px]
	knobRoom     = 22  // height of a slider [px]
	travelGap    = 6.0 // between two parts [px]
)

// MinSize implements fyne.Layout.
func (l *travelLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(2*(leastTravel+travelGap)+l.ride.MinSize().Width, max(travelHeight, l.ride.MinSize().Height))
}

// Layout implements fyne.Layout.
func (l *travelLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	ride := l.ride.MinSize()
	l.ride.Move(fyne.NewPos(size.Width-ride.Width, (size.Height-ride.Height)/2))
	l.ride.Resize(ride)
	width := (size.Width - ride.Width - 2*travelGap) / 2
	for i, s := range []*slider{l.rear, l.front} {
		x := float32(i) * (width + travelGap)
		// The words stand at the upper edge; the room around them is the slider's.
		s.said.Move(fyne.NewPos(x, -theme.InnerPadding()))
		s.said.Resize(fyne.NewSize(width, s.said.MinSize().Height))
		s.Move(fyne.NewPos(x, size.Height-knobRoom))
		s.Resize(fyne.NewSize(width, knobRoom))
	}
}

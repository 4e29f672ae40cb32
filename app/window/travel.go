package window

import (
	"math"

	"bowline/app/study"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// travelBar has a slider for the rear and one for the front travel.
type travelBar struct {
	study       *study.Study
	rear, front *slider
	object      fyne.CanvasObject
}

// slider is a named slider with its value in words.
type slider struct {
	*widget.Slider
	value   *widget.Label
	setting bool // the program, not the user, moves it
}

// sliderSteps is how finely the sliders divide a meter.
const sliderSteps = 1e-4

// newSlider returns a slider over set, from droop to bump.
func newSlider(set func(float64)) *slider {
	s := &slider{Slider: widget.NewSlider(-1, 1), value: widget.NewLabel("")}
	s.Step = sliderSteps
	s.OnChanged = func(x float64) {
		if s.setting {
			return
		}
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
	s.setting = true
	if s.Min != low || s.Max != high {
		s.Min, s.Max = low, high
		s.Refresh()
	}
	if s.Value != x {
		s.SetValue(x)
	}
	s.setting = false
	if text := u.Travel(x); s.value.Text != text {
		s.value.SetText(text)
	}
}

// newTravelBar returns the bar under the side view.
func newTravelBar(s *study.Study) *travelBar {
	b := &travelBar{study: s, rear: newSlider(s.SetTravel), front: newSlider(s.SetFront)}
	ride := widget.NewButton("Ride height", func() {
		s.SetTravel(0)
		s.SetFront(0)
	})
	row := func(name string, k *slider) fyne.CanvasObject {
		value := container.New(fixedWidth(108), k.value)
		return container.NewBorder(nil, nil, container.New(fixedWidth(46), widget.NewLabel(name)), value, k.Slider)
	}
	b.object = container.NewBorder(nil, nil, nil, container.NewCenter(ride), container.NewVBox(row("Rear", b.rear), row("Front", b.front)))
	s.Listen(func(c study.Change) {
		if c.Has(study.Analysis | study.Position | study.Units) {
			b.refresh()
		}
	})
	b.refresh()
	return b
}

// refresh takes up ranges and values.
func (b *travelBar) refresh() {
	k, u := b.study.Document().Car().Springs, b.study.Units()
	b.rear.show(-k.RearDroop, k.RearBump, b.study.Travel(), u)
	b.front.show(-k.FrontDroop, k.FrontBump, b.study.Front(), u)
}

// fixedWidth lays out one object at a width, so that neighbors hold still
// while its words change.
type fixedWidth float32

// MinSize implements fyne.Layout.
func (w fixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(w), objects[0].MinSize().Height)
}

// Layout implements fyne.Layout.
func (w fixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

var _ fyne.Layout = fixedWidth(0)

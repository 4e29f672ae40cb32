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

// TravelBar has a slider for the rear and one for the front travel: the rear's over the travel
// of the chart below, or else side by side.
type TravelBar struct {
	study       *study.Study
	rear, front *slider
	Object      *fyne.Container

	// Axis, if set, returns where on the window's canvas a chart over travel has full droop
	// and full bump [px]; false while none is on show.
	Axis  func() (droop, bump float64, ok bool)
	drawn [2]float32 // where the rear slider's ends were put last; zero for side by side
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
	parts := &travelLayout{b, ride}
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

// Realign puts the rear slider over the axis where that is by now.
func (b *TravelBar) Realign() {
	if b.axis() != b.drawn {
		b.Object.Refresh()
	}
}

// axis returns where the rear slider's ends are to be, from the bar's left edge; zero where
// there is no axis or too little room.
func (b *TravelBar) axis() [2]float32 {
	size := b.Object.Size()
	if b.Axis == nil || size.Width < leastAligned {
		return [2]float32{}
	}
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.Object).X
	left, right, ok := b.Axis()
	from, to := float32(left)-corner, float32(right)-corner
	if !ok || from < knobEnd() || to > size.Width-knobEnd() || to-from < leastTravel {
		return [2]float32{}
	}
	return [2]float32{from, to}
}

// knobEnd is how far the middle of a slider's knob is from the slider's end at most.
func knobEnd() float32 {
	return (theme.Size(theme.SizeNameInlineIcon)-4)/2 + theme.Size(theme.SizeNameInnerPadding) - 1.5
}

// travelLayout has the rear slider over the axis with its words and the front one above, or
// both sliders side by side, and the button at the right.
type travelLayout struct {
	bar  *TravelBar
	ride *widget.Button
}

const (
	travelHeight = 34  // of the bar [px]
	leastTravel  = 96  // width of a slider [px]
	leastAligned = 480 // width of a bar with the rear slider over an axis [px]
	frontTravel  = 130 // width of the front slider in it [px]
	frontWords   = 126 // of the words before it [px]
	knobRoom     = 16  // height of a slider [px]
	travelGap    = 6.0 // between two parts [px]
)

// MinSize implements fyne.Layout.
func (l *travelLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(2*(leastTravel+travelGap)+l.ride.MinSize().Width, travelHeight)
}

// Layout implements fyne.Layout.
func (l *travelLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	b, ride := l.bar, l.ride.MinSize()
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, height))
	}
	// The room around words is a slider's.
	words := func(s *slider, x, y, width float32) {
		put(s.said, x, y-theme.InnerPadding(), width, s.said.MinSize().Height)
	}
	b.drawn = b.axis()
	if b.drawn != [2]float32{} {
		from, to := b.drawn[0], b.drawn[1]
		top := size.Height - knobRoom
		button := size.Width - ride.Width
		put(l.ride, button, 0, ride.Width, top)
		slide := button - travelGap - frontTravel
		put(b.front.Slider, slide, (top-knobRoom)/2, frontTravel, knobRoom)
		told := min(float32(frontWords), slide/2)
		words(b.front, slide-told, 3, told)
		words(b.rear, max(from-theme.InnerPadding(), 0), 3, slide-told-from)
		put(b.rear.Slider, from-knobEnd(), size.Height-knobRoom, to-from+2*knobEnd(), knobRoom)
		return
	}
	put(l.ride, size.Width-ride.Width, (size.Height-ride.Height)/2, ride.Width, ride.Height)
	width := (size.Width - ride.Width - 2*travelGap) / 2
	for i, s := range []*slider{b.rear, b.front} {
		x := float32(i) * (width + travelGap)
		words(s, x, 3, width)
		put(s.Slider, x, size.Height-knobRoom-2, width, knobRoom)
	}
}

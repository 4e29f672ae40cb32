// Package controls holds what stands around the stage: the toolbar over it, and
// under it the bar that moves the suspension or plays the launch.
package controls

import (
	"time"

	"bowline/app/form"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// TimeBar plays the launch: play, pause, scrub and slow motion.
type TimeBar struct {
	study  *study.Study
	post   func(func())
	play   *widget.Button
	pace   *widget.Select
	slider *form.Slider
	value  *widget.Label
	Object fyne.CanvasObject

	stop chan struct{} // ends the playing; nil while it stands
	last time.Time     // of the last step
}

// firstPace is the speed that the launch is played at first.
const firstPace = 3

// paces are the speeds of playing, by name.
var paces = []struct {
	name string
	rate float64
}{{"1/50", 1. / 50}, {"1/20", 1. / 20}, {"1/10", 1. / 10}, {"1/5", 1. / 5}, {"1/2", 1. / 2}, {"1/1", 1}}

// frameEvery is the time between two frames while playing.
const frameEvery = time.Second / 60

// NewTimeBar returns the bar under the side view while the launch is looked
// at. post takes a function to the goroutine that owns the window.
func NewTimeBar(s *study.Study, post func(func())) *TimeBar {
	b := &TimeBar{study: s, post: post, value: widget.NewLabel("")}
	b.play = widget.NewButtonWithIcon("", theme.MediaPlayIcon(), b.toggle)
	names := make([]string, len(paces))
	for i, p := range paces {
		names[i] = p.name
	}
	b.pace = widget.NewSelect(names, nil)
	b.pace.PlaceHolder = names[0] // which its least width is for
	b.pace.SetSelectedIndex(firstPace)
	b.slider = form.NewSlider(sliderSteps, func() (start, end, at float64) { return 0, max(s.LaunchEnd(), 1e-3), s.Time() }, func(t float64) {
		b.Pause()
		s.SetTime(t)
	})
	b.Object = container.NewBorder(nil, nil, container.NewHBox(b.play, b.pace), container.New(form.FixedWidth(108), b.value), b.slider)
	s.Listen(func(c study.Change) {
		if c.Has(study.Position | study.Launches | study.Units) {
			b.refresh()
		}
	})
	b.refresh()
	return b
}

// refresh takes up end, time and distance.
func (b *TimeBar) refresh() {
	b.slider.Update()
	text := "computing…"
	if r := b.study.Launch(); r != nil {
		text = b.study.Units().Format(units.Time, b.study.Time())
		if i, ok := b.study.Instant(); ok {
			text += ", " + words.Come(r.Distance[i], b.study.Units())
		}
	}
	if b.value.Text != text {
		b.value.SetText(text)
	}
}

// toggle plays or pauses. At its end the launch starts again.
func (b *TimeBar) toggle() {
	if b.stop != nil {
		b.Pause()
		return
	}
	if b.study.LaunchEnd() == 0 {
		return
	}
	if b.study.Time() >= b.study.LaunchEnd() {
		b.study.SetTime(0)
	}
	b.stop, b.last = make(chan struct{}), time.Now()
	b.play.SetIcon(theme.MediaPauseIcon())
	go b.tick(b.stop)
}

// Pause stands still.
func (b *TimeBar) Pause() {
	if b.stop == nil {
		return
	}
	close(b.stop)
	b.stop = nil
	b.play.SetIcon(theme.MediaPlayIcon())
}

// tick asks for a step at the rate of frames until the playing stops.
func (b *TimeBar) tick(stop chan struct{}) {
	ticker := time.NewTicker(frameEvery)
	defer ticker.Stop()
	for {
		select {
		case <-stop:
			return
		case now := <-ticker.C:
			b.post(func() { b.step(stop, now) })
		}
	}
}

// step goes on by the time since the last step, at the pace chosen.
func (b *TimeBar) step(stop chan struct{}, now time.Time) {
	if b.stop != stop {
		return
	}
	rate := paces[max(b.pace.SelectedIndex(), 0)].rate
	b.study.SetTime(b.study.Time() + rate*now.Sub(b.last).Seconds())
	b.last = now
	if b.study.Time() >= b.study.LaunchEnd() {
		b.Pause()
	}
}

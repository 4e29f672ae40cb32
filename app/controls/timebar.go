// Package controls holds what stands around the stage: the toolbar over it, and
// under it the bar that moves the suspension or the time line that plays the launch.
package controls

import (
	"math"

	"bowline/app/scene"
	"bowline/app/stage"
	"bowline/app/study"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// TimeBar is the time line of the launch: play, loop, speed, and the track with
// what happens in the launch.
type TimeBar struct {
	study  *study.Study
	player *player
	play   *widget.Button
	speed  *widget.Button
	loop   *widget.Button
	track  *track
	pace   int // index in paces
	Object fyne.CanvasObject

	// Axis, if set, returns where on the window's canvas a chart over the launch has
	// its start and its end, and false while none is on show. The track stands on it.
	Axis func() (start, end float64, ok bool)
}

// firstPace is the speed that the launch is played at first.
const firstPace = 3

// paces are the speeds of playing, by name.
var paces = []struct {
	name string
	rate float64
}{{"1/50", 1. / 50}, {"1/20", 1. / 20}, {"1/10", 1. / 10}, {"1/5", 1. / 5}, {"1/2", 1. / 2}, {"1", 1}}

// NewTimeBar returns the bar under the stage while the launch is looked at.
func NewTimeBar(s *study.Study) *TimeBar {
	b := &TimeBar{study: s, pace: firstPace}
	b.player = &player{study: s, rate: func() float64 { return paces[b.pace].rate }, changed: b.refresh}
	b.play = widget.NewButtonWithIcon("", theme.MediaPlayIcon(), b.player.Toggle)
	b.speed = widget.NewButton(paces[b.pace].name, b.offerPaces)
	b.loop = widget.NewButtonWithIcon("", theme.MediaReplayIcon(), func() { b.SetLoop(!b.player.loop) })
	b.track = newTrack(b)
	b.Object = container.New(&timeLayout{b}, b.play, b.track, b.speed, b.loop)
	s.Listen(func(c study.Change) {
		b.player.follow(c)
		if c.Has(study.Position | study.Launches | study.Units) {
			b.track.update()
		}
	})
	b.track.update()
	return b
}

// refresh shows whether it plays.
func (b *TimeBar) refresh() {
	icon := theme.MediaPlayIcon()
	if b.player.Playing() {
		icon = theme.MediaPauseIcon()
	}
	b.play.SetIcon(icon)
}

// Realign has the track drawn anew where its axis is by now.
func (b *TimeBar) Realign() { b.track.sheet.Refresh() }

// Restart plays the launch from its start.
func (b *TimeBar) Restart() { b.player.Restart() }

// Playing reports whether time runs, or will as soon as there is a launch.
func (b *TimeBar) Playing() bool { return b.player.Playing() }

// SetLoop has the launch begin again at its end, or stand there.
func (b *TimeBar) SetLoop(on bool) {
	b.player.loop = on
	b.loop.Importance = widget.MediumImportance
	if on {
		b.loop.Importance = widget.HighImportance
	}
	b.loop.Refresh()
}

// SetPace plays at one of the paces; beyond them, at the last.
func (b *TimeBar) SetPace(pace int) {
	b.pace = min(max(pace, 0), len(paces)-1)
	b.speed.SetText(paces[b.pace].name)
}

// offerPaces lists the speeds above the button.
func (b *TimeBar) offerPaces() {
	list := fyne.NewMenu("")
	for i, p := range paces {
		item := fyne.NewMenuItem(p.name, func() { b.SetPace(i) })
		item.Checked = i == b.pace
		list.Items = append(list.Items, item)
	}
	c := fyne.CurrentApp().Driver().CanvasForObject(b.speed)
	menu := widget.NewPopUpMenu(list, c)
	menu.ShowAtRelativePosition(fyne.NewPos(0, -menu.MinSize().Height), b.speed)
}

// jump stands still at a time.
func (b *TimeBar) jump(t float64) {
	b.player.Pause()
	b.study.SetTime(t)
}

// fast is how many output steps an arrow key goes with Shift.
const fast = 10

// Press takes a key while the launch is looked at, with Shift or without, and reports
// whether it is one of the time line's.
func (b *TimeBar) Press(key scene.Key, shift bool) bool {
	if !b.study.Launching() {
		return false
	}
	steps := 1
	if shift {
		steps = fast
	}
	switch key {
	case scene.SpaceKey:
		b.player.Toggle()
	case scene.LeftKey:
		b.step(-steps)
	case scene.RightKey:
		b.step(steps)
	case scene.UpKey:
		b.SetPace(b.pace + 1)
	case scene.DownKey:
		b.SetPace(b.pace - 1)
	case scene.HomeKey:
		b.jump(0)
	case scene.EndKey:
		b.jump(b.study.LaunchEnd())
	case scene.PageUpKey, "[":
		b.walk(true)
	case scene.PageDownKey, "]":
		b.walk(false)
	default:
		return false
	}
	return true
}

// TypedKey takes a key that nothing else has the focus for.
func (b *TimeBar) TypedKey(e *fyne.KeyEvent) {
	if key, ok := stage.KeyOf(e); ok {
		b.Press(key, stage.Shift())
	}
}

// TypedRune takes a letter that nothing else has the focus for.
func (b *TimeBar) TypedRune(r rune) { b.Press(stage.Letter(r), false) }

// step goes a number of output steps on or back.
func (b *TimeBar) step(by int) {
	if r := b.study.Launch(); r != nil && b.study.LaunchEnd() > 0 {
		output := r.Options.Output
		b.jump((math.Round(b.study.Time()/output) + float64(by)) * output)
	}
}

// walk goes to the next mark or to the one before; beyond the last, to the end.
func (b *TimeBar) walk(backward bool) {
	r := b.study.Launch()
	if r == nil {
		return
	}
	switch i := beside(b.track.marks, b.study.Time(), r.Options.Output, backward); {
	case i >= 0:
		b.jump(b.track.marks[i].at)
	case backward:
		b.jump(0)
	default:
		b.jump(b.study.LaunchEnd())
	}
}

// timeLayout has play at the left, no wider than the numbers beside a chart's axis, the
// track right of it, and speed and loop before the track's readout.
type timeLayout struct{ bar *TimeBar }

const (
	playWidth  = 28 // [px]
	speedWidth = 34 // [px]
	loopWidth  = 24 // [px]
	smallTall  = 19 // of speed and loop, which stand above the line [px]
)

// MinSize implements fyne.Layout.
func (l *timeLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return l.bar.track.MinSize().AddWidthHeight(playWidth+1, 0)
}

// Layout implements fyne.Layout.
func (l *timeLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, height))
	}
	put(l.bar.play, 0, 0, playWidth, size.Height)
	put(l.bar.track, playWidth+1, 0, size.Width-playWidth-1, size.Height)
	right := size.Width - l.bar.track.readoutRoom()
	put(l.bar.loop, right-loopWidth, 0, loopWidth, smallTall)
	put(l.bar.speed, right-loopWidth-1-speedWidth, 0, speedWidth, smallTall)
}

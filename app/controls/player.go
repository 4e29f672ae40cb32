package controls

import (
	"math"
	"time"

	"bowline/app/study"

	"fyne.io/fyne/v2"
)

// player lets the time of the launch run, a step before each frame that the toolkit
// draws, and none while it stands.
type player struct {
	study   *study.Study
	rate    func() float64 // time of the launch over real time
	loop    bool           // from the end it begins again
	changed func()         // it plays now, or stands

	run     *fyne.Animation // nil while it stands
	last    time.Time       // of the last step
	waiting bool            // it plays as soon as there is a launch
}

// follow stops when the launch is left or another car comes, and begins when the
// launch that it waits for is there. A new launch of a car that is edited plays on.
func (p *player) follow(c study.Change) {
	if !p.study.Launching() || c.Has(study.Loaded) {
		p.Pause()
	}
	if p.waiting && c.Has(study.Launches) {
		p.study.Then(func() {
			if p.waiting {
				p.Play()
			}
		})
	}
}

// Playing reports whether time runs, or will when the launch is there.
func (p *player) Playing() bool { return p.run != nil || p.waiting }

// Toggle plays or pauses.
func (p *player) Toggle() {
	if p.Playing() {
		p.Pause()
	} else {
		p.Play()
	}
}

// Restart plays from the start.
func (p *player) Restart() {
	p.study.SetTime(0)
	p.Play()
}

// Play goes on from where the launch stands, from its end at the start. Where the
// launch is not there yet it begins when it is.
func (p *player) Play() {
	p.waiting = p.study.Launch() == nil
	if end := p.study.LaunchEnd(); p.run == nil && end > 0 {
		if p.study.Time() >= end {
			p.study.SetTime(0)
		}
		p.last = time.Now()
		p.run = &fyne.Animation{Duration: time.Second, RepeatCount: fyne.AnimationRepeatForever, Tick: func(float32) { p.step(time.Now()) }}
		p.run.Start()
	}
	p.changed()
}

// Pause stands still.
func (p *player) Pause() {
	if !p.Playing() {
		return
	}
	if p.run != nil {
		p.run.Stop()
	}
	p.run, p.waiting = nil, false
	p.changed()
}

// step goes on by the time since the last step. The launch has a frame at each of its
// output steps: between two of them nothing is to be drawn anew.
func (p *player) step(now time.Time) {
	if p.run == nil {
		return
	}
	end := p.study.LaunchEnd()
	if end == 0 {
		p.Pause()
		return
	}
	from := p.study.Time()
	to := from + p.rate()*now.Sub(p.last).Seconds()
	if output := p.study.Launch().Options.Output; to < end && math.Round(to/output) == math.Round(from/output) {
		return
	}
	p.last = now
	switch {
	case to < end:
		p.study.SetTime(to)
	case p.loop && from >= end:
		p.study.SetTime(0)
	default:
		p.study.SetTime(end)
		if !p.loop {
			p.Pause()
		}
	}
}

package runner

import "time"

// Soon runs a function for work that follows the mouse, whose events come
// faster than frames: at once when the last run was at least a frame's time ago,
// otherwise once after the events already queued, however often it is asked for
// meanwhile. So every frame shows something new, and none costs more than one
// run. It serves the goroutine that owns the window.
type Soon struct {
	post    func(func())
	run     func()
	now     func() time.Time
	last    time.Time // when it ran last
	waiting bool
}

// between is how long after a run the next one may be at once: longer than the
// events of one frame take, shorter than a frame at 60 a second.
const between = 8 * time.Millisecond

// NewSoon returns a Soon that has run called at once or by post, which takes a
// function to the end of the window's queue as fyne.Do does.
func NewSoon(post func(func()), run func()) *Soon {
	return &Soon{post: post, run: run, now: time.Now}
}

// Ask has the function run at once or soon, if it does not wait already.
func (s *Soon) Ask() {
	if s.now().Sub(s.last) >= between {
		s.start()
		return
	}
	if !s.waiting {
		s.waiting = true
		s.post(s.Flush)
	}
}

// Flush runs the function at once if it waits.
func (s *Soon) Flush() {
	if s.waiting {
		s.start()
	}
}

// start runs the function.
func (s *Soon) start() {
	s.waiting, s.last = false, s.now()
	s.run()
}

// Drop forgets what was asked for.
func (s *Soon) Drop() { s.waiting = false }

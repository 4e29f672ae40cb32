package e2e

import (
	"fmt"
	"math"
	"strings"
	"time"
)

// Point is a place in the window [pixels], y down.
type Point struct{ X, Y float64 }

// leftButton is X's number of the button that drags.
const leftButton = 1

const (
	dragMoves = 40                    // Moves of one drag.
	moveEvery = 4 * time.Millisecond  // Between two moves: a mouse at 250 Hz.
	holdFor   = 60 * time.Millisecond // Between arriving, pressing, and moving on; a few frames.
)

// Script is a sequence of mouse and keyboard actions. The zero value is empty.
type Script struct{ lines []string }

// add appends one line; %window stands for the window's number.
func (s *Script) add(format string, args ...any) *Script {
	s.lines = append(s.lines, fmt.Sprintf(format, args...))
	return s
}

// Move puts the pointer on a place in the window.
func (s *Script) Move(to Point) *Script {
	return s.add("mousemove --window %%window %d %d", int(math.Round(to.X)), int(math.Round(to.Y)))
}

// Press holds the left button down.
func (s *Script) Press() *Script { return s.add("mousedown %d", leftButton) }

// Release lets the left button go.
func (s *Script) Release() *Script { return s.add("mouseup %d", leftButton) }

// Click presses and releases the left button at a place.
func (s *Script) Click(at Point) *Script {
	return s.Move(at).Pause(holdFor).Press().Pause(holdFor).Release()
}

// DoubleClick presses and releases the left button twice, as fast as a hand does.
func (s *Script) DoubleClick(at Point) *Script {
	return s.Click(at).Pause(holdFor).Press().Pause(holdFor).Release()
}

// Key presses and releases a key or a chord, such as "Tab" or "ctrl+z".
func (s *Script) Key(chord string) *Script { return s.add("key %s", chord) }

// Hold presses a key until Free.
func (s *Script) Hold(key string) *Script { return s.add("keydown %s", key) }

// Free releases a key.
func (s *Script) Free(key string) *Script { return s.add("keyup %s", key) }

// Type types a text without spaces.
func (s *Script) Type(text string) *Script { return s.add("type %s", text) }

// Pause waits.
func (s *Script) Pause(d time.Duration) *Script { return s.add("sleep %.3f", d.Seconds()) }

// Drag takes hold of what lies at from, moves it to to in small steps and lets go.
func (s *Script) Drag(from, to Point) *Script {
	s.Move(from).Pause(holdFor).Press().Pause(holdFor)
	for i := 1; i <= dragMoves; i++ {
		f := float64(i) / dragMoves
		s.Move(Point{from.X + f*(to.X-from.X), from.Y + f*(to.Y-from.Y)}).Pause(moveEvery)
	}
	return s.Pause(holdFor).Release()
}

// text returns the script as xdotool reads it, for the window of that number.
func (s *Script) text(window string) string {
	return strings.ReplaceAll(strings.Join(s.lines, "\n")+"\n", "%window", window)
}

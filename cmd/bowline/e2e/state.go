package e2e

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"time"
)

// State is one line of the log of states: what the window shows once a change has reached the screen.
type State struct {
	Revision      int                   `json:"revision"`       // Counts changes of the car.
	Event         string                `json:"event"`          // What led to this state; "frame" for a drawn change.
	InstantCenter *[2]float64           `json:"instant_center"` // [x, z], x ahead of the rear contact, z above the ground [m]; nil for parallel bars.
	AntiSquat     float64               `json:"anti_squat"`     // [%].
	UpperPush     float64               `json:"upper_push"`     // Push in one upper bar, hit case; negative for pull [N].
	View          map[string][2]float64 `json:"view"`           // Where each pivot is drawn [pixels of the window, y down].
}

// pivots are the four pivots that every state shows.
var pivots = []string{"upper_chassis", "lower_chassis", "upper_housing", "lower_housing"}

// Pivot returns where a pivot is drawn.
func (s State) Pivot(name string) Point {
	p := s.View[name]
	return Point{p[0], p[1]}
}

// parseState reads one line of the log. It refuses unknown names and a view that lacks a pivot.
func parseState(line []byte) (State, error) {
	decoder := json.NewDecoder(bytes.NewReader(line))
	decoder.DisallowUnknownFields()
	var s State
	if err := decoder.Decode(&s); err != nil {
		return State{}, fmt.Errorf("state line %q: %w", line, err)
	}
	for _, name := range pivots {
		if _, ok := s.View[name]; !ok {
			return State{}, fmt.Errorf("state line %q: the view lacks %s", line, name)
		}
	}
	return s, nil
}

// StateLog reads the program's log of states as it grows.
type StateLog struct {
	file    string
	read    int64   // How much of the file has been parsed [bytes].
	pending []State // Parsed and not yet taken.
}

// parse reads what the program has written since the last call. A line still being written is left for later.
func (l *StateLog) parse() error {
	text, err := os.ReadFile(l.file)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for {
		end := bytes.IndexByte(text[l.read:], '\n')
		if end < 0 {
			return nil
		}
		s, err := parseState(text[l.read : l.read+int64(end)])
		if err != nil {
			return err
		}
		l.read += int64(end) + 1
		l.pending = append(l.pending, s)
	}
}

// take returns the oldest state not yet taken, and whether there is one.
func (l *StateLog) take() (State, bool, error) {
	if len(l.pending) == 0 {
		if err := l.parse(); err != nil {
			return State{}, false, err
		}
	}
	if len(l.pending) == 0 {
		return State{}, false, nil
	}
	s := l.pending[0]
	l.pending = l.pending[1:]
	return s, true, nil
}

// Wait takes states until one meets the condition and returns that one; what names the condition for the error when none has within the
// timeout.
func (l *StateLog) Wait(timeout time.Duration, what string, condition func(State) bool) (State, error) {
	last := "there was none"
	for deadline := time.Now().Add(timeout); ; {
		s, ok, err := l.take()
		switch {
		case err != nil:
			return State{}, err
		case ok && condition(s):
			return s, nil
		case ok:
			last = fmt.Sprintf("the last was %+v", s)
		case time.Now().After(deadline):
			return State{}, fmt.Errorf("no state with %s within %v; %s", what, timeout, last)
		default:
			time.Sleep(pollEvery)
		}
	}
}

// Count takes all states that there are and returns how many.
func (l *StateLog) Count() (int, error) {
	for n := 0; ; n++ {
		if _, ok, err := l.take(); err != nil || !ok {
			return n, err
		}
	}
}

// Settle takes states until none has come for the quiet time, and returns the last one; from is returned when none comes at all. It fails
// when states still come after the timeout.
func (l *StateLog) Settle(from State, quiet, timeout time.Duration) (State, error) {
	last, since := from, time.Now()
	for deadline := since.Add(timeout); time.Now().Before(deadline); {
		s, ok, err := l.take()
		switch {
		case err != nil:
			return State{}, err
		case ok:
			last, since = s, time.Now()
		case time.Since(since) >= quiet:
			return last, nil
		default:
			time.Sleep(pollEvery)
		}
	}
	return State{}, fmt.Errorf("states still come after %v", timeout)
}

// distance is how far apart two places are [pixels].
func distance(a, b Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// Package adjuster computes how to turn a car's bars: the turns and flats to a
// length, the thread engagement that leaves, when a bar needs another tube, and
// what moving bars to other holes takes and does.
//
// A bar has a left-hand thread at one end and a right-hand thread at the
// other, of the same pitch: one turn of its tube moves both rod ends, so the
// length changes by two pitches.
package adjuster

import "math"

const (
	// LeastEngaged is the thread engaged over its diameter below which a bar
	// must not run [1]. Common practice; equal materials need about 0.8
	// (Machinery's Handbook, 24th edition, length of thread engagement).
	LeastEngaged = 1.0
	// WellEngaged is the thread engaged over its diameter below which State
	// warns [1]. Common practice.
	WellEngaged = 1.5
	// slack is the length of thread by which a bar may miss a limit and still meet
	// it [m]: above rounding, and far below what can be cut or turned.
	slack = 1e-9
)

// Bar is the adjusters of one bar; both ends are alike. All values are finite and
// Pitch and Diameter above zero.
type Bar struct {
	Pitch        float64 // of either thread [m]
	Diameter     float64 // of the thread, nominal [m]
	ThreadLength float64 // thread of a rod end's shank, shoulder to tip [m]
	JamNut       float64 // thickness of a jam nut [m]
	Shown        float64 // threads in sight at each end, between the rod end's shoulder and the jam nut, at Fitted [1]
	Fitted       float64 // length pin to pin for which the tube was cut [m]
}

// Status is how well the thread of a bar is engaged.
type Status int

// The states of a bar, the best first.
const (
	Good     Status = iota // at least WellEngaged diameters of thread are engaged
	Shallow                // fewer, but at least LeastEngaged: it may run, a longer tube is better
	TooShort               // fewer than LeastEngaged: the tube is too short for this length
	TooLong                // the threads are used up before this length is reached: the tube is too long
)

// String returns a few words, as in "tube too short".
func (s Status) String() string {
	return [...]string{"well engaged", "little thread engaged", "tube too short", "tube too long"}[s]
}

// State is a bar at a length.
type State struct {
	Length     float64 // pin to pin [m]
	Shown      float64 // threads in sight at each end; below zero the bar cannot be screwed together this far [1]
	Engaged    float64 // thread within the tube at each end, jam nut excluded; zero and less when it is out [m]
	Diameters  float64 // Engaged over the thread's diameter [1]
	CanShorten float64 // how much shorter the bar can be made until no thread is in sight; not below zero [m]
	// CanLengthen is how much longer the bar can be made until LeastEngaged
	// diameters are left; not below zero [m].
	CanLengthen float64
	Status      Status
	// Tube is by how much a new tube has to be longer than this one, or with a
	// minus shorter, so that the bar at Length shows the threads it had when
	// fitted; zero unless Recut [m].
	Tube float64
}

// Recut reports whether the bar needs another tube for its length.
func (s *State) Recut() bool { return s.Status == TooShort || s.Status == TooLong }

// At returns the bar's state at a length pin to pin [m]:
//
//	threads in sight = Shown + (length − Fitted) / 2 Pitch
//	engaged          = ThreadLength − threads in sight · Pitch − JamNut
//
// A new tube brings the threads in sight back to Shown, or to the most that
// leave WellEngaged diameters engaged where Shown is more.
func (b Bar) At(length float64) State {
	shown := b.Shown + b.Turns(b.Fitted, length)
	s := State{
		Length:  length,
		Shown:   shown,
		Engaged: b.ThreadLength - shown*b.Pitch - b.JamNut,
	}
	s.Diameters = s.Engaged / b.Diameter
	s.CanShorten = max(0, 2*shown*b.Pitch)
	s.CanLengthen = max(0, 2*(s.Engaged-LeastEngaged*b.Diameter))
	switch {
	case 2*shown*b.Pitch < -slack:
		s.Status = TooLong
	case 2*(s.Engaged-LeastEngaged*b.Diameter) < -slack:
		s.Status = TooShort
	case 2*(s.Engaged-WellEngaged*b.Diameter) < -slack:
		s.Status = Shallow
	}
	if s.Recut() {
		s.Tube = 2 * b.Pitch * (shown - b.goal())
	}
	return s
}

// goal is the threads in sight with a new tube.
func (b Bar) goal() float64 {
	return max(0, min(b.Shown, (b.ThreadLength-b.JamNut-WellEngaged*b.Diameter)/b.Pitch))
}

// Lead returns by how much one turn changes the length, 2 Pitch [m].
func (b Bar) Lead() float64 { return 2 * b.Pitch }

// Turns returns the turns of the tube from one length to another [m],
// (to − from) / 2 Pitch; positive lengthens [1].
func (b Bar) Turns(from, to float64) float64 { return (to - from) / b.Lead() }

// Usable reports whether the rod ends have enough thread at all: a jam nut and
// LeastEngaged diameters. Without it no tube is right for any length.
func (b Bar) Usable() bool {
	return math.Max(0, b.ThreadLength-b.JamNut)-LeastEngaged*b.Diameter >= -slack
}

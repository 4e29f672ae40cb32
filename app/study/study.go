// Package study holds what the window looks at: the document's car at one
// travel, in one load case, analyzed anew after every change.
//
// A Study belongs to the goroutine that owns the window.
package study

import (
	"context"
	"math"

	"bowline/app/document"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"
)

// Study is a document with the travel and load case that is looked at. Its
// result belongs to the document's current revision at all times.
type Study struct {
	doc     *document.Document
	library stock.Library

	result   *analysis.Result
	station  analysis.Station
	travel   float64
	front    float64
	load     analysis.Case
	pivot    car.Row
	moving   bool
	playback playback
	setups   int // that the car had at the last analysis
	other    compared
	search   search

	listeners []func(Change)
}

// Change says what a listener has to show again.
type Change uint16

// What changes.
const (
	Inputs   Change = 1 << iota // a new result
	Position                    // travel or front travel
	Choice                      // load case, selected pivot, hole-moving mode
	Units                       // unit system
	Launches                    // a new launch
	Compared                    // the setup that the current one is held against
	Search                      // the combinations of holes: found, ranked or filtered anew
	Pointing                    // the combination pointed at or picked
)

// Has tells whether any of what is among the changes.
func (c Change) Has(what Change) bool { return c&what != 0 }

// New returns a study of a document at ride height, in the hit case, which
// bars are sized by. It follows the document for good.
func New(doc *document.Document, library stock.Library) *Study {
	s := &Study{doc: doc, library: library, load: analysis.Hit, pivot: car.ChassisLower}
	s.analyze()
	doc.Listen(s.follow)
	return s
}

// follow takes up what has changed in the document.
func (s *Study) follow(e document.Event) {
	var c Change
	if e.Has(document.Loaded) {
		s.travel, s.front = 0, 0
		s.playback = playback{on: s.playback.on, compared: s.playback.compared}
		s.other, s.setups = compared{}, 0
		s.search.forget()
		c |= Position | Launches | Compared | Search | Pointing
	}
	if e.Has(document.Changed | document.SetupSelected | document.Loaded) {
		was := s.other.on
		s.analyze()
		c |= Inputs | Position
		if was != s.other.on {
			c |= Compared
		}
		if s.rank() {
			c |= Search
		}
	}
	if e.Has(document.UnitsChanged) {
		c |= Units
	}
	if c != 0 {
		s.tell(c)
	}
}

// analyze runs the analysis of the document's current setup. The document
// lets no car in that cannot be analyzed.
func (s *Study) analyze() {
	c := s.doc.Car()
	springs := c.Springs
	s.travel = within(s.travel, -springs.RearDroop, springs.RearBump)
	s.front = within(s.front, -springs.FrontDroop, springs.FrontBump)
	s.result = s.run(s.doc.Setup())
	s.findOther()
	s.setups = len(c.Setups)
	s.other.Result = nil
	if s.other.on && s.other.Setup != s.doc.Setup() {
		s.other.Result = s.run(s.other.Setup)
	}
	s.place()
}

// run analyzes a setup at the front travel looked at.
func (s *Study) run(setup int) *analysis.Result {
	r, err := analysis.Run(context.Background(), s.doc.Car(), s.library, analysis.Options{Setup: setup, FrontTravel: s.front})
	if err != nil {
		panic("study: a valid car was refused: " + err.Error())
	}
	return r
}

// place computes the stations at the current travel, or at the instant of the
// launch.
func (s *Study) place() {
	i, launching := s.Instant()
	if launching {
		s.station = instantOf(s.playback.result, i)
	} else {
		s.station = s.at(s.result)
	}
	switch other := s.Other(); {
	case other == nil:
	case launching && other.Launch != nil && len(other.Launch.Frames) > 0:
		other.Station = instantOf(other.Launch, min(i, len(other.Launch.Frames)-1))
	default:
		other.Station = s.at(other.Result)
	}
}

// at returns a result's station at the current travel.
func (s *Study) at(r *analysis.Result) analysis.Station {
	station, err := r.At(s.travel, s.front)
	if err != nil {
		panic("study: a travel within the springs' range was refused: " + err.Error())
	}
	return station
}

// within brings x into a range.
func within(x, low, high float64) float64 { return math.Max(low, math.Min(high, x)) }

// tell calls the listeners.
func (s *Study) tell(c Change) {
	for _, hear := range s.listeners {
		hear(c)
	}
}

// Listen has hear called after every change.
func (s *Study) Listen(hear func(Change)) { s.listeners = append(s.listeners, hear) }

// Document returns the document studied.
func (s *Study) Document() *document.Document { return s.doc }

// Result returns the analysis of the current car and setup.
func (s *Study) Result() *analysis.Result { return s.result }

// Station returns the car at the current travel.
func (s *Study) Station() *analysis.Station { return &s.station }

// Travel returns the rear travel looked at, bump positive [m].
func (s *Study) Travel() float64 { return s.travel }

// Front returns the front travel looked at, bump positive [m].
func (s *Study) Front() float64 { return s.front }

// Case returns the load case looked at.
func (s *Study) Case() analysis.Case { return s.load }

// Pivot returns the row whose pivot the keyboard moves.
func (s *Study) Pivot() car.Row { return s.pivot }

// Moving tells whether dragging a pivot moves its hole rather than choosing
// another one.
func (s *Study) Moving() bool { return s.moving }

// Units returns the unit system on screen.
func (s *Study) Units() units.System { return s.doc.Units() }

// SetTravel looks at another rear travel [m]; beyond the springs' travel, at
// its end.
func (s *Study) SetTravel(q float64) {
	k := s.doc.Car().Springs
	q = within(q, -k.RearDroop, k.RearBump)
	if q == s.travel {
		return
	}
	s.travel = q
	s.place()
	s.tell(Position)
}

// SetFront looks at another front travel [m]; beyond the front's travel, at
// its end.
func (s *Study) SetFront(q float64) {
	k := s.doc.Car().Springs
	q = within(q, -k.FrontDroop, k.FrontBump)
	if q == s.front {
		return
	}
	s.front = q
	s.analyze()
	s.tell(Inputs | Position)
}

// SetCase looks at another load case.
func (s *Study) SetCase(c analysis.Case) {
	if c != s.load {
		s.load = c
		s.tell(Choice)
	}
}

// Select has the keyboard move the pivot of a row.
func (s *Study) Select(row car.Row) {
	if row != s.pivot {
		s.pivot = row
		s.tell(Choice)
	}
}

// SetMoving switches between choosing holes and moving them.
func (s *Study) SetMoving(on bool) {
	if on != s.moving {
		s.moving = on
		s.tell(Choice)
	}
}

// Library returns the materials that the car is analyzed with.
func (s *Study) Library() stock.Library { return s.library }

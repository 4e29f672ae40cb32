// Package study holds what the window looks at: the document's car at one
// travel, in one load case, analyzed anew after every change, and the launches
// and combinations of holes that workers compute of it while they are wanted.
//
// A Study belongs to the goroutine that owns the window. It changes in one way
// only and tells its listeners what has changed, in order; see Change.
package study

import (
	"context"

	"bowline/app/document"
	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/stock"
	"bowline/model/units"
)

// Study is a document with the travel and load case that is looked at. Its
// result belongs to the document's current revision at all times. Make one with
// New and end it with Close.
type Study struct {
	doc     *document.Document
	library stock.Library

	result  *analysis.Result
	station analysis.Station

	// What is looked at.
	travel, front          float64
	travelVisit, timeVisit visit // of somebody who points at a chart
	load                   analysis.Case
	pivot                  car.Row
	moving                 bool
	forces                 bool
	playback               playback
	compared               compared
	search                 search
	wants                  Wants
	launches               map[string]*launch.Result // the newest one of each setup that has any, by name
	rolls                  rolls
	launcher               launcher
	searcher               searcher
	holeLauncher           holeLauncher
	appraiser              appraiser
	turns                  turnsSearcher

	listeners []func(Change)
	telling   bool     // the listeners are being called
	then      []func() // what Then has put off until they have been
}

// Options are what a study needs besides its document.
type Options struct {
	Library stock.Library // the materials that the car is analyzed with

	// Post takes a function to the goroutine that owns the study, in order and
	// not at once, as fyne.Do does from another goroutine. Workers hand over
	// their results by it.
	Post func(func())
}

// New returns a study of a document at ride height, in the hit case, which
// bars are sized by. It follows the document for good. Nothing is computed on
// workers until Want or SetLaunching asks for it.
func New(doc *document.Document, o Options) *Study {
	return newStudy(doc, o, solvers{launch.Run, holes.Search, holes.LaunchAll, assumptions.Find, preload.Find})
}

// solvers compute what runs on workers.
type solvers struct {
	launch    func(context.Context, *car.Car, int, stock.Library, launch.Options) (*launch.Result, error)
	search    func(context.Context, *car.Car, stock.Library, holes.Options) (*holes.Table, error)
	launchAll func(context.Context, *holes.Table, *car.Car, int, holes.LaunchOptions) (*holes.Launches, error)
	appraise  func(context.Context, *car.Car, int, stock.Library) ([]assumptions.Worth, error)
	turns     func(context.Context, *car.Car, int, stock.Library, preload.Options) (*preload.Result, error)
}

// newStudy returns a study whose workers have solvers.
func newStudy(doc *document.Document, o Options, by solvers) *Study {
	s := &Study{doc: doc, library: o.Library, load: analysis.Hit, pivot: car.ChassisLower}
	s.startLauncher(by, o.Post)
	s.startSearcher(by, o.Post)
	s.startHoleLauncher(by, o.Post)
	s.startAppraiser(by, o.Post)
	s.startTurnsSearcher(by, o.Post)
	s.analyze()
	doc.Listen(s.follow)
	return s
}

// Close ends the workers and waits until they have returned.
func (s *Study) Close() {
	s.launcher.worker.Close()
	s.searcher.worker.Close()
	s.holeLauncher.worker.Close()
	s.appraiser.worker.Close()
	s.turns.worker.Close()
}

// Busy reports whether a worker still has a result to hand over.
func (s *Study) Busy() bool {
	return s.launcher.worker.Busy() || s.searcher.worker.Busy() || s.holeLauncher.worker.Busy() || s.appraiser.worker.Busy() ||
		s.turns.worker.Busy()
}

// follow updates the study after a change of the document.
func (s *Study) follow(e document.Event) {
	s.change(func() Change {
		c := Change(e)
		if c.Has(Loaded) {
			s.travel, s.front = 0, 0
			s.travelVisit, s.timeVisit = visit{}, visit{}
			s.compared = compared{}
			s.dropLaunches()
			s.dropCombinations()
			s.dropWorth()
			s.forgetTurns()
			c |= Position | Launches | Compared | Ranking | Pointing | Progress | Appraised | TurnsSearch
		}
		return c
	})
}

// analyze runs the analysis of the document's current setup and of those that
// it is compared with, and returns Compared when one of these has been deleted.
// Every car that the document lets in can be analyzed.
func (s *Study) analyze() Change {
	springs := s.doc.Car().Springs
	s.travel = within(s.travel, -springs.RearDroop, springs.RearBump)
	s.front = within(s.front, -springs.FrontDroop, springs.FrontBump)
	s.result = s.run(s.doc.Setup())
	c := s.followCompared() | s.recallLaunches()
	s.place()
	return c
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
	for _, other := range s.compared.others {
		if launching && other.Launch != nil && len(other.Launch.Frames) > 0 {
			other.Station = instantOf(other.Launch, min(i, len(other.Launch.Frames)-1))
		} else {
			other.Station = s.at(other.Result)
		}
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

// Document returns the document studied.
func (s *Study) Document() *document.Document { return s.doc }

// Library returns the materials that the car is analyzed with.
func (s *Study) Library() stock.Library { return s.library }

// Units returns the unit system on screen.
func (s *Study) Units() units.System { return s.doc.Units() }

// Result returns the analysis of the current car and setup.
func (s *Study) Result() *analysis.Result { return s.result }

// ResultOf returns the analysis of any setup of the current car at the front
// travel looked at. Those of the current setup and of the ones that it is
// compared with are not computed again.
func (s *Study) ResultOf(setup int) *analysis.Result {
	if setup == s.doc.Setup() {
		return s.result
	}
	for _, other := range s.compared.others {
		if other.Setup == setup {
			return other.Result
		}
	}
	return s.run(setup)
}

// Station returns the car at the current travel, or at the instant of the
// launch.
func (s *Study) Station() *analysis.Station { return &s.station }

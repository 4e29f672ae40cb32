package study

import (
	"context"

	"bowline/app/document"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/stock"
)

// NewWith is New with other ways to compute what runs on workers.
func NewWith(doc *document.Document, o Options,
	launch func(context.Context, *car.Car, int, stock.Library, launch.Options) (*launch.Result, error),
	search func(context.Context, *car.Car, stock.Library, holes.Options) (*holes.Table, error),
) *Study {
	return NewLaunching(doc, o, launch, search, holes.LaunchAll)
}

// NewLaunching is NewWith with another way to launch combinations of holes too.
func NewLaunching(doc *document.Document, o Options,
	launch func(context.Context, *car.Car, int, stock.Library, launch.Options) (*launch.Result, error),
	search func(context.Context, *car.Car, stock.Library, holes.Options) (*holes.Table, error),
	all func(context.Context, *holes.Table, *car.Car, int, holes.LaunchOptions) (*holes.Launches, error),
) *Study {
	return newStudy(doc, o, solvers{launch, search, all, assumptions.Find, preload.Find})
}

// NewAppraised is New with another way to find what assumptions are worth.
func NewAppraised(doc *document.Document, o Options, appraise func(context.Context, *car.Car, int, stock.Library) ([]assumptions.Worth, error)) *Study {
	return newStudy(doc, o, solvers{launch.Run, holes.Search, holes.LaunchAll, appraise, preload.Find})
}

// NewFinding is New with another way to search for turns.
func NewFinding(doc *document.Document, o Options, turns func(context.Context, *car.Car, int, stock.Library, preload.Options) (*preload.Result, error)) *Study {
	return newStudy(doc, o, solvers{launch.Run, holes.Search, holes.LaunchAll, assumptions.Find, turns})
}

// Unranked reports whether the combinations are still to be ranked.
func (s *Study) Unranked() bool { return s.search.stale }

// When and how often the progress of a search is told.
const (
	Patience = patience
	Pace     = pace
)

package study_test

import (
	"context"
	"slices"
	"sync"
	"sync/atomic"
	"testing"

	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/stock"
	"bowline/model/units"

	"pgregory.net/rapid"
)

// random is a study to which anything is done in any order, and what must hold
// of it all the time.
type random struct {
	*rig
	t     *rapid.T
	runs  atomic.Int64 // launches and searches begun
	runOf sync.Map     // the number of the run, by what it has found

	heard [3][]study.Change        // by three listeners
	told  []int                    // which of them heard, in order
	cars  map[*car.Car]bool        // that there were since a car was loaded
	last  map[string]int64         // the run that was seen last, by what it is of, since a car was loaded
	wants study.Wants              // as declared
	idle  int64                    // runs begun when nothing was wanted and all had settled; below zero otherwise
	lists map[uint64][]holes.Place // as they were at a revision of the ranking
}

func newRandom(t *testing.T) *random {
	r := &random{rig: &rig{queue: runnertest.NewQueue()}, cars: map[*car.Car]bool{}, last: map[string]int64{}, lists: map[uint64][]holes.Place{}, idle: -1}
	r.Study = study.NewLaunching(read(t), r.options(),
		func(ctx context.Context, c *car.Car, setup int, lib stock.Library, _ launch.Options) (*launch.Result, error) {
			n := r.runs.Add(1)
			found, err := launch.Run(ctx, c, setup, lib, launch.Options{Limit: 0.02})
			r.runOf.Store(found, n)
			return found, err
		},
		func(ctx context.Context, c *car.Car, lib stock.Library, o holes.Options) (*holes.Table, error) {
			n := r.runs.Add(1)
			o.Travels = 5
			found, err := holes.Search(ctx, c, lib, o)
			if err == nil {
				r.runOf.Store(&found.Combinations[0], n)
			}
			return found, err
		},
		func(_ context.Context, t *holes.Table, c *car.Car, setup int, o holes.LaunchOptions) (*holes.Launches, error) {
			n := r.runs.Add(1)
			done := func(order []int) *holes.Launches {
				l := holes.NoneLaunched(t, c, setup)
				for _, i := range order {
					if t.Combinations[i].Usable() {
						l.List[i] = holes.Launch{Done: true, SixtyFeet: 1 + 0.001*float64(i)}
						l.Done++
					}
				}
				r.runOf.Store(l, n)
				return l
			}
			o.Partial(done(o.Order[:len(o.Order)/2]))
			return done(o.Order), nil
		})
	r.cars[r.Document().Car()] = true
	for i := range r.heard {
		r.Listen(func(c study.Change) {
			r.heard[i] = append(r.heard[i], c)
			r.told = append(r.told, i)
			if c.Has(study.Loaded) && i == 0 {
				clear(r.cars)
				clear(r.last)
			}
			r.cars[r.Document().Car()] = true
			r.check()
		})
	}
	return r
}

// check sees to what must hold at all times, while listeners are told as well.
func (r *random) check() {
	c, setup := r.Document().Car(), r.Document().Setup()
	if a := r.Result(); a.Car != c || a.Options.Setup != setup || a.Options.FrontTravel != r.Front() {
		r.t.Fatalf("the analysis is not of the current revision: setup %d of %d, front %v of %v", a.Options.Setup, setup, a.Options.FrontTravel, r.Front())
	}
	var names []string
	for _, o := range r.Others() {
		if o.Setup == setup || c.Setups[o.Setup].Name != o.Name || slices.Contains(names, o.Name) || !slices.Contains(r.Chosen(), o.Setup) {
			r.t.Fatalf("setup %d, %q, is compared beside %q, chosen are %v", o.Setup, o.Name, names, r.Chosen())
		}
		names = append(names, o.Name)
		if a := o.Result; a.Car != c || a.Options.Setup != o.Setup || a.Options.FrontTravel != r.Front() {
			r.t.Fatalf("%q: the analysis is not of the current revision", o.Name)
		}
		if !o.Outdated && (o.Launch.Car != c || o.Launch.Setup != o.Setup) {
			r.t.Fatalf("%q: an old launch is taken for a new one", o.Name)
		}
		if o.Launch != nil {
			r.newerLaunch("compared", o.Launch)
		}
	}
	if l := r.Launch(); l != nil {
		r.newerLaunch("played", l)
		if !r.LaunchOutdated() && (l.Car != c || l.Setup != setup) {
			r.t.Fatal("an old launch is taken for a new one")
		}
	}
	if table := r.Table(); table != nil {
		r.newer("table", &table.Combinations[0], table.Car)
		if l := table.Launches; l != nil && l.Done > 0 {
			r.newer("launches of the combinations", l, l.Car)
		}
	}
	if table := r.Table(); table != nil && r.LaunchesHoles() != (table.Launches != nil) {
		r.t.Fatal("there are launches of combinations that nobody wants, or none")
	} else if table != nil && table.Launches != nil && !r.TableOutdated() && table.Launches.Turns != c.Setups[setup].Turns {
		r.t.Fatal("the launches of the combinations have other turns than the setup")
	}
	if runs := r.runs.Load(); r.idle >= 0 && runs != r.idle {
		r.t.Fatalf("%d runs have begun though nothing is wanted", runs-r.idle)
	}
}

// newer sees to it that what a run has found is of a car since the last one was
// loaded, and never takes the place of what a newer run has found.
func (r *random) newer(what string, found any, of *car.Car) {
	if !r.cars[of] {
		r.t.Fatalf("the %s is of a car that has gone", what)
	}
	n, _ := r.runOf.Load(found)
	if n.(int64) < r.last[what] {
		r.t.Fatalf("the %s of run %d takes the place of that of run %d", what, n, r.last[what])
	}
	r.last[what] = n.(int64)
}

// newerLaunch is newer for a launch that is shown in a place, among those of its setup.
func (r *random) newerLaunch(where string, l *launch.Result) {
	r.newer(where+" launch of "+l.Car.Setups[l.Setup].Name, l, l.Car)
}

// settled sees to what must hold when the workers have handed over everything.
func (r *random) settled() {
	r.settle()
	c, setup := r.Document().Car(), r.Document().Setup()
	others := r.Launching() || r.wants.Has(study.WantsOtherLaunches)
	if others && len(r.Others()) > 0 || r.Launching() || r.wants.Has(study.WantsLaunch) {
		if l := r.Launch(); l == nil || l.Car != c || l.Setup != setup {
			r.t.Fatal("the launch wanted is missing")
		}
	}
	for _, o := range r.Others() {
		if others && (o.Outdated || o.Launch.Car != c || o.Launch.Setup != o.Setup) {
			r.t.Fatalf("the launch of %q is missing", o.Name)
		}
	}
	if r.wants.Has(study.WantsSearch) && r.TableOutdated() != (r.SearchProgress().Phase == study.SearchStopped) {
		r.t.Fatalf("the combinations wanted are outdated: %v, at %+v", r.TableOutdated(), r.SearchProgress())
	}
	if r.wants.Has(study.WantsSearch) && !r.TableOutdated() && r.LaunchesHoles() && r.HolesLaunch().Phase != study.HolesStopped && r.HolesLaunch().Phase != study.HolesDone {
		r.t.Fatalf("the launches of the combinations are at %+v", r.HolesLaunch())
	}
	if r.Busy() {
		r.t.Fatal("a worker is busy")
	}
	if r.Wanted() == 0 {
		r.idle = r.runs.Load()
	}
}

// look sees to it that the list is the one asked for, and that it is told by its
// revision whether it may have changed.
func (r *random) look() {
	listed := r.Listed()
	if was, ok := r.lists[r.RankingRevision()]; ok && !same(was, listed) {
		r.t.Fatalf("the list changes at revision %d", r.RankingRevision())
	}
	r.lists[r.RankingRevision()] = slices.Clone(listed)
	if r.TableOutdated() {
		return
	}
	c := r.Document().Car()
	want := holes.Rank(r.Table(), c, r.Document().Setup(), holes.TargetOf(c), r.Wishes())
	if len(r.Conditions()) > 0 {
		want = holes.Filter(want, r.Conditions())
	}
	if !same(listed, want) {
		r.t.Fatal("the list is another one than was asked for")
	}
}

// same reports whether two lists hold the same rows in the same order.
func same(a, b []holes.Place) bool {
	return slices.EqualFunc(a, b, func(p, q holes.Place) bool {
		return p.Index == q.Index && p.Rank == q.Rank && p.Distance == q.Distance && p.Present == q.Present &&
			p.Moved == q.Moved && p.Unmet == q.Unmet && p.Turns == q.Turns && p.Decider == q.Decider && p.Others == q.Others
	})
}

// actions are what is done to the study.
func (r *random) actions() map[string]func(*rapid.T) {
	doc := r.Document()
	setup := func(t *rapid.T) int { return rapid.IntRange(0, len(doc.Car().Setups)-1).Draw(t, "setup") }
	column, _ := holes.ColumnOf("anti_squat")
	var narrow holes.Condition
	if parsed, err := column.Parse("100 to 130", units.US); err == nil {
		narrow = parsed
	}
	return map[string]func(*rapid.T){
		"move hole": func(t *rapid.T) { doc.Apply("Move", func(c *car.Car) { c.Chassis.Upper[0].Y += 0.002 }) },
		"add hole": func(t *rapid.T) {
			doc.Apply("Add", func(c *car.Car) {
				last := c.Chassis.Upper[len(c.Chassis.Upper)-1]
				last.Y -= 0.01
				c.Chassis.Upper = append(c.Chassis.Upper, last)
			})
		},
		"target":    func(t *rapid.T) { doc.Apply("Target", func(c *car.Car) { c.Check.TargetAntiSquat[1] += 0.05 }) },
		"use holes": func(t *rapid.T) { r.Choose(car.ChassisLower, rapid.IntRange(0, 2).Draw(t, "hole")) },
		"drag": func(t *rapid.T) {
			doc.Begin("Drag")
			for range 3 {
				r.Nudge(1, 0)
			}
			doc.End()
		},
		"undo":         func(t *rapid.T) { doc.Undo() },
		"redo":         func(t *rapid.T) { doc.Redo() },
		"units":        func(t *rapid.T) { doc.SetUnits(rapid.SampledFrom([]units.System{units.US, units.SI}).Draw(t, "units")) },
		"select setup": func(t *rapid.T) { doc.SelectSetup(setup(t)) },
		"copy setup":   func(t *rapid.T) { doc.CopySetup(setup(t)) },
		"move setup":   func(t *rapid.T) { doc.MoveSetup(setup(t), rapid.SampledFrom([]int{-1, 1}).Draw(t, "by")) },
		"name setup":   func(t *rapid.T) { doc.RenameSetup(setup(t), rapid.StringMatching(`[a-c]{2}`).Draw(t, "name")) },
		"delete setup": func(t *rapid.T) { doc.DeleteSetup(setup(t)) },
		"load": func(t *rapid.T) {
			if err := doc.Open(reference); err != nil {
				t.Fatal(err)
			}
		},
		"compare": func(t *rapid.T) {
			n := rapid.IntRange(0, 3).Draw(t, "setups")
			var list []int
			for range n {
				list = append(list, setup(t))
			}
			r.Compare(list...)
		},
		"want": func(t *rapid.T) {
			r.idle, r.wants = -1, study.Wants(rapid.IntRange(0, int(2*study.WantsSearch-1)).Draw(t, "wants"))
			r.Want(r.wants)
		},
		"want nothing": func(t *rapid.T) {
			r.idle, r.wants = -1, 0
			r.Want(0)
			r.SetLaunching(false)
		},
		"launching": func(t *rapid.T) { r.idle = -1; r.SetLaunching(rapid.Bool().Draw(t, "on")) },
		"time":      func(t *rapid.T) { r.SetTime(rapid.Float64Range(0, 0.03).Draw(t, "time")) },
		"travel":    func(t *rapid.T) { r.SetTravel(rapid.Float64Range(-0.1, 0.1).Draw(t, "travel")) },
		"visit": func(t *rapid.T) {
			r.VisitTravel(rapid.Float64Range(-0.1, 0.1).Draw(t, "travel"))
			r.VisitTime(0.01)
		},
		"leave": func(t *rapid.T) {
			r.LeaveTravel()
			r.LeaveTime()
		},
		"front": func(t *rapid.T) { r.SetFront(rapid.Float64Range(-0.1, 0.1).Draw(t, "front")) },
		"case": func(t *rapid.T) {
			r.SetCase(rapid.SampledFrom([]analysis.Case{analysis.Hit, analysis.Hooked}).Draw(t, "case"))
		},
		"wishes":     func(t *rapid.T) { r.SetWishes(holes.Wishes{OneBar: rapid.Bool().Draw(t, "one bar")}) },
		"conditions": func(t *rapid.T) { r.SetConditions([]holes.ColumnCondition{{Column: column, Condition: narrow}}) },
		"all listed": func(t *rapid.T) { r.SetConditions(nil) },
		"point":      func(t *rapid.T) { r.Point(rapid.IntRange(-1, 40).Draw(t, "index")) },
		"pick":       func(t *rapid.T) { r.Pick(rapid.IntRange(-1, 40).Draw(t, "index")) },
		"stop":       func(t *rapid.T) { r.StopSearch() },
		"resume":     func(t *rapid.T) { r.ResumeSearch() },
		"launch all": func(t *rapid.T) { r.LaunchHoles(rapid.Bool().Draw(t, "on")) },
		"quickest":   func(t *rapid.T) { r.SetWishes(holes.Wishes{Order: holes.Quickest}) },
		"color":      func(t *rapid.T) { r.ColorDots(rapid.SampledFrom(append(holes.Columns, nil)).Draw(t, "column")) },
		"hold back":  func(t *rapid.T) { r.StopHoleLaunches() },
		"go on":      func(t *rapid.T) { r.ResumeHoleLaunches() },
		"preload": func(t *rapid.T) {
			doc.Apply("Turn", func(c *car.Car) { c.Setups[doc.Setup()].Turns.UpperRight -= 0.5 })
		},
		"look":      func(t *rapid.T) { r.look() },
		"hand over": func(t *rapid.T) { r.queue.Step() },
		"settle":    func(t *rapid.T) { r.settled() },
		"": func(t *rapid.T) {
			r.check()
			for i := range r.heard {
				if !slices.Equal(r.heard[i], r.heard[0]) {
					t.Fatalf("listener %d hears %b, the first %b", i, r.heard[i], r.heard[0])
				}
			}
			for i, who := range r.told {
				if who != i%len(r.heard) {
					t.Fatalf("listeners hear in the order %v", r.told)
				}
			}
		},
	}
}

// Whatever is done in whatever order: all listeners hear the same changes in
// their order; results are those of the document's revision, in the middle of
// telling too; nothing that a worker finds late takes the place of something
// newer or outlives its car; what is wanted is there in the end, and workers rest
// when nothing is.
func TestWhateverIsDone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := newRandom(t)
		defer r.Close()
		r.t = rt
		rt.Repeat(r.actions())
		r.settled()
		r.look()
	})
}

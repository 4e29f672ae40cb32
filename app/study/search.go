package study

import (
	"reflect"
	"slices"

	"bowline/model/car"
	"bowline/model/holes"
)

// search is what is known of all combinations of holes.
type search struct {
	table      *holes.Table    // without launches; nil before the first is found
	launches   *holes.Launches // of the table's combinations; nil while they are not wanted
	outdated   bool            // the table is of a car with other combinations
	wishes     holes.Wishes
	conditions []holes.ColumnCondition
	colored    *holes.Column // what the dots' colors stand for; nil for anti-squat at ride height
	revision   uint64        // counts what may have changed the list
	stale      bool          // the fields below are recomputed when somebody asks
	places     []holes.Place // the table's combinations by rank
	listed     []holes.Place // those of places that meet the conditions
	shown      []bool        // by index of a combination: it is listed
	rankOf     []int         // by index of a combination: its place in places
	pointed    int           // index of the combination under the pointer, 1 for the first; 0 for none
	picked     int           // index of the combination chosen to be looked at, likewise
}

// forget drops what belongs to a car; wishes, conditions and the colors' meaning stay.
func (f *search) forget() {
	*f = search{wishes: f.wishes, conditions: f.conditions, colored: f.colored, revision: f.revision + 1}
}

// None is the index of no combination.
const None = -1

// Searching reports whether the combinations of holes are wanted, and so looked
// at.
func (s *Study) Searching() bool { return s.wants.Has(WantsSearch) }

// Table returns the combinations found last, or nil. While a new search runs
// they are those of an older car. They have their launches while these are wanted.
func (s *Study) Table() *holes.Table {
	f := &s.search
	if f.launches == nil {
		return f.table
	}
	return f.table.With(f.launches)
}

// TableOutdated reports whether there are no combinations or they do not belong
// to the car as it is now. Names, setups, targets, threads, the driveshaft and
// the launch do not matter to them.
func (s *Study) TableOutdated() bool { return s.search.table == nil || s.search.outdated }

// sameSearch reports whether two cars have the same combinations of holes.
func sameSearch(a, b *car.Car) bool {
	return a == b || reflect.DeepEqual(bare(a), bare(b))
}

// bare returns a car without what a search does not depend on.
func bare(c *car.Car) car.Car {
	b := *c
	b.Setups, b.Launch, b.Driveline = nil, car.Launch{}, car.Driveline{}
	b.Body.Name = ""
	b.UpperBar.Threads, b.LowerBar.Threads = car.Threads{}, car.Threads{}
	k := &b.Check
	k.TargetAntiSquat, k.TargetICX, k.TargetICZ, k.PinionLimit, k.LiftLimit = [2]float64{}, [2]float64{}, [2]float64{}, 0, 0
	return b
}

// takeTable takes combinations found. Those of another car than the current one
// are kept until newer ones come, unless its brackets have other numbers of
// holes.
func (s *Study) takeTable(t *holes.Table) Change {
	if !sameCounts(t.Car, s.doc.Car()) {
		return 0
	}
	s.search.table, s.search.outdated = t, !sameSearch(t.Car, s.doc.Car())
	s.forgetHoleLaunches()
	s.search.markStale()
	return Ranking
}

// sameCounts reports whether two cars' brackets have the same numbers of holes.
func sameCounts(a, b *car.Car) bool {
	for _, row := range car.Rows {
		if len(*row.In(a)) != len(*row.In(b)) {
			return false
		}
	}
	return true
}

// keepCombinations keeps the combinations of the car before, as outdated where
// they differ, until those of the current one are found, and returns what changes.
// Brackets with other numbers of holes drop them.
func (s *Study) keepCombinations() Change {
	f := &s.search
	if f.table == nil {
		return 0
	}
	if !sameCounts(f.table.Car, s.doc.Car()) {
		f.forget()
		return Ranking | Pointing
	}
	f.outdated = !sameSearch(f.table.Car, s.doc.Car())
	return Ranking
}

// rank has the combinations ranked again after a change of car or setup, and
// returns what changes. Outdated ones keep their places until new ones are found.
func (s *Study) rank() Change {
	if s.search.table == nil {
		return 0
	}
	if !s.search.outdated {
		s.keepHoleLaunches()
		s.search.markStale()
	}
	return Ranking
}

// markStale has the combinations ranked again when somebody asks.
func (f *search) markStale() {
	f.stale = true
	f.revision++
}

// RankingRevision increases whenever the rows of Listed, their order or their
// content may have changed. At an equal revision Listed returns the same.
func (s *Study) RankingRevision() uint64 { return s.search.revision }

// ranked returns the search with its combinations ranked. They are ranked only
// when somebody asks, so that edits cost nothing while nobody does.
func (s *Study) ranked() *search {
	if s.search.stale {
		s.search.stale = false
		s.order()
	}
	return &s.search
}

// order ranks and filters the combinations.
func (s *Study) order() {
	f, c := &s.search, s.doc.Car()
	f.places = holes.Rank(s.Table(), c, s.doc.Setup(), holes.TargetOf(c), f.wishes)
	f.rankOf = slices.Grow(f.rankOf[:0], len(f.places))[:len(f.places)]
	for i := range f.places {
		f.rankOf[f.places[i].Index] = i
	}
	s.filter()
}

// filter lists the places that meet the conditions.
func (s *Study) filter() {
	f := &s.search
	f.listed = f.places
	if len(f.conditions) > 0 {
		f.listed = holes.Filter(f.places, f.conditions)
	}
	f.shown = make([]bool, len(f.places))
	for i := range f.listed {
		f.shown[f.listed[i].Index] = true
	}
}

// Wishes returns what the combinations are ranked by besides the target.
func (s *Study) Wishes() holes.Wishes { return s.search.wishes }

// SetWishes ranks the combinations by other wishes. Those that need launches have all
// combinations launched.
func (s *Study) SetWishes(w holes.Wishes) {
	s.change(func() Change {
		c := set(&s.search.wishes, w, Ranking)
		if w != w.OfSideView() {
			c |= s.launchHoles(true)
		}
		if c != 0 && s.search.table != nil {
			s.search.markStale()
		}
		return c
	})
}

// Conditions returns what the listed combinations meet, not to be changed.
func (s *Study) Conditions() []holes.ColumnCondition { return s.search.conditions }

// SetConditions lists only the combinations that meet all of some conditions. Those on
// launches have all combinations launched.
func (s *Study) SetConditions(list []holes.ColumnCondition) {
	s.change(func() Change {
		f := &s.search
		if slices.Equal(list, f.conditions) {
			return 0
		}
		f.conditions = slices.Clone(list)
		if slices.ContainsFunc(list, func(c holes.ColumnCondition) bool { return c.Column.OfLaunch }) {
			s.launchHoles(true)
		}
		f.revision++
		if !f.stale {
			s.filter()
		}
		return Ranking
	})
}

// DotColumn returns what the colors of the combinations' dots stand for; nil for
// anti-squat at ride height, around its target.
func (s *Study) DotColumn() *holes.Column { return s.search.colored }

// ColorDots colors the combinations' dots by a column, or nil. One of launches has all
// combinations launched.
func (s *Study) ColorDots(by *holes.Column) {
	s.change(func() Change {
		c := set(&s.search.colored, by, Ranking)
		if by != nil && by.OfLaunch {
			c |= s.launchHoles(true)
		}
		return c
	})
}

// Ranking returns all combinations by rank, not to be changed.
func (s *Study) Ranking() []holes.Place { return s.ranked().places }

// Listed returns the combinations that meet the conditions by rank, not to be
// changed.
func (s *Study) Listed() []holes.Place { return s.ranked().listed }

// IsListed reports whether the combination with an index meets the conditions.
func (s *Study) IsListed(index int) bool {
	f := s.ranked()
	return index >= 0 && index < len(f.shown) && f.shown[index]
}

// Place returns the place of the combination with an index, or nil.
func (s *Study) Place(index int) *holes.Place {
	f := s.ranked()
	if index < 0 || index >= len(f.rankOf) {
		return nil
	}
	return &f.places[f.rankOf[index]]
}

// Pointed returns the index of the combination under the pointer, or None.
func (s *Study) Pointed() int { return s.search.pointed - 1 }

// Point marks the combination with an index, or None, as under the pointer.
func (s *Study) Point(index int) { s.mark(&s.search.pointed, index) }

// Picked returns the index of the combination chosen for a closer look, or None.
func (s *Study) Picked() int { return s.search.picked - 1 }

// Pick chooses the combination with an index, or None, for a closer look.
func (s *Study) Pick(index int) { s.mark(&s.search.picked, index) }

// mark points at or picks a combination; one that is not there is None.
func (s *Study) mark(mark *int, index int) {
	s.change(func() Change {
		if s.Place(index) == nil {
			index = None
		}
		return set(mark, index+1, Pointing)
	})
}

// Present returns the index of the combination that the current setup uses, or
// None before a search.
func (s *Study) Present() int {
	if s.search.table == nil {
		return None
	}
	return s.search.table.Index(s.doc.Car().Setups[s.doc.Setup()].Holes)
}

// UseHoles puts the current setup's bars into the holes of a combination.
func (s *Study) UseHoles(h car.Holes) []car.Problem {
	setup := s.doc.Setup()
	return s.doc.Apply("Use holes "+h.String(), func(c *car.Car) { c.Setups[setup].Holes = h })
}

// KeepHoles adds a setup with the holes of a combination behind the current one,
// under a name of its own, and makes it the current one. Turns stay as they are.
// Where a setup has these holes and turns already, that one is made the current
// one instead, and had is true; of several it is the current one or else the
// first.
func (s *Study) KeepHoles(h car.Holes) (had bool, problems []car.Problem) {
	at, setups := s.doc.Setup(), s.doc.Car().Setups
	same := func(o car.Setup) bool { return o.Holes == h && o.Turns == setups[at].Turns }
	if same(setups[at]) {
		return true, nil
	}
	if i := slices.IndexFunc(setups, same); i >= 0 {
		s.doc.SelectSetup(i)
		return true, nil
	}
	problems = s.doc.Apply("Keep holes "+h.String(), func(c *car.Car) {
		twin := c.Setups[at]
		twin.Name, twin.Note, twin.Holes, twin.Runs = c.FreeSetupName("holes "+h.String()), "", h, nil
		c.Setups = slices.Insert(c.Setups, at+1, twin)
	})
	if len(problems) == 0 {
		s.doc.SelectSetup(at + 1)
	}
	return false, problems
}

package study_test

import (
	"context"
	"slices"
	"testing"
	"testing/synctest"
	"time"

	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/stock"
)

// seeker is a study whose searches take as long as each of their combinations
// does. Its time is that of a synctest bubble.
type seeker struct {
	*rig
	each    time.Duration
	batch   int      // combinations between two calls of Progress
	began   []string // names of the cars whose search has begun
	given   []string // of those whose search was given up
	figures []study.SearchProgress
}

// newSeeker returns a study that searches nothing yet. Close it before its
// bubble ends.
func newSeeker(t *testing.T, each time.Duration, batch int) *seeker {
	s := &seeker{rig: &rig{queue: runnertest.NewQueue()}, each: each, batch: batch}
	s.Study = study.NewWith(read(t), s.options(), launch.Run, s.search)
	s.Listen(func(c study.Change) {
		if c.Has(study.Progress) {
			s.figures = append(s.figures, s.SearchProgress())
		}
	})
	return s
}

func (s *seeker) search(ctx context.Context, c *car.Car, lib stock.Library, o holes.Options) (*holes.Table, error) {
	s.began = append(s.began, c.Body.Name)
	total := holes.Count(c)
	for done := 0; done < total; {
		time.Sleep(time.Duration(min(s.batch, total-done)) * s.each)
		if ctx.Err() != nil {
			s.given = append(s.given, c.Body.Name)
			return nil, ctx.Err()
		}
		done = min(done+s.batch, total)
		o.Progress(done, total)
	}
	return holes.Search(ctx, c, lib, holes.Options{Travels: 5})
}

// pass lets time pass and runs what is posted meanwhile.
func (s *seeker) pass(d time.Duration) {
	const step = time.Millisecond
	for ; d > 0; d -= step {
		time.Sleep(step)
		synctest.Wait()
		for s.queue.Step() {
		}
	}
}

// edit renames the car and changes what its combinations depend on.
func (s *seeker) edit(t *testing.T, name string) {
	t.Helper()
	apply(t, s.rig, func(c *car.Car) {
		c.Body.Name = name
		c.Body.CGHeight += 0.001
	})
}

// The progress of a search is told when it takes long, and then at a pace; it
// ends with the search.
func TestProgressOfALongSearchIsTold(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newSeeker(t, 10*time.Millisecond, 1) // 36 combinations
		defer s.Close()
		s.Want(study.WantsSearch)
		s.pass(study.Patience - 5*time.Millisecond)
		if got := s.SearchProgress(); got != (study.SearchProgress{}) || len(s.figures) != 0 {
			t.Errorf("after %v it is at %+v, told %+v", study.Patience-5*time.Millisecond, got, s.figures)
		}
		s.pass(time.Second)
		want := []study.SearchProgress{
			{Phase: study.SearchRuns, Done: 20, Total: 36},
			{Phase: study.SearchRuns, Done: 25, Total: 36},
			{Phase: study.SearchRuns, Done: 30, Total: 36},
			{Phase: study.SearchRuns, Done: 35, Total: 36},
			{},
		}
		if !slices.Equal(s.figures, want) {
			t.Errorf("told are\n%+v, want\n%+v", s.figures, want)
		}
		if s.TableOutdated() || s.Busy() {
			t.Errorf("outdated %v, busy %v", s.TableOutdated(), s.Busy())
		}
	})
}

func TestAShortSearchIsNotTold(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newSeeker(t, 5*time.Millisecond, 1)
		defer s.Close()
		s.Want(study.WantsSearch)
		s.pass(time.Second)
		if s.TableOutdated() || !slices.Equal(s.figures, []study.SearchProgress{{}}) {
			t.Errorf("outdated %v, told %+v", s.TableOutdated(), s.figures)
		}
	})
}

// A search that is stopped stays so while the car is edited, and goes on when it
// is resumed or another car is loaded.
func TestASearchIsStoppedAndResumed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newSeeker(t, 10*time.Millisecond, 1)
		defer s.Close()
		s.Want(study.WantsSearch)
		s.pass(study.Patience + 10*time.Millisecond)
		if s.SearchProgress().Phase != study.SearchRuns {
			t.Fatalf("it is at %+v", s.SearchProgress())
		}
		stopped := study.SearchProgress{Phase: study.SearchStopped}
		s.StopSearch()
		if s.SearchProgress() != stopped || s.Busy() {
			t.Errorf("stopped it is at %+v, busy %v", s.SearchProgress(), s.Busy())
		}
		s.edit(t, "second")
		s.pass(time.Second)
		if s.SearchProgress() != stopped || s.Table() != nil || !slices.Equal(s.began, []string{"Reference"}) {
			t.Errorf("after an edit it is at %+v, searched are %q", s.SearchProgress(), s.began)
		}
		s.ResumeSearch()
		s.pass(time.Second)
		if s.SearchProgress() != (study.SearchProgress{}) || s.TableOutdated() || !slices.Equal(s.began, []string{"Reference", "second"}) {
			t.Errorf("resumed it is at %+v, searched are %q", s.SearchProgress(), s.began)
		}
		// With all that is wanted there, a stop is not told until something is missing.
		s.StopSearch()
		if s.SearchProgress() != (study.SearchProgress{}) {
			t.Errorf("with nothing to search it is at %+v", s.SearchProgress())
		}
		s.edit(t, "third")
		if s.SearchProgress() != stopped || s.Table() == nil {
			t.Errorf("after another edit it is at %+v", s.SearchProgress())
		}
		if err := s.Document().Open(reference); err != nil {
			t.Fatal(err)
		}
		s.pass(time.Second)
		if s.SearchProgress() != (study.SearchProgress{}) || s.TableOutdated() {
			t.Errorf("with another car it is at %+v", s.SearchProgress())
		}
	})
}

// A search with more than half to do is given up for a newer car, but not twice
// in a row; one with less is finished first.
func TestSearchesAreGivenUpButNotAlways(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newSeeker(t, time.Millisecond, 1)
		defer s.Close()
		s.Want(study.WantsSearch)
		s.pass(17 * time.Millisecond)
		s.edit(t, "second")
		s.pass(10 * time.Millisecond)
		s.edit(t, "third")
		s.pass(10 * time.Millisecond)
		if want := []string{"Reference", "second"}; !slices.Equal(s.began, want) || !slices.Equal(s.given, want[:1]) {
			t.Errorf("searched are %q, given up %q", s.began, s.given)
		}
		s.edit(t, "fourth")
		s.pass(100 * time.Millisecond)
		if want := []string{"Reference", "second", "fourth"}; !slices.Equal(s.began, want) || !slices.Equal(s.given, want[:1]) || s.TableOutdated() {
			t.Errorf("searched are %q, given up %q", s.began, s.given)
		}
		// Half done, it is finished.
		s.edit(t, "fifth")
		s.pass(20 * time.Millisecond)
		s.edit(t, "sixth")
		s.pass(20 * time.Millisecond)
		if s.Table().Car.Body.Name != "fifth" || !s.TableOutdated() {
			t.Errorf("the combinations are of %q", s.Table().Car.Body.Name)
		}
		s.pass(100 * time.Millisecond)
		if want := []string{"Reference", "second", "fourth", "fifth", "sixth"}; !slices.Equal(s.began, want) || !slices.Equal(s.given, want[:1]) || s.TableOutdated() {
			t.Errorf("searched are %q, given up %q", s.began, s.given)
		}
	})
}

// Nobody looks any more: the search ends.
func TestASearchEndsWithTheWish(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newSeeker(t, 10*time.Millisecond, 1)
		defer s.Close()
		s.Want(study.WantsSearch)
		s.pass(study.Patience + 10*time.Millisecond)
		time.Sleep(study.Pace) // progress is posted, and not told yet
		synctest.Wait()
		s.Want(0)
		for s.queue.Step() {
		}
		if s.Busy() || s.SearchProgress() != (study.SearchProgress{}) {
			t.Errorf("it is at %+v, busy %v", s.SearchProgress(), s.Busy())
		}
		s.pass(time.Second)
		if s.Table() != nil || len(s.given) != 1 {
			t.Errorf("it goes on: given up %q", s.given)
		}
	})
}

// Combinations found and not handed over when another car is loaded are none of
// that.
func TestASearchOfACarThatHasGoneIsDropped(t *testing.T) {
	s := open(t)
	s.Want(study.WantsSearch)
	s.queue.Wait()
	if err := s.Document().Open(reference); err != nil {
		t.Fatal(err)
	}
	if !s.queue.Step() || s.Table() != nil {
		t.Error("the combinations of the car before are taken")
	}
	s.settle()
	if s.TableOutdated() {
		t.Error("the car that was loaded is not searched")
	}
}

// Brackets that offer more than a search takes are told as the reason, until
// they do not any more.
func TestASearchThatCannotBe(t *testing.T) {
	s, heard := searched(t)
	*heard = 0
	apply(t, s, func(c *car.Car) {
		for _, row := range car.Rows {
			list := row.In(c)
			for last := (*list)[len(*list)-1]; len(*list) < 23; {
				last.Y += 0.0005
				*list = append(*list, last)
			}
		}
	})
	s.settle()
	got := s.SearchProgress()
	if many, ok := got.Err.(*holes.TooMany); got.Phase != study.SearchFailed || !ok || many.Combinations != 23*23*23*23 || !heard.Has(study.Progress) {
		t.Errorf("it is at %+v, heard %b", got, *heard)
	}
	s.Document().Undo()
	if s.SearchProgress() != (study.SearchProgress{}) {
		t.Errorf("with fewer holes it is at %+v", s.SearchProgress())
	}
	s.settle()
	if s.TableOutdated() {
		t.Error("it is not searched")
	}
}

package study_test

import (
	"context"
	"errors"
	"slices"
	"testing"
	"testing/synctest"
	"time"

	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/stock"
	"bowline/model/units"
)

// hopper is a study in which the launch of each combination takes a while, in a time of
// its own, and is one of a number: 60 ft in so many seconds.
type hopper struct {
	*rig
	each   time.Duration
	number float64           // what the launches come to that begin now
	orders [][]int           // of the runs begun
	known  []int             // combinations that were launched before each of them
	parts  []*holes.Launches // handed over meanwhile
	fail   error
}

// newHopper returns a study with its combinations found and none launched.
func newHopper(t *testing.T, each time.Duration) *hopper {
	h := &hopper{rig: &rig{queue: runnertest.NewQueue()}, each: each, number: 1}
	h.Study = study.NewLaunching(read(t), h.options(), launch.Run,
		func(ctx context.Context, c *car.Car, lib stock.Library, o holes.Options) (*holes.Table, error) {
			return holes.Search(ctx, c, lib, holes.Options{Travels: 5})
		}, h.launch)
	h.Want(study.WantsSearch)
	h.settle()
	return h
}

func (h *hopper) launch(ctx context.Context, t *holes.Table, c *car.Car, setup int, o holes.LaunchOptions) (*holes.Launches, error) {
	if h.fail != nil {
		return nil, h.fail
	}
	l, number := holes.NoneLaunched(t, c, setup), h.number
	if o.Known != nil {
		copy(l.List, o.Known.List)
		l.Done = o.Known.Done
	}
	h.orders, h.known = append(h.orders, o.Order), append(h.known, l.Done)
	told := time.Now()
	for _, i := range o.Order {
		if l.List[i].Done {
			continue
		}
		time.Sleep(h.each)
		if ctx.Err() != nil {
			return l, ctx.Err()
		}
		l.List[i] = holes.Launch{Done: true, SixtyFeet: number, Worst: analysis.Demand{Share: 0.5}}
		l.Done++
		if time.Since(told) >= o.Every {
			told = time.Now()
			part := *l
			part.List = slices.Clone(l.List)
			h.parts = append(h.parts, &part)
			o.Partial(&part)
		}
	}
	return l, nil
}

// pass lets time pass and runs what is posted meanwhile.
func (h *hopper) pass(d time.Duration) {
	const step = time.Millisecond
	for ; d > 0; d -= step {
		time.Sleep(step)
		synctest.Wait()
		for h.queue.Step() {
		}
	}
}

// there counts the combinations of the list that have been launched, and sees to it that
// all are of one number.
func (h *hopper) there(t *testing.T, number float64) (n int) {
	t.Helper()
	for _, p := range h.Ranking() {
		if l := p.Launch(); l != nil {
			n++
			if l.SixtyFeet != number {
				t.Errorf("%s has a launch of number %v, want %v", p.Holes(), l.SixtyFeet, number)
			}
		}
	}
	return n
}

// at checks how far the launches are, those that have been launched of 36.
func (h *hopper) at(t *testing.T, phase study.HolesPhase, done int) {
	t.Helper()
	if got := h.HolesLaunch(); got != (study.HolesLaunch{Phase: phase, Done: done, Total: 36}) {
		t.Errorf("they are at %+v, want phase %d with %d", got, phase, done)
	}
}

// Nothing is launched unless it is asked for; then the combinations come as they stand,
// in parts, and the list takes them as they come.
func TestCombinationsAreLaunchedWhenAsked(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		h := newHopper(t, 100*time.Millisecond)
		defer h.Close()
		h.pass(time.Second)
		if len(h.orders) != 0 || h.HolesLaunch() != (study.HolesLaunch{}) || h.Ranking()[0].Awaited() {
			t.Fatal("something is launched that nobody asked for")
		}
		var order []int
		for _, p := range h.Ranking() {
			order = append(order, p.Index)
		}
		heard := h.hear()
		h.LaunchHoles(true)
		h.at(t, study.HolesRun, 0)
		if !heard.Has(study.Progress) || !heard.Has(study.Ranking) || !h.Ranking()[0].Awaited() {
			t.Errorf("heard is %b", *heard)
		}
		h.pass(time.Second)
		n := h.there(t, 1)
		h.at(t, study.HolesRun, n)
		if n < 3 || n > 10 {
			t.Errorf("after a second there are %d of ten", n)
		}
		for i, p := range h.Ranking() {
			if (p.Launch() != nil) != (i < n) {
				t.Errorf("rank %d is launched: %v", i+1, p.Launch() != nil)
			}
		}
		h.pass(3 * time.Second)
		h.at(t, study.HolesDone, 36)
		if h.there(t, 1) != 36 || h.Busy() || len(h.orders) != 1 || !slices.Equal(h.orders[0], order) {
			t.Errorf("%d are there after the runs %v", h.there(t, 1), h.orders)
		}
		if most := int(4 * time.Second / (300 * time.Millisecond)); len(h.parts) > most || len(h.parts) < 5 {
			t.Errorf("there were %d parts in 3.6 s", len(h.parts))
		}
	})
}

// An edit that changes the launches drops them and begins anew; one that does not keeps
// them; and while a hand is on the car none begins.
func TestEditsRenewTheLaunches(t *testing.T) {
	for what, c := range map[string]struct {
		edit  func(*car.Car)
		renew bool
	}{
		"hole":    {func(c *car.Car) { c.Chassis.Upper[0].Y += 0.001 }, true},
		"turns":   {func(c *car.Car) { c.Setups[0].Turns.UpperRight = -1 }, true},
		"inertia": {func(c *car.Car) { c.Launch.Inertia.Roll = 300 }, true},
		"target":  {func(c *car.Car) { c.Check.TargetAntiSquat[1] += 0.1 }, false},
		"lift":    {func(c *car.Car) { c.Check.LiftLimit = 0.2 }, false},
		"holes":   {func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = 0 }, false},
		"name":    {func(c *car.Car) { c.Body.Name = "Another" }, false},
	} {
		synctest.Test(t, func(t *testing.T) {
			h := newHopper(t, 100*time.Millisecond)
			defer h.Close()
			h.LaunchHoles(true)
			h.pass(2 * time.Second)
			before := h.there(t, 1)
			h.number = 2
			h.Document().Begin("Edit")
			h.pass(100 * time.Millisecond)
			apply(t, h.rig, c.edit)
			h.pass(300 * time.Millisecond)
			runs := len(h.orders)
			if c.renew {
				if n := h.there(t, 0); n != 0 || h.Busy() || h.HolesLaunch().Phase != study.HolesWait {
					t.Errorf("%s: in the hand %d are there, at %+v", what, n, h.HolesLaunch())
				}
			} else if n := h.HolesLaunch().Done; n < before {
				t.Errorf("%s: %d of %d are still there", what, n, before)
			}
			h.Document().End()
			h.pass(4 * time.Second)
			h.at(t, study.HolesDone, 36)
			switch {
			case c.renew && (runs != 1 || len(h.orders) != 2 || h.known[1] != 0 || h.there(t, 2) != 36):
				t.Errorf("%s: %d runs in the hand, %d in all, of which the last knew %v", what, runs, len(h.orders), h.known)
			case !c.renew && h.known[len(h.known)-1] < before && len(h.orders) > 1:
				t.Errorf("%s: what was there is launched again: %v", what, h.known)
			}
		})
	}
}

// A run ends when it is stopped, when nobody looks and when nobody wants it any more, and
// goes on with what is missing.
func TestLaunchesAreStoppedAndResumed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		h := newHopper(t, 100*time.Millisecond)
		defer h.Close()
		h.LaunchHoles(true)
		h.pass(time.Second)
		n := h.there(t, 1)
		h.StopHoleLaunches()
		h.pass(time.Second)
		h.at(t, study.HolesStopped, n)
		if h.Busy() || h.there(t, 1) != n {
			t.Errorf("stopped with %d, there are %d", n, h.there(t, 1))
		}
		h.ResumeHoleLaunches()
		h.pass(time.Second)
		h.Want(0)
		h.pass(time.Second)
		m := h.HolesLaunch().Done
		if h.Busy() || m <= n || m == 36 {
			t.Errorf("nobody looks, and %d are there", m)
		}
		h.Want(study.WantsSearch)
		h.pass(4 * time.Second)
		h.at(t, study.HolesDone, 36)
		if want := []int{0, n, m}; !slices.Equal(h.known, want) {
			t.Errorf("the runs began with %v, want %v", h.known, want)
		}
		h.LaunchHoles(false)
		h.pass(time.Second)
		if h.HolesLaunch() != (study.HolesLaunch{}) || h.there(t, 1) != 0 || h.Ranking()[0].Awaited() || h.LaunchesHoles() {
			t.Errorf("not wanted, they are at %+v", h.HolesLaunch())
		}
	})
}

// What needs launches has them made, and goes with them.
func TestWishesAndConditionsHaveCombinationsLaunched(t *testing.T) {
	column, _ := holes.ColumnOf("sixty_ft")
	quick, err := column.Parse("<2", units.US)
	if err != nil {
		t.Fatal(err)
	}
	synctest.Test(t, func(t *testing.T) {
		h := newHopper(t, time.Millisecond)
		defer h.Close()
		for what, ask := range map[string]func(){
			"order":     func() { h.SetWishes(holes.Wishes{Order: holes.Quickest}) },
			"wish":      func() { h.SetWishes(holes.Wishes{WithinLift: true}) },
			"color":     func() { h.ColorDots(column) },
			"condition": func() { h.SetConditions([]holes.ColumnCondition{{Column: column, Condition: quick}}) },
		} {
			ask()
			h.pass(time.Second)
			if !h.LaunchesHoles() || h.HolesLaunch().Phase != study.HolesDone || len(h.Listed()) != 36 {
				t.Errorf("%s: they are at %+v, listed are %d", what, h.HolesLaunch(), len(h.Listed()))
			}
			h.LaunchHoles(false)
			if h.Wishes() != (holes.Wishes{}) || h.DotColumn() != nil || len(h.Conditions()) != 0 || len(h.Listed()) != 36 {
				t.Errorf("%s: left are %+v and %d conditions, listed are %d", what, h.Wishes(), len(h.Conditions()), len(h.Listed()))
			}
		}
		h.SetWishes(holes.Wishes{OneBar: true})
		if h.LaunchesHoles() {
			t.Error("a wish that needs no launches has them made")
		}
	})
}

// Another order while they are being launched changes what comes next, and launches
// nothing twice.
func TestAnotherOrderChangesWhatIsLaunchedNext(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		h := newHopper(t, 100*time.Millisecond)
		defer h.Close()
		h.LaunchHoles(true)
		h.pass(time.Second)
		n := h.there(t, 1)
		h.SetWishes(holes.Wishes{Order: holes.LeastPush})
		first := h.Ranking()[0].Index
		h.pass(4 * time.Second)
		h.at(t, study.HolesDone, 36)
		if len(h.orders) != 2 || h.orders[1][0] != first || h.known[1] != n {
			t.Errorf("the second of %d runs began with %d launched", len(h.orders), h.known[len(h.known)-1])
		}
	})
}

// Launches of a car that has gone are none of the one that was loaded, and those that
// cannot be say why until something changes.
func TestLaunchesOfACarThatHasGone(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		h := newHopper(t, 100*time.Millisecond)
		defer h.Close()
		h.LaunchHoles(true)
		h.pass(time.Second)
		h.number = 2
		if err := h.Document().Open(reference); err != nil {
			t.Fatal(err)
		}
		if len(h.Ranking()) != 0 {
			t.Error("the combinations of the car before are still there")
		}
		h.pass(time.Second)
		if h.there(t, 2) == 0 {
			t.Error("the car that was loaded is not launched")
		}
		h.fail = errors.New("no")
		apply(t, h.rig, func(c *car.Car) { c.Body.CGHeight += 0.001 })
		h.pass(time.Second)
		if got := h.HolesLaunch(); got.Phase != study.HolesFailed || got.Err != h.fail || h.there(t, 0) != 0 {
			t.Errorf("they are at %+v", got)
		}
		h.fail = nil
		h.Document().Undo()
		h.pass(5 * time.Second)
		h.at(t, study.HolesDone, 36)
	})
}

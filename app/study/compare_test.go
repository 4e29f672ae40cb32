package study

import (
	"context"
	"math"
	"slices"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
)

// three returns a study of the reference car with a third setup, "high", held
// against the first one, which is current.
func three(t *testing.T) *Study {
	t.Helper()
	s := open(t)
	if p := s.doc.Apply("Add", func(c *car.Car) {
		c.Setups = append(c.Setups, car.Setup{Name: "high", Holes: car.Holes{ChassisUpper: 0, ChassisLower: 0}})
	}); p != nil {
		t.Fatal(p)
	}
	s.Compare(2)
	return s
}

// wantOther checks that the setup held against is the one at a place, with
// results of the car as it is, at the travel looked at.
func wantOther(t *testing.T, s *Study, setup int, name string) {
	t.Helper()
	o := s.Other()
	if o == nil {
		t.Fatalf("nothing is compared, want %q", name)
	}
	c := s.Document().Car()
	if o.Setup != setup || c.Setups[setup].Name != name {
		t.Errorf("setup %d, %q, is compared, want %d, %q", o.Setup, c.Setups[o.Setup].Name, setup, name)
	}
	if o.Result.Car != c || o.Result.Options.Setup != setup || o.Result.Options.FrontTravel != s.Front() {
		t.Errorf("the result is of setup %d at front travel %v; current car %v", o.Result.Options.Setup, o.Result.Options.FrontTravel, o.Result.Car == c)
	}
	if p := o.Station.Pose; math.Abs(p.Travel-s.Travel()) > 1e-12 || p.FrontTravel != s.Front() {
		t.Errorf("it stands at %v and %v m, looked at are %v and %v", p.Travel, p.FrontTravel, s.Travel(), s.Front())
	}
}

func wantNone(t *testing.T, s *Study) {
	t.Helper()
	if o := s.Other(); o != nil {
		t.Errorf("setup %d is compared, want none", o.Setup)
	}
}

func TestCompareTwoSetups(t *testing.T) {
	s := open(t)
	wantNone(t, s)
	if _, ok := s.Chosen(); ok {
		t.Error("a setup is chosen at first")
	}
	var heard []Change
	s.Listen(func(c Change) { heard = append(heard, c) })
	s.Compare(-1)
	s.Compare(1)
	s.Compare(1)
	wantOther(t, s, 1, "lower bar up")
	s.Compare(-1)
	s.Compare(-1)
	wantNone(t, s)
	if want := []Change{Inputs | Position | Compared, Inputs | Position | Compared}; !slices.Equal(heard, want) {
		t.Errorf("heard %b, want %b", heard, want)
	}
	// From the bars' lines alone, as in the window's tests: the lower chassis
	// hole of the other setup is at 12.25 in.
	s.Compare(1)
	upper, lower := (17-22.5)/20.0, (12.25-11)/23.0
	x := 2.5 + (22.5-11)/(lower-upper)
	if got := s.Other().Result.Ride.InstantCenter.X; math.Abs(got-x*inch) > 1e-9 {
		t.Errorf("the other instant center is %v m ahead, want %v", got, x*inch)
	}
}

func TestTheOtherSetupStandsAtTheSameTravel(t *testing.T) {
	s := three(t)
	s.SetTravel(-0.05)
	wantOther(t, s, 2, "high")
	s.SetFront(0.02)
	wantOther(t, s, 2, "high")
}

func TestTheOtherSetupIsFollowedByName(t *testing.T) {
	s := three(t)
	doc := s.Document()
	doc.MoveSetup(2, -1)
	wantOther(t, s, 1, "high")
	doc.RenameSetup(1, "more bite")
	wantOther(t, s, 1, "more bite")
	doc.CopySetup(0)
	doc.SelectSetup(0)
	wantOther(t, s, 2, "more bite")
	if _, p := doc.DeleteSetup(1); p != nil {
		t.Fatal(p)
	}
	wantOther(t, s, 1, "more bite")
	for doc.UndoLabel() != "Add" {
		doc.Undo()
	}
	wantOther(t, s, 2, "high")
	for doc.Redo() {
	}
	wantOther(t, s, 1, "more bite")
}

func TestADeletedSetupIsComparedNoMore(t *testing.T) {
	s := three(t)
	var heard Change
	s.Listen(func(c Change) { heard |= c })
	s.Document().DeleteSetup(2)
	wantNone(t, s)
	if _, ok := s.Chosen(); ok || !heard.Has(Compared) {
		t.Errorf("still chosen %v, heard %b", ok, heard)
	}
}

// While the setup held against is the current one there is nothing to compare,
// but it stays chosen.
func TestTheCurrentSetupIsNotHeldAgainstItself(t *testing.T) {
	s := three(t)
	s.Document().SelectSetup(2)
	wantNone(t, s)
	if i, ok := s.Chosen(); i != 2 || !ok {
		t.Errorf("chosen is %d, %v", i, ok)
	}
	s.Document().SelectSetup(1)
	wantOther(t, s, 2, "high")
}

func TestAnEditReachesBothSetups(t *testing.T) {
	s := three(t)
	before := s.Other().Result.Ride.AntiSquat
	s.Document().Apply("CG", func(c *car.Car) { c.Body.CGHeight += inch })
	wantOther(t, s, 2, "high")
	if s.Other().Result.Ride.AntiSquat == before {
		t.Error("the other setup's anti-squat is that of the car before")
	}
}

func TestAnotherCarEndsTheComparison(t *testing.T) {
	s := three(t)
	if err := s.Document().Open("../../testdata/reference.toml"); err != nil {
		t.Fatal(err)
	}
	wantNone(t, s)
	if _, ok := s.Chosen(); ok {
		t.Error("a setup is still chosen")
	}
}

// runOf launches a setup of the study's car.
func runOf(t *testing.T, s *Study, setup int) *launch.Result {
	t.Helper()
	r, err := launch.Run(context.Background(), s.Document().Car(), setup, carfile.Stock(), launch.Options{Limit: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// wantMissing checks which launch is to be computed next; below zero none.
func wantMissing(t *testing.T, s *Study, want int) {
	t.Helper()
	setup, missing := s.MissingLaunch()
	if !missing {
		setup = -1
	}
	if setup != want || s.LaunchOutdated() != missing {
		t.Errorf("missing is the launch of setup %d, outdated %v; want %d", setup, s.LaunchOutdated(), want)
	}
}

func TestLaunchesOfTwoSetups(t *testing.T) {
	s := three(t)
	s.SetLaunching(true)
	wantMissing(t, s, 0)
	s.PutLaunch(runOf(t, s, 0), s.Document().Revision())
	wantMissing(t, s, 2)
	other := runOf(t, s, 2)
	s.PutOtherLaunch(other, 1, s.Document().Revision()) // of a setup that is not compared
	wantMissing(t, s, 2)
	s.PutOtherLaunch(other, 2, s.Document().Revision())
	wantMissing(t, s, -1)
	s.SetTime(0.1)
	i, ok := s.Instant()
	if v := other.SideView(i); !ok || s.Other().Station.InstantCenter != v.InstantCenter || s.Other().Station.Pose != v.Pose {
		t.Error("the other setup is not at the instant of its launch")
	}
	if own := s.Station(); own.InstantCenter == s.Other().Station.InstantCenter {
		t.Error("both instant centers are in one place")
	}

	// After an edit both are to be computed anew; an older one is dropped.
	old := s.Document().Revision()
	s.Document().Apply("CG", func(c *car.Car) { c.Body.CGHeight += inch })
	wantMissing(t, s, 0)
	s.PutLaunch(runOf(t, s, 0), s.Document().Revision())
	wantMissing(t, s, 2)
	if s.Other().Launch != other {
		t.Error("the launch before is not shown meanwhile")
	}
	newest := runOf(t, s, 2)
	s.PutOtherLaunch(newest, 2, s.Document().Revision())
	s.PutOtherLaunch(other, 2, old)
	if wantMissing(t, s, -1); s.Other().Launch != newest {
		t.Error("an older launch took the place of the newest")
	}

	// Another setup has no launch yet; without one nothing is missing.
	s.Compare(1)
	wantMissing(t, s, 1)
	if s.Other().Launch != nil {
		t.Error("it has the launch of another setup")
	}
	s.Compare(-1)
	wantMissing(t, s, -1)
}

// Launches are wanted while they are looked at over time, and while two setups
// are compared where their launches are shown.
func TestWhenLaunchesAreWanted(t *testing.T) {
	s := three(t)
	var heard Change
	s.Listen(func(c Change) { heard |= c })
	want := func(want bool) {
		t.Helper()
		if s.WantsLaunch() != want {
			t.Errorf("wanted %v", s.WantsLaunch())
		}
	}
	want(false)
	s.SetComparingLaunches(true)
	want(true)
	if !heard.Has(Launches) {
		t.Error("nobody hears that launches are wanted")
	}
	if s.Launching() {
		t.Error("the travel is left for the launch")
	}
	s.Document().SelectSetup(2)
	want(false)
	s.Document().SelectSetup(0)
	want(true)
	s.Compare(-1)
	want(false)
	s.SetLaunching(true)
	want(true)
	s.SetComparingLaunches(false)
	want(true)
	s.SetLaunching(false)
	want(false)
	// Another car does not turn the page.
	s.SetComparingLaunches(true)
	if err := s.Document().Open("../../testdata/reference.toml"); err != nil {
		t.Fatal(err)
	}
	want(false)
	s.Compare(1)
	want(true)
}

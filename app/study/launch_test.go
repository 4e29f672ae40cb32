package study_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/stock"
)

func TestLaunchIsLookedAtInstantByInstant(t *testing.T) {
	s := open(t)
	ride := s.Station().Pose
	s.SetLaunching(true)
	if _, ok := s.Instant(); ok || s.Launch() != nil || !s.LaunchOutdated() {
		t.Error("there is a launch before one is computed")
	}
	s.settle()
	r := s.Launch()
	if s.LaunchOutdated() || s.LaunchEnd() != r.Time[len(r.Time)-1] {
		t.Errorf("the launch ends at %v, the history at %v", s.LaunchEnd(), r.Time[len(r.Time)-1])
	}
	s.SetTime(0.1504)
	i, ok := s.Instant()
	if !ok || math.Abs(r.Time[i]-0.1504) > r.Options.Output/2+1e-12 {
		t.Errorf("instant %d at %v s", i, r.Time[i])
	}
	if want := r.SideView(i).Pose; s.Station().Pose != want || want == ride {
		t.Error("the station is not that of the instant")
	}
	// The instant center's path begins where it is at the start and stays near
	// where it is looked at.
	path := s.CenterPath()
	if len(path) != 1 || path[0][0] != r.SideView(0).InstantCenter || len(path[0]) < 15 {
		t.Fatalf("path %v", path)
	}
	if want := r.SideView(150).InstantCenter; path[0][15] != want {
		t.Errorf("at 0.15 s the path is at %v, the instant center at %v", path[0][15], want)
	}
	s.SetTime(99)
	if s.Time() != s.LaunchEnd() {
		t.Errorf("time %v beyond the end", s.Time())
	}
	s.SetLaunching(false)
	if s.Station().Pose != ride {
		t.Error("back to travels, the car is not at ride height")
	}
}

func TestAnEditOutdatesTheLaunchButKeepsIt(t *testing.T) {
	s := open(t)
	s.SetLaunching(true)
	s.settle()
	first := s.Launch()
	s.Choose(car.ChassisLower, 0)
	if s.Launch() != first || !s.LaunchOutdated() {
		t.Error("an edit should leave the old launch on show until the new one is there")
	}
	s.settle()
	if s.Launch() == first || s.Launch().Car != s.Document().Car() || s.LaunchOutdated() {
		t.Error("the launch does not follow the edit")
	}
}

// A launch under way when another car is loaded is none of that.
func TestALaunchOfACarThatHasGoneIsDropped(t *testing.T) {
	s := open(t)
	s.SetLaunching(true)
	s.queue.Wait() // the launch is computed, and not handed over yet
	if err := s.Document().Open(reference); err != nil {
		t.Fatal(err)
	}
	for s.queue.Step() {
	}
	if l := s.Launch(); l != nil && l.Car != s.Document().Car() || s.LaunchOutdated() != (l == nil) {
		t.Error("the launch of the car before is shown")
	}
	s.settle()
	if s.LaunchOutdated() || s.Launch().Car != s.Document().Car() {
		t.Error("the car that was loaded is not launched")
	}
}

// The launches are computed one by one: that of the current setup, then those of
// the setups compared, in their order.
func TestLaunchesOfSeveralSetups(t *testing.T) {
	s := three(t)
	s.Compare(2, 1)
	s.SetLaunching(true)
	s.settle()
	if want := []int{0, 2, 1}; !slices.Equal(s.launched, want) || s.LaunchOutdated() {
		t.Errorf("launched are %v, want %v", s.launched, want)
	}
	s.SetTime(0.1)
	i, ok := s.Instant()
	for _, o := range s.Others() {
		if v := o.Launch.SideView(i); !ok || o.Outdated || o.Station.InstantCenter != v.InstantCenter || o.Station.Pose != v.Pose {
			t.Errorf("%q is not at the instant of its launch", o.Name)
		}
		if s.Station().InstantCenter == o.Station.InstantCenter {
			t.Error("both instant centers are in one place")
		}
	}

	// After an edit all are to be computed anew; the old ones are shown meanwhile.
	old := []*launch.Result{s.Others()[0].Launch, s.Others()[1].Launch}
	s.Document().Apply("CG", func(c *car.Car) { c.Body.CGHeight += inch })
	for i, o := range s.Others() {
		if o.Launch != old[i] || !o.Outdated || !s.LaunchOutdated() {
			t.Errorf("%q: the launch before is not shown meanwhile", o.Name)
		}
	}
	s.settle()
	if want := []int{0, 2, 1, 0, 2, 1}; !slices.Equal(s.launched, want) || s.LaunchOutdated() {
		t.Errorf("launched are %v, want %v", s.launched, want)
	}
	for i, o := range s.Others() {
		if o.Launch == old[i] || o.Launch.Car != s.Document().Car() || o.Outdated {
			t.Errorf("%q has an old launch", o.Name)
		}
	}

	// One that stays keeps its launch, and without one nothing is missing.
	kept := s.Others()[1].Launch
	s.Compare(1)
	if s.LaunchOutdated() || s.Others()[0].Launch != kept {
		t.Error("the launch of a setup that is still compared is lost")
	}
	s.Compare(2)
	if o := s.Others()[0]; s.LaunchOutdated() || o.Launch == nil || o.Launch.Setup != 2 {
		t.Error("the launch of a setup that is compared again is lost")
	}
	s.Compare()
	if s.LaunchOutdated() {
		t.Error("without a setup compared a launch is missing")
	}
}

// A launch is kept while the car is as it is: a setup that is compared again, or becomes
// the current one, has its own at once.
func TestALaunchIsKept(t *testing.T) {
	s := open(t)
	s.SetLaunching(true)
	s.settle()
	s.Compare(1)
	s.settle()
	s.Compare()
	s.Compare(1)
	if o := s.Others()[0]; o.Outdated || o.Launch.Setup != 1 {
		t.Error("the launch of the setup compared again is lost")
	}
	s.Document().SelectSetup(1)
	if s.LaunchOutdated() || s.Launch().Setup != 1 {
		t.Error("the launch of the setup selected is lost")
	}
	s.settle()
	if want := []int{0, 1}; s.LaunchOutdated() || !slices.Equal(s.launched, want) {
		t.Errorf("outdated %v, launched are %v, want %v", s.LaunchOutdated(), s.launched, want)
	}
	// Of a setup that is deleted none is kept for another of its name.
	s.Compare()
	s.Document().SelectSetup(0)
	s.Document().DeleteSetup(1)
	s.Document().CopySetup(0)
	s.Document().RenameSetup(1, "lower bar up")
	if l, current := s.LaunchOf(1); l != nil || current {
		t.Error("a new setup has the launch of one deleted")
	}
}

// Launches are computed while they are looked at over time, and while setups are
// compared where their launches are wanted.
func TestWhenLaunchesAreComputed(t *testing.T) {
	s := three(t)
	s.Compare(2)
	launches := func(what string, want ...int) {
		t.Helper()
		s.settle()
		if !slices.Equal(s.launched, want) {
			t.Errorf("%s: launched are %v, want %v", what, s.launched, want)
		}
		s.launched = nil
		s.Document().Apply("CG", func(c *car.Car) { c.Body.CGHeight += 0.001 })
	}
	launches("nothing is wanted")
	s.Want(study.WantsSearch)
	launches("the combinations are wanted")
	s.Want(study.WantsLaunch)
	launches("a launch is wanted", 0)
	s.Want(study.WantsOtherLaunches)
	launches("launches are compared", 0, 2)
	s.Want(study.WantsAllLaunches)
	launches("all are wanted", 0, 2, 1)
	if s.Launching() {
		t.Error("the travel is left for the launch")
	}
	s.Want(0)
	s.settle()
	s.launched = nil
	s.Document().SelectSetup(2)
	s.Want(study.WantsOtherLaunches)
	launches("the setup compared is the current one")
	s.Document().SelectSetup(0)
	launches("it is not any more", 0, 2)
	s.Want(0)
	s.Compare()
	s.settle()
	s.launched = nil
	s.Want(study.WantsOtherLaunches)
	launches("nothing is compared")
	s.SetLaunching(true)
	launches("the launch is looked at", 0)
	s.Want(0)
	launches("the launch is still looked at", 0)
	s.SetLaunching(false)
	s.settle()
	s.launched = nil
	launches("it is left")
	// Another car does not take back what is wanted.
	s.Want(study.WantsOtherLaunches)
	if err := s.Document().Open(reference); err != nil {
		t.Fatal(err)
	}
	launches("another car")
	s.Compare(1)
	launches("with a setup compared", 0, 1)
}

func TestALaunchThatFailsIsTold(t *testing.T) {
	r := &rig{queue: runnertest.NewQueue()}
	why := errors.New("it will not start")
	r.Study = study.NewWith(read(t), r.options(), func(ctx context.Context, c *car.Car, setup int, lib stock.Library, o launch.Options) (*launch.Result, error) {
		if c.Body.Name == "stuck" {
			return nil, why
		}
		return launch.Run(ctx, c, setup, lib, launch.Options{Limit: 0.05})
	}, holes.Search)
	t.Cleanup(r.Close)
	heard := r.hear()
	r.Want(study.WantsLaunch)
	r.settle()
	if r.LaunchError() != nil || heard.Has(study.LaunchFailed) {
		t.Fatalf("a launch fails: %v", r.LaunchError())
	}
	r.Document().Apply("Name", func(c *car.Car) { c.Body.Name = "stuck" })
	r.settle()
	if r.LaunchError() != why || !heard.Has(study.LaunchFailed) || !r.LaunchOutdated() || r.Launch() == nil {
		t.Errorf("the reason is %v, heard %b", r.LaunchError(), *heard)
	}
	r.Document().Undo()
	r.settle()
	if r.LaunchError() != nil || r.LaunchOutdated() {
		t.Errorf("a car that launches has the error %v", r.LaunchError())
	}
}

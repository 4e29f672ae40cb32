package study

import (
	"context"
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
)

// run launches the study's car.
func run(t *testing.T, s *Study) *launch.Result {
	t.Helper()
	doc := s.Document()
	r, err := launch.Run(context.Background(), doc.Car(), doc.Setup(), carfile.Stock(), launch.Options{Limit: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestLaunchIsLookedAtInstantByInstant(t *testing.T) {
	s := open(t)
	ride := s.Station().Pose
	s.SetLaunching(true)
	if _, ok := s.Instant(); ok || s.Launch() != nil || !s.LaunchOutdated() {
		t.Error("there is a launch before one was put")
	}
	r := run(t, s)
	s.PutLaunch(r, s.Document().Revision())
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
	first, revision := run(t, s), s.Document().Revision()
	s.PutLaunch(first, revision)
	s.Choose(car.ChassisLower, 0)
	if s.Launch() != first || !s.LaunchOutdated() {
		t.Error("an edit should leave the old launch on show until the new one is there")
	}
	second := run(t, s)
	s.PutLaunch(second, s.Document().Revision())
	s.PutLaunch(first, revision)
	if s.Launch() != second || s.LaunchOutdated() {
		t.Error("an older launch took the place of a newer one")
	}
}

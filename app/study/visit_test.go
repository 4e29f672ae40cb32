package study_test

import (
	"testing"

	"bowline/app/study"
)

// A visit goes back to where it began, unless it is to stay or the car is set
// elsewhere, were it to where it is.
func TestVisits(t *testing.T) {
	for name, x := range map[string]struct {
		during func(*rig)
		want   float64 // after the visit [in]
	}{
		"nothing":             {func(*rig) {}, 1},
		"another visit":       {func(s *rig) { s.VisitTravel(-2 * inch) }, 1},
		"stay":                {func(s *rig) { s.StayAtTravel() }, 2},
		"stay, another visit": {func(s *rig) { s.StayAtTravel(); s.VisitTravel(0) }, 2},
		"set":                 {func(s *rig) { s.SetTravel(-inch) }, -1},
		"set to where it is":  {func(s *rig) { s.SetTravel(s.Travel()) }, 2},
		"set, another visit":  {func(s *rig) { s.SetTravel(-inch); s.VisitTravel(0) }, -1},
		"left before":         {func(s *rig) { s.LeaveTravel(); s.SetTravel(0); s.LeaveTravel() }, 0},
	} {
		s := open(t)
		s.SetTravel(inch)
		s.VisitTravel(2 * inch)
		if got := s.Travel() / inch; got < 1.999 || got > 2.001 {
			t.Fatalf("visiting %g in", got)
		}
		x.during(s)
		heard := s.hear()
		s.LeaveTravel()
		if got := s.Travel() / inch; got < x.want-1e-9 || got > x.want+1e-9 {
			t.Errorf("%s: %g in afterward, want %g", name, got, x.want)
		}
		if moved := heard.Has(study.Position); moved && s.Station().Pose.Travel != s.Travel() {
			t.Errorf("%s: the station is at %g m", name, s.Station().Pose.Travel)
		}
	}
}

func TestVisitsToATime(t *testing.T) {
	s := open(t)
	s.SetLaunching(true)
	s.settle()
	s.SetTime(0.1)
	s.VisitTime(0.05)
	s.VisitTime(0.15)
	s.LeaveTime()
	if s.Time() != 0.1 {
		t.Errorf("back at %g s", s.Time())
	}
	s.VisitTime(0.05)
	s.StayAtTime()
	s.LeaveTime()
	if s.Time() != 0.05 {
		t.Errorf("stayed at %g s", s.Time())
	}
	s.VisitTime(0.15)
	s.SetTime(0.02)
	s.LeaveTime()
	if s.Time() != 0.02 {
		t.Errorf("set to %g s", s.Time())
	}
	// A time and a travel are visited apart.
	s.VisitTime(0.15)
	s.LeaveTravel()
	if s.Time() != 0.15 {
		t.Errorf("at %g s", s.Time())
	}
}

package study_test

import (
	"testing"

	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
)

// The verdict rests on side view and launch, and says when the launch is missing or of
// the car before.
func TestTheVerdictSaysWhatItRestsOn(t *testing.T) {
	s := open(t)
	basis := func(when string, want analysis.Basis) {
		t.Helper()
		if got := s.Basis(); got != want {
			t.Errorf("%s: basis %d, want %d", when, got, want)
		}
	}
	basis("before any launch", analysis.OnSideView)
	if s.LoadVerdict() != s.Result().LoadVerdict(nil) {
		t.Error("without a launch it is not that of the side view")
	}
	s.Want(study.WantsLaunch)
	s.settle()
	basis("launched", analysis.OnLaunch)
	same := func() {
		t.Helper()
		r, l := s.Result(), s.Launch()
		if s.LoadVerdict() != r.LoadVerdict(l) || s.Envelope() != r.Envelope(l) || len(s.Warnings()) != len(r.Warnings(l)) {
			t.Error("it is not that of side view and launch")
		}
	}
	same()
	before := s.Launch()
	apply(t, s, func(c *car.Car) { c.Drive.Torque *= 1.1 })
	basis("edited", analysis.OnLaunchBefore)
	if s.Launch() != before {
		t.Error("the launch before is not kept meanwhile")
	}
	same()
	s.settle()
	basis("launched anew", analysis.OnLaunch)
	doc := s.Document()
	doc.Begin("Drag")
	basis("dragged", analysis.OnLaunchBehind)
	apply(t, s, func(c *car.Car) { c.Body.CGHeight += inch })
	s.settle()
	basis("dragged on", analysis.OnLaunchBehind)
	doc.End()
	basis("let go", analysis.OnLaunch)
	doc.SelectSetup(1)
	basis("another setup", analysis.OnLaunchBefore)
	s.settle()
	basis("launched", analysis.OnLaunch)
}

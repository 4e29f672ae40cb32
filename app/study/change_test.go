package study_test

import (
	"fmt"
	"slices"
	"testing"

	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"
)

// What the document tells is passed on, each with the study's own changes at once.
func TestTheDocumentsChangesArePassedOn(t *testing.T) {
	s := open(t)
	doc := s.Document()
	var heard []study.Change
	s.Listen(func(c study.Change) { heard = append(heard, c) })
	for _, c := range []struct {
		what string
		do   func()
		want study.Change
	}{
		{"an edit", func() { apply(t, s, func(c *car.Car) { c.Body.CGHeight += inch }) }, study.Car | study.File | study.History | study.Analysis | study.Position},
		{"another setup", func() { doc.SelectSetup(1) }, study.Setup | study.Analysis | study.Position},
		{"other units", func() { doc.SetUnits(units.SI) }, study.Units},
		{"the beginning of a drag", func() { doc.Begin("Drag") }, study.History},
		{"its end", doc.End, study.History},
		{"a file", func() {
			if err := doc.SaveAs(t.TempDir() + "/car.toml"); err != nil {
				t.Fatal(err)
			}
		}, study.File},
	} {
		heard = nil
		if c.do(); len(heard) != 1 || heard[0] != c.want {
			t.Errorf("%s: heard %b, want %b", c.what, heard, c.want)
		}
	}
	heard = nil
	if err := doc.Open(reference); err != nil {
		t.Fatal(err)
	}
	if want := study.Car | study.Loaded | study.Analysis | study.Compared; len(heard) != 1 || heard[0]&want != want {
		t.Errorf("another car: heard %b", heard)
	}
}

// A listener that changes the study, or its document, panics, and leaves the
// study as usable as it was.
func TestAListenerMustNotChangeTheStudy(t *testing.T) {
	s := open(t)
	var change func()
	s.Listen(func(study.Change) {
		if do := change; do != nil {
			change = nil
			do()
		}
	})
	for what, do := range map[string]func(){
		"travel":     func() { s.SetTravel(0.01) },
		"visit":      func() { s.VisitTravel(0.01) },
		"stay":       s.StayAtTravel,
		"leave":      s.LeaveTime,
		"front":      func() { s.SetFront(0.01) },
		"case":       func() { s.SetCase(analysis.Hooked) },
		"pivot":      func() { s.Select(car.HousingUpper) },
		"moving":     func() { s.SetMoving(true) },
		"forces":     func() { s.SetForces(true) },
		"launching":  func() { s.SetLaunching(true) },
		"time":       func() { s.SetTime(0) },
		"want":       func() { s.Want(0) },
		"compare":    func() { s.Compare(1) },
		"wishes":     func() { s.SetWishes(holes.Wishes{OneBar: true}) },
		"conditions": func() { s.SetConditions(nil) },
		"point":      func() { s.Point(0) },
		"pick":       func() { s.Pick(0) },
		"stop":       s.StopSearch,
		"resume":     s.ResumeSearch,
		"edit":       func() { s.Nudge(1, 0) },
		"setup":      func() { s.Document().SelectSetup(1) },
	} {
		change = do
		if !panics(func() { s.SetTravel(s.Travel() + 0.001) }) {
			t.Errorf("%s: a listener changes the study", what)
		}
		s.Document().SelectSetup(0) // what had been changed before the panic
		if panics(func() { s.SetTravel(s.Travel() + 0.001) }) {
			t.Errorf("%s: the study takes no change any more", what)
		}
	}
}

// panics reports whether f does.
func panics(f func()) (did bool) {
	defer func() { did = recover() != nil }()
	f()
	return false
}

// What goes through Then comes after all have heard of the change at hand, in
// the order in which it was asked for.
func TestThenComesWhenAllHaveHeard(t *testing.T) {
	s := open(t)
	var heard []string
	note := func(who string, c study.Change) { heard = append(heard, fmt.Sprintf("%s %b", who, c)) }
	s.Then(func() { heard = append(heard, "at once") })
	s.Listen(func(c study.Change) {
		note("first", c)
		if c.Has(study.Choice) {
			s.Then(func() { s.SetTravel(0.01) })
			s.Then(func() { s.Want(study.WantsSearch) })
		}
	})
	s.Listen(func(c study.Change) { note("second", c) })
	s.SetMoving(true)
	want := []string{"at once"}
	for _, c := range []study.Change{study.Choice, study.Position, study.Wanted} {
		want = append(want, fmt.Sprintf("first %b", c), fmt.Sprintf("second %b", c))
	}
	if !slices.Equal(heard, want) {
		t.Errorf("heard\n%q, want\n%q", heard, want)
	}
}

// Another car is at ride height, compared with nothing, and none of the car
// before is left.
func TestAnotherCarStartsAnew(t *testing.T) {
	s, _ := searched(t)
	s.Compare(1)
	s.SetLaunching(true)
	s.SetTravel(0.02)
	s.SetFront(0.01)
	s.Pick(3)
	s.settle()
	s.SetTime(0.1)
	revision := s.RankingRevision()
	if err := s.Document().Open(reference); err != nil {
		t.Fatal(err)
	}
	if s.Travel() != 0 || s.Front() != 0 || s.Time() != 0 || len(s.Others()) != 0 || s.Launch() != nil || s.Table() != nil || s.Picked() != study.None || s.RankingRevision() == revision {
		t.Error("something of the car before is left")
	}
	if !s.Launching() || !s.Searching() {
		t.Error("what is looked at is not any more")
	}
}

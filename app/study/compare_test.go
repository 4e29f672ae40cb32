package study_test

import (
	"math"
	"slices"
	"testing"

	"bowline/app/study"
	"bowline/model/car"
)

// three returns a study of the reference car with a third setup, "high", held
// against the first one, which is current.
func three(t *testing.T) *rig {
	t.Helper()
	s := open(t)
	if p := s.Document().Apply("Add", func(c *car.Car) {
		c.Setups = append(c.Setups, car.Setup{Name: "high", Holes: car.Holes{ChassisUpper: 0, ChassisLower: 0}})
	}); p != nil {
		t.Fatal(p)
	}
	s.Compare(2)
	return s
}

// wantOthers checks that the setups compared are those of some names, in their
// order, with results of the car as it is, at the travel looked at.
func wantOthers(t *testing.T, s *rig, names ...string) {
	t.Helper()
	var got []string
	c := s.Document().Car()
	for _, o := range s.Others() {
		got = append(got, o.Name)
		if c.Setups[o.Setup].Name != o.Name {
			t.Errorf("setup %d is %q, not %q", o.Setup, c.Setups[o.Setup].Name, o.Name)
		}
		if o.Result.Car != c || o.Result.Options.Setup != o.Setup || o.Result.Options.FrontTravel != s.Front() || s.ResultOf(o.Setup) != o.Result {
			t.Errorf("%q: the result is of setup %d at front travel %v; current car %v", o.Name, o.Result.Options.Setup, o.Result.Options.FrontTravel, o.Result.Car == c)
		}
		if p := o.Station.Pose; math.Abs(p.Travel-s.Travel()) > 1e-12 || p.FrontTravel != s.Front() {
			t.Errorf("%q stands at %v and %v m, looked at are %v and %v", o.Name, p.Travel, p.FrontTravel, s.Travel(), s.Front())
		}
	}
	if !slices.Equal(got, names) {
		t.Errorf("compared are %q, want %q", got, names)
	}
}

// wantChosen checks which setups are chosen for comparison.
func wantChosen(t *testing.T, s *rig, want ...int) {
	t.Helper()
	if got := s.Chosen(); !slices.Equal(got, want) {
		t.Errorf("chosen are %v, want %v", got, want)
	}
}

func TestCompareSetups(t *testing.T) {
	s := open(t)
	wantOthers(t, s)
	wantChosen(t, s)
	var heard []study.Change
	s.Listen(func(c study.Change) { heard = append(heard, c) })
	s.Compare()
	s.Compare(1)
	s.Compare(1)
	s.Compare(1, 1)
	wantOthers(t, s, "lower bar up")
	s.Compare()
	s.Compare()
	wantOthers(t, s)
	const told = study.Analysis | study.Position | study.Compared
	if want := []study.Change{told, told}; !slices.Equal(heard, want) {
		t.Errorf("heard %b, want %b", heard, want)
	}
	// From the bars' lines alone, as in the window's tests: the lower chassis
	// hole of the other setup is at 12.25 in.
	s.Compare(1)
	upper, lower := (17-22.5)/20.0, (12.25-11)/23.0
	x := 2.5 + (22.5-11)/(lower-upper)
	if got := s.Others()[0].Result.Ride.InstantCenter.X; math.Abs(got-x*inch) > 1e-9 {
		t.Errorf("the other instant center is %v m ahead, want %v", got, x*inch)
	}
}

func TestSetupsAreComparedInTheirOrder(t *testing.T) {
	s := three(t)
	s.Compare(2, 1)
	wantOthers(t, s, "high", "lower bar up")
	s.Compare(1, 2)
	wantOthers(t, s, "lower bar up", "high")
	wantChosen(t, s, 1, 2)
	s.Compare(2)
	wantOthers(t, s, "high")
	s.Compare(0, 1, 2)
	wantOthers(t, s, "lower bar up", "high")
	wantChosen(t, s, 0, 1, 2)
	s.Document().SelectSetup(1)
	wantOthers(t, s, "baseline", "high")
}

func TestTheOtherSetupStandsAtTheSameTravel(t *testing.T) {
	s := three(t)
	s.SetTravel(-0.05)
	wantOthers(t, s, "high")
	s.SetFront(0.02)
	wantOthers(t, s, "high")
}

func TestTheOtherSetupIsFollowedByName(t *testing.T) {
	s := three(t)
	doc := s.Document()
	doc.MoveSetup(2, -1)
	wantOthers(t, s, "high")
	doc.RenameSetup(1, "more bite")
	wantOthers(t, s, "more bite")
	doc.CopySetup(0)
	doc.SelectSetup(0)
	wantOthers(t, s, "more bite")
	if _, p := doc.DeleteSetup(1); p != nil {
		t.Fatal(p)
	}
	wantOthers(t, s, "more bite")
	for doc.UndoLabel() != "Add" {
		doc.Undo()
	}
	wantOthers(t, s, "high")
	for doc.Redo() {
	}
	wantOthers(t, s, "more bite")
}

// Of several setups compared each is followed, and only the deleted one goes.
func TestSetupsComparedAreFollowedByName(t *testing.T) {
	s := three(t)
	s.Compare(2, 1)
	doc := s.Document()
	doc.MoveSetup(1, -1)
	doc.SelectSetup(1)
	wantOthers(t, s, "high", "lower bar up")
	wantChosen(t, s, 2, 0)
	doc.RenameSetup(2, "more bite")
	wantOthers(t, s, "more bite", "lower bar up")
	doc.DeleteSetup(0)
	wantOthers(t, s, "more bite")
	wantChosen(t, s, 1)
}

func TestADeletedSetupIsComparedNoMore(t *testing.T) {
	s := three(t)
	heard := s.hear()
	s.Document().DeleteSetup(2)
	wantOthers(t, s)
	wantChosen(t, s)
	if !heard.Has(study.Compared) {
		t.Errorf("heard %b", *heard)
	}
}

// While the setup held against is the current one there is nothing to compare,
// but it stays chosen.
func TestTheCurrentSetupIsNotHeldAgainstItself(t *testing.T) {
	s := three(t)
	s.Document().SelectSetup(2)
	wantOthers(t, s)
	wantChosen(t, s, 2)
	s.Document().SelectSetup(1)
	wantOthers(t, s, "high")
}

func TestAnEditReachesBothSetups(t *testing.T) {
	s := three(t)
	before := s.Others()[0].Result.Ride.AntiSquat
	s.Document().Apply("CG", func(c *car.Car) { c.Body.CGHeight += inch })
	wantOthers(t, s, "high")
	if s.Others()[0].Result.Ride.AntiSquat == before {
		t.Error("the other setup's anti-squat is that of the car before")
	}
}

func TestAnotherCarEndsTheComparison(t *testing.T) {
	s := three(t)
	if err := s.Document().Open("../../testdata/reference.toml"); err != nil {
		t.Fatal(err)
	}
	wantOthers(t, s)
	wantChosen(t, s)
}

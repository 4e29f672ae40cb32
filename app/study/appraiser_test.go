package study_test

import (
	"context"
	"errors"
	"sync"
	"testing"

	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/stock"
)

// appraised is a study that says what assumptions are worth without a launch, and what
// it was asked for.
type appraised struct {
	*rig
	mu    sync.Mutex
	asked []*car.Car
	wrong error
}

func openAppraised(t *testing.T) *appraised {
	a := &appraised{rig: &rig{queue: runnertest.NewQueue()}}
	a.Study = study.NewAppraised(read(t), a.options(), func(_ context.Context, c *car.Car, setup int, _ stock.Library) ([]assumptions.Worth, error) {
		a.mu.Lock()
		defer a.mu.Unlock()
		a.asked = append(a.asked, c)
		return []assumptions.Worth{{Assumption: assumptions.Assumption{Name: c.Setups[setup].Name}}}, a.wrong
	})
	t.Cleanup(a.Close)
	return a
}

// wantWorth checks whether the worth there is, is of the current car and setup.
func (a *appraised) wantWorth(t *testing.T, current bool) {
	t.Helper()
	list, is, err := a.Worth()
	if is != current || err != a.wrong && current {
		t.Errorf("the worth is current: %v, want %v; %v", is, current, err)
	}
	if want := a.Document().Car().Setups[a.Document().Setup()].Name; current && list[0].Name != want {
		t.Errorf("the worth is that of %q, want %q", list[0].Name, want)
	}
}

func TestWorthFollowsTheCar(t *testing.T) {
	a := openAppraised(t)
	a.SetLaunching(true)
	a.settle()
	if a.wantWorth(t, false); len(a.asked) > 0 {
		t.Fatal("nobody wants it, yet it is found")
	}
	heard := a.hear()
	a.Want(study.WantsLaunch | study.WantsWorth)
	a.settle()
	if a.wantWorth(t, true); !heard.Has(study.Appraised) || len(a.asked) != 1 {
		t.Errorf("heard %b, asked for %d", *heard, len(a.asked))
	}
	// It is outdated by an edit, of another setup, and there again after undo.
	a.Choose(car.ChassisLower, 0)
	a.wantWorth(t, false)
	a.settle()
	a.wantWorth(t, true)
	a.Document().SelectSetup(1)
	a.wantWorth(t, false)
	a.settle()
	a.wantWorth(t, true)
	// What does not change the car asks for nothing.
	before := len(a.asked)
	a.SetTime(0.1)
	a.settle()
	a.Want(0)
	a.settle()
	a.Choose(car.ChassisLower, 1)
	a.settle()
	if a.wantWorth(t, false); len(a.asked) != before {
		t.Errorf("asked for %d times, want %d", len(a.asked), before)
	}
}

// While a car is dragged nothing is tried out.
func TestADragIsNotAppraised(t *testing.T) {
	a := openAppraised(t)
	a.Want(study.WantsLaunch | study.WantsWorth)
	a.settle()
	before := len(a.asked)
	a.Document().Begin("Drag")
	for hole := range 2 {
		a.Choose(car.ChassisLower, hole)
		a.settle()
	}
	if a.wantWorth(t, false); len(a.asked) != before {
		t.Error("a drag is appraised")
	}
	a.Document().End()
	a.settle()
	if a.wantWorth(t, true); len(a.asked) != before+1 {
		t.Errorf("asked for %d times after the drag, want once", len(a.asked)-before)
	}
}

// What was found of a car is none of the next.
func TestWorthGoesWithItsCar(t *testing.T) {
	a := openAppraised(t)
	a.Want(study.WantsLaunch | study.WantsWorth)
	a.settle()
	if err := a.Document().Open(reference); err != nil {
		t.Fatal(err)
	}
	if list, current, _ := a.Worth(); current || list != nil {
		t.Errorf("%v of the car before", list)
	}
	a.settle()
	a.wantWorth(t, true)
}

// A failure is told, and not tried again until the car changes.
func TestWorthThatCannotBeFound(t *testing.T) {
	a := openAppraised(t)
	a.wrong = errors.New("no worth")
	a.Want(study.WantsLaunch | study.WantsWorth)
	a.settle()
	a.SetTime(0.1)
	a.Want(study.WantsLaunch | study.WantsWorth | study.WantsSearch)
	a.settle()
	if _, current, err := a.Worth(); err != a.wrong || !current || len(a.asked) != 1 {
		t.Errorf("%v, asked for %d times", err, len(a.asked))
	}
}

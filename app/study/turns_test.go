package study_test

import (
	"context"
	"errors"
	"runtime"
	"sync/atomic"
	"testing"

	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/stock"
)

// dialer is a study in which the search for turns finds what it is told to, or waits
// until it is canceled.
type dialer struct {
	*rig
	t     *testing.T
	found car.Turns
	fails error
	waits bool
	began chan struct{}
	ended atomic.Int64 // searches that were canceled
}

func dial(t *testing.T) *dialer {
	d := &dialer{rig: &rig{queue: runnertest.NewQueue()}, t: t, found: car.Turns{UpperRight: -1.5}, began: make(chan struct{}, 1)}
	d.Study = study.NewFinding(read(t), d.options(), d.find)
	t.Cleanup(d.Close)
	return d
}

func (d *dialer) find(ctx context.Context, c *car.Car, setup int, _ stock.Library, o preload.Options) (*preload.Result, error) {
	if d.waits {
		o.Progress(1)
		d.began <- struct{}{}
		<-ctx.Done()
		d.ended.Add(1)
		return nil, ctx.Err()
	}
	if d.fails != nil {
		return nil, d.fails
	}
	return &preload.Result{Car: c, Setup: setup, Ways: []preload.Way{{State: preload.State{Turns: d.found}}}}, nil
}

// want compares what is known of the turns.
func (d *dialer) want(when string, want study.Turns) {
	d.t.Helper()
	r, of := d.FoundTurns()
	if of != want || (r == nil) != (want == study.TurnsUnknown) {
		d.t.Errorf("%s: %v, known %v, want %v", when, r, of, want)
	}
}

func (d *dialer) edit() {
	d.t.Helper()
	apply(d.t, d.rig, func(c *car.Car) { c.Body.CGHeight += 0.001 })
}

// Turns are searched when somebody asks for them, and what is found goes by the car
// and the setup that it was found for.
func TestTurnsAreOfTheirCar(t *testing.T) {
	d := dial(t)
	d.Want(study.WantsLaunch)
	d.settle()
	d.want("at first", study.TurnsUnknown)
	heard := d.hear()
	d.SearchTurns()
	if !heard.Has(study.TurnsSearch) || !d.TurnsProgress().Runs || !d.Busy() {
		t.Errorf("searching, it is at %+v, busy %v", d.TurnsProgress(), d.Busy())
	}
	*heard = 0
	d.settle()
	if !heard.Has(study.TurnsSearch) || d.TurnsProgress() != (study.TurnsProgress{}) {
		t.Errorf("done, it is at %+v", d.TurnsProgress())
	}
	d.want("found", study.TurnsFound)
	d.edit()
	d.want("edited", study.TurnsOutdated)
	d.Document().Undo()
	d.want("undone", study.TurnsFound)
	d.Document().SelectSetup(1)
	d.want("of another setup", study.TurnsOutdated)
	d.Document().SelectSetup(0)
	d.want("back", study.TurnsFound)
	if err := d.Document().Open(reference); err != nil {
		t.Fatal(err)
	}
	d.want("opened again", study.TurnsUnknown)
}

// Taken turns are one step that undo takes back.
func TestTurnsAreTaken(t *testing.T) {
	d := dial(t)
	d.SearchTurns()
	d.settle()
	if p := d.TakeTurns(0); p != nil {
		t.Fatal(p)
	}
	if got := d.Document().Car().Setups[0].Turns; got != d.found {
		t.Errorf("the setup has %+v, want %+v", got, d.found)
	}
	if got := d.Document().Car().Setups[1].Turns; got != (car.Turns{}) {
		t.Errorf("the other setup has %+v", got)
	}
	d.want("taken", study.TurnsTaken)
	d.Document().Undo()
	d.want("taken back", study.TurnsFound)
	if got := d.Document().Car().Setups[0].Turns; got != (car.Turns{}) {
		t.Errorf("undone, the setup has %+v", got)
	}
	d.Document().Redo()
	d.want("taken again", study.TurnsTaken)
	d.edit()
	d.want("edited", study.TurnsOutdated)
}

// Turns that the car does not take leave it as it is.
func TestTurnsThatAreRefused(t *testing.T) {
	d := dial(t)
	d.found.UpperRight = 2 * car.MaxTurns
	d.SearchTurns()
	d.settle()
	if p := d.TakeTurns(0); len(p) == 0 {
		t.Error("they are taken")
	}
	d.want("refused", study.TurnsFound)
}

// An edit, another setup, another car and a person end the search.
func TestTheSearchForTurnsEnds(t *testing.T) {
	d := dial(t)
	d.SearchTurns()
	d.settle()
	d.waits = true
	for i, c := range []struct {
		what   string
		end    func()
		edited bool
		want   study.Turns
	}{
		{"stopped", d.StopTurns, false, study.TurnsFound},
		{"another setup", func() { d.Document().SelectSetup(1) }, true, study.TurnsOutdated},
		{"edited", d.edit, true, study.TurnsOutdated},
		{"loaded", func() {
			if err := d.Document().Open(reference); err != nil {
				t.Fatal(err)
			}
		}, false, study.TurnsUnknown},
	} {
		d.SearchTurns()
		<-d.began
		c.end()
		d.settle()
		if got := d.TurnsProgress(); got != (study.TurnsProgress{Edited: c.edited}) || d.Busy() {
			t.Errorf("%s: it is at %+v, busy %v", c.what, got, d.Busy())
		}
		d.want(c.what, c.want)
		for d.ended.Load() <= int64(i) {
			runtime.Gosched()
		}
	}
	// Asked twice, the first search is given up.
	d.SearchTurns()
	<-d.began
	d.waits = false
	d.SearchTurns()
	d.settle()
	d.want("asked twice", study.TurnsFound)
}

// Why nothing is found is there until the next edit.
func TestASearchForTurnsThatFails(t *testing.T) {
	d := dial(t)
	d.fails = &preload.NoLaunch{Outcome: launch.NoRest}
	d.SearchTurns()
	d.settle()
	var none *preload.NoLaunch
	if got := d.TurnsProgress(); got.Runs || !errors.As(got.Err, &none) {
		t.Errorf("it is at %+v", got)
	}
	d.want("failed", study.TurnsUnknown)
	d.edit()
	if got := d.TurnsProgress(); got != (study.TurnsProgress{}) {
		t.Errorf("edited, it is at %+v", got)
	}
}

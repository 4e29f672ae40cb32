package window

import (
	"errors"
	"testing"
	"time"

	"bowline/assets"
	"bowline/model/car"
	"bowline/model/holes"

	"fyne.io/fyne/v2/test"
)

// What each edit leads to is found for the newest car, while the page is on show.
func TestTheSearchFollowsTheCarWhileItIsLookedAt(t *testing.T) {
	d, _ := openDesk(t)
	if d.study.Table() != nil {
		t.Fatal("combinations are searched though nobody looks")
	}
	d.show(panelHoles)
	if d.study.TableOutdated() {
		t.Fatal("nothing is searched")
	}
	d.doc.Begin("Drag")
	for range 20 {
		d.doc.Apply("Move", func(c *car.Car) { c.Chassis.Upper[2].Y += 0.001 })
	}
	d.doc.End()
	d.settle()
	if d.study.TableOutdated() || d.study.Table().Car.Chassis.Upper[2] != d.doc.Car().Chassis.Upper[2] {
		t.Error("the combinations are not those of the newest car")
	}
	found := d.study.Table()
	d.doc.Apply("Rename", func(c *car.Car) { c.Body.Name = "Number 9" })
	d.settle()
	if d.study.Table() != found {
		t.Error("a name is a reason to search again")
	}
	d.show(panelHere)
	d.edit()
	if d.study.Table() != found || d.holes.searcher.worker.Busy() {
		t.Error("the search goes on though nobody looks")
	}
	d.show(panelHoles)
	if d.study.TableOutdated() {
		t.Error("back on the page the combinations are those of the car before")
	}
}

func TestProgressStopAndSearch(t *testing.T) {
	d := searching(t)
	p, s := d.holes, d.holes.searcher
	if p.status.Visible() || p.progress.Text() != "" {
		t.Errorf("after the search it says %q", p.progress.Text())
	}
	// A run that takes long.
	began := time.Now()
	job := &searchJob{car: d.doc.Car(), began: began}
	job.done.Store(1200)
	job.total.Store(20736)
	s.now = func() time.Time { return began.Add(patience / 2) }
	s.current.Store(job)
	p.refresh()
	if p.status.Visible() {
		t.Errorf("at once it says %q", p.progress.Text())
	}
	s.now = func() time.Time { return began.Add(patience) }
	p.refresh()
	if !p.status.Visible() || p.progress.Text() != "1,200 of 20,736 combinations searched" || p.button.Text != "Stop" || !p.button.Visible() {
		t.Errorf("after a while it says %q beside %q", p.progress.Text(), p.button.Text)
	}
	found := d.study.Table()
	test.Tap(p.button)
	d.edit()
	if d.study.Table() != found || len(p.list.places) != len(found.Combinations) {
		t.Error("the list does not stay when the search is stopped")
	}
	if p.progress.Text() != "The search was stopped; the list is of the car as it was before." || p.button.Text != "Search" {
		t.Errorf("after the stop it says %q beside %q", p.progress.Text(), p.button.Text)
	}
	test.Tap(p.button)
	d.settle()
	if d.study.TableOutdated() || p.status.Visible() {
		t.Errorf("after the search it says %q", p.progress.Text())
	}
	// Another car is searched even after a stop.
	s.halt()
	d.openExample(assets.CarNames()[0])
	d.settle()
	if d.study.Table() == nil || d.study.TableOutdated() {
		t.Error("another car is not searched")
	}
}

func TestASearchThatCannotBe(t *testing.T) {
	d := searching(t)
	d.holes.searcher.apply(searched{err: &holes.TooMany{Combinations: 279841}})
	d.settle()
	p := d.holes
	want := "Not searched: the brackets offer 279841 choices of holes, and a search takes 250000; take holes out of the longest rows."
	if got := p.progress.Text(); got != want || !p.status.Visible() || p.button.Visible() {
		t.Errorf("it says\n%q, want\n%q", got, want)
	}
	if len(p.list.places) != 36 {
		t.Error("the list does not stay")
	}
	if !errors.As(p.searcher.failed, new(*holes.TooMany)) {
		t.Errorf("the reason is %v", p.searcher.failed)
	}
}

// A run with more than half to do is given up for a newer car, but not twice in
// a row.
func TestRunsAreGivenUpButNotAlways(t *testing.T) {
	d := searching(t)
	s := d.holes.searcher
	under := &searchJob{car: d.doc.Car(), began: time.Now()}
	under.done.Store(49)
	under.total.Store(100)
	s.current.Store(under)
	d.doc.Apply("Move", func(c *car.Car) { c.Chassis.Upper[2].Y += 0.001 })
	if !s.replaced {
		t.Error("a run hardly begun goes on for an older car")
	}
	d.settle()
	if s.replaced || d.study.TableOutdated() {
		t.Error("the newer car was not searched")
	}
	under.done.Store(50)
	s.current.Store(under)
	d.doc.Apply("Move", func(c *car.Car) { c.Chassis.Upper[2].Y += 0.001 })
	if s.replaced {
		t.Error("a run half done is given up")
	}
	d.settle()
}

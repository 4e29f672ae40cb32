package window

import (
	"strings"
	"testing"

	"bowline/assets"
	"bowline/model/car"

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
	if d.study.Table() != found || d.study.Busy() {
		t.Error("the search goes on though nobody looks")
	}
	d.show(panelHoles)
	if d.study.TableOutdated() {
		t.Error("back on the page the combinations are those of the car before")
	}
}

// grow gives each of the four brackets so many holes.
func (d *desk) grow(n int) {
	d.t.Helper()
	if p := d.doc.Apply("More holes", func(c *car.Car) {
		for _, row := range car.Rows {
			list := row.In(c)
			for last := (*list)[len(*list)-1]; len(*list) < n; {
				last.Y += 0.0005
				*list = append(*list, last)
			}
		}
	}); p != nil {
		d.t.Fatal(p)
	}
}

func TestProgressAndStop(t *testing.T) {
	d := searching(t)
	p := d.holes
	if p.status.Visible() || p.progress.Text() != "" {
		t.Errorf("after the search it says %q", p.progress.Text())
	}
	// A run that takes long.
	d.grow(20)
	for p.refresh(); !p.status.Visible(); p.refresh() {
		d.queue.Wait()
		for d.queue.Step() {
		}
	}
	if got := p.progress.Text(); !strings.HasSuffix(got, " of 160,000 combinations searched") || p.button.Text != "Stop" || !p.button.Visible() {
		t.Errorf("after a while it says %q beside %q", got, p.button.Text)
	}
	test.Tap(p.button)
	d.settle()
	if p.progress.Text() != "The search was stopped." || p.button.Text != "Search" || d.study.Table() != nil {
		t.Errorf("after the stop it says %q beside %q", p.progress.Text(), p.button.Text)
	}
	// Another car is searched even after a stop.
	d.openExample(assets.CarNames()[0])
	d.settle()
	if d.study.TableOutdated() {
		t.Error("another car is not searched")
	}
}

func TestTheListStaysWhenTheSearchIsStopped(t *testing.T) {
	d := searching(t)
	p, found := d.holes, d.study.Table()
	d.study.StopSearch()
	d.edit()
	if d.study.Table() != found || p.list.Len() != len(found.Combinations) {
		t.Error("the list does not stay")
	}
	if p.progress.Text() != "The search was stopped; the list is of the car as it was before." || p.button.Text != "Search" {
		t.Errorf("after the stop it says %q beside %q", p.progress.Text(), p.button.Text)
	}
	test.Tap(p.button)
	d.settle()
	if d.study.TableOutdated() || p.status.Visible() {
		t.Errorf("after the search it says %q", p.progress.Text())
	}
}

func TestASearchThatCannotBe(t *testing.T) {
	d := searching(t)
	d.grow(23)
	d.settle()
	p := d.holes
	want := "Not searched: the brackets offer 279841 choices of holes, and a search takes 250000; take holes out of the longest rows."
	if got := p.progress.Text(); got != want || !p.status.Visible() || p.button.Visible() {
		t.Errorf("it says\n%q, want\n%q", got, want)
	}
}
